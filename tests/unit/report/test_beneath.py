"""What stands beneath the verdict."""

from econ.report.words.beneath import beneath
from tests.demo import demo_answer


def test_most_cash_and_where_the_tries_lean_stand_beneath_the_verdict():
    said = " ".join(beneath(demo_answer("lower_level_cold", 64)))
    assert "The most cash you should expect to need is $" in said
    assert "half the tries come to more than $" in said


def test_nothing_stands_there_before_any_tries_were_run():
    assert beneath(demo_answer("lower_level_cold")) == ()
