"""Machines built from published ratings; each goes through its published procedure and gives the ratings back."""

from typing import Final

import numpy as np

from econ.equipment import points, shape
from econ.equipment.heating_rating import HeatingTerms, variable_speed_hspf2
from econ.equipment.machine import MachineRows, RatingRows
from econ.equipment.matching import matched_factor
from econ.equipment.points import CoolingPoints, HeatingPoints, Line, Point, line_between, point_of, row_at
from econ.equipment.rating import variable_speed_seer2
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH

LOW_EIR_BRACKET: Final = (0.12, 3.0)
"""Power per output at low over full speed, 82 degF: far wider than any real unit."""

RATED_EIR_BRACKET: Final = (0.05, 1.0)
"""Power per output in heating at 47 degF: COP 20 to 1."""


def variable_speed_split(ratings: RatingRows) -> MachineRows:
    """Return variable-speed split heat pumps built from their ratings.

    Parameters
    ----------
    ratings : RatingRows
        Published ratings.

    Returns
    -------
    machine : MachineRows
        Gives back seer2, eer2 and hspf2 (region IV, demand defrost) through the published procedures.

    Raises
    ------
    OutOfRangeError
        If no unit of this shape can have these ratings together.

    Notes
    -----
    Ratios between tests are the means in `shape`; one factor a season (efficiency at low speed in cooling, overall
    efficiency in heating) is found so that the seasonal rating comes out. The cooling procedure uses V = 0.93.
    """
    low_eir_frac = matched_factor(
        lambda ratio: variable_speed_seer2(split_cooling(ratings, ratio), ratings.cd_frac),
        ratings.seer2,
        LOW_EIR_BRACKET,
        "seer2",
    )
    terms = rating_terms(ratings)
    rated_eir_frac = matched_factor(
        lambda eir: variable_speed_hspf2(split_heating(ratings, eir), terms),
        ratings.hspf2,
        RATED_EIR_BRACKET,
        "hspf2",
    )
    always = np.ones(ratings.capacity_w.shape, dtype=np.bool_)
    return MachineRows(
        cooling=split_cooling(ratings, low_eir_frac),
        heating=split_heating(ratings, rated_eir_frac),
        can_cool=always,
        can_heat=always,
        cutout_c=ratings.cutout_c,
        shr=ratings.shr,
        standby_w=ratings.standby_w,
        cd_frac=ratings.cd_frac,
    )


def rating_terms(ratings: RatingRows) -> HeatingTerms:
    """Return what besides its tests decides a split unit's HSPF2.

    Parameters
    ----------
    ratings : RatingRows
        Published ratings.

    Returns
    -------
    terms : HeatingTerms
        Load from the cooling capacity, one temperature for cut-out and return, demand-defrost credit.
    """
    credit = np.asarray(shape.DEMAND_DEFROST_CREDIT_FRAC)
    return HeatingTerms(ratings.capacity_w, ratings.cd_frac, ratings.cutout_c, ratings.cutout_c, credit)


def split_cooling(ratings: RatingRows, low_eir_frac: FloatArray) -> CoolingPoints:
    """Return the cooling tests of split units.

    Parameters
    ----------
    ratings : RatingRows
        Published ratings; capacity, EER2 and least output are used.
    low_eir_frac : ndarray, shape (B,)
        Power per output at low over full speed, 82 degF. [dimensionless]

    Returns
    -------
    cooling : CoolingPoints
        EER2 holds exactly.
    """
    full_eir = BTU_PER_WH / ratings.eer2
    b_eir = full_eir / shape.FULL_EIR_95_OVER_82
    a_full = point_of(ratings.capacity_w, full_eir)
    b_full = point_of(ratings.capacity_w / shape.FULL_CAPACITY_95_OVER_82, b_eir)
    full = line_between(points.A_C, a_full, points.B_C, b_full)
    f_capacity_w = row_at(full, points.F_C).capacity_w * ratings.min_ratio_frac
    b_low = point_of(b_full.capacity_w * ratings.min_ratio_frac, b_eir * low_eir_frac)
    f_low = point_of(f_capacity_w, b_eir * low_eir_frac * shape.LOW_EIR_67_OVER_82)
    low = line_between(points.B_C, b_low, points.F_C, f_low)
    return CoolingPoints(a_full, b_full, middle(low, full, points.E_C), b_low, f_low)


