"""The hot season: when in the year most of its cooling degree-days fall."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR, MONTH_DAYS

EDGE_FRAC: Final = 0.1
"""Share of the year's cooling degree-days before the hot season begins, and after it ends. Assumption: the eight
tenths between are what people call the summer."""


def hot_season_d(cooling_kd: FloatArray, decision_doy_d: float) -> tuple[float, float]:
    """Return first and last day of the hot season at hand, or of the coming one where it is over, from the decision.

    Parameters
    ----------
    cooling_kd : ndarray, shape (12,)
        Cooling degree-days of each month, evenly spread over it. [K*day]
    decision_doy_d : float
        Day of the calendar year of the decision, 0 for 1 January. [day]

    Returns
    -------
    from_d, to_d : float
        Days after the decision, the first below 0 where the season has begun; both NaN without degree-days. [day]

    Notes
    -----
    Counted from the beginning of the month with the fewest degree-days, so that a southern summer is one piece.

    Examples
    --------
    >>> hot_season_d(np.array([0.0] * 6 + [310.0] + [0.0] * 5), 0.0)  # July alone: 3.1 days in, 3.1 days before its end
    (184.1, 208.9)
    >>> hot_season_d(np.array([0.0] * 6 + [310.0] + [0.0] * 5), 200.0)
    (-15.9, 8.9)
    """
    total_kd = float(cooling_kd.sum())
    if total_kd <= 0.0:
        return np.nan, np.nan
    days = np.array(MONTH_DAYS, dtype=np.float64)
    order = (int(np.argmin(cooling_kd)) + np.arange(12)) % 12
    passed_kd = np.concatenate([[0.0], np.cumsum(cooling_kd[order])])
    passed_d = np.concatenate([[0.0], np.cumsum(days[order])])
    first_d = float(days[: order[0]].sum())
    edges = [first_d + _day_of(share * total_kd, passed_kd, passed_d) for share in (EDGE_FRAC, 1.0 - EDGE_FRAC)]
    to_d = (edges[1] - decision_doy_d) % DAYS_PER_YEAR
    return round(to_d - (edges[1] - edges[0]), 6), round(to_d, 6)


def _day_of(wanted_kd: float, passed_kd: FloatArray, passed_d: FloatArray) -> float:
    """Return the day on which so many degree-days have passed."""
    month = int(np.searchsorted(passed_kd, wanted_kd, side="left")) - 1
    part = (wanted_kd - passed_kd[month]) / (passed_kd[month + 1] - passed_kd[month])
    return float(passed_d[month] + part * (passed_d[month + 1] - passed_d[month]))
