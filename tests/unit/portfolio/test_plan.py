"""A plan keeps budgets, hours, panels, dates and marks; shared costs are paid once; who pays and who saves is told."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from econ.case.rooms_file import read_rooms
from econ.case.schema import case_from, plain
from econ.case.toml import read_case_file
from econ.evaluate.known import known_names
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.errors import CaseError
from econ.portfolio.greedy import greedy
from econ.portfolio.heads import shared_outdoor
from econ.portfolio.offer import benefit_usd, first_year, limits_of
from econ.portfolio.picks import NEVER, Picks, cash_usd, is_within, nothing, picked, setup_usd, worth_usd
from econ.portfolio.plan import evaluated, must_left, planned
from econ.portfolio.totals import split, together, totals
from econ.tables.loaders import load_tables
from econ.tables.place import data_root
from tests.unit.portfolio.building import TODAY
from tests.unit.portfolio.test_options import options

TABLES = load_tables()
FOLDER = data_root() / "cases" / "buildings"


@cache
def demo(**building):
    """Return the demo building's case, with other figures of its section."""
    case = read_case_file(FOLDER / "small_building.toml", known_names())
    tables = plain(case)
    return case_from({**tables, "building": tables["building"] | building})


@cache
def rooms(**building):
    """Return its rooms, evaluated."""
    return evaluated((FOLDER / "small_building.csv").read_bytes(), demo(**building), TABLES, TODAY)


