"""The plan for tools in words: what is there, what is lent, hired, bought to keep, or bought and sold again."""

from collections.abc import Sequence
from math import isfinite

from econ.evaluate.wiring.installation_tools import ToolPlan
from econ.report.numbers import money


def tool_sentences(plans: Sequence[ToolPlan]) -> tuple[str, ...]:
    """Return one sentence for each way to tools that is taken, and what they come to.

    Parameters
    ----------
    plans : sequence of ToolPlan
        Needed tools.

    Returns
    -------
    sentences : tuple of str
        Dearest ways first; nothing where no tool is needed.
    """
    if not plans:
        return ()
    groups = {
        "Hire": [f"{_name(plan)} for {_days(plan.hire_d)} ({money(plan.cost_usd)})" for plan in _by(plans, "hire")],
        "Buy and sell again": [_priced(plan) for plan in _by(plans, "buy") if plan.is_resold],
        "Buy": [_priced(plan) for plan in _by(plans, "buy") if not plan.is_resold],
        "Borrow": [_name(plan) for plan in _by(plans, "borrow")],
        "You have": [_name(plan) for plan in _by(plans, "own")],
    }
    said = [f"{way}: {'; '.join(names)}." for way, names in groups.items() if names]
    return (*said, f"Together {money(sum(plan.cost_usd for plan in plans))}, tax in and resale taken off.")


def way_words(plan: ToolPlan) -> str:
    """Return how one tool is come by and for how much, and what another way would cost.

    Parameters
    ----------
    plan : ToolPlan
        A needed tool.

    Returns
    -------
    words : str
        One or two sentences.
    """
    again = "buy it and sell it again" if plan.is_resold else "buy it"
    bought = f"To {again} would come to {money(plan.buy_usd)}." if isfinite(plan.buy_usd) else ""
    hired = f"To hire it would come to {money(plan.hire_usd)}." if isfinite(plan.hire_usd) else ""
    said = {
        "own": "You have it: nothing to pay.",
        "borrow": "Borrowed: nothing to pay.",
        "hire": f"Hire it for {_days(plan.hire_d)}: {money(plan.cost_usd)}. {bought}",
        "buy": f"{again[0].upper()}{again[1:]}: {money(plan.cost_usd)}. {hired}",
    }[plan.way]
    return said.strip()


def _by(plans: Sequence[ToolPlan], way: str) -> list[ToolPlan]:
    return [plan for plan in plans if plan.way == way]


def _name(plan: ToolPlan) -> str:
    first, *rest = plan.label.split(" ")
    plain = first if any(letter.isupper() for letter in first[1:]) else first.lower()
    return " ".join([plain, *rest])


def _priced(plan: ToolPlan) -> str:
    return f"{_name(plan)} ({money(plan.cost_usd)})"


def _days(days: float) -> str:
    return "1 day" if days == 1.0 else f"{days:g} days"
