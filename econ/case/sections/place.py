"""Where it is, what the room must do, what is there now, and what energy and money cost."""

from typing import ClassVar, Final

from pydantic import ValidationInfo, field_validator, model_validator

from econ.case.field import (
    FRACTION,
    LATITUDE,
    LONGITUDE,
    POWER,
    SETPOINT,
    TEMPERATURE,
    USD,
    amount,
    choice,
    length,
    words,
)
from econ.case.nearest import nearest
from econ.case.quantity import Measure
from econ.case.section import Amt, Choice, Known, Monthly, Section, Text, day, fault
from econ.kernel.errors import CaseError, Fault, FaultKind


class Record(Section):
    """Notes that never change a number."""

    path: ClassVar[str] = "record"

    name: Text = words("Name of the case", "Shown in your list and on every print.")
    notes: Text = words("Notes", "Anything you want to remember. It changes no number.")
    filled_in_by: Text = words("Filled in by", "Who typed this in; shown on prints.")


PLACE_WAYS: Final = (("station",), ("town",), ("latitude_deg", "longitude_deg"), ("hourly_file",), ("monthly",))
"""Fields of which one set must be given."""

_NO_PLACE: Final = (
    'Name the listed weather place, such as station = "St Cloud Regional Arpt, MN", or give town, latitude_deg and '
    "longitude_deg, hourly_file or monthly."
)


class Place(Section):
    """Weather place and decision date.

    Of several weathers the hourly file is taken before months typed in, those before the station, and that before the
    station nearest to the point or town.
    """

    path: ClassVar[str] = "place"

    station: Text = words(
        "Weather place", "The listed place whose weather is most like yours: near, and about as high."
    )
    town: Text = words("Town", 'Your town and state, such as "Mesa, AZ": the nearest weather place is taken.')
    latitude_deg: Amt = amount("Latitude", "Decimal degrees, as maps show them; south is minus.", LATITUDE, expert=True)
    longitude_deg: Amt = amount("Longitude", "Decimal degrees; west is minus.", LONGITUDE, expert=True)
    elevation_m: Amt = amount(
        "Height above sea level", "Thins the air; temperatures stay those of the weather place.",
        length(-500.0, 6_000.0), expert=True,
    )  # fmt: skip
    hourly_file: Text = words("Hourly weather file", "An EPW file: a name beside the case file, or one uploaded here.")
    monthly: Monthly = words("Months typed in", "Monthly figures of your place, where it is not listed.", kind="months")
    heat_design_c: Amt = amount(
        "Cold design temperature", "One hour in a hundred is colder, as of the record; the warming is added.",
        TEMPERATURE, expert=True,
    )  # fmt: skip
    cool_design_c: Amt = amount(
        "Hot design temperature", "One hour in a hundred is warmer, as of the record; the warming is added.",
        TEMPERATURE, expert=True,
    )  # fmt: skip
    state: Text = words("State", "Two letters; picks the energy prices. Usually that of the weather place.")
    decision_date: Text = words("Decision date", "The day you decide; everything is counted from it. Usually today.")
    warming_offset_k: Amt = amount(
        "Warmer than the record", "How much warmer it has become since the years of the weather record.",
        Measure("K", "delta_degF", -3.0, 6.0), expert=True,
    )  # fmt: skip
    warming_reason: Text = words("Why that much warmer", "A word on where the figure comes from.", expert=True)
    wind_m_per_s: Amt = amount(
        "Mean wind", "The year's mean at the weather place, 10 m (33 ft) above open ground.",
        Measure("m/s", "mile/hour", 0.0, 15.0), expert=True,
    )  # fmt: skip
    soil_conductivity_w_per_mk: Amt = amount(
        "Soil conducts", "Dry sand about 0.8, damp loam or clay 1.4, wet sand or gravel 2, rock 3.5 W/(m*K).",
        Measure("W/(m*K)", "Btu/(hour*ft*delta_degF)", 0.2, 5.0), expert=True,
    )  # fmt: skip
    soil_heat_j_per_m3k: Amt = amount(
        "Soil stores", "Heat by volume: dry sand 1.3e6, damp soil 2e6, wet clay 3e6 J/(m**3*K).",
        Measure("J/(m**3*K)", "Btu/(ft**3*delta_degF)", 500_000.0, 4_500_000.0), expert=True,
    )  # fmt: skip

    @model_validator(mode="after")
    def is_somewhere(self) -> "Place":
        """Return the place; one weather must be given, and a point with both its sides."""
        if (self.latitude_deg is None) != (self.longitude_deg is None):
            lacking = "longitude_deg" if self.longitude_deg is None else "latitude_deg"
            raise CaseError([Fault(lacking, "is missing", "nothing", "Give latitude and longitude together.")])
        if all(any(getattr(self, name) is None for name in way) for way in PLACE_WAYS):
            raise CaseError([Fault("station", "is missing", "nothing", _NO_PLACE)])
        if self.monthly is not None and not self._is_on_a_map():
            remedy = "Give latitude_deg and longitude_deg, a town or a station: the sun needs them."
            raise CaseError([Fault("latitude_deg", "is missing", "nothing", remedy)])
        return self

    def _is_on_a_map(self) -> bool:
        return bool(self.station or self.town) or self.latitude_deg is not None

    @field_validator("station", mode="after")
    @classmethod
    def listed(cls, station: str | None, info: ValidationInfo) -> str | None:
        """Return the station; it must be in the table, where a table is known."""
        known = info.context if isinstance(info.context, Known) else Known()
        if known.stations and not station:
            return None
        if station and known.stations and station not in known.stations:
            close = "; ".join(nearest(station, known.stations))
            remedy = f"Nearest names: {close}. Or give town, or latitude_deg and longitude_deg, instead."
            raise fault("is not a listed weather place", station, remedy)
        return station

    @field_validator("state", mode="after")
    @classmethod
    def two_letters(cls, state: str | None, info: ValidationInfo) -> str | None:
        """Return the state; it must be two capital letters, and in the table where a table is known."""
        if state is not None and not (len(state) == 2 and state.isascii() and state.isalpha() and state.isupper()):
            raise fault("must be two capital letters", state, 'Write it such as "MN".')
        known = info.context if isinstance(info.context, Known) else Known()
        if state is not None and known.states and state not in known.states:
            raise fault("is not a state whose prices are known", state, f"Write one of {', '.join(known.states)}.")
        return state

    @field_validator("decision_date", mode="after")
    @classmethod
    def is_a_day(cls, written: str | None) -> str | None:
        """Return the date; it must be year-month-day."""
        return None if written is None else day(written)


