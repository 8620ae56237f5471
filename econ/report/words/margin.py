"""What hiring one task costs and saves, in words."""

import math

from econ.evaluate.split import SplitAdvice, TaskMargin
from econ.kernel.alternative import Party
from econ.report.numbers import money, tenths

_LEAST_H = 0.05
_LEAST_USD = 0.5
"""Below these a difference is not worth a word: what would be written is 0."""


def margin_sentence(margin: TaskMargin) -> str:
    """Return a task's make-or-buy margin as a sentence, from where it stands now.

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
    even = f": even at {money(margin.flip_usd_per_h)} an hour" if margin.extra_cash_usd > 0.0 else ""
    if margin.now not in (Party.SELF, Party.HELPER):
        costs = f"costs {money(abs(margin.extra_cash_usd))} {'less' if margin.extra_cash_usd > 0.0 else 'more'}"
        return f"Doing it yourself {costs} and takes {tenths(margin.saved_h)} h of yours{even}."
    costs = f"costs {money(abs(margin.extra_cash_usd))} {'more' if margin.extra_cash_usd > 0.0 else 'less'}"
    return f"The {margin.hired_by.value} {costs} and saves {tenths(margin.saved_h)} h of yours{even}."


def best_sentence(advice: SplitAdvice) -> str:
    """Return how the cheapest allowed split stands against the present one."""
    hour = money(advice.hour_value_usd_per_h)
    if advice.saved_usd < _LEAST_USD:
        return f"No allowed split is cheaper than this one with your hour at {hour}."
    cash, own = _cash_change(-advice.saved_cash_usd), _own_change(-advice.saved_h)
    return f"The best split with your hour at {hour} {' and '.join(part for part in (cash, own) if part)}."


def _cash_change(more_usd: float) -> str:
    if abs(more_usd) < _LEAST_USD:
        return ""
    return f"costs {money(abs(more_usd))} {'more' if more_usd > 0.0 else 'less'}"


def _own_change(more_h: float) -> str:
    if abs(more_h) < _LEAST_H:
        return ""
    return f"takes {tenths(abs(more_h))} h {'more' if more_h > 0.0 else 'less'} of yours"


def close_sentence(advice: SplitAdvice, low_usd_per_h: float, high_usd_per_h: float) -> str:
    """Return the task of the user's own whose margin lies nearest to what an hour may be worth to them.

    Parameters
    ----------
    advice : SplitAdvice
        Margins in the present split.
    low_usd_per_h, high_usd_per_h : float
        Range of the value of the user's hour. [USD/hour]

    Returns
    -------
    sentence : str
        Of the tasks that turn within the range the one that saves most hours; empty where none does.
    """
    turning = [
        margin
        for margin in advice.tasks
        if margin.now is Party.SELF and margin.hired_by and low_usd_per_h <= margin.flip_usd_per_h <= high_usd_per_h
    ]
    if not turning:
        return ""
    found = max(turning, key=lambda margin: margin.saved_h)
    hired, even = found.hired_by, f"even at {money(found.flip_usd_per_h)} an hour"
    costs, saves = f"costs {money(found.extra_cash_usd)}", f"saves {tenths(found.saved_h)} h"
    return f"Close: giving “{found.label}” to the {hired} {costs} and {saves}: {even}."
