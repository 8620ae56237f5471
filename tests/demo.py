"""The demo cases, answered once for all tests of a process."""

from datetime import date
from functools import cache

from econ.case.schema import Case
from econ.case.toml import read_case_file
from econ.evaluate.known import known_names
from econ.tables.loaders import load_tables
from econ.tables.place import data_root
from econ.uncertainty.answer import Answer, answer

TODAY = date(2027, 3, 10)
NAMES = tuple(sorted(file.stem for file in (data_root() / "cases").glob("*.toml")))


@cache
def demo_case(name: str) -> Case:
    """Return a demo case."""
    return read_case_file(data_root() / "cases" / f"{name}.toml", known_names())


@cache
def demo_answer(name: str, draws: int = 0) -> Answer:
    """Return the answer to a demo case."""
    return answer(demo_case(name), load_tables(), TODAY, draws)
