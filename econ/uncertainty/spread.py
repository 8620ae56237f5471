"""How far each figure reaches over the draws, and what choosing blindly is expected to cost."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.uncertainty.drawn import Drawn

LEVELS: Final = (0.05, 0.5, 0.95)
"""Share of draws below each value told: P5, P50, P95."""

PAIRED: Final = ("sir", "airr", "irr")
PAYBACKS: Final = ("simple_payback_yr", "discounted_payback_yr")


def quantiles(drawn: Drawn) -> Mapping[str, FloatArray]:
    """Return P5, P50 and P95 of each measure.

    Parameters
    ----------
    drawn : Drawn
        What is kept of the draws.

    Returns
    -------
    quantiles : mapping of str to ndarray, shape (3, A)
        By name of the measure. A payback that never comes counts as longer than any other and shows as infinite; a
        ratio or rate that some draw does not have shows as NaN. [any]
    """
    found = drawn.measures
    by_name = {
        "first_cost_usd": drawn.first_cost_usd,
        "cash_first_cost_usd": drawn.cash_first_cost_usd,
        "energy_cost_usd_per_yr": drawn.energy_cost_usd_per_yr,
        "lcc_usd": found.lcc_usd,
        "lcc_at_zero_hour_usd": drawn.lcc_at_zero_hour_usd,
        "annualised_cost_usd_per_yr": found.annualised_cost_usd_per_yr,
        "net_savings_usd": found.net_savings_usd,
    }
    by_name |= {name: _all_or_none(getattr(found, name)) for name in PAIRED}
    by_name |= {name: _never_as_infinite(getattr(found, name)) for name in PAYBACKS}
    return {name: _at_levels(rows) for name, rows in by_name.items()}


def _all_or_none(rows: FloatArray) -> FloatArray:
    kept: FloatArray = np.where(np.isnan(rows).any(axis=-1, keepdims=True), np.nan, rows)
    return kept


def _never_as_infinite(rows: FloatArray) -> FloatArray:
    kept: FloatArray = np.where(np.isnan(rows), np.inf, rows)
    return kept


def _at_levels(rows: FloatArray) -> FloatArray:
    """Return the values at `LEVELS` of each row of draws: of an even number the upper one, so that none is made up."""
    levels: FloatArray = np.quantile(rows, LEVELS, axis=-1, method="higher")
    return levels


def expected_regret_usd(cost_usd: FloatArray, is_eligible: BoolArray) -> FloatArray:
    """Return what taking each way, whatever happens, costs over the best one in each draw, on average.

    Parameters
    ----------
    cost_usd : array_like, shape (A, B)
        Life-cycle cost in each draw. [USD]
    is_eligible : array_like of bool, shape (A,)
        Which ways take part.

    Returns
    -------
    regret_usd : ndarray, shape (A,)
        NaN for a way that takes no part. The least of them is the value of perfect information. [USD]

    Examples
    --------
    >>> expected_regret_usd(np.array([[1.0, 5.0], [4.0, 3.0]]), np.array([True, True])).tolist()
    [1.0, 1.5]
    """
    takes_part = np.asarray(is_eligible, dtype=np.bool_)
    cost = np.where(takes_part[:, None], np.asarray(cost_usd, dtype=np.float64), np.inf)
    best = cost.min(axis=0)
    regret = np.full(len(cost), np.nan)
    if takes_part.any():
        regret[takes_part] = (cost[takes_part] - best).mean(axis=1)
    return regret
