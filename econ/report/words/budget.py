"""What money does among many rooms, in sentences: one budget, the next thousand, and a list ranked by payback."""

from typing import Final

import numpy as np

from econ.portfolio.frontier import Frontier, More, Ranking
from econ.portfolio.options import Options
from econ.portfolio.plan import Plan
from econ.report.numbers import listed, money, plain_number, plural
from econ.report.words.rooms import room_name

MOST_NAMED: Final = 4
"""Rooms told by name."""

LEAST_USD: Final = 0.5
"""From this much on one choice is worth more than another."""


def budget_sentence(found: Frontier, at: int, n_room: int) -> str:
    """Return what one budget of the coming year gives."""
    count, worth = int(found.room_count[at]), float(found.worth_usd[at])
    hours = plain_number(float(found.spared_h[at]))
    with_money = f"With {money(float(found.budget_usd[at]))} this year"
    whole = f"the whole plan, later years in it, is worth {money(worth)} over keeping everything"
    if not count:
        return f"{with_money} nothing is done this year; {whole}."
    return (
        f"{with_money}, {count} of {n_room} {plural('room', n_room)} {'is' if count == 1 else 'are'} done this year, "
        f"which takes away {hours} hours too hot a year; {whole}."
    )


def next_sentence(found: More, plan: Plan) -> str:
    """Return what some more money in the coming year buys, and which rooms change."""
    more = money(found.budget_usd)
    if not len(found.rooms) or found.worth_usd < LEAST_USD:
        return f"A further {more} this year buys nothing that is worth more."
    hours = f" and takes away {plain_number(found.spared_h)} more hours too hot this year" if found.spared_h > 0 else ""
    return (
        f"A further {more} this year is worth {money(found.worth_usd)} more{hours}: "
        f"it changes {_named(found.rooms, plan)}."
    )


def _named(rooms: np.ndarray, plan: Plan) -> str:
    """Return rooms by name, the first few."""
    names = [room_name(plan.rooms.table, int(row)) for row in rooms[:MOST_NAMED]]
    left = len(rooms) - len(names)
    return listed([*names, *([f"{left} more"] if left else [])])


def ranking_sentences(found: Ranking, worth_usd: float, options: Options) -> list[str]:
    """Return what a list ranked by payback does with the same money, and why the choice differs."""
    if worth_usd - found.worth_usd < LEAST_USD:
        return ["A list ranked by payback would be worth as much here; that is not so in general."]
    count = len(found.rooms)
    first = (
        f"A list ranked by payback, soonest first, would spend {money(found.cash_usd)} within the same limits and be "
        f"worth {money(found.worth_usd)}, which is {money(worth_usd - found.worth_usd)} less than this plan; "
        f"it decides {count} {plural('room', count)} otherwise."
    )
    why = (
        "Payback says how soon money comes back, not how much comes; nor does it see what rooms share or what runs out"
    )
    hours = " It counts no hour too hot, which this plan does at your price." if options.hot_hour_usd > 0.0 else ""
    return [first, f"{why}: money, hours, panels.{hours}"]
