"""Every number that enters a domain function says its unit, in its name and in its docstring, and both agree."""

import importlib
import inspect
import re
import typing

import numpy as np
import pint
import pytest

from econ.kernel.units import SUFFIX_UNITS, WHOLE_NAME_UNITS, suffix_of
from tests.style import source

REGISTRY = pint.UnitRegistry()
REGISTRY.define("USD = [money]")
REGISTRY.define("USDcent = 0.01 * USD")
REGISTRY.define("cord = 128 * foot ** 3")
ENTRY = re.compile(r"^\s*(?P<names>[\w, *]+) : .*$")
UNIT = re.compile(r"\[(?P<unit>[^\[\]]+)\]\s*$")


def is_number(note):
    """Return whether a parameter's annotation is a number or an array of numbers."""
    text = str(note)
    return note in (float, int) or "float64" in text or "FloatArray" in text


def public_functions():
    for package in source.DOMAIN:
        for name in source.domain_modules(package):
            module = importlib.import_module(name)
            for label, thing in vars(module).items():
                if inspect.isfunction(thing) and thing.__module__ == name and not label.startswith("_"):
                    yield pytest.param(thing, id=f"{name}.{label}")


def units_in_docstring(doc):
    """Return the unit that closes each entry of the docstring, by parameter name."""
    found, names = {}, []
    for line in (doc or "").splitlines():
        entry = ENTRY.match(line)
        if entry:
            names = [part.strip(" *") for part in entry["names"].split(",")]
        unit = UNIT.search(line)
        if unit:
            found |= dict.fromkeys(names, unit["unit"])
    return found


@pytest.mark.parametrize("function", list(public_functions()))
def test_parameters_name_their_unit(function):
    notes = typing.get_type_hints(function)
    documented = units_in_docstring(function.__doc__)
    for name, note in notes.items():
        if name == "return" or not is_number(note):
            continue
        if documented.get(name) == "any":
            continue
        known = suffix_of(name)
        assert known is not None, f"{name} ends in no known unit"
        assert name in documented, f"{name} has no [unit] in the docstring"
        ours, theirs = REGISTRY.Unit(known), REGISTRY.Unit(documented[name])
        assert ours.dimensionality == theirs.dimensionality, f"{name}: {known} against {documented[name]}"
        same_size = REGISTRY.Quantity(1, ours).to(theirs).magnitude if "degC" not in known else 1.0
        assert np.isclose(same_size, 1.0), f"{name}: {known} is not {documented[name]}"


@pytest.mark.parametrize("unit", sorted({*SUFFIX_UNITS.values(), *WHOLE_NAME_UNITS.values()}))
def test_every_known_unit_is_one_that_pint_reads(unit):
    REGISTRY.Unit(unit)


@pytest.mark.parametrize("function", list(public_functions()))
def test_public_functions_say_what_comes_back(function):
    first = (function.__doc__ or "").strip().splitlines()
    assert first, "no docstring"
    assert first[0].endswith((".", ":")) or len(first) > 1
