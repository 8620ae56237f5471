"""A quote explained: what lies between kit and quote, whether that is usual, and what to ask."""

from datetime import date
from typing import Final

from econ.case.schema import Case
from econ.evaluate.quote_price import OwnItem
from econ.evaluate.wiring.installation_quote import SOLD, WAGE
from econ.installation.quote_bridge import REST, STEP_KIND, UNSORTED, Bridge, Step
from econ.kernel.alternative import SELF
from econ.kernel.constants import CENTS_PER_USD
from econ.report.numbers import MINUS, day_text, first_cost_money, money, plain_number, years
from econ.report.pictures.first_cost import CATEGORY_WORDS, category_usd
from econ.uncertainty.answer import Answer
from econ.uncertainty.quote import QuoteStudy

STEP_WORDS: Final[dict[str, str]] = {
    "equipment": "equipment difference",
    "selling": "selling and quoting",
    "insurance": "insurance and licence",
    "commissioning": "starting up, test values",
    "materials": "trade materials",
    "electrical": "licensed electrical work",
    "labour": "labour hours",
    "permit": "permit and inspection",
    "removal": "taking away the old",
    "travel": "travel",
    "overhead": "overhead and profit",
    "warranty": "warranty and call-backs",
    "tax": "sales tax",
    UNSORTED: "lines not sorted yet",
    REST: "not told apart",
}
"""Steps of the bridge, as written at their bars."""

KIND_WORDS: Final[dict[str, str]] = {
    "equipment": "equipment",
    "materials": "materials",
    "electrical": "electrical work",
    "labour": "labour",
    "permit": "permit",
    "overhead_profit": "overhead and profit",
    "warranty": "warranty",
    "tax": "tax",
    "not_said": "not said",
}
"""Kinds of line, as a person picks them."""

SCOPE_WORDS: Final[dict[str, str]] = {
    "equipment": "Equipment",
    "electrical": "Circuit",
    "permit": "Permit",
    "removal": "Taking away the old",
    "warranty": "Labour warranty",
}
SAID_WORDS: Final = {"yes": "yes", "no": "no", "not_said": "not said: ask", "not_known": "not known: ask"}

CUT_WORDS: Final = {
    WAGE: "Hours at what they cost, overhead and profit apart",
    SOLD: "Hours at the rate that is billed, overhead and profit inside it",
}

NO_KIT: Final = (
    "This job isn't one for a kit, so a quote can't fairly be held against the price of one. The choice is between "
    "quotes."
)
NO_CONTRACT: Final = "This is not a contract."

HOLLOW: Final = (
    "Filled: as the quote says. In outline: the quote does not say, and this program's own items stand in its place. "
    "A thin line reaches from their low to their high."
)

_MIDDLE: Final = (1.0 / 3.0, 2.0 / 3.0)
"""Shares of a range between which a price lies near its middle."""


def exact(cents: int) -> str:
    """Return an amount to the cent.

    Examples
    --------
    >>> exact(123456), exact(-50) == f"{MINUS}$0.50"
    ('$1,234.56', True)
    """
    text = f"${abs(cents) / CENTS_PER_USD:,.2f}"
    return f"{MINUS}{text}" if cents < 0 else text


def round_money(cents: int) -> str:
    """Return an amount in cents as a first cost is told, to the nearest ten dollars."""
    return first_cost_money(cents / CENTS_PER_USD)


def own_side_cents(answer: Answer, study: QuoteStudy) -> list[tuple[str, int]]:
    """Return what the price of the kit leaves out where one does it oneself, piece by piece in cents.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    study : QuoteStudy
        Its quote explained; resale of tools comes off at the end.
    """
    pieces = category_usd(answer.result.alternatives[SELF])
    pieces["equipment"] = pieces.get("equipment", 0.0) - study.kit_cents / CENTS_PER_USD
    words = {**CATEGORY_WORDS, "equipment": "freight", "interim": "cooling meanwhile", "incentive": "money back later"}
    told = [(words.get(key, key), round(CENTS_PER_USD * usd)) for key, usd in pieces.items()]
    told.append(("resale of tools", -round(CENTS_PER_USD * study.resale_usd)))
    return [(word, cents) for word, cents in told if cents]


