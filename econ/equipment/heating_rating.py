"""The published heating rating (HSPF2) of heat pumps, row by row."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.equipment import points
from econ.equipment.modulation import cycling_power_w, modulated_power_w
from econ.equipment.points import HeatingPoints, Line, Point, chosen, line_between, mid_line
from econ.equipment.rating import HEATING_BIN_C, HEATING_REGIONS, RATING_REGION, HeatingRegion, bin_sum
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import BTU_PER_WH

NEVER_C: Final = -273.15
"""degC; absolute zero, for a unit without a cut-out."""


@dataclass(frozen=True, slots=True, eq=False)
class HeatingTerms:
    """What besides its tests decides a unit's HSPF2.

    Attributes
    ----------
    rated_cooling_w : ndarray, shape (B,)
        Full-speed cooling capacity at 95 degF, which sizes the building load. [W]
    cd_frac : ndarray, shape () or (B,)
        Heating cyclic degradation coefficient. [dimensionless]
    off_c, on_c : ndarray, shape () or (B,)
        Cut-out, and where it starts again. [degC]
    credit_frac : ndarray, shape () or (B,)
        Demand-defrost credit. [dimensionless]
    """

    rated_cooling_w: FloatArray
    cd_frac: FloatArray
    off_c: FloatArray
    on_c: FloatArray
    credit_frac: FloatArray


def heating_load_w(rated_cooling_w: FloatArray, region: HeatingRegion, slope_frac: float) -> FloatArray:
    """Return the building's heating load in each bin of the rating procedure.

    Parameters
    ----------
    rated_cooling_w : ndarray, shape (B,)
        Full-speed cooling capacity at 95 degF. [W]
    region : HeatingRegion
        The climate region.
    slope_frac : float
        The region's slope, for single-speed or for variable-speed units. [dimensionless]

    Returns
    -------
    load_w : ndarray, shape (B, 18)
        Building load, 0 at and above the zero-load temperature. [W]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.110; 10 CFR 430 appendix M1, eq. 4.2-2.
    """
    share = (region.zero_load_c - HEATING_BIN_C) / (region.zero_load_c - region.design_c)
    load: FloatArray = rated_cooling_w[:, None] * slope_frac * np.maximum(share, 0.0)
    return load


def running_frac(dry_bulb_c: FloatArray, cop: FloatArray, terms: HeatingTerms) -> FloatArray:
    """Return the share of a bin in which the cut-out lets the heat pump run.

    Parameters
    ----------
    dry_bulb_c : ndarray, shape (n,)
        Outdoor dry bulbs. [degC]
    cop : ndarray, shape (B, n)
        Efficiency there. [dimensionless]
    terms : HeatingTerms
        Holds the cut-out.

    Returns
    -------
    running : ndarray, shape (B, n)
        0 at or below the cut-out or where the COP is below 1; 0.5 up to where it starts again; 1 above. [dimensionless]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.125 to 11.127.
    """
    off_c, on_c = np.asarray(terms.off_c)[..., None], np.asarray(terms.on_c)[..., None]
    running: FloatArray = np.where(dry_bulb_c > on_c, 1.0, 0.5) * ((dry_bulb_c > off_c) & (cop >= 1.0))
    return running


@dataclass(frozen=True, slots=True, eq=False)
class HeatingLines:
    """Lines through the heating tests of B units.

    Attributes
    ----------
    low, mid : Line
        Low speed through H0 and H1, intermediate speed through H2V.
    clear, frosting : Line
        Full speed 47-17 degF, and 35-17 degF with frost.
    tested, beyond : Line
        Full speed 17-5 degF, and below 5 degF from H4 on with the slope of 47-17 degF.

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.117 to 11.119, 11.177, 11.178, 11.203 to 11.206 and section 11.2.2.3.
    """

    low: Line
    mid: Line
    clear: Line
    frosting: Line
    tested: Line
    beyond: Line

    def full_at(self, dry_bulb_c: FloatArray) -> Point:
        """Return full-speed heating on the lines 47-17 degF and, between 17 and 45 degF, 35-17 degF with frost.

        Parameters
        ----------
        dry_bulb_c : ndarray, shape (n,) or (..., B, n)
            Outdoor dry bulb. [degC]

        Returns
        -------
        full : Point, shape (B, n) or (..., B, n)
            Capacity and power; H4 is not used.
        """
        is_frosting = (dry_bulb_c > points.H3_C) & (dry_bulb_c < points.FROST_END_C)
        return chosen(is_frosting, self.frosting.at(dry_bulb_c), self.clear.at(dry_bulb_c))

    def below_h3_at(self, dry_bulb_c: FloatArray) -> Point:
        """Return full-speed heating at 17 degF and colder, from the tests at 17 and 5 degF.

        Parameters
        ----------
        dry_bulb_c : ndarray, shape (n,) or (..., B, n)
            Outdoor dry bulb. [degC]

        Returns
        -------
        full : Point, shape (B, n) or (..., B, n)
            On the line 17-5 degF; below 5 degF beyond it.
        """
        return chosen(dry_bulb_c < points.H4_C, self.beyond.at(dry_bulb_c), self.tested.at(dry_bulb_c))


def heating_lines(heating: HeatingPoints) -> HeatingLines:
    """Return the lines of heating.

    Parameters
    ----------
    heating : HeatingPoints
        Heating tests.

    Returns
    -------
    lines : HeatingLines
        All speeds.
    """
    low = line_between(points.H1_C, heating.h1_low, points.H0_C, heating.h0_low)
    clear = line_between(points.H3_C, heating.h3_full, points.H1_C, heating.h1_full)
    frosting = line_between(points.H3_C, heating.h3_full, points.H2_C, heating.h2_full)
    return HeatingLines(
        low=low,
        mid=mid_line(points.H2_C, heating.h2_mid, low, frosting),
        clear=clear,
        frosting=frosting,
        tested=line_between(points.H4_C, heating.h4_full, points.H3_C, heating.h3_full),
        beyond=Line(points.H4_C, heating.h4_full, clear.capacity_w_per_k, clear.power_w_per_k),
    )


def single_speed_hspf2(heating: HeatingPoints, terms: HeatingTerms, region: str = RATING_REGION) -> FloatArray:
    """Return HSPF2 of a single-speed heat pump.

    Parameters
    ----------
    heating : HeatingPoints
        Only its full-speed tests at 47, 35 and 17 degF are used.
    terms : HeatingTerms
        Load, cycling, cut-out and credit.
    region : str
        Climate region, I to VI.

    Returns
    -------
    hspf2 : ndarray, shape (B,)
        Heating seasonal performance factor. [Btu/(W*hour)]

    References
    ----------
    .. [1] AHRI 210/240-2023, eq. 11.107 to 11.133.
    """
    climate = HEATING_REGIONS[region]
    load_w = heating_load_w(terms.rated_cooling_w, climate, climate.slope_single_frac)
    full = heating_lines(heating).full_at(HEATING_BIN_C)
    running = running_frac(HEATING_BIN_C, full.cop, terms)
    served_w = np.minimum(load_w, full.capacity_w)
    power_w = cycling_power_w(served_w, full, terms.cd_frac) * running
    return _seasonal(load_w, power_w + load_w - served_w * running, climate, terms)


def variable_speed_hspf2(
    heating: HeatingPoints, terms: HeatingTerms, region: str = RATING_REGION, *, has_h4_test: bool = True
) -> FloatArray:
    """Return HSPF2 of a variable-speed heat pump.

    Parameters
    ----------
    heating : HeatingPoints
        Heating tests.
    terms : HeatingTerms
        Load, cycling, cut-out and credit.
    region : str
        Climate region, I to VI.
    has_h4_test : bool
        Whether the test at 5 degF was made; if not, the line 47-17 degF is continued.

    Returns
    -------
    hspf2 : ndarray, shape (B,)
        Heating seasonal performance factor. [Btu/(W*hour)]

    Notes
    -----
    A bin that asks for more than full speed gives takes what is missing from resistance heat. With the test at 5 degF
    such a bin at or below 17 degF uses the test at 5 degF (see `HeatingLines.below_h3_at`).

    References
    ----------
    .. [1] AHRI 210/240-2023, section 11.2.2.3, eq. 11.153 to 11.206.
    """
    climate = HEATING_REGIONS[region]
    load_w = heating_load_w(terms.rated_cooling_w, climate, climate.slope_variable_frac)
    lines = heating_lines(heating)
    full = lines.full_at(HEATING_BIN_C)
    is_short = load_w >= full.capacity_w
    is_cold = is_short & (HEATING_BIN_C <= points.H3_C + 1e-9) & has_h4_test
    limit = chosen(is_cold, lines.below_h3_at(HEATING_BIN_C), full)
    speeds = (lines.low.at(HEATING_BIN_C), lines.mid.at(HEATING_BIN_C), full)
    power_w = modulated_power_w(load_w, speeds, terms.cd_frac)
    power_w = np.where(is_short, limit.power_w, power_w)
    served_w = np.where(is_short, np.minimum(limit.capacity_w, load_w), load_w)
    cop = np.where(is_short, full.cop, np.where(load_w > 0.0, served_w / np.where(power_w > 0.0, power_w, 1.0), 1.0))
    running = running_frac(HEATING_BIN_C, cop, terms)
    return _seasonal(load_w, power_w * running + load_w - served_w * running, climate, terms)


def _seasonal(load_w: FloatArray, input_w: FloatArray, climate: HeatingRegion, terms: HeatingTerms) -> FloatArray:
    """Return load over input, both summed over the bins, times the credit, in Btu/Wh."""
    ratio = bin_sum(load_w, climate.bin_frac) / bin_sum(input_w, climate.bin_frac)
    hspf2: FloatArray = ratio * np.asarray(terms.credit_frac) * BTU_PER_WH
    return hspf2
