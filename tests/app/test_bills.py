"""A year of bills on the place page: pasted as they are, kept, faults row by row, the fit, and its use."""

from tests.app.screen import Screen

WARMTH_F = (20, 23, 36, 47, 59, 68, 73, 70, 61, 48, 34, 22)
PATH = "w_bills_electricity"


def year(base: float, heat: float) -> str:
    """Return twelve bills that follow their own temperatures below 60 F."""
    rows = [(month, base + heat * max(60 - warm, 0), warm) for month, warm in enumerate(WARMTH_F, 1)]
    return "\n".join(f"2026-{month:02d} {kwh:.0f} kWh ${0.15 * kwh:.2f} {warm} F" for month, kwh, warm in rows)


def paste(screen: Screen, text: str) -> Screen:
    """Paste bills into the box."""
    screen.app.text_area(key=PATH).set_value(text).run()
    assert not screen.app.exception
    return screen


def captions(screen: Screen) -> str:
    """Return what stands in small print."""
    return "\n".join(caption.value for caption in screen.app.caption)


def test_a_pasted_year_is_fitted_and_kept(ready: Screen) -> None:
    html = paste(ready.go("place"), year(300.0, 60.0)).html
    assert "12 bills rise the colder it is" in html
    assert "The fit is good enough to use" in captions(ready)
    assert ready.reloaded().go("place").app.text_area(key=PATH).value == year(300.0, 60.0)


def test_rows_that_cannot_be_read_are_named_and_stay_in_the_box(ready: Screen) -> None:
    text = f"{year(300.0, 60.0)}\n2/30/2026 3/30/2026 55"
    html = paste(ready.go("place"), text).html
    assert "Not taken: row 13:" in html
    assert "has a date that cannot be: 2/30/2026" in html
    assert ready.app.text_area(key=PATH).value == text


def test_a_few_bills_say_how_many_are_needed(ready: Screen) -> None:
    assert "a fit needs 12 at least" in paste(ready.go("place"), "2026-01 812\n2026-02 700").html


def test_the_fit_is_offered_once_the_part_is_known_and_changes_the_answer(ready: Screen) -> None:
    paste(ready.go("place"), year(300.0, 60.0))
    assert "Say which part of the heating" in captions(ready)
    assert "w_bills_use_fit" not in {str(group.key) for group in ready.app.button_group}
    ready.type("w_bills_heating_share_frac", "60 %")
    assert "would be multiplied by" in ready.html
    ready.choose("w_bills_use_fit", "yes")
    assert "Nothing so far." not in ready.html
    assert ready.app.session_state["case"].bills.use_fit == "yes"


def test_bills_before_the_town_wait_for_it(screen: Screen) -> None:
    paste(screen.go("place"), year(300.0, 60.0))
    assert any("Choose the town first" in note.value for note in screen.app.info)
