"""The four ways of an answer, as words and figures ready to show."""

from math import isfinite
from typing import Final

from econ.evaluate.figures import value_at
from econ.kernel.alternative import ALTERNATIVES, Standing
from econ.report import numbers
from econ.report.look import Look
from econ.report.words import gaps, standing, waiting
from econ.report.words.figure import opening_text
from econ.ui.cards import LABELS, Way
from econ.uncertainty.answer import Answer

_MARKS: Final = {
    Standing.OPEN: "✓",
    Standing.WITH_HELP: "✓+",
    Standing.NOT_ALLOWED: "✕",
    Standing.UNKNOWN: "?",
}
"""One sign for how a way stands; the plus is the licensed trade."""


def ways(answer: Answer, look: Look) -> tuple[Way, ...]:
    """Return the four ways, same order always."""
    return tuple(_way(answer, place, look) for place in range(len(ALTERNATIVES)))


def _way(answer: Answer, place: int, look: Look) -> Way:
    found = answer.result.alternatives[place]
    return Way(
        name=found.name,
        standing=standing.standing_words(found),
        mark=_MARKS[found.standing],
        cash=numbers.first_cost_money(value_at("cash_first_cost_usd", answer.result, place)),
        a_year=numbers.first_cost_money(value_at("annualised_cost_usd_per_yr", answer.result, place)),
        hours=f"{value_at('own_hours_h', answer.result, place):.0f} h",
        cool_day=look.day(float(found.in_service_d[0])) if found.in_service_exists else "nothing new",
        cool_range=waiting.span_text(answer.result, found, look),
        chance=_chance(answer, place),
        lacks=_lacks(answer, place, look),
        out=numbers.listed([standing.reason_words(found.name, code) for code in answer.verdict.reasons[place]]),
        is_out=not answer.verdict.eligible[place],
        is_pick=answer.verdict.winner is found.name,
        opened={key: opening_text(answer, key, place, look) for key in LABELS},
    )


def _lacks(answer: Answer, place: int, look: Look) -> str:
    """Return what a way does not do; where it is only not allowed, which the card says above, where the reasons are."""
    found = answer.result.alternatives[place]
    told = gaps.shortcoming(answer.result, found.name, look)
    return "The work page says why, task by task." if told == f"{standing.standing_words(found)}." else told


def _chance(answer: Answer, place: int) -> str:
    chance = answer.verdict.chance[place]
    if isfinite(chance):
        return standing.alone_text(answer.verdict, place) or numbers.in_tries(chance)
    return "not tried yet" if answer.verdict.eligible[place] else "not in the running"
