"""Whether a unit goes in: room, way out, outlet, and what would fit instead."""

from dataclasses import replace

import pytest

from econ.installation.standing import SiteAnswers
from econ.installation.window_fit import Spot, Unit, outlet_standing, room_standing, window_units_standing, would_fit
from econ.kernel.alternative import Standing
from econ.kernel.constants import INCH_M
from econ.tables.tasks import installation_tables

FREE = SiteAnswers("owner_lives_here", "needed", "none", "yes", "above_grade", (), ())
SOLD = installation_tables().units["cooling_only"]

# An invented unit: 12,000 Btu/h, 120 V, 9.0 A, clear opening 23 to 27 in by 14 to 16 in, panels to 38 in.
UNIT = Unit("window", 12.0, 120.0, 9.0, *(each * INCH_M for each in (23.0, 27.0, 14.0, 16.0, 38.0)))
SLEEVE = Unit("through_wall", 12.0, 120.0, 7.6, *(each * INCH_M for each in (26.0, 27.5, 15.75, 17.0)))
SLEEVE = replace(SLEEVE, depth_sure_m=9.0 * INCH_M, depth_most_m=14.0 * INCH_M)
HOSE = Unit("portable", 8.0, 120.0, 9.7, *(each * INCH_M for each in (5.5, 7.0, 5.5, 7.0, 48.0)))

# 30 by 22 in of sash; a wall 6 in thick, 8 ft of it free; an outlet of its own on 15 A.
SPOT = Spot(
    opening="sash",
    escape="no",
    width_m=30.0 * INCH_M,
    height_m=22.0 * INCH_M,
    is_width_measured=True,
    is_height_measured=True,
    unit_count=1.0,
    wall_thickness_m=6.0 * INCH_M,
    wall_height_m=96.0 * INCH_M,
    is_structural=False,
    outlet="own_circuit",
    breaker_a=15.0,
    outlet_v=120.0,
    limit_a=12.0,
    own_limit_a=12.0,
)


def at(unit=UNIT, **changed):
    return window_units_standing(FREE, unit, replace(SPOT, **changed), SOLD)


def test_a_roomy_sash_window_with_its_own_outlet_stands_open_without_a_word():
    assert at() == at(unit_count=1.0)
    assert (at().standing, at().reasons) == (Standing.OPEN, ())


@pytest.mark.parametrize(
    ("side", "inches", "standing", "asks"),
    [
        ("width_m", 22.9, Standing.NOT_ALLOWED, True),
        ("width_m", 23.0, Standing.OPEN, True),
        ("width_m", 26.9, Standing.OPEN, True),
        ("width_m", 27.0, Standing.OPEN, False),
        ("width_m", 38.0, Standing.OPEN, False),
        ("width_m", 38.1, Standing.OPEN, True),
        ("height_m", 13.9, Standing.NOT_ALLOWED, True),
        ("height_m", 14.0, Standing.OPEN, True),
        ("height_m", 15.9, Standing.OPEN, True),
        ("height_m", 16.0, Standing.OPEN, False),
    ],
)
def test_the_clear_opening_decides_below_at_and_above_what_the_unit_needs(side, inches, standing, asks):
    found = at(**{side: inches * INCH_M})
    assert (found.standing, bool(found.reasons)) == (standing, asks)


def test_a_window_too_narrow_says_both_lengths_and_what_would_fit():
    reasons = at(width_m=20.0 * INCH_M).reasons
    assert reasons[0] == (
        "The window's clear width is 20 in (51 cm); a window unit of 12,000 Btu/h needs at least 23 in (58 cm)."
    )
    assert reasons[1] == (
        "What would fit: a window unit of up to 6,000 Btu/h; a portable unit of up to 10,000 Btu/h; "
        "a tall narrow unit of up to 12,000 Btu/h; a unit through the wall of up to 14,000 Btu/h."
    )


def test_a_window_that_nobody_measured_refuses_nothing_but_must_be_measured():
    found = at(width_m=20.0 * INCH_M, is_width_measured=False)
    assert found.standing == Standing.UNKNOWN
    assert found.reasons[0].startswith("Measure the window's clear width")
    assert at(width_m=20.0 * INCH_M, is_height_measured=False).standing == Standing.NOT_ALLOWED
    assert at(height_m=10.0 * INCH_M, is_height_measured=False).standing == Standing.UNKNOWN


def test_a_small_high_window_is_too_small_unmeasured_too():
    found = at(opening="small_high", height_m=12.0 * INCH_M, is_height_measured=False)
    assert found.standing == Standing.NOT_ALLOWED
    assert "clear height is 12 in" in found.reasons[0]


@pytest.mark.parametrize("unit", [UNIT, replace(UNIT, kind="narrow"), HOSE], ids=lambda unit: unit.kind)
def test_no_unit_blocks_the_way_out_and_one_in_the_wall_does_not(unit):
    found = at(unit, escape="yes")
    assert found.standing == Standing.NOT_ALLOWED
    assert "way out in a fire" in found.reasons[0]
    assert found.reasons[-1] == "What would fit: a unit through the wall of up to 14,000 Btu/h."
    assert at(SLEEVE, escape="yes").standing == Standing.OPEN


