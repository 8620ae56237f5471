"""What is told of a failure in July of year 5."""

import pytest

from econ.evaluate.failure import failures
from econ.kernel.alternative import HIRED, Alternative
from econ.report.look import Look
from econ.report.pictures import calendar
from econ.report.words import failure as words
from econ.report.words.waiting import register_text
from tests.demo import NAMES, demo_answer


def told(name):
    answer = demo_answer(name, 16)
    look = Look(answer.decision_date, answer.decision_date.year)
    return {each.way: words.rows(each, look) for each in failures(answer.result, answer.sheet, answer.decision_date)}


@pytest.mark.parametrize("name", NAMES)
def test_each_question_is_answered_for_each_way(name):
    for answers in told(name).values():
        assert len(answers) == 12
        assert all(text.endswith(".") and "nan" not in text for text in answers.values())


def test_who_comes_what_it_costs_and_what_the_warranty_wants_is_said():
    answers = told("lower_level_cold")[Alternative.SELF_INSTALL]
    assert answers["Will they come"].startswith("Not surely. The chance that none of those asked comes is 27 %")
    assert (
        answers["How long it takes"]
        == "18 days (6 to 59): 4 days (1 to 14) for the visit, then 14 days (5 to 45) for the part."
    )
    assert "parts for 5 years, no labour. So it pays $136" in answers["What the warranty pays"]
    assert "photographs of both nameplates" in answers["Which proof it wants"]
    assert answers["Register it by"].endswith("makers usually ask for it within 60 days of service.")


def test_a_window_unit_has_nothing_left_to_pay_it():
    answers = told("sunroom_with_quote")[Alternative.WINDOW_UNITS]
    assert answers["What the warranty pays"].endswith("So it pays nothing then.")
    assert answers["Register it by"] == "Nothing to register: keep the receipt."


def test_the_calendar_holds_the_last_day_to_register_both_ductless_ways():
    answer = demo_answer("lower_level_cold", 16)
    table = calendar.table(answer.result, Look(answer.decision_date, answer.decision_date.year))
    found = dict(
        zip(table["Task"], zip(table["Way to go"], table["Days after the decision"], strict=True), strict=True)
    )
    ways = [
        way for task, way in zip(table["Task"], table["Way to go"], strict=True) if task.startswith("Last day to reg")
    ]
    assert ways == ["Put it in yourself", "Hire it out"]
    service_d = float(answer.result.alternatives[HIRED].in_service_d[0])
    assert found[next(task for task in found if task.startswith("Last day to reg"))][1] == str(int(service_d + 60.0))


def test_the_dates_say_by_when_to_register():
    answer = demo_answer("lower_level_cold", 16)
    told = register_text(answer.result, Look(answer.decision_date, answer.decision_date.year))
    assert told.startswith("Register the warranty of “Put it in yourself” by ")
    assert told.endswith(", by the usual deadline; the paper decides.")
