"""What a case may name: the tasks that may be given to another party."""

import pytest

from econ.case.schema import case_from
from econ.evaluate.known import known_names
from econ.kernel.errors import CaseError

ROOM = {"place": {"station": "Tampa International AP, FL"}, "rooms": [{"kind": "sunroom"}]}


def test_task_of_another_way_is_refused_where_it_is_written_and_not_later():
    with pytest.raises(CaseError, match=r"cut_light.*is not a task"):
        case_from(ROOM | {"work": {"parties": {"cut_light": "contractor"}}}, known_names())


def test_task_of_a_self_installation_may_be_given_out():
    case = case_from(ROOM | {"work": {"parties": {"wall_hole": "contractor"}}}, known_names())
    assert dict(case.work.parties) == {"wall_hole": "contractor"}


def test_record_of_the_work_may_name_tasks_of_every_way():
    assert {"commissioning", "cut_light"} <= set(known_names().tasks)
