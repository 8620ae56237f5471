"""The fields of a case as forms, templates and the command line need them, read off the schema."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from econ.case.choices import CHOICES, PICKS, table_path
from econ.case.field import Kind
from econ.case.marks import MARKS
from econ.case.months import MONTH_COUNT, MONTHLY
from econ.case.quantity import NOT_KNOWN_TEXT, Measure
from econ.case.schema import MOST, SCHEMA_VERSION, SECTIONS
from econ.case.section import SHEET_LIMIT, TEXT_LIMIT, measure_of
from econ.case.sections.place import PLACE_WAYS
from econ.installation.quote import LINE_KINDS
from econ.kernel.errors import UnknownChoiceError

CASE_FILE_SCHEMA: Final = "https://json-schema.org/draft/2020-12/schema"


@dataclass(frozen=True, slots=True)
class FieldInfo:
    """One field of the case.

    Attributes
    ----------
    path : str
        Where it stands, rooms written ``rooms[].x``; also the key of its usual value in data/defaults/inputs.csv.
    label, help : str
        Plain words for the form.
    kind : str
        As `econ.case.field.Ask` lists them.
    unit : str
        Unit the engine reads, pint's spelling; "" for plain numbers and for everything that is no amount.
    us_unit : str
        Unit for a US display; the same as `unit` where there is no other.
    low, high : float
        Bounds in `unit`; NaN-free, 0 and 0 where the field is no amount.
    options : tuple of str
        Options of a choice, "not_known" last, or of a mark.
    needs_unit : bool
        A case file writes it as text with a unit.
    is_whole, is_expert : bool
        Whole numbers only; shown in the expert part.
    asks_after : str
        ``"now.cooling=window_units|portable"``, or "" when always asked; see `is_asked`.
    """

    path: str
    label: str
    help: str
    kind: Kind
    unit: str = ""
    us_unit: str = ""
    low: float = 0.0
    high: float = 0.0
    options: tuple[str, ...] = ()
    needs_unit: bool = False
    is_whole: bool = False
    is_expert: bool = False
    asks_after: str = ""

    @property
    def measure(self) -> Measure:
        """Unit and bounds of an amount."""
        return Measure(self.unit, self.us_unit if self.needs_unit else "", self.low, self.high, self.is_whole)

    @property
    def name(self) -> str:
        """The field's own name, without its section."""
        return self.path.rpartition(".")[2]


@cache
def fields(section: str) -> tuple[FieldInfo, ...]:
    """Return the fields of a section in the order of the form.

    Parameters
    ----------
    section : str
        "record", "place", "use", "rooms", "now", ... as in a case file.
    """
    if section not in SECTIONS:
        raise UnknownChoiceError("section", section, tuple(SECTIONS))
    model = SECTIONS[section]
    return tuple(_info(f"{model.path}.{name}", declared) for name, declared in model.model_fields.items())


@cache
def all_fields() -> tuple[FieldInfo, ...]:
    """Return every field of a case, rooms once."""
    return tuple(info for section in SECTIONS for info in fields(section))


def field_at(path: str) -> FieldInfo:
    """Return the field of a path, with or without a room's index.

    Raises
    ------
    UnknownChoiceError
        If no field has that path; names the nearest.

    Examples
    --------
    >>> field_at("rooms[3].ceiling_height_m").us_unit
    'ft'
    """
    from econ.case.nearest import nearest

    by_path = _by_path()
    if table_path(path) not in by_path:
        raise UnknownChoiceError("field", path, nearest(path, by_path))
    return by_path[table_path(path)]


def is_asked(path: str) -> bool:
    """Return whether a form asks for a path; other figures have a line in the sheet alone.

    Examples
    --------
    >>> is_asked("kit.price_usd"), is_asked("costs.freight_usd")
    (True, False)
    """
    return table_path(path) in _by_path()


@cache
def _by_path() -> dict[str, FieldInfo]:
    return {info.path: info for info in all_fields()}


