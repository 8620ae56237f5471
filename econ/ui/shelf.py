"""The shelf: cases saved on this machine, and ready-made ones, as the pages need them."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from functools import lru_cache
from typing import Final, TypeAlias

from econ.case.schema import Case
from econ.case.toml import read_case, read_case_file, write_case
from econ.kernel.errors import EconError
from econ.report.numbers import day_text
from econ.store import cases, sharing
from econ.store.cases import SavedCase
from econ.store.connection import ready, store_path
from econ.tables.place import data_root
from econ.ui import identity
from econ.ui.option_words import option_words

Opened: TypeAlias = tuple[SavedCase, Case]
Move: TypeAlias = Callable[[SavedCase], Opened]
UNNAMED: Final = "A new case"


@dataclass(frozen=True, slots=True)
class Ready:
    """A ready-made case.

    Attributes
    ----------
    key, name : str
        File name without ending; title on screen.
    case : Case
        The case itself.
    """

    key: str
    name: str
    case: Case


def begun() -> str:
    """Look whether the shelf can be read, set a damaged one aside, and return what the user should know of it."""
    try:
        return ready(store_path())
    except EconError as error:
        return str(error)


def addressed(address: str) -> Opened | None:
    """Return the saved case of an address; None where this owner has none there, or it cannot be read."""
    try:
        return as_it_stands(cases.number_of(store_path(), address, identity.owner()))
    except EconError:
        return None


def shared(token: str) -> tuple[Opened, bool] | None:
    """Return the case that a link shows, and whether it may be changed through it; None where it shows none."""
    try:
        stands, may_edit = sharing.shared(store_path(), token)
        return read(stands), may_edit
    except EconError:
        return None


def last() -> Opened | None:
    """Return the case last changed that can be read; None on an empty shelf."""
    for line in cases.listed(store_path(), identity.owner()):
        try:
            return as_it_stands(line.case_id)
        except EconError:
            continue
    return None


def saved_words(saved_at: str, today: date) -> str:
    """Return when a case was saved, by this machine's clock; empty where that was not kept.

    Examples
    --------
    >>> saved_words("", date(2027, 7, 14))
    ''
    """
    if not saved_at:
        return ""
    at = datetime.fromisoformat(saved_at).astimezone()
    return f"saved {day_text(at.date(), today.year)} {at:%H:%M}"


def read(saved: SavedCase) -> Opened:
    """Return a saved case with what its text holds; names are not looked up, so that an old station can be mended."""
    return saved, read_case(saved.text)


def read_text(text: str) -> tuple[str, Case]:
    """Return a version's text with the case it holds."""
    return text, read_case(text)


def reverted(stands: SavedCase, number: int) -> Opened:
    """Come back to an earlier version, as the newest."""
    return read(cases.revert(store_path(), stands.case_id, number, stands.head))


def saved(stands: SavedCase | None, case: Case) -> SavedCase:
    """Save a change and return how the case stands; the first change of a new case puts it on the shelf."""
    name, text = title(case), write_case(case)
    if stands is None:
        return cases.create(store_path(), name, text, identity.owner())
    now = cases.save(store_path(), stands.case_id, text, stands.head)
    return now if now.name == name else cases.rename(store_path(), now.case_id, name)


def undone(stands: SavedCase) -> Opened:
    """Take the last change back."""
    return read(cases.undo(store_path(), stands.case_id, stands.head))


def redone(stands: SavedCase) -> Opened:
    """Do again what was taken back."""
    return read(cases.redo(store_path(), stands.case_id, stands.head))


def as_it_stands(case_id: int) -> Opened:
    """Return a case as the shelf holds it now."""
    return read(cases.opened(store_path(), case_id))


def title(case: Case) -> str:
    """Return the name of a case: the user's, else room kind and town."""
    if case.record.name:
        return case.record.name
    kind = case.rooms[0].kind
    words = [option_words("rooms[].kind", kind)] if kind else []
    place = case.place.town or case.place.station or ("hourly weather file" if case.place.hourly_file else "")
    words += [place] if place else []
    return ", ".join(words) or UNNAMED


@lru_cache(maxsize=1)
def ready_cases() -> tuple[Ready, ...]:
    """Return the ready-made cases that travel with the program."""
    files = sorted((data_root() / "cases").glob("*.toml"))
    read_files = [(file.stem, read_case_file(file)) for file in files]
    return tuple(Ready(key, case.record.name or key, case) for key, case in read_files)
