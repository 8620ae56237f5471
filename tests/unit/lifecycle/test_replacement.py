"""Replacement and residual: where each purchase falls and what is left at the end."""

import numpy as np
import pytest

from econ.kernel.errors import OutOfRangeError
from econ.lifecycle.replacement import Component, remaining_life_yr, replacement_stream, residual_value


def part(life, remaining=None, start=0.0, worth=100.0, price=100.0) -> Component:
    values = (worth, price, life, life if remaining is None else remaining, start)
    return Component(*(np.atleast_1d(np.asarray(value, dtype=float)) for value in values))


def by_hand(life: float, remaining: float, start: float, n_year: int) -> tuple[list[float], float]:
    """Buy one piece after another, as one would on paper."""
    flow, worn_out, span, price = [0.0] * (n_year + 1), start + remaining, remaining, 60.0
    while worn_out < n_year:
        flow[max(int(np.ceil(worn_out)), 1)] += 100.0
        worn_out, span, price = worn_out + life, life, 100.0
    return flow, price * min((worn_out - n_year) / span, 1.0) if span else 0.0


@pytest.mark.parametrize("life", [0.5, 1.0, 2.5, 7.3, 9.0, 15.0, 40.0])
@pytest.mark.parametrize("start", [0.0, 0.21, 1.3])
@pytest.mark.parametrize("used", [0.0, 0.35, 0.9])
def test_stream_and_residual_agree_with_buying_by_hand(life, start, used):
    remaining = life * (1.0 - used)
    flow, left = by_hand(life, remaining, start, 15)
    component = part(life, remaining, start, worth=60.0)
    assert replacement_stream(component, 15)[0].tolist() == flow
    assert float(residual_value(component, 15)[0]) == pytest.approx(left, abs=1e-9)


def test_life_that_ends_on_the_end_date_is_not_replaced():
    assert replacement_stream(part(15.0), 15).sum() == 0.0
    assert float(residual_value(part(15.0), 15)[0]) == 0.0


def test_life_just_short_of_the_end_date_is_replaced_and_nearly_all_is_left():
    short = part(15.0 - 1e-6)
    cost = replacement_stream(short, 15)[0, 15] - residual_value(short, 15)[0]
    assert replacement_stream(short, 15)[0, 15] == 100.0
    assert cost == pytest.approx(0.0, abs=1e-4)


def test_life_that_is_not_a_whole_number_is_paid_at_the_end_of_its_year():
    assert np.flatnonzero(replacement_stream(part(4.5), 15)[0]).tolist() == [5, 9, 14]


def test_later_service_moves_the_replacement():
    assert np.flatnonzero(replacement_stream(part(5.0, start=0.5), 15)[0]).tolist() == [6, 11]


def test_worn_out_unit_is_replaced_in_the_first_year():
    old = part(10.0, remaining=remaining_life_yr(np.array(10.0), np.array(12.0)))
    assert np.flatnonzero(replacement_stream(old, 15)[0]).tolist() == [1, 10]


def test_old_unit_that_outlives_the_study_keeps_a_share_of_its_worth():
    old = part(10.0, remaining=8.0, worth=40.0)
    assert replacement_stream(old, 6).sum() == 0.0
    assert float(residual_value(old, 6)[0]) == pytest.approx(10.0)


def test_part_never_in_service_keeps_its_worth():
    assert float(residual_value(part(10.0, start=9.0), 5)[0]) == 100.0


def test_lives_differ_by_row():
    both = part([5.0, 9.0])
    alone = [replacement_stream(part(life), 15)[0].tolist() for life in (5.0, 9.0)]
    assert replacement_stream(both, 15).tolist() == alone


def test_life_of_nothing_is_refused():
    with pytest.raises(OutOfRangeError, match="life is 0 years; it must be above 0 years"):
        part(0.0)


def test_negative_remaining_life_is_refused():
    with pytest.raises(OutOfRangeError, match="remaining life is -1 years; it must be 0 or more years"):
        part(5.0, remaining=-1.0)
