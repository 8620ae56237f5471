"""Every form a case file ever had can still be read."""

from pathlib import Path

import pytest

from econ.case.edit import state_of, value_at
from econ.case.schema import SCHEMA_VERSION
from econ.case.toml import read_case, read_case_file, write_case

HERE = Path(__file__).parent


@pytest.mark.parametrize("version", range(1, SCHEMA_VERSION + 1))
def test_file_of_each_version_is_read_and_written_in_todays_form(version):
    case = read_case_file(HERE / f"version_{version}.toml")
    assert read_case(write_case(case)) == case


def test_first_form_keeps_its_meaning():
    case = read_case_file(HERE / "version_1.toml")
    assert value_at(case, "rooms[0].floor_area_m2").likely == pytest.approx(884 * 0.3048**2)
    assert value_at(case, "place.warming_offset_k").likely == pytest.approx(0.7 / 1.8)
    assert value_at(case, "rooms[0].wall_u_w_per_m2k").high == pytest.approx(1.7034785, rel=1e-6)
    assert value_at(case, "now.unit_age_yr").low == 8
    assert state_of(case, "prices.electricity_usd_per_kwh") == state_of(case, "site.panel_spaces") == "not_known"
    assert case.work.parties == (("wall_hole", "contractor"),)
