"""A building of many rooms: the rooms themselves, what may be spent on them in each year, and what they share."""

from typing import ClassVar, Final

from econ.case.field import FRACTION, aside, length, pick, words
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section, Text

BUDGET: Final = Measure("USD", "", 0.0, 50_000_000.0)
HOURS: Final = Measure("hour", "", 0.0, 100_000.0)
DAYS: Final = Measure("day", "", 0.0, 10_000.0)
AMPERES: Final = Measure("A", "", 0.0, 400.0)
USD_PER_HOT_HOUR: Final = Measure("USD/hour", "", 0.0, 1_000.0)
COUNT: Final = Measure("", "", 1.0, 1_000.0, True)

_LATER: Final = "Left out, no more is planned for that year."
_AS_BEFORE: Final = "Left out, as in the year before."


class Building(Section):
    """Many rooms under yearly budgets; nothing here moves the comparison of one room."""

    path: ClassVar[str] = "building"

    rooms: Text = words("Rooms", "The rooms file, one row a room, as pasted.", kind="sheet")
    budget_usd: Amt = aside("Budget this year", "Cash for all rooms together. Left out, there is no limit.", BUDGET)
    budget_2_usd: Amt = aside("Budget next year", _LATER, BUDGET)
    budget_3_usd: Amt = aside("Budget in the third year", _LATER, BUDGET)
    own_hours_h: Amt = aside(
        "Your own or the handyman's hours a year", "For all rooms together. Left out, there is no limit.", HOURS
    )
    electrician_d: Amt = aside(
        "Days of an electrician this year", "As many as you can get. Left out, there is no limit.", DAYS
    )
    electrician_2_d: Amt = aside("Days of an electrician next year", _AS_BEFORE, DAYS)
    electrician_3_d: Amt = aside("Days of an electrician in the third year", _AS_BEFORE, DAYS)
    whose: Choice = pick(
        "Whose savings count", "Everybody's, tenants included, or only what comes back to whoever pays for the work."
    )
    hot_hour_usd: Amt = aside(
        "What an hour less too hot is worth",
        "In one room, to you: complaints, tenants who stay. At 0 money alone decides.", USD_PER_HOT_HOUR,
    )  # fmt: skip
    whole_flat: Choice = pick("Whole flat at once", "All rooms of a flat in the same year, or none of them.")
    panel_spare_a: Amt = aside(
        "What a flat's panel has to spare", "Amperes, for flats of which the file says nothing. Left out, no limit.",
        AMPERES,
    )  # fmt: skip
    storey_m: Amt = aside("Height of a storey", "Floor to floor.", length(2.0, 6.0), expert=True)
    glass_small_m2: Amt = aside(
        "A small window", "Glass on each outdoor side.", Measure("m**2", "ft**2", 0.1, 20.0), expert=True
    )
    glass_medium_m2: Amt = aside(
        "A medium window", "Glass on each outdoor side.", Measure("m**2", "ft**2", 0.1, 20.0), expert=True
    )
    glass_large_m2: Amt = aside(
        "A large window", "Glass on each outdoor side.", Measure("m**2", "ft**2", 0.1, 30.0), expert=True
    )
    learning_frac: Amt = aside(
        "Hours saved each time the count doubles", "Of own hours, the second, fourth, eighth time.", FRACTION,
        expert=True,
    )  # fmt: skip
    learning_until: Amt = aside(
        "Times until nothing more is learned", "Hours stay as they are then.", COUNT, expert=True
    )
    volume_from: Amt = aside(
        "Contractor's price falls from set number", "The first set of a year that is cheaper.", COUNT, expert=True
    )
    volume_off_frac: Amt = aside("By so much of it", "0.1 for a tenth off.", FRACTION, expert=True)
    spare_frac: Amt = aside(
        "Spares kept", "Window units bought beside those put in, as a part of them; none below ten.", FRACTION,
        expert=True,
    )  # fmt: skip
    rooms_per_trip: Amt = aside(
        "Sets put in during one visit", "By a contractor's crew, in one building.", COUNT, expert=True
    )
    electrician_day_h: Amt = aside(
        "Hours in a day of an electrician", "On the work itself.", Measure("hour", "", 1.0, 12.0), expert=True
    )
