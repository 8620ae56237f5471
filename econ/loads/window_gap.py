"""What a unit in a window does to the room's need: air past its panels, and the sun it keeps out."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray

SEASON_FROM_FRAC: Final = 0.02
"""Part of the year's cooling from which a month belongs to the season of window units. Assumption."""


@dataclass(frozen=True, slots=True, eq=False)
class WindowGap:
    """Units standing in windows, one row each, day by day.

    Attributes
    ----------
    air_w_per_k : ndarray, shape (B, n_day)
        Conductance of the air past the panels; 0 on days without units. [W/K]
    vapour_w : ndarray, shape (B, n_day)
        Latent heat a kg/kg of humidity difference brings in by that air. [W]
    shade_w : ndarray, shape (B, n_day)
        Sun kept out, spread over the day, as mass and furnishings hand it on. [W]
    """

    air_w_per_k: FloatArray
    vapour_w: FloatArray
    shade_w: FloatArray

    def on(self, days: slice) -> "WindowGap":
        """Return the same on some days."""
        return WindowGap(self.air_w_per_k[:, days], self.vapour_w[:, days], self.shade_w[:, days])


def months_in(cool_kwh: FloatArray) -> BoolArray:
    """Return in which months window units stand in their windows if they are taken out for the winter.

    Parameters
    ----------
    cool_kwh : ndarray, shape (B, 12)
        Sensible cooling wanted by month. [kWh]

    Returns
    -------
    is_in : ndarray of bool, shape (B, 12)
        Months with a noticeable part of the year's cooling, and a month between two of them.
    """
    total = cool_kwh.sum(axis=-1, keepdims=True)
    is_cooled = (cool_kwh >= SEASON_FROM_FRAC * total) & (total > 0.0)
    between = np.roll(is_cooled, 1, axis=-1) & np.roll(is_cooled, -1, axis=-1)
    is_in: BoolArray = is_cooled | between
    return is_in


def cooling_with_gap_w(
    need_cool_w: FloatArray, gap: WindowGap, dry_bulb_c: FloatArray, setpoint_c: FloatArray
) -> FloatArray:
    """Return the sensible cooling wanted with units in the windows.

    Parameters
    ----------
    need_cool_w : ndarray, shape (24, B, n_day)
        Wanted without them. [W]
    gap : WindowGap
        Air and shade.
    dry_bulb_c : ndarray, shape (24, B, n_day)
        Outdoor dry bulb. [degC]
    setpoint_c : ndarray, shape (B,)
        Indoor temperature of cooled hours. [degC]

    Returns
    -------
    cool_w : ndarray, shape (24, B, n_day)
        Changed only in hours that want cooling; cool air helps, never below 0. [W]
    """
    fixed_w = gap.air_w_per_k * setpoint_c[:, None] + gap.shade_w
    changed_w = gap.air_w_per_k * dry_bulb_c
    changed_w -= fixed_w
    changed_w += need_cool_w
    return _where_wanted(need_cool_w, changed_w)


def heating_with_gap_w(
    need_heat_w: FloatArray, gap: WindowGap, dry_bulb_c: FloatArray, setpoint_c: FloatArray
) -> FloatArray:
    """Return the heating wanted with units in the windows.

    Parameters
    ----------
    need_heat_w : ndarray, shape (24, B, n_day)
        Wanted without them. [W]
    gap : WindowGap
        Air and shade.
    dry_bulb_c : ndarray, shape (24, B, n_day)
        Outdoor dry bulb. [degC]
    setpoint_c : ndarray, shape (B,)
        Indoor temperature of heated hours. [degC]

    Returns
    -------
    heat_w : ndarray, shape (24, B, n_day)
        Changed only in hours that want heating. [W]
    """
    changed_w = -gap.air_w_per_k * dry_bulb_c
    changed_w += gap.air_w_per_k * setpoint_c[:, None] + gap.shade_w
    changed_w += need_heat_w
    return _where_wanted(need_heat_w, changed_w)


def drying_with_gap_w(
    need_latent_w: FloatArray, gap: WindowGap, humidity_ratio: FloatArray, limit_kg_per_kg: FloatArray
) -> FloatArray:
    """Return the drying wanted with units in the windows.

    Parameters
    ----------
    need_latent_w : ndarray, shape (24, B, n_day)
        Wanted without them. [W]
    gap : WindowGap
        Air past the panels.
    humidity_ratio : ndarray, shape (24, 1, n_day)
        Water vapour in outdoor air. [kg/kg]
    limit_kg_per_kg : ndarray, shape (B,)
        Water vapour in indoor air at its limit. [kg/kg]

    Returns
    -------
    latent_w : ndarray, shape (24, B, n_day)
        Changed only in hours that want drying; dry air helps. [W]
    """
    changed_w = humidity_ratio - limit_kg_per_kg[:, None]
    changed_w *= gap.vapour_w
    changed_w += need_latent_w
    return _where_wanted(need_latent_w, changed_w)


def _where_wanted(need_w: FloatArray, changed_w: FloatArray) -> FloatArray:
    """Return the changed need, not below 0, in hours that want any."""
    np.maximum(changed_w, 0.0, out=changed_w)
    np.copyto(changed_w, 0.0, where=need_w <= 0.0)
    return changed_w
