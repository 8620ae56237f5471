"""Imports point down, and only where they may."""

import subprocess
import sys

import pytest

from tests.style import source

FORBIDDEN = ("pandas", "pint", "pydantic", "pvlib", "plotly", "streamlit", "sqlite3", "tomllib", "csv")
FORBIDDEN += ("scipy", "numpy_financial", "logging", "random")


def test_import_contracts_hold():
    program = "import sys; from importlinter.cli import lint_imports; sys.exit(lint_imports(no_cache=True))"
    done = subprocess.run([sys.executable, "-c", program], cwd=source.ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("package", source.DOMAIN)
def test_domain_package_loads_numpy_and_arithmetic_only(package):
    names = source.domain_modules(package)
    program = (
        "import sys, numpy; before = set(sys.modules)\n"
        + "\n".join(f"import {name}" for name in names)
        + "\nloaded = {name.split('.')[0] for name in set(sys.modules) - before}"
        + f"\nprint(sorted(loaded & set({FORBIDDEN!r})))"
    )
    done = subprocess.run([sys.executable, "-c", program], cwd=source.ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == "[]"
