"""A case: what the user said, and nothing else.

Rooms count from 0 in paths: the first ``[[rooms]]`` block of a file is ``rooms[0]``. Every amount and choice may be
left out (usual value), given, or "not known"; the only field that must be given is ``place.station``.
"""

from collections.abc import Mapping
from typing import Any, Final

from pydantic import BaseModel, ConfigDict, ValidationError, ValidationInfo, field_validator

from econ.case.faults import faults_of
from econ.case.section import Known, Section, fault
from econ.case.sections.as_built import RECORDS, AsBuilt, FirstYear, Paper, Phone, Tests
from econ.case.sections.bills import Bills
from econ.case.sections.building import Building
from econ.case.sections.equipment import Hired, Kit, Quote, WindowUnits
from econ.case.sections.figures import Figures
from econ.case.sections.later import Finance, Later, Letting
from econ.case.sections.measures import Measures
from econ.case.sections.panel import Panel
from econ.case.sections.place import Money, Now, Place, Prices, Record, Use
from econ.case.sections.quote import Letterhead, Offer, OtherQuote, Private, Trade
from econ.case.sections.room import Room
from econ.case.sections.signed import SignOff, StepSaid
from econ.case.sections.tariff import Tariff
from econ.case.sections.work import Site, Work
from econ.kernel.errors import CaseError

SCHEMA_VERSION: Final = 1
MOST_ROOMS: Final = 100
SECTIONS: Final[dict[str, type[Section]]] = {
    "record": Record,
    "place": Place,
    "use": Use,
    "rooms": Room,
    "measures": Measures,
    "now": Now,
    "prices": Prices,
    "tariff": Tariff,
    "bills": Bills,
    "money": Money,
    "finance": Finance,
    "later": Later,
    "letting": Letting,
    "window": WindowUnits,
    "kit": Kit,
    "hired": Hired,
    "quote": Quote,
    "offer": Offer,
    "quotes": OtherQuote,
    "letterhead": Letterhead,
    "trade": Trade,
    "private": Private,
    "building": Building,
    "site": Site,
    "panel": Panel,
    "work": Work,
    "figures": Figures,
    **RECORDS,
    "signed": SignOff,
    "steps": StepSaid,
}
"""Sections in the order of a file."""

MOST: Final = {"rooms": MOST_ROOMS, "quotes": 7, "signed": 1000, "steps": 4000}
"""Sections that repeat, and how often at most."""

BESIDE: Final = ("record", "offer", "quotes", "letterhead", "trade", "private", "building", *RECORDS, "signed", "steps")
"""Sections that move no number of the comparison."""


class Case(BaseModel):
    """One case, as far as the user has filled it in."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    record: Record = Record()
    place: Place
    use: Use = Use()
    rooms: tuple[Room, ...]
    measures: Measures = Measures()
    now: Now = Now()
    prices: Prices = Prices()
    tariff: Tariff = Tariff()
    bills: Bills = Bills()
    money: Money = Money()
    finance: Finance = Finance()
    later: Later = Later()
    letting: Letting = Letting()
    window: WindowUnits = WindowUnits()
    kit: Kit = Kit()
    hired: Hired = Hired()
    quote: Quote = Quote()
    offer: Offer = Offer()
    quotes: tuple[OtherQuote, ...] = ()
    letterhead: Letterhead = Letterhead()
    trade: Trade = Trade()
    private: Private = Private()
    building: Building = Building()
    site: Site = Site()
    panel: Panel = Panel()
    work: Work = Work()
    figures: Figures = Figures()
    phone: Phone = Phone()
    tests: Tests = Tests()
    as_built: AsBuilt = AsBuilt()
    first_year: FirstYear = FirstYear()
    paper: Paper = Paper()
    signed: tuple[SignOff, ...] = ()
    steps: tuple[StepSaid, ...] = ()

    @field_validator("rooms", mode="before")
    @classmethod
    def counted(cls, raw: object) -> object:
        """Return the rooms as they came; there must be a list of 1 to 100."""
        if not isinstance(raw, list | tuple):
            raise fault("must be a list of tables", raw, "Begin each room with [[rooms]] on a line.")
        if not 1 <= len(raw) <= MOST_ROOMS:
            raise fault(f"must hold 1 to {MOST_ROOMS} rooms", len(raw), "Add or split rooms.")
        return raw

    @field_validator("quotes", mode="before")
    @classmethod
    def few(cls, raw: object) -> object:
        """Return the other quotes as they came; there may be a few."""
        if not isinstance(raw, list | tuple):
            raise fault("must be a list of tables", raw, "Begin each other quote with [[quotes]] on a line.")
        if len(raw) > MOST["quotes"]:
            raise fault(f"must hold at most {MOST['quotes']} quotes", len(raw), "Keep those you still think about.")
        return raw

    @field_validator("signed", "steps", mode="before")
    @classmethod
    def listed(cls, raw: object, info: ValidationInfo) -> object:
        """Return sign-offs and what was said of steps as they came; no case needs more than the most there may be."""
        name = str(info.field_name)
        if not isinstance(raw, list | tuple):
            raise fault("must be a list of tables", raw, f"Begin each line with [[{name}]] on a line.")
        if len(raw) > MOST[name]:
            raise fault(f"must hold at most {MOST[name]} lines", len(raw), "Begin a new case for further work.")
        return raw


def case_from(plain: Mapping[str, Any], known: Known | None = None) -> Case:
    """Return a case from nested tables as a file holds them.

    Parameters
    ----------
    plain : mapping
        Sections by name; ``rooms`` is a list of tables.
    known : Known, optional
        Stations, tasks and tools of the tables; without it names are not looked up.

    Raises
    ------
    CaseError
        With every fault.
    """
    try:
        return Case.model_validate(dict(plain), context=known)
    except ValidationError as error:
        raise CaseError(
            faults_of(error, {name: tuple(section.model_fields) for name, section in SECTIONS.items()})
        ) from None


def plain(case: Case) -> dict[str, Any]:
    """Return the nested tables a file would hold: only what the user set, amounts as typed."""
    tables: dict[str, Any] = {}
    for name in SECTIONS:
        value = getattr(case, name)
        content: Any = [_plain_section(part) for part in value] if name in MOST else _plain_section(value)
        if content:
            tables[name] = content
    return tables


def _plain_section(section: Section) -> dict[str, Any]:
    values = ((name, getattr(section, name)) for name in type(section).model_fields)
    return {name: _plain_value(value) for name, value in values if value is not None}


def _plain_value(value: Any) -> Any:
    written = getattr(value, "written", value)
    if isinstance(written, tuple) and written and isinstance(written[0], tuple):
        return {key: _plain_value(part) for key, part in written}
    return list(written) if isinstance(written, tuple) else written
