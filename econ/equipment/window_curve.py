"""Window units built from CEER, cooling only or reverse cycle."""

from dataclasses import fields, replace
from typing import Final, TypeVar

import numpy as np

from econ.equipment import points, shape
from econ.equipment.curve import frosted, middle
from econ.equipment.heating_rating import heating_load_w
from econ.equipment.machine import MachineRows, ReverseCycleRows, WindowRows
from econ.equipment.matching import matched_factor
from econ.equipment.modulation import modulated_cop, modulated_power_w
from econ.equipment.part_load import heating_speeds
from econ.equipment.points import CoolingPoints, HeatingPoints, Line, Point, chosen, line_between, point_of, row_at
from econ.equipment.rating import HEATING_BIN_C, HEATING_REGIONS, RATING_REGION, bin_sum
from econ.equipment.room_air_conditioner import CONDITION_C, single_speed_power_w, variable_speed_ceer
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError

EIR_BRACKET: Final = (0.05, 2.0)
"""Power per output at 95 degF: EER 68 to 1.7, far wider than any real unit."""

PLACEHOLDER_W: Final = 1000.0
"""W; size put into the formulas of rows without a unit. It changes no result: such rows serve and draw nothing."""

_Tests = TypeVar("_Tests", CoolingPoints, HeatingPoints)


def no_machine(row_count: int) -> MachineRows:
    """Return rows without a machine: they serve nothing and draw nothing.

    Parameters
    ----------
    row_count : int
        B. [dimensionless]

    Returns
    -------
    machine : MachineRows
        can_cool and can_heat are False.
    """
    zero, one = np.zeros(row_count), np.ones(row_count)
    return single_speed_window(WindowRows(zero, one, one, zero, zero, one))


def single_speed_window(ratings: WindowRows) -> MachineRows:
    """Return single-speed window units built from CEER.

    Parameters
    ----------
    ratings : WindowRows
        Published ratings.

    Returns
    -------
    machine : MachineRows
        Gives CEER back through `room_air_conditioner.single_speed_ceer`; cooling only.
    """
    return replace(_cooling_only(ratings, single_speed_cooling(_present(ratings))), is_single_speed=True)


def variable_speed_window(ratings: WindowRows) -> MachineRows:
    """Return variable-speed window units built from CEER.

    Parameters
    ----------
    ratings : WindowRows
        Published ratings.

    Returns
    -------
    machine : MachineRows
        Gives CEER back through `room_air_conditioner.variable_speed_ceer`; cooling only.

    Raises
    ------
    OutOfRangeError
        If no unit of this shape can have the CEER.
    """
    return _cooling_only(ratings, variable_speed_cooling(_present(ratings)))


def reverse_cycle_window(ratings: WindowRows, reverse: ReverseCycleRows) -> MachineRows:
    """Return window units that also heat.

    Parameters
    ----------
    ratings : WindowRows
        Published ratings.
    reverse : ReverseCycleRows
        Heating, and whether the speed varies.

    Returns
    -------
    machine : MachineRows
        Gives CEER back, and heat_cop over the region IV bins above the cut-out.

    Raises
    ------
    OutOfRangeError
        If the cut-out leaves no heating bin.
    """
    present, is_there = _present(ratings), ratings.capacity_w > 0.0
    shapes = [_heating_shape(present, reverse.heat_ratio_frac, is_variable=claim) for claim in (True, False)]
    heating = _either(reverse.is_variable, *shapes)
    factor = seasonal_cop(heating, present, reverse.cutout_c) / reverse.heat_cop
    return MachineRows(
        cooling=_either(reverse.is_variable, variable_speed_cooling(present), single_speed_cooling(present)),
        heating=_scaled(heating, factor),
        can_cool=is_there,
        can_heat=is_there,
        cutout_c=reverse.cutout_c,
        shr=ratings.shr,
        standby_w=present.standby_w,
        cd_frac=ratings.cd_frac,
    )


def single_speed_cooling(ratings: WindowRows) -> CoolingPoints:
    """Return the cooling tests of single-speed window units; low, intermediate and full speed are one.

    Parameters
    ----------
    ratings : WindowRows
        Published ratings of units that are there.

    Returns
    -------
    cooling : CoolingPoints
        Power at 95 degF from CEER; 82 degF by the ratios in `shape`, straight between.
    """
    power_w = single_speed_power_w(ratings.capacity_w, ratings.ceer, ratings.standby_w)
    a_full, b_full, full = full_cooling(ratings.capacity_w, power_w / ratings.capacity_w)
    return CoolingPoints(a_full, b_full, row_at(full, points.E_C), b_full, row_at(full, points.F_C))


