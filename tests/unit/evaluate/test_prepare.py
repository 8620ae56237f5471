"""From a case to its sheet: usual values, ranges of what is not known, sizes by the need."""

from datetime import date

import numpy as np
import pytest

from econ.case.choices import code
from econ.case.edit import with_value
from econ.case.schema import case_from
from econ.case.toml import read_case
from econ.evaluate.prepare import prepared, short_ways
from econ.kernel.alternative import SELF, WINDOW
from econ.kernel.errors import CaseError
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_case

TABLES = load_tables()
BLANK = case_from({"place": {"station": "Milwaukee Mitchell Intl AP, WI"}, "rooms": [{"name": "Room"}]})


def sheet(case, today=TODAY):
    return prepared(case, TABLES, today)[1]


def test_a_blank_case_takes_the_usual_value_of_every_input():
    blank = sheet(BLANK)
    assert set(blank.state) <= {"usual", "computed"}
    assert np.isfinite(blank.likely).all()


def test_every_line_is_in_order():
    blank = sheet(BLANK)
    assert (blank.low <= blank.likely).all()
    assert (blank.likely <= blank.high).all()


def test_every_line_says_where_it_comes_from():
    assert all(sheet(BLANK).source)


@pytest.mark.parametrize(
    "path", ["rooms[0].floor_area_m2", "kit.price_usd", "site.line_run_m", "rooms[0].wall_u_w_per_m2k"]
)
def test_not_known_takes_a_range_no_narrower_than_the_usual_one(path):
    usual = sheet(BLANK).entry(path).spread
    unknown = sheet(with_value(BLANK, path, "not known")).entry(path)
    assert unknown.state == "not_known"
    assert unknown.spread.low <= usual.low
    assert unknown.spread.high >= usual.high


def test_a_value_of_the_users_holds_with_its_own_doubt():
    entry = sheet(with_value(BLANK, "rooms[0].floor_area_m2", "20 m**2")).entry("rooms[0].floor_area_m2")
    assert entry.state == "yours"
    assert entry.likely == 20.0
    assert 19.0 < entry.spread.low < 20.0 < entry.spread.high < 21.0


def test_a_range_of_the_users_is_taken_as_given():
    case = with_value(BLANK, "kit.price_usd", {"low": 900, "likely": 1000, "high": 1400})
    spread = sheet(case).entry("kit.price_usd").spread
    assert (spread.low, spread.likely, spread.high) == (900.0, 1000.0, 1400.0)


@pytest.mark.parametrize(
    ("path", "taken"),
    [
        ("use.heat", "sometimes"),
        ("kit.connection", "flare_with_charged_outdoor_unit"),
        ("rooms[0].door", "usually_closed"),
    ],
)
def test_a_choice_not_known_takes_the_option_that_the_table_names(path, taken):
    entry = sheet(with_value(BLANK, path, "not known")).entry(path)
    assert (entry.state, entry.likely) == ("not_known", code(path, taken))


@pytest.mark.parametrize("path", ["site.permit", "site.owner_may_electrical", "site.panel_spaces", "window.escape"])
def test_rules_see_that_a_permit_or_safety_answer_is_not_known(path):
    entry = sheet(with_value(BLANK, path, "not known")).entry(path)
    assert entry.likely == code(path, "not_known")


def test_state_price_carries_the_factor_since_its_year():
    price = sheet(BLANK).entry("prices.electricity_usd_per_kwh").spread
    state = TABLES.prices["WI"].number("electricity_usd_per_kwh")
    since = TABLES.inputs["prices.since_2023_frac"].spread()
    assert price.likely == pytest.approx(state * since.likely)
    assert price.high == pytest.approx(state * since.high)
    assert "2023" in price.source


def test_waits_follow_the_season_of_the_decision():
    summer = sheet(BLANK, date(2027, 7, 1)).entry("work.contractor_wait_d")
    winter = sheet(BLANK, date(2027, 1, 5)).entry("work.contractor_wait_d")
    assert summer.likely > winter.likely


