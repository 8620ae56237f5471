"""Figures of the sheet that no form asks for, changed by the user: unit costs, task hours, assumptions."""

from typing import ClassVar

from econ.case.field import words
from econ.case.section import Amounts, Section


class Figures(Section):
    """Any figure behind the answer, set by hand."""

    path: ClassVar[str] = "figures"

    changed: Amounts = words(
        "Figures you changed",
        "Any usual figure can be opened and set; write its path and the number, or low, likely and high.",
        kind="amounts",
        expert=True,
    )
