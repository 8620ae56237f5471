"""Which rows of the cost table the evaluation reads: the others are for screens and later use, and are not drawn."""

from functools import lru_cache
from itertools import product
from typing import Final

from econ.installation.labour import CIRCUIT_AT_M
from econ.kernel.alternative import ALTERNATIVES
from econ.tables.tasks import InstallationTables, installation_tables

AGES: Final = ("age_1", "age_2_5", "age_6_10", "age_11_15")
"""Classes of age that failure rates are told by."""

MENDING: Final = (
    "board_fitted_usd",
    "compressor_fitted_usd",
    "diagnostic_call_usd",
    "drain_clog_usd",
    "fan_motor_fitted_usd",
    "haul_away_split_usd",
    "interim_rental_usd_per_d",
    "recover_refrigerant_usd",
    "sensor_fitted_usd",
    "window_parts_warranty_yr",
    *(f"{route}_failures_{age}_per_yr" for route, age in product(("kit", "trade", "window"), AGES)),
)
"""Rows of repairs, warranties and the recovery of an old charge."""

NAMED: Final = (
    *MENDING,
    "association_d",
    "callback_reserve_frac",
    "circuit_120v_frac",
    "circuit_pad_life_yr",
    "commission_owner_kit_usd",
    "contractor_billed_usd_per_h",
    "contractor_helper_billed_usd_per_h",
    "core_bite_m",
    "electrical_permit_usd",
    "electrician_call_out_usd",
    "electrician_hourly_usd_per_h",
    "equipment_markup_frac",
    "final_connection_usd",
    "freight_usd",
    "ground_fault_adder_usd",
    "interim_rental_usd_per_d",
    "kit_claims_paid_frac",
    "kit_compressor_warranty_yr",
    "kit_labour_warranty_yr",
    "kit_part_d",
    "kit_parts_warranty_yr",
    "landlord_consent_d",
    "materials_markup_frac",
    "mechanical_permit_usd",
    "minimum_hire_d",
    "opening_permit_usd",
    "outlet_120v_usd",
    "outlet_240v_usd",
    "outlet_permit_usd",
    "panel_spaces_usd",
    "portable_store_self_h",
    "registration_deadline_d",
    "replacement_installation_frac",
    "service_receptacle_usd",
    "technician_peak_d",
    "trade_compressor_warranty_yr",
    "trade_labour_warranty_yr",
    "trade_part_d",
    "trade_parts_warranty_yr",
    "travel_usd",
    "wall_cover_self_h",
    "window_drop_off_usd",
    "window_leakage_loose_m2",
    "window_leakage_taped_m2",
    "window_parts_warranty_yr",
    "window_refit_self_h",
    "window_sealed_warranty_yr",
    "window_stock_out_d",
    "window_take_out_self_h",
)
"""Rows that wiring modules read by name; a row left out is a KeyError in every evaluation."""


@lru_cache(maxsize=1)
def read_keys() -> frozenset[str]:
    """Return the keys of the cost table that tasks, tools, circuits and wiring modules read."""
    work = installation_tables()
    circuits = {f"circuit_{at:.0f}m_{wiring}_usd" for at, wiring in product(CIRCUIT_AT_M, ("exposed", "fished"))}
    return frozenset({*NAMED, *circuits, *_of_tasks(work), *_of_tools(work)} - {""})


def _of_tasks(work: InstallationTables) -> set[str]:
    keys = set()
    for table in (work.tasks[way] for way in ALTERNATIVES):
        keys |= {key for parties in table.hours for source in parties for key in source.key if "." not in key}
        keys |= {material.key for materials in table.materials for material in materials}
        keys |= {path.removeprefix("costs.") for path in table.wait if path.startswith("costs.")}
    return keys


def _of_tools(work: InstallationTables) -> set[str]:
    return {key for tool in work.tools for key in (tool.buy, tool.rent, tool.resale, tool.life)}
