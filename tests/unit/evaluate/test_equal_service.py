"""With the same class and the same hands both ductless ways run, last and are looked after alike."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import with_columns
from econ.kernel.alternative import HIRED, SELF
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.draws import drawn
from tests.demo import NAMES, TODAY, demo_case

TABLES = load_tables()
ALIKE = {"size": "same_as_kit", "grade": "same_as_kit"}
ENERGY = (
    "electricity_kwh",
    "fuel_kwh",
    "make_up_heat_kwh",
    "energy_cost_usd_per_yr",
    "unmet_cooling_kwh_per_yr",
    "unmet_heating_kwh_per_yr",
    "unmet_moisture_kg_per_yr",
    "hours_above_humidity_limit_h",
)


@cache
def alike(name):
    """Return structure and sheet of a demo case whose hired set is of the kit's class and size, all by a contractor."""
    case = demo_case(name)
    hired = type(case.hired)(**ALIKE)
    structure, sheet = prepared(case.model_copy(update={"hired": hired}), TABLES, TODAY)
    table = installation_tables().tasks["self_install"]
    given_out = tuple((task, "contractor") for task, may in zip(table.key, table.may, strict=True) if may[-1])
    return replace(structure, parties=given_out), sheet


@cache
def outcome(name):
    structure, sheet = alike(name)
    return evaluate(structure, with_columns(sheet, drawn(sheet.low, sheet.likely, sheet.high, 16, 1)), TABLES)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("figure", ENERGY)
def test_both_ductless_ways_use_the_same_energy_in_every_draw(name, figure):
    own, hired = (getattr(outcome(name).alternatives[way], figure) for way in (SELF, HIRED))
    assert np.array_equal(own, hired, equal_nan=True)


@pytest.mark.parametrize("name", NAMES)
def test_both_ductless_ways_have_the_same_life_and_cleaning_price(name):
    _, sheet = alike(name)
    # only the kit's lines exist: the hired way reads them too
    assert {"hired.life_yr", "hired.upkeep_usd_per_yr"}.isdisjoint(sheet.path)
    assert {"kit.life_yr", "kit.upkeep_usd_per_yr"} <= set(sheet.path)


@pytest.mark.parametrize("name", NAMES)
def test_both_ductless_ways_are_looked_after_alike_once_both_are_there(name):
    result = outcome(name)
    both = max(float(np.max(result.alternatives[way].in_service_d)) for way in (SELF, HIRED)) / 365.0
    full = slice(int(np.ceil(both)) + 1, None)
    upkeep = result.streams.om_usd[[SELF, HIRED], :, full]
    assert upkeep.shape[-1] > 0
    assert (upkeep > 0.0).all()
    assert np.array_equal(upkeep[0], upkeep[1])


@pytest.mark.parametrize("name", NAMES)
def test_both_ductless_ways_are_replaced_as_often(name):
    replaced = outcome(name).streams.replacement_usd[[SELF, HIRED]] > 0.0
    counts = replaced.sum(axis=-1)
    # service starts on different days, so that a set may just outlast the study on one way only
    assert np.abs(counts[0] - counts[1]).max() <= 1
