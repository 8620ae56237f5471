"""The server is killed while changes are being saved: every case opens, and holds the last change said to be saved."""

import random

import pytest

from econ.case.toml import read_case, write_case
from econ.store import cases
from econ.store.connection import ready
from tests.browser.dashboard import browser, started
from tests.browser.test_walk import _needs_chromium  # noqa: F401 - fixture
from tests.demo import demo_case

AREA = ".st-key-w_rooms_0_floor_area_m2 input"
ROUNDS, LONG_ROUNDS = 10, 50
EDITS = 6
"""Changes typed before the server dies at the latest."""

SAID = "() => Number(document.querySelector('.kept[data-version]')?.dataset.version ?? 0)"


def typed_until_killed(page, server, rng):
    """Type floor areas one after another and kill the server somewhere among them; give the last version said saved."""
    killed_after = rng.randrange(1, EDITS)
    for number in range(EDITS):
        page.locator(AREA).fill(f"{rng.randrange(200, 900)}")
        page.locator(AREA).press("Enter")
        if number == killed_after:
            page.wait_for_timeout(rng.uniform(0.0, 400.0))
            server.kill()
            server.wait(timeout=10)
            break
        page.wait_for_timeout(rng.uniform(50.0, 400.0))
    return page.evaluate(SAID)


def killed_in_turn(store, rounds):
    """Kill one server after another over the same case; check after each what the store holds."""
    made = cases.create(store, "Lower level", write_case(demo_case("lower_level_cold")))
    rng = random.Random(20_261_125)
    with browser() as opened:
        for _ in range(rounds):
            server, address = started(store)
            try:
                page = opened.new_page()
                page.goto(f"{address}/room?case={made.address}")
                page.wait_for_selector(AREA, timeout=60_000)
                said = typed_until_killed(page, server, rng)
            finally:
                server.kill()
            page.close()
            checked(store, made.case_id, said)
    assert len(cases.revisions(store, made.case_id)) > rounds


def checked(store, case_id, said):
    """Assert that the store is sound, that the version said saved is there, and that every version is a whole case."""
    assert ready(store) == ""
    versions = cases.revisions(store, case_id)
    assert versions[said - 1].number == said
    assert cases.opened(store, case_id).head >= said
    for version in versions:
        assert read_case(version.text).rooms


@pytest.mark.usefixtures("_needs_chromium")
def test_no_change_said_to_be_saved_is_lost_when_the_server_is_killed(tmp_path):
    killed_in_turn(tmp_path / "cases.sqlite3", ROUNDS)


@pytest.mark.long
@pytest.mark.usefixtures("_needs_chromium")
def test_no_change_said_to_be_saved_is_lost_in_many_kills(tmp_path):
    killed_in_turn(tmp_path / "cases.sqlite3", LONG_ROUNDS)
