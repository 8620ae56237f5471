"""Every figure behind an answer as a table in words: its name, its range in the units on screen, its source."""

from typing import Final

from econ.case.choices import CHOICES, option_at, table_path
from econ.case.form import field_at
from econ.case.section import FIGURE
from econ.kernel.errors import UnknownChoiceError
from econ.report.pictures.frame import Columns
from econ.report.tables import WHOSE
from econ.ui import cached, entry
from econ.ui.entry import Shown
from econ.ui.fields import shown_as
from econ.ui.option_words import option_words
from econ.uncertainty.answer import Answer

ALL: Final = "All topics"
_TOPICS: Final[dict[str, str]] = {
    "place": "Place and weather",
    "use": "What the room must do",
    "rooms": "Rooms",
    "now": "What is there now",
    "prices": "Energy prices",
    "tariff": "Electricity tariff",
    "bills": "Bills",
    "money": "Money",
    "window": "Window units",
    "kit": "Kit",
    "hired": "Hired unit",
    "quote": "Quote",
    "site": "Site",
    "panel": "Electrical panel",
    "work": "Who does what",
    "measures": "Fix the room first",
    "mishaps": "What can go wrong",
    "warranty": "Warranty",
    "rules": "Rules of this program",
}
_COST_TOPICS: Final[dict[str, str]] = {
    "contractor": "Costs: contractor",
    "electrician": "Costs: electrician",
    "installation_tasks": "Hours of each task",
    "load_measures": "Fix the room first",
    "materials": "Costs: materials",
    "materials_window": "Costs: materials",
    "permits": "Costs: permits",
    "tools": "Costs: tools",
    "waits": "Waits",
}
_OTHER_COSTS: Final = "Costs: other"
_US_UNITS: Final = {
    "m": "ft",
    "m**2": "ft**2",
    "degC": "degF",
    "K": "delta_degF",
    "kg": "lb",
    "USD/m": "USD/ft",
    "1/m": "1/ft",
    "m/s": "mile/hour",
}
"""Units of figures that no form asks for, on a US screen; others stand as their table has them."""

_UNIT_WORDS: Final = {"dimensionless": "", "mile/hour": "mph", "USD/ft": "$ per ft", "USD/m": "$ per m", "V*A": "VA"}


def topic_of(path: str) -> str:
    """Return under which topic a figure stands."""
    section, _, name = path.partition(".")
    if section != "costs":
        return _TOPICS.get(section.partition("[")[0], section)
    return _COST_TOPICS.get(cached.tables().costs[name].text("topic"), _OTHER_COSTS)


def topics(answer: Answer) -> tuple[str, ...]:
    """Return the topics of an answer's figures, in the order in which they first come."""
    return tuple(dict.fromkeys(topic_of(path) for path in answer.sheet.path))


def shown_of(path: str, unit: str, *, is_si: bool) -> Shown:
    """Return in which unit a figure stands on the screen."""
    try:
        return shown_as(field_at(path))
    except UnknownChoiceError:
        plain = unit.replace("^", "**").replace("dimensionless", "")
        shown_unit = plain if is_si else _US_UNITS.get(plain, plain)
        return Shown(plain, shown_unit, is_bare=True, is_percent=False, high=FIGURE.high, low=FIGURE.low)


def figures(answer: Answer, wanted: str, topic: str, *, is_si: bool) -> Columns:
    """Return the figures of a topic whose words, path or source hold some letters.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    wanted : str
        Letters looked for; empty for all.
    topic : str
        One of `topics`, or `ALL`.
    is_si : bool
        Units of the screen.
    """
    sheet, words = answer.sheet, cached.labels(answer)
    names = [topic_of(path) for path in sheet.path]
    texts = [f"{words[path]} {path} {sheet.source[at]} {names[at]}" for at, path in enumerate(sheet.path)]
    letters = wanted.strip().casefold().split()
    kept = [
        at
        for at, text in enumerate(texts)
        if topic in (ALL, names[at]) and all(part in text.casefold() for part in letters)
    ]
    kept.sort(key=lambda at: list(dict.fromkeys(names)).index(names[at]))
    shown = [shown_of(sheet.path[at], sheet.unit[at], is_si=is_si) for at in kept]

    def values(column: str) -> list[str]:
        numbers = getattr(sheet, column)
        return [value_text(sheet.path[at], float(numbers[at]), each) for at, each in zip(kept, shown, strict=True)]

    return {
        "What": [words[sheet.path[at]] for at in kept],
        "Likely": values("likely"),
        "Low": values("low"),
        "High": values("high"),
        "Unit": [unit_word(each) for each in shown],
        "Whose": [WHOSE[sheet.state[at]] for at in kept],
        "Topic": [names[at] for at in kept],
        "Source": [sheet.source[at] for at in kept],
        "In the case file": [sheet.path[at] for at in kept],
    }


def value_text(path: str, value: float, shown: Shown) -> str:
    """Return a figure as text: a choice by its option in words, a number in the unit on screen."""
    if table_path(path) in CHOICES:
        return option_words(table_path(path), option_at(path, value))
    return entry.plain_text(value, shown)


def unit_word(shown: Shown) -> str:
    """Return the unit on screen, as it is said."""
    return _UNIT_WORDS.get(shown.shown_unit, shown.word)
