"""The same streams in dollars of each year, discounted at the nominal rate: another way of telling, the same answer."""

from dataclasses import fields

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.lifecycle.discount import single_compound_amount_factor
from econ.lifecycle.streams import Streams


def nominal_streams(streams: Streams, inflation_frac: FloatArray) -> Streams:
    """Return constant-dollar streams in the dollars of each year.

    Parameters
    ----------
    streams : Streams
        Constant dollars.
    inflation_frac : array_like, shape () or (B,)
        Yearly inflation. [dimensionless]

    Returns
    -------
    streams : Streams
        Every amount of year t times (1 + I)**t; discounted at (1 + d)(1 + I) - 1 they are worth the same.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), section on inflation; 10 CFR 436.14(a).
    """
    years = np.arange(streams.energy_usd.shape[-1], dtype=np.float64)
    level = single_compound_amount_factor(np.asarray(inflation_frac)[..., None], years)
    yearly = {each.name: getattr(streams, each.name) * level for each in fields(Streams) if each.name != "first_usd"}
    return Streams(first_usd=streams.first_usd, **yearly)
