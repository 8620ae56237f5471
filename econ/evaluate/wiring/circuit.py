"""The unit's circuit as rules and pictures look at it: label, wire, breaker, voltage lost, room on the service."""

from typing import Final

import numpy as np

from econ.case.choices import CHOICES, NOT_KNOWN
from econ.equipment.conductor import ampacity_a, least_size_awg, voltage_drop_frac
from econ.equipment.panel import DwellingLoad, existing_dwelling_load_va, service_current_a
from econ.evaluate.wiring.installation_site import Inputs
from econ.kernel.arrays import BoolArray, FloatArray

APPLIANCES: Final = ("range", "dryer", "water_heater", "car_charger")
"""What the load of an existing home counts by its nameplate, where it is there."""


def circuit_numbers(inputs: Inputs) -> dict[str, FloatArray]:
    """Return what the label asks and what the circuit gives.

    Parameters
    ----------
    inputs : Inputs
        The case.

    Returns
    -------
    numbers : dict of str to ndarray, shape (B,)
        Fields of Facts; what was not given is NaN. A wire that was not named is the thinnest that carries the minimum.
    """
    mca, wire = inputs.number("kit.mca_a"), wire_awg(inputs)
    length, supply = inputs.number("site.panel_distance_m"), supply_v(inputs)
    return {
        "mca_a": mca,
        "mop_a": inputs.number("kit.mop_a"),
        "breaker_a": _given(inputs, "site.breaker_a"),
        "conductor_a": ampacity_a(wire),
        "voltage_drop_frac": voltage_drop_frac(length, mca, wire, supply),
        "service_load_a": service_load_a(inputs),
        "service_a": _given(inputs, "panel.service_a"),
    }


def circuit_claims(inputs: Inputs) -> dict[str, BoolArray]:
    """Return what is known of label and code, and what is missing.

    Parameters
    ----------
    inputs : Inputs
        The case.

    Returns
    -------
    claims : dict of str to ndarray, shape (B,)
        Fields of Facts.
    """
    return {
        "label_read": inputs.number("kit.label_read_frac") > 0.0,
        "ground_fault_asked": inputs.is_option("site.code_edition", "2020", "2023", "2026"),
        "ground_fault_unknown": inputs.is_option("site.code_edition", NOT_KNOWN),
        "receptacle_lacks": ~inputs.is_option("site.receptacle", "within_25_ft"),
    }


def wire_awg(inputs: Inputs) -> FloatArray:
    """Return the gauge number of the circuit's copper, shape (B,): as named, else the thinnest that will do."""
    named = np.array([float(option) if option.isdigit() else np.nan for option in CHOICES["site.conductor"]])
    chosen: FloatArray = named[inputs.number("site.conductor").astype(np.int64)]
    size: FloatArray = np.where(np.isnan(chosen), least_size_awg(inputs.number("kit.mca_a")), chosen)
    return size


def supply_v(inputs: Inputs) -> FloatArray:
    """Return the supply voltage of the kit, shape (B,)."""
    volts: FloatArray = np.where(inputs.is_option("kit.volts", "120"), 120.0, 240.0)
    return volts


def service_load_a(inputs: Inputs) -> FloatArray:
    """Return the home's current with the unit added, by the load method for existing dwellings, shape (B,).

    Electric heat stays beside the unit and can run with it; both count in full.
    """
    appliances = inputs.number("panel.small_va") + sum(
        (inputs.number(f"panel.{name}_va") * inputs.is_option(f"panel.{name}", "yes") for name in APPLIANCES),
        np.zeros(inputs.n_row),
    )
    heat = np.where(inputs.is_option("now.heat", "electric"), inputs.number("panel.heat_w"), 0.0)
    unit = inputs.number("kit.mca_a") * supply_v(inputs) * inputs.number("kit.count")
    return service_current_a(
        existing_dwelling_load_va(DwellingLoad(inputs.number("panel.home_area_m2"), appliances, heat + unit))
    )


def _given(inputs: Inputs, path: str) -> FloatArray:
    return inputs.number(path) if path in inputs.values else np.full(inputs.n_row, np.nan)
