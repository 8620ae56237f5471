"""What rules, tools and visits of a site do to whole routes, worked by hand from the likely cost table."""

import numpy as np
import pytest

from econ.installation.first_cost import cash_first_cost_usd
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY
from econ.kernel.alternative import HIRED, SELF, WINDOW, Standing
from tests.unit.installation.routes import amounts, party_of, routes
from tests.unit.installation.site_values import structure


# An electrician's circuit: adder 240; no outlet for service known: 240. Older code and an outlet there: nothing.
@pytest.mark.parametrize("edition", ["2020", "2023", "2026", "not_known"])
def test_ground_fault_protection_is_priced_unless_the_code_in_force_is_older(edition):
    found = [amounts(routes(site__code_edition=edition)[way])["ground_fault_adder_usd"] for way in (SELF, HIRED)]
    assert found == [240.0, 240.0]
    assert amounts(routes()[SELF])["ground_fault_adder_usd"] == 0.0


@pytest.mark.parametrize(("word", "price"), [("within_25_ft", 0.0), ("none", 240.0), ("not_known", 240.0)])
def test_the_outlet_for_service_is_priced_where_none_is_known(word, price):
    found = [amounts(routes(site__receptacle=word)[way])["service_receptacle_usd"] for way in (SELF, HIRED)]
    assert found == [price, price]


# Own wiring under an older code: plain breaker 22 and switch 28. 2023: breaker that protects people 150, plain switch.
# 2026 or not known: plain breaker, switch made for such units 260.
@pytest.mark.parametrize(
    ("edition", "prices"),
    [
        ("2017_or_older", [22.0, 0.0, 28.0, 0.0]),
        ("2023", [0.0, 150.0, 28.0, 0.0]),
        ("2026", [22.0, 0.0, 0.0, 260.0]),
        ("not_known", [22.0, 0.0, 0.0, 260.0]),
    ],
)
def test_a_circuit_of_ones_own_carries_its_protection_among_its_materials(edition, prices):
    said = {"site__owner_may_electrical": "yes", "site__code_edition": edition}
    found = amounts(routes(shape=structure(parties=(("circuit", "self"),)), **said)[SELF])
    keys = ("standard_breaker_usd", "gfci_breaker_usd", "disconnect_usd", "ground_fault_disconnect_usd")
    assert [found[key] for key in keys] == prices
    assert found["ground_fault_adder_usd"] == 0.0


def test_a_quote_that_includes_the_circuit_pays_for_its_protection():
    said = {"site__code_edition": "2023", "quote__total_usd": 5000.0}
    assert "ground_fault_adder_usd" not in amounts(routes(shape=structure(has_quote=True), **said)[HIRED])
    lacking = routes(shape=structure(has_quote=True), quote__electrical="no", **said)[HIRED]
    assert amounts(lacking)["ground_fault_adder_usd"] == 240.0


def test_a_borrowed_tool_costs_nothing_and_says_so():
    route = routes(shape=structure(tools_borrowed=("hand_truck",)))[SELF]
    assert amounts(route)["tool_hand_truck"] == 0.0
    assert any("Hand truck (borrowed)" in label for label in route.line_items.label)


# Block, 8 in: hole 1.5 h, plate 2.5 h, both halved with a helper and done with one hammer: 2 of 8 h, one day at 50,
# 7 % tax in; bought and sold again 150 x (1.07 - 0.55) = 78.
def test_a_hammer_is_hired_once_for_hole_and_plate():
    block = {"site__wall": "block", "site__wall_thickness_m": 0.2032}
    assert amounts(routes(**block)[SELF])["tool_sds_plus"] == pytest.approx(50.0 * 1.07)
    plate_only = routes(shape=structure(parties=(("wall_hole", "contractor"),)), **block)[SELF]
    assert amounts(plate_only)["tool_sds_plus"] == pytest.approx(50.0 * 1.07)
    neither = structure(parties=(("wall_hole", "contractor"), ("hang_indoor", "contractor")))
    assert amounts(routes(shape=neither, **block)[SELF])["tool_sds_plus"] == 0.0


# Hole before the inspection, commissioning after it: 0.5 h at 95 and a trip of 85; 1 h at 115 and a trip come to less
# than the usual price of such a visit, 350. Without a permit there is one visit: 47.50 + 115 + 85 are less than 350.
def test_an_inspection_splits_the_contractors_work_in_two_visits():
    shape = structure(parties=(("wall_hole", "contractor"), ("leak_check", "contractor")))
    assert amounts(routes(shape=shape)[SELF])["contractor_visit"] == pytest.approx(0.5 * 95.0 + 85.0 + 350.0)
    once = amounts(routes(shape=shape, site__permit="not_needed")[SELF])["contractor_visit"]
    assert once == pytest.approx(350.0)


