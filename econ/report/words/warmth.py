"""How far a way falls short of cooling, held against what still counts as doing the job."""

from typing import Final

from econ.evaluate.result import AlternativeResult, Result
from econ.report.look import Look
from econ.report.numbers import Quantity, hours, percent

NOTICED_H: Final = 1.0
"""h a year; a shortfall below this is not told (assumption)."""

NARROW_SHARE: Final = 0.5
"""A shortfall within this share of the limit, on either side, is called just inside or just outside: the weather of the
next listed place, or a degree of set-point, moves it as far (assumption)."""

TENTHS_BELOW_FRAC: Final = 0.1
"""Share below which a tenth of a percent is told."""


def unmet_share_frac(result: Result, way: AlternativeResult) -> float:
    """Return the share of the season's cooling, drying included, that a way leaves undone. [dimensionless]"""
    wanted = float(result.need_cool_kwh[0].sum() + result.need_latent_kwh[0].sum())
    return float(way.unmet_cooling_kwh_per_yr[0]) / wanted if wanted > 0.0 else 0.0


def share_text(share_frac: float) -> str:
    """Return a share of the season's cooling.

    Examples
    --------
    >>> share_text(0.0312), share_text(0.841)
    ('3.1 %', '84 %')
    """
    return percent(share_frac, 1 if share_frac < TENTHS_BELOW_FRAC else 0)


def warm_text(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return how long and how much too warm a way leaves the room, and where the limit lies; empty if not at all.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    way : AlternativeResult
        One of its ways.
    look : Look
        Units to show.
    """
    hot = float(way.unmet_cooling_h[0])
    if hot < NOTICED_H:
        return ""
    told = f"Leaves the room too warm for about {hours(hot)} a year{_degree_hours(way, look)}"
    share, allowed = unmet_share_frac(result, way), result.unmet_cooling_allowed_frac
    limit = f"{share_text(share)} of the season's cooling is left undone"
    if share > allowed * (1.0 + NARROW_SHARE):
        return f"{told}: {limit}, and {percent(allowed)} still counts as doing the job."
    if share > allowed:
        return f"{told}: {limit}, just outside the {percent(allowed)} that counts as doing the job. {_NEIGHBOURS}"
    if share > allowed * (1.0 - NARROW_SHARE):
        return f"{told}: {limit}, just inside the {percent(allowed)} that counts as doing the job. {_NEIGHBOURS}"
    return f"{told}."


_NEIGHBOURS: Final = "Another weather place nearby may say otherwise."


def _degree_hours(way: AlternativeResult, look: Look) -> str:
    """Return degree-hours above the set-point, an upper estimate; empty where they were not worked out."""
    above_kh = float(way.unmet_cooling_kh[0])
    if above_kh <= 0.0:
        return ""
    return f" (degree-hours above your set-point: {look.measure(above_kh, Quantity.DEGREE_HOURS)}, an upper estimate)"
