"""The figures behind a finding, and how far it is from being mended."""

from collections.abc import Callable, Mapping
from math import ceil, floor, isnan
from typing import Final

from econ.installation.drilling import core_bites
from econ.kernel.caution import Caution
from econ.report.look import Look
from econ.report.numbers import DISPLAYS, Quantity, measure, plain_number

SHORT_M: Final = 1.0
"""m below which a length is told in inches or centimetres."""

_ROUNDING: Final = 1e-6

Numbers = Mapping[str, float]


def figures(caution: Caution, look: Look) -> str:
    """Return what there is, what is asked and by how much that must change, in one sentence.

    Parameters
    ----------
    caution : Caution
        A finding.
    look : Look
        Units and calendar.

    Returns
    -------
    sentence : str
        Empty where a finding has no length or day to tell.
    """
    numbers = {name: value for name, value, _ in caution.evidence}
    if caution.code in _WORDS and not any(isnan(number) for number in numbers.values()):
        return _WORDS[caution.code](numbers, look)
    if caution.code.startswith("placement.") and len(numbers) == 2:
        return _distance(numbers, look)
    return ""


def length(value_m: float, look: Look) -> str:
    """Return a length in feet or inches, metres or centimetres, to the nearest."""
    return measure(value_m, _quantity(value_m), look.units)


def at_least(value_m: float, look: Look) -> str:
    """Return a length rounded up, so that whoever keeps to it has enough."""
    return _rounded(value_m, look, ceil)


def at_most(value_m: float, look: Look) -> str:
    """Return a length rounded down, so that whoever keeps to it has enough."""
    return _rounded(value_m, look, floor)


def _quantity(value_m: float) -> Quantity:
    return Quantity.SHORT_LENGTH if abs(value_m) < SHORT_M else Quantity.LENGTH


def _rounded(value_m: float, look: Look, whole: Callable[[float], int]) -> str:
    display = DISPLAYS[look.units][_quantity(value_m)]
    step = 10.0**-display.decimals
    slack = -_ROUNDING if whole is ceil else _ROUNDING
    shown = whole(value_m * display.factor / step + slack) * step
    return f"{plain_number(shown, display.decimals)} {display.symbol}"


def _distance(numbers: Numbers, look: Look) -> str:
    have, least = numbers.values()
    return f"{length(have, look)} there, {length(least, look)} asked: {at_least(least - have, look)} more."


def _line_short(numbers: Numbers, look: Look) -> str:
    box, reach, run = (numbers[name] for name in ("line_box_m", "line_reach_m", "line_run_m"))
    extension = f", {length(reach, look)} with the maker's extension" if reach > box else ""
    nearer = at_least(numbers["line_short_m"], look)
    return (
        f"{length(box, look)} in the box{extension}, {length(run, look)} needed: move the outdoor unit {nearer} nearer "
        "along the way of the lines, or have a contractor make them up."
    )


def _extension(numbers: Numbers, look: Look) -> str:
    box, run, more = (numbers[name] for name in ("line_box_m", "line_run_m", "extension_m"))
    return f"{length(box, look)} in the box and {length(more, look)} more; {length(run, look)} needed."


def _rise(numbers: Numbers, look: Look) -> str:
    rise, limit = abs(numbers["line_rise_m"]), numbers["rise_limit_m"]
    nearer = at_least(rise - limit, look)
    return f"{length(rise, look)} between the two, {length(limit, look)} allowed: bring them {nearer} nearer in height."


def _bites(numbers: Numbers, look: Look) -> str:
    wall, bite = numbers["wall_thickness_m"], numbers["bite_m"]
    count = int(core_bites(wall, bite))  # type: ignore[arg-type]
    return f"{length(wall, look)} of wall at {length(bite, look)} a bite: {count} bites."


def _with_extension(numbers: Numbers, look: Look) -> str:
    wall, reach = numbers["wall_thickness_m"], numbers["bit_reach_m"]
    return f"{length(wall, look)} of wall; the bit reaches {length(reach, look)} without its extension."


def _beyond(numbers: Numbers, look: Look) -> str:
    wall, reach = numbers["wall_thickness_m"], numbers["longest_reach_m"]
    over = at_least(wall - reach, look)
    return f"{length(wall, look)} of wall; bit and extension reach {length(reach, look)}, {over} too little."


def _drain(numbers: Numbers, look: Look) -> str:
    run, fall, drop, reach = (numbers[f"drain_{name}_m"] for name in ("run", "fall", "drop", "reach"))
    return (
        f"{length(run, look)} of drain wants {at_least(fall, look)} of fall and has {at_most(drop, look)}: hang the "
        f"indoor unit {at_least(fall - drop, look)} higher, or let it run {at_most(reach, look)} at most."
    )


def _snow(numbers: Numbers, look: Look) -> str:
    snow, asked, foot = (numbers[name] for name in ("snow_m", "snow_foot_m", "outdoor_height_m"))
    return (
        f"{length(snow, look)} of snow: the foot belongs at {at_least(asked, look)}, {at_least(asked - foot, look)} "
        "higher than now."
    )


def _return(numbers: Numbers, look: Look) -> str:
    last, fitted = look.day(numbers["return_by_d"]), look.day(numbers["dry_fit_d"])
    return f"It may go back until {last}; the dry-fit is done on {fitted}."


_WORDS: Final[dict[str, Callable[[Numbers, Look], str]]] = {
    "line_set.too_short": _line_short,
    "line_set.extension": _extension,
    "line_set.rise_too_high": _rise,
    "drilling.several_bites": _bites,
    "drilling.bit_extension": _with_extension,
    "drilling.beyond_the_bit": _beyond,
    "placement.drain_falls_too_little": _drain,
    "placement.snow": _snow,
    "delivery.return_window_over": _return,
}
