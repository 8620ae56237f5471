"""Gates: which party may do a task on this site, and why not."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY, TaskTable
from econ.kernel.arrays import BoolArray, FloatArray, IntArray


@dataclass(frozen=True, slots=True, eq=False)
class GateFacts:
    """What decides who may do a task; what is not known counts as the careful side.

    Attributes
    ----------
    lives_here : ndarray, shape (B,)
        The owner lives in the home the work is done in.
    may_mechanical : ndarray, shape (B,)
        An owner may do the mechanical work here; unknown counts as yes and is asked about elsewhere.
    may_electrical : ndarray, shape (B,)
        An owner is known to be allowed electrical work in their own home.
    is_quick : ndarray, shape (B,)
        The lines are pre-charged with couplings made for the purpose.
    has_helper : ndarray, shape (B,)
        A second person is there.
    height_m : ndarray, shape (B,)
        Height of the outdoor unit above ground. [m]
    line_reaches : ndarray, shape (B,)
        The lines in the box are long enough, with an extension where the maker allows one.
    has_space : ndarray, shape (B,)
        The panel is known to have room for the breaker of a new circuit, or none is needed.
    """

    lives_here: BoolArray
    may_mechanical: BoolArray
    may_electrical: BoolArray
    is_quick: BoolArray
    has_helper: BoolArray
    height_m: FloatArray
    line_reaches: BoolArray
    has_space: BoolArray


Bar = Callable[[TaskTable, GateFacts], BoolArray]


def _licensed(table: TaskTable, licence: str) -> BoolArray:
    return np.array([entry == licence for entry in table.licence], dtype=np.bool_)


def _bars_licensed_electrical(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = _licensed(table, "electrical") & ~facts.may_electrical[:, None]
    return barred


def _bars_electrical_in_let_home(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = _licensed(table, "electrical") & ~facts.lives_here[:, None]
    return barred


def _bars_licensed_mechanical(table: TaskTable, facts: GateFacts) -> BoolArray:
    is_mechanical = _licensed(table, "mechanical") | _licensed(table, "refrigerant")
    barred: BoolArray = is_mechanical & ~facts.may_mechanical[:, None]
    return barred


def _bars_sealed_circuit(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = _licensed(table, "refrigerant") & ~facts.is_quick[:, None]
    return barred


def _bars_height(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = facts.height_m[:, None] > table.height_limit_m
    return barred


_OF_THE_LINES: Final = ("line_set", "connect_lines")
"""Tasks that go to whoever makes up lines of another length."""


def _named(table: TaskTable, *keys: str) -> BoolArray:
    return np.array([key in keys for key in table.key], dtype=np.bool_)


def _bars_short_line(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = _named(table, *_OF_THE_LINES) & ~facts.line_reaches[:, None]
    return barred


def _bars_full_panel(table: TaskTable, facts: GateFacts) -> BoolArray:
    barred: BoolArray = _named(table, "circuit") & ~facts.has_space[:, None]
    return barred


BARS: Final[Mapping[str, tuple[str, Bar]]] = {
    "licensed_electrical": (
        "Electrical work needs a licensed electrician unless the permit office says that an owner may do it.",
        _bars_licensed_electrical,
    ),
    "let_home": (
        "The owner's exemption for electrical work holds only in the home the owner lives in.",
        _bars_electrical_in_let_home,
    ),
    "licensed_mechanical": ("Mechanical work here is for a licensed contractor.", _bars_licensed_mechanical),
    "sealed_circuit": (
        "These lines are flared: opening the refrigerant circuit is for a certified person.",
        _bars_sealed_circuit,
    ),
    "short_line": (
        "The lines in the box do not reach: move the outdoor unit nearer, or a certified person makes up longer ones.",
        _bars_short_line,
    ),
    "full_panel": (
        "The panel is not known to have two free spaces: an electrician makes room first.",
        _bars_full_panel,
    ),
    "height": ("The outdoor unit hangs too high to be set without a contractor's lift or scaffold.", _bars_height),
}
"""What keeps a task from the user: code, reason in plain words, rule."""


def barred_by(table: TaskTable, facts: GateFacts) -> dict[str, BoolArray]:
    """Return, by code, which tasks each bar keeps from the user.

    Parameters
    ----------
    table : TaskTable
        The list.
    facts : GateFacts
        The site.

    Returns
    -------
    barred : dict of str to ndarray, shape (B, T)
        True where the user may not do the task for that reason.
    """
    return {code: rule(table, facts) for code, (_, rule) in BARS.items()}


def allowed(table: TaskTable, facts: GateFacts) -> BoolArray:
    """Return which party may do each task.

    Parameters
    ----------
    table : TaskTable
        The list.
    facts : GateFacts
        The site.

    Returns
    -------
    allowed : ndarray, shape (B, T, P)
        The table's own limits, less what law and safety keep from the user; a helper may do what the user may, but no
        electrical work and no refrigerant connection.
    """
    may = np.repeat(table.may[None], len(facts.height_m), axis=0)
    is_barred = np.logical_or.reduce(list(barred_by(table, facts).values()))
    may[:, :, SELF_PARTY] &= ~is_barred
    for_user_only = _licensed(table, "electrical") | _licensed(table, "refrigerant")
    may[:, :, HELPER_PARTY] &= ~is_barred & ~for_user_only & facts.has_helper[:, None]
    return may


def assigned_party(is_allowed: BoolArray, wanted_party: IntArray) -> IntArray:
    """Return who does each task: the one wanted where allowed, else the user, the electrician, the contractor.

    Parameters
    ----------
    is_allowed : ndarray, shape (B, T, P)
        Which party may do it.
    wanted_party : ndarray, shape (B, T)
        Who is asked to. [dimensionless]

    Returns
    -------
    party : ndarray, shape (B, T)
        The first in that order who may; a task nobody may do goes to the contractor. [dimensionless]
    """
    party = np.full(wanted_party.shape, CONTRACTOR_PARTY, dtype=np.int64)
    party = np.where(is_allowed[:, :, ELECTRICIAN_PARTY], ELECTRICIAN_PARTY, party)
    party = np.where(is_allowed[:, :, SELF_PARTY], SELF_PARTY, party)
    is_wanted = np.take_along_axis(is_allowed, wanted_party[..., None], axis=2)[..., 0]
    return np.where(is_wanted, wanted_party, party)


_ANY_DRILLER: Final = ("wall_hole", "sleeve_seal")
"""Licensed work that has nothing to do with whose unit it is for."""


def is_on_kit(table: TaskTable) -> BoolArray:
    """Return which tasks a contractor refuses who takes on no unit bought elsewhere.

    Parameters
    ----------
    table : TaskTable
        The list.

    Returns
    -------
    is_on_kit : ndarray, shape (T,)
        Licensed work on the unit itself and the permit for it; a hole in the wall is anybody's. Assumption.
    """
    return np.array(
        [
            key == "permit_apply" or (bool(licence) and key not in _ANY_DRILLER)
            for key, licence in zip(table.key, table.licence, strict=True)
        ],
        dtype=np.bool_,
    )


def without_refused(is_allowed: BoolArray, table: TaskTable, refuses: BoolArray) -> BoolArray:
    """Return which party may do each task once contractors have refused the kit.

    Parameters
    ----------
    is_allowed : ndarray, shape (B, T, P)
        Which party the law and the maker let do it.
    table : TaskTable
        The list of a self-installation.
    refuses : ndarray, shape (B,)
        No contractor finishes or starts a kit bought elsewhere.

    Returns
    -------
    is_allowed : ndarray, shape (B, T, P)
        Where a task is left to nobody, the way is closed.
    """
    may = is_allowed.copy()
    may[:, :, CONTRACTOR_PARTY] &= ~(refuses[:, None] & is_on_kit(table))
    return may
