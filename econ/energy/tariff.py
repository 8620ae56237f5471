"""What electricity costs beyond what the rest of the home pays: one price, or by season, tier or hour of the day.

Fixed charges are left out throughout: they stay whichever way is gone.
"""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.constants import MONTH_DAYS

HOURS: Final = 24
MONTHS: Final = 12

WORKING_DAY_FRAC: Final = 5.0 / 7.0
"""Days of a week that are Monday to Friday. Assumption: holidays count as working days."""

CLOCKS_AHEAD_D: Final = (0.0, 0.0, 20.5, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 3.5, 0.0)
"""Days of each month on which US clocks are an hour ahead: second Sunday of March to first Sunday of November, the
mean of the years. Energy Policy Act of 2005, section 110."""


@dataclass(frozen=True, slots=True, eq=False)
class Tiers:
    """Steps of a tiered price.

    Attributes
    ----------
    upper_usd_per_kwh, top_usd_per_kwh : ndarray, shape () or (B,)
        Price beyond the first and beyond the second limit. [USD/kWh]
    first_limit_kwh, second_limit_kwh : ndarray, shape () or (B,)
        Energy a month at which each begins; infinite where there is none. [kWh]
    other_use_kwh : ndarray, shape () or (B,)
        What the rest of the home takes in a month: it fills the tiers first. [kWh]
    """

    upper_usd_per_kwh: FloatArray
    top_usd_per_kwh: FloatArray
    first_limit_kwh: FloatArray
    second_limit_kwh: FloatArray
    other_use_kwh: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class DailyPrice:
    """A price that holds in some hours of the clock.

    Attributes
    ----------
    from_h, to_h : ndarray, shape () or (B,)
        Hours of the clock between which it holds, past midnight where the second is not the later. [hour]
    price_usd_per_kwh : ndarray, shape (12,) or (B, 12)
        The price in these hours, by month. [USD/kWh]
    days_frac : ndarray, shape () or (B,)
        Part of the days on which it holds. [dimensionless]
    """

    from_h: FloatArray
    to_h: FloatArray
    price_usd_per_kwh: FloatArray
    days_frac: FloatArray


def flat_bill_usd(energy_kwh: FloatArray, price_usd_per_kwh: FloatArray) -> FloatArray:
    """Return monthly bills at one price.

    Parameters
    ----------
    energy_kwh : ndarray, shape (B, 12)
        Electricity by month. [kWh]
    price_usd_per_kwh : ndarray, shape () or (B,)
        Price. [USD/kWh]

    Returns
    -------
    bill_usd : ndarray, shape (B, 12)
        Energy times price. [USD]
    """
    bill: FloatArray = energy_kwh * np.asarray(price_usd_per_kwh)[..., None]
    return bill


def month_price_usd_per_kwh(
    ordinary_usd_per_kwh: FloatArray, summer_usd_per_kwh: FloatArray, is_summer: BoolArray
) -> FloatArray:
    """Return the price of each month.

    Parameters
    ----------
    ordinary_usd_per_kwh, summer_usd_per_kwh : ndarray, shape () or (B,)
        Price out of and in the summer season. [USD/kWh]
    is_summer : ndarray of bool, shape (12,) or (B, 12)
        Months of the season. [dimensionless]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (12,) or (B, 12)
        One of the two. [USD/kWh]
    """
    ordinary, summer = np.asarray(ordinary_usd_per_kwh)[..., None], np.asarray(summer_usd_per_kwh)[..., None]
    return np.where(is_summer, summer, ordinary)


def is_season(first_month: IntArray, last_month: IntArray) -> BoolArray:
    """Return which months lie in a season, over the turn of the year where the last is the earlier.

    Parameters
    ----------
    first_month, last_month : ndarray, shape () or (B,)
        First and last month, 0 for January. [dimensionless]

    Returns
    -------
    is_in : ndarray of bool, shape (12,) or (B, 12)
        True from the first to the last month. [dimensionless]
    """
    first, last = np.asarray(first_month)[..., None], np.asarray(last_month)[..., None]
    is_in: BoolArray = (np.arange(MONTHS) - first) % MONTHS <= (last - first) % MONTHS
    return is_in


