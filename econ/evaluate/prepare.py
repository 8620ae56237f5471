"""From a case to structure and sheet: usual values, sizes by the design load, then what hangs on a size."""

import math
from dataclasses import replace
from datetime import date
from typing import Final

import numpy as np

from econ.case.nearest import nearest
from econ.case.quantity import Amount
from econ.case.schema import Case
from econ.equipment.curve import variable_speed_split
from econ.equipment.line_set import LineSet, line_kept_frac, with_lines
from econ.equipment.machine import RatingRows
from econ.equipment.sizing import chosen_index, cooling_capacity_w, heating_capacity_w
from econ.evaluate.bill_scale import BillFindings, before_fit, bill_findings, uses_fit
from econ.evaluate.design import design_rows
from econ.evaluate.draft import Draft
from econ.evaluate.machines import (
    KIT_RATINGS,
    PER_KBTU_W,
    indoor_rooms,
    technologies,
    window_row,
    window_sizes,
    write_counts,
    write_hired,
    write_kit,
    write_now,
    write_window,
)
from econ.evaluate.physics import is_cooled_enough, physics
from econ.evaluate.sheet import Sheet, point, sheet_of
from econ.evaluate.structure import Structure, WeatherChoice
from econ.evaluate.unit_costs import read_keys
from econ.evaluate.usual import YOURS, write_usual
from econ.evaluate.wiring import climate
from econ.evaluate.wiring.measures import effect_path, room_work
from econ.kernel.alternative import SELF, WINDOW, Alternative
from econ.kernel.arrays import FloatArray
from econ.kernel.constants import AIR_HEAT_J_PER_KGK, STANDARD_PRESSURE_PA
from econ.kernel.errors import CaseError, Fault
from econ.kernel.spread import Spread
from econ.loads.hose import EXHAUST_AT_W, exhaust_kg_per_s, net_output_w
from econ.tables.loaders import Tables

CHOSEN: Final = "choose"
"""Option of a size that leaves it to the design load."""


def prepared(case: Case, tables: Tables, today: date) -> tuple[Structure, Sheet]:
    """Return what picks formulas and the numbers of a case.

    Parameters
    ----------
    case : Case
        What the user said.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.

    Raises
    ------
    CaseError
        If a figure changed by hand has no line.

    Returns
    -------
    structure : Structure
        Picks formulas; hashable.
    sheet : Sheet
        Every input with low, likely, high, source and whose it is.
    """
    base = Draft(case, tables, today)
    write_usual(base)
    write_fixed(base)
    write_counts(base)
    write_bill_factors(base)
    cooling_w, heating_w = wanted_w(base, structure_of(base, ("none",) * 4))
    write_now(base)
    kits = kit_sizes_from(base, kit_size_for(base, cooling_w, heating_w))
    windows = window_sizes_from(base, *window_size_for(base, cooling_w))
    at = {SELF: 0, WINDOW: 0}
    while True:
        structure, sheet = sized(base, kits[at[SELF]], windows[at[WINDOW]])
        short = short_ways(structure, sheet, tables)
        growing = [way for way, sizes in ((SELF, kits), (WINDOW, windows)) if short[way] and at[way] + 1 < len(sizes)]
        if not growing:
            return structure, sheet
        for way in growing:
            at[way] += 1


def findings_of_bills(case: Case, tables: Tables, today: date) -> BillFindings:
    """Return what the bills of a case say of its room.

    Parameters
    ----------
    case : Case
        The case with its bills.
    tables : Tables
        Usual values.
    today : date
        The decision date where the case names none.
    """
    return bill_findings(case, *prepared(before_fit(case), tables, today), tables)


def write_bill_factors(draft: Draft) -> None:
    """Write the factors by which bills scale the room, where the user wants that and the fit allows it."""
    if uses_fit(draft.case):
        for path, spread in findings_of_bills(draft.case, draft.tables, draft.today).factors.items():
            draft.put(path, spread, "", "computed")


def sized(base: Draft, kit_size: str, window: tuple[str, float]) -> tuple[Structure, Sheet]:
    """Return structure and sheet with one size of kit and one of window units."""
    draft = replace(base, entries=dict(base.entries), options=dict(base.options))
    write_kit(draft, kit_size)
    write_hired(draft, kit_size)
    write_window(draft, *window)
    write_changed(draft)
    kinds = technologies(draft, window_row(draft, window[0]))
    return structure_of(draft, kinds), sheet_of(draft.entries)


def short_ways(structure: Structure, sheet: Sheet, tables: Tables) -> tuple[bool, ...]:
    """Return which ways leave more of the cooling undone than is allowed, in the order of ALTERNATIVES."""
    values = room_work(structure, point(sheet), tables, 1).values
    found = physics(structure, values, climate.weather(structure, tables), 1)
    return tuple(not bool(is_cooled_enough(values, found.need, use)[0]) for use in found.uses)


