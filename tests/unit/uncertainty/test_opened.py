"""A figure opened: which inputs move it, how far, and between which ends it lies."""

import numpy as np
import pytest

from econ.evaluate.evaluate import evaluate
from econ.evaluate.figures import FIGURES, figure, inputs_behind
from econ.evaluate.sheet import moved
from econ.kernel.alternative import KEEP, SELF
from econ.tables.loaders import load_tables
from econ.uncertainty.opened import DOUBT_DRAWS, opened
from tests.demo import demo_answer

TABLES = load_tables()


@pytest.fixture(scope="module")
def case():
    """Return a demo case's answer, and what stands behind its figures."""
    answer = demo_answer("lower_level_cold")
    return answer, opened(answer.structure, answer.sheet, TABLES, seed=1)


def test_the_price_of_the_kit_moves_the_cash_of_the_kit_by_its_range_and_the_tax_on_it(case):
    answer, found = case
    mover = next(each for each in found.movers("cash_first_cost_usd", SELF) if each.path == "kit.price_usd")
    spread, tax = (answer.sheet.entry(path) for path in ("kit.price_usd", "money.sales_tax_frac"))
    by_hand = (spread.spread.high - spread.spread.low) * (1.0 + tax.likely)
    assert mover.at_high - mover.at_low == pytest.approx(by_hand, rel=1e-9)


@pytest.mark.parametrize("key", ["own_hours_h", "lcc_usd", "simple_payback_yr", "need_heat_kwh"])
def test_each_end_is_what_the_input_alone_gives_and_the_strongest_comes_first(case, key):
    answer, found = case
    movers = found.movers(key, SELF)
    at = SELF if figure(key).is_of_a_way else 0
    for mover in movers[:2]:
        low = answer.sheet.entry(mover.path).spread.low
        alone = evaluate(answer.structure, moved(answer.sheet, mover.path, np.array([low])), TABLES)
        assert mover.at_low == pytest.approx(float(figure(key).of(alone)[at, 0]), rel=1e-9)
    likely = float(found.likely[key][at])
    reach = [max(abs(each.at_low - likely), abs(each.at_high - likely)) for each in movers]
    told = [each for each in reach if not np.isnan(each)]
    assert told == sorted(told, reverse=True)


def test_movers_are_among_the_inputs_that_list_the_figure(case):
    answer, found = case
    for each in FIGURES:
        behind = set(inputs_behind(each.key, answer.sheet))
        assert {mover.path for mover in found.movers(each.key, SELF)} <= behind


def test_keeping_what_is_there_costs_nothing_now_whatever_the_inputs(case):
    assert case[1].movers("cash_first_cost_usd", KEEP) == ()


def test_ends_hold_a_few_draws_of_every_way(case):
    rows = case[1].ends["lcc_usd"]
    assert rows.shape == (4, DOUBT_DRAWS)
    assert np.all(rows.std(axis=1) > 0.0)
