"""Old case files, brought to today's schema one version at a time."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, Final

from econ.case.quantity import short
from econ.case.schema import SCHEMA_VERSION
from econ.kernel.errors import CaseError, Fault

Step = Callable[[dict[str, Any]], dict[str, Any]]
STEPS: Final[Mapping[int, Step]] = MappingProxyType({})
"""From version -> the function that makes the next one; one small function a step. Version 1 is the first."""


def upgraded(
    tables: Mapping[str, Any], steps: Mapping[int, Step] = STEPS, current_version: int = SCHEMA_VERSION
) -> dict[str, Any]:
    """Return a file's tables in today's schema, without ``schema_version``.

    Parameters
    ----------
    tables : mapping
        A parsed case file; without ``schema_version`` it is read as version 1, the first there was.
    steps : mapping of int to function
        What turns each version into the next.
    current_version : int
        The version to arrive at.

    Raises
    ------
    CaseError
        If the version is not a number or newer than this program.
    """
    plain = dict(tables)
    version = plain.pop("schema_version", 1)
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise _refused("must be a whole number from 1", version, f"Write schema_version = {current_version}.")
    if version > current_version:
        problem = f"is newer than this program, which reads up to {current_version}"
        raise _refused(problem, version, "Update the program, or save the case from the older one.")
    for step in range(version, current_version):
        plain = steps[step](plain)
    return plain


def _refused(problem: str, version: object, remedy: str) -> CaseError:
    return CaseError([Fault("schema_version", problem, short(version), remedy)])
