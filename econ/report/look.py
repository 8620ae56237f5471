"""For whom a result is drawn: ground, units and calendar."""

from dataclasses import dataclass
from datetime import date

from econ.kernel.alternative import Alternative
from econ.report import style
from econ.report.numbers import Quantity, UnitSystem, day_after, day_text, measure, shown, symbol
from econ.report.style import GROUNDS, Ground, Theme


@dataclass(frozen=True, slots=True)
class Look:
    """How numbers, dates and colours are shown to one reader.

    Attributes
    ----------
    decision : date
        Day from which all days of a result are counted.
    this_year : int
        Dates of other years carry their year.
    theme : Theme
        Light or dark ground.
    units : UnitSystem
        US customary or SI.
    """

    decision: date
    this_year: int
    theme: Theme = Theme.LIGHT
    units: UnitSystem = UnitSystem.US

    @property
    def ground(self) -> Ground:
        """Colours of the theme."""
        return GROUNDS[self.theme]

    def colour(self, name: Alternative) -> str:
        """Return the colour of an alternative on this ground."""
        return style.colour(name, self.theme)

    def day(self, after_d: float) -> str:
        """Return a day, counted from the decision, as said aloud."""
        return day_text(day_after(self.decision, after_d), self.this_year)

    def short_day(self, after_d: float) -> str:
        """Return a day, counted from the decision, without its weekday."""
        return self.day(after_d).split(" ", 1)[1]

    def measure(self, value: float, quantity: Quantity) -> str:
        """Return a core number with its unit on display."""
        return measure(value, quantity, self.units)

    def shown(self, value: float, quantity: Quantity) -> float:
        """Return a core number in the unit on display."""
        return shown(value, quantity, self.units)

    def symbol(self, quantity: Quantity) -> str:
        """Return the unit on display."""
        return symbol(quantity, self.units)
