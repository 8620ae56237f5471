"""What to find out before spending: at most three cards, each with whom to ask and what it may change."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.numbers import lifetime_money, listed
from econ.report.style import NAMES
from econ.report.words.standing import lifetime_usd
from econ.uncertainty.answer import Answer
from econ.uncertainty.find_first import LEAST_USD, Worth
from econ.uncertainty.information import perfect_information_usd

MOST_CARDS: Final = 3


@dataclass(frozen=True, slots=True)
class Guide:
    """How to find something out.

    Attributes
    ----------
    what : str
        What is not known, as a heading.
    how : str
        Whom to ask or what to do.
    minutes : int
        About how long it takes (assumption). [minute]
    """

    what: str
    how: str
    minutes: int


@dataclass(frozen=True, slots=True)
class Card:
    """One thing to find out: how, and what it could change."""

    guide: Guide
    change: str


_TRADE: Final = Guide("What a contractor asks", "Ask two contractors for a written total and what it includes.", 30)
_CIRCUIT: Final = Guide("What the circuit costs", "Phone an electrician and send a photo of the open panel door.", 15)
_KIT: Final = Guide("The price of the kit", "Ask two sellers for a total with freight and tax, in writing.", 15)
_BILL: Final = Guide("The price of the next kWh or therm", "Read it off your last bill; not the average.", 5)
_GLASS: Final = Guide("How much glass there is", "Measure the panes on each side with a tape.", 10)
_SIZE: Final = Guide("How big the room is", "Measure length, width and height with a tape.", 10)
_DRAUGHT: Final = Guide("How draughty it is", "On a windy day feel along sashes, sockets and the floor edge.", 10)
_WALLS: Final = Guide("What the walls are", "Look into an outlet box or a hole for pipes; ask who built it.", 15)

GUIDES: Final[dict[str, Guide]] = {
    "kit.price_usd": _KIT,
    "window.price_usd": Guide("The price of window units", "Look at two shops for the size named here.", 10),
    "quote.total_usd": _TRADE,
    "hired.equipment_usd": _TRADE,
    "costs.contractor": _TRADE,
    "costs.equipment_markup": _TRADE,
    "costs.materials_markup": _TRADE,
    "costs.circuit": _CIRCUIT,
    "costs.electrician": _CIRCUIT,
    "costs.final_connection": _CIRCUIT,
    "costs.outlet": _CIRCUIT,
    "costs.panel": _CIRCUIT,
    "prices.electricity_usd": _BILL,
    "prices.gas": _BILL,
    "prices.propane": _BILL,
    "prices.oil": _BILL,
    "prices.wood": _BILL,
    "tariff.other_use": Guide("What the rest of the home uses", "Look at a bill of a mild month.", 5),
    "tariff.": Guide("How your electricity is priced", "Read seasons, hours and steps off the back of your bill.", 10),
    "money.discount_rate": Guide("What your money earns elsewhere", "Look up the rate of your savings or loan.", 5),
    "money.inflation": Guide("How prices rise", "Nobody knows; look at what a central bank aims at.", 5),
    "later.no_service": Guide(
        "Whether anyone would mend your kit", "Phone three contractors: do you service what you did not sell?", 20
    ),
    "finance.": Guide("What the offer really costs", "Ask for the price in cash and for the contract in writing.", 15),
    "later.kept": Guide("What a buyer pays for it", "Ask an estate agent who sells homes like yours.", 15),
    "letting.": Guide("How your letting is taxed", "Ask a tax adviser; take the last return along.", 30),
    "warranty.": Guide("What a warranty pays", "Read the maker's warranty: who must put it in and start it?", 15),
    "work.hour_value": Guide("What an hour of yours is worth", "Think of what you would do instead.", 5),
    "site.panel_distance": Guide("How far the panel is", "Pace it out along the way the wire would go.", 5),
    "site.line_run": Guide("How long the line must be", "Measure between the two units along the wall.", 10),
    "kit.seer2": Guide("The ratings of the kit", "Read its label or data sheet.", 5),
    "kit.hspf2": Guide("The ratings of the kit", "Read its label or data sheet.", 5),
    "window.ceer": Guide("The rating of the window unit", "Read its label.", 5),
    "window_": _GLASS,
    "floor_area": _SIZE,
    "ceiling_height": _SIZE,
    "length_m": _SIZE,
    "infiltration": _DRAUGHT,
    "wall_u": _WALLS,
    "roof_u": Guide("What insulates the roof", "Look into the attic and measure the depth of what lies there.", 15),
}
"""By the beginning of an input's path, or of its name within a room. What nobody can look up, such as how long a unit
will live, has no guide and no card."""

_BY_REASON: Final[dict[str, Guide]] = {
    "standing_unknown": Guide("Whether it is allowed", "Phone the permit office: may an owner do this here?", 15),
    "short_of_need": Guide("Whether a larger size is to be had", "Try the next size under Equipment, or shade.", 10),
    "late": Guide("The first free day", "Phone two contractors and an electrician, and ask when they can come.", 20),
    "over_cash": Guide("How much cash there is", "Look again at what you can spend now, or how it could be paid.", 10),
}


_FITTING: Final = Guide("Whether a unit can go in", "Measure the clear opening, and read the unit's own sheet.", 10)


def cards(answer: Answer) -> tuple[Card, ...]:
    """Return what to find out first, at most three cards.

    Parameters
    ----------
    answer : Answer
        An answer with draws.

    Returns
    -------
    cards : tuple of Card
        What shuts a way that would cost less than the one named, then the inputs that could turn the order of cost.
    """
    found: dict[str, Card] = {}
    for card in (*_shut(answer), *_turning(answer)):
        found.setdefault(card.guide.what, card)
    return tuple(found.values())[:MOST_CARDS]


def first_look_text(answer: Answer) -> str:
    """Return that the answer is a first look, and what could still turn it; empty once all of that is answered.

    Parameters
    ----------
    answer : Answer
        An answer with draws.
    """
    guides = {worth.path: guide_for(worth.path) for worth in answer.worth}
    open_still = {
        guide.what: None for path, guide in guides.items() if guide and answer.sheet.entry(path).state != "yours"
    }
    if not open_still:
        return ""
    told = listed([f"{what[0].lower()}{what[1:]}" for what in list(open_still)[:MOST_CARDS]])
    return f"First look. Not answered yet, and it could turn this: {told}."


def none_text(answer: Answer) -> str:
    """Return what to say where there is nothing to find out."""
    if answer.drawn is None:
        return ""
    return "Nothing that you could reasonably find out would change the choice: it held over the ranges of all inputs."


def all_text(answer: Answer) -> str:
    """Return what knowing every figure beforehand would be worth; empty where that is next to nothing."""
    takes_part = np.array(answer.verdict.eligible)
    if answer.drawn is None or takes_part.sum() < 2:
        return ""
    worth = float(perfect_information_usd(answer.drawn.measures.lcc_usd[takes_part]))
    if worth < LEAST_USD:
        return ""
    return (
        f"Knowing every figure beforehand would save {lifetime_money(worth)} on average: no more than that is lost by "
        "deciding now."
    )


def _shut(answer: Answer) -> Iterator[Card]:
    winner = answer.verdict.winner
    for name, codes in zip(ALTERNATIVES, answer.verdict.reasons, strict=True):
        if winner is None or name in (winner, Alternative.KEEP_AS_IS) or not codes or "not_allowed" in codes:
            continue
        gain = lifetime_usd(answer.result, winner) - lifetime_usd(answer.result, name)
        if gain > 0.0 and codes[0] in _BY_REASON:
            change = f"If it turns out well, “{NAMES[name]}” comes in: {lifetime_money(gain)} less over its life."
            fits = name == Alternative.WINDOW_UNITS and codes[0] == "standing_unknown"
            yield Card(_FITTING if fits else _BY_REASON[codes[0]], change)


def _turning(answer: Answer) -> Iterator[Card]:
    for worth in answer.worth:
        guide = guide_for(worth.path)
        if guide is not None:
            worth_text = f"Knowing it before you decide is worth {lifetime_money(worth.usd)} on average"
            yield Card(guide, f"{worth_text}{_turn(answer, worth)}.")


def _turn(answer: Answer, worth: Worth) -> str:
    """Return what an input at one of its ends would change, as the end of a sentence."""
    ends = (("low", worth.at_low), ("high", worth.at_high))
    turns = [
        f"“{NAMES[way]}” costs least if it comes out {end}" for end, way in ends if way is not answer.verdict.winner
    ]
    return f": {listed(turns)}" if turns else ""


def guide_for(path: str) -> Guide | None:
    """Return how an input can be found out; None where nobody can look it up.

    Examples
    --------
    >>> guide_for("rooms[0].window_south_m2").what, guide_for("kit.life_yr")
    ('How much glass there is', None)
    """
    name = path.partition("].")[2] or path
    return next((guide for start, guide in GUIDES.items() if name.startswith(start)), None)
