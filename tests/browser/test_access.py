"""Every page can be read and used by everyone: axe-core finds nothing serious or critical, by day and by night.

axe-core checks the success criteria of the W3C's Web Content Accessibility Guidelines that a program can check.
"""

import pytest
from axe_playwright_python.sync_playwright import Axe

from tests.browser.dashboard import settled
from tests.browser.pictures import PAGES, shown
from tests.browser.test_walk import _needs_chromium  # noqa: F401 - fixture

GRAVE = ("serious", "critical")
PHONE_PX = 390


@pytest.fixture(scope="module")
def place(_needs_chromium):  # noqa: F811 - fixture
    with shown("lower_level_cold") as found:
        yield found


def grave(page):
    """Return what axe-core finds serious or critical on a page: which rule, and where."""
    found = Axe().run(page).response["violations"]
    return [
        (finding["id"], [node["html"][:120] for node in finding["nodes"][:5]])
        for finding in found
        if finding["impact"] in GRAVE
    ]


@pytest.mark.parametrize("name", PAGES)
def test_nothing_grave_on_any_page_by_day_and_by_night(place, name):
    address, query, opened = place
    page = opened.new_page(viewport={"width": PHONE_PX, "height": 844}, color_scheme="light")
    page.goto(f"{address}/{name}{query}")
    settled(page)
    by_day = grave(page)
    page.emulate_media(color_scheme="dark")
    page.wait_for_function("getComputedStyle(document.querySelector('.stApp')).colorScheme === 'dark'", timeout=20_000)
    page.wait_for_timeout(500)
    settled(page)
    by_night = grave(page)
    page.close()
    assert (by_day, by_night) == ([], [])
