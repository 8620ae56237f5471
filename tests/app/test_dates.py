"""Dates and waiting on the work page."""


def test_the_work_page_tells_dates_waiting_and_the_calendar(ready):
    page = ready.go("work").html
    for words in ("In 8 tries of 10", "Usual waits in the off season", "Public holidays are not counted", "hangs on"):
        assert words in page


def test_what_cools_the_room_until_then_can_be_said(ready):
    before = ready.go("work").html
    assert "nothing is brought in meanwhile" in before
    ready.choose("w_work_interim", "borrow")
    assert "a unit is borrowed until then" in ready.html
