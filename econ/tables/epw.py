"""Hourly weather files in the EPW format: read, and refused where a figure is missing or cannot be."""

from collections.abc import Sequence
from dataclasses import dataclass
from io import StringIO
from pathlib import Path
from typing import Final

import numpy as np

from econ.kernel.arrays import FloatArray, read_only
from econ.kernel.constants import MONTH_DAYS
from econ.kernel.errors import CaseError, Fault

SIZE_LIMIT_BYTE: Final = 8_000_000
"""An hourly year takes 1.6 MB."""

HEADER_LINES: Final = 8
LEAP_DAY: Final = (2, 29)
FIELDS_NEEDED: Final = 22
"""Fields of a row up to wind speed; what follows is not read."""

SHOWN_FAULTS: Final = 20
"""Faults listed one by one; the rest are counted."""

DEW_ABOVE_DRY_K: Final = 0.5
"""K that a dew point may stand above its dry bulb through rounding of either to whole degrees."""

DIFFUSE_ABOVE_GLOBAL_W_PER_M2: Final = 50.0
"""W/m2 that hourly diffuse light may exceed global light: the uncertainty of either. Assumption."""

PLACE_BOUNDS: Final = (
    ("latitude", 6, "degree", -90.0, 90.0),
    ("longitude", 7, "degree", -180.0, 180.0),
    ("time zone", 8, "hours from UTC", -12.0, 14.0),
    ("elevation", 9, "m", -500.0, 6000.0),
)
"""Header field, its place on the first line, unit and bounds."""


@dataclass(frozen=True, slots=True)
class _Field:
    """A figure of each row: its place, code for missing, unit and bounds."""

    label: str
    column: str
    position: int
    missing: float
    unit: str
    low: float
    high: float


FIELDS: Final = (
    _Field("dry bulb", "temp_air", 6, 99.9, "degC", -70.0, 70.0),
    _Field("dew point", "temp_dew", 7, 99.9, "degC", -90.0, 50.0),
    _Field("global irradiance", "ghi", 13, 9999.0, "W/m2", 0.0, 1500.0),
    _Field("direct normal irradiance", "dni", 14, 9999.0, "W/m2", 0.0, 1415.0),
    _Field("diffuse irradiance", "dhi", 15, 9999.0, "W/m2", 0.0, 1000.0),
    _Field("wind speed", "wind_speed", 21, 999.0, "m/s", 0.0, 60.0),
)
"""Bounds: what instruments have ever read; direct light below the sun's at the top of the air, 1361 W/m2 and 3.4 %."""


@dataclass(frozen=True, slots=True, eq=False)
class HourlyFile:
    """A year of hours at one place, checked; hour h of a day runs from h to h + 1 o'clock, local standard time.

    Attributes
    ----------
    name, state, source : str
        Place, state or province and kind of data, as the first line spells them.
    latitude_deg, longitude_deg : float
        North and east positive. [degree]
    elevation_m : float
        Above sea level. [m]
    utc_offset_h : float
        Local standard time minus UTC. [hour]
    dry_bulb_c, dew_point_c : ndarray, shape (24, 365)
        Temperature and dew point. [degC]
    global_w_per_m2, beam_w_per_m2, diffuse_w_per_m2 : ndarray, shape (24, 365)
        Global and diffuse on the horizontal, and direct light on a plane facing the sun, hourly means. [W/m^2]
    wind_m_per_s : ndarray, shape (24, 365)
        Wind 10 m above open ground. [m/s]
    notes : tuple of str
        What was left out.
    """

    name: str
    state: str
    source: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float
    utc_offset_h: float
    dry_bulb_c: FloatArray
    dew_point_c: FloatArray
    global_w_per_m2: FloatArray
    beam_w_per_m2: FloatArray
    diffuse_w_per_m2: FloatArray
    wind_m_per_s: FloatArray
    notes: tuple[str, ...]


