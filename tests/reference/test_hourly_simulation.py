"""Annual needs of rooms and basements against an hourly building simulation, cooling and heating of each.

Driven by the simulation's own hourly files (which come inside a package of its engine) and by monthly figures of the
same stations; once through room rows built from the simulation's layers, once through the program from a case's fields.
The simulation's basements are in the first year of a ground that starts cold, at a surface that nothing shades and
nothing evaporates from; run on, the insulated one in Chicago settles at 5,283 kWh of heating and 2,027 of cooling.
"""

import pytest

from tests.reference.simulation import product, table
from tests.reference.simulation.earth import conductances
from tests.reference.simulation.rooms import CASES, DAMP, GRIDDED
from tests.reference.simulation.table import annual_kwh, theirs, tolerance_kwh
from tests.reference.simulation.weather import need_files

WAYS = ["hourly", "monthly"]


def cases(names):
    """Return each case and duty."""
    return [pytest.param(name, duty, id=f"{name}-{duty}") for name in names for duty in ("heat", "cool")]


@pytest.fixture(params=WAYS)
def weather(request):
    if request.param == "hourly":
        need_files()
    return request.param


@pytest.mark.parametrize(("name", "duty"), cases(CASES))
def test_annual_need_is_within_the_promise(weather, name, duty):
    assert annual_kwh(name, weather)[duty] == pytest.approx(
        theirs()[name][f"{duty}_kwh"], abs=tolerance_kwh(name, duty)
    )


@pytest.mark.parametrize(("name", "duty"), cases(GRIDDED))
def test_basement_in_two_dimensional_earth_is_within_the_promise(weather, name, duty):
    ours = annual_kwh(name, weather, "grid")[duty]
    assert ours == pytest.approx(theirs()[name][f"{duty}_kwh"], abs=tolerance_kwh(name, duty))


@pytest.mark.parametrize(("name", "duty"), cases(product.CASES))
def test_program_from_a_case_is_within_the_promise(weather, name, duty):
    ours = annual_kwh(name, weather, "product")[duty]
    assert ours == pytest.approx(theirs()[name][f"{duty}_kwh"], abs=tolerance_kwh(name, duty))


@pytest.mark.parametrize("weather", WAYS)
def test_errors_have_both_signs(weather):
    if weather == "hourly":
        need_files()
    errors = [line.ours_kwh - line.theirs_kwh for line in table.lines(weather)]
    assert min(errors) < 0.0 < max(errors)


# hourly simulation: leaky over plain room, heating 1.98
def test_leaks_raise_heating_as_they_do_in_the_simulation(weather):
    ratio = annual_kwh("room_chicago_leaky1ach", weather)["heat"] / annual_kwh("room_chicago", weather)["heat"]
    assert ratio == pytest.approx(1.98, abs=0.25)


# hourly simulation: 400 W over 150 W of gain, cooling 1.90
def test_gains_raise_cooling_as_they_do_in_the_simulation(weather):
    ratio = annual_kwh("room_chicago_gain400", weather)["cool"] / annual_kwh("room_chicago", weather)["cool"]
    assert ratio == pytest.approx(1.90, abs=0.15)


# hourly simulation: bare over insulated basement, heating 1.43
@pytest.mark.parametrize("earth", ["table", "grid", "product"])
def test_insulation_lowers_heating_of_a_basement_as_it_does_in_the_simulation(weather, earth):
    bare, insulated = (annual_kwh(f"bsmt_{wall}_chicago", weather, earth)["heat"] for wall in ("bare", "ins"))
    assert bare / insulated == pytest.approx(1.43, abs=0.15)


@pytest.mark.parametrize("name", DAMP)
def test_drying_to_half_humidity_is_within_a_fifth(weather, name):
    """Both ways come out low: walls store no moisture here, and dry hours save nothing for damp ones."""
    assert annual_kwh(name, weather)["latent"] == pytest.approx(theirs()[name]["latent_kwh"], rel=0.20)


def test_grid_finds_what_a_bare_slab_between_two_plates_conducts():
    """A strip so wide and shallow that the wall is nothing: the floor's own resistance is all there is far inside."""
    wall_w, floor_w = conductances((0.5, 30.0, 0.2), (1e6, 1e3, 0.06), 0.0)
    assert floor_w.real == pytest.approx(30.0 / 1e3, rel=0.02)
    assert wall_w.real < 1e-5


def test_reference_table_prints_every_case(capsys):
    from tests.reference.__main__ import main

    main()
    printed = capsys.readouterr().out
    assert all(name in printed for name in CASES)
    assert "largest errors of both signs" in printed
