"""What is asked of machines: need and weather hour by hour, and the stretches of days in which there is any."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray
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
    within : Demand or None
        One that wants cooling and heating whenever this one does, so that its stretches serve; None where none is
        known.

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
    within: "Demand | None" = None

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
        """Return the same rows, days and weather without need: arrays to write into, where this one has any."""
        cool_w, latent_w, heat_w = (np.zeros(self.cool_w.shape) for _ in range(3))
        return replace(self, cool_w=cool_w, latent_w=latent_w, heat_w=heat_w, within=self.within or self)

    @cached_property
    def cooling(self) -> Stretches:
        """Stretches of days, hour by hour, in which any row wants cooling."""
        return _stretches(self.cool_w) if self.within is None else self.within.cooling

    @cached_property
    def heating(self) -> Stretches:
        """Stretches of days, hour by hour, in which any row wants heating."""
        return _stretches(self.heat_w) if self.within is None else self.within.heating

    @cached_property
    def drying_alone(self) -> Stretches:
        """Stretches of days, hour by hour, outside those of cooling, in hours in which any row wants drying."""
        n_day = self.cool_w.shape[2]
        pairs = zip(self.latent_w, self.cooling, strict=True)
        return tuple(_between(cooling, n_day) if latent_w.any() else () for latent_w, cooling in pairs)

    @cached_property
    def cool_wh(self) -> FloatArray:
        """Sensible cooling of each day, shape (B, n_day). [W*hour]"""
        return np.asarray(self.cool_w.sum(axis=0))

    @cached_property
    def latent_wh(self) -> FloatArray:
        """Drying of each day, shape (B, n_day). [W*hour]"""
        return np.asarray(self.latent_w.sum(axis=0))

    @cached_property
    def heat_wh(self) -> FloatArray:
        """Heating of each day, shape (B, n_day). [W*hour]"""
        return np.asarray(self.heat_w.sum(axis=0))

    @cached_property
    def cool_h(self) -> FloatArray:
        """Hours of each day that want sensible cooling, shape (B, n_day). [hour]"""
        return _wanted_h(self.cool_w, self.cooling)

    @cached_property
    def heat_h(self) -> FloatArray:
        """Hours of each day that want heating, shape (B, n_day). [hour]"""
        return _wanted_h(self.heat_w, self.heating)


def _wanted_h(power_w: FloatArray, stretches: Stretches) -> FloatArray:
    """Return the hours of each day that want anything, shape (B, n_day)."""
    wanted_h = np.zeros(power_w.shape[1:])
    for hour, days_of_hour in enumerate(stretches):
        for days in days_of_hour:
            wanted_h[:, days] += power_w[hour, :, days] > 0.0
    return wanted_h


def _stretches(need_w: FloatArray) -> Stretches:
    """Return, hour by hour, stretches of days that hold every day in which any row wants anything."""
    return tuple(_runs(np.flatnonzero(hour_w.max(axis=0, initial=0.0) > 0.0)) for hour_w in need_w)


def _runs(days: IntArray) -> tuple[slice, ...]:
    """Return stretches that hold the days, in order."""
    if not days.size:
        return ()
    breaks = np.flatnonzero(days[1:] - days[:-1] > LEAST_GAP).tolist()
    firsts, lasts = [0, *(at + 1 for at in breaks)], [*breaks, days.size - 1]
    return tuple(slice(int(days[first]), int(days[last]) + 1) for first, last in zip(firsts, lasts, strict=True))


def _between(stretches: tuple[slice, ...], n_day: int) -> tuple[slice, ...]:
    """Return the stretches that the given ones leave."""
    edges = [0, *(edge for days in stretches for edge in (days.start, days.stop)), n_day]
    gaps = zip(edges[::2], edges[1::2], strict=True)
    return tuple(slice(start, stop) for start, stop in gaps if start < stop)
