"""Tasks of a route: the fixed list, and what each row makes of it."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.alternative import PARTIES, Party
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.kernel.errors import ShapeError, UnknownChoiceError

SELF_PARTY, HELPER_PARTY, ELECTRICIAN_PARTY, CONTRACTOR_PARTY = range(len(PARTIES))


@dataclass(frozen=True, slots=True)
class HoursSource:
    """Where the person-hours of one task and party come from.

    Attributes
    ----------
    choice : str
        Path of the choice that selects the figure; empty where one figure serves all.
    option : tuple of str
        Options of that choice, one an entry; a single empty text without a choice.
    key : tuple of str
        Cost key or path of the figure for each option; empty texts where the party cannot do the task.
    thickness_m : tuple of float
        Wall thickness at which the figure holds, hours then growing in proportion; NaN where thickness has no part. [m]
    """

    choice: str
    option: tuple[str, ...]
    key: tuple[str, ...]
    thickness_m: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Material:
    """One material of a task: the name of its unit price and of its quantity (empty: one)."""

    key: str
    quantity: str


@dataclass(frozen=True, slots=True, eq=False)
class TaskTable:
    """The tasks of one route in an order in which each comes after what it needs.

    Attributes
    ----------
    alternative : str
        The route.
    key, label : tuple of str, length T
        Stable name; what is done, in plain words.
    condition : tuple of str, length T
        Name of the site fact that makes the task needed; ``always`` for all sites.
    default_party : ndarray, shape (T,)
        Who does it unless the case says otherwise: position in PARTIES. [dimensionless]
    may : ndarray, shape (T, P)
        Whether a party does such work at all.
    hours : tuple of tuple of HoursSource, T x P
        Where the hours come from.
    crew_count : ndarray, shape (T,)
        People who can share the work side by side. [dimensionless]
    per, wait : tuple of str, length T
        Name of the quantity that multiplies the hours; path of the wait before the work.
    after : tuple of tuple of int, length T
        Positions of the tasks that must be done before.
    licence : tuple of str, length T
        ``mechanical``, ``electrical``, ``refrigerant`` or empty.
    height_limit_m : ndarray, shape (T,)
        Height above ground up to which owners may do it here; NaN where height has no part. [m]
    is_attended, gates_service : ndarray, shape (T,)
        Whether one only has to be there; whether the room is served once it is done.
    mishap_share_frac : ndarray, shape (T,)
        Part of the chance of a rescue visit that hangs on it. [dimensionless]
    materials : tuple of tuple of Material, length T
        What it uses up.
    visit : tuple of str, length T
        Visit of a trade it falls in where an inspection splits them: ``rough``, ``final`` or empty.
    hold_point, source : tuple of str, length T
        What must be true before it begins; where its figures come from.
    """

    alternative: str
    key: tuple[str, ...]
    label: tuple[str, ...]
    condition: tuple[str, ...]
    default_party: IntArray
    may: BoolArray
    hours: tuple[tuple[HoursSource, ...], ...]
    crew_count: FloatArray
    per: tuple[str, ...]
    wait: tuple[str, ...]
    after: tuple[tuple[int, ...], ...]
    licence: tuple[str, ...]
    height_limit_m: FloatArray
    is_attended: BoolArray
    gates_service: BoolArray
    mishap_share_frac: FloatArray
    materials: tuple[tuple[Material, ...], ...]
    visit: tuple[str, ...]
    hold_point: tuple[str, ...]
    source: tuple[str, ...]

    def __len__(self) -> int:
        return len(self.key)

    def position(self, key: str) -> int:
        """Return where a task stands in the list."""
        if key not in self.key:
            raise UnknownChoiceError(f"task of {self.alternative}", key, self.key[:3])
        return self.key.index(key)


@dataclass(frozen=True, slots=True, eq=False)
class TaskRows:
    """What each decision row makes of a route's tasks.

    Attributes
    ----------
    table : TaskTable
        The list.
    is_active : ndarray, shape (B, T)
        Whether the row needs the task.
    party : ndarray, shape (B, T)
        Who does it. [dimensionless]
    is_moved : ndarray, shape (B, T)
        Whether it had to go to another party than the one wanted.
    hours_h : ndarray, shape (B, T)
        Person-hours of all who do it. [hour]
    own_h, helper_h : ndarray, shape (B, T)
        The user's and the helper's part of them. [hour]
    elapsed_h : ndarray, shape (B, T)
        Working hours from its start to its end. [hour]
    wait_d : ndarray, shape (B, T)
        Calendar days that pass before it can start. [day]
    """

    table: TaskTable
    is_active: BoolArray
    party: IntArray
    is_moved: BoolArray
    hours_h: FloatArray
    own_h: FloatArray
    helper_h: FloatArray
    elapsed_h: FloatArray
    wait_d: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Work:
    """What a site asks of a task list, before it is known who does what.

    Attributes
    ----------
    is_active : ndarray, shape (B, T)
        Whether the row needs the task.
    hours_by_party_h : ndarray, shape (B, T, P)
        Person-hours were each party to do it. [hour]
    wait_d : ndarray, shape (B, T)
        Calendar days before it can start. [day]
    has_helper : ndarray, shape (B,)
        Whether a second person is there.
    """

    is_active: BoolArray
    hours_by_party_h: FloatArray
    wait_d: FloatArray
    has_helper: BoolArray


PARTY_CODE: Final = {party.value: position for position, party in enumerate(Party)}


def task_rows(table: TaskTable, work: Work, party: IntArray, wanted_party: IntArray) -> TaskRows:
    """Return hours, own part and elapsed time of every task for the parties that do them.

    Parameters
    ----------
    table : TaskTable
        The list.
    work : Work
        Active tasks, hours by party and waits.
    party : ndarray, shape (B, T)
        Who does each task. [dimensionless]
    wanted_party : ndarray, shape (B, T)
        Who was asked to. [dimensionless]

    Returns
    -------
    rows : TaskRows
        Hours of tasks that are not needed are 0.

    Notes
    -----
    Work that a crew can share takes half as long with two people and the hours are split evenly: with a helper where
    the user does it, always where the contractor does it. An attended task takes hours of the person there but holds
    nothing up.
    """
    if work.is_active.shape != party.shape:
        raise ShapeError(f"{work.is_active.shape} active tasks do not fit {party.shape} parties.")
    gathered = np.take_along_axis(work.hours_by_party_h, party[..., None], axis=2)[..., 0]
    hours = np.where(work.is_active, gathered, 0.0)
    is_own = party == SELF_PARTY
    crew = np.where(is_own & ~work.has_helper[:, None], 1.0, np.where(_is_crewed(party), table.crew_count, 1.0))
    own = np.where(is_own, hours / crew, 0.0)
    helper = np.where(is_own, hours - own, np.where(party == HELPER_PARTY, hours, 0.0))
    elapsed = np.where(table.is_attended, 0.0, hours / crew)
    wait = np.where(work.is_active, work.wait_d, 0.0)
    is_moved = work.is_active & (party != wanted_party)
    return TaskRows(table, work.is_active, party, is_moved, hours, own, helper, elapsed, wait)


def _is_crewed(party: IntArray) -> BoolArray:
    crewed: BoolArray = (party == SELF_PARTY) | (party == CONTRACTOR_PARTY)
    return crewed


def crew_elapsed_h(hours_h: FloatArray, crew_count: FloatArray) -> FloatArray:
    """Return how long a crew is busy when everybody always has something to do.

    Parameters
    ----------
    hours_h : array_like, shape (..., T)
        Person-hours of the tasks. [hour]
    crew_count : array_like, shape () or (...)
        People. [dimensionless]

    Returns
    -------
    elapsed_h : ndarray, shape (...)
        Least working time; the order of work can only lengthen it. [hour]

    Examples
    --------
    >>> float(crew_elapsed_h([3.0, 5.0], 2.0))
    4.0
    """
    elapsed: FloatArray = np.sum(np.asarray(hours_h, dtype=np.float64), axis=-1) / crew_count
    return elapsed
