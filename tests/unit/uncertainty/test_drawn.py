"""What is kept of draws: the same whatever the run, and what one evaluation of all draws gives."""

from dataclasses import fields

import numpy as np
import pytest

from econ.evaluate.evaluate import evaluate
from econ.evaluate.sheet import with_columns
from econ.tables.loaders import load_tables
from econ.uncertainty import drawn as module
from econ.uncertainty.drawn import MOST_MONTHS, drawn_rows, kept
from econ.uncertainty.draws import drawn
from tests import builders
from tests.demo import demo_answer

N_DRAW = 64


@pytest.fixture(scope="module")
def case():
    return demo_answer("garage_studio_hot")


def test_runs_put_together_are_the_evaluation_of_all_draws_at_once(case, monkeypatch):
    monkeypatch.setattr(module, "ROWS_PER_RUN", 16)
    found = drawn_rows(case.structure, case.sheet, load_tables(), N_DRAW, 5)
    values = with_columns(case.sheet, drawn(case.sheet.low, case.sheet.likely, case.sheet.high, N_DRAW, 5))
    whole = kept(evaluate(case.structure, values, load_tables()), values["finance.deposit_frac"])
    for field in fields(whole):
        if field.name != "measures":
            np.testing.assert_array_equal(getattr(found, field.name), getattr(whole, field.name), err_msg=field.name)
    for field in fields(whole.measures):
        np.testing.assert_array_equal(getattr(found.measures, field.name), getattr(whole.measures, field.name))


def test_cash_paid_ends_on_the_cash_first_cost():
    found = builders.drawn(9)
    assert found.paid_by_month_usd.shape[-1] == MOST_MONTHS
    np.testing.assert_allclose(found.paid_by_month_usd[..., -1], found.cash_first_cost_usd, rtol=1e-6)


def test_running_total_starts_at_the_first_cost_less_incentives():
    found = builders.drawn(9)
    left = np.stack([way.line_items.amount_usd.sum(axis=1) for way in builders.result(9).alternatives])
    np.testing.assert_allclose(found.running_total_usd[..., 0], left, rtol=1e-6)


def test_years_months_and_lines_are_kept_of_the_first_draws_only(case, monkeypatch):
    monkeypatch.setattr(module, "ROWS_PER_RUN", 16)
    monkeypatch.setattr(module, "MOST_SHOWN", 32)
    found = drawn_rows(case.structure, case.sheet, load_tables(), N_DRAW, 5)
    assert found.measures.lcc_usd.shape[1] == N_DRAW
    assert {part.shape[1] for part in (found.running_total_usd, found.paid_by_month_usd, found.line_usd)} == {32}
