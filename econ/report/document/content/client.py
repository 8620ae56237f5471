"""What a contractor's client reads first: the bridge, what the offer holds, warranty and dates; not a contract."""

from datetime import date
from typing import Final

from econ.kernel.alternative import HIRED, SELF, Standing
from econ.report.document.block import Blanks, Block, Grid, Heading, PageEnd, Sentence, Setting, Tone
from econ.report.document.content import first_page, said
from econ.report.document.content.basis import Basis
from econ.report.document.content.costs import bridge_blocks
from econ.report.numbers import Quantity, day_text, first_cost_money, hours, plain_number

NO_CONTRACT: Final = "This is not a contract."
TICKS: Final = (
    ("Equipment", "quote.equipment"),
    ("Circuit", "quote.electrical"),
    ("Permit", "quote.permit"),
    ("Taking away the old", "quote.removal"),
    ("Labour warranty", "quote.warranty"),
)
_ANSWERS: Final = {"yes": "yes", "no": "no", "not said": "not said: ask"}


def client_page(basis: Basis) -> list[Block]:
    """Return page one for the client of a contractor.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    """
    return [
        *first_page.head(basis, "the client of a contractor"),
        Sentence(NO_CONTRACT),
        Blanks((("Contractor, licence no.", ""), ("Prepared for", ""), *_offer(basis))),
        *first_page.verdict_blocks(basis),
        *bridge_blocks(basis),
        *_scope(basis),
        *_otherwise(basis),
        first_page.dates_block(basis),
        PageEnd(),
    ]


def _offer(basis: Basis) -> tuple[tuple[str, str], ...]:
    quote = basis.answer.case.quote
    if not basis.answer.structure.has_quote:
        return (("Offer of, total, valid until", ""),)
    dated = day_text(date.fromisoformat(quote.date), basis.look.this_year) if quote.date else "________"
    total = first_cost_money(basis.number("quote.total_usd"))
    return ((f"Offer of {dated}: {total}; valid until", ""),)


def _scope(basis: Basis) -> list[Block]:
    """Return the five ticks, and the years of warranty."""
    if not basis.answer.structure.has_quote:
        return [Heading("What the offer holds"), Blanks(tuple((label, "") for label, _ in TICKS))]
    cells = tuple(_ANSWERS.get(basis.option(path), "not known: ask") for _, path in TICKS)
    grid = Grid(tuple(label for label, _ in TICKS), (cells,), (1.0,) * len(TICKS), setting=Setting.SMALL)
    years = ""
    if said.is_said(basis, "quote.labour_warranty_yr"):
        years = f" Labour warranty: {plain_number(basis.number('quote.labour_warranty_yr'))} years."
    wait = ""
    if said.is_said(basis, "quote.wait_d"):
        wait = f" Start in {plain_number(basis.number('quote.wait_d'))} days."
    return [Heading("What the offer holds"), grid, *([Sentence((years + wait).strip())] if years or wait else [])]


def _otherwise(basis: Basis) -> list[Block]:
    """Return what the client would take on instead: hours, tools, permit, risk."""
    own, hired = basis.result.alternatives[SELF], basis.result.alternatives[HIRED]
    sums = {
        key: sum(
            float(usd)
            for usd, category in zip(own.line_items.amount_usd[0], own.line_items.category, strict=True)
            if category == key
        )
        for key in ("tools", "permit", "allowance")
    }
    weight = basis.look.measure(basis.number("kit.outdoor_kg"), Quantity.WEIGHT)
    own_h, hired_h = hours(float(own.own_hours_h[0])), hours(float(hired.own_hours_h[0]))
    tools, permit, allowance = (first_cost_money(usd) for usd in sums.values())
    text = (
        f"Doing it yourself would take {own_h} of your time, against {hired_h} when hired. Tools come to {tools} and "
        f"permits to {permit}. For what may go wrong {allowance} is set aside. "
        f"The outdoor unit weighs about {weight}. You would answer for the work yourself."
    )
    told = own.reasons if own.standing is not Standing.NOT_ALLOWED else ()
    blocks: list[Block] = [Heading("What you would take on otherwise"), Sentence(text)]
    return [*blocks, Sentence(" ".join(told), Tone.SMALL)] if told else blocks
