"""Two pages for a contractor's client: bridge, scope, warranty, dates; then ranges, both ways, what else it takes."""

from datetime import date
from typing import Final

from econ.evaluate.quote_price import OwnPrice
from econ.evaluate.wiring.installation_quote import WAGE
from econ.kernel.alternative import HIRED, SELF
from econ.kernel.caution import Severity
from econ.report.document.block import Blanks, Block, Grid, Heading, PageEnd, Picture, Points, Sentence, Setting, Tone
from econ.report.document.content.basis import Basis, short
from econ.report.document.drawing.quote_bridge import quote_bridge
from econ.report.numbers import day_text, first_cost_money, hours
from econ.report.pictures.bridge import bars
from econ.report.style import NAMES
from econ.report.words import gaps, quote, quote_lines, quotes
from econ.report.words.otherwise import closed_sentence, otherwise_sentences
from econ.uncertainty.quote import QuoteStudy, option, priced, quote_study
from econ.uncertainty.quotes import Compared, compared

MOST_QUOTES: Final = 4
MOST_ASKS: Final = 5
MOST_STOPS: Final = 2
MOST_NAME: Final = 16
PAIRS: Final = 3
MOST_OWN: Final = 240
"""Letters of a sentence that holds words of the user, so that two pages stay two."""

WHOLE_SET: Final = "equipment, with the markup on it"
NO_QUOTE: Final = "There is no quote yet: hiring stands at this program's own items."


def client_pages(basis: Basis) -> list[Block]:
    """Return the two pages for the client of a contractor.

    Parameters
    ----------
    basis : Basis
        What it is written from; it holds nothing private.
    """
    study = quote_study(basis.answer, priced(basis.answer, basis.tables))
    return [*_front(basis, study), PageEnd(), *_back(basis, study)]


