"""Every rule that is not raised says what it looked at, in words."""

import re

import numpy as np
import pytest

from econ.caution.registry import RULES, looked_at, not_raised
from econ.kernel.alternative import Alternative
from econ.report.look import Look
from econ.report.numbers import UnitSystem
from econ.report.style import Theme
from econ.report.words import why_not
from tests.demo import NAMES, TODAY, demo_answer

LOOKS = [Look(TODAY, TODAY.year, Theme.LIGHT, units) for units in UnitSystem]
SELF = Alternative.SELF_INSTALL


def rule(code):
    return next(each for each in RULES if each.code == code)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("look", LOOKS, ids=["us", "si"])
def test_every_rule_is_told_once_raised_or_not(name, look):
    result = demo_answer(name).result
    table = why_not.rest_table(result, SELF, look)
    assert len(table["Why not"]) + len(result.cautions) == len(RULES)
    assert [each.message for each in not_raised(result.facts)] == table["It would say"]
    assert all(table["Why not"])


@pytest.mark.parametrize("name", NAMES)
def test_reasons_are_words_and_figures_without_code_names(name):
    for text in why_not.rest_table(demo_answer(name).result, SELF, LOOKS[0])["Why not"]:
        assert not re.search(r"_|\bnan\b|\binf\b|  |: $", text), text


@pytest.mark.parametrize("each", RULES, ids=lambda each: each.code)
def test_a_rule_looks_at_facts_or_holds_always(each):
    facts = demo_answer("lower_level_cold").result.facts
    names = looked_at(each, facts)
    assert names or bool(np.all(each.holds(facts)))
    assert all(hasattr(facts, name) for name in names)


def test_figures_are_told_in_the_units_on_screen():
    facts = demo_answer("lower_level_cold").result.facts
    us, si = (why_not.why_not(rule("line_set.too_long"), facts, SELF, look) for look in LOOKS)
    assert re.search(r"lines needed: \d+ ft; longest lines allowed: \d+ ft\.", us)
    assert re.search(r"lines needed: [\d.]+ m; longest lines allowed: [\d.]+ m\.", si)


def test_a_rule_about_another_way_says_so():
    facts = demo_answer("lower_level_cold").result.facts
    assert why_not.why_not(rule("room.escape_window"), facts, SELF, LOOKS[0]).startswith("About “New window units”. ")
    assert why_not.why_not(rule("room.escape_window"), None, SELF, LOOKS[0]) == "About “New window units”."
