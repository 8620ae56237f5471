"""Drawings of the room, the wall, the site and the circuit, from the answers so far and the usual values."""

import math
from typing import Final

import streamlit as st

from econ.case.choices import CHOICES
from econ.report.sketch import circuit as circuit_sketch
from econ.report.sketch import hole, site_plan, wall_facts
from econ.report.sketch import room as room_sketch
from econ.report.sketch import wall as wall_sketch
from econ.report.sketch.room import COMPASS, RoomDrawing
from econ.report.sketch.site_plan import SitePlan
from econ.report.sketch.wall_facts import WallDrawing
from econ.ui import look, now, state, usual

_UNDRAWN: Final = "not_known"
_UNCORED: Final = ("wood_frame", "")
"""Walls that a hole saw passes."""


def draw_room(index: int) -> None:
    """Draw plan and section of a room, once its size is known."""
    if (drawn := _room(index)) is None:
        return
    look.drawing("", room_sketch.description(drawn, state.units()))
    with st.container(horizontal=True, gap="medium"):
        for sketch, words in ((room_sketch.plan, "From above"), (room_sketch.section, "Cut through")):
            st.html(look.svg_image(sketch(drawn, state.units()), words, "drawing"), width="content")


def draw_wall() -> None:
    """Draw wall, lines, hole and site to scale, once the lengths are known: what fits, what does not, what would."""
    if (drawn := _wall()) is None:
        return
    units = state.units()
    look.drawing("", wall_facts.description(drawn, units))
    for sentence in wall_facts.fit_sentences(drawn, units):
        look.said(sentence, kind="fits")
    with st.container(horizontal=True, gap="medium"):
        for svg, words in (
            (wall_sketch.section(drawn, units), wall_facts.description(drawn, units)),
            (hole.detail(drawn, units), hole.statement(drawn, units)),
        ):
            st.html(look.svg_image(svg, words, "drawing"), width="content")
    with st.expander("Show as a table"):
        look.table(wall_facts.table(drawn, units))


def draw_site() -> None:
    """Draw the outdoor unit from above with what is near it, once the lengths are known."""
    drawn, panel = _wall(), usual.number("site.panel_distance_m")
    if drawn is None or panel is None:
        return
    plan = SitePlan(
        along_m=wall_sketch.true_reach_m(drawn),
        panel_m=panel,
        back_m=_length("site.outdoor_back_m"),
        front_m=_length("site.outdoor_front_m"),
        boundary_m=_length("site.boundary_m"),
        gas_meter_m=_length("site.gas_meter_m"),
        vents_m=_length("site.vents_m"),
        bedroom_window_m=_length("site.bedroom_window_m"),
    )
    look.drawing(site_plan.plan_view(plan, state.units()), site_plan.statement(plan, state.units()))
    with st.expander("Show as a table", key="x_site"):
        look.table(site_plan.table(plan, state.units()))


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
    thickness, run, box, rise, height = map(_length, names)
    if not all(map(math.isfinite, (thickness, run, box, rise, height))):
        return None
    is_cored = usual.option("site.wall") not in _UNCORED
    is_extended = usual.option("kit.extension_allowed") == "yes"
    return WallDrawing(
        wall_thickness_m=thickness,
        line_run_m=run,
        line_set_m=box,
        line_rise_m=rise,
        outdoor_height_m=height,
        bite_m=_length("costs.core_bite_m") if is_cored else math.nan,
        rise_limit_m=_length("kit.rise_max_m"),
        extension_m=_length("kit.extension_m") if is_extended else 0.0,
        head_above_m=_length("site.head_above_m"),
        head_beside_m=_length("site.head_beside_m"),
    )


def _length(path: str) -> float:
    """Return the likely length of a path; NaN where nobody has measured it or the case does not ask."""
    found = usual.number(path)
    return math.nan if found is None else found
