"""Bills as pasted: many forms are read, what cannot be is named row by row, and nothing else is lost."""

from datetime import date

import pytest

from econ.case.bill_text import THERMS_PER_CCF, read_bills
from econ.energy.fuel import GAS_KWH_PER_THERM

FORMS = (
    "2025-01-05 2025-02-04 812 kWh $148.20",
    "1/5/2025 - 2/4/2025   812 kWh   148.20 USD",
    "01/05/25\t02/04/25\t812\t$148.20",
    "2025-01-05,2025-02-04,30,812,148.20",
    "Jan 5, 2025; Feb 4, 2025; 812; 148.20",
    "5 Jan 2025 to 4 Feb 2025: 0.812 MWh for $148.20",
    "5.1.2025 4.2.2025 812 148.20",
    '1/5/2025,2/4/2025,"812 kWh",$148.20',
)


@pytest.mark.parametrize("row", FORMS)
def test_one_bill_is_read_in_many_forms(row: str) -> None:
    found = read_bills(row, "bills.electricity", "kwh")
    assert not found.faults
    (bill,) = found.rows
    assert (bill.first, bill.past) == (date(2025, 1, 5), date(2025, 2, 4))
    assert (bill.energy_kwh, bill.paid_usd) == (pytest.approx(812.0), pytest.approx(148.20))


@pytest.mark.parametrize(("typed", "kwh"), [('"1,024"', 1024.0), ("1,024 kWh", 1024.0), ("1024.5", 1024.5)])
def test_thousands_may_have_their_comma(typed: str, kwh: float) -> None:
    (bill,) = read_bills(f"1/5/2025 2/4/2025 {typed}", "bills.electricity", "kwh").rows
    assert bill.energy_kwh == kwh


@pytest.mark.parametrize(
    ("typed", "therms"), [("96", 96.0), ("96 therms", 96.0), ("96 ccf", 96.0 * THERMS_PER_CCF), ("9.6 dth", 96.0)]
)
def test_gas_is_read_in_its_units(typed: str, therms: float) -> None:
    (bill,) = read_bills(f"1/5/2025 2/4/2025 {typed}", "bills.gas", "therm").rows
    assert bill.energy_kwh == pytest.approx(therms * GAS_KWH_PER_THERM, rel=1e-5)


@pytest.mark.parametrize(("typed", "mean_c"), [("14 F", -10.0), ("14°F", -10.0), ("-10 C", -10.0), ("", None)])
def test_a_bill_may_say_how_warm_it_was(typed: str, mean_c: float | None) -> None:
    (bill,) = read_bills(f"1/5/2025 2/4/2025 812 kWh {typed} $148", "bills.electricity", "kwh").rows
    assert bill.mean_c == (None if mean_c is None else pytest.approx(mean_c))
    assert bill.paid_usd == 148.0


def test_months_by_name_are_whole_months() -> None:
    found = read_bills("Jan 2025 812\n2025-02 700\n3/2025 650", "bills.electricity", "kwh").rows
    assert [(row.first, row.days_d) for row in found] == [
        (date(2025, 1, 1), 31), (date(2025, 2, 1), 28), (date(2025, 3, 1), 31),
    ]  # fmt: skip


def test_readings_run_from_the_one_before_in_any_order() -> None:
    found = read_bills("3/4/2025 700\n2/4/2025 812\n1/5/2025 900", "bills.electricity", "kwh")
    assert [(row.days_d, row.energy_kwh) for row in found.rows] == [(30, 812.0), (28, 700.0)]
    (fault,) = found.faults
    assert fault.path == "bills.electricity row 3"
    assert fault.problem == "has one date and no row before it to begin at"


def test_last_days_that_count_are_counted() -> None:
    found = read_bills("1/1/2025 1/31/2025 800\n2/1/2025 2/28/2025 700\n3/1/2025 3/31/2025 600", "b", "kwh")
    assert [row.days_d for row in found.rows] == [31, 28, 31]


def test_heading_and_empty_rows_are_passed_over() -> None:
    found = read_bills("Start,End,kWh\n\n2025-01-05,2025-02-04,812\n\n", "b", "kwh")
    assert (len(found.rows), found.faults) == (1, ())


@pytest.mark.parametrize(
    ("row", "problem"),
    [
        ("812 kWh", "has no date"),
        ("2/30/2025 3/30/2025 812", "has a date that cannot be: 2/30/2025"),
        ("1/5/2025 2/4/2025", "has no amount used"),
        ("1/5/2025 2/4/2025 $148", "has no amount used"),
        ("1/5/2025 2/4/2025 812 furlongs", "has a unit that is not known: furlongs"),
        ("1/5/2025 2/4/2025 -812 kWh", "has a negative amount: -812"),
        ("1/5/2025 1/9/2025 812", "runs 4 days; a bill must run 15 to 100"),
        ("1/5/2025 1/5/2026 812", "runs 365 days; a bill must run 15 to 100"),
    ],
)
def test_a_row_that_cannot_be_read_is_named_and_the_others_are_kept(row: str, problem: str) -> None:
    found = read_bills(f"11/5/2024 12/5/2024 700\n{row}\n3/5/2025 4/5/2025 650", "bills.electricity", "kwh")
    assert [bill.line for bill in found.rows] == [1, 3]
    (fault,) = found.faults
    assert (fault.path, fault.problem) == ("bills.electricity row 2", problem)
    assert row[:20] in fault.got
    assert fault.remedy


def test_a_pasted_row_is_named_without_marks_for_its_tabs() -> None:
    fault = read_bills("2025-01-01\t900\t135.00\n2025-02-01\t850\t127.50", "bills.electricity", "kwh").faults[0]
    assert fault.got == "'2025-01-01 900 135.00'"


def test_the_same_bill_twice_is_counted_once() -> None:
    found = read_bills("1/5/2025 2/4/2025 812\n1/5/2025 2/4/2025 812", "b", "kwh")
    assert len(found.rows) == 1
    assert found.faults[0].problem == "overlaps the bill of row 1"


def test_more_than_three_years_are_cut_to_the_newest() -> None:
    text = "\n".join(f"{year}-{month:02d} {year}" for year in (2021, 2022, 2023, 2024) for month in range(1, 13))
    found = read_bills(text, "b", "kwh")
    assert [len(found.rows), found.rows[0].first] == [36, date(2022, 1, 1)]
    assert "the newest 36" in found.notes[0]