def _front(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return page one: who it is from and for, the bridge, what the quote holds, warranty and dates."""
    head = basis.answer.case.letterhead
    lines = (
        ("Contractor, licence no.", short(", ".join(filter(None, (head.business, head.licence))), 80)),
        ("Prepared for", short(head.prepared_for or "", 80)),
        *_offer(basis, study),
    )
    return [
        Heading(basis.name, 1),
        Sentence(quote.NO_CONTRACT),
        Sentence(_typed_by(basis), Tone.SMALL),
        Blanks(lines),
        *_bridge(basis, study),
        *_scope(basis, study),
        *_warranty(basis, study),
    ]


def _typed_by(basis: Basis) -> str:
    by = basis.answer.case.offer.filled_in_by
    who = f"The quote was typed in by the {by}. " if by in ("client", "contractor") else ""
    return f"{who}{basis.made_from}"


def _offer(basis: Basis, study: QuoteStudy) -> tuple[tuple[str, str], ...]:
    if study.said is None:
        return (("Offer of, total, valid until", ""),)
    case, year = basis.answer.case, basis.look.this_year
    dated, last = (
        day_text(date.fromisoformat(day), year) if day else "________"
        for day in (case.quote.date, case.offer.valid_until)
    )
    return (("Offer of; total; valid until", f"{dated}; {quote.exact(study.said.total_cents)}; {last}"),)


def _bridge(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return the bridge with what lacks; without a quote, or where no kit will do, a sentence."""
    if study.said is None:
        price = study.own.price_usd
        span = f"{first_cost_money(price.low)} to {first_cost_money(price.high)}"
        return [Heading("What hiring comes to"), Sentence(f"{NO_QUOTE} That is {span}.")]
    cut = quote.cut_of(basis.answer.case)
    found = study.bridges[cut]
    title, said = "From the price of the kit to the quote", quote.statement(basis.answer, study, found)
    lacks = quote.missing_sentences(study, found)
    told: list[Block] = [Points(lacks)] if lacks else []
    if not study.is_for_kit:
        return [Heading("A kit and this job"), Sentence(said), *told]
    return [
        Heading(title),
        Picture(said, quote_bridge(bars(found, study.own.step_usd[cut]), title)),
        Sentence(quote.HOLLOW, Tone.SMALL),
        *told,
    ]


def _scope(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return the five ticks."""
    labels = tuple(quote.SCOPE_WORDS.values())
    if study.said is None:
        return [Heading("What the quote holds"), Blanks(tuple((label, "") for label in labels))]
    cells = tuple(quote.SAID_WORDS[option(basis.answer, f"quote.{part}")] for part in quote.SCOPE_WORDS)
    return [Heading("What the quote holds"), Grid(labels, (cells,), (1.0,) * len(labels), setting=Setting.SMALL)]


def _warranty(basis: Basis, study: QuoteStudy) -> list[Block]:
    case, answer = basis.answer.case, basis.answer
    if study.said is None:
        return []
    labour_yr = answer.sheet.entry("quote.labour_warranty_yr").likely
    told = quote.warranty_sentences(case, labour_yr, option(answer, "quote.warranty"))
    dates = quote.date_sentences(case, basis.printed, basis.look.this_year)
    between = quote.between_sentence(case)
    sentences = tuple(short(each, MOST_OWN) for each in (*told, " ".join(dates), between) if each)
    return [Heading("Warranty, dates, and if it fails"), Points(sentences)]


def _back(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return page two: line ranges, quotes and routes on equal scope, what the client would take on otherwise."""
    return [
        *_lines(study),
        *_quotes(compared(basis.answer, study.own, basis.tables)[:MOST_QUOTES], study.own),
        *_routes(basis, study),
        *_otherwise(basis, study),
    ]


def _lines(study: QuoteStudy) -> list[Block]:
    columns = quote_lines.table(study)
    rows = tuple(zip(*columns.values(), strict=True))
    if not rows:
        return _own_steps(study)
    grid = Grid(tuple(columns), rows, (0.28, 0.2, 0.28, 0.24), frozenset((1, 2)), setting=Setting.SMALL)
    asks = quote_lines.asks(study)[:MOST_ASKS]
    told: list[Block] = [Points(asks)] if asks else []
    return [
        Heading("Each kind of line, and what our own items give"),
        Sentence(quote_lines.statement(study)),
        grid,
        *told,
    ]


def _own_steps(study: QuoteStudy) -> list[Block]:
    """Return what own items give for each step, where the quote has no lines to set beside them."""
    rows = tuple(
        (
            (WHOLE_SET if key == "equipment" else quote.STEP_WORDS[key]).capitalize(),
            *(first_cost_money(usd) for usd in (span.likely, span.low, span.high)),
        )
        for key, span in study.own.step_usd[WAGE].items()
        if span.high > 0.0
    )
    titles, shares = ("For this scope", "Likely", "Low", "High"), (0.46, 0.18, 0.18, 0.18)
    said = "The equipment is whole here: the price of a kit is not taken off. Hours and materials stand at cost."
    grid = Grid(titles, rows, shares, frozenset((1, 2, 3)), setting=Setting.SMALL)
    return [Heading("What our own items give, step by step"), Sentence(said), grid]


def _quotes(found: tuple[Compared, ...], own: OwnPrice) -> list[Block]:
    if len(found) < 2:
        return []
    columns = quotes.table(found, own)
    rows = tuple(tuple(cells) for cells in zip(*columns.values(), strict=True))
    titles = ("", *(short(title, MOST_NAME) for title in tuple(columns)[1:]))
    shares = (0.28, *((0.72 / len(found),) * len(found)))
    grid = Grid(titles, rows, shares, strong=frozenset((len(rows) - 1,)), setting=Setting.SMALL)
    return [Heading("Quotes on equal scope"), Sentence(quotes.span_sentence(found)), grid]


def _routes(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return both routes side by side, each with all its parts."""
    if not study.is_for_kit:
        return []
    ways = [basis.result.alternatives[at] for at in (SELF, HIRED)]
    rows = (
        ("Cash, with all parts", *(first_cost_money(float(way.cash_first_cost_usd[0])) for way in ways)),
        ("Your hours", *(hours(float(way.own_hours_h[0])) for way in ways)),
        ("First cool day", *(basis.look.day(float(way.in_service_d[0])) for way in ways)),
        ("What it does not do", *(gaps.shortcoming(basis.result, way.name, basis.look) for way in ways)),
    )
    kept = tuple(row for row in rows if any(row[1:]))
    titles = ("", *(NAMES[way.name] for way in ways))
    return [Heading("Both ways on equal scope"), Grid(titles, kept, (0.28, 0.36, 0.36), setting=Setting.SMALL)]


def _otherwise(basis: Basis, study: QuoteStudy) -> list[Block]:
    """Return what the client would take on instead, and what the price of the kit leaves out."""
    closed = short(closed_sentence(basis.answer), MOST_OWN)
    told = [*otherwise_sentences(basis.answer, basis.look), closed, *_stops(basis)]
    if not study.is_for_kit:
        told = [quote.NO_KIT, closed]
    heads: list[Block] = [Heading("What you would take on otherwise"), Points(tuple(each for each in told if each))]
    if not study.is_for_kit:
        return heads
    pieces = quote.own_side_cents(basis.answer, study)
    sums = study.kit_cents + sum(cents for _, cents in pieces)
    titles = ("the kit", *(label for label, _ in pieces), "yourself, all in")
    cells = tuple(quote.round_money(cents) for cents in (study.kit_cents, *(cents for _, cents in pieces), sums))
    return [*heads, _pairs_grid(list(zip(titles, cells, strict=True)))]


def _stops(basis: Basis) -> tuple[str, ...]:
    """Return the gravest stops, and how many findings there are in all."""
    found = [each.message for each in basis.result.cautions if each.severity is Severity.HOLD_POINT]
    more = f"The owner's report holds all {len(basis.result.cautions)} findings." if found else ""
    return (*(f"Stop: {message}" for message in found[:MOST_STOPS]), more)


def _pairs_grid(pairs: list[tuple[str, str]]) -> Grid:
    """Return label and amount in three pairs a row, read down."""
    length = -(-len(pairs) // PAIRS)
    filled = [*pairs, *([("", "")] * (length * PAIRS - len(pairs)))]
    rows = tuple(tuple(cell for at in range(PAIRS) for cell in filled[at * length + row]) for row in range(length))
    titles = ("From the kit", "", "", "", "to doing it yourself", "")
    return Grid(titles, rows, (0.2, 0.13) * PAIRS, frozenset((1, 3, 5)), setting=Setting.SMALL)
