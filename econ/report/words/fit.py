"""Whether a unit for window or wall can go in, why, and what it asks of its owner every year, in words."""

from typing import Final

from econ.evaluate.result import Result
from econ.kernel.alternative import WINDOW, Standing

_FIRST: Final[dict[Standing, str]] = {
    Standing.OPEN: "It can go in.",
    Standing.WITH_HELP: "It can go in, with a trade for part of it.",
    Standing.UNKNOWN: "Whether it can go in is not known yet.",
    Standing.NOT_ALLOWED: "It cannot go in.",
}

_LEAST_H: Final = 0.05
"""h a year below which nothing is said of them."""


def fit_lines(result: Result) -> tuple[str, ...]:
    """Return whether a unit goes in, each reason, and its hours every year.

    Parameters
    ----------
    result : Result
        Likely values.

    Returns
    -------
    lines : tuple of str
        The claim first.
    """
    way = result.alternatives[WINDOW]
    hours = float(way.upkeep_own_h_per_yr[0])
    season = (f"Every year it takes you about {hours:.1f} hours to store, fit, seal or cover it.",)
    return (_FIRST[way.standing], *way.reasons, *(season if hours >= _LEAST_H else ()))
