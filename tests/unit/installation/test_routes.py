"""Whole routes on an invented site, worked by hand from the likely cost table."""

import numpy as np
import pytest

from econ.installation.first_cost import cash_first_cost_usd, first_cost_usd
from econ.installation.task import CONTRACTOR_PARTY, ELECTRICIAN_PARTY, HELPER_PARTY, SELF_PARTY
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW, Standing
from tests.unit.installation.routes import amounts, party_of, routes
from tests.unit.installation.site_values import structure


# Frame wall, pad, free helper, electrician for circuit and terminals, 7 % tax, 8 h on weekends, decided on a Monday.
# materials  anchors 14, sleeve 18, sealant 22, paint 35, pad 60, isolators 20, cover 75, drain 13.5, caps 18 = 275.50
# tools      hole saw 35, respirator 55, level 60, wrenches 110, soap 10, thermometer 25, meter 55, hand truck hired 18
#            = 368 x 1.07 = 393.76
# circuit 700 at 10 m; electrician 0.75 + 0.75 h x 120 = 180, above the minimum of 175; permits 140 + 115
# tax 0.07 x (2100 + 275.50) = 166.285
# mishaps    rescue 0.1 x (0.30 hole + 0.15 pad + 0.35 couplings) x 800 = 64, wrong hole 0.04 x 150 = 6, kinked line
#            0.03 x 260 = 7.80, lost charge 0.04 x 620 = 24.80: 102.60
#            in hours 0.08 x 3 + 0.04 x 2 + 0.03 x 1.5 + 0.04 x 2 = 0.445
def test_self_installation_on_a_frame_wall_costs_what_the_hand_worked_sheet_says():
    route = routes()[SELF]
    cash = 2100.0 + 275.50 + 393.76 + 700.0 + 180.0 + 255.0 + 166.285 + 102.60
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(cash, abs=0.005)
    # alone: survey 3, permit 1.5, check of parts 0.5, leak check 1.75, inspection 1.5, register 0.5; shared with the
    # helper, half of receive 1, dry-fit 1, hang 1.75, hole 1, sleeve 0.75, pad 1.5, line 3, couplings 1, drain 0.75,
    # clean up 1 = 12.75
    own_h = 8.75 + 12.75 / 2.0 + 0.445
    assert route.own_hours_h[0] == pytest.approx(own_h)
    assert first_cost_usd(route.line_items)[0] == pytest.approx(cash + own_h * 25.0, abs=0.005)


# Survey on Saturday, day 5, for 3 h, done at 5.375; electrician booked then, 16 days to 21.375, a Monday, in one day;
# test run on the Saturday after, day 26, 1.75 of 8 h.
def test_self_installation_is_in_service_on_the_hand_worked_day():
    found = routes()[SELF].schedule
    assert found.in_service_d[0] == pytest.approx(26.0 + 1.75 / 8.0)
    chain = {key for key, is_on in zip(found.task, found.is_critical[0], strict=True) if is_on}
    assert chain == {"survey", "book_electrician", "circuit", "cable", "final_connection", "leak_check"}


# set 2200 x 1.35; materials (14 + 18 + 22 + 60 + 20 + 75 + 18 + 4.5 x (28 + 3 + 5.5)) x 1.5 = 391.25 x 1.5
# crew 4.55 h x 95; technician alone 5.1 h x 115; electrician 1.5 h x 120; circuit 700; trip 85
# permits 255; tax 0.07 x (2200 + 391.25); reserve for call-backs 2.5 % of the whole price
# doubts, money a re-made flare 0.04 x 150 and a closed firm 0.02 x 900: 24; hours call-back 0.1 x 2, no-show 0.1 x 3,
# flare 0.04 x 2, closed firm 0.02 x 5: 0.68
def test_a_hired_installation_costs_what_the_hand_worked_sheet_says():
    route = routes()[HIRED]
    parts = 2970.0 + 586.875 + 432.25 + 586.5 + 180.0 + 700.0 + 85.0 + 255.0 + 0.07 * 2591.25
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(parts / 0.975 + 24.0, abs=0.005)
    # compare quotes 4.5, be home 2, inspection 1.5
    assert route.own_hours_h[0] == pytest.approx(8.0 + 0.68)


# Day 35 is a Monday; the crew is busy 4.775 h until the lines are in, the electrician 0.75 h, then 1 h of
# commissioning; a trade day has 8 h.
def test_a_hired_installation_is_in_service_on_the_hand_worked_day():
    assert routes()[HIRED].schedule.in_service_d[0] == pytest.approx(35.0 + (4.775 + 0.75 + 1.0) / 8.0)


