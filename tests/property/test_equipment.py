"""Laws of machines."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from econ.equipment.curve import rating_terms, variable_speed_split
from econ.equipment.heating_rating import variable_speed_hspf2
from econ.equipment.part_load import cooling, heating, operation
from econ.equipment.rating import variable_speed_seer2
from econ.equipment.sizing import cooling_capacity_w, heating_capacity_w
from econ.kernel.constants import BTU_PER_WH
from tests.unit.equipment.builders import split_ratings

RATINGS = st.fixed_dictionaries(
    {
        "capacity_w": st.floats(6000.0 / BTU_PER_WH, 36000.0 / BTU_PER_WH),
        "seer2": st.floats(15.0, 28.0),
        "eer2": st.floats(9.5, 14.0),
        "hspf2": st.floats(8.0, 11.0),
        "heat_5f_ratio_frac": st.floats(0.5, 1.05),
        "cutout_c": st.floats(-30.0, -12.0),
        "min_ratio_frac": st.floats(0.12, 0.5),
        "cd_frac": st.floats(0.08, 0.25),
    }
)
POWER_W = st.floats(0.0, 15000.0)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS)
def test_every_plausible_unit_gives_its_ratings_back(numbers: dict[str, float]) -> None:
    ratings = split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"])
    machine = variable_speed_split(ratings)
    assert variable_speed_seer2(machine.cooling, ratings.cd_frac) == pytest.approx(ratings.seer2, rel=1e-6)
    assert variable_speed_hspf2(machine.heating, rating_terms(ratings)) == pytest.approx(ratings.hspf2, rel=1e-6)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS, POWER_W, POWER_W, POWER_W, st.floats(-45.0, 50.0))
def test_nothing_is_served_beyond_need_or_for_free(
    numbers: dict[str, float], cool_w: float, latent_w: float, heat_w: float, at_c: float
) -> None:
    machine = variable_speed_split(split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"]))
    run = operation(machine, *(np.full((24, 1, 1), value) for value in (cool_w, latent_w, heat_w, at_c)))
    assert (run.cool_served_w <= cool_w + 1e-9).all()
    assert (run.latent_served_w <= latent_w + 1e-9).all()
    assert (run.heat_served_w <= heat_w + 1e-9).all()
    assert (run.heat_electric_w <= run.heat_served_w / (1.0 - 0.25) + 1e-9).all()
    assert ((run.cool_electric_w > 0.0) == (run.cool_served_w > 0.0)).all()


@settings(max_examples=40, deadline=None, derandomize=True)
@given(RATINGS, st.floats(1.01, 1.2), POWER_W, st.floats(20.0, 42.0))
def test_a_better_full_load_rating_never_costs_more_at_full_load(
    numbers: dict[str, float], better: float, cool_w: float, at_c: float
) -> None:
    usual = split_ratings(2, **numbers, heat_47f_w=1.05 * numbers["capacity_w"])
    scaled = {name: np.array([numbers[name], numbers[name] * better]) for name in ("eer2", "seer2")}
    both = variable_speed_split(split_ratings(2, **(numbers | scaled), heat_47f_w=usual.heat_47f_w))
    shape = (24, 2, 1)
    zero = np.zeros(shape)
    run = operation(both, np.full(shape, cool_w), zero, zero, np.full(shape, at_c))
    assert run.cool_electric_w[0, 1, 0] <= run.cool_electric_w[0, 0, 0] + 1e-9


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS, st.floats(20.0, 44.0), st.floats(0.0, 8.0))
def test_hotter_air_outdoors_never_raises_cooling_output(numbers: dict[str, float], at_c: float, rise_k: float) -> None:
    machine = variable_speed_split(split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"]))
    cooler, hotter = cooling_capacity_w(machine, np.array([at_c, at_c + rise_k]))[0]
    assert hotter <= cooler + 1e-9


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS, st.floats(-35.0, -10.0), st.floats(0.0, 1.6))
def test_colder_air_below_frost_never_raises_heating_output(
    numbers: dict[str, float], at_c: float, rise_k: float
) -> None:
    numbers = numbers | {"cutout_c": -60.0, "heat_5f_ratio_frac": min(numbers["heat_5f_ratio_frac"], 1.0)}
    machine = variable_speed_split(split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"]))
    colder, milder = heating_capacity_w(machine, np.array([at_c, at_c + rise_k]))[0]
    assert colder <= milder + 1e-9


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS, st.floats(0.02, 0.97), st.floats(0.0, 0.5), st.floats(19.5, 44.0), st.floats(-25.0, 18.0))
def test_more_load_never_draws_less(
    numbers: dict[str, float], share: float, more: float, hot_c: float, cold_c: float
) -> None:
    machine = variable_speed_split(split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"]))
    shares = np.array([[share, min(share + more, 1.0)]])
    cool_w, heat_w = (
        shares * capacity(machine, np.array([at]))
        for capacity, at in ((cooling_capacity_w, hot_c), (heating_capacity_w, cold_c))
    )
    cooling_power_w = cooling(machine, cool_w, np.zeros((1, 2)), np.array([[hot_c]]))[2][0]
    heating_power_w = heating(machine, heat_w, np.array([[cold_c]]))[1][0]
    assert cooling_power_w[1] >= cooling_power_w[0] - 1e-9
    assert heating_power_w[1] >= heating_power_w[0] - 1e-9


@settings(max_examples=60, deadline=None, derandomize=True)
@given(RATINGS, st.floats(0.05, 1.0), st.floats(-30.0, 15.0))
def test_no_efficiency_in_heating_reaches_the_ideal_cycle(numbers: dict[str, float], share: float, at_c: float) -> None:
    machine = variable_speed_split(split_ratings(**numbers, heat_47f_w=1.05 * numbers["capacity_w"]))
    served_w, power_w = heating(machine, share * heating_capacity_w(machine, np.array([at_c])), np.array([[at_c]]))
    room_k = 294.26  # 70 degF
    assert served_w[0, 0] <= power_w[0, 0] * room_k / (room_k - 273.15 - at_c)


@settings(max_examples=30, deadline=None, derandomize=True)
@given(st.lists(RATINGS, min_size=2, max_size=5), POWER_W, st.floats(-20.0, 45.0))
def test_a_row_gives_the_same_numbers_alone_and_among_others(
    rows: list[dict[str, float]], need_w: float, at_c: float
) -> None:
    together = {name: np.array([each[name] for each in rows]) for name in rows[0]}
    many = variable_speed_split(split_ratings(len(rows), **together, heat_47f_w=1.05 * together["capacity_w"]))
    one = variable_speed_split(split_ratings(**rows[-1], heat_47f_w=1.05 * rows[-1]["capacity_w"]))

    def power(n_row: int, machine):  # type: ignore[no-untyped-def]
        need = np.full((24, n_row, 1), need_w)
        run = operation(machine, need, need * 0.2, need, np.full((24, n_row, 1), at_c))
        return (run.cool_electric_w + run.heat_electric_w)[:, -1]

    assert np.array_equal(power(len(rows), many), power(1, one))
