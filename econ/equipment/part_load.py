"""What a machine serves and draws, hour by hour."""

from dataclasses import dataclass

import numpy as np

from econ.equipment import points
from econ.equipment.auxiliary import auxiliary_w
from econ.equipment.heating_rating import below_h3, full_speed, low_and_mid_lines
from econ.equipment.machine import MachineRows
from econ.equipment.modulation import held_to, modulated_power_w
from econ.equipment.points import CoolingPoints, HeatingPoints, Point, chosen
from econ.equipment.rating import cooling_lines
from econ.kernel.arrays import FloatArray, IntArray
from econ.kernel.errors import ShapeError


@dataclass(frozen=True, slots=True, eq=False)
class Operation:
    """What was served and drawn, hour by hour of each weather day.

    Attributes
    ----------
    cool_electric_w, heat_electric_w : ndarray, shape (24, B, n_day)
        Electric power for cooling and for heating, defrost and cycling included. [W]
    standby_electric_w : ndarray, shape (24, B, n_day)
        Electric power in hours without cooling or heating, and of heaters and pump in the hours they run. [W]
    cool_served_w, latent_served_w, heat_served_w : ndarray, shape (24, B, n_day)
        Sensible cooling, drying and heating given; never above the need. [W]
    """

    cool_electric_w: FloatArray
    heat_electric_w: FloatArray
    standby_electric_w: FloatArray
    cool_served_w: FloatArray
    latent_served_w: FloatArray
    heat_served_w: FloatArray


def operation(
    machine: MachineRows,
    need_cool_w: FloatArray,
    need_latent_w: FloatArray,
    need_heat_w: FloatArray,
    dry_bulb_c: FloatArray,
) -> Operation:
    """Return what each row's machine serves of the need, and what it draws.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    need_cool_w, need_latent_w, need_heat_w : ndarray, shape (24, B, n_day)
        Sensible cooling, drying and heating wanted. [W]
    dry_bulb_c : ndarray, shape (24, B, n_day) or (24, 1, n_day)
        Outdoor dry bulb. [degC]

    Returns
    -------
    operation : Operation
        Served is never above the need nor above the capacity at the outdoor temperature.

    Raises
    ------
    ShapeError
        If the arrays do not fit together.

    Notes
    -----
    Hour by hour so that temporaries stay in the processor's cache; hours do not act on each other here.
    """
    if need_cool_w.ndim != 3 or need_cool_w.shape[1] != machine.shr.size:
        raise ShapeError(f"need has shape {need_cool_w.shape}; it must be (24, {machine.shr.size}, n_day)")
    served = Operation(*(np.zeros(need_cool_w.shape) for _ in range(6)))
    for hour in range(need_cool_w.shape[0]):
        cool_days, heat_days = _days_with(need_cool_w[hour]), _days_with(need_heat_w[hour])
        cooled = cooling(machine, *(need[hour][:, cool_days] for need in (need_cool_w, need_latent_w, dry_bulb_c)))
        served.cool_served_w[hour][:, cool_days] = cooled[0]
        served.latent_served_w[hour][:, cool_days] = cooled[1]
        served.cool_electric_w[hour][:, cool_days] = cooled[2]
        heated = heating(machine, need_heat_w[hour][:, heat_days], dry_bulb_c[hour][:, heat_days])
        served.heat_served_w[hour][:, heat_days] = heated[0]
        served.heat_electric_w[hour][:, heat_days] = heated[1]
        is_cooling, is_heating = served.cool_electric_w[hour] > 0.0, served.heat_electric_w[hour] > 0.0
        np.multiply(machine.standby_w[:, None], ~(is_cooling | is_heating), out=served.standby_electric_w[hour])
        if machine.auxiliary is not None:
            served.standby_electric_w[hour] += auxiliary_w(machine.auxiliary, is_cooling, is_heating, dry_bulb_c[hour])
    return served


