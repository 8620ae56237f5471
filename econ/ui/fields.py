"""Fields drawn from the schema: label, entry, its state as a word, "I don't know", a range, and what was refused."""

import math
import re
from html import escape
from typing import Final

import streamlit as st

from econ.case.edit import is_asked, state_of
from econ.case.form import FieldInfo, field_at
from econ.case.quantity import NOT_KNOWN_TEXT, Amount
from econ.kernel.errors import Fault
from econ.report.words.glossary import short_words
from econ.ui import entry, refusal, state, usual
from econ.ui.entry import Shown
from econ.ui.option_words import DONT_KNOW, option_words

_PERCENT: Final = frozenset(
    {
        "use.humidity_limit_frac",
        "bills.cooling_share_frac",
        "bills.heating_share_frac",
        "now.heat_efficiency_frac",
        "money.discount_rate_real_frac",
        "money.sales_tax_frac",
        "money.inflation_frac",
        "finance.loan_rate_frac",
        "finance.card_rate_frac",
        "finance.fee_frac",
        "finance.dearer_frac",
        "letting.marginal_rate_frac",
        "later.no_service_frac",
        "prices.electricity_escalation_frac",
        "prices.fuel_escalation_frac",
        "work.mishap_frac",
        "kit.restocking_frac",
        *(f"{section}.{name}_frac" for section in ("trade", "private") for name in ("overhead", "profit")),
        "trade.insurance_frac",
        "money.incentive_self_frac",
        "money.incentive_hired_frac",
        "money.incentive_window_frac",
    }
)
_CLOCK: Final = frozenset(f"tariff.{name}_{end}_h" for name in ("peak", "cheap") for end in ("from", "to"))
_DATES: Final = frozenset({"rooms[].year_built"})
_MOST_PILLS: Final = 8
_LABELS: Final[dict[str, str]] = {
    "kit.life_yr": "Life of the kit",
    "window.life_yr": "Life of a window unit",
    "kit.upkeep_usd_per_yr": "Upkeep of the kit",
    "hired.upkeep_usd_per_yr": "Upkeep of the hired unit",
    "window.size": "Size of each window unit",
    "window.count": "How many window units",
    "window.price_usd": "Price of each window unit",
    "kit.size": "Size of the kit",
    "kit.grade": "Class of the kit",
    "hired.size": "Size of the hired unit",
    "hired.grade": "Class of the hired unit",
    "quote.total_usd": "Total of the quote",
}
"""Fields that stand beside others of the same name on a page."""

_USUAL_TEXTS: Final = {"place.decision_date": "today", "place.state": "that of the weather place"}
"""What stands greyed in an empty text: how it is taken."""

_STATE_WORDS: Final = {"yours": "you said", "usual": "usual value", "not_known": "not known"}


def slug(path: str) -> str:
    """Return a path as part of a key."""
    return re.sub(r"\W+", "_", path).strip("_")


def shown_as(info: FieldInfo) -> Shown:
    """Return in which unit a field stands on the screen."""
    unit = "" if info.path in _DATES else info.unit
    shown_unit = unit if state.is_si() or not info.needs_unit else info.us_unit
    is_percent, is_clock = info.path in _PERCENT, info.path in _CLOCK
    return Shown(unit, shown_unit, not info.needs_unit, is_percent, info.high, info.low, is_clock)


def draw(*paths: str) -> None:
    """Draw fields in two columns, one on a phone; those that no earlier answer asks for are left out."""
    usual_options = usual.options()
    asked = [path for path in paths if is_asked(state.current_case(), field_at(path), usual_options)]
    for left in range(0, len(asked), 2):
        for column, path in zip(st.columns(2, gap="medium"), asked[left : left + 2], strict=False):
            with column:
                draw_one(path)


def group(title: str, *paths: str) -> None:
    """Draw a question and the fields that answer it."""
    st.subheader(title)
    draw(*paths)


def expert(*paths: str) -> None:
    """Draw the fields that only someone with a label or a calculation in hand can fill in, folded."""
    with st.expander("Expert values, from labels and calculations"):
        draw(*paths)


