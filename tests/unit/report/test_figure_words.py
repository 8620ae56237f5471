"""A headline figure opened, in words."""

from datetime import date

import numpy as np
import pytest

from econ.evaluate.figures import CHANCE, FIGURES, figure
from econ.kernel.alternative import SELF
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT, first_cost_money
from econ.report.words.figure import (
    BY_DEFINITION,
    FORMULAS,
    behind_text,
    formula_text,
    opening_text,
    range_text,
    source_text,
    value_text,
    way_rows,
)
from tests.demo import demo_answer

LOOK = Look(date(2027, 3, 10), 2027)


def test_every_figure_and_the_chance_have_a_formula_in_words():
    assert set(FORMULAS) == {found.key for found in FIGURES} | {CHANCE}
    assert all(formula_text(key).endswith(".") for key in FORMULAS)


def test_sentences_of_formulas_are_short():
    sentences = [part for text in FORMULAS.values() for part in text.rstrip(".").replace(":", ".").split(". ")]
    assert sum(len(each.split()) for each in sentences) / len(sentences) <= 18


@pytest.mark.parametrize(
    ("key", "value", "told"),
    [
        ("cash_first_cost_usd", 4612.0, "$4,610"),
        ("annualised_cost_usd_per_yr", 1083.0, "$1,080 a year"),
        ("own_hours_h", 17.4, "17 hours"),
        ("in_service_d", 101.3, "Sat 19 June"),
        ("electricity_kwh_per_yr", 3553.6, "3,554 kWh"),
        ("sir", 3.244, "3.24"),
        ("irr", 0.2, "20.0 %"),
        ("simple_payback_yr", 4.6, "4.5 years"),
        ("emitted_kg_co2e_per_yr", 1434.6, "1,435 kg"),
        ("simple_payback_yr", float("nan"), NONE_TEXT),
    ],
)
def test_a_value_is_told_as_people_say_it(key, value, told):
    assert value_text(figure(key), value, LOOK) == told


def test_a_range_says_in_how_many_tries_there_is_one():
    rows = np.concatenate([np.linspace(1.0, 3.0, 75), np.full(25, np.nan)])
    assert range_text(figure("sir"), rows, LOOK) == "1.10 to 2.90, where it exists: 75 % of tries"
    assert range_text(figure("sir"), np.full(4, np.nan), LOOK) == "in no try"
    assert range_text(figure("fuel_kwh_per_yr"), np.zeros(4), LOOK) == ""


def test_sources_are_documents_or_say_that_it_is_a_definition():
    assert "10 CFR 436.21" in source_text("sir")
    assert "ISO 13790:2008" in source_text("need_heat_kwh")
    assert source_text("cash_first_cost_usd") == source_text(CHANCE) == BY_DEFINITION


def test_what_stands_behind_is_named_and_the_rest_counted():
    assert behind_text("upkeep_own_h_per_yr").endswith("units put away and put in again")
    assert "groups more" in behind_text("lcc_usd")
    assert behind_text(CHANCE) == behind_text("lcc_usd")


def test_a_card_says_how_a_figure_is_worked_out_and_its_range_where_there_are_draws():
    plain, drawn = demo_answer("lower_level_cold"), demo_answer("lower_level_cold", 64)
    key = "cash_first_cost_usd"
    assert opening_text(plain, key, SELF, LOOK) == formula_text(key)
    low, high = np.quantile(drawn.drawn.cash_first_cost_usd[SELF], (0.05, 0.95))
    told = opening_text(drawn, key, SELF, LOOK)
    assert told.endswith(f"Nine tries of ten: {first_cost_money(low)} to {first_cost_money(high)}.")
    assert opening_text(drawn, CHANCE, SELF, LOOK) == formula_text(CHANCE)


def test_a_figure_that_is_no_ways_own_is_the_same_for_each():
    result = demo_answer("lower_level_cold").result
    need = figure("need_heat_kwh")
    assert need.at(result, 0) == need.at(result, SELF) == float(result.need_heat_kwh.sum())
    assert way_rows(figure("lcc_usd"), result, SELF).shape == (1,)
