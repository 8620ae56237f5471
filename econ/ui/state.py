"""The case that is open in this browser tab: read, changed, saved on every change, restored after a reload."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

import streamlit as st

from econ.case.edit import value_at, with_fields, with_value, without_value
from econ.case.schema import Case, case_from
from econ.evaluate.known import known_names
from econ.kernel.errors import CaseError, EconError, Fault
from econ.report.numbers import UnitSystem
from econ.report.style import Theme
from econ.store.cases import SavedCase
from econ.store.failure import StoreConflict
from econ.ui import shelf

CASE: Final = "case"
SAVED: Final = "saved"
UNITS: Final = "unit_system"
FAULTS: Final = "faults"
CONFLICT: Final = "conflict"
NOTICE: Final = "notice"
GREETING: Final = "opened_last"
"""Whether the case on screen was opened unasked, as the one last worked on."""

MISSING: Final = "missing_case"
"""Address of a case that the link names and that is not here."""

OWN_COPY: Final = "This is your own copy from here on; the case shown to you stays as it is."

_ADDRESS_LENGTH: Final = 32
"""Longest address that is repeated on screen."""

UNSAVED: Final = "last_change_is_not_saved"
LENT: Final = "lent_case"
"""Whether the open case is somebody else's, lent by a link to read; a change goes into a copy of one's own."""

PAGE: Final = "page_drawn"
TURNED: Final = "is_page_turned"
"""Which page is drawn, and whether another was drawn before it."""

NO_PLACE: Final = ""
"""What stands for the town until one is chosen: the only answer that has no usual value."""


@dataclass(frozen=True, slots=True)
class Refused:
    """Something typed that was not taken.

    Attributes
    ----------
    typed : str
        What stands in the field.
    fault : Fault
        Why, what is allowed and what to do.
    """

    typed: str
    fault: Fault


def blank_case() -> Case:
    """Return a case with nothing answered, not even the town."""
    return case_from({"place": {"station": NO_PLACE}, "rooms": [{}]})


def open_case() -> None:
    """Put a case into the session: that of the address, blank where it is not here; else the one last worked on."""
    session = st.session_state
    if CASE not in session:
        session[FAULTS] = {}
        if notice := shelf.begun():
            session[NOTICE] = notice
        session[SAVED], session[CASE] = _restored() or (None, blank_case())
    session.setdefault(UNITS, UnitSystem.US)
    if session[SAVED] is not None and "share" not in st.query_params:
        st.query_params["case"] = session[SAVED].address


def _restored() -> shelf.Opened | None:
    if token := st.query_params.get("share"):
        return _lent(token)
    address = st.query_params.get("case")
    try:
        found = shelf.addressed(address) if address else shelf.last()
    except EconError as error:
        st.session_state[NOTICE] = str(error)
        return None
    st.session_state[GREETING] = found is not None and not address
    if address and found is None and NOTICE not in st.session_state:
        st.session_state[MISSING] = address if address.isalnum() and len(address) <= _ADDRESS_LENGTH else "of this link"
        st.query_params.pop("case", None)
    return found


def _lent(token: str) -> shelf.Opened | None:
    found = shelf.shared(token)
    if found is None:
        st.session_state[MISSING] = "of this link"
        st.query_params.pop("share", None)
        return None
    opened, may_edit = found
    st.session_state[LENT] = not may_edit
    return opened


def current_case() -> Case:
    """Return the open case."""
    case: Case = st.session_state[CASE]
    return case


def is_placed() -> bool:
    """Return whether a town is chosen, so that there is an answer."""
    place = current_case().place
    return bool(place.station or place.hourly_file or place.monthly or place.town) or place.latitude_deg is not None


def give(path: str, value: object, typed: str = "") -> None:
    """Set one value and save; keep what was typed beside its fault where it is refused."""
    is_checked = is_placed() or path == "place.station"
    try:
        case = with_value(current_case(), path, value, known_names() if is_checked else None)
    except CaseError as error:
        st.session_state[FAULTS][path] = Refused(typed, error.faults[0])
        return
    replace(case, path)


def give_all(section: str, values: Mapping[str, object], path: str) -> bool:
    """Set several fields of one section at once and save; where they are refused, keep why beside a path."""
    try:
        case = with_fields(current_case(), section, values, known_names())
    except CaseError as error:
        st.session_state[FAULTS][path] = Refused("", error.faults[0])
        return False
    replace(case, path, *(f"{section}.{name}" for name in values))
    return True


def move(step: shelf.Move) -> None:
    """Undo or redo one change; where another tab was first, its version is shown."""
    session = st.session_state
    if (stands := session[SAVED]) is None or is_lent():
        return
    try:
        show_saved(*step(stands))
    except StoreConflict:
        show_saved(*shelf.as_it_stands(stands.case_id))
    except EconError as error:
        session[NOTICE] = str(error)


def take_back(path: str) -> None:
    """Leave one value to its usual again, and save."""
    replace(without_value(current_case(), path), path)


def without_fields(section: str, names: Sequence[str], fallback: Mapping[str, object]) -> Case:
    """Return the open case with some fields of a section left out, and others set instead."""
    return with_fields(current_case(), section, {**dict.fromkeys(names), **fallback})


def replace(case: Case, *paths: str) -> None:
    """Take a changed case and save it before anything is drawn again."""
    session = st.session_state
    for path in paths:
        session[FAULTS].pop(path, None)
    if case == session[CASE]:
        return
    _settle()
    session[CASE] = case
    if is_lent():
        _part()
        session[SAVED], session[NOTICE] = (
            None,
            "This is your own copy from here on; the case shown to you stays as it is.",
        )
    try:
        session[SAVED] = shelf.saved(session[SAVED], case)
        session.pop(UNSAVED, None)
    except StoreConflict as conflict:
        session[CONFLICT] = conflict
    except EconError as error:
        session[UNSAVED] = True
        session[NOTICE] = f"Not saved: {error} Until it is, keep the case as a file (page Saved)."


def link_query() -> dict[str, str]:
    """Return what an address within the dashboard needs to find the open case."""
    names = ("share",) if "share" in st.query_params else ("case",)
    return {name: st.query_params[name] for name in names if name in st.query_params}


def is_lent() -> bool:
    """Return whether the open case is somebody else's, to read."""
    return bool(st.session_state.get(LENT))