class Use(Section):
    """What the room must do, when, and how comfortably."""

    path: ClassVar[str] = "use"

    cool: Choice = choice("Cool it", "Must the room be cooled?")
    heat: Choice = choice(
        "Heat it", "Must the new equipment heat the room too? Sometimes counts half of the season's doubt."
    )
    dry: Choice = choice("Dry the air", "Must the air be kept from getting damp? Rooms in earth often need this most.")
    when: Choice = choice("When it is used", "The hours in which the room must be comfortable.")
    cooling_setpoint_c: Amt = amount("Summer temperature", "78 F slightly warm, 75 F normal, 72 F cool.", SETPOINT)
    heating_setpoint_c: Amt = amount("Winter temperature", "68 F is usual.", SETPOINT)
    humidity_limit_frac: Amt = amount(
        "Damp limit", "Relative humidity not to be passed; 0.60 is usual.", Measure("", "", 0.3, 0.9)
    )
    present_heat_stays: Choice = choice(
        "Present heat stays on", "Will the heat that is there keep running and help on the coldest nights?"
    )


_OLD = "now.cooling=window_units|portable|through_wall"


class Now(Section):
    """What cools, heats and dries the room today."""

    path: ClassVar[str] = "now"

    cooling: Choice = choice("Cools it now", "What cools the room today.")
    units_count: Amt = amount(
        "How many units", "Units that are yours and work.", Measure("", "", 0.0, 50.0, True), after=_OLD
    )
    unit_capacity_w: Amt = amount("Size of each", "From its label, in Btu an hour.", POWER, after=_OLD)
    unit_age_yr: Amt = amount("Age of each", "Years since it was new.", Measure("year", "", 0.0, 60.0), after=_OLD)
    unit_worth_usd: Amt = amount(
        "Worth if sold", "What one would fetch today. You pay nothing for what you own.", USD, after=_OLD
    )
    heat: Choice = choice("Heats it now", "What warms the room today.")
    heat_efficiency_frac: Amt = amount(
        "Heater efficiency", "Heat into the room per fuel used: electric 1, an old furnace about 0.75.",
        Measure("", "", 0.2, 1.0), expert=True, after="now.heat=electric|gas|propane|oil|wood",
    )  # fmt: skip
    dehumidifier: Choice = choice("Dehumidifier in use", "A dehumidifier runs in this room in summer.")
    house_system: Choice = choice(
        "Does the house system reach it",
        "Does a furnace or central air conditioner of the house blow or pipe heat or cool into this room already?",
    )


