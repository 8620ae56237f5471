"""From a case with bills to the factors that scale its room: what was billed beside the model of what is there now."""

from dataclasses import dataclass
from typing import Final

from econ.case.choices import NOT_KNOWN, option_at
from econ.case.schema import Case, case_from, plain
from econ.evaluate.bill_fit import CarrierFit, PresentUse, Scale, carrier_fits, scales
from econ.evaluate.physics import physics
from econ.evaluate.sheet import Sheet, point
from econ.evaluate.structure import Structure
from econ.evaluate.wiring import climate
from econ.evaluate.wiring.bills import FACTORS
from econ.evaluate.wiring.energy import UNKNOWN_HEAT, USES, EnergyUse
from econ.kernel.alternative import KEEP
from econ.kernel.arrays import FloatArray
from econ.kernel.spread import Spread
from econ.tables.loaders import Tables

HEAT_CARRIERS: Final = {"electric": "electricity", "gas": "gas"}
"""What heats the room now, and the bills that show it."""

SHORT_FRAC: Final = 0.1
"""Part of a year's cooling that may be left undone before bills say nothing of the need. Assumption."""

HEAT_USES: Final = ("heating", "make-up heat")
"""Uses of electricity that heat."""


@dataclass(frozen=True, slots=True, eq=False)
class BillFindings:
    """What the bills of a case say.

    Attributes
    ----------
    fits : tuple of CarrierFit
        One for each kind of bills pasted.
    scales : tuple of Scale
        Cooling, then heating.
    """

    fits: tuple[CarrierFit, ...]
    scales: tuple[Scale, ...]

    @property
    def factors(self) -> dict[str, Spread]:
        """Factors that can be used, by path."""
        return {FACTORS[scale.side]: scale.factor for scale in self.scales if scale.factor is not None}


def uses_fit(case: Case) -> bool:
    """Return whether the case's bills are to scale its room."""
    return case.bills.use_fit == "yes" and bool(case.bills.electricity or case.bills.gas)


def before_fit(case: Case) -> Case:
    """Return the case as the bills saw it: nothing scaled, no measure done yet, the present heat on.

    Parameters
    ----------
    case : Case
        The case; it stays as it is.
    """
    tables = plain(case)
    tables.pop("measures", None)
    tables.get("bills", {}).pop("use_fit", None)
    tables.setdefault("use", {})["present_heat_stays"] = "yes"
    changed = tables.get("figures", {}).get("changed", {})
    for path in FACTORS.values():
        changed.pop(path, None)
    return case_from(tables)


def bill_findings(case: Case, structure: Structure, sheet: Sheet, tables: Tables) -> BillFindings:
    """Return what the bills of a case say.

    Parameters
    ----------
    case : Case
        The case with its bills.
    structure : Structure
        Of the case as the bills saw it.
    sheet : Sheet
        Its numbers.
    tables : Tables
        Stations.
    """
    fits = carrier_fits(case, month_mean_c(structure, sheet, tables))
    return BillFindings(fits, scales(case, fits, present_use(structure, sheet, tables)))


def present_use(structure: Structure, sheet: Sheet, tables: Tables) -> PresentUse:
    """Return what the model gives for the room with what is there now.

    Parameters
    ----------
    structure : Structure
        Of the case as the bills saw it.
    sheet : Sheet
        Its numbers.
    tables : Tables
        Stations.
    """
    values = point(sheet)
    found = physics(structure, values, climate.weather(structure, tables), 1)
    use, why_not = found.uses[KEEP], {}
    if use.unmet_cooling_kwh_per_yr[0] > SHORT_FRAC * found.need.all_cooling_kwh[0]:
        why_not["cooling"] = "What cools the room now cannot keep up, so bills do not show how much cooling it needs."
    heat = option_at("now.heat", sheet.entry("now.heat").likely)
    carrier = HEAT_CARRIERS.get(UNKNOWN_HEAT if heat == NOT_KNOWN else heat, "")
    return PresentUse(
        cooling_kwh=use.by_use_kwh[0, USES.index("cooling")],
        heating_kwh=_heating_kwh(use, carrier),
        month_mean_c=month_mean_c(structure, sheet, tables),
        cooling_carrier="electricity",
        heating_carrier=carrier,
        why_not=why_not | _why_not(structure, sheet, heat),
    )


def month_mean_c(structure: Structure, sheet: Sheet, tables: Tables) -> FloatArray:
    """Return the mean of each month of a typical year, warming added, shape (12,). [degC]"""
    warmed: FloatArray = climate.station(structure, tables).mean_c + sheet.entry("place.warming_offset_k").likely
    return warmed


def _heating_kwh(use: EnergyUse, carrier: str) -> FloatArray:
    """Return what heats by month, shape (12,). [kWh]"""
    by_use: FloatArray = use.by_use_kwh[0, [USES.index(name) for name in HEAT_USES]].sum(axis=0)
    return by_use if carrier == "electricity" else use.fuel_kwh[0]


def _why_not(structure: Structure, sheet: Sheet, heat: str) -> dict[str, str]:
    """Return, by side, why no bill can show what the room takes."""
    found = {}
    if structure.technologies[KEEP] == "none":
        found["cooling"] = "No unit of its own cools the room now, so no bill shows its cooling."
    if option_at("use.cool", sheet.entry("use.cool").likely) == "no":
        found["cooling"] = "The room is not to be cooled, so there is no cooling to scale."
    if heat == "none":
        found["heating"] = "Nothing heats the room now, so no bill shows its heating."
    elif heat not in (*HEAT_CARRIERS, NOT_KNOWN):
        found["heating"] = f"The room is heated with {heat}, which no electricity or gas bill shows."
    if option_at("use.heat", sheet.entry("use.heat").likely) == "no":
        found["heating"] = "The room is not to be heated, so there is no heating to scale."
    return found
