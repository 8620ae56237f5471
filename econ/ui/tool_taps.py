"""Tools of own work: one row a needed tool, how it is come by and for how much, and taps for have it and borrow it."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.sheet import point
from econ.evaluate.split import tool_plan
from econ.evaluate.wiring.installation_tools import ToolPlan
from econ.report.words.tools import tool_sentences, way_words
from econ.tables.tasks import installation_tables
from econ.ui import cached, now, state

_FIELDS: Final = {"have": "tools_owned", "borrow": "tools_borrowed"}
_WORDS: Final = {"have": "I have it", "borrow": "I can borrow it"}
_NONE: Final = "No tool is needed for what you do yourself."
_WAYS: Final = {"own": "have", "borrow": "borrow"}


def draw() -> None:
    """Ask of each tool whether it is there or can be borrowed, and say how the others are come by."""
    if (answer := now.present().answer) is None:
        return
    plans = tool_plan(answer.structure, point(answer.sheet), installation_tables())
    sentences = tool_sentences(plans) or (_NONE,)
    st.html("".join(f'<p class="small">{escape(sentence)}</p>' for sentence in sentences))
    for plan in plans:
        _row(plan)
    _others({plan.tool for plan in plans})


def _row(plan: ToolPlan) -> None:
    key = f"w_tool_{plan.tool}"
    with st.container(horizontal=True, vertical_alignment="center", key=f"tool_{plan.tool}", gap="small"):
        shared = f"For: {'; '.join(plan.tasks)}."
        st.html(
            f'<div class="task"><div class="what">{escape(plan.label)}<div class="small">{escape(way_words(plan))}'
            f"<br>{escape(shared)}</div></div></div>",
            width="stretch",
        )
        st.session_state[key] = _WAYS.get(plan.way)
        st.segmented_control(
            plan.label,
            list(_WORDS),
            format_func=_WORDS.__getitem__,
            key=key,
            label_visibility="collapsed",
            on_change=_tapped,
            args=(plan.tool,),
        )


def _tapped(tool: str) -> None:
    tapped = st.session_state[f"w_tool_{tool}"]
    answers = {field: [other for other in _listed(field) if other != tool] for field in _FIELDS.values()}
    if tapped:
        answers[_FIELDS[tapped]].append(tool)
    _keep(answers)


def _listed(field: str) -> list[str]:
    return list(state.value(f"work.{field}") or ())


def _keep(answers: dict[str, list[str]]) -> None:
    state.give_all("work", {field: tools or None for field, tools in answers.items()}, "work.tools_owned")


def _others(needed: set[str]) -> None:
    """Ask of the tools that the split as it stands does not need, folded."""
    labels = {tool: label for tool, label in cached.tool_labels().items() if tool not in needed}
    with st.expander("Other tools you have, not needed as it stands"):
        st.session_state["w_tools_other"] = [tool for tool in _listed("tools_owned") if tool in labels]
        st.pills(
            "Other tools you have",
            list(labels),
            selection_mode="multi",
            format_func=labels.__getitem__,
            key="w_tools_other",
            on_change=_others_ticked,
            args=(tuple(needed),),
        )


def _others_ticked(needed: tuple[str, ...]) -> None:
    kept = [tool for tool in _listed("tools_owned") if tool in needed]
    _keep({"tools_owned": [*kept, *st.session_state["w_tools_other"]]})