def read_epw(source: Path | bytes, name: str = "weather file") -> HourlyFile:
    """Return a checked year of hours.

    Parameters
    ----------
    source : Path or bytes
        The file, or what an upload holds.
    name : str
        What to call it in messages; a path brings its own name.

    Returns
    -------
    hourly : HourlyFile
        365 days; 29 February is dropped and the notes say so.

    Raises
    ------
    CaseError
        If it is too large or no EPW file, its place or hours are wrong, or a figure is missing or cannot be: every
        fault with its line, up to twenty.

    Notes
    -----
    A row stamped hour 1 holds the hour that ends at 1 o'clock. Years are not read: typical years mix them.
    """
    if isinstance(source, Path):
        name, source = source.name, limited_bytes(source)
    _check_size(name, len(source))
    lines = source.decode("utf-8", errors="replace").splitlines()
    place = _place(name, lines)
    days = _checked_calendar(name, lines[HEADER_LINES:])
    columns = _columns(name, lines)
    is_kept = np.array([day != LEAP_DAY for day in days])
    notes = () if np.all(is_kept) else ("29 February is left out: the year has 365 days.",)
    hours = {column: read_only(values[is_kept].reshape(len(_month_day()), 24).T) for column, values in columns.items()}
    return HourlyFile(
        **place,  # type: ignore[arg-type]  # four numbers and three texts by the names of the fields
        dry_bulb_c=hours["temp_air"],
        dew_point_c=hours["temp_dew"],
        global_w_per_m2=hours["ghi"],
        beam_w_per_m2=hours["dni"],
        diffuse_w_per_m2=hours["dhi"],
        wind_m_per_s=hours["wind_speed"],
        notes=notes,
    )


def limited_bytes(path: Path) -> bytes:
    """Return what a weather file holds; one that is too large is refused before it is read."""
    _check_size(path.name, path.stat().st_size)
    return path.read_bytes()


def _check_size(name: str, size_byte: int) -> None:
    if size_byte > SIZE_LIMIT_BYTE:
        allowed = f"must be at most {SIZE_LIMIT_BYTE / 1e6:g} MB"
        raise CaseError([Fault(name, allowed, f"{size_byte / 1e6:.1f} MB", "Give one year of hours.")])


def _place(name: str, lines: Sequence[str]) -> dict[str, str | float]:
    """Return the first line's place by the names of `HourlyFile`."""
    first = [part.strip() for part in (lines[0] if lines else "").split(",")]
    if first[0].upper() != "LOCATION" or len(lines) <= HEADER_LINES:
        remedy = "Give an EPW file: 8 header lines, the first starting with LOCATION, then one row an hour."
        got = repr(lines[0][:40]) if lines else "an empty file"
        raise CaseError([Fault(f"{name}, line 1", "must be an EPW file's LOCATION line", got, remedy)])
    numbers, faults = [], []
    for label, position, unit, low, high in PLACE_BOUNDS:
        text = first[position] if position < len(first) else ""
        value = _number(text)
        numbers.append(value)
        if not low <= value <= high:
            allowed = f"must be between {low:g} and {high:g} {unit}"
            remedy = "Correct the LOCATION line: place, state, country, source, number, then these four."
            faults.append(Fault(f"{name}, line 1, {label}", allowed, text or "nothing", remedy))
    if faults:
        raise CaseError(faults)
    keys = ("latitude_deg", "longitude_deg", "utc_offset_h", "elevation_m")
    texts = {"name": first[1], "state": first[2], "source": first[4]}
    return texts | dict(zip(keys, numbers, strict=True))


