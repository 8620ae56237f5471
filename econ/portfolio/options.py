"""What a building offers to choose from: one row a room, one column a way to go, plain arrays and their limits."""

from dataclasses import dataclass, field

import numpy as np

from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import ShapeError

OPEN = -1
"""Reason of a way that is open: none."""


@dataclass(frozen=True, slots=True, eq=False)
class Options:
    """What each way would cost and give in each room; the last axis follows `name`.

    Keeping what is there is always a column, costs nothing and gives nothing: a room with nothing done keeps.

    Attributes
    ----------
    name : tuple of str
        The ways, shape (A,).
    cost_usd : ndarray, shape (R, A)
        Cash of the year it is done. [USD]
    benefit_usd : ndarray, shape (R, A)
        Present value of net savings against keeping, if done in the first year. [USD]
    too_hot_h : ndarray, shape (R, A)
        Hours of a year in which the room stays too hot once it is done. [hour]
    own_hours_h : ndarray, shape (R, A)
        Hours of the owner or the handyman. [hour]
    electrician_d : ndarray, shape (R, A)
        Days of an electrician. [day]
    current_a : ndarray, shape (R, A)
        Added load on the flat's panel. [ampere]
    is_open : ndarray of bool, shape (R, A)
        Whether the way may be gone.
    closed_reason : ndarray of int, shape (R, A)
        Position in `reasons` where a way is closed, `OPEN` where it is not.
    reasons : tuple of str
        Why a way is closed, as people read it.
    must, must_not : ndarray of bool, shape (R,)
        Something has to be done here; nothing may be.
    first_year : ndarray of int, shape (R,)
        Earliest year in which the room can be entered, 0 the first: access, tenancy, notice.
    flat : ndarray of int, shape (R,)
        The flat of the room, from 0.
    whole_flat : ndarray of bool, shape (n_flat,)
        Whether the flat is done all at once, in one year, or not at all.
    discount_frac : float
        Yearly real rate at which later benefits count less. [dimensionless]
    study_period_yr : int
        Years over which the benefit was counted. [year]
    group : ndarray of int, shape (R,)
        Whose set-up is shared: rooms of a building, from 0; empty where nothing is shared.
    setup_usd : ndarray, shape (n_group,)
        Paid once in each year in which one of `setup_way` is done in the group: in no `cost_usd`, off no `benefit_usd`.
        [USD]
    setup_way : tuple of bool, shape (A,)
        Ways that need the set-up: permit, trip, tools; empty for every way but keeping.
    hot_hour_usd : float
        What one hour less too hot is worth to the owner, in no `benefit_usd`; 0 counts money alone. [USD/hour]
    """

    name: tuple[str, ...]
    cost_usd: FloatArray
    benefit_usd: FloatArray
    too_hot_h: FloatArray
    own_hours_h: FloatArray
    electrician_d: FloatArray
    current_a: FloatArray
    is_open: BoolArray
    closed_reason: IntArray
    reasons: tuple[str, ...]
    must: BoolArray
    must_not: BoolArray
    first_year: IntArray
    flat: IntArray
    whole_flat: BoolArray
    discount_frac: float = 0.0
    study_period_yr: int = 1
    group: IntArray = field(default_factory=lambda: np.zeros(0, dtype=np.int64))
    setup_usd: FloatArray = field(default_factory=lambda: np.zeros(0))
    setup_way: tuple[bool, ...] = ()
    hot_hour_usd: float = 0.0

    def __post_init__(self) -> None:
        shape = (self.n_room, len(self.name))
        for name in ROOMS_BY_WAY:
            if getattr(self, name).shape != shape:
                raise ShapeError(f"{name} has shape {getattr(self, name).shape}; give {shape}, rooms by ways")
        for name in ROOMS:
            if getattr(self, name).shape != shape[:1]:
                raise ShapeError(f"{name} has shape {getattr(self, name).shape}; give {shape[:1]}, one a room")

    @property
    def n_room(self) -> int:
        """Number of rooms, R."""
        return int(self.flat.shape[0])

    @property
    def keep(self) -> int:
        """Column of keeping what is there."""
        return self.name.index(ALTERNATIVES[0])

    @property
    def needs_setup(self) -> BoolArray:
        """Which ways need the set-up of their group, shape (A,)."""
        if self.setup_way:
            return np.array(self.setup_way, dtype=np.bool_)
        return np.array([name != ALTERNATIVES[0] for name in self.name], dtype=np.bool_)

    def worth_usd(self, year: int = 0) -> FloatArray:
        """Return what each way is worth if done in a year: money, and hours less too hot at their price, shape (R, A).

        Parameters
        ----------
        year : int
            Position of the year, 0 the coming one. What is done later serves that much shorter, and later. [year]

        Returns
        -------
        worth_usd : ndarray, shape (R, A)
            Present value; the set-up of a group is not taken off. [USD]
        """
        rate, years = self.discount_frac, self.study_period_yr
        whole, late = annuity_yr(rate, years), annuity_yr(rate, year)
        spared_h = self.too_hot_h[:, [self.keep]] - self.too_hot_h
        hours = self.hot_hour_usd * spared_h * (whole - late)
        yearly = (self.benefit_usd + self.cost_usd) * (whole - late) / whole
        worth: FloatArray = yearly - self.cost_usd / (1.0 + rate) ** year + hours
        return worth


def annuity_yr(rate_frac: float, years: int) -> float:
    """Return what one dollar a year is worth at the start, at the end of each of some years. [year]"""
    return float(years) if rate_frac == 0.0 else (1.0 - (1.0 + rate_frac) ** -years) / rate_frac


ROOMS_BY_WAY = (
    "cost_usd",
    "benefit_usd",
    "too_hot_h",
    "own_hours_h",
    "electrician_d",
    "current_a",
    "is_open",
    "closed_reason",
)
ROOMS = ("must", "must_not", "first_year", "flat")


@dataclass(frozen=True, slots=True, eq=False)
class Limits:
    """What may be spent; Y years, the first the coming one; infinity where there is no limit.

    Attributes
    ----------
    budget_usd : ndarray, shape (Y,)
        Cash of each year. [USD]
    own_hours_h : ndarray, shape (Y,)
        Hours of the owner or the handyman in each year. [hour]
    electrician_d : ndarray, shape (Y,)
        Days of an electrician in each year. [day]
    panel_a : ndarray, shape (n_flat,)
        Load that each flat's panel can still take, over all years. [ampere]
    """

    budget_usd: FloatArray
    own_hours_h: FloatArray
    electrician_d: FloatArray
    panel_a: FloatArray

    @property
    def n_year(self) -> int:
        """Number of years, Y."""
        return int(self.budget_usd.shape[0])
