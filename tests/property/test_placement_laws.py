"""Laws of places: more room never raises a finding, and what is found is always told with how far it is."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from econ.caution.placement import PLACEMENT_RULES
from econ.caution.registry import found
from econ.report.look import Look
from econ.report.words.finding import figures
from tests.unit.caution.quiet import facts

LOOK = Look(date(2027, 5, 20), 2027)
DISTANCES = tuple(rule.evidence[0] for rule in PLACEMENT_RULES if len(rule.evidence) == 2)
METRES = st.floats(0.0, 10.0, allow_nan=False)


def codes(**changed):
    return {each.code for each in found(facts(**changed)) if each.code.startswith("placement.")}


@pytest.mark.parametrize("name", DISTANCES)
@given(have=METRES, more=METRES, least=METRES)
def test_more_room_never_raises_a_finding(name, have, more, least):
    asked = {f"{name.removesuffix('_m')}_least_m": least}
    assert codes(**{name: have + more}, **asked) <= codes(**{name: have}, **asked)


@given(run=st.floats(0.3, 60.0), drop=st.floats(0.0, 3.0), slope=st.floats(0.005, 0.05), higher=st.floats(0.0, 3.0))
def test_a_drain_that_may_run_so_far_falls_enough_and_a_higher_unit_only_helps(run, drop, slope, higher):
    drain = {"drain_run_m": run, "drain_fall_m": run * slope, "drain_reach_m": drop / slope}
    at_drop, at_higher = codes(**drain, drain_drop_m=drop), codes(**drain, drain_drop_m=drop + higher)
    assert at_higher <= at_drop
    if run <= drop / slope:
        assert not at_drop


@pytest.mark.parametrize("name", DISTANCES)
@given(have=METRES, least=METRES)
def test_a_distance_that_is_found_is_told_with_what_it_lacks(name, have, least):
    asked = {f"{name.removesuffix('_m')}_least_m": least}
    raised = [each for each in found(facts(**{name: have}, **asked)) if name in {part[0] for part in each.evidence}]
    assert all(figures(each, LOOK).endswith(" more.") for each in raised)
