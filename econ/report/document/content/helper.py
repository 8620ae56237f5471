"""The helper's sheet: the steps with two people, what there is to lift, and where to stop; no money."""

from econ.evaluate.keeping import shopping
from econ.evaluate.result import AlternativeResult
from econ.evaluate.sheet import point
from econ.evaluate.split import tool_plan
from econ.evaluate.wiring.installation_tools import ToolPlan
from econ.kernel.alternative import PARTIES, SELF, Party
from econ.kernel.caution import Severity
from econ.report.document.block import Blanks, Block, Grid, Heading, Points, Sentence, Setting
from econ.report.document.content import said
from econ.report.document.content.basis import Basis
from econ.report.document.content.keeping import tested_lines
from econ.report.document.content.plan import holds, tasks_of
from econ.report.numbers import Quantity
from econ.report.words.keeping import goods_label
from econ.tables.tasks import installation_tables

_LEADS = {Party.SELF: "the owner", Party.HELPER: "you"}
READ = 5
"""Lines of tests that two people read: joints, air, drain, power."""

LICENSED = ("electrical", "refrigerant")
"""Work that no helper takes part in."""

MOST_STOPS = 5
GUARDS = ("lifting.", "wall.", "electrical.prove_dead", "refrigerant.")
"""Findings that a helper must have heard, by the beginning of their codes."""


def helper_sheet(basis: Basis) -> list[Block]:
    """Return the sheet.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    way = basis.result.alternatives[SELF]
    return [
        Heading("Helping on the day", 1),
        Sentence("You lift and hold. Power, wiring and refrigerant are for others. If in doubt, stop and ask."),
        Blanks(
            (
                ("Day and hour; where", ""),
                ("Whom you help; phone", ""),
                ("Outdoor unit weighs", said.span(basis, "kit.outdoor_kg", "kg", Quantity.WEIGHT)),
                ("Indoor unit weighs", said.span(basis, "kit.indoor_kg", "kg", Quantity.WEIGHT)),
                ("It stands on; height", _place(basis)),
                ("In an emergency call", ""),
            )
        ),
        Heading("Steps with two people"),
        _steps(basis, way),
        Grid(
            ("Tools to have at hand", "Parts to have at hand"),
            (_at_hand(basis, way),),
            (0.5, 0.5),
            setting=Setting.SMALL,
        ),
        Heading("Read together and written down"),
        Blanks(tested_lines(basis)[:READ]),
        Heading("Stop, and do not go on alone"),
        Points(_stops(basis)),
        Sentence("Bring: closed shoes, gloves, safety glasses, ear plugs, a dust mask."),
    ]


def _place(basis: Basis) -> str:
    parts = (said.option(basis, "site.outdoor_place"), said.length(basis, "site.outdoor_height_m"))
    return "; ".join(part or "________" for part in parts) if any(parts) else ""


def _steps(basis: Basis, way: AlternativeResult) -> Grid:
    """Return the steps that need two people or are the helper's, with their stops and a box to tick."""
    plan, stops = way.schedule, holds(way)
    crew = installation_tables().tasks[way.name]
    people = dict(zip(crew.key, crew.crew_count.tolist(), strict=True))
    licence = {task: kind in LICENSED for task, kind in zip(crew.key, crew.licence, strict=True)}
    rows = []
    for task in tasks_of(way):
        party = PARTIES[int(plan.party[0, task])]
        is_shared = party in _LEADS and (people[plan.task[task]] > 1.0 or party is Party.HELPER)
        if is_shared and not licence[plan.task[task]]:
            day = basis.look.day(float(plan.start_d[0, task]))
            rows.append((plan.label[task], _LEADS[party], day, stops.get(plan.task[task], ""), ""))
    titles = ("Step", "Led by", "Planned for", "Stop before it", "Done")
    return Grid(titles, tuple(rows), (0.33, 0.09, 0.15, 0.35, 0.08), setting=Setting.SMALL)


def _tools(basis: Basis) -> tuple[ToolPlan, ...]:
    return tool_plan(basis.answer.structure, point(basis.answer.sheet), installation_tables())


def _at_hand(basis: Basis, way: AlternativeResult) -> tuple[str, str]:
    """Return the tools and the parts that lie ready on the day."""
    tools, parts = map(_tool, _tools(basis)), map(goods_label, shopping(way))
    return "; ".join(tools) or "None", "; ".join(parts) or "None"


def _tool(plan: ToolPlan) -> str:
    """Return a tool, with what must be done to have it on the day."""
    return plan.label + {"hire": " (hired: fetch it)", "borrow": " (borrowed: fetch it)"}.get(plan.way, "")


def _stops(basis: Basis) -> tuple[str, ...]:
    """Return the stops of the work, gravest first, each with what to do."""
    told = [
        f"{each.message} {each.action}"
        for each in basis.result.cautions
        if each.severity is Severity.HOLD_POINT and each.code.startswith(GUARDS)
    ]
    return tuple(told[:MOST_STOPS]) or ("Whatever looks, smells or sounds wrong: stop and step back.",)
