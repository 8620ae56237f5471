"""Lists to take along and the record of the work: to buy, to hire, to ask, what was tested and done, what to mind."""

from collections.abc import Callable
from html import escape
from itertools import groupby
from typing import Final

import streamlit as st

from econ.case.form import field_at
from econ.case.sections.as_built import WHEN
from econ.evaluate import keeping
from econ.evaluate.bill_scale import month_mean_c
from econ.evaluate.first_year import Since, first_year
from econ.evaluate.result import AlternativeResult
from econ.kernel.alternative import ALTERNATIVES, Alternative
from econ.kernel.errors import EconError
from econ.report.numbers import money
from econ.report.sketch import split
from econ.report.words import keeping as words
from econ.report.words.first_year import since_more, since_sentence
from econ.report.words.record import done_table, entered_sentence
from econ.tables.keeping import SEASONS, Row, keeping_tables
from econ.ui import cached, fields, look, now, record_fields, state
from econ.uncertainty.answer import Answer

_TASK: Final = "w_record_task"
_WHOM: Final = "w_record_whom"
_AIR: Final = ("return_c", "supply_c", "outdoor_c", "minutes_min", "mode", "running", "band_low_k", "band_high_k")
_PAPERS: Final = (
    *("way", "in_service_on", "permit_no", "permit_on", "inspected_by", "inspected_on"),
    *("registered_on", "parts_until", "labour_until", "call_first"),
)
_OF_TASK: Final = {"done_by": "Done by", "licence": "Licence", "done_on": "On", "hours_h": "Hours", "cost_usd": "Paid"}
_EXAMPLE: Final = "6/1/2027  7/1/2027  640 kWh  74 F\n7/1/2027  8/1/2027  710 kWh  77 F\n…"


def draw(answer: Answer, name: Alternative) -> None:
    """Draw the lists and the record of a way, each folded.

    Parameters
    ----------
    answer : Answer
        The answer to the case.
    name : Alternative
        The way that is gone.
    """
    way = answer.result.alternatives[ALTERNATIVES.index(name)]
    facts = keeping.named_facts(answer.structure, answer.sheet)
    st.session_state[record_fields.WAY] = name.value
    st.subheader("To take along, and to keep")
    look.said(words.ENTERED, kind="small")
    parts: dict[str, Callable[[], None]] = {
        "To buy and to hire": lambda: _lists(answer, way),
        "Whom to phone, and what to ask": lambda: _phone(name, facts),
        "Tests before it is handed over": lambda: _tests(answer, name, facts),
        "Who really did what": lambda: _done(way),
        "Looking after it, season by season": lambda: _care(name, facts),
        "The first year: bills against the forecast": lambda: _first_year(answer, name),
    }
    for title, part in parts.items():
        folded = st.expander(title, key=f"x_{fields.slug(title.lower())}", on_change="rerun")
        if folded.open:
            with folded:
                part()


def _lists(answer: Answer, way: AlternativeResult) -> None:
    plans = keeping.plans_of(answer.structure, answer.sheet, way.name)
    goods, hires = keeping.shopping(way, plans), keeping.hires(way, plans)
    seen = now.look()
    if goods:
        look.table(
            {
                "To buy": [words.goods_label(each) for each in goods],
                "How much": [words.quantity_words(each, seen) for each in goods],
                "Estimated": [money(each.cost_usd) for each in goods],
            }
        )
    look.said(words.shopping_note(way.name, goods), kind="small")
    if hires:
        told = [words.hire_words(hire, seen) for hire in hires]
        titles = ("To hire", "For", "From", "Estimated")
        look.table({title: [row[at] for row in told] for at, title in enumerate(titles)})


def _phone(name: Alternative, facts: dict[str, bool]) -> None:
    rows = keeping.asked_rows(keeping_tables().questions, name, facts)
    if not rows:
        look.said("Nobody has to be asked for this way.", kind="small")
        return
    by_whom = {whom: list(group) for whom, group in groupby(rows, key=lambda row: row.group)}
    if st.session_state.get(_WHOM) not in by_whom:
        st.session_state[_WHOM] = next(iter(by_whom))
    told = {whom: _whom_words(whom, group) for whom, group in by_whom.items()}
    chosen = st.pills("Whom do you phone?", list(by_whom), format_func=told.__getitem__, key=_WHOM, required=True)
    if chosen:
        _card(chosen, by_whom[chosen])


def _whom_words(whom: str, rows: list[Row]) -> str:
    """Return who is phoned, and how many of the questions are answered."""
    answered = sum(state.value(f"phone.answers.{row.key}") is not None for row in rows)
    return f"{words.WHOM_WORDS[whom]} ({answered} of {len(rows)})"


def _card(whom: str, rows: list[Row]) -> None:
    """Draw whom to phone: how long it takes, the questions to read out, and a box for each answer."""
    minutes = sum(row.minutes_min for row in rows)
    st.html(
        f'<div class="phone"><h3>{escape(words.WHOM_WORDS[whom])}</h3>'
        f'<p class="small">About {minutes:.0f} minutes.</p></div>'
    )
    spoke, asked, told = (field_at(f"phone.{name}") for name in ("spoke_to", "asked_on", "answers"))
    for column, (info, label) in zip(
        st.columns(2, gap="medium"), ((spoke, "Name and number"), (asked, "Asked on")), strict=True
    ):
        with column:
            record_fields.one(f"{info.path}.{whom}", info, label)
    for left in range(0, len(rows), 2):
        for column, row in zip(st.columns(2, gap="medium"), rows[left : left + 2], strict=False):
            with column:
                record_fields.area(f"phone.answers.{row.key}", "What they said", told, f"“{row.text}”")
                source = "" if row.source.startswith("common practice") else f" Rule: {row.source}."
                st.html(f'<p class="small">{escape(row.more + source)}</p>')

    _settled(rows)


