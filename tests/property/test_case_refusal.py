"""Whatever is typed, the answer is a case or faults in words: never another error."""

import contextlib

from hypothesis import example, given, settings
from hypothesis import strategies as st

from econ.case.form import all_fields
from econ.case.quantity import amount
from econ.case.schema import case_from
from econ.case.toml import read_case
from econ.kernel.errors import CaseError

SMALL = (
    b'[place]\nstation = "x"\n[[rooms]]\nfloor_area_m2 = "884 ft**2"\npeople_count = {low = 1, likely = 2, high = 3}\n'
)
UNIT_LETTERS = "abcdefhimnsuwxBCFJKWP*/^()_°. -0123456789"
ANYTHING = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=20)
    | st.dates()
    | st.datetimes()
    | st.times(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=10), inner, max_size=3),
    max_leaves=5,
)


@settings(max_examples=150, deadline=None)
@given(st.integers(0, len(SMALL)), st.binary(max_size=4))
def test_damaged_file_is_refused_in_words(at, junk):
    with contextlib.suppress(CaseError):
        read_case(SMALL[:at] + junk + SMALL[at + len(junk) :])


@settings(max_examples=400, deadline=None)
@given(st.text(UNIT_LETTERS, max_size=20), st.sampled_from([info for info in all_fields() if info.needs_unit]))
@example("ft**-1**9", next(info for info in all_fields() if info.needs_unit))
@example("m/(0)", next(info for info in all_fields() if info.needs_unit))
@example("ft**0", next(info for info in all_fields() if info.needs_unit))
@example("B^", next(info for info in all_fields() if info.needs_unit))
def test_strange_unit_is_refused_in_words(unit, info):
    with contextlib.suppress(CaseError):
        read = amount(f"3 {unit}", info.measure)
        assert read.is_unknown or info.low <= read.likely <= info.high


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(all_fields()), ANYTHING)
def test_value_of_any_kind_is_taken_or_refused_in_words(info, value):
    section, _, name = info.path.partition(".")
    tables = {"place": {"station": "x"}, "rooms": [{}]}
    part = tables["rooms"][0] if section == "rooms[]" else tables.setdefault(section, {})
    part[name] = value
    with contextlib.suppress(CaseError):
        case_from(tables)


@settings(max_examples=100, deadline=None)
@given(st.dictionaries(st.sampled_from(("place", "rooms", "kit", "x")), ANYTHING))
def test_tables_of_any_form_are_refused_in_words(tables):
    with contextlib.suppress(CaseError):
        case_from(tables)
