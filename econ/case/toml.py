"""Case files: TOML in, TOML out, with the units as typed."""

import json
import re
import tomllib
from pathlib import Path
from typing import Any, Final

from econ.case.quantity import short
from econ.case.schema import BESIDE, MOST, SCHEMA_VERSION, SECTIONS, Case, case_from, plain
from econ.case.section import Known
from econ.case.upgrade import upgraded
from econ.kernel.errors import CaseError, Fault

MOST_BYTES: Final = 1_000_000
_BARE_KEY: Final = re.compile(r"[A-Za-z0-9_-]+")
_LINE: Final = re.compile(r"at line (\d+)")


def read_case(source: str | bytes, known: Known | None = None) -> Case:
    """Return the case that a file's text holds.

    Parameters
    ----------
    source : str or bytes
        The text; bytes must be UTF-8.
    known : Known, optional
        Stations, tasks and tools of the tables, to check names against.

    Raises
    ------
    CaseError
        If the text is too large or is not TOML, or with every fault of its fields.
    """
    text = _decoded(source)
    try:
        tables = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise CaseError([_syntax_fault(text, str(error))]) from None
    except (RecursionError, ValueError) as error:
        raise _refused(
            "cannot be read as TOML", type(error).__name__, "Remove deep nesting and very long numbers."
        ) from None
    return case_from(upgraded(tables), known)


def read_case_file(path: Path | str, known: Known | None = None) -> Case:
    """Return the case in a file; a file over 1 MB is refused before it is read.

    Raises
    ------
    CaseError
        As `read_case`, and if the file cannot be opened.
    """
    try:
        size = Path(path).stat().st_size
        if size > MOST_BYTES:
            raise _too_large(size)
        content = Path(path).read_bytes()
    except OSError as error:
        raise _refused(
            "cannot be opened", f"{path}: {error.strerror}", "Check the name and that you may read it."
        ) from None
    return read_case(content, known)


def write_case(case: Case) -> str:
    """Return a case as TOML: only what the user set, without comments; reading it gives an equal case."""
    return f"schema_version = {SCHEMA_VERSION}\n{_sections(plain(case))}"


def inputs_text(case: Case) -> str:
    """Return the part of a case that moves numbers, without its record: equal inputs give equal text."""
    return _sections({name: part for name, part in plain(case).items() if name not in BESIDE})


def _sections(tables: dict[str, Any]) -> str:
    parts = []
    for name in SECTIONS:
        if name in MOST:
            parts += [_table(f"[[{name}]]", part) for part in tables.get(name, ())]
        elif name in tables:
            parts.append(_table(f"[{name}]", tables[name]))
    return "".join(parts)


def _table(head: str, fields: dict[str, Any]) -> str:
    lines = [f"{_key(name)} = {_value(value)}\n" for name, value in fields.items()]
    return f"\n{head}\n{''.join(lines)}"


def _value(value: Any) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_key(key)} = {_value(part)}" for key, part in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(_value(part) for part in value) + "]"
    return _string(value) if isinstance(value, str) else repr(value)


def _key(name: str) -> str:
    return name if _BARE_KEY.fullmatch(name) else _string(name)


def _string(text: str) -> str:
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")  # TOML forbids a bare DEL, JSON does not


def _decoded(source: str | bytes) -> str:
    size = len(source)
    if size > MOST_BYTES:
        raise _too_large(size)
    if isinstance(source, str):
        return source
    try:
        return source.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise _refused(
            "is not text in UTF-8", f"byte {error.start}", "Save it again as plain text, encoding UTF-8."
        ) from None


def _too_large(size: int) -> CaseError:
    return _refused(f"must be at most {MOST_BYTES:,} bytes", f"{size:,} bytes", "Check that this is a case file.")


def _refused(problem: str, got: str, remedy: str) -> CaseError:
    return CaseError([Fault("file", problem, got, remedy)])


def _syntax_fault(text: str, message: str) -> Fault:
    lines = text.splitlines() or [""]
    found = _LINE.search(message)
    number = min(int(found[1]), len(lines)) if found else len(lines)
    problem = f"cannot be read as TOML: {message}"
    remedy = "Close every quote and bracket on its line and write name = value; if the file was cut off, get it again."
    return Fault(f"line {number}", problem, short(lines[number - 1].strip()), remedy)
