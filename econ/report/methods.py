"""Methods and sources as the program itself tells them: the opening of each module's docstring, and its references."""

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

import econ

PACKAGES: Final = {
    "climate": "Weather",
    "loads": "What the room needs",
    "equipment": "What the machines give and use",
    "energy": "What energy costs",
    "installation": "What the work takes",
    "lifecycle": "What it comes to over the years",
    "uncertainty": "How sure it is",
    "portfolio": "Many rooms",
    "caution": "What could hurt someone",
}
"""Packages whose methods are told, and what each is about."""

_ENTRY: Final = re.compile(r"^\.\. \[\d+\] ", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Method:
    """What one module does.

    Attributes
    ----------
    name : str
        Module, such as "loads.infiltration".
    summary : str
        The first sentences of its docstring.
    references : tuple of str
        Published sources named in it, each once.
    """

    name: str
    summary: str
    references: tuple[str, ...]


@cache
def methods(package: str) -> tuple[Method, ...]:
    """Return what the modules of a package do, in order of their names.

    Parameters
    ----------
    package : str
        One of `PACKAGES`.
    """
    folder = Path(str(econ.__path__[0])) / package
    return tuple(_method(package, file) for file in sorted(folder.glob("*.py")) if file.stem != "__init__")


def _method(package: str, file: Path) -> Method:
    tree = ast.parse(file.read_text(encoding="utf-8"))
    summary = (ast.get_docstring(tree) or "").split("\n\n", maxsplit=1)[0]
    found = dict.fromkeys(reference for text in _docstrings(tree) for reference in _references(text))
    return Method(f"{package}.{file.stem}", " ".join(summary.split()), tuple(found))


def _docstrings(tree: ast.Module) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef):
            yield ast.get_docstring(node) or ""


def _references(text: str) -> Iterator[str]:
    """Give the entries of a docstring's section of references."""
    _, _, section = text.partition("References\n----------\n")
    body = section.split("\n\n", maxsplit=1)[0]
    for entry in _ENTRY.split(body)[1:]:
        yield " ".join(entry.split())