# 2 x 500, each with bracket 60, panels 30, lock 12; tax 7 %; carried in and fitted on Saturday, 2 x 1 h.
def test_window_units_cost_and_take_what_the_hand_worked_sheet_says():
    route = routes()[WINDOW]
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(1204.0 * 1.07)
    assert route.schedule.in_service_d[0] == pytest.approx(5.25)
    assert route.upkeep_own_h_per_yr[0] == pytest.approx(2.0 * (0.5 + 0.75))


def test_keeping_costs_nothing_and_brings_nothing_into_service():
    route = routes()[KEEP]
    assert first_cost_usd(route.line_items)[0] == 0.0
    assert np.isnan(route.schedule.in_service_d[0])
    assert route.standing == Standing.OPEN


def test_a_quote_is_one_line_and_leaves_nothing_out_when_it_says_so():
    route = routes(shape=structure(has_quote=True), quote__total_usd=5450.0, quote__wait_d=28.0)[HIRED]
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(5450.0 + 24.0)
    assert route.schedule.in_service_d[0] == pytest.approx(28.0 + (4.775 + 0.75 + 1.0) / 8.0)


# circuit 700, electrician 180; the contractor's doubts 24 stand beside every quote
def test_a_circuit_the_quote_does_not_mention_is_added_from_our_own_items():
    shape = structure(has_quote=True)
    route = routes(shape=shape, quote__total_usd=4550.0, quote__electrical="not_said")[HIRED]
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(4550.0 + 700.0 + 180.0 + 24.0)


def test_removal_permit_and_equipment_the_quote_leaves_out_are_added():
    said = {"quote__removal": "no", "quote__permit": "no", "quote__equipment": "no"}
    old = {"now__cooling": "window_units", "now__units_count": 2.0}
    route = routes(shape=structure(has_quote=True), quote__total_usd=3000.0, **said, **old)[HIRED]
    assert cash_first_cost_usd(route.line_items)[0] == pytest.approx(3000.0 + 2 * 25.0 + 255.0 + 2970.0 + 24.0)


def test_tools_that_are_owned_cost_nothing():
    owned = amounts(routes(shape=structure(tools_owned=("hole_saw", "multimeter")))[SELF])
    assert owned["tool_hole_saw"] == owned["tool_multimeter"] == 0.0
    assert owned["tool_leak_soap"] > 0.0


def test_a_task_given_to_the_contractor_moves_hours_tools_mishap_and_labour():
    mine, hired = routes()[SELF], routes(shape=structure(parties=(("wall_hole", "contractor"),)))[SELF]
    before, after = amounts(mine), amounts(hired)
    assert party_of(hired, "wall_hole") == CONTRACTOR_PARTY
    assert after["tool_hole_saw"] == 0.0 < before["tool_hole_saw"]
    # half an hour at the crew's 95 and a trip of 85
    assert after["contractor_visit"] == pytest.approx(0.5 * 95.0 + 85.0)
    assert before["mishap_rescue"] - after["mishap_rescue"] == pytest.approx(0.1 * 800.0 * 0.3)
    assert (before["mishap_wrong_hole"], after["mishap_wrong_hole"]) == (pytest.approx(0.04 * 150.0), 0.0)
    # half the hole's hour, and what a rescue and a wrong hole would take
    assert mine.own_hours_h[0] - hired.own_hours_h[0] == pytest.approx(0.5 + 0.1 * 0.3 * 3.0 + 0.04 * 2.0)
    assert after["kit"] == before["kit"]


def test_a_task_given_to_the_helper_takes_all_of_its_hours():
    route = routes(shape=structure(parties=(("line_set", "helper"),)), work__helper="paid")[SELF]
    assert party_of(route, "line_set") == HELPER_PARTY
    # all 3 h of the line set, and half of the other shared 9.75 h, at 20 an hour
    assert amounts(route)["helper"] == pytest.approx((3.0 + 9.75 / 2.0) * 20.0)


def test_without_a_helper_all_hours_are_own_and_none_are_paid():
    route = routes(work__helper="none")[SELF]
    assert route.own_hours_h[0] == pytest.approx(8.75 + 12.75 + 0.445)
    assert amounts(route)["helper"] == 0.0


def test_a_flared_kit_goes_to_the_contractor_with_help():
    route = routes(kit__connection="flare_with_charged_outdoor_unit")[SELF]
    assert party_of(route, "connect_lines") == CONTRACTOR_PARTY
    assert route.standing == Standing.WITH_HELP
    # 2 h at half technician, half mate, and a trip come to less than the usual price of such a visit
    assert amounts(route)["contractor_visit"] == pytest.approx(350.0)
    assert any("flared" in reason for reason in route.reasons)


