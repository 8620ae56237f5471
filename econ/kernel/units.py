"""Unit suffixes of names: what each ending means, in the spelling pint reads."""

from typing import Final

SUFFIX_UNITS: Final[dict[str, str]] = {
    "_usd_per_kwh": "USD/kWh",
    "_usd_per_yr": "USD/year",
    "_btu_per_wh": "Btu/(W*hour)",
    "_usd_per_h": "USD/hour",
    "_usd_per_d": "USD/day",
    "_usd_per_m": "USD/m",
    "_usd_per_month": "USD/month",
    "_usd_per_therm": "USD/therm",
    "_usd_per_gal": "USD/gallon",
    "_usd_per_cord": "USD/cord",
    "_usd_per_kg_co2e": "USD/kg",
    "_usd_per_kg": "USD/kg",
    "_usd_per_t": "USD/t",
    "_usd_per_m2": "USD/m^2",
    "_kg_co2e_per_kwh": "kg/kWh",
    "_kg_co2e_per_yr": "kg/year",
    "_kg_co2e": "kg",
    "_kg_per_kg": "kg/kg",
    "_kg_per_s": "kg/s",
    "_kg_per_h": "kg/hour",
    "_kg_per_yr": "kg/year",
    "_kg_per_kwh": "kg/kWh",
    "_kwh_per_yr": "kWh/year",
    "_kwh_per_m2": "kWh/m^2",
    "_kwh_per_kwh": "kWh/kWh",
    "_j_per_m2k": "J/(m^2*K)",
    "_j_per_kg": "J/kg",
    "_j_per_kgk": "J/(kg*K)",
    "_j_per_m3k": "J/(m^3*K)",
    "_j_per_k": "J/K",
    "_w_per_m2k": "W/(m^2*K)",
    "_w_per_mk": "W/(m*K)",
    "_w_per_m2": "W/m^2",
    "_w_per_k": "W/K",
    "_m2k_per_w": "m^2*K/W",
    "_m2_per_m2": "m^2/m^2",
    "_m3_per_s": "m^3/s",
    "_m3_per_h": "m^3/hour",
    "_m2_per_s": "m^2/s",
    "_m_per_s": "m/s",
    "_kg_per_m3": "kg/m^3",
    "_per_yr": "1/year",
    "_per_h": "1/hour",
    "_ohm_per_m": "ohm/m",
    "_per_m": "1/m",
    "_kd": "K*day",
    "_usd": "USD",
    "_cents": "USDcent",
    "_nominal_usd": "USD",
    "_kwh": "kWh",
    "_kw": "kW",
    "_wh": "W*hour",
    "_w": "W",
    "_c": "degC",
    "_f": "degF",
    "_k": "K",
    "_m": "m",
    "_cm": "cm",
    "_m2": "m^2",
    "_m3": "m^3",
    "_pa": "Pa",
    "_n": "N",
    "_m_per_s2": "m/s^2",
    "_a": "A",
    "_v": "V",
    "_va": "V*A",
    "_h": "hour",
    "_d": "day",
    "_yr": "year",
    "_kg": "kg",
    "_deg": "degree",
    "_frac": "dimensionless",
    "_awg": "dimensionless",
    "_count": "dimensionless",
    "_db": "dimensionless",
}
"""Longest endings win; see `suffix_of`. The decibel is listed as dimensionless, as pint treats levels apart."""

WHOLE_NAME_UNITS: Final[dict[str, str]] = {
    "seer2": "Btu/(W*hour)",
    "eer2": "Btu/(W*hour)",
    "hspf2": "Btu/(W*hour)",
    "ceer": "Btu/(W*hour)",
    "cop": "dimensionless",
    "sir": "dimensionless",
    "airr": "dimensionless",
    "irr": "dimensionless",
    "shr": "dimensionless",
    "part_load_factor": "dimensionless",
    "humidity_ratio": "kg/kg",
    "irradiance": "W/m^2",
    "month": "dimensionless",
    "day_of_year": "dimensionless",
    "aerosol": "dimensionless",
    "albedo": "dimensionless",
    "owner": "dimensionless",
    "base_case": "dimensionless",
    "party": "dimensionless",
    "weekday": "dimensionless",
}
"""Names that are their own unit."""


def suffix_of(name: str) -> str | None:
    """Return the unit a name ends in, or None where no known ending fits.

    Parameters
    ----------
    name : str
        A parameter or field name, such as ``floor_area_m2``.

    Returns
    -------
    unit : str or None
        The unit in the spelling pint reads.

    Examples
    --------
    >>> suffix_of("floor_area_m2"), suffix_of("seer2"), suffix_of("wall")
    ('m^2', 'Btu/(W*hour)', None)
    """
    if name in WHOLE_NAME_UNITS:
        return WHOLE_NAME_UNITS[name]
    fitting = [ending for ending in SUFFIX_UNITS if name.endswith(ending)]
    return SUFFIX_UNITS[max(fitting, key=len)] if fitting else None