def statement(answer: Answer, study: QuoteStudy, bridge: Bridge) -> str:
    """Return the sentence above the bridge: how much of the difference one would have to provide oneself.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    study : QuoteStudy
        Its quote explained.
    bridge : Bridge
        One of its bridges.
    """
    if not study.is_for_kit:
        return NO_KIT
    apart, own = bridge.whole_cents - bridge.kit_cents, sum(cents for _, cents in own_side_cents(answer, study))
    whole = " with all its parts" if bridge.missing else ""
    if apart <= 0:
        return f"The quote{whole} comes to no more than the price of the kit."
    if own >= apart:
        return (
            f"Between the kit and the quote{whole} lie {round_money(apart)}. The work, parts and risk that you would "
            f"have to provide come to more: about {round_money(own)}."
        )
    return (
        f"Of the {round_money(apart)} between the kit and the quote{whole}, about {round_money(own)} is work, parts "
        "and risk that you'd also have to provide."
    )


def missing_sentences(study: QuoteStudy, bridge: Bridge) -> tuple[str, ...]:
    """Return what the quote leaves out or does not mention, with our range for it, and that it is to be asked."""
    ranges = study.own.step_usd[SOLD]
    return tuple(
        f"{STEP_WORDS[step.key].capitalize()}: not in the total as far as the quote says. Our own items give "
        f"{round_money(step.cents)}, likely {first_cost_money(ranges[step.key].low)} to "
        f"{first_cost_money(ranges[step.key].high)}. Ask about this."
        for step in bridge.missing
    )


def rest_sentence(bridge: Bridge) -> str:
    """Return what the part is that neither lines nor own items tell; empty where there is none."""
    step = next((step for step in bridge.steps if step.key == REST), None)
    if step is None:
        return ""
    amount = round_money(abs(step.cents))
    if step.cents > 0:
        return f"{amount} of the quote is told apart neither by its lines nor by our own items. Ask what it holds."
    return f"Our own items come to {amount} more than the quote. Nothing is wrong with that: ask what it leaves out."


def cut_of(case: Case) -> str:
    """Return how hours are counted: as said, else with overhead told apart."""
    return SOLD if case.trade.labour_at == SOLD else WAGE


def inside_sentence(study: QuoteStudy, bridge: Bridge, cut: str) -> str:
    """Return where selling, insurance, overhead and profit stand in this cut, and how the quote's lines are shared."""
    if any(step.origin == "said" and STEP_KIND.get(step.key) == "labour" for step in bridge.steps):
        return "A line of the quote that pays for several steps is shared among them as our own items for them are."
    margin = first_cost_money(study.own.margin_usd)
    if cut == SOLD:
        return (
            "Selling, insurance, overhead and profit have no steps of their own here: the billed rate and the markup "
            f"on materials hold them, about {margin}. Adding them again would count them twice."
        )
    return (
        f"Hours and materials stand at what they cost. The {margin} that rates and markup hold beyond that is shared "
        "among selling, insurance, overhead and profit by usual shares of a price (assumption)."
    )


def verdict(study: QuoteStudy, bridge: Bridge) -> str:
    """Return where the quote lies in the range of own items for the same scope; never an accusation."""
    price, usd = study.own.price_usd, bridge.whole_cents / CENTS_PER_USD
    span = f"{first_cost_money(price.low)} to {first_cost_money(price.high)}"
    whole = "With all its parts the quote" if bridge.missing else "The quote"
    if usd > price.high:
        return (
            f"{whole} is {first_cost_money(usd - price.high)} above the {span} that our own items give for this scope. "
            "It may hold work that was not entered here. Ask which."
        )
    if usd < price.low:
        return (
            f"{whole} is {first_cost_money(price.low - usd)} below the {span} that our own items give for this scope. "
            "Ask what is left out, and get it in writing."
        )
    share = (usd - price.low) / (price.high - price.low) if price.high > price.low else 0.5
    low, high = _MIDDLE
    where = (
        "near the middle" if low <= share <= high else ("near the lower end" if share < low else "near the upper end")
    )
    return f"{whole} lies inside what this scope usually costs, {span}, {where}."


