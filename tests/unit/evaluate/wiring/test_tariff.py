"""From a case to bills: kinds of tariff, what is read of them, and prices worked out from a bill."""

import numpy as np
import pytest

from econ.case.choices import CHOICES
from econ.case.schema import case_from
from econ.evaluate.evaluate import evaluate
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring import climate
from econ.evaluate.wiring.tariff import BILLS, even_price_usd_per_kwh, hour_price
from econ.kernel.errors import CaseError
from econ.tables.loaders import load_tables
from tests.demo import TODAY

TABLES = load_tables()
PLACE = {"station": "Yuma Intl Arpt, AZ"}
HOURS = {"kind": "time_of_use", "peak_usd_per_kwh": 0.24, "peak_days": "every_day"}


def made(**sections: dict[str, object]):
    """Return structure and sheet of one room in Yuma."""
    return prepared(case_from({"place": PLACE, "rooms": [{}], **sections}), TABLES, TODAY)


def energy_usd(**sections: dict[str, object]) -> np.ndarray:
    """Return each way's energy cost a year. [USD/year]"""
    structure, sheet = made(**sections)
    return np.array([way.energy_cost_usd_per_yr[0] for way in evaluate(structure, point(sheet), TABLES).alternatives])


def test_every_kind_has_its_bill() -> None:
    assert set(BILLS) == set(CHOICES["tariff.kind"]) - {"not_known"}


@pytest.mark.parametrize("kind", [None, "flat", "not known"])
def test_one_price_has_no_lines_but_the_choices(kind: str | None) -> None:
    structure, sheet = made(tariff={"kind": kind} if kind else {})
    lines = [path for path in sheet.path if path.startswith("tariff.")]
    assert structure.tariff_kind == "flat"
    assert all(sheet.entry(path).spread.low == sheet.entry(path).spread.high for path in lines)
    assert len(lines) == sum(path.startswith("tariff.") for path in CHOICES)


@pytest.mark.parametrize("kind", ["seasonal", "tiered", "time_of_use"])
def test_a_tariff_whose_prices_are_all_the_same_is_one_price(kind: str) -> None:
    fields = {
        "seasonal": ("summer_usd_per_kwh",),
        "tiered": ("upper_usd_per_kwh",),
        "time_of_use": ("summer_usd_per_kwh", "peak_usd_per_kwh"),
    }[kind]
    price = {"electricity_usd_per_kwh": 0.2}
    by_kind = energy_usd(prices=price, tariff={"kind": kind} | dict.fromkeys(fields, 0.2))
    assert by_kind == pytest.approx(energy_usd(prices=price), rel=1e-12)


def test_dear_hours_cost_more_and_within_the_two_prices() -> None:
    base = {"prices": {"electricity_usd_per_kwh": 0.11}, "now": {"heat": "electric"}}
    low, high = (energy_usd(**base | {"prices": {"electricity_usd_per_kwh": price}}) for price in (0.11, 0.24))
    found = energy_usd(**base, tariff=HOURS)
    assert np.all(found[1:] > low[1:])
    assert np.all(found[1:] < high[1:])


def test_clocks_stay_in_arizona_and_go_ahead_elsewhere() -> None:
    def dearest(station: str) -> list[int]:
        structure, sheet = prepared(
            case_from({"place": {"station": station}, "rooms": [{}], "tariff": HOURS | {"summer_to": "july"}}),
            TABLES, TODAY,
        )  # fmt: skip
        weather = climate.weather(structure, TABLES)
        price = hour_price(structure, point(sheet), weather)
        assert price is not None
        july = price[:, 0, int(np.flatnonzero(weather.month == 6)[0])]
        return np.flatnonzero(july > july.min() + 1e-9).tolist()

    assert dearest("Yuma Intl Arpt, AZ") == [16, 17, 18, 19, 20]
    assert dearest("St Cloud Regional Arpt, MN") == [15, 16, 17, 18, 19]


def test_a_fan_pays_the_tier_that_the_home_has_reached() -> None:
    tiers = {"kind": "tiered", "first_limit_kwh": 500, "upper_usd_per_kwh": 0.18}
    for rest, price in ((400, 0.12), (700, 0.18)):
        _, sheet = made(prices={"electricity_usd_per_kwh": 0.12}, tariff=tiers | {"other_use_kwh": rest})
        assert even_price_usd_per_kwh(point(sheet)) == pytest.approx(price)


