"""Energy units, prices of heat, break-even efficiency and carbon dioxide."""

import pytest

from econ.energy import fuel
from econ.energy.emissions import FUEL_KG_CO2E_PER_KWH
from tests.printed import printed


# US EIA, energy conversion calculators: therm 1.0E+05 Btu; 3412.14 Btu/kWh (here the exact 3412.1416):
# half a unit of its last digit is 4e-5 kWh a therm, and the exact one lies 1.4e-5 off.
def test_kwh_of_a_therm_are_printed() -> None:
    assert pytest.approx(29.307121, abs=2e-5) == fuel.GAS_KWH_PER_THERM
    assert printed("3412.14") == fuel.BTU_PER_KWH


# US EIA, heat contents: propane 91 452 Btu/gal, heating oil 138 500 Btu/gal.
def test_heat_contents_are_printed() -> None:
    assert pytest.approx(91452.0, abs=1e-6) == fuel.PROPANE_KWH_PER_GAL * fuel.BTU_PER_KWH
    assert pytest.approx(138500.0, abs=1e-6) == fuel.OIL_KWH_PER_GAL * fuel.BTU_PER_KWH


# US EIA SEDS 2023, residential, USD per million Btu -> price of a kWh, a therm, a gallon.
@pytest.mark.parametrize(
    ("per_mmbtu", "price_per_kwh", "per_unit"),
    [
        (14.77, fuel.gas_price_usd_per_kwh, 1.4770),
        (27.25, fuel.propane_price_usd_per_kwh, 2.4921),
        (27.14, fuel.oil_price_usd_per_kwh, 3.7589),
    ],
)
def test_prices_per_unit_agree_with_prices_per_million_btu(per_mmbtu, price_per_kwh, per_unit) -> None:  # type: ignore[no-untyped-def]
    assert price_per_kwh(per_unit) == pytest.approx(per_mmbtu * fuel.BTU_PER_KWH / 1.0e6, rel=4e-5)


def test_electricity_price_per_million_btu_is_printed() -> None:
    assert pytest.approx(0.159995, abs=1e-6) == 46.89 * fuel.BTU_PER_KWH / 1.0e6


# From the same 2023 prices: 2.539743 at 0.80 and 3.015944 at 0.95.
@pytest.mark.parametrize(("efficiency", "expected"), [(0.80, 2.539743), (0.95, 3.015944)])
def test_break_even_cop_is_printed(efficiency: float, expected: float) -> None:
    cop = fuel.break_even_cop(46.89, 14.77, efficiency)  # type: ignore[arg-type]
    assert cop == pytest.approx(expected, abs=1e-5)


# 18.17 USD/Mcf at 1036 Btu/cf -> 1.753861 USD/therm (a source prints 1.7548, which is wrong).
def test_price_of_a_therm_from_a_thousand_cubic_feet() -> None:
    per_therm = 18.17 / (1036.0 * 1000.0 / 100_000.0)
    assert per_therm == printed("1.753861")
    per_kwh = 18.17 / (1036.0 * 1000.0 / fuel.BTU_PER_KWH)
    assert fuel.gas_price_usd_per_kwh(per_therm) == pytest.approx(per_kwh, rel=1e-12)  # type: ignore[arg-type]


# 40 CFR 98, table C-1: 53.06, 62.87, 73.96 kg per million Btu -> kg per therm and per gallon.
@pytest.mark.parametrize(
    ("name", "kwh_per_unit", "expected"),
    [
        ("gas", fuel.GAS_KWH_PER_THERM, "5.3060"),
        ("propane", fuel.PROPANE_KWH_PER_GAL, "5.7496"),
        ("oil", fuel.OIL_KWH_PER_GAL, "10.2435"),
    ],
)
def test_carbon_dioxide_per_unit_sold_is_printed(name: str, kwh_per_unit: float, expected: str) -> None:
    assert FUEL_KG_CO2E_PER_KWH[name] * kwh_per_unit == printed(expected)
