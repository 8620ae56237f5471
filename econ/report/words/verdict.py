"""The verdict in at most three sentences."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, Alternative, Standing
from econ.report.numbers import in_tries, lifetime_money, listed
from econ.report.words.close_call import too_close
from econ.report.words.find_first import guide_for
from econ.report.words.refusal import none_open, not_allowed
from econ.report.words.shortfall import nothing_fits, nothing_fits_text
from econ.report.words.standing import (
    ASIDE_WORDS,
    DOING,
    REASON_WORDS,
    advice,
    asks_heat,
    is_cooling_only,
    lifetime_usd,
    named_winner,
)
from econ.uncertainty.answer import Answer
from econ.uncertainty.verdict import Verdict

MOST_DECIDERS: Final = 2


def verdict_text(result: Result, verdict: Verdict, deciders: Sequence[str] = ()) -> str:
    """Return the verdict in at most three sentences.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    verdict : Verdict
        Kind, winner, runner-up and chances.
    deciders : sequence of str
        Inputs that would decide a close call, in the reader's words, such as "what an hour of yours is worth".

    Returns
    -------
    text : str
        Sentences as on screen, in print and on the command line.
    """
    if verdict.winner is None:
        return none_open(result)
    if nothing_fits(verdict) and verdict.kind != "not_allowed":
        return nothing_fits_text(result, verdict)
    if verdict.kind == "not_allowed":
        return not_allowed(result, verdict)
    if verdict.kind == "too_close":
        return too_close(result, verdict, deciders)
    return _clear(result, verdict)


def answer_text(answer: Answer) -> str:
    """Return the verdict of an answer; its first sentence says where own hours at nothing would turn the choice.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    """
    now, at_zero = answer.verdict.winner, answer.verdict_at_zero_hour.winner
    text = verdict_text(answer.result, answer.verdict, deciders(answer))
    if now is None or at_zero is None or now is at_zero:
        return text
    first, stop, rest = text.partition(". ")
    plural = "cost" if at_zero is Alternative.WINDOW_UNITS else "costs"
    of = "of the ways left, " if answer.verdict.kind == "not_allowed" else ""
    hours = f"; with your hours at nothing, {of}{DOING[at_zero]} {plural} least"
    return f"{first.removesuffix('.')}{hours}{stop or '.'}{rest}"


def deciders(answer: Answer) -> tuple[str, ...]:
    """Return what would decide a close call, most valuable first, in the reader's words; nothing where it is clear."""
    if answer.verdict.kind != "too_close":
        return ()
    guides = (guide_for(worth.path) for worth in answer.worth)
    named = dict.fromkeys(f"{guide.what[:1].lower()}{guide.what[1:]}" for guide in guides if guide is not None)
    return tuple(named)[:MOST_DECIDERS]


def _clear(result: Result, verdict: Verdict) -> str:
    winner = named_winner(verdict)
    way = result.alternatives[ALTERNATIVES.index(winner)]
    span = f"{result.study_period_yr} years"
    cost = f"{_pronoun(winner)} {lifetime_money(lifetime_usd(result, winner))} over {span}"
    others = [_beside(result, verdict, name, winner) for name in _comparable(result) if name != winner]
    compared = f"; {listed(others)}" if others else ", and no other way is open and does the job"
    return f"{advice(way)}{_proviso(way)}. {cost}{compared}. {_sureness(verdict, winner)}"


def _pronoun(winner: Alternative) -> str:
    return "They cost" if winner == Alternative.WINDOW_UNITS else "It costs"


def _comparable(result: Result) -> list[Alternative]:
    """Return the ways that are allowed and do the job, cheapest first, in time and within cash or not."""
    fitting = [
        way.name for way in result.alternatives if way.standing is not Standing.NOT_ALLOWED and bool(way.meets_need[0])
    ]
    return sorted(fitting, key=lambda name: lifetime_usd(result, name))


def _beside(result: Result, verdict: Verdict, name: Alternative, winner: Alternative) -> str:
    """Return what another way costs more or less, and what else speaks against it where it stood aside."""
    way = result.alternatives[ALTERNATIVES.index(name)]
    plural = name == Alternative.WINDOW_UNITS
    heat = " with the heat you have" if plural and asks_heat(result) and is_cooling_only(way) else ""
    apart = lifetime_usd(result, name) - lifetime_usd(result, winner)
    amount = f"{lifetime_money(abs(apart))} {'more' if apart >= 0.0 else 'less'}"
    aside = [ASIDE_WORDS[code] for code in verdict.reasons[ALTERNATIVES.index(name)] if code in ASIDE_WORDS]
    against = f" ({listed(aside)})" if aside else ""
    return f"{DOING[name]}{heat} {'cost' if plural else 'costs'} {amount}{against}"


def _proviso(way: AlternativeResult) -> str:
    """Return what speaks against a winner all the same, where no way passes every test."""
    against = []
    if not bool(way.meets_need[0]):
        against.append("no way open to you does all that you asked for")
    if not bool(way.is_in_time[0]):
        against.append(REASON_WORDS["late"])
    if not bool(way.is_within_cash[0]):
        against.append(REASON_WORDS["over_cash"])
    return f", though {listed(against)}" if against else ""


def _sureness(verdict: Verdict, winner: Alternative) -> str:
    chance = verdict.chance[ALTERNATIVES.index(winner)]
    if sum(verdict.eligible) < 2:
        return "With nothing to compare it with, cost did not have to decide."
    if not np.isfinite(chance):
        return "This rests on the likely values alone: no tries of other values were run."
    subject = "They" if winner == Alternative.WINDOW_UNITS else "It"
    return f"{subject} came out cheapest {in_tries(chance)}."
