"""What stops a computation. A finding that does not stop it is a Caution.

EconError
|-- OutOfRangeError (ValueError)    a number outside what a formula or field allows
|-- ShapeError (ValueError)         arrays that do not fit together
|-- UnknownChoiceError (KeyError)   a name that is not in a table or list
|-- TableError (ValueError)         a data file or its record is damaged
|-- CaseError (ValueError)          a case file has faults; holds every one
|-- NotSolvedError (RuntimeError)   a search for the cheapest choice gave up
`-- StoreError (RuntimeError)       saved cases cannot be read or written
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum


class EconError(Exception):
    """Base of every error this package raises on purpose."""


class OutOfRangeError(EconError, ValueError):
    """A number lies outside what is allowed.

    Parameters
    ----------
    name : str
        The input's name, as the reader knows it.
    value : float
        What was given.
    unit : str
        Unit of value and bounds.
    allowed : str
        What is allowed, such as "between 16 and 35".
    remedy : str
        What to do about it.
    """

    def __init__(self, name: str, value: float, unit: str, allowed: str, remedy: str) -> None:
        super().__init__(name, value, unit, allowed, remedy)
        self.name, self.value, self.unit, self.allowed, self.remedy = name, value, unit, allowed, remedy

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit and self.unit != "dimensionless" else ""
        return f"{self.name} is {self.value:g}{unit}; it must be {self.allowed}{unit}. {self.remedy}"


class ShapeError(EconError, ValueError):
    """Arrays do not fit together."""


class UnknownChoiceError(EconError, KeyError):
    """A name is not among those known.

    Parameters
    ----------
    name : str
        What the choice is for.
    value : str
        What was given.
    nearest : sequence of str
        The known names that come closest.
    """

    def __init__(self, name: str, value: str, nearest: Sequence[str]) -> None:
        super().__init__(name, value, tuple(nearest))
        self.name, self.value, self.nearest = name, value, tuple(nearest)

    def __str__(self) -> str:
        return f"{self.name} {self.value!r} is not known. Nearest: {', '.join(self.nearest) or 'none'}."


class TableError(EconError, ValueError):
    """A data table or its record is missing something, changed or out of bounds."""


class FaultKind(StrEnum):
    """What sort of thing is wrong with an amount, for a screen that says it in its own units."""

    OTHER = "other"
    NOT_READ = "not_read"
    COMMA = "comma"
    NO_UNIT = "no_unit"
    UNIT_NOT_KNOWN = "unit_not_known"
    UNIT_DOES_NOT_FIT = "unit_does_not_fit"
    TOO_SMALL = "too_small"
    TOO_LARGE = "too_large"
    NOT_WHOLE = "not_whole"
    NOT_ASCENDING = "not_ascending"
    CONTRADICTS = "contradicts"


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong in a case file: where, what is allowed, what was read, what to do."""

    path: str
    problem: str
    got: str
    remedy: str
    kind: FaultKind = FaultKind.OTHER

    def __str__(self) -> str:
        return f"{self.path} | {self.problem} | got {self.got} | {self.remedy}"


class CaseError(EconError, ValueError):
    """A case has faults; every one is listed.

    Parameters
    ----------
    faults : sequence of Fault
        All that was found, in the order of the file.
    """

    def __init__(self, faults: Sequence[Fault]) -> None:
        super().__init__(tuple(faults))
        self.faults = tuple(faults)

    def __str__(self) -> str:
        return "\n".join(str(fault) for fault in self.faults)


class NotSolvedError(EconError, RuntimeError):
    """A search for the cheapest choice ended without one.

    Parameters
    ----------
    name : str
        What was looked for.
    reason : str
        What the solver said.
    """

    def __init__(self, name: str, reason: str) -> None:
        super().__init__(name, reason)
        self.name, self.reason = name, reason

    def __str__(self) -> str:
        return f"No answer for {self.name}: {self.reason}. Change one input and try again."


class StoreError(EconError, RuntimeError):
    """Saved cases cannot be read or written."""
