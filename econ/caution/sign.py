"""What settles a finding: a note is read, a caution dealt with, a stop signed by who may sign it."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Final

from econ.kernel.alternative import Party
from econ.kernel.caution import Severity


class Kind(StrEnum):
    """How a finding is settled; none of them takes it away."""

    READ = "read"
    DEALT = "dealt"
    SIGNED = "signed"


class Role(StrEnum):
    """As what somebody signs."""

    OWNER = "owner"
    HELPER = "helper"
    ELECTRICIAN = "electrician"
    CONTRACTOR = "contractor"
    PERMIT_OFFICE = "permit_office"
    LANDLORD = "landlord"
    ASSOCIATION = "association"
    TESTER = "tester"
    OTHER = "other"


KIND_OF: Final[Mapping[Severity, Kind]] = {
    Severity.NOTE: Kind.READ,
    Severity.CAUTION: Kind.DEALT,
    Severity.HOLD_POINT: Kind.SIGNED,
}
"""The one way in which a finding of each severity is settled."""

AT_WORK: Final = (Role.OWNER, Role.HELPER, Role.ELECTRICIAN, Role.CONTRACTOR, Role.OTHER)
"""Who signs where a rule names nobody but whoever does the work."""

ROLE_OF: Final[Mapping[Party, Role]] = {
    Party.SELF: Role.OWNER,
    Party.HELPER: Role.HELPER,
    Party.ELECTRICIAN: Role.ELECTRICIAN,
    Party.CONTRACTOR: Role.CONTRACTOR,
}

_NAMED: Final = (
    ("electrician", Role.ELECTRICIAN),
    ("contractor", Role.CONTRACTOR),
    ("permit office", Role.PERMIT_OFFICE),
    ("landlord", Role.LANDLORD),
    ("association", Role.ASSOCIATION),
    ("tester", Role.TESTER),
)


def signers(party: str) -> tuple[tuple[str, ...], ...]:
    """Return whose signatures a stop asks for.

    Parameters
    ----------
    party : str
        Who must act, as a rule words it.

    Returns
    -------
    groups : tuple of tuple of str
        One signature of each group is asked for; within a group any role will do.

    Examples
    --------
    >>> signers("electrician and contractor")
    (('electrician',), ('contractor',))
    >>> signers("whoever drills")[0][:2]
    ('owner', 'helper')
    """
    return tuple(_group(part) for part in party.split(" and ") if part != "a helper")


def _group(party: str) -> tuple[str, ...]:
    named = tuple(role.value for word, role in _NAMED if word in party)
    return named or tuple(role.value for role in AT_WORK)