def kit_sizes_from(draft: Draft, size: str) -> tuple[str, ...]:
    """Return the sizes that may be tried for the kit: the user's alone, or the chosen one and all above."""
    if draft.taken("kit.size") != CHOSEN:
        return (size,)
    sizes = [str(each) for each in draft.tables.ductless_sizes("kit", draft.taken("kit.grade"))]
    return tuple(sizes[sizes.index(size) :])


def window_sizes_from(draft: Draft, size: str, count: float) -> tuple[tuple[str, float], ...]:
    """Return the sizes that may be tried for window units, with their count: the user's, or the chosen and above."""
    if draft.taken("window.size") != CHOSEN:
        return ((size, count),)
    sizes = [str(each) for each in window_sizes(draft)]
    return tuple((each, count) for each in sizes[sizes.index(size) :])


def write_changed(draft: Draft) -> None:
    """Set the figures the user changed by hand; a path without a line, or one that a form asks for, is a fault."""
    faults = []
    for path, amount in draft.case.figures.changed or ():
        if path in draft.fields or path not in draft.entries:
            names = [known for known in draft.entries if known not in draft.fields]
            close = ", ".join(nearest(path, names))
            where = f"figures.changed.{path}"
            faults.append(Fault(where, "must name a figure that no form asks for", repr(path), f"Nearest: {close}."))
        elif not amount.is_unknown:
            spread = Spread(amount.low, amount.likely, amount.high, YOURS)
            draft.put(path, spread, draft.entries[path].unit, "yours")
    if faults:
        raise CaseError(faults)


def write_fixed(draft: Draft) -> None:
    """Write what no form asks for: unit costs, assumptions, shade and the calendar."""
    for key in sorted(read_keys()):
        row = draft.tables.costs[key]
        draft.put(f"costs.{key}", row.spread(), row.text("unit"))
    for path in draft.tables.assumptions.keys:
        if path not in draft.entries:
            row = draft.tables.assumptions[path]
            draft.put(path, row.spread(), row.text("unit"))
    for index in range(len(draft.case.rooms)):
        shade = draft.options[f"rooms[{index}].shade"]
        draft.put(f"rooms[{index}].shade_frac", draft.tables.shading[shade].spread("factor_frac"), "")
    write_measures(draft)
    write_mishaps(draft)
    decided = draft.decision_date
    for name, number in (("doy", min(decided.timetuple().tm_yday - 1, 364)), ("weekday", decided.weekday())):
        draft.put(f"place.decision_{name}", Spread(number, number, number, "the decision date"), "day", "computed")


def write_measures(draft: Draft) -> None:
    """Write what each measure on the room does, costs, takes and lasts, chosen or not."""
    for key, row in draft.tables.measures.entries.items():
        price = draft.tables.costs[row.text("cost")]
        draft.put(effect_path(key, row), row.spread("effect"), row.text("unit"))
        draft.put(f"costs.{row.text('cost')}", price.spread(), price.text("unit"))
        for name, unit in (("own_h", "hour"), ("life_yr", "year")):
            draft.put(f"measures.{key}.{name}", row.spread(name), unit)


def write_mishaps(draft: Draft) -> None:
    """Write the chance, cost, own hours and days of each kind of mishap; what a form asks for has its line already."""
    units = {"chance_frac": "dimensionless", "cost_usd": "USD", "own_h": "hour", "days_d": "day"}
    for key, row in draft.tables.mishaps.entries.items():
        for name, unit in units.items():
            if name in row.spreads:
                draft.put(f"mishaps.{key}.{name}", row.spread(name), unit)


def structure_of(draft: Draft, kinds: tuple[str, ...]) -> Structure:
    """Return the structure of a case with its machines' kinds."""
    work, rooms = draft.case.work, draft.case.rooms
    total = draft.case.quote.total_usd
    station, chosen = draft.weather
    keep, window, own, hired = kinds
    return Structure(
        station=station,
        n_rooms=len(rooms),
        room_names=tuple(room.name or f"Room {index + 1}" for index, room in enumerate(rooms)),
        technologies=(keep, window, own, hired),
        base_case=Alternative(draft.taken("money.base_case")),
        study_period_yr=_study_period_yr(draft),
        tariff_kind=draft.taken("tariff.kind"),
        has_quote=isinstance(total, Amount) and not total.is_unknown,
        parties=tuple(work.parties or ()),
        tools_owned=tuple(work.tools_owned or ()),
        tools_borrowed=tuple(work.tools_borrowed or ()),
        weather=None if chosen == WeatherChoice() else chosen,
        measures=tuple(key for key in draft.tables.measures.keys if key in (draft.case.measures.chosen or ())),
    )


