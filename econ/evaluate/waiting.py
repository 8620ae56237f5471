"""What waiting for each way means: warmth, cooling meanwhile and its cost, and when the summer is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from econ.climate.season import hot_season_d
from econ.evaluate.meanwhile import WaitingYear
from econ.evaluate.shortage import taken
from econ.evaluate.structure import Structure
from econ.evaluate.summary import cooling_by_month_kd
from econ.evaluate.wiring.installation import Installation
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.lifecycle import AlternativeCosts, upkeep_usd_per_yr
from econ.evaluate.wiring.waiting import LINE_KEY, makeshift_usd, on_day, passed
from econ.installation.first_cost import LineItems
from econ.installation.waiting import InterimNeed
from econ.kernel.alternative import KEEP
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.tables.loaders import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Waiting:
    """What waiting for each way means, shape (A, B), in the order of ALTERNATIVES; 0 for keep_as_is.

    Attributes
    ----------
    cdd_kd, too_warm_h, too_warm_kh : ndarray, shape (A, B)
        Cooling degree-days, hours too warm and degree-hours until service. [K*day] [hour] [K*hour]
    interim_usd : ndarray, shape (A, B)
        Hire and electricity of what cools until service, within the first cost. [USD]
    until_service_usd : ndarray, shape (A, B)
        Energy and upkeep of what is there now until service, within the yearly costs. [USD]
    day_kd, day_h, day_usd : ndarray, shape (A, B)
        The same of one day more at the date of service, and what a hired unit with its electricity would cost that
        day, hired or not. [K*day] [hour] [USD]
    by_month_kd : ndarray, shape (B, 12)
        Cooling degree-days of each month. [K*day]
    year : WaitingYear
        The months of the likely row, and the summer.
    """

    cdd_kd: FloatArray
    too_warm_h: FloatArray
    too_warm_kh: FloatArray
    interim_usd: FloatArray
    until_service_usd: FloatArray
    day_kd: FloatArray
    day_h: FloatArray
    day_usd: FloatArray
    by_month_kd: FloatArray
    year: WaitingYear

    def of(self, way: int) -> dict[str, FloatArray]:
        """Return one way's part, each shape (B,), by its name in an AlternativeResult."""
        return {
            "waiting_cdd_kd": self.cdd_kd[way],
            "waiting_h": self.too_warm_h[way],
            "waiting_kh": self.too_warm_kh[way],
            "waiting_day_kd": self.day_kd[way],
            "waiting_day_h": self.day_h[way],
            "waiting_day_usd": self.day_usd[way],
            "interim_cost_usd": self.interim_usd[way],
            "until_service_usd": self.until_service_usd[way],
        }


def waiting(
    structure: Structure,
    values: Mapping[str, FloatArray],
    tables: Tables,
    ways: Sequence[Installation],
    costs: AlternativeCosts,
    need: InterimNeed,
) -> Waiting:
    """Return what waiting for each way means.

    Parameters
    ----------
    structure : Structure
        Weather place.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    tables : Tables
        Weather places.
    ways : sequence of Installation
        Dates and lines of each way.
    costs : AlternativeCosts
        Upkeep of what is there now.
    need : InterimNeed
        What the room lacks each month.
    """
    n_row = len(need.too_warm_h)
    inputs = Inputs(values, n_row)
    by_month_kd = cooling_by_month_kd(structure, values, tables, n_row)
    hire_usd = makeshift_usd(need, inputs)
    upkeep_usd = upkeep_usd_per_yr(values, costs)[KEEP]
    service_d = [way.schedule.in_service_d for way in ways]

    def until(by_month: FloatArray) -> FloatArray:
        return np.stack([passed(by_month, day, inputs) for day in service_d])

    def at(by_month: FloatArray) -> FloatArray:
        return np.stack([on_day(by_month, day, inputs) * np.isfinite(day) for day in service_d])

    return Waiting(
        cdd_kd=until(by_month_kd),
        too_warm_h=until(need.too_warm_h),
        too_warm_kh=until(need.too_warm_kh),
        interim_usd=np.stack([interim_cost_usd(way.line_items) for way in ways]),
        until_service_usd=until(need.usd) + upkeep_usd * np.nan_to_num(np.stack(service_d)) / DAYS_PER_YEAR,
        day_kd=at(by_month_kd),
        day_h=at(need.too_warm_h),
        day_usd=at(hire_usd),
        by_month_kd=by_month_kd,
        year=WaitingYear(
            taken(need, np.zeros(1, dtype=np.int64)),
            by_month_kd[0],
            hire_usd[0],
            *hot_season_d(by_month_kd[0], float(inputs.number("place.decision_doy")[0])),
        ),
    )


def interim_cost_usd(items: LineItems) -> FloatArray:
    """Return what cooling until service costs among a way's lines, shape (B,). [USD]"""
    is_interim = np.array([key.startswith(LINE_KEY) for key in items.key], dtype=np.float64)
    total: FloatArray = items.amount_usd @ is_interim
    return total
