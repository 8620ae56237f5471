"""What each way costs at today's prices, split by what is bought again when the units wear out."""

from collections.abc import Mapping, Sequence
from typing import Final

import numpy as np

from econ.evaluate.structure import Structure
from econ.evaluate.wiring.energy import EnergyUse
from econ.evaluate.wiring.installation import Installation
from econ.evaluate.wiring.lifecycle import AlternativeCosts
from econ.evaluate.wiring.measures import LINE_KEY, NO_WORK, RoomWork
from econ.evaluate.wiring.waiting import LINE_KEY as INTERIM_KEY
from econ.installation.first_cost import LineItems, cash_first_cost_usd, first_cost_usd, incentive_usd
from econ.kernel.alternative import HIRED, SELF, WINDOW
from econ.kernel.arrays import FloatArray

LASTING: Final = frozenset(
    {
        "circuit",
        "panel_spaces_usd",
        "ground_fault_adder_usd",
        "gfci_breaker_usd",
        "ground_fault_disconnect_usd",
        "service_receptacle_usd",
        "ground_pad_usd",
        "wall_bracket_usd",
        "roof_stand_usd",
        "wall_sleeve_usd",
        "line_cover_kit_usd",
        "line_cover_extra_usd_per_m",
        "electrical_permit_usd",
        "window_bracket_usd",
        "outlet_120v_usd",
        "outlet_240v_usd",
        "outlet_permit_usd",
        "opening_labour",
        "own_opening_time",
        "opening_permit_usd",
        "opening_framing_usd",
        "opening_lintel_usd",
        "through_wall_sleeve_usd",
    }
)
"""Lines that outlast the units: circuit, pad or bracket, sleeve, cover. Assumption, as the service-life table."""

UNITS: Final = frozenset({"equipment"})
FITTING: Final = frozenset({"labour", "own_time", "materials"})
OWN: Final = frozenset({"own_time"})
"""Categories of what buys the units, of what puts them in, and of own hours."""

NOTHING_USD: Final = np.zeros(())
"""Nothing to pay."""


def alternative_costs(
    structure: Structure,
    values: Mapping[str, FloatArray],
    installations: Sequence[Installation],
    uses: Sequence[EnergyUse],
    work: RoomWork = NO_WORK,
    running_usd_per_yr: FloatArray = NOTHING_USD,
) -> AlternativeCosts:
    """Return what each way costs at today's prices, in the order of ALTERNATIVES.

    Parameters
    ----------
    structure : Structure
        Whether the hired way is a quote.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    installations : sequence of Installation
        Lines, own hours and dates of each way.
    uses : sequence of EnergyUse
        A full year's energy of each way.
    work : RoomWork
        Measures on the room, in the lines of every way already.
    running_usd_per_yr : ndarray, shape () or (B,)
        What they cost to run, on every way's upkeep. [USD/year]

    Returns
    -------
    costs : AlternativeCosts
        Arrays (A, B).

    Notes
    -----
    A quote is one figure: the unit in it is taken at the contractor's cost times markup, what lasts at what the same
    site's self-installation pays for it, the rest is the fitting; none is less than 0.
    """
    items = [way.line_items for way in installations]
    first = np.stack([each.amount_usd.sum(axis=1) for each in items])
    equipment, fitting, lasting = (
        np.stack([_sum(each, categories, lasts=lasts) for each in items])
        for categories, lasts in ((UNITS, False), (FITTING, False), (UNITS | FITTING | {"permit"}, True))
    )
    _add_goods_tax(structure, values, equipment)
    if structure.has_quote:
        each_usd = values["hired.equipment_usd"] + (values["hired.heads"] - 1.0) * values["hired.extra_head_usd"]
        marked_up = each_usd * values["hired.count"] * values["costs.equipment_markup_frac"]
        quoted = first[HIRED] - _beside_usd(items[HIRED]) - _of_doubts_usd(items[HIRED])
        equipment[HIRED] = np.minimum(marked_up, quoted)
        lasting[HIRED] = np.minimum(lasting[SELF], quoted - equipment[HIRED])
        fitting[HIRED] = quoted - equipment[HIRED] - lasting[HIRED]
    hour = np.asarray(values["work.hour_value_usd_per_h"])
    own_upkeep = np.stack([way.upkeep_own_h_per_yr * hour for way in installations])
    return AlternativeCosts(
        first_usd=first,
        equipment_usd=equipment,
        fitting_usd=fitting,
        lasting_usd=lasting,
        electricity_usd=np.stack([use.electricity_usd for use in uses]),
        fuel_usd=np.stack([use.fuel_usd for use in uses]),
        added_upkeep_usd_per_yr=own_upkeep + running_usd_per_yr,
        in_service_d=np.stack([way.schedule.in_service_d for way in installations]),
        measures=work.components,
        measures_at_zero_hour=work.components_at_zero_hour,
        own_first_usd=np.stack([first_cost_usd(each) - cash_first_cost_usd(each) for each in items]),
        own_fitting_usd=np.stack([_sum(each, OWN, lasts=False) for each in items]),
        own_upkeep_usd_per_yr=own_upkeep,
        tool_resale_usd=np.stack([way.tool_resale_usd for way in installations]),
        incentive_usd=np.stack([incentive_usd(each) for each in items]),
        warranties=tuple(way.warranty for way in installations),
    )


def _add_goods_tax(structure: Structure, values: Mapping[str, FloatArray], equipment_usd: FloatArray) -> None:
    """Add sales tax to what units cost: buyers pay it on the price, a contractor on the cost before markup.

    A quote has it inside.
    """
    rate = values["money.sales_tax_frac"]
    equipment_usd[WINDOW] *= 1.0 + rate
    equipment_usd[SELF] *= 1.0 + rate
    if not structure.has_quote:
        equipment_usd[HIRED] *= 1.0 + rate / values["costs.equipment_markup_frac"]


def _sum(items: LineItems, categories: frozenset[str], *, lasts: bool) -> FloatArray:
    """Return the sum of the lines of some categories that last, or that do not, shape (B,)."""
    is_counted = np.array(
        [
            category in categories and (key in LASTING) is lasts and not key.startswith(LINE_KEY)
            for key, category in zip(items.key, items.category, strict=True)
        ],
        dtype=np.float64,
    )
    total: FloatArray = items.amount_usd @ is_counted if len(is_counted) else np.zeros(len(items.amount_usd))
    return total


def _beside_usd(items: LineItems) -> FloatArray:
    """Return what is no part of a way's own price: measures on the room, and cooling until service, shape (B,)."""
    is_beside = np.array([key.startswith((LINE_KEY, INTERIM_KEY)) for key in items.key], dtype=np.float64)
    total: FloatArray = items.amount_usd @ is_beside
    return total


def _of_doubts_usd(items: LineItems) -> FloatArray:
    """Return what may go wrong in the work costs among a way's lines: no part of a price that is paid again."""
    is_doubt = np.array([key.startswith("mishap_") for key in items.key], dtype=np.float64)
    total: FloatArray = items.amount_usd @ is_doubt
    return total