def _study_period_yr(draft: Draft) -> int:
    """Return the years compared, whole: they end with the sale of the house, where one comes sooner."""
    ends = [draft.likely(path) for path in ("money.study_period_yr", "later.sale_after_yr") if path in draft.entries]
    return max(1, round(min(ends)))


def wanted_w(draft: Draft, structure: Structure) -> tuple[float, float]:
    """Return total cooling and heating of the served rooms on the design days, likely values. [W] [W]"""
    values = room_work(structure, point(sheet_of(draft.entries)), draft.tables, 1).values
    found = design_rows(structure, values, draft.tables, climate.weather(structure, draft.tables), 1)
    return float(found.cooling_w[0]), float(found.heating_w[0])


def kit_size_for(draft: Draft, cooling_w: float, heating_w: float) -> str:
    """Return the kit's size: the user's, or the smallest that meets the design load.

    Heating counts where the present heat goes, and alone where no cooling is asked for.
    """
    asked = draft.taken("kit.size")
    if asked != CHOSEN:
        return asked
    grade = draft.taken("kit.grade")
    sizes = draft.tables.ductless_sizes("kit", grade)
    rated = variable_speed_split(ratings_of(draft, sizes, grade))
    machine = with_lines(rated, lines_kept_frac(draft, sizes, grade))
    warming = draft.likely("place.warming_offset_k")
    hot, cold = (np.array([draft.likely(f"place.{side}_design_c") + warming]) for side in ("cool", "heat"))
    heats = draft.taken("use.heat") != "no" and (draft.taken("use.present_heat_stays") == "no" or cooling_w == 0.0)
    count = draft.likely("kit.count")
    index = chosen_index(
        np.array([cooling_w / count]),
        np.array([heating_w / count]),
        cooling_capacity_w(machine, hot)[:, 0],
        heating_capacity_w(machine, cold)[:, 0],
        heats=heats,
    )
    return str(sizes[int(index[0])])


def lines_kept_frac(draft: Draft, sizes: tuple[int, ...], grade: str) -> FloatArray:
    """Return the part of each size's output that is left behind the site's lines, likely values."""
    rows = [draft.tables.ductless("kit", size, grade) for size in sizes]
    site = (np.full(len(rows), draft.likely(f"site.line_{name}_m")) for name in ("run", "rise"))
    limits = (np.array([row.number(f"{name}_max_m") for row in rows]) for name in ("line", "rise"))
    losses = (np.array([row.spreads[f"{name}_loss_per_m"].likely for row in rows]) for name in ("run", "rise"))
    return line_kept_frac(LineSet(*site, *limits, *losses))


def ratings_of(draft: Draft, sizes: tuple[int, ...], grade: str) -> RatingRows:
    """Return the likely ratings of a grade's sizes, one a row."""
    rows = [draft.tables.ductless("kit", size, grade) for size in sizes]

    def column(name: str) -> FloatArray:
        return np.array([row.spreads[name].likely if name in row.spreads else row.number(name) for row in rows])

    by_name = {name: column(name) for name in KIT_RATINGS if name != "heat_47f_w"}
    return RatingRows(**by_name, heat_47f_w=column("heat_47f_ratio_frac") * by_name["capacity_w"])


def window_size_for(draft: Draft, cooling_w: float) -> tuple[str, float]:
    """Return size and count of new window units: the user's, or the fewest of the smallest size that meet the need."""
    sizes = window_sizes(draft)
    asked, said = draft.taken("window.size"), draft.said("window.count")
    if isinstance(said, Amount) and not said.is_unknown:
        count = said.likely
    elif asked != CHOSEN:
        count = max(float(indoor_rooms(draft)), math.ceil(cooling_w / window_output_w(draft, int(asked))))
    else:
        count = max(float(indoor_rooms(draft)), math.ceil(cooling_w / window_output_w(draft, sizes[-1])))
    if asked != CHOSEN:
        return asked, count
    meeting = [size for size in sizes if window_output_w(draft, size) * count >= cooling_w]
    return str(min(meeting, default=sizes[-1])), count


def window_output_w(draft: Draft, size: int) -> float:
    """Return what one new unit gives on the hot design day: a portable one less the warm air it draws in. [W]"""
    output_w = size * PER_KBTU_W
    if draft.taken("window.kind") != "portable":
        return output_w
    warmer_k = draft.likely("place.cool_design_c") + draft.likely("place.warming_offset_k")
    warmer_k -= draft.likely("use.cooling_setpoint_c")
    blown = draft.likely("window.exhaust_m3_per_s") * output_w / EXHAUST_AT_W
    air = exhaust_kg_per_s(np.array(blown), STANDARD_PRESSURE_PA)
    return float(net_output_w(np.array(output_w), air * AIR_HEAT_J_PER_KGK, np.array(warmer_k)))
