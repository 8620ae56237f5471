"""How a field of a case is declared: label, help, unit, bounds, and the answer after which it is asked."""

from dataclasses import dataclass
from typing import Any, Final, Literal

from pydantic import Field

from econ.case.quantity import Measure

Asked = Literal["amount", "choice", "text", "table", "list", "amounts", "months"]
Beside = Literal["aside", "pick", "kinds", "sheet", "asides", "mark", "marks", "day", "days", "notes"]
Kind = Asked | Beside

# Bare numbers ------------------------------------------------------------------------------------------------------
FRACTION: Final = Measure("", "", 0.0, 1.0)
USD: Final = Measure("USD", "", 0.0, 1_000_000.0)
USD_PER_H: Final = Measure("USD/hour", "", 0.0, 1_000.0)
WAIT: Final = Measure("day", "", 0.0, 730.0)
LIFE: Final = Measure("year", "", 1.0, 60.0)
UPKEEP: Final = Measure("USD/year", "", 0.0, 10_000.0)

# Physical amounts, written with their unit -------------------------------------------------------------------------
SETPOINT: Final = Measure("degC", "degF", 5.0, 35.0)
WINDOW_AREA: Final = Measure("m**2", "ft**2", 0.0, 200.0)
POWER: Final = Measure("W", "Btu/hour", 300.0, 30_000.0)
TEMPERATURE: Final = Measure("degC", "degF", -60.0, 60.0)
LATITUDE: Final = Measure("degree", "", -90.0, 90.0)
LONGITUDE: Final = Measure("degree", "", -180.0, 180.0)
U_VALUE: Final = Measure("W/(m**2*K)", "Btu/(hour*ft**2*delta_degF)", 0.02, 10.0)


def length(low_m: float, high_m: float, us_unit: str = "ft") -> Measure:
    """Return the measure of a length between two bounds.

    Parameters
    ----------
    low_m, high_m : float
        Least and greatest length allowed. [m]
    us_unit : str
        "ft" or "in".
    """
    return Measure("m", us_unit, low_m, high_m)


@dataclass(frozen=True, slots=True)
class Ask:
    """What a form needs to know to ask for one field.

    Attributes
    ----------
    kind : str
        "amount", "choice", "text", "table", "list", "amounts" for a table of amounts by path, "months" for
        a table of twelve values by figure; "aside" and "pick" for an amount and a choice that move no number of the
        comparison and have no usual value; "kinds" for the kind of each line of a quote; "sheet" for a text of many
        rows. Of the record of the work:
        "mark" for an option, "day"; "asides", "marks", "days" and "notes" for tables of such and of texts.
    label : str
        A few words, for beside the field.
    help : str
        One or two plain sentences for someone who does this the first time.
    measure : Measure or None
        Unit and bounds of an amount.
    is_expert : bool
        Shown only when the expert part is opened.
    asks_after : str
        ``"now.cooling=window_units|portable"``: asked once that choice has one of these answers, or is not known; with
        ``==`` only when it has one of them. Empty: always asked.
    """

    kind: Kind
    label: str
    help: str
    measure: Measure | None = None
    is_expert: bool = False
    asks_after: str = ""


def _declared(ask: Ask) -> Any:
    measure = ask.measure
    extra: dict[str, Any] = {"kind": ask.kind, "is_expert": ask.is_expert, "asks_after": ask.asks_after}
    if measure is not None:
        extra |= {"unit": measure.unit, "us_unit": measure.us_unit, "low": measure.low, "high": measure.high}
        extra |= {"is_whole": measure.is_whole}
    return Field(default=None, title=ask.label, description=ask.help, json_schema_extra=extra)


def amount(label: str, help: str, measure: Measure, *, expert: bool = False, after: str = "") -> Any:
    """Declare an amount: one value, a range, or "not known"."""
    return _declared(Ask("amount", label, help, measure, expert, after))


def choice(label: str, help: str, *, expert: bool = False, after: str = "") -> Any:
    """Declare a choice; its options stand in `econ.case.choices`."""
    return _declared(Ask("choice", label, help, None, expert, after))


def aside(label: str, help: str, measure: Measure, *, expert: bool = False, after: str = "") -> Any:
    """Declare an amount that stands beside the comparison: it has no line in the sheet."""
    return _declared(Ask("aside", label, help, measure, expert, after))


def asides(label: str, help: str, measure: Measure) -> Any:
    """Declare a table of amounts that stand beside the comparison, by name."""
    return _declared(Ask("asides", label, help, measure))


def pick(label: str, help: str, *, expert: bool = False, after: str = "") -> Any:
    """Declare a choice that stands beside the comparison: it has no line in the sheet."""
    return _declared(Ask("pick", label, help, None, expert, after))


def words(label: str, help: str, *, kind: Kind = "text", expert: bool = False, after: str = "") -> Any:
    """Declare a text, or a table or list of texts."""
    return _declared(Ask(kind, label, help, None, expert, after))
