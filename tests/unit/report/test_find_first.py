"""What to find out first, and what no figure holds."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from econ.evaluate.sheet import Entry, sheet_of
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, WINDOW, Alternative
from econ.kernel.spread import Spread
from econ.report.numbers import money, two_digits
from econ.report.style import NAMES
from econ.report.words import find_first, not_counted
from econ.uncertainty.draws import drawn
from econ.uncertainty.find_first import Question, worth_knowing
from tests import builders

N_DRAW = 4096
SHEET = sheet_of(
    {
        "kit.price_usd": Entry(Spread(500.0, 1500.0, 2500.0, "made up"), "USD"),
        "kit.life_yr": Entry(Spread(10.0, 15.0, 20.0, "made up"), "year"),
        "prices.gas_usd_per_therm": Entry(Spread(1.0, 1.5, 2.0, "made up"), "USD/therm"),
    }
)


def invented(cost_usd, eligible=(True,) * 4):
    """Return an answer whose lifetime costs at the draws are given."""
    result = builders.result()
    measures = SimpleNamespace(lcc_usd=cost_usd)
    verdict = replace(builders.verdict(result), eligible=eligible)
    return SimpleNamespace(
        sheet=SHEET,
        drawn=SimpleNamespace(measures=measures),
        verdict=verdict,
        result=result,
        worth=worth_of(cost_usd, eligible),
    )


def worth_of(cost_usd, eligible=(True,) * 4, cost_of=None):
    """Return what is worth knowing where the kit's price alone moves anything, or as given."""
    question = Question(SHEET, cost_usd, np.array(eligible), 1)
    return worth_knowing(question, cost_of or cost_of_price)


def cost_of_price(values):
    """Return the lifetime costs of `costs_that_turn_on_the_price` at any price."""
    price = np.atleast_1d(values["kit.price_usd"])
    return np.stack([np.full(len(price), 6500.0), np.full(len(price), 1500.0), price, np.full(len(price), 5500.0)])


def costs_that_turn_on_the_price():
    price = drawn(SHEET.low, SHEET.likely, SHEET.high, N_DRAW, 1)[0]
    flat = np.full(N_DRAW, 1500.0)
    return np.array([flat + 5000.0, flat, price, flat + 4000.0])


def test_the_one_input_that_turns_the_choice_is_worth_knowing():
    [worth] = worth_of(costs_that_turn_on_the_price())
    cost = costs_that_turn_on_the_price()
    # Knowing the price exactly saves the mean of what it lies below 1,500; 64 bins of it lose less than a fiftieth.
    exact = min(cost[1].mean(), cost[2].mean()) - np.minimum(cost[1], cost[2]).mean()
    assert worth.path == "kit.price_usd"
    assert worth.usd == pytest.approx(exact, rel=0.02)
    assert (worth.at_low, worth.at_high) == (Alternative.SELF_INSTALL, Alternative.WINDOW_UNITS)


def test_nothing_is_worth_knowing_where_one_way_always_wins():
    cost = costs_that_turn_on_the_price()
    cost[WINDOW] += 9000.0
    assert worth_of(cost) == ()


def test_inputs_without_bearing_are_not_taken_for_knowledge():
    noise = np.random.default_rng(5).normal(0.0, 300.0, (4, N_DRAW))
    far = np.array([0.0, 1e6, 0.0, 0.0])
    assert worth_of(noise, cost_of=lambda values: far[:, None] * np.atleast_1d(values["kit.life_yr"])) == ()


def test_an_input_that_moves_nothing_is_worth_nothing_however_alike_its_draws_look():
    """Of two columns of evenly spread points that look alike only the one that moves a cost is told."""
    alike = sheet_of({"kit.price_usd": SHEET.entry("kit.price_usd"), "kit.life_yr": SHEET.entry("kit.life_yr")})
    life = drawn(SHEET.low, SHEET.likely, SHEET.high, N_DRAW, 1)[SHEET.path.index("kit.life_yr")]
    cost = costs_that_turn_on_the_price()
    cost[SELF] = 1500.0 + 200.0 * (life - 15.0)
    question = Question(alike, cost, np.ones(4, dtype=bool), 1)
    told = worth_knowing(
        question, lambda values: 200.0 * np.atleast_1d(values["kit.life_yr"]) * np.eye(4)[SELF][:, None]
    )
    assert [each.path for each in told] == ["kit.life_yr"]
    assert worth_knowing(question, lambda values: np.zeros((4, np.atleast_1d(values["kit.life_yr"]).size))) == ()


