"""The visual language: a colour, a second mark and a name for each way to go, in light and dark."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Final

from econ.kernel.alternative import Alternative

TEXT_FONT: Final = "Seravek, 'Gill Sans Nova', Ubuntu, Calibri, 'DejaVu Sans', sans-serif"
"""Reading text: fonts that are already on the reader's machine, none fetched."""

HEADING_FONT: Final = "'Iowan Old Style', 'Palatino Linotype', 'URW Palladio L', 'DejaVu Serif', serif"
"""Headings, from the same machine."""

TEXT_SIZE: Final = 13
SMALL_SIZE: Final = 12
"""Letter heights in figures, in px: readable at 390 px width without zooming."""


class Theme(StrEnum):
    """On which ground a picture is drawn."""

    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True)
class Ground:
    """Colours of a theme that belong to no alternative.

    Attributes
    ----------
    paper, ink, soft, line : str
        Page, text, second-rank text, grid.
    heat, cool, damp, plain : str
        Heating need, cooling need, moisture, and bars that belong to nothing in particular.
    """

    paper: str
    ink: str
    soft: str
    line: str
    heat: str
    cool: str
    damp: str
    plain: str


GROUNDS: Final[dict[Theme, Ground]] = {
    Theme.LIGHT: Ground("#fbf9f4", "#1f2a2e", "#586268", "#ddd8cc", "#b4472e", "#2a6a9e", "#4a5fb0", "#7d7666"),
    Theme.DARK: Ground("#14191c", "#e9e6df", "#a9b1b5", "#333b3f", "#f0876c", "#74b4e6", "#9dafff", "#a39b89"),
}
"""Paper is warm rather than white, ink blue-black rather than black."""

_COLOURS: Final[dict[Theme, dict[Alternative, str]]] = {
    Theme.LIGHT: {
        Alternative.KEEP_AS_IS: "#5f666b",
        Alternative.WINDOW_UNITS: "#96620a",
        Alternative.SELF_INSTALL: "#0f766e",
        Alternative.CONTRACTED_INSTALL: "#8b3a6b",
    },
    Theme.DARK: {
        Alternative.KEEP_AS_IS: "#a3abb0",
        Alternative.WINDOW_UNITS: "#e2a33c",
        Alternative.SELF_INSTALL: "#3fb8ab",
        Alternative.CONTRACTED_INSTALL: "#d98cba",
    },
}

NAMES: Final[dict[Alternative, str]] = {
    Alternative.KEEP_AS_IS: "Keep what you have",
    Alternative.WINDOW_UNITS: "New window units",
    Alternative.SELF_INSTALL: "Put it in yourself",
    Alternative.CONTRACTED_INSTALL: "Hire it out",
}
"""Names on screen, written at the line or the bar."""


@dataclass(frozen=True, slots=True)
class Mark:
    """What tells an alternative apart without colour.

    Attributes
    ----------
    symbol : str
        Point shape.
    dash : str
        Line style.
    pattern : str
        Filling of a bar; empty means solid.
    glyph : str
        The same shape as a letter, for text and tables.
    folded_name : str
        Name on two lines, for the narrow space beside a line's end.
    """

    symbol: str
    dash: str
    pattern: str
    glyph: str
    folded_name: str


MARKS: Final[dict[Alternative, Mark]] = {
    Alternative.KEEP_AS_IS: Mark("diamond-open", "dash", "-", "◇", "Keep what<br>you have"),
    Alternative.WINDOW_UNITS: Mark("square", "longdashdot", "/", "■", "New window<br>units"),
    Alternative.SELF_INSTALL: Mark("circle", "solid", "", "●", "Put it in<br>yourself"),
    Alternative.CONTRACTED_INSTALL: Mark("triangle-up", "dot", ".", "▲", "Hire<br>it out"),
}
"""The second mark: a grey print tells the four apart."""

PLOT_CONFIG: Final[dict[str, Any]] = {
    "displaylogo": False,
    "displayModeBar": False,
    "responsive": True,
    "scrollZoom": False,
    "doubleClick": False,
    "showTips": False,
}
"""Figures are read, not operated: a thumb that scrolls the page must not zoom a chart."""


def colour(name: Alternative, theme: Theme) -> str:
    """Return the colour of an alternative on a ground, dark enough or light enough to write in."""
    return _COLOURS[theme][name]


def faint(hex_colour: str, opacity_frac: float) -> str:
    """Return a colour seen through, as CSS writes it.

    Examples
    --------
    >>> faint("#0f766e", 0.25)
    'rgba(15,118,110,0.25)'
    """
    red, green, blue = (int(hex_colour[start : start + 2], 16) for start in (1, 3, 5))
    return f"rgba({red},{green},{blue},{opacity_frac:g})"


def luminance(hex_colour: str) -> float:
    """Return the relative luminance of a colour, from 0 for black to 1 for white.

    References
    ----------
    .. [1] W3C, Web Content Accessibility Guidelines 2.2, definition of relative luminance.
    """
    shares = [int(hex_colour[start : start + 2], 16) / 255.0 for start in (1, 3, 5)]
    red, green, blue = (s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one_hex: str, other_hex: str) -> float:
    """Return how far two colours stand apart, from 1 (same) to 21 (black on white).

    References
    ----------
    .. [1] W3C, Web Content Accessibility Guidelines 2.2, definition of contrast ratio.

    Examples
    --------
    >>> round(contrast("#000000", "#ffffff"), 1)
    21.0
    """
    darker, lighter = sorted((luminance(one_hex), luminance(other_hex)))
    return (lighter + 0.05) / (darker + 0.05)
