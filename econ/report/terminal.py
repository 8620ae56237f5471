"""The answer as text for a terminal: the same words and figures as on screen."""

from datetime import date
from textwrap import fill
from typing import Final

from econ.case.edit import answer_counts
from econ.evaluate.bill_scale import BillFindings
from econ.evaluate.load_measures import LoadMeasures
from econ.kernel.caution import Caution
from econ.report import bills, room_first, tables
from econ.report.look import Look
from econ.report.numbers import Quantity, UnitSystem, measure
from econ.report.pictures.frame import Columns
from econ.report.style import Theme
from econ.report.words import counts as count_words
from econ.report.words import find_first, load, waiting
from econ.report.words.beneath import beneath
from econ.report.words.delivery import return_sentence
from econ.report.words.finding import figures
from econ.report.words.not_counted import NOT_COUNTED, break_even_lines
from econ.report.words.verdict import answer_text
from econ.report.words.weather import weather_sentences
from econ.uncertainty.answer import Answer

WIDTH: Final = 100
MOST_CAUTIONS: Final = 5


def look_of(answer: Answer) -> Look:
    """Return the look of a terminal: US units, dates from the decision date."""
    return Look(answer.decision_date, answer.decision_date.year, Theme.LIGHT, UnitSystem.US)


def compare_text(answer: Answer) -> str:
    """Return verdict, comparison and the first cautions as text.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    """
    counts = answer_counts(answer.case)
    made_from = count_words.answers_text(counts["yours"], counts["usual"], counts["not_known"])
    shown = answer.result.cautions[:MOST_CAUTIONS]
    left, look = len(answer.result.cautions) - len(shown), look_of(answer)
    return "\n".join(
        [
            fill(answer_text(answer), WIDTH),
            *(fill(sentence, WIDTH) for sentence in beneath(answer)),
            f"({made_from}; {answer.draws_used:,} tries, seed {answer.seed})",
            "",
            aligned(tables.comparison(answer)),
            "",
            *(fill(sentence, WIDTH) for sentence in _dates(answer)),
            "",
            *_to_find_out(answer),
            *(fill(sentence, WIDTH) for sentence in (NOT_COUNTED, *break_even_lines(answer))),
            "",
            *(
                fill(f"{each.severity.upper().replace('_', ' ')}: {' '.join(_told(each, look))}", WIDTH)
                for each in shown
            ),
            *([f"and {left} more: --json lists them all."] if left else []),
            *(fill(sentence, WIDTH) for sentence in [return_sentence(answer.result, look)] if sentence),
        ]
    )


def _told(caution: Caution, look: Look) -> list[str]:
    """Return what was found, what to do and the figures behind it."""
    return [part for part in (caution.message, caution.action, figures(caution, look)) if part]


def _to_find_out(answer: Answer) -> list[str]:
    """Return what to find out before spending, a card a paragraph, or that nothing would change the choice."""
    found = find_first.cards(answer)
    if not found:
        return [fill(text, WIDTH)] if (text := find_first.none_text(answer)) else []
    told = (f"{card.guide.what}. {card.guide.how} About {card.guide.minutes} minutes. {card.change}" for card in found)
    return ["Find this out first", *(fill(f"- {text}", WIDTH, subsequent_indent="  ") for text in told)]


def _dates(answer: Answer) -> list[str]:
    """Return the first cool day of each way that brings one, and by which calendar days are counted."""
    look = look_of(answer)
    told = [waiting.cool_day_sentence(answer.result, way, look) for way in answer.result.alternatives]
    return [*filter(None, told), waiting.calendar_text(answer)]


def bills_text(findings: BillFindings) -> str:
    """Return what bills say as text, bill by bill.

    Parameters
    ----------
    findings : BillFindings
        Fits and factors of a case with bills.
    """
    look = Look(date(2000, 1, 1), 2000, Theme.LIGHT, UnitSystem.US)
    tables_of = [["", aligned(bills.table(found, look))] for found in findings.fits]
    said = [fill(line, WIDTH, subsequent_indent="  ") for line in bills.text(findings, look)]
    return "\n".join([*said, *(line for table in tables_of for line in table)])


def loads_text(answer: Answer, measures: LoadMeasures | None = None) -> str:
    """Return the rooms' loads as text, and what measures on the room would do.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    measures : LoadMeasures, optional
        Left out, nothing is said of them.
    """
    weather = answer.result.climate
    return "\n".join(
        [
            f"{weather.station}, {weather.period}, warming included: "
            f"HDD18.3 {_degree_days(weather.hdd18_3_kd)}, CDD18.3 {_degree_days(weather.cdd18_3_kd)}",
            *weather_sentences(weather),
            aligned(tables.room_loads(answer, look_of(answer))),
            "",
            *(fill(sentence, WIDTH) for sentence in _how_found(answer)),
            *(_room_first(answer, measures) if measures else ()),
        ]
    )


def _how_found(answer: Answer) -> list[str]:
    """Return which rooms want drying first, by which method design cooling was found, and the hand check of heating."""
    rooms, look = answer.result.rooms, look_of(answer)
    places = range(len(rooms.name))
    together = load.block_sentence(rooms, look)
    return [
        *(damp for place in places if (damp := load.moisture_sentence(rooms, place))),
        *(load.design_sentence(rooms, place, look) for place in places),
        *filter(None, (together, bills.used_sentence(answer))),
        *(load.hand_sentence(rooms, place, look) for place in places),
    ]


def _room_first(answer: Answer, measures: LoadMeasures) -> tuple[str, ...]:
    """Return what could be done to the room before a size."""
    told = (*room_first.sentences(measures), room_first.basis())
    return (
        "",
        "Fix the room first",
        *(fill(sentence, WIDTH) for sentence in told),
        *(_measure_text(measures, place, answer) for place, each in enumerate(measures.measures) if each.is_offered),
    )


def _measure_text(measures: LoadMeasures, place: int, answer: Answer) -> str:
    text = f"- {measures.measures[place].label}. {room_first.effect_text(measures, place, look_of(answer))}"
    return fill(text, WIDTH, subsequent_indent="  ")


def _degree_days(count_kd: float) -> str:
    """Return degree-days in both customs, as prints and bills count them."""
    return f"{count_kd:,.0f} K·d ({measure(count_kd, Quantity.DEGREE_DAYS, UnitSystem.US)})"


def aligned(columns: Columns) -> str:
    """Return columns as aligned text.

    Parameters
    ----------
    columns : dict of str to list
        Cells by title.

    Examples
    --------
    >>> print(aligned({"": ["cash"], "Keep": ["$0"]}))
          Keep
    cash  $0
    """
    rows = [list(columns), *map(list, zip(*([str(cell) for cell in cells] for cells in columns.values()), strict=True))]
    widths = [max(len(row[at]) for row in rows) for at in range(len(columns))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows
    )
