"""Rated test points of an air conditioner or heat pump, and the straight lines between them."""

from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray


def celsius(printed_f: float) -> float:
    """Return a printed test temperature in degC.

    Parameters
    ----------
    printed_f : float
        As the procedures print it. [degF]

    Returns
    -------
    at_c : float
        The same temperature. [degC]
    """
    return (printed_f - 32.0) / 1.8


A_C: Final = celsius(95.0)
"""degC; outdoor dry bulb of cooling test A. 10 CFR 430 subpart B appendix M1, table 8."""
B_C: Final = celsius(82.0)
"""degC; outdoor dry bulb of cooling test B. Same table."""
E_C: Final = celsius(87.0)
"""degC; outdoor dry bulb of cooling test E (intermediate speed). Same table."""
F_C: Final = celsius(67.0)
"""degC; outdoor dry bulb of cooling test F. Same table."""
H0_C: Final = celsius(62.0)
"""degC; outdoor dry bulb of heating test H0. 10 CFR 430 subpart B appendix M1, table 14."""
H1_C: Final = celsius(47.0)
"""degC; outdoor dry bulb of heating test H1. Same table."""
FROST_END_C: Final = celsius(45.0)
"""degC; from here on a heat pump does not frost in the procedure. AHRI 210/240-2023, eq. 11.119."""
H2_C: Final = celsius(35.0)
"""degC; outdoor dry bulb of the frost accumulation test H2. Same table as H1."""
H3_C: Final = celsius(17.0)
"""degC; outdoor dry bulb of heating test H3. Same table."""
H4_C: Final = celsius(5.0)
"""degC; outdoor dry bulb of heating test H4. Same table."""


@dataclass(frozen=True, slots=True, eq=False)
class Point:
    """What a unit gives and draws at one test, or along one line of tests.

    Attributes
    ----------
    capacity_w : ndarray, shape (B,) or (..., B, n)
        Net heat removed or given. [W]
    power_w : ndarray, shape as capacity_w
        Electric power of the whole unit. [W]
    """

    capacity_w: FloatArray
    power_w: FloatArray

    @property
    def cop(self) -> FloatArray:
        """Return capacity over power. [dimensionless]"""
        return self.capacity_w / self.power_w


@dataclass(frozen=True, slots=True, eq=False)
class CoolingPoints:
    """Cooling tests of a variable-speed unit.

    Attributes
    ----------
    a_full, b_full : Point, shape (B,)
        Full speed at 95 and 82 degF.
    e_mid : Point, shape (B,)
        Intermediate speed at 87 degF.
    b_low, f_low : Point, shape (B,)
        Low speed at 82 and 67 degF.
    """

    a_full: Point
    b_full: Point
    e_mid: Point
    b_low: Point
    f_low: Point


@dataclass(frozen=True, slots=True, eq=False)
class HeatingPoints:
    """Heating tests of a variable-speed unit.

    Attributes
    ----------
    h0_low, h1_low : Point, shape (B,)
        Low speed at 62 and 47 degF.
    h2_mid : Point, shape (B,)
        Intermediate speed at 35 degF, frosting.
    h1_full, h2_full, h3_full, h4_full : Point, shape (B,)
        Full speed at 47, 35 (frosting), 17 and 5 degF.
    """

    h0_low: Point
    h1_low: Point
    h2_mid: Point
    h1_full: Point
    h2_full: Point
    h3_full: Point
    h4_full: Point


@dataclass(frozen=True, eq=False)
class Line:
    """Capacity and power that are straight in the outdoor temperature.

    Attributes
    ----------
    at_c : float
        Where the line is pinned. [degC]
    pin : Point, shape (B,)
        What it gives there.
    capacity_w_per_k, power_w_per_k : ndarray, shape (B,)
        Slopes. [W/K]
    """

    at_c: float
    pin: Point
    capacity_w_per_k: FloatArray
    power_w_per_k: FloatArray

    def at(self, dry_bulb_c: FloatArray) -> Point:
        """Return the point of every row at outdoor temperatures.

        Parameters
        ----------
        dry_bulb_c : array_like, shape (n,) or (..., B, n)
            Outdoor dry bulb; the line is continued past its tests. [degC]

        Returns
        -------
        point : Point, shape (B, n) or (..., B, n)
            Capacity and power.
        """
        at_freezing = self._at_freezing
        return Point(
            _straight_w(at_freezing.capacity_w, self.capacity_w_per_k, dry_bulb_c),
            _straight_w(at_freezing.power_w, self.power_w_per_k, dry_bulb_c),
        )

    def capacity_w(self, dry_bulb_c: FloatArray) -> FloatArray:
        """Return the capacity alone, shape (B, n) or (..., B, n), as `at`. [W]

        Parameters
        ----------
        dry_bulb_c : array_like, shape (n,) or (..., B, n)
            Outdoor dry bulb. [degC]
        """
        return _straight_w(self._at_freezing.capacity_w, self.capacity_w_per_k, dry_bulb_c)

    @cached_property
    def _at_freezing(self) -> Point:
        """What it gives at 0 degC, shape (B,)."""
        return row_at(self, 0.0)


