"""What a quote leaves out or does not mention, and what is counted on top of it for that."""

from typing import Final

from econ.case.choices import option_at
from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import HIRED
from econ.report.numbers import first_cost_money
from econ.uncertainty.answer import Answer

PARTS: Final = {
    "equipment": "the equipment",
    "electrical": "the circuit",
    "permit": "the permit",
    "removal": "taking away the old",
}
"""Parts of a job that are priced where a quote lacks them; a labour warranty has no price of its own."""

_BESIDE: Final = ("quote", "own_time", "incentive", "helper", "sales_tax", "measure_", "interim_")
_APART: Final = frozenset({"allowance", "own_time"})
"""Lines and categories that stand beside a quote whatever it includes: what may go wrong is in no quote."""


def added_usd(way: AlternativeResult) -> dict[str, float]:
    """Return what is counted on top of a quote for each part it lacks. [USD]"""
    items = way.line_items
    found = dict.fromkeys(PARTS, 0.0)
    for at, key in enumerate(items.key):
        if not key.startswith(_BESIDE) and items.category[at] not in _APART:
            found[_part(key, items.category[at])] += float(items.amount_usd[0, at])
    return found


def scope_lines(answer: Answer) -> tuple[str, ...]:
    """Return a sentence for each part that the quote lacks, with the amount counted on top and how to change it.

    Parameters
    ----------
    answer : Answer
        The answer to a case.

    Returns
    -------
    lines : tuple of str
        Empty where there is no quote, or it includes all.
    """
    if not answer.structure.has_quote:
        return ()
    return tuple(
        _line(answer, part, usd) for part, usd in added_usd(answer.result.alternatives[HIRED]).items() if usd > 0.0
    )


def _line(answer: Answer, part: str, usd: float) -> str:
    path = f"quote.{part}"
    is_left_out = option_at(path, answer.sheet.entry(path).likely) == "no"
    amount = first_cost_money(usd)
    if is_left_out:
        return f"The quote leaves out {PARTS[part]}: {amount} is counted on top of it, from this program's own items."
    return (
        f"The quote does not say whether it includes {PARTS[part]}: the whole of it, {amount}, is counted on top, so "
        "that nothing is missing. Ask; if it is in, answer Yes here and that amount falls away."
    )


def _part(key: str, category: str) -> str:
    if key == "hired_set":
        return "equipment"
    if category == "disposal":
        return "removal"
    return "permit" if "permit" in key else "electrical"


_ABOUT_EVEN: Final = 0.15
"""Share of the built-up price within which a quote is called usual. Assumption."""


def bridge_sentence(answer: Answer, own_items_usd: float) -> str:
    """Return what a quote comes to with all it lacks, beside the same job built up from this program's own items.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    own_items_usd : float
        The built-up price, likely values. [USD]

    Returns
    -------
    sentence : str
        Without a quote, what stands in its place.
    """
    usual = first_cost_money(own_items_usd)
    if not answer.structure.has_quote:
        return (
            f"Without a quote hiring is built up from this program's own items: {usual}. A written quote replaces it."
        )
    way = answer.result.alternatives[HIRED]
    total = float(way.cash_first_cost_usd[0])
    apart = total / own_items_usd - 1.0
    beside = "about as much as" if abs(apart) <= _ABOUT_EVEN else ("more than" if apart > 0.0 else "less than")
    return (
        f"With all it lacks, taxes and your own outlays the quote comes to {first_cost_money(total)}, {beside} the "
        f"{usual} that the job as described here is built up to from this program's own items."
    )