def folded(title: str, *paths: str) -> None:
    """Draw a question and its fields folded: worth a look on the spot, not needed for an answer."""
    with st.expander(title):
        draw(*paths)


def draw_one(path: str) -> None:
    """Draw one field."""
    info = field_at(path)
    with st.container(key=f"f_{slug(path)}", gap="xxsmall"):
        _DRAWERS[info.kind](path, info, _LABELS.get(path, info.label))
        if found := state.refused(path):
            is_amount = info.kind in ("amount", "aside")
            st.html(refused_html(found, shown_as(info)) if is_amount else fault_html(found.fault))


def refused_html(found: state.Refused, shown: Shown) -> str:
    """Return what was typed, why it was not taken and what to type, in the units on the screen."""
    wrong, remedy = refusal.refusal(found.fault, shown)
    return (
        f'<div class="fault" role="alert"><b>Not taken: “{escape(found.typed)}”.</b> {escape(wrong)} '
        f"{escape(remedy)}</div>"
    )


def _opening(problem: str) -> str:
    """Return what is wrong as the beginning of a sentence."""
    return f"The {escape(problem)}" if problem.startswith("unit ") else f"It {escape(problem)}"


def fault_html(fault: Fault, where: str = "") -> str:
    """Return what was read, what is allowed and what to do."""
    place = f"{escape(where)} " if where else ""
    return (
        f'<div class="fault" role="alert"><b>Not taken: {place}{escape(fault.got)}.</b> '
        f"{_opening(fault.problem)}. {escape(fault.remedy)}</div>"
    )


def _help(info: FieldInfo, label: str, rest: str = "") -> str:
    """Return the help of a field, with what the short forms in its label mean."""
    return " ".join(part for part in (info.help, short_words(label), rest) if part)


def _choice(path: str, info: FieldInfo, label: str) -> None:
    key = f"w_{slug(path)}"
    state.put(key, state.value(path))
    options = list(info.options)
    draw_options = st.pills if len(options) <= _MOST_PILLS else st.selectbox
    words = {option: option_words(info.path, option) for option in options}
    extra = {} if len(options) <= _MOST_PILLS else {"index": None, "placeholder": "Usual value"}
    draw_options(
        label,
        options,
        format_func=words.get,
        key=key,
        help=_help(info, label),
        on_change=_chosen,
        args=(path, key),
        **extra,
    )  # type: ignore[operator]
    is_beside = info.kind == "pick"
    _state_line(path, "" if is_beside else usual.choice_words(path, info, state_of(state.current_case(), path)))


def _chosen(path: str, key: str) -> None:
    option = st.session_state[key]
    if option is None:
        state.take_back(path)
    else:
        state.give(path, option, option)


def _amount(path: str, info: FieldInfo, label: str) -> None:
    key, shown = f"w_{slug(path)}", shown_as(info)
    state.put(key, _typed(path, shown))
    is_said = not shown.word or shown.word.lower() in label.lower()
    unit = "" if is_said else f" ({shown.word})"
    st.text_input(
        f"{label}{unit}",
        key=key,
        help=_help(info, label, "A range is welcome: type it as 8 (6 to 12)."),
        placeholder=usual.placeholder(path, shown),
        on_change=_entered,
        args=(path, key, shown),
        autocomplete="off",
    )
    with st.container(horizontal=True, wrap=False, vertical_alignment="center", gap="small"):
        _state_line(path, _amount_words(path, shown))
        _dont_know(path)
        _range(path, shown)


def _aside(path: str, info: FieldInfo, label: str) -> None:
    """Draw an amount that moves no number: it has no usual value, and nothing hangs on not knowing it."""
    key, shown = f"w_{slug(path)}", shown_as(info)
    state.put(key, _typed(path, shown))
    unit = f" ({shown.word})" if shown.word and shown.word.lower() not in label.lower() else ""
    st.text_input(
        f"{label}{unit}", key=key, help=info.help, on_change=_entered, args=(path, key, shown), autocomplete="off"
    )
    _state_line(path, "")


