"""Rooms that are said alike but for numbers share a template: the lines of one sheet, without what waits for a size."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Final, NamedTuple

import numpy as np

from econ.case.choices import CHOICES
from econ.case.rooms_cell import BLANK
from econ.case.schema import Case
from econ.case.sections.bills import Bills
from econ.case.sections.building import Building
from econ.case.sections.room import Room
from econ.evaluate.draft import Draft
from econ.evaluate.machines import write_counts, write_now
from econ.evaluate.prepare import write_fixed
from econ.evaluate.usual import write_usual
from econ.kernel.arrays import BoolArray, FloatArray
from econ.tables.loaders import Tables

ROOM_NAME: Final = "Room"
"""Every room is called alike below, so that rooms of different names share a structure."""


class Kind(NamedTuple):
    """What picks a template: a room type, and options of a row by position, BLANK for those of the type."""

    type: str
    wall: int
    heat: int
    cooling: int


@dataclass(frozen=True, slots=True, eq=False)
class Templates:
    """Likely values of every template.

    Attributes
    ----------
    path : tuple of str
        Every path that a template has, shape (P,).
    likely : ndarray, shape (n, P)
        NaN where a template has no such line. [any]
    is_there : ndarray of bool, shape (n, P)
        Whether it has.
    drafts : tuple of Draft, length n
        The lines themselves.
    """

    path: tuple[str, ...]
    likely: FloatArray
    is_there: BoolArray
    drafts: tuple[Draft, ...]

    def column(self, path: str) -> FloatArray:
        """Return one line of every template, shape (n,). [any]"""
        column: FloatArray = self.likely[:, self.path.index(path)]
        return column


def templates(case: Case, tables: Tables, today: date, kinds: Sequence[Kind]) -> Templates:
    """Return the templates of some kinds of rooms.

    Parameters
    ----------
    case : Case
        Its rooms are the types; all else holds for the whole building.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    kinds : sequence of Kind
        What is wanted, each once.
    """
    drafts = tuple(_draft(case_of(case, kind), tables, today) for kind in kinds)
    path = tuple(dict.fromkeys(path for draft in drafts for path in draft.entries))
    place = {each: at for at, each in enumerate(path)}
    likely = np.full((len(drafts), len(path)), np.nan)
    is_there = np.zeros(likely.shape, dtype=np.bool_)
    for at, draft in enumerate(drafts):
        columns = [place[each] for each in draft.entries]
        likely[at, columns] = [entry.likely for entry in draft.entries.values()]
        is_there[at, columns] = True
    return Templates(path, likely, is_there, drafts)


def case_of(case: Case, kind: Kind) -> Case:
    """Return the case of one room of a kind: its type is its only room, and bills of one home say nothing of it."""
    types = {room.name: room for room in case.rooms}
    room = types.get(kind.type, Room()).model_copy(update={"name": ROOM_NAME})
    now = {
        name: CHOICES[f"now.{name}"][position]
        for name, position in (("heat", kind.heat), ("cooling", kind.cooling))
        if position != BLANK
    }
    if kind.wall != BLANK:
        room = room.model_copy(update={"wall": CHOICES["rooms[].wall"][kind.wall]})
    parts = {"rooms": (room,), "now": case.now.model_copy(update=now), "bills": Bills(), "building": Building()}
    return case.model_copy(update=parts)


def _draft(case: Case, tables: Tables, today: date) -> Draft:
    draft = Draft(case, tables, today)
    write_usual(draft)
    write_fixed(draft)
    write_counts(draft)
    write_now(draft)
    return draft