_BILL_PRICE: Final = "makes a price of a unit that must lie between {} and {} USD"


class Prices(Section):
    """What energy costs, and who pays for it."""

    path: ClassVar[str] = "prices"

    electricity_usd_per_kwh: Amt = amount(
        "Electricity", "Price of the next kWh on your bill, taxes and delivery included; not the average.",
        Measure("USD/kWh", "", 0.01, 2.0),
    )  # fmt: skip
    electricity_bill_usd: Amt = amount(
        "Electricity bill, in all", "Of one month without heating or cooling, if you have one.", USD
    )
    electricity_bill_kwh: Amt = amount("kWh on it", "What that bill charges for.", Measure("kWh", "", 1.0, 50_000.0))
    electricity_bill_fixed_usd: Amt = amount(
        "Fixed charge on it", "Customer or basic charge: what you would pay for no use at all.", USD
    )
    gas_bill_usd: Amt = amount("Gas bill, in all", "Of one month.", USD, after="now.heat=gas")
    gas_bill_therms: Amt = amount(
        "Therms on it", "What that bill charges for; 100 cubic feet is about 1.04 therms.",
        Measure("therm", "", 1.0, 5_000.0), after="now.heat=gas",
    )  # fmt: skip
    gas_bill_fixed_usd: Amt = amount(
        "Fixed charge on the gas bill", "What you would pay for no use at all.", USD, after="now.heat=gas"
    )
    gas_usd_per_therm: Amt = amount(
        "Natural gas", "Price of the next therm.", Measure("USD/therm", "", 0.05, 20.0), after="now.heat=gas"
    )
    propane_usd_per_gal: Amt = amount(
        "Propane", "Price a gallon.", Measure("USD/gallon", "", 0.2, 20.0), after="now.heat=propane"
    )
    oil_usd_per_gal: Amt = amount(
        "Heating oil", "Price a gallon.", Measure("USD/gallon", "", 0.2, 20.0), after="now.heat=oil"
    )
    wood_usd_per_cord: Amt = amount(
        "Firewood", "Price a cord, delivered.", Measure("USD/cord", "", 10.0, 2_000.0), after="now.heat=wood"
    )
    since_2023_frac: Amt = amount(
        "Prices since 2023", "Factor from the state figures of 2023 to today; not applied to prices you type.",
        Measure("", "", 0.3, 4.0), expert=True,
    )  # fmt: skip
    electricity_escalation_frac: Amt = amount(
        "Electricity price rise", "A year, beyond general price rises: 0.01 is one in a hundred.",
        Measure("", "", -0.1, 0.2), expert=True,
    )  # fmt: skip
    fuel_escalation_frac: Amt = amount(
        "Fuel price rise", "A year, beyond general price rises.", Measure("", "", -0.1, 0.2), expert=True
    )
    grid_kg_co2e_per_kwh: Amt = amount(
        "Carbon dioxide of a kWh",
        "Of the electricity you buy, delivered.",
        Measure("kg/kWh", "", 0.0, 2.0),
        expert=True,
    )
    carbon_usd_per_t: Amt = amount(
        "Price of carbon dioxide",
        "USD a tonne, added to every kWh and fuel bought. Leave it out unless you want it to count.",
        Measure("USD/t", "", 0.0, 2_000.0), expert=True,
    )  # fmt: skip
    pays_bill: Choice = choice("Who pays the bill", "Savings go to whoever pays it.")

    @model_validator(mode="after")
    def bills_make_a_price(self) -> "Prices":
        """Return the prices; a bill must leave a believable price a unit once its fixed charge is off."""
        for name, used, low, high in (("electricity", "kwh", 0.01, 2.0), ("gas", "therms", 0.05, 20.0)):
            parts = [getattr(self, f"{name}_bill_{part}") for part in ("usd", used, "fixed_usd")]
            paid, units, fixed = (None if part is None or part.is_unknown else part.likely for part in parts)
            if paid is None or units is None:
                continue
            price = (paid - (fixed or 0.0)) / units
            if not low <= price <= high:
                remedy = f"Check the total, the fixed charge and the {used} of that bill."
                problem, kind = _BILL_PRICE.format(low, high), FaultKind.CONTRADICTS
                raise CaseError([Fault(f"{name}_bill_usd", problem, f"{price:,.3f}", remedy, kind)])
        return self


