"""What a quote lacks, in words and dollars."""

import pytest

from econ.case.edit import with_value
from econ.kernel.alternative import HIRED
from econ.report.numbers import first_cost_money
from econ.report.words.scope import added_usd, scope_lines
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer, demo_case


def with_circuit(option):
    case = demo_case("lower_level_cold")
    return answer(with_value(case, "quote.electrical", option), load_tables(), TODAY, 0)


def test_a_part_that_is_not_said_is_counted_whole_and_told_with_its_amount():
    found = with_circuit("not_said")
    usd = added_usd(found.result.alternatives[HIRED])["electrical"]
    assert usd > 0.0
    [line] = [line for line in scope_lines(found) if "the circuit" in line]
    assert f"the whole of it, {first_cost_money(usd)}, is counted on top" in line


def test_answering_yes_takes_exactly_that_amount_off_the_hired_way():
    before, after = (with_circuit(option).result.alternatives[HIRED] for option in ("not_said", "yes"))
    fallen = float(before.cash_first_cost_usd[0] - after.cash_first_cost_usd[0])
    assert fallen == pytest.approx(added_usd(before)["electrical"])
    assert added_usd(after)["electrical"] == 0.0


def test_a_part_that_is_left_out_is_told_so():
    assert any(line.startswith("The quote leaves out the circuit: $") for line in scope_lines(with_circuit("no")))


def test_without_a_quote_there_is_nothing_to_say():
    assert scope_lines(demo_answer("garage_studio_hot")) == ()
