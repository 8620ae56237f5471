"""Design loads: held rooms, pieces and rooms that are not asked for."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.constants import AIR_DENSITY_KG_PER_M3, AIR_HEAT_J_PER_KGK
from econ.loads.design_load import LOSSES, PIECES, design_loads, heating_w
from tests.unit.loads.rooms import LIMIT, PRESSURE_PA, days, random_rows, rows

HOT = days([28.0], 5.0, 600.0, humidity_ratio=0.015)
COLD_C = np.array(-15.0)


def test_pieces_add_up_to_sensible_plus_latent():
    loads = design_loads(random_rows(30, 5), HOT, COLD_C, np.full(30, 0.6))
    assert loads.piece_w.shape == (30, len(PIECES))
    assert loads.piece_w.sum(axis=1) == pytest.approx(loads.cool_sensible_w + loads.cool_latent_w, rel=1e-9)


def test_pieces_are_the_flows_of_the_peak_hour():
    room = rows(window_aperture_m2=np.full((1, 9), 0.2), gain_w=np.full((1, 24), 150.0))
    loads = design_loads(room, HOT, COLD_C, LIMIT)
    hour = int(loads.peak_hour[0])
    outside = HOT.dry_bulb_c[hour, 0]
    by_name = dict(zip(PIECES, loads.piece_w[0], strict=True))
    assert by_name["windows, conduction"] == pytest.approx(6.0 * (outside - 24.0))
    assert by_name["windows, sun"] == pytest.approx(0.2 * 9.0 * HOT.irradiance[hour, 0, 0])
    assert by_name["people and things"] == 150.0


def test_steady_day_stores_almost_nothing():
    loads = design_loads(rows(), days([34.0]), COLD_C, LIMIT)
    assert abs(loads.piece_w[0, -1]) < 0.05 * loads.cool_sensible_w[0]


def test_hours_of_use_do_not_change_the_design_load():
    evening = (np.arange(24) >= 17)[None, :]
    always, evenings = (
        design_loads(rows(is_cooled=on), HOT, COLD_C, LIMIT) for on in (np.ones((1, 24), bool), evening)
    )
    assert evenings.cool_sensible_w.tolist() == always.cool_sensible_w.tolist()


def test_a_room_never_cooled_has_no_cooling_load():
    loads = design_loads(rows(is_cooled=np.zeros((1, 24), bool)), HOT, COLD_C, LIMIT)
    assert not loads.cool_sensible_w.any()
    assert not loads.piece_w.any()


def test_heating_is_steady_loss_at_the_design_dry_bulb():
    air = 0.006 * AIR_DENSITY_KG_PER_M3 * AIR_HEAT_J_PER_KGK
    room = rows(ua_ground_w_per_k=[10.0], ground_c=np.arange(12.0)[None, :], gain_w=np.full((1, 24), 500.0))
    expected = (15.0 + 6.0 + air) * 35.0 + 10.0 * 20.0
    assert heating_w(room, COLD_C, PRESSURE_PA) == pytest.approx(expected)


def test_losses_by_piece_add_up_to_the_heating_load():
    rooms = random_rows(30, 5)
    loads = design_loads(rooms, HOT, COLD_C, np.full(30, 0.6))
    assert loads.loss_w.shape == (30, len(LOSSES))
    assert np.maximum(loads.loss_w.sum(axis=1), 0.0) == pytest.approx(loads.heat_w, rel=1e-12)
    assert loads.loss_w[:, 1] == pytest.approx(
        heating_w(rooms, COLD_C, PRESSURE_PA) - heating_w(without_windows(rooms), COLD_C, PRESSURE_PA), rel=1e-9
    )


def without_windows(rooms):
    return replace(rooms, ua_window_w_per_k=np.zeros(len(rooms.floor_area_m2)))


def test_warming_softens_the_coldest_hour():
    assert heating_w(rows(warming_k=[1.0]), COLD_C, PRESSURE_PA) < heating_w(rows(), COLD_C, PRESSURE_PA)


def test_a_room_never_heated_has_no_heating_load():
    assert not heating_w(rows(is_heated=np.zeros((1, 24), bool)), COLD_C, PRESSURE_PA).any()
