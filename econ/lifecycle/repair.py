"""Expected repairs by the age of a unit, and what a warranty pays of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.lifecycle.replacement import Component
from econ.lifecycle.service import waited_frac

AGE_FROM_YR: Final = (0.0, 1.0, 5.0, 10.0)
"""year; age from which each class of failure rates holds; the last one holds on."""


@dataclass(frozen=True, slots=True, eq=False)
class Repair:
    """One kind of failure and who pays for it.

    Attributes
    ----------
    share_frac : ndarray, shape () or (B,)
        Share of all failures. [dimensionless]
    part_usd, labour_usd : ndarray, shape () or (B,)
        What mending costs without a warranty. [USD]
    part_warranty_yr, labour_warranty_yr : ndarray, shape () or (B,)
        Age up to which a warranty pays each. [year]
    paid_frac : ndarray, shape () or (B,)
        Share of claims that are paid. [dimensionless]
    """

    share_frac: FloatArray
    part_usd: FloatArray
    labour_usd: FloatArray
    part_warranty_yr: FloatArray
    labour_warranty_yr: FloatArray
    paid_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Repairs:
    """Expected repairs of one way by year.

    Attributes
    ----------
    cost_usd : ndarray, shape (B, n_year)
        Paid by the owner in year 1, 2, ... [USD]
    by_warranty_usd : ndarray, shape (B, n_year)
        Paid by a warranty. [USD]
    """

    cost_usd: FloatArray
    by_warranty_usd: FloatArray


def unit_age_yr(unit: Component, study_period_yr: int) -> FloatArray:
    """Return how old the piece in service is in the middle of each year.

    Parameters
    ----------
    unit : Component
        What wears out and is replaced, like for like.
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    age_yr : ndarray, shape (..., study_period_yr)
        From 0 to the life, counted anew at each replacement; 0 before service. [year]
    """
    middle_yr = np.arange(study_period_yr) + 0.5
    life = np.asarray(unit.life_yr, dtype=np.float64)[..., None]
    since_worn = middle_yr - np.asarray(unit.in_service_yr + unit.remaining_yr)[..., None]
    age: FloatArray = np.maximum(np.where(since_worn < 0.0, life + since_worn, np.mod(since_worn, life)), 0.0)
    return np.where(middle_yr < np.asarray(unit.in_service_yr)[..., None], 0.0, age)


def failure_rate_per_yr(by_age_per_yr: Sequence[FloatArray], age_yr: FloatArray) -> FloatArray:
    """Return the failures to expect in a year of a unit of an age.

    Parameters
    ----------
    by_age_per_yr : sequence of array_like, each shape () or (B,)
        Rate of each class of `AGE_FROM_YR`. [1/year]
    age_yr : ndarray, shape (B, n_year)
        Age in the middle of each year. [year]

    Returns
    -------
    failures : ndarray, shape (B, n_year)
        Rate of the class that the age falls in. [1/year]

    Examples
    --------
    >>> failure_rate_per_yr([np.array(f) for f in (0.03, 0.04, 0.1, 0.2)], np.array([[0.5, 1.5, 12.0]])).tolist()
    [[0.03, 0.04, 0.2]]
    """
    rate = np.zeros_like(age_yr)
    for from_yr, per_yr in zip(AGE_FROM_YR, by_age_per_yr, strict=True):
        rate = np.where(age_yr >= from_yr, np.asarray(per_yr, dtype=np.float64)[..., None], rate)
    return rate


def covered_frac(age_yr: FloatArray, warranty_yr: FloatArray) -> FloatArray:
    """Return the share of a year, around an age, in which a warranty still holds.

    Parameters
    ----------
    age_yr : ndarray, shape (B, n_year)
        Age in the middle of each year. [year]
    warranty_yr : array_like, shape () or (B,)
        Age up to which it holds. [year]

    Returns
    -------
    covered : ndarray, shape (B, n_year)
        1 within the warranty, 0 after it, a part of the year in which it ends. [dimensionless]

    Examples
    --------
    >>> covered_frac(np.array([[0.5, 1.5, 2.5]]), np.array(1.25)).tolist()
    [[1.0, 0.25, 0.0]]
    """
    covered: FloatArray = np.clip(np.asarray(warranty_yr, dtype=np.float64)[..., None] - age_yr + 0.5, 0.0, 1.0)
    return covered


def worth_lost_usd(unit: Component, age_yr: FloatArray) -> FloatArray:
    """Return what is lost where a failure means a new piece: the price of what the old one still had before it.

    Parameters
    ----------
    unit : Component
        What wears out.
    age_yr : ndarray, shape (B, n_year)
        Age in the middle of each year. [year]

    Returns
    -------
    lost_usd : ndarray, shape (B, n_year)
        Price of a replacement times the share of life still ahead, by a straight line as the residual value. [USD]
    """
    ahead = np.maximum(1.0 - age_yr / np.asarray(unit.life_yr, dtype=np.float64)[..., None], 0.0)
    lost: FloatArray = np.asarray(unit.replacement_usd, dtype=np.float64)[..., None] * ahead
    return lost


def mended(kinds: Sequence[Repair], age_yr: FloatArray) -> Repairs:
    """Return what one failure costs on average, by the age at which it comes.

    Parameters
    ----------
    kinds : sequence of Repair
        Kinds of failure; their shares add up to 1.
    age_yr : ndarray, shape (B, n_year)
        Age in the middle of each year. [year]

    Returns
    -------
    repairs : Repairs
        For one failure in each year.
    """
    whole, paid = np.zeros_like(age_yr), np.zeros_like(age_yr)
    for kind in kinds:
        share = np.asarray(kind.share_frac, dtype=np.float64)
        for price_usd, warranty_yr in (
            (kind.part_usd, kind.part_warranty_yr),
            (kind.labour_usd, kind.labour_warranty_yr),
        ):
            amount = np.asarray(share * price_usd)[..., None]
            whole = whole + amount
            paid = paid + amount * np.asarray(kind.paid_frac)[..., None] * covered_frac(age_yr, warranty_yr)
    return Repairs(whole - paid, paid)


def expected_repairs(
    unit: Component, failures_per_yr: FloatArray, repaired: Repairs, replaced: Repairs, no_service_frac: FloatArray
) -> Repairs:
    """Return the repairs to expect of one way in each year of the study.

    Parameters
    ----------
    unit : Component
        What wears out: its start of service decides how much of the first years counts.
    failures_per_yr : ndarray, shape (B, n_year)
        Failures a year of all its pieces. [1/year]
    repaired : Repairs
        What one costs where it is mended.
    replaced : Repairs
        What one costs where it means a new piece.
    no_service_frac : array_like, shape () or (B,)
        Chance that it is not mended but replaced. [dimensionless]

    Returns
    -------
    repairs : Repairs
        Nothing in the time before service.

    References
    ----------
    .. [1] Fuller & Petersen, NIST Handbook 135 (1995), ch. 4, non-annually recurring operation and repair costs; the
       expectation over failures is an assumption of this program.
    """
    chance = np.asarray(no_service_frac, dtype=np.float64)[..., None]
    served = 1.0 - waited_frac(np.asarray(unit.in_service_yr) * DAYS_PER_YEAR, failures_per_yr.shape[-1])
    often = failures_per_yr * served
    return Repairs(
        often * ((1.0 - chance) * repaired.cost_usd + chance * replaced.cost_usd),
        often * ((1.0 - chance) * repaired.by_warranty_usd + chance * replaced.by_warranty_usd),
    )
