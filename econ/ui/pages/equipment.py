"""Equipment: which size and kind does the job, and what must be true of the circuit."""

from typing import Final

import streamlit as st

from econ.report.words.fit import fit_lines
from econ.ui import closing, fields, first, look, now, sketches

GROUPS: Final = (
    (
        "The kit you would put in",
        (
            "kit.size",
            "kit.grade",
            "kit.volts",
            "kit.connection",
            "kit.count",
            "kit.price_usd",
            "kit.return_window_d",
            "kit.restocking_frac",
            "kit.line_set_m",
            "kit.extension_allowed",
            "kit.refrigerant",
        ),
    ),
    ("The unit a contractor would put in", ("hired.size", "hired.grade")),
    (
        "Its label and its circuit, as far as you know",
        ("kit.mca_a", "kit.mop_a", "site.breaker_a", "site.conductor", "site.code_edition", "site.receptacle"),
    ),
    (
        "Has the home's service room for it?",
        (
            "panel.service_a",
            "panel.home_area_m2",
            "panel.range",
            "panel.dryer",
            "panel.water_heater",
            "panel.car_charger",
            "panel.heat_w",
        ),
    ),
    (
        "Units for a window or the wall, if they fit",
        (
            "window.kind",
            "window.opening",
            "window.clear_width_m",
            "window.clear_height_m",
            "window.escape",
            "window.over_walkway",
            "window.wall_bears",
            "window.outlet",
            "window.outlet_breaker_a",
            "window.outlet_volts",
            "window.size",
            "window.count",
            "window.cycle",
            "window.in_months",
            "window.seal",
            "window.price_usd",
        ),
    ),
    (
        "What you have now",
        ("now.cooling", "now.units_count", "now.unit_capacity_w", "now.unit_age_yr", "now.unit_worth_usd"),
    ),
    ("How long it lasts", ("kit.life_yr", "window.life_yr", "kit.upkeep_usd_per_yr", "hired.upkeep_usd_per_yr")),
)
EXPERT: Final = ("kit.seer2", "kit.eer2", "kit.hspf2", "kit.heads", "window.ceer", "hired.heads", "hired.equipment_usd")

st.title("Which size and kind does the job, and what must be true of the circuit?")
present = now.present()
first.before_size(present.answer)
look.pictures(present.answer, "capacity")
look.sizes(present.answer)
st.subheader("What must be true of the circuit?")
sketches.draw_circuit()
for title, paths in GROUPS:
    fields.group(title, *paths)
    if "window.kind" in paths and present.answer is not None:
        look.said(" ".join(fit_lines(present.answer.result)), kind="statement")
fields.expert(*EXPERT)
closing.draw("equipment", present.answer, next_page="work", next_words="Next: who does the work")
