"""The whole answer to a case: likely values, draws around them, and the verdict."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Final

import numpy as np

from econ.case.schema import Case
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.structure import Structure
from econ.kernel.arrays import BoolArray
from econ.tables.loaders import Tables
from econ.uncertainty.chance import Chance, chance_of_lowest
from econ.uncertainty.dates import with_first_cool_days
from econ.uncertainty.drawn import Drawn, drawn_rows
from econ.uncertainty.draws import draw_count
from econ.uncertainty.find_first import Question, Worth, worth_knowing
from econ.uncertainty.verdict import Candidates, Verdict, eligible, verdict

FULL_DRAWS: Final = 4096
"""Draws unless another number is asked for."""

HOURLY_DRAWS: Final = 1024
"""The same with an hourly file, whose 365 days take four times as long as 84 day types."""


@dataclass(frozen=True, slots=True, eq=False)
class Answer:
    """What pages, reports and the command line draw.

    Attributes
    ----------
    case : Case
        What the user said.
    structure : Structure
        What picks formulas.
    sheet : Sheet
        Every input with its range and whose it is.
    decision_date : date
        Year 0 of every alternative.
    result : Result
        At likely values, one row.
    drawn : Drawn or None
        At the draws; None where none were asked for.
    chance : Chance or None
        How often each eligible alternative costs least.
    verdict : Verdict
        Which way to go and how firm that is.
    verdict_at_zero_hour : Verdict
        The same with own hours at nothing.
    worth : tuple of Worth
        Inputs that are worth knowing before deciding, the most valuable first.
    draws_used : int
        Draws behind the chance.
    seed : int
        Their seed.
    """

    case: Case
    structure: Structure
    sheet: Sheet
    decision_date: date
    result: Result
    drawn: Drawn | None
    chance: Chance | None
    verdict: Verdict
    verdict_at_zero_hour: Verdict
    worth: tuple[Worth, ...]
    draws_used: int
    seed: int


def usual_draws(case: Case) -> int:
    """Return how many draws to make where no number is asked for."""
    return HOURLY_DRAWS if case.place.hourly_file else FULL_DRAWS


def answer(case: Case, tables: Tables, today: date, draws: int = FULL_DRAWS, seed: int = 1) -> Answer:
    """Return the answer to a case.

    Parameters
    ----------
    case : Case
        What the user said.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    draws : int
        Draws wanted, rounded up to a power of two; 0 for none.
    seed : int
        Seed of the draws.

    Returns
    -------
    answer : Answer
        The same for the same arguments.
    """
    structure, sheet = prepared(case, tables, today)
    result = evaluate(structure, point(sheet), tables)
    candidates = candidates_of(result)
    at_zero = replace(candidates, lcc_usd=result.lcc_at_zero_hour_usd[:, 0])
    n_draw = draw_count(draws)
    spread = drawn_rows(structure, sheet, tables, n_draw, seed) if n_draw else None
    chances: tuple[Chance | None, Chance | None] = (None, None)
    if spread is not None:
        is_eligible = eligible(candidates)
        chances = (
            chance_of_lowest(spread.measures.lcc_usd, is_eligible),
            chance_of_lowest(spread.lcc_at_zero_hour_usd, is_eligible),
        )
    said = case.place.decision_date
    return Answer(
        case=case,
        structure=structure,
        sheet=sheet,
        decision_date=date.fromisoformat(said) if said else today,
        result=with_first_cool_days(result, structure, sheet),
        drawn=spread,
        chance=chances[0],
        verdict=verdict(candidates, chances[0]),
        verdict_at_zero_hour=verdict(at_zero, chances[1]),
        worth=() if spread is None else _worth(structure, sheet, tables, spread, (eligible(candidates), seed)),
        draws_used=n_draw,
        seed=seed,
    )


def _worth(
    structure: Structure, sheet: Sheet, tables: Tables, spread: Drawn, choice: tuple[BoolArray, int]
) -> tuple[Worth, ...]:
    """Return what is worth knowing, with the ways that may be chosen and the seed of the draws."""
    question = Question(sheet, spread.measures.lcc_usd, *choice)
    return worth_knowing(question, lambda values: evaluate(structure, values, tables).measures.lcc_usd)


def candidates_of(result: Result) -> Candidates:
    """Return what the verdict looks at: the first row of a result."""
    ways = result.alternatives
    return Candidates(
        standing=tuple(way.standing for way in ways),
        meets_need=np.array([way.meets_need[0] for way in ways]),
        is_in_time=np.array([way.is_in_time[0] for way in ways]),
        is_within_cash=np.array([way.is_within_cash[0] for way in ways]),
        lcc_usd=result.measures.lcc_usd[:, 0],
    )
