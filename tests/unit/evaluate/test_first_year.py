"""Bills since the change: made from the model they agree with it, wasted energy shows, and no claim without a base."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from econ.case.edit import with_fields
from econ.energy.since import period_kwh, sum_doubt_kwh
from econ.evaluate.bill_scale import month_mean_c
from econ.evaluate.first_year import _day_of_year, first_year
from econ.kernel.alternative import ALTERNATIVES, KEEP, SELF
from econ.kernel.constants import MONTH_DAYS
from econ.report.look import Look
from econ.report.words.first_year import LOOK_FIRST, MEASURES, since_more, since_sentence
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_answer, demo_case
from tests.unit.evaluate.test_bill_scale import made

LOWER, TABLES = "lower_level_cold", load_tables()
FOUND = demo_answer(LOWER, 0)
LOOK = Look(TODAY, TODAY.year)
BASE = 12.0


def since(times=1.0, warmer_f=None, before=True, **fields):
    """Return what is found where the unit takes so many times its forecast, beside a base load."""
    case = demo_case(LOWER)
    now, new = (FOUND.result.alternatives[at].electricity_kwh[0] for at in (KEEP, SELF))
    mean_c = month_mean_c(FOUND.structure, FOUND.sheet, TABLES)
    months = BASE * np.array(MONTH_DAYS) + times * new
    degrees = ["" if warmer_f is None else f"{mean * 1.8 + 32.0 + warmer_f:.2f} F" for mean in mean_c]
    after = "\n".join(
        f"2029-{at:02d} {kwh:.1f} kWh {deg}" for at, (kwh, deg) in enumerate(zip(months, degrees, strict=True), 1)
    )
    bills = {"electricity": made(now, 1.0, BASE)} if before else {}
    case = with_fields(with_fields(case, "bills", bills), "first_year", {"electricity": after})
    case = with_fields(case, "as_built", fields)
    return first_year(case, FOUND.sheet, FOUND.result, ALTERNATIVES[SELF], mean_c)[0]


def test_bills_made_from_the_model_agree_with_the_forecast():
    found = since()
    now, new = (FOUND.result.alternatives[at].electricity_kwh[0].sum() for at in (KEEP, SELF))
    assert found.change_kwh == pytest.approx(new - now)
    assert found.forecast_kwh == pytest.approx(found.billed_kwh, rel=0.05)
    assert "they agree with the forecast" in since_sentence(found, LOOK)


def test_a_unit_that_takes_far_more_is_told_with_where_to_look():
    found = since(times=3.0)
    assert "above the forecast" in since_sentence(found, LOOK)
    assert LOOK_FIRST in since_more(found, LOOK)


def test_weather_is_told_where_the_bills_say_it():
    assert since(warmer_f=3.6).warmer_k == pytest.approx(2.0, abs=0.02)
    assert "3.6 °F warmer" in since_more(since(warmer_f=3.6), LOOK)[-1]
    assert "about as warm" in since_more(since(warmer_f=0.0), LOOK)[-1]
    assert "do not all say how warm" in since_more(since(), LOOK)[-1]


def test_without_bills_from_before_only_the_rooms_own_forecast_is_told():
    found = since(before=False)
    assert np.isnan(found.forecast_kwh)
    said = since_sentence(found, LOOK)
    assert "were forecast for this room" in said
    assert "Paste a year of bills from before" in said


def test_bills_from_before_the_first_run_are_left_out():
    assert len(since(in_service_on="2029-07-01").rows) == 6
    assert (
        since_sentence(since(in_service_on="2030-01-01"), LOOK)
        == "None of these bills begins after the unit first ran."
    )


def test_energy_of_months_falls_into_periods_by_their_days():
    months = np.arange(1.0, 13.0) * np.array(MONTH_DAYS)
    whole = period_kwh(np.array([0, 31, 350]), np.array([31.0, 28.0, 30.0]), months)
    assert whole.tolist() == pytest.approx([31.0, 56.0, 15.0 * 12.0 + 15.0])


def test_doubt_of_a_sum_follows_the_printed_formula():
    # Reddy and Claridge (2000): 1.26 t RMSE sqrt((1 + 2 / n) m); n = m = 12, t = 2: 1.26 * 2 * sqrt(14) = 9.429.
    assert sum_doubt_kwh(1.0, 12, 12) == pytest.approx(9.429, abs=5e-4)


def test_measures_on_the_room_are_told_to_be_left_out():
    told = replace(since(), has_measures=True)
    assert MEASURES in since_more(told, LOOK)
    assert MEASURES not in since_more(since(), LOOK)


def test_days_after_a_leap_day_keep_their_place():
    days = [date(2028, 2, 29), date(2028, 3, 1), date(2027, 3, 1), date(2028, 12, 31), date(2027, 1, 1)]
    assert [_day_of_year(day) for day in days] == [58, 59, 59, 364, 0]
