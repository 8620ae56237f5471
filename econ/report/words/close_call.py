"""The verdict where the doubt is larger than the difference."""

from collections.abc import Sequence

import numpy as np

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, Alternative, Standing
from econ.report.numbers import in_tries, lifetime_money, listed, money, two_digits
from econ.report.words.standing import DOING, advice, lifetime_usd, named_winner
from econ.uncertainty.verdict import Verdict


def too_close(result: Result, verdict: Verdict, deciders: Sequence[str]) -> str:
    """Return the verdict where cost cannot decide: how near the two come, and what would decide it."""
    winner, runner_up = named_winner(verdict), verdict.runner_up
    way = result.alternatives[ALTERNATIVES.index(winner)]
    if way.standing is Standing.UNKNOWN:
        return (
            f"Too early to say: {DOING[winner]} costs least, {lifetime_money(lifetime_usd(result, winner))} over "
            f"{result.study_period_yr} years, but whether it is allowed here is not known. Ask the permit office first."
        )
    if runner_up is None:
        return f"Too close to call. {advice(way)} is the only way left, and the doubt about it is large."
    if winner == Alternative.WINDOW_UNITS and runner_up != Alternative.KEEP_AS_IS:
        return _money_against_comfort(result, runner_up)
    return f"{_gap(result, verdict, winner, runner_up)} {_decision(deciders)}"


def _gap(result: Result, verdict: Verdict, winner: Alternative, runner_up: Alternative) -> str:
    apart = money(two_digits(verdict.gap_usd))
    chances = [verdict.chance[ALTERNATIVES.index(name)] for name in (winner, runner_up)]
    won = ""
    if np.isfinite(chances).all():
        won = f"; {DOING[winner]} was cheapest {in_tries(chances[0])}, {DOING[runner_up]} {in_tries(chances[1])}"
    return (
        f"Too close to call: {DOING[winner]} and {DOING[runner_up]} come out within {apart} "
        f"over {result.study_period_yr} years{won}."
    )


def _decision(deciders: Sequence[str]) -> str:
    if not deciders:
        return "Cost alone should not decide: look at cash, dates and what each does not do."
    return f"What would decide it: {listed(list(deciders))}."


def _money_against_comfort(result: Result, other: Alternative) -> str:
    yearly = result.measures.annualised_cost_usd_per_yr[:, 0]
    window = ALTERNATIVES.index(Alternative.WINDOW_UNITS)
    extra = money(two_digits(float(yearly[ALTERNATIVES.index(other)] - yearly[window])))
    return (
        f"Too close to call on money alone: new window units cost least, by about {extra} a year. If a quiet room and "
        f"a free window are worth more than {extra} a year to you, {DOING[other]} is the better buy."
    )
