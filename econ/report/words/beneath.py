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
    own, cash = money.own_time_text(answer.result) if answer.verdict.eligible[SELF] else "", ""
    if winner is not ALTERNATIVES[KEEP]:
        cash = money.most_cash_text(answer.drawn.cash_first_cost_usd[ALTERNATIVES.index(winner)])
    if own and winner is not ALTERNATIVES[SELF]:
        own, cash = cash, f"If you put it in yourself, {own[0].lower()}{own[1:]}"
    return tuple(sentence for sentence in (own, cash) if sentence)
