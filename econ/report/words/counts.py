"""How much of an answer is the reader's own, in words."""

from econ.report.numbers import plural


def answers_text(n_yours: int, n_usual: int, n_not_known: int) -> str:
    """Return how much of an answer is the reader's own.

    Examples
    --------
    >>> answers_text(9, 30, 3), answers_text(1, 30, 0)
    ('made from 9 answers, 30 usual, 3 not known', 'made from 1 answer, 30 usual, 0 not known')
    """
    return f"made from {n_yours} {plural('answer', n_yours)}, {n_usual} usual, {n_not_known} not known"


def strip_text(n_yours: int, n_usual: int, n_not_known: int) -> str:
    """Return the same for the strip at the top of every page.

    Examples
    --------
    >>> strip_text(1, 32, 4)
    '1 of your answers, 32 usual, 4 not known'
    """
    return f"{n_yours} of your answers, {n_usual} usual, {n_not_known} not known"
