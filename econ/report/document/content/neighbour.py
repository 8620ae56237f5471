"""The neighbour's sheet: where the unit stands, how loud it may be, where the water goes, which days; no money."""

from math import isfinite

import numpy as np

from econ.equipment.sound import WALL_GAIN_DB, level_db
from econ.report.document.block import Blanks, Block, Frame, Heading, Sentence, Tone
from econ.report.document.content import said
from econ.report.document.content.basis import Basis, short
from econ.report.document.content.plan import tasks_of
from econ.report.numbers import Quantity, plain_number

OUTDOORS = ("wall_hole", "set_on_pad", "set_on_bracket", "set_on_roof", "line_set", "put_in")
"""Tasks that are seen or heard from outside."""

SOUND = "kit.outdoor_sound_db"
WINDOW = "site.bedroom_window_m"


def neighbour_sheet(basis: Basis) -> list[Block]:
    """Return the sheet.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    return [
        Heading("A unit outside, near you", 1),
        Sentence(
            "We are putting in a heat pump for one part of our home. This sheet says what you may see and hear. "
            "An empty line is still open: ask us, and we fill it in together.",
        ),
        Blanks(
            (
                ("From", short(basis.answer.case.paper.address or "", 90)),
                ("Phone, for anything that bothers you", ""),
                ("Where it will stand", said.option(basis, "site.outdoor_place")),
                ("Height above ground", said.length(basis, "site.outdoor_height_m")),
                ("From it to the boundary", said.length(basis, "site.boundary_m")),
                ("From it to a bedroom window", said.length(basis, WINDOW)),
                ("Its size, from the data sheet", ""),
                ("Its weight", said.span(basis, "kit.outdoor_kg", "kg", Quantity.WEIGHT)),
                ("Sound near it", said.span(basis, SOUND, "dB")),
                ("Sound at that window", sound_at_window(basis)),
                ("How its water leaves; ends at", drain(basis)),
                ("Days of work outside", days_outside(basis)),
                ("Drilling, about how long and when", ""),
            )
        ),
        Sentence(
            "Sound at the window is worked out for open ground: 6 dB less at each doubling of the distance, up to "
            f"{plain_number(WALL_GAIN_DB)} dB more where a wall stands behind the unit. It is a guide, not a "
            "measurement. Local rules on noise come first.",
            Tone.SMALL,
        ),
        Frame("Sketch: house, unit, boundary, your windows", 150.0),
        Blanks((("What you would like otherwise", ""), ("", ""), ("Agreed, date", ""))),
    ]


def drain(basis: Basis) -> str:
    """Return how the unit's water leaves, with a line for where it ends; empty where that is open too."""
    way = {"gravity": "it runs downhill", "pump": "it is pumped"}.get(said.option(basis, "site.drain"), "")
    return f"{way}; ________" if way else ""


def sound_at_window(basis: Basis) -> str:
    """Return the range of the sound level at the window whose distance was given; empty where it was not."""
    if not said.is_said(basis, WINDOW) or SOUND not in basis.answer.sheet.place:
        return ""
    near, far = basis.answer.sheet.entry(SOUND).spread, basis.answer.sheet.entry(WINDOW).spread
    low = float(level_db(np.asarray(near.low), np.asarray(far.high)))
    high = float(level_db(np.asarray(near.high), np.asarray(far.low))) + WALL_GAIN_DB
    return f"{plain_number(low)} to {plain_number(high)} dB" if isfinite(low) and isfinite(high) else ""


def days_outside(basis: Basis) -> str:
    """Return from when to when there is work outside; empty where there is none."""
    way = basis.work_way
    plan, tasks = way.schedule, [task for task in tasks_of(way) if way.schedule.task[task] in OUTDOORS]
    if not tasks:
        return ""
    first, last = (basis.look.day(float(day)) for day in (plan.start_d[0, tasks].min(), plan.finish_d[0, tasks].max()))
    return first if first == last else f"between {first} and {last}"