def _settled(rows: list[Row]) -> None:
    """Offer the fields that the answers go into, so that they move the numbers."""
    paths = tuple(dict.fromkeys(row.settles for row in rows if row.settles))
    if paths:
        st.caption("What was said moves the answer once it stands here:")
        fields.draw(*paths)


def _tests(answer: Answer, name: Alternative, facts: dict[str, bool]) -> None:
    if joints := keeping.joints(answer.sheet, name):
        _joints(joints)
        st.subheader("Air in and out")
        st.caption("Read after 15 minutes in the maker's test mode, or at full fan and the most extreme set-point.")
        record_fields.draw(*(f"tests.{each}" for each in _AIR))
        _split()
        st.subheader("Drain and power")
        record_fields.draw("tests.drain_l", "tests.drain", "tests.breaker_a", "tests.volts_v")
    _photos(name, facts)
    record_fields.area("tests.notes")


def _split() -> None:
    """Show how far the air blown out lies from the air drawn in, on the band where one may be shown."""
    tests, splits = state.current_case().tests, keeping_tables().splits
    told = words.split_sentence(tests, splits, now.look())
    if not told or words.no_band(tests):
        look.said(told, kind="statement")
        return
    low_k, high_k, _ = words.band_k(tests, splits)
    look.drawing(split.sketch(split.SplitDrawing(low_k, high_k, words.reading_k(tests)), told, now.look()), told)
    look.said(words.split_source(tests, splits), kind="small")


def _joints(joints: tuple[str, ...]) -> None:
    """Ask for the result of every joint at each of the three times."""
    st.subheader("Each joint, three times")
    record_fields.draw("tests.leak_means", *(f"tests.leak_{when}_on" for when in WHEN))
    info = field_at("tests.joints")
    for joint in joints:
        for column, when in zip(st.columns(len(WHEN), gap="small"), WHEN, strict=True):
            with column:
                label = f"{words.joint_words(joint)}: {words.WHEN_WORDS[when].lower()}"
                record_fields.one(f"tests.joints.{joint}.{when}", info, label)
    tests = state.current_case().tests
    told = (*words.joint_sentences(tests, joints), words.due_sentence(tests, now.look().this_year))
    look.said(" ".join(each for each in told if each), kind="statement")


def _photos(name: Alternative, facts: dict[str, bool]) -> None:
    labels = {row.key: row.text for row in keeping.asked_rows(keeping_tables().photos, name, facts)}
    taken = state.value("tests.photos") or ()
    state.put("w_tests_photos", [key for key in taken if key in labels])
    st.pills(
        "Photos taken", list(labels), selection_mode="multi", format_func=labels.__getitem__, key="w_tests_photos",
        on_change=_photographed, args=(tuple(key for key in taken if key not in labels),),
    )  # fmt: skip


def _photographed(others: tuple[str, ...]) -> None:
    """Keep the photos ticked, and those of another way with them."""
    taken = [*others, *st.session_state["w_tests_photos"]]
    if taken:
        state.give("tests.photos", taken)
    else:
        state.take_back("tests.photos")


def _done(way: AlternativeResult) -> None:
    record_fields.draw(*(f"as_built.{each}" for each in _PAPERS))
    record_fields.area("as_built.equipment", "As the labels say it; makers may be named here.")
    labels = {
        task: label
        for task, label, is_so in zip(way.schedule.task, way.schedule.label, way.schedule.is_active[0], strict=True)
        if is_so
    }
    if not labels:
        return
    st.subheader("Task by task")
    chosen = st.selectbox("Task", list(labels), format_func=labels.__getitem__, key=_TASK)
    for column, (name, label) in zip(st.columns(len(_OF_TASK), gap="small"), _OF_TASK.items(), strict=True):
        with column:
            record_fields.one(f"as_built.{name}.{chosen}", field_at(f"as_built.{name}"), label)
    if told := done_table(state.current_case(), way):
        look.table(told)
        look.said(entered_sentence(state.current_case(), way), kind="statement")
    record_fields.area("as_built.notes")


def _care(name: Alternative, facts: dict[str, bool]) -> None:
    rows = keeping.asked_rows(keeping_tables().care, name, facts)
    for season in SEASONS:
        of_season = [row for row in rows if row.group == season]
        if of_season:
            st.html(f"<h3>{escape(words.SEASON_WORDS[season])}</h3>")
            columns = {"What": "text", "How": "more", "Who": "who"}
            look.table({title: [getattr(row, part) for row in of_season] for title, part in columns.items()})
    built = state.current_case().as_built
    look.said(words.warranty_sentence(built), kind="statement")


def _first_year(answer: Answer, name: Alternative) -> None:
    st.caption(
        "Paste the bills since the unit first ran, one a row. A temperature in the row, such as 74 F, tells how warm "
        "it was. Bills from before belong on the page of place and prices."
    )
    record_fields.area("first_year.electricity", _EXAMPLE)
    record_fields.area("first_year.gas")
    said = state.current_case().first_year
    if not (said.electricity or said.gas):
        return
    try:
        typical_c = month_mean_c(answer.structure, answer.sheet, cached.tables_for(answer.case))
        found = first_year(state.current_case(), answer.sheet, answer.result, name, typical_c)
    except EconError as error:
        st.html(f'<div class="fault" role="alert">{escape(str(error))}</div>')
        return
    for since in found:
        _since(since)


def _since(since: Since) -> None:
    for fault in since.text.faults:
        st.html(fields.fault_html(fault, f"row {fault.path.rpartition(' ')[2]}:"))
    look.said(since_sentence(since, now.look()), kind="statement")
    for told in since_more(since, now.look()):
        look.said(told, kind="small")
