"""Money in words, tables and JSON: hours at nothing, borrowed money, repairs, cash by month."""

import json
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from econ.evaluate.sheet import Entry
from econ.kernel.alternative import SELF, Alternative, Standing
from econ.kernel.spread import Spread
from econ.lifecycle.borrowing import Terms
from econ.lifecycle.discount import present_value
from econ.report import cash, money_plain, tables
from econ.report.numbers import NONE_TEXT
from econ.report.words import money
from econ.report.words.beneath import beneath
from econ.report.words.not_counted import OTHER_WAY, break_even_lines
from econ.report.words.verdict import answer_text, verdict_text
from econ.uncertainty.find_first import Worth
from econ.uncertainty.spread import quantiles
from tests import builders


class Lines:
    """A sheet with the one line that is read."""

    def entry(self, path):
        """Return a deposit."""
        return Entry(Spread(0.1, 0.25, 0.5, path), "")


def invented(winner=Alternative.SELF_INSTALL, at_zero=Alternative.SELF_INSTALL, kind="clear", rows=0):
    result = builders.result()
    named = replace(builders.verdict(result, kind), winner=winner)
    return SimpleNamespace(
        result=result,
        verdict=named,
        verdict_at_zero_hour=replace(named, winner=at_zero),
        drawn=builders.drawn(rows) if rows else None,
        chance=None,
        sheet=Lines(),
        worth=(Worth("kit.price_usd", 120.0, Alternative.SELF_INSTALL, Alternative.WINDOW_UNITS),),
    )


def test_same_winner_at_nothing_is_not_told():
    answer = invented()
    assert answer_text(answer) == verdict_text(answer.result, answer.verdict)


def test_first_sentence_says_that_hours_at_nothing_turn_the_choice():
    answer = invented(winner=Alternative.CONTRACTED_INSTALL)
    first = answer_text(answer).split(". ")[0]
    assert first.startswith("Hire it out, though it comes after this year's hot season")
    assert first.endswith("; with your hours at nothing, doing it yourself costs least")


def test_terms_are_told_with_the_true_rate(result):
    terms = Terms(2950.0, 180.0, 18, 50.0, 3290.0, 0.1432, is_without_interest=True)
    told = money.financing_text(replace(result, terms=(None, None, terms, None)), Alternative.SELF_INSTALL)
    assert told.endswith(
        "18 payments of $180 a month, $290 more than cash. Without interest in name, it is 14.3 % a year in truth."
    )
    assert money.financing_text(result, Alternative.SELF_INSTALL) == ""


def test_repairs_are_told_with_what_a_warranty_pays(result):
    flow = np.zeros((4, 1, 16))
    flow[SELF, 0, 3:5] = 60.0
    told = money.repairs_text(
        replace(result, streams=replace(result.streams, repair_usd=flow)), Alternative.SELF_INSTALL
    )
    assert told == "“Put it in yourself”: $120 of repairs to expect in 15 years; a warranty pays $210 more."
    assert money.repairs_text(result, Alternative.KEEP_AS_IS) == ""


def test_where_window_units_are_cheapest_both_sides_are_told():
    answer = invented(winner=Alternative.WINDOW_UNITS)
    yearly = np.array([[2000.0], [400.0], [700.0], [900.0]])
    answer.result = replace(answer.result, measures=replace(answer.result.measures, annualised_cost_usd_per_yr=yearly))
    told = break_even_lines(answer)
    assert any("a quiet room, a free window" in line for line in told)
    assert told[-1] == OTHER_WAY
    assert OTHER_WAY not in break_even_lines(invented())


def test_hiring_beside_doing_it_yourself_is_not_credited_with_the_quiet_that_both_have():
    answer = invented(winner=Alternative.SELF_INSTALL)
    yearly = np.array([[2000.0], [1400.0], [700.0], [900.0]])
    answer.result = replace(answer.result, measures=replace(answer.result.measures, annualised_cost_usd_per_yr=yearly))
    hired = next(line for line in break_even_lines(answer) if line.startswith("“Hire it out”"))
    assert hired.endswith("pay that for someone else who does the work and answers for it.")


def test_own_hours_of_a_way_that_is_not_named_stand_last_and_say_whose_they_are():
    own, cash = beneath(invented(rows=41))
    assert own.startswith("Your own 26 hours pay")
    assert beneath(invented(winner=Alternative.WINDOW_UNITS, rows=41))[1] == (
        f"If you put it in yourself, {own[0].lower()}{own[1:]}"
    )
    assert cash.startswith("The most cash")


def test_what_comes_back_at_the_start_stands_between_first_cost_and_years(result):
    first = result.streams.first_usd.copy()
    way = builders.with_way(result, SELF, first_cost_usd=first[SELF] + 120.0)
    assert money.start_text(way, Alternative.SELF_INSTALL).startswith(
        f"The years begin with ${first[SELF, 0]:,.0f}: $120 "
    )
    same = builders.with_way(result, SELF, first_cost_usd=first[SELF])
    assert money.start_text(same, Alternative.SELF_INSTALL) == ""


