"""What an untouched or unknown field is taken as, as HTML: its number or option, and where that comes from."""

from collections.abc import Mapping
from html import escape
from typing import Final

from econ.case.choices import CHOICES, NOT_KNOWN, table_path
from econ.case.form import FieldInfo
from econ.evaluate.sheet import Entry
from econ.kernel.errors import UnknownChoiceError
from econ.ui import cached, entry, now
from econ.ui.entry import Shown
from econ.ui.option_words import option_words

_CODE_MARGIN: Final = 0.5
_SHORT_LETTERS: Final = 32
_CUTS: Final = (";", ":", " (", ", ")
"""Where a source may be cut to its first phrase."""


def options() -> Mapping[str, str]:
    """Return the usual option of every choice that has one whatever the case."""
    inputs = cached.tables().inputs
    return {path: inputs[path].text("choice") or NOT_KNOWN for path in CHOICES if path in inputs}


def option(path: str) -> str:
    """Return the option an untouched or unknown choice is taken as; empty where the case does not tell yet."""
    known = CHOICES[table_path(path)]
    if found := _entry(path):
        return known[int(found.likely + _CODE_MARGIN)]
    return options().get(path, "").replace(NOT_KNOWN, "")


def choice_words(path: str, info: FieldInfo, state_name: str) -> str:
    """Return what stands after the state's word under a choice."""
    if state_name == "yours":
        return ""
    taken = option(path)
    if not taken or taken == NOT_KNOWN:
        return "the careful side is taken" if state_name == "not_known" else _joined("not known", _source_html(path))
    words = escape(option_words(info.path, taken))
    return f"we assume “{words}”" if state_name == "not_known" else _joined(words, _source_html(path))


def amount_words(path: str, shown: Shown, state_name: str) -> str:
    """Return what stands after the state's word under an amount."""
    found = _entry(path)
    if state_name == "yours":
        return ""
    if found is None:
        return "a wide range is taken" if state_name == "not_known" else escape(_source(path))
    spread = found.spread
    if state_name == "not_known":
        return f"we assume {escape(entry.span_text(spread.low, spread.high, shown))}"
    return _joined(escape(entry.usual_text(spread.low, spread.likely, spread.high, shown)), _source_html(path))


def placeholder(path: str, shown: Shown) -> str:
    """Return the number that stands greyed in an empty field."""
    found = _entry(path)
    return entry.usual_text(found.spread.low, found.likely, found.spread.high, shown) if found else ""


def number(path: str) -> float | None:
    """Return the likely number of a path; None where the case does not tell yet."""
    found = _entry(path)
    return found.likely if found else None


def _entry(path: str) -> Entry | None:
    answer = now.present().answer
    if answer is None:
        return None
    try:
        return answer.sheet.entry(path)
    except UnknownChoiceError:
        return None


def _source(path: str) -> str:
    if found := _entry(path):
        return found.spread.source
    inputs = cached.tables().inputs
    return inputs[table_path(path)].text("source") if table_path(path) in inputs else ""


def _source_html(path: str) -> str:
    """Return a source as one short phrase that opens on a tap, and shows itself under a pointer, in full."""
    source = _source(path)
    short = short_source(source)
    if short == source:
        return escape(source)
    return (
        f'<details class="source"><summary title="{escape(source)}">{escape(short)}</summary>'
        f"<span>{escape(source)}</span></details>"
    )


def short_source(source: str) -> str:
    """Return the first phrase of a source, with a mark where there is more.

    Examples
    --------
    >>> short_source("assumption: 15 ft"), short_source("US EIA, MN 2023, times 1.17 since (assumption 1.05 to 1.3)")
    ('assumption: 15 ft', 'US EIA, MN 2023 …')
    """
    if len(source) <= _SHORT_LETTERS:
        return source
    cuts = [at for mark in _CUTS if (at := source.rfind(mark, 0, _SHORT_LETTERS)) > 0]
    end = max(cuts) if cuts else source.rfind(" ", 0, _SHORT_LETTERS)
    return f"{source[:end] if end > 0 else source[:_SHORT_LETTERS]} …"


def _joined(words: str, source: str) -> str:
    return f"{words} ({source})" if source and "<" not in source else f"{words} {source}".rstrip()
