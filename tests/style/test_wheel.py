"""The wheel carries its data: installed elsewhere, it answers."""

import json
import os
import subprocess
import sys

import pytest

from tests.style import source


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    where = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "pip", "install", "-q", "--no-deps", "--no-build-isolation", "--no-index"]
    command += ["--target", str(where / "site"), str(source.ROOT)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=where)
    assert done.returncode == 0, done.stderr
    return where


def test_wheel_installed_elsewhere_compares_a_demo_case(installed):
    environment = {**os.environ, "PYTHONPATH": str(installed / "site")}

    def run(*words):
        command = [sys.executable, "-m", "econ", *words]
        return subprocess.run(command, capture_output=True, text=True, check=False, cwd=installed, env=environment)

    listed = run("cases")
    assert listed.returncode == 0, listed.stderr
    name = listed.stdout.split()[0]
    copied = run("cases", "--copy", name, "mine.toml")
    assert copied.returncode == 0, copied.stderr
    compared = run("compare", "mine.toml", "--json", "--draws", "0")
    assert compared.returncode == 0, compared.stderr
    assert len(json.loads(compared.stdout)["alternatives"]) == 4
    place = subprocess.run(
        [sys.executable, "-c", "from econ.tables.place import data_root; print(data_root())"],
        capture_output=True,
        text=True,
        check=True,
        cwd=installed,
        env=environment,
    )
    assert str(installed) in place.stdout
