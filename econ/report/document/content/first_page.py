"""Page one: it stands alone, says what to do and how sure that is, who filled it in and how much of it is usual."""

from collections.abc import Sequence
from math import isfinite
from typing import Final

from econ.evaluate.plan_b import PlanB, plans_b
from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.caution import Severity
from econ.report import numbers
from econ.report.document.block import Block, Grid, Heading, PageEnd, Points, Sentence, Setting, Tone
from econ.report.document.content.basis import Basis, ends
from econ.report.document.content.signing import is_signed
from econ.report.style import NAMES
from econ.report.words import beneath, find_first, gaps, quote, standing
from econ.report.words.verdict import answer_text
from econ.report.words.waiting import cool_day_sentence
from econ.report.words.work_risk import running_d, way_risks

MOST_FINDINGS: Final = 5
MOST_MISHAPS: Final = 3
PLAN_SHARES: Final = (0.17, 0.07, 0.33, 0.08, 0.14, 0.1, 0.11)
NOTHING_NEW: Final = "nothing new"


def head(basis: Basis, whom: str) -> list[Block]:
    """Return the title and the line on what it was made from.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    whom : str
        The reader, as in "the owner".
    """
    by = basis.filled_in_by or "____________________"
    station = basis.result.climate.station
    decided = basis.look.day(0.0)
    return [
        Heading(basis.name, 1),
        Sentence(
            f"For {whom}. Filled in by {by}. Decided as of {decided} {basis.look.decision.year}; weather of {station}. "
            f"{basis.made_from}",
            Tone.SMALL,
        ),
    ]


def verdict_blocks(basis: Basis) -> list[Block]:
    """Return the verdict word for word as on the answer page, and what stands beneath it."""
    under = " ".join(beneath.beneath(basis.answer))
    said: list[Block] = [Sentence(answer_text(basis.answer), Tone.VERDICT)]
    return [*said, Sentence(under)] if under else said


def ways_grid(basis: Basis) -> Grid:
    """Return the four ways side by side."""
    result = basis.result
    rows = (
        ("May you do it", *(standing.STANDING_WORDS[way.standing] for way in result.alternatives)),
        ("Cash now", *(numbers.first_cost_money(float(way.cash_first_cost_usd[0])) for way in result.alternatives)),
        ("Your hours", *(numbers.hours(float(way.own_hours_h[0])) for way in result.alternatives)),
        ("First cool day", *(_cool_day(basis, way) for way in result.alternatives)),
        ("All-in, a year", *(_yearly(basis, at) for at in range(len(ALTERNATIVES)))),
        (f"Over {result.study_period_yr} years", *(_lifetime(basis, at) for at in range(len(ALTERNATIVES)))),
        ("Cheapest", *(_chance(basis, at) for at in range(len(ALTERNATIVES)))),
        ("What it does not do", *(gaps.shortcoming(result, name, basis.look) for name in ALTERNATIVES)),
        ("Stands aside because", *(_out(basis, at) for at in range(len(ALTERNATIVES)))),
    )
    base = {name: " (base)" if name == result.base_case else "" for name in ALTERNATIVES}
    titles = ("", *(f"{NAMES[name]}{base[name]}" for name in ALTERNATIVES))
    kept = tuple(row for row in rows if any(cell for cell in row[1:]))
    return Grid(titles, kept, (0.15, 0.21, 0.21, 0.22, 0.21), setting=Setting.SMALL)


def _cool_day(basis: Basis, way: AlternativeResult) -> str:
    return basis.look.day(float(way.in_service_d[0])) if way.in_service_exists else NOTHING_NEW


def _yearly(basis: Basis, at: int) -> str:
    return numbers.first_cost_money(float(basis.result.measures.annualised_cost_usd_per_yr[at, 0]))


def _lifetime(basis: Basis, at: int) -> str:
    low, high = ends(basis.doubt.measures.lcc_usd[at])
    return numbers.lifetime_range(float(basis.result.measures.lcc_usd[at, 0]), low, high)


def _chance(basis: Basis, at: int) -> str:
    chance = basis.answer.verdict.chance[at]
    if chance == chance:  # noqa: PLR0124 - NaN alone differs from itself
        return standing.alone_text(basis.answer.verdict, at) or numbers.in_tries(chance)
    return "not tried" if basis.answer.verdict.eligible[at] else "not in the running"


