"""Days of machines: the sums of their hours."""

from dataclasses import replace

import numpy as np
import pytest

from econ.equipment.auxiliary import AuxiliaryRows
from econ.equipment.curve import variable_speed_split
from econ.equipment.day_run import day_run
from econ.equipment.demand import CELLS, LEAST_GAP, Demand
from econ.equipment.machine import MachineRows
from econ.equipment.part_load import operation
from econ.equipment.window_curve import no_machine, single_speed_window
from econ.kernel.errors import ShapeError
from tests.unit.equipment.builders import split_ratings, window_ratings

N_ROW, N_DAY, TOLERANCE = 3, 40, 0.05
LINES = AuxiliaryRows(*(np.full(N_ROW, value) for value in (90.0, 1.0, 40.0, 12.0, 8.0)))


def demand(seed: int = 1) -> Demand:
    """Return a year of cold, mild and hot days with need and moisture, more than small units can give."""
    rng = np.random.default_rng(seed)
    shape = (24, N_ROW, N_DAY)
    outdoor_c = np.linspace(-15.0, 40.0, N_DAY) + rng.uniform(-3.0, 3.0, (24, 1, N_DAY))
    warming_k = np.array([0.0, 0.7, -0.4])
    at_c = outdoor_c + warming_k[:, None]
    used = rng.uniform(0.0, 1.0, shape) > 0.3
    cool_w = np.maximum(at_c - 20.0, 0.0) * rng.uniform(100.0, 350.0, shape) * used
    heat_w = np.maximum(14.0 - at_c, 0.0) * rng.uniform(100.0, 250.0, shape) * used
    price = rng.uniform(0.05, 0.4, shape)
    return Demand(cool_w, rng.uniform(0.0, 400.0, shape) * (at_c > 12.0), heat_w, outdoor_c, warming_k, price)


MACHINES = {
    "split": replace(variable_speed_split(split_ratings(N_ROW)), auxiliary=LINES),
    "window unit": single_speed_window(window_ratings(N_ROW)),
    "none": no_machine(N_ROW),
}


@pytest.mark.parametrize("machine", MACHINES.values(), ids=MACHINES)
def test_days_are_the_sums_of_their_hours(machine: MachineRows) -> None:
    asked = demand()
    at_c = asked.outdoor_c + asked.warming_k[:, None]
    hours = operation(machine, asked.cool_w, asked.latent_w, asked.heat_w, at_c)
    run = day_run(machine, asked, TOLERANCE)
    electric_w = hours.cool_electric_w + hours.heat_electric_w + hours.standby_electric_w
    pairs = (
        (run.unmet_cool_wh, run.cool_short_h, asked.cool_w, hours.cool_served_w),
        (run.unmet_heat_wh, run.heat_short_h, asked.heat_w, hours.heat_served_w),
    )
    assert run.electricity_wh == pytest.approx(electric_w.sum(axis=0), rel=1e-12)
    assert run.unmet_latent_wh == pytest.approx((asked.latent_w - hours.latent_served_w).sum(axis=0), rel=1e-12)
    for unmet_wh, short_h, need_w, served_w in pairs:
        assert unmet_wh == pytest.approx((need_w - served_w).sum(axis=0), rel=1e-12, abs=1e-9)
        assert np.array_equal(short_h, (need_w - served_w > TOLERANCE * need_w).sum(axis=0))


@pytest.mark.parametrize("machine", MACHINES.values(), ids=MACHINES)
def test_each_hour_is_paid_at_its_own_price(machine: MachineRows) -> None:
    asked = demand()
    price = asked.price_usd_per_kwh
    assert price is not None
    hours = operation(machine, asked.cool_w, asked.latent_w, asked.heat_w, asked.outdoor_c + asked.warming_k[:, None])
    run = day_run(machine, asked, TOLERANCE)
    electric_w = hours.cool_electric_w + hours.heat_electric_w + hours.standby_electric_w
    for paid_usd, power_w in (
        (run.electricity_usd, electric_w),
        (run.unmet_heat_usd, asked.heat_w - hours.heat_served_w),
        (run.unmet_latent_usd, asked.latent_w - hours.latent_served_w),
    ):
        assert paid_usd == pytest.approx((power_w * price).sum(axis=0) / 1000.0, rel=1e-12, abs=1e-12)


