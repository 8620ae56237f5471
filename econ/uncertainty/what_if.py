"""What would have to be different for the choice to change: tipping points, years, swings and a map of two inputs."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.case.choices import SAID, code
from econ.case.form import field_at, is_asked
from econ.evaluate.evaluate import evaluate
from econ.evaluate.sheet import Entry, Sheet, point, sheet_of
from econ.evaluate.structure import Structure
from econ.kernel.alternative import ALTERNATIVES, HIRED, Alternative
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.break_even import BreakEven, break_even
from econ.uncertainty.sensitivity import Map, Swings, swings, two_way

QUOTE: Final = "quote.total_usd"
LEVERS: Final = (
    QUOTE,
    "work.hour_value_usd_per_h",
    "prices.electricity_usd_per_kwh",
    "kit.price_usd",
    "window.price_usd",
    "work.mishap_usd",
    "kit.life_yr",
    "money.discount_rate_real_frac",
    "use.cooling_setpoint_c",
    "place.warming_offset_k",
)
"""Inputs that people ask about, in the order in which they are told."""

FACTOR: Final = 4.0
"""A search goes to four times the likely value, and to the ends of the range where these lie farther out."""

LEAST_HIGH: Final = {"work.hour_value_usd_per_h": 200.0, "work.mishap_usd": 5_000.0, QUOTE: 20_000.0}
"""Where a search ends at least, as four times nothing is nothing. [any]"""

YEARS: Final = (*range(1, 21), 25, 30)
"""Lengths of stay tried. [year]"""

MAP_POINTS: Final = 21
"""Points along each side of a map."""


@dataclass(frozen=True, slots=True)
class Tip:
    """Where one input turns the choice.

    Attributes
    ----------
    path : str
        The input.
    now, value : float
        Likely value; value at which another way becomes the cheapest, NaN where none does. [any]
    low, high : float
        Ends of the search. [any]
    winner : Alternative or None
        Who is cheapest beyond it; None where nothing turns.
    is_within_range : bool
        Whether the tip lies in the range that is thought possible.
    """

    path: str
    now: float
    value: float
    low: float
    high: float
    winner: Alternative | None
    is_within_range: bool


@dataclass(frozen=True, slots=True, eq=False)
class WhatIf:
    """What would change the choice.

    Attributes
    ----------
    winner : Alternative
        Cheapest of the ways that may be taken, likely values.
    tips : tuple of Tip
        By lever, in the order of `LEVERS`.
    years : tuple of (int, Alternative)
        Cheapest way for each length of stay. [year]
    swings : Swings
        How far each input alone moves the lead of the winner over the next.
    map : Map
        Position in ALTERNATIVES of the cheapest way over two levers, as numbers.
    map_paths : tuple of str
        Input across and input up.
    """

    winner: Alternative
    tips: tuple[Tip, ...]
    years: tuple[tuple[int, Alternative], ...]
    swings: Swings
    map: Map
    map_paths: tuple[str, str]


@dataclass(frozen=True, slots=True)
class Race:
    """Who may win: a case, and the ways that take part in the choice."""

    structure: Structure
    sheet: Sheet
    tables: Tables
    eligible: tuple[bool, ...]

    def cost_usd(self, values: Mapping[str, FloatArray]) -> FloatArray:
        """Return lifetime cost, infinite for ways that take no part, shape (A, B)."""
        lcc = evaluate(self.structure, values, self.tables).measures.lcc_usd
        cost: FloatArray = np.where(np.array(self.eligible)[:, None], lcc, np.inf)
        return cost

    def lead_usd(self, values: Mapping[str, FloatArray], winner: int) -> FloatArray:
        """Return how much cheaper one way is than the cheapest of the others, shape (B,)."""
        cost = self.cost_usd(values)
        lead: FloatArray = np.delete(cost, winner, axis=0).min(axis=0) - cost[winner]
        return lead

    def winner(self, values: Mapping[str, FloatArray]) -> IntArray:
        """Return the position of the cheapest way, shape (B,)."""
        cheapest: IntArray = np.argmin(self.cost_usd(values), axis=0)
        return cheapest


def what_if(answer: Answer, tables: Tables) -> WhatIf | None:
    """Return what would change the choice of an answer.

    Parameters
    ----------
    answer : Answer
        The case as it stands.
    tables : Tables
        The same tables it was computed with.

    Returns
    -------
    found : WhatIf or None
        None where fewer than two ways may be taken: then no number changes the choice.
    """
    if answer.verdict.winner is None or answer.verdict.runner_up is None:
        return None
    race = Race(answer.structure, answer.sheet, tables, answer.verdict.eligible)
    winner = ALTERNATIVES.index(answer.verdict.winner)
    found = swings(race.sheet, lambda values: race.lead_usd(values, winner))
    across, up = _two_levers(found)
    return WhatIf(
        winner=answer.verdict.winner,
        tips=tips(race, winner),
        years=winners_by_year(race),
        swings=found,
        map=two_way(
            race.sheet,
            lambda values: race.winner(values).astype(np.float64),
            (across, _grid(race.sheet, across)),
            (up, _grid(race.sheet, up)),
        ),
        map_paths=(across, up),
    )


def tips(race: Race, winner: int) -> tuple[Tip, ...]:
    """Return the tipping point of every lever the case has.

    Parameters
    ----------
    race : Race
        Who may win.
    winner : int
        Position of the winner in ALTERNATIVES. [dimensionless]

    Returns
    -------
    tips : tuple of Tip
        In the order of `LEVERS`; that of the quote is for a complete one where there is none.
    """
    paths = [path for path in LEVERS if path in race.sheet.place]
    plain = _tips_of(race, winner, paths)
    quoted = _quoted(race) if QUOTE not in paths and race.eligible[HIRED] else None
    return (*(_tips_of(quoted, winner, [QUOTE]) if quoted is not None else ()), *plain)


def tip_of(answer: Answer, tables: Tables, path: str) -> Tip | None:
    """Return where any one input turns the choice.

    Parameters
    ----------
    answer : Answer
        The case as it stands.
    tables : Tables
        The same tables it was computed with.
    path : str
        An input with a range.

    Returns
    -------
    tip : Tip or None
        None where fewer than two ways may be taken.
    """
    if answer.verdict.winner is None or answer.verdict.runner_up is None:
        return None
    race = Race(answer.structure, answer.sheet, tables, answer.verdict.eligible)
    return _tips_of(race, ALTERNATIVES.index(answer.verdict.winner), [path])[0]


def _tips_of(race: Race, winner: int, paths: list[str]) -> tuple[Tip, ...]:
    search = {path: search_ends(race.sheet, path) for path in paths}
    found = break_even(race.sheet, lambda values: race.lead_usd(values, winner), search)
    beyond = _beyond(race, found)
    return tuple(_tip(race.sheet, found, place, beyond[place]) for place in range(len(paths)))


def _tip(sheet: Sheet, found: BreakEven, place: int, beyond: int) -> Tip:
    line, value = sheet.entry(found.path[place]), float(found.value[place])
    return Tip(
        path=found.path[place],
        now=line.likely,
        value=value,
        low=float(found.low[place]),
        high=float(found.high[place]),
        winner=ALTERNATIVES[beyond] if found.exists[place] else None,
        is_within_range=bool(line.spread.low <= value <= line.spread.high),
    )


def _beyond(race: Race, found: BreakEven) -> IntArray:
    """Return who is cheapest just past each break-even value, seen from the likely one: one batch."""
    likely = np.array([race.sheet.entry(path).likely for path in found.path])
    reach = found.high - found.low
    past = np.where(found.exists, found.value + np.sign(found.value - likely) * 1e-3 * reach, likely)
    values = point(race.sheet)
    for place, path in enumerate(found.path):
        column = np.full(len(found.path), likely[place])
        column[place] = np.clip(past[place], found.low[place], found.high[place])
        values[path] = column
    return race.winner(values)


def search_ends(sheet: Sheet, path: str) -> tuple[float, float]:
    """Return the ends between which a tipping point is looked for.

    Parameters
    ----------
    sheet : Sheet
        The inputs.
    path : str
        One of them.

    Returns
    -------
    ends : tuple of float
        The range itself of a figure that no form asks for; of others the range, widened to a quarter and four times
        the likely value (to 0 for money), within the field's bounds; temperatures keep to it a third wider. [any]
    """
    spread = sheet.entry(path).spread
    if not is_asked(path):
        return spread.low, spread.high
    field = field_at(path)
    if field.unit in ("degC", "K"):
        reach = max(spread.high - spread.low, 1.0)
        low, high = spread.low - reach, spread.high + reach
    else:
        is_money = field.unit.startswith("USD") and field.unit != "USD/kWh"
        low = 0.0 if is_money else min(spread.low, spread.likely / FACTOR)
        high = max(spread.high, spread.likely * FACTOR, LEAST_HIGH.get(path, 0.0))
    return max(low, field.low), min(high, field.high)


def _quoted(race: Race) -> Race:
    """Return the same race with a complete quote at what the contractor's own parts come to."""
    hired = evaluate(race.structure, point(race.sheet), race.tables).alternatives[HIRED]
    total = float(hired.cash_first_cost_usd[0])
    said = dict.fromkeys(("equipment", "electrical", "permit", "removal", "warranty"), SAID[0])
    codes = {f"quote.{part}": code(f"quote.{part}", option) for part, option in said.items()}
    numbers = {QUOTE: total, **codes}
    sheet = _with_lines(race.sheet, numbers)
    return replace(race, structure=replace(race.structure, has_quote=True), sheet=sheet)