def seasonal_bill_usd(energy_kwh: FloatArray, price_usd_per_kwh: FloatArray) -> FloatArray:
    """Return monthly bills at a price a month.

    Parameters
    ----------
    energy_kwh : ndarray, shape (B, 12)
        Electricity by month. [kWh]
    price_usd_per_kwh : ndarray, shape (12,) or (B, 12)
        Price of each month. [USD/kWh]

    Returns
    -------
    bill_usd : ndarray, shape (B, 12)
        Energy times price. [USD]
    """
    bill: FloatArray = energy_kwh * price_usd_per_kwh
    return bill


def tiered_bill_usd(energy_kwh: FloatArray, ordinary_usd_per_kwh: FloatArray, tiers: Tiers) -> FloatArray:
    """Return what monthly energy adds to a bill whose tiers the rest of the home has begun to fill.

    Parameters
    ----------
    energy_kwh : ndarray, shape (B, 12)
        Electricity by month. [kWh]
    ordinary_usd_per_kwh : ndarray, shape () or (B,)
        Price up to the first limit. [USD/kWh]
    tiers : Tiers
        Limits, prices beyond them, and the rest of the home.

    Returns
    -------
    bill_usd : ndarray, shape (B, 12)
        Bill of the whole home less that of its rest alone. [USD]
    """
    steps = (
        (tiers.first_limit_kwh, np.asarray(tiers.upper_usd_per_kwh) - ordinary_usd_per_kwh),
        (tiers.second_limit_kwh, np.asarray(tiers.top_usd_per_kwh) - tiers.upper_usd_per_kwh),
    )
    bill = flat_bill_usd(energy_kwh, ordinary_usd_per_kwh)
    rest = np.asarray(tiers.other_use_kwh)[..., None]
    for limit_kwh, dearer in steps:
        limit = np.asarray(limit_kwh)[..., None]
        beyond = np.maximum(energy_kwh + rest - limit, 0.0) - np.maximum(rest - limit, 0.0)
        bill = bill + beyond * np.asarray(dearer)[..., None]
    return bill


def share_of_hours_frac(from_h: FloatArray, to_h: FloatArray, ahead_h: float) -> FloatArray:
    """Return which part of each hour of the day lies between two hours of the clock.

    Parameters
    ----------
    from_h, to_h : ndarray, shape () or (B,)
        Between 0 and 24; past midnight where the second is not the later. [hour]
    ahead_h : float
        Hours that the clock is ahead of standard time. [hour]

    Returns
    -------
    share_frac : ndarray, shape (24,) or (B, 24)
        By hour of standard time, the first from midnight to one o'clock. [dimensionless]
    """
    first, past = np.asarray(from_h)[..., None], np.asarray(to_h)[..., None]
    past = np.where(past > first, past, past + HOURS)
    starts = np.arange(HOURS) + ahead_h
    turns = (starts - HOURS, starts, starts + HOURS)
    parts = [np.clip(np.minimum(turn + 1.0, past) - np.maximum(turn, first), 0.0, 1.0) for turn in turns]
    share: FloatArray = sum(parts[1:], parts[0])
    return share


def hour_price_usd_per_kwh(
    month_price_usd_per_kwh: FloatArray, others: tuple[DailyPrice, ...], changes_clock_frac: FloatArray
) -> FloatArray:
    """Return the price of each hour of the day in each month.

    Parameters
    ----------
    month_price_usd_per_kwh : ndarray, shape (12,) or (B, 12)
        Price in all other hours. [USD/kWh]
    others : tuple of DailyPrice
        Prices that hold in some hours; these do not overlap.
    changes_clock_frac : ndarray, shape () or (B,)
        1 where clocks go an hour ahead in summer, 0 where they do not. [dimensionless]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (12, 24) or (B, 12, 24)
        By hour of standard time, mean over the days of the month. [USD/kWh]
    """
    ordinary = np.asarray(month_price_usd_per_kwh)[..., None]
    ahead = np.asarray(changes_clock_frac)[..., None, None] * (np.array(CLOCKS_AHEAD_D) / MONTH_DAYS)[:, None]
    price = ordinary + np.zeros(HOURS)
    for other in others:
        plain, shifted = (share_of_hours_frac(other.from_h, other.to_h, by)[..., None, :] for by in (0.0, 1.0))
        share = ((1.0 - ahead) * plain + ahead * shifted) * np.asarray(other.days_frac)[..., None, None]
        price = price + share * (np.asarray(other.price_usd_per_kwh)[..., None] - ordinary)
    return price
