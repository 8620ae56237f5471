"""Where a choice turns: no more digits than the answer is sure of."""

from datetime import date

import pytest

from econ.report.look import Look
from econ.report.what_if import any_tip, turning_text
from econ.uncertainty.what_if import Tip

LOOK = Look(date(2027, 3, 10), 2027)


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        ("kit.price_usd", 1031.0, "$1,000"),
        ("work.hour_value_usd_per_h", 41.3, "$41 an hour"),
        ("quote.total_usd", 7385.0, "$7,400"),
        ("prices.electricity_usd_per_kwh", 0.1723, "$0.17 a kWh"),
        ("kit.life_yr", 12.3, "12 years"),
    ],
)
def test_a_turning_point_is_told_to_two_digits(path, value, told):
    assert turning_text(path, value, LOOK) == told


def test_the_sentence_of_one_figure_says_about_and_keeps_what_is_now_as_it_is():
    tip = Tip("kit.price_usd", 1150.0, 1031.0, 0.0, 4600.0, None, is_within_range=True)
    assert "now $1,150" in any_tip(tip, "Kit", "USD", LOOK)
    turned = Tip("kit.price_usd", 1150.0, 1031.0, 0.0, 4600.0, "window_units", is_within_range=True)
    assert "below about $1,000 “New window units” becomes the cheapest; now $1,150." in any_tip(
        turned, "Kit", "USD", LOOK
    )
