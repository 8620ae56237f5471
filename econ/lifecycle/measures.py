"""Measures of a choice over the study period: lifetime cost, savings, ratios and rates against a base case."""

from dataclasses import dataclass

import numpy as np

from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.discount import capital_recovery_factor, present_value
from econ.lifecycle.payback import discounted_payback, simple_payback
from econ.lifecycle.rate_of_return import internal_rate
from econ.lifecycle.streams import Streams


@dataclass(frozen=True, slots=True, eq=False)
class Measures:
    """Life-cycle measures, each of shape (A, B); NaN exactly where the paired ``_exists`` is False.

    Attributes
    ----------
    lcc_usd : ndarray
        Life-cycle cost: present value of all costs less residual. [USD]
    annualised_cost_usd_per_yr : ndarray
        Life-cycle cost spread evenly over the study period. [USD/year]
    net_savings_usd : ndarray
        Life-cycle cost of the base case less that of the alternative. [USD]
    sir, airr, irr : ndarray
        Savings-to-investment ratio, adjusted and plain internal rate of return. [dimensionless]
    simple_payback_yr, discounted_payback_yr : ndarray
        First crossing, interpolated within the year. [year]
    sir_exists, airr_exists, irr_exists, simple_payback_exists, discounted_payback_exists : ndarray of bool
        Whether the measure exists; all False for the base case itself.
    irr_is_multiple : ndarray of bool
        More than one rate makes the present value nothing, so that none is given.
    simple_payback_is_undone, discounted_payback_is_undone : ndarray of bool
        A later cost takes the extra money out again after the first crossing.
    """

    lcc_usd: FloatArray
    annualised_cost_usd_per_yr: FloatArray
    net_savings_usd: FloatArray
    sir: FloatArray
    airr: FloatArray
    irr: FloatArray
    simple_payback_yr: FloatArray
    discounted_payback_yr: FloatArray
    sir_exists: BoolArray
    airr_exists: BoolArray
    irr_exists: BoolArray
    irr_is_multiple: BoolArray
    simple_payback_exists: BoolArray
    discounted_payback_exists: BoolArray
    simple_payback_is_undone: BoolArray
    discounted_payback_is_undone: BoolArray


def component_present_value(streams: Streams, discount_rate_frac: FloatArray) -> dict[str, FloatArray]:
    """Return the present value of each piece of the life-cycle cost.

    Parameters
    ----------
    streams : Streams
        Yearly costs.
    discount_rate_frac : array_like, shape () or (B,)
        Yearly real discount rate. [dimensionless]

    Returns
    -------
    component_usd : dict of str to ndarray, shape (A, B)
        first_cost, energy, upkeep, repair, replacement, disposal, residual (negative), financing, letting; they add up
        to the life-cycle cost. [USD]

    Raises
    ------
    OutOfRangeError
        If the rate is at or below -1.

    References
    ----------
    .. [1] 10 CFR 436.19.
    """
    return {
        "first_cost": streams.first_usd,
        "energy": present_value(streams.energy_usd, discount_rate_frac),
        "upkeep": present_value(streams.om_usd, discount_rate_frac),
        "repair": _spread(present_value(streams.repair_usd, discount_rate_frac), streams),
        "replacement": present_value(streams.replacement_usd, discount_rate_frac),
        "disposal": _spread(present_value(streams.disposal_usd, discount_rate_frac), streams),
        "residual": -present_value(streams.residual_usd, discount_rate_frac),
        "financing": _spread(present_value(streams.financing_usd, discount_rate_frac), streams),
        "letting": _spread(present_value(streams.letting_usd, discount_rate_frac), streams),
    }


def _spread(pv_usd: FloatArray, streams: Streams) -> FloatArray:
    """Return a present value with a row for each alternative, where its flow was told once for all, shape (A, B)."""
    return np.broadcast_to(pv_usd, streams.first_usd.shape)


def savings_to_investment_ratio(saving_usd: FloatArray, added_investment_usd: FloatArray) -> FloatArray:
    """Return lifetime operating savings per extra dollar invested.

    Parameters
    ----------
    saving_usd : array_like, shape (...)
        Present value of energy and upkeep saved against the base case. [USD]
    added_investment_usd : array_like, shape (...)
        Present value of first cost plus replacements less residual, over that of the base case. [USD]

    Returns
    -------
    sir : ndarray, shape (...)
        Their ratio; NaN where nothing more is invested than in the base case, as the ratio then ranks nothing.
        [dimensionless]

    References
    ----------
    .. [1] 10 CFR 436.21; ASTM E964.

    Examples
    --------
    >>> savings_to_investment_ratio(np.array([3000.0, 50.0]), np.array([1000.0, -10.0])).tolist()
    [3.0, nan]
    """
    added = np.asarray(added_investment_usd, dtype=np.float64)
    exists = added > 0.0
    sir: FloatArray = np.where(exists, np.asarray(saving_usd) / np.where(exists, added, 1.0), np.nan)
    return sir


