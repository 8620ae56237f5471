"""The permit office's sheet: one page on the work, who does it, the label, the circuit and the site; no money."""

import numpy as np

from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import PARTIES, Party
from econ.report.document.block import Blanks, Block, Frame, Heading, Picture, Sentence, Tone
from econ.report.document.content import said
from econ.report.document.content.basis import Basis, short
from econ.report.document.content.sketches import wall_and_site
from econ.report.numbers import listed

ELECTRICAL = ("circuit", "cable", "final_connection")
"""Tasks that are electrical work."""

DRAWN = "Drawn to scale from what is known so far; lengths that were not given are usual ones. Check them on the spot."
SKETCH_HEIGHT = 90.0


def permit_sheet(basis: Basis) -> list[Block]:
    """Return the sheet.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    return [
        Heading("Work for which a permit is asked", 1),
        Sentence("An empty line is not known to the program: fill it in by hand.", Tone.SMALL),
        _people(basis),
        _label(basis),
        _site(basis),
        *([Picture(DRAWN, drawn)] if (drawn := wall_and_site(basis)) else []),
        Frame("Site from above: house, outdoor unit, boundary, windows, meter, walkway, with distances", SKETCH_HEIGHT),
        Blanks((("Permit no., date", ""), ("Inspected, by, date", ""))),
    ]


def _people(basis: Basis) -> Blanks:
    way = basis.work_way
    return Blanks(
        (
            ("Work", f"One ductless heat pump: indoor unit, line set, outdoor unit ({way.capability.label})"),
            ("Address and parcel", short(basis.answer.case.paper.address or "", 90)),
            ("Owner, phone", ""),
            ("Who lives there", said.option(basis, "site.occupancy")),
            ("Hangs and connects it; licence no.", _who(way, is_electrical=False)),
            ("Does the electrical work; licence no.", _who(way, is_electrical=True)),
        )
    )


def _label(basis: Basis) -> Blanks:
    """Return what the labels of the unit and of the circuit say, as far as they were read."""
    return Blanks(
        (
            ("Supply; minimum circuit (MCA)", _joined(_volts(basis), said.amperes(basis, "kit.mca_a"))),
            ("Largest breaker (MOP), from the label", said.amperes(basis, "kit.mop_a")),
            ("Circuit; breaker; wire", _circuit(basis)),
            ("Panel to outdoor unit; switch in sight", _joined(said.length(basis, "site.panel_distance_m"), "")),
            ("Refrigerant; charge, from the label", _joined(said.option(basis, "kit.refrigerant"), "")),
        )
    )


def _site(basis: Basis) -> Blanks:
    """Return the wall, the outdoor unit's place and its distances, as far as they were given."""
    wall = _joined(said.option(basis, "site.wall"), said.thickness(basis, "site.wall_thickness_m"))
    stand = _joined(said.option(basis, "site.outdoor_place"), said.length(basis, "site.outdoor_height_m"))
    near = [said.length(basis, f"site.{name}_m") for name in ("boundary", "bedroom_window", "gas_meter", "vents")]
    return Blanks(
        (
            ("Wall and its thickness", wall),
            ("Outdoor unit stands on; height", stand),
            ("To the boundary; to a window", _joined(*near[:2])),
            ("To a gas meter; to a vent or flue", _joined(*near[2:])),
            ("Condensate drain ends at", ""),
        )
    )


def _who(way: AlternativeResult, *, is_electrical: bool) -> str:
    """Return who does the electrical work, or all other work, with a line for the licence."""
    plan = way.schedule
    parties = {
        PARTIES[int(plan.party[0, task])]
        for task in np.flatnonzero(plan.is_active[0])
        if (plan.task[task] in ELECTRICAL) is is_electrical and not plan.task[task].startswith("book_")
    }
    words = {
        Party.SELF: "the owner",
        Party.HELPER: "a helper",
        Party.ELECTRICIAN: "a licensed electrician, no. __________",
        Party.CONTRACTOR: "a contractor, no. __________",
    }
    return listed([words[party] for party in PARTIES if party in parties])


def _volts(basis: Basis) -> str:
    volts = said.option(basis, "kit.volts")
    return f"{volts} V" if volts else ""


def _circuit(basis: Basis) -> str:
    wire = said.option(basis, "site.conductor")
    gauge = f"{wire} gauge copper" if wire.isdigit() else ""
    return _joined(said.option(basis, "site.circuit"), said.amperes(basis, "site.breaker_a"), gauge)


def _joined(*parts: str) -> str:
    """Return what is known of several things in one line, a short blank for what is not; empty where nothing is."""
    return "; ".join(part or "________" for part in parts) if any(parts) else ""
