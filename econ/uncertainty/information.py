"""What it is worth to know before deciding: all inputs, or one of them."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import ShapeError

BINS: Final = 64
"""Equal-count bins of the sorted draws of one input; one draw a bin where there are fewer draws than bins."""


def perfect_information_usd(cost_usd: FloatArray, weight_frac: FloatArray | None = None) -> FloatArray:
    """Return the expected value of knowing every input before deciding.

    Parameters
    ----------
    cost_usd : array_like, shape (A, B)
        Cost of each alternative in each draw; payoffs go in with their sign turned. [USD]
    weight_frac : array_like, shape (B,), optional
        How likely each draw is, adding up to 1; all alike if left out. [dimensionless]

    Returns
    -------
    value_usd : ndarray, shape ()
        Lowest expected cost less the expected lowest cost: never negative, and 0 where one alternative is lowest in
        every draw. It is also the expected regret of the best choice. [USD]

    References
    ----------
    .. [1] Raiffa & Schlaifer (1961), Applied Statistical Decision Theory, ch. 4.

    Examples
    --------
    >>> float(perfect_information_usd(np.array([[1.0, 5.0], [4.0, 3.0]])))
    1.0
    """
    cost = np.asarray(cost_usd, dtype=np.float64)
    weight = np.full(cost.shape[-1], 1.0 / cost.shape[-1]) if weight_frac is None else np.asarray(weight_frac)
    best = np.argmin(np.sum(cost * weight, axis=-1))
    value: FloatArray = np.sum(weight * (cost[best] - cost.min(axis=0)))
    return value


def input_information_usd(cost_usd: FloatArray, value: FloatArray, bin_count: int = BINS) -> FloatArray:
    """Return the expected value of knowing each input alone before deciding.

    Parameters
    ----------
    cost_usd : array_like, shape (A, B)
        Cost of each alternative in each draw. [USD]
    value : array_like, shape (n_input, B)
        Draws of the inputs. [any]
    bin_count : int, optional
        Bins at most. [dimensionless]

    Returns
    -------
    value_usd : ndarray, shape (n_input,)
        Never negative, and 0 for an input without spread. Within a bin nothing more is known than the bin. [USD]

    Raises
    ------
    ShapeError
        If the draws do not split into equal bins.

    Notes
    -----
    The draws are sorted by one input and cut into `bin_count` bins of equal count; in each bin the alternative with the
    lowest mean cost is taken. Few draws a bin overstate the value a little, as chance differences look like knowledge.

    References
    ----------
    .. [1] Strong & Oakley (2013), Medical Decision Making 33(6), p. 755.
    """
    cost, inputs = np.asarray(cost_usd, dtype=np.float64), np.asarray(value, dtype=np.float64)
    n_draw = cost.shape[-1]
    n_bin = min(bin_count, n_draw)
    if n_draw % n_bin:
        raise ShapeError(f"{n_draw} draws do not split into {n_bin} equal bins; use a number from draw_count.")
    order = np.argsort(inputs, axis=-1, kind="stable")
    by_bin = cost[:, order].reshape(len(cost), len(inputs), n_bin, -1).mean(axis=-1)
    saved = by_bin.mean(axis=-1).min(axis=0) - by_bin.min(axis=0).mean(axis=-1)
    has_spread = inputs.min(axis=-1) < inputs.max(axis=-1)
    worth: FloatArray = np.where(has_spread, np.maximum(saved, 0.0), 0.0)
    return worth
