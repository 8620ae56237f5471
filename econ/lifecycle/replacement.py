"""Replacement of what wears out, like for like, and what is left of it at the end."""

from dataclasses import dataclass, replace

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.errors import OutOfRangeError


@dataclass(frozen=True, slots=True, eq=False)
class Component:
    """A part with a life of its own: the equipment, or the circuit and pad that outlast it.

    Attributes
    ----------
    worth_usd : ndarray, shape (...)
        What the piece there at the start of service is worth at that moment: its price if new. [USD]
    replacement_usd : ndarray, shape (...)
        Price of each replacement, fitting included. [USD]
    life_yr : ndarray, shape (...)
        Life of a new piece, above 0. [year]
    remaining_yr : ndarray, shape (...)
        Years from the start of service until the first piece is worn out: its life if new. [year]
    in_service_yr : ndarray, shape (...)
        Start of service from the decision date; not a whole number as a rule. [year]
    """

    worth_usd: FloatArray
    replacement_usd: FloatArray
    life_yr: FloatArray
    remaining_yr: FloatArray
    in_service_yr: FloatArray

    def __post_init__(self) -> None:
        shortest, earliest = float(np.min(self.life_yr)), float(np.min(self.remaining_yr))
        if not shortest > 0.0:
            raise OutOfRangeError("life", shortest, "years", "above 0", "Give the years a new unit lasts.")
        if not earliest >= 0.0:
            raise OutOfRangeError("remaining life", earliest, "years", "0 or more", "A worn-out unit has 0 left.")


def remaining_life_yr(life_yr: FloatArray, age_yr: FloatArray) -> FloatArray:
    """Return the years an old unit has left; nothing once it has outlived its life.

    Parameters
    ----------
    life_yr : array_like, shape (...)
        Life of a new unit. [year]
    age_yr : array_like, shape (...)
        Age now. [year]

    Returns
    -------
    remaining_yr : ndarray, shape (...)
        Life less age, 0 where the unit is older than its life: it is then due in the first year. [year]
    """
    remaining: FloatArray = np.maximum(np.asarray(life_yr, dtype=np.float64) - np.asarray(age_yr), 0.0)
    return remaining


def _bought(component: Component, by_yr: FloatArray) -> FloatArray:
    """Return how many replacements fall due up to and including a time."""
    due = np.asarray(component.in_service_yr + component.remaining_yr)[..., None]
    life = np.asarray(component.life_yr, dtype=np.float64)[..., None]
    bought: FloatArray = np.maximum(np.floor((by_yr - due) / life) + 1.0, 0.0)
    return bought


def _bought_before_end(component: Component, study_period_yr: int) -> FloatArray:
    """Return how many replacements fall due before the end date itself."""
    due = np.asarray(component.in_service_yr + component.remaining_yr)
    bought: FloatArray = np.maximum(np.ceil((study_period_yr - due) / np.asarray(component.life_yr)), 0.0)
    return bought


def replacement_stream(component: Component, study_period_yr: int) -> FloatArray:
    """Return what replacing a part costs in each year.

    Parameters
    ----------
    component : Component
        The part.
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    replacement_usd : ndarray, shape (..., study_period_yr + 1)
        Cost at the end of the year in which the old piece wears out: at t where it does so in (t - 1, t]. [USD]

    Notes
    -----
    A piece that wears out on the end date itself, or later, is not replaced. One that is worn out from the start is
    replaced in year 1. Lives under a year give several replacements in a year. No piece is bought at less than its
    price because the end is near: what is left of it counts as residual value.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), ch. 4, capital replacement costs.
    """
    by_yr = np.arange(study_period_yr, dtype=np.float64)
    bought = _bought(component, by_yr)
    bought[..., 0] = 0.0
    bought = np.concatenate([bought, _bought_before_end(component, study_period_yr)[..., None]], axis=-1)
    stream = np.zeros(bought.shape)
    price = np.asarray(component.replacement_usd, dtype=np.float64)[..., None]
    np.multiply(np.diff(bought, axis=-1), price, out=stream[..., 1:])
    return stream


def residual_value(component: Component, study_period_yr: int) -> FloatArray:
    """Return what is left of a part on the end date, by a straight line over the life of the piece there then.

    Parameters
    ----------
    component : Component
        The part.
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    residual_usd : ndarray, shape (...)
        Worth of the first piece, or price of the last replacement, times the share of its life still ahead. [USD]

    Notes
    -----
    The share counts from when the piece really started, not from the year end that its cost falls on: so cost less
    residual does not jump when a life passes the end date. Departs from source: a piece still not in service on the end
    date keeps its whole worth.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), ch. 4, residual value by proration over the remaining life.
    """
    bought = _bought_before_end(component, study_period_yr)
    worn_out_yr = component.in_service_yr + component.remaining_yr + bought * component.life_yr
    is_first = bought == 0.0
    span = np.where(is_first, component.remaining_yr, component.life_yr)
    share = np.clip((worn_out_yr - study_period_yr) / np.where(span > 0.0, span, 1.0), 0.0, 1.0)
    residual: FloatArray = share * np.where(is_first, component.worth_usd, component.replacement_usd)
    return residual


def disposal_stream(component: Component, disposal_usd: FloatArray, study_period_yr: int) -> FloatArray:
    """Return what getting rid of worn-out pieces costs in each year, the last piece as far as it is worn at the end.

    Parameters
    ----------
    component : Component
        The part.
    disposal_usd : array_like, shape (...)
        Recovery of the charge by a certified person and haul-away, for one piece. [USD]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    disposal_usd : ndarray, shape (..., study_period_yr + 1)
        Whole at each replacement; on the end date the share of its life that the piece there has served. [USD]

    Notes
    -----
    By the same straight line as the residual value, so that the sum does not jump when a life passes the end date, and
    a study period that is a multiple of the life pays for each piece once.
    """
    price = np.broadcast_to(np.asarray(disposal_usd, dtype=np.float64), np.shape(component.life_yr))
    stream = replacement_stream(replace(component, replacement_usd=price), study_period_yr)
    ahead = residual_value(replace(component, worth_usd=price, replacement_usd=price), study_period_yr)
    stream[..., -1] += price - ahead
    return stream
