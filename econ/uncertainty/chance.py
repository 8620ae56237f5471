"""Chance of being the cheapest, with its sampling error."""

from dataclasses import dataclass
from math import ceil, sqrt
from statistics import NormalDist
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError, ShapeError
from econ.uncertainty.draws import SCRAMBLES

T_95: Final = 2.131449545559323
"""Quantile 0.975 of Student's t with one degree of freedom fewer than `SCRAMBLES`; a test holds it to scipy's."""


@dataclass(frozen=True, slots=True, eq=False)
class Chance:
    """Share of draws in which each alternative costs least.

    Attributes
    ----------
    share_frac : ndarray, shape (A,)
        Share; NaN for an alternative that does not take part. [dimensionless]
    error_frac : ndarray, shape (A,)
        Standard error of the share, from how far independent scrambles differ; NaN alike. [dimensionless]
    draws_used : int
        Number of draws behind it. [dimensionless]
    """

    share_frac: FloatArray
    error_frac: FloatArray
    draws_used: int

    @property
    def half_width_frac(self) -> FloatArray:
        """Half of the interval about each share that holds the exact one in 19 of 20 seeds, shape (A,)."""
        half: FloatArray = T_95 * self.error_frac
        return half


def is_lowest_share(lcc_usd: FloatArray, is_eligible: BoolArray) -> FloatArray:
    """Return in each draw 1 for the alternative that costs least, split evenly between equals.

    Parameters
    ----------
    lcc_usd : array_like, shape (A, B)
        Life-cycle cost in each draw. [USD]
    is_eligible : array_like of bool, shape (A,)
        Which alternatives take part.

    Returns
    -------
    share : ndarray, shape (A, B)
        Adds up to 1 in each draw if any alternative takes part. [dimensionless]
    """
    cost = np.where(np.asarray(is_eligible)[:, None], np.asarray(lcc_usd, dtype=np.float64), np.inf)
    is_lowest = (cost == cost.min(axis=0)) & np.isfinite(cost)
    share: FloatArray = is_lowest / np.maximum(is_lowest.sum(axis=0), 1)
    return share


def chance_of_lowest(lcc_usd: FloatArray, is_eligible: BoolArray) -> Chance:
    """Return how often each alternative has the lowest life-cycle cost.

    Parameters
    ----------
    lcc_usd : array_like, shape (A, B)
        Life-cycle cost in each draw, draws in the order `drawn` gives them. [USD]
    is_eligible : array_like of bool, shape (A,)
        Which alternatives take part.

    Returns
    -------
    chance : Chance
        Share and standard error.

    Raises
    ------
    ShapeError
        If the draws cannot be split into equal scrambles.

    Notes
    -----
    The draws are `SCRAMBLES` independent runs one after the other; the error is the standard deviation of their shares
    over the root of their number. It is never put below half a draw in each run, as runs that all agree have still been
    looked at no closer than that; an alternative that stands alone has no error.
    """
    share = is_lowest_share(lcc_usd, is_eligible)
    n_way, n_draw = share.shape
    if n_draw == 0 or n_draw % SCRAMBLES:
        raise ShapeError(f"{n_draw} draws do not split into {SCRAMBLES} equal scrambles; use a number from draw_count.")
    by_run = share.reshape(n_way, SCRAMBLES, -1).mean(axis=-1)
    is_out = ~np.asarray(is_eligible)
    half_a_draw = 0.5 * SCRAMBLES / n_draw if np.count_nonzero(~is_out) > 1 else 0.0
    mean, spread = by_run.mean(axis=-1), np.maximum(by_run.std(axis=-1, ddof=1), half_a_draw)
    error = spread / sqrt(SCRAMBLES)
    return Chance(np.where(is_out, np.nan, mean), np.where(is_out, np.nan, error), n_draw)


def binomial_error(share_frac: float, n_draw: int) -> float:
    """Return the standard error of a share found by plain random draws, an upper mark for evenly spread ones.

    Parameters
    ----------
    share_frac : float
        Share between 0 and 1. [dimensionless]
    n_draw : int
        Number of draws. [dimensionless]

    Returns
    -------
    error : float
        sqrt(p (1 - p) / n). [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the share is not between 0 and 1 or nothing was drawn.

    Examples
    --------
    >>> round(binomial_error(0.2, 10_000), 12)
    0.004
    """
    if not 0.0 <= share_frac <= 1.0:
        raise OutOfRangeError("share", share_frac, "", "between 0 and 1", "Give a share, not a percentage.")
    if n_draw < 1:
        raise OutOfRangeError("draws", n_draw, "", "1 or more", "Ask for at least one draw.")
    return sqrt(share_frac * (1.0 - share_frac) / n_draw)


def draws_needed(share_frac: float, half_width_frac: float, confidence_frac: float) -> int:
    """Return how many plain random draws hold a share to a given half width.

    Parameters
    ----------
    share_frac : float
        Share expected; 0.5 is the worst. [dimensionless]
    half_width_frac : float
        Half width wanted, above 0. [dimensionless]
    confidence_frac : float
        Confidence wanted, such as 0.95. [dimensionless]

    Returns
    -------
    n_draw : int
        Smallest number that does. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the half width is not above 0 or the share not between 0 and 1.

    Examples
    --------
    >>> draws_needed(0.5, 0.01, 0.95)
    9604
    """
    if not half_width_frac > 0.0:
        raise OutOfRangeError("half width", half_width_frac, "", "above 0", "Give the precision wanted.")
    z = NormalDist().inv_cdf(0.5 * (1.0 + confidence_frac))
    return ceil((z * binomial_error(share_frac, 1) / half_width_frac) ** 2)
