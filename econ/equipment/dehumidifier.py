"""A dehumidifier beside the machine: what it draws, and the heat it leaves in the room."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import VAPOUR_HEAT_J_PER_KG

VAPOUR_HEAT_KWH_PER_KG: Final = VAPOUR_HEAT_J_PER_KG / 3.6e6
"""kWh to condense a kg of water vapour: the heat of vaporisation at 0 degC over 3.6 MJ."""


def heat_per_drying(yield_kg_per_kwh: FloatArray) -> FloatArray:
    """Return the heat a dehumidifier gives off for each unit of latent heat it takes out.

    Parameters
    ----------
    yield_kg_per_kwh : array_like, shape (...)
        Water taken out with each kWh. [kg/kWh]

    Returns
    -------
    heat_frac : ndarray, shape (...)
        1 for the vapour that condenses, and the electricity that does it. [dimensionless]
    """
    heat: FloatArray = 1.0 + 1.0 / (np.asarray(yield_kg_per_kwh) * VAPOUR_HEAT_KWH_PER_KG)
    return heat


def cooling_with_dehumidifier_w(
    need_cool_w: FloatArray, need_latent_w: FloatArray, moisture_share_frac: FloatArray, heat_frac: FloatArray
) -> FloatArray:
    """Return the sensible cooling wanted once a dehumidifier takes what the machine leaves of the moisture.

    Parameters
    ----------
    need_cool_w, need_latent_w : ndarray, shape (..., B, n)
        Sensible cooling and drying wanted without it. [W]
    moisture_share_frac : ndarray, shape (B,)
        Drying that comes along with each unit of sensible cooling; 0 for no machine. [dimensionless]
    heat_frac : ndarray, shape (B,)
        Heat given off for each unit of latent heat taken out. [dimensionless]

    Returns
    -------
    cool_w : ndarray, shape (..., B, n)
        More than before in hours that want cooling and have moisture left; the same in others. [W]

    Notes
    -----
    The machine runs longer to carry the heat off and dries more by it: with m the share and h the heat, the sensible
    need C meets C = C0 + h (L - m C), so C = (C0 + h L)/(1 + m h). No capacity limits the dehumidifier.
    """
    m, h = moisture_share_frac[:, None], heat_frac[:, None]
    together_w = (need_cool_w + h * need_latent_w) / (1.0 + m * h)
    cool_w: FloatArray = np.where(need_cool_w > 0.0, np.maximum(together_w, need_cool_w), 0.0)
    return cool_w


def heating_with_dehumidifier_w(
    need_heat_w: FloatArray, need_latent_w: FloatArray, heat_frac: FloatArray
) -> FloatArray:
    """Return the heating wanted once a dehumidifier takes all moisture and warms the room by it.

    Parameters
    ----------
    need_heat_w, need_latent_w : ndarray, shape (..., B, n)
        Heating and drying wanted without it. [W]
    heat_frac : ndarray, shape (B,)
        Heat given off for each unit of latent heat taken out. [dimensionless]

    Returns
    -------
    heat_w : ndarray, shape (..., B, n)
        Never below 0; heat beyond the need warms the room and is not counted. [W]
    """
    heat_w: FloatArray = np.maximum(need_heat_w - heat_frac[:, None] * need_latent_w, 0.0)
    return heat_w
