"""A dashboard whose saved cases live in a folder of the test."""

import pytest
from streamlit.testing.v1 import AppTest

from econ.case.toml import write_case
from econ.store import cases
from econ.store.connection import store_path
from econ.ui import cached
from tests.app.screen import APP, FIRST_DRAWS, FULL_DRAWS, Screen
from tests.demo import demo_case


@pytest.fixture
def screen(tmp_path, monkeypatch):
    monkeypatch.setenv("ECON_STORE", str(tmp_path / "cases.sqlite3"))
    monkeypatch.setattr(cached, "FIRST_DRAWS", FIRST_DRAWS)
    monkeypatch.setattr(cached, "FULL_DRAWS", FULL_DRAWS)
    return Screen(AppTest.from_file(APP, default_timeout=60).run())


@pytest.fixture
def ready(screen):
    """Return the dashboard with the ready-made lower level saved and open."""
    text = write_case(demo_case("lower_level_cold"))
    cases.create(store_path(), "Lower level", text)
    return screen.reloaded()
