"""Each kind of line of a quote in the range that own line items give, and what to ask about it."""

from typing import Final

from econ.installation.quote import LINE_KINDS
from econ.installation.quote_bridge import UNSORTED
from econ.kernel.constants import CENTS_PER_USD
from econ.report.numbers import first_cost_money, listed
from econ.report.words.quote import KIND_WORDS, exact
from econ.uncertainty.quote import QuoteStudy

ABOVE, INSIDE, BELOW, NOT_A_LINE, NOT_RANGED = "above", "inside", "below", "no line of its own", "no range of ours"

_ASK: Final[dict[tuple[str, str], str]] = {
    ("equipment", ABOVE): "Ask for size and class: a larger set, or one for deep cold, costs more.",
    ("equipment", BELOW): "Ask for size and class, and how long parts are covered.",
    ("materials", ABOVE): "Ask what they are: a long run, a stand or a cover explains much.",
    ("materials", BELOW): "Ask whether pad, cover and drain are in it.",
    ("electrical", ABOVE): "Ask for the distance, and what is done at the panel.",
    ("electrical", BELOW): "Ask whether wire, switch, breaker and the service outlet are all in it.",
    ("labour", ABOVE): "Ask how many people and hours it stands for. Some rates hold overhead and profit.",
    ("labour", BELOW): "Ask whether starting up and written test values are in it.",
    ("permit", ABOVE): "Ask which permits and visits it covers.",
    ("permit", BELOW): "Ask whether both permits and the inspections are in it.",
    ("overhead_profit", ABOVE): "Some quotes put this into the hourly rate instead. Compare the totals.",
    ("overhead_profit", BELOW): "The rest of it is likely inside other lines.",
    ("warranty", ABOVE): "Ask how many years of labour it buys.",
    ("warranty", BELOW): "Ask who comes back, how soon, and for how many years.",
    ("tax", ABOVE): "Ask what it is worked out from.",
    ("tax", BELOW): "Ask what it is worked out from.",
}
_LACKS: Final = "Not a line of the quote. Ask where it is counted."
_IN_RATES: Final = "Not a line of the quote. Most quotes put it into rates and markup."


Row = tuple[str, int | None, tuple[float, float], str, str]
"""Kind, quoted cents, range of own items, where it lies, and what to ask."""


def rows(study: QuoteStudy) -> list[Row]:
    """Return kind, quoted cents, range of own items, where it lies and what to ask, for each kind that matters.

    Parameters
    ----------
    study : QuoteStudy
        A quote explained; without lines there are no rows.
    """
    said = study.said
    if said is None or not said.lines:
        return []
    found: list[Row] = []
    for kind in LINE_KINDS:
        quoted = sum(cents for _, of, cents in said.lines if of == kind) if kind in said.kinds else None
        span = study.own.kind_usd.get(kind)
        if kind == UNSORTED:
            if quoted is not None:
                found.append((kind, quoted, (0.0, 0.0), NOT_RANGED, "Say above what it is for."))
            continue
        low, high = (span.low, span.high) if span else (0.0, 0.0)
        place = where(quoted, low, high)
        if quoted is not None or high > 0.0:
            found.append((kind, quoted, (low, high), place, ask(kind, place)))
    return found


def where(cents: int | None, low_usd: float, high_usd: float) -> str:
    """Return where an amount lies against a range."""
    if cents is None:
        return NOT_A_LINE
    if high_usd <= 0.0:
        return NOT_RANGED
    usd = cents / CENTS_PER_USD
    return ABOVE if usd > high_usd else (BELOW if usd < low_usd else INSIDE)


def ask(kind: str, place: str) -> str:
    """Return what to ask about a kind of line; empty where nothing needs asking."""
    if place == NOT_A_LINE:
        return _IN_RATES if kind == "overhead_profit" else _LACKS
    return _ASK.get((kind, place), "")


def statement(study: QuoteStudy) -> str:
    """Return how many of the quote's kinds lie inside the range; empty where it has no lines."""
    told = [place for _, quoted, _, place, _ in rows(study) if quoted is not None and place != NOT_RANGED]
    if not told:
        return ""
    inside = sum(place == INSIDE for place in told)
    if inside == len(told):
        return "Every kind of line lies inside the range that our own items give."
    return (
        f"{inside} of {len(told)} kinds of line lie inside the range that our own items give. "
        "One outside is not wrong. It is worth a question."
    )


def table(study: QuoteStudy) -> dict[str, list[str]]:
    """Return the kinds as a table."""
    found = rows(study)
    return {
        "Kind of line": [_kind_text(study, kind) for kind, *_ in found],
        "The quote": [exact(cents) if cents is not None else place for _, cents, _, place, _ in found],
        "Our own items": [_span(span) for _, _, span, _, _ in found],
        "Where it lies": ["" if cents is None else place for _, cents, _, place, _ in found],
    }


def _kind_text(study: QuoteStudy, kind: str) -> str:
    """Return a kind in words, with how many lines it has where it has several."""
    count = sum(of == kind for _, of, _ in study.said.lines) if study.said else 0
    return f"{KIND_WORDS[kind].capitalize()} ({count} lines)" if count > 1 else KIND_WORDS[kind].capitalize()


def asks(study: QuoteStudy) -> tuple[str, ...]:
    """Return what to ask about each kind of line that lies outside, and about those that the quote does not name."""
    found = rows(study)
    outside = [
        f"{KIND_WORDS[kind].capitalize()}, {place}: {note}"
        for kind, *_, place, note in found
        if note and place != NOT_A_LINE
    ]
    lacking = [KIND_WORDS[kind] for kind, *_, place, _ in found if place == NOT_A_LINE and kind != "overhead_profit"]
    if lacking:
        outside.append(f"No line of its own: {listed(lacking)}. Ask where that is counted.")
    return tuple(outside)


def _span(span: tuple[float, float]) -> str:
    low, high = span
    return f"{first_cost_money(low)} to {first_cost_money(high)}" if high > 0.0 else ""
