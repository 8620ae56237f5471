"""A plan for many rooms as tables, as plain objects for JSON, and as a file for a spreadsheet."""

from typing import Any, Final

import numpy as np

from econ.case.rooms_file import RoomTable
from econ.case.rooms_out import rows_text
from econ.case.schema import Case
from econ.evaluate.version import RESULTS_VERSION
from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.portfolio.heads import SharedOutdoor, shared_outdoor
from econ.portfolio.picks import NEVER, current_a, picked
from econ.portfolio.plan import Plan
from econ.portfolio.totals import Split, Together, Totals, split, together, totals
from econ.report.numbers import money, number, plain_number
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.report.words import rooms as words
from econ.tables.loaders import Tables

ADDED: Final = (
    "what to do", "year", "cash (USD)", "worth over keeping (USD)", "hours too hot now", "hours too hot then",
    "own hours", "electrician (days)", "added load (A)", "energy saved (USD/year)", "who saves", "closed",
)  # fmt: skip
"""Headings of what the plan adds to a rooms file."""


MOST_FOR_OUTDOOR: Final = 2_000
"""Rooms up to which one outdoor unit for a flat is set against several."""


class Told:
    """A plan with everything that is told of it, each worked out once."""

    def __init__(self, plan: Plan, case: Case, tables: Tables) -> None:
        self.plan, self.options, self.table = plan, plan.rooms.options, plan.rooms.table
        self.totals: Totals = totals(self.options, plan.limits, plan.picks)
        self.split: Split = split(plan, case)
        self.together: Together = together(plan, case, tables)
        self.outdoor: SharedOutdoor | None = (
            shared_outdoor(plan.rooms, tables) if self.options.n_room <= MOST_FOR_OUTDOOR else None
        )
        self.base_year = plan.rooms.rows.made.drafts[0].decision_date.year
        self.column = {
            name: picked(self.options, plan.picks, name)
            for name in ("cost_usd", "too_hot_h", "own_hours_h", "electrician_d", "current_a")
        }
        self.worth_usd = _worth_usd(plan)

    def year(self, row: int) -> int | None:
        """Return the calendar year in which a room is done, None for never."""
        at = int(self.plan.picks.year[row])
        return None if at == NEVER else self.base_year + at


def _worth_usd(plan: Plan) -> np.ndarray:
    """Return what the way picked is worth in each room over keeping, in the year in which it is done. [USD]"""
    worth = np.zeros(plan.rooms.options.n_room)
    for year in range(plan.limits.n_year):
        rows = np.flatnonzero(plan.picks.year == year)
        worth[rows] = plan.rooms.options.worth_usd(year)[rows, plan.picks.way[rows]]
    return worth


def sentences(told: Told) -> list[str]:
    """Return a plan in sentences: rows, this year's money, years, ways, locks, and who pays and saves."""
    plan = told.plan
    said = [
        words.plan_sentence(plan, told.totals),
        *(words.year_sentence(plan, told.totals, year) for year in np.flatnonzero(told.totals.room_count).tolist()),
        words.ways_sentence(told.options, plan),
        words.closed_sentence(told.options),
        *words.must_sentences(plan),
        words.gap_sentence(plan),
        *words.split_sentences(plan, told.split),
        *words.together_sentences(told.together),
        *([words.outdoor_sentence(plan, told.outdoor)] if told.outdoor else []),
        *plan.rooms.rows.notes,
        *told.table.notes,
    ]
    return [sentence for sentence in said if sentence]


def table(told: Told) -> dict[str, list[Any]]:
    """Return a plan room by room, as cells that sort."""
    rows = range(told.options.n_room)
    text, keep = told.table.text, told.options.too_hot_h[:, KEEP]
    several = len(told.plan.rooms.where.building_name) > 1
    return {
        **({"Building": list(text["building"])} if several else {}),
        "Flat": list(text["unit"]),
        "Room": list(text["room"]),
        "Floor": [int(each) for each in told.table.number["floor"]],
        "What to do": [NAMES[ALTERNATIVES[at]] for at in told.plan.picks.way],
        "Year": [told.year(row) for row in rows],
        "Cash, $": [float(round(each)) for each in told.column["cost_usd"]],
        "Worth over keeping, $": [float(round(each)) for each in told.worth_usd],
        "Hours too hot now": [float(round(each)) for each in keep],
        "Then": [float(round(each)) for each in told.column["too_hot_h"]],
        "Need for cooling, kWh": [float(round(each)) for each in told.plan.rooms.found.cool_kwh],
        "Who saves": [_who_saves(told, row) for row in rows],
        "Mark": [each.replace("_", " ") for each in text["mark"]],
        "Closed": [_closed(told, row) for row in rows],
    }


