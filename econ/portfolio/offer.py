"""From rooms as evaluated to what may be chosen: costs that are shared taken out, dates to years, flats to panels."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import CHOICES
from econ.case.rooms_cell import BLANK
from econ.case.rooms_file import RoomTable
from econ.case.schema import Case
from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.constants import DAYS_PER_YEAR
from econ.portfolio.building import figure, said_or
from econ.portfolio.options import Limits, Options
from econ.portfolio.outcome import Outcomes
from econ.portfolio.values import BuildingRows
from econ.tables.loaders import Tables

ONCE_A_YEAR: Final = "year"
"""In the table of shared lines: paid once in a building and year; any other is paid once a visit."""


@dataclass(frozen=True, slots=True, eq=False)
class Places:
    """Which flat and building each room is in.

    Attributes
    ----------
    flat, building : ndarray of int, shape (R,)
        Positions among the names. [dimensionless]
    flat_name, building_name : tuple of str
        A flat, with its building where there are several; buildings.
    """

    flat: IntArray
    building: IntArray
    flat_name: tuple[str, ...]
    building_name: tuple[str, ...]


def places(table: RoomTable) -> Places:
    """Return the flats and buildings of a file, in the order in which they come."""
    building, names = _numbered(table.text["building"])
    pairs = zip(table.text["building"], table.text["unit"], strict=True)
    is_one = len(names) == 1
    flat, flats = _numbered([unit if is_one or not of else f"{of}, {unit}" for of, unit in pairs])
    return Places(flat, building, flats, names)


def _numbered(names: Sequence[str]) -> tuple[IntArray, tuple[str, ...]]:
    """Return a number for each name, however it is capitalised, and the names as first written."""
    first: dict[str, str] = {}
    keys = [name.casefold() for name in names]
    for key, name in zip(keys, names, strict=True):
        first.setdefault(key, name)
    place = {key: at for at, key in enumerate(first)}
    return np.array([place[key] for key in keys], dtype=np.int64), tuple(first.values())


def options_of(table: RoomTable, case: Case, tables: Tables, rows: BuildingRows, found: Outcomes) -> Options:
    """Return what may be chosen in each room.

    Parameters
    ----------
    table : RoomTable
        Rows as read.
    case : Case
        Figures of the building.
    tables : Tables
        Usual figures, and the cost lines that rooms share.
    rows : BuildingRows
        Rows as numbers.
    found : Outcomes
        Rows as evaluated.
    """
    where = places(table)
    shared_usd, setup_usd = _shared(case, tables, where, found)
    cost = found.cash_usd - shared_usd
    is_open = found.is_open | (np.arange(len(ALTERNATIVES)) == KEEP)
    return Options(
        name=tuple(ALTERNATIVES),
        cost_usd=cost,
        benefit_usd=benefit_usd(table, case, found) + shared_usd,
        too_hot_h=found.too_hot_h,
        own_hours_h=found.own_hours_h,
        electrician_d=found.electrician_h / figure(case, tables, "electrician_day_h"),
        current_a=found.current_a,
        is_open=is_open,
        closed_reason=np.where(is_open, -1, found.reason),
        reasons=found.reasons,
        must=marked(table, "must"),
        must_not=marked(table, "must_not"),
        first_year=first_year(table, rows.made.drafts[0].decision_date.toordinal()),
        flat=where.flat,
        whole_flat=np.full(len(where.flat_name), case.building.whole_flat == "yes"),
        discount_frac=float(rows.made.column("money.discount_rate_real_frac")[0]),
        study_period_yr=rows.lines.structure.study_period_yr,
        group=where.building,
        setup_usd=setup_usd,
        setup_way=tuple(bool(each) for each in found.shared_usd.sum(axis=(0, 2)) > 0.0),
        hot_hour_usd=figure(case, tables, "hot_hour_usd"),
    )


def _shared(case: Case, tables: Tables, where: Places, found: Outcomes) -> tuple[FloatArray, FloatArray]:
    """Return what a room shares of each way's cash, shape (R, A), and each building's set-up, once a year. [USD] [USD]

    One visit is in the set-up; each further room bears its part of the next one.
    """
    by_trip = 1.0 - 1.0 / figure(case, tables, "rooms_per_trip")
    per = np.array([tables.shared[key].text("per") == ONCE_A_YEAR for key in tables.shared.keys])
    shared: FloatArray = (found.shared_usd * np.where(per, 1.0, by_trip)).sum(axis=2)
    most = np.where(found.is_open, shared, 0.0).max(axis=1)
    setup = np.zeros(len(where.building_name))
    np.maximum.at(setup, where.building, most)
    return shared, setup


def pays_for_energy(table: RoomTable, case: Case) -> tuple[str, ...]:
    """Return who pays the energy bill of each room: what its row says, else what the case says, else the owner."""
    options = CHOICES["prices.pays_bill"]
    usual = case.prices.pays_bill or "me"
    return tuple(usual if at == BLANK else options[int(at)] for at in table.option["pays"])


def benefit_usd(table: RoomTable, case: Case, found: Outcomes) -> FloatArray:
    """Return what each way saves over keeping, over all years: everybody's, or only the payer's, shape (R, A). [USD]"""
    saved = found.lcc_usd[:, [KEEP]] - found.lcc_usd
    if case.building.whose != "payer":
        return saved
    is_tenants = np.array([each == "tenant" for each in pays_for_energy(table, case)])
    return saved - np.where(is_tenants[:, None], energy_saved_usd(found), 0.0)


def energy_saved_usd(found: Outcomes) -> FloatArray:
    """Return what each way saves of energy over keeping, over all years, at present value, shape (R, A). [USD]"""
    saved: FloatArray = found.energy_pv_usd[:, [KEEP]] - found.energy_pv_usd
    return saved


def marked(table: RoomTable, mark: str) -> BoolArray:
    """Return the rooms that bear a mark, shape (R,)."""
    return np.array([each == mark for each in table.text["mark"]], dtype=np.bool_)


def first_year(table: RoomTable, decided: int) -> IntArray:
    """Return the first year in which each room can be entered: free or the lease ended, notice given, not too early.

    Parameters
    ----------
    table : RoomTable
        Access, end of the lease, notice and earliest day.
    decided : int
        Ordinal of the decision date. [day]
    """
    number = table.number
    access = np.where(np.isnan(number["access"]), number["let_until"], number["access"])
    days = [access, decided + number["notice"], number["not_before"]]
    open_on = np.nanmax(np.stack([np.full(table.n_room, float(decided)), *days]), axis=0)
    year: IntArray = np.maximum((open_on - decided) // DAYS_PER_YEAR, 0).astype(np.int64)
    return year


def limits_of(table: RoomTable, case: Case, budget_usd: float | None = None) -> Limits:
    """Return what may be spent.

    Parameters
    ----------
    table : RoomTable
        What each flat's panel has to spare: the least of its rows.
    case : Case
        Budgets, hours and days.
    budget_usd : float, optional
        This year's budget in place of the case's. [USD]
    """
    said = [said_or(case, name, np.nan) for name in ("budget_usd", "budget_2_usd", "budget_3_usd")]
    said[0] = said[0] if budget_usd is None else budget_usd
    n_year = 1 + max((at for at, each in enumerate(said) if not np.isnan(each)), default=0)
    budgets = np.array([np.inf if np.isnan(said[0]) else said[0], *np.nan_to_num(said[1:n_year])])
    days = [said_or(case, "electrician_d", np.inf)]
    for name in ("electrician_2_d", "electrician_3_d")[: n_year - 1]:
        days.append(said_or(case, name, days[-1]))
    own = np.full(n_year, said_or(case, "own_hours_h", np.inf))
    return Limits(budgets, own, np.array(days), panels_a(table, case))


def panels_a(table: RoomTable, case: Case) -> FloatArray:
    """Return what each flat's panel has to spare, infinity where nobody said, shape (n_flat,). [ampere]"""
    flat = places(table).flat
    spare = np.full(int(flat.max(initial=-1)) + 1, np.inf)
    np.minimum.at(spare, flat, np.where(np.isnan(table.number["panel"]), np.inf, table.number["panel"]))
    return np.where(np.isinf(spare), said_or(case, "panel_spare_a", np.inf), spare)
