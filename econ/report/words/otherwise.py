"""What the client of a contractor would take on instead: hours, tools, permit, risk, weight."""

from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import HIRED, SELF, Standing
from econ.report.look import Look
from econ.report.numbers import Quantity, first_cost_money, hours
from econ.uncertainty.answer import Answer


def otherwise_sentences(answer: Answer, look: Look) -> tuple[str, ...]:
    """Return what doing it oneself would take.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    look : Look
        Units of the reader.
    """
    own, hired = answer.result.alternatives[SELF], answer.result.alternatives[HIRED]
    own_h, hired_h = hours(float(own.own_hours_h[0])), hours(float(hired.own_hours_h[0]))
    tools, permit, allowance = (first_cost_money(_category_usd(own, key)) for key in ("tools", "permit", "allowance"))
    weight = look.measure(answer.sheet.entry("kit.outdoor_kg").likely, Quantity.WEIGHT)
    return (
        f"Doing it yourself would take {own_h} of your time, against {hired_h} when hired.",
        f"Tools come to {tools} and permits to {permit}. For what may go wrong {allowance} is set aside.",
        f"The outdoor unit weighs about {weight}. You would answer for the work yourself.",
    )


def closed_sentence(answer: Answer) -> str:
    """Return why one may not do it at all, or what must be minded; empty where nothing is said."""
    own = answer.result.alternatives[SELF]
    return " ".join(own.reasons) if own.standing is not Standing.OPEN else ""


def _category_usd(way: AlternativeResult, category: str) -> float:
    items = way.line_items
    found = (float(usd) for usd, of in zip(items.amount_usd[0], items.category, strict=True) if of == category)
    return sum(found)
