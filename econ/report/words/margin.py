"""What hiring one task costs and saves, in words."""

import math

from econ.evaluate.split import TaskMargin
from econ.report.numbers import money


def margin_sentence(margin: TaskMargin) -> str:
    """Return a task's make-or-buy margin as a sentence.

    Parameters
    ----------
    margin : TaskMargin
        The task, all other tasks held.

    Returns
    -------
    sentence : str
        Empty where there is nothing to choose.
    """
    if math.isnan(margin.flip_usd_per_h) or margin.hired_by is None:
        return ""
    saves = f"saves {margin.saved_h:.1f} h of yours"
    if margin.extra_cash_usd <= 0.0:
        return f"The {margin.hired_by.value} costs {money(-margin.extra_cash_usd)} less and {saves}."
    even = f"even at {money(margin.flip_usd_per_h)} an hour"
    return f"The {margin.hired_by.value} costs {money(margin.extra_cash_usd)} more and {saves}: {even}."
