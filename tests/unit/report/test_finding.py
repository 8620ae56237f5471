"""Findings with their figures: what there is, what is asked, and by how much that must change."""

import json
from datetime import date

import numpy as np
import pytest

from econ.case.edit import with_value
from econ.caution.registry import RULES, found
from econ.kernel.caution import Caution, Severity, Topic
from econ.report.look import Look
from econ.report.numbers import UnitSystem
from econ.report.plain import compare_json
from econ.report.style import Theme
from econ.report.terminal import compare_text
from econ.report.words.delivery import return_sentence
from econ.report.words.finding import _WORDS, at_least, at_most, figures
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_case
from tests.unit.caution.quiet import facts

FOOT_M, INCH_M = 0.3048, 0.0254
US = Look(date(2027, 5, 20), 2027)
SI = Look(date(2027, 5, 20), 2027, Theme.LIGHT, UnitSystem.SI)


def told(code, look=US, **changed):
    [caution] = [each for each in found(facts(**changed)) if each.code == code]
    return figures(caution, look)


def test_a_short_line_says_how_far_to_move_the_outdoor_unit():
    lines = {"line_run_m": 24 * FOOT_M, "line_box_m": 18 * FOOT_M, "line_reach_m": 18 * FOOT_M}
    text = told("line_set.too_short", **lines, line_short_m=6 * FOOT_M)
    assert text == (
        "18 ft in the box, 24 ft needed: move the outdoor unit 6 ft nearer along the way of the lines, "
        "or have a contractor make them up."
    )


def test_what_must_be_moved_is_rounded_so_that_it_is_enough():
    lines = {"line_run_m": 24.2 * FOOT_M, "line_box_m": 18 * FOOT_M, "line_reach_m": 18 * FOOT_M}
    assert "unit 7 ft nearer" in told("line_set.too_short", **lines, line_short_m=6.2 * FOOT_M)
    assert "unit 1.9 m nearer" in told("line_set.too_short", SI, **lines, line_short_m=6.2 * FOOT_M)
    assert at_least(6.01 * INCH_M, US) == "7 in"
    assert at_least(6.0 * INCH_M, US) == "6 in"
    assert at_most(5.99 * INCH_M, US) == "5 in"
    assert at_most(6.0 * INCH_M, US) == "6 in"


def test_an_allowed_extension_is_named_where_even_it_falls_short():
    lines = {
        "line_run_m": 35 * FOOT_M,
        "line_box_m": 18 * FOOT_M,
        "line_reach_m": 30 * FOOT_M,
        "line_short_m": 5 * FOOT_M,
    }
    assert "18 ft in the box, 30 ft with the maker's extension, 35 ft needed" in told("line_set.too_short", **lines)


# 24 ft at a quarter inch in a foot wants 6 in; 4 in are there: 2 in more, or 16 ft.
def test_a_drain_says_how_much_higher_or_how_long():
    drain = {"drain_run_m": 24 * FOOT_M, "drain_fall_m": 6 * INCH_M, "drain_drop_m": 4 * INCH_M}
    assert told("placement.drain_falls_too_little", **drain, drain_reach_m=16 * FOOT_M) == (
        "24 ft of drain wants 6 in of fall and has 4 in: hang the indoor unit 2 in higher, or let it run 16 ft at most."
    )


@pytest.mark.parametrize(
    ("code", "changed", "words"),
    [
        ("line_set.rise_too_high", {"line_rise_m": 30 * FOOT_M, "rise_limit_m": 25 * FOOT_M}, "them 5 ft nearer"),
        ("line_set.rise_too_high", {"line_rise_m": -30 * FOOT_M, "rise_limit_m": 25 * FOOT_M}, "30 ft between"),
        ("drilling.several_bites", {"is_masonry": True, "wall_thickness_m": 8 * INCH_M}, "4 in a bite: 2 bites"),
        ("drilling.bit_extension", {"is_masonry": True, "wall_thickness_m": 12 * INCH_M}, "12 in of wall"),
        ("drilling.beyond_the_bit", {"wall_thickness_m": 24 * INCH_M}, "reach 21 in, 3 in too little"),
        ("placement.gas_meter", {"gas_meter_m": 2 * FOOT_M}, "24 in there, 35 in asked: 12 in more."),
        ("placement.snow", {"snow_m": 0.3, "snow_foot_m": 0.4, "outdoor_height_m": 0.15}, "10 in higher than now"),
        ("delivery.return_window_over", {"dry_fit_d": 45.5}, "until Thu 1 July; the dry-fit is done on Sun 4 July."),
        (
            "line_set.extension",
            {"extension_allowed": True, "line_run_m": 25 * FOOT_M, "line_reach_m": 30 * FOOT_M},
            "20 ft in the box and 10 ft more; 25 ft needed.",
        ),
    ],
)
def test_each_finding_tells_its_own_figures(code, changed, words):
    assert words in told(code, **changed)


def test_every_finding_with_words_is_a_rule_with_the_evidence_they_need():
    by_code = {rule.code: rule for rule in RULES}
    assert set(_WORDS) <= set(by_code)
    for code, words in _WORDS.items():
        assert words(dict.fromkeys(by_code[code].evidence, 2.0), US).endswith(".")


def test_numbers_that_are_not_known_are_not_told():
    evidence = (("line_rise_m", float("nan"), "m"), ("rise_limit_m", 7.6, "m"))
    unread = Caution(
        "line_set.rise_too_high", Topic.WORK, Severity.HOLD_POINT, "Too high.", "Ask.", "you", "x", evidence
    )
    assert figures(unread, US) == ""


def with_run(run):
    return answer(with_value(demo_case("garage_studio_hot"), "site.line_run_m", run), load_tables(), TODAY, 0)


def test_figures_and_evidence_stand_in_the_json_beside_the_finding():
    document = json.loads(json.dumps(compare_json(with_run("40 ft"))))
    [short] = [each for each in document["cautions"] if each["code"] == "line_set.too_short"]
    assert short["figures"].startswith("16 ft in the box, 40 ft needed: move the outdoor unit 24 ft nearer")
    assert short["evidence"]["line_short_m"] == pytest.approx(24 * FOOT_M)
    assert all(each["figures"] is None or each["figures"].endswith(".") for each in document["cautions"])


def test_the_last_day_of_return_and_the_fee_stand_in_words_terminal_and_json():
    found_answer = with_run("10 ft")
    way = compare_json(found_answer)["alternatives"][2]
    sentence = return_sentence(found_answer.result, Look(found_answer.decision_date, found_answer.decision_date.year))
    assert way["name"] == "self_install"
    assert f"about ${round(way['restocking_usd'], -1):,.0f} and the freight" in sentence
    assert date.fromisoformat(way["return_by_date"]).strftime("%d %B").lstrip("0") in sentence
    assert " ".join(compare_text(found_answer).split()).endswith(sentence)
    assert all(
        other["return_by_date"] is None and other["restocking_usd"] is None
        for other in compare_json(found_answer)["alternatives"]
        if other["name"] != "self_install"
    )


def test_nothing_is_said_of_returning_what_may_not_be_put_in():
    refused = answer(with_value(demo_case("garage_studio_hot"), "site.permit", "refused"), load_tables(), TODAY, 0)
    assert return_sentence(refused.result, US) == ""
    assert np.isfinite(refused.result.alternatives[2].return_by_d).all()
