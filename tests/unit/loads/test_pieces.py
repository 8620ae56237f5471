"""Surfaces, gains, infiltration, schedules and the balance point."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.loads import balance_point, gains, infiltration, schedule, surfaces


def test_mass_area_holds_the_classes_of_the_standard():
    classes = np.array([80e3, 110e3, 165e3, 260e3, 370e3])
    assert surfaces.mass_area_m2(np.full(5, 10.0), classes).tolist() == [25.0, 25.0, 25.0, 30.0, 35.0]


def test_window_aperture_is_glass_times_what_passes():
    area = np.zeros((1, 9))
    area[0, 4] = 2.0
    aperture = surfaces.window_aperture_m2(area, np.array([0.5]), np.array([0.8]))
    assert aperture[0, 4] == pytest.approx(0.9 * 0.5 * 0.8 * 2.0)
    assert aperture.sum() == aperture[0, 4]


def test_opaque_aperture_is_absorptance_times_outer_film_times_conductance():
    assert surfaces.opaque_aperture_m2(np.full((1, 9), 5.0), np.array([0.7])) == pytest.approx(0.7 * 0.06 * 5.0)


def test_film_in_the_sun_is_that_of_the_mean_station_s_wind_at_a_suburban_wall():
    from econ.tables.loaders import load_tables

    stations = load_tables().stations
    open_m_per_s = np.mean([stations.station(name).wind_m_per_s[0] for name in stations.names])
    at_wall_m_per_s = open_m_per_s * (270.0 / 10.0) ** 0.14 * (2.5 / 370.0) ** 0.22
    by_wind = 1.0 / (4.5 + 4.0 + 4.0 * at_wall_m_per_s)
    assert by_wind == pytest.approx(surfaces.IN_USE_FILM_M2K_PER_W, abs=0.005)


def test_walls_see_a_third_of_the_cold_sky_that_roofs_see():
    walls, roofs = (
        surfaces.sky_loss_w(np.array([10.0]), np.zeros(1)),
        surfaces.sky_loss_w(np.zeros(1), np.array([10.0])),
    )
    assert walls == pytest.approx(0.35 * roofs)
    assert roofs == pytest.approx(0.06 * 4.5 * 11.0 * 10.0)


# Walton (1983): view of the sky (1 + cos t)/2, of which sqrt((1 + cos t)/2) is sky; t = 90 degrees
def test_wall_s_view_of_the_cold_sky_is_walton_s():
    sky_frac = 0.5 * 0.5**0.5
    assert sky_frac == pytest.approx(surfaces.SKY_VIEW_WALL_FRAC, abs=0.005)


def test_u_value_in_use_has_the_thicker_film():
    in_use = surfaces.in_use_u_w_per_m2k(np.array([0.0, 2.0]), surfaces.OUTER_FILM_M2K_PER_W)
    assert in_use == pytest.approx([0.0, 1.0 / (1.0 / 2.0 + 0.06 - 0.04)])


def test_rooms_of_a_house_share_out_the_whole_dwelling_s_gain():
    rooms = gains.room_sensible_w(np.array([30.0, 50.0, 40.0]), np.array([0.0, 1.0, 0.0]))
    assert rooms.sum() == pytest.approx(float(gains.dwelling_sensible_w(np.array(120.0), np.array(0.0))))


def test_rooms_of_a_house_share_out_its_moisture():
    rooms = gains.room_latent_w(np.array([30.0, 50.0, 40.0]), np.array([0.0, 1.0, 0.0]))
    assert rooms.sum() == pytest.approx(float(gains.dwelling_latent_w(np.array(120.0), np.array(0.0))))


def test_air_changes_times_volume_is_the_flow():
    assert infiltration.air_flow_m3_per_s(np.array(0.5), np.array(72.0)) == pytest.approx(0.01)


def test_evenings_and_nights_leave_the_working_day_out():
    assert schedule.is_used("evenings_and_nights").nonzero()[0].tolist() == [*range(7), *range(17, 24)]
    assert schedule.is_used("working_hours").sum() == 10
    assert schedule.is_used("day_and_night").all()


def test_set_points_are_eased_in_the_first_two_hours_only():
    easing = schedule.easing_k(schedule.is_used("evenings_and_nights"))
    assert easing.nonzero()[0].tolist() == [17, 18]
    assert easing[17] > easing[18]


def test_a_room_never_off_is_never_eased():
    assert not schedule.easing_k(schedule.is_used("day_and_night")).any()


def test_a_room_without_loss_has_no_balance_point():
    with pytest.raises(OutOfRangeError, match="conductance of a room is 0 W/K; it must be above 0"):
        balance_point.balance_point_c(np.array(20.0), np.array(100.0), np.array(0.0))


def test_degree_days_times_conductance_is_heat():
    assert balance_point.degree_day_heating_kwh(np.array(100.0), np.array(2000.0)) == pytest.approx(4800.0)
