"""Which size meets a design load, and what is wrong with one that does not."""

from dataclasses import dataclass

import numpy as np

from econ.equipment.machine import MachineRows
from econ.equipment.part_load import cooling_speeds, full_cooling_w, heating_speeds
from econ.kernel.arrays import BoolArray, FloatArray, IntArray


def cooling_capacity_w(machine: MachineRows, dry_bulb_c: FloatArray) -> FloatArray:
    """Return full-speed cooling output at outdoor temperatures.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    dry_bulb_c : ndarray, shape (n,) or (B, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    capacity_w : ndarray, shape (B, n)
        Total output; 0 where it cannot cool. [W]
    """
    at_c = np.atleast_2d(np.asarray(dry_bulb_c, dtype=np.float64))
    capacity = full_cooling_w(machine.cooling, at_c)
    return capacity if machine.can_cool.all() else capacity * machine.can_cool[:, None]


def least_cooling_w(machine: MachineRows, dry_bulb_c: FloatArray) -> FloatArray:
    """Return the least cooling output a machine can give without switching off, at outdoor temperatures.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    dry_bulb_c : ndarray, shape (n,) or (..., B, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    least_w : ndarray, shape (B, n) or (..., B, n)
        Full output where the speed is fixed; 0 where it cannot cool. [W]
    """
    at_c = np.atleast_2d(np.asarray(dry_bulb_c, dtype=np.float64))
    least: FloatArray = cooling_speeds(machine.cooling, at_c)[0].capacity_w * machine.can_cool[:, None]
    return least


def below_least_h(machine: MachineRows, need_w: FloatArray, dry_bulb_c: FloatArray, weight_d: FloatArray) -> FloatArray:
    """Return the hours a year in which a machine switches on and off, as less is wanted than its least output.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    need_w : ndarray, shape (24, B, n_day)
        Total cooling wanted, drying included. [W]
    dry_bulb_c : ndarray, shape (24, B, n_day)
        Outdoor dry bulb. [degC]
    weight_d : ndarray, shape (n_day,)
        How many days each weather day stands for. [day]

    Returns
    -------
    below_h : ndarray, shape (B,)
        Hours with a need below the least output. [hour]
    """
    is_below = (need_w > 0.0) & (need_w < least_cooling_w(machine, dry_bulb_c))
    return np.cumsum(np.count_nonzero(is_below, axis=0) * weight_d, axis=-1)[:, -1]


def heating_capacity_w(machine: MachineRows, dry_bulb_c: FloatArray) -> FloatArray:
    """Return full-speed heating output at outdoor temperatures.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    dry_bulb_c : ndarray, shape (n,) or (B, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    capacity_w : ndarray, shape (B, n)
        Output, frost counted; 0 at or below the cut-out and where it cannot heat. [W]
    """
    at_c = np.atleast_2d(np.asarray(dry_bulb_c, dtype=np.float64))
    full = heating_speeds(machine.heating, at_c)[-1]
    is_running = (at_c > machine.cutout_c[:, None]) & (full.capacity_w > full.power_w) & machine.can_heat[:, None]
    capacity: FloatArray = np.where(is_running, full.capacity_w, 0.0)
    return capacity


def chosen_index(
    design_cooling_w: FloatArray,
    design_heating_w: FloatArray,
    size_cooling_w: FloatArray,
    size_heating_w: FloatArray,
    *,
    heats: bool,
) -> IntArray:
    """Return the smallest size that meets the design load, or the largest where none does.

    Parameters
    ----------
    design_cooling_w, design_heating_w : ndarray, shape (B,)
        Total cooling and heating wanted on the design days. [W]
    size_cooling_w, size_heating_w : ndarray, shape (n_size,) or (B, n_size)
        What each size gives at the design temperatures, ascending. [W]
    heats : bool
        Whether the heating load counts as well.

    Returns
    -------
    index : ndarray, shape (B,)
        Position of the size; `sizing_findings` tells where even the largest is too small. [dimensionless]
    """
    meets = np.atleast_2d(size_cooling_w) >= design_cooling_w[:, None]
    if heats:
        meets = meets & (np.atleast_2d(size_heating_w) >= design_heating_w[:, None])
    index: IntArray = np.where(meets.any(axis=-1), np.argmax(meets, axis=-1), meets.shape[-1] - 1)
    return index


@dataclass(frozen=True, slots=True, eq=False)
class SizingFindings:
    """What is wrong with a size, one claim a row.

    Attributes
    ----------
    too_small : ndarray, shape (B,)
        Cooling output at the design temperature is below the design load.
    oversized : ndarray, shape (B,)
        Even its least output is above the mean cooling load of the hours that need cooling: it switches on and off.
    heating_short : ndarray, shape (B,)
        Heating output at the design temperature is below the design load.
    cooling_share_frac, heating_share_frac : ndarray, shape (B,)
        Output over design load; infinite where there is no load. [dimensionless]
    """

    too_small: BoolArray
    oversized: BoolArray
    heating_short: BoolArray
    cooling_share_frac: FloatArray
    heating_share_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class SizingLoads:
    """The loads a size is held against.

    Attributes
    ----------
    design_cooling_w, design_heating_w : ndarray, shape (B,)
        Total cooling and heating on the design days. [W]
    mean_cooling_w : ndarray, shape (B,)
        Mean total cooling over the hours that need cooling. [W]
    cool_design_c, heat_design_c : ndarray, shape (B,)
        Outdoor design temperatures. [degC]
    mean_cooling_c : ndarray, shape (B,)
        Mean outdoor temperature of the hours that need cooling. [degC]
    """

    design_cooling_w: FloatArray
    design_heating_w: FloatArray
    mean_cooling_w: FloatArray
    cool_design_c: FloatArray
    heat_design_c: FloatArray
    mean_cooling_c: FloatArray


def sizing_findings(machine: MachineRows, loads: SizingLoads) -> SizingFindings:
    """Return what is wrong with the size of each machine.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    loads : SizingLoads
        Design and mean loads.

    Returns
    -------
    findings : SizingFindings
        Claims and shares.
    """
    cool_w = cooling_capacity_w(machine, loads.cool_design_c[:, None])[:, 0]
    heat_w = heating_capacity_w(machine, loads.heat_design_c[:, None])[:, 0]
    least_w = least_cooling_w(machine, loads.mean_cooling_c[:, None])[:, 0]
    return SizingFindings(
        too_small=cool_w < loads.design_cooling_w,
        oversized=least_w > loads.mean_cooling_w,
        heating_short=heat_w < loads.design_heating_w,
        cooling_share_frac=_share(cool_w, loads.design_cooling_w),
        heating_share_frac=_share(heat_w, loads.design_heating_w),
    )


def _share(output_w: FloatArray, load_w: FloatArray) -> FloatArray:
    """Return output over load, infinite where nothing is asked for."""
    is_asked = load_w > 0.0
    share: FloatArray = np.where(is_asked, output_w / np.where(is_asked, load_w, 1.0), np.inf)
    return share
