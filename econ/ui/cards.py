"""The four ways as HTML: in the strip of every page, and as cards on the answer page."""

from dataclasses import dataclass
from html import escape
from typing import Final

from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.report.style import MARKS, NAMES, Theme, colour


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


def strip_html(ways: tuple[Way, ...], theme: Theme) -> str:
    """Return the line that stays at the top of each page."""
    return f'<div class="strip" role="list">{"".join(_strip_way(way, theme) for way in ways)}</div>'


def cards_html(ways: tuple[Way, ...], theme: Theme) -> str:
    """Return the four cards of the answer page, same order always."""
    return f'<div class="cards">{"".join(_card(way, theme) for way in ways)}</div>'


FAILS: Final = "✗"
"""Mark of a way that is open but fails a test: the job, the date or the cash."""

KEY: Final = f"✓+ with a trade, {FAILS} falls short: see Answer"
"""What the marks mean, for narrow screens where their words do not fit."""


def glyph(name: Alternative, theme: Theme) -> str:
    """Return the second mark of an alternative, in its colour."""
    return f'<span aria-hidden="true" style="color:{colour(name, theme)}">{MARKS[name].glyph}</span>'


def _strip_way(way: Way, theme: Theme) -> str:
    out = " is_out" if way.is_out else ""
    return (
        f'<div class="way{out}" role="listitem" style="--way:{colour(way.name, theme)}">'
        f'<div class="name">{glyph(way.name, theme)}<span>{escape(NAMES[way.name])}</span></div>'
        f'<div class="figures">{escape(way.cash)} now · {escape(way.a_year)} a year</div>'
        f'<div class="word">{_cool(way)} · {_standing(way)}</div></div>'
    )


def _standing(way: Way) -> str:
    """Return the mark and words of whether a way is open; one that fails a test says which instead."""
    words = escape(way.out or way.standing)
    mark = FAILS if way.out else way.mark
    return f'<span class="mark" role="img" aria-label="{words}">{mark}</span> <span class="in_words">{words}</span>'


def _cool(way: Way) -> str:
    return "as now" if way.name is ALTERNATIVES[0] else f"cool {escape(way.cool_day)}"


def _card(way: Way, theme: Theme) -> str:
    pick = " is_pick" if way.is_pick else ""
    rows = (
        ("Cash now", way.cash),
        ("Your hours", way.hours),
        ("First cool day", f"{way.cool_day} ({way.cool_range})" if way.cool_range else way.cool_day),
        ("All-in, a year", way.a_year),
        ("Cheapest", way.chance),
    )
    listed = "".join(f"<dt>{label}</dt><dd>{escape(value)}</dd>" for label, value in rows)
    out = f"; {escape(way.out)}" if way.out and way.out.removeprefix("it is ") != way.standing.lower() else ""
    lacks = f'<p class="lacks">{escape(way.lacks)}</p>' if way.lacks else ""
    return (
        f'<section class="card{pick}" style="--way:{colour(way.name, theme)}">'
        f"<h3>{glyph(way.name, theme)}<span>{escape(NAMES[way.name])}</span></h3>"
        f'<p class="tag">{escape(way.standing)}{out}</p><dl>{listed}</dl>{lacks}</section>'
    )
