"""What differs between two versions of a case, in the words of the form."""

from econ.case.changes import Change
from econ.case.choices import table_path
from econ.case.form import field_at, is_asked
from econ.report.numbers import listed, plural

LONGEST = 60
"""Letters of an answer that are shown; longer ones are cut with an ellipsis."""


def label(path: str) -> str:
    """Return what the form calls an answer; the last part of its path where no form asks for it.

    Examples
    --------
    >>> label("kit.cutout_c")
    'kit: cutout c'
    """
    if is_asked(table_path(path)):
        return field_at(path).label
    section, _, name = path.partition(".")
    return f"{section}: {name.replace('_', ' ')}" if name else section.replace("_", " ")


def change_text(change: Change) -> str:
    """Return one difference, such as "Floor area: 20 m² → 24 m²"."""
    before, after = (_shown(text) for text in (change.before, change.after))
    return f"{label(change.path)}: {before} → {after}"


def changes_sentence(found: tuple[Change, ...]) -> str:
    """Return what a version changed, at most three answers by name."""
    if not found:
        return "Nothing changed."
    most = 3
    told = [change_text(change) for change in found[:most]]
    rest = len(found) - most
    if rest > 0:
        told.append(f"{rest} more {plural('answer', rest)}")
    return f"{'; '.join(told)}." if rest <= 0 else f"{listed(told)}."


def _shown(text: str) -> str:
    if not text:
        return "not answered"
    return text if len(text) <= LONGEST else f"{text[: LONGEST - 1]}…"
