"""Every picture of a result: a figure, the sentence above it and the table beneath."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import plotly.graph_objects as go

from econ.evaluate.result import Result
from econ.report.look import Look
from econ.report.pictures import (
    calendar,
    capacity,
    energy,
    first_cost,
    heat_loss,
    heat_source,
    lifetime,
    need,
    running_total,
)
from econ.report.pictures.frame import Columns


@dataclass(frozen=True, slots=True)
class Chart:
    """One picture.

    Attributes
    ----------
    title : str
        What it shows, as a heading.
    figure : callable
        Result and look in, figure out; that of the running total also takes a result at draws, for its bands.
    statement : callable
        The one sentence above it that is true without it.
    table : callable
        The same as columns, for "show as a table".
    """

    title: str
    figure: Callable[..., go.Figure]
    statement: Callable[[Result, Look], str]
    table: Callable[[Result, Look], Columns]


CHARTS: Final[dict[str, Chart]] = {
    "running_total": Chart(
        "Running total over the years", running_total.figure, running_total.statement, running_total.table
    ),
    "first_cost": Chart("First cost", first_cost.figure, first_cost.statement, first_cost.table),
    "calendar": Chart("Calendar to the first cool day", calendar.figure, calendar.statement, calendar.table),
    "lifetime": Chart("Lifetime cost by piece", lifetime.figure, lifetime.statement, lifetime.table),
    "need": Chart("A year of need", need.figure, need.statement, need.table),
    "energy": Chart("Energy bought by month", energy.figure, energy.statement, energy.table),
    "capacity": Chart("What a unit can give, and what is needed", capacity.figure, capacity.statement, capacity.table),
    "heat_source": Chart("Where the heat comes from", heat_source.figure, heat_source.statement, heat_source.table),
    "heat_loss": Chart("Where the heat goes", heat_loss.figure, heat_loss.statement, heat_loss.table),
}
"""Pictures by key, those of the answer page first and in its order."""
