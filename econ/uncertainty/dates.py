"""First cool days: how far waits, hours and prices within their ranges move the date of service."""

from dataclasses import replace
from typing import Final

import numpy as np

from econ.evaluate.meanwhile import FirstCoolDays
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet, with_columns
from econ.evaluate.shortage import taken
from econ.evaluate.structure import Structure
from econ.evaluate.waiting import interim_cost_usd
from econ.evaluate.wiring.installation import installation
from econ.kernel.arrays import FloatArray
from econ.tables.tasks import installation_tables
from econ.uncertainty.draws import drawn

OUTER_FRAC: Final = 0.1
"""Share of the tries before the low end of a range, and after its high end. Assumption: eight in ten are told."""

TRIES: Final = 512
"""Tries of waits and hours, apart from the draws of the whole case; ends of dates move by a day with twice as many."""

SEED: Final = 1
"""Seed of the tries."""

_UNITS: Final = ("day", "hour")
"""Units of waits, hours of work and hours of a work day."""

_PRICES: Final = ("costs.interim_rental_usd_per_d", "prices.electricity_usd_per_kwh", "interim.cooling_cop")
"""What the price of cooling until service depends on beside the date."""


def with_first_cool_days(found: Result, structure: Structure, sheet: Sheet) -> Result:
    """Return a result with the low and high of its dates of service.

    Parameters
    ----------
    found : Result
        At likely values, one row.
    structure : Structure
        Who does what.
    sheet : Sheet
        Ranges.

    Notes
    -----
    The tries are their own and always the same ones, so that a date does not move with the draws asked for.
    """
    service_d, interim_usd = tried(found, structure, sheet)
    likely_d = np.stack([way.in_service_d for way in found.alternatives])
    likely_usd = np.stack([way.interim_cost_usd for way in found.alternatives])
    days, money = outer(service_d, likely_d), outer(interim_usd, likely_usd)
    return replace(found, first_cool_days=FirstCoolDays(*days, *money, service_d.shape[1]))


def tried(found: Result, structure: Structure, sheet: Sheet) -> tuple[FloatArray, FloatArray]:
    """Return dates of service and cost of cooling until then at tries of waits, hours and prices, shape (A, B)."""
    is_tried = np.array([unit in _UNITS for unit in sheet.unit]) | np.isin(sheet.path, _PRICES)
    low, high = (np.where(is_tried, end, sheet.likely) for end in (sheet.low, sheet.high))
    some = replace(sheet, low=low, high=high)
    varies = low < high
    columns = np.repeat(sheet.likely[:, None], TRIES, axis=1)
    columns[varies] = drawn(low[varies], sheet.likely[varies], high[varies], TRIES, SEED)
    need = taken(found.waiting.need, np.zeros(TRIES, dtype=np.int64))
    ways = installation(structure, with_columns(some, columns), installation_tables(), TRIES, need=need)
    dates = np.stack([way.schedule.in_service_d for way in ways])
    return dates, np.stack([interim_cost_usd(way.line_items) for way in ways])


def outer(tries: FloatArray, likely: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the low and high end of tries, moved out to hold the likely value where it lies beyond them.

    Parameters
    ----------
    tries : ndarray, shape (A, B)
        Values. [any]
    likely : ndarray, shape (A, 1)
        Likely values. [any]

    Returns
    -------
    low, high : ndarray, shape (A,)
        NaN where there are none. [any]

    Examples
    --------
    >>> outer(np.array([[0.0, 10.0, 20.0]]), np.array([[10.0]]))
    (array([2.]), array([18.]))
    """
    ends = np.quantile(tries, (OUTER_FRAC, 1.0 - OUTER_FRAC), axis=1)
    return np.minimum(ends[0], likely[:, 0]), np.maximum(ends[1], likely[:, 0])
