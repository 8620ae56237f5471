"""One walk from the first page to the answer in a real browser: nothing leaves the machine, nothing goes wrong."""

import os
from urllib.parse import urlparse

import pytest
from playwright.sync_api import expect

from tests.browser.dashboard import browser, chromium, served, settled

LOCAL = {"localhost", "127.0.0.1", "::1"}
OTHER_TITLE = "before => { const title = document.querySelector('h1'); return title && title.innerText !== before; }"
FLOOR_AREA = ".st-key-f_rooms_0_floor_area_m2"
STATION = "St Cloud Regional Arpt, MN"


@pytest.fixture(scope="module")
def _needs_chromium():
    if chromium():
        return
    if os.environ.get("ECON_NEED_BROWSER") == "1":
        pytest.fail("No Chromium was found, and ECON_NEED_BROWSER=1 asks for one. Install it: apt-get install chromium")
    pytest.skip("No Chromium was found; install it (apt-get install chromium) to walk through the dashboard.")


@pytest.fixture(scope="module")
def address(_needs_chromium, tmp_path_factory):
    with served(tmp_path_factory.mktemp("store") / "cases.sqlite3") as found:
        yield found


@pytest.fixture
def tab(address):
    """Open a phone-sized tab on the first page, with every request and console error noted."""
    with browser() as opened:
        page = opened.new_page(viewport={"width": 390, "height": 844})
        page.requested, page.complained = [], []
        page.on("request", lambda request: page.requested.append(request.url))
        page.on("websocket", lambda socket: page.requested.append(socket.url))
        page.on("console", lambda line: page.complained.append(line.text) if line.type == "error" else None)
        page.on("pageerror", lambda error: page.complained.append(str(error)))
        page.goto(address)
        settled(page)
        yield page


def walk_to_answer(page):
    page.get_by_role("button", name="Lower level").first.click()
    settled(page)
    town = page.get_by_role("combobox").first
    town.click()
    town.press_sequentially("St Cloud")
    page.get_by_role("option", name=STATION).click()
    settled(page)
    page.get_by_role("button", name="See the answer").click()
    page.wait_for_selector(".cards", timeout=60_000)
    settled(page)


def test_walk_from_first_page_to_answer_stays_on_this_machine_without_an_error(tab):
    walk_to_answer(tab)
    assert tab.locator(".card").count() == 4
    assert tab.locator(".verdict").inner_text().strip()
    hosts = {urlparse(url).hostname for url in tab.requested if not url.startswith(("data:", "blob:"))}
    assert hosts <= LOCAL
    assert tab.complained == []


def test_every_page_is_reached_by_its_button_to_the_next_question(tab):
    walk_to_answer(tab)
    tab.goto(tab.url.replace("/answer", "/room"))
    settled(tab)
    titles = []
    for button in ("Next: where it is", "Next: which size", "Next: who does", "See the answer"):
        titles.append(tab.locator("h1").inner_text())
        tab.get_by_role("button", name=button).click()
        tab.wait_for_function(OTHER_TITLE, arg=titles[-1], timeout=60_000)
        settled(tab)
    assert len({*titles, tab.locator("h1").inner_text()}) == 5


def test_page_is_no_wider_than_a_phone(tab):
    walk_to_answer(tab)
    assert tab.evaluate("document.querySelector('[data-testid=stMain]').scrollWidth") <= 390


def test_edit_in_the_browser_survives_a_reload(tab):
    walk_to_answer(tab)
    tab.goto(tab.url.replace("/answer", "/room"))
    settled(tab)
    field = tab.get_by_role("textbox", name="Floor area")
    field.fill("700")
    field.press("Enter")
    expect(tab.locator(FLOOR_AREA).get_by_text("you said")).to_be_visible(timeout=60_000)
    tab.reload()
    expect(tab.get_by_role("textbox", name="Floor area")).to_have_value("700", timeout=60_000)
