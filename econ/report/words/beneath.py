"""What stands beneath the verdict: what own hours pay, and the most cash to expect."""

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
    cash = ""
    if winner is not ALTERNATIVES[KEEP]:
        cash = money.most_cash_text(answer.drawn.cash_first_cost_usd[ALTERNATIVES.index(winner)])
    return tuple(sentence for sentence in (own, cash) if sentence)
