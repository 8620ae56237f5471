"""A full year's energy of one way to go: served by its machine, the rest made up by what is there."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import CHOICES, NOT_KNOWN, code
from econ.climate.weather import Weather
from econ.energy.emissions import FUEL_KG_CO2E_PER_KWH, emitted_kg_co2e
from econ.energy.fuel import (
    fuel_kwh,
    gas_price_usd_per_kwh,
    oil_price_usd_per_kwh,
    propane_price_usd_per_kwh,
    wood_price_usd_per_kwh,
)
from econ.energy.served import by_month, kwh_by_month, moisture_kg, per_year
from econ.equipment.day_run import DayRun
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.tariff import month_bill_usd
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.constants import WATT_HOURS_PER_KWH

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

HEAT: Final = "now.heat"
GRID: Final = "prices.grid_kg_co2e_per_kwh"
CARBON: Final = "prices.carbon_usd_per_t"
KG_PER_T: Final = 1000.0
"""kg in a tonne."""

UNKNOWN_HEAT: Final = "gas"
"""What a heater that is not known counts as. Assumption: the commonest fuel."""

USES: Final = ("cooling", "heating", "standby and small heaters", "make-up heat", "drying")
"""The uses axis of `EnergyUse.by_use_kwh`."""


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
    emitted_kg_co2e_per_yr : ndarray, shape (B,)
        Carbon dioxide of both. [kg/year]
    unmet_cooling_kwh_per_yr, unmet_heating_kwh_per_yr : ndarray, shape (B,)
        Sensible need that the machine cannot meet by itself. [kWh/year]
    unmet_cooling_h, unmet_heating_h : ndarray, shape (B,)
        Hours a year in which it falls short. [hour]
    unmet_cooling_kh : ndarray, shape (B,)
        Degree-hours a year above the cooling set-point; 0 until a balance with the machine's limit finds more.
        [K*hour]
    hours_above_humidity_limit_h : ndarray, shape (B,)
        Hours a year, of those asked for, in which the way by itself leaves the air damper than the limit. [hour]
    unmet_moisture_kg_per_yr : ndarray, shape (B,)
        Moisture the machine leaves in the air in the hours asked for. [kg/year]
    too_warm_h : ndarray, shape (B, 12)
        Hours of each month in which the room is too warm. [hour]
    too_warm_kh : ndarray, shape (B, 12)
        Degree-hours of each month above the cooling set-point; a room without a machine runs free. [K*hour]
    by_use_kwh : ndarray, shape (1, 5, 12)
        Electricity of the first of the rows by `USES` and month; adds up to its `electricity_kwh`. [kWh]
    """

    electricity_kwh: FloatArray
    fuel_kwh: FloatArray
    make_up_heat_kwh: FloatArray
    electricity_usd: FloatArray
    fuel_usd: FloatArray
    energy_cost_usd_per_yr: FloatArray
    emitted_kg_co2e_per_yr: FloatArray
    unmet_cooling_kwh_per_yr: FloatArray
    unmet_heating_kwh_per_yr: FloatArray
    unmet_cooling_h: FloatArray
    unmet_heating_h: FloatArray
    unmet_cooling_kh: FloatArray
    hours_above_humidity_limit_h: FloatArray
    unmet_moisture_kg_per_yr: FloatArray
    too_warm_h: FloatArray
    too_warm_kh: FloatArray
    by_use_kwh: FloatArray


def energy_of(structure: Structure, values: Values, weather: Weather, run: DayRun) -> EnergyUse:
    """Return a full year's energy, cost and shortfall of a machine that has run.

    Parameters
    ----------
    structure : Structure
        Names the tariff.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    weather : Weather
        Months and weights of the days.
    run : DayRun
        What the machine drew and left undone.

    Returns
    -------
    use : EnergyUse
        Heat the machine does not give comes from the present heater, or from resistance heat where there is none or it
        goes; moisture it leaves is taken out by a dehumidifier where drying is asked for. Its heat is in the need
        already (`way_need.with_dehumidifier`).
    """
    sums = (run.electricity_wh, run.unmet_heat_wh, run.unmet_latent_wh)
    machine_kwh, unmet_heat_kwh, unmet_latent_kwh = (
        kwh_by_month(daily, weather.month, weather.weight_d) for daily in sums
    )
    electric_kwh, burnt_kwh = make_up_energy(values, unmet_heat_kwh)
    dried_kwh = drying_kwh(values, unmet_latent_kwh)
    electricity_kwh = machine_kwh + electric_kwh + dried_kwh
    hourly_usd = hourly_bill_usd(values, weather, run)
    bill_usd = month_bill_usd(structure, values, electricity_kwh) if hourly_usd is None else hourly_usd
    electricity_usd = bill_usd + carbon_cost_usd(values, electricity_kwh, np.asarray(values[GRID]))
    fuel_usd = fuel_bill_usd(values, burnt_kwh)
    return EnergyUse(
        electricity_kwh=electricity_kwh,
        fuel_kwh=burnt_kwh,
        make_up_heat_kwh=unmet_heat_kwh,
        electricity_usd=electricity_usd,
        fuel_usd=fuel_usd,
        energy_cost_usd_per_yr=(electricity_usd + fuel_usd).sum(axis=-1),
        emitted_kg_co2e_per_yr=all_emitted_kg_co2e(values, electricity_kwh, burnt_kwh),
        unmet_cooling_kwh_per_yr=np.maximum(per_year(run.unmet_cool_wh, weather.weight_d), 0.0) / WATT_HOURS_PER_KWH,
        unmet_heating_kwh_per_yr=unmet_heat_kwh.sum(axis=-1),
        unmet_cooling_h=per_year(run.cool_short_h, weather.weight_d),
        unmet_heating_h=per_year(run.heat_short_h, weather.weight_d),
        unmet_cooling_kh=per_year(run.warm_kh, weather.weight_d),
        hours_above_humidity_limit_h=per_year(run.damp_h, weather.weight_d),
        unmet_moisture_kg_per_yr=moisture_kg(unmet_latent_kwh).sum(axis=-1),
        too_warm_h=by_month(run.cool_short_h, weather.month, weather.weight_d),
        too_warm_kh=by_month(run.warm_kh, weather.month, weather.weight_d),
        by_use_kwh=_first_by_use_kwh(run, weather, electric_kwh, dried_kwh),
    )


