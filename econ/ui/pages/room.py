"""Room: how much cooling, heating and drying it really needs."""

from typing import Final

import streamlit as st

from econ.ui import closing, fields, first, look, now, rooms, sketches

WHOLE: Final = (
    ("What must it do?", ("use.cool", "use.heat", "use.dry", "use.when")),
    (
        "How comfortable?",
        (
            "use.cooling_setpoint_c",
            "use.heating_setpoint_c",
            "use.humidity_limit_frac",
            "use.present_heat_stays",
            "site.pipes",
        ),
    ),
)
EACH: Final = (
    ("What room is it, and how big?", ("name", "kind", "floor_area_m2", "ceiling_height_m")),
    (
        "What is around it?",
        ("north_faces", "north", "east", "south", "west", "earth_depth_m", "ground_cover", "above", "below"),
    ),
    ("What are its walls?", ("wall", "wall_insulated")),
    (
        "How much glass?",
        ("window_north_m2", "window_east_m2", "window_south_m2", "window_west_m2", "glazing", "shade"),
    ),
    (
        "Who and what is in it?",
        ("draughts", "people_count", "screens_count", "kitchen", "door", "own_unit", "year_built"),
    ),
)
EXPERT: Final = (
    "length_m",
    "wall_u_w_per_m2k",
    "earth_wall_u_w_per_m2k",
    "roof_u_w_per_m2k",
    "floor_u_w_per_m2k",
    "window_u_w_per_m2k",
    "window_shgc_frac",
    "absorptance_frac",
    "unheated_frac",
    "infiltration_per_h",
    "leakage_area_m2",
    "air_50pa_m3_per_h",
    "appliances_w",
    "lighting_w",
    "mass_class",
    "mass_j_per_m2k",
    "own_cooling_w",
    "own_heating_w",
    "ground_absorptance_frac",
    "ground_wet_frac",
    "ground_open_frac",
)

st.title("How much cooling, heating and drying does this room really need?")
present = now.present()
look.said(rooms.sentence(present.answer))
index = rooms.chosen()
sketches.draw_room(index)
for title, paths in WHOLE:
    fields.group(title, *paths)
for title, names in EACH:
    fields.group(title, *(f"rooms[{index}].{name}" for name in names))
fields.expert(*(f"rooms[{index}].{name}" for name in EXPERT))
rooms.add_or_remove(index)
look.pictures(present.answer, *rooms.pictures(present.answer))
rooms.how_found(present.answer, index)
first.draw(present.answer)
closing.draw("room", present.answer, next_page="place", next_words="Next: where it is, and what energy costs")
