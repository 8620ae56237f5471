"""Twelve figures, one a month, as the user wrote them and in the unit the engine reads."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from econ.case import quantity
from econ.case.quantity import Measure
from econ.kernel.errors import CaseError, Fault

MONTH_COUNT: Final = 12

MONTHLY: Final[dict[str, Measure]] = {
    "mean_c": Measure("degC", "degF", -60.0, 50.0),
    "max_c": Measure("degC", "degF", -60.0, 60.0),
    "min_c": Measure("degC", "degF", -70.0, 45.0),
    "sd_k": Measure("K", "delta_degF", 0.3, 20.0),
    "dew_point_c": Measure("degC", "degF", -70.0, 35.0),
    "global_kwh_per_m2": Measure("kWh/m**2", "", 0.0, 12.0),
    "diffuse_kwh_per_m2": Measure("kWh/m**2", "", 0.0, 6.0),
    "wind_m_per_s": Measure("m/s", "", 0.0, 30.0),
}
"""Figures that may be typed by month, and their bounds; only the first is needed."""

LABELS: Final[dict[str, str]] = {
    "mean_c": "Mean temperature",
    "max_c": "Mean daily high",
    "min_c": "Mean daily low",
    "sd_k": "Spread of daily means",
    "dew_point_c": "Dew point",
    "global_kwh_per_m2": "Sun on the flat",
    "diffuse_kwh_per_m2": "of it from the sky",
    "wind_m_per_s": "Wind",
}
"""Words for a form; sun is the mean of a day."""

LOWER_THAN: Final = (
    ("mean_c", "max_c"),
    ("min_c", "mean_c"),
    ("dew_point_c", "max_c"),
    ("diffuse_kwh_per_m2", "global_kwh_per_m2"),
)
"""Pairs of figures of which the first cannot be greater in the same month."""


@dataclass(frozen=True, slots=True)
class Months:
    """One figure of every month.

    Attributes
    ----------
    values : tuple of float
        In the unit of its figure, January first.
    written : tuple of str or number
        What was typed.
    """

    values: tuple[float, ...] = field(compare=False)
    written: tuple[str | int | float, ...]


Monthly = tuple[tuple[str, Months], ...]


def monthly(raw: object) -> Monthly | None:
    """Return monthly figures by name; an empty table says nothing.

    Parameters
    ----------
    raw : object
        A table of name = list of twelve, each a number in the unit of the name or text with a unit.

    Raises
    ------
    CaseError
        With every fault.
    """
    if not isinstance(raw, Mapping):
        remedy = "Write it such as monthly = {mean_c = [-4.5, -2.0, ...]}, twelve numbers, January first."
        raise CaseError([Fault("", "must be a table of figures", quantity.short(raw), remedy)])
    faults: list[Fault] = []
    found: dict[str, Months] = {}
    for name, figures in raw.items():
        try:
            found[str(name)] = months(str(name), figures)
        except CaseError as error:
            faults += [replace(each, path=_joined(str(name), each.path)) for each in error.faults]
    if not faults and found:
        faults = _contradictions(found)
    if faults:
        raise CaseError(faults)
    return tuple(found.items()) or None


def months(name: str, raw: object) -> Months:
    """Return one figure of twelve months.

    Raises
    ------
    CaseError
        If the name is not known, there are not twelve, or a month is refused.
    """
    if name not in MONTHLY:
        raise CaseError([Fault("", "is no monthly figure", repr(name), f"Write one of {', '.join(MONTHLY)}.")])
    if isinstance(raw, Months):
        raw = raw.written
    if not isinstance(raw, Sequence) or isinstance(raw, str) or len(raw) != MONTH_COUNT:
        got = f"{len(raw)} values" if isinstance(raw, Sequence) and not isinstance(raw, str) else quantity.short(raw)
        raise CaseError([Fault("", "must be a list of twelve", got, "Give one value a month, January first.")])
    values, faults = [], list[Fault]()
    for at, each in enumerate(raw):
        try:
            values.append(_month(each, MONTHLY[name]))
        except CaseError as error:
            faults += [replace(fault, path=f"[{at}]") for fault in error.faults]
    if faults:
        raise CaseError(faults)
    return Months(tuple(values), tuple(each.strip() if isinstance(each, str) else each for each in raw))


def _month(raw: object, measure: Measure) -> float:
    """Return one month's value; a bare number is in the unit of the figure's name."""
    if raw is None:
        raise CaseError([Fault("", "is missing", "nothing", "Fill in every month, or leave the whole figure out.")])
    is_number = isinstance(raw, int | float) and not isinstance(raw, bool)
    read = quantity.amount(raw, replace(measure, us_unit="") if is_number else measure)
    if read.is_unknown or read.is_range:
        raise CaseError([Fault("", "must be one value", quantity.short(raw), "Leave the whole figure out instead.")])
    return read.likely


def _contradictions(found: Mapping[str, Months]) -> list[Fault]:
    faults = []
    if "mean_c" not in found:
        faults.append(Fault("mean_c", "is missing", "nothing", "Give the mean temperature of each month."))
    if ("max_c" in found) != ("min_c" in found):
        lacking = "min_c" if "max_c" in found else "max_c"
        faults.append(Fault(lacking, "is missing", "nothing", "Give mean daily high and low together, or neither."))
    if "diffuse_kwh_per_m2" in found and "global_kwh_per_m2" not in found:
        faults.append(Fault("global_kwh_per_m2", "is missing", "nothing", "Give all sun beside its part from the sky."))
    for lower, upper in LOWER_THAN:
        if lower in found and upper in found:
            pairs = zip(found[lower].values, found[upper].values, strict=True)
            faults += [
                Fault(f"{lower}[{at}]", f"must not be above {upper}", f"{low:g} against {high:g}", "Correct one.")
                for at, (low, high) in enumerate(pairs)
                if low > high
            ]
    return faults


def _joined(name: str, part: str) -> str:
    return name + part if part.startswith("[") or not part else f"{name}.{part}"