def _checked_calendar(name: str, rows: Sequence[str]) -> list[tuple[int, int]]:
    """Return month and day of each row, the rows being a year of hours in order, with or without 29 February."""
    n_hour = 24 * len(_month_day())
    if len(rows) not in (n_hour, n_hour + 24):
        remedy = "Give one whole year of hours without gaps or blank lines; 8,784 rows with 29 February."
        raise CaseError([Fault(name, f"must have {n_hour:,} or {n_hour + 24:,} rows", f"{len(rows):,}", remedy)])
    days = [day for day in _month_day(has_leap_day=len(rows) > n_hour) for _ in range(24)]
    faults = []
    for row, (line, (month, day)) in enumerate(zip(rows, days, strict=True)):
        wanted = [month, day, row % 24 + 1]
        parts = line.split(",")
        if [_number(part) for part in parts[1:4]] != wanted:
            expected = "must be month {}, day {}, hour {}".format(*wanted)
            remedy = "Hours run from 1 to 24, days from 1 January to 31 December, in order."
            faults.append(Fault(_line(name, row), expected, ",".join(parts[1:4]) or "nothing", remedy))
        elif len(parts) < FIELDS_NEEDED:
            remedy = "The row is cut short: restore it."
            faults.append(Fault(_line(name, row), f"must have {FIELDS_NEEDED} fields", str(len(parts)), remedy))
    _refuse(name, faults)
    return days


def _columns(name: str, lines: Sequence[str]) -> dict[str, FloatArray]:
    """Return the checked figures by pvlib's column names, each shape (n_row,)."""
    faults: list[tuple[int, Fault]] = []
    rows = [line.split(",") for line in lines[HEADER_LINES:]]
    for field in FIELDS:
        values = np.array([_number(row[field.position]) for row in rows])
        is_wrong = ~((values >= field.low) & (values <= field.high))
        faults += [
            (row, _fault(name, row, field, rows[row][field.position])) for row in np.flatnonzero(is_wrong).tolist()
        ]
    _refuse(name, [fault for _, fault in sorted(faults, key=lambda entry: entry[0])])
    columns = _parsed(lines)
    _refuse(name, _contradictions(name, columns))
    return columns


def _parsed(lines: Sequence[str]) -> dict[str, FloatArray]:
    from pvlib import iotools

    table, _ = iotools.read_epw(StringIO("\n".join(lines)), coerce_year=2023 if len(lines) < 8790 else 2024)
    return {field.column: table[field.column].to_numpy(dtype=np.float64) for field in FIELDS}


def _contradictions(name: str, columns: dict[str, FloatArray]) -> list[Fault]:
    """Return rows whose figures cannot be true together."""
    pairs = (
        ("dew point less dry bulb", columns["temp_dew"] - columns["temp_air"], DEW_ABOVE_DRY_K, "K"),
        ("diffuse less global irradiance", columns["dhi"] - columns["ghi"], DIFFUSE_ABOVE_GLOBAL_W_PER_M2, "W/m2"),
    )
    faults = []
    for label, excess, most, unit in pairs:
        for row in np.flatnonzero(excess > most).tolist():
            remedy = "One of the two figures is wrong: correct the row."
            got = f"{excess[row]:g} {unit}"
            faults.append(Fault(f"{_line(name, row)}, {label}", f"must be at most {most:g} {unit}", got, remedy))
    return faults


def _fault(name: str, row: int, field: _Field, text: str) -> Fault:
    allowed = f"must be between {field.low:g} and {field.high:g} {field.unit}"
    remedy = "Correct the figure, or use a file without gaps."
    if _number(text) >= field.missing:
        remedy = "That is the code for a missing figure: fill the gap, or use another year."
    return Fault(f"{_line(name, row)}, {field.label}", allowed, text.strip() or "nothing", remedy)


def _refuse(name: str, faults: Sequence[Fault]) -> None:
    """Raise the first faults and the number of those not shown."""
    if not faults:
        return
    more = len(faults) - SHOWN_FAULTS
    counted = [Fault(name, "must have no faults", f"{more} more", "Correct those above first.")] if more > 0 else []
    raise CaseError([*faults[:SHOWN_FAULTS], *counted])


def _line(name: str, row: int) -> str:
    return f"{name}, line {row + HEADER_LINES + 1}"


def _number(text: str) -> float:
    """Return the number a field holds, NaN where it holds none."""
    try:
        return float(text)
    except ValueError:
        return float("nan")


def _month_day(*, has_leap_day: bool = False) -> list[tuple[int, int]]:
    """Return month and day of every day of the year."""
    return [
        (month, day)
        for month, length in enumerate(MONTH_DAYS, start=1)
        for day in range(1, int(length) + 1 + (has_leap_day and month == 2))
    ]