def _days_with(need_w: FloatArray) -> IntArray:
    """Return the days in which any row wants anything this hour, so that the others cost no time."""
    return np.flatnonzero(need_w.any(axis=0))


def cooling(
    machine: MachineRows, need_cool_w: FloatArray, need_latent_w: FloatArray, dry_bulb_c: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return sensible cooling and drying served, and the power for both.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    need_cool_w, need_latent_w : ndarray, shape (B, n)
        Sensible cooling and drying wanted. [W]
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    cooling : tuple of ndarray, shape (B, n)
        Sensible served, latent served, electric power. [W]

    Notes
    -----
    The thermostat asks for sensible cooling; drying comes along at the rated sensible heat ratio, at most what is
    wanted (then the coil runs drier). No extra run for drying alone. Where both together exceed the capacity, both
    shrink alike. Assumption: the total capacity is the same on a drier coil.
    """
    if not machine.can_cool.any():
        nothing = np.zeros(need_cool_w.shape)
        return nothing, nothing, nothing
    moisture_share = (1.0 - machine.shr) / machine.shr
    latent_w = np.minimum(need_latent_w, need_cool_w * moisture_share[:, None])
    total_w = need_cool_w + latent_w
    speeds = cooling_speeds(machine.cooling, dry_bulb_c)
    load_w = np.minimum(total_w, speeds[-1].capacity_w * machine.can_cool[:, None])
    share = load_w / np.where(total_w > 0.0, total_w, 1.0)
    power_w = modulated_power_w(load_w, speeds, machine.cd_frac)
    return need_cool_w * share, latent_w * share, power_w


def heating(machine: MachineRows, need_heat_w: FloatArray, dry_bulb_c: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return heating served and the power for it.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    need_heat_w : ndarray, shape (B, n)
        Heating wanted. [W]
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    heating : tuple of ndarray, shape (B, n)
        Heat served and electric power; both 0 at or below the cut-out and where resistance heat would do as well. [W]
    """
    if not machine.can_heat.any():
        nothing = np.zeros(need_heat_w.shape)
        return nothing, nothing
    speeds = heating_speeds(machine.heating, dry_bulb_c)
    full = speeds[-1]
    is_running = (dry_bulb_c > machine.cutout_c[:, None]) & (full.capacity_w > full.power_w)
    load_w = np.minimum(need_heat_w, full.capacity_w) * (is_running & machine.can_heat[:, None])
    return load_w, modulated_power_w(load_w, speeds, machine.cd_frac)


def cooling_speeds(tests: CoolingPoints, dry_bulb_c: FloatArray) -> tuple[Point, Point, Point]:
    """Return low, intermediate and full-speed cooling at outdoor temperatures.

    Parameters
    ----------
    tests : CoolingPoints
        Cooling tests.
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    speeds : tuple of Point, shape (B, n)
        The procedure's straight lines, continued above 95 degF; below 67 degF both stay as at 67 degF (assumption: the
        unit then holds its condensing pressure).
    """
    at_c = np.maximum(dry_bulb_c, points.F_C)
    low, mid, full = (line.at(at_c) for line in cooling_lines(tests))
    return held_to(low, full), mid, full


def heating_speeds(tests: HeatingPoints, dry_bulb_c: FloatArray) -> tuple[Point, Point, Point]:
    """Return low, intermediate and full-speed heating at outdoor temperatures.

    Parameters
    ----------
    tests : HeatingPoints
        Heating tests.
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    speeds : tuple of Point, shape (B, n)
        The procedure's straight lines with frost between 17 and 45 degF, and with the test at 5 degF below 17 degF;
        above 62 degF both stay as at 62 degF.
    """
    at_c = np.minimum(dry_bulb_c, points.H0_C)
    full, is_cold = full_speed(tests, at_c), at_c <= points.H3_C
    if is_cold.any():
        full = chosen(is_cold, below_h3(tests, at_c), full)
    low, mid = (line.at(at_c) for line in low_and_mid_lines(tests))
    return held_to(low, full), held_to(mid, full), full
