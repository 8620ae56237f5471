"""What a case may name: the tasks that may be given to another party."""

import pytest

from econ.case.schema import case_from
from econ.evaluate.known import known_names
from econ.kernel.errors import CaseError


def test_task_of_another_way_is_refused_where_it_is_written_and_not_later():
    with pytest.raises(CaseError, match=r"cut_light.*is not a task"):
        case_from({"work": {"parties": {"cut_light": "contractor"}}}, known_names())


def test_task_of_a_self_installation_may_be_given_out():
    case = case_from({"work": {"parties": {"wall_hole": "contractor"}}}, known_names())
    assert case.work.parties == (("wall_hole", "contractor"),)