def _who_saves(told: Told, row: int) -> str:
    return "tenant" if told.split.is_tenants[row] else "you"


def _closed(told: Told, row: int) -> str:
    shut = [way for at, way in enumerate(ALTERNATIVES) if not told.options.is_open[row, at]]
    return ", ".join(NAMES[way] for way in shut)


def document(told: Told) -> dict[str, Any]:
    """Return a plan as plain objects: what it comes to, each year, each room, and every row refused."""
    plan, found = told.plan, told.totals
    return {
        "results_version": RESULTS_VERSION,
        "rows_in": told.table.n_row,
        "rows_taken": told.table.n_room,
        "rows_refused": len(told.table.refused),
        "structure_groups": plan.rooms.groups,
        "notes": [*told.table.notes, *plan.rooms.rows.notes],
        "worth_usd": number(found.worth_usd),
        "proven_gap_frac": number(plan.gap_frac),
        "hours_too_hot_now": number(found.hot_before_h),
        "hours_too_hot_then": number(found.hot_after_h),
        "saved_by_sharing_usd": number(told.together.shared_usd),
        "volume_price_usd": number(told.together.volume_usd),
        "learned_h": number(told.together.learned_h),
        "spare_units": told.together.spare_count,
        "spares_usd": number(told.together.spare_usd),
        "one_outdoor_unit": outdoor_list(told),
        "years": [_year(told, year) for year in range(plan.limits.n_year)],
        "in_the_way": words.must_sentences(plan),
        "rooms": [_room(told, row) for row in range(told.options.n_room)],
        "refused": [
            {"line": row.line, "cells": list(row.cells), "faults": [str(fault) for fault in row.faults]}
            for row in told.table.refused
        ],
    }


def outdoor_list(told: Told) -> list[dict[str, Any]]:
    """Return, flat by flat, what one outdoor unit takes against one a room, hired out and by our own line items."""
    found = told.outdoor
    return [] if found is None else [
        {
            "flat": told.plan.rooms.where.flat_name[int(flat)],
            "rooms": int(found.room_count[at]),
            "one_a_room_usd": number(float(found.single_usd[at])),
            "one_for_all_usd": number(float(found.shared_usd[at])),
            "size_kbtu_per_h": number(float(found.size_kbtu_per_h[at])),
        }
        for at, flat in enumerate(found.flat)
    ]  # fmt: skip


def outdoor_table(told: Told) -> dict[str, list[str]]:
    """Return the same as a table."""
    rows = outdoor_list(told)
    return {
        "Flat": [row["flat"] for row in rows],
        "Rooms": [str(row["rooms"]) for row in rows],
        "An outdoor unit for each": [money(row["one_a_room_usd"]) for row in rows],
        "One for all": [money(row["one_for_all_usd"]) for row in rows],
        "Its size, Btu/h": [f"{row['size_kbtu_per_h']:.0f},000" for row in rows],
    }


def _year(told: Told, year: int) -> dict[str, Any]:
    found, limits = told.totals, told.plan.limits
    return {
        "year": told.base_year + year,
        "budget_usd": number(float(limits.budget_usd[year])),
        "cash_usd": number(float(found.cash_usd[year])),
        "set_up_usd": number(float(found.setup_usd[year])),
        "own_hours_h": number(float(found.own_hours_h[year])),
        "electrician_d": number(float(found.electrician_d[year])),
        "rooms_done": int(found.room_count[year]),
    }


def _room(told: Told, row: int) -> dict[str, Any]:
    text, options = told.table.text, told.options
    return {
        "line": told.table.line[row],
        "building": text["building"][row],
        "unit": text["unit"][row],
        "room": text["room"][row],
        "way": ALTERNATIVES[int(told.plan.picks.way[row])].value,
        "year": told.year(row),
        **{name: number(float(column[row])) for name, column in told.column.items() if name != "cost_usd"},
        "cash_usd": number(float(told.column["cost_usd"][row])),
        "worth_usd": number(float(told.worth_usd[row])),
        "too_hot_now_h": number(float(options.too_hot_h[row, KEEP])),
        "cooling_need_kwh_per_yr": number(float(told.plan.rooms.found.cool_kwh[row])),
        "owner_saves_usd_per_yr": number(float(told.split.owner_saves_usd_per_yr[row])),
        "tenant_saves_usd_per_yr": number(float(told.split.tenant_saves_usd_per_yr[row])),
        "ways": [_way(told, row, at) for at in range(len(ALTERNATIVES))],
    }


