"""Bills of a case against the weather, and the factor by which they scale what its room needs."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.bill_text import BillRow, BillText, read_bills
from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.energy.bill import WeatherPart, modelled_kwh, period_mean_c, slope_kwh, weather_part
from econ.energy.change_point import LEAST_BILLS, Bills, ChangePointFit, ChangePointKind, best_fit, change_point_fit
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import MONTH_DAYS
from econ.kernel.spread import Spread

CARRIERS: Final[Mapping[str, tuple[str, str]]] = {"electricity": ("kwh", "kWh"), "gas": ("therm", "kWh of gas")}
"""What is billed: the unit of amounts without one, and what its kWh are."""

SIDES: Final = ("cooling", "heating")

YEAR_TO_YEAR_FRAC: Final = {"heating": 0.07, "cooling": 0.13}
"""Coefficient of variation of a year's heating and cooling, where bills do not say how warm it was. Assumption."""

SHARE_DOUBT_FRAC: Final = 0.15
"""Doubt of a room's part that the user gives as one number. Assumption."""

SURE: Final = 2.0
"""Standard deviations of a range that holds nearly all. 95 % of a normal distribution."""

LEAST_FACTOR: Final = 1.0 / 3.0
MOST_FACTOR: Final = 3.0
"""Factors beyond which bills and room speak of different things. Assumption."""

LEAST_SPAN_K: Final = 5.0
"""K between the coldest and the warmest bill below which nothing can be told of the weather. Assumption."""

LEAST_PART_DOUBT: Final = 0.5
"""Doubt of a year's heating or cooling from which on it counts as not seen in the bills. Assumption."""

LOOSE: Final = (
    "The fit does not keep the limits for monthly bills, so nothing is scaled by it. If the bills print how warm it "
    "was, add that to each row, such as 31 F: they fit better against their own weather."
)
_SAME_WORDS: Final = "Check the part you named, what heats or cools the room now, and the hours in which it is used."


@dataclass(frozen=True, slots=True, eq=False)
class CarrierFit:
    """The bills of one source of energy and their fit.

    Attributes
    ----------
    carrier : str
        "electricity" or "gas".
    text : BillText
        Rows read, and what is wrong with others.
    mean_c : ndarray, shape (n_bill,)
        Mean outdoor temperature of each bill. [degC]
    billed_kwh, modelled_kwh : ndarray, shape (n_bill,)
        What was billed; what the fit gives, NaN without one. [kWh]
    fit : ChangePointFit or None
        None where there is none.
    year : WeatherPart or None
        What follows the weather in a typical year.
    problem : str
        Why there is no fit, in words; empty where there is one.
    """

    carrier: str
    text: BillText
    mean_c: FloatArray
    billed_kwh: FloatArray
    modelled_kwh: FloatArray
    fit: ChangePointFit | None
    year: WeatherPart | None
    problem: str


@dataclass(frozen=True, slots=True, eq=False)
class PresentUse:
    """What the model gives for the room with what is there now, in a typical year, before any fit.

    Attributes
    ----------
    cooling_kwh, heating_kwh : ndarray, shape (12,)
        Energy bought for each, by month. [kWh]
    month_mean_c : ndarray, shape (12,)
        Mean outdoor temperature of the months. [degC]
    cooling_carrier, heating_carrier : str
        "electricity" or "gas"; empty where no bill shows it.
    why_not : mapping of str to str
        By side, why no bill shows it, in words.
    """

    cooling_kwh: FloatArray
    heating_kwh: FloatArray
    month_mean_c: FloatArray
    cooling_carrier: str
    heating_carrier: str
    why_not: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Scale:
    """What bills say of the room's cooling or heating.

    Attributes
    ----------
    side : str
        "cooling" or "heating".
    billed_kwh : float
        The room's part of what follows the weather in a typical year; NaN where it is not known. [kWh]
    modelled_kwh : float
        What of the model's months follows the weather in the same way; NaN without a fit. [kWh]
    factor : Spread or None
        Billed over modelled, with its range; None where it cannot be used.
    refusal : str
        Why it cannot be used, and what to do, in words.
    """

    side: str
    billed_kwh: float
    modelled_kwh: float
    factor: Spread | None
    refusal: str


def carrier_fits(case: Case, month_mean_c: FloatArray) -> tuple[CarrierFit, ...]:
    """Return the fit of each kind of bills that a case has.

    Parameters
    ----------
    case : Case
        The case.
    month_mean_c : ndarray, shape (12,)
        Mean of each month of a typical year, warming added. [degC]

    Returns
    -------
    fits : tuple of CarrierFit
        Empty where no bills were pasted.
    """
    texts = {carrier: getattr(case.bills, carrier) for carrier in CARRIERS}
    return tuple(_carrier_fit(carrier, text, month_mean_c) for carrier, text in texts.items() if text)


def _carrier_fit(carrier: str, text: str, month_mean_c: FloatArray) -> CarrierFit:
    read = read_bills(text, f"bills.{carrier}", CARRIERS[carrier][0])
    billed = np.array([row.energy_kwh for row in read.rows])
    days = np.array([float(row.days_d) for row in read.rows])
    mean_c = _mean_c(read.rows, days, month_mean_c) if read.rows else np.zeros(0)
    problem = _problem(billed, mean_c)
    if problem:
        return CarrierFit(carrier, read, mean_c, billed, np.full(len(billed), np.nan), None, None, problem)
    bills = Bills(billed, days, mean_c)
    fit = change_point_fit(bills, ChangePointKind.HEATING) if carrier == "gas" else best_fit(bills)
    year = weather_part(bills, fit, np.array(MONTH_DAYS), month_mean_c)
    return CarrierFit(carrier, read, mean_c, billed, modelled_kwh(fit, days, mean_c), fit, year, "")


