"""A year or more of utility bills, and what of them is this room's."""

from typing import ClassVar, Final

from econ.case.field import amount, choice, words
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Section, Text

SHARE: Final = Measure("", "", 0.01, 1.0)


class Bills(Section):
    """Bills as pasted; they change no number unless their fit is used."""

    path: ClassVar[str] = "bills"

    electricity: Text = words(
        "Electricity bills",
        "One row a bill: its dates, the kWh, and if you like the dollars and the mean temperature.",
    )
    gas: Text = words("Gas bills", "One row a bill: its dates and the therms, and if you like the dollars.")
    cooling_share_frac: Amt = amount(
        "This room's part of the cooling on them",
        "1 where the meter serves this room alone, or nothing else is cooled.", SHARE,
    )  # fmt: skip
    heating_share_frac: Amt = amount(
        "This room's part of the heating on them", "1 where the meter heats this room alone.", SHARE
    )
    use_fit: Choice = choice(
        "Use this fit", "Scales what the room needs by what the bills show against the model of what you have now."
    )
