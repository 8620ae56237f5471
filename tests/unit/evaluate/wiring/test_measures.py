"""Measures on the room: what each changes, what it costs, and that every way carries it alike."""

from dataclasses import replace

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.case.schema import case_from
from econ.evaluate.evaluate import evaluate
from econ.evaluate.known import known_names
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.wiring.measures import effect_path, room_work, treated
from econ.kernel.errors import CaseError
from econ.tables.loaders import load_tables
from tests.demo import TODAY

TABLES = load_tables()
KEYS = TABLES.measures.keys
TWO_ROOMS = case_from(
    {
        "place": {"station": "Greensboro Piedmont Triad Int, NC"},
        "rooms": [
            {"kind": "living", "above": "vented_attic", "draughts": "leaky", "year_built": 1965},
            {"kind": "bedroom", "above": "vented_attic", "draughts": "leaky", "door": "usually_closed"},
        ],
        "use": {"heat": "yes"},
        "now": {"house_system": "poorly", "heat": "gas"},
        "kit": {"size": "12"},
        "window": {"size": "12", "count": 1},
        "money": {"study_period_yr": 15, "discount_rate_real_frac": 0.03},
    }
)
CHANGED = {
    "outside_shade": {"rooms[0].shade_frac", "rooms[0].winter_sun_frac"},
    "window_film": {"rooms[0].window_shgc_frac"},
    "attic_insulation": {"rooms[0].roof_u_w_per_m2k"},
    "air_sealing": {"rooms[0].infiltration_per_h"},
    "fan": {"use.cooling_setpoint_c"},
    "balanced_duct": {"rooms[0].house_frac"},
}
"""Numbers that each measure changes where a second room lies behind a closed door."""

NEUTRAL = {"rooms[1].winter_sun_frac": 1.0, "rooms[1].house_frac": 0.0}
"""What is written for a room that a measure does not touch."""


def result(case):
    """Return structure, values and result of a case."""
    structure, sheet = prepared(case, TABLES, TODAY)
    return structure, point(sheet), evaluate(structure, point(sheet), TABLES)


def taken(*keys, case=TWO_ROOMS, **figures):
    """Return the case with measures chosen, and figures changed."""
    chosen = with_value(case, "measures.chosen", list(keys), known_names()) if keys else case
    for path, number in figures.items():
        chosen = with_value(chosen, f"figures.changed.{path.replace('__', '.')}", number)
    return chosen


def line(way, key):
    """Return quantity, price and amount of one line, first row."""
    at = way.line_items.key.index(key)
    return tuple(float(getattr(way.line_items, name)[0, at]) for name in ("quantity", "unit_price_usd", "amount_usd"))


@pytest.mark.parametrize("key", KEYS)
def test_each_measure_moves_exactly_the_numbers_it_lists(key):
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    values = point(sheet)
    after = treated(structure, values, TABLES, {key: np.ones(1, dtype=bool)})
    moved = {path for path in after if path not in values or np.any(after[path] != values[path])}
    assert moved - set(NEUTRAL) == CHANGED[key]
    assert all(after[path] == number for path, number in NEUTRAL.items() if path in after)


# By hand: 1 / (1 / U + R); U x left; set-point + rise
def test_the_numbers_moved_are_those_of_the_formulas():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    values = point(sheet)
    after = treated(structure, values, TABLES, dict.fromkeys(KEYS, np.ones(1, dtype=bool)))
    effect = {key: float(values[effect_path(key, TABLES.measures[key])]) for key in KEYS}
    u = float(values["rooms[0].roof_u_w_per_m2k"])
    assert after["rooms[0].roof_u_w_per_m2k"] == pytest.approx(1.0 / (1.0 / u + effect["attic_insulation"]), rel=1e-12)
    for path, key in (("shade_frac", "outside_shade"), ("infiltration_per_h", "air_sealing")):
        assert after[f"rooms[0].{path}"] == pytest.approx(values[f"rooms[0].{path}"] * effect[key], rel=1e-12)
    assert after["use.cooling_setpoint_c"] == pytest.approx(values["use.cooling_setpoint_c"] + effect["fan"], rel=1e-12)
    assert after["rooms[0].winter_sun_frac"] == pytest.approx(1.0 / effect["outside_shade"], rel=1e-12)
    assert after["rooms[0].house_frac"] == pytest.approx(effect["balanced_duct"], rel=1e-12)


