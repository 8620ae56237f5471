"""The visual language: read on light and dark, and without colour."""

import pytest

from econ.kernel.alternative import ALTERNATIVES
from econ.report.style import GROUNDS, MARKS, NAMES, Theme, colour, contrast, luminance

# W3C, Web Content Accessibility Guidelines 2.2: 1.4.3 (text 4.5 to 1) and 1.4.11 (graphics 3 to 1).
TEXT_CONTRAST = 4.5
GRAPHIC_CONTRAST = 3.0
PAGES = {Theme.LIGHT: ("#ffffff", GROUNDS[Theme.LIGHT].paper), Theme.DARK: ("#0e1117", GROUNDS[Theme.DARK].paper)}
EVERYWHERE = [(theme, paper) for theme, papers in PAGES.items() for paper in papers]


@pytest.mark.parametrize(("theme", "paper"), EVERYWHERE)
@pytest.mark.parametrize("name", ALTERNATIVES)
def test_an_alternatives_colour_can_be_written_in(name, theme, paper):
    assert contrast(colour(name, theme), paper) >= TEXT_CONTRAST


@pytest.mark.parametrize(("theme", "paper"), EVERYWHERE)
@pytest.mark.parametrize("role", ["ink", "soft", "heat", "cool", "damp"])
def test_words_on_the_ground_can_be_read(role, theme, paper):
    assert contrast(getattr(GROUNDS[theme], role), paper) >= TEXT_CONTRAST


@pytest.mark.parametrize(("theme", "paper"), EVERYWHERE)
def test_plain_bars_stand_out(theme, paper):
    assert contrast(GROUNDS[theme].plain, paper) >= GRAPHIC_CONTRAST


@pytest.mark.parametrize("mark", ["symbol", "dash", "pattern", "glyph", "folded_name"])
def test_every_second_mark_is_used_once(mark):
    assert len({getattr(MARKS[name], mark) for name in ALTERNATIVES}) == len(ALTERNATIVES)


def test_a_folded_name_is_the_name_on_two_lines():
    assert {name: MARKS[name].folded_name.replace("<br>", " ") for name in ALTERNATIVES} == NAMES


def test_white_is_one_and_black_is_none():
    assert (luminance("#ffffff"), luminance("#000000")) == pytest.approx((1.0, 0.0))