def _part() -> None:
    """Leave a case that a link opened."""
    st.session_state.pop(LENT, None)
    st.query_params.pop("share", None)


def show_saved(saved: SavedCase, case: Case) -> None:
    """Open another saved case, or another version of this one."""
    session = st.session_state
    session[SAVED], session[CASE], session[FAULTS] = saved, case, {}
    _part()
    _settle()
    session.pop(CONFLICT, None)


def start_new(case: Case | None = None) -> None:
    """Begin a case that is not saved yet; its first change saves it."""
    session = st.session_state
    session[SAVED], session[CASE], session[FAULTS] = None, case or blank_case(), {}
    _part()
    _settle()
    session.pop(CONFLICT, None)
    st.query_params.pop("case", None)
    if case is not None:
        session[SAVED] = shelf.saved(None, case)


def _settle() -> None:
    """Stop speaking of how the case came to be open: the user has gone on."""
    for key in (GREETING, MISSING):
        st.session_state.pop(key, None)


def value(path: str) -> Any:
    """Return what the user set at a path, or None."""
    return value_at(current_case(), path)


def turn_to(page: str) -> None:
    """Note which page is drawn; a field that another page drew under the same key is a field of its own."""
    st.session_state[TURNED] = st.session_state.get(PAGE) != page
    st.session_state[PAGE] = page


def put(key: str, value: object) -> None:
    """Set what a widget shows; where it shows that already, leave it, so that nothing half typed is overwritten."""
    session = st.session_state
    if session[TURNED] or key not in session or session[key] != value:
        session[key] = value


def refused(path: str) -> Refused | None:
    """Return what was typed and not taken at a path."""
    found: Refused | None = st.session_state[FAULTS].get(path)
    return found


def is_si() -> bool:
    """Return whether the screen shows SI units; the case is never changed by it."""
    return units() is UnitSystem.SI


def units() -> UnitSystem:
    """Return the units on screen."""
    return UnitSystem(st.session_state.get(UNITS, UnitSystem.US))


def theme() -> Theme:
    """Return the ground the browser shows, light where it does not say."""
    return Theme.DARK if st.context.theme.type == "dark" else Theme.LIGHT
