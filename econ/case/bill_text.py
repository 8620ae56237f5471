"""Utility bills as people paste them: one row a bill, dates and amounts in almost any order and form."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Final

from econ.case.quantity import short
from econ.energy.change_point import LEAST_BILLS, MOST_BILLS
from econ.energy.fuel import BTU_PER_KWH, GAS_KWH_PER_THERM
from econ.kernel.errors import Fault

THERMS_PER_CCF: Final = 1.038
"""Therms in 100 cubic feet of natural gas. US EIA: 1,036 to 1,039 Btu a cubic foot."""

CUBIC_FEET_PER_M3: Final = 35.3147
"""NIST SP 811 (2008), App. B.8."""

UNIT_KWH: Final[dict[str, float]] = {
    "kwh": 1.0,
    "mwh": 1000.0,
    "therm": GAS_KWH_PER_THERM,
    "therms": GAS_KWH_PER_THERM,
    "ccf": THERMS_PER_CCF * GAS_KWH_PER_THERM,
    "mcf": 10.0 * THERMS_PER_CCF * GAS_KWH_PER_THERM,
    "m3": CUBIC_FEET_PER_M3 / 100.0 * THERMS_PER_CCF * GAS_KWH_PER_THERM,
    "mmbtu": 1.0e6 / BTU_PER_KWH,
    "dth": 1.0e6 / BTU_PER_KWH,
}
"""kWh in a unit that may stand behind an amount."""

SHORTEST_D: Final = 15
LONGEST_D: Final = 100
"""Days that a bill may run: from half a month to a quarter."""

MOST_AMOUNT: Final = 1.0e6
"""Greatest number in a row: far beyond a home's bill in any of the units."""

MOST_DAYS: Final = 999
"""Days from which on their number does not matter: the bill is refused as too long."""

_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NAME: Final = r"(?P<{0}>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?"
_DATE: Final = re.compile(
    r"(?P<y1>20\d{2})[-/](?P<m1>\d{1,2})(?:[-/](?P<d1>\d{1,2}))?(?!\d)"
    r"|(?P<m2>\d{1,2})[-/](?P<d2>\d{1,2})[-/](?P<y2>20\d{2}|\d{2})(?!\d)"
    r"|(?P<m3>\d{1,2})/(?P<y3>20\d{2})(?!\d)"
    r"|(?P<d6>\d{1,2})\.(?P<m6>\d{1,2})\.(?P<y6>20\d{2})(?!\d)"
    rf"|{_NAME.format('n4')}\s*(?:(?P<d4>\d{{1,2}})(?:st|nd|rd|th)?,?\s+)?(?P<y4>20\d{{2}})(?!\d)"
    rf"|(?P<d5>\d{{1,2}})[\s-]*{_NAME.format('n5')}[\s,-]*(?P<y5>20\d{{2}}|\d{{2}})(?!\d)",
    re.IGNORECASE,
)
_AMOUNT: Final = re.compile(
    r"(?P<before>[$€£]\s*)?(?P<number>-?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?|-?\.\d+)\s*"
    r"(?P<unit>°\s*[fc]\b|[a-z][a-z0-9³]*|\$(?!\s*\d))?",
    re.IGNORECASE,
)
_MONEY: Final = frozenset({"$", "usd", "dollars", "dollar"})
_DAYS: Final = frozenset({"d", "day", "days"})
_DEGREES: Final = frozenset({"f", "c", "degf", "degc"})
_FREEZING_F, _F_PER_K = 32.0, 1.8


@dataclass(frozen=True, slots=True)
class BillRow:
    """One bill.

    Attributes
    ----------
    first, past : date
        First day and the day after the last.
    energy_kwh : float
        What was used. [kWh]
    paid_usd : float or None
        What it cost, where the row says so. [USD]
    mean_c : float or None
        Mean outdoor temperature, where the row says so. [degC]
    line : int
        Row of the text, 1 for the first.
    """

    first: date
    past: date
    energy_kwh: float
    paid_usd: float | None
    mean_c: float | None
    line: int

    @property
    def days_d(self) -> int:
        """Days it covers."""
        return (self.past - self.first).days