def test_an_unknown_way_out_is_asked_about_and_stays_open():
    assert at(escape="not_known").standing == Standing.OPEN
    assert "escape window" in at(escape="not_known").reasons[0]


def test_an_unknown_window_is_one_ordinary_sash_whose_way_out_is_asked_about():
    found = at(opening="not_known", is_width_measured=False)
    assert found.standing == Standing.OPEN
    assert "one ordinary sash window" in found.reasons[0]
    assert "escape window" in found.reasons[1]


def test_a_window_that_swings_takes_no_ordinary_unit_but_a_narrow_one():
    swings = {"opening": "casement", "width_m": 20.0 * INCH_M, "height_m": 40.0 * INCH_M}
    assert at(**swings).standing == Standing.NOT_ALLOWED
    assert "tall narrow unit of up to 12,000" in at(**swings).reasons[-1]
    narrow = next(unit for unit in SOLD if unit.kind == "narrow" and unit.size_kbtu == 8.0)
    assert at(narrow, **swings).standing == Standing.OPEN
    assert "rigid panel" in at(narrow, **swings).reasons[0]


@pytest.mark.parametrize("unit", [UNIT, HOSE], ids=lambda unit: unit.kind)
def test_without_a_window_only_the_wall_is_left(unit):
    found = at(unit, opening="none")
    assert found.standing == Standing.NOT_ALLOWED
    assert found.reasons[-1] == "What would fit: a unit through the wall of up to 14,000 Btu/h."


def test_where_nothing_fits_it_says_so():
    assert would_fit(replace(SPOT, opening="none", wall_height_m=0.0), SOLD) == "Nothing of this sort fits here."


@pytest.mark.parametrize(
    ("inches", "standing", "asks"),
    [
        (9.0, Standing.OPEN, False),
        (9.1, Standing.OPEN, True),
        (14.0, Standing.OPEN, True),
        (14.1, Standing.NOT_ALLOWED, True),
    ],
)
def test_the_wall_must_not_be_thicker_than_sleeves_are_deep(inches, standing, asks):
    found = room_standing(SLEEVE, replace(SPOT, wall_thickness_m=inches * INCH_M))
    assert (found.standing, bool(found.reasons)) == (standing, asks)


@pytest.mark.parametrize(
    ("inches", "standing"),
    [(0.0, Standing.NOT_ALLOWED), (15.7, Standing.NOT_ALLOWED), (15.75, Standing.OPEN), (17.0, Standing.OPEN)],
)
def test_a_sleeve_needs_wall_above_the_ground(inches, standing):
    assert room_standing(SLEEVE, replace(SPOT, wall_height_m=inches * INCH_M)).standing == standing


def test_a_wall_that_carries_something_is_with_help_and_says_whose():
    found = at(SLEEVE, is_structural=True)
    assert found.standing == Standing.WITH_HELP
    assert "knows structures" in found.reasons[0]


@pytest.mark.parametrize(
    ("association", "standing"),
    [("none", Standing.OPEN), ("consent_needed", Standing.OPEN), ("refused", Standing.NOT_ALLOWED)],
)
def test_an_association_has_a_say_on_the_wall_and_none_on_a_window(association, standing):
    site = replace(FREE, association=association)
    assert window_units_standing(site, SLEEVE, SPOT, SOLD).standing == standing
    assert window_units_standing(site, UNIT, SPOT, SOLD).standing == Standing.OPEN


# 15 A: alone 0.80 x 15 = 12.0 A, shared 0.50 x 15 = 7.5 A.
@pytest.mark.parametrize(
    ("current_a", "outlet", "standing"),
    [
        (11.9, "own_circuit", Standing.OPEN),
        (12.0, "own_circuit", Standing.OPEN),
        (12.1, "own_circuit", Standing.WITH_HELP),
        (7.4, "shared", Standing.OPEN),
        (7.5, "shared", Standing.OPEN),
        (7.6, "shared", Standing.WITH_HELP),
        (7.6, "not_known", Standing.WITH_HELP),
        (1.0, "none", Standing.WITH_HELP),
    ],
)
def test_a_cord_may_take_80_percent_of_its_own_circuit_and_half_of_a_shared_one(current_a, outlet, standing):
    spot = replace(SPOT, outlet=outlet, limit_a=12.0 if outlet == "own_circuit" else 7.5)
    assert outlet_standing(replace(UNIT, current_a=current_a), spot, SOLD).standing == standing


def test_an_overdrawn_outlet_says_the_amperes_who_helps_and_which_unit_would_do():
    spot = replace(SPOT, outlet="shared", limit_a=7.5)
    assert outlet_standing(replace(UNIT, current_a=9.1), spot, SOLD).reasons == (
        "The unit draws 9.1 A; of a 15 A circuit that is shared it may take only 7.5 A. An electrician must make an "
        "outlet for it first. On this outlet one of up to 8,000 Btu/h may hang.",
    )


def test_another_voltage_needs_another_outlet():
    found = outlet_standing(replace(UNIT, supply_v=240.0), SPOT, SOLD)
    assert found.standing == Standing.WITH_HELP
    assert found.reasons[0].startswith("The unit needs 240 V; the outlet has 120 V.")


def test_several_units_need_as_many_windows():
    assert "as many such windows as units, 2" in at(unit_count=2.0).reasons[0]
