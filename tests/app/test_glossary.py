"""Every trade term and every short form on a page is in the glossary, and the glossary can be opened there."""

import html
import re

import pytest

from econ.tables.words import form_pattern, glossary
from tests.app.screen import PAGES
from tests.reading import MOST_WORDS, mean_length

_TRADE = """
air change, air handler, ampacity, anchor, annual percentage rate, asbestos, balance point, base pan,
baseboard, blower door, branch circuit, breaker, call-back, casement, cladding, coefficient of performance,
commissioning, compressor, condensate, condenser, conductor, conduit, core bit, coupling, crawl space,
cut-out, damp limit, defrost, degree day, degree-day, degree-hours, design day, design temperature, dew point,
disconnect, discount rate, dry bulb, easement, emissivity, enthalpy, evacuate, evaporator, firestop, flare,
flashing, furring, ground-fault, heat pump, hold point, incentive, infiltration, internal rate of return,
inverter, isolator, joist, kWh, latent, leak check, ledger, line set, lintel, lockout, low-e, make-up,
manifold, masonry, micron, mini-split, mullion, nameplate, net present value, net savings, nitrogen, overhead,
payback, pilot hole, plenum, pre-charged, prove dead, psychrometric, quick-connect, radon, receptacle,
refrigerant, residual value, restocking, sash, savings-to-investment, schrader, sensible, silica, slab,
sleeve, soffit, stucco, stud, subpanel, superheat, tariff, therm, thermal bridge, time-of-use, tipping point,
torque, transformer, U-value, vacuum pump, vapour barrier, veneer, warranty, wet bulb
"""
TRADE = {word.strip() for word in re.split(",", _TRADE)}
"""Words of the trades, of money and of statistics that a reader need not know."""

NAMES = {
    *("US", "USD", "AM", "PM", "PDF", "MB", "STOP", "OK", "SI", "A4"),
    *("N", "NE", "E", "SE", "S", "SW", "W", "NW", "AP", "TMY", "NC", "WI", "MN", "AZ"),
    *("DIN", "EN", "FAO", "NIOSH", "NIST", "ASTM", "WAC", "WMO", "NOAA", "NREL"),
    *("R302", "R310", "A103", "M1411", "GG", "A2L"),
}
"""Capitals that are no words of the trade: countries, money, files, places, and bodies named as a source."""

STATION = re.compile(r"^.*, [A-Z]{2}$")
BREAK = re.compile(r"</(?:p|div|td|th|dt|dd|li|span|b|summary|tr)>|<br ?/?>")
SHORT_FORM = re.compile(r"(?<![\w.-])[A-Z][A-Z0-9]+(?:-[A-Z0-9]+)?(?![\w])")


def words_of(block):
    """Return every text that a page shows: labels, helps, options, sentences; weather places and data left out."""
    for part in block.children.values():
        proto = getattr(part, "proto", None)
        for name in ("body", "label", "help", "placeholder", "caption"):
            if isinstance(text := getattr(proto, name, None), str):
                yield text
        for option in getattr(proto, "options", ()):
            text = option if isinstance(option, str) else option.content
            yield "" if STATION.match(text) else text
        if hasattr(part, "children"):
            yield from words_of(part)


def plain(text):
    """Return a text without its marks, styles and drawings; where a part of a page ends, the line ends."""
    text = BREAK.sub("\n", text)
    text = re.sub(r"<style.*?</style>|src=\"[^\"]*\"", " ", text, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]+>", " ", text))


def read(screen, page):
    """Return all that a page says."""
    return "\n".join(plain(text) for text in words_of(screen.go(page).app._tree))


def unexplained(text):
    """Return the trade words and short forms of a text that no form in the glossary covers."""
    for form in sorted((form for term in glossary() for form in term.forms), key=len, reverse=True):
        text = form_pattern(form).sub(" ", text)
    lines = [line for line in text.splitlines() if not STATION.match(line.strip())]
    short = {found for line in lines for found in SHORT_FORM.findall(line)} - NAMES
    return short | {word for word in TRADE if form_pattern(word).search(" ".join(lines))}


def test_a_word_that_is_not_in_the_glossary_is_found():
    assert unexplained("Watch the superheat and the XYZ2.") == {"superheat", "XYZ2"}
    assert unexplained("Its SEER2 and the breaker.") == set()


@pytest.mark.parametrize("page", PAGES)
def test_a_page_uses_no_trade_term_that_the_glossary_leaves_out(ready, page):
    assert unexplained(read(ready, page)) == set()


@pytest.mark.parametrize("key", ["sunroom_with_quote", "top_floor_flat"])
def test_other_cases_use_no_other_terms_and_read_easily(screen, key):
    screen.click(f"ready_{key}")
    texts = {page: read(screen, page) for page in PAGES}
    assert {page: found for page, text in texts.items() if (found := unexplained(text))} == {}
    assert {page: long for page, text in texts.items() if (long := mean_length([text])) > MOST_WORDS} == {}


def test_words_are_folded_at_the_foot_of_a_page(ready):
    assert ready.go("answer").app.expander[-1].label == "What do these words mean?"


def test_a_rating_is_told_in_the_help_of_its_field_and_under_the_picture_that_names_it(ready):
    assert "cooling over a test summer per unit of electricity" in read(ready, "equipment")
    assert "U-value: heat that passes through" in read(ready, "what_if")