def test_no_input_is_worth_more_than_it_moves():
    [worth] = worth_of(costs_that_turn_on_the_price(), cost_of=lambda values: 0.05 * cost_of_price(values))
    assert worth.usd == pytest.approx(0.05 * 2000.0 * 3 / 4)  # three ways beside the best, each a quarter of the range


def test_a_choice_of_one_is_no_choice():
    cost = costs_that_turn_on_the_price()
    assert worth_of(cost, (False, True, False, False)) == ()


def test_a_card_says_what_whom_to_ask_and_what_it_is_worth():
    [card] = find_first.cards(invented(costs_that_turn_on_the_price()))
    assert card.guide.what == "The price of the kit"
    assert card.change.startswith("Knowing it before you decide is worth about $")


def test_a_cheaper_way_shut_by_its_date_sends_to_the_phone():
    found = invented(costs_that_turn_on_the_price())
    late = replace(
        found.verdict,
        winner=Alternative.CONTRACTED_INSTALL,
        reasons=((), (), ("late",), ()),
        eligible=(False, False, False, True),
    )
    [card] = find_first.cards(SimpleNamespace(**vars(found) | {"verdict": late, "worth": ()}))
    assert card.guide.what == "The first free day"
    assert "“Put it in yourself” comes in: about $3,000 less" in card.change


def test_without_a_card_it_is_said_that_nothing_would_change_the_choice():
    assert "would change the choice" in find_first.none_text(invented(np.ones((4, N_DRAW))))


def test_knowing_everything_is_told_as_what_is_lost_by_deciding_now():
    cost = costs_that_turn_on_the_price()
    lost = min(cost[WINDOW].mean(), cost[SELF].mean()) - np.minimum(cost[WINDOW], cost[SELF]).mean()
    assert f"would save about {money(two_digits(lost))} on average" in find_first.all_text(invented(cost))
    cost[WINDOW] += 9000.0
    assert find_first.all_text(invented(cost)) == ""


@pytest.mark.parametrize("path", ["rooms[3].floor_area_m2", "costs.circuit_10m_fished_usd", "quote.total_usd"])
def test_what_can_be_asked_or_measured_has_a_guide(path):
    assert find_first.guide_for(path)


@pytest.mark.parametrize("path", ["kit.life_yr", "work.mishap_usd", "prices.electricity_escalation_frac"])
def test_what_nobody_can_look_up_has_none(path):
    assert find_first.guide_for(path) is None


def test_uncounted_sides_are_held_against_the_extra_cost_a_year():
    found = invented(np.ones((4, N_DRAW)))
    yearly = found.result.measures.annualised_cost_usd_per_yr[:, 0]
    lines = not_counted.break_even_lines(found)
    own = yearly[ALTERNATIVES.index(found.verdict.winner)]
    dearer = sorted((yearly[at] - own, at) for at in (WINDOW, HIRED, SELF) if yearly[at] > own)
    assert [line.split("”")[0][1:] for line in lines] == [NAMES[ALTERNATIVES[at]] for _, at in dearer]
    for line, (extra, _) in zip(lines, dearer, strict=True):
        assert f"costs {money(two_digits(extra))} a year more than doing it yourself" in line


def test_a_way_that_does_not_do_the_job_is_not_offered_for_its_uncounted_sides():
    found = invented(np.ones((4, N_DRAW)))
    short = replace(found.verdict, reasons=((), ("short_of_need",), (), ("late",)))
    lines = not_counted.break_even_lines(SimpleNamespace(**vars(found) | {"verdict": short}))
    assert not any("New window units" in line for line in lines)
    assert any("(after this year's hot season)" in line for line in lines)


def test_an_answer_is_a_first_look_until_what_could_turn_it_is_answered():
    found = invented(costs_that_turn_on_the_price())
    entry = found.sheet.entry("kit.price_usd")
    for state, told in (("usual", True), ("not_known", True), ("yours", False)):
        sheet = sheet_of({"kit.price_usd": replace(entry, state=state)})
        text = find_first.first_look_text(SimpleNamespace(**vars(found) | {"sheet": sheet}))
        assert text == ("First look. Not answered yet, and it could turn this: the price of the kit." if told else "")
