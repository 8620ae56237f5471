"""What drawings of the wall and the lines need to know, and in words what fits, what does not and what would."""

from dataclasses import dataclass
from math import ceil, isfinite, isnan
from typing import Final

from econ.report.numbers import Quantity, UnitSystem, plain_number, shown, symbol, tenths
from econ.report.pictures.frame import Columns

NOT_KNOWN_M: Final = float("nan")

FALL_M_PER_M: Final = 1.0 / 48.0
"""m of fall per m of hole toward the outside, a quarter inch in a foot: common practice, no source."""

_TO_TENTHS: Final = 10.0
_LEVEL_M: Final = 0.05
"""Lengths from here on are told whole; units less apart than this are level."""

FALL_WORDS: Final = {UnitSystem.US: "a quarter inch in a foot", UnitSystem.SI: "2 cm in a metre"}

LOOP_M: Final = 0.3
"""m of line left over that is worth a word on what to do with it. Assumption."""


@dataclass(frozen=True, slots=True)
class WallDrawing:
    """What the drawings need to know of the wall and the way of the lines; NaN where not known.

    Attributes
    ----------
    wall_thickness_m : float
        Wall to be passed. [m]
    line_run_m, line_set_m : float
        Length of line needed, and length in the box. [m]
    line_rise_m : float
        Height of the indoor unit over the outdoor unit; below zero where the outdoor unit is higher. [m]
    outdoor_height_m : float
        Foot of the outdoor unit over the ground. [m]
    bite_m : float
        How deep the bit cuts before it must be cleared. [m]
    rise_limit_m : float
        Greatest difference in height that the kit allows. [m]
    extension_m : float
        What one extension that the maker allows adds; 0 where none is allowed. [m]
    head_above_m, head_beside_m : float
        Free space above the indoor unit and on its narrower side. [m]
    """

    wall_thickness_m: float
    line_run_m: float
    line_set_m: float
    line_rise_m: float
    outdoor_height_m: float
    bite_m: float = NOT_KNOWN_M
    rise_limit_m: float = NOT_KNOWN_M
    extension_m: float = 0.0
    head_above_m: float = NOT_KNOWN_M
    head_beside_m: float = NOT_KNOWN_M

    @property
    def slack_m(self) -> float:
        """Line left over; below zero where it falls short. [m]"""
        return self.line_set_m - self.line_run_m

    @property
    def bites(self) -> int:
        """How many bites of the bit the wall takes; 0 where the bit is not known."""
        return ceil(self.wall_thickness_m / self.bite_m - 1e-9) if self.bite_m > 0.0 else 0

    @property
    def fall_m(self) -> float:
        """How much lower the hole comes out than it goes in. [m]"""
        return FALL_M_PER_M * self.wall_thickness_m


def reach_words(wall: WallDrawing, units: UnitSystem) -> str:
    """Return what the line set does: reaches with slack, or falls short."""
    box_length, run, spare = (tenth(length, units) for length in (wall.line_set_m, wall.line_run_m, abs(wall.slack_m)))
    if wall.slack_m < 0.0:
        return f"{box_length} in the box, {run} needed: {spare} short"
    return f"{box_length} in the box, {run} needed: {spare} to spare"


def apart(length_m: float, units: UnitSystem) -> str:
    """Return a length, below ten to a tenth of its unit: a shortage below half a foot is one all the same."""
    length = shown(length_m, Quantity.LENGTH, units)
    text = tenths(length) if abs(length) < _TO_TENTHS else plain_number(length)
    return f"{text} {symbol(Quantity.LENGTH, units)}"


def tenth(length_m: float, units: UnitSystem) -> str:
    """Return a length to a tenth of its unit, however long: lengths told as a sum must come out."""
    return f"{tenths(shown(length_m, Quantity.LENGTH, units))} {symbol(Quantity.LENGTH, units)}"


def fine(length_m: float, units: UnitSystem) -> str:
    """Return a short length to a tenth of an inch or centimetre."""
    return f"{tenths(shown(length_m, Quantity.SHORT_LENGTH, units))} {symbol(Quantity.SHORT_LENGTH, units)}"


def description(wall: WallDrawing, units: UnitSystem) -> str:
    """Return in words what the drawing shows."""
    bites = f" The bit takes {wall.bites} bites to pass it." if wall.bites > 1 else ""
    return (
        f"A wall {fine(wall.wall_thickness_m, units)} thick with a hole that falls toward the outside.{bites} "
        f"{level_words(wall, units)} {reach_words(wall, units).capitalize()}."
    )


