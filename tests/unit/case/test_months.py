"""Twelve figures a line: read in their unit, kept as typed, refused month by month."""

import pytest

from econ.case.edit import value_at, with_value, without_value
from econ.case.schema import case_from, plain
from econ.case.toml import read_case, write_case
from econ.kernel.errors import CaseError

COLD = [-4.5, -2.0, 3.1, 9.4, 15.2, 20.6, 23.1, 22.2, 18.0, 11.6, 4.2, -2.4]


def case(**monthly):
    return case_from({"place": {"station": "Anywhere", "monthly": monthly}, "rooms": [{}]})


def faults(**monthly):
    with pytest.raises(CaseError) as caught:
        case(**monthly)
    return {fault.path: fault for fault in caught.value.faults}


def test_bare_numbers_are_in_the_unit_of_the_name():
    assert value_at(case(mean_c=COLD), "place.monthly.mean_c").values == tuple(COLD)


def test_text_with_a_unit_is_converted_and_kept_as_typed():
    typed = case(mean_c=["50 degF"] * 12)
    assert value_at(typed, "place.monthly.mean_c").values == pytest.approx((10.0,) * 12)
    again = read_case(write_case(typed))
    assert again == typed
    assert plain(again)["place"]["monthly"]["mean_c"] == ["50 degF"] * 12


def test_one_figure_can_be_set_and_taken_back():
    more = with_value(case(mean_c=COLD), "place.monthly.dew_point_c", [-9.0] * 12)
    assert value_at(more, "place.monthly.dew_point_c").values == (-9.0,) * 12
    assert value_at(without_value(more, "place.monthly.dew_point_c"), "place.monthly.dew_point_c") is None


def test_each_month_out_of_bounds_is_named():
    found = faults(mean_c=[*COLD[:11], 99.0], dew_point_c=["-80 degC", *COLD[1:]])
    assert set(found) == {"place.monthly.mean_c[11]", "place.monthly.dew_point_c[0]"}
    assert "must be between -60 and 50 degC" in found["place.monthly.mean_c[11]"].problem


@pytest.mark.parametrize(
    ("monthly", "path", "problem"),
    [
        ({"mean_c": COLD[:11]}, "mean_c", "must be a list of twelve"),
        ({"mean_c": 12.0}, "mean_c", "must be a list of twelve"),
        ({"mean_c": COLD, "rain": COLD}, "rain", "is no monthly figure"),
        ({"mean_c": ["not known", *COLD[1:]]}, "mean_c[0]", "must be one value"),
        ({"mean_c": [*COLD[:11], None]}, "mean_c[11]", "is missing"),
        ({"max_c": COLD, "min_c": COLD}, "mean_c", "is missing"),
        ({"mean_c": COLD, "max_c": COLD}, "min_c", "is missing"),
        ({"mean_c": COLD, "diffuse_kwh_per_m2": [1.0] * 12}, "global_kwh_per_m2", "is missing"),
        ({"mean_c": COLD, "max_c": COLD, "min_c": [*COLD[:11], 0.0]}, "min_c[11]", "must not be above mean_c"),
    ],
)
def test_figures_that_cannot_be_are_refused(monthly, path, problem):
    assert faults(**monthly)[f"place.monthly.{path}"].problem == problem


def test_months_that_are_no_table_are_refused():
    with pytest.raises(CaseError, match="must be a table of figures"):
        case_from({"place": {"station": "x", "monthly": "cold"}, "rooms": [{}]})


def test_empty_table_says_nothing():
    assert case().place.monthly is None


def test_months_need_a_point_on_the_map():
    with pytest.raises(CaseError, match=r"place\.latitude_deg \| is missing"):
        case_from({"place": {"monthly": {"mean_c": COLD}}, "rooms": [{}]})
    typed = {"latitude_deg": 0.0, "longitude_deg": 0.0, "monthly": {"mean_c": COLD}}
    assert case_from({"place": typed, "rooms": [{}]}).place.monthly


def test_point_needs_both_its_sides():
    with pytest.raises(CaseError, match=r"place\.longitude_deg \| is missing"):
        case_from({"place": {"latitude_deg": 41.0}, "rooms": [{}]})
