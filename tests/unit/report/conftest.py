"""What the report's tests draw: one invented result, seen by day and by night."""

from datetime import date

import pytest

from econ.report.look import Look
from econ.report.style import Theme
from tests import builders


@pytest.fixture(scope="module")
def result():
    return builders.result()


@pytest.fixture(params=list(Theme))
def look(request):
    return Look(date(2027, 5, 20), 2027, request.param)
