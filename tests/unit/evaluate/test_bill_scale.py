"""From bills to a factor on the room: found again from made bills, used only where it may be, and refused in words."""

from datetime import date

import numpy as np
import pytest

from econ.case.edit import with_fields, with_value
from econ.case.schema import Case
from econ.case.toml import read_case, write_case
from econ.evaluate.prepare import findings_of_bills, prepared
from econ.evaluate.sheet import point
from econ.kernel.constants import MONTH_DAYS
from econ.report.bills import used_sentence
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_case

TABLES = load_tables()
FLAT, SUNROOM, LOWER = "top_floor_flat", "sunroom_with_quote", "lower_level_cold"


def keep(case: Case):
    """Return what there is now, at likely values."""
    return answer(case, TABLES, date(2027, 3, 10), draws=0).result.alternatives[0]


def made(month_kwh: np.ndarray, times: float, base_kwh_per_d: float, noise: float = 0.02, seed: int = 1) -> str:
    """Return a year of bills: the model's energy times a factor, a base load and some noise."""
    rng = np.random.default_rng(seed)
    energy = (base_kwh_per_d * np.array(MONTH_DAYS) + times * month_kwh) * (1.0 + rng.normal(0.0, noise, 12))
    return "\n".join(f"2026-{month:02d} {kwh:.1f} kWh" for month, kwh in enumerate(energy, 1))


def billed(name: str, times: float, **fields: object) -> Case:
    """Return a demo case with bills that show so many times what the model gives."""
    case = demo_case(name)
    now, carrier = keep(case), "gas" if name == SUNROOM else "electricity"
    month_kwh = (now.fuel_kwh if name == SUNROOM else now.electricity_kwh)[0]
    text = made(month_kwh, times, 5.0 if name == FLAT else 3.0)
    return with_fields(case, "bills", {carrier: text, "cooling_share_frac": 1, "heating_share_frac": 1} | fields)


@pytest.mark.parametrize("times", [0.7, 1.0, 1.5])
@pytest.mark.parametrize(("name", "side"), [(FLAT, "cooling"), (SUNROOM, "heating"), (LOWER, "heating")])
def test_the_factor_that_made_the_bills_is_found_again(name: str, side: str, times: float) -> None:
    found = {scale.side: scale for scale in findings_of_bills(billed(name, times), TABLES, TODAY).scales}
    factor = found[side].factor
    assert factor is not None
    assert factor.likely == pytest.approx(times, rel=0.12)
    assert factor.low < times < factor.high


def test_half_of_the_heating_is_half_the_factor() -> None:
    whole, half = (
        findings_of_bills(billed(SUNROOM, 1.4, heating_share_frac=share), TABLES, TODAY).scales[1].factor
        for share in (1, 0.5)
    )
    assert whole is not None
    assert half is not None
    assert half.likely == pytest.approx(0.5 * whole.likely)
    assert half.high / half.likely > whole.high / whole.likely


def test_the_fit_changes_nothing_until_it_is_asked_to() -> None:
    case = billed(SUNROOM, 1.4)
    plain, used = keep(case), keep(with_value(case, "bills.use_fit", "yes"))
    factor = findings_of_bills(case, TABLES, TODAY).scales[1].factor
    assert factor is not None
    assert plain.fuel_kwh[0] == pytest.approx(keep(demo_case(SUNROOM)).fuel_kwh[0])
    assert used.fuel_kwh[0] == pytest.approx(factor.likely * plain.fuel_kwh[0], rel=1e-9)


def test_the_factor_is_a_line_with_its_range_and_source() -> None:
    case = with_value(billed(SUNROOM, 1.4), "bills.use_fit", "yes")
    entry = prepared(case, TABLES, TODAY)[1].entry("bills.heating_factor_frac")
    assert (entry.state, entry.spread.low < entry.likely < entry.spread.high) == ("computed", True)
    assert "your 12 gas bills, 100% of their heating" in entry.spread.source


