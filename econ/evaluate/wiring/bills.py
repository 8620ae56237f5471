"""The factors by which bills scale what rooms need."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray

Values = Mapping[str, FloatArray]

FACTORS: Final = {side: f"bills.{side}_factor_frac" for side in ("cooling", "heating")}
"""Where the factor of each side stands; no line where bills scale nothing."""


def by_bills(values: Values, side: str, power_w: FloatArray) -> FloatArray:
    """Return what rooms need, scaled as bills say.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    side : str
        "cooling", which drying goes with, or "heating".
    power_w : ndarray, shape (24, B, n_day)
        Need as the model gives it. [W]

    Returns
    -------
    power_w : ndarray, shape (24, B, n_day)
        The same array where bills scale nothing. [W]
    """
    if FACTORS[side] not in values:
        return power_w
    scaled: FloatArray = power_w * np.asarray(values[FACTORS[side]])[..., None]
    return scaled
