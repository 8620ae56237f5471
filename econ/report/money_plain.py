"""Money and doubt as plain objects for JSON: what is paid when, how far figures reach, and what knowing is worth."""

from dataclasses import asdict
from typing import Any, Final

import numpy as np

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.arrays import FloatArray
from econ.lifecycle.discount import nominal_rate, present_value
from econ.lifecycle.nominal import nominal_streams
from econ.report.cash import most_by_month_usd, paid_by_month_usd
from econ.report.numbers import number
from econ.report.words import find_first
from econ.report.words.money import MOST_CASH_SHARE, pay_per_own_hour_usd
from econ.uncertainty.answer import Answer
from econ.uncertainty.drawn import Drawn
from econ.uncertainty.information import perfect_information_usd
from econ.uncertainty.spread import LEVELS, expected_regret_usd, quantiles

Document = dict[str, Any]

ONE_RATE, NO_RATE, SEVERAL_RATES = "one", "none", "not_unique"
"""What is said of an internal rate: there is one, there is none, or several rates fit and none is given."""

_UNDONE: Final = ("simple_payback_is_undone", "discounted_payback_is_undone")


def way_money(result: Result, position: int) -> Document:
    """Return what one way's money is made of."""
    measures = result.measures
    several, one = bool(measures.irr_is_multiple[position, 0]), bool(measures.irr_exists[position, 0])
    terms = result.terms[position]
    return {
        "lcc_at_zero_hour_usd": number(result.lcc_at_zero_hour_usd[position, 0]),
        "component_usd": {name: number(piece[position, 0]) for name, piece in result.component_usd.items()},
        "repairs_by_warranty_usd": number(result.by_warranty_usd[position, 0]),
        "irr_is": SEVERAL_RATES if several else ONE_RATE if one else NO_RATE,
        **{name: bool(getattr(measures, name)[position, 0]) for name in _UNDONE},
        "financing": None if terms is None else asdict(terms),
    }


def document(answer: Answer) -> Document:
    """Return what holds for the whole comparison, doubt included where there are draws."""
    at_zero = answer.verdict_at_zero_hour
    plain = {
        "verdict_at_zero_hour": at_zero.kind,
        "lowest_lcc_at_zero_hour": at_zero.winner.value if at_zero.winner else None,
        "pay_per_own_hour_usd_per_h": number(pay_per_own_hour_usd(answer.result)),
        "nominal": _nominal(answer),
        "cash_paid_by_month_usd": _by_way(paid_by_month_usd(answer)),
    }
    return plain | (_doubt(answer, answer.drawn) if answer.drawn is not None else {})


def _nominal(answer: Answer) -> Document:
    """Return the yearly totals in dollars of each year and what they are worth: the same as in constant dollars."""
    rise, real = (
        np.asarray(answer.sheet.entry(f"money.{name}").likely) for name in ("inflation_frac", "discount_rate_real_frac")
    )
    rate, flows = nominal_rate(real, rise), nominal_streams(answer.result.streams, rise).total_usd[:, 0]
    return {
        "inflation_frac": float(rise),
        "discount_rate_nominal_frac": float(rate),
        "total_usd": _by_way(flows),
        "lcc_usd": _by_name(present_value(flows, rate)),
    }


def _doubt(answer: Answer, drawn: Drawn) -> Document:
    takes_part = np.array(answer.verdict.eligible)
    cost = drawn.measures.lcc_usd
    has_choice = bool(takes_part.any())
    return {
        "probability_half_width_frac": None if answer.chance is None else _by_name(answer.chance.half_width_frac),
        "quantile_level_frac": list(LEVELS),
        "quantiles": {name: _by_way(levels.T) for name, levels in quantiles(drawn).items()},
        "most_cash_usd": {
            name.value: number(float(np.quantile(cash, MOST_CASH_SHARE)))
            for name, cash in zip(ALTERNATIVES, drawn.cash_first_cost_usd, strict=True)
        },
        "most_cash_paid_by_month_usd": _by_way(most_by_month_usd(answer, drawn)),
        **_worth_knowing(answer),
        "expected_regret_usd": _by_name(expected_regret_usd(cost, takes_part)),
        "value_of_perfect_information_usd": number(float(perfect_information_usd(cost[takes_part])))
        if has_choice
        else None,
    }


def _worth_knowing(answer: Answer) -> Document:
    """Return what knowing each input before deciding is worth, most valuable first, and what to find out first."""
    ends = ("usd", "at_low", "at_high")
    return {
        "value_of_information": [
            {"path": each.path, **{end: getattr(each, end) for end in ends}} for each in answer.worth
        ],
        "find_first": [{**asdict(card.guide), "change": card.change} for card in find_first.cards(answer)],
    }


def _by_way(rows: FloatArray) -> Document:
    return {name.value: [number(each) for each in row] for name, row in zip(ALTERNATIVES, rows, strict=True)}


def _by_name(values: FloatArray) -> Document:
    return {name.value: number(float(each)) for name, each in zip(ALTERNATIVES, values, strict=True)}
