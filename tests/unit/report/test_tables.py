"""Tables and plain objects: the keys that others rely on, sums that add up, None for what does not exist."""

import json
from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES, KEEP, SELF, WINDOW
from econ.report import plain, tables
from econ.report.numbers import NONE_TEXT, money
from econ.report.style import NAMES
from tests import builders

DECISION = date(2027, 5, 20)
TOP_KEYS = {"results_version", "base_case", "lowest_lcc", "verdict", "alternatives", "cautions"}
WAY_KEYS = {
    "name", "standing", "meets_need", "first_cost_usd", "cash_first_cost_usd", "own_hours_h", "electricity_kwh_per_yr",
    "energy_cost_usd_per_yr", "lcc_usd", "annualised_cost_usd_per_yr", "net_savings_usd", "sir", "airr",
    "simple_payback_yr", "discounted_payback_yr", "in_service_date", "unmet_cooling_kwh_per_yr",
    "unmet_heating_kwh_per_yr", "probability_lowest_lcc_frac",
}  # fmt: skip


@pytest.fixture
def compared(result):
    return plain.compared(result, builders.verdict(result), DECISION)


def test_the_comparison_has_every_key_of_the_contract(compared):
    assert set(compared) >= TOP_KEYS
    assert [way["name"] for way in compared["alternatives"]] == [name.value for name in ALTERNATIVES]
    assert all(set(way) >= WAY_KEYS for way in compared["alternatives"])
    assert all(set(caution) >= {"code", "severity", "message"} for caution in compared["cautions"])


def test_the_comparison_is_json_without_numbers_that_do_not_exist(compared):
    assert json.loads(json.dumps(compared, allow_nan=False)) == compared


def test_a_measure_that_does_not_exist_is_none(compared):
    base = compared["alternatives"][WINDOW]
    assert [base[key] for key in ("sir", "airr", "irr", "simple_payback_yr", "discounted_payback_yr")] == [None] * 5


def test_a_measure_of_nought_is_nought_and_not_none(result):
    nought = replace(
        result, measures=replace(result.measures, sir=np.zeros((4, 1)), simple_payback_yr=np.zeros((4, 1)))
    )
    own = plain.compared(nought, builders.verdict(nought), DECISION)["alternatives"][SELF]
    assert (own["sir"], own["simple_payback_yr"]) == (0.0, 0.0)


def test_dates_count_from_the_decision_and_keeping_has_none(compared):
    dates = [way["in_service_date"] for way in compared["alternatives"]]
    assert dates == [None, "2027-05-31", "2027-06-26", "2027-08-24"]


def test_the_only_way_in_the_running_is_not_praised_as_the_cheapest(result):
    alone = replace(builders.verdict(result), eligible=tuple(at == WINDOW for at in range(4)))
    cells = tables.compared(result, alone)
    title = next(title for title in cells if title.startswith(NAMES[ALTERNATIVES[WINDOW]]))
    told = dict(zip(cells[""], cells[title], strict=True))
    assert told["Cheapest"] == "the only one in the running"


def test_a_way_that_is_not_eligible_has_no_chance(compared):
    chances = [way["probability_lowest_lcc_frac"] for way in compared["alternatives"]]
    assert chances == [None, 0.04, 0.95, 0.01]


def test_without_a_winner_the_lowest_is_none(result):
    nobody = replace(builders.verdict(result), winner=None, runner_up=None)
    assert plain.compared(result, nobody, DECISION)["lowest_lcc"] is None


def test_loads_add_up_over_all_rooms(result):
    found = plain.loaded(result)
    for key in ("design_heating_w", "annual_heating_kwh", "annual_cooling_latent_kwh"):
        assert found[key] == pytest.approx(sum(room[key] for room in found["rooms"]))
    assert found["climate"]["station"] == "Anywhere Field, MN"
    assert json.dumps(found, allow_nan=False)


def test_the_comparison_table_marks_the_base_case(result):
    columns = tables.compared(result, builders.verdict(result))
    assert list(columns)[1:] == [NAMES[name] + (" (base)" if name == result.base_case else "") for name in ALTERNATIVES]


def test_the_comparison_table_dashes_what_does_not_exist(result):
    columns = tables.compared(result, builders.verdict(result))
    row = list(columns[""]).index("Payback against base")
    assert columns["New window units (base)"][row] == NONE_TEXT
    assert columns["Put it in yourself"][row] == "5 years"


def test_first_cost_lines_end_in_their_sums_and_in_what_an_incentive_leaves(result):
    columns = tables.first_cost(result, SELF)
    assert columns["Line"][-3:] == ["Cash in all", "With own time", "Once the incentive is paid"]
    assert columns["Amount"][-3:] == ["$3,770.00", "$4,420.00", "$4,320.00"]
    assert {len(cells) for cells in columns.values()} == {len(builders.FIRST_LINES[ALTERNATIVES[SELF]]) + 3}


def test_first_cost_of_keeping_is_nothing(result):
    assert tables.first_cost(result, KEEP)["Amount"] == ["$0.00", "$0.00"]


def test_yearly_costs_add_up_across(result):
    columns = tables.yearly(result, WINDOW)
    assert columns["All together"] == [money(float(total)) for total in result.streams.total_usd[WINDOW, 0]]
    assert columns["Year"] == list(range(16))


def test_loads_say_which_room_is_not_served(result, look):
    columns = tables.loads(result, look)
    assert columns["Served"] == ["yes", "no, closed door"]
    assert columns["Sensible, design"][0].endswith("Btu/h")
