"""The rooms file on screen: pasted, uploaded, generated or the sample; kept with the case, and what was refused."""

from html import escape
from typing import Final

import streamlit as st

from econ.case.rooms_columns import column_of
from econ.case.rooms_edit import with_cell, with_room
from econ.case.rooms_file import MOST_BYTES, RoomTable, decoded
from econ.case.rooms_out import help_rows, rows_text, template
from econ.case.schema import case_from, plain
from econ.case.section import SHEET_LIMIT
from econ.case.toml import read_case_file
from econ.evaluate.known import known_names
from econ.kernel.errors import CaseError, EconError, Fault
from econ.report.rooms import refused_csv
from econ.report.words import rooms as words
from econ.store.connection import store_path
from econ.store.weather_files import keep, kept
from econ.tables.hourly import KEPT_MARK
from econ.tables.place import data_root
from econ.ui import fields, look, state

PATH: Final = "building.rooms"
_BOX: Final = "w_building_rooms"
_UPLOAD: Final = "w_building_upload"
_MOST_IN_BOX: Final = 100_000
"""Letters that are kept in the case itself; a longer file is kept beside it."""

_MOST_MB: Final = MOST_BYTES // 1_000_000
_BOX_PX: Final = 220
_MOST_TRAY: Final = 200
_HOW: Final = (
    "One row a room. Only flat (unit), room, floor and a size or a type are needed; a blank cell takes what the type "
    "says, and ? says that nobody knows. Copy the cells of a sheet, headings and all, and paste them here."
)


def content() -> str | None:
    """Return the rooms file of the case; None where there is none, or where it is kept on another machine."""
    said = state.value(PATH)
    if not said or not said.startswith(KEPT_MARK):
        return str(said) if said else None
    try:
        return decoded(kept(store_path(), said)[1])[0]
    except (KeyError, EconError):
        st.warning("The rooms file of this case is kept on another machine: upload it again.")
        return None


def start() -> None:
    """Offer the ways to begin: the sample building, a file, or rooms filled in from counts."""
    with st.container(horizontal=True, gap="small"):
        st.button("Open the sample building", key="sample_building", type="primary", on_click=_sample)
        st.download_button(
            "Download the template", template(), file_name="rooms.csv", mime="text/csv", key="rooms_template"
        )
    _generated()


def ask(*, opened: bool) -> None:
    """Offer the box and the upload, with what each column takes."""
    with st.expander("The rooms: paste, upload or change", expanded=opened):
        st.caption(_HOW)
        _box()
        most_mb = min(_MOST_MB, int(st.get_option("server.maxUploadSize")))
        st.file_uploader(
            f"Or upload a file (CSV, at most {most_mb} MB)", type=["csv", "txt", "tsv"], key=_UPLOAD,
            on_change=_uploaded,
        )  # fmt: skip
        with st.popover("What goes into each column"):
            look.table({"Column": [row[0] for row in help_rows()], "What to write": [row[1] for row in help_rows()]})


def tray(read: RoomTable) -> None:
    """Say how many rows were taken, and show the others with what to type."""
    look.said(words.rows_sentence(read), kind="statement")
    for note in read.notes:
        st.caption(look.literal(note))
    for fault in read.faults:
        st.html(fields.fault_html(fault, f"{fault.path}:"))
    if not read.refused or read.faults:
        return
    with st.expander(f"Rows not taken: {len(read.refused):,}", expanded=True):
        shown = [(row, fault) for row in read.refused for fault in row.faults][:_MOST_TRAY]
        look.table(
            {
                "Where": [fault.path for _, fault in shown],
                "What was read": [fault.got for _, fault in shown],
                "What is wrong": [f"It {fault.problem}." for _, fault in shown],
                "What to type": [fault.remedy for _, fault in shown],
            }
        )
        st.download_button(
            "Download the rows not taken", refused_csv(read), file_name="rooms_not_taken.csv", mime="text/csv"
        )


def change(read: RoomTable) -> None:
    """Offer to add one room and to mark one, without touching the file by hand."""
    with st.expander("Add a room, or mark one"):
        _add()
        if read.n_room <= _MOST_TRAY:
            _mark(read)


def _add() -> None:
    """Ask for one room: flat, name, floor, and a size or a type."""
    keys = ("unit", "room", "floor", "size", "type")
    with st.form("rooms_add", border=False, clear_on_submit=True):
        columns = st.columns(len(keys))
        cells = {
            key: column.text_input(column_of(key).heading.capitalize(), key=f"w_add_{key}", help=column_of(key).help)
            for key, column in zip(keys, columns, strict=True)
        }
        if st.form_submit_button("Add this room"):
            take(with_room(content() or "", {key: cell.strip() for key, cell in cells.items() if cell.strip()}))
            st.rerun()


