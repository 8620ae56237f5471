"""What an evaluation returns: months, years and sums, never hours x rows."""

from dataclasses import dataclass, field

from econ.caution.facts import Facts
from econ.evaluate.meanwhile import FirstCoolDays, WaitingYear
from econ.installation.delivery import KitReturn
from econ.installation.first_cost import LineItems
from econ.installation.mishap import Doubt
from econ.installation.schedule import Schedule
from econ.installation.warranty import Warranty
from econ.kernel.alternative import Alternative, Standing
from econ.kernel.arrays import BoolArray, FloatArray
from econ.kernel.caution import Caution
from econ.lifecycle.borrowing import Terms
from econ.lifecycle.measures import Measures
from econ.lifecycle.streams import Streams


@dataclass(frozen=True, slots=True, eq=False)
class ClimateSummary:
    """The weather behind a result.

    Attributes
    ----------
    station : str
        Name and state of the station.
    hdd18_3_kd, cdd18_3_kd : float
        Degree-days at 65 degF from the monthly figures, warming included. [K*day]
    heat_design_c, cool_design_c : float
        99 % and 1 % dry bulb, warming included. [degC]
    mean_c : ndarray, shape (12,)
        Monthly mean dry bulb, warming included. [degC]
    bin_c : ndarray, shape (n_bin,)
        Middle of each outdoor temperature bin. [degC]
    bin_h : ndarray, shape (n_bin,)
        Hours a year in each bin. [hour]
    bin_cool_w, bin_heat_w : ndarray, shape (n_bin,)
        Mean sensible-plus-latent cooling and heating need in the bin, likely values. [W]
    bin_cool_high_w, bin_heat_high_w : ndarray, shape (n_bin,)
        The same in the hour of the bin that wants most. [W]
    period : str
        Years of the record.
    basis : str
        What the days were made from: one of `econ.climate.station.BASES`.
    estimated, notes : tuple of str
        What was estimated, in words; what was left out or taken for granted, in sentences.
    """

    station: str
    hdd18_3_kd: float
    cdd18_3_kd: float
    heat_design_c: float
    cool_design_c: float
    mean_c: FloatArray
    bin_c: FloatArray
    bin_h: FloatArray
    bin_cool_w: FloatArray
    bin_heat_w: FloatArray
    bin_cool_high_w: FloatArray
    bin_heat_high_w: FloatArray
    period: str
    basis: str = "record"
    estimated: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Design loads of the served rooms taken as one, likely row.

    Attributes
    ----------
    cooling_w, latent_w, heating_w : float
        Total cooling, its latent part, and heating. [W]
    method : str
        What ruled the cooling: one of `econ.loads.design_load.METHODS`.
    peak_hour : int
        Hour of the hot day in which the rooms together want most, 0 to 23. [hour]
    """

    cooling_w: float
    latent_w: float
    heating_w: float
    method: str
    peak_hour: int


@dataclass(frozen=True, slots=True, eq=False)
class RoomLoads:
    """Loads of each room of the likely row and the block.

    Attributes
    ----------
    name : tuple of str, length n_room
        Room names.
    is_served : ndarray, shape (n_room,)
        Whether the indoor unit can be counted on for the room (no closed door between).
    design_cooling_sensible_w, design_cooling_latent_w, design_heating_w : ndarray, shape (n_room,)
        Design loads. [W]
    annual_cooling_sensible_kwh, annual_cooling_latent_kwh, annual_heating_kwh : ndarray, shape (n_room,)
        Annual need inside the hours and duties asked for. [kWh]
    design_cooling_method : tuple of str, length n_room
        What ruled each room's design cooling: one of `econ.loads.design_load.METHODS`.
    hourly_cooling_w, load_factor_cooling_w : ndarray, shape (n_room,)
        Sensible design cooling by the hot day and by load factors, whichever ruled. [W]
    monthly_cooling_sensible_kwh, monthly_cooling_latent_kwh, monthly_heating_kwh : ndarray, shape (n_room, 12)
        The annual need by month. [kWh]
    degree_day_heating_kwh : ndarray, shape (n_room,)
        Annual heating by degree-days at the balance point, the hand check; NaN for a room that loses nothing. [kWh]
    hand_part_label : tuple of str, length n_part
        Why the hourly method's heating differs from it.
    hand_part_kwh : ndarray, shape (n_room, n_part)
        What each reason adds; adds up to hourly less degree-days. [kWh]
    moisture_share_frac : ndarray, shape (n_room,)
        Latent part of the year's cooling; NaN where there is none. [dimensionless]
    block : Block
        The served rooms taken as one: what sizes follow.
    balance_point_c : ndarray, shape (n_room,)
        Outdoor temperature at which mean gains meet losses. [degC]
    piece_label : tuple of str, length n_piece
        Where the heat comes from on the design day (walls, roof, windows, air, people and things, ...).
    piece_w : ndarray, shape (n_room, n_piece)
        Sensible-plus-latent share of each piece. [W]
    loss_label : tuple of str, length n_loss
        Where the heat goes in the cold design hour.
    loss_w : ndarray, shape (n_room, n_loss)
        Heat lost by each piece, whole even where heat is wanted only sometimes; 0 where it is not. [W]
    """

    name: tuple[str, ...]
    is_served: BoolArray
    design_cooling_sensible_w: FloatArray
    design_cooling_latent_w: FloatArray
    design_heating_w: FloatArray
    annual_cooling_sensible_kwh: FloatArray
    annual_cooling_latent_kwh: FloatArray
    annual_heating_kwh: FloatArray
    design_cooling_method: tuple[str, ...]
    hourly_cooling_w: FloatArray
    load_factor_cooling_w: FloatArray
    monthly_cooling_sensible_kwh: FloatArray
    monthly_cooling_latent_kwh: FloatArray
    monthly_heating_kwh: FloatArray
    degree_day_heating_kwh: FloatArray
    hand_part_label: tuple[str, ...]
    hand_part_kwh: FloatArray
    moisture_share_frac: FloatArray
    block: Block
    balance_point_c: FloatArray
    piece_label: tuple[str, ...]
    piece_w: FloatArray
    loss_label: tuple[str, ...]
    loss_w: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Capability:
    """What a unit can give over outdoor temperature, likely row.

    Attributes
    ----------
    at_c : ndarray, shape (n,)
        Outdoor temperatures. [degC]
    cool_w, heat_w : ndarray, shape (n,)
        Capacity; NaN where it cannot run. [W]
    label : str
        Size and class in words, such as "18,000 Btu/h cold-climate class".
    nominal_w : float
        Rated cooling capacity; 0 where there is no unit. [W]
    volts : float
        Supply voltage; 0 where there is no unit. [V]
    """

    at_c: FloatArray
    cool_w: FloatArray
    heat_w: FloatArray
    label: str
    nominal_w: float
    volts: float


@dataclass(frozen=True, slots=True, eq=False)
class AlternativeResult:
    """One way to go.

    Attributes
    ----------
    name : Alternative
        Which one.
    standing : Standing
        Open, with help, not allowed or unknown.
    reasons : tuple of str
        Why it stands so, in plain words.
    meets_cooling, meets_heating, meets_drying, meets_need : ndarray, shape (B,)
        Whether the service asked for is met, declared make-up included.
    is_in_time, is_within_cash : ndarray, shape (B,)
        Whether it works before this year's hot season ends; whether the cash needed at once keeps the limit, what is
        borrowed taken off.
    line_items : LineItems
        First cost, line by line.
    first_cost_usd, cash_first_cost_usd, own_hours_h : ndarray, shape (B,)
        Cash plus own hours at the user's value; most cash out before service, tools at their whole price; own hours.
        [USD] [USD] [hour]
    upkeep_own_h_per_yr : ndarray, shape (B,)
        Own hours every year: units stored and put in again, sleeves covered. [hour/year]
    electricity_kwh, fuel_kwh : ndarray, shape (B, 12)
        By month of a full year of service, make-up included. [kWh]
    energy_cost_usd_per_yr : ndarray, shape (B,)
        Energy cost of a full year of service. [USD/year]
    emitted_kg_co2e_per_yr : ndarray, shape (B,)
        Carbon dioxide of that energy. [kg/year]
    make_up_heat_kwh : ndarray, shape (B, 12)
        Heat given by the make-up source. [kWh]
    unmet_cooling_kwh_per_yr, unmet_heating_kwh_per_yr : ndarray, shape (B,)
        Need this way cannot meet by itself. [kWh/year]
    unmet_cooling_h, unmet_heating_h : ndarray, shape (B,)
        Hours a year in which it falls short. [hour]
    unmet_cooling_kh : ndarray, shape (B,)
        Degree-hours a year above the cooling set-point in the hours asked for; an upper estimate, as extreme
        days repeat. [K*hour]
    hours_above_humidity_limit_h : ndarray, shape (B,)
        Hours a year, of those asked for, in which it leaves the air damper than the limit; a dehumidifier then makes
        up for it where drying is asked for. [hour]
    electricity_by_use_kwh : ndarray, shape (n_use, 12)
        Electricity by `use_label` and month, likely row. [kWh]
    use_label : tuple of str, length n_use
        What electricity is used for.
    unmet_moisture_kg_per_yr : ndarray, shape (B,)
        Moisture it leaves in the air in the hours asked for. [kg/year]
    schedule : Schedule
        Tasks and waits from the decision date.
    in_service_d : ndarray, shape (B,)
        Days from the decision date to service; NaN for keep_as_is. [day]
    in_service_exists : bool
        False for keep_as_is.
    waiting_cdd_kd : ndarray, shape (B,)
        Cooling degree-days that pass before service. [K*day]
    waiting_h : ndarray, shape (B,)
        Hours before service in which the room, with what is there now, is too warm. [hour]
    waiting_kh : ndarray, shape (B,)
        Degree-hours above the cooling set-point before service, with what is there now. [K*hour]
    waiting_day_kd, waiting_day_h : ndarray, shape (B,)
        What one day more of waiting at the date of service would add to either. [K*day] [hour]
    waiting_day_usd : ndarray, shape (B,)
        What a hired portable unit with its electricity would cost on that day, hired or not. [USD]
    interim_cost_usd : ndarray, shape (B,)
        Hire and electricity of what cools the room until service; part of the first cost. [USD]
    until_service_usd : ndarray, shape (B,)
        Energy and upkeep of what is there now until service; part of the yearly costs, told and not added. [USD]
    spare_d : ndarray, shape (B,)
        Days by which the decision could be put off and still be in time for summer; negative where it comes too
        late, NaN for keep_as_is or where no cooling is asked for. [day]
    kit_return : KitReturn
        Until when the kit may go back and at what fee; NaN for ways without a kit.
    warranty : Warranty
        What is covered from the day of service, and what would void it.
    doubts : tuple of Doubt
        What can go wrong in the work, kind by kind, for who does what.
    capability : Capability
        What the unit can give.
    """

    name: Alternative
    standing: Standing
    reasons: tuple[str, ...]
    meets_cooling: BoolArray
    meets_heating: BoolArray
    meets_drying: BoolArray
    meets_need: BoolArray
    is_in_time: BoolArray
    is_within_cash: BoolArray
    line_items: LineItems
    first_cost_usd: FloatArray
    cash_first_cost_usd: FloatArray
    own_hours_h: FloatArray
    upkeep_own_h_per_yr: FloatArray
    electricity_kwh: FloatArray
    fuel_kwh: FloatArray
    energy_cost_usd_per_yr: FloatArray
    emitted_kg_co2e_per_yr: FloatArray
    make_up_heat_kwh: FloatArray
    unmet_cooling_kwh_per_yr: FloatArray
    unmet_heating_kwh_per_yr: FloatArray
    unmet_cooling_h: FloatArray
    unmet_heating_h: FloatArray
    unmet_cooling_kh: FloatArray
    hours_above_humidity_limit_h: FloatArray
    electricity_by_use_kwh: FloatArray
    use_label: tuple[str, ...]
    unmet_moisture_kg_per_yr: FloatArray
    schedule: Schedule
    in_service_d: FloatArray
    in_service_exists: bool
    waiting_cdd_kd: FloatArray
    waiting_h: FloatArray
    waiting_kh: FloatArray
    waiting_day_kd: FloatArray
    waiting_day_h: FloatArray
    waiting_day_usd: FloatArray
    interim_cost_usd: FloatArray
    until_service_usd: FloatArray
    spare_d: FloatArray
    kit_return: KitReturn
    warranty: Warranty
    doubts: tuple[Doubt, ...]
    capability: Capability

    @property
    def return_by_d(self) -> FloatArray:
        """Last day on which the kit may go back, days from the decision, shape (B,); NaN without a kit. [day]"""
        return self.kit_return.return_by_d

    @property
    def restocking_usd(self) -> FloatArray:
        """What the seller keeps if the kit goes back, without the freight, shape (B,); NaN without a kit. [USD]"""
        return self.kit_return.restocking_usd


@dataclass(frozen=True, slots=True, eq=False)
class Result:
    """The whole answer for B decision rows.

    Attributes
    ----------
    results_version : int
        Rises whenever a change moves any number.
    base_case : Alternative
        What the others are compared with.
    study_period_yr : int
        Years compared.
    climate : ClimateSummary
        The weather behind it.
    rooms : RoomLoads
        Loads by room, likely row.
    need_cool_kwh, need_latent_kwh, need_heat_kwh : ndarray, shape (B, 12)
        Need of the served rooms, by month. [kWh]
    mean_cooling_w : ndarray, shape (B,)
        Mean total cooling over the hours that want any; 0 where none does. [W]
    unmet_cooling_allowed_frac : float
        Share of the season's cooling that a way may leave undone and still do the job, likely values. [dimensionless]
    alternatives : tuple of AlternativeResult
        In the order of ALTERNATIVES.
    streams : Streams
        Yearly costs, shape (A, B, n_year + 1). [USD]
    measures : Measures
        Life-cycle measures, shape (A, B).
    component_usd : dict of str to ndarray, shape (A, B)
        Present value by piece, as `econ.lifecycle.measures.component_present_value`: first cost, energy, upkeep,
        repair, replacement, disposal, residual (negative), financing, letting. [USD]
    lcc_at_zero_hour_usd : ndarray, shape (A, B)
        Life-cycle cost with own hours at nothing. [USD]
    by_warranty_usd : ndarray, shape (A, B)
        Expected repairs of all years that a warranty pays, not discounted; what is left to the owner is in the streams.
        [USD]
    terms : tuple of Terms or None, length A
        What borrowed money comes to for each way, likely row; None where nothing is borrowed.
    waiting : WaitingYear
        The months through which one may have to wait, and the summer.
    cautions : tuple of Caution
        What was found, hold points first.
    facts : Facts or None
        What the rules looked at; None for a result of several rows.
    first_cool_days : FirstCoolDays or None
        Low and high of the dates of service; None for a result that nobody has tried at other waits.
    """

    results_version: int
    base_case: Alternative
    study_period_yr: int
    climate: ClimateSummary
    rooms: RoomLoads
    need_cool_kwh: FloatArray
    need_latent_kwh: FloatArray
    need_heat_kwh: FloatArray
    mean_cooling_w: FloatArray
    unmet_cooling_allowed_frac: float
    alternatives: tuple[AlternativeResult, ...]
    streams: Streams
    measures: Measures
    component_usd: dict[str, FloatArray]
    lcc_at_zero_hour_usd: FloatArray
    by_warranty_usd: FloatArray
    terms: tuple[Terms | None, ...]
    waiting: WaitingYear
    cautions: tuple[Caution, ...] = field(default=())
    facts: Facts | None = None
    first_cool_days: FirstCoolDays | None = None

    def cautions_about(self, topic: str) -> tuple[Caution, ...]:
        """Return the findings that belong to one page."""
        return tuple(caution for caution in self.cautions if caution.topic == topic)
