"""A self-installation both ways: with contractors who finish a kit bought elsewhere, and with none who does."""

from dataclasses import dataclass

import numpy as np

from econ.case.choices import code, option_at
from econ.evaluate.plan_b import FINISHES
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation import Installation, installation
from econ.evaluate.wiring.measures import room_work
from econ.installation.first_cost import cash_first_cost_usd, first_cost_usd
from econ.installation.gate import is_on_kit
from econ.installation.task import CONTRACTOR_PARTY
from econ.kernel.alternative import HIRED, SELF, Standing
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables


@dataclass(frozen=True, slots=True)
class Finished:
    """The self-installation with one answer.

    Attributes
    ----------
    is_open : bool
        Whether the way can be gone at all; the figures of one that cannot are those of hiring the whole.
    cash_usd, first_usd, own_h, in_service_d : float
        Cash, first cost with own time, own hours, days to service. [USD] [USD] [hour] [day]
    tasks : tuple of str
        What a contractor does on the kit, in plain words.
    """

    is_open: bool
    cash_usd: float
    first_usd: float
    own_h: float
    in_service_d: float
    tasks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BothWays:
    """What hangs on whether a contractor takes on a kit bought elsewhere.

    Attributes
    ----------
    answer : str
        yes, no or not_known.
    if_yes, if_no : Finished
        The same work with either answer, likely values.
    takes_on_frac : Spread
        Chance that one contractor who is asked takes it on. [dimensionless]
    """

    answer: str
    if_yes: Finished
    if_no: Finished
    takes_on_frac: Spread

    @property
    def matters(self) -> bool:
        """Whether anything hangs on it with the work as it is given out."""
        return bool(self.if_yes.tasks)


def both_ways(structure: Structure, sheet: Sheet, tables: Tables) -> BothWays:
    """Return the self-installation priced with either answer.

    Parameters
    ----------
    structure : Structure
        Who does what.
    sheet : Sheet
        Likely values.
    tables : Tables
        Prices of measures on the room.

    Returns
    -------
    both : BothWays
        Where an answer leaves a task to nobody, the whole is hired.
    """
    work = room_work(structure, point(sheet), tables, 1)
    by_answer = {
        answer: installation(
            structure, {**work.values, FINISHES: np.asarray(code(FINISHES, answer))}, installation_tables(), 1, work
        )
        for answer in ("yes", "no")
    }
    answer = option_at(FINISHES, sheet.entry(FINISHES).likely)
    takes_on = tables.costs["owner_set_acceptance_frac"].spread()
    return BothWays(answer, _finished(by_answer["yes"]), _finished(by_answer["no"]), takes_on)


def _finished(ways: tuple[Installation, ...]) -> Finished:
    own = ways[SELF]
    is_open = own.standing != Standing.NOT_ALLOWED
    way, rows = own if is_open else ways[HIRED], own.tasks
    is_theirs = (
        rows.is_active[0] & (rows.party[0] == CONTRACTOR_PARTY) & is_on_kit(rows.table) & (rows.hours_h[0] > 0.0)
    )
    return Finished(
        is_open=is_open,
        cash_usd=float(cash_first_cost_usd(way.line_items)[0]),
        first_usd=float(first_cost_usd(way.line_items)[0]),
        own_h=float(way.own_hours_h[0]),
        in_service_d=float(way.schedule.in_service_d[0]),
        tasks=tuple(label for label, is_so in zip(rows.table.label, is_theirs, strict=True) if is_so),
    )
