"""What machines serve and draw, added up over the hours of each day."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from econ.equipment.demand import EVERY_DAY, Demand, Spell
from econ.equipment.machine import MachineRows
from econ.equipment.part_load import Curves, cooled, curves_of, heated
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import HOURS_PER_DAY, WATT_HOURS_PER_KWH


@dataclass(frozen=True, slots=True, eq=False)
class DayRun:
    """A day's work of B machines.

    Attributes
    ----------
    cooling_wh, heating_wh : ndarray, shape (B, n_day)
        Electricity of cooling and of heating; defrost and cycling included. [W*hour]
    beside_wh : ndarray, shape (B, n_day)
        Electricity of standby in hours without either, of small heaters and of the drain pump. [W*hour]
    unmet_cool_wh, unmet_latent_wh, unmet_heat_wh : ndarray, shape (B, n_day)
        Sensible cooling, drying and heating wanted and not given. [W*hour]
    cool_short_h, heat_short_h : ndarray, shape (B, n_day)
        Hours in which more than the tolerated part of the need is missing. [hour]
    damp_h : ndarray, shape (B, n_day)
        Hours in which more than the tolerated part of the moisture wanted out stays in the air. [hour]
    warm_kh : ndarray, shape (B, n_day)
        Degree-hours above the cooling set-point; 0 until a balance with the machine's limit finds more. [K*hour]
    cooling_usd, heating_usd, beside_usd : ndarray, shape (B, n_day), or None
        Electricity at the price of its hour; None where the price does not go by the hour. [USD]
    unmet_heat_usd, unmet_latent_usd : ndarray, shape (B, n_day), or None
        Heating and drying not given, were each kWh of it electricity bought in its hour; None likewise. [USD]
    """

    cooling_wh: FloatArray
    heating_wh: FloatArray
    beside_wh: FloatArray
    unmet_cool_wh: FloatArray
    unmet_latent_wh: FloatArray
    unmet_heat_wh: FloatArray
    cool_short_h: FloatArray
    heat_short_h: FloatArray
    damp_h: FloatArray
    warm_kh: FloatArray
    cooling_usd: FloatArray | None = None
    heating_usd: FloatArray | None = None
    beside_usd: FloatArray | None = None
    unmet_heat_usd: FloatArray | None = None
    unmet_latent_usd: FloatArray | None = None

    @property
    def electricity_wh(self) -> FloatArray:
        """Return all electricity, shape (B, n_day). [W*hour]"""
        total_wh: FloatArray = self.cooling_wh + self.heating_wh + self.beside_wh
        return total_wh

    @property
    def electricity_usd(self) -> FloatArray | None:
        """Return all electricity at the price of its hour, shape (B, n_day); None without such prices. [USD]"""
        if self.cooling_usd is None or self.heating_usd is None or self.beside_usd is None:
            return None
        total_usd: FloatArray = self.cooling_usd + self.heating_usd + self.beside_usd
        return total_usd


def day_run(machine: MachineRows, demand: Demand, tolerance_frac: float, is_there: BoolArray | None = None) -> DayRun:
    """Return each day's energy and shortfall of each row's machine.

    Parameters
    ----------
    machine : MachineRows
        B machines.
    demand : Demand
        What is asked of them.
    tolerance_frac : float
        Share of an hour's need that may be missing before the hour counts as short. [dimensionless]
    is_there : ndarray of bool, shape (B, n_day), or None
        Days on which the machine stands ready and draws standby; None for all.

    Returns
    -------
    run : DayRun
        Sums of what `part_load.operation` gives hour by hour.

    Notes
    -----
    A few hours at a time, so that temporaries stay in the processor's cache, and only on days in which any row wants
    anything; sums go hour by hour, so that a row's own do not hang on the others.
    """
    can_cool, can_heat = bool(machine.can_cool.any()), bool(machine.can_heat.any())
    run = _without_machine(demand, can_cool=can_cool, can_heat=can_heat)
    curves, price = curves_of(machine), demand.price_usd_per_kwh
    on = (_no_hours(run),) if price is None else (_no_hours(run), _no_hours(run, price))
    for at, hours in enumerate(demand.hours):
        cooling, heating = (np.zeros(demand.cool_w[hours].shape, dtype=np.bool_) for _ in range(2))
        if can_cool:
            _cool(curves, demand, at, run, cooling, tolerance_frac)
        if can_heat:
            _heat(curves, demand, at, run, heating, tolerance_frac)
        _count(on, machine, demand, hours, (cooling, heating))
    ready = 1.0 if is_there is None else is_there
    run.beside_wh[...] = _beside_wh(machine, on[0], HOURS_PER_DAY) * ready
    if price is not None:
        whole = np.zeros(price.shape[1:])
        _add(whole, price)
        _put_in_usd(run, _beside_wh(machine, on[-1], whole) * ready)
    return run


@dataclass(frozen=True, slots=True, eq=False)
class _HoursOn:
    """Hours of each day, shape (B, n_day), in which what stands beside compressor and fans is on.

    With a price they are the sum of the price over these hours instead.
    """

    running: NDArray[Any]
    cooling: NDArray[Any]
    pan_heater: NDArray[Any]
    crankcase_heater: NDArray[Any]
    price_usd_per_kwh: FloatArray | None = None

    def add(self, name: str, is_on: BoolArray, spell: Spell) -> None:
        """Add some hours of some days, hour by hour."""
        hours, days = spell
        total = getattr(self, name)[:, days]
        if self.price_usd_per_kwh is None:
            _add(total, is_on.view(np.uint8))
        else:
            for price, is_hour in zip(self.price_usd_per_kwh[hours, :, days], is_on, strict=True):
                np.add(total, price, out=total, where=is_hour)


def _no_hours(run: DayRun, price_usd_per_kwh: FloatArray | None = None) -> _HoursOn:
    kind = np.uint8 if price_usd_per_kwh is None else np.float64
    running, cooling, pan_heater, crankcase_heater = (np.zeros(run.warm_kh.shape, kind) for _ in range(4))
    return _HoursOn(running, cooling, pan_heater, crankcase_heater, price_usd_per_kwh)


def _put_in_usd(run: DayRun, beside_priced: FloatArray) -> None:
    """Turn sums of W*hour*USD/kWh into USD, those of what stands beside compressor and fans given."""
    for total in (run.cooling_usd, run.heating_usd, run.unmet_heat_usd, run.unmet_latent_usd):
        if total is not None:
            np.divide(total, WATT_HOURS_PER_KWH, out=total)
    if run.beside_usd is not None:
        run.beside_usd[...] = beside_priced / WATT_HOURS_PER_KWH


def _without_machine(demand: Demand, *, can_cool: bool, can_heat: bool) -> DayRun:
    """Return the sums before anything is served: all is missing where no machine can give it."""
    price = demand.price_usd_per_kwh
    run = DayRun(*(np.zeros(demand.cool_w.shape[1:]) for _ in range(10 if price is None else 15)))
    if not can_heat:
        for spell in demand.spells(demand.heating):
            _add_priced(run.unmet_heat_usd, demand, spell, demand.heat_w[spell[0], :, spell[1]])
    if not can_cool:
        for spell in demand.spells(demand.drying):
            _add_priced(run.unmet_latent_usd, demand, spell, demand.latent_w[spell[0], :, spell[1]])
    if not can_cool:
        run.unmet_cool_wh[...], run.cool_short_h[...] = demand.cool_wh, demand.cool_h
        run.unmet_latent_wh[...] = demand.latent_wh
        run.damp_h[...] = demand.dry_h
    if not can_heat:
        run.unmet_heat_wh[...], run.heat_short_h[...] = demand.heat_wh, demand.heat_h
    return run


def _count(
    on: tuple[_HoursOn, ...], machine: MachineRows, demand: Demand, hours: slice, does: tuple[BoolArray, BoolArray]
) -> None:
    """Add some hours, in which machines cool and heat, to the hours on."""
    (cooling, heating), auxiliary, all_days = does, machine.auxiliary, (hours, EVERY_DAY)
    running = cooling | heating
    _mark(on, "running", running, all_days)
    if auxiliary is None:
        return
    _mark(on, "cooling", cooling, all_days)
    for name, power_w, below_c, is_asked in (
        ("pan_heater", auxiliary.pan_heater_w, auxiliary.pan_heater_below_c, heating),
        ("crankcase_heater", auxiliary.crankcase_heater_w, auxiliary.crankcase_heater_below_c, ~running),
    ):
        for days in demand.colder(hours, below_c) if power_w.any() else ():
            is_cold = demand.dry_bulb_c(hours, days) < below_c[:, None]
            is_cold &= is_asked[:, :, days]
            _mark(on, name, is_cold, (hours, days))


def _mark(on: tuple[_HoursOn, ...], name: str, is_on: BoolArray, spell: Spell) -> None:
    for each in on:
        each.add(name, is_on, spell)


def _beside_wh(machine: MachineRows, on: _HoursOn, whole: FloatArray | float) -> FloatArray:
    """Return the electricity of standby, heaters and pump, shape (B, n_day); whole is that of all the day's hours."""
    beside_wh: FloatArray = machine.standby_w[:, None] * (whole - on.running)
    auxiliary = machine.auxiliary
    if auxiliary is not None:
        beside_wh += auxiliary.drain_pump_w[:, None] * on.cooling
        beside_wh += auxiliary.pan_heater_w[:, None] * on.pan_heater
        beside_wh += auxiliary.crankcase_heater_w[:, None] * on.crankcase_heater
    return beside_wh