def _info(path: str, declared: Any) -> FieldInfo:
    extra = declared.json_schema_extra
    label, text = str(declared.title), str(declared.description)
    flags = {"is_expert": extra["is_expert"], "asks_after": extra["asks_after"]}
    if "unit" not in extra:
        options = (CHOICES | PICKS | MARKS).get(path, ())
        return FieldInfo(path, label, text, extra["kind"], options=options, **flags)
    measure = measure_of(extra)
    shown = measure.us_unit or measure.unit
    bounds = {"low": measure.low, "high": measure.high, "needs_unit": measure.needs_unit, "is_whole": measure.is_whole}
    return FieldInfo(path, label, text, extra["kind"], measure.unit, shown, **bounds, **flags)  # type: ignore[arg-type]


def json_schema() -> dict[str, Any]:
    """Return the JSON Schema of a case file."""
    tables = {name: _section_schema(name) for name in SECTIONS}
    for name, most in MOST.items():
        least = {"minItems": 1} if name == "rooms" else {}
        tables[name] = {"type": "array", **least, "maxItems": most, "items": tables[name]}
    return {
        "$schema": CASE_FILE_SCHEMA,
        "title": "Case file",
        "type": "object",
        "additionalProperties": False,
        "required": ["place", "rooms"],
        "properties": {"schema_version": {"type": "integer", "const": SCHEMA_VERSION}} | tables,
    }


def _section_schema(section: str) -> dict[str, Any]:
    properties = {info.name: _field_schema(info) for info in fields(section)}
    schema: dict[str, Any] = {"type": "object", "additionalProperties": False, "properties": properties}
    ways = [{"required": list(names)} for names in PLACE_WAYS]
    return schema | ({"anyOf": ways} if section == "place" else {})


def _field_schema(info: FieldInfo) -> dict[str, Any]:
    described = {"title": info.label, "description": info.help}
    if info.kind in ("amount", "aside", "asides"):
        one = _amount_schema(info)
        return described | (_table_schema(one) if info.kind == "asides" else one)
    forms: Mapping[str, dict[str, Any]] = {
        "choice": {"enum": [*info.options, NOT_KNOWN_TEXT]},
        "pick": {"enum": [*info.options, NOT_KNOWN_TEXT]},
        "kinds": {"type": "object", "additionalProperties": {"enum": list(LINE_KINDS)}},
        "text": {"type": "string", "maxLength": TEXT_LIMIT},
        "sheet": {"type": "string", "maxLength": SHEET_LIMIT},
        "list": {"type": "array", "items": {"type": "string"}},
        "table": _table_schema({"type": "string"}),
        "mark": {"enum": list(info.options)},
        "day": {"type": "string", "format": "date"},
        "notes": _table_schema({"type": "string", "maxLength": TEXT_LIMIT}),
        "marks": _table_schema({"enum": list(info.options)}),
        "days": _table_schema({"type": "string", "format": "date"}),
        "amounts": {"type": "object", "additionalProperties": _any_amount()},
        "months": {"type": "object", "properties": {name: _twelve(unit) for name, unit in MONTHLY.items()}},
    }
    return described | forms[info.kind]


def _table_schema(one: dict[str, Any]) -> dict[str, Any]:
    return {"type": "object", "additionalProperties": one}


def _twelve(measure: Measure) -> dict[str, Any]:
    """Return the schema of one figure of twelve months."""
    each = {"type": ["number", "string"]}
    return {"type": "array", "items": each, "minItems": MONTH_COUNT, "maxItems": MONTH_COUNT, "x-unit": measure.unit}


def _any_amount() -> dict[str, Any]:
    """Return the schema of a figure in the unit of its own line."""
    number = {"type": "number"}
    parts = ("low", "likely", "high")
    span = {"type": "object", "properties": dict.fromkeys(parts, number), "required": list(parts)}
    return {"anyOf": [number, span]}


def _amount_schema(info: FieldInfo) -> dict[str, Any]:
    bounds = {"minimum": info.low, "maximum": info.high}
    one: dict[str, Any] = {"type": "string", "description": f"number and unit, such as 12 {info.us_unit}"}
    if not info.needs_unit:
        one = {"type": "integer" if info.is_whole else "number"} | bounds
    parts = ("low", "likely", "high")
    span = {
        "type": "object",
        "properties": dict.fromkeys(parts, one),
        "required": list(parts),
        "additionalProperties": False,
    }
    return {
        "anyOf": [one, span, {"const": NOT_KNOWN_TEXT}],
        "x-unit": info.unit or "1",
        "x-bounds": [info.low, info.high],
    }
