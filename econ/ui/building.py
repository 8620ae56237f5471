"""Many rooms on screen: worked out with a bar and a way to stop, the floors as tiles, the plan as tables."""

import hashlib
import threading
from collections import OrderedDict
from collections.abc import Callable
from datetime import date
from html import escape
from typing import Final, Generic, TypeVar

import streamlit as st

from econ.case.schema import Case, plain
from econ.case.toml import inputs_text
from econ.evaluate.version import RESULTS_VERSION
from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.portfolio.building import usual
from econ.portfolio.picks import NEVER
from econ.portfolio.plan import GEOMETRY, Evaluated, evaluated, planned, with_options
from econ.report import rooms as told_rooms
from econ.report.numbers import plain_number
from econ.report.rooms import Told
from econ.report.style import MARKS, NAMES, colour
from econ.report.words import rooms as words
from econ.ui import cached, look, state

MANY: Final = 1_000
"""Rooms from which they are worked out only when asked to, with a bar and a way to stop."""

_MOST_KEPT: Final = 6
_MOST_TILES: Final = 240
_GO: Final = "rooms_go"


Found = TypeVar("Found")


class _Kept(Generic[Found]):
    """What was worked out before, by what went in; shared by all sessions."""

    def __init__(self) -> None:
        self._found: OrderedDict[str, Found] = OrderedDict()
        self._lock = threading.Lock()

    def get(self, key: str) -> Found | None:
        """Return what was found before, or None."""
        with self._lock:
            return self._found.get(key)

    def put(self, key: str, found: Found) -> None:
        """Keep what was found; the oldest goes."""
        with self._lock:
            self._found[key] = found
            while len(self._found) > _MOST_KEPT:
                self._found.popitem(last=False)


@st.cache_resource(show_spinner=False)
def _kept() -> _Kept[Evaluated]:
    return _Kept()


@st.cache_resource(show_spinner=False)
def _kept_plans() -> _Kept[Told]:
    return _Kept()


def told_of(case: Case, text: str) -> Told | None:
    """Return the plan of the rooms as they are, with all that is told of it; None while many rooms wait.

    Raises
    ------
    CaseError
        If no row can be taken.
    """
    found = worked_out(case, text)
    if found is None:
        return None
    said = {name: value for name, value in plain(case).get("building", {}).items() if name != "rooms"}
    key = hashlib.sha256(f"{_key(case, text)}{sorted(said.items())!r}".encode()).hexdigest()
    told = _kept_plans().get(key)
    if told is None:
        tables = cached.tables_for(case)
        told = Told(planned(with_options(found, case, tables), case), case, tables)
        _kept_plans().put(key, told)
    return told


def _key(case: Case, text: str) -> str:
    geometry = {name: value for name, value in plain(case).get("building", {}).items() if name in GEOMETRY}
    day = case.place.decision_date or date.today().isoformat()
    parts = (inputs_text(case), text, repr(geometry), cached.tables().fingerprint, str(RESULTS_VERSION), day)
    return hashlib.sha256("\0".join(parts).encode("utf-8", errors="replace")).hexdigest()


def worked_out(case: Case, text: str) -> Evaluated | None:
    """Return every room of a file, evaluated; None while many rooms wait to be asked for.

    Raises
    ------
    CaseError
        If no row can be taken.
    """
    key = _key(case, text)
    found = _kept().get(key)
    count = text.count("\n")
    if found is None and count > MANY and st.session_state.get(_GO) != key:
        st.button(f"Work out about {count:,} rooms", type="primary", key="rooms_work_out", on_click=_go, args=(key,))
        return None
    if found is None:
        found = evaluated(text, case, cached.tables_for(case), date.today(), _bar(count) if count > MANY else None)
        _kept().put(key, found)
        if count > MANY:
            st.rerun()
    return found


def _go(key: str) -> None:
    st.session_state[_GO] = key


def _bar(count: int) -> Callable[[int, int], None]:
    """Return what moves a bar; a tap on the button beside it ends the run at its next step."""
    bar = st.progress(0.0, text=f"0 of about {count:,} rooms")
    st.button("Stop", key="rooms_stop", on_click=_go, args=("",))

    def moved(done: int, of: int) -> None:
        bar.progress(min(done / of, 1.0), text=f"{done:,} of {of:,} rooms")

    return moved


def tiles(told: Told) -> None:
    """Show the floors of each building, a tile a room: what is done there, as a sign, a word and a colour."""
    if told.options.n_room > _MOST_TILES:
        st.caption(f"The picture of floors is drawn for up to {_MOST_TILES} rooms; the table below holds all.")
        return
    for building, name in enumerate(told.plan.rooms.where.building_name):
        rows = [row for row in range(told.options.n_room) if told.plan.rooms.where.building[row] == building]
        if name:
            st.subheader(name)
        floors = sorted({int(told.table.number["floor"][row]) for row in rows}, reverse=True)
        st.html("".join(_floor(told, floor, rows) for floor in floors))


