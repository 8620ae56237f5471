"""Names that come closest to one that is not known."""

from collections.abc import Iterable
from difflib import SequenceMatcher
from heapq import nlargest


def nearest(name: str, known: Iterable[str], n: int = 3) -> tuple[str, ...]:
    """Return the known names most alike, best first; letter case does not matter.

    Examples
    --------
    >>> nearest("floor_area", ["wall", "floor_area_m2", "length_m"], 1)
    ('floor_area_m2',)
    """
    wanted = name.lower()[:200]
    matcher = SequenceMatcher(b=wanted, autojunk=False)

    def likeness(candidate: str) -> tuple[bool, float]:
        matcher.set_seq1(candidate.lower())
        return candidate.lower().startswith(wanted), matcher.ratio()

    return tuple(nlargest(n, known, key=likeness))
