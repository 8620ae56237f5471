"""Weather that no list has: an hourly file uploaded, or months typed in."""

import hashlib
import re
from collections.abc import Mapping, Sequence
from html import escape
from typing import Any, Final

import streamlit as st

from econ.case.months import LABELS, MONTHLY, Months
from econ.case.quantity import converted
from econ.kernel.errors import CaseError, EconError, Fault
from econ.store.connection import store_path
from econ.store.weather_files import keep, kept
from econ.tables.epw import SIZE_LIMIT_BYTE
from econ.tables.hourly import FIELD, hourly_year
from econ.ui import entry, fields, places, state

_UPLOAD: Final = "w_place_hourly_file"
_FAULT: Final = "hourly_file_fault"
_MONTHLY: Final = "place.monthly"
_MOST_MB: Final = SIZE_LIMIT_BYTE // 1_000_000
_TABLE_PX: Final = 457
"""Head and twelve rows without scrolling."""
_NAMES: Final = (
    *("January", "February", "March", "April", "May", "June", "July", "August"),
    *("September", "October", "November", "December"),
)
_POINT: Final = {"latitude_deg": "Latitude", "longitude_deg": "Longitude", "elevation_m": "Height above the sea"}
_CELL: Final = re.compile(r"place\.monthly\.(?P<name>\w+)(?:\[(?P<at>\d+)\])?")


def ask() -> None:
    """Offer an upload and a table of months, folded; say which is in use and let it go."""
    place = state.current_case().place
    in_use = "an hourly file" if place.hourly_file else "months you typed in" if place.monthly else ""
    if in_use:
        with st.container(horizontal=True, vertical_alignment="center", key="own_weather"):
            st.html(
                f'<p class="state yours">The weather is that of {in_use}{_file_words()}, not of a listed place.</p>'
            )
            st.button("Take the listed place instead", key="b_listed_weather", on_click=_drop)
    with st.expander("I have an hourly weather file (EPW)"):
        _upload()
    with st.expander("I have monthly figures of my place"):
        _months()


def _drop() -> None:
    """Leave own weather; with no listed place either, the town is asked for again."""
    place = state.current_case().place
    if place.station:
        places.take(place.station, place.town)
        return
    fallback = {} if place.town or place.latitude_deg is not None else {"station": state.NO_PLACE}
    state.replace(state.without_fields("place", ("hourly_file", "monthly"), fallback))


def _file_words() -> str:
    key = state.current_case().place.hourly_file
    if not key:
        return ""
    try:
        return f" ({escape(kept(store_path(), key)[0])})"
    except (KeyError, EconError):
        return " (which is not kept on this machine: upload it again)"


def _upload() -> None:
    st.caption(
        "One year of hours in the EPW format, 8,760 or 8,784 rows. It is kept beside your cases on this machine. "
        "Answers take about four times as long."
    )
    st.file_uploader("Hourly weather file", type=["epw"], key=_UPLOAD, on_change=_uploaded, max_upload_size=_MOST_MB)
    for fault in st.session_state.get(_FAULT, ()):
        st.html(fields.fault_html(fault, fault.path.removeprefix(f"{FIELD}, ")))


def _uploaded() -> None:
    """Keep the file if it can be read, and take it as the weather; else say what is wrong with it, line by line."""
    uploaded = st.session_state[_UPLOAD]
    st.session_state.pop(_FAULT, None)
    if uploaded is None:
        return
    content = uploaded.getvalue()
    try:
        hourly_year(content, uploaded.name)
        key = keep(store_path(), uploaded.name, content)
    except CaseError as error:
        st.session_state[_FAULT] = error.faults
        return
    except EconError as error:
        st.session_state[state.NOTICE] = f"Not kept: {error}"
        return
    state.give_all("place", {"hourly_file": key, "monthly": None}, FIELD)


def _months() -> None:
    st.caption(
        "The mean is enough; leave out a whole column that you do not know, and it is estimated and named. "
        "Sun is that of a mean day."
    )
    table = table_of(state.current_case().place.monthly or (), is_si=state.is_si())
    with st.form("months", border=False):
        _point()
        edited = _edited(table)
        if st.form_submit_button("Take these months as the weather", key="b_take_months"):
            _take(edited)
            st.rerun()
    if found := state.refused(_MONTHLY):
        st.html(fields.fault_html(found.fault, _where(found.fault.path)))


