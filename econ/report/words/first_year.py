"""The first year after the change in words: what was billed beside what was forecast, and the weather between."""

import math
from datetime import timedelta
from typing import Final

from econ.evaluate.first_year import Since
from econ.report.look import Look
from econ.report.numbers import Quantity, day_text, plain_number, plural

_NAMES: Final = {"electricity": "electricity", "gas": "gas"}
LOOK_FIRST: Final = (
    "Look first at filters, set-points, doors, and the old heat: is it still on? Then ask whoever looks after the unit."
)
MEASURES: Final = "What the measures on the room save is not in this forecast; bills may come out lower by it."
LEAST_K: Final = 0.3
"""Difference in temperature below which a year counts as usual. Assumption. [K]"""


def since_sentence(since: Since, look: Look) -> str:
    """Return in one sentence how the bills since the change lie to the forecast, or why that cannot be told.

    Parameters
    ----------
    since : Since
        The bills of one source of energy.
    look : Look
        Units and calendar of the reader.
    """
    if not since.rows:
        return since.problem
    billed = plain_number(since.billed_kwh)
    ends = since.rows[0].first, since.rows[-1].past - timedelta(days=1)
    first, last = (day_text(day, look.this_year) for day in ends)
    count = len(since.rows)
    head = f"{count} {_NAMES[since.carrier]} {plural('bill', count)} from {first} to {last}: {billed} kWh"
    if since.problem:
        return f"{head}; {plain_number(since.room_kwh)} kWh of it were forecast for this room. {since.problem}"
    low, high = since.forecast_kwh - since.doubt_kwh, since.forecast_kwh + since.doubt_kwh
    told = f"{plain_number(since.forecast_kwh)} kWh forecast ({plain_number(max(low, 0.0))} to {plain_number(high)})"
    return f"{head} billed, {told}: {_verdict(since)}."


def _verdict(since: Since) -> str:
    apart = since.billed_kwh - since.forecast_kwh
    if abs(apart) <= since.doubt_kwh:
        return "they agree with the forecast"
    return f"{plain_number(abs(apart))} kWh {'above' if apart > 0.0 else 'below'} the forecast, more than its doubt"


def since_more(since: Since, look: Look) -> tuple[str, ...]:
    """Return what to know beside it: the change by itself, the weather, and where to look if the bills are high.

    Parameters
    ----------
    since : Since
        The bills of one source of energy.
    look : Look
        Units and calendar of the reader.
    """
    if not since.rows:
        return ()
    told = [_weather(since, look)]
    if not since.problem:
        more = "less" if since.change_kwh < 0.0 else "more"
        change = plain_number(abs(since.change_kwh))
        told.insert(0, f"By the forecast the change itself takes {change} kWh {more} in these days than before.")
        told += [MEASURES] if since.has_measures else []
        told += [LOOK_FIRST] if since.billed_kwh > since.forecast_kwh + since.doubt_kwh else []
    return tuple(told)


def _weather(since: Since, look: Look) -> str:
    if math.isnan(since.warmer_k):
        return (
            "The bills do not all say how warm it was, so a typical year stands in; real weather may explain a tenth."
        )
    if abs(since.warmer_k) < LEAST_K:
        return "These days were about as warm as in a typical year."
    apart = look.measure(abs(since.warmer_k), Quantity.TEMPERATURE_DIFFERENCE)
    return f"These days were {apart} {'warmer' if since.warmer_k > 0.0 else 'colder'} than in a typical year."
