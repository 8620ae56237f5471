"""The bridge from a kit to a quote, by hand."""

import pytest

from econ.installation.quote import SCOPE
from econ.installation.quote_bridge import KIT_OFF, LEFT_OUT, Part, Said, bridge

OWN = {
    "equipment": (Part("Set", 140_000), Part("Markup", 49_000)),
    "commissioning": (Part("Start", 10_000),),
    "electrical": (Part("Circuit", 90_000),),
    "labour": (Part("Crew", 80_000),),
    "travel": (Part("Van", 10_000),),
    "removal": (Part("Drop-off", 5_000),),
}
WHOLE = dict.fromkeys(SCOPE, "yes")


def steps(found):
    return {step.key: (step.origin, step.cents) for step in found.steps}


def test_a_total_alone_stands_on_own_items_and_what_is_left():
    found = bridge(Said(400_000, (), WHOLE), OWN, 160_000)
    assert steps(found) == {
        "equipment": ("ours", 29_000),
        "commissioning": ("ours", 10_000),
        "electrical": ("ours", 90_000),
        "labour": ("ours", 80_000),
        "removal": ("ours", 5_000),
        "travel": ("ours", 10_000),
        "rest": ("rest", 16_000),
    }
    assert found.whole_cents == 400_000


def test_a_line_is_shared_as_own_items_are_and_the_kit_taken_off():
    said = Said(400_000, (("Unit", "equipment", 235_000), ("Work", "labour", 105_000)), WHOLE)
    found = bridge(said, OWN, 160_000)
    assert steps(found)["equipment"] == ("said", 75_000)
    assert [steps(found)[key] for key in ("commissioning", "labour", "removal", "travel")] == [
        ("said", 10_000),
        ("said", 80_000),
        ("said", 5_000),
        ("said", 10_000),
    ]
    assert found.steps[0].parts == (Part("Unit", 235_000), Part(KIT_OFF, -160_000))
    assert steps(found)["electrical"] == ("ours", 60_000), "what is left is less than own items come to"
    assert "rest" not in steps(found)


@pytest.mark.parametrize("word", ["no", "not_said", "not_known"])
def test_a_missing_part_follows_after_the_total(word):
    found = bridge(Said(300_000, (), WHOLE | {"electrical": word}), OWN, 160_000)
    assert "electrical" not in steps(found)
    assert [(step.key, step.cents) for step in found.missing] == [("electrical", 90_000)]
    assert found.whole_cents == 390_000


def test_a_quote_without_the_equipment_gets_it_after_the_total():
    found = bridge(Said(200_000, (), WHOLE | {"equipment": "no"}), OWN, 160_000)
    assert found.steps[0].parts == (Part(LEFT_OUT, -160_000),)
    assert [(step.key, step.cents) for step in found.missing] == [("equipment", 189_000)]


def test_a_line_nobody_sorted_stands_by_itself():
    found = bridge(Said(180_000, (("Thing", "not_said", 20_000),), WHOLE), {}, 160_000)
    assert steps(found) == {"not_said": ("said", 20_000)}


def test_a_line_that_no_own_item_answers_to_takes_the_main_step_of_its_kind():
    found = bridge(Said(180_000, (("Office", "overhead_profit", 20_000),), WHOLE), OWN, 160_000)
    assert steps(found)["overhead"] == ("said", 20_000)


def test_lines_beyond_the_total_are_a_rest_below_nothing():
    found = bridge(Said(180_000, (("Crew", "labour", 50_000),), WHOLE), {}, 160_000)
    assert steps(found)["rest"] == ("rest", -30_000)
