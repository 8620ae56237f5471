"""Whose cases they are, where one program serves more than one person: a token of 128 random bits, kept hashed."""

import hashlib
import re
import secrets
from typing import Final

NOBODY_ELSE: Final = ""
"""The owner of all cases where the program serves the person at the machine alone."""

_TOKEN: Final = re.compile(r"[0-9a-f]{32}")


def new_token() -> str:
    """Return a token of 128 random bits, as 32 hexadecimal digits."""
    return secrets.token_hex(16)


def is_token(text: str) -> bool:
    """Return whether a text has the form of a token.

    Examples
    --------
    >>> is_token("0123456789abcdef" * 2), is_token("../../etc/passwd")
    (True, False)
    """
    return _TOKEN.fullmatch(text) is not None


def hashed(token: str) -> str:
    """Return what is kept of a token: nobody who reads the store can come back as its owner.

    Parameters
    ----------
    token : str
        As the browser keeps it. It has 128 random bits, so a plain digest is as hard to turn back as a slow one.
    """
    return hashlib.sha256(token.encode()).hexdigest()
