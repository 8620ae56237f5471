"""What the one evaluation says of every room: cost, time, service and standing of each way, as plain arrays."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, replace
from typing import Any, Final

import numpy as np

from econ.case.choices import code
from econ.equipment.panel import SERVICE_V
from econ.evaluate.evaluate import evaluate
from econ.evaluate.result import Result
from econ.evaluate.structure import Structure
from econ.evaluate.wiring.installation import route_standings
from econ.kernel.alternative import ALTERNATIVES, HIRED, SELF, WINDOW, Standing
from econ.kernel.arrays import BoolArray, FloatArray, IntArray
from econ.portfolio.options import OPEN
from econ.portfolio.values import BuildingRows, groups, row_values
from econ.tables.loaders import Tables
from econ.tables.tasks import installation_tables

Progress = Callable[[int, int], None]
"""Told how many rooms are done and how many there are; what it raises stops the work."""

CLOSED: Final = (Standing.NOT_ALLOWED,)
"""Standings of ways that may not be gone; one that is not known may, once somebody has asked."""

UNIT_LINE: Final = "window_unit"
"""Key of the line of new window units."""

_STANDING_PATHS: Final = (
    "site.outdoor_height_m", "site.line_run_m", "site.wall", "site.wall_thickness_m", "window.capacity_w",
    "window.count", "rooms[0].ceiling_height_m", "rooms[0].earth_depth_m",
    *(f"rooms[0].{side}" for side in ("north", "east", "south", "west")),
)  # fmt: skip
"""Lines that differ between rooms and decide how a way stands, beside who does which task."""


@dataclass(frozen=True, slots=True, eq=False)
class Outcomes:
    """Every room, every way, at likely values; the last axis follows ALTERNATIVES.

    Attributes
    ----------
    cash_usd, first_usd, lcc_usd : ndarray, shape (R, A)
        Most cash out before service; first cost with own hours at their value; lifetime cost. [USD]
    unit_usd : ndarray, shape (R, A)
        What one window unit costs; nothing for other ways. [USD]
    shared_usd : ndarray, shape (R, A, S)
        What of the cash is a line that rooms share, in the order of the table of shared lines. [USD]
    energy_usd_per_yr : ndarray, shape (R, A)
        Energy of a full year. [USD/year]
    energy_pv_usd : ndarray, shape (R, A)
        Energy of all years, at present value. [USD]
    own_hours_h, electrician_h : ndarray, shape (R, A)
        Own hours, and an electrician's. [hour]
    too_hot_h : ndarray, shape (R, A)
        Hours a year in which the room stays too hot. [hour]
    electricity_kwh : ndarray, shape (R, A)
        Of a full year. [kWh]
    current_a : ndarray, shape (R, A)
        What new units ask of a 240 V service. [ampere]
    is_cooled : ndarray of bool, shape (R, A)
        Whether the way does the job.
    cool_kwh, heat_kwh : ndarray, shape (R,)
        Need of a year, moisture in the cooling. [kWh]
    standing, reason : ndarray of int, shape (R, A)
        Position among the standings; position of the reasons in `reasons`, `OPEN` where there are none.
    reasons : tuple of str
        In plain words, the gravest first.
    kit, window : ndarray of int, shape (R,)
        Positions of the sizes that do the job. [dimensionless]
    """

    cash_usd: FloatArray
    first_usd: FloatArray
    lcc_usd: FloatArray
    unit_usd: FloatArray
    shared_usd: FloatArray
    energy_usd_per_yr: FloatArray
    energy_pv_usd: FloatArray
    own_hours_h: FloatArray
    electrician_h: FloatArray
    too_hot_h: FloatArray
    electricity_kwh: FloatArray
    current_a: FloatArray
    is_cooled: BoolArray
    cool_kwh: FloatArray
    heat_kwh: FloatArray
    standing: IntArray
    reason: IntArray
    reasons: tuple[str, ...]
    kit: IntArray
    window: IntArray

    @property
    def is_open(self) -> BoolArray:
        """Whether each way may be gone, shape (R, A)."""
        closed = [tuple(Standing).index(each) for each in CLOSED]
        return ~np.isin(self.standing, closed)


def outcomes(rows: BuildingRows, tables: Tables, progress: Progress | None = None) -> Outcomes:
    """Return every room's outcome; rooms whose unit falls short are given the next size, as a case of one room is.

    Parameters
    ----------
    rows : BuildingRows
        Every row.
    tables : Tables
        Usual values.
    progress : callable, optional
        Told after each few thousand rooms; an error it raises stops the work.
    """
    rows = replace(rows, kit=rows.kit.copy(), window=rows.window.copy())
    found = _empty(rows.n_room, len(tables.shared.keys))
    standings = _Standings(rows.n_room)
    wanted, done = np.arange(rows.n_room), 0
    while len(wanted):
        growing = []
        for structure, part in groups(rows, wanted):
            values = row_values(rows, part)
            result = evaluate(structure, values, tables)
            _store(found, result, values, part, tables)
            standings.store(structure, values, result, part)
            growing.append(_grown(rows, result, part))
            done += len(part) - len(growing[-1])
            if progress is not None:
                progress(done, rows.n_room)
        wanted = np.sort(np.concatenate(growing))
    return Outcomes(**found, **standings.arrays(), kit=rows.kit, window=rows.window)


def _empty(n_room: int, n_shared: int) -> dict[str, Any]:
    left_out = {"standing", "reason", "reasons", "kit", "window", "electrician_h"}
    found: dict[str, Any] = {}
    for field in fields(Outcomes):
        if field.name in left_out:
            continue
        shape: tuple[int, ...] = (n_room, len(ALTERNATIVES))
        if field.name in ("cool_kwh", "heat_kwh"):
            shape = (n_room,)
        elif field.name == "shared_usd":
            shape = (n_room, len(ALTERNATIVES), n_shared)
        found[field.name] = np.zeros(shape, dtype=np.bool_ if field.name == "is_cooled" else np.float64)
    return found


def _store(
    found: Mapping[str, np.ndarray], result: Result, values: Mapping[str, FloatArray], part: IntArray, tables: Tables
) -> None:
    """Write what some rows come to."""
    for name, read in _OF_WAY.items():
        found[name][part] = np.stack([getattr(way, read) for way in result.alternatives], axis=1)
    found["lcc_usd"][part] = result.measures.lcc_usd.T
    found["energy_pv_usd"][part] = result.component_usd["energy"].T
    for at, way in enumerate(result.alternatives):
        found["electricity_kwh"][part, at] = way.electricity_kwh.sum(axis=1)
        for place, key in enumerate(tables.shared.keys):
            items = way.line_items
            is_it = [key in pair for pair in zip(items.key, items.category, strict=True)]
            found["shared_usd"][part, at, place] = items.amount_usd[:, is_it].sum(axis=1)
    window = result.alternatives[WINDOW].line_items
    found["unit_usd"][part, WINDOW] = window.unit_price_usd[:, window.key.index(UNIT_LINE)]
    found["cool_kwh"][part] = (result.need_cool_kwh + result.need_latent_kwh).sum(axis=1)
    found["heat_kwh"][part] = result.need_heat_kwh.sum(axis=1)
    found["current_a"][part] = current_a(values, len(part))


_OF_WAY: Final = {
    "cash_usd": "cash_first_cost_usd",
    "first_usd": "first_cost_usd",
    "energy_usd_per_yr": "energy_cost_usd_per_yr",
    "own_hours_h": "own_hours_h",
    "too_hot_h": "unmet_cooling_h",
    "is_cooled": "meets_cooling",
}


def current_a(values: Mapping[str, FloatArray], n_row: int) -> FloatArray:
    """Return what each way's new units ask of a 240 V service, what is there now not taken off, shape (B, A).

    Parameters
    ----------
    values : mapping of str to ndarray, shape () or (B,)
        Numbers by path.
    n_row : int
        B.

    Returns
    -------
    current_a : ndarray, shape (B, A)
        A unit for 120 V asks half its current of each half of the service. [ampere]
    """
    found = np.zeros((n_row, len(ALTERNATIVES)))
    found[:, WINDOW] = values["window.current_a"] * values["window.supply_v"] / SERVICE_V * values["window.count"]
    kit_v = np.where(values["kit.volts"] == code("kit.volts", "120"), SERVICE_V / 2.0, SERVICE_V)
    found[:, SELF] = values["kit.mca_a"] * kit_v / SERVICE_V * values["kit.count"]
    found[:, HIRED] = values["kit.mca_a"] * kit_v / SERVICE_V * values["hired.count"]
    return found


def _grown(rows: BuildingRows, result: Result, part: IntArray) -> IntArray:
    """Give the next size to rows whose kit or window units leave too much undone, and return those rows."""
    grows = np.zeros(len(part), dtype=np.bool_)
    for at, index, sizes in ((SELF, rows.kit, rows.lines.kit), (WINDOW, rows.window, rows.lines.window)):
        short = ~result.alternatives[at].meets_cooling & (index[part] + 1 < len(sizes))
        index[part[short]] += 1
        grows |= short
    return part[grows]


class _Standings:
    """How each way stands in each room: worked out once for all rooms in which the same decides it."""

    def __init__(self, n_room: int) -> None:
        shape = (n_room, len(ALTERNATIVES))
        self.standing, self.reason = np.zeros(shape, dtype=np.int64), np.full(shape, OPEN)
        self.electrician_h = np.zeros(shape)
        self._texts: dict[str, int] = {}
        self._known: dict[bytes, tuple[FloatArray, IntArray, IntArray]] = {}

    def store(self, structure: Structure, values: Mapping[str, FloatArray], result: Result, part: IntArray) -> None:
        """Write how some rows stand."""
        marks = _deciding(values, result, len(part))
        _, first, of_row = np.unique(marks, axis=0, return_index=True, return_inverse=True)
        for at, row in enumerate(first):
            key = marks[row].tobytes() + repr(structure.technologies).encode()
            if key not in self._known:
                self._known[key] = self._read(structure, values, int(row))
            rows = part[of_row.ravel() == at]
            self.electrician_h[rows], self.standing[rows], self.reason[rows] = self._known[key]

    def _read(
        self, structure: Structure, values: Mapping[str, FloatArray], row: int
    ) -> tuple[FloatArray, IntArray, IntArray]:
        one = {path: value[row] if np.ndim(value) else value for path, value in values.items()}
        found = route_standings(structure, one, installation_tables())
        order = tuple(Standing)
        texts = ["\n".join(stands.reasons) for stands, _ in found]
        reason = [self._texts.setdefault(text, len(self._texts)) if text else OPEN for text in texts]
        standing = np.array([order.index(stands.standing) for stands, _ in found], dtype=np.int64)
        return np.array([hours for _, hours in found]), standing, np.array(reason, dtype=np.int64)

    def arrays(self) -> dict[str, Any]:
        """Return what was written, as fields of the outcomes."""
        texts = tuple(self._texts)
        return {
            "standing": self.standing, "reason": self.reason, "reasons": texts, "electrician_h": self.electrician_h,
        }  # fmt: skip


def _deciding(values: Mapping[str, FloatArray], result: Result, n_row: int) -> FloatArray:
    """Return what decides how the ways of each row stand: who does which task, and a few lines, shape (B, n)."""
    done_by = [np.where(way.schedule.is_active, way.schedule.party, -1) for way in result.alternatives]
    lines = [np.broadcast_to(values[path], (n_row,)) for path in _STANDING_PATHS]
    return np.column_stack([*done_by, *lines]).astype(np.float64)
