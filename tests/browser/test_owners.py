"""Served to more than one person: each browser has its own cases, and a link shows one to another."""

import re

import pytest
from playwright.sync_api import expect

from econ.store import cases
from econ.store.owner import hashed, is_token
from econ.ui.identity import COOKIE
from tests.browser.dashboard import browser, served, settled
from tests.browser.test_walk import FLOOR_AREA, _needs_chromium, walk_to_answer  # noqa: F401 - fixture

AREA = ".st-key-w_rooms_0_floor_area_m2 input"


@pytest.fixture(scope="module")
def others(_needs_chromium, tmp_path_factory):  # noqa: F811 - fixture
    store = tmp_path_factory.mktemp("store") / "cases.sqlite3"
    with served(store, to="0.0.0.0") as address, browser() as opened:
        yield store, address, opened


def person(opened, address):
    """Open the first page in a browser of its own."""
    page = opened.new_context().new_page()
    page.goto(address)
    settled(page)
    return page


def cookie_of(page):
    page.wait_for_function(f"document.cookie.includes('{COOKIE}=')", timeout=20_000)
    return next(cookie for cookie in page.context.cookies() if cookie["name"] == COOKIE)


def test_each_browser_has_its_own_cases_and_lends_one_by_a_link(others):
    store, address, opened = others
    owner = person(opened, address)
    kept = cookie_of(owner)
    assert is_token(kept["value"])
    assert kept["sameSite"] == "Strict"
    walk_to_answer(owner)
    assert re.search(r"[?&]case=[0-9a-f]{32}$", owner.url)
    assert kept["value"] not in owner.url
    [line] = cases.listed(store, hashed(kept["value"]))

    owner.goto(address)
    settled(owner)
    assert "Opened your last case" in owner.content()
    assert cookie_of(owner)["value"] == kept["value"]

    stranger = person(opened, address)
    assert cookie_of(stranger)["value"] != kept["value"]
    assert "Opened your last case" not in stranger.content()
    stranger.goto(f"{address}/cases?case={cases.opened(store, line.case_id).address}")
    settled(stranger)
    assert "is not here" in stranger.content()
    assert cases.listed(store, hashed(cookie_of(stranger)["value"])) == ()

    owner.goto(f"{address}/cases")
    settled(owner)
    owner.get_by_text("Show it to somebody else").click()
    owner.get_by_role("button", name="Link to read", exact=True).click()
    link = owner.locator("[data-testid=stCode]").inner_text(timeout=20_000).strip()
    stranger.goto(link.replace("/cases", ""))
    settled(stranger)
    expect(stranger.get_by_text("shown to you to read")).to_be_visible()

    owner.get_by_role("button", name="Take it back").click()
    settled(owner)
    stranger.reload()
    settled(stranger)
    assert "is not here" in stranger.content()
