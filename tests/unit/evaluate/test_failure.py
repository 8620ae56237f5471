"""A failure in July of year 5, against sums by hand."""

from datetime import date

import numpy as np
import pytest

from econ.evaluate.failure import covered_frac_at, failures, july_d
from econ.kernel.alternative import Alternative
from tests.demo import NAMES, demo_answer

DECISION = date(2027, 3, 10)


@pytest.fixture(scope="module")
def found():
    answer = demo_answer("lower_level_cold", 16)
    return {each.way: each for each in failures(answer.result, answer.sheet, answer.decision_date)}


# Four years of 365 days after service: with service on day 127, 15 July 2027, day 1587 is 14 July 2031.
@pytest.mark.parametrize(
    ("service_d", "day"), [(0.0, date(2031, 7, 15)), (128.0, date(2031, 7, 15)), (128.1, date(2032, 7, 15))]
)
def test_it_fails_on_the_first_15_july_after_four_years(service_d, day):
    assert july_d(service_d, DECISION) == (day - DECISION).days


@pytest.mark.parametrize(("age_yr", "holds"), [(4.9, 1.0), (5.0, 1.0), (5.1, 0.0)])
def test_a_warranty_holds_up_to_its_last_day(age_yr, holds):
    assert covered_frac_at(age_yr, np.array([5.0])) == holds


# Four small repairs, likely: (650 + 430 + 270 + 165) / 4 = 378.75, and a call of 145 is 523.75. Parts are 0.45 of the
# repair, 170.44, of which a kit's warranty pays 0.8 within 5 years: 136.35. A contractor's pays 0.97: 165.33.
def test_a_common_repair_and_what_is_paid_of_it(found):
    kit, hired = found[Alternative.SELF_INSTALL], found[Alternative.CONTRACTED_INSTALL]
    assert kit.cost_usd[1] == pytest.approx(523.75)
    assert kit.pays_usd[1] == pytest.approx(0.8 * 0.45 * 378.75)
    assert hired.pays_usd[1] == pytest.approx(0.97 * 0.45 * 378.75)
    assert kit.own_usd[1] == pytest.approx(523.75 - 0.8 * 0.45 * 378.75)


# A compressor 1,750 and a call of 145: 1,895; of its part, 787.50, the kit's warranty pays 0.8.
def test_a_compressor_and_what_is_left_of_it(found):
    kit = found[Alternative.SELF_INSTALL]
    assert kit.compressor_usd[1] == pytest.approx(1895.0)
    assert kit.compressor_own_usd[1] == pytest.approx(1895.0 - 0.8 * 787.5)


def test_visit_and_part_are_waited_for_one_after_the_other(found):
    kit = found[Alternative.SELF_INSTALL]
    assert kit.wait_d.tolist() == [1.0 + 5.0, 4.0 + 14.0, 14.0 + 45.0]
    assert found[Alternative.WINDOW_UNITS].wait_d.tolist() == [1.0, 4.0, 14.0]


# 18 days are one begun month of 30.417 days at 5.2603 USD a day: 160 USD, and July's electricity.
def test_the_stop_gap_is_hired_by_begun_months(found):
    answer = demo_answer("lower_level_cold", 16)
    need_kwh = answer.result.need_cool_kwh[0, 6] / 31.0 * 18.0
    power = need_kwh / 2.1 * answer.sheet.entry("prices.electricity_usd_per_kwh").likely
    assert found[Alternative.SELF_INSTALL].stop_gap_usd[1] == pytest.approx(160.0 + power, abs=0.01)


def test_a_window_unit_out_of_warranty_is_bought_anew(found):
    unit = found[Alternative.WINDOW_UNITS]
    assert unit.own_usd.tolist() == unit.new_set_usd.tolist()
    assert not unit.is_mended


@pytest.mark.parametrize("name", NAMES)
def test_ends_are_in_order_and_only_what_runs_can_fail(name):
    answer = demo_answer(name, 16)
    for failure in failures(answer.result, answer.sheet, answer.decision_date):
        for three in (failure.cost_usd, failure.own_usd, failure.wait_d, failure.stop_gap_usd, failure.chance_frac):
            assert (np.diff(three) >= 0.0).all()
        assert failure.way is Alternative.KEEP_AS_IS or 4.0 <= failure.age_yr <= 5.01


def test_nothing_there_now_cannot_fail():
    answer = demo_answer("sunroom_with_quote", 16)
    ways = [each.way for each in failures(answer.result, answer.sheet, answer.decision_date)]
    assert Alternative.KEEP_AS_IS not in ways
