"""Tasks and tools: the tables as the installation domain reads them."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, Final

import numpy as np

from econ.installation.mishap import HANDS, Mishap
from econ.installation.task import PARTY_CODE, HoursSource, Material, TaskTable
from econ.installation.tools import Tool
from econ.installation.window_fit import Unit
from econ.kernel.alternative import ALTERNATIVES, PARTIES
from econ.kernel.errors import TableError
from econ.tables.record import Table, read_table

_HOURS_COLUMN: Final = {
    "self": "self_h",
    "helper": "self_h",
    "electrician": "electrician_h",
    "contractor": "contractor_h",
}
"""A helper takes as long as the user."""


@lru_cache(maxsize=8)
def task_table(alternative: str, root: Path | None = None) -> TaskTable:
    """Return the tasks of one route.

    Parameters
    ----------
    alternative : str
        The route; one without tasks gives an empty list.
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    table : TaskTable
        In the order of the file.

    Raises
    ------
    TableError
        If a task comes before what it needs, or names a party or task that is not there.
    """
    rows = [row for row in read_table("installation/tasks", root).rows() if row["alternative"] == alternative]
    keys = [row["task"] for row in rows]
    if len(set(keys)) != len(keys):
        raise TableError(f"installation/tasks.csv: a task of {alternative} is listed twice.")
    return TaskTable(
        alternative=alternative,
        key=tuple(keys),
        label=_texts(rows, "label"),
        condition=_texts(rows, "condition"),
        default_party=np.array([_party(row["default_party"]) for row in rows], dtype=np.int64),
        may=np.array(
            [[party in _listed(row["allowed_parties"]) for party in PARTIES] for row in rows], dtype=np.bool_
        ).reshape(len(rows), len(PARTIES)),
        hours=tuple(tuple(_hours(row[_HOURS_COLUMN[party]]) for party in PARTIES) for row in rows),
        crew_count=_numbers(rows, "crew_count"),
        per=_texts(rows, "per"),
        wait=_texts(rows, "wait"),
        after=tuple(_after(row, position, keys) for position, row in enumerate(rows)),
        licence=_texts(rows, "licence"),
        height_limit_m=_numbers(rows, "height_limit_m"),
        is_attended=_numbers(rows, "is_attended") > 0.0,
        gates_service=_numbers(rows, "gates_service") > 0.0,
        mishap_share_frac=_numbers(rows, "mishap_share_frac"),
        materials=tuple(_materials(row["materials"]) for row in rows),
        visit=_texts(rows, "visit"),
        hold_point=_texts(rows, "hold_point"),
        source=_texts(rows, "source"),
    )


@lru_cache(maxsize=4)
def tools(root: Path | None = None) -> tuple[Tool, ...]:
    """Return the tools of own work.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    tools : tuple of Tool
        In the order of the file.
    """
    table: Table = read_table("installation/tools", root)
    return tuple(
        Tool(
            row["tool"],
            row["label"],
            _listed(row["task"]),
            _by_task(row),
            row["buy"],
            row["rent"],
            row["resale"],
            row["life"],
            row["source"],
        )
        for row in table.rows()
    )


@lru_cache(maxsize=4)
def mishaps(root: Path | None = None) -> tuple[Mishap, ...]:
    """Return what can go wrong in the work.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    mishaps : tuple of Mishap
        In the order of the file.
    """
    return tuple(_mishap(row) for row in read_table("installation/mishaps", root).rows())


def _mishap(row: dict[str, Any]) -> Mishap:
    key, by = row["key"], row["by"]
    if by not in HANDS:
        raise TableError(f"installation/mishaps.csv: {key} happens by {by!r}; it must be one of {', '.join(HANDS)}.")
    parts = [part.partition("=") for part in _listed(row["tasks"])]
    return Mishap(
        key=key,
        label=row["label"],
        by=by,
        tasks=tuple((task, float(share)) for task, _, share in parts),
        chance=row["chance_from"] or f"mishaps.{key}.chance_frac",
        cost=row["cost_from"] or f"mishaps.{key}.cost_usd",
        own=f"mishaps.{key}.own_h",
        later=f"mishaps.{key}.days_d",
        plan_b_party=row["plan_b_party"],
        plan_b=row["plan_b"],
        source=row["source"],
    )


def _by_task(row: dict[str, Any]) -> tuple[str, ...]:
    """Return the condition of each task that a tool serves: one for all, or one for each."""
    tasks, conditions = _listed(row["task"]), _listed(row["condition"])
    if len(conditions) not in (1, len(tasks)):
        raise TableError(
            f"installation/tools.csv: {row['tool']} has {len(conditions)} conditions for {len(tasks)} tasks."
        )
    return conditions * len(tasks) if len(conditions) == 1 else conditions


def _texts(rows: Sequence[dict[str, Any]], column: str) -> tuple[str, ...]:
    return tuple(row[column] for row in rows)


def _numbers(rows: Sequence[dict[str, Any]], column: str) -> Any:
    return np.array([row[column] for row in rows], dtype=np.float64)


def _listed(text: str) -> tuple[str, ...]:
    return tuple(part for part in text.split(";") if part)


def _party(text: str) -> int:
    if text not in PARTY_CODE:
        raise TableError(f"installation/tasks.csv: {text!r} is not a party; it must be one of {', '.join(PARTY_CODE)}.")
    return PARTY_CODE[text]


def _after(row: dict[str, Any], position: int, keys: list[str]) -> tuple[int, ...]:
    before = keys[:position]
    for key in _listed(row["after"]):
        if key not in before:
            raise TableError(f"installation/tasks.csv: {row['task']} comes after {key}, which must stand above it.")
    return tuple(before.index(key) for key in _listed(row["after"]))


def _hours(text: str) -> HoursSource:
    """Return what ``key``, ``key@thickness`` or ``choice:option=key@thickness|...`` says."""
    choice, _, figures = text.rpartition(":")
    parts = [part.rpartition("=") for part in figures.split("|")]
    keyed = [key.partition("@") for _, _, key in parts]
    return HoursSource(
        choice,
        tuple(option for option, _, _ in parts),
        tuple(key for key, _, _ in keyed),
        tuple(float(thickness) if thickness else float("nan") for _, _, thickness in keyed),
    )


def _materials(text: str) -> tuple[Material, ...]:
    parts = [part.partition("*") for part in _listed(text)]
    return tuple(Material(key, quantity) for key, _, quantity in parts)


@dataclass(frozen=True, slots=True, eq=False)
class InstallationTables:
    """What the installation wiring reads.

    Attributes
    ----------
    tasks : dict of str to TaskTable
        By alternative.
    tools : tuple of Tool
        Of own work.
    mishaps : tuple of Mishap
        What can go wrong.
    label, source : dict of str to str
        Words and source of each cost key.
    units : dict of str to tuple of Unit
        New window units there are to buy, by cycle, those first that do what the cycle says.
    """

    tasks: dict[str, TaskTable]
    tools: tuple[Tool, ...]
    mishaps: tuple[Mishap, ...]
    label: dict[str, str]
    source: dict[str, str]
    units: dict[str, tuple[Unit, ...]]


@lru_cache(maxsize=4)
def installation_tables(root: Path | None = None) -> InstallationTables:
    """Return task lists, tools and the words of the cost table.

    Parameters
    ----------
    root : Path or None
        The data folder; None means the one this package brings.

    Returns
    -------
    tables : InstallationTables
        Checked against their records.
    """
    costs = read_table("installation/costs", root)
    words = [dict(zip(costs.texts("key"), costs.texts(column), strict=True)) for column in ("item", "source")]
    tasks: dict[str, TaskTable] = {alternative: task_table(alternative, root) for alternative in ALTERNATIVES}
    units = {cycle: _units(cycle, root) for cycle in ("cooling_only", "reverse_cycle")}
    return InstallationTables(tasks, tools(root), mishaps(root), words[0], words[1], units)


def _units(cycle: str, root: Path | None) -> tuple[Unit, ...]:
    """Return the new units of a cycle; of kinds that are not made for it, those that cool."""
    room = {row["key"]: row for row in read_table("equipment/window_fit", root).rows()}
    new = [row for row in read_table("equipment/window", root).rows() if row["vintage"] == "minimum_2026"]
    kinds = {row["kind"] for row in new if row["cycle"] == cycle}
    wanted = [row for row in new if row["cycle"] == (cycle if row["kind"] in kinds else "cooling_only")]
    return tuple(_unit(row, room[f"{row['kind']}_{row['size_kbtu_per_h']:.0f}"]) for row in wanted)


def _unit(row: dict[str, Any], room: dict[str, Any]) -> Unit:
    rated = {"supply_v": row["volts"], "current_a": row["current_a"]}
    return Unit(
        row["kind"], row["size_kbtu_per_h"], **rated, **{name: room[name] for name in room if name.endswith("_m")}
    )
