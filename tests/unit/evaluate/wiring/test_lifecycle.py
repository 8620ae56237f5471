"""Wiring of costs to streams: old units, waits, lives and growth reach the right years."""

from dataclasses import replace

import numpy as np
import pytest

from econ.case.choices import code
from econ.evaluate.structure import Structure
from econ.evaluate.unit_costs import MENDING
from econ.evaluate.wiring.lifecycle import AlternativeCosts, lifecycle, streams
from econ.installation.warranty import no_warranty
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW, Alternative
from econ.lifecycle.measures import measures

YEARS = 12
STRUCTURE = Structure(
    station="",
    n_rooms=1,
    room_names=("den",),
    technologies=("none",) * 4,
    base_case=Alternative.WINDOW_UNITS,
    study_period_yr=YEARS,
)
VALUES = {
    "now.cooling": np.array(code("now.cooling", "window_units")),
    "now.unit_worth_usd": np.array(50.0),
    "now.units_count": np.array(2.0),
    "now.unit_age_yr": np.array(6.0),
    "window.life_yr": np.array(10.0),
    "window.upkeep_usd_per_yr": np.array(15.0),
    "kit.life_yr": np.array(15.0),
    "kit.upkeep_usd_per_yr": np.array(40.0),
    "hired.upkeep_usd_per_yr": np.array(80.0),
    "costs.replacement_installation_frac": np.array(0.5),
    "costs.circuit_pad_life_yr": np.array(30.0),
    "prices.electricity_escalation_frac": np.array(0.01),
    "prices.fuel_escalation_frac": np.array(0.03),
    "place.decision_doy": np.array(0.0),
    "money.discount_rate_real_frac": np.array([0.03, 0.05]),
    "money.inflation_frac": np.array(0.025),
    "window.count": np.array(2.0),
    "kit.count": np.array(1.0),
    "hired.count": np.array(1.0),
    "quote.warranty": np.array(code("quote.warranty", "yes")),
    "quote.labour_warranty_yr": np.array(1.0),
    "later.replaced_by": np.array(code("later.replaced_by", "same_hands")),
    "later.no_service_frac": np.array(0.0),
    "finance.pays_for": np.array(code("finance.pays_for", "nothing")),
    "letting.counted": np.array(code("letting.counted", "no")),
    "repairs.part_frac": np.array(0.5),
    "repairs.compressor_frac": np.array(0.1),
    **{f"costs.{key}": np.array(0.0) for key in (*MENDING, "window_drop_off_usd")},
}


def rows(*column: float) -> np.ndarray:
    return np.repeat(np.array(column)[:, None], 2, axis=1)


COSTS = AlternativeCosts(
    first_usd=rows(0.0, 600.0, 3000.0, 6000.0),
    equipment_usd=rows(0.0, 500.0, 1800.0, 2600.0),
    fitting_usd=rows(0.0, 100.0, 600.0, 1400.0),
    lasting_usd=rows(0.0, 0.0, 600.0, 900.0),
    electricity_usd=np.repeat(rows(60.0, 50.0, 20.0, 20.0)[..., None], 12, axis=-1),
    fuel_usd=np.repeat(rows(30.0, 30.0, 0.0, 0.0)[..., None], 12, axis=-1),
    added_upkeep_usd_per_yr=rows(20.0, 25.0, 0.0, 0.0),
    in_service_d=np.array([[np.nan] * 2, [0.0] * 2, [31.0] * 2, [365.0] * 2]),
    warranties=(no_warranty(2),) * 4,
)


def test_old_units_are_sold_with_every_alternative_but_keep_as_is():
    assert streams(STRUCTURE, VALUES, COSTS).first_usd[:, 0].tolist() == [0.0, 500.0, 2900.0, 5900.0]


@pytest.mark.parametrize("option", ["none", "not_known"])
def test_without_old_units_nothing_is_sold_kept_up_or_replaced(option):
    nothing = VALUES | {"now.cooling": np.array(code("now.cooling", option))}
    found = streams(STRUCTURE, nothing, replace(COSTS, added_upkeep_usd_per_yr=rows(0.0, 0.0, 0.0, 0.0)))
    assert found.first_usd[:, 0].tolist() == [0.0, 600.0, 3000.0, 6000.0]
    assert found.replacement_usd[KEEP].sum() == found.om_usd[KEEP].sum() == found.residual_usd[KEEP].sum() == 0.0


