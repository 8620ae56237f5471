"""Carbon dioxide of electricity and fuels."""

from typing import Final

import numpy as np

from econ.energy.fuel import BTU_PER_KWH
from econ.kernel.arrays import FloatArray

BTU_PER_MMBTU: Final = 1.0e6
"""Btu in a million Btu."""

GAS_KG_CO2_PER_MMBTU: Final = 53.06
"""kg per million Btu of natural gas. 40 CFR 98, table C-1; EPA GHG Emission Factors Hub 2024."""

PROPANE_KG_CO2_PER_MMBTU: Final = 62.87
"""kg per million Btu of propane, liquid. 40 CFR 98, table C-1 (the EPA hub prints 61.46 for propane gas)."""

OIL_KG_CO2_PER_MMBTU: Final = 73.96
"""kg per million Btu of distillate fuel oil no. 2. 40 CFR 98, table C-1."""

FUEL_KG_CO2E_PER_KWH: Final[dict[str, float]] = {
    "gas": GAS_KG_CO2_PER_MMBTU * BTU_PER_KWH / BTU_PER_MMBTU,
    "propane": PROPANE_KG_CO2_PER_MMBTU * BTU_PER_KWH / BTU_PER_MMBTU,
    "oil": OIL_KG_CO2_PER_MMBTU * BTU_PER_KWH / BTU_PER_MMBTU,
}
"""kg of carbon dioxide per kWh of heat in the fuel. Wood is left out: its balance depends on the forest."""


def emitted_kg_co2e(energy_kwh: FloatArray, factor_kg_co2e_per_kwh: FloatArray) -> FloatArray:
    """Return what an amount of energy emits in a year.

    Parameters
    ----------
    energy_kwh : ndarray, shape (B, 12)
        Electricity or heat in the fuel, by month. [kWh]
    factor_kg_co2e_per_kwh : ndarray, shape () or (B,)
        Emission factor. [kg/kWh]

    Returns
    -------
    emitted_kg_co2e : ndarray, shape (B,)
        Sum over the year. [kg]
    """
    emitted: FloatArray = energy_kwh.sum(axis=-1) * np.asarray(factor_kg_co2e_per_kwh)
    return emitted
