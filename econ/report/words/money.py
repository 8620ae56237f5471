"""Payback, own hours and cash, in words."""

from typing import Final

import numpy as np

from econ.evaluate.result import Result
from econ.installation.first_cost import incentive_usd
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, Alternative
from econ.kernel.arrays import FloatArray
from econ.lifecycle.discount import nominal_rate
from econ.report.numbers import first_cost_money, hours, listed, money, percent, two_digits, years
from econ.report.style import NAMES
from econ.uncertainty.answer import Answer

MOST_CASH_SHARE: Final = 0.95
"""The cash told as the most to expect is not passed in this share of the draws."""

LEANING_SHARE: Final = 1.0 / 3.0
"""Where no more of the draws than this stay below a likely sum, the middle of the draws is told too (assumption)."""


def payback_text(result: Result, name: Alternative) -> str:
    """Return when the extra money at the start comes back, and against what; every branch names the base case."""
    position, base = ALTERNATIVES.index(name), ALTERNATIVES.index(result.base_case)
    against = f"Against “{NAMES[result.base_case]}”"
    extra = float(result.streams.first_usd[position, 0] - result.streams.first_usd[base, 0])
    measures = result.measures
    if position == base:
        return f"This is what the others are compared with: “{NAMES[result.base_case]}”."
    if extra <= 0.0:
        return f"{against} there is nothing to pay back: it costs no more at the start."
    if not bool(measures.simple_payback_exists[position, 0]):
        span = f"within {result.study_period_yr} years"
        return f"{against} the extra {first_cost_money(extra)} at the start does not come back {span}."
    undone = ", until a later cost takes it out again" if bool(measures.simple_payback_is_undone[position, 0]) else ""
    length = years(float(measures.simple_payback_yr[position, 0]))
    return f"{against} the extra {first_cost_money(extra)} at the start comes back in about {length}{undone}."


def pay_per_own_hour_usd(result: Result) -> float:
    """Return what an own hour pays compared with hiring; NaN where no more of them go in than hiring takes. [USD/hour]

    (Hired cash - own cash, its allowance for mishaps in it) / (own hours - the hours that hiring takes), likely values;
    incentives that either way gets are taken off its cash.
    """
    own, hired = (result.alternatives[way] for way in (SELF, HIRED))
    own_usd, hired_usd = (float((way.cash_first_cost_usd - incentive_usd(way.line_items))[0]) for way in (own, hired))
    more_h = _more_own_h(result)
    return (hired_usd - own_usd) / more_h if more_h > 0.0 else float("nan")


def _more_own_h(result: Result) -> float:
    """Return how many own hours more than hiring takes a self-installation takes. [hour]"""
    own, hired = (float(result.alternatives[way].own_hours_h[0]) for way in (SELF, HIRED))
    return own - hired


def own_time_text(result: Result) -> str:
    """Return what own hours pay compared with hiring, mishap allowance taken off; empty where no more go in."""
    hired_h, more_h = float(result.alternatives[HIRED].own_hours_h[0]), _more_own_h(result)
    if more_h <= 0.0:
        return ""
    paid = pay_per_own_hour_usd(result)
    whose = (
        f"The {hours(more_h)} that you put in beyond what hiring takes"
        if hired_h > 0.0
        else f"Your own {hours(more_h)}"
    )
    if paid <= 0.0:
        return f"{whose} save nothing compared with hiring."
    return f"{whose} pay about {money(two_digits(paid))} each compared with hiring, after an allowance for mishaps."


def most_cash_text(cash_usd: FloatArray) -> str:
    """Return the cash to expect before the room is cool; of draws, shape (B,), the amount that 19 of 20 stay below."""
    if len(cash_usd) == 1:
        return f"The cash you should expect to need is {first_cost_money(float(cash_usd[0]))}."
    most = float(np.quantile(cash_usd, MOST_CASH_SHARE))
    return f"The most cash you should expect to need is {first_cost_money(most)}."


