"""What passes before service and what cooling until then costs, worked by hand."""

import numpy as np
import pytest

from econ.case.choices import code
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.waiting import interim_lines, makeshift_usd, on_day, passed
from econ.installation.waiting import InterimNeed
from econ.kernel.constants import DAYS_PER_YEAR
from econ.tables.tasks import installation_tables

JUNE, JULY = 5, 6
FIRST_OF_JUNE = 151.0
RENT_USD_PER_D, PRICE_USD_PER_KWH, COP = 5.0, 0.20, 2.0


def by_month(june, july, n_row=1):
    amounts = np.zeros((n_row, 12))
    amounts[:, JUNE], amounts[:, JULY] = june, july
    return amounts


def inputs(interim="nothing", n_row=1, least_d=7.0):
    values = {
        "place.decision_doy": np.asarray(FIRST_OF_JUNE),
        "work.interim": np.asarray(float(code("work.interim", interim))),
        "costs.interim_rental_usd_per_d": np.asarray(RENT_USD_PER_D),
        "prices.electricity_usd_per_kwh": np.asarray(PRICE_USD_PER_KWH),
        "interim.cooling_cop": np.asarray(COP),
        "rules.interim_least_d": np.asarray(least_d),
    }
    return Inputs(values, n_row)


def need(n_row=1):
    """Return a room too warm on all 30 days of June and all 31 of July; 60 and 93 kWh are left undone."""
    return InterimNeed(
        by_month(60.0, 310.0, n_row), by_month(120.0, 930.0, n_row), by_month(30.0, 31.0, n_row),
        by_month(60.0, 93.0, n_row), by_month(15.0, 31.0, n_row),
    )  # fmt: skip


def cost_usd(interim, service_d, least_d=7.0):
    lines = interim_lines(inputs(interim, 1, least_d), installation_tables(), need(), np.array([service_d]))
    return [float((line.quantity * line.unit_price_usd)[0]) for line in lines]


def test_what_passes_before_service_is_the_months_in_part_and_whole():
    # Decided on 1 June, in service on day 46, 17 July: all of June and 16 of July's 31 days.
    assert passed(by_month(60.0, 310.0), np.array([46.0]), inputs())[0] == pytest.approx(60.0 + 310.0 * 16.0 / 31.0)


def test_a_wait_of_more_than_a_year_counts_the_year_whole():
    found = passed(by_month(60.0, 310.0), np.array([DAYS_PER_YEAR + 15.0]), inputs())[0]
    assert found == pytest.approx(370.0 + 30.0)


def test_nothing_passes_where_nothing_is_waited_for():
    assert passed(by_month(60.0, 310.0, 2), np.array([0.0, np.nan]), inputs(n_row=2)).tolist() == [0.0, 0.0]


def test_a_day_more_is_a_day_of_the_month_of_service():
    # Day 46 is 17 July: 310 / 31 = 10.
    assert on_day(by_month(60.0, 310.0), np.array([46.0]), inputs())[0] == pytest.approx(10.0)


def test_a_unit_is_hired_by_begun_months_and_its_electricity_paid():
    # 30 + 16 warm days are 46: two begun months of 365/12 days at 5 a day: 2 x 152.083 = 304.17.
    # 60 + 93 x 16/31 = 108 kWh left undone, over 2 is 54 kWh, at 0.20: 10.80.
    assert cost_usd("rent_portable", 46.0) == pytest.approx([2.0 * DAYS_PER_YEAR / 12.0 * 5.0, 10.80])


def test_a_borrowed_unit_costs_its_electricity_alone():
    assert cost_usd("borrow", 46.0) == pytest.approx([0.0, 10.80])


@pytest.mark.parametrize("interim", ["nothing", "keep_old_units"])
def test_what_is_there_already_costs_nothing_on_top(interim):
    assert cost_usd(interim, 46.0) == [0.0, 0.0]


def test_what_is_not_known_is_priced_as_hired():
    assert cost_usd("not_known", 46.0) == cost_usd("rent_portable", 46.0)


@pytest.mark.parametrize(("service_d", "months"), [(6.9, 0), (7.0, 1), (30.4, 1), (30.5, 2)])
def test_nobody_hires_for_a_few_days(service_d, months):
    hire, run = cost_usd("rent_portable", service_d)
    assert hire == pytest.approx(months * DAYS_PER_YEAR / 12.0 * RENT_USD_PER_D)
    assert (run > 0.0) == (months > 0)


def test_a_month_with_something_hired_costs_its_days_and_its_electricity():
    # July: 31 x 5 + 93 / 2 x 0.20 = 155 + 9.30.
    assert makeshift_usd(need(), inputs())[0, JULY] == pytest.approx(164.30)


def test_a_case_that_nobody_asked_about_has_no_lines():
    assert interim_lines(inputs("rent_portable"), installation_tables(), None, np.array([46.0])) == []
