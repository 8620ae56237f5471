"""What measures make of the numbers they change."""

from dataclasses import fields

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.loads.heat_balance import need
from econ.loads.measure import insulated_w_per_m2k, left_to_serve, seasonal_sun_frac, shade_pieces_count
from econ.loads.rooms import RoomRows
from tests.unit.loads.rooms import days, random_rows, rows

YEAR = days(np.linspace(-15.0, 32.0, 12), 6.0, 300.0, 0.012)


# By hand: 1 / (1 / 0.45 + 5.3) = 1 / 7.5222 = 0.13294 W/(m2 K)
def test_insulation_is_added_in_series():
    assert float(insulated_w_per_m2k(np.array(0.45), np.array(5.3))) == pytest.approx(0.13294, abs=5e-6)


def test_insulation_of_a_part_that_loses_nothing_changes_nothing():
    assert float(insulated_w_per_m2k(np.array(0.0), np.array(5.3))) == 0.0


@pytest.mark.parametrize(("glass_m2", "pieces"), [(0.0, 0), (0.01, 1), (2.0, 1), (2.01, 2), (6.0, 3)])
def test_each_large_window_takes_a_piece_of_shade(glass_m2, pieces):
    assert shade_pieces_count(np.array(glass_m2)) == pieces


def test_shade_is_down_in_months_at_or_above_its_mean_alone():
    mean_c = np.array([[14.9, 15.0, 15.1, *[0.0] * 9]])
    frac = seasonal_sun_frac(np.array([2.0]), mean_c, np.array([15.0]))
    assert frac[0, :3].tolist() == [2.0, 1.0, 1.0]


def test_a_share_that_the_house_carries_leaves_the_rest_of_every_need():
    rooms = random_rows(6, seed=3)
    share = np.array([0.0, 0.1, 0.3, 0.5, 0.9, 0.25])
    limit = np.full(6, 0.6)
    whole, left = need(rooms, YEAR, limit), need(left_to_serve(rooms, share), YEAR, limit)
    for name in ("cool_w", "latent_w", "heat_w"):
        expected = getattr(whole, name) * (1.0 - share)[:, None]
        assert getattr(left, name) == pytest.approx(expected, rel=1e-9, abs=1e-6)


def test_a_share_changes_no_set_point_hour_or_temperature():
    rooms = random_rows(2, seed=4)
    left = left_to_serve(rooms, np.array([0.3, 0.3]))
    names = [field.name for field in fields(RoomRows)]
    same = {name for name in names if np.array_equal(getattr(rooms, name), getattr(left, name))}
    assert {"ground_c", "heat_setpoint_c", "cool_setpoint_c", "is_heated", "is_cooled", "is_dried", "owner"} <= same
    assert {"ua_opaque_w_per_k", "mass_j_per_k", "gain_w", "air_flow_m3_per_s", "window_aperture_m2"}.isdisjoint(same)


@pytest.mark.parametrize("share", [-0.01, 1.0, 1.2])
def test_a_share_of_all_or_below_nothing_is_refused(share):
    with pytest.raises(OutOfRangeError, match=r"share of a room that the house carries is .* from 0 to below 1"):
        left_to_serve(random_rows(1, seed=1), np.array([share]))


def test_rooms_without_a_share_come_back_as_they_are():
    rooms = random_rows(1, seed=1)
    assert left_to_serve(rooms, np.zeros(1)) is rooms


def test_shade_of_a_month_is_a_smaller_window_in_that_month_alone():
    aperture = np.full((1, 9), 0.6)
    frac = np.ones((1, 12))
    frac[0, 8] = 0.4
    plain, smaller = (rows(window_aperture_m2=each) for each in (aperture, 0.4 * aperture))
    shaded = rows(window_aperture_m2=aperture, window_sun_frac=frac)
    limit = np.full(1, 0.6)
    cool = {name: need(room, YEAR, limit).cool_w for name, room in (("p", plain), ("s", smaller), ("m", shaded))}
    assert cool["m"][:, :, 8] == pytest.approx(cool["s"][:, :, 8], rel=1e-9, abs=1e-9)
    others = [day for day in range(12) if day != 8]
    assert cool["m"][:, :, others] == pytest.approx(cool["p"][:, :, others], rel=1e-9, abs=1e-9)
    assert cool["m"][:, :, 8].sum() < cool["p"][:, :, 8].sum()
