"""Towns are found by the beginning of their names, never by likeness above it."""

import pytest

from econ.kernel.errors import UnknownChoiceError
from econ.tables.loaders import load_tables
from econ.tables.towns import load_towns, ranked

TOWNS = load_towns()


def test_whole_name_comes_first_then_beginnings_then_words_within():
    found = TOWNS.search("mesa")
    assert found[0] == "Mesa, AZ"
    assert all(" mesa" in f" {name.casefold()}" for name in found)
    assert not any(name.endswith("FL") for name in found)


def test_weather_places_are_found_alike():
    names = load_tables().stations.names
    assert ranked("st cloud", names, 3)[0] == "St Cloud Regional Arpt, MN"
    assert ranked("saint cloud", names, 3)[0] == "St Cloud Regional Arpt, MN"


@pytest.mark.parametrize(
    ("words", "first"),
    [("Portland OR", "Portland, OR"), ("portland, me", "Portland, ME"), ("st. paul", "Saint Paul, MN")],
)
def test_state_and_short_words_are_understood(words, first):
    assert TOWNS.search(words)[0] == first


def test_of_towns_of_one_name_the_largest_comes_first():
    assert TOWNS.search("Springfield")[0] == "Springfield, MO"


@pytest.mark.parametrize("words", ["", "  ", "Xyzzy"])
def test_words_that_fit_nowhere_find_nothing(words):
    assert TOWNS.search(words) == ()


def test_town_lies_where_it_lies():
    mesa = TOWNS.town("mesa, az")
    assert mesa.state == "AZ"
    near = load_tables().stations.nearest(mesa.latitude_deg, mesa.longitude_deg)
    assert near[0].name == "Phoenix Sky Harbor Intl AP, AZ"
    assert near[0].distance_km < 20.0


def test_unknown_town_is_answered_with_names_that_come_closest():
    with pytest.raises(UnknownChoiceError, match="Flagstaff, AZ"):
        TOWNS.town("Flagstaf, AZ")
