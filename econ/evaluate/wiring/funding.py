"""Borrowed money and letting: options of a case, nothing unless asked for."""

from collections.abc import Mapping
from typing import Final

import numpy as np

from econ.case.choices import code, option_at
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.reading import amount
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW, Alternative
from econ.kernel.arrays import FloatArray
from econ.lifecycle.borrowing import Offer, Terms, financing_stream, terms
from econ.lifecycle.discount import single_compound_amount_factor
from econ.lifecycle.landlord import DepreciationClass
from econ.lifecycle.letting import Owner, depreciation_nominal_usd, letting_stream, service_month
from econ.lifecycle.streams import Streams

Values = Mapping[str, FloatArray]

FINANCED: Final = {
    "nothing": (),
    "window_units": (WINDOW,),
    "self_install": (SELF,),
    "contracted_install": (HIRED,),
    "every_way": (WINDOW, SELF, HIRED),
}
"""Which ways each option of `finance.pays_for` is for."""

RATES: Final = {"loan": "finance.loan_rate_frac", "card": "finance.card_rate_frac"}
"""Where the rate of a kind of offer stands; instalments have none, they cost by being dearer."""


def option(values: Values, path: str) -> str:
    """Return the option of a choice that all rows of a case share."""
    return option_at(path, float(np.ravel(values[path])[0]))


def financed_ways(values: Values) -> tuple[int, ...]:
    """Return which ways are bought on borrowed money."""
    return FINANCED.get(option(values, "finance.pays_for"), ())


def offer(values: Values, n_row: int) -> Offer:
    """Return the terms of the case's offer, one a row."""
    kind = option(values, "finance.kind")
    none = np.zeros(n_row)
    return Offer(
        rate_frac=amount(values, RATES[kind], n_row) if kind in RATES else none,
        month_count=np.rint(amount(values, "finance.month_count", n_row)),
        fee_frac=amount(values, "finance.fee_frac", n_row),
        dearer_frac=amount(values, "finance.dearer_frac", n_row) if kind not in RATES else none,
    )


def borrowed_usd(values: Values, cash_usd: FloatArray) -> FloatArray:
    """Return what is borrowed for each way, shape (A, B).

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    cash_usd : ndarray, shape (A, B)
        Cash first cost. [USD]
    """
    borrowed = np.zeros_like(cash_usd)
    for way in financed_ways(values):
        borrowed[way] = np.maximum(cash_usd[way], 0.0) * values["finance.share_frac"]
    return borrowed


def down_payment_usd(values: Values, way: int, cash_usd: FloatArray) -> FloatArray:
    """Return the cash that one way takes at once: what is borrowed taken off, its fee put on, shape (B,).

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    way : int
        Position in ALTERNATIVES. [dimensionless]
    cash_usd : ndarray, shape (B,)
        Its cash first cost. [USD]
    """
    if way not in financed_ways(values):
        return cash_usd
    paid: FloatArray = cash_usd - np.maximum(cash_usd, 0.0) * values["finance.share_frac"] * (
        1.0 - values["finance.fee_frac"]
    )
    return paid


def financing(structure: Structure, values: Values, cash_usd: FloatArray) -> FloatArray:
    """Return what buying on borrowed money adds to each year, shape (A, B, n_year + 1).

    Parameters
    ----------
    structure : Structure
        Study period.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    cash_usd : ndarray, shape (A, B)
        Cash first cost. [USD]
    """
    n_way, n_row = cash_usd.shape
    ways = financed_ways(values)
    if not ways:
        return np.broadcast_to(np.zeros(()), (n_way, n_row, structure.study_period_yr + 1))
    borrowed, chosen = borrowed_usd(values, cash_usd), offer(values, n_row)
    flow = np.zeros((n_way, n_row, structure.study_period_yr + 1))
    for way in ways:
        flow[way] = financing_stream(borrowed[way], chosen, values["money.inflation_frac"], structure.study_period_yr)
    return flow


def financing_terms(values: Values, cash_usd: FloatArray) -> tuple[Terms | None, ...]:
    """Return what the offer comes to for each way, likely row; None where nothing is borrowed.

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    cash_usd : ndarray, shape (A, B)
        Cash first cost. [USD]
    """
    if not financed_ways(values):
        return (None,) * len(cash_usd)
    borrowed = borrowed_usd(values, cash_usd)
    chosen = offer(values, borrowed.shape[1])
    return tuple(terms(float(each), chosen) if each > 0.0 else None for each in borrowed[:, 0])


def is_let(values: Values) -> bool:
    """Return whether taxes and rent of a letting are counted."""
    return bool(np.ravel(values["letting.counted"])[0] == code("letting.counted", "yes"))


def letting(
    structure: Structure, values: Values, cash_usd: FloatArray, flows: Streams, service_d: FloatArray
) -> FloatArray:
    """Return what letting adds to each year, shape (A, B, n_year + 1). Not tax advice.

    Parameters
    ----------
    structure : Structure
        Study period.
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    cash_usd : ndarray, shape (A, B)
        Cash first cost: what may be written off. [USD]
    flows : Streams
        Energy, and upkeep, repairs and replacements in cash, own hours at nothing, shape (A, B, n_year + 1).
    service_d : ndarray, shape (A, B)
        Days to service. [day]

    Notes
    -----
    A tenant who pays the energy takes it off the owner's costs.
    """
    added = np.zeros(flows.energy_usd.shape)
    for way in range(len(ALTERNATIVES)):
        added[way] = _letting_of(structure, values, (cash_usd[way], service_d[way]), flows, way)
    return added


def _letting_of(
    structure: Structure, values: Values, start: tuple[FloatArray, FloatArray], flows: Streams, way: int
) -> FloatArray:
    n_row, n_year = len(start[0]), structure.study_period_yr
    pays = option(values, "prices.pays_bill") != "tenant"
    energy = flows.energy_usd[way]
    owner = Owner(values["letting.marginal_rate_frac"], values["money.inflation_frac"])
    running = flows.om_usd[way] + flows.repair_usd[way] + (energy if pays else 0.0)
    level = single_compound_amount_factor(
        np.asarray(values["money.inflation_frac"])[..., None], np.arange(n_year + 1, dtype=np.float64)
    )
    bought = flows.replacement_usd[way] * level
    bought[:, 0] += start[0]
    month = service_month(start[1], float(np.ravel(values["place.decision_doy"])[0]))
    is_window = way in (KEEP, WINDOW)
    kind = DepreciationClass(option(values, "letting.window_class" if is_window else "letting.split_class"))
    bonus = float(np.ravel(values["letting.bonus_frac"])[0]) if kind is DepreciationClass.APPLIANCE else 0.0
    written = depreciation_nominal_usd(bought, kind, bonus, month)
    added = letting_stream(owner, _rent_usd(values, way, n_row, n_year), running, [written])
    return added if pays else added - energy


def _rent_usd(values: Values, way: int, n_row: int, n_year: int) -> FloatArray:
    """Return the rent that a way brings over what is there now, by year, shape (B, n_year + 1)."""
    rent = np.zeros((n_row, n_year + 1))
    if ALTERNATIVES[way] is not Alternative.KEEP_AS_IS:
        path = "letting.rent_window_usd_per_month" if way == WINDOW else "letting.rent_split_usd_per_month"
        rent[:, 1:] = 12.0 * amount(values, path, n_row)[:, None]
    return rent
