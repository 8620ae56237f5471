"""A hired job cut two ways is one price; hours never stand at wage and billed rate at once."""

from dataclasses import replace

import pytest

from econ.case.edit import with_quote, with_value
from econ.evaluate.own_items import hired_usd
from econ.evaluate.sheet import point
from econ.evaluate.wiring.installation_quote import CUTS, SOLD, WAGE
from econ.installation.quote_bridge import STEP_KIND
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.quote import kit_cents, priced, quote_study
from econ.uncertainty.quotes import SIZE, WARRANTY_YEARS, compared, names
from tests.demo import NAMES, demo_answer

SUNROOM = "sunroom_with_quote"


def own_of(name):
    return priced(demo_answer(name), load_tables())


@pytest.mark.parametrize("name", NAMES)
def test_both_cuts_are_the_same_price_and_that_of_the_comparison(name):
    own, answer = own_of(name), demo_answer(name)
    sums = {cut: sum(spread.likely for spread in own.step_usd[cut].values()) for cut in CUTS}
    assert sums[WAGE] == pytest.approx(sums[SOLD])
    assert sums[SOLD] == pytest.approx(own.price_usd.likely)
    hired = hired_usd(answer.structure, point(answer.sheet), installation_tables())
    beside = sum(
        float(usd)
        for usd, key in zip(
            answer.result.alternatives[3].line_items.amount_usd[0],
            answer.result.alternatives[3].line_items.key,
            strict=True,
        )
        if key.startswith("mishap_") and key != "mishap_time"
    )
    assert own.price_usd.likely == pytest.approx(hired - beside)


@pytest.mark.parametrize("name", NAMES)
def test_overhead_is_told_apart_or_inside_the_rates_never_both(name):
    own = own_of(name)
    margin = {key for key, kind in STEP_KIND.items() if kind == "overhead_profit"}
    assert margin <= set(own.step_usd[WAGE])
    assert not margin & set(own.step_usd[SOLD])
    assert own.margin_usd == pytest.approx(sum(own.step_usd[WAGE][key].likely for key in margin))
    assert own.step_usd[WAGE]["labour"].likely < own.step_usd[SOLD]["labour"].likely


def test_hours_at_wage_are_hours_times_a_cost_between_mate_and_technician():
    own = own_of(SUNROOM)
    usd = sum(own.step_usd[WAGE][key].likely for key in ("labour", "commissioning"))
    costs = load_tables().costs
    wage, billed, mate = (
        costs[f"contractor_{name}_usd_per_h"].spread().likely for name in ("wage", "billed", "helper_billed")
    )
    assert wage * mate / billed < usd / own.hours_h < wage


def test_a_changed_assumption_of_the_trade_moves_the_cut_and_not_the_price():
    answer = demo_answer(SUNROOM)
    changed = replace(answer, case=with_value(answer.case, "trade.labour_usd_per_h", 80))
    own, usual = priced(changed, load_tables()), own_of(SUNROOM)
    assert own.price_usd == usual.price_usd
    assert own.step_usd[WAGE]["labour"].likely == pytest.approx(usual.step_usd[WAGE]["labour"].likely * 80 / 58)


def test_private_figures_move_nothing():
    answer = demo_answer(SUNROOM)
    case = with_value(with_value(answer.case, "private.labour_usd_per_h", 77.77), "private.overhead_frac", 0.18)
    own, usual = priced(replace(answer, case=case), load_tables()), own_of(SUNROOM)
    assert own.items == usual.items


@pytest.mark.parametrize("name", [name for name in NAMES if demo_answer(name).structure.has_quote])
def test_the_bridge_of_a_demo_starts_at_the_kit_and_ends_at_the_quote(name):
    answer = demo_answer(name)
    study = quote_study(answer, own_of(name))
    assert study.kit_cents == kit_cents(answer) > 0
    for found in study.bridges.values():
        assert found.kit_cents == study.kit_cents
        assert found.total_cents == round(100 * answer.sheet.entry("quote.total_usd").likely)
        assert found.kit_cents + sum(step.cents for step in found.steps) == found.total_cents


def test_a_job_that_is_closed_to_own_hands_is_no_kit_job():
    assert not quote_study(demo_answer("top_floor_flat"), own_of("top_floor_flat")).is_for_kit
    assert quote_study(demo_answer(SUNROOM), own_of(SUNROOM)).is_for_kit


def test_quotes_are_set_on_equal_scope_and_service():
    answer = demo_answer(SUNROOM)
    case = answer.case.model_copy(update={"quotes": ()})
    case = with_quote(case, {"name": "Second", "total_usd": 4550, "equipment": "yes", "permit": "yes"})
    case = with_quote(case, {"total_usd": 4000, "size": "9", "warranty": "no", **dict.fromkeys(PARTS, "yes")})
    case = with_quote(case, {"name": "no total"})
    own = own_of(SUNROOM)
    first, second, third = compared(replace(answer, case=case), own, load_tables())
    assert names((first, second, third)) == ("First quote", "Second", "Quote C")
    twins = (second, second)
    assert names(twins) == ("A: Second", "B: Second")
    assert dict(first.added) == {}
    assert set(dict(second.added)) == {"electrical", WARRANTY_YEARS}
    assert dict(second.added)["electrical"] == own.step_cents(SOLD, "electrical")
    assert set(dict(third.added)) == {SIZE, WARRANTY_YEARS}
    prices = [load_tables().ductless("trade", size, "standard").spread("price_usd").likely for size in (12, 9)]
    assert dict(third.added)[SIZE] == pytest.approx(100 * 1.35 * (prices[0] - prices[1]), abs=1)
    assert dict(third.added)[WARRANTY_YEARS] == 15_000, "two years of ten for 750 dollars"
    assert second.equal_cents == 455_000 + sum(cents for _, cents in second.added)


PARTS = ("equipment", "electrical", "permit", "removal")
