"""What is in the way of rooms that must be done: which limits, and by how much."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.portfolio.choice import doable
from econ.portfolio.options import Limits, Options
from econ.portfolio.programme import Programme, only

SECONDS: Final = 10.0
"""Time given to the search."""

_LEAST_FRAC: Final = 1e-6
"""Part of a limit from which overstepping it is told."""


@dataclass(frozen=True, slots=True)
class Obstacle:
    """A limit that is too small for what must be done.

    Attributes
    ----------
    limit : str
        Field of the limits.
    at : int
        Position of the year, or of the flat for a panel. [dimensionless]
    short : float
        By how much it is too small. [any]
    """

    limit: str
    at: int
    short: float


def obstacles(options: Options, limits: Limits) -> tuple[Obstacle, ...]:
    """Return the limits that keep rooms from being done that must be: the least that would have to be added.

    Parameters
    ----------
    options : Options
        The rooms.
    limits : Limits
        What may be spent.

    Returns
    -------
    obstacles : tuple of Obstacle
        Empty where all that must be done fits, or where no limit is what is in the way. Measured as parts of
        themselves, the limits together are overstepped as little as can be.
    """
    wanted = options.must & doable(options, limits.n_year)
    flats = np.zeros(len(options.whole_flat), dtype=np.bool_)
    flats[options.flat[wanted]] = True
    rooms = np.flatnonzero(wanted | (flats & options.whole_flat)[options.flat])
    programme = Programme(replace(only(options, rooms), must=wanted[rooms]), limits)
    found = programme.least_excess(wanted[rooms], SECONDS)
    if found.picks is None:
        return ()
    least = _LEAST_FRAC * np.maximum(programme.terms.most, 1.0)
    return tuple(
        Obstacle(programme.terms.name[at], int(programme.terms.at[at]), float(found.excess[at]))
        for at in np.flatnonzero(found.excess > least)
    )
