"""Links that show one case to somebody else: a token each, kept hashed, for reading unless said so, revocable."""

from dataclasses import dataclass
from pathlib import Path

from econ.store.cases import SavedCase, opened
from econ.store.connection import connected, transaction
from econ.store.failure import NoSuchCaseError
from econ.store.owner import hashed, new_token


@dataclass(frozen=True, slots=True)
class Share:
    """A link as its owner sees it; the token itself is shown once, when it is made.

    Attributes
    ----------
    share_id : int
        Its number among all links.
    may_edit : bool
        Whether it lets change the case.
    made_at : str
        When it was made, ISO text in universal time.
    """

    share_id: int
    may_edit: bool
    made_at: str


def share(path: Path, case_id: int, *, may_edit: bool = False) -> str:
    """Make a link to a case and return its token.

    Parameters
    ----------
    path : Path
        The file of saved cases.
    case_id : int
        Which case.
    may_edit : bool
        Whether whoever has the link may change the case.

    Raises
    ------
    NoSuchCaseError
        If the case is not there.
    """
    opened(path, case_id)
    token = new_token()
    statement = """
        INSERT INTO share (key, case_id, edits, made_at) VALUES (?, ?, ?, strftime('%Y-%m-%dT%H:%M:%S+00:00', 'now'))
    """
    with transaction(path) as connection:
        connection.execute(statement, (hashed(token), case_id, int(may_edit)))
    return token


def shared(path: Path, token: str) -> tuple[SavedCase, bool]:
    """Return the case a link shows, and whether it may be changed through it.

    Raises
    ------
    NoSuchCaseError
        If no such link stands, or its case is deleted; the link is not repeated in the message.
    """
    query = "SELECT case_id, edits FROM share WHERE key = ? AND revoked = 0"
    with connected(path) as connection:
        row = connection.execute(query, (hashed(token),)).fetchone()
    if row is None:
        raise NoSuchCaseError("of this link")
    return opened(path, row[0]), bool(row[1])


def shares(path: Path, case_id: int) -> tuple[Share, ...]:
    """Return the links to a case that stand, oldest first."""
    query = "SELECT id, edits, made_at FROM share WHERE case_id = ? AND revoked = 0 ORDER BY id"
    with connected(path) as connection:
        return tuple(Share(row[0], bool(row[1]), row[2]) for row in connection.execute(query, (case_id,)))


def revoke(path: Path, case_id: int, share_id: int) -> None:
    """Take a link to a case back; it shows nothing from now on."""
    with transaction(path) as connection:
        connection.execute("UPDATE share SET revoked = 1 WHERE id = ? AND case_id = ?", (share_id, case_id))
