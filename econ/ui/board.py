"""The task board: one row a task in order, who does it, and what that adds up to."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.sheet import point
from econ.evaluate.split import split_advice, tool_plan
from econ.installation.schedule import Schedule
from econ.kernel.alternative import PARTIES, SELF, Party
from econ.report.words.margin import margin_sentence
from econ.report.words.tools import tool_sentences
from econ.tables.tasks import installation_tables
from econ.ui import cached, now, state
from econ.ui.ways import ways
from econ.uncertainty.answer import Answer

PARTY_WORDS: Final[dict[Party, str]] = {
    Party.SELF: "Me",
    Party.HELPER: "Helper",
    Party.ELECTRICIAN: "Electrician",
    Party.CONTRACTOR: "Contractor",
}
_SPLITS: Final[dict[str, Party | None]] = {
    "All me that may be": Party.SELF,
    "Usual split": None,
    "All hired": Party.CONTRACTOR,
}


def draw(answer: Answer) -> None:
    """Draw the board of putting it in yourself, and its totals."""
    schedule = answer.result.alternatives[SELF].schedule
    active = [place for place in range(len(schedule.task)) if schedule.is_active[0, place]]
    st.subheader("Who does what, if you put it in yourself")
    with st.container(horizontal=True):
        for words, party in _SPLITS.items():
            st.button(words, key=f"split_{words}", on_click=_split, args=(party, [schedule.task[i] for i in active]))
        st.button("Best split", key="split_best", on_click=_best, args=(answer,))
    advice = split_advice(answer.structure, point(answer.sheet), installation_tables())
    margins = {margin.task: margin_sentence(margin) for margin in advice.tasks}
    for place in active:
        if schedule.task[place] in cached.waits():
            _wait(schedule, place)
        else:
            task = schedule.task[place]
            _row((task, schedule.label[place]), PARTIES[int(schedule.party[0, place])], margins.get(task, ""))
    with st.container(key="board_totals"):
        _totals(answer)


def _wait(schedule: Schedule, place: int) -> None:
    """Draw a wait as a plain row without an owner: how long, and until when."""
    begun_d, ended_d = (float(days[0, place]) for days in (schedule.wait_start_d, schedule.finish_d))
    until = now.look().day(ended_d)
    html = f'<div class="task wait">{escape(schedule.label[place])}: {ended_d - begun_d:.0f} days, until {until}</div>'
    with st.container(key=f"wait_{schedule.task[place]}"):
        st.html(html)


def tools() -> None:
    """Ask which tools are there already, and which could be borrowed."""
    st.subheader("Which of these tools have you?")
    labels = cached.tool_labels()
    for field, words in (("tools_owned", "Tools you have"), ("tools_borrowed", "Tools you can borrow")):
        key = f"w_{field}"
        st.session_state[key] = [tool for tool in state.value(f"work.{field}") or () if tool in labels]
        st.pills(
            words,
            list(labels),
            selection_mode="multi",
            format_func=labels.__getitem__,
            key=key,
            on_change=_ticked,
            args=(field,),
        )
    if (answer := now.present().answer) is not None:
        plans = tool_plan(answer.structure, point(answer.sheet), installation_tables())
        st.html("".join(f'<p class="small">{escape(sentence)}</p>' for sentence in tool_sentences(plans)))


def _row(named: tuple[str, str], party: Party, margin: str) -> None:
    task, label = named
    under = f'<div class="small">{escape(margin)}</div>' if margin else ""
    with st.container(horizontal=True, vertical_alignment="center", key=f"task_{task}", gap="small"):
        st.html(f'<div class="task">{escape(label)}{_locked(task, party)}{under}</div>', width="stretch")
        st.session_state[f"w_task_{task}"] = party
        st.segmented_control(
            label,
            list(PARTY_WORDS),
            format_func=PARTY_WORDS.__getitem__,
            key=f"w_task_{task}",
            label_visibility="collapsed",
            on_change=_given,
            args=(task,),
            required=True,
        )


def _locked(task: str, party: Party) -> str:
    asked = state.value(f"work.parties.{task}")
    if asked is None or asked == party:
        return ""
    asker = PARTY_WORDS[Party(asked)]
    return f'<div class="locked">Locked: {asker} may not do this here. See what is allowed, below.</div>'


def _given(task: str) -> None:
    state.give(f"work.parties.{task}", str(st.session_state[f"w_task_{task}"]))


def _split(party: Party | None, tasks: list[str]) -> None:
    if party is None:
        state.take_back("work.parties")
    else:
        state.give("work.parties", {task: str(party) for task in tasks})


def _best(answer: Answer) -> None:
    advice = split_advice(answer.structure, point(answer.sheet), installation_tables())
    state.give("work.parties", advice.parties)


def _ticked(field: str) -> None:
    chosen = st.session_state[f"w_{field}"]
    if chosen:
        state.give(f"work.{field}", list(chosen))
    else:
        state.take_back(f"work.{field}")


def _totals(answer: Answer) -> None:
    way = ways(answer, now.look())[SELF]
    st.html(
        f'<div class="totals">Cash {way.cash} · your time {way.hours} · first cool day {way.cool_day} · '
        f"{escape(way.standing)}</div>"
    )