def _point() -> None:
    """Ask for the place on the map, seeded from the case."""
    place = state.current_case().place
    with st.container(horizontal=True):
        for name, label in _POINT.items():
            key, given = f"w_place_{name}", getattr(place, name)
            if given is not None and not given.is_unknown:
                st.session_state.setdefault(key, _in_screen_unit(name, given.likely))
            unit = f", {_height_unit()}" if name == "elevation_m" else ""
            st.number_input(f"{label}{unit}", value=None, key=key)


def _edited(table: dict[str, list[object]]) -> dict[str, list[object]]:
    """Draw the table; another case or unit begins another one."""
    config: dict[str, Any] = {name: st.column_config.NumberColumn() for name in table}
    config["Month"] = st.column_config.TextColumn(disabled=True)
    stamp = hashlib.sha256(repr(table).encode()).hexdigest()[:12]
    edited: dict[str, list[object]] = st.data_editor(
        table, key=f"w_months_{stamp}", hide_index=True, column_config=config, placeholder="-", height=_TABLE_PX
    )
    return edited


def _take(edited: Mapping[str, Sequence[object]]) -> None:
    point = {name: st.session_state[f"w_place_{name}"] for name in _POINT}
    if point["elevation_m"] is not None:
        point["elevation_m"] = f"{point['elevation_m']} {_height_unit()}"
    given = {name: value for name, value in point.items() if value is not None}
    monthly = written_of(edited, is_si=state.is_si())
    if not monthly:
        fault = Fault(f"{_MONTHLY}.mean_c", "must have a value for each month", "nothing", "Fill in the first column.")
        st.session_state[state.FAULTS][_MONTHLY] = state.Refused("", fault)
        return
    state.give_all("place", given | {"monthly": monthly, "hourly_file": None}, _MONTHLY)


def _height_unit() -> str:
    return "m" if state.is_si() else "ft"


def _in_screen_unit(name: str, value: float) -> float:
    return converted(value, "m", _height_unit()) if name == "elevation_m" else value


def _where(path: str) -> str:
    """Return which cell or field a fault is about, in the words of the table."""
    if found := _CELL.fullmatch(path):
        month = f", {_NAMES[int(found['at'])]}" if found["at"] else ""
        return f"{LABELS.get(found['name'], found['name'])}{month}:"
    return f"{_POINT.get(path.rpartition('.')[2], path)}:"


def table_of(monthly: Sequence[tuple[str, Months]], *, is_si: bool) -> dict[str, list[object]]:
    """Return monthly figures as columns by title, twelve cells each, in the units on the screen."""
    known = dict(monthly)
    columns: dict[str, list[object]] = {"Month": list(_NAMES)}
    for name in MONTHLY:
        values = known[name].values if name in known else (None,) * len(_NAMES)
        columns[_title(name, is_si=is_si)] = [_shown(name, value, is_si=is_si) for value in values]
    return columns


def written_of(columns: Mapping[str, Sequence[object]], *, is_si: bool) -> dict[str, list[object]]:
    """Return monthly figures as a case file writes them; columns without a single figure are left out."""
    written: dict[str, list[object]] = {}
    for name, measure in MONTHLY.items():
        cells = list(columns[_title(name, is_si=is_si)])
        if any(_is_given(cell) for cell in cells):
            unit = _unit(name, is_si=is_si)
            is_bare = unit == measure.unit
            written[name] = [
                (float(str(cell)) if is_bare else f"{cell} {unit}") if _is_given(cell) else None for cell in cells
            ]
    return written


def _is_given(cell: object) -> bool:
    return cell is not None and cell == cell  # noqa: PLR0124 - an empty number cell may come back as NaN


def _unit(name: str, *, is_si: bool) -> str:
    measure = MONTHLY[name]
    return measure.unit if is_si or not measure.us_unit else measure.us_unit


def _title(name: str, *, is_si: bool) -> str:
    unit = _unit(name, is_si=is_si)
    return f"{LABELS[name]}, {entry.SCREEN_UNITS.get(unit, unit)}"


def _shown(name: str, value: float | None, *, is_si: bool) -> float | None:
    if value is None:
        return None
    unit, shown = MONTHLY[name].unit, _unit(name, is_si=is_si)
    return value if unit == shown else round(converted(value, unit, shown), 2)
