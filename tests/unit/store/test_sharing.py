"""Links to one case: for reading unless said otherwise, revocable, worthless without their token."""

import pytest

from econ.store import cases, owner, sharing
from econ.store.failure import NoSuchCaseError


@pytest.fixture
def path(tmp_path):
    return tmp_path / "cases.sqlite3"


@pytest.fixture
def made(path):
    return cases.create(path, "Den", "one", owner.hashed(owner.new_token()))


def test_link_shows_its_case_for_reading(path, made):
    token = sharing.share(path, made.case_id)
    assert owner.is_token(token)
    assert sharing.shared(path, token) == (made, False)


def test_link_may_be_made_for_changing(path, made):
    assert sharing.shared(path, sharing.share(path, made.case_id, may_edit=True)) == (made, True)


def test_revoked_link_shows_nothing_and_the_other_still_does(path, made):
    first, second = sharing.share(path, made.case_id), sharing.share(path, made.case_id)
    sharing.revoke(path, made.case_id, sharing.shares(path, made.case_id)[0].share_id)
    with pytest.raises(NoSuchCaseError, match="of this link is not there"):
        sharing.shared(path, first)
    assert sharing.shared(path, second) == (made, False)
    assert len(sharing.shares(path, made.case_id)) == 1


def test_link_of_another_case_is_not_revoked_with_it(path, made):
    token = sharing.share(path, made.case_id)
    other = cases.create(path, "Attic", "one")
    sharing.revoke(path, other.case_id, sharing.shares(path, made.case_id)[0].share_id)
    assert sharing.shared(path, token) == (made, False)


def test_neither_token_nor_address_of_a_case_opens_the_link(path, made):
    token = sharing.share(path, made.case_id)
    for guess in ("", made.address, owner.hashed(token), token[:-1], "' OR 1=1 --"):
        with pytest.raises(NoSuchCaseError):
            sharing.shared(path, guess)


def test_token_itself_is_nowhere_in_the_file(path, made):
    token = sharing.share(path, made.case_id)
    written = b"".join(part.read_bytes() for part in path.parent.glob("cases.sqlite3*"))
    assert token.encode() not in written
    assert owner.hashed(token).encode() in written


def test_deleted_case_is_not_shown(path, made):
    token = sharing.share(path, made.case_id)
    cases.delete(path, made.case_id)
    with pytest.raises(NoSuchCaseError):
        sharing.shared(path, token)


def test_case_that_is_not_there_cannot_be_shared(path, made):
    with pytest.raises(NoSuchCaseError):
        sharing.share(path, made.case_id + 1)
