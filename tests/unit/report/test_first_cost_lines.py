"""First cost line by line, with low and high over the draws."""

import json

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES, KEEP, SELF
from econ.report import tables
from econ.report.first_cost_lines import document, ranges_usd
from econ.report.numbers import UnitSystem
from econ.report.plain import compare_json
from tests.demo import NAMES, demo_answer

NAME = "sunroom_with_quote"


def test_each_line_is_its_quantity_times_its_price_between_low_and_high():
    found = demo_answer(NAME, 64)
    for place in range(len(ALTERNATIVES)):
        for line in document(found.result, place, found.drawn):
            amount = line["amount_usd"]
            assert amount["likely"] == pytest.approx(line["quantity"] * line["unit_price_usd"])
            assert amount["low"] <= amount["high"]
            assert line["source"]


def test_low_and_high_leave_one_draw_in_twenty_on_each_side():
    found = demo_answer(NAME, 64)
    low, high = ranges_usd(found.drawn, SELF)
    kit = found.result.alternatives[SELF].line_items.key.index("kit")
    amounts = found.drawn.line_usd[SELF, :, kit]
    assert np.mean(amounts < low[kit]) == pytest.approx(0.05, abs=1.0 / 64)
    assert np.mean(amounts > high[kit]) == pytest.approx(0.05, abs=1.0 / 64)


def test_lines_add_up_to_cash_and_first_cost_in_json():
    written = json.loads(json.dumps(compare_json(demo_answer(NAME, 16))))
    for way in written["alternatives"]:
        listed = written["first_cost_lines"][way["name"]]
        cash = sum(line["amount_usd"]["likely"] for line in listed if line["is_cash"])
        assert cash == pytest.approx(way["cash_first_cost_usd"])
        assert sum(line["amount_usd"]["likely"] for line in listed) == pytest.approx(way["first_cost_usd"])


def test_the_table_gains_low_and_high_with_draws_only():
    found = demo_answer(NAME, 16)
    plain, ranged = tables.first_cost(found.result, SELF), tables.first_cost(found.result, SELF, found.drawn)
    assert set(ranged) - set(plain) == {"Low", "High"}
    assert {len(cells) for cells in ranged.values()} == {len(plain["Line"])}
    kept = tables.first_cost(found.result, KEEP, found.drawn)
    assert kept["Low"] == kept["High"] == ["$0.00", "$0.00"]


def test_without_draws_low_and_high_are_not_made_up():
    lines = document(demo_answer(NAME).result, SELF, None)
    assert all(line["amount_usd"]["low"] is None and line["amount_usd"]["high"] is None for line in lines)


def test_lengths_and_their_prices_are_told_in_the_units_of_the_screen():
    result = demo_answer("lower_level_cold").result
    us, si = (tables.first_cost(result, SELF, units=units) for units in (UnitSystem.US, UnitSystem.SI))
    at = us["Line"].index("Drain pipe and fittings")
    assert (si["Quantity"][at], si["Each"][at]) == ("5.791 m", "$3.00")
    # 5.791 m is 19 ft; 3.00 a metre is 0.3048 x 3.00 = 0.91 a foot
    assert (us["Quantity"][at], us["Each"][at]) == ("19 ft", "$0.91")
    assert us["Amount"] == si["Amount"]


def test_sources_are_told_by_the_label_of_the_input_and_its_page_and_not_by_its_path():
    for name in NAMES:
        for place in range(len(ALTERNATIVES)):
            assert not any(
                "case: " in source for source in tables.first_cost(demo_answer(name).result, place)["Source"]
            )
    told = tables.first_cost(demo_answer("lower_level_cold").result, SELF)
    assert told["Source"][told["Line"].index("Ductless kit")] == "Kit: price of the kit (Equipment)"
