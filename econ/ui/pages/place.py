"""Place and prices: how hot and cold it gets, and what energy and money cost."""

from typing import Final

import streamlit as st

from econ.ui import closing, fields, look, now, own_bills, own_weather, places

GROUPS: Final = (
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
        (
            "money.study_period_yr",
            "money.otherwise",
            "money.cash_limit_usd",
            "money.discount_rate_real_frac",
            "later.sale_after_yr",
        ),
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
    "tariff.clock_change",
    "prices.since_2023_frac",
    "prices.electricity_escalation_frac",
    "prices.fuel_escalation_frac",
    "prices.grid_kg_co2e_per_kwh",
    "prices.carbon_usd_per_t",
    "money.sales_tax_frac",
    "money.inflation_frac",
)

ELECTRICITY: Final = ("prices.electricity_usd_per_kwh", "tariff.kind", "prices.pays_bill")
TARIFF: Final = (
    "tariff.summer_from",
    "tariff.summer_to",
    "tariff.summer_usd_per_kwh",
    "tariff.peak_days",
    "tariff.peak_from_h",
    "tariff.peak_to_h",
    "tariff.peak_usd_per_kwh",
    "tariff.winter_peak_usd_per_kwh",
    "tariff.cheap_usd_per_kwh",
    "tariff.cheap_from_h",
    "tariff.cheap_to_h",
    "tariff.first_limit_kwh",
    "tariff.upper_usd_per_kwh",
    "tariff.second_limit_kwh",
    "tariff.top_usd_per_kwh",
    "tariff.other_use_kwh",
)
BILL: Final = (
    "prices.electricity_bill_usd",
    "prices.electricity_bill_kwh",
    "prices.electricity_bill_fixed_usd",
    "prices.gas_bill_usd",
    "prices.gas_bill_therms",
    "prices.gas_bill_fixed_usd",
)
NEXT_KWH: Final = (
    "What counts is the price of the next kWh: charges that stay whatever you use are the same on every way and are "
    "left out. The usual figure is your state's mean of 2023 times a factor to today, fixed charges within it, so a "
    "price from your own bill is better. Charges by the greatest kW of a month are not counted."
)


def energy_prices() -> None:
    """Ask what electricity costs: one price, what a tariff adds to it, or a bill to work it out from."""
    fields.group("What does energy cost?", *ELECTRICITY)
    st.caption(NEXT_KWH)
    fields.draw(*TARIFF)
    with st.expander("Work the price out from a bill"):
        st.caption(
            "The price is the total less the fixed charge, over what was used. A price typed above stands first."
        )
        fields.draw(*BILL)


st.title("How hot and cold does it get here, and what does energy and money cost you?")
present = now.present()
look.said(places.sentence(present.answer))
st.subheader("Where is it?")
places.ask()
own_weather.ask()
if made := places.made_from(present.answer):
    st.caption(made)
energy_prices()
for title, paths in GROUPS:
    fields.group(title, *paths)
own_bills.ask()
fields.expert(*EXPERT)
look.pictures(present.answer, "energy")
closing.draw("place", present.answer, next_page="equipment", next_words="Next: which size and kind")