def _with_lines(sheet: Sheet, numbers: Mapping[str, float]) -> Sheet:
    """Return a sheet with some lines set to one number each, added where they are missing."""
    entries = {path: sheet.entry(path) for path in sheet.path if path not in numbers}
    added = {path: Entry(Spread(number, number, number, "what if"), "") for path, number in numbers.items()}
    return sheet_of(entries | added)


def winners_by_year(race: Race) -> tuple[tuple[int, Alternative], ...]:
    """Return the cheapest way for each length of stay tried.

    Parameters
    ----------
    race : Race
        Who may win.

    Returns
    -------
    winners : tuple of (int, Alternative)
        By `YEARS`; the years are structure, so each is one small evaluation of a fixed list.
    """
    values = point(race.sheet)
    found = []
    for years in YEARS:
        stay = replace(race, structure=replace(race.structure, study_period_yr=years))
        found.append((years, ALTERNATIVES[int(stay.winner(values)[0])]))
    return tuple(found)


def _two_levers(found: Swings) -> tuple[str, str]:
    """Return the two levers that swing the lead most; the hour and electricity where none does."""
    moving = [path for path in found.path if path in LEVERS]
    first, second = [*moving, "work.hour_value_usd_per_h", "prices.electricity_usd_per_kwh"][:2]
    return (first, second) if first != second else (first, "kit.price_usd")


def _grid(sheet: Sheet, path: str) -> FloatArray:
    low, high = search_ends(sheet, path)
    return np.linspace(low, high, MAP_POINTS)


def is_turned(found: WhatIf) -> BoolArray:
    """Return in which tips another way wins within the range thought possible, shape (n_tip,)."""
    return np.array([tip.is_within_range and tip.winner is not None for tip in found.tips], dtype=np.bool_)
