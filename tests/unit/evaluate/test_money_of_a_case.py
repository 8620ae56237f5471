"""Money of a whole case: what is paid when, at which value of an hour, and what an incentive does to the limit."""

from datetime import date

import numpy as np
import pytest

from econ.case.schema import case_from
from econ.evaluate.sheet import point
from econ.evaluate.split import tool_plan
from econ.installation.first_cost import incentive_usd
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.report import tables
from econ.report.words.money import pay_per_own_hour_usd
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import answer

TODAY = date(2027, 3, 1)
PLAIN = {"place": {"station": "St Cloud Regional Arpt, MN"}, "rooms": [{}]}


def found(draws=0, **sections):
    return answer(case_from(PLAIN | sections), load_tables(), TODAY, draws=draws)


def test_first_cost_is_cash_and_own_hours_at_their_value():
    for way in found(work={"hour_value_usd_per_h": 40}).result.alternatives:
        assert way.first_cost_usd == pytest.approx(way.cash_first_cost_usd + 40.0 * way.own_hours_h)


def test_lifetime_cost_at_zero_hour_is_that_of_a_case_with_hours_at_nothing():
    priced, free = (found(work={"hour_value_usd_per_h": value}).result for value in (40, 0))
    assert priced.lcc_at_zero_hour_usd == pytest.approx(free.measures.lcc_usd)
    assert (priced.measures.lcc_usd[SELF] > free.measures.lcc_usd[SELF] + 300.0).all()


def test_measures_on_the_room_have_no_own_hours_left_at_zero():
    work = {"hour_value_usd_per_h": 40}, {"hour_value_usd_per_h": 0}
    chosen = {"chosen": ["air_sealing"]}
    priced, free = (found(work=hours, measures=chosen).result for hours in work)
    assert priced.lcc_at_zero_hour_usd == pytest.approx(free.measures.lcc_usd)


@pytest.mark.parametrize("wall", ["wood_frame", "poured_concrete", "stone"])
def test_tools_stand_at_their_price_and_what_they_fetch_comes_in_year_one(wall):
    given = found(site={"wall": wall, "wall_thickness_m": "0.3 m"})
    items = given.result.alternatives[SELF].line_items
    paid = sum(items.amount_usd[0, at] for at, key in enumerate(items.key) if key.startswith("tool_"))
    net = sum(plan.cost_usd for plan in tool_plan(given.structure, point(given.sheet), installation_tables()))
    fetched = given.result.streams.residual_usd[:, 0, 1]
    assert fetched[SELF] == pytest.approx(paid - net)
    assert fetched[[KEEP, WINDOW, HIRED]].tolist() == [0.0, 0.0, 0.0]


def test_an_incentive_leaves_the_cash_before_service_and_takes_its_worth_off_the_lifetime_cost():
    plain, helped = (found(16, money=promised(usd)) for usd in (0, 300))
    before, after = (each.result.alternatives[SELF] for each in (plain, helped))
    assert after.cash_first_cost_usd[0] == pytest.approx(before.cash_first_cost_usd[0])
    assert after.first_cost_usd[0] == pytest.approx(before.first_cost_usd[0])
    back = float(incentive_usd(after.line_items)[0])
    assert 0.0 < back < 300.0
    assert before_less_after(plain, helped) == pytest.approx(back)
    np.testing.assert_allclose(plain.drawn.cash_first_cost_usd[SELF], helped.drawn.cash_first_cost_usd[SELF])
    more_h = before.own_hours_h[0] - plain.result.alternatives[HIRED].own_hours_h[0]
    assert pay_per_own_hour_usd(helped.result) - pay_per_own_hour_usd(plain.result) == pytest.approx(back / more_h)


def promised(usd):
    return {"incentive_self_usd": usd, "incentive_self_terms": "none"}


def before_less_after(plain, helped):
    return float((plain.result.measures.lcc_usd - helped.result.measures.lcc_usd)[SELF, 0])


def test_the_table_of_lines_says_what_is_left_once_an_incentive_is_paid():
    way = found(money=promised(300)).result
    shown = tables.first_cost(way, SELF)
    paid = dict(zip(shown["Line"], shown["Amount"], strict=True))
    assert set(map(len, shown.values())) == {len(shown["Line"])}
    told = [
        float(paid[name].replace("$", "").replace(",", "")) for name in ("With own time", "Once the incentive is paid")
    ]
    assert told[0] - told[1] == pytest.approx(float(incentive_usd(way.alternatives[SELF].line_items)[0]), abs=0.01)
    assert "Once the incentive is paid" not in tables.first_cost(way, HIRED)["Line"]


def test_incentive_comes_after_the_money_is_out():
    cash = found().result.alternatives[WINDOW].cash_first_cost_usd[0]
    money = {"cash_limit_usd": float(cash) - 1.0, "incentive_window_usd": 100}
    assert not found(money=money).result.alternatives[WINDOW].is_within_cash[0]
    borrowed = {"pays_for": "window_units"}
    assert found(money=money, finance=borrowed).result.alternatives[WINDOW].is_within_cash[0]


def test_years_end_with_the_sale_of_the_house():
    sold = found(money={"study_period_yr": 12}, later={"sale_after_yr": 5})
    assert sold.structure.study_period_yr == sold.result.study_period_yr == 5
    kept = found(money={"study_period_yr": 5})
    assert sold.result.streams.residual_usd[SELF, 0, -1] < kept.result.streams.residual_usd[SELF, 0, -1]
    assert found(money={"study_period_yr": 5}, later={"sale_after_yr": 9}).result.study_period_yr == 5


@pytest.mark.parametrize("section", ["finance", "later", "letting"])
def test_not_known_is_an_answer_to_every_question_about_paying(section):
    fields = {
        "finance": ("pays_for", "kind", "loan_rate_frac", "month_count", "dearer_frac", "fee_frac", "deposit_frac"),
        "later": ("replaced_by", "no_service_frac", "kept_self_frac", "kept_hired_frac"),
        "letting": ("counted", "marginal_rate_frac", "split_class", "window_class", "bonus_frac"),
    }
    given = found(draws=16, **{section: dict.fromkeys(fields[section], "not known")})
    assert np.isfinite(given.drawn.measures.lcc_usd).all()


def test_draws_with_everything_turned_on_are_finite_and_wider():
    on = {
        "finance": {"pays_for": "every_way", "kind": "card"},
        "later": {"replaced_by": "contractor", "sale_after_yr": 6},
        "letting": {"counted": "yes", "rent_split_usd_per_month": {"low": 10, "likely": 20, "high": 40}},
    }
    given = found(draws=32, **on)
    assert np.isfinite(given.drawn.measures.lcc_usd).all()
    assert given.drawn.measures.lcc_usd[SELF].std() > 0.0
    assert given.verdict_at_zero_hour.winner is not None
