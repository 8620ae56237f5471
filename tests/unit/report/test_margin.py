"""A task's margin in words."""

import math

from econ.evaluate.split import TaskMargin
from econ.kernel.alternative import Party
from econ.report.words.margin import margin_sentence


def margin(extra_cash_usd, saved_h, flip_usd_per_h):
    return TaskMargin("hole", "Hole", Party.SELF, Party.SELF, Party.CONTRACTOR, extra_cash_usd, saved_h, flip_usd_per_h)


def test_dearer_work_says_at_which_hour_it_is_even():
    said = margin_sentence(margin(480.0, 9.0, 480.0 / 9.0))
    assert said == "The contractor costs $480 more and saves 9 h of yours: even at $53 an hour."


def test_cheaper_work_names_no_price_of_an_hour():
    assert margin_sentence(margin(-30.0, 2.0, -15.0)) == "The contractor costs $30 less and saves 2 h of yours."


def test_nothing_to_choose_says_nothing():
    assert margin_sentence(margin(math.nan, math.nan, math.nan)) == ""
