"""The verdict where no way does the job."""

from econ.case.edit import with_value
from econ.case.schema import case_from
from econ.report.words.shortfall import nothing_fits
from econ.report.words.verdict import verdict_text
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import TODAY, demo_answer

HOT = case_from({"place": {"station": "Phoenix Sky Harbor Intl AP, AZ"}, "rooms": [{"kind": "garage"}]})


def with_small_units():
    case = with_value(with_value(HOT, "kit.size", "6"), "window.size", "5")
    return answer(with_value(case, "window.count", 1), load_tables(), TODAY, 0)


def test_where_nothing_does_the_job_no_way_is_called_cheapest():
    found = with_small_units()
    text = verdict_text(found.result, found.verdict)
    assert nothing_fits(found.verdict)
    assert text.startswith("None of these does all that you asked for")
    assert "cheapest" not in text
    assert "too warm for about" in text


def test_sizes_left_to_the_program_do_the_job():
    found = answer(HOT, load_tables(), TODAY, 0)
    assert not nothing_fits(found.verdict)


def test_a_case_with_a_way_that_does_the_job_is_not_called_so():
    assert not nothing_fits(demo_answer("lower_level_cold").verdict)