def variable_speed_cooling(ratings: WindowRows) -> CoolingPoints:
    """Return the cooling tests of variable-speed window units.

    Parameters
    ----------
    ratings : WindowRows
        Published ratings of units that are there.

    Returns
    -------
    cooling : CoolingPoints
        The power per output at 95 degF is found so that CEER comes out.
    """
    share = ratings.min_ratio_frac
    eir = matched_factor(
        lambda trial: variable_speed_ceer(
            ceer_tests(variable_points(ratings.capacity_w, trial, share)), ratings.standby_w
        ),
        ratings.ceer,
        EIR_BRACKET,
        "ceer",
    )
    return variable_points(ratings.capacity_w, eir, share)


def variable_points(capacity_w: FloatArray, eir_frac: FloatArray, min_ratio_frac: FloatArray) -> CoolingPoints:
    """Return the cooling tests of variable-speed window units of given size and efficiency.

    Parameters
    ----------
    capacity_w : ndarray, shape (B,)
        Full-speed output at 95 degF. [W]
    eir_frac : ndarray, shape (B,)
        Power per output there. [dimensionless]
    min_ratio_frac : ndarray, shape (B,)
        Least over greatest output. [dimensionless]

    Returns
    -------
    cooling : CoolingPoints
        Least output is the same share of greatest at any temperature; efficiency is straight in the load.
    """
    a_full, b_full, full = full_cooling(capacity_w, eir_frac)
    b_low, f_low = (slowed(row_at(full, at_c), min_ratio_frac) for at_c in (points.B_C, points.F_C))
    most = row_at(full, points.E_C)
    e_mid = on_line(shape.WINDOW_MID_FRAC * capacity_w, slowed(most, min_ratio_frac), most)
    return CoolingPoints(a_full, b_full, e_mid, b_low, f_low)


def on_line(load_w: FloatArray, low: Point, full: Point) -> Point:
    """Return the point at a load on the efficiency line from low to full speed.

    Parameters
    ----------
    load_w : ndarray, shape (B,)
        Output; less than low speed gives is raised to it. [W]
    low, full : Point, shape (B,)
        The two speeds.

    Returns
    -------
    point : Point, shape (B,)
        Output and power.
    """
    output_w = np.maximum(load_w, low.capacity_w)
    return Point(output_w, output_w / modulated_cop(output_w, (low, full)))


def slowed(full: Point, share_frac: FloatArray) -> Point:
    """Return low speed at the temperature of a full-speed point.

    Parameters
    ----------
    full : Point, shape (B,)
        Full speed.
    share_frac : ndarray, shape () or (B,)
        Low over full output. [dimensionless]

    Returns
    -------
    low : Point, shape (B,)
        Less power per output by the ratio in `shape`.
    """
    return Point(full.capacity_w * share_frac, full.power_w * share_frac * shape.WINDOW_EIR_LOW)


def full_cooling(capacity_w: FloatArray, eir_frac: FloatArray) -> tuple[Point, Point, Line]:
    """Return full-speed cooling of window units at 95 and 82 degF and the line through both.

    Parameters
    ----------
    capacity_w : ndarray, shape (B,)
        Output at 95 degF. [W]
    eir_frac : ndarray, shape (B,)
        Power per output there. [dimensionless]

    Returns
    -------
    tests : tuple of (Point, Point, Line)
        At 95 degF, at 82 degF, and between.
    """
    a_full = point_of(capacity_w, eir_frac)
    b_full = point_of(capacity_w * shape.WINDOW_CAPACITY_82_OVER_95, eir_frac * shape.WINDOW_EIR_82_OVER_95)
    return a_full, b_full, line_between(points.A_C, a_full, points.B_C, b_full)


def ceer_tests(cooling: CoolingPoints) -> Point:
    """Return the four tests of the variable-speed CEER.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.

    Returns
    -------
    tested : Point, shape (B, 4)
        Full speed at 95 and 92 degF, intermediate at 87, about half at 82.
    """
    full = line_between(points.A_C, cooling.a_full, points.B_C, cooling.b_full)
    low_test = on_line(shape.WINDOW_LOW_TEST_FRAC * cooling.a_full.capacity_w, cooling.b_low, cooling.b_full)
    tests = (cooling.a_full, row_at(full, float(CONDITION_C[1])), cooling.e_mid, low_test)
    return Point(
        np.stack([test.capacity_w for test in tests], axis=-1), np.stack([test.power_w for test in tests], axis=-1)
    )


