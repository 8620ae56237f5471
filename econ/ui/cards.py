"""The four ways as HTML: in the strip of every page, and as cards on the answer page; each figure opens in place."""

from collections.abc import Mapping
from dataclasses import dataclass
from html import escape
from typing import Final
from urllib.parse import urlencode

from econ.evaluate.figures import CHANCE
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.style import MARKS, NAMES, Theme, colour

LABELS: Final = {
    "cash_first_cost_usd": "Cash now",
    "own_hours_h": "Your hours",
    "in_service_d": "First cool day",
    "annualised_cost_usd_per_yr": "All-in, a year",
    CHANCE: "Cheapest",
}
"""Figures on a card in order, and what they are called there."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to go, as words and figures ready to show.

    Attributes
    ----------
    name : Alternative
        Which one.
    standing, mark : str
        Whether it is open, in words and as one sign.
    cash, a_year, hours, cool_day, chance : str
        Cash now, all-in dollars a year, own hours, first cool day, chance of being cheapest.
    cool_range : str
        Between which days that first cool day lies in eight tries of ten; empty where it does not move.
    lacks : str
        What it does not do.
    out : str
        Which tests before cost it fails; empty where it passes all.
    is_out : bool
        Whether it fails one of the tests that come before cost.
    is_pick : bool
        Whether the verdict names it.
    opened : mapping of str to str
        What each figure of `LABELS` opens to: how it is worked out, and how far it may be off.
    """

    name: Alternative
    standing: str
    mark: str
    cash: str
    a_year: str
    hours: str
    cool_day: str
    cool_range: str
    chance: str
    lacks: str
    out: str
    is_out: bool
    is_pick: bool
    opened: Mapping[str, str]


def strip_html(ways: tuple[Way, ...], theme: Theme, query: Mapping[str, str]) -> str:
    """Return the line that stays at the top of each page; the query names the open case in links."""
    return f'<div class="strip" role="list">{"".join(_strip_way(way, theme, query) for way in ways)}</div>'


def cards_html(ways: tuple[Way, ...], theme: Theme, query: Mapping[str, str]) -> str:
    """Return the four cards of the answer page, same order always; the query names the open case in links."""
    return f'<div class="cards">{"".join(_card(way, theme, query) for way in ways)}</div>'


def _opening(way: Way, key: str, value: str, query: Mapping[str, str], place: str) -> str:
    """Return a figure that opens where it stands, with a link to all that is behind it."""
    head = f"{NAMES[way.name]}, {LABELS[key].lower()}: {value}"
    further = "" if key == CHANCE else f' <a href="{_address(way, key, query)}" target="_self">All that moves it</a>'
    return (
        f'<details class="opens" name="{place}"><summary>{escape(value)}</summary>'
        f"<div><p><b>{escape(head)}</b></p><p>{escape(way.opened[key])}</p>{further}</div></details>"
    )


def _address(way: Way, key: str, query: Mapping[str, str]) -> str:
    """Return the address of the Figures page with a figure open."""
    return escape(f"figures?{urlencode({**query, 'open': key, 'way': way.name.value})}")


FAILS: Final = "✗"
"""Mark of a way that is open but fails a test: the job, the date or the cash."""

KEY: Final = f"✓+ with a trade, {FAILS} falls short: see Answer"
"""What the marks mean, for narrow screens where their words do not fit."""


def glyph(name: Alternative, theme: Theme) -> str:
    """Return the second mark of an alternative, in its colour."""
    return f'<span aria-hidden="true" style="color:{colour(name, theme)}">{MARKS[name].glyph}</span>'


def _strip_way(way: Way, theme: Theme, query: Mapping[str, str]) -> str:
    out = " is_out" if way.is_out else ""
    cash = _opening(way, "cash_first_cost_usd", way.cash, query, "strip")
    a_year = _opening(way, "annualised_cost_usd_per_yr", way.a_year, query, "strip")
    return (
        f'<div class="way{out}" role="listitem" style="--way:{colour(way.name, theme)}">'
        f'<div class="name">{glyph(way.name, theme)}<span>{escape(NAMES[way.name])}</span></div>'
        f'<div class="figures">{cash} now · {a_year} a year</div>'
        f'<div class="word">{_cool(way)} · {_standing(way)}</div></div>'
    )


def _standing(way: Way) -> str:
    """Return the mark and words of whether a way is open; one that fails a test says which instead."""
    words = escape(way.out or way.standing)
    mark = FAILS if way.out else way.mark
    return f'<span class="mark" role="img" aria-label="{words}">{mark}</span> <span class="in_words">{words}</span>'


def _cool(way: Way) -> str:
    return "as now" if way.name is ALTERNATIVES[0] else f"cool {escape(way.cool_day)}"


def _card(way: Way, theme: Theme, query: Mapping[str, str]) -> str:
    pick = " is_pick" if way.is_pick else ""
    values = (way.cash, way.hours, way.cool_day, way.a_year, way.chance)
    beside = f" ({escape(way.cool_range)})" if way.cool_range else ""
    listed = "".join(
        f"<dt>{label}</dt><dd>{_opening(way, key, value, query, 'cards')}{beside if key == 'in_service_d' else ''}</dd>"
        for (key, label), value in zip(LABELS.items(), values, strict=True)
    )
    out = f"; {escape(way.out)}" if way.out and way.out.removeprefix("it is ") != way.standing.lower() else ""
    lacks = f'<p class="lacks">{escape(way.lacks)}</p>' if way.lacks else ""
    return (
        f'<section class="card{pick}" style="--way:{colour(way.name, theme)}">'
        f"<h3>{glyph(way.name, theme)}<span>{escape(NAMES[way.name])}</span></h3>"
        f'<p class="tag">{escape(way.standing)}{out}</p><dl>{listed}</dl>{lacks}</section>'
    )
