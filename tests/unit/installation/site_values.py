"""An invented site for tests: every path the installation wiring reads, with likely costs of the table."""

from typing import Any

import numpy as np

from econ.case.choices import code
from econ.evaluate.structure import Structure
from econ.kernel.alternative import Alternative
from econ.tables.record import read_table

CHOSEN = {
    "site.occupancy": "owner_lives_here",
    "site.permit": "needed",
    "site.owner_may_mechanical": "yes",
    "site.owner_may_electrical": "no",
    "site.association": "none",
    "site.wall": "wood_frame",
    "site.outdoor_place": "ground_pad",
    "site.anchor_base": "not_known",
    "site.drain": "gravity",
    "site.panel_spaces": "yes",
    "site.heritage": "no",
    "site.room_permitted": "yes",
    "site.cladding": "boards",
    "site.fire_wall": "no",
    "site.flood": "no",
    "site.salt_air": "no",
    "site.pipes": "no",
    "use.present_heat_stays": "yes",
    "site.hole": "above_grade",
    "site.head_blows": "into_room",
    "site.head_studs": "found",
    "site.head_access": "yes",
    "site.door_swing": "no",
    "site.wiring": "exposed",
    "site.circuit": "new",
    "site.conductor": "choose",
    "site.code_edition": "2017_or_older",
    "site.receptacle": "within_25_ft",
    "panel.range": "yes",
    "panel.dryer": "yes",
    "panel.water_heater": "yes",
    "panel.car_charger": "no",
    "now.heat": "gas",
    "kit.volts": "240",
    "kit.connection": "single_use_quick",
    "kit.extension_allowed": "no",
    "kit.refrigerant": "r32",
    "window.in_months": "cooling_season",
    "window.kind": "window",
    "window.cycle": "cooling_only",
    "window.wall_bears": "yes",
    "window.over_walkway": "no",
    "window.outlet_volts": "120",
    "window.opening": "sash",
    "window.escape": "no",
    "window.outlet": "own_circuit",
    "now.cooling": "none",
    "rooms[0].north": "outside",
    "rooms[0].east": "outside",
    "rooms[0].south": "outside",
    "rooms[0].west": "outside",
    "work.helper": "free",
    "work.contractor_finishes": "yes",
    "work.days": "weekends",
    "work.skill_masonry": "a_little",
    "work.skill_bracket": "a_little",
    "work.skill_torque": "a_little",
    "money.incentive_window_terms": "none",
    "money.incentive_self_terms": "none",
    "money.incentive_hired_terms": "none",
    "quote.equipment": "yes",
    "quote.electrical": "yes",
    "quote.permit": "yes",
    "quote.removal": "yes",
    "quote.warranty": "yes",
}

