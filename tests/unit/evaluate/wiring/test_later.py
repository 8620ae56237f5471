"""What comes later in a case: the next set, nobody who services, the sale, borrowed money, letting."""

from dataclasses import replace

import numpy as np
import pytest

from econ.case.choices import code
from econ.evaluate.wiring.funding import down_payment_usd, financing_terms
from econ.evaluate.wiring.lifecycle import lifecycle, streams
from econ.installation.warranty import no_warranty
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from tests.unit.evaluate.wiring.test_lifecycle import COSTS, STRUCTURE, VALUES, YEARS, rows

SHORT = VALUES | {"kit.life_yr": np.array(8.0)}


def chosen(path, option):
    return {path: np.array(code(path, option))}


def test_next_set_may_be_put_in_by_other_hands():
    plain, by_trade, by_self = (
        streams(STRUCTURE, SHORT | chosen("later.replaced_by", option), COSTS).replacement_usd[:, 0].sum(axis=-1)
        for option in ("same_hands", "contractor", "yourself")
    )
    assert by_trade[SELF] == plain[HIRED] == by_trade[HIRED]
    assert by_self[HIRED] == plain[SELF] == by_self[SELF]
    assert by_trade[WINDOW] == by_self[WINDOW] == plain[WINDOW]


def test_recovery_stands_in_every_chain_and_at_the_end_as_far_as_worn():
    priced = {
        "costs.window_drop_off_usd": 20.0,
        "costs.recover_refrigerant_usd": 200.0,
        "costs.haul_away_split_usd": 100.0,
    }
    found = streams(STRUCTURE, SHORT | {path: np.array(usd) for path, usd in priced.items()}, COSTS)
    by_year, start = found.disposal_usd[:, 0], 31.0 / 365.0
    assert (by_year[:, -1] > 0.0).all()
    assert by_year[SELF, 9] == 300.0
    assert by_year[SELF, -1] == pytest.approx(300.0 * (YEARS - 8.0 - start) / 8.0)
    assert by_year[WINDOW, 10] == 40.0
    assert by_year[KEEP, 4] == 40.0


def test_failures_cost_more_where_nobody_services_a_kit_and_the_hired_way_stays():
    failing = {
        f"costs.{key}": np.array(0.1) for key in ("kit_failures_age_2_5_per_yr", "trade_failures_age_2_5_per_yr")
    }
    failing |= {"costs.board_fitted_usd": np.array(400.0)}
    served, alone = (
        streams(STRUCTURE, VALUES | failing | {"later.no_service_frac": np.array(chance)}, COSTS).repair_usd[:, 0]
        for chance in (0.0, 1.0)
    )
    assert served[SELF, 3] == pytest.approx(0.1 * 0.9 * 100.0)
    price, age = 1800.0 + 0.5 * 600.0, 2.5 - 31.0 / 365.0
    assert alone[SELF, 3] == pytest.approx(0.1 * price * (1.0 - age / 15.0))
    np.testing.assert_array_equal(served[HIRED], alone[HIRED])


def test_warranty_pays_parts_within_its_years():
    failing = {"costs.kit_failures_age_1_per_yr": 0.1, "costs.board_fitted_usd": 400.0, "repairs.compressor_frac": 0.0}
    values = VALUES | {path: np.array(number) for path, number in failing.items()}
    none = no_warranty(2)
    kit = replace(none, parts_yr=np.full(2, 5.0), claims_paid_frac=np.full(2, 0.8))
    warranties = (none, none, kit, none)
    found = lifecycle(STRUCTURE, values, replace(COSTS, in_service_d=rows(0.0, 0.0, 0.0, 0.0), warranties=warranties))
    assert found.streams.repair_usd[SELF, 0, 1] == pytest.approx(0.1 * (50.0 + 0.2 * 50.0))
    assert found.by_warranty_usd[SELF, 0] == pytest.approx(0.1 * 0.8 * 50.0)


def test_buyer_of_the_house_pays_for_a_share_and_window_units_move_out():
    kept = {"later.kept_self_frac": np.array(0.4), "later.kept_hired_frac": np.array(0.5)}
    plain = streams(STRUCTURE, VALUES, COSTS).residual_usd[:, 0, -1]
    sold = streams(STRUCTURE, VALUES | kept | {"later.sale_after_yr": np.array(float(YEARS))}, COSTS).residual_usd[
        :, 0, -1
    ]
    later = streams(STRUCTURE, VALUES | kept | {"later.sale_after_yr": np.array(YEARS + 1.0)}, COSTS).residual_usd[
        :, 0, -1
    ]
    assert sold == pytest.approx(plain * np.array([1.0, 1.0, 0.4, 0.5]))
    np.testing.assert_array_equal(later, plain)


LOAN = {
    **chosen("finance.pays_for", "contracted_install"),
    **chosen("finance.kind", "loan"),
    "finance.share_frac": np.array(0.5),
    "finance.loan_rate_frac": np.array(0.08),
    "finance.month_count": np.array(24.0),
    "finance.fee_frac": np.array(0.02),
}


