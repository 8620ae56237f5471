"""The equipment of each way: window units, the kit, the hired unit, and the quote."""

from typing import ClassVar, Final

from pydantic import field_validator

from econ.case.field import FRACTION, LIFE, UPKEEP, USD, WAIT, amount, choice, length, words
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section, Text, day

SETS: Final = Measure("", "", 1.0, 8.0, True)
OPENING: Final = length(0.1, 2.5, "in")
_IN_WINDOW: Final = "window.kind=window|narrow|portable"
_RATING = "From the label; left out, that of its size and class."
_CEER = "From the label. Another test than SEER2: the two figures can't be compared with each other."


class WindowUnits(Section):
    """New window units."""

    path: ClassVar[str] = "window"

    kind: Choice = choice(
        "Kind of unit",
        "In an ordinary window; tall and narrow, for windows that slide sideways or swing; in a sleeve through the "
        "wall; or on wheels with a hose.",
    )
    size: Choice = choice(
        "Size of each",
        "In thousand Btu an hour; choose lets the tool pick. Of a portable unit, the smaller figure (SACC).",
    )
    count: Amt = amount("How many", "Window units to buy.", Measure("", "", 1.0, 20.0, True))
    cycle: Choice = choice("Cooling only or heating too", "Some window units run backwards and heat in mild weather.")
    in_months: Choice = choice(
        "They stand in the window",
        "From the first to the last hot month, or all year, when air passes them in winter. One that heats stays in.",
    )
    seal: Choice = choice("Sealed with", "Foam and tape around the unit, or only the panels that come with it.")
    opening: Choice = choice(
        "Kind of window", "What the unit would stand in. None: there is no window for it.", after=_IN_WINDOW
    )
    clear_width_m: Amt = amount(
        "Clear width", "Between the frame's sides, opened as far as it goes.", OPENING, after=_IN_WINDOW
    )
    clear_height_m: Amt = amount(
        "Clear height", "From the sill to the raised sash, or to the frame above.", OPENING, after=_IN_WINDOW
    )
    escape: Choice = choice(
        "Is it the way out in a fire", "A bedroom's escape window must stay free.", after=_IN_WINDOW
    )
    over_walkway: Choice = choice(
        "Does anybody walk below it", "A pavement, a path, a yard or a balcony under the window.",
        after="window.kind=window|narrow",
    )  # fmt: skip
    wall_bears: Choice = choice(
        "Does the wall carry anything",
        "A floor, a roof or a beam above. Most outside walls do; only someone who knows structures can say no.",
        after="window.kind=through_wall",
    )
    outlet: Choice = choice(
        "Outlet near it", "On a circuit of its own, shared with other things, or none within reach of the cord."
    )
    outlet_breaker_a: Amt = amount(
        "Breaker of that outlet", "The number on its breaker, amperes.", Measure("A", "", 10.0, 60.0),
        after="window.outlet=own_circuit|shared",
    )  # fmt: skip
    outlet_volts: Choice = choice(
        "Voltage of that outlet", "Large units need 240 volts, from an outlet of another shape.",
        after="window.outlet=own_circuit|shared",
    )  # fmt: skip
    price_usd: Amt = amount("Price of each", "Left out, usual for its size.", USD)
    life_yr: Amt = amount("Life", "Years until it is replaced.", LIFE)
    ceer: Amt = amount("Efficiency (CEER)", _CEER, Measure("Btu/(W*hour)", "", 6.0, 25.0), expert=True)