def test_an_owner_who_may_do_it_all_stands_open_when_the_circuit_is_there():
    may = {"site__owner_may_electrical": "yes", "site__circuit": "own_circuit"}
    route = routes(kit__volts="120", **may)[SELF]
    assert route.standing == Standing.OPEN
    assert party_of(route, "cable") == SELF_PARTY
    assert amounts(route)["circuit"] == 0.0


def test_an_owner_may_run_the_circuit_and_leave_the_connection_to_the_electrician():
    shape = structure(parties=(("circuit", "self"), ("final_connection", "electrician")))
    route = routes(shape=shape, site__owner_may_electrical="yes")[SELF]
    found = amounts(route)
    assert found["circuit"] == 0.0
    assert found["electrician_visit"] == pytest.approx(220.0)
    # 10 m of cable 3.2 and conduit 5, disconnect 28, whip 25, breaker 22
    assert sum(found[key] for key in ("cable_12_2_usd_per_m", "conduit_usd_per_m")) == pytest.approx(82.0)
    assert sum(found[key] for key in ("disconnect_usd", "whip_usd", "standard_breaker_usd")) == pytest.approx(75.0)


def test_a_let_flat_up_high_is_not_for_the_owner_and_says_why():
    flat = {
        "site__occupancy": "owner_lets",
        "site__owner_may_mechanical": "not_known",
        "site__association": "consent_needed",
        "site__outdoor_place": "wall_bracket",
        "site__outdoor_height_m": 8.0,
        "site__wall": "solid_brick",
        "site__wall_thickness_m": 0.305,
    }
    own, hired = routes(**flat)[SELF], routes(**flat)[HIRED]
    assert own.standing == Standing.NOT_ALLOWED
    assert all(any(word in reason for reason in own.reasons) for word in ("let home", "association", "too high"))
    assert party_of(own, "set_on_bracket") == CONTRACTOR_PARTY
    assert party_of(own, "circuit") == ELECTRICIAN_PARTY
    assert hired.standing == Standing.OPEN


def test_hours_of_a_masonry_hole_grow_with_the_wall():
    thick = routes(site__wall="poured_concrete", site__wall_thickness_m=0.254)[SELF]
    # 4 h at 8 in, so 5 h at 10 in, which is also what the table says of 10 in
    assert thick.tasks.hours_h[0, thick.tasks.table.position("wall_hole")] == pytest.approx(5.0)


def test_spaces_in_the_panel_are_priced_where_they_are_missing_or_unknown():
    found = [amounts(routes(site__panel_spaces=word)[SELF])["panel_spaces_usd"] for word in ("yes", "no", "not_known")]
    assert found == [0.0, 140.0, 140.0]


def test_consent_puts_off_the_start():
    asked, free = routes(site__association="consent_needed")[HIRED], routes()[HIRED]
    assert asked.schedule.in_service_d[0] - free.schedule.in_service_d[0] >= 23.0


def incentive(way=SELF, shape=None, **changed):
    """Return what an incentive of 300 with a chance of 0.8 comes to."""
    name = {SELF: "self", HIRED: "hired", WINDOW: "window"}[way]
    given = {f"money__incentive_{name}_usd": 300.0, f"money__incentive_{name}_frac": 0.8}
    return amounts(routes(shape=shape, **given, **changed)[way])["incentive"]


def test_an_incentive_is_taken_off_as_its_amount_times_its_chance():
    assert incentive() == pytest.approx(-240.0)
    assert incentive(WINDOW) == pytest.approx(-240.0)


STARTED = (("connect_lines", "contractor"), ("leak_check", "contractor"))


def test_an_incentive_for_a_licensed_start_needs_both_tasks_in_a_contractors_hands():
    terms = {"money__incentive_self_terms": "licensed_commissioning"}
    assert incentive(**terms) == 0.0
    assert incentive(shape=structure(parties=STARTED[:1]), **terms) == 0.0
    assert incentive(shape=structure(parties=STARTED), **terms) == pytest.approx(-240.0)


def test_an_incentive_for_licensed_installation_is_met_by_hiring_alone():
    started = structure(parties=STARTED)
    assert incentive(shape=started, money__incentive_self_terms="licensed_installation") == 0.0
    assert incentive(HIRED, money__incentive_hired_terms="licensed_installation") == pytest.approx(-240.0)
    assert incentive(WINDOW, money__incentive_window_terms="licensed_installation") == 0.0


def test_an_incentive_for_a_permit_needs_one():
    assert incentive(money__incentive_self_terms="permit") == pytest.approx(-240.0)
    assert incentive(money__incentive_self_terms="permit", site__permit="not_needed") == 0.0


