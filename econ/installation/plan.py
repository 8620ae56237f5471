"""The plan of a way's work: steps in order, the stops before them, and what comes next."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Final

from econ.kernel.alternative import Alternative, Party
from econ.kernel.caution import Caution


class StepState(StrEnum):
    """How far a step is."""

    OPEN = "open"
    BEGUN = "begun"
    DONE = "done"
    SKIPPED = "skipped"


SETTLED: Final = (StepState.DONE, StepState.SKIPPED)


class Lapse(StrEnum):
    """Why a signature that was given does not count."""

    NONE = ""
    LATER = "later"
    FIGURES = "figures"
    ROLE = "role"
    EARLY = "early"


@dataclass(frozen=True, slots=True)
class Signature:
    """One signature at a stop.

    Attributes
    ----------
    who, role, licence, date, note : str
        As it was recorded; the date is year-month-day.
    place : int
        Which line of the record it is, from 0. [dimensionless]
    lapse : Lapse
        Why it does not count: dated later than today, given for other figures, by whom the stop does not ask for, or
        before its turn.
    """

    who: str
    role: str
    licence: str
    date: str
    note: str
    place: int
    lapse: Lapse = Lapse.NONE


@dataclass(frozen=True, slots=True)
class Stop:
    """A hold point of the plan: nothing behind it begins until those it asks for have signed.

    Attributes
    ----------
    code, message, action, party, source : str
        The finding's.
    asked : tuple of tuple of str
        One signature of each group is asked for, any role of it.
    figures : str
        The numbers that raised it, as a signature keeps them.
    signatures : tuple of Signature
        Those that were given and not taken back.
    is_at_turn : bool
        Whether it can be signed only once all steps before it are settled.
    """

    code: str
    message: str
    action: str
    party: str
    source: str
    asked: tuple[tuple[str, ...], ...]
    figures: str = ""
    signatures: tuple[Signature, ...] = ()
    is_at_turn: bool = False

    @property
    def counted(self) -> tuple[Signature, ...]:
        """The signatures that count."""
        return tuple(each for each in self.signatures if each.lapse is Lapse.NONE)

    @property
    def lacking(self) -> tuple[tuple[str, ...], ...]:
        """The groups of which nobody has signed."""
        roles = {each.role for each in self.counted}
        return tuple(group for group in self.asked if not roles & set(group))

    @property
    def is_open(self) -> bool:
        """Whether it still holds the work back."""
        return bool(self.lacking)


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """One step of the work.

    Attributes
    ----------
    task, label : str
        Stable name; what is done, in plain words.
    party : Party
        Who does it.
    hours_h, crew_count, cost_usd : float
        Person-hours; people side by side; what it costs, NaN where it is part of one price for all.
        [hour] [dimensionless] [USD]
    begin_d, done_d : float
        When it begins and is done, days from the decision. [day] [day]
    after : tuple of str
        Steps of the plan that must be settled before.
    check : str
        What must be true before it begins, in plain words.
    tools, materials : tuple of str
        What it takes, in plain words.
    stops : tuple of Stop
        Hold points before it.
    findings : tuple of Caution
        Cautions and notes that are read here.
    state : StepState
        How far it is.
    said_on, reason : str
        When that was said; why it was skipped.
    """

    task: str
    label: str
    party: Party
    hours_h: float
    crew_count: float
    cost_usd: float
    begin_d: float
    done_d: float
    after: tuple[str, ...] = ()
    check: str = ""
    tools: tuple[str, ...] = ()
    materials: tuple[str, ...] = ()
    stops: tuple[Stop, ...] = ()
    findings: tuple[Caution, ...] = ()
    state: StepState = StepState.OPEN
    said_on: str = ""
    reason: str = ""

    @property
    def is_wait(self) -> bool:
        """Whether nobody spends hours on it: something is asked for, and time passes."""
        return self.hours_h <= 0.0

    @property
    def is_settled(self) -> bool:
        """Whether it is done or skipped."""
        return self.state in SETTLED

    @property
    def open_stops(self) -> tuple[Stop, ...]:
        """The stops before it that nobody has opened."""
        return tuple(stop for stop in self.stops if stop.is_open)


@dataclass(frozen=True, eq=False)
class Plan:
    """The work of one way.

    Attributes
    ----------
    route : Alternative
        The way.
    steps : tuple of Step
        In the order of the work: each after all that must be settled before it.
    aside : tuple of Stop
        Stops on work that is no step of this plan.
    general : tuple of Caution
        Cautions and notes that belong to no step.

    Notes
    -----
    A stop holds back the step before which it stands and all that come later in the order, whatever was said of them.
    """

    route: Alternative
    steps: tuple[Step, ...]
    aside: tuple[Stop, ...] = ()
    general: tuple[Caution, ...] = field(default=())

    @cached_property
    def behind(self) -> frozenset[str]:
        """Names of the steps that an open stop holds back."""
        held = next((at for at, step in enumerate(self.steps) if step.open_stops), len(self.steps))
        return frozenset(step.task for step in self.steps[held:])

    @cached_property
    def next_step(self) -> Step | None:
        """The first step that can be begun now; None where all is done, under way or held back."""
        return next((step for step in self.ready if step.state is StepState.OPEN), None)

    @cached_property
    def ready(self) -> tuple[Step, ...]:
        """Steps before every open stop that are not settled, and all before them is."""
        settled = {step.task for step in self.steps if step.is_settled}
        return tuple(
            step
            for step in self.steps
            if step.task not in self.behind and not step.is_settled and settled.issuperset(step.after)
        )

    @property
    def waits(self) -> tuple[Step, ...]:
        """Steps that are under way."""
        return tuple(step for step in self.ready if step.state is StepState.BEGUN)

    @property
    def held_at(self) -> Step | None:
        """The step before which the first open stop stands."""
        return next((step for step in self.steps if step.open_stops), None)

    @property
    def open_stops(self) -> tuple[Stop, ...]:
        """All stops that nobody has opened, in the order of the work."""
        return tuple(stop for step in self.steps for stop in step.open_stops) + tuple(
            stop for stop in self.aside if stop.is_open
        )

    @property
    def stops(self) -> tuple[Stop, ...]:
        """All stops, open or signed, in the order of the work."""
        return tuple(stop for step in self.steps for stop in step.stops) + self.aside

    @property
    def is_done(self) -> bool:
        """Whether every step is done or skipped."""
        return all(step.is_settled for step in self.steps)

    def step(self, task: str) -> Step:
        """Return the step of a name."""
        return next(step for step in self.steps if step.task == task)

    def unsettled_before(self, step: Step) -> tuple[Step, ...]:
        """Return the steps that must be settled before a step and are not."""
        return tuple(each for each in self.steps if each.task in step.after and not each.is_settled)

    def may_be_signed(self, stop: Stop, step: Step | None) -> bool:
        """Return whether a stop may be signed now: some only when their turn has come."""
        return not stop.is_at_turn or step is None or not self.unsettled_before(step)

    def may_be_marked(self, task: str) -> bool:
        """Return whether something may be said of a step: it is not behind an open stop, and its turn has come."""
        return any(step.task == task for step in self.ready)


def held_before(before: tuple[str, ...], order: tuple[str, ...]) -> str:
    """Return the step that a stop holds back: of those it names the first in the order, else the first of all.

    Parameters
    ----------
    before : tuple of str
        Steps that it names; a plan need not hold them all.
    order : tuple of str
        The steps of the plan, in order.

    Returns
    -------
    task : str
        Empty where the plan holds no step.

    Examples
    --------
    >>> held_before(("cable", "circuit"), ("survey", "circuit", "cable"))
    'circuit'
    >>> held_before(("roof",), ("survey", "circuit"))
    'survey'
    """
    return next((task for task in order if task in before), order[0] if order else "")


def needed_before(after: Mapping[str, tuple[str, ...]], active: frozenset[str]) -> dict[str, tuple[str, ...]]:
    """Return what must be settled before each active task; through those that are not active it reaches what they need.

    Parameters
    ----------
    after : mapping of str to tuple of str
        What each task comes after, those it needs standing above it.
    active : frozenset of str
        Tasks that the site needs.

    Returns
    -------
    needed : dict of str to tuple of str
        For every task, active tasks alone.

    Examples
    --------
    >>> needed_before({"a": (), "b": ("a",), "c": ("b",)}, frozenset({"a", "c"}))["c"]
    ('a',)
    """
    needed: dict[str, tuple[str, ...]] = {}
    for task, before in after.items():
        reached = [(each,) if each in active else needed[each] for each in before]
        needed[task] = tuple(dict.fromkeys(name for names in reached for name in names))
    return needed
