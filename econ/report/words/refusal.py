"""The verdict where self-install, or everything, is shut."""

from typing import Final

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, SELF, Alternative
from econ.report.numbers import lifetime_money, listed, plain_number, plural
from econ.report.words.standing import DOING, asks_heat, by_cost, is_cooling_only, lifetime_usd
from econ.uncertainty.verdict import Verdict

COUNTS: Final = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine")

MOST_OBSTACLES: Final = 3
"""Obstacles told in a verdict; the rest are counted and stand on the card."""


def none_open(result: Result) -> str:
    """Return the verdict where every way is shut, with the first reason of each."""
    first = [way.reasons[0].rstrip(".") for way in result.alternatives if way.reasons]
    why = f" What stands in the way: {'; '.join(dict.fromkeys(first))}." if first else ""
    return f"None of these is open yet.{why}"


def not_allowed(result: Result, verdict: Verdict) -> str:
    """Return the verdict where self-install is shut: why, and what is left."""
    left = [_choice(result, name) for name in by_cost(result, verdict)]
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
    return f" {number} {plural('thing', count)} {verb} in the way{first}: {'; '.join(_told(reasons[:MOST_OBSTACLES]))}."


def _told(reasons: list[str]) -> list[str]:
    """Return reasons as they stand, numbered where one of several has a colon of its own."""
    is_plain = len(reasons) == 1 or not any(":" in reason for reason in reasons)
    return reasons if is_plain else [f"({place}) {reason}" for place, reason in enumerate(reasons, 1)]


def _lowered(sentence: str) -> str:
    """Return a sentence to be read on after a colon: small first letter unless the first word is all capitals."""
    word = sentence.split(" ", 1)[0]
    return sentence if len(word) > 1 and word.isupper() else sentence[:1].lower() + sentence[1:]


def _choice(result: Result, name: Alternative) -> str:
    way = result.alternatives[ALTERNATIVES.index(name)]
    only = ", cooling only" if asks_heat(result) and is_cooling_only(way) else ""
    return f"{DOING[name]} ({lifetime_money(lifetime_usd(result, name))}{only})"
