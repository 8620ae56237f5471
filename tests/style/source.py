"""The project's source, read once for the checks of this folder."""

import ast
import importlib
import pkgutil
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "econ"
DOMAIN = ("kernel", "climate", "loads", "equipment", "energy", "installation", "lifecycle", "caution")


@lru_cache(maxsize=1)
def trees() -> dict[Path, ast.Module]:
    """Return the parsed source of the package and the entry file."""
    files = [*PACKAGE.rglob("*.py"), ROOT / "app.py"]
    return {file: ast.parse(file.read_text(encoding="utf-8")) for file in files if file.exists()}


def functions() -> Iterator[tuple[Path, ast.FunctionDef]]:
    """Yield every function with the file it stands in."""
    for file, tree in trees().items():
        for node in ast.walk(tree):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                yield file, node


def domain_modules(package: str) -> list[str]:
    """Return the dotted names of a domain package and its modules."""
    root = importlib.import_module(f"econ.{package}")
    below = pkgutil.walk_packages(root.__path__, prefix=f"econ.{package}.")
    return [f"econ.{package}", *(module.name for module in below)]