@dataclass(frozen=True, slots=True)
class BillText:
    """Bills read from text.

    Attributes
    ----------
    rows : tuple of BillRow
        In the order of time.
    faults : tuple of Fault
        Rows that were not taken, each with what to do.
    notes : tuple of str
        What was taken for granted.
    """

    rows: tuple[BillRow, ...]
    faults: tuple[Fault, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Read:
    """A row as read, before its period is known."""

    line: int
    text: str
    dates: tuple[date, ...]
    days: int | None
    energy_kwh: float
    paid_usd: float | None
    mean_c: float | None
    is_month: bool


class _RefusedError(ValueError):
    """A row that cannot be read: what is wrong, and what to do."""


def read_bills(text: str, path: str, usual_unit: str) -> BillText:
    """Return the bills of a pasted text.

    Parameters
    ----------
    text : str
        One row a bill: two dates, or the date of reading, or a month; the amount used, with or without its unit; and
        if wanted the dollars and the mean outdoor temperature ("31 F"). A heading and empty rows are passed over.
    path : str
        Of the field, for faults.
    usual_unit : str
        Unit of amounts without one: a key of `UNIT_KWH`.

    Returns
    -------
    bills : BillText
        Rows that could be read, and what is wrong with each of the others.
    """
    read, faults = list[_Read](), list[Fault]()
    for line, row in enumerate(text.splitlines(), 1):
        if not any(letter.isdigit() for letter in row):
            continue
        try:
            read.append(_row(line, row, usual_unit))
        except _RefusedError as error:
            problem, remedy = error.args
            faults.append(Fault(f"{path} row {line}", problem, short(" ".join(row.split())), remedy))
    rows, more = _with_periods(sorted(read, key=lambda each: each.dates), path)
    rows, clashes = _without_clashes(rows, path)
    rows, notes = _newest(rows)
    by_row = sorted((*faults, *more, *clashes), key=lambda fault: int(fault.path.rpartition(" ")[2]))
    return BillText(tuple(rows), tuple(by_row), notes)


def _row(line: int, row: str, usual_unit: str) -> _Read:
    plain = _unquoted(row)
    found = list(_DATE.finditer(plain))
    dates = [_date(match) for match in found]
    if not dates:
        raise _RefusedError("has no date", 'Begin it such as "1/5/2026 2/3/2026" or "Jan 2026".')
    is_month = len(dates) == 1 and not any(found[0][day] for day in ("d1", "d2", "d4", "d5", "d6"))
    rest = _DATE.sub(" ", plain)
    amounts = list(_AMOUNT.finditer(rest.replace(",", " ") if _is_csv(plain) else rest))
    ends = tuple(sorted(dates[:2]))
    days = _said_days(amounts, ends)
    energy = _energy_kwh(amounts, days, ends, usual_unit)
    return _Read(line, row, ends, days, energy, _paid(amounts, days, ends), _mean_c(amounts), is_month)


def _unquoted(row: str) -> str:
    """Return a row without quotes, commas that mark thousands within them taken out."""
    return re.sub(
        r'"([^"]*)"', lambda quoted: quoted[1].replace(",", "") if quoted[1][:1].isdigit() else quoted[1], row
    )


def _is_csv(row: str) -> bool:
    """Return whether commas part the cells: one follows a date at once."""
    return any(row[match.end() : match.end() + 1] == "," for match in _DATE.finditer(row))


def _date(match: re.Match[str]) -> date:
    part = match.groupdict()
    for form in "123456":
        year = part.get(f"y{form}")
        if year is None:
            continue
        named = part.get(f"n{form}")
        month = _MONTHS.index(named[:3].casefold()) + 1 if named else int(part[f"m{form}"] or 0)
        day_of = int(part.get(f"d{form}") or 1)
        if form == "2" and month > 12:
            month, day_of = day_of, month
        try:
            return date(int(year) + (2000 if len(year) == 2 else 0), month, day_of)
        except ValueError:
            break
    raise _RefusedError(f"has a date that cannot be: {match[0]}", "Correct the date; write it such as 2026-01-05.")


def _number(match: re.Match[str]) -> float:
    value = float(match["number"].replace(",", ""))
    if abs(value) > MOST_AMOUNT:
        raise _RefusedError(f"has a number that is too large: {short(match['number'])}", "Correct it.")
    return value


def _unit(match: re.Match[str]) -> str:
    return "$" if match["before"] else re.sub(r"[°\s]", "", match["unit"] or "").casefold().replace("³", "3")


def _said_days(amounts: Sequence[re.Match[str]], ends: tuple[date, ...]) -> int | None:
    """Return the days a row names: an amount in days, or a bare number that is what its two dates make."""
    for match in amounts:
        if _unit(match) in _DAYS:
            return min(round(_number(match)), MOST_DAYS)
    between = (ends[-1] - ends[0]).days
    bare = [_number(match) for match in amounts if not _unit(match)]
    return between if len(ends) == 2 and len(bare) > 1 and bare[0] in (between, between + 1) else None


def _bare(amounts: Sequence[re.Match[str]], days: int | None, ends: tuple[date, ...]) -> list[float]:
    """Return numbers without a unit, the days left out where they are given so."""
    bare = [_number(match) for match in amounts if not _unit(match)]
    is_days_first = days is not None and len(ends) == 2 and not any(_unit(match) in _DAYS for match in amounts)
    return bare[1:] if is_days_first else bare


def _energy_kwh(amounts: Sequence[re.Match[str]], days: int | None, ends: tuple[date, ...], usual_unit: str) -> float:
    known = [(_number(match), UNIT_KWH[_unit(match)]) for match in amounts if _unit(match) in UNIT_KWH]
    strange = [_unit(m) for m in amounts if _unit(m) and _unit(m) not in _MONEY | _DAYS | _DEGREES | set(UNIT_KWH)]
    if strange and not known:
        units = ", ".join(UNIT_KWH)
        raise _RefusedError(f"has a unit that is not known: {strange[0]}", f"Write one of {units}, or no unit.")
    bare = _bare(amounts, days, ends)
    if not known and bare:
        known = [(bare[0], UNIT_KWH[usual_unit])]
    if not known:
        raise _RefusedError("has no amount used", f"Write what was used behind the dates, such as 812 {usual_unit}.")
    amount, factor = known[0]
    if amount < 0.0:
        raise _RefusedError(f"has a negative amount: {amount:g}", "Give what was used; leave credits out.")
    return amount * factor


def _paid(amounts: Sequence[re.Match[str]], days: int | None, ends: tuple[date, ...]) -> float | None:
    said = [_number(match) for match in amounts if _unit(match) in _MONEY]
    bare = _bare(amounts, days, ends)
    has_unit = any(_unit(match) in UNIT_KWH for match in amounts)
    left = bare if has_unit else bare[1:]
    return said[0] if said else left[0] if left else None


def _mean_c(amounts: Sequence[re.Match[str]]) -> float | None:
    for match in amounts:
        if (unit := _unit(match)) in _DEGREES:
            value = _number(match)
            return value if unit.endswith("c") else (value - _FREEZING_F) / _F_PER_K
    return None


def _with_periods(read: Sequence[_Read], path: str) -> tuple[list[BillRow], list[Fault]]:
    """Return bills with first and last day; one date alone is a reading, and the bill runs from the one before."""
    rows, faults = list[BillRow](), list[Fault]()
    before: date | None = None
    for each in read:
        first, past = _period(each, before)
        before = past
        if first is None:
            problem = "has one date and no row before it to begin at"
            faults.append(
                _fault(each, path, problem, "Give its first day too, or the days; the next bill begins here.")
            )
            continue
        days = (past - first).days
        if SHORTEST_D <= days <= LONGEST_D:
            rows.append(BillRow(first, past, each.energy_kwh, each.paid_usd, each.mean_c, each.line))
        else:
            problem = f"runs {days} days; a bill must run {SHORTEST_D} to {LONGEST_D}"
            faults.append(_fault(each, path, problem, "Check its dates, and whether a bill before it is missing."))
    return _closed(rows), faults


def _period(each: _Read, before: date | None) -> tuple[date | None, date]:
    if each.is_month:
        first = each.dates[0]
        return first, (first + timedelta(days=31)).replace(day=1)
    if len(each.dates) == 2:
        return each.dates[0], each.dates[1]
    past = each.dates[0]
    return (past - timedelta(days=each.days) if each.days else before), past


def _closed(rows: list[BillRow]) -> list[BillRow]:
    """Return bills whose last day is counted where most begin the day after the one before ends."""
    gaps = [(late.first - early.past).days for early, late in pairwise(rows)]
    if gaps.count(1) * 2 <= len(gaps):
        return rows
    return [replace(row, past=row.past + timedelta(days=1)) for row in rows]


def _without_clashes(rows: list[BillRow], path: str) -> tuple[list[BillRow], list[Fault]]:
    """Return bills that do not overlap one before them, and a fault for each that does."""
    kept, faults = list[BillRow](), list[Fault]()
    for row in sorted(rows, key=lambda each: (each.first, each.past)):
        if kept and (kept[-1].past - row.first).days > 1:
            problem = f"overlaps the bill of row {kept[-1].line}"
            got = f"{row.first} to {row.past}"
            faults.append(Fault(f"{path} row {row.line}", problem, got, "Delete one of the two, or correct its dates."))
        else:
            kept.append(row)
    return kept, faults


def _newest(rows: list[BillRow]) -> tuple[list[BillRow], tuple[str, ...]]:
    notes = []
    if len(rows) > MOST_BILLS:
        notes.append(f"Of {len(rows)} bills the newest {MOST_BILLS} are used: a home changes over longer times.")
    if 0 < len(rows) < LEAST_BILLS:
        notes.append(f"{len(rows)} bills are read; a fit needs {LEAST_BILLS} at least, a whole year.")
    return rows[-MOST_BILLS:], tuple(notes)


def _fault(each: _Read, path: str, problem: str, remedy: str) -> Fault:
    return Fault(f"{path} row {each.line}", problem, short(" ".join(each.text.split())), remedy)