def _amount_words(path: str, shown: Shown) -> str:
    """Return what stands after the state's word, as HTML; beside a refused entry, the good value that is kept."""
    name = state_of(state.current_case(), path)
    if name != "yours" or not state.refused(path):
        return usual.amount_words(path, shown, name)
    value: Amount = state.value(path)
    return escape(entry.with_unit(entry.entry_text(value.low, value.likely, value.high, shown), shown))


def _typed(path: str, shown: Shown) -> str:
    if found := state.refused(path):
        return found.typed
    value: Amount | None = state.value(path)
    if value is None or value.is_unknown or not math.isfinite(value.likely):
        return ""
    return entry.entry_text(value.low, value.likely, value.high, shown)


def _entered(path: str, key: str, shown: Shown) -> None:
    typed = st.session_state[key] or ""
    read = entry.read_entry(typed, shown)
    if read is None:
        state.take_back(path)
    else:
        state.give(path, read, typed)


def _dont_know(path: str) -> None:
    is_unknown = state_of(state.current_case(), path) == "not_known"
    words = "Undo “I don't know”" if is_unknown else DONT_KNOW
    st.button(words, key=f"b_{slug(path)}", type="tertiary", on_click=_toggled, args=(path,))


def _toggled(path: str) -> None:
    is_unknown = state_of(state.current_case(), path) == "not_known"
    earlier = st.session_state.setdefault("before_dont_know", {})
    if not is_unknown:
        earlier[path] = state.value(path)
        state.give(path, NOT_KNOWN_TEXT)
    elif earlier.get(path) is not None:
        state.give(path, earlier.pop(path))
    else:
        state.take_back(path)


def _range(path: str, shown: Shown) -> None:
    name = slug(path)
    popover = st.popover("Range", type="tertiary", key=f"p_{name}", on_change="rerun")
    if not popover.open:
        return
    with popover:
        st.caption(f"Low, likely and high{f' in {shown.word}' if shown.word else ''}: the three you would believe.")
        keys = tuple(f"r_{name}_{part}" for part in ("low", "likely", "high"))
        for key, part in zip(keys, ("Low", "Likely", "High"), strict=True):
            st.text_input(part, key=key)
        st.button("Use this range", key=f"u_{name}", on_click=_ranged, args=(path, keys, shown))


def _ranged(path: str, keys: tuple[str, str, str], shown: Shown) -> None:
    low, likely, high = (str(st.session_state[key]).strip() for key in keys)
    typed = f"{likely} ({low} to {high})"
    state.give(path, entry.read_entry(typed, shown) or typed, typed)


def _text(path: str, info: FieldInfo, label: str) -> None:
    key = f"w_{slug(path)}"
    found = state.refused(path)
    state.put(key, found.typed if found else state.value(path) or "")
    usual_words = _USUAL_TEXTS.get(path, "")
    st.text_input(
        label,
        key=key,
        help=_help(info, label),
        placeholder=usual_words,
        on_change=_written,
        args=(path, key),
        autocomplete="off",
    )


def _written(path: str, key: str) -> None:
    typed = str(st.session_state[key]).strip()
    if typed:
        state.give(path, typed, typed)
    else:
        state.take_back(path)


def _state_line(path: str, words: str) -> None:
    name = state_of(state.current_case(), path)
    if state.refused(path):
        kept = f", {words}" if words else ""
        st.html(f'<div class="state refused"><b>not taken</b>: last good answer kept{kept}</div>')
        return
    word = _STATE_WORDS[name]
    if name == "usual" and field_at(path).kind in ("aside", "pick"):
        word = "not said"
    joint = " " if words.startswith("<") else ": "
    rest = f"{joint}{words}" if words else ""
    st.html(f'<div class="state {name}"><b>{word}</b>{rest}</div>')


_DRAWERS: Final = {"choice": _choice, "pick": _choice, "amount": _amount, "aside": _aside, "text": _text}
