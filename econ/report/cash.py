"""Cash by month until the room is cool, likely and the most to expect, and how far each figure reaches."""

from math import isfinite
from typing import Final

import numpy as np

from econ.installation.cash import MONTH_D, cash_by_month_usd
from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.kernel.arrays import FloatArray
from econ.report.numbers import NONE_TEXT, first_cost_money, money, percent, years
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words.money import MOST_CASH_SHARE
from econ.uncertainty.answer import Answer
from econ.uncertainty.drawn import MOST_MONTHS, Drawn
from econ.uncertainty.spread import quantiles

NEVER: Final = "never"


def _or_never(value: float) -> str:
    return years(value) if isfinite(value) else NEVER


def _or_none(value: float, text: str) -> str:
    return text if isfinite(value) else NONE_TEXT


FIGURES: Final = {
    "cash_first_cost_usd": ("Cash now", first_cost_money),
    "first_cost_usd": ("First cost, own time priced", first_cost_money),
    "lcc_usd": ("Lifetime cost", first_cost_money),
    "lcc_at_zero_hour_usd": ("Lifetime cost, own hours at nothing", first_cost_money),
    "annualised_cost_usd_per_yr": ("All-in cost a year", money),
    "net_savings_usd": ("Savings against base", first_cost_money),
    "energy_cost_usd_per_yr": ("Energy a year", money),
    "sir": ("Savings for each extra dollar, against base", lambda value: _or_none(value, f"{value:.2f}")),
    "airr": ("Yearly return against base", lambda value: percent(value, 1)),
    "irr": ("Internal return against base", lambda value: _or_none(value, percent(value, 1))),
    "discounted_payback_yr": ("Payback against base, discounted", _or_never),
    "simple_payback_yr": ("Payback against base", _or_never),
}


def month_count(answer: Answer) -> int:
    """Return how many months to tell: until the slowest way works, with draws in 19 of 20."""
    likely = [way.in_service_d for way in answer.result.alternatives]
    days = np.stack(likely) if answer.drawn is None else answer.drawn.in_service_d
    ready = days[~np.isnan(days).all(axis=1)]
    last = np.nanquantile(ready, MOST_CASH_SHARE, axis=1).max() if len(ready) else 0.0
    return min(MOST_MONTHS, int(last // MONTH_D) + 1)


def paid_by_month_usd(answer: Answer) -> FloatArray:
    """Return the likely cash of each way that has left by the end of each month, shape (A, n_month)."""
    deposit, count = np.asarray(answer.sheet.entry("finance.deposit_frac").likely), month_count(answer)
    ways = answer.result.alternatives
    by_month = [cash_by_month_usd(way.line_items, way.in_service_d, deposit, count)[0] for way in ways]
    paid: FloatArray = np.cumsum(np.stack(by_month), axis=-1)
    return paid


def cash_table(answer: Answer) -> Columns:
    """Return the cash that has left by the end of each month until the last way works; the most to expect beside it."""
    likely = paid_by_month_usd(answer)
    most = likely if answer.drawn is None else most_by_month_usd(answer, answer.drawn)
    columns: Columns = {"By the end of": [f"month {at + 1}" for at in range(likely.shape[1])]}
    for way, name in enumerate(ALTERNATIVES):
        if way != KEEP:
            columns[NAMES[name]] = [_with_most(*pair) for pair in zip(likely[way], most[way], strict=True)]
    return columns


def most_by_month_usd(answer: Answer, drawn: Drawn) -> FloatArray:
    """Return the most cash to expect by the end of each month, shape (A, n_month)."""
    most: FloatArray = np.quantile(drawn.paid_by_month_usd[..., : month_count(answer)], MOST_CASH_SHARE, axis=1)
    return most


def _with_most(likely_usd: float, most_usd: float) -> str:
    likely, most = first_cost_money(float(likely_usd)), first_cost_money(float(most_usd))
    return likely if most == likely else f"{likely} (up to {most})"


def reach_table(drawn: Drawn) -> Columns:
    """Return how far each figure reaches: 1 in 20 below, the middle, 1 in 20 above."""
    found = quantiles(drawn)
    columns: Columns = {"": [words for words, _ in FIGURES.values()]}
    for way, name in enumerate(ALTERNATIVES):
        columns[NAMES[name]] = [
            " · ".join(shown(float(level)) for level in found[key][:, way]) for key, (_, shown) in FIGURES.items()
        ]
    return columns
