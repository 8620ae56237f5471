"""The time until service: what passes of the year's months, and what cools the room meanwhile."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN
from econ.evaluate.wiring.energy import EnergyUse
from econ.evaluate.wiring.installation_site import Inputs
from econ.installation.first_cost import Line
from econ.installation.waiting import HIRE_MONTH_D, InterimNeed, hired_months, warm_days
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS
from econ.lifecycle.service import waited_month_frac
from econ.tables.tasks import InstallationTables

LINE_KEY: Final = "interim_"
"""How the keys of cost lines of interim cooling begin."""

_MONTH_D: Final = np.array(MONTH_DAYS, dtype=np.float64)
_MONTH_OF_DAY: Final = np.repeat(np.arange(12), np.array(MONTH_DAYS, dtype=np.int64))


def interim_need(values: Mapping[str, FloatArray], use: EnergyUse) -> InterimNeed:
    """Return what the room lacks each month.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    use : EnergyUse
        A full year with what is there now.
    """
    inputs = Inputs(values, len(use.too_warm_h))
    total_kh = use.too_warm_kh.sum(axis=1, keepdims=True)
    share = np.divide(use.too_warm_kh, total_kh, out=np.zeros_like(use.too_warm_kh), where=total_kh > 0.0)
    return InterimNeed(
        too_warm_h=use.too_warm_h,
        too_warm_kh=use.too_warm_kh,
        warm_d=warm_days(use.too_warm_h, _MONTH_D, inputs.number("rules.interim_day_h")),
        undone_kwh=share * use.unmet_cooling_kwh_per_yr[:, None],
        usd=use.electricity_usd + use.fuel_usd,
    )


def passed(by_month: FloatArray, wait_d: FloatArray, inputs: Inputs) -> FloatArray:
    """Return what of monthly amounts passes before service.

    Parameters
    ----------
    by_month : ndarray, shape (B, 12)
        Amounts of the months of a year. [any]
    wait_d : ndarray, shape (B,)
        Days from the decision to service; NaN counts as none. [day]
    inputs : Inputs
        Day of the year of the decision.

    Returns
    -------
    passed : ndarray, shape (B,)
        Parts of a month in proportion; every whole year counts whole. [any]
    """
    years, rest_d = np.divmod(np.nan_to_num(wait_d, nan=0.0), DAYS_PER_YEAR)
    share = waited_month_frac(rest_d, float(inputs.number("place.decision_doy")[0])) + years[:, None]
    total: FloatArray = (share * by_month).sum(axis=1)
    return total


def on_day(by_month: FloatArray, after_d: FloatArray, inputs: Inputs) -> FloatArray:
    """Return one day's part of monthly amounts, that of a day counted from the decision; NaN is the decision itself.

    Parameters
    ----------
    by_month : ndarray, shape (B, 12)
        Amounts of the months of a year. [any]
    after_d : ndarray, shape (B,)
        Days from the decision. [day]
    inputs : Inputs
        Day of the year of the decision.
    """
    doy = int(inputs.number("place.decision_doy")[0])
    day = (doy + np.floor(np.nan_to_num(after_d, nan=0.0)).astype(np.int64)) % len(_MONTH_OF_DAY)
    month = _MONTH_OF_DAY[day]
    part: FloatArray = by_month[np.arange(len(by_month)), month] / _MONTH_D[month]
    return part


def makeshift_usd(need: InterimNeed, inputs: Inputs) -> FloatArray:
    """Return what a hired portable unit costs in each month, day by day, its electricity included, shape (B, 12)."""
    hire = need.warm_d * inputs.cost("interim_rental_usd_per_d")[:, None]
    return hire + need.undone_kwh * _run_usd_per_kwh(inputs)[:, None]


def interim_lines(
    inputs: Inputs, tables: InstallationTables, need: InterimNeed | None, in_service_d: FloatArray
) -> list[Line]:
    """Return what cooling until service costs beyond what the yearly costs hold already.

    Parameters
    ----------
    inputs : Inputs
        The case.
    tables : InstallationTables
        Words of the cost table.
    need : InterimNeed or None
        What the room lacks; None where nobody has asked.
    in_service_d : ndarray, shape (B,)
        Days to service. [day]

    Returns
    -------
    lines : list of Line
        Hire by begun months and the unit's electricity; both 0 unless something is hired or borrowed. What is not
        known counts as hired.
    """
    if need is None:
        return []
    is_hired = inputs.is_option("work.interim", "rent_portable", NOT_KNOWN)
    is_run = (is_hired | inputs.is_option("work.interim", "borrow")) & _is_wanted(need, in_service_d, inputs)
    warm_d = passed(need.warm_d, in_service_d, inputs)
    months = hired_months(warm_d, inputs.number("rules.interim_least_d")) * is_hired
    kwh = passed(need.undone_kwh, in_service_d, inputs) / inputs.number("interim.cooling_cop") * is_run
    price = inputs.cost("interim_rental_usd_per_d") * HIRE_MONTH_D
    hire = "Portable unit hired until service"
    run = "Electricity of what cools until service"
    paid = inputs.number("prices.electricity_usd_per_kwh")
    source = tables.source["interim_rental_usd_per_d"]
    return [
        Line(f"{LINE_KEY}hire", hire, "interim", "self", "month", source, months, price),
        Line(f"{LINE_KEY}run", run, "interim", "self", "kWh", "case: prices.electricity_usd_per_kwh", kwh, paid),
    ]


def _is_wanted(need: InterimNeed, in_service_d: FloatArray, inputs: Inputs) -> BoolArray:
    """Return whether the warm days until service are as many as anybody would bring something in for."""
    wanted: BoolArray = passed(need.warm_d, in_service_d, inputs) >= inputs.number("rules.interim_least_d")
    return wanted


def _run_usd_per_kwh(inputs: Inputs) -> FloatArray:
    price: FloatArray = inputs.number("prices.electricity_usd_per_kwh") / inputs.number("interim.cooling_cop")
    return price
