"""Where a line of cost takes its price from, in words: an input by label and page, or the own source of the table."""

from typing import Final

from econ.case.form import field_at
from econ.kernel.errors import UnknownChoiceError
from econ.report.labels import PREFIXES
from econ.report.numbers import listed

CASE: Final = "case: "
"""How the source of a line begins that takes its price from an input."""

_PAGES: Final = {
    **dict.fromkeys(("use", "rooms", "measures"), "Room"),
    **dict.fromkeys(("place", "now", "prices", "tariff", "bills", "money", "finance", "later"), "Place and prices"),
    **dict.fromkeys(("window", "kit", "hired"), "Equipment"),
    **dict.fromkeys(("site", "work", "panel"), "Work"),
    "quote": "Quote",
}
"""The page that asks for a section."""


def origin_text(source: str) -> str:
    """Return where a price comes from: inputs of the case by their labels, anything else as it stands.

    Examples
    --------
    >>> origin_text("case: kit.price_usd")
    'Kit: price of the kit (Equipment)'
    >>> origin_text("assumption")
    'assumption'
    """
    if not source.startswith(CASE):
        return source
    named, _, rest = source.removeprefix(CASE).partition(";")
    paths = [path.strip() for path in named.split(",")]
    page = _PAGES.get(paths[0].partition(".")[0], "Figures")
    told = f"{listed([_label(path) for path in paths])} ({page})"
    return f"{told};{rest}" if rest else told


def _label(path: str) -> str:
    """Return what an input is called, its section before it where several have one like it."""
    try:
        label = field_at(path).label
    except UnknownChoiceError:
        return path
    prefix = PREFIXES.get(path.partition(".")[0])
    return f"{prefix}: {label[:1].lower()}{label[1:]}" if prefix else label