def test_a_refused_fit_writes_no_line() -> None:
    case = with_value(billed(SUNROOM, 8.0), "bills.use_fit", "yes")
    assert not any(
        path.endswith("_factor_frac") and path.startswith("bills.") for path in point(prepared(case, TABLES, TODAY)[1])
    )


SCATTERED = "\n".join(
    f"2026-{month:02d} {kwh}" for month, kwh in enumerate((900, 10, 700, 20, 800, 15, 5, 990, 30, 640, 5, 800), 1)
)
FEW = "\n".join(f"2026-{month:02d} 400" for month in range(1, 12))
LEVEL = "\n".join(f"2026-{month:02d} {400 + month % 3}" for month in range(1, 13))
WARM = "\n".join(f"2026-{month:02d} 400 kWh {60 + month % 2} F" for month in range(1, 13))
ZEROS = "\n".join(f"2026-{month:02d} 0" for month in range(1, 13))


@pytest.mark.parametrize(
    ("name", "fields", "side", "words"),
    [
        (SUNROOM, {"gas": SCATTERED}, "heating", "does not keep the limits for monthly bills"),
        (SUNROOM, {"gas": FEW}, "heating", "11 bills can be used; a fit needs 12 at least"),
        (SUNROOM, {"gas": ZEROS}, "heating", "All bills are 0"),
        (SUNROOM, {"gas": WARM}, "heating", "Add bills of the other seasons"),
        (SUNROOM, {"gas": LEVEL}, "heating", "no heating that can be told from chance"),
        (SUNROOM, {"electricity": LEVEL, "gas": None}, "heating", "no bills of what the room's heating takes: gas"),
        (SUNROOM, {}, "cooling", "No unit of its own cools the room now"),
        (SUNROOM, {"heating_share_frac": None}, "heating", "Say which part of the heating on the bills is this room's"),
        (FLAT, {}, "heating", "not to be heated"),
    ],
)  # fmt: skip
def test_what_cannot_be_told_is_refused_in_words(name: str, fields: dict[str, object], side: str, words: str) -> None:
    case = with_fields(billed(name, 1.2), "bills", fields)
    found = {scale.side: scale for scale in findings_of_bills(case, TABLES, TODAY).scales}[side]
    assert found.factor is None
    assert words in found.refusal


def test_bills_far_from_the_model_are_not_scaled_by() -> None:
    scale = findings_of_bills(billed(SUNROOM, 8.0), TABLES, TODAY).scales[1]
    assert scale.factor is None
    assert "too far apart to scale by" in scale.refusal


def test_bills_survive_the_file_as_they_were_pasted() -> None:
    case = with_value(demo_case(SUNROOM), "bills.gas", 'Start\tEnd\t"therms"\n1/5/2026\t2/4/2026\t96 \\ odd\n')
    assert read_case(write_case(case)) == case
    assert read_case(write_case(case)).bills.gas == case.bills.gas


def test_a_temperature_on_the_bill_stands_above_the_typical_year() -> None:
    case = with_value(demo_case(SUNROOM), "bills.gas", "2026-01 96 therms 14 F\n2026-02 90 therms")
    (fit,) = findings_of_bills(case, TABLES, TODAY).fits
    assert fit.mean_c[0] == pytest.approx(-10.0)
    assert fit.mean_c[1] > 0.0


def test_rooms_say_by_how_much_they_are_scaled_and_the_hand_check_still_adds_up() -> None:
    case = with_value(billed(SUNROOM, 1.4), "bills.use_fit", "yes")
    plain, used = (answer(each, TABLES, TODAY, draws=0) for each in (demo_case(SUNROOM), case))
    rooms = used.result.rooms
    scaled = used.sheet.entry("bills.heating_factor_frac").likely
    assert rooms.annual_heating_kwh == pytest.approx(scaled * plain.result.rooms.annual_heating_kwh)
    assert rooms.annual_heating_kwh == pytest.approx(rooms.degree_day_heating_kwh + rooms.hand_part_kwh.sum(axis=1))
    assert rooms.design_heating_w == pytest.approx(plain.result.rooms.design_heating_w)
    assert f"heating by {scaled:.2f}" in used_sentence(used)
    assert used_sentence(plain) == ""