def leaning_text(likely_usd: float, cash_usd: FloatArray) -> str:
    """Return that costs overrun more often than not, and the middle of the draws, shape (B,); empty where they do not.

    A likely sum adds up what each cost most often is; costs reach further up than down, so most tries come to more.
    """
    if float((cash_usd < likely_usd).mean()) > LEANING_SHARE:
        return ""
    middle = float(np.median(cash_usd))
    return (
        f"Expect some overrun: {first_cost_money(likely_usd)} adds up what each cost most often is, "
        f"and half the tries come to more than {first_cost_money(middle)}."
    )


def start_text(result: Result, name: Alternative) -> str:
    """Return why the years begin with less than the first cost; empty where they do not."""
    position = ALTERNATIVES.index(name)
    begin = float(result.streams.first_usd[position, 0])
    back = float(result.alternatives[position].first_cost_usd[0]) - begin
    if back < 1.0:
        return ""
    return (
        f"The years begin with {money(begin)}: {money(back)} that comes back at the start, such as old units sold or "
        "an incentive, is taken off the first cost."
    )


def financing_text(result: Result, name: Alternative) -> str:
    """Return what borrowed money really costs; empty where nothing is borrowed."""
    terms = result.terms[ALTERNATIVES.index(name)]
    if terms is None:
        return ""
    more = terms.total_usd - terms.advanced_usd - terms.fee_usd
    offer = "Without interest in name, it is" if terms.is_without_interest and terms.apr_frac > 0.0 else "That is"
    return (
        f"“{NAMES[name]}” on borrowed money: {terms.month_count} payments of {money(terms.payment_usd)} a month, "
        f"{money(more)} more than cash. {offer} {percent(terms.apr_frac, 1)} a year in truth."
    )


def repairs_text(result: Result, name: Alternative) -> str:
    """Return the repairs to expect and what a warranty pays of them; empty where nothing is there to fail."""
    position = ALTERNATIVES.index(name)
    flow = np.broadcast_to(result.streams.repair_usd, result.streams.energy_usd.shape)
    mine, theirs = float(flow[position, 0].sum()), float(result.by_warranty_usd[position, 0])
    if mine + theirs <= 0.0:
        return ""
    paid = f"; a warranty pays {money(two_digits(theirs))} more" if theirs >= 1.0 else ""
    return f"“{NAMES[name]}”: {money(two_digits(mine))} of repairs to expect in {result.study_period_yr} years{paid}."


def dollars_text(answer: Answer, *, is_nominal: bool) -> str:
    """Return in which dollars a yearly table stands, and that the answer is the same in either."""
    if not is_nominal:
        return "In today's dollars, before discounting."
    rise, real = (answer.sheet.entry(f"money.{name}").likely for name in ("inflation_frac", "discount_rate_real_frac"))
    nominal = percent(float(nominal_rate(np.asarray(real), np.asarray(rise))), 1)
    return (
        f"In the dollars of each year, prices rising {percent(rise, 1)} a year, before discounting. Discounted at "
        f"{nominal} a year instead of {percent(real, 1)} the lifetime cost is the same."
    )


def letting_text(answer: Answer) -> str:
    """Return what rent and taxes of a letting come to, with the mark that they are no tax advice; empty where off."""
    pieces, span = answer.result.component_usd, answer.result.study_period_yr
    added = pieces["letting"][:, 0] if "letting" in pieces else np.zeros(len(ALTERNATIVES))
    if not np.any(added):
        return ""
    told = [f"“{NAMES[name]}” {money(-two_digits(float(usd)))}" for name, usd in zip(ALTERNATIVES, added, strict=True)]
    return (
        f"Rent and taxes of letting bring over {span} years, in today's money: {listed(told)}. "
        "This is not tax advice: limits on losses, tax on a later sale and rules of your state are left out."
    )
