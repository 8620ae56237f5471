"""Fix the room first: what can be done to the room is offered before a size, and what is ticked stays."""

FAN = "w_measure_fan"
SHADE = "w_measure_outside_shade"


def tick(screen, key):
    """Tick or untick a measure."""
    box = screen.app.checkbox(key=key)
    box.set_value(not box.value).run()
    assert not screen.app.exception
    return screen


def chosen(screen):
    """Return what the open case has taken."""
    return screen.app.session_state["case"].measures.chosen


def test_a_tick_moves_the_strip_in_the_same_view(ready):
    before = ready.go("room").strip
    assert tick(ready, SHADE).strip != before
    assert chosen(ready) == ("outside_shade",)


def test_a_tick_survives_a_reload_and_going_elsewhere(ready):
    tick(tick(ready.go("room"), SHADE), FAN).go("work")
    again = ready.reloaded().go("room")
    assert chosen(again) == ("outside_shade", "fan")
    assert again.app.checkbox(key=FAN).value
    assert "What you took (shade outside the windows and a fan in the room) is in every way" in again.html


def test_a_tick_taken_back_brings_the_strip_back(ready):
    before = ready.go("room").strip
    assert tick(tick(ready, FAN), FAN).strip == before
    assert chosen(ready) is None


def test_what_makes_no_sense_is_not_offered_and_says_why(ready):
    ready.go("room")
    assert "w_measure_attic_insulation" not in [box.key for box in ready.app.checkbox]
    assert "insulation on the attic floor (there is no attic above)" in ready.html


def test_the_houses_own_duct_is_offered_once_it_serves_the_room_poorly(ready):
    ready.go("room").choose("w_now_house_system", "poorly")
    assert "w_measure_balanced_duct" in [box.key for box in ready.app.checkbox]
    assert "The house system serves this room already, but poorly" in ready.html


def test_the_room_comes_before_the_size(ready):
    html = ready.go("equipment").html
    assert html.index("Before a size: ") < html.index("On the hot design day")


def test_without_a_town_the_house_system_is_asked_all_the_same(screen):
    screen.go("room").choose("w_now_house_system", "well")
    assert screen.app.session_state["case"].now.house_system == "well"
