"""The best split of a self-installation: each party's cost of each task, read off the same prices as the cost lines."""

from dataclasses import dataclass

import numpy as np

from econ.evaluate.wiring.installation_own import helper_wage_usd_per_h
from econ.evaluate.wiring.installation_price import Route, circuit_lines, material_lines
from econ.evaluate.wiring.installation_risk import mishap_by_task
from econ.evaluate.wiring.installation_tools import free_way, tool_price, uses
from econ.evaluate.wiring.installation_visits import VisitPrice, contractor_price, electrician_price
from econ.evaluate.wiring.installation_work import Site, allowed_parties, given_rows
from econ.installation.incentive import TERMS, in_licensed_hands, is_asked_of
from econ.installation.split import NO_VISIT, Bonus, JointFloor, SharedTools, SplitProblem
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY, TaskRows
from econ.installation.tools import ToolPrice
from econ.installation.visit import VISITS, visit_of
from econ.kernel.alternative import PARTIES, Alternative
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.tables.tasks import InstallationTables

_TRADES = (ELECTRICIAN_PARTY, CONTRACTOR_PARTY)


@dataclass(frozen=True, slots=True, eq=False)
class SplitSite:
    """A split problem with the places of its tasks in the route's list.

    Attributes
    ----------
    problem : SplitProblem
        Of the tasks that this site needs, likely row.
    task : ndarray, shape (T,)
        Their positions in the task table. [dimensionless]
    """

    problem: SplitProblem
    task: IntArray


def split_site(at: Site, tables: InstallationTables) -> SplitSite:
    """Return who would cost what for each task of a self-installation.

    Parameters
    ----------
    at : Site
        A case of one row: its likely values.
    tables : InstallationTables
        Task lists and tools.

    Returns
    -------
    site : SplitSite
        Waits for a booking have no party to choose and are left out.
    """
    table = tables.tasks[Alternative.SELF_INSTALL]
    probes = [Route(at, _all_by(party, at, tables), tables) for party in range(len(PARTIES))]
    is_choice = np.array([not condition.endswith("_used") for condition in table.condition])
    task = np.flatnonzero(probes[SELF_PARTY].rows.is_active[0] & is_choice)
    prices = {ELECTRICIAN_PARTY: electrician_price(probes[ELECTRICIAN_PARTY], np.zeros(1, dtype=np.bool_))}
    prices[CONTRACTOR_PARTY] = contractor_price(probes[CONTRACTOR_PARTY])
    problem = SplitProblem(
        is_allowed=_someone(allowed_parties(table, at)[0])[task],
        cash_usd=np.stack([_own_cash_usd(probe) for probe in probes], axis=1)[task],
        own_h=np.stack([probe.rows.own_h[0] + mishap_by_task(probe)[1][0] for probe in probes], axis=1)[task],
        slot=_slots(probes)[task],
        charge_usd=_by_trade(prices, "charge_usd", len(table))[task],
        floor_usd=_by_trade(prices, "floor_usd", len(table))[task],
        trip_usd=np.repeat([float(prices[party].trip_usd[0]) for party in _TRADES], len(VISITS)),
        joint_floors=_take_over(probes[ELECTRICIAN_PARTY], task),
        tools=_tools(probes, task),
        bonus=_bonus(probes[SELF_PARTY], task),
    )
    return SplitSite(problem, task)


def _bonus(probe: Route, task: IntArray) -> Bonus | None:
    """Return the incentive where it hangs on who does what; one that does not is no matter of the split."""
    table, is_option = probe.rows.table, probe.site.inputs.is_option
    terms = [term for term in TERMS if is_option("money.incentive_self_terms", term)[0]]
    asked = np.logical_or.reduce([is_asked_of(table, term) for term in terms])
    if not asked.any():
        return None
    worth = float((probe.number("money.incentive_self_usd") * probe.number("money.incentive_self_frac"))[0])
    return Bonus((~asked[:, None] | in_licensed_hands(table))[task], worth)


def _all_by(party: int, at: Site, tables: InstallationTables) -> TaskRows:
    table = tables.tasks[Alternative.SELF_INSTALL]
    everyone = np.full((at.inputs.n_row, len(table)), party, dtype=np.int64)
    return given_rows(table, at, everyone, everyone)