def _mean_c(rows: tuple[BillRow, ...], days_d: FloatArray, month_mean_c: FloatArray) -> FloatArray:
    """Return the mean outdoor temperature of each bill: its own where it says so, else that of a typical year."""
    first = np.array([min(row.first.timetuple().tm_yday - 1, 364) for row in rows])
    said = np.array([math.nan if row.mean_c is None else row.mean_c for row in rows])
    return np.where(np.isnan(said), period_mean_c(first, days_d, month_mean_c), said)


def _problem(billed_kwh: FloatArray, mean_c: FloatArray) -> str:
    """Return why no model can be fitted, in words; empty where one can."""
    if len(billed_kwh) < LEAST_BILLS:
        return f"{len(billed_kwh)} bills can be used; a fit needs {LEAST_BILLS} at least, a whole year."
    if not np.any(billed_kwh > 0.0):
        return "All bills are 0: nothing can be told from them."
    if np.ptp(mean_c) < LEAST_SPAN_K:
        return (
            f"The bills lie within {np.ptp(mean_c):.1f} K of outdoor temperature; {LEAST_SPAN_K:g} K at least are "
            "needed. Add bills of the other seasons."
        )
    return ""


def seen_sides(found: CarrierFit) -> tuple[str, ...]:
    """Return which of cooling and heating the bills show, so that it can be told from chance."""
    return tuple(side for side in SIDES if getattr(found.year, f"{side}_doubt_frac", math.inf) <= LEAST_PART_DOUBT)


def scales(case: Case, fits: tuple[CarrierFit, ...], present: PresentUse) -> tuple[Scale, ...]:
    """Return what the bills say of the room's cooling and heating.

    Parameters
    ----------
    case : Case
        Names the room's part.
    fits : tuple of CarrierFit
        Of the case's bills.
    present : PresentUse
        What the model gives with what is there now.

    Returns
    -------
    scales : tuple of Scale
        Cooling, then heating.
    """
    by_carrier = {fit.carrier: fit for fit in fits}
    return tuple(_scale(case, by_carrier, present, side) for side in SIDES)


def _scale(case: Case, fits: Mapping[str, CarrierFit], present: PresentUse, side: str) -> Scale:
    found = fits.get(getattr(present, f"{side}_carrier"))
    share = _share(getattr(case.bills, f"{side}_share_frac"))
    modelled = _modelled_kwh(side, found, present)
    refusal = _refusal(side, found, share, present)
    if refusal == "" and modelled <= 0.0:
        refusal = f"The model finds no {side} that follows the weather so, and there is nothing to scale."
    if refusal or found is None or found.year is None or share is None:
        return Scale(side, math.nan, modelled, None, refusal)
    billed = float(getattr(found.year, f"{side}_kwh")) * share.likely
    factor = billed / modelled
    if not LEAST_FACTOR <= factor <= MOST_FACTOR:
        told = f"The bills make it {factor:.2g} times what the model gives, which is too far apart to scale by."
        return Scale(side, billed, modelled, None, f"{told} {_SAME_WORDS}")
    return Scale(side, billed, modelled, _factor_spread(factor, side, found, share), "")


def _modelled_kwh(side: str, found: CarrierFit | None, present: PresentUse) -> float:
    """Return what of the model's months follows the weather as the fit of the bills does; NaN without one. [kWh]"""
    if found is None or found.fit is None:
        return math.nan
    return float(getattr(slope_kwh(found.fit, getattr(present, f"{side}_kwh"), present.month_mean_c), f"{side}_kwh"))


def _refusal(side: str, found: CarrierFit | None, share: Spread | None, present: PresentUse) -> str:
    """Return why a side cannot be scaled, in words; empty where it can."""
    if side in present.why_not:
        return present.why_not[side]
    if found is None:
        return f"There are no bills of what the room's {side} takes: {getattr(present, f'{side}_carrier')}."
    fit = found.fit
    reasons = {
        found.problem: fit is None,
        LOOSE: fit and not fit.is_good,
        f"The bills show no {side} that can be told from chance.": side not in seen_sides(found),
        f"Say which part of the {side} on the bills is this room's.": share is None,
    }
    return next((reason for reason, holds in reasons.items() if holds), "")


def _share(said: Amount | None) -> Spread | None:
    if said is None or said.is_unknown:
        return None
    if said.is_range:
        return Spread(said.low, said.likely, said.high, "what you said")
    doubt = 0.0 if said.likely >= 1.0 else SHARE_DOUBT_FRAC
    return Spread(said.likely * (1.0 - doubt), said.likely, min(said.likely * (1.0 + doubt), 1.0), "what you said")


def _factor_spread(factor: float, side: str, found: CarrierFit, share: Spread) -> Spread:
    """Return the factor with the doubts of fit, share and weather, which add as squares."""
    own = all(row.mean_c is not None for row in found.text.rows)
    years = sum(row.days_d for row in found.text.rows) / 365.0
    weather = 0.0 if own else SURE * YEAR_TO_YEAR_FRAC[side] / math.sqrt(max(years, 1.0))
    shares = share.likely / share.low - 1.0, share.high / share.likely - 1.0
    fitted = float(getattr(found.year, f"{side}_doubt_frac"))
    below, above = (math.hypot(fitted, weather, part) for part in shares)
    count, text = len(found.text.rows), found.carrier
    source = (
        f"your {count} {text} bills, {share.likely:.0%} of their {side} being this room's, over what the model gave"
    )
    return Spread(factor / (1.0 + below), factor, factor * (1.0 + above), source)
