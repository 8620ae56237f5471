"""Place and prices: how hot and cold it gets, and what energy and money cost."""

from typing import Final

import streamlit as st

from econ.ui import closing, fields, look, now, own_weather, places

GROUPS: Final = (
    ("What does energy cost?", ("prices.electricity_usd_per_kwh", "prices.pays_bill")),
    (
        "What heats it now, and what does that cost?",
        (
            "now.heat",
            "prices.gas_usd_per_therm",
            "prices.propane_usd_per_gal",
            "prices.oil_usd_per_gal",
            "prices.wood_usd_per_cord",
            "now.dehumidifier",
        ),
    ),
    (
        "How long, and with what money?",
        ("money.study_period_yr", "money.discount_rate_real_frac", "money.cash_limit_usd"),
    ),
    (
        "What would somebody pay you for it?",
        (
            "money.incentive_self_usd",
            "money.incentive_self_terms",
            "money.incentive_hired_usd",
            "money.incentive_hired_terms",
            "money.incentive_window_usd",
            "money.incentive_window_terms",
        ),
    ),
    ("When do you decide?", ("place.decision_date", "place.state")),
)
EXPERT: Final = (
    "money.incentive_self_frac",
    "money.incentive_hired_frac",
    "money.incentive_window_frac",
    "place.cool_design_c",
    "place.heat_design_c",
    "place.warming_offset_k",
    "place.warming_reason",
    "place.wind_m_per_s",
    "place.soil_conductivity_w_per_mk",
    "place.soil_heat_j_per_m3k",
    "now.heat_efficiency_frac",
    "prices.since_2023_frac",
    "prices.electricity_escalation_frac",
    "prices.fuel_escalation_frac",
    "money.sales_tax_frac",
)

st.title("How hot and cold does it get here, and what does energy and money cost you?")
present = now.present()
look.said(places.sentence(present.answer))
st.subheader("Where is it?")
places.ask()
own_weather.ask()
if made := places.made_from(present.answer):
    st.caption(made)
for title, paths in GROUPS:
    fields.group(title, *paths)
fields.expert(*EXPERT)
look.pictures(present.answer, "energy")
closing.draw("place", present.answer, next_page="equipment", next_words="Next: which size and kind")
