"""Moist air as arrays, against the scalar library of the same equations."""

import numpy as np
import psychrolib
import pytest

from econ.climate import moist_air
from econ.kernel.errors import OutOfRangeError

psychrolib.SetUnitSystem(psychrolib.SI)
PRESSURE = np.array(95_000.0)
DRY_C = np.linspace(-30.0, 45.0, 31)
RATIO = 0.4 * moist_air.saturation_humidity_ratio(DRY_C, PRESSURE)


def each(function, *columns):
    return np.array([function(*(float(x) for x in row)) for row in zip(*np.broadcast_arrays(*columns), strict=True)])


def test_saturation_pressure_agrees_with_the_library():
    assert moist_air.saturation_pressure_pa(DRY_C) == pytest.approx(each(psychrolib.GetSatVapPres, DRY_C), rel=1e-6)


def test_humidity_ratio_from_relative_humidity_agrees_with_the_library():
    theirs = each(psychrolib.GetHumRatioFromRelHum, DRY_C, 0.6, PRESSURE)
    assert moist_air.humidity_ratio_at(DRY_C, np.array(0.6), PRESSURE) == pytest.approx(theirs, rel=1e-6)


def test_relative_humidity_agrees_with_the_library():
    theirs = each(psychrolib.GetRelHumFromHumRatio, DRY_C, RATIO, PRESSURE)
    assert moist_air.relative_humidity_frac(DRY_C, RATIO, PRESSURE) == pytest.approx(theirs, rel=1e-6)


def test_enthalpy_agrees_with_the_library():
    theirs = each(psychrolib.GetMoistAirEnthalpy, DRY_C, RATIO)
    assert moist_air.enthalpy_j_per_kg(DRY_C, RATIO) == pytest.approx(theirs, rel=1e-6, abs=1e-3)


def test_dew_point_gives_back_the_vapour_pressure():
    dew_c = moist_air.dew_point_c(RATIO, PRESSURE)
    assert moist_air.saturation_humidity_ratio(dew_c, PRESSURE) == pytest.approx(RATIO, rel=1e-9)


def test_dew_point_agrees_with_the_library_to_its_tolerance():
    theirs = each(psychrolib.GetTDewPointFromHumRatio, DRY_C, RATIO, PRESSURE)
    assert moist_air.dew_point_c(RATIO, PRESSURE) == pytest.approx(theirs, abs=0.002)


def test_humidity_ratio_from_wet_bulb_agrees_with_the_library():
    wet_c = DRY_C - 1.0
    theirs = each(psychrolib.GetHumRatioFromTWetBulb, DRY_C, wet_c, PRESSURE)
    ours = moist_air.humidity_ratio_from_wet_bulb(DRY_C, wet_c, PRESSURE)
    assert np.where(theirs > 1e-7, ours, theirs) == pytest.approx(theirs, rel=1e-6)


def test_wet_bulb_agrees_with_the_library_to_its_tolerance():
    theirs = each(psychrolib.GetTWetBulbFromHumRatio, DRY_C, RATIO, PRESSURE)
    assert moist_air.wet_bulb_c(DRY_C, RATIO, PRESSURE) == pytest.approx(theirs, abs=0.002)


def test_pressure_agrees_with_the_library():
    height = np.array([0.0, 201.0, 1829.0])
    assert moist_air.pressure_pa(height) == pytest.approx(each(psychrolib.GetStandardAtmPressure, height), rel=1e-6)


def test_a_row_gives_the_same_dew_point_alone_and_among_others():
    assert moist_air.dew_point_c(RATIO[7:8], PRESSURE)[0] == moist_air.dew_point_c(RATIO, PRESSURE)[7]


def test_temperature_beyond_the_equations_is_refused():
    with pytest.raises(OutOfRangeError, match="dry_bulb_c is 250; it must be between -100 and 200"):
        moist_air.saturation_pressure_pa(np.array([20.0, 250.0]))


def test_not_a_number_is_refused():
    with pytest.raises(OutOfRangeError, match="dry_bulb_c is nan"):
        moist_air.saturation_pressure_pa(np.array([np.nan]))


def test_relative_humidity_in_percent_is_refused():
    with pytest.raises(OutOfRangeError, match="relative_humidity_frac is 60; it must be between 0 and 1"):
        moist_air.humidity_ratio_at(np.array(20.0), np.array(60.0), PRESSURE)


def test_wet_bulb_above_dry_bulb_is_refused():
    with pytest.raises(OutOfRangeError, match="wet bulb minus dry bulb is 2 K"):
        moist_air.humidity_ratio_from_wet_bulb(np.array(20.0), np.array(22.0), PRESSURE)
