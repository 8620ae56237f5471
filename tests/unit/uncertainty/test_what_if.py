"""What would change the choice, on a demo case."""

from functools import cache

import numpy as np
import pytest

from econ.evaluate.sheet import point
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report import what_if as told
from econ.report.labels import labels
from econ.report.look import Look
from econ.report.numbers import NONE_TEXT
from econ.report.style import NAMES
from econ.tables.loaders import load_tables
from econ.uncertainty.what_if import YEARS, Race, tip_of, what_if, winners_by_year
from tests.demo import TODAY, demo_answer

LOOK = Look(TODAY, TODAY.year)


@cache
def found():
    return what_if(demo_answer("lower_level_cold"), load_tables())


def race():
    answer = demo_answer("lower_level_cold")
    return Race(answer.structure, answer.sheet, load_tables(), answer.verdict.eligible)


def test_the_winner_is_that_of_the_verdict():
    assert found().winner is demo_answer("lower_level_cold").verdict.winner


def test_another_way_wins_just_past_a_tipping_point_and_the_same_just_before():
    turning = [tip for tip in found().tips if tip.winner is not None]
    assert turning
    for tip in turning:
        step = 2e-3 * (tip.high - tip.low) * np.sign(tip.value - tip.now)
        values = point(race().sheet) | {tip.path: np.array([tip.value - step, tip.value + step])}
        before, after = race().winner(values)
        assert ALTERNATIVES[int(before)] is found().winner
        assert ALTERNATIVES[int(after)] is tip.winner


@pytest.mark.parametrize("path", ["costs.board_fitted_usd", "kit.price_usd", "prices.electricity_usd_per_kwh"])
def test_any_figure_is_told_to_turn_the_choice_just_where_another_way_wins(path):
    answer = demo_answer("lower_level_cold")
    tip = tip_of(answer, load_tables(), path)
    grid = np.linspace(tip.low, tip.high, 33)
    winners = {ALTERNATIVES[int(code)] for code in race().winner(point(race().sheet) | {path: grid})}
    sentence = told.any_tip(tip, "It", answer.sheet.entry(path).unit, LOOK)
    if tip.winner is None:
        assert winners == {found().winner}
        assert "does not change the choice" in sentence
    else:
        assert tip.winner in winners
        assert f"“{NAMES[tip.winner]}” becomes the cheapest" in sentence


def test_where_nothing_turns_the_winner_stays_from_end_to_end():
    for tip in (tip for tip in found().tips if tip.winner is None):
        values = point(race().sheet) | {tip.path: np.linspace(tip.low, tip.high, 9)}
        assert {ALTERNATIVES[int(code)] for code in race().winner(values)} == {found().winner}


def test_the_winner_of_every_stay_is_the_cheapest_then():
    years = dict(winners_by_year(race()))
    assert tuple(years) == YEARS
    assert years[demo_answer("lower_level_cold").structure.study_period_yr] is found().winner


def test_the_map_holds_the_choice_where_the_case_stands():
    across, up = (demo_answer("lower_level_cold").sheet.entry(path).likely for path in found().map_paths)
    at = np.argmin(np.abs(found().map.up - up)), np.argmin(np.abs(found().map.across - across))
    assert ALTERNATIVES[int(found().map.difference_usd[at])] is found().winner


def test_three_sentences_tell_it_without_a_chart():
    sentences = told.sentences(found(), LOOK)
    assert 1 <= len(sentences) <= 3
    assert all(sentence.endswith(".") for sentence in sentences)


def test_every_lever_that_turns_nothing_says_between_which_ends_it_was_tried():
    table = told.tips_table(found(), LOOK)
    assert all(cell for cell in table["Turns at"])
    assert any(cell.startswith("none between ") for cell in table["Turns at"])


def test_without_a_second_way_no_number_changes_the_choice():
    assert told.sentences(None, LOOK) == (
        "Nothing to try: fewer than two ways pass what comes before cost. The answer page says what stops others.",
    )


def test_every_figure_has_words():
    answer = demo_answer("top_floor_flat")
    words = labels(answer.sheet, load_tables(), answer.structure.room_names)
    assert set(words) == set(answer.sheet.path)
    assert all(text and "_" not in text for text in words.values())
    assert words["costs.freight_usd"][0].isupper()


@pytest.mark.parametrize(
    ("path", "value", "text"),
    [
        ("quote.total_usd", 2700.0, "$2,700"),
        ("work.hour_value_usd_per_h", 41.0, "$41 an hour"),
        ("prices.electricity_usd_per_kwh", 0.147, "$0.15 a kWh"),
        ("use.cooling_setpoint_c", 24.0, "75 °F"),
        ("kit.life_yr", 12.0, "12 years"),
        ("money.discount_rate_real_frac", 0.03, "3.0 %"),
        ("kit.price_usd", float("nan"), NONE_TEXT),
    ],
)
def test_values_are_told_as_people_say_them(path, value, text):
    assert told.value_text(path, value, LOOK) == text


def test_moving_nothing_leaves_the_winner():
    answer = demo_answer("lower_level_cold")
    assert told.moved_winner(answer, answer.result) is Alternative.SELF_INSTALL
    assert "still the cheapest" in told.moved_sentence(answer, answer.result)
    assert set(told.moved_table(answer, answer.result)["Change"]) == {"$0"}