# With the circuit in the same visit no minimum of 175 is left over for 0.75 h at 120 an hour.
def test_without_an_inspection_circuit_and_terminals_share_the_call_out():
    said = {"site__owner_may_electrical": "yes"}
    shape = structure(parties=(("circuit", "electrician"), ("final_connection", "electrician"), ("cable", "self")))
    found = [
        amounts(routes(shape=shape, site__permit=permit, **said)[SELF])["electrician_visit"]
        for permit in ("needed", "not_needed")
    ]
    assert found == pytest.approx([175.0, 0.75 * 120.0])


# Concrete: a bit drills 4.572 m; ten holes of 0.5 m take two bits' wear, 60 each, 7 % tax in.
def test_many_deep_holes_wear_out_more_than_one_bit():
    concrete = {"site__wall": "poured_concrete", "site__wall_thickness_m": 0.5}
    found = [amounts(routes(kit__count=count, **concrete)[SELF])["tool_core_bit_wear"] for count in (1.0, 10.0)]
    assert found == pytest.approx([60.0 * 1.07, 2 * 60.0 * 1.07])


# 6.1 m in the box.
@pytest.mark.parametrize(
    ("run_m", "allowed", "price"), [(6.0, "yes", 0.0), (7.0, "yes", 230.0), (7.0, "no", 0.0), (7.0, "not_known", 0.0)]
)
def test_an_extension_is_priced_where_it_is_needed_and_allowed(run_m, allowed, price):
    found = amounts(routes(site__line_run_m=run_m, kit__extension_allowed=allowed)[SELF])
    assert found["precharged_extension_usd"] == price


# Which lines an owner may join: quick couplings that reach, nothing else; a helper never, whoever asks.
@pytest.mark.parametrize(
    ("connection", "doer"),
    [
        ("single_use_quick", SELF_PARTY),
        ("reusable_quick", SELF_PARTY),
        ("flare_with_charged_outdoor_unit", CONTRACTOR_PARTY),
        ("not_known", CONTRACTOR_PARTY),
    ],
)
@pytest.mark.parametrize("asked", ["self", "helper"])
def test_only_quick_couplings_are_joined_by_the_owner(connection, doer, asked):
    shape = structure(parties=(("connect_lines", asked),))
    route = routes(shape=shape, kit__connection=connection)[SELF]
    assert party_of(route, "connect_lines") == doer
    assert not route.is_allowed[0, route.tasks.table.position("connect_lines"), HELPER_PARTY]


# 6.1 m in the box; an extension of 3.66 m where the maker allows one reaches 9.76 m. Beyond that a certified person
# makes up lines of the whole run at 28 a metre and the contractor's 1.5.
@pytest.mark.parametrize(
    ("run_m", "allowed", "doer", "extension_usd"),
    [
        (6.1, "no", SELF_PARTY, 0.0),
        (6.11, "no", CONTRACTOR_PARTY, 0.0),
        (6.11, "not_known", CONTRACTOR_PARTY, 0.0),
        (6.11, "yes", SELF_PARTY, 230.0),
        (9.76, "yes", SELF_PARTY, 230.0),
        (9.77, "yes", CONTRACTOR_PARTY, 0.0),
    ],
)
def test_lines_that_do_not_reach_go_to_a_certified_person(run_m, allowed, doer, extension_usd):
    route = routes(site__line_run_m=run_m, kit__extension_allowed=allowed)[SELF]
    found = amounts(route)
    assert party_of(route, "line_set") == party_of(route, "connect_lines") == doer
    made_up = run_m * 28.0 * 1.5 if doer == CONTRACTOR_PARTY else 0.0
    assert found["line_set_trade_usd_per_m"] == pytest.approx(made_up)
    assert found["precharged_extension_usd"] == extension_usd
    assert any("do not reach" in reason for reason in route.reasons) is (doer == CONTRACTOR_PARTY)
    assert route.standing == Standing.WITH_HELP


@pytest.mark.parametrize(
    ("spaces", "doer", "usd"),
    [("yes", SELF_PARTY, 0.0), ("no", ELECTRICIAN_PARTY, 140.0), ("not_known", ELECTRICIAN_PARTY, 140.0)],
)
def test_a_full_panel_is_the_electricians_even_where_the_owner_may_do_the_circuit(spaces, doer, usd):
    shape = structure(parties=(("circuit", "self"),))
    route = routes(shape=shape, site__owner_may_electrical="yes", site__panel_spaces=spaces)[SELF]
    assert party_of(route, "circuit") == doer
    assert amounts(route)["panel_spaces_usd"] == usd


