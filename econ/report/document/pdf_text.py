"""Text for the PDF: every character is written, whatever it is, and none is read as markup."""

import re
from functools import cache
from html import escape
from typing import Final

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

PLAIN_FACE: Final = "Helvetica"
BOLD_FACE: Final = "Helvetica-Bold"
OTHER_FACE: Final = "Vera"
"""Comes with the library; writes what the two above cannot, such as a true minus sign."""

_UNPRINTED: Final = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]")
_RUN: Final = re.compile(r"([^\x00-\xff]+)")


@cache
def _glyphs() -> frozenset[int]:
    """Return what the other face can write; the face is made known on the first call."""
    face = TTFont(OTHER_FACE, "Vera.ttf")
    pdfmetrics.registerFont(face)
    return frozenset(face.face.charToGlyph)


def is_plain(text: str) -> bool:
    """Return whether the plain face writes all of a text."""
    try:
        text.encode("cp1252")
    except UnicodeEncodeError:
        return False
    return not _UNPRINTED.search(text)


def code_point(letter: str) -> str:
    r"""Return what stands for a character that no face can write: its number, so that nothing is lost.

    Examples
    --------
    >>> code_point("\u4e2d")
    '[U+4E2D]'
    """
    return f"[U+{ord(letter):04X}]"


def written(text: str) -> str:
    """Return a text in characters that one of the faces can write; tabs become blanks, line ends stay."""
    if is_plain(text):
        return text.replace("\t", "    ")
    return "".join(_letter(letter) for letter in text.replace("\t", "    "))


def _letter(letter: str) -> str:
    if letter == "\n" or (is_plain(letter) and not _UNPRINTED.match(letter)):
        return letter
    return letter if ord(letter) in _glyphs() and not _UNPRINTED.match(letter) else code_point(letter)


def marked(text: str) -> str:
    """Return a text as the library's markup: its own signs escaped, other faces named, line ends kept.

    Examples
    --------
    >>> marked("<b>5 & 6</b>")
    '&lt;b&gt;5 &amp; 6&lt;/b&gt;'
    """
    return "".join(_marked(face, part) for face, part in _parts(text, PLAIN_FACE)).replace("\n", "<br/>")


def _marked(face: str, part: str) -> str:
    safe = escape(part, quote=False)
    return f'<font face="{OTHER_FACE}">{safe}</font>' if face == OTHER_FACE else safe


def _parts(text: str, face: str) -> list[tuple[str, str]]:
    """Return runs of a text with the face that writes each."""
    safe = written(text)
    if is_plain(safe):
        return [(face, safe)]
    return [(face if is_plain(part) else OTHER_FACE, part) for part in _RUN.split(safe) if part]


def runs(text: str, *, is_bold: bool = False) -> list[tuple[str, str]]:
    """Return the parts of a line that one face writes, each with that face."""
    return _parts(text.replace("\n", " "), BOLD_FACE if is_bold else PLAIN_FACE)


def width_of(text: str, size: float, *, is_bold: bool = False) -> float:
    """Return how wide a line is. [pt]"""
    return float(sum(pdfmetrics.stringWidth(part, face, size) for face, part in runs(text, is_bold=is_bold)))
