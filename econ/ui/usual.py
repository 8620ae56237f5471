"""What an untouched or unknown field is taken as: its number or option, and where that comes from."""

from collections.abc import Mapping
from typing import Final

from econ.case.choices import CHOICES, NOT_KNOWN, table_path
from econ.case.form import FieldInfo
from econ.evaluate.sheet import Entry
from econ.kernel.errors import UnknownChoiceError
from econ.ui import cached, entry, now
from econ.ui.entry import Shown
from econ.ui.option_words import option_words

_CODE_MARGIN: Final = 0.5


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
        return "the careful side is taken" if state_name == "not_known" else _source(path)
    words = option_words(info.path, taken)
    return f"we assume “{words}”" if state_name == "not_known" else _joined(words, _source(path))


def amount_words(path: str, shown: Shown, state_name: str) -> str:
    """Return what stands after the state's word under an amount."""
    found = _entry(path)
    if state_name == "yours":
        return ""
    if found is None:
        return "a wide range is taken" if state_name == "not_known" else _source(path)
    spread = found.spread
    if state_name == "not_known":
        return f"we assume {entry.span_text(spread.low, spread.high, shown)}"
    return _joined(entry.span_text(spread.likely, spread.likely, shown), _source(path))


def placeholder(path: str, shown: Shown) -> str:
    """Return the number that stands greyed in an empty field."""
    found = _entry(path)
    return entry.span_text(found.likely, found.likely, shown) if found else ""


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


def _joined(words: str, source: str) -> str:
    return f"{words} ({source})" if source else words
