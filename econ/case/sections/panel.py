"""What the home's electric service feeds: whether it has room for one more unit."""

from typing import ClassVar

from econ.case.field import amount, choice
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section


class Panel(Section):
    """The home's electric service; guidance that defers to an electrician's own calculation."""

    path: ClassVar[str] = "panel"

    service_a: Amt = amount(
        "Main breaker", "Amperes, written on the handle of the largest breaker.", Measure("A", "", 30.0, 400.0)
    )
    home_area_m2: Amt = amount(
        "Floor of the whole home", "All storeys, without garage and attic.", Measure("m**2", "ft**2", 10.0, 2000.0)
    )
    range: Choice = choice("Electric range", "A stove or oven on its own large breaker.")
    dryer: Choice = choice("Electric dryer", "For clothes, on its own large breaker.")
    water_heater: Choice = choice("Electric water heater", "A tank with its own large breaker.")
    car_charger: Choice = choice("Car charger", "On its own large breaker.")
    heat_w: Amt = amount(
        "Electric heat of the home", "All baseboards or the electric furnace together.",
        Measure("W", "Btu/hour", 0.0, 60_000.0), after="now.heat=electric",
    )  # fmt: skip
