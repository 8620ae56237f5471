"""The published rating procedures of split air conditioners and heat pumps, row by row."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.equipment import points
from econ.equipment.modulation import modulated_power_w
from econ.equipment.points import CoolingPoints, Line, Point, celsius, line_between, mid_line
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH
from econ.kernel.errors import OutOfRangeError

COOLING_BIN_C: Final[FloatArray] = celsius(67.0) + np.arange(8, dtype=np.float64) * 5.0 / 1.8
"""degC; middles of the cooling bins 67, 72, ..., 102 degF. AHRI 210/240-2023, table 14."""

COOLING_BIN_FRAC: Final[FloatArray] = np.array([0.214, 0.231, 0.216, 0.161, 0.104, 0.052, 0.018, 0.004])
"""Share of the cooling hours in each bin. Same table."""

HEATING_BIN_C: Final[FloatArray] = celsius(62.0) - np.arange(18, dtype=np.float64) * 5.0 / 1.8
"""degC; middles of the heating bins 62, 57, ..., -23 degF. AHRI 210/240-2023, table 15."""

COOLING_OVERSIZE: Final = 1.1
"""Rated capacity over building load at 95 degF. AHRI 210/240-2023, eq. 11.61."""

HEAT_PUMP_LOAD_FRAC: Final = 0.93
"""Cooling load factor V of variable-speed heat pumps. 10 CFR 430 appendix M1, eq. 4.1-2: unverified, from memory.

