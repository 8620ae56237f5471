"""A full year's energy of one way to go: served by its machine, the rest made up by what is there."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final, Protocol

import numpy as np

from econ.case.choices import CHOICES, code
from econ.climate.weather import Weather
from econ.energy.fuel import (
    fuel_kwh,
    gas_price_usd_per_kwh,
    oil_price_usd_per_kwh,
    propane_price_usd_per_kwh,
    wood_price_usd_per_kwh,
)
from econ.energy.served import annual_kwh, hours_short, moisture_kg, monthly_kwh
from econ.energy.tariff import bill_of
from econ.equipment.machine import MachineRows
from econ.equipment.part_load import Operation, operation
from econ.evaluate.structure import Structure
from econ.kernel.arrays import BoolArray, FloatArray

Values = Mapping[str, FloatArray]

SHORT_FRAC: Final = 0.05
"""Part of an hour's need that may be missing before the hour counts as short. Assumption: nobody feels less."""

FUEL_PRICES: Final = {
    "gas": ("prices.gas_usd_per_therm", gas_price_usd_per_kwh),
    "propane": ("prices.propane_usd_per_gal", propane_price_usd_per_kwh),
    "oil": ("prices.oil_usd_per_gal", oil_price_usd_per_kwh),
    "wood": ("prices.wood_usd_per_cord", wood_price_usd_per_kwh),
}
"""Where the price of each fuel stands and what turns it into a price per kWh."""

UNKNOWN_HEAT: Final = "gas"
"""What a heater that is not known counts as. Assumption: the commonest fuel."""


class HourlyNeed(Protocol):
    """Need of decision rows, hour by hour, in the weather of each."""

    @property
    def cool_w(self) -> FloatArray:
        """Return sensible cooling wanted, shape (24, B, n_day). [W]"""

    @property
    def latent_w(self) -> FloatArray:
        """Return drying wanted, shape (24, B, n_day). [W]"""

    @property
    def heat_w(self) -> FloatArray:
        """Return heating wanted, shape (24, B, n_day). [W]"""

    @property
    def dry_bulb_c(self) -> FloatArray:
        """Return the outdoor dry bulb, shape (24, B, n_day). [degC]"""


@dataclass(frozen=True, slots=True, eq=False)
class EnergyUse:
    """A full year of service.

    Attributes
    ----------
    electricity_kwh, fuel_kwh : ndarray, shape (B, 12)
        By month, make-up heat and drying included. [kWh]
    make_up_heat_kwh : ndarray, shape (B, 12)
        Heat that the machine does not give, made up by heater or resistance. [kWh]
    electricity_usd, fuel_usd : ndarray, shape (B, 12)
        What they cost by month. [USD]
    energy_cost_usd_per_yr : ndarray, shape (B,)
        Both over the year. [USD/year]
    unmet_cooling_kwh_per_yr, unmet_heating_kwh_per_yr : ndarray, shape (B,)
        Sensible need that the machine cannot meet by itself. [kWh/year]
    unmet_cooling_h, unmet_heating_h : ndarray, shape (B,)
        Hours a year in which it falls short. [hour]
    unmet_cooling_kh : ndarray, shape (B,)
        Degree-hours a year above the cooling set-point; 0 until a balance with the machine's limit finds more.
        [K*hour]
    unmet_moisture_kg_per_yr : ndarray, shape (B,)
        Moisture the machine leaves in the air in the hours asked for. [kg/year]
    """

    electricity_kwh: FloatArray
    fuel_kwh: FloatArray
    make_up_heat_kwh: FloatArray
    electricity_usd: FloatArray
    fuel_usd: FloatArray
    energy_cost_usd_per_yr: FloatArray
    unmet_cooling_kwh_per_yr: FloatArray
    unmet_heating_kwh_per_yr: FloatArray
    unmet_cooling_h: FloatArray
    unmet_heating_h: FloatArray
    unmet_cooling_kh: FloatArray
    unmet_moisture_kg_per_yr: FloatArray


def energy_use(
    structure: Structure, values: Values, hours: HourlyNeed, weather: Weather, machine: MachineRows
) -> EnergyUse:
    """Return a full year's energy, cost and shortfall of one way to go.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    hours : HourlyNeed
        Need of the rows.
    weather : Weather
        Months and weights of the days.
    machine : MachineRows
        B machines.

    Returns
    -------
    use : EnergyUse
        Heat the machine does not give comes from the present heater, or from resistance heat where there is none or it
        goes; moisture it leaves is taken out by a dehumidifier where drying is asked for. Its heat is in the need
        already (`way_need.with_dehumidifier`).
    """
    run = operation(machine, hours.cool_w, hours.latent_w, hours.heat_w, hours.dry_bulb_c)
    return energy_of(structure, values, hours, weather, run)