def test_a_bill_makes_the_price_of_the_next_unit() -> None:
    # (142.30 - 12.50) / 880 = 0.1475; gas (96 - 18) / 52 = 1.50
    _, sheet = made(
        prices={
            "electricity_bill_usd": 142.30, "electricity_bill_kwh": 880, "electricity_bill_fixed_usd": 12.5,
            "gas_bill_usd": 96, "gas_bill_therms": 52, "gas_bill_fixed_usd": 18,
        }
    )  # fmt: skip
    electric, gas = (sheet.entry(f"prices.{name}") for name in ("electricity_usd_per_kwh", "gas_usd_per_therm"))
    assert (electric.likely, gas.likely) == (pytest.approx(0.1475), pytest.approx(1.5))
    assert "your bill" in electric.spread.source
    assert electric.spread.low < electric.likely < electric.spread.high


def test_without_its_fixed_charge_a_bill_leaves_more_doubt() -> None:
    bill = {"electricity_bill_usd": 142.30, "electricity_bill_kwh": 880}
    wide, narrow = (
        made(prices=bill | more)[1].entry("prices.electricity_usd_per_kwh").spread
        for more in ({}, {"electricity_bill_fixed_usd": 12.5})
    )
    assert wide.high - wide.low > narrow.high - narrow.low


def test_a_typed_price_stands_above_the_bill() -> None:
    _, sheet = made(
        prices={"electricity_usd_per_kwh": 0.3, "electricity_bill_usd": 142.30, "electricity_bill_kwh": 880}
    )
    assert sheet.entry("prices.electricity_usd_per_kwh").likely == 0.3


@pytest.mark.parametrize(
    ("section", "fields", "words"),
    [
        ("prices", {"electricity_bill_usd": 10, "electricity_bill_kwh": 800, "electricity_bill_fixed_usd": 12},
         r"electricity_bill_usd \| makes a price of a unit that must lie between 0.01 and 2.0 USD \| got -0.003"),
        ("prices", {"gas_bill_usd": 900, "gas_bill_therms": 3}, r"between 0.05 and 20.0 USD \| got 300.000"),
        ("tariff", {"first_limit_kwh": 500, "second_limit_kwh": 400}, r"second_limit_kwh \| must be above 500 kWh"),
        ("tariff", {"peak_from_h": 16, "peak_to_h": 21, "cheap_from_h": 20, "cheap_to_h": 5},
         r"tariff.cheap_from_h \| must not lie in the dear hours \| got 20 to 5 beside 16 to 21"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_its_numbers(section: str, fields: dict[str, object], words: str) -> None:
    with pytest.raises(CaseError, match=words):
        case_from({"place": PLACE, "rooms": [{}], section: fields})


@pytest.mark.parametrize(("heat", "fuel"), [("oil", "oil"), ("wood", "wood"), ("electric", "gas"), (None, "gas")])
def test_each_fuel_has_its_own_price_rise(heat: str | None, fuel: str) -> None:
    _, sheet = made(now={"heat": heat} if heat else {})
    rise = TABLES.fuels[fuel].spread("escalation_frac")
    assert sheet.entry("prices.fuel_escalation_frac").spread == rise


def test_the_grid_is_in_doubt_only_where_carbon_has_a_price() -> None:
    for prices, is_wide in (({}, False), ({"carbon_usd_per_t": 50}, True)):
        spread = made(prices=prices)[1].entry("prices.grid_kg_co2e_per_kwh").spread
        assert spread.likely == pytest.approx(TABLES.prices["AZ"].number("grid_kg_co2e_per_kwh") / 0.95)
        assert (spread.low < spread.high) == is_wide


# Bills of 20 kWh a day at every warmth but the hottest: the base load is 20 x 365 / 12 = 608.3 kWh a month.
def test_the_rest_of_the_home_is_the_base_load_of_its_bills() -> None:
    warmth_f = (50, 52, 58, 64, 70, 80, 92, 90, 82, 68, 58, 51)
    rows = [
        f"2026-{month:02d} {30.4 * (20 + 0.8 * max(f - 75, 0)):.0f} kWh {f} F" for month, f in enumerate(warmth_f, 1)
    ]
    _, sheet = made(tariff={"kind": "tiered"}, bills={"electricity": "\n".join(rows)})
    entry = sheet.entry("tariff.other_use_kwh")
    assert entry.likely == pytest.approx(608.3, rel=0.04)
    assert "base load of your 12 electricity bills" in entry.spread.source
    assert made(tariff={"kind": "tiered"})[1].entry("tariff.other_use_kwh").likely == 620.0
