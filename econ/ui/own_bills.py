"""A year of bills pasted in: what they say, bill by bill, and whether they scale the room."""

from html import escape
from typing import Final

import streamlit as st

from econ.evaluate.bill_fit import CarrierFit
from econ.evaluate.bill_scale import BillFindings
from econ.kernel.errors import EconError
from econ.report import bills as told
from econ.report.pictures import bills as picture
from econ.report.style import PLOT_CONFIG
from econ.ui import cached, fields, look, now, state

_CARRIERS: Final = ("electricity", "gas")
_EXAMPLES: Final = {
    "electricity": "1/5/2026  2/4/2026  812 kWh  $148.20\n2/4/2026  3/6/2026  760 kWh  $139.75\n…",
    "gas": "1/5/2026  2/4/2026  96 therms  $151.10\n2/4/2026  3/6/2026  81 therms  $129.40\n…",
}
_HOW: Final = (
    "Paste 12 to 36 bills, one a row: first and last day (or the reading date, or the month), what was used, and if "
    "you like the dollars and the mean outdoor temperature from the bill (31 F). A table copied from a spreadsheet "
    "will do. Rows that cannot be read are named below and stay in the box."
)
_WEATHER: Final = (
    "Unless a row gives its own temperature, a bill is set against a typical year here, not the year it is from."
)
_MOST_PX: Final = 150


def ask() -> None:
    """Offer boxes to paste bills into, folded; show what they say."""
    said = state.current_case().bills
    with st.expander("I have a year of bills", expanded=False):
        st.caption(_HOW)
        for carrier in _CARRIERS:
            _box(carrier)
        if (said.electricity or said.gas) and (found := _findings()) is not None:
            st.caption(_WEATHER)
            for fit in found.fits:
                _show(fit)
            _scales(found)


def _findings() -> BillFindings | None:
    """Return what the bills say; before a town is chosen nothing can be said."""
    if not state.is_placed():
        st.info("Choose the town first: bills are set against its weather.")
        return None
    try:
        return cached.bill_findings(state.current_case())
    except EconError as error:
        st.html(f'<div class="fault" role="alert">{escape(str(error))}</div>')
        return None


def _box(carrier: str) -> None:
    path, key = f"bills.{carrier}", f"w_bills_{carrier}"
    refused = state.refused(path)
    st.session_state[key] = refused.typed if refused else state.value(path) or ""
    st.text_area(
        told.NAMES[carrier], key=key, placeholder=_EXAMPLES[carrier], height=_MOST_PX, on_change=_pasted,
        args=(path, key),
    )  # fmt: skip
    if refused:
        st.html(fields.fault_html(refused.fault))


def _pasted(path: str, key: str) -> None:
    typed = str(st.session_state[key])
    if typed.strip():
        state.give(path, typed, typed)
    else:
        state.take_back(path)


def _show(found: CarrierFit) -> None:
    """Show rows not taken, the fit in words, the picture and the bills one by one."""
    st.subheader(told.NAMES[found.carrier])
    for fault in found.text.faults:
        st.html(fields.fault_html(fault, f"row {fault.path.rpartition(' ')[2]}:"))
    for note in found.text.notes:
        st.caption(note)
    statement = told.statement(found, now.look())
    look.said(statement, kind="statement")
    if not len(found.billed_kwh):
        return
    if found.fit is not None:
        st.caption(told.quality(found.fit))
        drawn = picture.figure(found, now.look())
        st.plotly_chart(drawn, theme=None, config=PLOT_CONFIG, key=f"c_bills_{found.carrier}", alt=statement)
    look.table(told.table(found, now.look()))


def _scales(found: BillFindings) -> None:
    """Ask which part is this room's, say what follows, and offer to use it."""
    st.subheader("What do they say of this room?")
    fields.draw("bills.cooling_share_frac", "bills.heating_share_frac")
    for scale in found.scales:
        if scale.factor is None:
            st.caption(told.scale_sentence(scale))
        else:
            look.said(told.scale_sentence(scale), kind="statement")
    if found.factors or state.value("bills.use_fit"):
        fields.draw("bills.use_fit")