def energy_of(structure: Structure, values: Values, hours: HourlyNeed, weather: Weather, run: Operation) -> EnergyUse:
    """Return a full year's energy, cost and shortfall of a machine that has run.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    hours : HourlyNeed
        Need of the rows.
    weather : Weather
        Months and weights of the days.
    run : Operation
        What the machine served and drew.

    Returns
    -------
    use : EnergyUse
        As `energy_use`.
    """
    unmet_heat_kwh = monthly_kwh(hours.heat_w - run.heat_served_w, weather.month, weather.weight_d)
    unmet_latent_kwh = monthly_kwh(hours.latent_w - run.latent_served_w, weather.month, weather.weight_d)
    electric_kwh, burnt_kwh = make_up_energy(values, unmet_heat_kwh)
    electricity_kwh = machine_kwh(run, weather) + electric_kwh + drying_kwh(values, unmet_latent_kwh)
    electricity_usd = bill_of(structure.tariff_kind)(electricity_kwh, values["prices.electricity_usd_per_kwh"])
    fuel_usd = burnt_kwh * fuel_price_usd_per_kwh(values)[..., None]
    return EnergyUse(
        electricity_kwh=electricity_kwh,
        fuel_kwh=burnt_kwh,
        make_up_heat_kwh=unmet_heat_kwh,
        electricity_usd=electricity_usd,
        fuel_usd=fuel_usd,
        energy_cost_usd_per_yr=(electricity_usd + fuel_usd).sum(axis=-1),
        unmet_cooling_kwh_per_yr=annual_kwh(hours.cool_w - run.cool_served_w, weather.weight_d),
        unmet_heating_kwh_per_yr=unmet_heat_kwh.sum(axis=-1),
        unmet_cooling_h=hours_short(hours.cool_w, run.cool_served_w, weather.weight_d, SHORT_FRAC),
        unmet_heating_h=hours_short(hours.heat_w, run.heat_served_w, weather.weight_d, SHORT_FRAC),
        unmet_cooling_kh=np.zeros(len(electricity_kwh)),
        unmet_moisture_kg_per_yr=moisture_kg(unmet_latent_kwh).sum(axis=-1),
    )


def machine_kwh(run: Operation, weather: Weather) -> FloatArray:
    """Return the machine's electricity by month, standby included, shape (B, 12). [kWh]"""
    total_w = run.cool_electric_w + run.heat_electric_w
    total_w += run.standby_electric_w
    return monthly_kwh(total_w, weather.month, weather.weight_d)


def is_made_up_by_resistance(values: Values) -> BoolArray:
    """Return whether make-up heat is electric: what is there, or nothing is there, or it goes; shape () or (B,)."""
    heat, stays = np.asarray(values["now.heat"]), np.asarray(values["use.present_heat_stays"])
    electric = [code("now.heat", "electric"), code("now.heat", "none")]
    is_electric: BoolArray = np.isin(heat, electric) | (stays == code("use.present_heat_stays", "no"))
    return is_electric


def make_up_energy(values: Values, make_up_kwh: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return electricity and fuel of the make-up heat, each shape (B, 12). [kWh]"""
    is_electric = is_made_up_by_resistance(values)
    efficiency = np.where(is_electric, 1.0, values["now.heat_efficiency_frac"])
    burnt_kwh = fuel_kwh(make_up_kwh, efficiency)
    return np.where(is_electric[..., None], make_up_kwh, 0.0), np.where(is_electric[..., None], 0.0, burnt_kwh)


def fuel_price_usd_per_kwh(values: Values) -> FloatArray:
    """Return the price of the fuel that heats the room now, 0 where no fuel does, shape () or (B,). [USD/kWh]"""
    heat = np.asarray(values["now.heat"])
    price: FloatArray = np.zeros(())
    for fuel, (path, price_per_kwh) in FUEL_PRICES.items():
        is_fuel = heat == code("now.heat", fuel)
        if fuel == UNKNOWN_HEAT:
            is_fuel = is_fuel | (heat == len(CHOICES["now.heat"]) - 1)
        if is_fuel.any():
            price = np.where(is_fuel, price_per_kwh(np.asarray(values[path])), price)
    return price


def drying_kwh(values: Values, unmet_latent_kwh: FloatArray) -> FloatArray:
    """Return electricity of the dehumidifier where drying is asked for, shape (B, 12). [kWh]"""
    is_asked = np.asarray(values["use.dry"]) == code("use.dry", "yes")
    per_kwh = np.asarray(values["now.dehumidifier_kg_per_kwh"])
    drying: FloatArray = moisture_kg(unmet_latent_kwh) / per_kwh[..., None] * is_asked[..., None]
    return drying