def test_borrowed_money_leaves_year_zero_and_comes_back_later_for_that_way_alone():
    found = streams(STRUCTURE, VALUES | LOAN, COSTS).financing_usd
    assert found[HIRED, 0, 0] == pytest.approx(-3000.0 * 0.98)
    assert found[HIRED, 0, 1] > found[HIRED, 0, 2] > 0.0
    assert not found[[KEEP, WINDOW, SELF]].any()
    assert down_payment_usd(VALUES | LOAN, HIRED, np.array([6000.0]))[0] == pytest.approx(3060.0)
    assert down_payment_usd(VALUES | LOAN, SELF, np.array([3000.0]))[0] == 3000.0


def test_terms_stand_only_where_money_is_borrowed():
    found = financing_terms(VALUES | LOAN, COSTS.cash_usd)
    assert found[HIRED].apr_frac > 0.08
    assert [each is None for each in found] == [True, True, True, False]


def test_terms_of_draws_are_those_of_the_first():
    rates = {"finance.loan_rate_frac": np.array([0.08, 0.12])}
    found = financing_terms(VALUES | LOAN | rates, COSTS.cash_usd)[HIRED]
    assert found.apr_frac == pytest.approx(financing_terms(VALUES | LOAN, COSTS.cash_usd)[HIRED].apr_frac)
    flow = streams(STRUCTURE, VALUES | LOAN | rates, COSTS).financing_usd[HIRED]
    assert flow[1, 1] > flow[0, 1]


def test_own_hours_at_nothing_lower_the_life_cycle_cost_by_what_they_are_priced_at():
    costs = replace(
        COSTS,
        own_first_usd=rows(0.0, 50.0, 500.0, 0.0),
        own_fitting_usd=rows(0.0, 50.0, 400.0, 0.0),
        own_upkeep_usd_per_yr=rows(20.0, 25.0, 0.0, 0.0),
    )
    found = lifecycle(STRUCTURE, VALUES, costs)
    zero = lifecycle(STRUCTURE, VALUES, costs.at_zero_hour())
    np.testing.assert_allclose(found.lcc_at_zero_hour_usd, zero.measures.lcc_usd, rtol=1e-12)
    assert (found.lcc_at_zero_hour_usd[SELF] < found.measures.lcc_usd[SELF] - 450.0).all()


def test_tools_sold_again_come_back_in_year_one():
    found = streams(STRUCTURE, VALUES, replace(COSTS, tool_resale_usd=rows(0.0, 0.0, 120.0, 0.0)))
    assert found.residual_usd[:, 0, 1].tolist() == [0.0, 0.0, 120.0, 0.0]


LET = {
    **chosen("letting.counted", "yes"),
    **chosen("prices.pays_bill", "me"),
    **chosen("letting.split_class", "residential_27_5"),
    **chosen("letting.window_class", "appliance_5"),
    "letting.marginal_rate_frac": np.array(0.25),
    "letting.bonus_frac": np.array(0.0),
    "letting.rent_window_usd_per_month": np.array(0.0),
    "letting.rent_split_usd_per_month": np.array(30.0),
}


def test_letting_adds_rent_and_takes_off_taxes_by_class():
    found = streams(STRUCTURE, VALUES | LET, COSTS)
    year = found.letting_usd[:, 0, 1]
    running = found.energy_usd[:, 0, 1] + found.om_usd[:, 0, 1]
    assert year[WINDOW] == pytest.approx(-0.25 * (running[WINDOW] + 0.2 * 600.0 / 1.025))
    month = 2
    share = (12.5 - month) / 12.0 / 27.5
    assert year[SELF] == pytest.approx(-360.0 + 0.25 * (360.0 - running[SELF] - share * 3000.0 / 1.025))


# IRC 168(k): property of 20 years or less only
def test_bonus_holds_for_appliances_and_leaves_parts_of_the_building_alone():
    plain, bonus = (
        streams(STRUCTURE, VALUES | LET | {"letting.bonus_frac": np.array(share)}, COSTS).letting_usd[:, 0, 1]
        for share in (0.0, 1.0)
    )
    assert bonus[WINDOW] == pytest.approx(plain[WINDOW] - 0.25 * 0.8 * 600.0 / 1.025)
    assert bonus[SELF] == plain[SELF]


def test_tenant_who_pays_the_bill_takes_energy_off_the_owner():
    mine, theirs = (
        streams(STRUCTURE, VALUES | LET | chosen("prices.pays_bill", who), COSTS) for who in ("me", "tenant")
    )
    taken = mine.letting_usd - theirs.letting_usd
    np.testing.assert_allclose(taken, 0.75 * mine.energy_usd, rtol=1e-12)


def test_nothing_is_let_or_borrowed_unless_asked_for():
    found = streams(STRUCTURE, VALUES, COSTS)
    assert not found.letting_usd.any()
    assert not found.financing_usd.any()