def test_rows_that_do_not_take_a_measure_stay_as_they_were():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    values = point(sheet)
    after = treated(structure, values, TABLES, {"fan": np.array([True, False])})
    assert after["use.cooling_setpoint_c"][1] == values["use.cooling_setpoint_c"]
    assert after["use.cooling_setpoint_c"][0] > values["use.cooling_setpoint_c"]


def test_without_a_measure_nothing_is_changed_or_paid():
    structure, sheet = prepared(TWO_ROOMS, TABLES, TODAY)
    values = point(sheet)
    work = room_work(structure, values, TABLES, 1)
    assert work.values is values
    assert (work.lines, work.components, work.own_h.tolist()) == ((), (), [0.0])


def test_every_way_pays_for_every_measure_and_gives_its_hours():
    plain, done = (result(case)[2] for case in (TWO_ROOMS, taken(*KEYS)))
    lines = {f"measure_{key}" for key in KEYS} | {"measure_time"}
    for before, after in zip(plain.alternatives, done.alternatives, strict=True):
        assert lines <= set(after.line_items.key)
        assert all(line(after, f"measure_{key}")[2] > 0.0 for key in KEYS)
        bought = sum(line(after, f"measure_{key}")[2] for key in KEYS)
        assert after.cash_first_cost_usd - before.cash_first_cost_usd == pytest.approx(bought, rel=1e-9)
        assert after.own_hours_h - before.own_hours_h == pytest.approx(line(after, "measure_time")[0], rel=1e-9)


def test_a_measure_lowers_the_one_need_that_every_way_meets():
    plain, done = (result(case)[2] for case in (TWO_ROOMS, taken("window_film", "fan")))
    assert done.need_cool_kwh.sum() < 0.8 * plain.need_cool_kwh.sum()
    for before, after in zip(plain.alternatives[1:], done.alternatives[1:], strict=True):
        assert after.electricity_kwh[0, 6] < before.electricity_kwh[0, 6]
        assert before.unmet_cooling_kwh_per_yr >= after.unmet_cooling_kwh_per_yr


def test_goods_carry_sales_tax_and_paid_work_does_not():
    _, values, done = result(taken("window_film", "attic_insulation"))
    tax = 1.0 + float(values["money.sales_tax_frac"])
    keep = done.alternatives[0]
    assert line(keep, "measure_window_film")[1] == pytest.approx(values["costs.solar_film_usd_per_m2"] * tax, rel=1e-12)
    assert line(keep, "measure_attic_insulation")[1] == pytest.approx(
        values["costs.attic_insulation_usd_per_m2"], rel=1e-12
    )


def test_a_measure_that_does_nothing_costs_every_way_its_price_its_renewal_and_no_more():
    case = taken("window_film", measures__window_film__left_frac=1.0)
    plain, (_, values, done) = result(TWO_ROOMS)[2], result(case)
    quantity, price, amount = line(done.alternatives[0], "measure_window_film")
    own_usd = line(done.alternatives[0], "measure_time")[2]
    each, rate, life = amount + own_usd, 0.03, 10.0
    assert values["measures.window_film.life_yr"] == life
    # by hand: now, again at the end of year 10, and half of the second one's life left at the end of year 15
    by_hand = each * (1.0 + (1.0 + rate) ** -life - 0.5 * (1.0 + rate) ** -15)
    assert done.measures.lcc_usd - plain.measures.lcc_usd == pytest.approx(np.full((4, 1), by_hand), rel=1e-9)
    assert quantity * price == pytest.approx(amount)


def test_a_quote_takes_no_part_of_a_measure_for_its_own():
    quoted = with_value(TWO_ROOMS, "quote.total_usd", 5000)
    case = taken("window_film", case=quoted, measures__window_film__left_frac=1.0)
    plain, done = result(quoted)[2], result(case)[2]
    more = done.measures.lcc_usd - plain.measures.lcc_usd
    assert more == pytest.approx(np.full((4, 1), float(more[0, 0])), rel=1e-9)


def test_a_fan_costs_its_electricity_every_year_on_every_way():
    case = taken("fan", measures__fan__raise_k=0.0)
    plain, (_, values, done) = result(TWO_ROOMS)[2], result(case)
    yearly = float(values["measures.fan.electric_kwh_per_yr"] * values["prices.electricity_usd_per_kwh"])
    more = done.streams.om_usd[:, 0, 5] - plain.streams.om_usd[:, 0, 5]
    assert more == pytest.approx(np.full(4, yearly), rel=1e-9)


