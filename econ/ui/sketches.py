"""Drawings of the room, the wall and the circuit, from the answers so far and the usual values."""

import math
from typing import Final

import streamlit as st

from econ.case.choices import CHOICES
from econ.report.sketch import circuit as circuit_sketch
from econ.report.sketch import room as room_sketch
from econ.report.sketch import wall as wall_sketch
from econ.report.sketch.room import COMPASS, RoomDrawing
from econ.report.sketch.wall import WallDrawing
from econ.ui import look, now, state, usual

_UNDRAWN: Final = "not_known"


def draw_room(index: int) -> None:
    """Draw plan and section of a room, once its size is known."""
    if (drawn := _room(index)) is None:
        return
    look.drawing("", room_sketch.description(drawn, state.units()))
    with st.container(horizontal=True, gap="medium"):
        for sketch, words in ((room_sketch.plan, "From above"), (room_sketch.section, "Cut through")):
            st.html(look.svg_image(sketch(drawn, state.units()), words, "drawing"), width="content")


def draw_wall() -> None:
    """Draw the wall and the line set to scale, once the lengths are known."""
    if (drawn := _wall()) is not None:
        look.drawing(wall_sketch.section(drawn, state.units()), wall_sketch.description(drawn, state.units()))


def draw_circuit() -> None:
    """Draw the circuit from panel to unit, what is known and what is not, once there is an answer."""
    if (answer := now.present().answer) is not None:
        drawn = circuit_sketch.circuit_drawing(answer.sheet)
        look.drawing(circuit_sketch.ladder(drawn, state.units()), circuit_sketch.description(drawn, state.units()))


def _room(index: int) -> RoomDrawing | None:
    at = f"rooms[{index}]."
    area, height = usual.number(f"{at}floor_area_m2"), usual.number(f"{at}ceiling_height_m")
    if area is None or height is None:
        return None
    return RoomDrawing(
        name=state.value(f"{at}name") or f"Room {index + 1}",
        floor_area_m2=area,
        length_m=usual.number(f"{at}length_m") or math.sqrt(area),
        ceiling_height_m=height,
        sides=tuple(usual.option(f"{at}{side}") or _UNDRAWN for side in COMPASS),  # type: ignore[arg-type]
        windows_m2=tuple(usual.number(f"{at}window_{side}_m2") or 0.0 for side in COMPASS),  # type: ignore[arg-type]
        earth_depth_m=usual.number(f"{at}earth_depth_m") or 0.0,
        above=usual.option(f"{at}above") or _UNDRAWN,
        below=usual.option(f"{at}below") or _UNDRAWN,
        turned_deg=_turned_deg(usual.option(f"{at}north_faces")),
    )


def _turned_deg(faces: str | None) -> float:
    """Return the azimuth of a compass face; north where nothing is known."""
    options = CHOICES["rooms[].north_faces"][:-1]
    return 45.0 * options.index(faces) if faces in options else 0.0


def _wall() -> WallDrawing | None:
    names = ("site.wall_thickness_m", "site.line_run_m", "kit.line_set_m", "site.line_rise_m", "site.outdoor_height_m")
    lengths = [usual.number(name) for name in names]
    known = [length for length in lengths if length is not None]
    if len(known) < len(names):
        return None
    return WallDrawing(*known)