def _out(basis: Basis, at: int) -> str:
    return numbers.listed([standing.REASON_WORDS[code] for code in basis.answer.verdict.reasons[at]])


def stops_blocks(basis: Basis, most: int = MOST_FINDINGS) -> list[Block]:
    """Return the gravest findings in a line each, stops first, and how many there are in all."""
    found = basis.result.cautions
    stops = [each for each in found if each.severity is Severity.HOLD_POINT]
    signed = {each.code for each in stops if is_signed(basis, each)}
    shown = sorted(found, key=lambda each: each.code in signed)[:most] if signed else found[:most]
    word = {Severity.HOLD_POINT: "Stop", Severity.CAUTION: "Caution", Severity.NOTE: "Note"}
    if not shown:
        return []
    done = f" ({len(signed)} signed)" if signed else ""
    count = f"{len(stops)} {numbers.plural('stop', len(stops))}{done}, {len(found)} findings in all"
    heading = f"Stops and cautions: {count}"
    return [Heading(heading), Points(tuple(f"{word[each.severity]}: {each.message}" for each in shown))]


def dates_block(basis: Basis) -> Block:
    """Return the first cool day of each way, how far it may move, and whether that is in time."""
    told = [cool_day_sentence(basis.result, way, basis.look) for way in basis.result.alternatives]
    return Points(tuple(sentence for sentence in told if sentence))


def find_first_blocks(basis: Basis) -> list[Block]:
    """Return what to find out before spending."""
    cards = find_first.cards(basis.answer)
    said = tuple(
        f"{card.guide.what}. {card.guide.how} About {card.guide.minutes} minutes. {card.change}" for card in cards
    )
    none = find_first.none_text(basis.answer)
    if not said:
        return [Sentence(none)] if none else []
    return [Heading("Find this out first"), Points(said)]


def mishap_blocks(basis: Basis) -> list[Block]:
    """Return what most speaks against the way told, and plan B for it; all of it stands in the appendix."""
    plans = plans_b(basis.work_way, basis.answer.sheet, basis.tables)
    if not plans:
        return []
    points = tuple(_mishap(basis, plan) for plan in plans[:MOST_MISHAPS])
    return [Heading(f"What could go wrong with “{NAMES[basis.work_way.name]}”, and plan B"), Points(points)]


def _mishap(basis: Basis, plan: PlanB) -> str:
    chance = f"chance {numbers.percent(plan.chance_frac)}, " if isfinite(plan.chance_frac) else ""
    cost, days = numbers.first_cost_money(plan.cost_usd.likely), numbers.plain_number(plan.days_d.likely)
    running = basis.look.day(running_d(basis.work_way, plan))
    return f"{plan.label}: {chance}about {cost} and {days} days. Then: {plan.action}. Running by about {running}."


def risk_blocks(basis: Basis) -> list[Block]:
    """Return all that may go wrong in own work and in hired work, plan B, warranty and incentive."""
    blocks: list[Block] = []
    for risk in way_risks(basis.answer, basis.tables):
        columns = {title: [str(cell) for cell in cells] for title, cells in risk.plan_b.items()}
        rows = tuple(zip(*columns.values(), strict=True))
        blocks += [Heading(f"{risk.title}: what may go wrong, and plan B"), Points(risk.sentences)]
        if rows:
            blocks.append(Grid(tuple(columns), rows, PLAN_SHARES, setting=Setting.TINY))
    return blocks


def first_page(basis: Basis, whom: str, more: Sequence[Block] = ()) -> list[Block]:
    """Return page one of a long report.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    whom : str
        The reader, as in "the owner".
    more : sequence of Block
        What this reader wants to see first, in place of what could go wrong, which the appendix holds.
    """
    expired = quote.expired_sentence(basis.answer.case, basis.printed, basis.look.this_year)
    return [
        *head(basis, whom),
        *([Sentence(expired)] if expired and basis.answer.structure.has_quote else []),
        *verdict_blocks(basis),
        ways_grid(basis),
        *more,
        dates_block(basis),
        *([] if more else mishap_blocks(basis)),
        *stops_blocks(basis, MOST_FINDINGS - 2 if more else MOST_FINDINGS),
        *find_first_blocks(basis),
        PageEnd(),
    ]
