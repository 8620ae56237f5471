"""Basements of other depths, sizes, insulation and soils, computed by the program as rows of one case a city.

Their figures came after the method was settled. Where the simulation's first year, which starts from ground as cold as
one autumn night, is far from its 20th, ours lies between the two.
"""

import pytest

from tests.reference.simulation import basements
from tests.reference.simulation.table import BASEMENT_COOLING_FRAC, BASEMENT_FRAC, SMALL_BY_KWH, SMALL_KWH
from tests.reference.simulation.weather import need_files

BETWEEN = {("sf", 0), ("sf", 1), ("sf", 2)}
"""City and place among its shapes whose first year is not met: heating settles at a third or less of it."""

TOO_COOL = {("golden", 1), ("golden", 3)}
"""Bare walls in dry sunny Golden: cooling comes out 22 to 27 % low, its ground being 3 K warmer than ours."""


@pytest.fixture(params=["hourly", "monthly"])
def weather(request):
    if request.param == "hourly":
        need_files()
    return request.param


def numbered():
    """Return each shape with its place among those of its city."""
    seen = {}
    for shape in basements.shapes():
        seen[shape["city"]] = seen.get(shape["city"], -1) + 1
        yield pytest.param(shape, seen[shape["city"]], id=f"{shape['city']}-{seen[shape['city']]}")


def allowed_kwh(shape, duty):
    """Return by how much a first-year figure may be missed; the promise to basements."""
    theirs = shape[f"{duty}_kwh"]
    parts = [BASEMENT_FRAC * theirs, SMALL_BY_KWH if theirs < SMALL_KWH else 0.0]
    if duty == "cool":
        parts.append(BASEMENT_COOLING_FRAC * (shape["heat_kwh"] + shape["cool_kwh"]))
    return max(parts)


@pytest.mark.parametrize("duty", ["heat", "cool"])
@pytest.mark.parametrize(("shape", "place"), list(numbered()))
def test_basement_nobody_chose_by_is_within_the_promise(request, weather, shape, place, duty):
    key = (shape["city"], place)
    if key in TOO_COOL and duty == "cool":
        request.applymarker(pytest.mark.xfail(reason="ground 3 K colder than the simulation's", strict=True))
    ours = basements.annual_kwh(shape["city"], weather)[place][duty == "cool"]
    if key in BETWEEN:
        low, high = sorted((shape[f"{duty}_kwh"], shape[f"settled_{duty}_kwh"]))
        slack = allowed_kwh(shape, duty)
        assert low - slack <= ours <= high + slack
    else:
        assert ours == pytest.approx(shape[f"{duty}_kwh"], abs=allowed_kwh(shape, duty))


def test_the_deeper_and_the_smaller_the_less_heat(weather):
    deep, shallow, small, *_ = (heat for heat, _ in basements.annual_kwh("chicago", weather))
    assert shallow > deep > small
