"""Fields of the record: texts, marks, days and readings that have no usual value; each is saved as it is left."""

import math
from collections.abc import Mapping
from datetime import date
from typing import Final

import streamlit as st

from econ.case.form import FieldInfo, field_at
from econ.case.quantity import Amount
from econ.report.words.keeping import MARK_WORDS
from econ.ui import entry, fields, state
from econ.ui.entry import Shown

FIRST_DAY: Final = date(2000, 1, 1)
LAST_DAY: Final = date(2100, 12, 31)
"""Days that a case may hold."""

WAY: Final = "way_of_record"
"""Session key of the way whose record is on screen."""

OF_WAY: Final = ("as_built.", "tests.")
"""Entries that belong to one way: the first of them says which it was, unless that is said already."""

AREA_PX: Final = 100
_MOST_PILLS: Final = 4


def draw(*paths: str) -> None:
    """Draw fields of the record in two columns, one on a phone."""
    for left in range(0, len(paths), 2):
        for column, path in zip(st.columns(2, gap="medium"), paths[left : left + 2], strict=False):
            with column:
                one(path)


def one(path: str, info: FieldInfo | None = None, label: str = "") -> None:
    """Draw one field, and why what was typed is not taken.

    Parameters
    ----------
    path : str
        Of a field, or of one entry of a table: then with the field's declaration.
    info : FieldInfo, optional
        The declaration; found by the path where it is left out.
    label : str
        What to call it; the declaration's word where it is left out.
    """
    told = info or field_at(path)
    with st.container(key=f"f_{fields.slug(path)}", gap="xxsmall"):
        _KINDS[told.kind](path, told, label or told.label)
        if not (found := state.refused(path)):
            return
        is_amount = told.kind in ("aside", "asides")
        shown = fields.shown_as(told)
        st.html(fields.refused_html(found, shown) if is_amount else fields.fault_html(found.fault))


def area(path: str, placeholder: str = "", info: FieldInfo | None = None, label: str = "") -> None:
    """Draw a box for a text of many lines, whose declaration may be that of its table."""
    told, key = info or field_at(path), _key(path)
    _show_text(path, key)
    st.text_area(
        label or told.label, key=key, help=told.help, height=AREA_PX, placeholder=placeholder, on_change=_written,
        args=(path, key),
    )  # fmt: skip
    if found := state.refused(path):
        st.html(fields.fault_html(found.fault))


def _key(path: str) -> str:
    return f"w_{fields.slug(path)}"


def _show_text(path: str, key: str) -> None:
    found = state.refused(path)
    state.put(key, found.typed if found else state.value(path) or "")


def _text(path: str, info: FieldInfo, label: str) -> None:
    key = _key(path)
    _show_text(path, key)
    st.text_input(label, key=key, help=info.help, on_change=_written, args=(path, key), autocomplete="off")


def _written(path: str, key: str) -> None:
    typed = str(st.session_state[key]).strip()
    _set(path, typed or None, typed)


def _mark(path: str, info: FieldInfo, label: str) -> None:
    key = _key(path)
    state.put(key, state.value(path))
    options = list(info.options)
    if info.path == "as_built.way" or len(options) > _MOST_PILLS or info.kind == "marks":
        st.selectbox(
            label, options, index=None, format_func=_option_words, key=key, placeholder="Not entered",
            on_change=_ticked, args=(path, key),
        )  # fmt: skip
    else:
        st.pills(
            label, options, format_func=_option_words, key=key, help=info.help, on_change=_ticked, args=(path, key)
        )


def _option_words(option: str) -> str:
    from econ.report.style import NAMES

    names: Mapping[str, str] = {name.value: told for name, told in NAMES.items()}
    return names.get(option) or MARK_WORDS[option]


def _ticked(path: str, key: str) -> None:
    _set(path, st.session_state[key])


def _day(path: str, info: FieldInfo, label: str) -> None:
    key, said = _key(path), state.value(path)
    state.put(key, date.fromisoformat(said) if said else None)
    st.date_input(
        label, value=None, min_value=FIRST_DAY, max_value=LAST_DAY, key=key, help=info.help, format="YYYY-MM-DD",
        on_change=_dated, args=(path, key),
    )  # fmt: skip


def _dated(path: str, key: str) -> None:
    given = st.session_state[key]
    _set(path, given.isoformat() if given else None)


def _amount(path: str, info: FieldInfo, label: str) -> None:
    key, shown = _key(path), fields.shown_as(info)
    found, said = state.refused(path), state.value(path)
    state.put(key, found.typed if found else _typed(said, shown))
    is_said = not shown.word or shown.word.lower() in label.lower().split()
    unit = "" if is_said else f" ({shown.word})"
    st.text_input(
        f"{label}{unit}", key=key, help=info.help, on_change=_read, args=(path, key, shown), autocomplete="off"
    )


def _typed(said: Amount | None, shown: Shown) -> str:
    if said is None or not math.isfinite(said.likely):
        return ""
    return entry.entry_text(said.low, said.likely, said.high, shown)


def _read(path: str, key: str, shown: Shown) -> None:
    typed = str(st.session_state[key] or "")
    _set(path, entry.read_entry(typed, shown), typed)


def _set(path: str, value: object, typed: str = "") -> None:
    """Save an entry, or take it back where it was emptied."""
    if value is None:
        state.take_back(path)
        return
    state.give(path, value, typed or str(value))
    if path.startswith(OF_WAY) and state.value("as_built.way") is None and not state.refused(path):
        state.give("as_built.way", st.session_state[WAY])


_KINDS: Final = {
    "text": _text, "notes": _text, "mark": _mark, "marks": _mark, "day": _day, "days": _day, "aside": _amount,
    "asides": _amount,
}  # fmt: skip
