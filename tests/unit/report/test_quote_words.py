"""What is said of a quote: where the money goes, where it lies, what to ask; never an accusation."""

from dataclasses import replace
from datetime import date
from itertools import pairwise

import pytest

from econ.case.edit import with_fields, with_quote, with_value
from econ.evaluate.wiring.installation_quote import SOLD, WAGE
from econ.installation.quote import LINE_KINDS, SCOPE
from econ.installation.quote_bridge import REST, STEP_KIND, UNSORTED
from econ.report.document.drawing.quote_bridge import quote_bridge
from econ.report.document.drawing.shape import Disc, Stroke, Word
from econ.report.look import Look
from econ.report.pictures import bridge as picture
from econ.report.pictures import quote_ranges
from econ.report.words import quote, quote_equipment, quote_lines, quotes
from econ.report.words.otherwise import closed_sentence, otherwise_sentences
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from econ.uncertainty.quote import priced, quote_study
from econ.uncertainty.quotes import compared
from tests.demo import TODAY, demo_answer, demo_case

SUNROOM = "sunroom_with_quote"
LOOK = Look(TODAY, TODAY.year)


def studied(case):
    found = answer(case, load_tables(), TODAY, 0)
    return found, quote_study(found, priced(found, load_tables()))


def of_total(usd, **scope):
    case = with_fields(demo_case(SUNROOM), "quote", {"total_usd": usd, **dict.fromkeys(SCOPE, "yes"), **scope})
    return with_fields(case, "offer", {"lines": None, "kinds": None})


def test_every_step_and_kind_has_words():
    assert set(quote.STEP_WORDS) == {*STEP_KIND, UNSORTED, REST}
    assert tuple(quote.KIND_WORDS) == LINE_KINDS
    assert tuple(quote.SCOPE_WORDS) == SCOPE


def test_the_statement_names_difference_and_own_share():
    found, study = studied(demo_case(SUNROOM))
    bridge = study.bridges[WAGE]
    own = sum(cents for _, cents in quote.own_side_cents(found, study))
    said = quote.statement(found, study, bridge)
    assert quote.round_money(bridge.total_cents - bridge.kit_cents) in said
    assert quote.round_money(own) in said
    self_install = found.result.alternatives[2]
    assert own == pytest.approx(100 * float(self_install.first_cost_usd[0]) - study.kit_cents, abs=10)


@pytest.mark.parametrize(
    ("usd", "words"),
    [
        (1_500.0, "comes to no more than the price of the kit"),
        (3_000.0, "come to more: about"),
        (7_000.0, "that you'd also have to provide"),
    ],
)
def test_the_statement_follows_the_difference(usd, words):
    found, study = studied(of_total(usd))
    assert words in quote.statement(found, study, study.bridges[WAGE])


def test_the_verdict_turns_at_the_ends_of_the_range():
    study = studied(of_total(5_000.0))[1]
    price = study.own.price_usd
    width = price.high - price.low
    cases = {
        price.low - 1.0: "below the",
        price.low + 0.1 * width: "near the lower end",
        price.low + 0.5 * width: "near the middle",
        price.low + 0.9 * width: "near the upper end",
        price.high + 1.0: "above the",
    }
    for usd, words in cases.items():
        made = studied(of_total(usd))[1]
        assert words in quote.verdict(made, made.bridges[WAGE])


def test_a_missing_part_is_told_with_our_figure_and_to_be_asked():
    found, study = studied(of_total(4_500.0, electrical="not_said"))
    (sentence,) = quote.missing_sentences(study, study.bridges[WAGE])
    assert sentence.startswith("Licensed electrical work: not in the total")
    assert sentence.endswith("Ask about this.")
    assert "with all its parts" in quote.statement(found, study, study.bridges[WAGE])
    assert "With all its parts" in quote.verdict(study, study.bridges[WAGE])


def test_what_neither_lines_nor_items_tell_is_told_either_way():
    above, below = (studied(of_total(usd))[1].bridges[WAGE] for usd in (9_000.0, 3_500.0))
    assert "told apart neither by its lines nor by our own items" in quote.rest_sentence(above)
    assert "more than the quote" in quote.rest_sentence(below)
    assert quote.rest_sentence(studied(demo_case(SUNROOM))[1].bridges[WAGE]) == ""


def test_overhead_is_said_to_be_inside_the_rates_once():
    study = studied(of_total(5_400.0))[1]
    assert "twice" in quote.inside_sentence(study, study.bridges[SOLD], SOLD)
    assert "(assumption)" in quote.inside_sentence(study, study.bridges[WAGE], WAGE)
    lined = studied(demo_case(SUNROOM))[1]
    assert "shared among them" in quote.inside_sentence(lined, lined.bridges[WAGE], WAGE)


