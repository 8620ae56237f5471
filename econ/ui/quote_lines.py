"""Under a quote: what it leaves out, and what is counted on top of it for that."""

from econ.report.words.scope import scope_lines
from econ.ui import look, now


def draw() -> None:
    """Draw a sentence for each part that the quote lacks."""
    answer = now.present().answer
    for sentence in scope_lines(answer) if answer is not None else ():
        look.said(sentence, kind="statement")
