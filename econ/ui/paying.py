"""How it is paid for and what comes later: the next set, the sale of the house, borrowed money, letting."""

from typing import Final

import streamlit as st

from econ.kernel.alternative import ALTERNATIVES
from econ.report import cash
from econ.report.words import money
from econ.ui import fields, look
from econ.uncertainty.answer import Answer

GROUPS: Final = {
    "Is it bought on borrowed money?": (
        "finance.pays_for",
        "finance.kind",
        "finance.loan_rate_frac",
        "finance.card_rate_frac",
        "finance.dearer_frac",
        "finance.month_count",
    ),
    "What comes later?": ("later.replaced_by", "later.sale_after_yr"),
    "Do you let it out? This is not tax advice": (
        "letting.counted",
        "letting.marginal_rate_frac",
        "letting.split_class",
        "letting.window_class",
        "letting.rent_window_usd_per_month",
        "letting.rent_split_usd_per_month",
    ),
}
EXPERT: Final = (
    "finance.share_frac",
    "finance.fee_frac",
    "finance.deposit_frac",
    "later.no_service_frac",
    "later.kept_self_frac",
    "later.kept_hired_frac",
    "letting.bonus_frac",
)


def draw(answer: Answer) -> None:
    """Draw the questions, and what the answers come to."""
    for title, paths in GROUPS.items():
        fields.group(title, *paths)
    fields.expert(*EXPERT)
    for sentence in sentences(answer):
        look.said(sentence, kind="statement")


def sentences(answer: Answer) -> tuple[str, ...]:
    """Return what borrowed money and repairs come to for each way."""
    told = [text(answer.result, name) for text in (money.financing_text, money.repairs_text) for name in ALTERNATIVES]
    return tuple(sentence for sentence in (*told, money.letting_text(answer)) if sentence)


def under_the_answer(answer: Answer) -> None:
    """Draw cash by month and how far each figure reaches, folded."""
    with st.expander("How much cash, month by month, until it is cool?"):
        look.table(cash.cash_table(answer))
    if answer.drawn is not None:
        with st.expander("How far may each figure reach? (1 in 20 below · middle · 1 in 20 above)"):
            look.table(cash.reach_table(answer.drawn))
