"""Time of a printed report, without the tries behind its chances."""

import time

import pytest

from econ.report.document.file import Kind, document_bytes
from econ.report.document.readers import Reader
from econ.tables.loaders import load_tables
from tests.demo import NAMES, TODAY, demo_answer

MOST_S = 3.0
DRAWS = 1024


@pytest.mark.parametrize("name", NAMES)
def test_a_report_is_made_in_under_three_seconds(name):
    found, tables = demo_answer(name, DRAWS), load_tables()
    for kind in Kind:
        began = time.process_time()
        document_bytes(found, tables, TODAY, Reader.OWNER, kind)
        took_s = time.process_time() - began
        print(f"{name} {kind.value}: {took_s:.2f} s")
        assert took_s < MOST_S