def test_what_the_house_system_carries_is_paid_for_at_its_own_price():
    plain, (_, values, done) = result(TWO_ROOMS)[2], result(taken("balanced_duct"))
    share = float(values["measures.balanced_duct.carried_frac"])
    assert done.need_cool_kwh == pytest.approx(plain.need_cool_kwh * (1.0 - share), rel=1e-9)
    assert done.need_heat_kwh == pytest.approx(plain.need_heat_kwh * (1.0 - share), rel=1e-9)
    cooled = share * float((plain.need_cool_kwh + plain.need_latent_kwh).sum())
    by_cooling = cooled / float(values["measures.balanced_duct.house_cop"]) * values["prices.electricity_usd_per_kwh"]
    heated = share * float(plain.need_heat_kwh.sum()) / float(values["now.heat_efficiency_frac"])
    # 29.3071 kWh a therm: 100,000 Btu (IT) of 1,055.056 J, NIST SP 811 (2008), App. B.8
    by_heating = heated * float(values["prices.gas_usd_per_therm"]) / 29.3071
    more = done.streams.om_usd[:, 0, 5] - plain.streams.om_usd[:, 0, 5]
    assert more == pytest.approx(np.full(4, float(by_cooling + by_heating)), rel=1e-5)


def test_what_the_house_system_carries_costs_a_row_the_same_alone_and_among_others():
    structure, sheet = prepared(taken("balanced_duct"), TABLES, TODAY)
    several = point(sheet) | {"now.heat_efficiency_frac": np.array([0.7, 0.8, 0.95])}
    found = evaluate(structure, several, TABLES).measures.lcc_usd
    for row, efficiency in enumerate(several["now.heat_efficiency_frac"]):
        alone = evaluate(structure, several | {"now.heat_efficiency_frac": np.asarray(efficiency)}, TABLES)
        assert found[:, row] == pytest.approx(alone.measures.lcc_usd[:, 0], rel=1e-12)


def test_a_duct_is_not_put_right_where_no_house_system_serves_the_room():
    without = with_value(TWO_ROOMS, "now.house_system", "no")
    plain, done = (result(case)[2] for case in (without, taken("balanced_duct", case=without)))
    assert done.need_cool_kwh == pytest.approx(plain.need_cool_kwh, rel=1e-12)
    assert line(done.alternatives[0], "measure_balanced_duct")[2] == 0.0


def test_sizes_follow_what_is_left_of_the_need():
    free = case_from(
        {"place": {"station": "Tampa International AP, FL"}, "rooms": [{"kind": "sunroom", "glazing": "single"}]}
    )
    plain, done = (result(case)[2] for case in (free, taken("window_film", "outside_shade", "fan", case=free)))
    for before, after in zip(plain.alternatives[1:], done.alternatives[1:], strict=True):
        assert after.capability.nominal_w < before.capability.nominal_w


def test_measures_are_done_once_each_in_the_order_of_their_table():
    structure, _ = prepared(taken("fan", "window_film", "fan"), TABLES, TODAY)
    assert structure.measures == ("window_film", "fan")


def test_draws_with_measures_give_the_same_row_alone_and_among_others():
    structure, sheet = prepared(taken(*KEYS), TABLES, TODAY)
    values = point(sheet)
    three = values | {"measures.outside_shade.left_frac": np.array([0.3, 0.45, 0.7])}
    together = evaluate(structure, three, TABLES)
    for row, left in enumerate((0.3, 0.45, 0.7)):
        alone = evaluate(structure, values | {"measures.outside_shade.left_frac": np.array([left])}, TABLES)
        assert together.need_cool_kwh[row] == pytest.approx(alone.need_cool_kwh[0], rel=1e-9, abs=1e-6)
        assert together.measures.lcc_usd[:, row] == pytest.approx(alone.measures.lcc_usd[:, 0], rel=1e-9)


def test_an_unknown_measure_is_refused_with_the_nearest():
    with pytest.raises(
        CaseError, match=r"measures.chosen \| names a measure that is not listed \| got 'window_flim'.*window_film"
    ):
        with_value(TWO_ROOMS, "measures.chosen", ["window_flim"], known_names())


def test_a_case_may_hold_measures_that_its_tables_name():
    assert TWO_ROOMS.measures.chosen is None
    assert replace(prepared(TWO_ROOMS, TABLES, TODAY)[0]).measures == ()
