"""Facts of an invented site on which only the rules that always hold are raised."""

from dataclasses import fields
from typing import Any

import numpy as np

from econ.caution.facts import Facts
from econ.caution.registry import found

NUMBERS = {
    "built_yr": 2005.0,
    "wall_thickness_m": 0.15,
    "bite_m": 0.1016,
    "earth_depth_m": 0.0,
    "closed_rooms_count": 0.0,
    "line_run_m": 4.5,
    "line_box_m": 6.0,
    "extension_m": 3.0,
    "line_limit_m": 15.2,
    "line_rise_m": 1.0,
    "rise_limit_m": 7.6,
    "charge_kg": 0.68,
    "lfl_kg_per_m3": 0.307,
    "floor_area_m2": 25.0,
    "mca_a": 15.0,
    "mop_a": 25.0,
    "breaker_a": 20.0,
    "conductor_a": 20.0,
    "voltage_drop_frac": 0.02,
    "service_load_a": 90.0,
    "service_a": 100.0,
    "outdoor_kg": 28.0,
    "indoor_kg": 10.0,
    "window_kg": 25.0,
    "window_a": 7.5,
    "window_limit_a": 12.0,
    "outdoor_height_m": 0.2,
    "bracket_pull_n": 300.0,
    "anchor_ultimate_n": 4000.0,
    "heat_design_c": 2.0,
    "kit_cutout_c": -20.0,
    "hired_cutout_c": -20.0,
    "window_cutout_c": 99.0,
    "pan_heater_w": 0.0,
    "mean_cool_w": 1200.0,
    "window_least_w": 1000.0,
    "kit_least_w": 1000.0,
    "hired_least_w": 1000.0,
    "own_rooms_count": 1.0,
    "window_units_count": 1.0,
    "kit_heads_count": 1.0,
    "hired_heads_count": 1.0,
    "window_cycling_h": 200.0,
    "kit_cycling_h": 200.0,
    "hired_cycling_h": 200.0,
    "window_cold_h": 0.0,
    "kit_cold_h": 0.0,
    "hired_cold_h": 0.0,
    "window_heat_w": 0.0,
    "moisture_share_frac": 0.2,
    "design_cool_w": 3000.0,
    "design_heat_w": 3000.0,
    "window_cool_w": 3500.0,
    "kit_cool_w": 3500.0,
    "hired_cool_w": 3500.0,
    "kit_heat_w": 3500.0,
    "hired_heat_w": 3500.0,
    "kit_short_h": 0.0,
    "hired_short_h": 0.0,
    "window_short_h": 0.0,
    "head_above_m": 0.4,
    "head_above_least_m": 0.15,
    "head_beside_m": 0.5,
    "head_beside_least_m": 0.1,
    "drain_run_m": 4.5,
    "drain_fall_m": 0.09,
    "drain_drop_m": 1.5,
    "drain_reach_m": 75.0,
    "boundary_m": 5.0,
    "boundary_db": 47.0,
    "boundary_most_db": 50.0,
    "boundary_least_m": 1.5,
    "gas_meter_m": 4.0,
    "gas_meter_least_m": 0.9,
    "vents_m": 4.0,
    "vents_least_m": 0.9,
    "bedroom_window_m": 6.0,
    "bedroom_window_least_m": 3.0,
    "outdoor_front_m": 2.0,
    "outdoor_front_least_m": 0.6,
    "outdoor_back_m": 0.3,
    "outdoor_back_least_m": 0.1,
    "snow_m": 0.0,
    "snow_foot_m": 0.1,
    "line_reach_m": 6.0,
    "line_short_m": 0.0,
    "bit_reach_m": 0.23,
    "longest_reach_m": 0.535,
    "return_by_d": 42.0,
    "dry_fit_d": 13.0,
    "window_late_d": -60.0,
    "self_late_d": -30.0,
    "hired_late_d": -10.0,
}
TRUE = ("in_window", "is_frame", "has_helper", "heat_asked", "has_backup", "label_read")


def facts(**changed: Any) -> Facts:
    """Return the quiet site with some facts changed; a list makes as many rows."""
    n_row = max((len(value) for value in changed.values() if isinstance(value, (list, tuple))), default=1)
    read = {}
    for field in fields(Facts):
        usual = NUMBERS.get(field.name, field.name in TRUE)
        kind = np.float64 if field.name in NUMBERS else np.bool_
        read[field.name] = np.broadcast_to(np.asarray(changed.get(field.name, usual), dtype=kind), (n_row,))
    return Facts(**read)


def codes(**changed):
    """Return the codes of the rules that a changed quiet site raises."""
    return {caution.code for caution in found(facts(**changed))}
