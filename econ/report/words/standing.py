"""How alternatives are called, how they stand, and which test each fails: the words that all sentences share."""

from typing import Final

import numpy as np

from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES, PARTIES, Alternative, Party, Standing
from econ.report.numbers import listed
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


_WINDOW_STANDING: Final[dict[Standing, str]] = {
    Standing.NOT_ALLOWED: "Cannot go in here",
    Standing.UNKNOWN: "Not known yet whether it can go in",
}
_WINDOW_REASONS: Final[dict[str, str]] = {
    "not_allowed": "it cannot go in here",
    "standing_unknown": "whether it can go in is not known yet",
}
"""What shuts window units is room, the way out or the wall, more often than a rule."""


def standing_words(way: AlternativeResult) -> str:
    """Return how an alternative stands."""
    own = _WINDOW_STANDING if way.name == Alternative.WINDOW_UNITS else {}
    return own.get(way.standing, STANDING_WORDS[way.standing])


def reason_words(name: Alternative, code: str) -> str:
    """Return which test an alternative fails."""
    own = _WINDOW_REASONS if name == Alternative.WINDOW_UNITS else {}
    return own.get(code, REASON_WORDS[code])


def alone_text(verdict: Verdict, position: int) -> str:
    """Return that no other way passes the tests before cost, so that being cheapest says nothing; empty otherwise."""
    is_alone = verdict.eligible[position] and sum(verdict.eligible) == 1
    return "the only one in the running" if is_alone else ""


def is_cooling_only(way: AlternativeResult) -> bool:
    """Return whether what an alternative puts in gives no heat."""
    return not bool(np.nan_to_num(way.capability.heat_w).max(initial=0.0) > 0.0)


def asks_heat(result: Result) -> bool:
    """Return whether the case asks for heat."""
    return bool(result.need_heat_kwh[0].sum() > 0.0)


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


def gate_text(verdict: Verdict, name: Alternative) -> str:
    """Return why an alternative stands aside, in the fixed order of reasons; empty where it passes all."""
    reasons = [reason_words(name, code) for code in verdict.reasons[ALTERNATIVES.index(name)]]
    return f"“{NAMES[name]}”: {listed(reasons)}." if reasons else ""


def lifetime_usd(result: Result, name: Alternative) -> float:
    """Return the lifetime cost of an alternative, likely values. [USD]"""
    return float(result.measures.lcc_usd[ALTERNATIVES.index(name), 0])


def named_winner(verdict: Verdict) -> Alternative:
    """Return the alternative a verdict names; there must be one."""
    if verdict.winner is None:
        raise ValueError("A verdict without a winner has no wording of this kind.")
    return verdict.winner


def by_cost(result: Result, verdict: Verdict) -> list[Alternative]:
    """Return the alternatives that pass every test, cheapest first."""
    fitting = [name for name, fits in zip(ALTERNATIVES, verdict.eligible, strict=True) if fits]
    return sorted(fitting, key=lambda name: lifetime_usd(result, name))
