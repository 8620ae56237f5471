"""The verdict where no way does all that was asked for: which falls least short, and what might be changed."""

from econ.evaluate.result import Result
from econ.kernel.alternative import ALTERNATIVES
from econ.report.numbers import hours, percent
from econ.report.style import NAMES
from econ.report.words.warmth import share_text, unmet_share_frac
from econ.uncertainty.verdict import Verdict


def nothing_fits(verdict: Verdict) -> bool:
    """Return whether even the way named first leaves some of the need undone."""
    if verdict.winner is None:
        return False
    return "short_of_need" in verdict.reasons[ALTERNATIVES.index(verdict.winner)]


def nothing_fits_text(result: Result, verdict: Verdict) -> str:
    """Return the verdict in three sentences: nothing does the job, what comes closest, what to change.

    Parameters
    ----------
    result : Result
        Likely values in row 0.
    verdict : Verdict
        One for which `nothing_fits` holds.
    """
    allowed = [at for at, reasons in enumerate(verdict.reasons) if "not_allowed" not in reasons]
    closest = min(allowed, key=lambda at: float(result.alternatives[at].unmet_cooling_kwh_per_yr[0]))
    way = result.alternatives[closest]
    warm = hours(float(way.unmet_cooling_h[0]))
    left, limit = share_text(unmet_share_frac(result, way)), percent(result.unmet_cooling_allowed_frac)
    return (
        f"None of these does all that you asked for as it stands. “{NAMES[way.name]}” comes closest: the room is "
        f"too warm for about {warm} a year, and {left} of the season's cooling is left undone, where {limit} still "
        "counts as doing the job. A larger size, shade on the sun side, a tighter room or a warmer set-point would "
        "bring one within reach; cost was not what decided."
    )
