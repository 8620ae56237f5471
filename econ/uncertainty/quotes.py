"""Several quotes side by side: on equal scope, with the same size and class and as many years of labour warranty."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from econ.case.choices import NOT_KNOWN
from econ.case.quantity import Amount
from econ.case.quote_text import read_quote
from econ.case.sections.quote import OtherQuote
from econ.evaluate.quote_price import OwnPrice, cents
from econ.evaluate.wiring.installation_quote import SOLD
from econ.installation.quote import SCOPE
from econ.installation.quote_bridge import Said, lacking
from econ.kernel.alternative import HIRED
from econ.kernel.constants import BTU_PER_WH
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer
from econ.uncertainty.quote import counted, option, sorted_lines

PLAN_YR: Final = 10.0
"""Years that the labour plan of the cost table covers. [year]"""

SIZE: Final = "size"
WARRANTY_YEARS: Final = "warranty_years"
"""What is made equal beside the parts of a job."""


@dataclass(frozen=True, slots=True)
class Quoted:
    """One quote as given.

    Attributes
    ----------
    name : str
        Whose it is; empty where nobody gave it a name.
    said : Said
        Total, lines and scope.
    set_key : str
        Size and class such as "12_standard"; empty where it is that of the comparison or not told.
    labour_warranty_yr : float
        Years, 0 where it has none. [year]
    """

    name: str
    said: Said
    set_key: str
    labour_warranty_yr: float


@dataclass(frozen=True, slots=True)
class Compared:
    """One quote on equal scope and equal service.

    Attributes
    ----------
    quoted : Quoted
        As given.
    added : tuple of (str, int)
        Part of the job, "size" or "warranty_years", and what is added for it in hundredths of a dollar.
    """

    quoted: Quoted
    added: tuple[tuple[str, int], ...]

    @property
    def equal_cents(self) -> int:
        """What it comes to with all that it lacks beside the others, in hundredths of a dollar."""
        return self.quoted.said.total_cents + sum(cent for _, cent in self.added)


def compared(answer: Answer, own: OwnPrice, tables: Tables) -> tuple[Compared, ...]:
    """Return the quotes that have a total, each with what it lacks beside the others; the one counted comes first.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    own : OwnPrice
        The hired job from own items.
    tables : Tables
        Usual values.
    """
    quotes = [*_counted(answer), *(_other(each, answer) for each in answer.case.quotes if _likely(each.total_usd))]
    longest_yr = max((each.labour_warranty_yr for each in quotes), default=0.0)
    plan_usd = tables.costs["labour_plan_usd"].spread().likely
    found = []
    for each in quotes:
        lacks = lacking(each.said)
        added: list[tuple[str, int]] = [(part, own.step_cents(SOLD, part)) for part in SCOPE if part in lacks]
        added.append((SIZE, cents(_set_gap_usd(each.set_key, answer, tables))))
        added.append((WARRANTY_YEARS, cents((longest_yr - each.labour_warranty_yr) / PLAN_YR * plan_usd)))
        found.append(Compared(each, tuple((what, cent) for what, cent in added if cent)))
    return tuple(found)


def _counted(answer: Answer) -> list[Quoted]:
    offer = answer.case.offer
    said = counted(answer, read_quote(offer.lines or "", "offer.lines"))
    if said is None:
        return []
    years = answer.sheet.entry("quote.labour_warranty_yr").likely
    return [Quoted(offer.name or "", said, "", _years(said.scope, years))]


def _other(quote: OtherQuote, answer: Answer) -> Quoted:
    scope = {part: getattr(quote, part) or "not_said" for part in SCOPE}
    lines = sorted_lines(read_quote(quote.lines or "", "quotes.lines"), quote)
    said = Said(cents(_likely(quote.total_usd)), lines, scope)
    given = _likely(quote.labour_warranty_yr)
    usual = answer.sheet.entry("costs.trade_labour_warranty_yr").likely
    years = _years(scope, usual if quote.labour_warranty_yr is None else given)
    return Quoted(quote.name or "", said, _set_key(quote, answer), years)


def _years(scope: Mapping[str, str], years_yr: float) -> float:
    return 0.0 if scope["warranty"] == "no" else years_yr


def _likely(amount: Amount | None) -> float:
    """Return an amount; 0 where it is left out or not known."""
    return 0.0 if amount is None or amount.is_unknown else amount.likely


def hired_set(answer: Answer) -> tuple[str, str]:
    """Return size and class of the hired set in the comparison: nominal thousand Btu an hour, and its grade."""
    size = f"{answer.result.alternatives[HIRED].capability.nominal_w * BTU_PER_WH / 1000.0:.0f}"
    grade = option(answer, "hired.grade")
    return size, option(answer, "kit.grade") if grade == "same_as_kit" else grade


def _set_key(quote: OtherQuote, answer: Answer) -> str:
    """Return size and class where the quote tells another than the comparison has."""
    size, grade = hired_set(answer)
    told = [
        given if given and given != NOT_KNOWN else held for given, held in ((quote.size, size), (quote.grade, grade))
    ]
    return "" if told == [size, grade] else "_".join(told)


def _set_gap_usd(set_key: str, answer: Answer, tables: Tables) -> float:
    """Return what the set of the comparison costs more, with markup; nothing where a size and class is not listed."""
    held = f"trade_{'_'.join(hired_set(answer))}"
    other = f"trade_{set_key}"
    if not set_key or held not in tables.ductless_sets or other not in tables.ductless_sets:
        return 0.0
    held_usd, other_usd = (tables.ductless_sets[key].spread("price_usd").likely for key in (held, other))
    count, markup = (answer.sheet.entry(path).likely for path in ("hired.count", "costs.equipment_markup_frac"))
    return count * markup * (held_usd - other_usd)


def names(quotes: Sequence[Compared]) -> tuple[str, ...]:
    """Return whose each quote is: a letter where nobody gave it a name, and before it where two share one.

    Parameters
    ----------
    quotes : sequence of Compared
        In the order shown.
    """
    given = [each.quoted.name for each in quotes]
    letters = [chr(ord("A") + place) for place in range(len(given))]
    return tuple(
        f"{letter}: {name}" if name and given.count(name) > 1 else (name or f"Quote {letter}")
        for name, letter in zip(given, letters, strict=True)
    )
