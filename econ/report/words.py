"""The answer in words: at most three sentences for a verdict, one line for what a choice does not do."""

from collections.abc import Sequence
from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, HIRED, PARTIES, SELF, Alternative, Party, Standing
from econ.report.look import Look
from econ.report.numbers import (
    Quantity,
    first_cost_money,
    hours,
    in_tries,
    lifetime_money,
    listed,
    measure,
    money,
    plain_number,
    plural,
    two_digits,
    years,
)
from econ.report.shortfall import nothing_fits, nothing_fits_text
from econ.report.style import NAMES
from econ.uncertainty.verdict import Verdict

ADVICE: Final[dict[Alternative, str]] = {
    Alternative.KEEP_AS_IS: "Keep what you have for now",
    Alternative.WINDOW_UNITS: "Buy new window units",
    Alternative.SELF_INSTALL: "Put it in yourself",
    Alternative.CONTRACTED_INSTALL: "Hire it out",
}
DOING: Final[dict[Alternative, str]] = {
    Alternative.KEEP_AS_IS: "keeping what you have",
    Alternative.WINDOW_UNITS: "new window units",
    Alternative.SELF_INSTALL: "doing it yourself",
    Alternative.CONTRACTED_INSTALL: "hiring",
}
"""How an alternative is called within a sentence."""

STANDING_WORDS: Final[dict[Standing, str]] = {
    Standing.OPEN: "Open to you",
    Standing.WITH_HELP: "Open, with a licensed trade for part of it",
    Standing.NOT_ALLOWED: "Not allowed here",
    Standing.UNKNOWN: "Not known yet whether allowed",
}
REASON_WORDS: Final[dict[str, str]] = {
    "not_allowed": "it is not allowed here",
    "standing_unknown": "whether it is allowed is not known yet",
    "short_of_need": "it does not do all that you asked for",
    "late": "it comes after this year's hot season",
    "over_cash": "it takes more cash than you said you can spend",
}
"""In the fixed order of reasons: allowed, does the job, in time, within cash."""

ASIDE_WORDS: Final[dict[str, str]] = {"late": "after this year's hot season", "over_cash": "above your cash limit"}
"""The same in a parenthesis, for ways that do the job and are allowed."""

COUNTS: Final = ("No", "One", "Two", "Three", "Four", "Five", "Six")

MOST_OBSTACLES: Final = 3
"""Obstacles told in a verdict; the rest are counted and stand on the card."""

MOST_CASH_SHARE: Final = 0.95
"""The cash told as the most to expect is not passed in this share of the draws."""

NOTICED_H: Final = 1.0
"""h a year; a shortfall below this is not told (assumption)."""

NOTICED_KG: Final = 1.0
"""kg of water a year; moisture left below this is not told (assumption)."""


def is_cooling_only(way: AlternativeResult) -> bool:
    """Return whether what an alternative puts in gives no heat."""
    return not bool(np.nan_to_num(way.capability.heat_w).max(initial=0.0) > 0.0)


def _asks_heat(result: Result) -> bool:
    return bool(result.need_heat_kwh[0].sum() > 0.0)


def _cost(result: Result, name: Alternative) -> float:
    return float(result.measures.lcc_usd[ALTERNATIVES.index(name), 0])


def paid_parties(way: AlternativeResult) -> tuple[Party, ...]:
    """Return the trades that an alternative's tasks name, electrician first."""
    plan = way.schedule
    named = {PARTIES[int(code)] for code in plan.party[0][plan.is_active[0]]}
    return tuple(party for party in (Party.ELECTRICIAN, Party.CONTRACTOR) if party in named)


def advice(way: AlternativeResult) -> str:
    """Return what to do, with the trades that self-install still needs."""
    if way.name != Alternative.SELF_INSTALL:
        return ADVICE[way.name]
    help_words = {
        Party.ELECTRICIAN: "an electrician for the circuit",
        Party.CONTRACTOR: "a contractor for part of the work",
    }
    helping = [help_words[party] for party in paid_parties(way)]
    return ADVICE[way.name] + (f", with {listed(helping)}" if helping else "")


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
        return _none_open(result)
    if nothing_fits(verdict) and verdict.kind != "not_allowed":
        return nothing_fits_text(result, verdict)
    if verdict.kind == "not_allowed":
        return _not_allowed(result, verdict)
    if verdict.kind == "too_close":
        return _too_close(result, verdict, deciders)
    return _clear(result, verdict)