def seasonal_cop(heating: HeatingPoints, ratings: WindowRows, cutout_c: FloatArray) -> FloatArray:
    """Return the efficiency over the heating bins of region IV above the cut-out.

    Parameters
    ----------
    heating : HeatingPoints
        Heating tests.
    ratings : WindowRows
        Gives the cooling capacity that sizes the load, and the cycling coefficient.
    cutout_c : ndarray, shape (B,)
        No heating at or below this outdoor temperature. [degC]

    Returns
    -------
    cop : ndarray, shape (B,)
        Heat given over electricity, cycling and frost included, without backup. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the cut-out leaves no heating bin.
    """
    climate = HEATING_REGIONS[RATING_REGION]
    speeds = heating_speeds(heating, HEATING_BIN_C[None])
    wanted_w = heating_load_w(ratings.capacity_w, climate, climate.slope_variable_frac)
    load_w = np.minimum(wanted_w, speeds[-1].capacity_w) * (cutout_c[:, None] < HEATING_BIN_C)
    power_w = modulated_power_w(load_w, speeds, ratings.cd_frac)
    served_w = bin_sum(load_w, climate.bin_frac)
    if np.any(served_w <= 0.0):
        highest = float(np.max(cutout_c))
        raise OutOfRangeError("cutout_c", highest, "degC", "below 10", "A unit that never heats is cooling only.")
    cop: FloatArray = served_w / bin_sum(power_w, climate.bin_frac)
    return cop


def _present(ratings: WindowRows) -> WindowRows:
    """Return the ratings with a placeholder size where no unit is there, so that every formula has a number."""
    is_there = ratings.capacity_w > 0.0
    return replace(
        ratings,
        capacity_w=np.where(is_there, ratings.capacity_w, PLACEHOLDER_W),
        standby_w=np.where(is_there, ratings.standby_w, 0.0),
    )


def _cooling_only(ratings: WindowRows, cooling: CoolingPoints) -> MachineRows:
    """Return machines that cool where a unit is there and never heat."""
    never = np.zeros(ratings.capacity_w.shape, dtype=np.bool_)
    return MachineRows(
        cooling=cooling,
        heating=_heating_shape(_present(ratings), np.ones(ratings.capacity_w.shape), is_variable=False),
        can_cool=ratings.capacity_w > 0.0,
        can_heat=never,
        cutout_c=np.zeros(ratings.capacity_w.shape),
        shr=ratings.shr,
        standby_w=np.where(ratings.capacity_w > 0.0, ratings.standby_w, 0.0),
        cd_frac=ratings.cd_frac,
    )


def _heating_shape(ratings: WindowRows, heat_ratio_frac: FloatArray, *, is_variable: bool) -> HeatingPoints:
    """Return heating tests with COP 1 at 47 degF and full speed; low is full where the speed is fixed."""
    h1_w = ratings.capacity_w * heat_ratio_frac
    at = {
        fahrenheit: point_of(h1_w * shape.WINDOW_HEAT_CAPACITY[fahrenheit], np.full(h1_w.shape, eir))
        for fahrenheit, eir in shape.WINDOW_HEAT_EIR.items()
    }
    h2_full = frosted(at[47], at[17])
    clear = line_between(points.H1_C, at[47], points.H3_C, at[17])
    h0_low, h1_low, h2_mid = row_at(clear, points.H0_C), at[47], h2_full
    if is_variable:
        h0_low, h1_low = (slowed(test, ratings.min_ratio_frac) for test in (h0_low, h1_low))
        frosting = line_between(points.H2_C, h2_full, points.H3_C, at[17])
        h2_mid = middle(line_between(points.H1_C, h1_low, points.H0_C, h0_low), frosting, points.H2_C)
    return HeatingPoints(h0_low, h1_low, h2_mid, at[47], h2_full, at[17], at[5])


def _scaled(heating: HeatingPoints, factor: FloatArray) -> HeatingPoints:
    """Return the tests with every power multiplied."""
    tests = [getattr(heating, test.name) for test in fields(heating)]
    return HeatingPoints(*(Point(test.capacity_w, test.power_w * factor) for test in tests))


def _either(is_first: BoolArray, first: _Tests, second: _Tests) -> _Tests:
    """Return, row by row, the first set of tests where the claim holds, else the second."""
    pairs = [(getattr(first, test.name), getattr(second, test.name)) for test in fields(first)]
    return type(first)(*(chosen(is_first, *pair) for pair in pairs))
