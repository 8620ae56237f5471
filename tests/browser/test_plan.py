"""A stop signed in a real browser, on a phone: it opens, stays open after a reload, and can be taken back."""

import re

import pytest
from playwright.sync_api import expect

from tests.browser.dashboard import settled
from tests.browser.pictures import shown
from tests.browser.test_walk import _needs_chromium  # noqa: F401 - fixture

PHONE_PX = 390
MOST_PX = 6_000
"""A plan of 24 steps and nine stops, folded."""


@pytest.fixture(scope="module")
def tab(_needs_chromium):  # noqa: F811 - fixture
    with shown("lower_level_cold") as (address, query, opened):
        page = opened.new_page(viewport={"width": PHONE_PX, "height": 844})
        page.goto(f"{address}/plan{query}")
        settled(page)
        yield page


def ahead(page):
    return re.search(r"(\w+) stops? ahead", page.locator(".verdict").inner_text())[1]


def test_the_plan_fits_a_phone(tab):
    assert tab.evaluate("document.querySelector('[data-testid=stMain]').scrollHeight") < MOST_PX
    assert tab.evaluate("document.documentElement.scrollWidth") <= PHONE_PX


def test_a_stop_is_signed_and_stays_signed_after_a_reload(tab):
    before, verdict = ahead(tab), tab.locator(".verdict")
    tab.get_by_text("Cables, pipes, gas lines").first.click()
    tab.get_by_label("Name of who signs").first.fill("Whoever drills")
    tab.get_by_role("button", name="Record the signature").first.click()
    expect(verdict).not_to_contain_text(f"{before} stop", timeout=60_000)
    settled(tab)
    after = ahead(tab)
    tab.reload()
    settled(tab)
    assert ahead(tab) == after
    tab.get_by_text("Signatures and marks on record: 1").click()
    tab.get_by_text("Signed by Whoever drills").wait_for()
    tab.get_by_role("button", name="Take this back").click()
    expect(verdict).to_contain_text(f"{before} stop", timeout=60_000)
    tab.get_by_text("Taken back on").wait_for()