def _none_open(result: Result) -> str:
    first = [way.reasons[0].rstrip(".") for way in result.alternatives if way.reasons]
    why = f" What stands in the way: {'; '.join(dict.fromkeys(first))}." if first else ""
    return f"None of these is open yet.{why}"


def _clear(result: Result, verdict: Verdict) -> str:
    winner = _winner(verdict)
    way = result.alternatives[ALTERNATIVES.index(winner)]
    span = f"{result.study_period_yr} years"
    cost = f"{_pronoun(winner)} {lifetime_money(_cost(result, winner))} over {span}"
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
    return sorted(fitting, key=lambda name: _cost(result, name))


def _beside(result: Result, verdict: Verdict, name: Alternative, winner: Alternative) -> str:
    """Return what another way costs more or less, and what else speaks against it where it stood aside."""
    way = result.alternatives[ALTERNATIVES.index(name)]
    plural = name == Alternative.WINDOW_UNITS
    heat = " with the heat you have" if plural and _asks_heat(result) and is_cooling_only(way) else ""
    apart = _cost(result, name) - _cost(result, winner)
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


def _winner(verdict: Verdict) -> Alternative:
    if verdict.winner is None:
        raise ValueError("A verdict without a winner has no wording of this kind.")
    return verdict.winner


def _by_cost(result: Result, verdict: Verdict) -> list[Alternative]:
    fitting = [name for name, fits in zip(ALTERNATIVES, verdict.eligible, strict=True) if fits]
    return sorted(fitting, key=lambda name: _cost(result, name))


def _sureness(verdict: Verdict, winner: Alternative) -> str:
    chance = verdict.chance[ALTERNATIVES.index(winner)]
    if sum(verdict.eligible) < 2:
        return "With nothing to compare it with, cost did not have to decide."
    if not np.isfinite(chance):
        return "This rests on the likely values alone: no tries of other values were run."
    subject = "They" if winner == Alternative.WINDOW_UNITS else "It"
    return f"{subject} came out cheapest {in_tries(chance)}."


