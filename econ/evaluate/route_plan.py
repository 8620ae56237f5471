"""The plan of a way's work from its tasks, its dates, what the rules found, and what was signed and said so far."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

import numpy as np

from econ.case.schema import Case
from econ.case.sections.signed import STEP, SignOff, is_past
from econ.caution.rule import PRACTICE
from econ.caution.sign import AT_WORK, ROLE_OF, Kind, signers
from econ.evaluate.result import AlternativeResult, Result
from econ.evaluate.structure import Structure
from econ.evaluate.task_board import task_board
from econ.evaluate.wiring.installation_price import Route, contractor_task_usd, material_lines
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_tools import tool_plans
from econ.evaluate.wiring.installation_work import route_rows, site
from econ.installation.plan import SETTLED, Lapse, Plan, Signature, Step, StepState, Stop, held_before, needed_before
from econ.installation.task import ELECTRICIAN_PARTY
from econ.kernel.alternative import ALTERNATIVES, PARTIES, Alternative, Party
from econ.kernel.arrays import FloatArray
from econ.kernel.caution import Caution, Severity
from econ.tables.stops import ASIDE, Standing, StopTable, stop_table
from econ.tables.tasks import InstallationTables

_NOWHERE: Final = Standing(())


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """What a plan is made from.

    Attributes
    ----------
    structure : Structure
        Who does what; tools that are there.
    values : mapping of str to ndarray, shape ()
        Likely numbers by path, as `econ.evaluate.sheet.point` gives them.
    result : Result
        The evaluation at them.
    tables : InstallationTables
        Task lists and tools.
    """

    structure: Structure
    values: Mapping[str, FloatArray]
    result: Result
    tables: InstallationTables


def figures_of(caution: Caution) -> str:
    """Return the numbers that raised a finding, as a signature keeps them: four digits of each."""
    return "; ".join(f"{name} {value:.4g}" for name, value, _ in caution.evidence)


def concerns(caution: Caution, name: Alternative) -> bool:
    """Return whether a finding is about a way."""
    return not caution.alternatives or name.value in caution.alternatives


def route_plan(ground: Ground, case: Case, name: Alternative, today: date) -> Plan:
    """Return the plan of a way.

    Parameters
    ----------
    ground : Ground
        What it is made from.
    case : Case
        What was signed and said of steps.
    name : Alternative
        The way.
    today : date
        Signatures dated later do not count.

    Returns
    -------
    plan : Plan
        Without steps for a way that brings nothing new.
    """
    bare = _bare_steps(ground, name)
    order = tuple(step.task for step in bare)
    found = [each for each in ground.result.cautions if concerns(each, name)]
    where = {each.code: _place(each, stop_table(), order) for each in found}
    stops = _stops(found, where, bare)
    signed = {
        task: tuple(_with_signatures(stop, task, bare, (case, name, today)) for stop in held)
        for task, held in stops.items()
    }
    said = {line.task: line for line in case.steps if line.route == name}
    steps = tuple(_told(step, signed, found, where, said) for step in bare)
    general = [each for each in found if where[each.code] == "" and each.severity is not Severity.HOLD_POINT]
    return Plan(name, steps, signed.get(ASIDE, ()), tuple(general))


def _place(caution: Caution, table: StopTable, order: tuple[str, ...]) -> str:
    """Return the step a finding belongs to; empty for none. A stop holds back the first at least."""
    before = (table.of(caution.code) or _NOWHERE).before
    if ASIDE in before or (caution.severity is Severity.HOLD_POINT and not order):
        return ASIDE if caution.severity is Severity.HOLD_POINT else ""
    if caution.severity is not Severity.HOLD_POINT and not set(before) & set(order):
        return ""
    return held_before(before, order)


def _bare_steps(ground: Ground, name: Alternative) -> tuple[Step, ...]:
    """Return the steps of a way in the order of the work, without stops, findings and what was said of them."""
    way, table = ground.result.alternatives[ALTERNATIVES.index(name)], ground.tables.tasks[name]
    at = site(ground.structure, Inputs(ground.values, 1))
    route = Route(at, route_rows(table, at), ground.tables)
    hours, cash = route.rows.hours_h[0], _cash_usd(ground, route)
    tools, goods = _tools(route), _goods(route)
    active = frozenset(table.key[task] for task in np.flatnonzero(way.schedule.is_active[0]))
    after = {key: tuple(table.key[at] for at in table.after[task]) for task, key in enumerate(table.key)}
    needed = needed_before(after, active)
    return tuple(
        Step(
            task=table.key[task],
            label=table.label[task],
            party=PARTIES[int(way.schedule.party[0, task])],
            hours_h=float(hours[task]),
            crew_count=float(table.crew_count[task]),
            cost_usd=float(cash[task]),
            begin_d=_begin_d(way, task),
            done_d=float(way.schedule.finish_d[0, task]),
            after=needed[table.key[task]],
            check=table.hold_point[task],
            tools=tuple(label for label, tasks in tools if table.label[task] in tasks),
            materials=goods[task],
        )
        for task in _ordered(way)
    )


def _begin_d(way: AlternativeResult, task: int) -> float:
    """Return when a task is taken up: a wait when it is asked for, work when it starts."""
    is_wait = way.schedule.finish_d[0, task] <= way.schedule.start_d[0, task]
    begin = way.schedule.wait_start_d if is_wait else way.schedule.start_d
    return float(begin[0, task])


def _ordered(way: AlternativeResult) -> list[int]:
    """Return the places of a way's tasks in the order in which they are taken up; each comes after what it needs."""
    needed = map(int, np.flatnonzero(way.schedule.is_active[0]))
    return sorted(needed, key=lambda task: (_begin_d(way, task), task))


