"""Payback: first crossing, none, and undone again."""

import numpy as np
import pytest

from econ.lifecycle.payback import discounted_payback, simple_payback


def test_nothing_extra_at_the_start_has_no_payback():
    found = simple_payback(np.array([[0.0, 10.0], [50.0, 10.0]]))
    assert not found.exists.any()
    assert np.isnan(found.after_yr).all()


def test_savings_too_small_never_pay_back():
    found = simple_payback(np.array([-100.0, 30.0, 30.0]))
    assert (bool(found.exists), bool(np.isnan(found.after_yr))) == (False, True)


def test_extra_money_back_exactly_on_the_last_day_counts():
    assert float(simple_payback(np.array([-60.0, 30.0, 30.0])).after_yr) == 2.0


def test_payback_within_the_first_year():
    assert float(simple_payback(np.array([-60.0, 240.0])).after_yr) == 0.25


def test_later_replacement_undoes_an_early_payback():
    found = simple_payback(np.array([-100.0, 60.0, 60.0, -90.0, 60.0]))
    assert float(found.after_yr) == pytest.approx(1.0 + 40.0 / 60.0)
    assert bool(found.is_undone)


def test_year_without_saving_before_the_crossing_is_passed_over():
    assert float(simple_payback(np.array([-50.0, 40.0, 0.0, 20.0])).after_yr) == 2.5


def test_discounting_delays_the_payback():
    saving = np.array([-100.0, *[30.0] * 10])
    assert float(discounted_payback(saving, np.array(0.05)).after_yr) > float(simple_payback(saving).after_yr)


def test_discounting_at_zero_is_the_simple_payback():
    saving = np.array([-100.0, *[30.0] * 10])
    assert float(discounted_payback(saving, np.array(0.0)).after_yr) == float(simple_payback(saving).after_yr)
