"""The list of saved cases, and case files in and out."""

from datetime import date
from html import escape

import streamlit as st

from econ.case.private import handed_over, has_private
from econ.case.toml import read_case, write_case
from econ.evaluate.known import known_names
from econ.kernel.errors import CaseError, EconError
from econ.store import cases
from econ.store.connection import store_path
from econ.ui import fields, identity, look, shelf, state


def draw() -> None:
    """List the cases on this machine, last changed first; deleted ones can be brought back."""
    try:
        standing, deleted = (cases.listed(store_path(), identity.owner(), deleted=gone) for gone in (False, True))
    except EconError as error:
        st.error(look.literal(str(error)))
        return
    st.button("Begin a new case", on_click=state.start_new)
    open_now = st.session_state[state.SAVED]
    for line in standing:
        _line(line, is_open=open_now is not None and line.case_id == open_now.case_id)
    if deleted:
        with st.expander(f"Deleted: {len(deleted)}"):
            for line in deleted:
                st.button(
                    f"Bring back: {look.literal(line.name)}",
                    key=f"back_{line.case_id}",
                    on_click=_restore,
                    args=(line.case_id,),
                )


def file_out() -> None:
    """Offer the open case as a file, without a contractor's own figures; these go into a file only if asked for."""
    case = state.current_case()
    with st.container(horizontal=True):
        st.download_button(
            "Save as a file", lambda: write_case(handed_over(case)), file_name="case.toml", mime="application/toml"
        )
        if has_private(case):
            st.download_button(
                "Save with my own figures, for myself alone", lambda: write_case(case), file_name="case_private.toml",
                mime="application/toml", key="private_file",
            )  # fmt: skip


def file_in() -> None:
    """Read a case file; every fault is listed at once and nothing is changed."""
    loaded = st.file_uploader("A case file (TOML, at most 1 MB)", type=["toml"], key="w_file", max_upload_size=1)
    if loaded is None:
        return
    try:
        case = read_case(loaded.getvalue(), known_names())
    except CaseError as error:
        st.html("".join(fields.fault_html(fault, fault.path) for fault in error.faults))
        return
    st.button(
        f"Open “{look.literal(shelf.title(case))}” as a new case",
        type="primary",
        on_click=state.start_new,
        args=(case,),
    )


def _line(line: cases.Listed, *, is_open: bool) -> None:
    with st.container(horizontal=True, vertical_alignment="center", key=f"case_{line.case_id}"):
        name = f"<b>{escape(line.name)}</b> (open)" if is_open else escape(line.name)
        when = shelf.saved_words(line.saved_at, date.today())
        st.html(f'{name} <span class="when">{when}</span>', width="stretch")
        st.button("Open", key=f"open_{line.case_id}", on_click=_open, args=(line.case_id,), disabled=is_open)
        st.button("Copy", key=f"copy_{line.case_id}", on_click=_copy, args=(line,))
        st.button("Delete", key=f"delete_{line.case_id}", on_click=_delete, args=(line.case_id,))


def _open(case_id: int) -> None:
    state.show_saved(*shelf.as_it_stands(case_id))


def _copy(line: cases.Listed) -> None:
    _, case = shelf.as_it_stands(line.case_id)
    record = case.record.model_copy(update={"name": f"{line.name} (copy)"})
    state.start_new(case.model_copy(update={"record": record}))


def _delete(case_id: int) -> None:
    cases.delete(store_path(), case_id)
    open_now = st.session_state[state.SAVED]
    if open_now is not None and open_now.case_id == case_id:
        state.start_new()


def _restore(case_id: int) -> None:
    cases.restore(store_path(), case_id)
