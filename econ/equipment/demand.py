"""What is asked of machines: need and weather hour by hour, and the spells of hours and days in which there is any."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, IntArray, on_own_days
from econ.kernel.errors import ShapeError

LEAST_GAP: Final = 8
"""Days without need that part two stretches; fewer are carried along, as a stretch has a cost of its own."""

EVERY_DAY: Final = slice(None)
"""All days, in order."""

CELLS: Final = 60_000
"""Hours times rows times days worked at a time: enough that numpy's calls do not count, few enough for the cache."""

Spell = tuple[slice, slice]
"""Some hours and some days."""


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
    price_usd_per_kwh : ndarray, shape (24, 1, n_day) or (24, B, n_day), or None
        Price of electricity in each hour, where it goes by the hour; None where it does not. [USD/kWh]
    within : Demand or None
        One that wants cooling and heating whenever this one does, so that its spells serve; None where none is known.

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
    price_usd_per_kwh: FloatArray | None = None
    within: "Demand | None" = None

    def __post_init__(self) -> None:
        shape, n_row = self.cool_w.shape, len(self.warming_k)
        if len(shape) != 3 or shape[1] != n_row or {self.latent_w.shape, self.heat_w.shape} != {shape}:
            raise ShapeError(f"need has shape {shape}; it must be (24, {n_row}, n_day)")

    def dry_bulb_c(self, hours: slice, days: slice = EVERY_DAY) -> FloatArray:
        """Return the outdoor dry bulb of every row in some hours of some days, shape (n_hour, B, n). [degC]"""
        warmed: FloatArray = self.outdoor_c[hours, :, days] + self.warming_k[:, None]
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
        needs = (self.cool_w, self.latent_w, self.heat_w)
        cool_w, latent_w, heat_w = (on_own_days(need_w, rows, days) for need_w in needs)
        outdoor_c = _of_rows(self.outdoor_c, rows, days)
        price = None if self.price_usd_per_kwh is None else _of_rows(self.price_usd_per_kwh, rows, days)
        return Demand(cool_w, latent_w, heat_w, outdoor_c, self.warming_k[rows], price)

    def emptied(self) -> "Demand":
        """Return the same rows, days and weather without need: arrays to write into, where this one has any."""
        cool_w, latent_w, heat_w = (np.zeros(self.cool_w.shape) for _ in range(3))
        return replace(self, cool_w=cool_w, latent_w=latent_w, heat_w=heat_w, within=self.within or self)

    @cached_property
    def hours(self) -> tuple[slice, ...]:
        """The hours of the day, a few at a time: those that want cooling in any row apart from the others."""
        if self.within is not None:
            return self.within.hours
        n_hour, most = len(self.cool_w), max(CELLS // max(self.cool_w[0].size, 1), 1)
        is_wanted = self.cool_w.max(axis=(1, 2), initial=0.0) > 0.0
        edges = [0, *(np.flatnonzero(is_wanted[1:] != is_wanted[:-1]) + 1).tolist(), n_hour]
        return tuple(slice(at, min(at + most, to)) for start, to in pairwise(edges) for at in range(start, to, most))

    @cached_property
    def cooling(self) -> tuple[tuple[slice, ...], ...]:
        """Stretches of days, for each of `hours`, in which any row wants cooling."""
        return self._stretches(self.cool_w) if self.within is None else self.within.cooling

    @cached_property
    def heating(self) -> tuple[tuple[slice, ...], ...]:
        """Stretches of days, for each of `hours`, in which any row wants heating."""
        return self._stretches(self.heat_w) if self.within is None else self.within.heating

    @cached_property
    def drying(self) -> tuple[tuple[slice, ...], ...]:
        """Stretches of days, for each of `hours`, in which any row wants drying."""
        return self._stretches(self.latent_w)

    @cached_property
    def drying_alone(self) -> tuple[tuple[slice, ...], ...]:
        """Stretches of days, for each of `hours`, outside those of cooling, where any row wants drying."""
        n_day = self.cool_w.shape[2]
        pairs = zip(self.drying, self.cooling, strict=True)
        return tuple(_between(cooling, n_day) if drying else () for drying, cooling in pairs)

    def colder(self, hours: slice, below_c: FloatArray) -> tuple[slice, ...]:
        """Return stretches of days in which it may be colder than a temperature in some hours in any row.

        Parameters
        ----------
        hours : slice
            Some hours. [hour]
        below_c : ndarray, shape (B,)
            Outdoor temperature. [degC]
        """
        coldest_c = self.outdoor_c[hours].min(axis=(0, 1)) + self.warming_k.min()
        return _runs(np.flatnonzero(coldest_c < below_c.max()))

    def spells(self, stretches: tuple[tuple[slice, ...], ...]) -> Iterator[Spell]:
        """Yield hours and days together, in the order of the hours."""
        for hours, days_of in zip(self.hours, stretches, strict=True):
            for days in days_of:
                yield hours, days

    def _stretches(self, need_w: FloatArray) -> tuple[tuple[slice, ...], ...]:
        most_w = need_w.max(axis=1, initial=0.0)
        return tuple(_runs(np.flatnonzero(most_w[hours].max(axis=0) > 0.0)) for hours in self.hours)

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
        return self._wanted_h(self.cool_w, self.cooling)

    @cached_property
    def heat_h(self) -> FloatArray:
        """Hours of each day that want heating, shape (B, n_day). [hour]"""
        return self._wanted_h(self.heat_w, self.heating)

    @cached_property
    def dry_h(self) -> FloatArray:
        """Hours of each day that want drying, shape (B, n_day). [hour]"""
        return self._wanted_h(self.latent_w, self.drying)

    def _wanted_h(self, power_w: FloatArray, stretches: tuple[tuple[slice, ...], ...]) -> FloatArray:
        wanted_h = np.zeros(power_w.shape[1:])
        for hours, days in self.spells(stretches):
            for is_wanted in power_w[hours, :, days] != 0.0:
                wanted_h[:, days] += is_wanted
        return wanted_h


def _of_rows(hourly: FloatArray, rows: IntArray, days: IntArray) -> FloatArray:
    """Return an array (24, B, n_day) of rows on their own days; one that all rows share stays so where it can."""
    if hourly.shape[1] > 1:
        return on_own_days(hourly, rows, days)
    taken: FloatArray = hourly[:, 0, days]
    return taken


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
