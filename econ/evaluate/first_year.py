"""Bills after the change beside what was forecast: those before, as their fit has it, and what the change was to do."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

import numpy as np

from econ.case.bill_text import BillRow, BillText, read_bills
from econ.case.choices import option_at
from econ.case.schema import Case
from econ.energy.bill import modelled_kwh, period_mean_c
from econ.energy.since import period_kwh, sum_doubt_kwh
from econ.evaluate.bill_fit import CARRIERS, CarrierFit, carrier_fits
from econ.evaluate.result import AlternativeResult, Result
from econ.evaluate.sheet import Sheet
from econ.kernel.alternative import ALTERNATIVES, KEEP, Alternative
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.constants import DAYS_PER_YEAR

FORECAST_DOUBT_FRAC: Final = 0.25
"""Doubt of what a change does in a year, of one like another. Assumption: a room's need is held to 15 %, and people and
weather add to it."""

PLAIN_YEAR: Final = 2001
LEAP_DAY: Final = (2, 29)


@dataclass(frozen=True, slots=True, eq=False)
class Since:
    """The bills of one source of energy since the change.

    Attributes
    ----------
    carrier : str
        "electricity" or "gas".
    text : BillText
        Rows read, and what is wrong with others.
    rows : tuple of BillRow
        Those since the unit first ran.
    billed_kwh : float
        What they add up to. [kWh]
    room_kwh : float
        Forecast for this room alone in these days. [kWh]
    before_kwh, change_kwh : float
        What the home would have taken without the change, by the bills before; what the change was to add. NaN where
        there is no fit. [kWh]
    doubt_kwh : float
        How far bills may lie from the forecast and still agree with it; NaN where there is no fit. [kWh]
    warmer_k : float
        How much warmer than a typical year the bills say it was; NaN where they do not. [K]
    problem : str
        Why nothing can be set against them; empty where it can.
    has_measures : bool
        Measures on the room are chosen: what they save is in no part of the change.
    """

    carrier: str
    text: BillText
    rows: tuple[BillRow, ...]
    billed_kwh: float
    room_kwh: float
    before_kwh: float
    change_kwh: float
    doubt_kwh: float
    warmer_k: float
    problem: str
    has_measures: bool = False

    @property
    def forecast_kwh(self) -> float:
        """What the bills were to add up to; NaN where that cannot be told. [kWh]"""
        return self.before_kwh + self.change_kwh


def first_year(
    case: Case, sheet: Sheet, result: Result, name: Alternative, month_mean_c: FloatArray
) -> tuple[Since, ...]:
    """Return what the bills since the change say.

    Parameters
    ----------
    case : Case
        With bills before and since.
    sheet : Sheet
        Its numbers: what heats now.
    result : Result
        The forecast.
    name : Alternative
        The way that was gone.
    month_mean_c : ndarray, shape (12,)
        Mean of each month of a typical year, warming added. [degC]

    Returns
    -------
    since : tuple of Since
        One for each source of energy with bills since.
    """
    fits = {fit.carrier: fit for fit in carrier_fits(case, month_mean_c)}
    texts = {carrier: getattr(case.first_year, carrier) for carrier in CARRIERS}
    way, keep = (result.alternatives[at] for at in (ALTERNATIVES.index(name), KEEP))
    return tuple(
        _since(case, (carrier, text), fits, (_months(way, carrier, sheet), _months(keep, carrier, sheet)), month_mean_c)
        for carrier, text in texts.items()
        if text
    )


def _months(way: AlternativeResult, carrier: str, sheet: Sheet) -> FloatArray:
    """Return what a way takes by month of one source of energy; no gas where something else heats."""
    is_gas = option_at("now.heat", sheet.entry("now.heat").likely) == "gas"
    by_month: FloatArray = way.electricity_kwh[0] if carrier == "electricity" else way.fuel_kwh[0] * is_gas
    return by_month


def _since(
    case: Case,
    told: tuple[str, str],
    fits: Mapping[str, CarrierFit],
    months_kwh: tuple[FloatArray, FloatArray],
    month_mean_c: FloatArray,
) -> Since:
    carrier, written = told
    text = read_bills(written, f"first_year.{carrier}", CARRIERS[carrier][0])
    rows = _after(text.rows, case.as_built.in_service_on)
    fit, after, before = fits.get(carrier), *months_kwh
    problem = _problem(rows, fit)
    first, days = _places(rows)
    billed = math.fsum(row.energy_kwh for row in rows)
    room = float(period_kwh(first, days, after).sum())
    nan = math.nan
    warmer = _warmer_k(rows, month_mean_c)
    if problem or fit is None or fit.fit is None:
        return Since(carrier, text, rows, billed, room, nan, nan, nan, warmer, problem)
    usual_c = period_mean_c(first, days, month_mean_c)
    mean_c = np.array([usual if row.mean_c is None else row.mean_c for row, usual in zip(rows, usual_c, strict=True)])
    without = float(modelled_kwh(fit.fit, days, mean_c).sum())
    change = room - float(period_kwh(first, days, before).sum())
    error = fit.fit.cvrmse_frac * float(fit.billed_kwh.mean())
    doubt = math.hypot(sum_doubt_kwh(error, len(fit.billed_kwh), len(rows)), FORECAST_DOUBT_FRAC * change)
    has_measures = bool(case.measures.chosen)
    return Since(carrier, text, rows, billed, room, without, change, doubt, warmer, "", has_measures)


def _after(rows: tuple[BillRow, ...], in_service_on: str | None) -> tuple[BillRow, ...]:
    """Return the bills that begin when the unit runs, at most a year of them."""
    begin = date.fromisoformat(in_service_on) if in_service_on else date.min
    since = [row for row in rows if row.first >= begin]
    return tuple(row for row in since if (row.past - since[0].first).days <= DAYS_PER_YEAR + 1.0)


def _places(rows: tuple[BillRow, ...]) -> tuple[IntArray, FloatArray]:
    """Return on which day of the year each bill begins, and its days."""
    first = np.array([_day_of_year(row.first) for row in rows], dtype=np.int64)
    return first, np.array([float(row.days_d) for row in rows])


def _day_of_year(day: date) -> int:
    """Return a day's place in a year without a 29 February, 0 for the first of January."""
    is_leap_day = (day.month, day.day) == LEAP_DAY
    return (day - timedelta(days=is_leap_day)).replace(year=PLAIN_YEAR).timetuple().tm_yday - 1


def _warmer_k(rows: tuple[BillRow, ...], month_mean_c: FloatArray) -> float:
    """Return how much warmer it was than in a typical year; NaN unless every bill says how warm it was. [K]"""
    said = [row.mean_c for row in rows if row.mean_c is not None]
    if not rows or len(said) < len(rows):
        return math.nan
    first, days = _places(rows)
    return float(np.average(np.array(said) - period_mean_c(first, days, month_mean_c), weights=days))


def _problem(rows: tuple[BillRow, ...], fit: CarrierFit | None) -> str:
    """Return why bills cannot be set against a forecast; empty where they can."""
    if not rows:
        return "None of these bills begins after the unit first ran."
    if fit is None:
        return (
            "Paste a year of bills from before the change on the page of place and prices: then both can be compared."
        )
    if fit.fit is None:
        return f"The bills from before cannot serve: {fit.problem}"
    return "" if fit.fit.is_good else "The bills from before follow the weather too loosely to compare with."
