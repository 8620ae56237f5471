"""Sketches of the screen side by side, to the width of a page."""

from math import isfinite

from econ.report.document.content.basis import Basis
from econ.report.document.content.said import is_said
from econ.report.document.drawing.axis import PAGE_WIDTH
from econ.report.document.drawing.from_svg import shapes_of
from econ.report.document.drawing.shape import Drawing, Shape, placed
from econ.report.sketch import site_plan
from econ.report.sketch import wall as wall_sketch
from econ.report.sketch.site_plan import SitePlan
from econ.report.sketch.wall_facts import WallDrawing

_LENGTHS = ("site.wall_thickness_m", "site.line_run_m", "kit.line_set_m", "site.line_rise_m", "site.outdoor_height_m")
_NEAR = {name: name for name in ("boundary_m", "gas_meter_m", "vents_m", "bedroom_window_m")} | {
    "back_m": "outdoor_back_m",
    "front_m": "outdoor_front_m",
}
"""Distances of the site plan, by the inputs that hold them: drawn only where they were given."""

MOST_HEIGHT = 210.0
GAP = 16.0


def wall_and_site(basis: Basis) -> Drawing | None:
    """Return the wall with the line set, and the site from above; None where a length they need is not known.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    units = basis.look.units
    lengths = [basis.number(path) for path in _LENGTHS if path in basis.answer.sheet.place]
    if len(lengths) < len(_LENGTHS) or not all(map(isfinite, lengths)):
        return None
    wall = WallDrawing(*lengths)
    plan = SitePlan(
        wall_sketch.true_reach_m(wall),
        basis.number("site.panel_distance_m"),
        **{name: basis.number(f"site.{path}") for name, path in _NEAR.items() if is_said(basis, f"site.{path}")},
    )
    drawings = shapes_of(wall_sketch.section(wall, units)), shapes_of(site_plan.plan_view(plan, units))
    return beside(drawings, "The wall with the line set, and the site from above")


def beside(drawings: tuple[Drawing, ...], title: str) -> Drawing:
    """Return drawings beside each other, each made as small as the page and the height ask for."""
    share = (PAGE_WIDTH - GAP * (len(drawings) - 1)) / sum(drawing.width for drawing in drawings)
    scale = min(share, MOST_HEIGHT / max(drawing.height for drawing in drawings), 1.0)
    shapes: list[Shape] = []
    left = 0.0
    for drawing in drawings:
        shapes += placed(drawing.shapes, (left, 0.0), scale)
        left += drawing.width * scale + GAP
    return Drawing(PAGE_WIDTH, scale * max(drawing.height for drawing in drawings), tuple(shapes), title)
