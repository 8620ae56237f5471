"""The law of moving one task from the user to a contractor: exactly the figures that list the task may change."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from econ.case.choices import code
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.result import AlternativeResult, RoomLoads
from econ.evaluate.sheet import point
from econ.evaluate.wiring.installation import installation
from econ.evaluate.wiring.measures import room_work
from econ.installation.incentive import STARTING
from econ.kernel.alternative import ALTERNATIVES, PARTIES, SELF, Party
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from tests.demo import NAMES, TODAY, demo_case

TABLES, WORK = load_tables(), installation_tables()
TASKS = WORK.tasks[ALTERNATIVES[SELF]].key
LOADS = tuple(name for name in RoomLoads.__dataclass_fields__ if name not in {"name", "block", "is_served"})
ENERGY = tuple(
    name
    for name in AlternativeResult.__dataclass_fields__
    if (name.endswith(("_kwh", "_kwh_per_yr", "_kh")) and not name.startswith("waiting"))
    or name in {"energy_cost_usd_per_yr", "hours_above_humidity_limit_h", "meets_need"}
)
SITES = st.fixed_dictionaries(
    {},
    optional={
        "work.helper": st.sampled_from(["none", "free", "paid", "handyman"]),
        "work.contractor_finishes": st.sampled_from(["yes", "no", "not_known"]),
        "site.occupancy": st.just("owner_lives_here"),
        "site.owner_may_mechanical": st.just("yes"),
        "site.owner_may_electrical": st.sampled_from(["yes", "no"]),
        "site.permit": st.sampled_from(["needed", "not_needed"]),
        "site.outdoor_place": st.sampled_from(["ground_pad", "wall_bracket", "roof"]),
        "site.wall": st.sampled_from(["wood_frame", "block", "poured_concrete"]),
        "site.drain": st.sampled_from(["gravity", "pump"]),
        "kit.connection": st.sampled_from(["single_use_quick", "flare_with_charged_outdoor_unit"]),
        "money.incentive_self_terms": st.sampled_from(["none", "permit", "licensed_commissioning"]),
    },
)
SPLITS = st.dictionaries(st.sampled_from(TASKS), st.sampled_from([party.value for party in PARTIES]), max_size=8)
OWN, TRADE = PARTIES.index(Party.SELF), PARTIES.index(Party.CONTRACTOR)


OF_HANDS_AND_DATES = {
    "permit.contractor_unasked",
    "permit.bought_elsewhere",
    "delivery.return_window_over",
    "schedule.self_misses_summer",
}
"""The only rules that read who does what, or when it will work."""


@cache
def sheet_of(name):
    """Return structure and likely values of a demo case, with an incentive to lose."""
    structure, sheet = prepared(demo_case(name), TABLES, TODAY)
    return structure, point(sheet) | {"money.incentive_self_usd": np.asarray(300.0)}


def sides(name, site, split, task):
    """Return the values of a case, and its structures with a task in the user's and in a contractor's hands."""
    structure, values = sheet_of(name)
    chosen = {path: np.asarray(code(path, option)) for path, option in site.items()}
    given_out = {**dict(structure.parties), **split}
    by = [tuple({**given_out, task: party}.items()) for party in ("self", "contractor")]
    return values | chosen, [replace(structure, parties=parties) for parties in by]


def ways(structure, values):
    work = room_work(structure, values, TABLES, 1)
    return installation(structure, work.values, WORK, 1, work)


def doer(way, task):
    """Return who really does a task, after the rules of the place; None where the site does not need it."""
    at = way.tasks.table.position(task)
    return PARTIES[way.tasks.party[0, at]] if way.tasks.is_active[0, at] else None


def movable(structure, values):
    """Return the tasks that the site needs and both the user and a contractor may do."""
    way = ways(structure, values)[SELF]
    at = np.flatnonzero(way.tasks.is_active[0] & way.is_allowed[0][:, [OWN, TRADE]].all(axis=1))
    return [way.tasks.table.key[task] for task in at]


@st.composite
def moves(draw):
    """Return the ways before and after a task that both may do has changed hands, and the task."""
    name, site, split = draw(st.sampled_from(NAMES)), draw(SITES), draw(SPLITS)
    values, (structure, _) = sides(name, site, split, TASKS[0])
    tasks = movable(structure, values)
    assume(tasks)
    task = draw(st.sampled_from(tasks))
    values, structures = sides(name, site, split, task)
    mine, theirs = (ways(structure, values) for structure in structures)
    assert (doer(mine[SELF], task), doer(theirs[SELF], task)) == ("self", "contractor")
    return mine, theirs, task


def changed_lines(before, after):
    """Return the lines of which quantity, price or amount differ in any bit."""
    assert before.key == after.key
    columns = ("quantity", "unit_price_usd", "amount_usd")
    return {
        key
        for at, key in enumerate(before.key)
        if any(getattr(before, column)[0, at] != getattr(after, column)[0, at] for column in columns)
    }


@given(moves())
@settings(max_examples=30, deadline=None)
def test_moving_a_task_changes_exactly_the_figures_that_list_it(move):
    mine, theirs, task = move
    only_lines_that_list_it(mine[SELF], theirs[SELF], task)
    own_time_and_doubts_follow(mine[SELF], theirs[SELF])
    warranty_follows_who_starts_it(mine[SELF], theirs[SELF], task)
    other_ways_stay(mine, theirs)


def only_lines_that_list_it(mine, theirs, task):
    items = mine.line_items
    lists = {key for key, tasks in zip(items.key, items.tasks, strict=True) if task in tasks}
    assert changed_lines(items, theirs.line_items) <= lists


def own_time_and_doubts_follow(mine, theirs):
    """Hold that own hours fall, what a contractor bills never does, and each mishap follows the hands."""
    assert "own_time" in changed_lines(mine.line_items, theirs.line_items)
    assert theirs.tasks.own_h.sum() < mine.tasks.own_h.sum()
    before, after = (dict(zip(way.line_items.key, way.line_items.amount_usd[0], strict=True)) for way in (mine, theirs))
    assert after["contractor_visit"] >= before["contractor_visit"]
    assert after["incentive"] <= before["incentive"]
    for mishap in WORK.mishaps:
        line = f"mishap_{mishap.key}"
        if line in before:
            assert (after[line] <= before[line]) if mishap.by == "user" else (after[line] >= before[line])


def warranty_follows_who_starts_it(mine, theirs, task):
    """Hold that a warranty changes by nothing but who connects and starts the unit, and then for the better."""
    for years in ("parts_yr", "compressor_yr", "labour_yr"):
        assert np.array_equal(getattr(mine.warranty, years), getattr(theirs.warranty, years))
    before, after = mine.warranty.claims_paid_frac, theirs.warranty.claims_paid_frac
    assert np.all(after >= before) if task in STARTING else np.array_equal(before, after)


def other_ways_stay(mine, theirs):
    for place in set(range(len(ALTERNATIVES))) - {SELF}:
        before, after = mine[place], theirs[place]
        assert not changed_lines(before.line_items, after.line_items)
        assert np.array_equal(before.own_hours_h, after.own_hours_h)
        assert np.array_equal(before.schedule.in_service_d, after.schedule.in_service_d, equal_nan=True)
        assert (before.standing, before.reasons) == (after.standing, after.reasons)


@pytest.mark.parametrize("name", NAMES)
@given(SITES, SPLITS, st.sampled_from(TASKS))
@settings(max_examples=4, deadline=None)
def test_moving_a_task_moves_no_load_rating_or_energy(name, site, split, task):
    values, structures = sides(name, site, split, task)
    mine, theirs = (evaluate(structure, values, TABLES) for structure in structures)
    for field in LOADS:
        assert np.array_equal(np.asarray(getattr(mine.rooms, field)), np.asarray(getattr(theirs.rooms, field))), field
    for before, after in zip(mine.alternatives, theirs.alternatives, strict=True):
        for field in ENERGY:
            assert np.array_equal(getattr(before, field), getattr(after, field), equal_nan=True), field
        for field in ("cool_w", "heat_w", "nominal_w"):
            rated = (getattr(one.capability, field) for one in (before, after))
            assert np.array_equal(*rated, equal_nan=True), field
    only_cautions_of_hands_and_dates(mine, theirs)


def only_cautions_of_hands_and_dates(mine, theirs):
    """Hold that whatever else is warned of stays to the letter."""
    before, after = (
        {(each.code, each.message, each.alternatives) for each in side.cautions} for side in (mine, theirs)
    )
    assert {code for code, *_ in before ^ after} <= OF_HANDS_AND_DATES


def test_a_task_in_a_contractors_hands_brings_what_to_ask_one_who_works_on_a_kit_bought_elsewhere():
    site = {"work.contractor_finishes": "not_known", "site.owner_may_mechanical": "yes"}
    values, structures = sides("sunroom_with_quote", site, {}, "connect_lines")
    mine, theirs = ({each.code for each in evaluate(side, values, TABLES).cautions} for side in structures)
    assert theirs - mine == {"permit.contractor_unasked", "permit.bought_elsewhere"}
    assert not mine - theirs


@given(moves())
@settings(max_examples=30, deadline=None)
def test_what_is_done_before_a_moved_task_keeps_its_dates(move):
    """Each person works in the order of the list, so that what stands before moves only by waiting for a contractor."""
    mine, theirs, task = move
    before, after, table = mine[SELF].schedule, theirs[SELF].schedule, mine[SELF].tasks.table
    waits = {"book_contractor"}
    for key, needed in zip(table.key, table.after, strict=True):
        waits |= {key} if waits & {table.key[at] for at in needed} else set()
    earlier = table.key[: table.position(task)]
    kept = [before.task.index(key) for key in earlier if key not in waits]
    assert kept or task == TASKS[0]
    assert np.array_equal(before.finish_d[:, kept], after.finish_d[:, kept], equal_nan=True)


def test_the_laws_move_tasks_of_every_trade():
    found = set()
    for task in TASKS:
        values, structures = sides("sunroom_with_quote", {"site.owner_may_electrical": "yes"}, {}, task)
        pair = tuple(doer(ways(structure, values)[SELF], task) for structure in structures)
        found |= {task} if pair == ("self", "contractor") else set()
    assert found >= {"permit_apply", "receive", "hang_indoor", "wall_hole", "line_set", "connect_lines", "leak_check"}
