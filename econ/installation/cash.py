"""When the money of a first cost leaves the pocket: by month from the decision until the room is cool."""

from typing import Final

import numpy as np

from econ.installation.first_cost import LineItems
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR

MONTH_D: Final = DAYS_PER_YEAR / 12.0
"""d in a month of cash."""

AT_ONCE: Final = frozenset({"equipment", "materials", "measures", "tools", "permit", "tax"})
"""Categories paid when ordered; the others are paid on the day it works. Assumption: common practice, no source."""

CONTRACTOR: Final = "contractor"


def cash_by_month_usd(
    items: LineItems, in_service_d: FloatArray, deposit_frac: FloatArray, month_count: int
) -> FloatArray:
    """Return the cash that leaves in each month after the decision.

    Parameters
    ----------
    items : LineItems
        First cost.
    in_service_d : ndarray, shape (B,)
        Days from the decision to service; NaN counts as none. [day]
    deposit_frac : array_like, shape () or (B,)
        Share of a contractor's lines that is paid at signing, the rest when it works. [dimensionless]
    month_count : int
        Months wanted; what comes later stands in the last one. [dimensionless]

    Returns
    -------
    cash_usd : ndarray, shape (B, month_count)
        Month 0 holds the decision; the sum is the cash first cost. [USD]

    Notes
    -----
    Goods, tools, permits and their tax are paid when ordered, labour, disposal and allowances when it works. Whatever a
    contractor supplies goes by deposit and rest. Incentives come after that and are left out.
    """
    is_cash = items.is_cash.astype(np.float64)
    hired = np.array([party == CONTRACTOR for party in items.party], dtype=np.float64) * is_cash
    ordered = np.array([category in AT_ONCE for category in items.category], dtype=np.float64) * is_cash * (1.0 - hired)
    by_contractor, at_order = items.amount_usd @ hired, items.amount_usd @ ordered
    first = at_order + np.asarray(deposit_frac, dtype=np.float64) * by_contractor
    rest = items.amount_usd @ is_cash - first
    month = np.minimum(np.nan_to_num(np.asarray(in_service_d)) // MONTH_D, month_count - 1).astype(np.int64)
    cash = np.zeros((len(first), month_count))
    cash[:, 0] = first
    cash[np.arange(len(first)), month] += rest
    return cash
