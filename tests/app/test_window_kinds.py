"""The kind of window unit is asked on the equipment page, kept, and decides what else is asked."""

KIND = "w_window_kind"


def keys(screen):
    return {str(part.key) for part in (*screen.app.button_group, *screen.app.text_input)}


def test_kind_of_unit_stays_after_a_walk_and_a_reload(ready):
    ready.go("equipment").choose(KIND, "portable").go("work").go("answer").go("equipment")
    assert ready.app.button_group(key=KIND).value == "portable"
    assert ready.reloaded().app.session_state["case"].window.kind == "portable"


def test_kind_of_unit_moves_the_strip_in_the_same_view(ready):
    before = ready.go("equipment").strip
    assert ready.choose(KIND, "through_wall").strip != before


def test_a_unit_in_the_wall_is_asked_about_the_wall_and_not_about_the_window(ready):
    assert {"w_window_opening", "w_window_clear_width_m"} <= keys(ready.go("equipment"))
    assert "w_window_wall_bears" not in keys(ready)
    ready.choose(KIND, "through_wall")
    assert "w_window_wall_bears" in keys(ready)
    assert not {"w_window_opening", "w_window_clear_width_m", "w_window_escape"} & keys(ready)


def test_a_window_too_narrow_is_told_with_what_would_fit(ready):
    ready.go("equipment").type("w_window_clear_width_m", "12")
    assert "It cannot go in." in ready.html
    assert "it cannot go in here" in ready.strip.lower()
    assert "The window&#x27;s clear width is 12 in (30 cm)" in ready.html
    assert "What would fit: a portable unit" in ready.html


def test_a_size_that_the_kind_does_not_come_in_is_told_and_can_be_mended(ready):
    ready.go("equipment").app.selectbox(key="w_window_size").set_value("24").run()
    ready.choose(KIND, "portable")
    assert "is not a size that portable units come in" in ready.app.error[0].value
    ready.app.selectbox(key="w_window_size").set_value("8").run()
    assert not ready.app.error
