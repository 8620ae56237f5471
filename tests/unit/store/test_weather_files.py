"""Weather files are kept once, by their hash, and outlive the cases that name them."""

import pytest

from econ.store.weather_files import keep, kept


def test_file_comes_back_as_it_was(tmp_path):
    store = tmp_path / "cases.sqlite3"
    key = keep(store, "year.epw", b"LOCATION,Here" * 1000)
    assert key.startswith("sha256:")
    assert kept(store, key) == ("year.epw", b"LOCATION,Here" * 1000)


def test_same_file_again_is_kept_once_under_its_newest_name(tmp_path):
    store = tmp_path / "cases.sqlite3"
    assert keep(store, "a.epw", b"x") == keep(store, "b.epw", b"x")
    assert kept(store, keep(store, "c.epw", b"x"))[0] == "c.epw"


def test_file_that_is_not_there_is_a_key_error(tmp_path):
    with pytest.raises(KeyError):
        kept(tmp_path / "cases.sqlite3", "sha256:0")
