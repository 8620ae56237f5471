"""Warranties of the ways, for who does what."""

from econ.evaluate.wiring.installation import installation
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW
from econ.tables.tasks import installation_tables
from tests.unit.installation.site_values import site_values, structure

STARTED = (("connect_lines", "contractor"), ("leak_check", "contractor"))


def covered(way, shape=None, **changed):
    found = installation(shape or structure(), site_values(**changed), installation_tables(), 1)[way].warranty
    columns = (found.parts_yr, found.compressor_yr, found.labour_yr, found.claims_paid_frac)
    return tuple(float(column[0]) for column in columns), found.voided_by


# Likely rows of the cost table: kit parts 5, compressor 7, labour 0, 80 % paid; trade 10, 10, 1; window 1, 1.
def test_each_way_has_the_terms_of_its_kind():
    assert covered(SELF)[0] == (5.0, 7.0, 0.0, 0.8)
    assert covered(HIRED)[0] == (10.0, 10.0, 1.0, 0.97)
    assert covered(WINDOW)[0] == (1.0, 1.0, 1.0, 0.97)
    assert covered(KEEP) == ((0.0, 0.0, 0.0, 0.0), ())


def test_a_kit_that_a_contractor_connects_and_starts_has_more_of_its_claims_paid():
    assert covered(SELF, structure(parties=STARTED[:1]))[0][3] == 0.8
    assert covered(SELF, structure(parties=STARTED))[0][3] == 0.95


def test_a_quote_brings_its_own_labour_warranty_or_none():
    quoted = {"shape": structure(has_quote=True), "quote__total_usd": 5000.0, "quote__labour_warranty_yr": 3.0}
    assert covered(HIRED, **quoted)[0][2] == 3.0
    assert covered(HIRED, quote__warranty="no", **quoted)[0][2] == 0.0


def test_what_would_void_it_is_said_of_all_that_is_bought():
    assert all(covered(way)[1] for way in (WINDOW, SELF, HIRED))
