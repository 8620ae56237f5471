"""The README says what is true: its commands, its files, its words."""

import re
import subprocess
import sys

import pytest

from tests.style import source

README = (source.ROOT / "README.md").read_text(encoding="utf-8")


def block(name):
    """Return the command between two markers of the README."""
    found = re.search(rf"<!-- {name} -->\n```\n(.*?)\n```\n<!-- end -->", README, re.DOTALL)
    assert found, f"README has no block {name}"
    return found[1]


def test_start_is_one_line_that_opens_the_dashboard():
    assert block("start-linux").splitlines()[0].endswith("streamlit run app.py")
    assert len(block("start-linux").splitlines()) == 1


def test_test_command_is_one_line_that_runs_pytest():
    runs = [part.strip() for part in block("test-linux").split("&&") if ".venv/bin/pytest" in part]
    assert len(block("test-linux").splitlines()) == 1
    assert runs == [
        ".venv/bin/pytest tests/benchmarks tests/browser",
        ".venv/bin/pytest -n auto --dist loadfile --ignore tests/benchmarks --ignore tests/browser",
    ]


def test_ci_runs_the_words_of_the_readme():
    assert "<!-- test-linux -->" in (source.ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_pictures_and_links_exist():
    for target in re.findall(r"\]\(([^)#]+)\)", README):
        if not target.startswith("http"):
            assert (source.ROOT / target).exists(), target


@pytest.mark.parametrize("words", re.findall(r"\.venv/bin/python -m econ (\w+)", README))
def test_each_command_named_is_one_the_program_knows(words):
    done = subprocess.run(
        [sys.executable, "-m", "econ", words, "--help"], cwd=source.ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_top_level_is_the_fixed_one():
    listed = subprocess.run(["git", "ls-files"], cwd=source.ROOT, capture_output=True, text=True, check=False)
    if listed.returncode:
        pytest.skip("not a git checkout: the list of files is git's")
    top = {name.split("/")[0] for name in listed.stdout.splitlines()}
    allowed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "app.py", "econ", "data", "tests"}
    assert {name for name in top if not name.startswith(".")} <= allowed
