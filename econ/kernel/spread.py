"""A number with doubt: low, likely, high and where it comes from."""

from dataclasses import dataclass

from econ.kernel.errors import OutOfRangeError


@dataclass(frozen=True, slots=True)
class Spread:
    """Low, likely and high value of one input.

    Attributes
    ----------
    low, likely, high : float
        In ascending order; equal values mean no doubt. [any]
    source : str
        A citation, or the word "assumption".
    """

    low: float
    likely: float
    high: float
    source: str

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            allowed = f"between its low {self.low:g} and its high {self.high:g}"
            raise OutOfRangeError("likely value", self.likely, "", allowed, "Put the three in ascending order.")
