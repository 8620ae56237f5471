"""From a case's values to what electricity costs by month, or by the hour."""

from collections.abc import Callable, Mapping
from typing import Final

import numpy as np

from econ.case.choices import CHOICES, NOT_KNOWN, code
from econ.climate.weather import Weather
from econ.energy.tariff import (
    WORKING_DAY_FRAC,
    DailyPrice,
    Tiers,
    flat_bill_usd,
    hour_price_usd_per_kwh,
    is_season,
    month_price_usd_per_kwh,
    seasonal_bill_usd,
    tiered_bill_usd,
)
from econ.evaluate.structure import Structure
from econ.kernel.arrays import BoolArray, FloatArray

Values = Mapping[str, FloatArray]

ORDINARY: Final = "prices.electricity_usd_per_kwh"
BY_HOUR: Final = "time_of_use"
"""Kind of tariff whose price goes by the hour of the day."""


def month_bill_usd(structure: Structure, values: Values, energy_kwh: FloatArray) -> FloatArray:
    """Return what monthly electricity adds to the bills, where the price does not go by the hour.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    energy_kwh : ndarray, shape (B, 12)
        Electricity by month. [kWh]

    Returns
    -------
    bill_usd : ndarray, shape (B, 12)
        Without fixed charges; by the hour it is that of electricity drawn evenly through each month. [USD]
    """
    return BILLS[structure.tariff_kind](values, energy_kwh)


def hour_price(structure: Structure, values: Values, weather: Weather) -> FloatArray | None:
    """Return the price of each hour of the weather days, where it goes by the hour.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    weather : Weather
        Months of the days.

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (24, 1, n_day) or (24, B, n_day), or None
        None where the price does not go by the hour. [USD/kWh]
    """
    if structure.tariff_kind != BY_HOUR:
        return None
    by_month = _clock_price(values)
    by_hour = np.ascontiguousarray(by_month.reshape(-1, *by_month.shape[-2:]).transpose(2, 0, 1))
    price: FloatArray = by_hour.take(weather.month, axis=2)
    return price


def even_price_usd_per_kwh(values: Values) -> FloatArray:
    """Return the price of electricity that is drawn evenly all year, as by a fan.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path; without the kind of tariff it is one price.

    Returns
    -------
    price_usd_per_kwh : ndarray, shape () or (B,)
        Of the next kWh; of a tiered price in the tier that the rest of the home has reached. [USD/kWh]
    """
    kind = CHOICES["tariff.kind"][int(np.ravel(values.get("tariff.kind", 0.0))[0])]
    if kind in ("flat", NOT_KNOWN):
        return np.asarray(values[ORDINARY])
    price: FloatArray = BILLS[kind](values, np.ones(12)).sum(axis=-1) / 12.0
    return price


def _month_price(values: Values) -> FloatArray:
    """Return the price of each month out of dear and cheap hours, shape (12,) or (B, 12). [USD/kWh]"""
    ordinary = values[ORDINARY]
    return month_price_usd_per_kwh(ordinary, values.get("tariff.summer_usd_per_kwh", ordinary), _is_summer(values))


def _is_summer(values: Values) -> BoolArray:
    first, last = (np.asarray(values[f"tariff.summer_{end}"]).astype(np.int64) for end in ("from", "to"))
    return is_season(first, last)


def _clock_price(values: Values) -> FloatArray:
    """Return the price of each hour of standard time in each month, shape (12, 24) or (B, 12, 24). [USD/kWh]"""
    ordinary, is_summer = _month_price(values), _is_summer(values)
    weekdays = np.asarray(values["tariff.peak_days"]) == code("tariff.peak_days", "weekdays")
    ahead = np.asarray(values["tariff.clock_change"]) != code("tariff.clock_change", "no")
    dear = month_price_usd_per_kwh(
        values.get("tariff.winter_peak_usd_per_kwh", np.asarray(np.nan)), values["tariff.peak_usd_per_kwh"], is_summer
    )
    others = [
        _hours(values, "peak", np.where(np.isnan(dear), ordinary, dear), np.where(weekdays, WORKING_DAY_FRAC, 1.0))
    ]
    if "tariff.cheap_usd_per_kwh" in values:
        cheap = np.asarray(values["tariff.cheap_usd_per_kwh"])[..., None] + np.zeros(12)
        others.append(_hours(values, "cheap", cheap, np.asarray(1.0)))
    return hour_price_usd_per_kwh(ordinary, tuple(others), ahead.astype(np.float64))


def _hours(values: Values, name: str, price: FloatArray, days_frac: FloatArray) -> DailyPrice:
    return DailyPrice(values[f"tariff.{name}_from_h"], values[f"tariff.{name}_to_h"], price, days_frac)


def _flat(values: Values, energy_kwh: FloatArray) -> FloatArray:
    return flat_bill_usd(energy_kwh, values[ORDINARY])


def _seasonal(values: Values, energy_kwh: FloatArray) -> FloatArray:
    return seasonal_bill_usd(energy_kwh, _month_price(values))


def _tiered(values: Values, energy_kwh: FloatArray) -> FloatArray:
    upper, nothing = values["tariff.upper_usd_per_kwh"], np.asarray(np.inf)
    tiers = Tiers(
        upper_usd_per_kwh=upper,
        top_usd_per_kwh=values.get("tariff.top_usd_per_kwh", upper),
        first_limit_kwh=values["tariff.first_limit_kwh"],
        second_limit_kwh=values.get("tariff.second_limit_kwh", nothing),
        other_use_kwh=values["tariff.other_use_kwh"],
    )
    return tiered_bill_usd(energy_kwh, values[ORDINARY], tiers)


def _evenly(values: Values, energy_kwh: FloatArray) -> FloatArray:
    return seasonal_bill_usd(energy_kwh, _clock_price(values).mean(axis=-1))


BILLS: Final[Mapping[str, Callable[[Values, FloatArray], FloatArray]]] = {
    "flat": _flat,
    "seasonal": _seasonal,
    "tiered": _tiered,
    BY_HOUR: _evenly,
}
"""Monthly bills of each kind of tariff: the options of ``tariff.kind``."""
