"""How the price of the next kWh goes: by season, by tier or by the hour of the day."""

from typing import ClassVar, Final

from pydantic import model_validator

from econ.case.field import amount, choice
from econ.case.quantity import Amount, Measure
from econ.case.section import Amt, Choice, Section
from econ.kernel.errors import CaseError, Fault, FaultKind

PRICE: Final = Measure("USD/kWh", "", 0.0, 3.0)
CLOCK: Final = Measure("hour", "", 0.0, 24.0)
MONTH_KWH: Final = Measure("kWh", "", 0.0, 20_000.0)

BOTH: Final = FaultKind.CONTRADICTS

_SEASONS: Final = "tariff.kind==seasonal|time_of_use"
_BY_HOUR: Final = "tariff.kind==time_of_use"
_TIERS: Final = "tariff.kind==tiered"


class Tariff(Section):
    """The price of electricity beyond one figure for all of it; charges that do not hang on use are left out."""

    path: ClassVar[str] = "tariff"

    kind: Choice = choice(
        "How electricity is priced",
        "Your bill says: one price, another in summer, dearer beyond so many kWh, or by the hour of the day. Where two "
        "hold, take the one whose prices lie further apart.",
    )
    summer_from: Choice = choice("Summer season begins", "First month of the summer price.", after=_SEASONS)
    summer_to: Choice = choice("Summer season ends", "Last month of the summer price.", after=_SEASONS)
    summer_usd_per_kwh: Amt = amount(
        "Summer price", "In the season, out of the dear hours if there are any.", PRICE, after=_SEASONS
    )
    peak_from_h: Amt = amount("Dear hours begin, by the clock", "0 to 24: 16 is 4 pm.", CLOCK, after=_BY_HOUR)
    peak_to_h: Amt = amount("Dear hours end, by the clock", "0 to 24: 21 is 9 pm.", CLOCK, after=_BY_HOUR)
    peak_usd_per_kwh: Amt = amount("Price in dear hours", "In the season.", PRICE, after=_BY_HOUR)
    winter_peak_usd_per_kwh: Amt = amount(
        "Price in dear hours, other months", "Leave it out if there are none then.", PRICE, after=_BY_HOUR
    )
    peak_days: Choice = choice("Days with dear hours", "Every day, or Monday to Friday.", after=_BY_HOUR)
    cheap_usd_per_kwh: Amt = amount("Price in cheap hours", "Leave it out if there are none.", PRICE, after=_BY_HOUR)
    cheap_from_h: Amt = amount(
        "Cheap hours begin, by the clock",
        "0 is midnight; it counts where there is a cheap price.",
        CLOCK,
        after=_BY_HOUR,
    )
    cheap_to_h: Amt = amount(
        "Cheap hours end, by the clock", "0 to 24; it counts where there is a cheap price.", CLOCK, after=_BY_HOUR
    )
    clock_change: Choice = choice(
        "Clocks change in summer", "The weather is in standard time, your tariff by the clock.", expert=True,
        after=_BY_HOUR,
    )  # fmt: skip
    first_limit_kwh: Amt = amount(
        "Dearer beyond", "kWh a month; 30 times what is given for a day.", MONTH_KWH, after=_TIERS
    )
    upper_usd_per_kwh: Amt = amount("Price beyond it", "Of the next kWh.", PRICE, after=_TIERS)
    second_limit_kwh: Amt = amount(
        "Dearer again beyond", "kWh a month; leave it out if there are two tiers.", MONTH_KWH, after=_TIERS
    )
    top_usd_per_kwh: Amt = amount("Price beyond that", "Of the next kWh.", PRICE, after=_TIERS)
    other_use_kwh: Amt = amount(
        "The rest of the home, a month",
        "What everything but this room's cooling and heating takes: it fills the tiers first.",
        MONTH_KWH, after=_TIERS,
    )  # fmt: skip

    @model_validator(mode="after")
    def in_order(self) -> "Tariff":
        """Return the tariff; hours must not overlap, and the second limit lies above the first."""
        first, second = _likely(self.first_limit_kwh), _likely(self.second_limit_kwh)
        if first is not None and second is not None and second <= first:
            remedy = "Give the limits in order, or leave the second out."
            raise CaseError([Fault("second_limit_kwh", f"must be above {first:g} kWh", f"{second:g}", remedy, BOTH)])
        ends = [_likely(value) for value in (self.peak_from_h, self.peak_to_h, self.cheap_from_h, self.cheap_to_h)]
        known = [each for each in ends if each is not None]
        if len(known) == len(ends) and _hours(*known[:2]) & _hours(*known[2:]):
            got = f"{known[2]:g} to {known[3]:g} beside {known[0]:g} to {known[1]:g}"
            raise CaseError(
                [Fault("cheap_from_h", "must not lie in the dear hours", got, "Correct one of the four.", BOTH)]
            )
        return self


def _likely(value: Amount | None) -> float | None:
    return None if value is None or value.is_unknown else value.likely


def _hours(first: float, past: float) -> set[int]:
    """Return the tenths of hours between two hours of the clock."""
    start, end = round(first * 10), round(past * 10)
    return {tenth % 240 for tenth in range(start, end if end > start else end + 240)}