def split_heating(ratings: RatingRows, rated_eir_frac: FloatArray) -> HeatingPoints:
    """Return the heating tests of split units.

    Parameters
    ----------
    ratings : RatingRows
        Published ratings; heating output at 47 degF, its ratio at 5 degF and least output are used.
    rated_eir_frac : ndarray, shape (B,)
        Power per output at rated output, 47 degF. [dimensionless]

    Returns
    -------
    heating : HeatingPoints
        Greatest output runs straight from 47 to 5 degF but for frost; least output never grows as it gets colder.
    """
    h1_full = point_of(ratings.heat_47f_w * shape.HEAT_GREATEST_OVER_RATED_47, rated_eir_frac * shape.HEAT_EIR_FULL_47)
    h4_capacity_w = ratings.heat_47f_w * ratings.heat_5f_ratio_frac
    share = (points.H3_C - points.H4_C) / (points.H1_C - points.H4_C)
    h3_capacity_w = h4_capacity_w + (h1_full.capacity_w - h4_capacity_w) * share
    h3_full = point_of(h3_capacity_w, rated_eir_frac * shape.HEAT_EIR_FULL_17)
    h4_full = point_of(h4_capacity_w, rated_eir_frac * shape.HEAT_EIR_FULL_17 * shape.HEAT_EIR_5_OVER_17)
    h2_full = frosted(h1_full, h3_full)
    h1_low = point_of(ratings.heat_47f_w * ratings.min_ratio_frac, rated_eir_frac * shape.HEAT_EIR_LOW_47)
    kept = np.minimum(1.0, shape.HEAT_LOW_SHARE_17_OVER_47 * h3_capacity_w / h1_full.capacity_w)
    h3_low = point_of(h1_low.capacity_w * kept, rated_eir_frac * shape.HEAT_EIR_LOW_17)
    low = line_between(points.H1_C, h1_low, points.H3_C, h3_low)
    h0_low = row_at(low, points.H0_C)
    frosting = line_between(points.H2_C, h2_full, points.H3_C, h3_full)
    return HeatingPoints(h0_low, h1_low, middle(low, frosting, points.H2_C), h1_full, h2_full, h3_full, h4_full)


def frosted(h1_full: Point, h3_full: Point) -> Point:
    """Return the frost test at 35 degF that the procedure assumes where none was made.

    Parameters
    ----------
    h1_full, h3_full : Point, shape (B,)
        Tests at 47 and 17 degF.

    Returns
    -------
    h2_full : Point, shape (B,)
        0.90 of the output and 0.985 of the power on the straight line between the two.

    References
    ----------
    .. [1] 10 CFR 430 subpart B appendix M1, section 3.6.4 (recalled).
    """
    clear = row_at(line_between(points.H3_C, h3_full, points.H1_C, h1_full), points.H2_C)
    return Point(clear.capacity_w * shape.FROST_CAPACITY_FRAC, clear.power_w * shape.FROST_POWER_FRAC)


def middle(low: Line, full: Line, at_c: float) -> Point:
    """Return the intermediate-speed test: a third of the way from low to full, efficiency straight in the load.

    Parameters
    ----------
    low, full : Line
        Low-speed and full-speed lines.
    at_c : float
        Outdoor dry bulb of the test. [degC]

    Returns
    -------
    mid : Point, shape (B,)
        Capacity and power.
    """
    least, most = row_at(low, at_c), row_at(full, at_c)
    share = shape.MID_SPEED_FRAC
    capacity_w = least.capacity_w + (most.capacity_w - least.capacity_w) * share
    return Point(capacity_w, capacity_w / (least.cop + (most.cop - least.cop) * share))