def _cool(curves: Curves, demand: Demand, at: int, run: DayRun, is_on: BoolArray, tolerance_frac: float) -> None:
    """Add the cooling of some hours to the day's sums, and mark who ran."""
    hours = demand.hours[at]
    for days in demand.cooling[at]:
        need_w, latent_w = demand.cool_w[hours, :, days], demand.latent_w[hours, :, days]
        cool_w, dried_w, electric_w = cooled(curves, need_w, latent_w, demand.dry_bulb_c(hours, days))
        np.greater(electric_w, 0.0, out=is_on[:, :, days])
        _add(run.cooling_wh[:, days], electric_w)
        _add_priced(run.cooling_usd, demand, (hours, days), electric_w)
        _leave_damp(run, demand, (hours, days), np.subtract(latent_w, dried_w, out=dried_w), tolerance_frac)
        if cool_w is not need_w:
            missing_w = np.subtract(need_w, cool_w, out=cool_w)
            _add(run.unmet_cool_wh[:, days], missing_w)
            _add(run.cool_short_h[:, days], missing_w > need_w * tolerance_frac)
    for days in demand.drying_alone[at]:
        _leave_damp(run, demand, (hours, days), demand.latent_w[hours, :, days], 0.0)


def _leave_damp(run: DayRun, demand: Demand, spell: Spell, left_w: FloatArray, tolerance_frac: float) -> None:
    """Add the drying that is left undone in some hours of some days, if there is any."""
    hours, days = spell
    if left_w.any():
        _add(run.unmet_latent_wh[:, days], left_w)
        _add_priced(run.unmet_latent_usd, demand, spell, left_w)
        _add(run.damp_h[:, days], left_w > demand.latent_w[hours, :, days] * tolerance_frac)