def hourly_bill_usd(values: Values, weather: Weather, run: DayRun) -> FloatArray | None:
    """Return monthly bills at the price of each hour, shape (B, 12); None where the price does not go by the hour."""
    if run.electricity_usd is None or run.unmet_heat_usd is None or run.unmet_latent_usd is None:
        return None
    machine_usd, heat_usd, latent_usd = (
        by_month(daily_usd, weather.month, weather.weight_d)
        for daily_usd in (run.electricity_usd, run.unmet_heat_usd, run.unmet_latent_usd)
    )
    bill_usd: FloatArray = machine_usd + make_up_energy(values, heat_usd)[0] + drying_kwh(values, latent_usd)
    return bill_usd


def _first_by_use_kwh(run: DayRun, weather: Weather, make_up_kwh: FloatArray, drying: FloatArray) -> FloatArray:
    """Return the first row's electricity by use and month, shape (1, 5, 12). [kWh]"""
    machine = [
        kwh_by_month(daily_wh[:1], weather.month, weather.weight_d)
        for daily_wh in (run.cooling_wh, run.heating_wh, run.beside_wh)
    ]
    return np.stack([*machine, make_up_kwh[:1], drying[:1]], axis=1)


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


def fuel_kg_co2e_per_kwh(values: Values) -> FloatArray:
    """Return carbon dioxide of a kWh of the fuel that heats the room now; wood counts as regrown. [kg/kWh]"""
    heat = np.asarray(values["now.heat"]).astype(np.int64)
    by_option = [FUEL_KG_CO2E_PER_KWH.get(UNKNOWN_HEAT if fuel == NOT_KNOWN else fuel, 0.0) for fuel in CHOICES[HEAT]]
    factor: FloatArray = np.array(by_option)[heat]
    return factor


def fuel_bill_usd(values: Values, burnt_kwh: FloatArray) -> FloatArray:
    """Return what monthly fuel costs, carbon dioxide included where it has a price, shape (B, 12). [USD]"""
    price = fuel_price_usd_per_kwh(values)[..., None]
    return burnt_kwh * price + carbon_cost_usd(values, burnt_kwh, fuel_kg_co2e_per_kwh(values))


def all_emitted_kg_co2e(values: Values, electricity_kwh: FloatArray, burnt_kwh: FloatArray) -> FloatArray:
    """Return the carbon dioxide of a year's electricity and fuel, shape (B,). [kg]"""
    fuel_kg = emitted_kg_co2e(burnt_kwh, fuel_kg_co2e_per_kwh(values))
    return emitted_kg_co2e(electricity_kwh, values[GRID]) + fuel_kg


def carbon_cost_usd(values: Values, energy_kwh: FloatArray, factor_kg_co2e_per_kwh: FloatArray) -> FloatArray:
    """Return what carbon dioxide adds to monthly energy; 0 where the user gives it no price. [USD]"""
    if CARBON not in values:
        return np.zeros(())
    added = np.asarray(values[CARBON]) / KG_PER_T * factor_kg_co2e_per_kwh
    cost: FloatArray = energy_kwh * added[..., None]
    return cost


def drying_kwh(values: Values, unmet_latent_kwh: FloatArray) -> FloatArray:
    """Return electricity of the dehumidifier where drying is asked for, shape (B, 12). [kWh]"""
    is_asked = np.asarray(values["use.dry"]) == code("use.dry", "yes")
    per_kwh = np.asarray(values["now.dehumidifier_kg_per_kwh"])
    drying: FloatArray = moisture_kg(unmet_latent_kwh) / per_kwh[..., None] * is_asked[..., None]
    return drying