class Kit(Section):
    """The pre-charged ductless kit that one may put in oneself."""

    path: ClassVar[str] = "kit"

    size: Choice = choice("Size", "In thousand Btu an hour; choose lets the tool pick.")
    grade: Choice = choice("Class", "Economy, standard, or cold-climate, which keeps heating in deep frost.")
    volts: Choice = choice("Voltage", "Small kits come for 120 or 240 volts, larger ones for 240 only.")
    connection: Choice = choice(
        "Line connection",
        "How the lines join: quick couplings, once or many times, or flares at a charged outdoor unit.",
    )
    extension_allowed: Choice = choice(
        "Maker allows an extension", "Whether the manual lets one of the maker's own lines be added."
    )
    refrigerant: Choice = choice("Refrigerant", "From the label. Old stock may hold one that is being phased down.")
    mca_a: Amt = amount(
        "Minimum circuit ampacity (MCA)", "Amperes, from the label; nobody can compute it for a real unit.",
        Measure("A", "", 3.0, 100.0),
    )  # fmt: skip
    mop_a: Amt = amount(
        "Largest breaker (MOP)", "Amperes, from the label: maximum overcurrent protection.",
        Measure("A", "", 10.0, 125.0),
    )  # fmt: skip
    count: Amt = amount("How many kits", "Each with its own outdoor unit; as many as rooms need.", SETS)
    heads: Amt = amount(
        "Indoor units of each kit", "Most have one; some outdoor units serve several.", SETS, expert=True
    )
    price_usd: Amt = amount(
        "Price of the kit", "Each, delivered, before tax; left out, usual for its size and class.", USD
    )
    return_window_d: Amt = amount(
        "Days to send it back", "From the day it is at your door. Read the seller's rules.", WAIT
    )
    restocking_frac: Amt = amount(
        "Kept if you send it back", "Restocking: share of the price that the seller keeps.", FRACTION
    )
    line_set_m: Amt = amount("Line set in the box", "Length of the pipes that come with it.", length(1.0, 30.0))
    seer2: Amt = amount("Cooling efficiency (SEER2)", _RATING, Measure("Btu/(W*hour)", "", 12.0, 40.0), expert=True)
    eer2: Amt = amount("Efficiency on hot days (EER2)", _RATING, Measure("Btu/(W*hour)", "", 6.0, 25.0), expert=True)
    hspf2: Amt = amount("Heating efficiency (HSPF2)", _RATING, Measure("Btu/(W*hour)", "", 6.0, 16.0), expert=True)
    life_yr: Amt = amount("Life", "Years until it is replaced.", LIFE)
    upkeep_usd_per_yr: Amt = amount("Upkeep", "Cleaning and small repairs, a year.", UPKEEP)


class Hired(Section):
    """What a contractor would put in."""

    path: ClassVar[str] = "hired"

    size: Choice = choice("Size", "In thousand Btu an hour; usually the same as the kit.")
    grade: Choice = choice("Class", "Usually the same as the kit, so that both do the same job.")
    heads: Amt = amount(
        "Indoor units on one outdoor unit", "As the kit, or one outdoor unit for several rooms.", SETS, expert=True
    )
    equipment_usd: Amt = amount(
        "What the unit costs the contractor",
        "Left out, usual for its size and class. It is printed; a contractor's own figure belongs on the page Quote.",
        USD,
        expert=True,
    )
    upkeep_usd_per_yr: Amt = amount("Upkeep", "Service and small repairs, a year.", UPKEEP)


class Quote(Section):
    """A contractor's offer."""

    path: ClassVar[str] = "quote"

    total_usd: Amt = amount("Total", "What you would pay in all. Leave it out if you have no quote.", USD)
    date: Text = words("Date of the quote", "Year-month-day.")
    wait_d: Amt = amount("Days until they start", "Counted from the decision. Weeks times seven.", WAIT)
    equipment: Choice = choice("Includes the equipment", "Unit and line set. Not said: it is not in the text.")
    electrical: Choice = choice("Includes the circuit", "Wire, breaker and switch. Often left out: ask.")
    permit: Choice = choice("Includes the permit", "Fees and the visit of the inspector.")
    removal: Choice = choice("Includes taking away the old", "Old units and packing.")
    warranty: Choice = choice("Includes a labour warranty", "Coming back for nothing if their work fails.")
    labour_warranty_yr: Amt = amount(
        "Labour warranty", "Years of it.", Measure("year", "", 0.0, 30.0), after="quote.warranty=yes"
    )

    @field_validator("date", mode="after")
    @classmethod
    def is_a_day(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)