def test_chosen_kit_is_the_smallest_that_meets_the_design_load():
    small = with_value(with_value(BLANK, "rooms[0].floor_area_m2", "12 m**2"), "rooms[0].window_south_m2", "1 m**2")
    large = with_value(BLANK, "rooms[0].floor_area_m2", "150 m**2")
    capacity = [sheet(case).entry("kit.capacity_w").likely for case in (small, large)]
    assert capacity[0] < capacity[1]


def test_a_size_of_the_users_is_kept_whatever_the_load():
    assert sheet(with_value(BLANK, "kit.size", "36")).entry("kit.capacity_w").likely == pytest.approx(
        36_000 * 0.29307107, rel=1e-4
    )


def test_a_hired_set_alike_has_no_ratings_of_its_own():
    assert "hired.seer2" not in sheet(BLANK).place
    assert "hired.seer2" in sheet(with_value(BLANK, "hired.grade", "cold_climate")).place


def test_technologies_follow_what_is_there_and_what_is_bought():
    structure, _ = prepared(demo_case("lower_level_cold"), TABLES, TODAY)
    assert structure.technologies[0] == "single_speed_window"
    structure, _ = prepared(with_value(BLANK, "window.cycle", "reverse_cycle"), TABLES, TODAY)
    assert structure.technologies[:2] == ("none", "reverse_cycle_window")


def test_any_figure_can_be_changed_by_hand():
    entry = sheet(with_value(BLANK, "figures.changed.costs.ground_pad_usd", 45)).entry("costs.ground_pad_usd")
    assert (entry.likely, entry.state) == (45.0, "yours")


def test_a_changed_figure_without_a_line_is_a_fault_that_names_the_nearest():
    case = with_value(BLANK, "figures.changed.costs.ground_pad", 45)
    with pytest.raises(
        CaseError, match=r"figures.changed.costs.ground_pad \| must name a figure .* costs.ground_pad_usd"
    ):
        sheet(case)


def test_a_field_of_the_form_cannot_be_changed_as_a_figure():
    with pytest.raises(CaseError, match="must name a figure that no form asks for"):
        sheet(with_value(BLANK, "figures.changed.kit.price_usd", 45))


def test_decision_date_of_the_case_wins_over_today():
    case = read_case('[place]\nstation = "Yuma Intl Arpt, AZ"\ndecision_date = "2027-01-02"\n[[rooms]]\nname = "A"\n')
    assert sheet(case, date(2026, 7, 1)).entry("place.decision_doy").likely == 1.0


# A converted garage in a very hot place: the size that meets the design day leaves too much undone in use.
HOT = case_from({"place": {"station": "Phoenix Sky Harbor Intl AP, AZ"}, "rooms": [{"kind": "garage"}]})


def test_sizes_chosen_by_the_program_pass_its_own_test_of_doing_the_job():
    structure, chosen = prepared(HOT, TABLES, TODAY)
    assert short_ways(structure, chosen, TABLES)[WINDOW : SELF + 1] == (False, False)


def test_a_size_of_the_users_is_kept_though_it_falls_short():
    structure, chosen = prepared(with_value(HOT, "kit.size", "6"), TABLES, TODAY)
    assert chosen.entry("kit.capacity_w").likely == pytest.approx(6_000 * 0.29307107, rel=1e-4)
    assert short_ways(structure, chosen, TABLES)[SELF]


def test_no_size_below_the_one_chosen_would_do():
    _, chosen = prepared(HOT, TABLES, TODAY)
    sizes = TABLES.ductless_sizes("kit", "standard")
    size = min(sizes, key=lambda each: abs(each * 293.07 - chosen.entry("kit.capacity_w").likely))
    below = str(sizes[sizes.index(size) - 1])
    structure, smaller = prepared(with_value(HOT, "kit.size", below), TABLES, TODAY)
    design_w = wanted_w_of(HOT)
    is_too_small = smaller.entry("kit.capacity_w").likely < design_w
    assert short_ways(structure, smaller, TABLES)[SELF] or is_too_small


def wanted_w_of(case):
    result = answer(case, TABLES, TODAY, 0).result
    return float((result.rooms.design_cooling_sensible_w + result.rooms.design_cooling_latent_w).sum())
