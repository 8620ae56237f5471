"""Physical constants, one an entry, with unit and source beneath."""

from typing import Final

# --- defined exactly ---------------------------------------------------------------------------------------------

BTU_J: Final = 1055.05585262
"""J per Btu (International Table). NIST SP 811 (2008), App. B.8."""

BTU_PER_WH: Final = 3600.0 / BTU_J
"""Btu per W*h: 3600 J over the Btu above."""

THERM_BTU: Final = 100_000.0
"""Btu per therm. US EIA, energy conversion calculators."""

FOOT_M: Final = 0.3048
"""m per foot. NIST SP 811 (2008), App. B.8."""

SQUARE_FOOT_M2: Final = FOOT_M**2
"""m2 in a square foot."""

INCH_M: Final = 0.0254
"""m per inch. NIST SP 811 (2008), App. B.8."""

POUND_KG: Final = 0.45359237
"""kg per pound. NIST SP 811 (2008), App. B.8."""

PINT_L: Final = 0.473176473
"""L per US liquid pint: 28.875 cubic inches. NIST Handbook 44, App. C."""

ZERO_CELSIUS_K: Final = 273.15
"""K at 0 degC. BIPM, SI Brochure, 9th edition."""

DEGREE_DAY_BASE_C: Final = (65.0 - 32.0) / 1.8
"""degC; 65 degF, the base that US degree-day tables use."""

HOUR_S: Final = 3600.0
"""s per hour."""

DAYS_PER_YEAR: Final = 365.0
"""d; the weather year has no 29 February."""

MONTH_DAYS: Final = (31.0, 28.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0)
"""d in each month of a year without 29 February."""

GRAVITY_M_PER_S2: Final = 9.80665
"""m/s2, standard acceleration of free fall. NIST SP 811 (2008), App. B.8; exact."""

STANDARD_PRESSURE_PA: Final = 101_325.0
"""Pa at sea level. ISO 2533:1975 Standard Atmosphere."""

# --- measured ----------------------------------------------------------------------------------------------------

AIR_DENSITY_KG_PER_M3: Final = 1.204
"""kg/m3 of dry air at 20 degC and 101 325 Pa. ISO 13789:2007, annex (1.2 rounded); ideal gas law."""

AIR_HEAT_J_PER_KGK: Final = 1006.0
"""J/(kg K) of dry air. ASHRAE Handbook Fundamentals (2009), ch. 1, eq. 30."""

VAPOUR_HEAT_J_PER_KG: Final = 2.501e6
"""J/kg latent heat of water at 0 degC. ASHRAE Handbook Fundamentals (2009), ch. 1, eq. 30."""

HOURS_PER_DAY: Final = 24.0
"""h in a day."""

WATT_HOURS_PER_KWH: Final = 1000.0
"""W*h in a kWh."""

CENTS_PER_USD: Final = 100
"""Cents in a dollar: sums that must agree to the cent are kept in whole ones."""
