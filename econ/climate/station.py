"""Station: what a weather table says about one place."""

from dataclasses import dataclass
from typing import Final

from econ.kernel.arrays import FloatArray

BASES: Final = ("record", "means", "typed", "hourly")
"""Monthly record of a station; monthly means alone; months typed in; an hourly file."""


@dataclass(frozen=True, slots=True, eq=False)
class Station:
    """Monthly climate and design conditions of one place.

    Attributes
    ----------
    name, state : str
        Name as in the table and two-letter state.
    latitude_deg, longitude_deg : float
        North and east positive. [degree]
    elevation_m : float
        Above sea level. [m]
    utc_offset_h : float
        Local standard time minus UTC. [hour]
    heat_design_c, cool_design_c : float
        Dry bulb exceeded 99 % and 1 % of the hours. [degC]
    cool_wet_bulb_c : float
        Mean coincident wet bulb at the 1 % dry bulb. [degC]
    daily_range_k : float
        Mean daily range of the hottest month. [K]
    mean_c, max_c, min_c : ndarray, shape (12,)
        Monthly means of the daily mean, maximum and minimum. [degC]
    sd_k : ndarray, shape (12,)
        Standard deviation of daily means within each month; NaN where not known. [K]
    dew_point_c : ndarray, shape (12,)
        Monthly mean dew point. [degC]
    global_kwh_per_m2, diffuse_kwh_per_m2 : ndarray, shape (12,)
        Mean daily irradiation on the horizontal. [kWh/m^2]
    wind_m_per_s : ndarray, shape (12,)
        Monthly mean wind speed. [m/s]
    hdd18_3_kd, cdd18_3_kd : float
        Yearly degree-days as the table prints them. [K*day]
    period : str
        Years that the figures cover.
    source_id : str
        Key of the table's record.
    basis : str
        What the figures were made from: one of BASES.
    estimated : tuple of str
        Fields that were estimated from the others, in words.
    notes : tuple of str
        What was left out or taken for granted, in sentences.
    """

    name: str
    state: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    utc_offset_h: float
    heat_design_c: float
    cool_design_c: float
    cool_wet_bulb_c: float
    daily_range_k: float
    mean_c: FloatArray
    max_c: FloatArray
    min_c: FloatArray
    sd_k: FloatArray
    dew_point_c: FloatArray
    global_kwh_per_m2: FloatArray
    diffuse_kwh_per_m2: FloatArray
    wind_m_per_s: FloatArray
    hdd18_3_kd: float
    cdd18_3_kd: float
    period: str
    source_id: str
    basis: str = "record"
    estimated: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
