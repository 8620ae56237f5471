"""Arrays of a building that do not fit together are refused, by name."""

from dataclasses import replace

import numpy as np
import pytest

from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.errors import ShapeError
from econ.portfolio.options import OPEN, Options


def options(n_room: int = 3) -> Options:
    zeros = np.zeros((n_room, len(ALTERNATIVES)))
    none = np.zeros(n_room, dtype=bool)
    first = np.zeros(n_room, dtype=np.int64)
    return Options(
        name=tuple(ALTERNATIVES),
        cost_usd=zeros,
        benefit_usd=zeros,
        too_hot_h=zeros,
        own_hours_h=zeros,
        electrician_d=zeros,
        current_a=zeros,
        is_open=zeros == 0.0,
        closed_reason=np.full(zeros.shape, OPEN),
        reasons=(),
        must=none,
        must_not=none,
        first_year=first,
        flat=first,
        whole_flat=np.zeros(1, dtype=bool),
    )


def test_arrays_of_one_shape_are_taken():
    assert options(5).n_room == 5
    assert options(5).keep == 0


def test_an_array_of_another_shape_is_named():
    with pytest.raises(ShapeError, match=r"cost_usd has shape \(2, 4\); give \(3, 4\), rooms by ways"):
        replace(options(), cost_usd=np.zeros((2, 4)))


def test_a_mark_for_another_number_of_rooms_is_named():
    with pytest.raises(ShapeError, match=r"must has shape \(2,\); give \(3,\), one a room"):
        replace(options(), must=np.zeros(2, dtype=bool))