def test_a_quote_past_its_day_says_so():
    case = demo_case(SUNROOM)
    assert "That day is past" not in " ".join(quote.date_sentences(case, date(2027, 4, 7), 2027))
    assert "That day is past" in " ".join(quote.date_sentences(case, date(2027, 4, 8), 2027))
    started = with_value(case, "offer.start", "2027-04-14")
    assert "Start offered: Wed 14 April." in quote.date_sentences(started, TODAY, 2027)


def test_warranty_is_told_as_said_or_as_to_be_asked():
    case = demo_case(SUNROOM)
    assert quote.warranty_sentences(case, 2.0, "yes")[:2] == (
        "Labour warranty: 2 years, as the quote says.",
        "Parts warranty: 10 years.",
    )
    assert quote.warranty_sentences(case, 2.0, "no")[0] == "The quote gives no labour warranty."
    told = with_value(case, "offer.returns", "the same crew, within three days")
    assert quote.warranty_sentences(told, 2.0, "yes")[-1] == "If it fails: the same crew, within three days"


def test_each_kind_lies_inside_above_or_below():
    assert quote_lines.where(None, 1.0, 2.0) == quote_lines.NOT_A_LINE
    assert quote_lines.where(100, 0.0, 0.0) == quote_lines.NOT_RANGED
    at = {99: quote_lines.BELOW, 100: quote_lines.INSIDE, 200: quote_lines.INSIDE, 201: quote_lines.ABOVE}
    assert {cents: quote_lines.where(cents, 1.0, 2.0) for cents in at} == at


def test_every_kind_outside_its_range_has_a_question():
    for kind in LINE_KINDS[:-1]:
        for place in (quote_lines.ABOVE, quote_lines.BELOW, quote_lines.NOT_A_LINE):
            assert quote_lines.ask(kind, place)
        assert quote_lines.ask(kind, quote_lines.INSIDE) == ""


def test_lines_are_set_beside_ranges_and_missing_ones_are_asked():
    study = studied(demo_case(SUNROOM))[1]
    table = quote_lines.table(study)
    assert table["Kind of line"][0] == "Equipment"
    assert table["The quote"][0] == "$2,350.00"
    assert "no line of its own" in table["The quote"]
    assert quote_lines.asks(study)[-1] == "No line of its own: tax. Ask where that is counted."
    assert quote_lines.rows(studied(of_total(5_000.0))[1]) == []
    assert quote_lines.statement(studied(of_total(5_000.0))[1]) == ""


def test_several_lines_of_a_kind_are_counted():
    case = with_value(demo_case(SUNROOM), "offer.lines", "Crew 700\nStart 200")
    case = with_value(case, "offer.kinds", {"Crew": "labour", "Start": "labour"})
    table = quote_lines.table(studied(case)[1])
    at = table["Kind of line"].index("Labour (2 lines)")
    assert table["The quote"][at] == "$900.00"


def test_unsorted_lines_wait_to_be_sorted():
    case = with_value(demo_case(SUNROOM), "offer.kinds", {"Labour": "labour"})
    rows = quote_lines.rows(studied(case)[1])
    assert rows[-1][0] == "not_said"
    assert rows[-1][1] == 430_000


def test_the_lowest_quote_and_what_it_lacks_are_named():
    found = demo_answer(SUNROOM)
    own = priced(found, load_tables())
    pair = compared(found, own, load_tables())
    said = quotes.statement(pair)
    assert said.startswith("The quotes differ by $900. “Second quote”, the lowest, needs")
    assert "for the circuit and the same years of labour warranty" in said
    assert quotes.statement(pair[:1]) == ""
    assert quotes.span_sentence(pair[:1]) == ""
    whole = replace(found, case=with_quote(found.case, {"total_usd": 4000, "labour_warranty_yr": 3, **ALL}))
    assert "lacks nothing that another has" in quotes.statement(compared(whole, own, load_tables()))


ALL = dict.fromkeys(SCOPE, "yes")


def test_pictures_hold_each_bar_once_and_end_where_they_should():
    study = studied(of_total(4_500.0, electrical="not_said"))[1]
    bridge = study.bridges[WAGE]
    bars = picture.bars(bridge)
    assert [bar.label for bar in bars if bar.kind == "pier"] == ["the kit", "the quote", "with all its parts"]
    assert bars[-1].usd == pytest.approx(bridge.whole_cents / 100)
    for before, bar in pairwise(bars):
        assert bar.kind == "pier" or bar.start == pytest.approx(before.start + before.usd)
    figure = picture.figure(bars, LOOK)
    assert len(figure.data) == len(bars)


