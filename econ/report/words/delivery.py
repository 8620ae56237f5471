"""Until when the kit may go back, and what that would cost."""

from math import isfinite

from econ.evaluate.result import Result
from econ.kernel.alternative import SELF, Standing
from econ.report.look import Look
from econ.report.numbers import first_cost_money


def return_sentence(result: Result, look: Look) -> str:
    """Return the last day of return, the day of the dry-fit and the fee; nothing where the kit is not allowed.

    Parameters
    ----------
    result : Result
        The answer at likely values.
    look : Look
        Calendar.
    """
    way = result.alternatives[SELF]
    last_d, fitted_d = (float(days[0]) for days in (way.return_by_d, way.kit_return.dry_fit_d))
    if way.standing == Standing.NOT_ALLOWED or not (isfinite(last_d) and isfinite(fitted_d)):
        return ""
    return (
        f"The kit may go back until {look.day(last_d)}; the dry-fit, done on {look.day(fitted_d)}, shows whether it "
        f"must. Sending it back would cost about {first_cost_money(float(way.restocking_usd[0]))} and the freight."
    )