def _straight_w(at_freezing_w: FloatArray, slope_w_per_k: FloatArray, dry_bulb_c: FloatArray) -> FloatArray:
    power_w: FloatArray = slope_w_per_k[:, None] * np.asarray(dry_bulb_c, dtype=np.float64)
    power_w += at_freezing_w[:, None]
    return power_w


def point_of(capacity_w: FloatArray, eir_frac: FloatArray) -> Point:
    """Return a test from its output and its power per output.

    Parameters
    ----------
    capacity_w : ndarray, shape (...)
        Output. [W]
    eir_frac : ndarray, shape (...)
        Power over output. [dimensionless]

    Returns
    -------
    point : Point, shape (...)
        Capacity and power.
    """
    return Point(capacity_w, capacity_w * eir_frac)


def chosen(is_first: BoolArray, first: Point, second: Point) -> Point:
    """Return the first point where a claim holds, else the second.

    Parameters
    ----------
    is_first : ndarray, shape (...)
        The claim.
    first, second : Point, shape (...)
        Two points.

    Returns
    -------
    point : Point, shape (...)
        Capacity and power.
    """
    return Point(
        np.where(is_first, first.capacity_w, second.capacity_w), np.where(is_first, first.power_w, second.power_w)
    )


def row_at(line: Line, at_c: float) -> Point:
    """Return what a line gives at one temperature.

    Parameters
    ----------
    line : Line
        A line of tests.
    at_c : float
        Outdoor dry bulb. [degC]

    Returns
    -------
    point : Point, shape (B,)
        Capacity and power.
    """
    lift = at_c - line.at_c
    return Point(line.pin.capacity_w + line.capacity_w_per_k * lift, line.pin.power_w + line.power_w_per_k * lift)


def line_between(left_c: float, left: Point, right_c: float, right: Point) -> Line:
    """Return the line through two tests.

    Parameters
    ----------
    left_c, right_c : float
        Their outdoor dry bulbs, different. [degC]
    left, right : Point, shape (B,)
        Their results.

    Returns
    -------
    line : Line
        Pinned at the left test.
    """
    run = right_c - left_c
    return Line(left_c, left, (right.capacity_w - left.capacity_w) / run, (right.power_w - left.power_w) / run)


def mid_line(at_c: float, mid: Point, low: Line, full: Line) -> Line:
    """Return the intermediate-speed line: through its one test, sloped between the low and the full line.

    Parameters
    ----------
    at_c : float
        Outdoor dry bulb of the intermediate test. [degC]
    mid : Point, shape (B,)
        Its result.
    low, full : Line
        Low-speed and full-speed lines.

    Returns
    -------
    line : Line
        Slope M = M_low (1 - N) + M_full N, where N places the test between low and full; one N for capacity, one
        for power.

    References
    ----------
    .. [1] AHRI 210/240-2023, section 11.2.1.3 (cooling) and 11.2.2.3 (heating); 10 CFR 430 appendix M1, 4.1.4, 4.2.4.
    """
    low_at, full_at = row_at(low, at_c), row_at(full, at_c)
    capacity_share = _share(mid.capacity_w, low_at.capacity_w, full_at.capacity_w)
    power_share = _share(mid.power_w, low_at.power_w, full_at.power_w)
    return Line(
        at_c,
        mid,
        low.capacity_w_per_k * (1.0 - capacity_share) + full.capacity_w_per_k * capacity_share,
        low.power_w_per_k * (1.0 - power_share) + full.power_w_per_k * power_share,
    )


def _share(value: FloatArray, low: FloatArray, full: FloatArray) -> FloatArray:
    """Return where a value lies between low (0) and full (1); 0 where the two are one."""
    span = full - low
    is_apart = span != 0.0
    share: FloatArray = np.where(is_apart, (value - low) / np.where(is_apart, span, 1.0), 0.0)
    return share
