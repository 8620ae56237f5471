"""What a portable unit's hose does to the room: while it runs, as much outdoor air comes in as it blows out."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import (
    AIR_DENSITY_KG_PER_M3,
    AIR_HEAT_J_PER_KGK,
    BTU_PER_WH,
    STANDARD_PRESSURE_PA,
    VAPOUR_HEAT_J_PER_KG,
)

RATED_ABOVE_K: Final = 3.0
"""K by which outdoor air is warmer than the room in the label's capacity, which counts that air already: 0.8 of 83 degF
and 0.2 of 95 degF against 80 degF, 5.4 degF. 10 CFR 430 appendix CC (the conditions read, the weights from memory).
Vapour in the two conditions and in the room weighs up to nothing."""

LEAST_OUTPUT_FRAC: Final = 0.1
"""Share of the label's capacity left at least, however hot the air. Assumption: keeps the time it runs finite."""


@dataclass(frozen=True, slots=True, eq=False)
class Hose:
    """Portable units, one row each.

    Attributes
    ----------
    air_w_per_k : ndarray, shape (B,)
        Heat a kelvin that the air let in brings while the units run; 0 for rows without. [W/K]
    vapour_w : ndarray, shape (B,)
        Latent heat a kg/kg of humidity difference, likewise. [W]
    output_w : ndarray, shape (B,)
        Sensible part of the label's capacity, all units together. [W]
    is_in : ndarray of bool, shape (B, n_day)
        Days on which they stand ready.
    """

    air_w_per_k: FloatArray
    vapour_w: FloatArray
    output_w: FloatArray
    is_in: BoolArray


EXHAUST_AT_W: Final = 8000.0 / BTU_PER_WH
"""W of label capacity for which the usual flow of a hose is given; that of other sizes is in proportion."""


def unbalanced_m3_per_s(blown_m3_per_s: FloatArray, leaks_m3_per_s: FloatArray) -> FloatArray:
    """Return the outdoor air that comes in for what is blown out, beyond what leaks in anyway.

    Parameters
    ----------
    blown_m3_per_s : ndarray, shape (B,)
        Air blown out while units run. [m^3/s]
    leaks_m3_per_s : ndarray, shape (B,)
        Air that leaks in without them. [m^3/s]

    Returns
    -------
    unbalanced_m3_per_s : ndarray, shape (B,)
        Less than what is blown out: part of the leaks turns round. [m^3/s]

    References
    ----------
    .. [1] ASHRAE Handbook Fundamentals (2017), ch. 16, exhaust and infiltration added in quadrature; from memory.

    Examples
    --------
    >>> round(float(unbalanced_m3_per_s(np.array(0.08), np.array(0.06))), 3)
    0.04
    """
    added: FloatArray = np.hypot(blown_m3_per_s, leaks_m3_per_s) - leaks_m3_per_s
    return added


def exhaust_kg_per_s(flow_m3_per_s: FloatArray, pressure_pa: float) -> FloatArray:
    """Return the mass of air that is blown out, and comes in again from outdoors.

    Parameters
    ----------
    flow_m3_per_s : array_like, shape (...)
        Air blown out while units run. [m^3/s]
    pressure_pa : float
        Of the place's air. [Pa]

    Returns
    -------
    exhaust_kg_per_s : ndarray, shape (...)
        Dry air. [kg/s]
    """
    flow: FloatArray = np.asarray(flow_m3_per_s) * AIR_DENSITY_KG_PER_M3 * pressure_pa / STANDARD_PRESSURE_PA
    return flow


def hose(flow_m3_per_s: FloatArray, output_w: FloatArray, is_in: BoolArray, pressure_pa: float) -> Hose:
    """Return the units of each row.

    Parameters
    ----------
    flow_m3_per_s : ndarray, shape (B,)
        Air all units of a row blow out while they run. [m^3/s]
    output_w : ndarray, shape (B,)
        Sensible part of their label's capacity. [W]
    is_in : ndarray of bool, shape (B, n_day)
        Days on which they stand ready.
    pressure_pa : float
        Of the place's air. [Pa]

    Returns
    -------
    hose : Hose
        Heat and vapour of the air that comes in.
    """
    air = exhaust_kg_per_s(flow_m3_per_s, pressure_pa)
    return Hose(air * AIR_HEAT_J_PER_KGK, air * VAPOUR_HEAT_J_PER_KG, output_w, is_in)