NUMBERS = {
    "site.wall_thickness_m": 0.15,
    "site.outdoor_height_m": 0.2,
    "site.bracket_reach_m": 0.35,
    "site.bracket_height_m": 0.4,
    "site.line_run_m": 4.5,
    "site.panel_distance_m": 10.0,
    "kit.price_usd": 2100.0,
    "kit.count": 1.0,
    "kit.heads": 1.0,
    "kit.extra_head_usd": 500.0,
    "hired.count": 1.0,
    "hired.heads": 1.0,
    "hired.extra_head_usd": 600.0,
    "kit.line_set_m": 6.1,
    "kit.return_window_d": 30.0,
    "kit.restocking_frac": 0.2,
    "kit.extension_m": 3.66,
    "kit.r454b_lfl_kg_per_m3": 0.296,
    "kit.mca_a": 15.0,
    "kit.mop_a": 25.0,
    "kit.label_read_frac": 1.0,
    "panel.home_area_m2": 160.0,
    "panel.heat_w": 12_000.0,
    "panel.range_va": 10_000.0,
    "panel.dryer_va": 5_000.0,
    "panel.water_heater_va": 4_500.0,
    "panel.car_charger_va": 7_200.0,
    "panel.small_va": 3_000.0,
    "hired.equipment_usd": 2200.0,
    "window.capacity_w": 3500.0,
    "window.supply_v": 120.0,
    "window.current_a": 9.1,
    "window.outlet_breaker_a": 15.0,
    "window.clear_width_m": 0.762,
    "window.clear_height_m": 0.5588,
    "window.width_said_frac": 1.0,
    "window.height_said_frac": 1.0,
    "window.width_least_m": 0.5842,
    "window.width_sure_m": 0.6858,
    "window.height_least_m": 0.3683,
    "window.height_sure_m": 0.4318,
    "rooms[0].ceiling_height_m": 2.44,
    "rooms[0].earth_depth_m": 0.0,
    "window.count": 2.0,
    "window.price_usd": 500.0,
    "now.units_count": 0.0,
    "work.helper_usd_per_h": 20.0,
    "work.handyman_usd_per_h": 50.0,
    "work.handyman_pace_frac": 0.75,
    "work.handyman_mishap_frac": 0.5,
    "work.hour_value_usd_per_h": 25.0,
    "work.hours_per_day_h": 8.0,
    "work.mishap_frac": 0.1,
    "work.mishap_usd": 800.0,
    "work.skilled_hours_frac": 0.8,
    "work.unskilled_hours_frac": 1.3,
    "work.contractor_wait_d": 35.0,
    "work.electrician_wait_d": 16.0,
    "work.permit_wait_d": 9.0,
    "work.delivery_wait_d": 7.0,
    "money.sales_tax_frac": 0.07,
    "money.incentive_window_usd": 0.0,
    "money.incentive_window_frac": 1.0,
    "money.incentive_self_usd": 0.0,
    "money.incentive_self_frac": 1.0,
    "money.incentive_hired_usd": 0.0,
    "money.incentive_hired_frac": 1.0,
    "warranty.kit_licensed_claims_frac": 0.95,
    "warranty.claims_frac": 0.97,
    "quote.labour_warranty_yr": 1.0,
    "place.decision_weekday": 0.0,
}


def likely_costs() -> dict[str, float]:
    """Return the likely value of every row of the cost table by path."""
    table = read_table("installation/costs")
    return {f"costs.{key}": value for key, value in zip(table.texts("key"), table.numbers("likely"), strict=True)}


def likely_assumptions() -> dict[str, float]:
    """Return the likely value of every assumption that no form asks for by path."""
    table = read_table("defaults/assumptions")
    return dict(zip(table.texts("path"), table.numbers("likely").tolist(), strict=True))


def likely_mishaps() -> dict[str, float]:
    """Return the likely figures of every kind of mishap by path, where its row gives them."""
    rows = read_table("installation/mishaps").rows()
    names = ("chance_frac", "cost_usd", "own_h", "days_d")
    found = {f"mishaps.{row['key']}.{name}": row[f"{name}.likely"] for row in rows for name in names}
    return {path: value for path, value in found.items() if not np.isnan(value)}


def cost_range(column: str) -> dict[str, float]:
    """Return the low or high value of every row of the cost table by path."""
    table = read_table("installation/costs")
    return {f"costs.{key}": value for key, value in zip(table.texts("key"), table.numbers(column), strict=True)}


def site_values(**changed: Any) -> dict[str, Any]:
    """Return the invented site with some paths changed; dots are written as double underscores, options as text."""
    paths = {path.replace("__", "."): value for path, value in changed.items()}
    chosen = {**CHOSEN, **{path: value for path, value in paths.items() if isinstance(value, str)}}
    numbers = {
        **likely_assumptions(),
        **likely_costs(),
        **likely_mishaps(),
        **NUMBERS,
        **{path: value for path, value in paths.items() if not isinstance(value, str)},
    }
    values = {path: np.asarray(value, dtype=np.float64) for path, value in numbers.items()}
    values.update({path: np.asarray(code(path, option)) for path, option in chosen.items()})
    return values


def structure(**changed: Any) -> Structure:
    """Return a structure of one room with some fields changed."""
    fields: dict[str, Any] = {
        "station": "Somewhere, XX",
        "n_rooms": 1,
        "room_names": ("room",),
        "technologies": ("none", "single_speed_window", "variable_speed_split", "variable_speed_split"),
        "base_case": Alternative.WINDOW_UNITS,
        "study_period_yr": 10,
    }
    return Structure(**{**fields, **changed})
