"""Many rooms in sentences: what the money does, what stands in the way, who pays and who saves."""

from collections import Counter
from collections.abc import Sequence
from typing import Final

import numpy as np

from econ.case.rooms_file import RefusedRow, RoomTable
from econ.kernel.alternative import ALTERNATIVES, SELF
from econ.portfolio.heads import SharedOutdoor
from econ.portfolio.obstacle import Obstacle, obstacles
from econ.portfolio.options import Options
from econ.portfolio.plan import Plan, must_left
from econ.portfolio.totals import Split, Together, Totals
from econ.report.numbers import money, percent, plain_number, plural
from econ.report.style import NAMES

MOST_SPLITS: Final = 3
"""Flats told one by one."""

_ORDINALS: Final = ("this year", "next year", "in the third year")


def year_words(year: int) -> str:
    """Return a year of a plan in words, 0 the coming one."""
    return _ORDINALS[year] if year < len(_ORDINALS) else f"in year {year + 1}"


def rows_sentence(table: RoomTable) -> str:
    """Return how many rows came in, were taken and were refused."""
    taken = f"{table.n_row:,} {plural('row', table.n_row)} read: {table.n_room:,} taken"
    if not table.refused:
        unknown = f" {table.unknown:,} {plural('cell', table.unknown)} say that nobody knows." if table.unknown else ""
        return f"{taken}, none refused.{unknown}"
    return f"{taken}, {len(table.refused):,} refused. Rooms that were taken are worked out; mend the others below."


def refused_lines(row: RefusedRow) -> list[str]:
    """Return what is wrong with a refused row, each with what to type instead."""
    return [f"{fault.path}: {fault.problem}; we read {fault.got}. {fault.remedy}" for fault in row.faults]


def plan_sentence(plan: Plan, found: Totals) -> str:
    """Return what this year's money does, in one sentence."""
    rooms, budget = plan.rooms.table.n_room, float(plan.limits.budget_usd[0])
    done, cash = int(found.room_count[0]), float(found.cash_usd[0])
    spent = money(cash) if np.isinf(budget) else f"{money(cash)} of {money(budget)}"
    if not done:
        return (
            f"Nothing is done this year: no way in any of the {rooms:,} rooms is worth its price. {_hot_words(found)}"
        )
    return f"{spent} does {done:,} of {rooms:,} {plural('room', rooms)} this year. {_hot_words(found)}"


def _hot_words(found: Totals) -> str:
    if found.hot_before_h <= 0.0:
        return "No room is too hot as it is."
    removed = 1.0 - found.hot_after_h / found.hot_before_h
    whole = plain_number(found.hot_before_h)
    return f"The whole plan removes {percent(removed)} of the {whole} hours a year in which rooms are too hot."


def year_sentence(plan: Plan, found: Totals, year: int) -> str:
    """Return what one year of a plan takes."""
    budget = float(plan.limits.budget_usd[year])
    limit = "" if np.isinf(budget) else f" of {money(budget)}"
    count = int(found.room_count[year])
    parts = [
        f"{count:,} {plural('room', count)}",
        f"{money(float(found.cash_usd[year]))}{limit}",
        f"{found.own_hours_h[year]:,.0f} own hours",
        f"{found.electrician_d[year]:.1f} days of an electrician",
    ]
    return f"{year_words(year).capitalize()}: {', '.join(parts)}."


def ways_sentence(options: Options, plan: Plan) -> str:
    """Return how many rooms go which way."""
    count = Counter(plan.picks.way[plan.picks.is_done].tolist())
    parts = [f"{count[at]:,} go “{NAMES[way]}”" for at, way in enumerate(ALTERNATIVES) if count[at]]
    kept = options.n_room - sum(count.values())
    return f"Rooms by way: {', '.join([*parts, f'{kept:,} keep what they have'])}."


def closed_sentence(options: Options) -> str:
    """Return in how many rooms self-installation is closed, with the gravest reason; nothing where it is open."""
    shut = ~options.is_open[:, SELF]
    if not shut.any():
        return ""
    reasons = Counter(first_reason(options, int(row), SELF) for row in np.flatnonzero(shut))
    where = "all" if shut.all() else f"{int(shut.sum()):,} of"
    return (
        f"“{NAMES[ALTERNATIVES[SELF]]}” is closed in {where} {options.n_room:,} rooms: {reasons.most_common(1)[0][0]}"
    )


def first_reason(options: Options, row: int, way: int) -> str:
    """Return the gravest reason why a way is closed in a room; nothing where it is open."""
    place = int(options.closed_reason[row, way])
    return options.reasons[place].split("\n")[0] if place >= 0 else ""


def must_sentences(plan: Plan) -> list[str]:
    """Return which rooms must be done and are not, and what is in the way: the room's own marks, or a limit."""
    left = must_left(plan)
    said = [_must_words(plan, int(row)) for row in left]
    if not said:
        return []
    short = [_short_words(plan, each) for each in obstacles(plan.rooms.options, plan.limits)]
    if not short:
        return said
    return [*said, f"To do all that must be done, at least this is missing: {'; '.join(short)}."]


