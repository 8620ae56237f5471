"""The work page on a phone in a real browser: a tap moves the totals in view, and nothing tapped is too small."""

import re

from playwright.sync_api import expect

from tests.browser.dashboard import settled
from tests.browser.test_walk import _needs_chromium, address, tab, walk_to_answer  # noqa: F401 - fixtures

LEAST_PX = 24
"""W3C, Web Content Accessibility Guidelines 2.2, 2.5.8: targets of at least 24 by 24 CSS pixels."""

SMALL = """least => [...document.querySelectorAll(
    ['button', 'input', 'summary', 'a'].map(tag => `[data-testid=stMain] ${tag}`).join())]
  .map(part => [part, part.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && (box.width < least || box.height < least))
  .map(([part, box]) => [part.innerText || part.getAttribute('aria-label'), box.width, box.height])"""

IN_VIEW = """selector => {
  const box = document.querySelector(selector).getBoundingClientRect();
  return box.top >= 0 && box.bottom <= window.innerHeight;
}"""


def test_a_tap_on_the_board_moves_totals_that_are_in_view_and_every_target_is_large_enough(tab):  # noqa: F811 - fixture
    walk_to_answer(tab)
    tab.goto(tab.url.replace("/answer", "/work"))
    settled(tab)
    tab.locator(".st-key-task_line_set").get_by_role("radio", name="Contractor").scroll_into_view_if_needed()
    tab.locator(".st-key-task_line_set").get_by_role("radio", name="Contractor").click()
    expect(tab.locator(".totals .moved").first).to_have_text(re.compile(r"\+\$\d+"), timeout=60_000)
    settled(tab)
    assert tab.evaluate(IN_VIEW, ".totals")
    assert tab.evaluate(SMALL, LEAST_PX) == []
    assert tab.evaluate("document.querySelector('[data-testid=stMain]').scrollWidth") <= 390
