"""Towns: where they lie, found by the beginning of their name."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from econ.kernel.errors import UnknownChoiceError
from econ.tables.lookup import nearest_names
from econ.tables.record import read_table

SHORT: Final = {"st": "saint", "st.": "saint", "ft": "fort", "ft.": "fort", "mt": "mount", "mt.": "mount"}
"""Words that maps write short."""


@dataclass(frozen=True, slots=True)
class Town:
    """A town.

    Attributes
    ----------
    key : str
        "<town>, <ST>".
    latitude_deg, longitude_deg : float
        North and east positive. [degree]
    elevation_m : float
        Above sea level, from a coarse map. [m]
    """

    key: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float

    @property
    def state(self) -> str:
        """Two letters."""
        return self.key.rpartition(", ")[2]


@dataclass(frozen=True, slots=True)
class TownTable:
    """All towns.

    Attributes
    ----------
    towns : mapping of str to Town
        By key, the largest first.
    """

    towns: Mapping[str, Town]

    def town(self, key: str) -> Town:
        """Return a town by its key; letter case does not matter.

        Raises
        ------
        UnknownChoiceError
            If there is none; it holds those whose names come closest.
        """
        wanted = key.strip().casefold()
        for name, town in self.towns.items():
            if name.casefold() == wanted:
                return town
        raise UnknownChoiceError("town", key, self.search(key, 3) or nearest_names(key, self.towns))

    def search(self, words: str, count: int = 8) -> tuple[str, ...]:
        """Return the towns that words name best, as `ranked`; of towns that fit alike the largest comes first."""
        return ranked(words, self.towns, count)


def ranked(words: str, names: Iterable[str], count: int) -> tuple[str, ...]:
    """Return the names that words fit: the whole name first, then its beginning, then the beginning of a word in it.

    Parameters
    ----------
    words : str
        What was typed; letter case and commas do not matter, a last word of two letters may be the state.
    names : iterable of str
        "<place>, <ST>" or "<place>, <country>", the likelier first.
    count : int
        How many at most. [dimensionless]

    Returns
    -------
    found : tuple of str
        Names that fit nowhere are left out, however alike they are spelled.

    Examples
    --------
    >>> ranked("mesa", ["Costa Mesa, CA", "Mesa, AZ", "Mesaba, MN", "Naples, FL"], 4)
    ('Mesa, AZ', 'Mesaba, MN', 'Costa Mesa, CA')
    """
    wanted = _plain(words)
    if not wanted:
        return ()
    placed = [(fit, at, name) for at, name in enumerate(names) if (fit := _fit(wanted, name)) is not None]
    return tuple(name for _, _, name in sorted(placed)[:count])


@lru_cache(maxsize=1)
def load_towns() -> TownTable:
    """Return the towns, read and checked on the first call.

    Raises
    ------
    TableError
        If the table does not agree with its record.
    """
    table = read_table("climate/towns")
    keys = table.texts("key")
    columns = (table.numbers(name).tolist() for name in ("latitude", "longitude", "elevation_m"))
    towns = [Town(*cells) for cells in zip(keys, *columns, strict=True)]
    people = dict(zip(keys, table.numbers("population").tolist(), strict=True))
    towns.sort(key=lambda town: -people[town.key])
    return TownTable({town.key: town for town in towns})


def _plain(text: str) -> str:
    words = text.casefold().replace(",", " ").replace("/", " ").split()
    return " ".join(SHORT.get(word, word) for word in words)


def _fit(wanted: str, name: str) -> int | None:
    """Return how well a name fits, 0 best; None where it does not."""
    whole = _plain(name)
    town = _plain(name.rpartition(", ")[0])
    if wanted in (town, whole):
        return 0
    if whole.startswith(wanted):
        return 1
    return 2 if f" {wanted}" in whole else None