The regulation's text was looked for in November 2026 and not found; an open implementation of the procedure leaves V
out. With it a unit's SEER2 comes out 0.5 % higher (worked example: 17.28 for 17.19); curves close on SEER2 either way.
"""

COOLING_ZERO_LOAD_C: Final = celsius(65.0)
"""degC; outdoor temperature without cooling load in the procedure. AHRI 210/240-2023, eq. 11.60."""


@dataclass(frozen=True, slots=True, eq=False)
class HeatingRegion:
    """A climate region of the heating rating.

    Attributes
    ----------
    bin_frac : ndarray, shape (18,)
        Share of the heating hours in each bin; bins without load dropped by the procedure, not here. [dimensionless]
    design_c : float
        Outdoor design temperature. [degC]
    zero_load_c : float
        Outdoor temperature without heating load. [degC]
    slope_single_frac, slope_variable_frac : float
        Load at the design temperature over the rated cooling capacity. [dimensionless]
    """

    bin_frac: FloatArray
    design_c: float
    zero_load_c: float
    slope_single_frac: float
    slope_variable_frac: float


def _region(design_f: float, zero_load_f: float, slopes: tuple[float, float], *bin_frac: float) -> HeatingRegion:
    """Return a region as the tables print it, in degF."""
    shares = np.zeros(HEATING_BIN_C.size)
    shares[: len(bin_frac)] = bin_frac
    return HeatingRegion(shares, celsius(design_f), celsius(zero_load_f), *slopes)


# AHRI 210/240-2023, tables 15 and 16: design, zero load, slopes, shares of the bins.
HEATING_REGIONS: Final[dict[str, HeatingRegion]] = {
    "I": _region(37, 58, (1.10, 1.03), 0.291, 0.239, 0.194, 0.129, 0.081, 0.041, 0.019, 0.005, 0.001),
    "II": _region(27, 57, (1.06, 0.99), 0.215, 0.189, 0.163, 0.143, 0.112, 0.088, 0.056, 0.024, 0.008, 0.002),
    "III": _region(
        *(17, 56, (1.30, 1.21), 0.153, 0.142, 0.138, 0.137, 0.135, 0.118, 0.092, 0.047, 0.021),
        *(0.009, 0.005, 0.002, 0.001),
    ),
    "IV": _region(
        *(5, 55, (1.15, 1.07), 0.132, 0.111, 0.103, 0.093, 0.100, 0.109, 0.126, 0.087, 0.055),
        *(0.036, 0.026, 0.013, 0.006, 0.002, 0.001),
    ),
    "V": _region(
        *(-10, 55, (1.16, 1.08), 0.106, 0.092, 0.086, 0.076, 0.078, 0.087, 0.102, 0.094, 0.074),
        *(0.055, 0.047, 0.038, 0.029, 0.018, 0.010, 0.005, 0.002, 0.001),
    ),
    "VI": _region(30, 57, (1.11, 1.03), 0.113, 0.206, 0.215, 0.204, 0.141, 0.076, 0.034, 0.008, 0.003),
}
"""The six regions of the heating rating."""

RATING_REGION: Final = "IV"
"""The region of the printed rating."""


def bin_sum(bin_w: FloatArray, bin_frac: FloatArray) -> FloatArray:
    """Return the sum over bins, each weighted with its share of the hours.

    Parameters
    ----------
    bin_w : ndarray, shape (B, n_bin)
        Power in each bin. [W]
    bin_frac : ndarray, shape (n_bin,)
        Share of the hours in each bin. [dimensionless]

    Returns
    -------
    mean_w : ndarray, shape (B,)
        Added bin after bin: a matrix product would round a row differently alone and among others. [W]
    """
    return np.cumsum(bin_w * bin_frac, axis=-1)[..., -1]


def single_speed_seer2(b_full: Point, cd_frac: FloatArray) -> FloatArray:
    """Return SEER2 of a single-speed unit.

    Parameters
    ----------
    b_full : Point, shape (B,)
        Result of the test at 82 degF.
    cd_frac : array_like, shape () or (B,)
        Cooling cyclic degradation coefficient. [dimensionless]

    Returns
    -------
    seer2 : ndarray, shape (B,)
        Seasonal energy efficiency ratio. [Btu/(W*hour)]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.55 and 11.56.
    """
    seer2: FloatArray = (1.0 - 0.5 * np.asarray(cd_frac)) * b_full.cop * BTU_PER_WH
    return seer2


def cooling_load_w(capacity_w: FloatArray, dry_bulb_c: FloatArray, load_frac: float) -> FloatArray:
    """Return the building's cooling load of the rating procedure.

    Parameters
    ----------
    capacity_w : ndarray, shape (B,)
        Full-speed capacity at 95 degF. [W]
    dry_bulb_c : ndarray, shape (n,)
        Outdoor dry bulbs. [degC]
    load_frac : float
        Factor V: 0.93 for variable-speed heat pumps, else 1. [dimensionless]

    Returns
    -------
    load_w : ndarray, shape (B, n)
        Building load. [W]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.60; 10 CFR 430 appendix M1, eq. 4.1-2.
    """
    share = (dry_bulb_c - COOLING_ZERO_LOAD_C) / (points.A_C - COOLING_ZERO_LOAD_C)
    load: FloatArray = capacity_w[:, None] * share * load_frac / COOLING_OVERSIZE
    return load


def full_cooling_line(cooling: CoolingPoints) -> Line:
    """Return the full-speed line of cooling, through B2 and A2; as in `cooling_lines`.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.
    """
    return line_between(points.A_C, cooling.a_full, points.B_C, cooling.b_full)


def cooling_lines(cooling: CoolingPoints) -> tuple[Line, Line, Line]:
    """Return the low, intermediate and full-speed lines of cooling.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.

    Returns
    -------
    lines : tuple of Line
        Low through F1 and B1, intermediate through EV, full through B2 and A2.

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.62 to 11.65 and section 11.2.1.3.
    """
    low = line_between(points.B_C, cooling.b_low, points.F_C, cooling.f_low)
    full = full_cooling_line(cooling)
    return low, mid_line(points.E_C, cooling.e_mid, low, full), full


def variable_speed_bin_power_w(cooling: CoolingPoints, cd_frac: FloatArray, load_frac: float) -> FloatArray:
    """Return the mean electric power in each cooling bin of the procedure.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.
    cd_frac : ndarray, shape (B,)
        Cooling cyclic degradation coefficient. [dimensionless]
    load_frac : float
        Factor V of the building load. [dimensionless]

    Returns
    -------
    power_w : ndarray, shape (B, 8)
        Power at 67, 72, ..., 102 degF. [W]

    References
    ----------
    .. [1] AHRI 210/240-2023, section 11.2.1.3, eq. 11.66 to 11.101.
    """
    low, mid, full = (line.at(COOLING_BIN_C) for line in cooling_lines(cooling))
    load_w = cooling_load_w(cooling.a_full.capacity_w, COOLING_BIN_C, load_frac)
    return modulated_power_w(np.minimum(load_w, full.capacity_w), (low, mid, full), cd_frac)


def variable_speed_seer2(
    cooling: CoolingPoints, cd_frac: FloatArray, load_frac: float = HEAT_PUMP_LOAD_FRAC
) -> FloatArray:
    """Return SEER2 of a variable-speed unit.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.
    cd_frac : ndarray, shape (B,)
        Cooling cyclic degradation coefficient. [dimensionless]
    load_frac : float
        Factor V of the building load: 0.93 for heat pumps, 1 for air conditioners. [dimensionless]

    Returns
    -------
    seer2 : ndarray, shape (B,)
        Seasonal energy efficiency ratio. [Btu/(W*hour)]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.59.
    """
    served_w = np.minimum(
        cooling_load_w(cooling.a_full.capacity_w, COOLING_BIN_C, load_frac),
        cooling_lines(cooling)[2].at(COOLING_BIN_C).capacity_w,
    )
    power_w = variable_speed_bin_power_w(cooling, cd_frac, load_frac)
    seer2: FloatArray = bin_sum(served_w, COOLING_BIN_FRAC) / bin_sum(power_w, COOLING_BIN_FRAC) * BTU_PER_WH
    return seer2


def full_speed_eer2(cooling: CoolingPoints) -> FloatArray:
    """Return EER2, the efficiency at 95 degF and full speed.

    Parameters
    ----------
    cooling : CoolingPoints
        Cooling tests.

    Returns
    -------
    eer2 : ndarray, shape (B,)
        Energy efficiency ratio. [Btu/(W*hour)]

    References
    ----------
    .. [1] AHRI 210/240-2023, section 11.3.
    """
    return cooling.a_full.cop * BTU_PER_WH


def demand_defrost_credit(test_h: FloatArray, longest_h: FloatArray) -> FloatArray:
    """Return the factor that a demand-controlled defrost earns on HSPF2.

    Parameters
    ----------
    test_h : array_like, shape () or (B,)
        Time between defrosts in the test; counted as at least 1.5 h. [hour]
    longest_h : array_like, shape () or (B,)
        Longest time between defrosts; counted as at most 12 h, must be above 1.5 h. [hour]

    Returns
    -------
    credit_frac : ndarray, shape () or (B,)
        1.03 for the quickest control. [dimensionless]

    Raises
    ------
    OutOfRangeError
        If the longest time does not exceed 1.5 h.

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.129 (there in minutes: 90 and 720).
    """
    least, most = 1.5, 12.0
    longest = np.minimum(longest_h, most)
    if np.any(longest <= least):
        allowed = f"above {least:g}"
        raise OutOfRangeError("longest_h", float(np.min(longest)), "hour", allowed, "Enter the control's longest time.")
    credit: FloatArray = 1.0 + 0.03 * (1.0 - (np.maximum(test_h, least) - least) / (longest - least))
    return credit
