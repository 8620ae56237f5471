"""What a hired job comes to from own items does not hang on a quote."""

import pytest

from econ.evaluate.own_items import hired_usd
from econ.evaluate.wiring.installation import installation
from econ.installation.first_cost import cash_first_cost_usd
from econ.kernel.alternative import HIRED
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

TABLES = installation_tables()


def test_a_quote_is_left_aside():
    plain = float(cash_first_cost_usd(installation(structure(), site_values(), TABLES, 1)[HIRED].line_items)[0])
    for total in (100.0, 9_000.0):
        values = site_values(quote__total_usd=total, quote__wait_d=10.0)
        assert hired_usd(structure(has_quote=True), values, TABLES) == pytest.approx(plain)
