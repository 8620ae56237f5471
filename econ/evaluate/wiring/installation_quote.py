"""What a hired job comes to, piece by piece, cut one of two ways: overhead told apart, or inside the billed rates."""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from econ.evaluate.wiring.installation_lines import built_up_lines
from econ.evaluate.wiring.installation_price import Route, contractor_task_usd, set_price_usd, spread_price
from econ.installation.first_cost import Line
from econ.installation.labour import crew_rate_usd_per_h
from econ.installation.task import CONTRACTOR_PARTY
from econ.kernel.arrays import FloatArray

WAGE: Final = "wage_and_overhead"
SOLD: Final = "sold_rate"
CUTS: Final = (WAGE, SOLD)
"""How hours are told: at what they cost with overhead and profit apart, or at the rate that is billed. Never both."""

_STARTED: Final = "commissioning"
_STEP_OF_KEY: Final = {"hired_set": "equipment", "travel_usd": "travel", "callback_reserve": "warranty"}
_STEP_OF_CATEGORY: Final = {
    "materials": "materials",
    "labour": "electrical",
    "permit": "permit",
    "disposal": "removal",
    "tax": "tax",
}
"""Lines by their key, else by their category; labour that is no contractor's is the licensed electrical work."""


@dataclass(frozen=True, slots=True, eq=False)
class TradeTerms:
    """What a contractor's price must carry.

    Attributes
    ----------
    wage_usd_per_h : ndarray, shape (B,)
        Cost of a technician's hour with all that comes on top of the wage. [USD/hour]
    selling_usd : ndarray, shape (B,)
        Selling and quoting, for each job that is won. [USD]
    insurance_frac, overhead_frac, profit_frac : ndarray, shape (B,)
        Shares of the price. [dimensionless]
    """

    wage_usd_per_h: FloatArray
    selling_usd: FloatArray
    insurance_frac: FloatArray
    overhead_frac: FloatArray
    profit_frac: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Piece:
    """A line of the hired price and the step of the bridge it belongs to."""

    step: str
    line: Line


def hired_pieces(route: Route, terms: TradeTerms, cut: str) -> list[Piece]:
    """Return the hired price in pieces.

    Parameters
    ----------
    route : Route
        Tasks and prices of the hired way.
    terms : TradeTerms
        What the price must carry.
    cut : str
        One of `CUTS`.

    Returns
    -------
    pieces : list of Piece
        The same sum for either cut.

    Notes
    -----
    With overhead apart, hours stand at the technician's cost and materials at theirs; what the billed rate and the
    markup on materials add is shared among selling, insurance and the rest of overhead and profit as these stand to
    each other in the price. The markup on the set stays with the set.
    """
    pieces = [piece for line in built_up_lines(route) for piece in _sorted(route, line)]
    if cut == SOLD:
        return pieces
    at_cost = [_at_cost(route, terms, piece) for piece in pieces]
    margin = _sum_usd(route, pieces) - _sum_usd(route, at_cost)
    return [*at_cost, *_margin_pieces(margin, terms, _sum_usd(route, pieces))]


def _sorted(route: Route, line: Line) -> list[Piece]:
    """Return a line as pieces: the set apart from its markup, starting up apart from the other hours."""
    if line.key == "contractor_labour":
        return _labour_pieces(route, contractor_task_usd(route), line.source)
    if line.key == "hired_set":
        trade = set_price_usd(route, "hired", "hired.equipment_usd")
        bare = replace(line, label="The set at the contractor's price", unit_price_usd=trade)
        markup = replace(line, label="The contractor's markup on the set", unit_price_usd=line.unit_price_usd - trade)
        return [Piece("equipment", bare), Piece("equipment", markup)]
    return [Piece(_STEP_OF_KEY.get(line.key) or _STEP_OF_CATEGORY[line.category], line)]


def _labour_pieces(route: Route, charge_usd: FloatArray, source: str) -> list[Piece]:
    """Return the contractor's hours as two lines, from what each task is charged, shape (B, T)."""
    rows = route.rows
    hours: FloatArray = np.where(rows.party == CONTRACTOR_PARTY, rows.hours_h, 0.0)
    started = rows.table.position(_STARTED)
    found = []
    for step, label, at in (
        ("labour", "Crew: hang, drill, run lines, connect", [task != started for task in range(hours.shape[1])]),
        ("commissioning", "Starting up, test values written down", [task == started for task in range(hours.shape[1])]),
    ):
        taken, usd = hours[:, at].sum(axis=1), charge_usd[:, at].sum(axis=1)
        line = Line(
            f"contractor_{step}", label, "labour", "contractor", "hour", source, taken, spread_price(usd, taken)
        )
        found.append(Piece(step, line))
    return found


def _at_cost(route: Route, terms: TradeTerms, piece: Piece) -> Piece:
    """Return a piece at what it costs the contractor, where a rate or a markup stands on it."""
    if piece.step in ("labour", "commissioning"):
        share = _cost_share_frac(route, terms)
        pieces = _labour_pieces(route, contractor_task_usd(route) * share, f"{piece.line.source}, at cost")
        return next(found for found in pieces if found.step == piece.step)
    if piece.step == "materials":
        price = piece.line.unit_price_usd / route.cost("materials_markup_frac")
        return Piece("materials", replace(piece.line, unit_price_usd=price))
    return piece


def _cost_share_frac(route: Route, terms: TradeTerms) -> FloatArray:
    """Return what a task's hours cost over what is billed for them, shape (B, T); never above what is billed.

    A mate's hour costs as much less than a technician's as it is billed for less. Assumption.
    """
    billed, mate = route.cost("contractor_billed_usd_per_h"), route.cost("contractor_helper_billed_usd_per_h")
    is_crewed = route.rows.table.crew_count > 1.0
    cost = crew_rate_usd_per_h(is_crewed, terms.wage_usd_per_h, terms.wage_usd_per_h * mate / billed)
    share: FloatArray = np.minimum(1.0, cost / crew_rate_usd_per_h(is_crewed, billed, mate))
    return share


def _margin_pieces(margin_usd: FloatArray, terms: TradeTerms, price_usd: FloatArray) -> list[Piece]:
    """Return the margin shared among what it must pay, as these stand to each other in the price."""
    selling, insurance = terms.selling_usd, terms.insurance_frac * price_usd
    all_usd = (terms.overhead_frac + terms.profit_frac) * price_usd
    rest = np.maximum(0.0, all_usd - selling - insurance)
    whole = np.maximum(selling + insurance + rest, 1e-9)
    source = "what billed rates and markup hold beyond cost, shared by assumed shares of a price"
    return [
        Piece(step, Line(f"margin_{step}", label, "labour", "contractor", "USD", source, margin_usd, part / whole))
        for step, label, part in (
            ("selling", "Selling and quoting", selling),
            ("insurance", "Insurance and licence", insurance),
            ("overhead", "Other overhead, and profit", rest),
        )
    ]


def _sum_usd(route: Route, pieces: list[Piece]) -> FloatArray:
    total: FloatArray = sum((piece.line.quantity * piece.line.unit_price_usd for piece in pieces), route.zeros())
    return total
