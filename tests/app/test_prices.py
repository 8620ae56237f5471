"""Prices on the place page: one price, a tariff by the hour, and a price worked out from a bill."""

from econ.case.quantity import Amount


def keys(screen):
    """Return the keys of all text fields on the page."""
    return {field.key for field in screen.app.text_input}


def test_hours_and_tiers_are_asked_only_of_such_a_tariff(ready):
    ready.go("place")
    assert not any(key.startswith("w_tariff_") for key in keys(ready))
    ready.choose("w_tariff_kind", "time_of_use")
    assert {"w_tariff_peak_from_h", "w_tariff_peak_usd_per_kwh"} < keys(ready)
    assert "w_tariff_first_limit_kwh" not in keys(ready)
    ready.choose("w_tariff_kind", "tiered")
    assert {"w_tariff_first_limit_kwh", "w_tariff_other_use_kwh"} < keys(ready)
    assert "w_tariff_peak_from_h" not in keys(ready)
    ready.choose("w_tariff_kind", "not_known")
    assert not any(key.startswith("w_tariff_") for key in keys(ready))


def test_an_hour_of_the_clock_may_be_typed_with_pm(ready):
    ready.go("place").choose("w_tariff_kind", "time_of_use").type("w_tariff_peak_from_h", "3 pm")
    said: Amount = ready.app.session_state["case"].tariff.peak_from_h
    assert said.likely == 15.0


def test_a_bill_makes_the_price_and_says_so(ready):
    ready.go("place").type("w_prices_electricity_usd_per_kwh", "")
    ready.type("w_prices_electricity_bill_usd", "142.30").type("w_prices_electricity_bill_kwh", "880")
    ready.type("w_prices_electricity_bill_fixed_usd", "12.50")
    assert "your bill: 142.30 USD less 12.5" in ready.html


def test_a_bill_that_makes_no_price_is_refused_beside_its_field(ready):
    ready.go("place").type("w_prices_electricity_bill_kwh", "3").type("w_prices_electricity_bill_usd", "900")
    assert "makes a price of a unit that must lie between" in ready.html
    assert ready.typed("w_prices_electricity_bill_usd") == "900"
