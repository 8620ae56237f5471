"""What would have to be different, in words and tables."""

from collections.abc import Callable, Mapping
from math import isfinite
from typing import Final

import numpy as np

from econ.case.form import field_at, is_asked
from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, Quantity, listed, money, percent, two_digits, years
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.uncertainty.answer import Answer
from econ.uncertainty.what_if import QUOTE, Tip, WhatIf

MOST_SENTENCES: Final = 3

LEVER_WORDS: Final = {
    QUOTE: "the whole price of hiring",
    "work.hour_value_usd_per_h": "the value of your hour",
    "prices.electricity_usd_per_kwh": "the price of electricity",
    "kit.price_usd": "the price of the kit",
    "window.price_usd": "the price of a window unit",
    "work.mishap_usd": "the cost of a rescue visit",
    "kit.life_yr": "the life of the kit",
    "money.discount_rate_real_frac": "the return you give up",
    "use.cooling_setpoint_c": "the summer temperature you want",
    "place.warming_offset_k": "how much warmer it has become",
}
"""How an input is called within a sentence."""

_BY_UNIT: Final[Mapping[str, Callable[[float, Look], str]]] = {
    "USD": lambda value, _look: money(value),
    "USD/hour": lambda value, _look: f"{money(value)} an hour",
    "USD/kWh": lambda value, _look: f"${value:.2f} a kWh",
    "USD/year": lambda value, _look: f"{money(value)} a year",
    "year": lambda value, _look: years(value),
    "degC": lambda value, look: look.measure(value, Quantity.TEMPERATURE),
    "K": lambda value, look: look.measure(value, Quantity.TEMPERATURE_DIFFERENCE),
    "": lambda value, _look: percent(value, 1),
}


_ROUNDED: Final = frozenset({"USD", "USD/hour", "USD/year"})
"""Units whose turning points are told to two digits: what both ways cost is doubtful by far more."""


def value_text(path: str, value: float, look: Look) -> str:
    """Return an input's value as people say it.

    Parameters
    ----------
    path : str
        An input that a form asks for.
    value : float
        In the core's unit. [any]
    look : Look
        Units.
    """
    if not isfinite(value):
        return NONE_TEXT
    shown = _BY_UNIT.get(field_at(path).unit)
    return shown(value, look) if shown else f"{value:g}"


def turning_text(path: str, value: float, look: Look) -> str:
    """Return the value at which a choice turns: money to two digits, as the answer is no surer than that.

    Parameters
    ----------
    path : str
        An input that a form asks for.
    value : float
        In the core's unit. [any]
    look : Look
        Units.
    """
    is_money = field_at(path).unit in _ROUNDED
    return value_text(path, two_digits(value) if is_money else value, look)


def any_tip(tip: Tip, words: str, unit: str, look: Look) -> str:
    """Return where one figure of any kind turns the choice, as a sentence.

    Parameters
    ----------
    tip : Tip
        Its tipping point.
    words : str
        What it is called.
    unit : str
        Its unit, where no form asks for it.
    look : Look
        Units.
    """

    def told(value: float) -> str:
        return value_text(tip.path, value, look) if is_asked(tip.path) else f"{value:,.4g} {unit}".strip()

    if tip.winner is None:
        return (
            f"{words}: between {told(tip.low)} and {told(tip.high)} it does not change the choice; now {told(tip.now)}."
        )
    direction = "below" if tip.value < tip.now else "above"
    possible = "" if tip.is_within_range else ", outside the range thought possible"
    is_asked_for = is_asked(tip.path)
    value = turning_text(tip.path, tip.value, look) if is_asked_for else told(two_digits(tip.value))
    turn = f"{direction} about {value}{possible} “{NAMES[tip.winner]}” becomes the cheapest"
    return f"{words}: {turn}; now {told(tip.now)}."


def words_of(path: str) -> str:
    """Return what an input is called within a sentence."""
    return LEVER_WORDS.get(path, field_at(path).label.lower())


