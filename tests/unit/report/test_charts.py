"""Pictures: each builds, says what its axes measure, names its alternatives and has a sentence and a table."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from econ.installation.first_cost import incentive_usd
from econ.kernel.alternative import HIRED, KEEP, SELF, WINDOW, Alternative
from econ.report.charts import CHARTS
from econ.report.numbers import Quantity, UnitSystem
from econ.report.pictures import (
    calendar,
    capacity,
    energy,
    first_cost,
    heat_loss,
    heat_source,
    lifetime,
    need,
    running_total,
)
from econ.report.pictures.frame import lifted, moved_apart
from econ.report.style import NAMES
from tests import builders

UNIT_WORDS = ("dollars", "Years", "kWh", "°F", "°C", "Btu/h", "kW", "Date", "Month", "Hours a year")
BY_ALTERNATIVE = ("running_total", "first_cost", "lifetime", "calendar", "energy")


def axis_words(figure):
    titles = [axis.title.text for axis in (*figure.select_xaxes(), *figure.select_yaxes()) if axis.title.text]
    return titles + [note.text for note in figure.layout.annotations if note.name == "upright axis"]


@pytest.mark.parametrize("key", CHARTS)
def test_every_axis_title_names_a_unit(key, result, look):
    titles = axis_words(CHARTS[key].figure(result, look))
    assert titles
    assert all(any(word in title for word in UNIT_WORDS) for title in titles)


@pytest.mark.parametrize("key", CHARTS)
def test_every_trace_has_a_name_and_no_legend_is_needed(key, result, look):
    figure = CHARTS[key].figure(result, look)
    assert all(trace.name for trace in figure.data)
    assert figure.layout.showlegend is False


@pytest.mark.parametrize("key", BY_ALTERNATIVE)
def test_every_trace_names_its_alternative(key, result, look):
    names = tuple(NAMES.values())
    assert all(trace.name.startswith(names) for trace in CHARTS[key].figure(result, look).data)


@pytest.mark.parametrize("key", BY_ALTERNATIVE)
def test_every_alternative_is_named_in_the_drawing_itself(key, result, look):
    labels = {note.name for note in CHARTS[key].figure(result, look).layout.annotations}
    assert labels >= set(NAMES.values())


@pytest.mark.parametrize("key", CHARTS)
def test_every_picture_has_one_sentence_and_a_table_of_even_columns(key, result, look):
    sentence, columns = CHARTS[key].statement(result, look), CHARTS[key].table(result, look)
    assert sentence.endswith(".")
    assert sentence.count(". ") == 0
    assert len({len(cells) for cells in columns.values()}) == 1


@pytest.mark.parametrize("key", CHARTS)
def test_no_picture_is_too_wide_for_a_phone(key, result, look):
    layout = CHARTS[key].figure(result, look).layout
    assert layout.width is None
    assert layout.margin.l + layout.margin.r <= 130


@pytest.mark.parametrize("key", CHARTS)
def test_no_number_that_does_not_exist_reaches_a_hover_text(key, result, look):
    assert "nan" not in CHARTS[key].statement(result, look).lower()


def test_units_follow_the_reader(result, look):
    metric = replace(look, units=UnitSystem.SI)
    assert "°C" in axis_words(capacity.figure(result, metric))[0]
    assert "°F" in axis_words(capacity.figure(result, look))[0]


def test_the_running_total_starts_at_the_first_cost_and_adds_every_year(result):
    spent = result.streams.running_total_usd
    flows = result.streams
    assert spent[:, 0, 0] == pytest.approx(flows.first_usd[:, 0])
    whole = flows.first_usd + (flows.energy_usd + flows.om_usd + flows.replacement_usd).sum(axis=-1)
    assert spent[..., -1] == pytest.approx(whole)


def test_a_crossing_lies_where_both_lines_have_spent_the_same(result):
    gain = next(found for found in running_total.crossings(result) if found.name == Alternative.SELF_INSTALL)
    spent = result.streams.running_total_usd[:, 0]
    year = np.arange(spent.shape[-1])
    for position in (SELF, 1):
        assert np.interp(gain.year_yr, year, spent[position]) == pytest.approx(gain.spent_usd)
    assert gain.is_cheaper_after


def test_crossing_years_agree_with_a_hand_worked_sheet():
    whole = builders.result()
    first = np.array([[0.0], [1000.0], [4000.0], [9000.0]])
    energy = np.broadcast_to(np.array([1e4, 1500.0, 900.0, 1400.0])[:, None, None], (4, 1, 16)).copy()
    energy[..., 0] = 0.0
    none = np.zeros_like(energy)
    flows = replace(whole.streams, first_usd=first, energy_usd=energy, om_usd=none, replacement_usd=none)
    found = running_total.crossings(replace(whole, streams=flows))
    # 4000 + 900 t = 1000 + 1500 t at t = 5; keeping passes its base case the other way at 1000 / 8500 of a year.
    assert [(each.name, each.is_cheaper_after) for each in found] == [
        (Alternative.KEEP_AS_IS, False),
        (Alternative.SELF_INSTALL, True),
    ]
    assert [each.year_yr for each in found] == pytest.approx([1000.0 / 8500.0, 5.0])


def test_bands_are_drawn_only_where_there_are_draws(result, look):
    drawn = builders.drawn(33)
    with_bands = running_total.figure(result, look, drawn)
    assert sum("eight draws in ten" in trace.name for trace in with_bands.data) == len(NAMES)
    assert not any("eight draws" in trace.name for trace in running_total.figure(result, look).data)


def test_without_a_crossing_the_sentence_says_so(result, look):
    flows = replace(result.streams, first_usd=result.streams.first_usd + np.array([[0.0], [0.0], [1e6], [1e6]]))
    same = flows.energy_usd.copy()
    same[KEEP] = same[1] * 0.5
    sentence = running_total.statement(replace(result, streams=replace(flows, energy_usd=same)), look)
    assert sentence.startswith("Within 15 years, no way that costs more at the start")


def test_first_cost_pieces_add_up_to_the_first_cost(result):
    for way in result.alternatives:
        left = float((way.first_cost_usd - incentive_usd(way.line_items))[0])
        assert sum(first_cost.category_usd(way).values()) == pytest.approx(left)


def test_own_time_is_drawn_in_outline(result, look):
    bars = {trace.name: trace for trace in first_cost.figure(result, look).data}
    assert bars["Put it in yourself: own time"].marker.color == "rgba(0,0,0,0)"
    assert bars["Put it in yourself: equipment"].marker.color != "rgba(0,0,0,0)"


def test_lifetime_pieces_drawn_add_up_to_the_lifetime_cost(result, look):
    figure = lifetime.figure(result, look)
    for position, name in enumerate(NAMES.values()):
        drawn = sum(trace.x[0] for trace in figure.data if trace.name.startswith(name))
        assert drawn == pytest.approx(float(result.measures.lcc_usd[position, 0]))


def test_the_calendar_tells_each_first_cool_day(result, look):
    assert "“Put it in yourself” on Sat 26 June" in calendar.statement(result, look)


def test_waits_are_hatched_and_work_is_filled(result, look):
    traces = {trace.name: trace for trace in calendar.figure(result, look).data}
    assert traces["Hire it out: waiting"].marker.pattern.shape == "/"
    assert traces["Hire it out: work"].marker.pattern.shape is None


def test_keeping_what_there_is_has_no_lane(result, look):
    assert not any(trace.name.startswith("Keep") for trace in calendar.figure(result, look).data)


def test_the_calendar_tells_how_far_each_first_cool_day_may_move(result, look):
    assert "on Sat 26 June (from 19 June to 17 July; 74 hours too warm until then" in calendar.statement(result, look)


def test_a_way_that_misses_the_summer_says_so_in_the_picture_and_the_sentence(result, look):
    late = builders.with_way(result, HIRED, is_in_time=np.array([False]), spare_d=np.array([-36.0]))
    written = [note.text for note in calendar.figure(late, look).layout.annotations]
    assert sum("misses the summer" in text for text in written) == 1
    assert (
        "too late for the summer, half of it over by 19 July: that took a decision by 14 April"
        in calendar.statement(late, look)
    )
    timely = builders.with_way(result, HIRED, spare_d=np.array([3.0]))
    assert not any("misses" in note.text for note in calendar.figure(timely, look).layout.annotations)


def test_days_after_the_decision_agree_with_the_dates_beside_them(result, look):
    late = float(np.floor(result.alternatives[SELF].in_service_d[0])) + 0.7
    moved = builders.with_way(result, SELF, in_service_d=np.array([late]))
    rows = list(zip(*calendar.table(moved, look).values(), strict=True))
    told = {(row[5], row[6]) for row in rows if row[1] == "First cool day, likely" and row[0] == "Put it in yourself"}
    assert told == {(look.day(late), f"{late - 0.7:.0f}")}
    assert {row[2] for row in rows} <= {"", "you", "helper", "electrician", "contractor"}


def test_what_decides_the_day_is_ruled_beneath_its_waits_thin_and_its_work_thick(result, look):
    some = result.alternatives[SELF].schedule
    plan = replace(some, is_critical=np.array([[True, False, True]]))
    traces = {trace.name: trace for trace in calendar.figure(builders.with_way(result, SELF, schedule=plan), look).data}
    waits = traces["Put it in yourself: waiting that decides the day"]
    work = traces["Put it in yourself: work that decides the day"]
    assert set(waits.customdata) == set(work.customdata) == {"Order and wait for delivery", "Hang, drill and connect"}
    assert work.line.width > 2.0 * waits.line.width


def test_the_range_of_the_first_cool_day_is_drawn_from_low_over_likely_to_high(result, look):
    traces = {trace.name: trace for trace in calendar.figure(result, look).data}
    drawn = traces["Hire it out: range of the first cool day"]
    assert [day[:10] for day in drawn.x] == ["2027-07-19", "2027-08-24", "2027-10-07"]
    assert drawn.marker.symbol[0] == drawn.marker.symbol[2] != drawn.marker.symbol[1]


def test_the_summer_is_shaded_where_it_lies_within_the_days_shown_and_named_where_it_does_not(result, look):
    assert any(shape.type == "rect" for shape in calendar.figure(result, look).layout.shapes)
    far = replace(result, waiting=replace(result.waiting, summer_from_d=320.0, summer_to_d=400.0))
    beyond = calendar.figure(far, look).layout
    assert not beyond.shapes
    assert any("summer begins 4 April 2028" in note.text for note in beyond.annotations)


def test_a_place_without_summer_has_no_band(result, look):
    cool = replace(result, waiting=replace(result.waiting, summer_from_d=np.nan, summer_to_d=np.nan))
    drawn = calendar.figure(cool, look).layout
    assert not drawn.shapes
    assert not any(note.text.startswith("summer") for note in drawn.annotations)


def test_the_calendar_s_table_tells_until_when_the_kit_may_go_back(result, look):
    columns = calendar.table(result, look)
    rows = list(zip(columns["Way to go"], columns["Task"], columns["Done"], strict=True))
    [(way, task, day)] = [row for row in rows if row[1].startswith("Last day to send")]
    assert (way, task) == ("Put it in yourself", "Last day to send the kit back ($380 kept, freight apart)")
    assert day == "Tue 29 June"


def test_the_calendar_s_table_tells_what_decides_and_the_range(result, look):
    columns = calendar.table(result, look)
    assert "First cool day, one try in ten later" in columns["Task"]
    assert set(columns["Decides the day"]) <= {"yes", "no", ""}


def test_the_heating_limit_is_where_need_passes_capacity(result):
    way = result.alternatives[SELF]
    limit = capacity.heating_limit_c(result, way)
    able = np.interp([limit, limit + 2.0], way.capability.at_c, np.nan_to_num(way.capability.heat_w))
    wanted = np.interp([limit, limit + 2.0], result.climate.bin_c, result.climate.bin_heat_w)
    assert able[0] < wanted[0]
    assert able[1] >= wanted[1]


def test_a_unit_that_never_falls_short_is_said_to_keep_up(result, look):
    easy = replace(result, climate=replace(result.climate, bin_heat_w=result.climate.bin_heat_w * 0.01))
    strong = builders.with_way(easy, SELF, unmet_heating_h=np.zeros(1))
    assert "keeps up in every hour" in capacity.statement(strong, look)


def test_single_hours_short_of_heat_are_told_though_the_mean_need_is_met(result, look):
    climate = replace(result.climate, bin_heat_w=result.climate.bin_heat_w * 0.0)
    sentence = capacity.statement(replace(result, climate=climate), look)
    first = look.measure(capacity.heating_short_from_c(result, result.alternatives[SELF]), Quantity.TEMPERATURE)
    assert f"at every temperature, but falls short in about 70 hours a year from {first} down" in sentence


def test_single_hours_short_of_cooling_are_told_with_where_they_begin(result, look):
    warm = builders.with_way(result, WINDOW, unmet_cooling_h=np.array([12.0]))
    first = capacity.cooling_short_from_c(warm, warm.alternatives[WINDOW])
    high = np.interp(first, warm.climate.bin_c, warm.climate.bin_cool_high_w)
    able = np.interp(first, warm.alternatives[WINDOW].capability.at_c, warm.alternatives[WINDOW].capability.cool_w)
    assert high > able
    assert "“New window units” falls short in hot weather in about 12 hours a year" in capacity.statement(warm, look)


def test_the_highest_hour_of_each_temperature_is_drawn_over_the_mean(result, look):
    traces = {trace.name: trace for trace in capacity.figure(result, look).data}
    for word in ("cooling needed", "heat needed"):
        mean, highest = traces[f"The rooms: {word}"].y, traces[f"The rooms: {word} in the highest hour"].y
        assert (np.nan_to_num(highest) >= mean).all()
        assert traces[f"The rooms: {word} in the highest hour"].line.dash == "dot"


def test_uses_drawn_add_up_to_what_is_bought(result, look):
    figure = energy.figure(result, look)
    for way in result.alternatives:
        drawn = sum(sum(trace.y) for trace in figure.data if trace.name.startswith(NAMES[way.name]))
        assert drawn == pytest.approx(float(way.electricity_kwh[0].sum() + way.fuel_kwh[0].sum()))


def test_each_alternative_has_a_row_of_its_own_to_one_scale(result, look):
    rows = list(energy.figure(result, look).select_yaxes())
    assert len(rows) == len(result.alternatives)
    assert len({tuple(axis.range) for axis in rows}) == 1
    ends = sorted(tuple(axis.domain) for axis in rows)
    assert all(below[1] <= above[0] for below, above in pairwise(ends))


def test_the_dearest_way_s_largest_use_is_told(result, look):
    assert energy.statement(result, look).endswith("mostly make-up heat.")


def test_pieces_of_heat_are_those_of_the_rooms_served(result):
    assert sum(heat_source.pieces_w(result).values()) == pytest.approx(result.rooms.piece_w[0].sum())


def test_losses_are_those_of_the_rooms_served_and_the_largest_is_named(result, look):
    assert sum(heat_loss.pieces_w(result).values()) == pytest.approx(result.rooms.loss_w[0].sum())
    # 1,700 of 4,300 W.
    assert "the largest part, 40 %, is that of walls, roof and floor" in heat_loss.statement(result, look)


def test_where_no_heat_is_asked_for_none_is_said_to_be_lost(result, look):
    rooms = replace(result.rooms, loss_w=np.zeros((2, 4)))
    assert heat_loss.statement(replace(result, rooms=rooms), look).startswith("No heat is asked for")


def test_the_largest_piece_of_heat_is_named(result, look):
    assert "comes from west windows" in heat_source.statement(result, look)


def test_heat_carried_away_hangs_below_zero(result, look):
    rooms = replace(result.rooms, piece_w=np.array([[400.0, -100.0, 900.0, 50.0, 0.0]] * 2))
    figure = heat_source.figure(replace(result, rooms=rooms), look)
    assert {trace.name: trace.y[0] for trace in figure.data}["roof"] == -100.0
    assert sum("carried away" in note.text for note in figure.layout.annotations) == 1


def test_the_share_of_moisture_is_of_the_cooling_need(result, look):
    # 760 kWh of moisture in 760 + 1,155 kWh of cooling.
    assert "40 % of it moisture" in need.statement(result, look)


def test_need_without_heat_does_not_speak_of_heating(result, look):
    cool = replace(result, need_heat_kwh=np.zeros((1, 12)))
    assert "kWh of heating" not in need.statement(cool, look)


@pytest.mark.parametrize("places", [[0.0, 0.1, 0.2], [1.0, 5.0, 5.5, 30.0], [3.0]])
def test_labels_moved_apart_keep_their_order_and_distance(places):
    moved = moved_apart(places, 4.0)
    assert all(b - a >= 4.0 - 1e-9 for a, b in pairwise(moved))


def test_labels_stay_above_the_axis():
    assert lifted(moved_apart([0.0, 0.1, 0.2], 4.0), 1.0, 4.0) == pytest.approx([1.0, 5.0, 9.0])
