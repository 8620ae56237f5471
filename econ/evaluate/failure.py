"""A failure in July of the fifth year of service: how long it takes, what it costs, what a warranty pays of it."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Final

import numpy as np

from econ.case.choices import option_at
from econ.evaluate.result import AlternativeResult, Result
from econ.evaluate.sheet import Sheet
from econ.evaluate.unit_costs import AGES
from econ.evaluate.wiring.later import SMALL_REPAIRS, kinds
from econ.installation.waiting import HIRE_MONTH_D, hired_months
from econ.installation.warranty import Warranty
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.lifecycle.repair import AGE_FROM_YR, Repair

YEAR: Final = 5
"""Year of service in which it fails."""

JULY: Final = 7
MIDDLE_D: Final = 15
_SHOP: Final = (Alternative.KEEP_AS_IS, Alternative.WINDOW_UNITS)
_PART: Final = {Alternative.SELF_INSTALL: "kit", Alternative.CONTRACTED_INSTALL: "trade"}


@dataclass(frozen=True, slots=True, eq=False)
class Failure:
    """One unit of a way that fails; arrays of three hold the low, likely and high end, all inputs at that end.

    Attributes
    ----------
    way : Alternative
        Which way.
    at_d : float
        Day it fails, counted from the decision. [day]
    age_yr : float
        How old the unit is then. [year]
    chance_frac : ndarray, shape (3,)
        Chance that a unit fails in a year of that age. [dimensionless]
    visit_d, part_d, wait_d : ndarray, shape (3,)
        Wait for somebody to look, for the part or the new unit, and both. [day] [day] [day]
    stop_gap_usd : ndarray, shape (3,)
        Hire of a portable unit, begun months paid whole, with its electricity in July. [USD]
    cost_usd, pays_usd, own_usd : ndarray, shape (3,)
        Common repair, or a new unit where none is mended; what a warranty pays of it; what is left. [USD] [USD] [USD]
    compressor_usd, compressor_own_usd : ndarray, shape (3,)
        The dearest repair, and what is left of it; NaN where none is mended. [USD] [USD]
    nobody_frac : ndarray, shape (3,)
        Chance that nobody comes, and a new set is bought; 0 where that is no question. [dimensionless]
    new_set_usd : ndarray, shape (3,)
        Price of a new unit, or of a new kit, goods alone; NaN where that is no question. [USD]
    warranty : Warranty
        Terms, likely row.
    register_by_d : float
        Day by which it is to be registered, from the decision; NaN where nothing is. [day]
    """

    way: Alternative
    at_d: float
    age_yr: float
    chance_frac: FloatArray
    visit_d: FloatArray
    part_d: FloatArray
    stop_gap_usd: FloatArray
    cost_usd: FloatArray
    pays_usd: FloatArray
    compressor_usd: FloatArray
    compressor_own_usd: FloatArray
    nobody_frac: FloatArray
    new_set_usd: FloatArray
    warranty: Warranty
    register_by_d: float = float("nan")

    @property
    def wait_d(self) -> FloatArray:
        """Days without the unit, one wait after the other, shape (3,). [day]"""
        return self.visit_d + self.part_d

    @property
    def own_usd(self) -> FloatArray:
        """What the owner pays of the common repair, shape (3,). [USD]"""
        return self.cost_usd - self.pays_usd

    @property
    def is_mended(self) -> bool:
        """Whether a unit of this way is mended, not exchanged."""
        return self.way not in _SHOP


def failures(result: Result, sheet: Sheet, decision: date) -> tuple[Failure, ...]:
    """Return what a failure in July of year 5 means for each way in which something runs.

    Parameters
    ----------
    result : Result
        Dates of service, warranties and July's need, likely row.
    sheet : Sheet
        Waits, prices and chances with their ranges.
    decision : date
        Day from which days are counted.
    """
    ways = [way for way in result.alternatives if way.in_service_exists or _is_there(way, sheet)]
    return tuple(_failure(way, result, sheet, decision) for way in ways)


def _is_there(way: AlternativeResult, sheet: Sheet) -> bool:
    cooling = option_at("now.cooling", sheet.entry("now.cooling").likely)
    return way.name is Alternative.KEEP_AS_IS and cooling not in ("none", "not_known")


def july_d(service_d: float, decision: date) -> float:
    """Return the first 15 July on which four years of service are over, in days from the decision.

    Parameters
    ----------
    service_d : float
        Day of service, from the decision. [day]
    decision : date
        Day 0.

    Returns
    -------
    july_d : float
        Between four and five years after service. [day]

    Examples
    --------
    >>> july_d(14.0, date(2027, 7, 1)), july_d(16.0, date(2027, 7, 1))
    (1475.0, 1841.0)
    """
    earliest_d = service_d + (YEAR - 1) * DAYS_PER_YEAR
    years = range(decision.year + YEAR - 1, decision.year + 3 * YEAR)
    days = [float((date(year, JULY, MIDDLE_D) - decision).days) for year in years]
    return next((day for day in days if day >= earliest_d), days[-1])


def _three(sheet: Sheet, path: str) -> FloatArray:
    spread = sheet.entry(path).spread
    return np.array([spread.low, spread.likely, spread.high])


def _failure(way: AlternativeResult, result: Result, sheet: Sheet, decision: date) -> Failure:
    service_d = float(way.in_service_d[0]) if way.in_service_exists else 0.0
    at_d = july_d(service_d, decision)
    age_yr = (at_d - service_d) / DAYS_PER_YEAR
    if way.name is Alternative.KEEP_AS_IS:
        age_yr += sheet.entry("now.unit_age_yr").likely
    make = _exchanged if way.name in _SHOP else _mended
    found = make(way, sheet, age_yr)
    by_d = service_d + float(way.warranty.register_within_d[0])
    stop_gap_usd = _stop_gap_usd(found.wait_d, result, sheet)
    return replace(found, at_d=at_d, stop_gap_usd=stop_gap_usd, register_by_d=by_d)


def _exchanged(way: AlternativeResult, sheet: Sheet, age_yr: float) -> Failure:
    """Return the failure of a unit that a shop exchanges or sells anew."""
    price, none = _three(sheet, "window.price_usd"), np.zeros(3)
    covered = covered_frac_at(age_yr, way.warranty.parts_yr) * float(way.warranty.claims_paid_frac[0])
    return Failure(
        way=way.name,
        at_d=0.0,
        age_yr=age_yr,
        chance_frac=_chance_frac(sheet, "window", age_yr),
        visit_d=none,
        part_d=_three(sheet, "costs.window_stock_out_d"),
        stop_gap_usd=none,
        cost_usd=price,
        pays_usd=price * covered,
        compressor_usd=none * np.nan,
        compressor_own_usd=none * np.nan,
        nobody_frac=none,
        new_set_usd=price,
        warranty=way.warranty,
    )


def _mended(way: AlternativeResult, sheet: Sheet, age_yr: float) -> Failure:
    """Return the failure of a ductless set, which a technician mends with a part."""
    route = _PART[way.name]
    small, large = kinds(_prices(sheet), way.warranty)
    return Failure(
        way=way.name,
        at_d=0.0,
        age_yr=age_yr,
        chance_frac=_chance_frac(sheet, route, age_yr),
        visit_d=_three(sheet, "costs.technician_peak_d"),
        part_d=_three(sheet, f"costs.{route}_part_d"),
        stop_gap_usd=np.zeros(3),
        cost_usd=small.part_usd + small.labour_usd,
        pays_usd=_paid_usd(small, age_yr),
        compressor_usd=large.part_usd + large.labour_usd,
        compressor_own_usd=large.part_usd + large.labour_usd - _paid_usd(large, age_yr),
        nobody_frac=_three(sheet, "later.no_service_frac") if route == "kit" else np.zeros(3),
        new_set_usd=_three(sheet, "kit.price_usd") if route == "kit" else np.full(3, np.nan),
        warranty=way.warranty,
    )


def covered_frac_at(age_yr: float, warranty_yr: FloatArray) -> float:
    """Return whether a warranty holds at an age: 1 or 0; on its last day it does.

    Examples
    --------
    >>> covered_frac_at(4.5, np.array([5.0])), covered_frac_at(4.5, np.array([1.0]))
    (1.0, 0.0)
    """
    return float(age_yr <= float(np.ravel(warranty_yr)[0]))


def _paid_usd(kind: Repair, age_yr: float) -> FloatArray:
    parts = kind.part_usd * covered_frac_at(age_yr, kind.part_warranty_yr)
    labour = kind.labour_usd * covered_frac_at(age_yr, kind.labour_warranty_yr)
    paid: FloatArray = (parts + labour) * float(np.ravel(kind.paid_frac)[0])
    return paid


def _prices(sheet: Sheet) -> dict[str, FloatArray]:
    """Return prices of repairs at their three ends; shares of parts and compressors at their likely value."""
    keys = (*SMALL_REPAIRS, "diagnostic_call_usd", "compressor_fitted_usd")
    prices = {f"costs.{key}": _three(sheet, f"costs.{key}") for key in keys}
    shares = ("repairs.part_frac", "repairs.compressor_frac")
    return prices | {path: np.asarray(sheet.entry(path).likely) for path in shares}


def _chance_frac(sheet: Sheet, route: str, age_yr: float) -> FloatArray:
    age = AGES[int(np.searchsorted(AGE_FROM_YR, age_yr, side="right")) - 1]
    return _three(sheet, f"costs.{route}_failures_{age}_per_yr")


def _stop_gap_usd(wait_d: FloatArray, result: Result, sheet: Sheet) -> FloatArray:
    """Return hire by begun months, and what the portable unit draws for July's need in the days of waiting."""
    kwh_per_d = float(result.need_cool_kwh[0, JULY - 1]) / MONTH_DAYS[JULY - 1]
    power = sheet.entry("prices.electricity_usd_per_kwh").likely / sheet.entry("interim.cooling_cop").likely
    hire = _three(sheet, "costs.interim_rental_usd_per_d")
    months = hired_months(wait_d, np.zeros(()))
    stop_gap: FloatArray = months * HIRE_MONTH_D * hire + wait_d * kwh_per_d * power
    return stop_gap
