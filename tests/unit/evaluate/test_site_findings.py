"""What stands in the way of a site, from a whole case to its answer: found, told, priced, and never a crash."""

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.kernel.alternative import HIRED, SELF, Standing
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case

CASES = [
    ("line_set.too_short", {"site.line_run_m": "30 ft"}, Standing.UNKNOWN, Standing.OPEN),
    ("line_set.rise_too_high", {"site.line_rise_m": "60 ft"}, Standing.WITH_HELP, Standing.OPEN),
    ("drilling.beyond_the_bit", {"site.wall_thickness_m": "30 in"}, Standing.WITH_HELP, Standing.OPEN),
    (
        "electrical.no_panel_space",
        {"site.circuit": "new", "site.panel_spaces": "no"},
        Standing.WITH_HELP,
        Standing.OPEN,
    ),
    ("permit.association_refused", {"site.association": "refused"}, Standing.NOT_ALLOWED, Standing.NOT_ALLOWED),
    ("permit.refused", {"site.permit": "refused"}, Standing.NOT_ALLOWED, Standing.NOT_ALLOWED),
    (
        "permit.let_home",
        {"site.occupancy": "owner_lets", "site.owner_may_mechanical": "not_known"},
        Standing.NOT_ALLOWED,
        Standing.OPEN,
    ),
    ("drilling.below_grade_refused", {"site.hole": "below_grade"}, Standing.NOT_ALLOWED, Standing.NOT_ALLOWED),
    ("placement.gas_meter", {"site.gas_meter_m": "2 ft"}, Standing.WITH_HELP, Standing.OPEN),
    (
        "delivery.return_window_over",
        {"work.days": "weekends", "work.delivery_wait_d": 9.0, "kit.return_window_d": 2.0},
        Standing.WITH_HELP,
        Standing.OPEN,
    ),
]


def found(**changed):
    case = demo_case("garage_studio_hot")
    for path, value in changed.items():
        case = with_value(case, path, value)
    structure, sheet = prepared(case, load_tables(), TODAY)
    return evaluate(structure, point(sheet), load_tables())


@pytest.mark.parametrize(("code", "changed", "own", "hired"), CASES, ids=[case[0] for case in CASES])
def test_what_stands_in_the_way_is_found_and_the_rest_is_still_told(code, changed, own, hired):
    result = found(**changed)
    assert code in {caution.code for caution in result.cautions}
    assert result.alternatives[SELF].standing == own
    assert result.alternatives[HIRED].standing == hired
    assert np.isfinite([float(way.first_cost_usd[0]) for way in result.alternatives]).all()


def test_none_of_it_is_found_where_nothing_was_changed():
    assert not {case[0] for case in CASES} & {caution.code for caution in found().cautions}
