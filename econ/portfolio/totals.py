"""What a plan comes to: each year's money and hours, what the building gains, who pays and who saves."""

from dataclasses import dataclass

import numpy as np

from econ.case.schema import Case
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.portfolio.building import figure
from econ.portfolio.offer import pays_for_energy
from econ.portfolio.options import Limits, Options
from econ.portfolio.picks import Picks, by_year, cash_usd, picked, setup_usd, worth_usd
from econ.portfolio.plan import Evaluated, Plan
from econ.tables.loaders import Tables


@dataclass(frozen=True, slots=True, eq=False)
class Totals:
    """A plan in sums.

    Attributes
    ----------
    room_count : ndarray of int, shape (Y,)
        Rooms done in each year. [dimensionless]
    cash_usd, setup_usd : ndarray, shape (Y,)
        Cash of each year, and what of it is paid once for a building. [USD]
    own_hours_h, electrician_d : ndarray, shape (Y,)
        Own hours; days of an electrician. [hour] [day]
    hot_before_h, hot_after_h : float
        Hours of a year too hot, all rooms together, without and with the plan. [hour]
    worth_usd : float
        What the plan is worth over keeping everything. [USD]
    """

    room_count: np.ndarray
    cash_usd: FloatArray
    setup_usd: FloatArray
    own_hours_h: FloatArray
    electrician_d: FloatArray
    hot_before_h: float
    hot_after_h: float
    worth_usd: float


def totals(options: Options, limits: Limits, picks: Picks) -> Totals:
    """Return what a plan comes to.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        Their years.
    picks : Picks
        The plan.
    """
    n_year = limits.n_year
    return Totals(
        room_count=np.bincount(picks.year[picks.is_done], minlength=n_year),
        cash_usd=cash_usd(options, picks, n_year),
        setup_usd=setup_usd(options, picks, n_year),
        own_hours_h=by_year(options, picks, "own_hours_h", n_year),
        electrician_d=by_year(options, picks, "electrician_d", n_year),
        hot_before_h=float(options.too_hot_h[:, options.keep].sum()),
        hot_after_h=float(picked(options, picks, "too_hot_h").sum()),
        worth_usd=worth_usd(options, picks, n_year),
    )


@dataclass(frozen=True, slots=True, eq=False)
class Split:
    """Who pays for a room and who saves.

    Attributes
    ----------
    is_tenants : ndarray of bool, shape (R,)
        Whether the tenant pays the energy bill.
    paid_usd : ndarray, shape (R,)
        What the owner pays for the way picked. [USD]
    owner_saves_usd_per_yr, tenant_saves_usd_per_yr : ndarray, shape (R,)
        Energy saved a year, by whoever pays its bill; negative where more is used. [USD/year]
    """

    is_tenants: BoolArray
    paid_usd: FloatArray
    owner_saves_usd_per_yr: FloatArray
    tenant_saves_usd_per_yr: FloatArray


def split(plan: Plan, case: Case) -> Split:
    """Return who pays for each room of a plan and who saves.

    Parameters
    ----------
    plan : Plan
        What is done.
    case : Case
        Who pays where a row does not say.
    """
    found, rows = plan.rooms.found, np.arange(plan.rooms.table.n_room)
    is_tenants = np.array([each == "tenant" for each in pays_for_energy(plan.rooms.table, case)], dtype=np.bool_)
    yearly = found.energy_usd_per_yr
    saved = np.where(plan.picks.is_done, yearly[:, KEEP] - yearly[rows, plan.picks.way], 0.0)
    paid = np.where(plan.picks.is_done, picked(plan.rooms.options, plan.picks, "cost_usd"), 0.0)
    return Split(is_tenants, paid, np.where(is_tenants, 0.0, saved), np.where(is_tenants, saved, 0.0))


@dataclass(frozen=True, slots=True, eq=False)
class Together:
    """What many rooms at once change, beside what each of them costs alone; none of it is in the choice.

    Attributes
    ----------
    shared_usd : float
        Saved by paying permits, tools and visits once instead of room by room. [USD]
    volume_usd : float
        Off the contractor's price from the set on from which there is anything off. [USD]
    learned_h : float
        Own hours saved by doing the same again. [hour]
    spare_count : int
        Window units kept as spares. [dimensionless]
    spare_usd : float
        What they cost. [USD]
    """

    shared_usd: float
    volume_usd: float
    learned_h: float
    spare_count: int
    spare_usd: float


def together(plan: Plan, case: Case, tables: Tables) -> Together:
    """Return what doing many rooms changes.

    Parameters
    ----------
    plan : Plan
        What is done.
    case : Case
        Figures of the building.
    tables : Tables
        Usual figures.
    """
    rooms, picks, n_year = plan.rooms, plan.picks, plan.limits.n_year
    alone = by_year_of(rooms.found.cash_usd, picks, n_year).sum()
    in_all = cash_usd(rooms.options, picks, n_year).sum()
    count, spare = _spares(rooms, picks, figure(case, tables, "spare_frac"))
    return Together(
        shared_usd=float(alone - in_all),
        volume_usd=_volume_usd(plan, figure(case, tables, "volume_from"), figure(case, tables, "volume_off_frac")),
        learned_h=_learned_h(
            rooms.found.own_hours_h,
            picks,
            figure(case, tables, "learning_frac"),
            figure(case, tables, "learning_until"),
        ),
        spare_count=count,
        spare_usd=spare,
    )


def by_year_of(figures: FloatArray, picks: Picks, n_year: int) -> FloatArray:
    """Return what figures of every way come to in each year for the ways picked, shape (Y,). [any]"""
    done, total = picks.is_done, np.zeros(n_year)
    np.add.at(total, picks.year[done], figures[np.flatnonzero(done), picks.way[done]])
    return total


def _volume_usd(plan: Plan, first: float, off_frac: float) -> float:
    """Return what is off the contractor's sets of each year from a number on; the mean set's price counts. [USD]"""
    saved = 0.0
    for year in range(plan.limits.n_year):
        rows = (plan.picks.way == HIRED) & (plan.picks.year == year)
        if rows.any():
            beyond = max(float(rows.sum()) - first + 1.0, 0.0)
            saved += beyond * off_frac * float(plan.rooms.options.cost_usd[rows, HIRED].mean())
    return saved


def _learned_h(own_h: FloatArray, picks: Picks, learning_frac: float, until: float) -> float:
    """Return own hours saved by repetition: the k-th time takes k to the power log2(1 - learning) of the first. [hour]

    After `until` times nothing more is learned.

    References
    ----------
    .. [1] T. P. Wright, Factors affecting the cost of airplanes, Journal of the Aeronautical Sciences 3 (1936): the
       power law; its size here is an assumption.
    """
    saved, power = 0.0, np.log2(max(1.0 - learning_frac, 1e-9))
    for way in (WINDOW, SELF):
        hours = own_h[picks.way == way, way]
        factor = np.minimum(np.arange(1, len(hours) + 1, dtype=np.float64), until) ** power
        saved += float(hours.sum() - hours.mean() * factor.sum()) if len(hours) else 0.0
    return saved


LEAST_FOR_SPARES = 10
"""Window units below which none is kept as a spare."""


def _spares(rooms: Evaluated, picks: Picks, spare_frac: float) -> tuple[int, float]:
    """Return how many window units are kept as spares and what they cost: a part of those put in, rounded down."""
    at = picks.way == WINDOW
    units = float(rooms.rows.count[at].sum())
    count = int(units * spare_frac) if units >= LEAST_FOR_SPARES else 0
    price = float(rooms.found.unit_usd[at, WINDOW].mean()) if count else 0.0
    return count, count * price
