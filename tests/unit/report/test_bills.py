"""What bills say in words, tables and a picture."""

import numpy as np
import pytest

from econ.case.edit import with_fields
from econ.evaluate.bill_scale import BillFindings
from econ.evaluate.prepare import findings_of_bills
from econ.report import bills
from econ.report.look import Look
from econ.report.pictures import bills as picture
from econ.report.style import Theme
from econ.report.terminal import bills_text
from econ.tables.loaders import load_tables
from tests.demo import TODAY, demo_case

LOOKS = tuple(Look(TODAY, TODAY.year, theme) for theme in Theme)
WARMTH_F = (20, 23, 36, 47, 59, 68, 73, 70, 61, 48, 34, 22)


def findings(heat: float, cool: float, **fields: object) -> BillFindings:
    """Return what made bills say: 20 kWh a day, more below 60 F and above 65 F."""
    rows = [
        f"2026-{month:02d} {30 * (20 + heat * max(60 - warm, 0) + cool * max(warm - 65, 0)):.0f} kWh {warm} F $90"
        for month, warm in enumerate(WARMTH_F, 1)
    ]
    case = with_fields(demo_case("lower_level_cold"), "bills", {"electricity": "\n".join(rows)} | fields)
    return findings_of_bills(case, load_tables(), TODAY)


@pytest.mark.parametrize(
    ("heat", "cool", "words"),
    [(1.0, 0.0, "rise the colder it is"), (0.0, 2.0, "rise the warmer it is"),
     (1.0, 2.0, "rise both the colder and the warmer it is"), (0.0, 0.0, "hardly follow the weather")],
)  # fmt: skip
def test_the_sentence_names_what_the_bills_follow(heat: float, cool: float, words: str) -> None:
    (found,) = findings(heat, cool).fits
    said = bills.statement(found, LOOKS[0])
    assert words in said
    assert ("heating below" in said, "cooling above" in said) == (heat > 0.0, cool > 0.0)


def test_limits_stand_beside_each_figure_of_the_fit() -> None:
    (found,) = findings(1.0, 0.0).fits
    assert found.fit is not None
    said = bills.quality(found.fit)
    for words in ("good enough", "(at most 15 %)", "(at most 5 % either way)", "R²", "Guideline 14"):
        assert words in said


def test_the_table_has_a_row_a_bill_and_dollars_where_given() -> None:
    (found,) = findings(1.0, 0.0).fits
    table = bills.table(found, LOOKS[0])
    assert {len(column) for column in table.values()} == {12}
    assert table["Paid"][0] == "$90.00"
    assert table["Billed, kWh"][0] == "1,800"


def test_the_picture_draws_every_bill_and_the_fit() -> None:
    (found,) = findings(1.0, 0.0).fits
    for look in LOOKS:
        drawn = picture.figure(found, look)
        by_name = {trace.name: trace for trace in drawn.data}
        days = np.array([row.days_d for row in found.text.rows])
        assert np.array(by_name["billed"].y) == pytest.approx(found.billed_kwh / days)
        assert np.array(by_name["fit"].y) == pytest.approx(found.modelled_kwh / days)
        assert len(by_name["bills"].x) == 12


def test_the_factor_is_said_with_its_range_and_a_refusal_with_its_reason() -> None:
    said = {scale.side: bills.scale_sentence(scale) for scale in findings(2.0, 0.0, heating_share_frac=1).scales}
    assert "multiplied by" in said["heating"]
    assert " to " in said["heating"]
    assert "told from chance" in said["cooling"]


def test_the_terminal_says_the_same() -> None:
    found = findings(1.0, 0.0)
    text = " ".join(bills_text(found).split())
    assert bills.statement(found.fits[0], LOOKS[0]) in text
