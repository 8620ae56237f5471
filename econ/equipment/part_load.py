"""What a machine serves and draws, hour by hour."""

from dataclasses import dataclass

import numpy as np

from econ.equipment import points
from econ.equipment.auxiliary import auxiliary_w
from econ.equipment.heating_rating import HeatingLines, heating_lines
from econ.equipment.machine import MachineRows
from econ.equipment.modulation import held_to, modulated_power_w
from econ.equipment.points import CoolingPoints, HeatingPoints, Line, Point, chosen
from econ.equipment.rating import cooling_lines, full_cooling_line
from econ.kernel.arrays import FloatArray
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
    curves = curves_of(machine)
    for hour in range(need_cool_w.shape[0]):
        cooling_now = cooled(curves, need_cool_w[hour], need_latent_w[hour], dry_bulb_c[hour])
        served.cool_served_w[hour], served.latent_served_w[hour], served.cool_electric_w[hour] = cooling_now
        served.heat_served_w[hour], served.heat_electric_w[hour] = heated(curves, need_heat_w[hour], dry_bulb_c[hour])
        is_cooling, is_heating = served.cool_electric_w[hour] > 0.0, served.heat_electric_w[hour] > 0.0
        np.multiply(machine.standby_w[:, None], ~(is_cooling | is_heating), out=served.standby_electric_w[hour])
        if machine.auxiliary is not None:
            served.standby_electric_w[hour] += auxiliary_w(machine.auxiliary, is_cooling, is_heating, dry_bulb_c[hour])
    return served


@dataclass(frozen=True, slots=True, eq=False)
class Curves:
    """A machine with the straight lines through its tests, drawn once for all hours.

    Attributes
    ----------
    machine : MachineRows
        B machines.
    cooling : tuple of Line
        Low, intermediate and full speed; full speed alone where there is but one.
    heating : HeatingLines
        Lines of all speeds.
    """

    machine: MachineRows
    cooling: tuple[Line, ...]
    heating: HeatingLines


def curves_of(machine: MachineRows) -> Curves:
    """Return a machine with its lines.

    Parameters
    ----------
    machine : MachineRows
        B machines.

    Returns
    -------
    curves : Curves
        What `cooled` and `heated` follow.
    """
    lines = cooling_lines(machine.cooling)
    return Curves(machine, lines[-1:] if machine.is_single_speed else lines, heating_lines(machine.heating))


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
    return cooled(curves_of(machine), need_cool_w, need_latent_w, dry_bulb_c)


def cooled(
    curves: Curves, need_cool_w: FloatArray, need_latent_w: FloatArray, dry_bulb_c: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return what `cooling` does, of a machine whose lines are drawn.

    Parameters
    ----------
    curves : Curves
        B machines and their lines.
    need_cool_w, need_latent_w : ndarray, shape (B, n)
        Sensible cooling and drying wanted. [W]
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    cooled : tuple of ndarray, shape (B, n)
        Sensible served (the need itself where nothing falls short), latent served, electric power. [W]
    """
    machine = curves.machine
    if not machine.can_cool.any():
        nothing = np.zeros(need_cool_w.shape)
        return nothing, nothing, nothing
    moisture_share = (1.0 - machine.shr) / machine.shr
    latent_w = need_cool_w * moisture_share[:, None]
    np.minimum(need_latent_w, latent_w, out=latent_w)
    total_w = need_cool_w + latent_w
    speeds = _cooling_at(curves.cooling, dry_bulb_c)
    most_w = speeds[-1].capacity_w
    load_w = np.minimum(total_w, most_w if machine.can_cool.all() else most_w * machine.can_cool[:, None])
    power_w = modulated_power_w(load_w, speeds, machine.cd_frac)
    if not (load_w < total_w).any():
        return need_cool_w, latent_w, power_w
    share = _part_of(load_w, total_w)
    latent_w *= share
    share *= need_cool_w
    return share, latent_w, power_w


def _part_of(given_w: FloatArray, wanted_w: FloatArray) -> FloatArray:
    """Return what is given over what is wanted, 0 where nothing is."""
    part = np.maximum(wanted_w, np.finfo(np.float64).tiny)
    return np.divide(given_w, part, out=part)


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
    return heated(curves_of(machine), need_heat_w, dry_bulb_c)


def heated(curves: Curves, need_heat_w: FloatArray, dry_bulb_c: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return what `heating` does, of a machine whose lines are drawn.

    Parameters
    ----------
    curves : Curves
        B machines and their lines.
    need_heat_w : ndarray, shape (B, n)
        Heating wanted. [W]
    dry_bulb_c : ndarray, shape (B, n) or (1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    heated : tuple of ndarray, shape (B, n)
        Heat served and electric power. [W]
    """
    machine = curves.machine
    if not machine.can_heat.any():
        nothing = np.zeros(need_heat_w.shape)
        return nothing, nothing
    speeds = _heating_at(curves.heating, dry_bulb_c)
    full = speeds[-1]
    is_running = (dry_bulb_c > machine.cutout_c[:, None]) & (full.capacity_w > full.power_w)
    is_running &= machine.can_heat[:, None]
    load_w = np.minimum(need_heat_w, full.capacity_w)
    np.copyto(load_w, 0.0, where=~is_running)
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
    low, mid, full = _cooling_at(cooling_lines(tests), dry_bulb_c)
    return low, mid, full


def full_cooling_w(tests: CoolingPoints, dry_bulb_c: FloatArray) -> FloatArray:
    """Return full-speed cooling at outdoor temperatures, as `cooling_speeds` does, without the rest.

    Parameters
    ----------
    tests : CoolingPoints
        Cooling tests.
    dry_bulb_c : ndarray, shape (..., B, n) or (..., 1, n)
        Outdoor dry bulb. [degC]

    Returns
    -------
    capacity_w : ndarray, shape (..., B, n)
        Total output. [W]
    """
    return full_cooling_line(tests).capacity_w(np.maximum(dry_bulb_c, points.F_C))


def _cooling_at(lines: tuple[Line, ...], dry_bulb_c: FloatArray) -> tuple[Point, ...]:
    at_c = np.maximum(dry_bulb_c, points.F_C)
    low, *others = (line.at(at_c) for line in lines)
    return (held_to(low, others[-1]), *others) if others else (low,)


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
    return _heating_at(heating_lines(tests), dry_bulb_c)


def _heating_at(lines: HeatingLines, dry_bulb_c: FloatArray) -> tuple[Point, Point, Point]:
    at_c = np.minimum(dry_bulb_c, points.H0_C)
    full, is_cold = lines.full_at(at_c), at_c <= points.H3_C
    if is_cold.any():
        full = chosen(is_cold, lines.below_h3_at(at_c), full)
    return held_to(lines.low.at(at_c), full), held_to(lines.mid.at(at_c), full), full
