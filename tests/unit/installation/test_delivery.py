"""Sending the kit back: last day, fee, and whether the dry-fit comes in time."""

import numpy as np
import pytest

from econ.evaluate.wiring.installation import installation
from econ.evaluate.wiring.installation_return import kit_return
from econ.installation.delivery import ends_before, restocking_usd, return_by_d
from econ.kernel.alternative import ALTERNATIVES, SELF
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
SELLER = {"kit__return_window_d": 30.0, "kit__restocking_frac": 0.2}


def back(at=SELF, n_row=1, **changed):
    values = site_values(**{**SELLER, **changed})
    return kit_return(values, installation(structure(), values, TABLES, n_row)[at], n_row)


# Decided on a Monday; survey done on Saturday, day 5.375; the kit is there 7 days on, day 12.375; 30 days run from that
# day to day 42; received, checked and dry-fitted by 12.5625. A fifth of 2,100 is kept.
def test_last_day_and_fee_on_the_hand_worked_site():
    found = back()
    assert found.return_by_d.tolist() == [42.0]
    assert found.dry_fit_d[0] == pytest.approx(12.5625)
    assert found.restocking_usd.tolist() == pytest.approx([420.0])


# With weekends alone a kit that comes on a Monday, day 14.375 (nine days after the survey), waits for Saturday, day 19:
# 1.5 h of 8 there.
@pytest.mark.parametrize(("window_d", "is_over"), [(4.0, True), (5.0, False), (6.0, False)])
def test_the_window_runs_while_the_kit_waits_for_a_day_off(window_d, is_over):
    found = back(work__delivery_wait_d=9.0, kit__return_window_d=window_d)
    assert found.dry_fit_d[0] == pytest.approx(19.0 + 1.5 / 8.0)
    assert bool(ends_before(found.return_by_d, found.dry_fit_d)[0]) is is_over


def test_neither_permit_nor_contractor_puts_off_the_dry_fit():
    assert back(work__permit_wait_d=60.0, work__contractor_wait_d=90.0).dry_fit_d[0] == pytest.approx(12.5625)


def test_two_kits_cost_the_fee_twice():
    assert back(kit__count=2.0).restocking_usd[0] == pytest.approx(840.0)


@pytest.mark.parametrize("at", [place for place in range(len(ALTERNATIVES)) if place != SELF])
def test_ways_without_a_kit_have_no_day_and_no_fee(at):
    found = back(at)
    assert np.isnan([found.return_by_d, found.dry_fit_d, found.restocking_usd]).all()


def test_a_row_has_the_same_day_alone_and_among_others():
    windows = np.array([14.0, 30.0, 60.0])
    many = back(n_row=3, kit__return_window_d=windows)
    alone = [back(kit__return_window_d=window).return_by_d[0] for window in windows]
    assert many.return_by_d.tolist() == alone


@pytest.mark.parametrize(("dry_fit_d", "is_over"), [(41.99, False), (42.0, False), (42.99, False), (43.0, True)])
def test_a_dry_fit_on_the_last_day_is_in_time(dry_fit_d, is_over):
    assert bool(ends_before(np.array(42.0), np.array(dry_fit_d))) is is_over


def test_parts_of_a_day_count_as_the_day_they_are_in():
    assert return_by_d(np.array([12.0, 12.99]), np.array([30.0, 30.9])).tolist() == [42.0, 42.0]
    assert restocking_usd(np.array(0.0), np.array(1.0), np.array(0.2)) == 0.0
