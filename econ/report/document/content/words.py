"""The last page: what the trade words of the pages before it mean."""

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass

from econ.report.document.block import Block, Grid, Heading, PageEnd, Setting
from econ.tables.words import terms_used

COLUMNS = 2
"""Terms beside each other."""


def words_blocks(blocks: Sequence[Block]) -> list[Block]:
    """Return the words of the trade that blocks use, each in one sentence.

    Parameters
    ----------
    blocks : sequence of Block
        What is printed before.
    """
    terms = terms_used("\n".join(text for block in blocks for text in texts_of(block)))
    cells = [(term.name, term.meaning) for term in terms]
    half = -(-len(cells) // COLUMNS)
    right = [*cells[half:], *[("", "")] * (COLUMNS * half - len(cells))]
    rows = tuple((*one, *other) for one, other in zip(cells[:half], right, strict=True))
    grid = Grid(("Word", "What it means") * COLUMNS, rows, (0.13, 0.37) * COLUMNS, setting=Setting.TINY)
    return [PageEnd(), Heading("Appendix: words used here"), grid] if rows else []


def texts_of(part: object) -> Iterator[str]:
    """Yield every text within a block, those of drawings with them."""
    if isinstance(part, str):
        yield part
    elif isinstance(part, (tuple, list)):
        for each in part:
            yield from texts_of(each)
    elif is_dataclass(part):
        for field in fields(part):
            yield from texts_of(getattr(part, field.name))
