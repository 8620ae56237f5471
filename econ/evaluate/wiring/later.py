"""What comes after the first cost: repairs, recovery of the old charge, and what a buyer of the house pays for."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import code
from econ.evaluate.structure import Structure
from econ.evaluate.unit_costs import AGES
from econ.evaluate.wiring.reading import amount
from econ.installation.warranty import Warranty
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.kernel.arrays import BoolArray, FloatArray
from econ.lifecycle.repair import (
    Repair,
    Repairs,
    covered_frac,
    expected_repairs,
    failure_rate_per_yr,
    mended,
    unit_age_yr,
    worth_lost_usd,
)
from econ.lifecycle.replacement import Component

Values = Mapping[str, FloatArray]

SMALL_REPAIRS: Final = ("board_fitted_usd", "fan_motor_fitted_usd", "sensor_fitted_usd", "drain_clog_usd")
"""Repairs that are equally frequent. Assumption: common practice, no source."""

SALE: Final = "later.sale_after_yr"


@dataclass(frozen=True, slots=True)
class Split:
    """Where the figures of a ductless route stand.

    Attributes
    ----------
    route : str
        Beginning of the rows of its failure rates and warranties.
    count : str
        Path of the number of sets.
    """

    route: str
    count: str


SPLITS: Final = {
    SELF: Split("kit", "kit.count"),
    HIRED: Split("trade", "hired.count"),
}


def has_old_units(values: Values) -> BoolArray:
    """Return the rows in which there are units now that can be kept or sold."""
    kinds = [code("now.cooling", kind) for kind in ("window_units", "portable", "through_wall")]
    return np.isin(values["now.cooling"], kinds)


def disposal_usd(values: Values, n_row: int) -> FloatArray:
    """Return what getting rid of one set of worn-out units costs, shape (A, B): the charge goes to a certified person.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.
    """
    drop_off = values["costs.window_drop_off_usd"]
    split = values["costs.recover_refrigerant_usd"] + values["costs.haul_away_split_usd"]
    price = np.empty((len(ALTERNATIVES), n_row))
    price[KEEP] = drop_off * values["now.units_count"] * has_old_units(values)
    price[WINDOW] = drop_off * values["window.count"]
    for way, where in SPLITS.items():
        price[way] = split * values[where.count]
    return price


def kept_frac(structure: Structure, values: Values, n_row: int) -> FloatArray:
    """Return the share of its worth that each way keeps at the end, shape (A, B).

    Parameters
    ----------
    structure : Structure
        Study period: it ends with the sale, where there is one.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Returns
    -------
    kept : ndarray, shape (A, B)
        1 unless the house is sold; then what a buyer pays for what stays in it. Window units move with their owner.
    """
    kept = np.ones((len(ALTERNATIVES), n_row))
    if is_sold(structure, values):
        kept[SELF], kept[HIRED] = values["later.kept_self_frac"], values["later.kept_hired_frac"]
    return kept


def is_sold(structure: Structure, values: Values) -> bool:
    """Return whether the house is sold when the study ends."""
    return SALE in values and float(np.ravel(values[SALE])[0]) <= structure.study_period_yr


def repairs(
    structure: Structure, values: Values, units: Component, warranties: Sequence[Warranty]
) -> tuple[Repairs, ...]:
    """Return the repairs to expect of each way, in the order of ALTERNATIVES.

    Parameters
    ----------
    structure : Structure
        Study period.
    values : mapping of str to ndarray, shape () or (B,)
        Failure rates and prices.
    units : Component
        What wears out in each way, shape (A, B).
    warranties : sequence of Warranty
        What each way's warranty pays, in the order of ALTERNATIVES.

    Returns
    -------
    repairs : tuple of Repairs
        Each of shape (B, n_year). Faults of the installation stand with the mishaps, not here. A window unit
        that fails is replaced, by the shop within its warranty; a ductless set is mended, or replaced where nobody
        services a kit bought by oneself.
    """
    ages = unit_age_yr(units, structure.study_period_yr)
    made = [_way(units, way) for way in range(len(ALTERNATIVES))]
    found = {way: _window_repairs(values, made[way], ages[way]) for way in (KEEP, WINDOW)}
    found |= {way: _split_repairs(values, made[way], ages[way], SPLITS[way], warranties[way]) for way in SPLITS}
    return tuple(found[way] for way in range(len(ALTERNATIVES)))


def _way(units: Component, way: int) -> Component:
    names = ("worth_usd", "replacement_usd", "life_yr", "remaining_yr", "in_service_yr")
    return Component(*(getattr(units, name)[way] for name in names))


def _rates(values: Values, route: str) -> list[FloatArray]:
    return [values[f"costs.{route}_failures_{age}_per_yr"] for age in AGES]


def _replaced(unit: Component, age_yr: FloatArray, covered: FloatArray) -> Repairs:
    """Return what one failure costs that means a new piece, a share of it exchanged by a warranty."""
    lost = worth_lost_usd(unit, age_yr)
    return Repairs(lost * (1.0 - covered), lost * covered)


def _window_repairs(values: Values, unit: Component, age_yr: FloatArray) -> Repairs:
    """Return the repairs of all window units of a way: its price is that of all of them, so that one rate does."""
    covered = covered_frac(age_yr, values["costs.window_parts_warranty_yr"])
    replaced = _replaced(unit, age_yr, covered)
    failures = failure_rate_per_yr(_rates(values, "window"), age_yr)
    return expected_repairs(unit, failures, replaced, replaced, np.zeros(()))


def _split_repairs(values: Values, unit: Component, age_yr: FloatArray, where: Split, warranty: Warranty) -> Repairs:
    sets = amount(values, where.count, len(age_yr))
    chance = values["later.no_service_frac"] if where.route == "kit" else np.zeros(())
    covered = np.zeros_like(age_yr)
    each = _replaced(unit, age_yr, covered)
    replaced = Repairs(each.cost_usd / sets[:, None], each.by_warranty_usd / sets[:, None])
    rate = failure_rate_per_yr(_rates(values, where.route), age_yr)
    return expected_repairs(unit, rate * sets[:, None], mended(kinds(values, warranty), age_yr), replaced, chance)


def kinds(values: Values, warranty: Warranty) -> list[Repair]:
    """Return small repairs and the compressor: call and labour beside the part.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Prices and shares of repairs.
    warranty : Warranty
        What it pays.
    """
    part, compressor = values["repairs.part_frac"], values["repairs.compressor_frac"]
    small = sum((values[f"costs.{key}"] for key in SMALL_REPAIRS), np.zeros(())) / len(SMALL_REPAIRS)
    call, large = values["costs.diagnostic_call_usd"], values["costs.compressor_fitted_usd"]
    years, longer, labour = warranty.parts_yr, warranty.compressor_yr, warranty.labour_yr
    paid = warranty.claims_paid_frac
    return [
        Repair(1.0 - compressor, part * small, (1.0 - part) * small + call, years, labour, paid),
        Repair(np.asarray(compressor), part * large, (1.0 - part) * large + call, longer, labour, paid),
    ]
