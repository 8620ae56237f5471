"""The split problem of a site costs what the cost lines cost, whoever does what."""

from dataclasses import replace

import numpy as np
import pytest

from econ.evaluate.wiring.installation import installation
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_split import split_site
from econ.evaluate.wiring.installation_work import site
from econ.installation.first_cost import cash_first_cost_usd
from econ.installation.split import split_cost
from econ.installation.split_programme import best_split
from econ.kernel.alternative import PARTIES, SELF
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()
SITES = {
    "frame wall": {},
    "all may be own": {"site__owner_may_electrical": "yes"},
    "full panel": {"site__owner_may_electrical": "yes", "site__panel_spaces": "no"},
    "lines too short": {"site__line_run_m": 9.0},
    "two outdoor units, two heads each": {"site__owner_may_electrical": "yes", "kit__count": 2.0, "kit__heads": 2.0},
    "no permit": {"site__permit": "not_needed", "site__owner_may_electrical": "yes"},
    "thick concrete, bracket": {
        "site__wall": "poured_concrete",
        "site__wall_thickness_m": 0.254,
        "site__outdoor_place": "wall_bracket",
        "site__owner_may_electrical": "yes",
        "site__code_edition": "not_known",
    },
    "block, paid helper": {
        "site__wall": "block",
        "site__wall_thickness_m": 0.2032,
        "work__helper": "paid",
        "site__drain": "pump",
        "site__code_edition": "2023",
        "site__owner_may_electrical": "yes",
    },
    "flared, own circuit there": {
        "kit__connection": "flare_with_charged_outdoor_unit",
        "site__circuit": "own_circuit",
        "kit__volts": "120",
    },
    "old units, no helper": {"now__cooling": "window_units", "now__units_count": 2.0, "work__helper": "none"},
}


def costs(shape, values):
    way = installation(shape, values, TABLES, 1)[SELF]
    return (cash_first_cost_usd(way.line_items) - way.tool_resale_usd)[0], way.own_hours_h[0]


def given(shape, keys, parties):
    return replace(shape, parties=tuple(zip(keys, (PARTIES[party].value for party in parties), strict=True)))


@pytest.mark.parametrize("name", SITES)
def test_every_split_costs_the_same_in_the_search_as_in_the_cost_lines(name):
    shape, values = (
        structure(tools_owned=("multimeter",), tools_borrowed=("level_stud_finder",)),
        site_values(**SITES[name]),
    )
    found = split_site(site(shape, Inputs(values, 1)), TABLES)
    keys = [TABLES.tasks["self_install"].key[at] for at in found.task]
    rng = np.random.default_rng(7)
    choices = [np.flatnonzero(row) for row in found.problem.is_allowed]
    splits = np.array([[rng.choice(row) for row in choices] for _ in range(40)])
    cost = split_cost(found.problem, splits)
    lines = np.array([costs(given(shape, keys, split), values) for split in splits])
    assert np.ptp(lines[:, 0]) > 100.0
    assert np.ptp(lines[:, 0] - cost.cash_usd) < 1e-6
    assert np.ptp(lines[:, 1] - cost.own_h) < 1e-9


@pytest.mark.parametrize("name", SITES)
@pytest.mark.parametrize("hour_value", [0.0, 25.0, 80.0])
def test_the_best_split_is_never_dearer_than_the_usual_one_in_the_cost_lines(name, hour_value):
    shape, values = structure(), site_values(**SITES[name])
    found = split_site(site(shape, Inputs(values, 1)), TABLES)
    keys = [TABLES.tasks["self_install"].key[at] for at in found.task]
    best, usual = (costs(each, values) for each in (given(shape, keys, best_split(found.problem, hour_value)), shape))
    assert best[0] + hour_value * best[1] <= usual[0] + hour_value * usual[1] + 0.005


def test_an_hour_worth_nothing_keeps_all_that_may_be_own():
    shape, values = structure(), site_values(**SITES["all may be own"])
    found = split_site(site(shape, Inputs(values, 1)), TABLES)
    party = best_split(found.problem, 0.0)
    keys = [TABLES.tasks["self_install"].key[at] for at in found.task]
    assert dict(zip(keys, party, strict=True))["wall_hole"] in (0, 1)
    assert dict(zip(keys, party, strict=True))["circuit"] == 0
