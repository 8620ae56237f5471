"""Electricity of a year from a station's monthly figures against the same from its hourly file, through machines.

Promise: within 5 %, where the year takes more than 200 kWh; below that within 10 kWh. Not met by a sunroom in Golden
(-6 % for window units with electric heat): its sun is the same on all days of a month, while there clear and dull days
follow each other in the cold. The files come inside a package of the simulation's engine.
"""

from datetime import date
from functools import lru_cache

import pytest

from econ.case.schema import case_from
from econ.evaluate.evaluate import evaluate
from econ.evaluate.place import with_hourly_file
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.kernel.alternative import SELF, WINDOW
from econ.tables.loaders import load_tables
from tests.reference.simulation.weather import FILES, STATIONS, folder, need_files

HEATED = {"cool": "yes", "heat": "yes", "when": "day_and_night", "present_heat_stays": "no"}
COOLED = {"cool": "yes", "heat": "no", "when": "evenings_and_nights"}
ROOMS = {
    "living": ({"kind": "living", "floor_area_m2": "30 m**2"}, HEATED),
    "bedroom": ({"kind": "bedroom"}, COOLED),
    "lower_level": ({"kind": "lower_level"}, HEATED),
    "sunroom": ({"kind": "sunroom"}, HEATED),
}
NOT_MET = {("golden", "sunroom")}
WAYS = (WINDOW, SELF)
SMALL_KWH, FLOOR_KWH = 200.0, 10.0


@lru_cache(maxsize=64)
def kwh(city, room, way_of_weather):
    """Return electricity of window units and kit; sizes are the same, chosen by the same design temperatures."""
    station = load_tables().stations.station(STATIONS[city])
    place = {"warming_offset_k": "0 K", "state": station.state}
    place |= {f"{side}_design_c": f"{getattr(station, f'{side}_design_c')} degC" for side in ("heat", "cool")}
    place |= {"hourly_file": FILES[city]} if way_of_weather == "hourly" else {"station": station.name}
    kind, use = ROOMS[room]
    case = case_from({"place": place, "rooms": [kind], "use": use, "now": {"heat": "electric"}, "kit": {"size": "12"}})
    tables = with_hourly_file(load_tables(), case, lambda written: (folder() / written).read_bytes())
    structure, sheet = prepared(case, tables, date(2027, 1, 4))
    ways = evaluate(structure, point(sheet), tables).alternatives
    return tuple(float(ways[way].electricity_kwh.sum()) for way in WAYS)


def cases():
    marks = {
        pair: pytest.mark.xfail(reason="sun does not differ between days of a month", strict=True) for pair in NOT_MET
    }
    return [pytest.param(*pair, marks=marks.get(pair, ())) for pair in ((c, r) for c in FILES for r in ROOMS)]


@pytest.mark.parametrize(("city", "room"), cases())
def test_electricity_from_monthly_figures_is_within_a_twentieth_of_the_hourly_file_s(city, room):
    need_files()
    for hourly, monthly in zip(kwh(city, room, "hourly"), kwh(city, room, "monthly"), strict=True):
        assert monthly == pytest.approx(hourly, rel=0.05 if hourly > SMALL_KWH else 0.0, abs=FLOOR_KWH)


@pytest.mark.parametrize(("city", "room"), sorted(NOT_MET))
def test_what_misses_it_is_within_seven_hundredths(city, room):
    need_files()
    for hourly, monthly in zip(kwh(city, room, "hourly"), kwh(city, room, "monthly"), strict=True):
        assert monthly == pytest.approx(hourly, rel=0.07)


def test_errors_have_both_signs():
    need_files()
    pairs = [(kwh(c, r, "hourly"), kwh(c, r, "monthly")) for c in FILES for r in ROOMS]
    errors = [m - h for hourly, monthly in pairs for h, m in zip(hourly, monthly, strict=True)]
    assert min(errors) < 0.0 < max(errors)