def test_a_hollow_bar_shows_our_range_where_it_stands_at_our_likely_value():
    study = studied(of_total(6_000.0, electrical="not_said"))[1]
    ranges = study.own.step_usd[WAGE]
    drawn = {bar.label: bar for bar in picture.bars(study.bridges[WAGE], ranges)}
    circuit = drawn[quote.STEP_WORDS["electrical"]]
    assert circuit.ends == pytest.approx(
        (circuit.start + ranges["electrical"].low, circuit.start + ranges["electrical"].high)
    )
    set_bar = drawn[quote.STEP_WORDS["equipment"]]
    assert set_bar.ends[0] == pytest.approx(set_bar.start + ranges["equipment"].low - study.kit_cents / 100)
    assert drawn["the quote"].ends == ()
    lined = studied(demo_case(SUNROOM))[1]
    assert all(bar.ends == () for bar in picture.bars(lined.bridges[WAGE], lined.own.step_usd[WAGE]))
    assert len(picture.figure(tuple(drawn.values()), LOOK).data) > len(drawn)


def test_the_mirror_ends_at_doing_it_oneself():
    found, study = studied(demo_case(SUNROOM))
    bars = picture.mirror_bars(study.kit_cents, quote.own_side_cents(found, study))
    whole = float(found.result.alternatives[2].first_cost_usd[0]) - study.resale_usd
    assert bars[-1].usd == pytest.approx(whole, abs=0.1)
    assert bars[0].usd == study.kit_cents / 100
    assert {"tools", "own time", "what may go wrong"} <= {bar.label for bar in bars}


def test_the_printed_bridge_is_told_apart_without_colour_and_stays_on_its_paper():
    study = studied(of_total(6_000.0, electrical="not_said"))[1]
    bars = picture.bars(study.bridges[WAGE], study.own.step_usd[WAGE])
    drawing = quote_bridge(bars, "bridge")
    strokes = [shape for shape in drawing.shapes if isinstance(shape, Stroke)]
    assert {bar.kind for bar in bars} == {"pier", "ours", "rest"}
    assert sum(bool(stroke.dash) for stroke in strokes) == sum(bar.kind == "ours" for bar in bars)
    assert any(isinstance(shape, Disc) for shape in drawing.shapes), "a pier of the quote is dotted"
    for stroke in strokes:
        assert all(0.0 <= x <= drawing.width and 0.0 <= y <= drawing.height for x, y in stroke.points)
    words = {shape.text for shape in drawing.shapes if isinstance(shape, Word)}
    assert {bar.label for bar in bars} <= words
    many = quote_bridge((*bars, *bars), "twice")
    assert many.height < 290.0, "a long bridge is set more tightly"


def test_range_picture_marks_what_lies_outside_hollow():
    rows = quote_lines.rows(studied(demo_case(SUNROOM))[1])
    marks = quote_ranges.ranges_figure(rows, LOOK).data[-1]
    outside = sum(place in (quote_lines.ABOVE, quote_lines.BELOW) for *_, place, _ in rows)
    assert list(marks.marker.symbol).count("triangle-up-open") == outside > 0


def test_names_of_quotes_are_text_in_the_picture():
    found = demo_answer(SUNROOM)
    case = with_value(found.case, "offer.name", "<b>bold</b>")
    own = priced(found, load_tables())
    figure = quote_ranges.quotes_figure(compared(replace(found, case=case), own, load_tables()), LOOK)
    assert figure.layout.yaxis.ticktext[0] == "&lt;b&gt;bold&lt;/b&gt;"


def test_what_one_would_take_on_is_hours_tools_permit_and_risk():
    text = " ".join(otherwise_sentences(demo_answer(SUNROOM), LOOK))
    for word in ("of your time", "Tools come to", "permits to", "may go wrong", "weighs about", "answer for the work"):
        assert word in text
    assert "let home" in closed_sentence(demo_answer("top_floor_flat"))


def test_the_equipment_difference_is_size_warranty_trade_price_and_markup():
    size, warranty, trade = quote_equipment.sentences(demo_answer(SUNROOM), load_tables())
    assert "12,000 Btu/h, standard class" in size
    assert "yours stands at $1,600" in size
    assert "10 years once registered, those of a kit 5 years" in warranty
    assert "$1,400" in trade
    assert "35 %" in trade