def made(n_room=4, **changed):
    """Return options of hand: costs 100, 1000 and 2000, each way worth twice its cost, all open."""
    cost = np.tile([0.0, 100.0, 1000.0, 2000.0], (n_room, 1))
    base = replace(options(n_room), cost_usd=cost, benefit_usd=cost * 2.0, flat=np.arange(n_room) // 2)
    return replace(base, whole_flat=np.zeros((n_room + 1) // 2, dtype=bool), **changed)


def limits(budget, n_flat=2, **changed):
    """Return limits of money alone."""
    budgets = np.atleast_1d(np.asarray(budget, dtype=float))
    none = np.full(len(budgets), np.inf)
    from econ.portfolio.options import Limits

    return replace(Limits(budgets, none, none, np.full(n_flat, np.inf)), **changed)


def test_the_demo_building_has_24_rooms_in_9_flats():
    found = rooms()
    assert found.table.n_room == found.table.n_row == 24
    assert len(found.where.flat_name) == 9
    assert not found.options.is_open[:, SELF].any()
    assert found.options.is_open[:, [KEEP, WINDOW, HIRED]].all()


def test_the_demo_plan_keeps_every_limit_and_does_what_must_be_done():
    plan = planned(rooms(), demo())
    assert is_within(rooms().options, plan.limits, plan.picks)
    assert not len(must_left(plan))
    assert not plan.picks.is_done[rooms().options.must_not].any()


@pytest.mark.parametrize("budget", [0.0, 500.0, 1500.0, 4000.0, 9000.0, 60_000.0])
def test_no_budget_is_overspent(budget):
    plan = planned(rooms(), demo(), budget)
    assert plan.limits.budget_usd[0] == budget
    assert is_within(rooms().options, plan.limits, plan.picks)


def test_a_building_pays_its_set_up_once_a_year():
    chosen = made(setup_usd=np.array([300.0]), group=np.zeros(4, dtype=np.int64), setup_way=(False, False, True, True))
    picks = Picks(np.array([WINDOW, HIRED, SELF, HIRED]), np.array([0, 0, 0, 1]))
    assert setup_usd(chosen, picks, 3).tolist() == [300.0, 300.0, 0.0]
    assert cash_usd(chosen, picks, 3).tolist() == [100.0 + 2000.0 + 1000.0 + 300.0, 2300.0, 0.0]


def test_doing_nothing_costs_nothing_and_is_worth_nothing():
    picks = nothing(made())
    assert cash_usd(made(), picks, 2).tolist() == [0.0, 0.0]
    assert worth_usd(made(), picks, 2) == 0.0
    assert picked(made(), picks, "benefit_usd").tolist() == [0.0] * 4


def test_what_is_done_later_is_worth_less():
    chosen = made(discount_frac=0.03, study_period_yr=10)
    worth = [chosen.worth_usd(year)[0, HIRED] for year in range(3)]
    assert worth[0] == pytest.approx(4000.0)
    assert worth[0] > worth[1] > worth[2] > 0.0


def test_at_no_interest_a_year_later_loses_a_year_of_what_it_brings():
    chosen = made(study_period_yr=10)
    gross = 4000.0 + 2000.0
    assert chosen.worth_usd(1)[0, HIRED] == pytest.approx(gross * 9 / 10 - 2000.0)


def test_an_hour_less_too_hot_counts_at_its_price():
    hot = np.tile([100.0, 20.0, 0.0, 0.0], (4, 1))
    assert made(too_hot_h=hot, hot_hour_usd=0.5, study_period_yr=10).worth_usd()[0, WINDOW] == pytest.approx(
        200.0 + 0.5 * 80.0 * 10
    )


@pytest.mark.parametrize(
    ("said", "year"),
    [
        ("2027-01-15,,,", 0),
        ("2027-06-01,,,", 0),
        (",2028-03-01,,", 1),
        ("2027-06-01,2029-03-01,,", 0),
        (",,400,", 1),
        (",,,2029-02-05", 2),
        (",,,", 0),
    ],
)
def test_the_first_year_follows_access_lease_notice_and_the_earliest_day(said, year):
    text = f"unit,room,floor,size,access date,let until,notice (days),not before\n1,A,1,200,{said}\n"
    assert first_year(read_rooms(text, ()), TODAY.toordinal()).tolist() == [year]


def test_a_room_that_cannot_be_entered_yet_waits():
    chosen = made(first_year=np.array([1, 0, 2, 5]), study_period_yr=10)
    picks = greedy(chosen, limits([1e6, 1e6, 1e6]))
    assert picks.year.tolist() == [1, 0, 2, NEVER]


def test_panels_hold_what_they_can():
    chosen = made(current_a=np.tile([0.0, 5.0, 16.0, 16.0], (4, 1)))
    picks = greedy(chosen, limits(1e6, panel_a=np.array([20.0, 21.0])))
    assert is_within(chosen, limits(1e6, panel_a=np.array([20.0, 21.0])), picks)
    assert picks.is_done.sum() >= 3


def test_a_flat_that_is_done_at_once_is_done_whole_or_not_at_all():
    chosen = replace(made(), whole_flat=np.array([True, True]))
    picks = greedy(chosen, limits(250.0))
    assert picks.is_done.tolist() in ([True, True, False, False], [False, False, True, True])


def test_years_without_a_budget_are_not_planned():
    table = rooms().table
    assert limits_of(table, demo()).n_year == 3
    assert limits_of(table, demo(electrician_2_d=1)).electrician_d.tolist() == [6.0, 1.0, 4.0]


def test_the_payer_alone_does_not_count_what_tenants_save():
    found = rooms()
    everybody, payer = (benefit_usd(found.table, demo(whose=whose), found.found) for whose in ("everybody", "payer"))
    energy = found.found.energy_pv_usd[:, [KEEP]] - found.found.energy_pv_usd
    assert payer == pytest.approx(everybody - energy)


def test_who_pays_and_who_saves_is_told_apart():
    plan = planned(rooms(), demo())
    found = split(plan, demo())
    assert found.is_tenants.all()
    assert not found.owner_saves_usd_per_yr.any()
    assert found.paid_usd.sum() == pytest.approx(totals(rooms().options, plan.limits, plan.picks).cash_usd.sum())


def test_sums_of_a_plan_add_up():
    plan = planned(rooms(), demo())
    found = totals(rooms().options, plan.limits, plan.picks)
    assert found.room_count.sum() == plan.picks.is_done.sum()
    assert found.hot_before_h >= found.hot_after_h
    assert found.cash_usd == pytest.approx(cash_usd(rooms().options, plan.picks, 3))


def test_many_sets_of_a_year_are_cheaper_from_the_number_said_and_paid_once_where_shared():
    way = np.full(24, HIRED)
    plan = replace(planned(rooms(), demo()), picks=Picks(way, np.zeros(24, dtype=np.int64)))
    found = together(plan, demo(), TABLES)
    mean = rooms().options.cost_usd[:, HIRED].mean()
    assert found.volume_usd == pytest.approx((24 - 3) * 0.1 * mean)
    assert found.shared_usd == pytest.approx(23 * 255.0)


def test_hours_fall_by_the_power_law():
    plan = replace(planned(rooms(), demo()), picks=Picks(np.full(24, WINDOW), np.zeros(24, dtype=np.int64)))
    hours = rooms().found.own_hours_h[:, WINDOW]
    factor = sum(k ** np.log2(0.9) for k in [*range(1, 21), 20, 20, 20, 20])
    assert together(plan, demo(), TABLES).learned_h == pytest.approx(hours.sum() - hours.mean() * factor)


def test_a_file_without_a_good_row_says_what_is_wrong():
    with pytest.raises(CaseError, match="line 2, floor"):
        evaluated("unit,room,floor,size\n1,A,x,200\n", demo(), TABLES, TODAY)
    with pytest.raises(CaseError, match="has no column"):
        evaluated("nothing\nof use\n", demo(), TABLES, TODAY)


def test_ways_keep_their_order():
    assert rooms().options.name == tuple(ALTERNATIVES)


def test_one_outdoor_unit_is_set_against_one_a_room_for_flats_of_two_to_five():
    found = shared_outdoor(rooms(), TABLES)
    assert set(found.room_count.tolist()) <= {2, 3}
    assert len(found.flat) == 8, "flat 6 has one room left beside the one that must not be touched"
    assert (found.shared_usd > 0.0).all()
    assert (found.single_usd > rooms().options.cost_usd[:, HIRED].min()).all()


def test_rooms_that_are_alike_are_rows_of_their_own_and_share_one_outdoor_unit_of_both_their_sizes():
    text = "unit,room,floor,type\n1,A,2,S3\n1,B,2,S3\n"
    pair = evaluated(text, demo(), TABLES, TODAY)
    alone = evaluated("unit,room,floor,type\n1,A,2,S3\n2,B,2,S3\n", demo(), TABLES, TODAY)
    both = shared_outdoor(pair, TABLES)
    assert not len(shared_outdoor(alone, TABLES).flat)
    assert both.room_count.tolist() == [2]
    assert both.size_kbtu_per_h[0] == 2 * float(pair.rows.lines.kit[int(pair.found.kit[0])])