def adjusted_internal_rate(sir: FloatArray, discount_rate_frac: FloatArray, study_period_yr: int) -> FloatArray:
    """Return the yearly yield of the extra money when savings are put aside at the discount rate.

    Parameters
    ----------
    sir : array_like, shape (...)
        Savings-to-investment ratio. [dimensionless]
    discount_rate_frac : array_like, shape () or (...)
        Yearly discount rate. [dimensionless]
    study_period_yr : int
        Years compared. [year]

    Returns
    -------
    airr : ndarray, shape (...)
        (1 + d) SIR**(1/n) - 1; NaN where the ratio is not above nothing or does not exist. [dimensionless]

    References
    ----------
    .. [1] 10 CFR 436.22; ASTM E1057.

    Examples
    --------
    >>> round(float(adjusted_internal_rate(np.array(12.5737), np.array(0.03), 20)), 5)
    0.16899
    """
    ratio = np.asarray(sir, dtype=np.float64)
    exists = ratio > 0.0
    growth = np.log(np.where(exists, ratio, 1.0)) / study_period_yr + np.log1p(discount_rate_frac)
    airr: FloatArray = np.where(exists, np.expm1(growth), np.nan)
    return airr


def measures(streams: Streams, discount_rate_frac: FloatArray, base_case: int) -> Measures:
    """Return all life-cycle measures of each alternative against the base case.

    Parameters
    ----------
    streams : Streams
        Yearly costs in constant dollars.
    discount_rate_frac : array_like, shape () or (B,)
        Yearly real discount rate. [dimensionless]
    base_case : int
        Position of the base case on the alternatives axis. [dimensionless]

    Returns
    -------
    measures : Measures
        Ratio and its rate exist only where more is invested than in the base case, at year 0 and in all: the base case
        of a ratio is the one with the lower initial investment (Handbook 135, from memory). Paybacks exist only where
        more is paid at year 0. What costs less at the start has nothing to earn or pay back, and its net savings say
        what it is worth.

    Raises
    ------
    OutOfRangeError
        If the study period is shorter than a year, or the rate at or below -1.

    Notes
    -----
    Life-cycle cost = first cost + energy + upkeep + replacement - residual, each at present value. Net savings = that
    of the base case - that of the alternative = savings - added investment. Mutually exclusive alternatives are ranked
    by life-cycle cost, never by ratio or rate. Borrowed money is part of the added investment; internal rate and
    paybacks are those of the purchase itself, however it is paid for: whoever borrows all of it puts nothing in.

    References
    ----------
    .. [1] 10 CFR 436.19 to 436.23; ASTM E917, E964, E1057, E1074, E1121.
    .. [2] Fuller & Petersen, NIST Handbook 135 (1995), section 6.
    """
    study_period_yr = streams.energy_usd.shape[-1] - 1
    if study_period_yr < 1:
        raise OutOfRangeError("study period", study_period_yr, "years", "1 or more", "Give the years to compare over.")
    piece = component_present_value(streams, discount_rate_frac)
    operation = piece["energy"] + piece["upkeep"] + piece["repair"] + piece["letting"]
    investment = piece["first_cost"] + piece["replacement"] + piece["disposal"] + piece["residual"] + piece["financing"]
    lcc, saving, added = operation + investment, operation[base_case] - operation, investment - investment[base_case]
    paid = streams.total_usd - streams.financing_usd
    flow = paid[base_case] - paid
    is_more_at_first = streams.first_usd > streams.first_usd[base_case]
    sir = savings_to_investment_ratio(saving, np.where(is_more_at_first, added, 0.0))
    airr = adjusted_internal_rate(sir, discount_rate_frac, study_period_yr)
    irr, simple, discounted = internal_rate(flow), simple_payback(flow), discounted_payback(flow, discount_rate_frac)
    return Measures(
        lcc_usd=lcc,
        annualised_cost_usd_per_yr=lcc * capital_recovery_factor(discount_rate_frac, np.array(float(study_period_yr))),
        net_savings_usd=lcc[base_case] - lcc,
        sir=sir,
        airr=airr,
        irr=irr.rate_frac,
        simple_payback_yr=simple.after_yr,
        discounted_payback_yr=discounted.after_yr,
        sir_exists=~np.isnan(sir),
        airr_exists=~np.isnan(airr),
        irr_exists=irr.exists,
        irr_is_multiple=irr.is_multiple,
        simple_payback_exists=simple.exists,
        discounted_payback_exists=discounted.exists,
        simple_payback_is_undone=simple.is_undone,
        discounted_payback_is_undone=discounted.is_undone,
    )
