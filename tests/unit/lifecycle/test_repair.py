"""Expected repairs: ages, rates, warranties, and failures that mean a new piece."""

import numpy as np
import pytest

from econ.lifecycle.repair import (
    Repair,
    Repairs,
    covered_frac,
    expected_repairs,
    failure_rate_per_yr,
    mended,
    unit_age_yr,
    worth_lost_usd,
)
from econ.lifecycle.replacement import Component


def unit(price=1000.0, life=10.0, remaining=None, start=0.0):
    left = life if remaining is None else remaining
    return Component(*(np.array([number]) for number in (price, price, life, left, start)))


def test_age_counts_from_service_and_anew_at_each_replacement():
    assert unit_age_yr(unit(life=3.0), 7)[0].tolist() == [0.5, 1.5, 2.5, 0.5, 1.5, 2.5, 0.5]
    assert unit_age_yr(unit(life=3.0, start=1.0), 4)[0].tolist() == [0.0, 0.5, 1.5, 2.5]


def test_old_unit_goes_on_from_its_age_and_one_past_its_life_is_new_at_once():
    assert unit_age_yr(unit(life=10.0, remaining=2.0), 3)[0].tolist() == [8.5, 9.5, 0.5]
    assert unit_age_yr(unit(life=10.0, remaining=0.0), 2)[0].tolist() == [0.5, 1.5]


@pytest.mark.parametrize(("age", "rate"), [(0.5, 1.0), (1.0, 2.0), (4.9, 2.0), (5.0, 3.0), (10.0, 4.0), (19.0, 4.0)])
def test_rate_is_that_of_the_class_of_age(age, rate):
    by_age = [np.array(each) for each in (1.0, 2.0, 3.0, 4.0)]
    assert failure_rate_per_yr(by_age, np.array([[age]]))[0, 0] == rate


def test_warranty_covers_whole_years_and_part_of_the_last():
    assert covered_frac(np.array([[0.5, 1.5, 2.5, 3.5]]), np.array([2.25]))[0].tolist() == [1.0, 1.0, 0.25, 0.0]


def test_warranty_on_parts_leaves_labour_and_unpaid_claims_to_the_owner():
    kind = Repair(*(np.array(number) for number in (1.0, 300.0, 200.0, 5.0, 0.0, 0.8)))
    found = mended([kind], np.array([[0.5, 9.5]]))
    assert found.cost_usd[0].tolist() == pytest.approx([200.0 + 60.0, 500.0])
    assert found.by_warranty_usd[0].tolist() == pytest.approx([240.0, 0.0])


def test_failure_that_means_a_new_piece_costs_the_life_that_is_lost():
    assert worth_lost_usd(unit(), np.array([[0.0, 5.0, 10.0, 12.0]]))[0].tolist() == [1000.0, 500.0, 0.0, 0.0]


def test_chance_that_nobody_services_moves_repairs_to_replacements():
    age = np.array([[0.5, 1.5]])
    mend, new = (
        Repairs(np.full((1, 2), 100.0), np.full((1, 2), 50.0)),
        Repairs(np.full((1, 2), 900.0), np.zeros((1, 2))),
    )
    failures = np.full_like(age, 0.1)
    found = expected_repairs(unit(), failures, mend, new, np.array([0.25]))
    assert found.cost_usd[0].tolist() == pytest.approx([0.1 * (75.0 + 225.0)] * 2)
    assert found.by_warranty_usd[0].tolist() == pytest.approx([0.1 * 37.5] * 2)


def test_nothing_fails_before_service():
    failures = np.full((1, 3), 0.1)
    each = Repairs(np.full((1, 3), 100.0), np.zeros((1, 3)))
    found = expected_repairs(unit(start=1.5), failures, each, each, np.zeros(1))
    assert found.cost_usd[0].tolist() == pytest.approx([0.0, 5.0, 10.0])
