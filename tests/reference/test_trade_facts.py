"""What people in the trade say of such jobs: ranges our tables must agree with. Common practice, no source."""

import numpy as np

from econ.evaluate.wiring.installation import installation
from econ.installation.drilling import core_bites
from econ.installation.first_cost import cash_first_cost_usd
from econ.installation.task import crew_elapsed_h
from econ.kernel.alternative import HIRED, SELF
from econ.kernel.constants import FOOT_M, INCH_M
from econ.tables.record import read_table
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import cost_range, site_values, structure

COSTS = {row["key"]: row for row in read_table("installation/costs").rows()}
DAY_TASKS = ("receive", "hang_indoor", "wall_hole", "sleeve_seal", "set_on_pad", "line_set", "connect_lines", "cable",
             "drain_gravity", "leak_check", "clean_up")  # fmt: skip


def routes(column):
    """Return the routes with a 24,000 Btu/h class on a frame wall, cost table at low, likely or high."""
    values = site_values(site__owner_may_electrical="yes", site__circuit="own_circuit", kit__volts="120")
    values.update({path: np.asarray(value) for path, value in cost_range(column).items()})
    values["hired.equipment_usd"] = np.asarray(cost_range(column)["costs.trade_24_standard_usd"])
    return installation(structure(), values, installation_tables(), 1)


def quote_usd(column):
    values = site_values()
    values.update({path: np.asarray(value) for path, value in cost_range(column).items()})
    values["hired.equipment_usd"] = np.asarray(cost_range(column)["costs.trade_24_standard_usd"])
    return cash_first_cost_usd(installation(structure(), values, installation_tables(), 1)[HIRED].line_items)[0]


def test_a_kit_of_24_000_btu_per_h_costs_a_little_over_2000_dollars():
    assert 2000.0 < COSTS["kit_24_standard_usd"]["likely"] <= 2300.0


def test_quotes_of_5000_to_6000_dollars_lie_inside_our_built_up_range():
    low, likely, high = (quote_usd(column) for column in ("low", "likely", "high"))
    assert low < 5000.0
    assert high > 6000.0
    assert low < likely < high


def test_our_likely_built_up_price_lies_inside_the_range_of_whole_quotes():
    whole = COSTS["whole_quote_24_usd"]
    assert whole["low"] < quote_usd("likely") < whole["high"]


def test_a_contractor_in_peak_season_may_take_four_months_but_likely_does_not():
    assert COSTS["contractor_start_peak_d"]["high"] >= 4 * 30
    assert COSTS["contractor_start_peak_d"]["likely"] < 2 * 30


def two_people_h(column):
    rows = routes(column)[SELF].tasks
    at = [rows.table.position(key) for key in DAY_TASKS]
    return float(crew_elapsed_h(rows.hours_h[0, at], np.asarray(2.0)))


def test_two_practised_people_need_about_half_a_day_on_a_frame_wall():
    assert 3.0 <= two_people_h("low") <= 5.0


def test_two_people_likely_need_six_to_eight_hours_on_a_frame_wall():
    assert 6.0 <= two_people_h("likely") <= 8.0


def test_line_sets_in_the_box_reach_about_20_ft():
    table = read_table("equipment/ductless")
    is_kit = np.array(table.texts("kind")) == "kit"
    reach_ft = table.numbers("line_set_m.likely")[is_kit] / FOOT_M
    assert np.all((reach_ft >= 15.0) & (reach_ft <= 25.0))


def test_a_core_bit_4_in_deep_takes_three_bites_through_10_in_of_concrete():
    assert core_bites(np.array(10.0 * INCH_M), np.array(4.0 * INCH_M)) == 3.0


def test_kits_come_for_120_and_for_240_volts():
    table = read_table("equipment/ductless")
    assert {120.0, 240.0} <= set(table.numbers("volts").tolist())