def _heat(curves: Curves, demand: Demand, at: int, run: DayRun, is_on: BoolArray, tolerance_frac: float) -> None:
    """Add the heating of some hours to the day's sums, and mark who ran."""
    hours = demand.hours[at]
    for days in demand.heating[at]:
        need_w = demand.heat_w[hours, :, days]
        heat_w, electric_w = heated(curves, need_w, demand.dry_bulb_c(hours, days))
        np.greater(electric_w, 0.0, out=is_on[:, :, days])
        _add(run.heating_wh[:, days], electric_w)
        _add_priced(run.heating_usd, demand, (hours, days), electric_w)
        missing_w = np.subtract(need_w, heat_w, out=heat_w)
        if missing_w.any():
            _add(run.unmet_heat_wh[:, days], missing_w)
            _add_priced(run.unmet_heat_usd, demand, (hours, days), missing_w)
            _add(run.heat_short_h[:, days], missing_w > need_w * tolerance_frac)


def _add(total: NDArray[Any], hourly: NDArray[Any]) -> None:
    """Add hours to a total, one after the other whatever their number, so that a row is rounded the same in any."""
    for hour in hourly:
        total += hour


def _add_priced(total: FloatArray | None, demand: Demand, spell: Spell, hourly: FloatArray) -> None:
    """Add hours, each times its price, to a total, where the price goes by the hour."""
    if total is not None and demand.price_usd_per_kwh is not None:
        hours, days = spell
        _add(total[:, days], hourly * demand.price_usd_per_kwh[hours, :, days])