def _mark(read: RoomTable) -> None:
    """Ask which room must be done, must not, or neither."""
    rows = range(read.n_room)
    with st.form("rooms_mark", border=False):
        row = st.selectbox("Room", rows, format_func=lambda at: words.room_name(read, at), key="w_mark_room")
        mark = st.segmented_control("Mark", _MARKS, default=next(iter(_MARKS)), key="w_mark")
        if st.form_submit_button("Mark it") and mark is not None:
            take(with_cell(content() or "", read.line[row], "mark", _MARKS[mark]))
            st.rerun()


_MARKS: Final = {"Must be done": "must", "Must not be touched": "must not", "Neither": ""}


def _box() -> None:
    said, refused = state.value(PATH) or "", state.refused(PATH)
    is_beside = said.startswith(KEPT_MARK)
    state.put(_BOX, refused.typed if refused else "" if is_beside else said)
    place = "A long file is kept beside the case. Paste another to replace it." if is_beside else template()
    st.text_area("Rooms", key=_BOX, height=_BOX_PX, placeholder=place, on_change=_pasted)
    if refused:
        st.html(fields.fault_html(refused.fault))


def _pasted() -> None:
    typed = str(st.session_state[_BOX])
    if typed.strip():
        take(typed)
    elif not str(state.value(PATH) or "").startswith(KEPT_MARK):
        state.take_back(PATH)


def _uploaded() -> None:
    found = st.session_state[_UPLOAD]
    if found is None:
        return
    raw = found.getvalue()
    if len(raw) > MOST_BYTES:
        fault = Fault(PATH, f"must be at most {_MOST_MB} MB", f"{len(raw) / 1e6:.0f} MB", "Split it by building.")
        st.session_state[state.FAULTS][PATH] = state.Refused("", fault)
        return
    take(decoded(raw)[0], found.name)


def take(text: str, name: str = "pasted rooms") -> None:
    """Keep a rooms file with the case: in it where it is short, beside it where it is long."""
    if len(text) <= min(_MOST_IN_BOX, SHEET_LIMIT):
        state.give(PATH, text, text)
        return
    try:
        state.give(PATH, keep(store_path(), name, text.encode("utf-8", errors="replace")))
    except EconError as error:
        st.session_state[state.NOTICE] = f"Not kept: {error}"


def _sample() -> None:
    """Open the sample building as a case of its own."""
    folder = data_root() / "cases" / "buildings"
    tables = plain(read_case_file(folder / "small_building.toml", known_names()))
    rooms = (folder / "small_building.csv").read_text(encoding="utf-8")
    state.start_new(case_from({**tables, "building": {**tables["building"], "rooms": rooms}}, known_names()))


def _generated() -> None:
    """Offer to fill in rooms from counts."""
    with st.expander("Fill in rooms for me, from counts"), st.form("rooms_from_counts", border=False):
        columns = st.columns(3)
        asked = (("Floors", 3, 60), ("Flats on each floor", 3, 50), ("Rooms in each flat", 3, 12))
        floors, flats, rooms = (
            int(column.number_input(label, min_value=1, max_value=most, value=usual, step=1))
            for column, (label, usual, most) in zip(columns, asked, strict=True)
        )
        names = [room.name for room in state.current_case().rooms if room.name]
        kind = st.selectbox("Type of every room, for a start", names) if names else ""
        if st.form_submit_button("Fill in"):
            take(counted_rooms(floors, flats, rooms, str(kind or "")))
            st.rerun()


def counted_rooms(floors: int, flats: int, rooms: int, kind: str) -> str:
    """Return a rooms file with so many rooms, all of one type, or of a usual size where there is none."""
    head = ["unit", "room", "floor", "size (sq ft)", "type"]
    size = "" if kind else "150"
    rows = [
        [str((floor - 1) * flats + flat), f"Room {room}", str(floor), size, kind]
        for floor in range(1, floors + 1)
        for flat in range(1, flats + 1)
        for room in range(1, rooms + 1)
    ]
    return rows_text([head, *rows])


def first_fault(error: EconError) -> None:
    """Show why nothing could be worked out: what is wrong with the rows or, more seldom, with the case."""
    if not isinstance(error, CaseError):
        st.html(f'<div class="fault" role="alert">{escape(str(error))}</div>')
        return
    for fault in error.faults:
        st.html(fields.fault_html(fault, f"{fault.path}:"))
