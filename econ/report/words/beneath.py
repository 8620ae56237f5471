"""What stands beneath the verdict: what own hours pay, the most cash to expect, and how far sums lean."""

from econ.kernel.alternative import ALTERNATIVES, KEEP, SELF
from econ.report.words import money
from econ.uncertainty.answer import Answer


def beneath(answer: Answer) -> tuple[str, ...]:
    """Return the sentences beneath the verdict; none before any tries were run.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    """
    winner = answer.verdict.winner
    if winner is None or answer.drawn is None:
        return ()
    own = money.own_time_text(answer.result) if answer.verdict.eligible[SELF] else ""
    cash = "" if winner is ALTERNATIVES[KEEP] else _cash_text(answer, ALTERNATIVES.index(winner))
    if own and winner is not ALTERNATIVES[SELF]:
        own, cash = cash, f"If you put it in yourself, {own[0].lower()}{own[1:]}"
    return tuple(sentence for sentence in (own, cash) if sentence)


def _cash_text(answer: Answer, way: int) -> str:
    """Return the most cash to expect of a way, and how far its likely sum leans."""
    if answer.drawn is None:
        return ""
    likely, tries = float(answer.result.alternatives[way].cash_first_cost_usd[0]), answer.drawn.cash_first_cost_usd[way]
    return " ".join(text for text in (money.most_cash_text(tries), money.leaning_text(likely, tries)) if text)
