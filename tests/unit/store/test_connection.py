"""What happens to saved cases when the file, the disk or another program is in the way."""

import os
import sqlite3
import subprocess
import sys
import tempfile
import time
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from econ.kernel.errors import StoreError
from econ.store import cases, connection, owner
from econ.store.connection import connected, ready, store_path
from econ.store.failure import StoreDamagedError, in_words
from econ.store.migrations import STEPS, migrate, version_of

ROOT = Path(__file__).parents[3]
NOBODY = 65_534


@pytest.fixture
def path(tmp_path):
    return tmp_path / "cases.sqlite3"


def test_environment_names_the_file(monkeypatch, path):
    monkeypatch.setenv("ECON_STORE", str(path))
    assert store_path() == path


def test_without_it_the_file_lies_in_the_users_data_folder(monkeypatch):
    monkeypatch.delenv("ECON_STORE", raising=False)
    assert store_path().parent.name == "econ-rooms"


def test_sound_store_has_no_message(path):
    assert ready(path) == ""
    cases.create(path, "Den", "one")
    assert ready(path) == ""
    assert [line.name for line in cases.listed(path)] == ["Den"]


def damaged(path: Path) -> bytes:
    cases.create(path, "Den", "one")
    path.write_bytes(b"no database at all, " * 500)
    return path.read_bytes()


def test_damaged_store_is_named_when_met_in_the_middle(path):
    damaged(path)
    with pytest.raises(StoreDamagedError, match="The file of saved cases is damaged"):
        cases.listed(path)


def test_damaged_store_is_set_aside_and_a_new_one_begun(path):
    content = damaged(path)
    assert "kept as cases.sqlite3.damaged-1; a new one was begun" in ready(path)
    assert path.with_name("cases.sqlite3.damaged-1").read_bytes() == content
    assert cases.listed(path) == ()
    assert ready(path) == ""


def test_store_that_another_window_has_set_aside_meanwhile_is_kept(monkeypatch, path):
    damaged(path)
    real, looks = connection._identity, []

    def set_aside_by_another_window(at):
        looks.append(at)
        if len(looks) == 2:
            monkeypatch.setattr(connection, "_identity", real)
            assert ready(at) != ""
            cases.create(at, "Theirs", "one")
            return -1
        return real(at)

    monkeypatch.setattr(connection, "_identity", set_aside_by_another_window)
    assert ready(path) == ""
    assert [line.name for line in cases.listed(path)] == ["Theirs"]
    assert len(list(path.parent.glob("*.damaged-?"))) == 1


def test_second_damaged_store_gets_the_next_number(path):
    for number in (1, 2):
        damaged(path)
        assert f"damaged-{number};" in ready(path)
    assert path.with_name("cases.sqlite3.damaged-1").exists()


def test_store_with_torn_pages_is_set_aside(path):
    for number in range(50):
        cases.create(path, f"case {number}", "x" * 3000)
    content = bytearray(path.read_bytes())
    content[4096:] = bytes(len(content) - 4096)
    path.write_bytes(content)
    assert "damaged-1" in ready(path)


def test_store_of_a_newer_program_is_left_alone(path):
    cases.create(path, "Den", "one")
    with closing(sqlite3.connect(path)) as raw:
        raw.execute(f"PRAGMA user_version = {len(STEPS) + 1}")
    with pytest.raises(StoreError, match="written by a newer program"):
        ready(path)
    assert not list(path.parent.glob("*.damaged-*"))


def test_locked_store_says_so(monkeypatch, path):
    made = cases.create(path, "Den", "one")
    monkeypatch.setattr(connection, "WAIT_S", 0.02)
    with connected(path) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreError, match="stayed locked"):
            cases.save(path, made.case_id, "two", made.head)
        other.execute("ROLLBACK")
    assert cases.save(path, made.case_id, "two", made.head).text == "two"


def test_full_disk_says_so():
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as raw:
        raw.execute("PRAGMA max_page_count = 2")
        with pytest.raises(sqlite3.OperationalError) as refused:
            raw.execute("CREATE TABLE t AS SELECT zeroblob(100000) AS content")
    assert str(in_words(refused.value)) == "The disk is full: nothing was saved. Free some space and try again."


def test_disk_that_takes_no_more_keeps_what_was_saved(path):
    resource = pytest.importorskip("resource", reason="needs a limit on file size, as Linux and macOS have")
    made = cases.create(path, "Den", "one")
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (64 * 1024, before[1]))
    try:
        with pytest.raises(StoreError, match="nothing was saved"):
            cases.save(path, made.case_id, "x" * 500_000, made.head)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert cases.opened(path, made.case_id) == made
    assert cases.save(path, made.case_id, "two", made.head).text == "two"


