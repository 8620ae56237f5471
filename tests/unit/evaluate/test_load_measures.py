"""The list of what could be done to the room: one batch of loads that agrees with whole evaluations."""

import math

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.evaluate.known import known_names
from econ.evaluate.load_measures import TIGHT_PER_H, WARMEST_FAN_C, load_measures
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.kernel.constants import BTU_PER_WH
from econ.loads.surfaces import OUTER_FILM_M2K_PER_W, VENTED_ATTIC_FRAC, in_use_u_w_per_m2k
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case
from tests.unit.evaluate.wiring.test_measures import TWO_ROOMS, result, taken

TABLES = load_tables()
KEYS = TABLES.measures.keys


def listed(case):
    """Return the measures of a case."""
    structure, sheet = prepared(case, TABLES, TODAY)
    return load_measures(structure, sheet, TABLES)


def facts(case, key):
    """Return what is said of one measure."""
    return next(each for each in listed(case).measures if each.key == key)


@pytest.mark.parametrize("key", KEYS)
def test_a_row_of_the_batch_is_what_a_whole_evaluation_finds(key):
    row, found = 1 + KEYS.index(key), listed(TWO_ROOMS).need
    whole = result(taken(key))[2]
    cooling = (whole.rooms.design_cooling_sensible_w + whole.rooms.design_cooling_latent_w) * whole.rooms.is_served
    assert found.design_cooling_w[row] == pytest.approx(cooling.sum(), rel=1e-9)
    assert found.design_heating_w[row] == pytest.approx(
        (whole.rooms.design_heating_w * whole.rooms.is_served).sum(), rel=1e-9
    )
    for mine, theirs in (("cooling", "cool"), ("latent", "latent"), ("heating", "heat")):
        monthly = getattr(whole, f"need_{theirs}_kwh")
        assert getattr(found, f"{mine}_kwh")[row] == pytest.approx(monthly.sum(), rel=1e-9, abs=1e-6)


def test_the_first_row_is_the_room_as_it_is_and_the_last_all_that_are_chosen():
    found = listed(taken("window_film", "fan")).need
    plain, both = result(TWO_ROOMS)[2], result(taken("window_film", "fan"))[2]
    assert found.cooling_kwh[0] == pytest.approx(plain.need_cool_kwh.sum(), rel=1e-9)
    assert found.cooling_kwh[-1] == pytest.approx(both.need_cool_kwh.sum(), rel=1e-9)


# By hand: what the attic floor no longer loses on the cold night, area x (U - U') x the attic's part x difference
def test_what_attic_insulation_takes_off_the_coldest_hour_is_paper_arithmetic():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    values = {path: float(value) for path, value in point(sheet).items()}
    found = load_measures(structure, sheet, TABLES).need
    u, added = values["rooms[0].roof_u_w_per_m2k"], values["measures.attic_insulation.added_m2k_per_w"]
    lost, kept = (
        float(in_use_u_w_per_m2k(np.array(each), OUTER_FILM_M2K_PER_W)) for each in (u, 1.0 / (1.0 / u + added))
    )
    outdoor_c = values["place.heat_design_c"] + values["place.warming_offset_k"]
    difference_k = values["use.heating_setpoint_c"] - outdoor_c
    by_hand = values["rooms[0].floor_area_m2"] * (lost - kept) * VENTED_ATTIC_FRAC * difference_k
    at = 1 + KEYS.index("attic_insulation")
    assert found.design_heating_w[0] - found.design_heating_w[at] == pytest.approx(by_hand, rel=1e-6)


def test_cost_and_hours_are_quantity_times_their_ranges():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    found = next(each for each in load_measures(structure, sheet, TABLES).measures if each.key == "attic_insulation")
    area = sheet.entry("rooms[0].floor_area_m2").likely
    price, own = sheet.entry("costs.attic_insulation_usd_per_m2").spread, sheet.entry("measures.attic_insulation.own_h")
    assert found.quantity == area
    assert found.cost_usd == pytest.approx((area * price.low, area * price.likely, area * price.high))
    assert found.own_h[1] == pytest.approx(area * own.likely)


