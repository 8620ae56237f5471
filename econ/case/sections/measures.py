"""What is done to the room itself before anything is bought to cool or heat it."""

from typing import ClassVar

from pydantic import ValidationInfo, field_validator

from econ.case.field import words
from econ.case.nearest import nearest
from econ.case.section import Known, Section, fault


class Measures(Section):
    """Measures taken whichever way is gone: each lowers the need of every way alike and costs every way the same."""

    path: ClassVar[str] = "measures"

    chosen: tuple[str, ...] | None = words(
        "Fix the room first",
        "Shade, film, insulation, sealing, a fan or the house's own duct: done first, whichever way you go.",
        kind="list",
    )

    @field_validator("chosen", mode="after")
    @classmethod
    def known_measures(cls, chosen: tuple[str, ...] | None, info: ValidationInfo) -> tuple[str, ...] | None:
        """Return the measures; each must be known."""
        known = info.context if isinstance(info.context, Known) else Known()
        unknown = [key for key in chosen or () if known.measures and key not in known.measures]
        if unknown:
            close = ", ".join(nearest(unknown[0], known.measures))
            raise fault("names a measure that is not listed", ", ".join(unknown), f"Nearest: {close}.")
        return chosen
