"""Saved cases on screen: versions, two side by side, links for others, and a shelf that cannot be read or written."""

import sqlite3

import pytest

from econ.kernel.alternative import Alternative
from econ.kernel.errors import StoreError
from econ.report.style import NAMES
from econ.store import cases, sharing
from econ.store.connection import store_path
from econ.ui import shelf, state

AREA = "w_rooms_0_floor_area_m2"


def versions(screen):
    return [part for part in screen.html.split("<") if 'class="when version"' in part]


def test_versions_say_what_each_changed_and_an_earlier_one_comes_back(ready):
    ready.go("room").type(AREA, "700").type(AREA, "650").go("cases")
    assert len(versions(ready)) == 3
    assert "Floor area: 700 ft**2 → 650 ft**2." in ready.html
    ready.click("revert_2").go("room")
    assert ready.typed(AREA) == "700"
    assert len(versions(ready.go("cases"))) == 4


def test_two_cases_stand_side_by_side_with_what_differs(ready):
    ready.go("cases").click("copy_1").go("room").type(AREA, "300").go("cases")
    ready.app.selectbox(key="w_beside").select(1).run()
    assert not ready.app.exception
    assert "In the open case" in ready.html
    assert "<td>300 ft**2</td>" in ready.html.replace(' class="number"', "")
    assert f"{NAMES[Alternative.SELF_INSTALL]}: cash now" in ready.html


def lent(ready, **terms):
    ready.app.query_params["share"] = sharing.share(store_path(), 1, **terms)
    del ready.app.query_params["case"]
    return ready.reloaded()


def test_case_lent_to_read_is_shown_and_a_change_goes_into_a_copy(ready):
    guest = lent(ready)
    assert "shown to you to read" in guest.app.info[0].value
    before = cases.opened(store_path(), 1)
    guest.go("room").type(AREA, "700")
    assert cases.opened(store_path(), 1) == before
    assert "your own copy from here on" in guest.app.warning[0].value
    assert "share" not in guest.app.query_params
    assert guest.reloaded().go("room").typed(AREA) == "700"


def test_case_lent_to_read_cannot_be_undone_by_its_reader(ready):
    ready.go("room").type(AREA, "700")
    guest = lent(ready)
    assert [button.disabled for button in guest.app.button if button.label in ("Undo", "Redo")] == [True, True]


def test_case_lent_to_change_is_changed(ready):
    lent(ready, may_edit=True).go("room").type(AREA, "700")
    assert "700 ft**2" in cases.opened(store_path(), 1).text


@pytest.mark.parametrize("token", ["0" * 32, "' OR 1=1 --", "../../etc/passwd", "![x](http://example.org/x.png)"])
def test_link_to_nothing_says_so_and_repeats_nothing(ready, token):
    ready.app.query_params["share"] = token
    again = ready.reloaded()
    assert again.app.warning[0].value.startswith("Case of this link is not here")
    assert again.app.session_state["saved"] is None


@pytest.mark.parametrize("address", ["![x](http://example.org/x.png)", "<script>alert(1)</script>", "a" * 10_000])
def test_hostile_address_of_a_case_is_not_repeated(ready, address):
    ready.app.query_params["case"] = address
    assert ready.reloaded().app.warning[0].value.startswith("Case of this link is not here")


def test_name_that_is_markup_is_shown_as_letters(ready):
    name = "![x](http://example.org/x.png) <script>alert(1)</script> $1$"
    cases.create(store_path(), name, cases.opened(store_path(), 1).text)
    cases.delete(store_path(), 2)
    ready.go("cases")
    label = next(button.label for button in ready.app.button if button.key == "back_2")
    assert r"\!\[x\]\(http\://example.org/x.png\)" in label
    assert "<script>alert" not in ready.html


def test_damaged_shelf_is_set_aside_with_a_word_and_the_rest_works(ready):
    store_path().write_bytes(b"no database at all, " * 500)
    again = ready.reloaded()
    assert "kept as cases" in again.app.warning[0].value.replace("\\", "")
    assert store_path().with_name("cases.sqlite3.damaged-1").exists()
    again.go("room").type(AREA, "700")
    assert again.reloaded().go("room").typed(AREA) == "700"


def test_change_that_cannot_be_saved_stays_on_screen_and_says_so(ready, monkeypatch):
    def full(*_):
        raise StoreError("The disk is full: nothing was saved. Free some space and try again.")

    with monkeypatch.context() as patch:
        patch.setattr(shelf, "saved", full)
        ready.go("room").type(AREA, "700")
        assert "The disk is full" in ready.app.warning[0].value
        assert ready.typed(AREA) == "700"
    ready.type("w_rooms_0_ceiling_height_m", "8")
    saved = cases.opened(store_path(), 1).text
    assert "700 ft**2" in saved
    assert "8 ft" in saved


def test_shelf_of_a_newer_program_is_left_alone_and_said(ready):
    with sqlite3.connect(store_path()) as raw:
        raw.execute("PRAGMA user_version = 99")
    raw.close()
    again = ready.reloaded()
    assert "written by a newer program" in again.app.warning[0].value
    assert not again.app.exception
    again.type("w_rooms_0_floor_area_m2", "300") if again.app.text_input else again.go("room").type(AREA, "300")
    assert again.app.session_state[state.CASE].rooms[0].floor_area_m2.written == "300 ft**2"
    assert not list(store_path().parent.glob("*.damaged-*"))
