"""One function knows where data lives."""

from pathlib import Path

import pytest

import econ
from econ.kernel.errors import TableError
from econ.tables.place import data_root


def test_data_root_holds_the_tables() -> None:
    assert (data_root() / "climate" / "stations.csv").is_file()


def test_data_beside_the_modules_wins(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "econ"
    (package / "data").mkdir(parents=True)
    (tmp_path / "data").mkdir()
    monkeypatch.setattr(econ, "__path__", [str(package)])
    assert data_root() == package / "data"


def test_no_data_at_all_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(econ, "__path__", [str(tmp_path / "econ")])
    with pytest.raises(TableError, match="No data folder beside"):
        data_root()