def net_output_w(output_w: FloatArray, air_w_per_k: FloatArray, warmer_k: FloatArray) -> FloatArray:
    """Return what is left of the label's capacity when the air let in is warmer than in the rating.

    Parameters
    ----------
    output_w : array_like, shape (...)
        Label's capacity. [W]
    air_w_per_k : array_like, shape (...)
        Heat a kelvin of the air let in. [W/K]
    warmer_k : array_like, shape (...)
        Outdoor less indoor temperature. [K]

    Returns
    -------
    net_output_w : ndarray, shape (...)
        At least `LEAST_OUTPUT_FRAC` of the capacity. [W]

    Examples
    --------
    >>> float(net_output_w(2000.0, 100.0, 11.0)), float(net_output_w(2000.0, 100.0, 3.0))
    (1200.0, 2000.0)
    """
    rated = np.asarray(output_w, dtype=np.float64)
    net: FloatArray = np.maximum(rated - air_w_per_k * (warmer_k - RATED_ABOVE_K), LEAST_OUTPUT_FRAC * rated)
    return net


def duty(need_w: FloatArray, units: Hose, warmer_k: FloatArray, days: slice) -> FloatArray:
    """Return the part of each hour in which the units run: as long as need and the air they draw in want together.

    Parameters
    ----------
    need_w : ndarray, shape (n_hour, B, n)
        Sensible cooling wanted without the air they draw in. [W]
    units : Hose
        B rows.
    warmer_k : ndarray, shape (n_hour, B, n)
        Outdoor less indoor temperature. [K]
    days : slice
        Which of the days.

    Returns
    -------
    duty : ndarray, shape (n_hour, B, n)
        From 0 to 1; 0 on days without units and where there is no hose. [dimensionless]

    Notes
    -----
    With duty d, need + d G (dT - 3 K) = d Q: the units run until they have taken out the need and what running lets in.
    The label's capacity Q is taken as it is at every outdoor temperature, as one hose cools with indoor air.
    """
    net_w = net_output_w(units.output_w[:, None], units.air_w_per_k[:, None], warmer_k)
    runs = (units.air_w_per_k > 0.0)[:, None] & units.is_in[:, days]
    running: FloatArray = np.divide(need_w, net_w, out=np.zeros_like(need_w), where=(net_w > 0.0) & runs)
    return np.minimum(running, 1.0)


def cooling_with_hose_w(need_w: FloatArray, units: Hose, warmer_k: FloatArray, duty_frac: FloatArray) -> FloatArray:
    """Return the sensible cooling wanted with the air that running lets in.

    Parameters
    ----------
    need_w : ndarray, shape (n_hour, B, n)
        Wanted without it. [W]
    units : Hose
        B rows.
    warmer_k : ndarray, shape (n_hour, B, n)
        Outdoor less indoor temperature. [K]
    duty_frac : ndarray, shape (n_hour, B, n)
        Part of each hour in which they run. [dimensionless]

    Returns
    -------
    cool_w : ndarray, shape (n_hour, B, n)
        Beyond what the label counts; less where the air is cooler than in the rating, never below 0. [W]
    """
    added_w = duty_frac * units.air_w_per_k[:, None] * (warmer_k - RATED_ABOVE_K)
    cool: FloatArray = np.maximum(need_w + added_w, 0.0)
    return cool


def drying_with_hose_w(
    need_latent_w: FloatArray, units: Hose, damper_kg_per_kg: FloatArray, duty_frac: FloatArray
) -> FloatArray:
    """Return the drying wanted with the air that running lets in.

    Parameters
    ----------
    need_latent_w : ndarray, shape (n_hour, B, n_day)
        Wanted without it. [W]
    units : Hose
        B rows.
    damper_kg_per_kg : ndarray, shape (n_hour, B, n_day)
        Water vapour outdoors less that of indoor air at its limit. [kg/kg]
    duty_frac : ndarray, shape (n_hour, B, n_day)
        Part of each hour in which they run. [dimensionless]

    Returns
    -------
    latent_w : ndarray, shape (n_hour, B, n_day)
        Changed only in hours that want drying; dry air helps. [W]
    """
    changed = need_latent_w + duty_frac * units.vapour_w[:, None] * damper_kg_per_kg
    return np.where(need_latent_w > 0.0, np.maximum(changed, 0.0), 0.0)
