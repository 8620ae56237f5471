"""A case's values and results as facts are drawn from them, all quiet unless said."""

import numpy as np

from econ.case.choices import code
from econ.evaluate.wiring.caution import CautionResults, facts, found
from econ.installation.delivery import KitReturn
from tests.unit.installation.site_values import site_values, structure

ROOM = {
    "kind": "bedroom",
    "north": "outside",
    "east": "outside",
    "south": "outside",
    "west": "outside",
    "door": "none",
    "own_unit": "no",
}


def room(index, **changed):
    numbers = {"earth_depth_m": 0.0, "year_built": 2005.0, "floor_area_m2": 25.0}
    said = {**ROOM, **numbers, **changed}
    paths = {f"rooms[{index}].{name}": value for name, value in said.items()}
    return {
        path: np.asarray(code(path, value) if isinstance(value, str) else value, dtype=np.float64)
        for path, value in paths.items()
    }


def values(rooms=None, **changed):
    extra = {"use.heat": "yes", "use.dry": "no"}
    read = {**site_values(**changed), **{path: np.asarray(code(path, word)) for path, word in extra.items()}}
    for index, each in enumerate(rooms or [{}]):
        read |= room(index, **each)
    read |= {path: np.asarray(value) for path, value in {"kit.charge_kg": 0.68, "kit.lfl_kg_per_m3": 0.307}.items()}
    cold = {"kit.cutout_c": -20.0, "window.cutout_c": 99.0, "kit.pan_heater_w": 0.0, "kit.line_max_m": 15.2}
    read |= {path: np.asarray(value) for path, value in cold.items()}
    stays = {"now.heat": "gas", "use.present_heat_stays": "yes", "now.house_system": "no"}
    read = {path: np.asarray(code(path, word)) for path, word in stays.items()} | read
    return {"site.line_rise_m": np.asarray(1.0)} | read


def results(n_row=1, **changed):
    given = {
        "design_cool_w": np.full(n_row, 3000.0),
        "design_heat_w": np.full(n_row, 3000.0),
        "cool_given_w": np.full((4, n_row), 3500.0),
        "heat_given_w": np.full((4, n_row), 3500.0),
        "least_given_w": np.full((4, n_row), 800.0),
        "mean_cool_w": np.full(n_row, 1000.0),
        "below_least_h": np.full(4, 100.0),
        "heat_design_c": np.full(n_row, -10.0),
        "cool_short_h": np.zeros((4, n_row)),
        "heat_short_h": np.zeros((4, n_row)),
        "in_service_d": np.full((4, n_row), 30.0),
        "season_end_d": np.asarray(100.0),
        "kit_return": KitReturn(np.full(n_row, 42.0), np.full(n_row, 13.0), np.full(n_row, 400.0)),
        "moisture_share_frac": np.full(n_row, 0.2),
    }
    return CautionResults(**{**given, **changed})


def codes(shape=None, rooms=None, given=None, **changed):
    return {each.code for each in found(shape or structure(), values(rooms, **changed), given or results(), 1)}


def at(**changed):
    return facts(structure(), values(**changed), results(), 1)
