"""Fuels: how much heat is in them and what a kWh of it costs."""

from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH, THERM_BTU
from econ.kernel.errors import OutOfRangeError

BTU_PER_KWH: Final = BTU_PER_WH * 1000.0
"""Btu in a kWh."""

PROPANE_BTU_PER_GAL: Final = 91_452.0
"""Btu per gallon, higher heating value. US EIA, heat content of fuels (other years 91 333)."""

OIL_BTU_PER_GAL: Final = 138_500.0
"""Btu per gallon of heating oil, higher heating value. US EIA, heat content of fuels (newer oil 137 381)."""

WOOD_BTU_PER_CORD: Final = 20.0e6
"""Btu per cord of seasoned mixed hardwood. US EIA, units and calculators (recalled); 15 to 28 million by species."""

GAS_KWH_PER_THERM: Final = THERM_BTU / BTU_PER_KWH
"""kWh of heat in a therm."""

PROPANE_KWH_PER_GAL: Final = PROPANE_BTU_PER_GAL / BTU_PER_KWH
"""kWh of heat in a gallon of propane."""

OIL_KWH_PER_GAL: Final = OIL_BTU_PER_GAL / BTU_PER_KWH
"""kWh of heat in a gallon of heating oil."""

WOOD_KWH_PER_CORD: Final = WOOD_BTU_PER_CORD / BTU_PER_KWH
"""kWh of heat in a cord of wood."""


def fuel_kwh(heat_kwh: FloatArray, efficiency_frac: FloatArray) -> FloatArray:
    """Return the fuel that gives an amount of heat.

    Parameters
    ----------
    heat_kwh : ndarray, shape (B, 12)
        Heat given to the room. [kWh]
    efficiency_frac : ndarray, shape () or (B,)
        Heat given over heat in the fuel, above 0. [dimensionless]

    Returns
    -------
    fuel_kwh : ndarray, shape (B, 12)
        Heat in the fuel. [kWh]

    Raises
    ------
    OutOfRangeError
        If an efficiency is not above 0.
    """
    efficiency = np.asarray(efficiency_frac, dtype=np.float64)
    if np.any(efficiency <= 0.0):
        worst = float(efficiency.min())
        raise OutOfRangeError("heat_efficiency_frac", worst, "", "above 0", "Enter the efficiency as a share of 1.")
    fuel: FloatArray = heat_kwh / efficiency[..., None]
    return fuel


def gas_price_usd_per_kwh(price_usd_per_therm: FloatArray) -> FloatArray:
    """Return the price of the heat in natural gas.

    Parameters
    ----------
    price_usd_per_therm : ndarray, shape (...)
        Price. [USD/therm]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (...)
        Price of a kWh in the fuel. [USD/kWh]
    """
    return price_usd_per_therm / GAS_KWH_PER_THERM


def propane_price_usd_per_kwh(price_usd_per_gal: FloatArray) -> FloatArray:
    """Return the price of the heat in propane.

    Parameters
    ----------
    price_usd_per_gal : ndarray, shape (...)
        Price. [USD/gallon]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (...)
        Price of a kWh in the fuel. [USD/kWh]
    """
    return price_usd_per_gal / PROPANE_KWH_PER_GAL


def oil_price_usd_per_kwh(price_usd_per_gal: FloatArray) -> FloatArray:
    """Return the price of the heat in heating oil.

    Parameters
    ----------
    price_usd_per_gal : ndarray, shape (...)
        Price. [USD/gallon]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (...)
        Price of a kWh in the fuel. [USD/kWh]
    """
    return price_usd_per_gal / OIL_KWH_PER_GAL


def wood_price_usd_per_kwh(price_usd_per_cord: FloatArray) -> FloatArray:
    """Return the price of the heat in firewood.

    Parameters
    ----------
    price_usd_per_cord : ndarray, shape (...)
        Price. [USD/cord]

    Returns
    -------
    price_usd_per_kwh : ndarray, shape (...)
        Price of a kWh in the fuel. [USD/kWh]
    """
    return price_usd_per_cord / WOOD_KWH_PER_CORD


def break_even_cop(
    electricity_usd_per_kwh: FloatArray, fuel_usd_per_kwh: FloatArray, efficiency_frac: FloatArray
) -> FloatArray:
    """Return the seasonal COP at which a heat pump's heat costs as much as a fuel's.

    Parameters
    ----------
    electricity_usd_per_kwh : ndarray, shape (...)
        Price of electricity. [USD/kWh]
    fuel_usd_per_kwh : ndarray, shape (...)
        Price of the heat in the fuel. [USD/kWh]
    efficiency_frac : ndarray, shape (...)
        Heat given over heat in the fuel. [dimensionless]

    Returns
    -------
    cop : ndarray, shape (...)
        Above it the heat pump is cheaper to run. [dimensionless]
    """
    return electricity_usd_per_kwh / fuel_usd_per_kwh * efficiency_frac