def _must_words(plan: Plan, row: int) -> str:
    """Return why one room that must be done is not."""
    name, options = room_name(plan.rooms.table, row), plan.rooms.options
    if options.must_not[row]:
        return f"{name} is marked both must and must not."
    if options.first_year[row] >= plan.limits.n_year:
        return f"{name} must be done and cannot be entered in the years planned."
    ways = options.is_open[row].copy()
    ways[options.keep] = False
    if not ways.any():
        return f"{name} must be done, and every way is closed there: {first_reason(options, row, SELF)}"
    least = float(np.where(ways, options.cost_usd[row], np.inf).min())
    return f"{name} must be done and does not fit: its cheapest way takes {money(least)}."


_SHORT: Final = {
    "budget_usd": "{amount} of money {year}",
    "own_hours_h": "{amount} own hours {year}",
    "electrician_d": "{amount} days of an electrician {year}",
    "panel_a": "{amount} A in the panel of flat {flat}",
}


def _short_words(plan: Plan, found: Obstacle) -> str:
    """Return how much of one limit is missing."""
    is_money = found.limit == "budget_usd"
    amount = money(np.ceil(found.short)) if is_money else f"{found.short:.1f}"
    flat = plan.rooms.where.flat_name[found.at] if found.limit == "panel_a" else ""
    return _SHORT[found.limit].format(amount=amount, year=year_words(found.at), flat=flat)


LEAST_GAP: Final = 1e-5
"""Gap from which it is told how far a choice may be from the best."""


def gap_sentence(plan: Plan) -> str:
    """Return what is proven of a choice."""
    if plan.gap_frac < LEAST_GAP:
        return "Proven: within these limits no choice is worth more."
    return f"Proven: within these limits no choice is worth more than {100.0 * plan.gap_frac:.2g} % more than this one."


def room_name(table: RoomTable, row: int) -> str:
    """Return a room with its flat and building."""
    parts = (table.text["building"][row], table.text["unit"][row], table.text["room"][row])
    return " / ".join(part for part in parts if part)


def split_sentences(plan: Plan, found: Split) -> list[str]:
    """Return, for the flats where most is paid by one and saved by another, who pays and who saves."""
    flats = plan.rooms.where.flat
    paid = np.where(found.is_tenants & plan.picks.is_done, found.paid_usd, 0.0)
    by_flat = np.zeros(len(plan.rooms.where.flat_name))
    saved = np.zeros(len(by_flat))
    np.add.at(by_flat, flats, paid)
    np.add.at(saved, flats, np.where(plan.picks.is_done, found.tenant_saves_usd_per_yr, 0.0))
    most = [at for at in np.argsort(-by_flat, kind="stable")[:MOST_SPLITS] if by_flat[at] > 0.0]
    said = [_split_words(plan.rooms.where.flat_name[at], float(by_flat[at]), float(saved[at])) for at in most]
    if said:
        said.append("No effect on the rent is counted: nobody knows it before the next letting.")
    return said


def _split_words(flat: str, paid_usd: float, saved_usd: float) -> str:
    does = f"saves {money(saved_usd)} a year" if saved_usd > 0.0 else f"pays {money(-saved_usd)} a year more"
    return f"You pay {money(paid_usd)} in flat {flat}; its tenant {does} for energy."


def together_sentences(found: Together) -> list[str]:
    """Return what doing many rooms changes, as far as it changes anything."""
    pairs = (
        (
            found.shared_usd,
            f"Permits, tools and visits paid once instead of room by room: {money(found.shared_usd)} saved.",
        ),
        (
            found.volume_usd,
            f"Off the contractor's price for many sets: {money(found.volume_usd)}, not counted in the plan.",
        ),
        (
            found.learned_h,
            f"Doing the same again saves about {found.learned_h:,.0f} own hours, not counted in the plan.",
        ),
        (
            float(found.spare_count),
            f"{found.spare_count} spare window {plural('unit', found.spare_count)}: {money(found.spare_usd)} more.",
        ),
    )
    return [text for amount, text in pairs if amount >= LEAST_TOLD]


LEAST_TOLD: Final = 0.5
"""Dollars, hours or units from which a line is told."""


def outdoor_sentence(plan: Plan, found: SharedOutdoor) -> str:
    """Return what one outdoor unit for a flat would take instead of one a room, where that saves most."""
    spared = found.single_usd - found.shared_usd
    if not len(spared) or spared.max() < LEAST_TOLD:
        return ""
    at = int(spared.argmax())
    flat, count = plan.rooms.where.flat_name[int(found.flat[at])], int(found.room_count[at])
    several = f"{money(float(found.single_usd[at]))} for one a room"
    return (
        f"Hired, one outdoor unit for the {count} rooms of flat {flat} would take "
        f"{money(float(found.shared_usd[at]))} instead of {several}, by our own line items; "
        "if it fails, all of them are without. The plan counts one a room."
    )


def types_sentence(types: Sequence[str], used: Sequence[str]) -> str:
    """Return the room types of a case, with how many rows are of each; what to do where none has a name."""
    names = [name for name in types if name]
    if not names:
        return "No type has a name yet: name the rooms on the page Room, and a row may say which of them it is like."
    count = Counter(used)
    listed = ", ".join(f"{name} ({count[name]} {plural('row', count[name])})" for name in names)
    return f"Every named room of the case is a type: {listed}."