def _someone(is_allowed: BoolArray) -> BoolArray:
    """Return who may do what; a task nobody may do is the contractor's, as on the board."""
    may = is_allowed.copy()
    may[~may.any(axis=1), CONTRACTOR_PARTY] = True
    return may


def _own_cash_usd(probe: Route) -> FloatArray:
    """Return what a task costs by itself when a party does it: goods with tax, wages, mishaps, spaces, protection."""
    rows, table = probe.rows, probe.rows.table
    wage = helper_wage_usd_per_h(probe)
    mishap_usd, _ = mishap_by_task(probe)
    cost: FloatArray = rows.helper_h * wage[:, None] + mishap_usd + _goods_usd(probe)
    cost[:, table.position("circuit")] += _circuit_extras_usd(probe)
    likely: FloatArray = cost[0]
    return likely


def _goods_usd(probe: Route) -> FloatArray:
    """Return each task's materials with markup and sales tax, shape (B, T)."""
    rows = probe.rows
    tax = 1.0 + probe.number("money.sales_tax_frac")
    goods = np.zeros((len(rows.is_active), len(rows.table)))
    for task in range(len(rows.table)):
        lines = material_lines(probe, probe.cost("materials_markup_frac"), only=task)
        goods[:, task] = sum((line.quantity * line.unit_price_usd for line in lines), probe.zeros()) * tax
    return goods


def _circuit_extras_usd(probe: Route) -> FloatArray:
    """Return what comes with a circuit that an electrician makes beside its price, less what then falls away."""
    is_made = probe.is_done("circuit", ELECTRICIAN_PARTY)
    extras = circuit_lines(probe, is_made)[1:]
    return sum((line.quantity * line.unit_price_usd for line in extras), probe.zeros())


def _slots(probes: list[Route]) -> IntArray:
    """Return the visit of each task and party, those of one trade behind those of the other."""
    table = probes[SELF_PARTY].rows.table
    visit = np.argmax(visit_of(table.visit, probes[SELF_PARTY].site.facts["permit_needed"])[0], axis=1)
    slot = np.full((len(table), len(PARTIES)), NO_VISIT, dtype=np.int64)
    for place, party in enumerate(_TRADES):
        has_work = probes[party].rows.hours_h[0] > 0.0
        slot[:, party] = np.where(has_work, place * len(VISITS) + visit, NO_VISIT)
    return slot


def _by_trade(prices: dict[int, VisitPrice], name: str, n_task: int) -> FloatArray:
    amounts = np.zeros((n_task, len(PARTIES)))
    for party, price in prices.items():
        amounts[:, party] = getattr(price, name)[0]
    return amounts


def _take_over(probe: Route, task: IntArray) -> tuple[JointFloor, ...]:
    """Return the electrician's price for connecting a circuit that the user ran, where both tasks are there."""
    places = [np.flatnonzero(task == probe.rows.table.position(key)) for key in ("final_connection", "circuit")]
    if not all(len(place) for place in places):
        return ()
    final, circuit = (int(place[0]) for place in places)
    floor = max(float(probe.cost("final_connection_usd")[0]), float(probe.cost("electrician_call_out_usd")[0]))
    return (JointFloor(final, ELECTRICIAN_PARTY, circuit, (SELF_PARTY, HELPER_PARTY), floor),)


def _tools(probes: list[Route], task: IntArray) -> SharedTools:
    mine = probes[SELF_PARTY]
    paid = [tool for tool in mine.tables.tools if not free_way(tool, mine.site.structure)]
    by_user = np.zeros(len(PARTIES), dtype=np.bool_)
    by_user[[SELF_PARTY, HELPER_PARTY]] = True
    needs = np.stack([uses(tool, mine)[0][task] for tool in paid]).reshape(len(paid), len(task))
    elapsed = np.stack([probe.rows.elapsed_h[0][task] for probe in probes], axis=1)
    is_used = needs[:, :, None] & by_user
    prices = [tool_price(tool, mine) for tool in paid]
    columns = (
        np.array([float(getattr(price, name)[0]) for price in prices])
        for name in ("buy_usd", "rent_usd_per_d", "resale_frac", "minimum_hire_d", "sales_tax_frac")
    )
    return SharedTools(is_used, is_used * elapsed / float(mine.number("work.hours_per_day_h")[0]), ToolPrice(*columns))
