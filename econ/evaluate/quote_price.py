"""What a hired job comes to from this program's own items, step by step of a quote's bridge, with ranges."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation_price import Route
from econ.evaluate.wiring.installation_quote import CUTS, SOLD, Piece, TradeTerms, hired_pieces
from econ.evaluate.wiring.installation_site import Inputs
from econ.evaluate.wiring.installation_tools import tool_resale_usd
from econ.evaluate.wiring.installation_work import route_rows, site
from econ.installation.quote_bridge import STEP_KIND, Part
from econ.kernel.alternative import Alternative
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import CENTS_PER_USD
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables
from econ.tables.tasks import InstallationTables

ENDS: Final = (0.05, 0.95)
"""Shares of the draws below the low and the high of a range, as in the report."""

SAID: Final = "what you said"

_TERMS: Final[dict[str, tuple[str, str]]] = {
    "labour_usd_per_h": ("costs", "contractor_wage_usd_per_h"),
    "selling_usd": ("costs", "sales_cost_usd"),
    "insurance_frac": ("trade_terms", "insurance_frac"),
    "overhead_frac": ("costs", "overhead_share_frac"),
    "profit_frac": ("costs", "profit_share_frac"),
}
"""Fields of the section trade, and the table and row of their usual values."""


@dataclass(frozen=True, slots=True)
class OwnItem:
    """One of this program's own line items of a hired job.

    Attributes
    ----------
    step : str
        Step of the bridge.
    label, unit, source : str
        What it is, unit of its quantity, where its price comes from.
    quantity : float
        How many units, likely. [any]
    usd : Spread
        What it comes to: low, likely and high. [USD]
    """

    step: str
    label: str
    unit: str
    source: str
    quantity: float
    usd: Spread


@dataclass(frozen=True, slots=True, eq=False)
class OwnPrice:
    """The hired job from own items.

    Attributes
    ----------
    items : dict of str to tuple of OwnItem
        By cut, in the order of the bridge.
    step_usd : dict of str to dict of str to Spread
        What each step comes to, by cut. [USD]
    kind_usd : dict of str to Spread
        What the lines of each kind come to, whichever way it is cut. [USD]
    price_usd : Spread
        The whole. [USD]
    margin_usd : float
        What billed rates and the markup on materials hold beyond cost, likely. [USD]
    hours_h : float
        The contractor's own person-hours, likely. [hour]
    """

    items: Mapping[str, tuple[OwnItem, ...]]
    step_usd: Mapping[str, Mapping[str, Spread]]
    kind_usd: Mapping[str, Spread]
    price_usd: Spread
    margin_usd: float
    hours_h: float

    def parts(self, cut: str) -> dict[str, tuple[Part, ...]]:
        """Return likely amounts in whole cents, by step."""
        found: dict[str, list[Part]] = {}
        for item in self.items[cut]:
            found.setdefault(item.step, []).append(Part(item.label, cents(item.usd.likely)))
        return {key: tuple(found[key]) for key in STEP_KIND if key in found}

    def step_cents(self, cut: str, step: str) -> int:
        """Return what a step comes to, the sum of its items in hundredths of a dollar."""
        return sum(part.cents for part in self.parts(cut).get(step, ()))


def cents(usd: float) -> int:
    """Return dollars in whole cents.

    Examples
    --------
    >>> cents(12.345), cents(-0.5)
    (1234, -50)
    """
    return round(usd * CENTS_PER_USD)


def trade_spreads(case: Case, tables: Tables) -> dict[str, Spread]:
    """Return what a contractor's price must carry, by field of the section trade: as said, else the usual values.

    Parameters
    ----------
    case : Case
        Its private section is not read.
    tables : Tables
        Usual values.
    """
    found = {}
    for name, (table, key) in _TERMS.items():
        said = getattr(case.trade, name)
        is_said = isinstance(said, Amount) and not said.is_unknown
        usual = getattr(tables, table)[key].spread()
        found[name] = Spread(said.low, said.likely, said.high, SAID) if is_said else usual
    return found


def own_price(
    structure: Structure, values: Mapping[str, FloatArray], terms: FloatArray, tables: InstallationTables
) -> OwnPrice:
    """Return the hired job from own items, whatever a quote says.

    Parameters
    ----------
    structure : Structure
        A quote in it is left aside.
    values : mapping of str to ndarray, shape (B,)
        Numbers by path: likely values in row 0, draws after it.
    terms : ndarray, shape (5, B)
        What the price must carry, in the order of `trade_spreads`. [any]
    tables : InstallationTables
        Task lists and cost words.
    """
    n_row = terms.shape[1]
    route = hired_route(replace(structure, has_quote=False), values, tables, n_row)
    pieces = {cut: _ordered(hired_pieces(route, TradeTerms(*terms), cut)) for cut in CUTS}
    by_step = {cut: _by_step(found, n_row) for cut, found in pieces.items()}
    return OwnPrice(
        items={cut: tuple(_items(found, n_row)) for cut, found in pieces.items()},
        step_usd={cut: {key: _spread(usd) for key, usd in steps.items()} for cut, steps in by_step.items()},
        kind_usd={kind: _kind_spread(kind, by_step) for kind in dict.fromkeys(STEP_KIND.values())},
        price_usd=_spread(_sum(by_step[SOLD].values(), n_row)),
        margin_usd=float(
            _sum((_usd(each) for each in pieces[CUTS[0]] if each.line.key.startswith("margin_")), n_row)[0]
        ),
        hours_h=sum(float(_row(each.line.quantity, n_row)[0]) for each in pieces[SOLD] if _is_crew(each)),
    )


def hired_route(
    structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables, n_row: int
) -> Route:
    """Return the hired way on its site, ready to be priced."""
    at = site(structure, Inputs(values, n_row))
    return Route(at, route_rows(tables.tasks[Alternative.CONTRACTED_INSTALL], at), tables)


def resale_usd(structure: Structure, values: Mapping[str, FloatArray], tables: InstallationTables) -> float:
    """Return what the tools bought for own work fetch when it is done, likely row. [USD]"""
    at = site(structure, Inputs(values, 1))
    return float(tool_resale_usd(Route(at, route_rows(tables.tasks[Alternative.SELF_INSTALL], at), tables))[0])


def _ordered(pieces: Sequence[Piece]) -> list[Piece]:
    order = list(STEP_KIND)
    return sorted(pieces, key=lambda piece: order.index(piece.step))


def _is_crew(piece: Piece) -> bool:
    return piece.step in ("labour", "commissioning")


def _usd(piece: Piece) -> FloatArray:
    amount: FloatArray = np.asarray(piece.line.quantity * piece.line.unit_price_usd, dtype=np.float64)
    return amount


def _row(amount: FloatArray, n_row: int) -> FloatArray:
    return np.broadcast_to(np.asarray(amount, dtype=np.float64), (n_row,))


def _sum(amounts: Iterable[FloatArray], n_row: int) -> FloatArray:
    total: FloatArray = sum((_row(each, n_row) for each in amounts), np.zeros(n_row))
    return total


def _by_step(pieces: Sequence[Piece], n_row: int) -> dict[str, FloatArray]:
    return {
        key: _sum((_usd(piece) for piece in pieces if piece.step == key), n_row)
        for key in dict.fromkeys(piece.step for piece in pieces)
    }


def _items(pieces: Sequence[Piece], n_row: int) -> Iterable[OwnItem]:
    """Yield the items that come to anything in any draw."""
    for piece in pieces:
        amount, line = _row(_usd(piece), n_row), piece.line
        if np.any(amount != 0.0):
            quantity = float(_row(line.quantity, n_row)[0])
            yield OwnItem(piece.step, line.label, line.unit, line.source, quantity, _spread(amount))


def _spread(amount: FloatArray) -> Spread:
    """Return likely value and range of an amount: the likely one is row 0 and lies within the range."""
    low, high = (float(end) for end in np.quantile(amount, ENDS))
    likely = float(amount[0])
    return Spread(min(low, likely), likely, max(high, likely), "own items")


def _kind_spread(kind: str, by_step: Mapping[str, Mapping[str, FloatArray]]) -> Spread:
    """Return what a kind's lines come to: from the lower of the two cuts to the higher."""
    n_row = len(next(iter(by_step[SOLD].values())))
    spreads = [
        _spread(_sum((usd for key, usd in steps.items() if STEP_KIND[key] == kind), n_row))
        for steps in by_step.values()
    ]
    likely = spreads[CUTS.index(SOLD)].likely
    low, high = min(each.low for each in spreads), max(each.high for each in spreads)
    return Spread(low, likely, high, "own items")