def test_without_hourly_prices_nothing_is_priced() -> None:
    run = day_run(MACHINES["split"], replace(demand(), price_usd_per_kwh=None), TOLERANCE)
    assert (run.electricity_usd, run.unmet_heat_usd, run.unmet_latent_usd) == (None, None, None)


@pytest.mark.parametrize(("given", "hours"), [(0.951, 0.0), (0.949, 24.0)])
def test_an_hour_is_short_just_above_the_tolerance(given: float, hours: float) -> None:
    unit, at_c = single_speed_window(window_ratings()), np.full((24, 1, 1), (95.0 - 32.0) / 1.8)
    nothing = np.zeros_like(at_c)
    wanted_w = nothing + unit.cooling.a_full.capacity_w / given
    run = day_run(unit, Demand(wanted_w, nothing, nothing, at_c, np.zeros(1)), TOLERANCE)
    assert run.cool_short_h.item() == hours


def test_a_row_has_the_same_days_alone_and_among_others() -> None:
    asked, both = demand(), day_run(MACHINES["split"], demand(), TOLERANCE)
    row = np.array([1])
    one = replace(variable_speed_split(split_ratings(1)), auxiliary=AuxiliaryRows(*(_first(LINES))))
    alone = day_run(one, asked.at(row, np.arange(N_DAY)[None, :]), TOLERANCE)
    for name in alone.__slots__:
        assert np.array_equal(getattr(alone, name)[0], getattr(both, name)[1]), name


def test_standby_is_drawn_only_on_days_with_the_unit_there() -> None:
    nothing = replace(demand(), **{f"{name}_w": np.zeros((24, N_ROW, N_DAY)) for name in ("cool", "latent", "heat")})
    is_there = np.arange(N_DAY) % 2 == np.zeros((N_ROW, 1))
    run = day_run(MACHINES["window unit"], nothing, TOLERANCE, is_there)
    assert run.electricity_wh == pytest.approx(24.0 * MACHINES["window unit"].standby_w[:, None] * is_there)


def test_stretches_hold_every_day_with_need_and_part_at_long_gaps() -> None:
    cool_w = np.zeros((24, 1, 3 * LEAST_GAP + 10))
    cool_w[5, 0, [2, 4, 4 + LEAST_GAP, 6 + 2 * LEAST_GAP]] = 1.0
    asked = Demand(cool_w, cool_w, cool_w, cool_w, np.zeros(1))
    assert asked.hours == (slice(0, 5), slice(5, 6), slice(6, 24))
    assert asked.cooling == ((), (slice(2, 5 + LEAST_GAP), slice(6 + 2 * LEAST_GAP, 7 + 2 * LEAST_GAP)), ())
    covered = np.zeros(cool_w.shape[2], int)
    for days in (*asked.cooling[1], *asked.drying_alone[1]):
        covered[days] += 1
    assert np.array_equal(covered, np.ones(cool_w.shape[2]))


def test_hours_are_taken_one_by_one_where_rows_are_many() -> None:
    many = np.broadcast_to(0.0, (24, CELLS, 1))
    asked = Demand(many, many, many, many, np.zeros(CELLS))
    assert asked.hours == tuple(slice(hour, hour + 1) for hour in range(24))
    assert list(asked.spells(asked.cooling)) == []


def test_a_demand_that_does_not_fit_together_is_refused() -> None:
    hours = np.zeros((24, 2, 1))
    with pytest.raises(ShapeError, match=r"need has shape \(24, 2, 1\); it must be \(24, 3, n_day\)"):
        Demand(hours, hours, hours, hours, np.zeros(3))


def _first(rows: AuxiliaryRows) -> list[np.ndarray]:
    return [getattr(rows, name)[:1] for name in rows.__slots__]