_CHANCE = "That it is paid once its terms are met: funds run out, papers go astray. 1 where it is promised in writing."


class Money(Section):
    """Years, the return given up, cash, taxes and incentives."""

    path: ClassVar[str] = "money"

    study_period_yr: Amt = amount(
        "Years counted", "How long you expect to stay or own.", Measure("year", "", 1.0, 60.0, True)
    )
    base_case: Choice = choice(
        "Compared with", "What savings and paybacks are measured against. It changes no cost and no verdict."
    )
    discount_rate_real_frac: Amt = amount(
        "Return you give up",
        "What the money would earn or save you elsewhere each year, after price rises: "
        "savings about 0.01, a loan 0.06, a card 0.15.",
        Measure("", "", -0.05, 0.4),
    )  # fmt: skip
    otherwise: Choice = choice(
        "Where would this money otherwise be?",
        "In savings, paying down the mortgage, another loan or a card, or invested: it sets the return you give up.",
    )
    inflation_frac: Amt = amount(
        "Price rises", "General, a year: what fixed payments are worth less by.", Measure("", "", -0.02, 0.2),
        expert=True,
    )  # fmt: skip
    cash_limit_usd: Amt = amount("Cash you can spend now", "Leave it out if there is no limit.", USD)
    sales_tax_frac: Amt = amount(
        "Sales tax", "On equipment and materials: 0.07 is seven in a hundred.", Measure("", "", 0.0, 0.2), expert=True
    )
    incentive_self_usd: Amt = amount("Incentive, put in yourself", "What the programme pays for such a unit.", USD)
    incentive_self_frac: Amt = amount("Chance of it, put in yourself", _CHANCE, FRACTION, expert=True)
    incentive_self_terms: Choice = choice(
        "It asks for, put in yourself", "Many pay only where a licensed contractor puts it in or starts it: ask first."
    )
    incentive_hired_usd: Amt = amount("Incentive, hired out", "What the programme pays for such a unit.", USD)
    incentive_hired_frac: Amt = amount("Chance of it, hired out", _CHANCE, FRACTION, expert=True)
    incentive_hired_terms: Choice = choice("It asks for, hired out", "What the programme asks of who puts it in.")
    incentive_window_usd: Amt = amount("Incentive, new window units", "What the programme pays for such units.", USD)
    incentive_window_frac: Amt = amount("Chance of it, new window units", _CHANCE, FRACTION, expert=True)
    incentive_window_terms: Choice = choice(
        "It asks for, new window units", "Window units meet no term that asks for a licensed contractor."
    )