def warranty_sentences(case: Case, labour_yr: float, scope: str) -> tuple[str, ...]:
    """Return warranty and call-back in words.

    Parameters
    ----------
    case : Case
        The case.
    labour_yr : float
        Years of labour warranty that are counted. [year]
    scope : str
        Whether the quote says it has one.
    """
    said = case.quote.labour_warranty_yr
    told = "as the quote says" if said is not None and not said.is_unknown else "as is usual; ask"
    labour = "The quote gives no labour warranty." if scope == "no" else f"Labour warranty: {years(labour_yr)}, {told}."
    parts = case.offer.parts_warranty_yr
    of_parts = f"Parts warranty: {years(parts.likely)}." if parts is not None and not parts.is_unknown else ""
    comes = f"If it fails: {case.offer.returns}" if case.offer.returns else "Who comes back if it fails: not said; ask."
    return tuple(sentence for sentence in (labour, of_parts, comes) if sentence)


def date_sentences(case: Case, today: date, this_year: int) -> tuple[str, ...]:
    """Return the dates of the quote; one whose time is over says so first.

    Parameters
    ----------
    case : Case
        The case.
    today : date
        Day of reading.
    this_year : int
        Dates of other years carry their year.
    """
    told = []
    if case.offer.valid_until:
        last = date.fromisoformat(case.offer.valid_until)
        over = " That day is past: ask for a new one." if last < today else ""
        told.append(f"Valid until {day_text(last, this_year)}.{over}")
    if case.quote.date:
        told.append(f"Dated {day_text(date.fromisoformat(case.quote.date), this_year)}.")
    if case.offer.start:
        told.append(f"Start offered: {day_text(date.fromisoformat(case.offer.start), this_year)}.")
    elif case.quote.wait_d is not None and not case.quote.wait_d.is_unknown:
        told.append(f"Start {plain_number(case.quote.wait_d.likely)} days after you say yes.")
    return tuple(told)


def expired_sentence(case: Case, today: date, this_year: int) -> str:
    """Return that the quote's time is over; empty where it is not, or where nobody told it."""
    if not case.offer.valid_until or date.fromisoformat(case.offer.valid_until) >= today:
        return ""
    last = day_text(date.fromisoformat(case.offer.valid_until), this_year)
    return f"The quote was valid until {last}. Ask for a new one before you count on its price."


def between_sentence(case: Case) -> str:
    """Return the offer between the two ways; empty where nobody told it."""
    price = case.offer.between_usd
    if price is None or price.is_unknown:
        return ""
    usd = exact(round(CENTS_PER_USD * price.likely))
    return f"Offer between the two: you buy and hang the kit, they connect and start it for {usd}."


def opened(step: Step) -> dict[str, list[str]]:
    """Return the line items beneath a bar as a table whose last row is the bar."""
    labels = [part.label or "What neither lines nor our own items tell" for part in step.parts]
    amounts = [exact(part.cents) for part in step.parts]
    return {"Line item": [*labels, "In all"], "Amount": [*amounts, exact(step.cents)]}


def own_item_sentences(study: QuoteStudy, step: str, cut: str) -> tuple[str, ...]:
    """Return this program's own items for a step: what each comes to, low to high, how much of it, and its source."""
    return tuple(
        f"{item.label}: {money(item.usd.likely)}, {money(item.usd.low)} to {money(item.usd.high)}{_how_much(item)}. "
        f"Source: {item.source}."
        for item in study.own.items[cut]
        if item.step == step
    )


def _how_much(item: OwnItem) -> str:
    return "" if item.unit in ("USD", "each") else f", for {plain_number(item.quantity, 1)} {item.unit}"