def _cash_usd(ground: Ground, route: Route) -> FloatArray:
    """Return what each task costs, shape (T,): NaN where a quote names one price for all."""
    table, rows = route.rows.table, route.rows
    if table.alternative == Alternative.SELF_INSTALL:
        board = task_board(ground.structure, ground.values, ground.tables)
        by_task = {task.task: task.cash_usd for task in board.tasks}
        return np.array([by_task.get(key, 0.0) for key in table.key])
    if table.alternative == Alternative.CONTRACTED_INSTALL and ground.structure.has_quote:
        return np.full(len(table), np.nan)
    markup = route.cost("materials_markup_frac")
    goods = [
        sum(float((line.quantity * line.unit_price_usd)[0]) for line in material_lines(route, markup, task))
        for task in range(len(table))
    ]
    wired = np.where(rows.party[0] == ELECTRICIAN_PARTY, rows.hours_h[0], 0.0)
    electrician = wired * float(route.cost("electrician_hourly_usd_per_h")[0])
    cash: FloatArray = np.array(goods) + electrician + contractor_task_usd(route)[0]
    return cash


def _tools(route: Route) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return the tools of own work with the tasks they serve, both in plain words."""
    if route.rows.table.alternative != Alternative.SELF_INSTALL:
        return ()
    return tuple((plan.label, plan.tasks) for plan in tool_plans(route))


def _goods(route: Route) -> tuple[tuple[str, ...], ...]:
    """Return what each task uses up, in plain words."""
    label = route.tables.label
    return tuple(
        tuple(label[each.key] for each in goods if float(route.site.quantities[each.quantity][0]) > 0.0)
        for goods in route.rows.table.materials
    )


def _stops(found: list[Caution], where: Mapping[str, str], steps: tuple[Step, ...]) -> dict[str, list[Stop]]:
    """Return the stops by the step they hold back: those of the rules, then those that a step brings itself."""
    held: dict[str, list[Stop]] = {}
    for each in found:
        if each.severity is Severity.HOLD_POINT:
            stop = Stop(
                each.code, each.message, each.action, each.party, each.source, signers(each.party), figures_of(each)
            )
            held.setdefault(where[each.code], []).append(stop)
    for step in steps:
        own = stop_table().rows.get(f"{STEP}{step.task}")
        if own is not None and step.check:
            asked = signers(own.signer) if own.signer else (tuple(role.value for role in AT_WORK),)
            party = own.signer or "whoever does it"
            stop = Stop(
                f"{STEP}{step.task}", step.check, "Begin when this is true, not before.", party, PRACTICE, asked
            )
            held.setdefault(step.task, []).append(stop)
    return held


def _with_signatures(stop: Stop, task: str, steps: tuple[Step, ...], read: tuple[Case, Alternative, date]) -> Stop:
    """Return a stop with those who signed for it, and why a signature does not count."""
    case, name, today = read
    step = next((step for step in steps if step.task == task), None)
    asked, row = _asked(stop, step.party if step else None), stop_table().of(stop.code)
    is_at_turn = row is not None and row.when == "turn"
    before = _settled_on(case, name, step) if is_at_turn and step else ()
    given = tuple(
        Signature(
            who=line.who or "",
            role=line.role or "",
            licence=line.licence or "",
            date=line.date or "",
            note=line.note or "",
            place=place,
            lapse=_lapse(line, replace(stop, asked=asked), before, today),
        )
        for place, line in enumerate(case.signed)
        if _is_for(line, stop.code, name)
    )
    return replace(stop, asked=asked, signatures=given, is_at_turn=is_at_turn)


def _settled_on(case: Case, name: Alternative, step: Step) -> tuple[str, ...]:
    """Return the day on which each step before a step was settled; empty for one that is not."""
    said = {line.task: line for line in case.steps if line.route == name}
    lines = [said.get(task) for task in step.after]
    return tuple((line.date or "") if line is not None and line.state in SETTLED else "" for line in lines)


def _asked(stop: Stop, party: Party | None) -> tuple[tuple[str, ...], ...]:
    """Return whose signatures a stop asks for; where its row says so, whoever does the step may sign too."""
    row = stop_table().of(stop.code)
    if row is None or row.signer != "step" or party is None:
        return stop.asked
    return tuple(tuple(dict.fromkeys((*group, ROLE_OF[party].value))) for group in stop.asked)


def _is_for(line: SignOff, code: str, name: Alternative) -> bool:
    is_given = line.kind == Kind.SIGNED and line.taken_back is None
    return is_given and line.code == code and line.route in (None, name.value)


def _lapse(line: SignOff, stop: Stop, before: tuple[str, ...], today: date) -> Lapse:
    """Return why a signature does not count; `before` are the days of the steps that it stands for."""
    if not is_past(line.date, today):
        return Lapse.LATER
    if line.figures is not None and line.figures != stop.figures:
        return Lapse.FIGURES
    if not any(line.role in group for group in stop.asked):
        return Lapse.ROLE
    return Lapse.EARLY if any(not day or day > (line.date or "") for day in before) else Lapse.NONE


def _told(
    step: Step,
    stops: Mapping[str, tuple[Stop, ...]],
    found: list[Caution],
    where: Mapping[str, str],
    said: Mapping[str | None, object],
) -> Step:
    """Return a step with its stops, what is read there, and what was said of it last."""
    line = said.get(step.task)
    read = (each for each in found if where[each.code] == step.task and each.severity is not Severity.HOLD_POINT)
    told = replace(step, stops=stops.get(step.task, ()), findings=tuple(read))
    if line is None:
        return told
    state, on, reason = (getattr(line, name) or "" for name in ("state", "date", "reason"))
    return replace(told, state=StepState(state), said_on=on, reason=reason if state == "skipped" else "")