def level_words(wall: WallDrawing, units: UnitSystem) -> str:
    """Return how much higher or lower the indoor unit hangs."""
    if abs(wall.line_rise_m) < _LEVEL_M:
        return "Both units stand at about one height."
    side = "above" if wall.line_rise_m > 0.0 else "below"
    return f"The indoor unit hangs {apart(abs(wall.line_rise_m), units)} {side} the outdoor unit."


def fit_sentences(wall: WallDrawing, units: UnitSystem) -> tuple[str, ...]:
    """Return what does not fit and what would, then what to do with line left over.

    Parameters
    ----------
    wall : WallDrawing
        Wall and lines.
    units : UnitSystem
        US customary or SI.

    Returns
    -------
    sentences : tuple of str
        Empty where all fits closely.
    """
    told = (_length_sentence(wall, units), _climb_sentence(wall, units), _lift_sentence(wall, units))
    return tuple(sentence for sentence in told if sentence)


def _length_sentence(wall: WallDrawing, units: UnitSystem) -> str:
    spare = tenth(abs(wall.slack_m), units)
    if wall.slack_m >= 0.0:
        return f"Lay the {spare} left over in a wide, flat loop; never cut a charged line." if _has_loop(wall) else ""
    if 0.0 < -wall.slack_m <= wall.extension_m:
        longer = apart(wall.extension_m, units)
        return f"{reach_words(wall, units)}: one extension of {longer}, which this maker allows, makes up for it."
    box_length, run = (apart(length, units) for length in (wall.line_set_m, wall.line_run_m))
    return (
        f"{box_length} line set, {run} needed: bring the units {spare} closer, or have a contractor make up "
        "the line; a coil of extra line is not a fix you may make."
    )


def _has_loop(wall: WallDrawing) -> bool:
    return wall.slack_m >= LOOP_M


def _climb_sentence(wall: WallDrawing, units: UnitSystem) -> str:
    least_m = abs(wall.line_rise_m) + wall.wall_thickness_m
    if wall.line_run_m >= least_m:
        return ""
    return (
        f"Wall and height alone take {apart(least_m, units)} of line, more than the {apart(wall.line_run_m, units)} "
        "said to be needed: measure the way of the lines again."
    )


def _lift_sentence(wall: WallDrawing, units: UnitSystem) -> str:
    over_m = abs(wall.line_rise_m) - wall.rise_limit_m
    if isnan(over_m) or over_m <= 0.0:
        return ""
    lift, limit = (apart(length, units) for length in (abs(wall.line_rise_m), wall.rise_limit_m))
    return (
        f"{lift} between the heights of the units, {limit} allowed: bring them {apart(over_m, units)} closer in height."
    )


def table(wall: WallDrawing, units: UnitSystem) -> Columns:
    """Return all that the drawings show, as a table."""
    slack = "Line to spare" if wall.slack_m >= 0.0 else "Line missing"
    rows = [
        ("Wall to pass", fine(wall.wall_thickness_m, units)),
        ("Fall of the hole toward the outside", fine(wall.fall_m, units)),
        ("Bites of the bit", str(wall.bites) if wall.bites else "no core bit"),
        ("Line needed", apart(wall.line_run_m, units)),
        ("Line in the box", apart(wall.line_set_m, units)),
        (slack, apart(abs(wall.slack_m), units)),
        ("Indoor unit above the outdoor unit", _signed(wall.line_rise_m, units)),
        ("Most difference in height allowed", _known(wall.rise_limit_m, units)),
        ("Outdoor unit's foot above the ground", apart(wall.outdoor_height_m, units)),
        ("Free above the indoor unit", _known(wall.head_above_m, units)),
        ("Free beside the indoor unit", _known(wall.head_beside_m, units)),
    ]
    return {"Measure": [name for name, _ in rows], "How much": [value for _, value in rows]}


def _signed(length_m: float, units: UnitSystem) -> str:
    return apart(abs(length_m), units) + ("" if length_m >= 0.0 else ", the other way round")


def _known(length_m: float, units: UnitSystem) -> str:
    return apart(length_m, units) if isfinite(length_m) else "not measured"
