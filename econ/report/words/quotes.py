"""Several quotes side by side on equal scope and equal service."""

from collections.abc import Sequence
from typing import Final

from econ.evaluate.quote_price import OwnPrice
from econ.evaluate.wiring.installation_quote import SOLD
from econ.report.numbers import first_cost_money, listed
from econ.report.words.quote import SAID_WORDS, SCOPE_WORDS, exact, round_money
from econ.uncertainty.quotes import SIZE, WARRANTY_YEARS, Compared, names

ADDED_WORDS: Final[dict[str, str]] = {
    "equipment": "the equipment",
    "electrical": "the circuit",
    "permit": "the permit",
    "removal": "taking away the old",
    SIZE: "the same size and class",
    WARRANTY_YEARS: "the same years of labour warranty",
}
"""What is added to a quote so that all do the same job."""


def statement(quotes: Sequence[Compared]) -> str:
    """Return which quote is lowest as given and on equal scope; empty where there are not two.

    Parameters
    ----------
    quotes : sequence of Compared
        As `econ.uncertainty.quotes.compared` gives them.
    """
    if len(quotes) < 2:
        return ""
    low, high = (choose(range(len(quotes)), key=lambda at: quotes[at].quoted.said.total_cents) for choose in (min, max))
    apart = quotes[high].quoted.said.total_cents - quotes[low].quoted.said.total_cents
    if not quotes[low].added:
        name = _name(quotes, low)
        return f"{name} is lowest, {round_money(apart)} below the highest, and lacks nothing that another has."
    added = sum(cents for _, cents in quotes[low].added)
    what = listed([ADDED_WORDS[key] for key, _ in quotes[low].added])
    lowest = f"{_name(quotes, low)}, the lowest, needs {round_money(added)} more for {what}."
    opening = f"The quotes differ by {round_money(apart)}. {lowest}"
    best = min(range(len(quotes)), key=lambda at: quotes[at].equal_cents)
    spread = max(each.equal_cents for each in quotes) - quotes[best].equal_cents
    rest = f" On equal scope {_name(quotes, best)} is lowest and {round_money(spread)} lie between them."
    return f"{opening}{rest}"


def table(quotes: Sequence[Compared], own: OwnPrice) -> dict[str, list[str]]:
    """Return the quotes as a table: what each says, what is added, and what it comes to.

    Parameters
    ----------
    quotes : sequence of Compared
        A part that is missing shows what is counted for it, never nothing.
    own : OwnPrice
        The hired job from own items, for the range of what is counted.
    """
    keys = [key for key in ADDED_WORDS if key not in SCOPE_WORDS]
    titles = [*SCOPE_WORDS.values(), *(f"To {ADDED_WORDS[key].removeprefix('the ')}" for key in keys)]
    columns: dict[str, list[str]] = {"": ["Total as quoted", *titles, "On equal scope"]}
    for name, each in zip(names(quotes), quotes, strict=True):
        added = dict(each.added)
        scope = [_cell(each, part, added, own) for part in SCOPE_WORDS]
        service = [f"+ {exact(added[key])}" if key in added else "the same" for key in keys]
        columns[name] = [
            exact(each.quoted.said.total_cents), *scope, *service, exact(each.equal_cents)
        ]  # fmt: skip
    return columns


def _cell(each: Compared, part: str, added: dict[str, int], own: OwnPrice) -> str:
    word = SAID_WORDS[each.quoted.said.scope[part]]
    if part not in added:
        return word
    span = own.step_usd[SOLD][part]
    return f"{word}; + {exact(added[part])} ({first_cost_money(span.low)} to {first_cost_money(span.high)})"


def _name(quotes: Sequence[Compared], at: int) -> str:
    return f"“{names(quotes)[at]}”"


def span_sentence(quotes: Sequence[Compared]) -> str:
    """Return from what to what the quotes reach on equal scope; empty where there are not two."""
    if len(quotes) < 2:
        return ""
    low, high = (choose(each.equal_cents for each in quotes) / 100.0 for choose in (min, max))
    return f"On equal scope: {first_cost_money(low)} to {first_cost_money(high)}."