# The hole, 1 h of a first-timer, takes a handyman 0.75 h at 50; nobody then shares the user's own tasks. His mishaps
# are half as likely: wrong hole 0.04 x 0.5 x 150, rescue 0.1 x 0.3 x 0.5 x 800.
def test_a_handyman_takes_a_task_alone_at_his_rate():
    shape = structure(parties=(("wall_hole", "helper"),))
    route = routes(shape=shape, work__helper="handyman")[SELF]
    assert party_of(route, "wall_hole") == HELPER_PARTY
    assert amounts(route)["helper"] == pytest.approx(0.75 * 50.0)
    assert amounts(route)["mishap_wrong_hole"] == pytest.approx(0.04 * 0.5 * 150.0)
    rescue = 0.1 * 800.0 * (0.3 * 0.5 + 0.15 + 0.35)
    assert amounts(route)["mishap_rescue"] == pytest.approx(rescue)
    hours = 0.1 * 3.0 * (0.15 + 0.15 + 0.35) + 0.04 * 0.5 * 2.0 + 0.03 * 1.5 + 0.04 * 2.0
    assert route.own_hours_h[0] == pytest.approx(8.75 + 11.75 + hours)


@pytest.mark.parametrize("task", ["connect_lines", "cable", "circuit", "final_connection"])
def test_no_handyman_takes_refrigerant_or_licensed_electrical_work(task):
    shape = structure(parties=((task, "helper"),))
    for may in ("yes", "no"):
        route = routes(shape=shape, work__helper="handyman", site__owner_may_electrical=may)[SELF]
        assert party_of(route, task) != HELPER_PARTY


def test_a_handyman_works_on_weekdays():
    shape = structure(parties=(("wall_hole", "helper"),))
    found = routes(shape=shape, work__helper="handyman")[SELF].schedule
    free = routes(shape=shape, work__helper="free")[SELF].schedule
    at = found.task.index("wall_hole")
    assert (found.finish_d[0, at] % 7.0 < 5.0, free.finish_d[0, at] % 7.0 > 5.0) == (True, True)


def test_contractors_who_refuse_the_kit_give_its_tasks_back_to_the_user():
    shape = structure(parties=(*STARTED, ("wall_hole", "contractor")))
    parties = {
        answer: [
            party_of(routes(shape=shape, work__contractor_finishes=answer)[SELF], task) for task, _ in shape.parties
        ]
        for answer in ("yes", "not_known", "no")
    }
    assert parties["yes"] == parties["not_known"] == [CONTRACTOR_PARTY] * 3
    assert parties["no"] == [SELF_PARTY, SELF_PARTY, CONTRACTOR_PARTY]


def test_a_flared_kit_that_no_contractor_takes_on_closes_the_way():
    flared = {"kit__connection": "flare_with_charged_outdoor_unit"}
    found = {word: routes(work__contractor_finishes=word, **flared)[SELF] for word in ("yes", "not_known", "no")}
    assert found["yes"].standing == Standing.WITH_HELP
    assert found["not_known"].standing == Standing.UNKNOWN
    assert found["no"].standing == Standing.NOT_ALLOWED
    assert any("bought elsewhere" in reason for reason in found["no"].reasons)


def test_an_outlet_for_a_window_unit_is_the_electricians():
    found = routes(window__outlet="none")[WINDOW]
    assert amounts(found)["outlet_120v_usd"] == pytest.approx(2 * 450.0)  # one for each of two units
    assert amounts(found)["outlet_permit_usd"] == pytest.approx(90.0)
    assert found.standing == Standing.WITH_HELP
    assert routes(window__outlet="none", window__capacity_w=5300.0)[WINDOW].line_items.amount_usd.sum() > 0.0


def test_a_row_costs_and_takes_the_same_alone_and_among_others():
    prices = np.array([1800.0, 2100.0, 2500.0])
    hours = np.array([4.0, 8.0, 6.0])
    many = routes(3, kit__price_usd=prices, work__hours_per_day_h=hours)
    for row in range(3):
        one = routes(kit__price_usd=prices[row], work__hours_per_day_h=hours[row])
        for together, alone in zip(many, one, strict=True):
            assert together.line_items.amount_usd[row].tolist() == alone.line_items.amount_usd[0].tolist()
            assert np.array_equal(together.schedule.in_service_d[row], alone.schedule.in_service_d[0], equal_nan=True)


def test_the_board_shows_which_party_may_do_a_task_and_what_locks_it():
    route = routes(site__owner_may_electrical="no")[SELF]
    cable, hole = (route.tasks.table.position(key) for key in ("cable", "wall_hole"))
    assert route.is_allowed[0, cable].tolist() == [False, False, True, True]
    assert route.is_allowed[0, hole].tolist() == [True, True, False, True]
    assert "licensed electrician" in route.task_locks[cable][0]
    assert route.task_locks[hole] == ()
