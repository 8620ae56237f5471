"""Tolerance from a source's own rounding."""

from decimal import Decimal
from typing import Any

import pytest


def printed(text: str) -> Any:
    """Return what equals a printed number to half a unit of its last digit."""
    exponent = Decimal(text).as_tuple().exponent
    assert isinstance(exponent, int)
    return pytest.approx(float(text), rel=0, abs=0.5 * 10.0**exponent)
