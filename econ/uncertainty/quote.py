"""A quote beside this program's own items: the bridge from the kit to it, and what own work would take."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from econ.case.choices import option_at
from econ.case.quote_text import QuoteText, read_quote
from econ.case.sections.quote import Offer
from econ.evaluate.quote_price import OwnPrice, cents, own_price, resale_usd, trade_spreads
from econ.evaluate.sheet import point, with_columns
from econ.evaluate.wiring.installation_quote import CUTS
from econ.installation.quote import SCOPE
from econ.installation.quote_bridge import UNSORTED, Bridge, Said, bridge
from econ.kernel.alternative import SELF, Standing
from econ.kernel.arrays import FloatArray
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.draws import drawn

PRICE_DRAWS: Final = 256
"""Draws behind the ranges of own items, as in the report."""


@dataclass(frozen=True, slots=True, eq=False)
class QuoteStudy:
    """A quote explained.

    Attributes
    ----------
    own : OwnPrice
        The hired job from own items.
    kit_cents : int
        The kits that the client saw, in hundredths of a dollar.
    text : QuoteText
        The quote's lines as read.
    said : Said or None
        The quote with its lines by kind; None without a total.
    bridges : dict of str to Bridge
        By cut; empty without a total.
    resale_usd : float
        What the tools of own work fetch afterwards. [USD]
    is_for_kit : bool
        Whether the job can be one's own at all.
    """

    own: OwnPrice
    kit_cents: int
    text: QuoteText
    said: Said | None
    bridges: Mapping[str, Bridge]
    resale_usd: float
    is_for_kit: bool


def priced(answer: Answer, tables: Tables) -> OwnPrice:
    """Return the hired job of an answer from own items, with ranges.

    Parameters
    ----------
    answer : Answer
        The answer to a case; of the case only the section trade is read.
    tables : Tables
        Usual values.
    """
    sheet, spreads = answer.sheet, trade_spreads(answer.case, tables).values()
    columns = _columns((sheet.low, sheet.likely, sheet.high), answer.seed)
    sides = [np.array([getattr(each, side) for each in spreads]) for side in ("low", "likely", "high")]
    terms = _columns(sides, answer.seed + 1)
    return own_price(answer.structure, with_columns(sheet, columns), terms, installation_tables())


def _columns(sides: Sequence[FloatArray], seed: int) -> FloatArray:
    """Return likely values first, then draws, shape (n, 1 + PRICE_DRAWS)."""
    low, likely, high = sides
    return np.concatenate([likely[:, None], drawn(low, likely, high, PRICE_DRAWS, seed)], axis=1)


def quote_study(answer: Answer, own: OwnPrice) -> QuoteStudy:
    """Return the quote of a case explained.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    own : OwnPrice
        As `priced` gives it.
    """
    text = read_quote(answer.case.offer.lines or "", "offer.lines")
    kit, said = kit_cents(answer), counted(answer, text)
    return QuoteStudy(
        own=own,
        kit_cents=kit,
        text=text,
        said=said,
        bridges={cut: bridge(said, own.parts(cut), kit) for cut in CUTS} if said else {},
        resale_usd=resale_usd(answer.structure, point(answer.sheet), installation_tables()),
        is_for_kit=answer.result.alternatives[SELF].standing is not Standing.NOT_ALLOWED,
    )


def kit_cents(answer: Answer) -> int:
    """Return what the kits cost, in hundredths of a dollar."""
    price, count, heads, extra = (
        answer.sheet.entry(f"kit.{name}").likely for name in ("price_usd", "count", "heads", "extra_head_usd")
    )
    return cents(count * (price + (heads - 1.0) * extra))


def counted(answer: Answer, text: QuoteText) -> Said | None:
    """Return the quote that the comparison counts, with its lines by kind; None without a total."""
    if not answer.structure.has_quote:
        return None
    scope = {part: option(answer, f"quote.{part}") for part in SCOPE}
    total = cents(answer.sheet.entry("quote.total_usd").likely)
    return Said(total, sorted_lines(text, answer.case.offer), scope)


def option(answer: Answer, path: str) -> str:
    """Return the option a choice stands at."""
    return option_at(path, answer.sheet.entry(path).likely)


def sorted_lines(text: QuoteText, offer: Offer) -> tuple[tuple[str, str, int], ...]:
    """Return the lines that have an amount with the kind a person confirmed; "not_said" where nobody did.

    Parameters
    ----------
    text : QuoteText
        The lines.
    offer : Offer
        Its kinds, by the words of a line.
    """
    kinds = dict(offer.kinds or ())
    return tuple(
        (line.text, kinds.get(line.text, UNSORTED), line.cents) for line in text.lines if line.cents is not None
    )