def _too_close(result: Result, verdict: Verdict, deciders: Sequence[str]) -> str:
    winner, runner_up = _winner(verdict), verdict.runner_up
    way = result.alternatives[ALTERNATIVES.index(winner)]
    if way.standing is Standing.UNKNOWN:
        return (
            f"Too early to say: {DOING[winner]} costs least, {lifetime_money(_cost(result, winner))} over "
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


def _not_allowed(result: Result, verdict: Verdict) -> str:
    left = [_choice(result, name) for name in _by_cost(result, verdict)]
    span = f"over {result.study_period_yr} years"
    return f"Don't put this in yourself.{_obstacles(result)} Your real choice, {span}, is {listed(left, 'or')}."


def _obstacles(result: Result) -> str:
    """Return what stands in the way of self-install: the count, and the gravest in a few words each."""
    reasons = [_lowered(reason.split(";")[0].strip().rstrip(".")) for reason in result.alternatives[SELF].reasons]
    if not reasons:
        return ""
    count = len(reasons)
    number = COUNTS[count] if count < len(COUNTS) else plain_number(count)
    verb = "stands" if count == 1 else "stand"
    first = ", above all these" if count > MOST_OBSTACLES else ""
    return f" {number} {plural('thing', count)} {verb} in the way{first}: {'; '.join(reasons[:MOST_OBSTACLES])}."


def _lowered(sentence: str) -> str:
    """Return a sentence to be read on after a colon: small first letter unless the first word is all capitals."""
    word = sentence.split(" ", 1)[0]
    return sentence if len(word) > 1 and word.isupper() else sentence[:1].lower() + sentence[1:]


def _choice(result: Result, name: Alternative) -> str:
    way = result.alternatives[ALTERNATIVES.index(name)]
    only = ", cooling only" if _asks_heat(result) and is_cooling_only(way) else ""
    return f"{DOING[name]} ({lifetime_money(_cost(result, name))}{only})"


def shortcomings(result: Result, name: Alternative, look: Look) -> tuple[str, ...]:
    """Return all that an alternative does not do, in the fixed order: allowed, does the job, in time, within cash."""
    way = result.alternatives[ALTERNATIVES.index(name)]
    found: list[str] = []
    if way.standing in {Standing.NOT_ALLOWED, Standing.UNKNOWN}:
        found.append(f"{STANDING_WORDS[way.standing]}.")
    found += _service_gaps(result, way, look)
    if not bool(way.is_in_time[0]):
        found.append("Comes after this year's hot season.")
    if not bool(way.is_within_cash[0]):
        found.append(
            f"Takes {first_cost_money(float(way.cash_first_cost_usd[0]))} in cash, more than you said you can spend."
        )
    return tuple(found)


def _service_gaps(result: Result, way: AlternativeResult, look: Look) -> list[str]:
    found = []
    hot, cold = float(way.unmet_cooling_h[0]), float(way.unmet_heating_h[0])
    wet = float(way.unmet_moisture_kg_per_yr[0])
    if hot >= NOTICED_H:
        found.append(f"Leaves the room too warm for about {hours(hot)} a year.")
    if _asks_heat(result) and is_cooling_only(way):
        found.append("Cools only: all heat still comes from what you have.")
    elif _asks_heat(result) and cold >= NOTICED_H:
        found.append(f"In about {hours(cold)} of the coldest weather a year, other heat must help.")
    if wet >= NOTICED_KG:
        found.append(f"Leaves about {measure(wet, Quantity.WATER, look.units)} of moisture a year for a dehumidifier.")
    if way.name in {Alternative.SELF_INSTALL, Alternative.CONTRACTED_INSTALL}:
        found += closed_door_lines(result)
    return found


def shortcoming(result: Result, name: Alternative, look: Look) -> str:
    """Return the one line on a card: the first thing that an alternative does not do."""
    found = shortcomings(result, name, look)
    return found[0] if found else "Leaves nothing out that you asked for."


def closed_door_lines(result: Result) -> list[str]:
    """Return one line for the rooms that a closed door cuts off; none where all share the air."""
    loads = result.rooms
    closed = [name for name, served in zip(loads.name, loads.is_served, strict=True) if not served]
    if not closed:
        return []
    verb = "stays warm: its door is" if len(closed) == 1 else "stay warm: their doors are"
    return [f"{listed(closed)} {verb} usually closed, so one indoor unit can't be counted on there."]


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


def own_time_text(result: Result) -> str:
    """Return what own hours pay compared with hiring, mishap allowance taken off; empty where no own hours go in."""
    own, hired = result.alternatives[SELF], result.alternatives[HIRED]
    spent_h = float(own.own_hours_h[0])
    if spent_h <= 0.0:
        return ""
    saved = float(hired.cash_first_cost_usd[0] - own.cash_first_cost_usd[0])
    if saved <= 0.0:
        return f"Your own {hours(spent_h)} save nothing compared with hiring."
    return (
        f"Your own {hours(spent_h)} pay about {money(two_digits(saved / spent_h))} each compared with hiring, "
        f"after an allowance for mishaps."
    )


def most_cash_text(result: Result, name: Alternative) -> str:
    """Return the cash to expect before the room is cool; of a result at draws, the amount that 19 of 20 stay below."""
    cash = result.alternatives[ALTERNATIVES.index(name)].cash_first_cost_usd
    if len(cash) == 1:
        return f"The cash you should expect to need is {first_cost_money(float(cash[0]))}."
    most = float(np.quantile(cash, MOST_CASH_SHARE))
    return f"The most cash you should expect to need is {first_cost_money(most)}."


def gate_text(verdict: Verdict, name: Alternative) -> str:
    """Return why an alternative stands aside, in the fixed order of reasons; empty where it passes all."""
    reasons = [REASON_WORDS[code] for code in verdict.reasons[ALTERNATIVES.index(name)]]
    return f"“{NAMES[name]}”: {listed(reasons)}." if reasons else ""


def answers_text(n_yours: int, n_usual: int, n_not_known: int) -> str:
    """Return how much of an answer is the reader's own.

    Examples
    --------
    >>> answers_text(9, 30, 3), answers_text(1, 30, 0)
    ('made from 9 answers, 30 usual, 3 not known', 'made from 1 answer, 30 usual, 0 not known')
    """
    return f"made from {n_yours} {plural('answer', n_yours)}, {n_usual} usual, {n_not_known} not known"


def strip_text(n_yours: int, n_usual: int, n_not_known: int) -> str:
    """Return the same for the strip at the top of every page.

    Examples
    --------
    >>> strip_text(5, 32, 4)
    '5 of your answers, 32 usual, 4 not known'
    """
    return f"{n_yours} of your {plural('answer', n_yours)}, {n_usual} usual, {n_not_known} not known"