def test_folder_that_is_a_file_says_so(tmp_path):
    (tmp_path / "taken").write_text("x")
    with pytest.raises(StoreError, match="Saved cases"):
        cases.listed(tmp_path / "taken" / "cases.sqlite3")


@contextmanager
def without_rights():
    """Be somebody who owns nothing, where the tests run as one who may write anywhere."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="permissions of this kind are Linux's and macOS's")
def test_folder_that_may_not_be_written_says_so():
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "cases.sqlite3"
        made = cases.create(path, "Den", "one")
        path.chmod(0o444)
        path.parent.chmod(0o555)
        with without_rights(), pytest.raises(StoreError, match=r"Saved cases (may not be written|cannot be opened)"):
            cases.save(path, made.case_id, "two", made.head)
        path.parent.chmod(0o755)
        path.chmod(0o644)
        assert cases.opened(path, made.case_id) == made


def test_clock_set_back_loses_nothing_and_keeps_the_order(monkeypatch, path):
    first, second = (cases.create(path, name, "one") for name in ("a", "b"))
    monkeypatch.setattr(cases, "_NOW", "'1999-12-31T23:59:59+00:00'")
    saved = cases.save(path, first.case_id, "two", first.head)
    assert [line.name for line in cases.listed(path)] == ["a", "b"]
    assert [version.text for version in cases.revisions(path, first.case_id)] == ["one", "two"]
    assert cases.undo(path, first.case_id, saved.head).text == "one"
    assert cases.opened(path, second.case_id) == second


def test_file_that_is_a_folder_says_so(path):
    path.mkdir()
    with pytest.raises(StoreError, match="cannot be opened"):
        cases.listed(path)


def test_failed_migration_leaves_the_store_as_it_was(path):
    cases.create(path, "Den", "one")
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:
        broken = (*STEPS, ("CREATE TABLE extra (a INTEGER)", "CREATE TABLE extra (b INTEGER)"))
        with pytest.raises(sqlite3.OperationalError, match="already exists"):
            migrate(raw, broken)
        assert version_of(raw) == len(STEPS)
        assert raw.execute("SELECT count(*) FROM sqlite_master WHERE name = 'extra'").fetchone() == (0,)
    assert [line.name for line in cases.listed(path)] == ["Den"]


def test_later_step_is_applied_to_an_old_store(path):
    cases.create(path, "Den", "one")
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:
        migrate(raw, (*STEPS, ("ALTER TABLE saved_case ADD COLUMN note TEXT NOT NULL DEFAULT ''",)))
        assert version_of(raw) == len(STEPS) + 1
        assert raw.execute("SELECT name, note FROM saved_case").fetchall() == [("Den", "")]


def test_case_saved_before_times_were_kept_has_none(path):
    with closing(sqlite3.connect(path, isolation_level=None)) as raw:
        migrate(raw, STEPS[:2])
        raw.execute("INSERT INTO saved_case (name, head, touched) VALUES ('Den', 1, 1)")
        raw.execute("INSERT INTO revision VALUES (1, 1, NULL, 'one')")
    assert [(line.name, line.saved_at) for line in cases.listed(path)] == [("Den", "")]
    assert [version.saved_at for version in cases.revisions(path, 1)] == [""]
    assert owner.is_token(cases.opened(path, 1).address)
    cases.save(path, 1, "two", 1)
    assert cases.listed(path)[0].saved_at


WRITER = """
import sys
from pathlib import Path
from econ.store import cases
path = Path(sys.argv[1])
case = cases.create(path, "Den", "0")
for number in range(1, 100_000):
    case = cases.save(path, case.case_id, str(number) * 500, case.head)
    print(number, flush=True)
"""


def test_killed_in_the_middle_of_saving_nothing_told_as_saved_is_lost(path):
    told = []
    command = [sys.executable, "-c", WRITER, str(path)]
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    for pause_s in (0.01, 0.023, 0.037):
        with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=ROOT, env=environment) as writer:
            first = writer.stdout.readline()
            time.sleep(pause_s)
            writer.kill()
            told.append(int((first + writer.stdout.read()).split("\n")[-2]))
    assert ready(path) == ""
    for case_id, number in enumerate(told, start=1):
        saved = cases.opened(path, case_id)
        texts = [version.text for version in cases.revisions(path, case_id)]
        assert saved.text == texts[-1]
        assert texts == ["0", *(str(n) * 500 for n in range(1, len(texts)))]
        assert len(texts) - 1 in (number, number + 1)


def test_many_processes_may_make_the_store_at_once(path):
    code = (
        "import sys; from pathlib import Path; from econ.store import cases; cases.create(Path(sys.argv[1]), 'x', 'y')"
    )
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    started = [subprocess.Popen([sys.executable, "-c", code, str(path)], cwd=ROOT, env=environment) for _ in range(4)]
    assert [process.wait() for process in started] == [0, 0, 0, 0]
    assert len(cases.listed(path)) == 4
