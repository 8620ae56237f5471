"""What is kept of an answer at draws: measures and sums, run of draws by run of draws, so that memory stays bounded."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from econ.evaluate.blocks import side_by_side
from econ.evaluate.evaluate import evaluate
from econ.evaluate.physics import joined
from econ.evaluate.result import Result
from econ.evaluate.sheet import Sheet, with_columns
from econ.evaluate.structure import Structure
from econ.installation.cash import cash_by_month_usd
from econ.kernel.arrays import FloatArray
from econ.lifecycle.measures import Measures
from econ.tables.loaders import Tables
from econ.uncertainty.draws import draws_of

SingleArray = NDArray[np.float32]

ROWS_PER_RUN: Final = 2048
"""Draws evaluated at a time: what they hold meanwhile is about 30 MB a worker, and fewer spend time on calls."""

MOST_SHOWN: Final = 4096
"""Draws of which years, months and lines are kept. Assumption: as many as a case has unless more are asked for."""

MOST_MONTHS: Final = 25
"""Months of cash kept: the longest wait that a form takes is two years."""


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
    """What pages and reports tell of draws; alternatives first, in the order of ALTERNATIVES.

    Attributes
    ----------
    measures : Measures
        Life-cycle measures, each (A, B).
    lcc_at_zero_hour_usd : ndarray, shape (A, B)
        Life-cycle cost with own hours at nothing. [USD]
    first_cost_usd, cash_first_cost_usd : ndarray, shape (A, B)
        First cost, and its cash. [USD]
    energy_cost_usd_per_yr : ndarray, shape (A, B)
        Energy of a full year at today's prices. [USD/year]
    in_service_d : ndarray, shape (A, B)
        Days from the decision; NaN where nothing new comes into service. [day]
    running_total_usd : ndarray of float32, shape (A, S, n_year + 1)
        Spent by the end of each year: in single precision and of S draws, the first `MOST_SHOWN`, as only levels of it
        are shown. [USD]
    paid_by_month_usd : ndarray of float32, shape (A, S, MOST_MONTHS)
        Cash that has left by the end of each month after the decision, likewise. [USD]
    line_usd : ndarray of float32, shape (A, S, L)
        Lines of first cost in the order of each way's own, 0 beyond its last, likewise. [USD]
    """

    measures: Measures
    lcc_at_zero_hour_usd: FloatArray
    first_cost_usd: FloatArray
    cash_first_cost_usd: FloatArray
    energy_cost_usd_per_yr: FloatArray
    in_service_d: FloatArray
    running_total_usd: SingleArray
    paid_by_month_usd: SingleArray
    line_usd: SingleArray


def kept(result: Result, deposit_frac: FloatArray) -> Drawn:
    """Return what is kept of a result at draws.

    Parameters
    ----------
    result : Result
        B rows.
    deposit_frac : array_like, shape () or (B,)
        Share of a contractor's lines that is paid at signing. [dimensionless]
    """
    ways = result.alternatives
    paid = np.stack([cash_by_month_usd(way.line_items, way.in_service_d, deposit_frac, MOST_MONTHS) for way in ways])
    return Drawn(
        measures=result.measures,
        lcc_at_zero_hour_usd=result.lcc_at_zero_hour_usd,
        first_cost_usd=np.stack([way.first_cost_usd for way in ways]),
        cash_first_cost_usd=np.stack([way.cash_first_cost_usd for way in ways]),
        energy_cost_usd_per_yr=np.stack([way.energy_cost_usd_per_yr for way in ways]),
        in_service_d=np.stack([way.in_service_d for way in ways]),
        running_total_usd=result.streams.running_total_usd.astype(np.float32),
        paid_by_month_usd=np.cumsum(paid, axis=-1).astype(np.float32),
        line_usd=_lines_usd(result),
    )


def _lines_usd(result: Result) -> SingleArray:
    """Return the lines of every way side by side, shape (A, B, L)."""
    amounts = [way.line_items.amount_usd for way in result.alternatives]
    lines = np.zeros((len(amounts), len(amounts[0]), max(rows.shape[1] for rows in amounts)), dtype=np.float32)
    for way, rows in enumerate(amounts):
        lines[way, :, : rows.shape[1]] = rows
    return lines


def _without_shown(found: Drawn) -> Drawn:
    """Return what is kept of draws beyond `MOST_SHOWN`: copies, as views would hold the rest in memory."""
    return replace(
        found,
        running_total_usd=found.running_total_usd[:, :0].copy(),
        paid_by_month_usd=found.paid_by_month_usd[:, :0].copy(),
        line_usd=found.line_usd[:, :0].copy(),
    )


def drawn_rows(structure: Structure, sheet: Sheet, tables: Tables, n_draw: int, seed: int) -> Drawn:
    """Return what is kept at draws of every ranged input.

    Parameters
    ----------
    structure : Structure
        What picks formulas; sizes stay those chosen at likely values.
    sheet : Sheet
        Ranges.
    tables : Tables
        Stations.
    n_draw : int
        A number that `draw_count` returns.
    seed : int
        Seed of the draws.

    Returns
    -------
    drawn : Drawn
        B = n_draw rows, the same whatever `ROWS_PER_RUN` is.
    """
    draws = draws_of(sheet.low, sheet.likely, sheet.high, n_draw, seed)

    def run(part: tuple[int, int]) -> Drawn:
        values = with_columns(sheet, draws.values(*part))
        found = kept(evaluate(structure, values, tables), values["finance.deposit_frac"])
        return found if part[0] < MOST_SHOWN else _without_shown(found)

    return joined(side_by_side(run, draws.runs(ROWS_PER_RUN)), axis=1)