def test_payback_is_cash_over_what_running_costs_less():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    found, values = load_measures(structure, sheet, TABLES), point(sheet)
    at, need = KEYS.index("window_film"), found.need
    cooled = need.cooling_kwh + need.latent_kwh
    electricity = float(values["prices.electricity_usd_per_kwh"] / values["kit.seer2"] * BTU_PER_WH)
    warmth = float(values["prices.gas_usd_per_therm"] / values["now.heat_efficiency_frac"]) / 29.3071
    saving = (cooled[0] - cooled[1 + at]) * electricity + (need.heating_kwh[0] - need.heating_kwh[1 + at]) * warmth
    assert need.running_usd_per_yr[0] - need.running_usd_per_yr[1 + at] == pytest.approx(saving, rel=1e-5)
    expected = found.measures[at].cost_usd[1] / saving if saving > 0.0 else math.nan
    assert found.payback_yr(at) == pytest.approx(expected, rel=1e-5, nan_ok=True)


def test_a_measure_that_saves_nothing_never_pays_back():
    found = listed(with_value(TWO_ROOMS, "figures.changed.measures.window_film.left_frac", 1.0))
    assert math.isnan(found.payback_yr(KEYS.index("window_film")))


def test_heat_counts_where_something_keeps_the_room_warm_unasked():
    found = listed(with_value(TWO_ROOMS, "use.heat", "no")).need
    assert found.heating_kwh[0] > 0.0
    nothing = with_value(with_value(TWO_ROOMS, "use.heat", "no"), "now.heat", "none")
    assert listed(nothing).need.heating_kwh[0] == 0.0


@pytest.mark.parametrize(
    ("changes_per_h", "is_offered"), [(TIGHT_PER_H - 0.01, False), (TIGHT_PER_H, False), (TIGHT_PER_H + 0.01, True)]
)
def test_sealing_is_offered_above_a_tight_rooms_leaks(changes_per_h, is_offered):
    case = with_value(TWO_ROOMS, "rooms[0].infiltration_per_h", changes_per_h)
    case = with_value(case, "rooms[1].infiltration_per_h", 0.1)
    found = facts(case, "air_sealing")
    assert found.is_offered is is_offered
    assert bool(found.why_not) is not is_offered


@pytest.mark.parametrize(("above_c", "is_offered"), [(-0.1, True), (0.0, True), (0.1, False)])
def test_a_fan_is_offered_up_to_the_warmest_that_moving_air_makes_comfortable(above_c, is_offered):
    raise_k = TABLES.measures["fan"].spread("effect").likely
    case = with_value(TWO_ROOMS, "use.cooling_setpoint_c", f"{WARMEST_FAN_C - raise_k + above_c:.4f} degC")
    assert facts(case, "fan").is_offered is is_offered


def test_a_fan_is_not_offered_where_nothing_is_cooled():
    assert not facts(with_value(TWO_ROOMS, "use.cool", "no"), "fan").is_offered


@pytest.mark.parametrize(
    ("system", "is_offered"), [("no", False), ("well", False), ("poorly", True), ("not known", False)]
)
def test_a_duct_is_offered_where_the_house_system_serves_the_room_poorly(system, is_offered):
    assert facts(with_value(TWO_ROOMS, "now.house_system", system), "balanced_duct").is_offered is is_offered


def test_shade_and_film_are_offered_where_there_is_glass_and_attics_where_there_is_one():
    dark = TWO_ROOMS
    for side in ("north", "east", "south", "west"):
        dark = with_value(dark, f"rooms[0].window_{side}_m2", "0 m**2")
    dark = with_value(dark, "rooms[0].above", "flat_roof")
    assert not any(facts(dark, key).is_offered for key in ("outside_shade", "window_film", "attic_insulation"))
    assert all(facts(TWO_ROOMS, key).is_offered for key in ("outside_shade", "window_film", "attic_insulation"))


@pytest.mark.parametrize("name", ["garage_studio_hot", "lower_level_cold", "sunroom_with_quote", "top_floor_flat"])
def test_shade_costs_less_winter_sun_than_the_same_shade_left_up(name):
    structure, sheet = prepared(with_value(demo_case(name), "use.heat", "yes"), TABLES, TODAY)
    seasonal = load_measures(structure, sheet, TABLES).need
    always = with_value(
        with_value(demo_case(name), "use.heat", "yes"), "figures.changed.measures.outside_shade.from_c", -50
    )
    left_up = load_measures(*prepared(always, TABLES, TODAY), TABLES).need
    assert seasonal.heating_kwh[1] <= left_up.heating_kwh[1] + 1e-9
    assert seasonal.heating_kwh[1] >= seasonal.heating_kwh[0] - 1e-9
    assert seasonal.design_cooling_w[1] == pytest.approx(left_up.design_cooling_w[1], rel=1e-9)


def test_chosen_measures_are_marked():
    case = with_value(TWO_ROOMS, "measures.chosen", ["fan"], known_names())
    assert [each.key for each in listed(case).measures if each.is_chosen] == ["fan"]
