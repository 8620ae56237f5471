"""Sheets print what the user said and leave the rest to fill in by hand: nothing is made up."""

import numpy as np
import pytest

from econ.case.edit import with_fields
from econ.equipment.sound import WALL_GAIN_DB, level_db
from econ.report.document.block import Blanks, Grid
from econ.report.document.content.basis import basis
from econ.report.document.readers import READER_WORDS, Reader, document
from econ.report.numbers import UnitSystem
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_case
from tests.unit.report.document.printed import demo_basis, demo_document, demo_pdf

LOWER = "lower_level_cold"


def known(content):
    """Return every line of a document's forms."""
    return {label: value for each in content.blocks if isinstance(each, Blanks) for label, value in each.lines}


def sheet_of(reader, units=UnitSystem.US, **site):
    case = with_fields(demo_case(LOWER), "site", site) if site else demo_case(LOWER)
    return document(basis(answer(case, load_tables(), TODAY, 0), load_tables(), TODAY, units), reader)


def test_what_was_not_read_off_the_label_is_blank_on_the_permit_sheet():
    lines = known(demo_document(LOWER, Reader.PERMIT))
    assert lines["Largest breaker (MOP), from the label"] == ""
    assert lines["Refrigerant; charge, from the label"] == ""
    assert lines["Supply; minimum circuit (MCA)"] == "240 V; ________"
    assert lines["To the boundary; to a window"] == ""


def test_what_the_user_said_stands_on_the_permit_sheet():
    lines = known(sheet_of(Reader.PERMIT, boundary_m="12 ft", breaker_a=20, conductor="12"))
    assert lines["To the boundary; to a window"] == "12 ft; ________"
    assert lines["Circuit; breaker; wire"] == "new; 20 A; 12 gauge copper"
    assert lines["Does the electrical work; licence no."].startswith("a licensed electrician")


def test_sound_at_a_window_is_told_only_for_a_distance_that_was_given():
    assert known(demo_document(LOWER, Reader.NEIGHBOUR))["Sound at that window"] == ""
    lines = known(sheet_of(Reader.NEIGHBOUR, bedroom_window_m="20 ft"))
    assert lines["From it to a bedroom window"] == "20 ft"
    low, high = (float(part) for part in lines["Sound at that window"].removesuffix(" dB").split(" to "))
    assert 33.0 < low < high < 55.0


def test_si_units_are_used_where_they_are_asked_for():
    lines = known(sheet_of(Reader.PERMIT, UnitSystem.SI))
    assert lines["Wall and its thickness"] == "block; 20 cm"


def test_the_helper_is_given_no_electrical_or_refrigerant_step():
    grid = next(each for each in demo_document(LOWER, Reader.HELPER).blocks if isinstance(each, Grid))
    steps = [row[0] for row in grid.rows]
    assert "Drill the wall for the line set" in steps
    assert not [step for step in steps if "circuit" in step or "valves" in step or "voltage" in step]


@pytest.mark.parametrize("name", NAMES)
def test_the_insurer_reads_that_nothing_is_proved(name):
    texts = [getattr(each, "text", "") for each in demo_document(name, Reader.INSURER).blocks]
    assert "This sheet records what was entered. It is not proof of compliance." in texts


def test_the_client_print_holds_no_notes_of_the_case():
    notes = "the house furnace reaches it poorly"
    assert notes in (demo_case("sunroom_with_quote").record.notes or "")
    texts = [getattr(each, "text", "") for each in demo_document("sunroom_with_quote", Reader.CLIENT).blocks]
    assert notes not in demo_pdf("sunroom_with_quote", Reader.CLIENT).text
    assert "This is not a contract." in texts


def test_a_let_home_without_own_work_tells_the_contractors_plan():
    assert demo_basis("top_floor_flat").work_way.name == "contracted_install"


def test_every_reader_has_a_name():
    assert set(READER_WORDS) == set(Reader)


def test_sound_falls_six_decibels_at_each_doubling():
    # ISO 9613-2:1996, equation (7): divergence 20 lg(d/d0) + 11 dB; doubling the distance adds 20 lg 2 = 6.02 dB.
    levels = level_db(np.array(60.0), np.array([1.0, 2.0, 4.0]))
    assert np.diff(levels) == pytest.approx([-6.0206, -6.0206], abs=1e-4)
    assert float(level_db(np.array(60.0), np.array(0.2))) == 60.0
    assert pytest.approx(10.0 * np.log10(2.0), abs=0.02) == WALL_GAIN_DB
