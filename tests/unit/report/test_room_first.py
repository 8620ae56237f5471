"""Fix the room first, in words, as a table and as plain values."""

import json

import pytest

from econ.case.edit import with_value
from econ.evaluate.known import known_names
from econ.evaluate.load_measures import load_measures
from econ.report import room_first
from econ.report.terminal import loads_text, look_of
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer
from tests.unit.evaluate.wiring.test_measures import TWO_ROOMS

TABLES = load_tables()


def found(case=TWO_ROOMS, *chosen):
    """Return an answer and the measures of it."""
    taken = with_value(case, "measures.chosen", list(chosen), known_names()) if chosen else case
    told = answer(taken, TABLES, TODAY, 0)
    return told, load_measures(told.structure, told.sheet, TABLES)


def test_the_headline_names_share_and_cost_of_the_best_measure():
    _, measures = found()
    text = room_first.headline(measures)
    best = max(
        (place for place, each in enumerate(measures.measures) if each.is_offered),
        key=lambda place: room_first.cut_frac(measures, place) / measures.measures[place].cost_usd[1],
    )
    assert text.startswith(measures.measures[best].label)
    assert f"{round(100 * room_first.cut_frac(measures, best))} % off the hottest hour for about $" in text


def test_where_nothing_helps_that_is_said():
    _, measures = found(with_value(TWO_ROOMS, "use.cool", "no"))
    assert room_first.headline(measures) == "No measure on the room itself takes anything off its hottest hour."


def test_what_is_taken_is_told_together_with_hours_before_and_after():
    _, measures = found(TWO_ROOMS, "window_film", "fan")
    text = " ".join(room_first.sentences(measures))
    assert "What you took (solar film on the glass and a fan in the room) is in every way" in text
    assert "instead of" in text


def test_the_table_has_a_row_for_each_offered_and_one_for_all_taken():
    told, measures = found(TWO_ROOMS, "window_film", "fan")
    columns = room_first.table(measures, look_of(told))
    offered = [each.label for each in measures.measures if each.is_offered]
    assert columns["Measure"] == [*offered, "All you took, together"]
    assert all(len(cells) == len(columns["Measure"]) for cells in columns.values())
    assert all("→" in cell for cell in columns["Hottest hour"][:2])


PAYBACKS = [(9.2, "9 years"), (49.4, "49 years"), (50.0, "more than 50 years"), (float("nan"), "never")]


@pytest.mark.parametrize(("value_yr", "text"), PAYBACKS)
def test_a_payback_past_fifty_years_is_only_long(value_yr, text):
    assert room_first.payback_text(value_yr) == text


def test_plain_values_are_changes_against_the_room_as_it_is():
    _, measures = found(TWO_ROOMS, "fan")
    document = room_first.document(measures)
    json.dumps(document, allow_nan=False)
    by_key = {each["key"]: each for each in document["load_measures"]}
    assert set(by_key) == set(TABLES.measures.keys)
    assert by_key["window_film"]["design_cooling_w_change"] < 0.0
    assert by_key["air_sealing"]["annual_heating_kwh_change"] < 0.0
    assert by_key["window_film"]["annual_heating_kwh_change"] > 0.0
    assert by_key["fan"]["design_heating_w_change"] == pytest.approx(0.0)
    assert set(by_key["fan"]["cost_usd"]) == set(by_key["fan"]["hours"]) == {"low", "likely", "high"}
    assert document["load_measures_chosen"] == pytest.approx({key: by_key["fan"][key] for key in room_first.CHANGES})


def test_the_terminal_tells_the_room_before_any_size():
    told = demo_answer("sunroom_with_quote")
    text = loads_text(told, load_measures(told.structure, told.sheet, TABLES))
    assert "Fix the room first" in text
    assert "- Shade outside the windows. Hottest hour" in text
