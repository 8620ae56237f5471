"""Every input of the form, one battery: a label, a help, bounds, and a usual value with its source."""

import math

import pytest

from econ.case.choices import CHOICES
from econ.case.form import all_fields
from econ.evaluate.usual import LATER, LOOKED_UP, NO_LINE
from econ.tables.loaders import load_tables

INPUTS = load_tables().inputs
ASKED = [info for info in all_fields() if info.kind in ("amount", "choice")]


def test_fields_and_usual_values_are_the_same_set():
    assert {info.path for info in ASKED} == set(INPUTS.keys)


@pytest.mark.parametrize("info", ASKED, ids=lambda info: info.path)
def test_every_input_says_what_it_is_and_where_its_usual_value_comes_from(info):
    row = INPUTS[info.path]
    assert info.label
    assert info.help
    assert row.text("source")
    assert row.text("kind") == info.kind


@pytest.mark.parametrize("info", [info for info in ASKED if info.kind == "amount"], ids=lambda info: info.path)
def test_usual_amounts_lie_within_what_is_allowed(info):
    row = INPUTS[info.path]
    values = [row.number(name) for name in ("low", "likely", "high", "unknown_low", "unknown_high")]
    assert all(info.low <= value <= info.high for value in values if not math.isnan(value))


@pytest.mark.parametrize("info", [info for info in ASKED if info.kind == "choice"], ids=lambda info: info.path)
def test_usual_options_are_options(info):
    row = INPUTS[info.path]
    for column in ("choice", "unknown_choice"):
        assert row.text(column) in {"", *CHOICES[info.path]}


@pytest.mark.parametrize("info", ASKED, ids=lambda info: info.path)
def test_every_usual_value_is_given_or_looked_up_somewhere_known(info):
    row = INPUTS[info.path]
    source = row.text("from")
    is_given = bool(row.text("choice")) if info.kind == "choice" else not math.isnan(row.number("likely"))
    is_known = source in NO_LINE | LATER or source.partition(".")[0] in {*LOOKED_UP, "clock", "era", "rooms[0]"}
    assert is_given or is_known
