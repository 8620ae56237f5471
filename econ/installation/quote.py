"""A contractor's quote: what it may leave out, and of which kinds its lines are."""

from typing import Final

SCOPE: Final = ("equipment", "electrical", "permit", "removal", "warranty")
"""What a whole job holds."""

LINE_KINDS: Final = (
    "equipment",
    "materials",
    "electrical",
    "labour",
    "permit",
    "overhead_profit",
    "warranty",
    "tax",
    "not_said",
)
"""What a line of a quote may be for; the last where nobody can tell."""

PRICED_SCOPE: Final = ("electrical", "permit", "removal")
"""Parts that own items can price where a quote leaves them out; a quote without equipment is another job."""


def missing_scope(said: dict[str, str]) -> tuple[str, ...]:
    """Return the parts of a whole job that a quote leaves out or does not mention.

    Parameters
    ----------
    said : dict of str to str
        yes, no, not_said or not_known for each part of SCOPE.

    Returns
    -------
    missing : tuple of str
        In the order of SCOPE; what is not mentioned counts as missing until it is asked.

    Examples
    --------
    >>> missing_scope(dict.fromkeys(SCOPE, "yes") | {"electrical": "not_said", "removal": "no"})
    ('electrical', 'removal')
    """
    return tuple(part for part in SCOPE if said[part] != "yes")
