"""Documents to print or hand over: for whom, and as which file."""

from datetime import date
from functools import partial
from typing import Final

import streamlit as st

from econ.report.document.file import Kind, document_bytes
from econ.report.document.readers import ONE_PAGE, READER_WORDS, TWO_PAGES, Reader
from econ.ui import cached, fields, look, record_fields, state
from econ.uncertainty.answer import Answer

_HOLDS: Final[dict[Reader, str]] = {
    Reader.OWNER: "Verdict with its doubt, costs line by line, loads, equipment, dates, cautions, every input.",
    Reader.CLIENT: "From the kit to the quote, what it holds, each line's usual range, both ways. Nothing private.",
    Reader.LANDLORD: "As for you, and who pays and who saves.",
    Reader.PERMIT: "The work, who does it, label, circuit, wall and site. No money.",
    Reader.INSURER: "The work and its tests, as entered. It proves nothing.",
    Reader.NEIGHBOUR: "Where the unit stands, its sound, its water, the days of work. No money.",
    Reader.HELPER: "Steps with two people, weights, stops. No money.",
}
_LENGTHS: Final = {**dict.fromkeys(ONE_PAGE, "One page to fill in by hand."), **dict.fromkeys(TWO_PAGES, "Two pages.")}
_MIME: Final = {Kind.PDF: "application/pdf", Kind.HTML: "text/html"}
_WORDS: Final = {Kind.PDF: "Save as PDF", Kind.HTML: "Save as a web page"}


def draw(answer: Answer) -> None:
    """Ask for the reader, say what the document holds, and offer it as a file."""
    st.session_state.setdefault("w_reader", Reader.OWNER)
    chosen = st.selectbox("Who will read it?", list(Reader), format_func=READER_WORDS.__getitem__, key="w_reader")
    reader = Reader(chosen or Reader.OWNER)
    length = _LENGTHS.get(reader, "Up to six pages, and an appendix of every input.")
    look.said(f"{_HOLDS[reader]} {length}", kind="plain")
    fields.draw("record.name", "record.filled_in_by")
    record_fields.draw("paper.address", "paper.leave_out", "paper.size", "paper.large_print")
    st.caption("Left open: letter paper, usual print, names printed. In large print a sheet takes more than one page.")
    with st.container(horizontal=True):
        for kind in _WORDS:
            st.download_button(
                _WORDS[kind],
                partial(_bytes, answer, reader, kind),
                file_name=f"{reader.value}.{kind.value}",
                mime=_MIME[kind],
                key=f"report_{kind.value}",
                type="primary" if kind is Kind.PDF else "secondary",
            )
    look.said("The file is made on this machine and sent nowhere. It prints well in black and white.", kind="plain")


def _bytes(answer: Answer, reader: Reader, kind: Kind) -> bytes:
    return document_bytes(answer, cached.tables_for(answer.case), date.today(), reader, kind, state.units())
