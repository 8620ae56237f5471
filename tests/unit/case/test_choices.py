"""Options of choices and the numbers they travel as."""

import pytest

from econ.case.choices import CHOICES, NOT_KNOWN, code, option_at, table_path


@pytest.mark.parametrize("path", CHOICES)
def test_not_known_is_the_last_option_once(path):
    assert CHOICES[path][-1] == NOT_KNOWN
    assert len(set(CHOICES[path])) == len(CHOICES[path])


def test_code_is_the_position_for_any_room():
    assert code("rooms[7].wall", "block") == 2.0
    assert option_at("rooms[3].wall", 2.0) == "block"


def test_option_that_is_not_there_is_refused_with_the_list():
    with pytest.raises(ValueError, match="it must be one of yes, sometimes, no, not_known"):
        code("use.heat", "maybe")


def test_only_rooms_lose_their_index():
    assert table_path("rooms[12].x") == "rooms[].x"
    assert table_path("kit.size") == "kit.size"
