"""What is asked of machines: need and weather hour by hour, and the stretches of days in which there is any."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import ShapeError

LEAST_GAP: Final = 8
"""Days without need that part two stretches; fewer are carried along, as a stretch has a cost of its own."""

EVERY_DAY: Final = slice(None)
"""All days, in order."""

Stretches = tuple[tuple[slice, ...], ...]


@dataclass(frozen=True, eq=False)
class Demand:
    """Need of B rows on their days.

    Attributes
    ----------
    cool_w, latent_w, heat_w : ndarray, shape (24, B, n_day)
        Sensible cooling, drying and heating wanted. [W]
    outdoor_c : ndarray, shape (24, 1, n_day) or (24, B, n_day)
        Outdoor dry bulb before warming. [degC]
    warming_k : ndarray, shape (B,)
        Added to it. [K]

    Raises
    ------
    ShapeError
        If the arrays do not fit together.
    """

    cool_w: FloatArray
    latent_w: FloatArray
    heat_w: FloatArray
    outdoor_c: FloatArray
    warming_k: FloatArray

    def __post_init__(self) -> None:
        shape, n_row = self.cool_w.shape, len(self.warming_k)
        if len(shape) != 3 or shape[1] != n_row or {self.latent_w.shape, self.heat_w.shape} != {shape}:
            raise ShapeError(f"need has shape {shape}; it must be (24, {n_row}, n_day)")

    def dry_bulb_c(self, hour: int, days: slice = EVERY_DAY) -> FloatArray:
        """Return the outdoor dry bulb of every row on some days, shape (B, n). [degC]"""
        warmed: FloatArray = self.outdoor_c[hour, :, days] + self.warming_k[:, None]
        return warmed

    def at(self, rows: IntArray, days: IntArray) -> "Demand":
        """Return the demand of some rows, each on its own days.

        Parameters
        ----------
        rows : ndarray of int, shape (n,)
            Positions of rows; one may come more than once. [dimensionless]
        days : ndarray of int, shape (n, m) or (1, m)
            Positions of each row's days. [dimensionless]
        """
        each = rows[:, None]
        cool_w, latent_w, heat_w = (need[:, each, days] for need in (self.cool_w, self.latent_w, self.heat_w))
        outdoor_c = self.outdoor_c[:, each if self.outdoor_c.shape[1] > 1 else 0, days]
        return Demand(cool_w, latent_w, heat_w, outdoor_c, self.warming_k[rows])

    def emptied(self) -> "Demand":
        """Return the same rows, days and weather with no need yet: arrays to write another need into."""
        return replace(self, **{f"{name}_w": np.zeros(self.cool_w.shape) for name in ("cool", "latent", "heat")})

    @cached_property
    def cooling(self) -> Stretches:
        """Stretches of days, hour by hour, in which any row wants cooling."""
        return _stretches(self.cool_w)

    @cached_property
    def heating(self) -> Stretches:
        """Stretches of days, hour by hour, in which any row wants heating."""
        return _stretches(self.heat_w)

    @cached_property
    def drying_alone(self) -> Stretches:
        """Stretches of days, hour by hour, outside those of cooling, in hours in which any row wants drying."""
        n_day = self.cool_w.shape[2]
        pairs = zip(self.latent_w, self.cooling, strict=True)
        return tuple(_between(cooling, n_day) if latent_w.any() else () for latent_w, cooling in pairs)

    @cached_property
    def daily(self) -> "DailyNeed":
        """The need added up over the hours of each day."""
        return _daily_need(self)


@dataclass(frozen=True, slots=True, eq=False)
class DailyNeed:
    """Need of B rows added up over the hours of each day.

    Attributes
    ----------
    cool_wh, latent_wh, heat_wh : ndarray, shape (B, n_day)
        Sensible cooling, drying and heating wanted. [W*hour]
    cool_h, heat_h : ndarray, shape (B, n_day)
        Hours that want sensible cooling, and heating. [hour]
    """

    cool_wh: FloatArray
    latent_wh: FloatArray
    heat_wh: FloatArray
    cool_h: FloatArray
    heat_h: FloatArray


def _daily_need(demand: Demand) -> DailyNeed:
    need = (demand.cool_w, demand.latent_w, demand.heat_w)
    cool_wh, latent_wh, heat_wh = (power_w.sum(axis=0) for power_w in need)
    cool_h, heat_h = (_wanted_h(power_w, at) for power_w, at in ((need[0], demand.cooling), (need[2], demand.heating)))
    return DailyNeed(cool_wh, latent_wh, heat_wh, cool_h, heat_h)


def _wanted_h(power_w: FloatArray, stretches: Stretches) -> FloatArray:
    """Return the hours of each day that want anything, shape (B, n_day)."""
    wanted_h = np.zeros(power_w.shape[1:])
    for hour, days_of_hour in enumerate(stretches):
        for days in days_of_hour:
            wanted_h[:, days] += power_w[hour, :, days] > 0.0
    return wanted_h


def _stretches(need_w: FloatArray) -> Stretches:
    """Return, hour by hour, stretches of days that hold every day in which any row wants anything."""
    return tuple(_runs(hour_w.any(axis=0)) for hour_w in need_w)


def _runs(is_wanted: BoolArray) -> tuple[slice, ...]:
    days = np.flatnonzero(is_wanted)
    if not days.size:
        return ()
    breaks = np.flatnonzero(np.diff(days) > LEAST_GAP)
    first, last = days[np.r_[0, breaks + 1]], days[np.r_[breaks, len(days) - 1]]
    return tuple(slice(int(start), int(end) + 1) for start, end in zip(first, last, strict=True))


def _between(stretches: tuple[slice, ...], n_day: int) -> tuple[slice, ...]:
    """Return the stretches that the given ones leave."""
    edges = [0, *(edge for days in stretches for edge in (days.start, days.stop)), n_day]
    gaps = zip(edges[::2], edges[1::2], strict=True)
    return tuple(slice(start, stop) for start, stop in gaps if start < stop)