def sentences(found: WhatIf | None, look: Look) -> tuple[str, ...]:
    """Return up to three sentences: what turns the choice, most likely first, and what does not.

    Parameters
    ----------
    found : WhatIf or None
        None where only one way, or none, may be taken.
    look : Look
        Units.
    """
    if found is None:
        return (
            "Nothing to try: fewer than two ways pass what comes before cost. The answer page says what stops others.",
        )
    turning = sorted((tip for tip in found.tips if tip.winner), key=lambda tip: (not tip.is_within_range, _reach(tip)))
    told = [_turn(tip, look) for tip in turning[: MOST_SENTENCES - 1]]
    if stay := _stay(found):
        told = [stay, *told][: MOST_SENTENCES - 1]
    if not told:
        told = ["Nothing you might reasonably find out would change the choice."]
    still = [tip for tip in found.tips if tip.winner is None]
    return (*told, *([_nothing(still[:2], look)] if still else []))


def _reach(tip: Tip) -> float:
    return abs(tip.value - tip.now) / max(tip.high - tip.low, 1e-12)


def _turn(tip: Tip, look: Look) -> str:
    direction = "drops below" if tip.value < tip.now else "rises above"
    assert tip.winner is not None
    return (
        f"“{NAMES[tip.winner]}” becomes the cheapest only if {words_of(tip.path)} {direction} about "
        f"{turning_text(tip.path, tip.value, look)}."
    )


def _stay(found: WhatIf) -> str:
    """Return from how short a stay on another way is the cheapest; empty where none is."""
    others = [(stay, winner) for stay, winner in found.years if winner != found.winner]
    if not others:
        return ""
    stay, winner = others[-1]
    shorter = all(other[1] == winner for other in found.years if other[0] <= stay)
    if shorter:
        return f"“{NAMES[winner]}” is the cheapest if you leave within about {years(stay)}."
    return f"The cheapest way changes with the years you stay: it is “{NAMES[winner]}” at {years(stay)}."


def _nothing(still: list[Tip], look: Look) -> str:
    parts = [
        f"{words_of(tip.path)} between {value_text(tip.path, tip.low, look)} and {value_text(tip.path, tip.high, look)}"
        for tip in still
    ]
    return f"Nothing about {listed(parts, 'or')} changes it."


def tips_table(found: WhatIf, look: Look) -> Columns:
    """Return tipping points as a table; where nothing turns, between which ends was looked.

    Parameters
    ----------
    found : WhatIf
        The tipping points.
    look : Look
        Units.
    """
    tips = found.tips
    return {
        "If this changes": [words_of(tip.path) for tip in tips],
        "Now": [value_text(tip.path, tip.now, look) for tip in tips],
        "Turns at": [_turns_at(tip, look) for tip in tips],
        "Then cheapest": [NAMES[tip.winner] if tip.winner else NAMES[found.winner] for tip in tips],
        "Within its range": [("yes" if tip.is_within_range else "no") if tip.winner else NONE_TEXT for tip in tips],
    }


def _turns_at(tip: Tip, look: Look) -> str:
    if tip.winner:
        return f"about {turning_text(tip.path, tip.value, look)}"
    low, high = (value_text(tip.path, end, look) for end in (tip.low, tip.high))
    return f"none between {low} and {high}"


def years_table(found: WhatIf) -> Columns:
    """Return the cheapest way for each length of stay."""
    return {
        "If you stay": [years(float(stay)) for stay, _ in found.years],
        "Cheapest": [NAMES[winner] for _, winner in found.years],
    }


def moved_winner(answer: Answer, then: Result) -> Alternative | None:
    """Return the cheapest of the ways that may be taken once figures have moved; None where none may."""
    eligible = np.array(answer.verdict.eligible)
    if not eligible.any():
        return None
    return ALTERNATIVES[int(np.argmin(np.where(eligible, then.measures.lcc_usd[:, 0], np.inf)))]


def moved_sentence(answer: Answer, then: Result) -> str:
    """Return which way is the cheapest with the values tried, and whether that is another one."""
    winner = moved_winner(answer, then)
    if winner is None:
        return "No way is open, so no price decides."
    if winner == answer.verdict.winner:
        return f"With these values “{NAMES[winner]}” is still the cheapest."
    return f"With these values the cheapest changes: “{NAMES[winner]}”."


def moved_table(answer: Answer, then: Result) -> Columns:
    """Return lifetime cost now and with the values tried, by way."""
    before, after = answer.result.measures.lcc_usd[:, 0], then.measures.lcc_usd[:, 0]
    return {
        "": [NAMES[name] for name in ALTERNATIVES],
        "Lifetime cost now": [money(float(value)) for value in before],
        "With these values": [money(float(value)) for value in after],
        "Change": [money(float(value)) for value in after - before],
    }
