"""The record in words: no band without the way it ran, the maker's band first, a leak stops everything."""

import pytest

from econ.case.sections.as_built import Tests as Entered
from econ.evaluate.keeping import Goods
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF
from econ.report.look import Look
from econ.report.numbers import UnitSystem
from econ.report.style import Theme
from econ.report.words import keeping as words
from econ.tables.keeping import keeping_tables
from tests.demo import TODAY

SPLITS = keeping_tables().splits
LOOK = Look(TODAY, TODAY.year)
SI = Look(TODAY, TODAY.year, Theme.LIGHT, UnitSystem.SI)
READ = {"return_c": "76 degF", "supply_c": "55 degF"}
RUN = {"mode": "test_mode", "running": "cooling", "minutes_min": 15}
JOINTS = ("outdoor_wide_1", "indoor_wide_1")


def said(**fields):
    return words.split_sentence(Entered(**fields), SPLITS, LOOK)


def test_nothing_is_said_before_both_temperatures_are_entered():
    assert said(**RUN, return_c="76 degF") == ""
    assert said(**RUN, return_c="76 degF", supply_c="not known") == ""


@pytest.mark.parametrize(
    ("fields", "reason"),
    [
        ({}, "how the unit ran is not known"),
        ({"mode": "not_known", "running": "cooling", "minutes_min": 30}, "how the unit ran is not known"),
        ({"mode": "full_fan", "minutes_min": 30}, "whether it cooled or heated"),
        ({"mode": "full_fan", "running": "cooling"}, "it must have run for 15 minutes"),
        (RUN | {"minutes_min": 14.9}, "it must have run for 15 minutes"),
    ],
)
def test_no_band_is_shown_where_it_is_not_known_how_the_unit_ran(fields, reason):
    sentence = said(**READ, **fields)
    assert (
        sentence == f"The air comes out 21.0 °F colder than it goes in. No band is shown: {sentence.partition(': ')[2]}"
    )
    assert reason in sentence
    assert words.split_source(Entered(**READ, **fields), SPLITS) == ""


@pytest.mark.parametrize(("supply_c", "side"), [(16.1, "below"), (16.0, "inside"), (7.0, "inside"), (6.9, "above")])
def test_the_reading_is_placed_in_the_band_of_the_table(supply_c, side):
    # Usual band of cooling in the table: 8 to 17 K; drawn in at 24 degC.
    fields = RUN | {"return_c": "24 degC", "supply_c": f"{supply_c} degC"}
    assert (SPLITS["cooling"].low_k, SPLITS["cooling"].high_k) == (8.0, 17.0)
    assert f"it lies {side}" in said(**fields)
    assert "an assumption" in said(**fields)
    assert "assumption" in words.split_source(Entered(**fields), SPLITS)


def test_the_makers_band_takes_the_place_of_the_usual_one():
    own = {"band_low_k": "22 delta_degF", "band_high_k": "26 delta_degF"}
    assert "The maker's band is 22 to 26 °F: it lies below" in said(**READ, **RUN, **own)
    assert words.split_source(Entered(**READ, **RUN, **own), SPLITS) == ""


def test_air_that_is_warmer_when_it_should_be_colder_is_told():
    assert "wrong way round for cooling" in said(**RUN, return_c="70 degF", supply_c="90 degF")
    assert "it lies inside" in said(**RUN | {"running": "heating"}, return_c="70 degF", supply_c="100 degF")


def test_si_readers_read_kelvin():
    assert "8 to 17 K" in words.split_sentence(Entered(**READ, **RUN), SPLITS, SI)


def test_a_leak_at_any_time_stops_the_unit():
    results = {f"{joint}.at_once": "tight" for joint in JOINTS} | {"indoor_wide_1.after_month": "leaks"}
    (sentence,) = words.joint_sentences(Entered(joints=results), JOINTS)
    assert sentence.startswith("Stop: indoors, thick pipe leaks.")


def test_the_unit_does_not_run_before_every_joint_has_passed():
    told = words.joint_sentences(Entered(joints={"outdoor_wide_1.at_once": "tight"}), JOINTS)
    assert told[0] == "At once: 1 of 2 joints entered as tight."
    assert told[-1] == "The unit does not run until every joint has passed the first test."
    passed = Entered(joints={f"{joint}.at_once": "tight" for joint in JOINTS})
    assert "does not run" not in " ".join(words.joint_sentences(passed, JOINTS))


def test_joints_are_due_after_a_day_and_after_thirty():
    assert (
        words.due_sentence(Entered(leak_at_once_on="2027-06-26"), 2027)
        == "Test again on Sun 27 June and on Mon 26 July."
    )
    assert words.due_sentence(Entered(), 2027) == ""


def test_lengths_to_buy_are_rounded_up():
    pipe = Goods("drain_pipe", "drain pipe", 5.7912, "m", 17.0)
    assert words.quantity_words(pipe, LOOK) == "19 ft"
    assert words.quantity_words(pipe, SI) == "6 m"
    assert words.quantity_words(Goods("pad", "ground pad", 1.0, "each", 60.0), LOOK) == "1"
    assert words.goods_label(pipe) == "Drain pipe"


def test_an_empty_shopping_list_says_why():
    hired, own, keep = (ALTERNATIVES[at] for at in (HIRED, SELF, KEEP))
    assert "The quote brings the goods" in words.shopping_note(hired, ())
    assert "Nothing is bought" in words.shopping_note(keep, ())
    assert words.shopping_note(own, (Goods("pad", "ground pad", 1.0, "each", 60.0),)).startswith("Estimated:")