def _floor(told: Told, floor: int, rows: list[int]) -> str:
    here = [row for row in rows if int(told.table.number["floor"][row]) == floor]
    flats = list(dict.fromkeys(int(told.plan.rooms.where.flat[row]) for row in here))
    boxes = [
        f'<div class="flat"><p class="small">Flat {escape(told.table.text["unit"][first])}</p><div class="rooms">'
        f"{''.join(_tile(told, row) for row in inside)}</div></div>"
        for inside in ([row for row in here if told.plan.rooms.where.flat[row] == flat] for flat in flats)
        for first in inside[:1]
    ]
    return (
        f'<div class="floor"><p class="small"><b>Floor {floor}</b></p><div class="flats">{"".join(boxes)}</div></div>'
    )


def _tile(told: Told, row: int) -> str:
    way = ALTERNATIVES[int(told.plan.picks.way[row])]
    year = told.year(row)
    hot = f"{plain_number(float(told.column['too_hot_h'][row]))} h too hot"
    was = plain_number(float(told.options.too_hot_h[row, KEEP]))
    said = NAMES[way] if year is None else f"{NAMES[way]}, {year}"
    mark = f" · {told.table.text['mark'][row].replace('_', ' ')}" if told.table.text["mark"][row] else ""
    late = " later" if told.plan.picks.year[row] not in (0, NEVER) else ""
    return (
        f'<div class="spot{late}" style="border-color: {colour(way, state.theme())}">'
        f"<p><b>{escape(told.table.text['room'][row])}</b>{escape(mark)}</p>"
        f'<p style="color: {colour(way, state.theme())}"><span aria-hidden="true">{MARKS[way].glyph}</span> '
        f'{escape(said)}</p><p class="small">{hot} (now {was})</p></div>'
    )


def tables(told: Told) -> None:
    """Show the plan room by room, sortable, by flat."""
    st.subheader("Room by room")
    names = told.plan.rooms.where.flat_name
    only = st.multiselect("Only these flats", range(len(names)), format_func=lambda at: names[at], key="rooms_flats")
    whole = told_rooms.table(told)
    rows = [row for row in range(told.options.n_room) if not only or told.plan.rooms.where.flat[row] in only]
    columns = {title: [cells[row] for row in rows] for title, cells in whole.items()}
    most = {title: max([1.0, *(float(each) for each in whole[title])]) for title in _BARS}
    st.dataframe(
        columns, hide_index=True, key="t_rooms",
        column_config={
            title: st.column_config.ProgressColumn(title, min_value=0.0, max_value=most[title], format="%.0f")
            for title in _BARS
        } | {"Year": st.column_config.NumberColumn("Year", format="%d")},
    )  # fmt: skip
    st.download_button(
        "Download the plan (CSV)", ("\ufeff" + told_rooms.out_csv(told)).encode(), file_name="rooms_plan.csv",
        mime="text/csv", key="rooms_out",
    )  # fmt: skip


_BARS: Final = ("Cash, $", "Hours too hot now", "Then", "Need for cooling, kWh")


def panels(told: Told) -> None:
    """Say what each flat's panel is asked to take, where anybody said what it has to spare."""
    found = told_rooms.panels_table(told)
    if found["Flat"]:
        with st.expander("Panels"):
            look.table(found)


def outdoor(told: Told) -> None:
    """Set one outdoor unit for a flat against one a room, where there is anything to set."""
    found = told_rooms.outdoor_table(told)
    if found["Flat"]:
        with st.expander("One outdoor unit for a whole flat"):
            st.caption("Hired out, by our own line items, any quote left aside; permits and travel once a flat.")
            look.table(found)


def closed(told: Told) -> None:
    """List the ways that are closed, each with its reason and in how many rooms, where any is."""
    found = told_rooms.closed_table(told)
    if found["Way"]:
        with st.expander("Ways that are closed, and why"):
            look.table(found)


def assumed() -> None:
    """Show the usual figures of a building, each with its range and source."""
    rows = cached.tables().building
    look.table(
        {
            "Figure": [key.replace("_", " ") for key in rows.keys],
            "Low": [f"{usual(cached.tables(), key).low:g}" for key in rows.keys],
            "Likely": [f"{usual(cached.tables(), key).likely:g}" for key in rows.keys],
            "High": [f"{usual(cached.tables(), key).high:g}" for key in rows.keys],
            "Unit": [rows[key].text("unit").replace("dimensionless", "") for key in rows.keys],
            "Source": [rows[key].text("source") for key in rows.keys],
        }
    )


def types_sentence(case: Case, told: Told | None) -> str:
    """Return the room types of the case, and how many rows are of each."""
    return words.types_sentence([room.name or "" for room in case.rooms], told.table.text["type"] if told else ())
