"""The ways to go, and how each one stands."""

from enum import StrEnum
from typing import Final


class Alternative(StrEnum):
    """The four ways to go, in the order of every alternatives axis (A)."""

    KEEP_AS_IS = "keep_as_is"
    WINDOW_UNITS = "window_units"
    SELF_INSTALL = "self_install"
    CONTRACTED_INSTALL = "contracted_install"


ALTERNATIVES: Final = tuple(Alternative)
"""The alternatives axis: position 0 is keep_as_is, 3 is contracted_install."""

KEEP, WINDOW, SELF, HIRED = range(4)


class Standing(StrEnum):
    """Whether a way is open: freely, with a licensed party for part of it, not at all, or not known yet."""

    OPEN = "open"
    WITH_HELP = "with_help"
    NOT_ALLOWED = "not_allowed"
    UNKNOWN = "unknown"


class Party(StrEnum):
    """Who does a task, in the order of the party codes."""

    SELF = "self"
    HELPER = "helper"
    ELECTRICIAN = "electrician"
    CONTRACTOR = "contractor"


PARTIES: Final = tuple(Party)
"""Party codes: position in this tuple."""