def test_cash_table_ends_on_the_cash_first_cost_and_tells_the_most():
    answer = invented(rows=41)
    columns = cash.cash_table(answer)
    assert columns["Put it in yourself"][-1].startswith("$3,770 (up to $4,")
    assert columns["By the end of"][0] == "month 1"
    alone = cash.cash_table(invented())
    assert alone["Put it in yourself"][-1] == "$3,770"


def test_reach_table_tells_never():
    drawn = builders.drawn(21)
    gone = replace(drawn.measures, simple_payback_yr=np.full((4, 21), np.nan))
    columns = cash.reach_table(replace(drawn, measures=gone))
    assert columns["Put it in yourself"][-1] == "never · never · never"
    assert set(cash.FIGURES) == set(quantiles(drawn))


@pytest.mark.parametrize(
    ("several", "exists", "said"), [(True, False, "not_unique"), (False, False, "none"), (False, True, "one")]
)
def test_internal_rate_says_whether_it_is_one_none_or_several(result, several, exists, said):
    flags = np.full((4, 1), several), np.full((4, 1), exists)
    found = replace(result, measures=replace(result.measures, irr_is_multiple=flags[0], irr_exists=flags[1]))
    assert money_plain.way_money(found, SELF)["irr_is"] == said


def test_table_says_several_rates_and_payback_undone(result):
    yes = np.ones((4, 1), dtype=np.bool_)
    found = replace(result, measures=replace(result.measures, irr_is_multiple=yes, simple_payback_is_undone=yes))
    columns = tables.compared(found, builders.verdict(found))
    cells = dict(zip(columns[""], columns["Put it in yourself"], strict=True))
    assert cells["Internal return against base"] == "several fit: none given"
    assert cells["Payback against base"].endswith(", undone later")
    assert cells["An own hour pays, against hiring"] == "$136"
    closed = builders.with_way(found, SELF, standing=Standing.NOT_ALLOWED)
    told = tables.compared(closed, builders.verdict(found))
    cells = dict(zip(told[""], told["Put it in yourself"], strict=True))
    assert cells["An own hour pays, against hiring"] == NONE_TEXT


def test_document_is_json_and_holds_doubt_only_with_draws():
    with_draws = json.loads(json.dumps(money_plain.document(invented(rows=41)), allow_nan=False))
    assert with_draws["pay_per_own_hour_usd_per_h"] == pytest.approx((7210.0 - (3770.0 - 100.0)) / 26.0)
    assert len(with_draws["quantiles"]["lcc_usd"]["self_install"]) == 3
    ends = {"at_low": "self_install", "at_high": "window_units"}
    assert with_draws["value_of_information"] == [{"path": "kit.price_usd", "usd": 120.0, **ends}]
    [card] = with_draws["find_first"]
    assert (card["what"], card["minutes"]) == ("The price of the kit", 15)
    assert with_draws["most_cash_usd"]["self_install"] > 3770.0
    assert with_draws["cash_paid_by_month_usd"]["self_install"][-1] == pytest.approx(3770.0)
    assert "quantiles" not in money_plain.document(invented())


def test_nominal_table_and_sentence_give_the_same_answer():
    answer = invented()
    document = money_plain.document(answer)["nominal"]
    assert document["discount_rate_nominal_frac"] == pytest.approx(1.25 * 1.25 - 1.0)
    flows = answer.result.streams.total_usd[SELF, 0]
    assert document["total_usd"]["self_install"] == pytest.approx(flows * 1.25 ** np.arange(16))
    assert document["lcc_usd"]["self_install"] == pytest.approx(float(present_value(flows, np.array(0.25))))
    first, last = (tables.yearly(answer.result, SELF, 0.25)["Energy"][year] for year in (1, 2))
    assert (first, last) == (tables.money(720.0 * 1.25), tables.money(720.0 * 1.25**2))
    told = money.dollars_text(answer, is_nominal=True)
    assert "prices rising 25.0 % a year" in told
    assert "Discounted at 56.2 % a year instead of 25.0 % the lifetime cost is the same." in told
    assert money.dollars_text(answer, is_nominal=False) == "In today's dollars, before discounting."


def test_letting_is_told_with_the_mark_that_it_is_no_tax_advice():
    answer = invented()
    assert money.letting_text(answer) == ""
    pieces = answer.result.component_usd | {"letting": np.array([[0.0], [-120.0], [-3400.0], [-3600.0]])}
    answer.result = replace(answer.result, component_usd=pieces)
    told = money.letting_text(answer)
    assert "“Put it in yourself” $3,400" in told
    assert "This is not tax advice" in told
