"""A room: what it is, how big, what surrounds it, and who is in it."""

from typing import ClassVar

from econ.case.field import FRACTION, POWER, U_VALUE, WINDOW_AREA, amount, choice, length, words
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section, Text

_COUNT = Measure("", "", 0.0, 50.0)
_WATTS = Measure("W", "W", 0.0, 20_000.0)
_SIDE = "What this side touches: outdoor air, a room that is heated, one that is not, or earth."
_GLASS = "Glass area on this side, all windows and glass doors together. Width times height; 0 for none."


class Room(Section):
    """One room, or several that share their air."""

    path: ClassVar[str] = "rooms[]"

    name: Text = words("Name", "What you call the room.")
    kind: Choice = choice("Kind of room", "Sets the usual values for everything you leave out.")
    floor_area_m2: Amt = amount(
        "Floor area", "Length times width inside. Pacing it out is good enough.", Measure("m**2", "ft**2", 1.0, 1_000.0)
    )
    length_m: Amt = amount(
        "Length of the north and south sides", "Left out, the room is taken as square.", length(0.8, 100.0), expert=True
    )
    ceiling_height_m: Amt = amount("Ceiling height", "Floor to ceiling; the average if it slopes.", length(1.5, 10.0))
    north_faces: Choice = choice(
        "The north side really faces", "Name as north the side that comes nearest, and turn the room here."
    )
    north: Choice = choice("North side", _SIDE)
    east: Choice = choice("East side", _SIDE)
    south: Choice = choice("South side", _SIDE)
    west: Choice = choice("West side", _SIDE)
    earth_depth_m: Amt = amount(
        "Floor below ground",
        "How far the floor lies below the ground outside, at the sides in earth.",
        length(0.0, 6.0),
    )
    ground_cover: Choice = choice(
        "On the ground outside", "What lies on the ground along the sides in earth, or along the edge of a slab."
    )
    above: Choice = choice("Above the ceiling", "What lies above: heated rooms, a vented attic, or a roof.")
    below: Choice = choice(
        "Below the floor", "What lies below: heated rooms, a slab on the ground, a crawl space or open air."
    )
    wall: Choice = choice(
        "Outside walls", "What the outside walls are made of. A deep window sill shows a masonry wall."
    )
    wall_insulated: Choice = choice("Walls insulated", "Before 1980 probably not, unless someone added it.")
    window_north_m2: Amt = amount("Windows north", _GLASS, WINDOW_AREA)
    window_east_m2: Amt = amount("Windows east", _GLASS, WINDOW_AREA)
    window_south_m2: Amt = amount("Windows south", _GLASS, WINDOW_AREA)
    window_west_m2: Amt = amount("Windows west", _GLASS, WINDOW_AREA)
    glazing: Choice = choice(
        "Glass", "Single, double, or double with a clear heat-reflecting coat (low-e, common since 2000)."
    )
    shade: Choice = choice("Shade on the windows", "Trees, an overhang, or blinds that are down in the heat.")
    draughts: Choice = choice("Draughts", "Leaky means that you feel the wind in the room on a windy day.")
    people_count: Amt = amount("People", "How many are in the room when it is in use.", _COUNT)
    screens_count: Amt = amount("Screens and computers", "Televisions and computers running at the same time.", _COUNT)
    kitchen: Choice = choice("Kitchen in it", "Cooking adds heat and moisture.")
    door: Choice = choice("Doors to the rest", "A closed door keeps one unit's air from the rooms behind it.")
    own_unit: Choice = choice(
        "A unit of its own here", "Each way then puts an indoor unit in this room too. The first room always gets one."
    )
    year_built: Amt = amount(
        "Year built", "Roughly. It sets the usual insulation and whether old paint may hold lead.",
        Measure("year", "", 1700.0, 2100.0, True),
    )  # fmt: skip
    wall_u_w_per_m2k: Amt = amount("Wall U-value", "Heat loss through the outside walls.", U_VALUE, expert=True)
    earth_wall_u_w_per_m2k: Amt = amount(
        "U-value of walls in earth", "The wall and its insulation as if it stood in air; the earth is added.",
        U_VALUE, expert=True,
    )  # fmt: skip
    roof_u_w_per_m2k: Amt = amount("Roof U-value", "Heat loss through roof or attic floor.", U_VALUE, expert=True)
    floor_u_w_per_m2k: Amt = amount(
        "Floor U-value",
        "Heat loss through the floor: over air or a crawl space as built; on earth the slab and what lies on and under "
        "it, the earth is added.",
        U_VALUE,
        expert=True,
    )
    window_u_w_per_m2k: Amt = amount(
        "Window U-value", "From the label, glass and frame together.", U_VALUE, expert=True
    )
    window_shgc_frac: Amt = amount(
        "Window solar heat gain (SHGC)", "Share of the sun's heat that passes, from the label.",
        Measure("", "", 0.0, 1.0), expert=True,
    )  # fmt: skip
    unheated_frac: Amt = amount(
        "Unheated rooms beside or below", "Their part of the difference between outdoors and this room: 0 as warm as "
        "the room, 1 as cold as outdoors.",
        FRACTION, expert=True,
    )  # fmt: skip
    infiltration_per_h: Amt = amount(
        "Air changes", "How many times an hour outdoor air replaces the room's air, on average.",
        Measure("1/hour", "", 0.0, 10.0), expert=True,
    )  # fmt: skip
    leakage_area_m2: Amt = amount(
        "Leakage area at 4 Pa", "This room's part of what a blower-door test found; it then counts instead of draughts "
        "and air changes.",
        Measure("m**2", "in**2", 0.0001, 1.0), expert=True,
    )  # fmt: skip
    air_50pa_m3_per_h: Amt = amount(
        "Air flow at 50 Pa", "The same test as an air flow, this room's part by volume. A leakage area, where given, "
        "counts before it.",
        Measure("m**3/hour", "ft**3/minute", 1.0, 100_000.0), expert=True,
    )  # fmt: skip
    appliances_w: Amt = amount(
        "Appliances, all day", "Mean heat of what runs day and night. Left out, the usual share of the floor counts.",
        _WATTS, expert=True,
    )  # fmt: skip
    lighting_w: Amt = amount(
        "Lights while awake", "Heat of lights beyond the usual, in hours of use from 7 to 23.", _WATTS, expert=True
    )
    mass_class: Choice = choice(
        "Heaviness", "How much heat walls and floor store. Left out, it follows from wall and floor.", expert=True
    )
    mass_j_per_m2k: Amt = amount(
        "Heat stored per floor area", "Light frame rooms about 110000, solid masonry about 260000 J/(m**2*K).",
        Measure("J/(m**2*K)", "Btu/(ft**2*delta_degF)", 10_000.0, 2_000_000.0), expert=True,
    )  # fmt: skip
    absorptance_frac: Amt = amount(
        "Outside colour", "Share of sunlight the outside takes up: about 0.3 white, 0.9 black.",
        Measure("", "", 0.0, 1.0), expert=True,
    )  # fmt: skip
    own_cooling_w: Amt = amount(
        "Design cooling found elsewhere", "A contractor's or engineer's figure, moisture included. Sizes then follow "
        "it; the energy of a year does not.",
        POWER, expert=True,
    )  # fmt: skip
    own_heating_w: Amt = amount(
        "Design heating found elsewhere", "The same for the coldest night. Sizes then follow it.", POWER, expert=True
    )
    ground_absorptance_frac: Amt = amount(
        "Sun the ground takes up", "Share of sunlight: short grass 0.77, fresh asphalt 0.93.", FRACTION, expert=True
    )
    ground_wet_frac: Amt = amount(
        "How wet the ground is", "Its evaporation over that of open water: dry 0, a lawn 0.4.", FRACTION, expert=True
    )
    ground_open_frac: Amt = amount(
        "Sky the ground sees", "1 in the open, 0 under a deck or porch.", FRACTION, expert=True
    )
