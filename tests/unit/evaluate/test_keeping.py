"""Lists of the record: what belongs to a way on this site stands there, and nothing else."""

import numpy as np
import pytest

from econ.case.edit import with_fields
from econ.case.form import field_at
from econ.evaluate import keeping
from econ.evaluate.prepare import prepared
from econ.evaluate.sheet import point
from econ.evaluate.split import tool_plan
from econ.kernel.alternative import ALTERNATIVES, HIRED, KEEP, SELF, WINDOW
from econ.tables.keeping import SEASONS, WHOM, keeping_tables
from econ.tables.loaders import load_tables
from econ.tables.tasks import installation_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_answer, demo_case

LISTS = keeping_tables()
LOWER = "lower_level_cold"


def facts(**site):
    case = with_fields(demo_case(LOWER), "site", site)
    return keeping.named_facts(*prepared(case, load_tables(), TODAY)[:2])


def keys(rows, way, known):
    return {row.key for row in keeping.asked_rows(rows, ALTERNATIVES[way], known)}


@pytest.mark.parametrize("name", NAMES)
def test_every_row_names_facts_that_are_there_and_has_a_source(name):
    found = demo_answer(name, 0)
    known = keeping.named_facts(found.structure, found.sheet)
    for row in (*LISTS.questions, *LISTS.care, *LISTS.photos):
        assert set(row.conditions) <= set(known), row.key
        assert row.source
        assert row.text[0].isupper()


def test_questions_follow_the_order_of_phoning_and_care_that_of_the_year():
    order = [WHOM.index(row.group) for row in LISTS.questions]
    assert order == sorted(order)
    assert {row.group for row in LISTS.care} == set(SEASONS)
    assert all(row.minutes_min >= 1.0 for row in LISTS.questions)


def test_an_answer_goes_into_a_field_that_is_asked():
    settled = [row.settles for row in LISTS.questions if row.settles]
    assert len(settled) > 10
    assert all(field_at(path).kind in ("choice", "amount") for path in settled)


def test_the_utility_is_phoned_only_where_the_ground_is_opened():
    assert "mark_dig" in keys(LISTS.questions, SELF, facts(outdoor_place="ground_pad"))
    assert "mark_dig" not in keys(LISTS.questions, SELF, facts(outdoor_place="wall_bracket"))
    assert "anchors" in keys(LISTS.care, SELF, facts(outdoor_place="wall_bracket"))


def test_an_open_question_of_the_site_is_asked_as_on_the_careful_side():
    unknown, settled = (
        facts(association="not known", circuit="not known"),
        facts(association="none", circuit="own_circuit"),
    )
    assert {"association_rules", "panel_room", "same_circuit"} <= keys(LISTS.questions, SELF, unknown)
    assert not {"association_rules", "panel_room", "same_circuit"} & keys(LISTS.questions, SELF, settled)


def test_keeping_what_is_there_asks_for_nothing():
    assert not [row for row in (*LISTS.questions, *LISTS.care, *LISTS.photos) if ALTERNATIVES[KEEP] in row.routes]


def test_a_window_unit_has_no_joints_and_each_line_set_four():
    sheet = demo_answer(LOWER, 0).sheet
    assert keeping.joints(sheet, ALTERNATIVES[WINDOW]) == ()
    assert keeping.joints(sheet, ALTERNATIVES[SELF]) == (
        *("outdoor_wide_1", "outdoor_thin_1", "indoor_wide_1", "indoor_thin_1"),
    )


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("at", [WINDOW, SELF, HIRED])
def test_the_shopping_list_adds_up_to_the_goods_of_the_first_cost(name, at):
    found = demo_answer(name, 0)
    way = found.result.alternatives[at]
    items = way.line_items
    is_goods = np.array([part in ("equipment", "materials") for part in items.category])
    freight = sum(float(items.amount_usd[0, at]) for at, key in enumerate(items.key) if key == "freight_usd")
    goods = keeping.shopping(way)
    assert sum(each.cost_usd for each in goods) == pytest.approx(float(items.amount_usd[0, is_goods].sum()) - freight)
    assert all(each.quantity > 0.0 for each in goods)


def test_tools_are_bought_or_hired_as_the_tool_plan_says_and_hired_by_the_day_they_are_needed():
    found = demo_answer(LOWER, 0)
    way = found.result.alternatives[SELF]
    plans = tool_plan(found.structure, point(found.sheet), installation_tables())
    bought = {each.key for each in keeping.shopping(way, plans) if each.is_tool}
    hired = keeping.hires(way, plans)
    assert bought == {plan.tool for plan in plans if plan.way == "buy"}
    assert {each.tool for each in hired} == {plan.tool for plan in plans if plan.way == "hire"}
    starts = dict(zip(way.schedule.label, way.schedule.start_d[0], strict=True))
    assert all(each.from_d == min(starts[task] for task in each.tasks) for each in hired)
    assert [each.from_d for each in hired] == sorted(each.from_d for each in hired)


def test_hired_work_takes_no_tools_of_ones_own():
    found = demo_answer(LOWER, 0)
    assert keeping.plans_of(found.structure, found.sheet, ALTERNATIVES[HIRED]) == ()


def test_the_record_changes_no_number_of_the_answer():
    case = demo_case(LOWER)
    told = with_fields(case, "tests", {"supply_c": "54 degF", "volts_v": 240})
    plain, with_record = (answer(each, load_tables(), TODAY, 0) for each in (case, told))
    assert with_record.result.measures.lcc_usd.tolist() == plain.result.measures.lcc_usd.tolist()


def test_a_row_that_names_no_way_or_a_key_twice_is_refused(monkeypatch):
    from econ.kernel.errors import TableError
    from econ.tables import keeping as read

    row = {"key": "a", "season": "spring", "what": "Look", "how": "", "who": "", "routes": "self_install"} | {
        "condition": "always",
        "source": "common practice",
    }

    def refusal(*rows):
        monkeypatch.setattr(read, "read_table", lambda _name, _root: type("Rows", (), {"rows": lambda _: list(rows)})())
        with pytest.raises(TableError) as refused:
            read._rows("installation/care", None, read.SEASONS, read._care)
        return str(refused.value)

    assert "a names a group or an alternative that is not there" in refusal(row | {"routes": "nobody"})
    assert "a names a group or an alternative that is not there" in refusal(row | {"season": "monsoon"})
    assert "a key stands there twice" in refusal(row, row)