def _way(told: Told, row: int, at: int) -> dict[str, Any]:
    options = told.options
    return {
        "name": ALTERNATIVES[at].value,
        "cash_usd": number(float(options.cost_usd[row, at])),
        "net_savings_usd": number(float(options.benefit_usd[row, at])),
        "too_hot_h": number(float(options.too_hot_h[row, at])),
        "is_open": bool(options.is_open[row, at]),
        "closed_because": words.first_reason(options, row, at) or None,
    }


def out_csv(told: Told) -> str:
    """Return the rooms file as it came, each row with what the plan makes of it; no cell runs as a formula."""
    rows: list[list[str | float]] = [[*told.table.heading, *ADDED]]
    for row, cells in enumerate(told.table.cells):
        rows.append([*cells, *_added(told, row)])
    return rows_text(rows)


def _added(told: Told, row: int) -> tuple[str | float, ...]:
    split_ = told.split
    saved = float(split_.owner_saves_usd_per_yr[row] + split_.tenant_saves_usd_per_yr[row])
    return (
        NAMES[ALTERNATIVES[int(told.plan.picks.way[row])]], told.year(row) or "", float(told.column["cost_usd"][row]),
        float(told.worth_usd[row]), float(told.options.too_hot_h[row, KEEP]), float(told.column["too_hot_h"][row]),
        float(told.column["own_hours_h"][row]), float(told.column["electrician_d"][row]),
        float(told.column["current_a"][row]), saved, _who_saves(told, row), _closed(told, row),
    )  # fmt: skip


def refused_csv(read: RoomTable) -> str:
    """Return the rows that were refused, each with its line and all that is wrong with it."""
    rows = [["line", "what is wrong and what to type", *read.heading]]
    rows += [[str(row.line), " ".join(words.refused_lines(row)), *row.cells] for row in read.refused]
    return rows_text(rows)


def years_table(told: Told) -> Columns:
    """Return a plan year by year."""
    found, years = told.totals, range(told.plan.limits.n_year)
    budget = told.plan.limits.budget_usd
    return {
        "": ["Rooms done", "Cash", "Budget", "Own hours", "Electrician, days"],
        **{
            str(told.base_year + year): [
                str(int(found.room_count[year])),
                money(float(found.cash_usd[year])),
                "no limit" if np.isinf(budget[year]) else money(float(budget[year])),
                plain_number(float(found.own_hours_h[year])),
                plain_number(float(found.electrician_d[year]), 1),
            ]
            for year in years
        },
    }


def panels_table(told: Told) -> dict[str, list[str]]:
    """Return what each flat's panel has to spare and what the plan asks of it, where anybody said."""
    asked, spare = current_a(told.options, told.plan.picks), told.plan.limits.panel_a
    known = [flat for flat in range(len(spare)) if not np.isinf(spare[flat])]
    return {
        "Flat": [told.plan.rooms.where.flat_name[flat] for flat in known],
        "To spare, A": [f"{spare[flat]:.0f}" for flat in known],
        "Asked of it, A": [f"{asked[flat]:.1f}" for flat in known],
        "How full": ["▮" * min(10, round(10 * asked[flat] / spare[flat])) if spare[flat] else "" for flat in known],
    }


def closed_table(told: Told) -> dict[str, list[str]]:
    """Return the ways that are closed, each with every reason and in how many rooms it holds."""
    options = told.options
    found: dict[tuple[str, str], int] = {}
    for at, way in enumerate(ALTERNATIVES):
        places, counts = np.unique(options.closed_reason[~options.is_open[:, at], at], return_counts=True)
        for place, count in zip(places.tolist(), counts.tolist(), strict=True):
            for reason in options.reasons[place].split("\n") if place >= 0 else ():
                found[NAMES[way], reason] = found.get((NAMES[way], reason), 0) + count
    return {
        "Way": [way for way, _ in found],
        "Why it is closed": [reason for _, reason in found],
        "Rooms": [f"{count:,}" for count in found.values()],
    }