def test_old_units_run_out_their_life_and_are_replaced_by_new_window_units():
    found = streams(STRUCTURE, VALUES, COSTS)
    assert np.flatnonzero(found.replacement_usd[KEEP, 0]).tolist() == [4]
    assert found.replacement_usd[KEEP, 0, 4] == 600.0
    assert found.residual_usd[KEEP, 0, -1] == pytest.approx(600.0 * 2.0 / 10.0)


def test_window_units_are_replaced_whole_and_kits_without_the_lasting_part():
    short = VALUES | {"kit.life_yr": np.array(10.0)}
    found = streams(STRUCTURE, short, COSTS).replacement_usd[:, 0]
    assert found[WINDOW, 10] == 600.0
    assert found[SELF, 11] == 1800.0 + 0.5 * 600.0
    assert found[HIRED, 11] == 2600.0 + 0.5 * 1400.0


def test_residual_counts_units_and_lasting_part_each_over_its_own_life():
    found = streams(STRUCTURE, VALUES, COSTS).residual_usd[SELF, 0]
    start = 31.0 / 365.0
    assert found[-1] == pytest.approx(2100.0 * (start + 15.0 - 12.0) / 15.0 + 600.0 * (start + 30.0 - 12.0) / 30.0)
    assert found[:-1].sum() == 0.0


def test_hired_unit_may_have_a_life_of_its_own():
    own = streams(STRUCTURE, VALUES | {"hired.life_yr": np.array(8.0)}, COSTS).replacement_usd
    assert np.flatnonzero(own[HIRED, 0]).tolist() == [9]
    assert np.flatnonzero(own[SELF, 0]).tolist() == []


def test_energy_of_the_wait_is_that_of_what_is_there_now():
    found = streams(STRUCTURE, VALUES, COSTS).energy_usd[:, 0]
    assert found[KEEP, 1] == pytest.approx(720.0 * 1.01 + 360.0 * 1.03)
    assert found[SELF, 1] == pytest.approx((60.0 + 11.0 * 20.0) * 1.01 + 30.0 * 1.03)
    assert found[HIRED, 1] == pytest.approx(found[KEEP, 1])
    assert found[HIRED, 2] == pytest.approx(240.0 * 1.01**2)


def test_electricity_and_fuel_grow_apart():
    found = streams(STRUCTURE, VALUES, COSTS).energy_usd[WINDOW, 0]
    assert found[YEARS] == pytest.approx(600.0 * 1.01**YEARS + 360.0 * 1.03**YEARS)


def test_upkeep_of_the_wait_is_that_of_the_old_units():
    found = streams(STRUCTURE, VALUES, COSTS).om_usd[:, 0]
    assert found[:, 2].tolist() == [35.0, 40.0, 40.0, 80.0]
    assert found[HIRED, 1] == 35.0
    assert found[SELF, 1] == pytest.approx(40.0 - 5.0 * 31.0 / 365.0)


def test_base_case_and_rate_reach_the_measures():
    found = lifecycle(STRUCTURE, VALUES, COSTS)
    rate = VALUES["money.discount_rate_real_frac"]
    assert found.measures.net_savings_usd[WINDOW].tolist() == [0.0, 0.0]
    np.testing.assert_array_equal(found.measures.lcc_usd, measures(found.streams, rate, WINDOW).lcc_usd)
    assert sum(found.component_usd.values()) == pytest.approx(found.measures.lcc_usd)
    other = lifecycle(replace(STRUCTURE, base_case=Alternative.KEEP_AS_IS), VALUES, COSTS)
    assert other.measures.net_savings_usd[KEEP].tolist() == [0.0, 0.0]


def test_costs_given_are_left_as_they_were():
    before = COSTS.first_usd.copy()
    streams(STRUCTURE, VALUES, COSTS)
    np.testing.assert_array_equal(COSTS.first_usd, before)
    assert np.isnan(COSTS.in_service_d[KEEP]).all()