def test_a_full_panel_matters_only_for_a_new_circuit():
    there = {"site__circuit": "own_circuit", "site__panel_spaces": "no", "site__owner_may_electrical": "yes"}
    assert amounts(routes(kit__volts="120", **there)[SELF])["panel_spaces_usd"] == 0.0


# Owner, landlord, tenant: in a home that is let the owner's leave for electrical work does not hold, and the mechanical
# work is the owner's only where the permit office says so.
@pytest.mark.parametrize("occupancy", ["owner_lives_here", "owner_lets", "tenant", "not_known"])
@pytest.mark.parametrize("mechanical", ["yes", "no", "not_known"])
def test_what_a_let_home_leaves_to_its_owner(occupancy, mechanical):
    said = {"site__occupancy": occupancy, "site__owner_may_mechanical": mechanical, "site__owner_may_electrical": "yes"}
    route = routes(**said)[SELF]
    lives_here = occupancy == "owner_lives_here"
    may_hang = mechanical == "yes" or (mechanical == "not_known" and lives_here)
    may = {
        task: bool(route.is_allowed[0, route.tasks.table.position(task), SELF_PARTY])
        for task in ("cable", "hang_indoor")
    }
    assert may == {"cable": lives_here, "hang_indoor": may_hang}
    assert (route.standing == Standing.NOT_ALLOWED) is not may_hang
    assert routes(**said)[HIRED].standing == Standing.OPEN


@pytest.mark.parametrize(
    "refused", [{"site__permit": "refused"}, {"site__association": "refused"}, {"site__hole": "below_grade"}]
)
def test_what_is_refused_shuts_both_ductless_ways_with_its_reason_and_is_priced_all_the_same(refused):
    found = routes(**refused)
    for way in (SELF, HIRED):
        assert found[way].standing == Standing.NOT_ALLOWED
        assert "refused" in found[way].reasons[0]
        assert np.isfinite(cash_first_cost_usd(found[way].line_items)).all()
    assert found[WINDOW].standing == Standing.OPEN


def days_of(route, task):
    """Return start and finish of a task of the likely row, days from the decision."""
    at = route.schedule.task.index(task)
    return route.schedule.start_d[0, at], route.schedule.finish_d[0, at]


# Decided on a Monday; survey on Saturday, day 5, 3 of 8 h; delivery 7 days on, day 12.375, a Saturday: receive 1 h with
# the helper, 0.5 h; check 0.5 h; dry-fit 1 h with the helper, 0.5 h. Permit: applied 5.375 + 1.5 h, granted 9 days on,
# day 14.5625, a Monday; the hole comes after the plate on the Saturday after, day 19.
def test_nothing_is_cut_before_parts_are_checked_and_dry_fitted():
    route = routes()[SELF]
    assert days_of(route, "receive") == pytest.approx((12.375, 12.375 + 0.5 / 8.0))
    assert days_of(route, "check_parts") == pytest.approx((12.4375, 12.5))
    assert days_of(route, "dry_fit") == pytest.approx((12.5, 12.5625))
    assert days_of(route, "wall_hole")[0] == pytest.approx(19.0 + 1.75 / 2.0 / 8.0)


@pytest.mark.parametrize("wall", ["wood_frame", "block", "poured_concrete"])
@pytest.mark.parametrize("place", ["ground_pad", "wall_bracket", "roof"])
def test_on_every_site_the_dry_fit_is_done_before_plate_hole_and_outdoor_unit(wall, place):
    plan = routes(site__wall=wall, site__outdoor_place=place)[SELF].schedule
    at = {task: position for position, task in enumerate(plan.task) if plan.is_active[0, position]}
    fitted = plan.finish_d[0, at["dry_fit"]]
    later = {"hang_indoor", "wall_hole", "line_set", "connect_lines"} | {
        task for task in at if task.startswith("set_on")
    }
    assert all(plan.start_d[0, at[task]] >= fitted for task in later)
    assert plan.finish_d[0, at["check_parts"]] <= plan.start_d[0, at["dry_fit"]]


# Test run done on Saturday, day 26 + 1.75 / 8; a day later, Sunday 27.21875 of a working day, two units take 1 h.
def test_the_old_unit_stays_until_the_new_one_has_run_a_day():
    route = routes(now__cooling="window_units", now__units_count=2.0)[SELF]
    done = 26.0 + 1.75 / 8.0
    assert days_of(route, "run_in") == pytest.approx((done + 1.0, done + 1.0))
    assert days_of(route, "remove_old")[0] == pytest.approx(done + 1.0)
    assert route.schedule.in_service_d[0] == pytest.approx(done)
    assert not routes()[SELF].schedule.is_active[0, route.schedule.task.index("run_in")]
