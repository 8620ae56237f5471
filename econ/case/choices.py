"""The options of every choice in a case, by path; what repeats is written ``rooms[].wall``."""

import re
from typing import Final

from econ.installation.anchoring import HOLDING_BASES, YIELDING_BASES
from econ.installation.incentive import TERMS
from econ.kernel.alternative import ALTERNATIVES
from econ.lifecycle.landlord import DepreciationClass

NOT_KNOWN: Final = "not_known"
"""The last option of every choice: "I don't know", kept apart from an untouched default."""

YES_NO: Final = ("yes", "no")
SAID: Final = ("yes", "no", "not_said")
WALLS: Final = ("wood_frame", "brick_on_frame", "block", "poured_concrete", "solid_brick", "stone")
SIDES: Final = ("outside", "heated_room", "unheated_room", "earth")
GRADES: Final = ("economy", "standard", "cold_climate")
MONTHS: Final = (
    *("january", "february", "march", "april", "may", "june"),
    *("july", "august", "september", "october", "november", "december"),
)
KIT_SIZES: Final = ("6", "9", "12", "18", "24", "30", "36")

_OPTIONS: Final[dict[str, tuple[str, ...]]] = {
    "use.cool": YES_NO,
    "use.heat": ("yes", "sometimes", "no"),
    "use.dry": YES_NO,
    "use.when": ("evenings_and_nights", "working_hours", "day_and_night", "hot_days_only"),
    "use.present_heat_stays": YES_NO,
    "rooms[].kind": ("lower_level", "garage", "sunroom", "bedroom", "living", "attic", "other"),
    "rooms[].north_faces": ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"),
    "rooms[].north": SIDES,
    "rooms[].east": SIDES,
    "rooms[].south": SIDES,
    "rooms[].west": SIDES,
    "rooms[].ground_cover": ("lawn", "bare_soil", "paved", "shaded"),
    "rooms[].above": ("heated_room", "vented_attic", "flat_roof", "sloped_roof"),
    "rooms[].below": ("heated_room", "slab_on_grade", "basement_floor", "vented_crawl", "unheated_room", "open_air"),
    "rooms[].wall": WALLS,
    "rooms[].wall_insulated": YES_NO,
    "rooms[].glazing": ("single", "double", "low_e"),
    "rooms[].shade": ("none", "some", "heavy"),
    "rooms[].draughts": ("tight", "average", "leaky"),
    "rooms[].kitchen": YES_NO,
    "rooms[].mass_class": ("as_built", "very_light", "light", "medium", "heavy", "very_heavy"),
    "rooms[].own_unit": YES_NO,
    "rooms[].door": ("open", "usually_closed", "none"),
    "now.cooling": ("none", "window_units", "portable", "through_wall"),
    "now.heat": ("none", "electric", "gas", "propane", "oil", "wood"),
    "now.dehumidifier": YES_NO,
    "money.base_case": tuple(name.value for name in ALTERNATIVES),
    "money.otherwise": ("savings", "mortgage", "loan", "card", "invested", "mixed"),
    "finance.pays_for": ("nothing", "window_units", "self_install", "contracted_install", "every_way"),
    "finance.kind": ("loan", "card", "instalments"),
    "later.replaced_by": ("same_hands", "contractor", "yourself"),
    "letting.counted": YES_NO,
    "letting.split_class": tuple(kind.value for kind in DepreciationClass),
    "letting.window_class": tuple(kind.value for kind in DepreciationClass),
    "now.house_system": ("no", "poorly", "well"),
    "prices.pays_bill": ("me", "tenant", "included_in_rent"),
    "bills.use_fit": YES_NO,
    "tariff.kind": ("flat", "seasonal", "tiered", "time_of_use"),
    "tariff.summer_from": MONTHS,
    "tariff.summer_to": MONTHS,
    "tariff.peak_days": ("every_day", "weekdays"),
    "tariff.clock_change": YES_NO,
    "window.kind": ("window", "narrow", "through_wall", "portable"),
    "window.size": ("choose", "5", "6", "8", "10", "12", "14", "18", "24", "28"),
    "window.cycle": ("cooling_only", "reverse_cycle"),
    "window.in_months": ("cooling_season", "all_year"),
    "window.seal": ("taped", "loose"),
    "window.opening": ("sash", "sliding", "casement", "small_high", "none"),
    "window.escape": YES_NO,
    "window.outlet": ("own_circuit", "shared", "none"),
    "window.outlet_volts": ("120", "240"),
    "window.wall_bears": YES_NO,
    "window.over_walkway": YES_NO,
    "kit.size": ("choose", *KIT_SIZES),
    "kit.grade": GRADES,
    "kit.volts": ("120", "240"),
    "kit.connection": ("single_use_quick", "reusable_quick", "flare_with_charged_outdoor_unit"),
    "kit.extension_allowed": YES_NO,
    "kit.refrigerant": ("r32", "r454b", "r410a"),
    "hired.size": ("same_as_kit", *KIT_SIZES),
    "hired.grade": ("same_as_kit", *GRADES),
    "quote.equipment": SAID,
    "quote.electrical": SAID,
    "quote.permit": SAID,
    "quote.removal": SAID,
    "quote.warranty": SAID,
    "site.occupancy": ("owner_lives_here", "owner_lets", "tenant"),
    "site.permit": ("needed", "not_needed", "refused"),
    "site.owner_may_mechanical": YES_NO,
    "site.owner_may_electrical": YES_NO,
    "site.association": ("none", "consent_needed", "refused"),
    "site.wall": WALLS,
    "site.cladding": ("boards", "brick", "stucco", "foam_stucco", "cement_shingles", "bare"),
    "site.fire_wall": YES_NO,
    "site.outdoor_place": ("ground_pad", "wall_bracket", "roof"),
    "site.anchor_base": (*HOLDING_BASES, *YIELDING_BASES),
    "site.hole": ("above_grade", "through_rim", "below_grade"),
    "site.drain": ("gravity", "pump"),
    "site.head_blows": ("into_room", "at_bed"),
    "site.head_studs": ("found", "missed"),
    "site.head_access": YES_NO,
    "site.door_swing": YES_NO,
    "site.flood": YES_NO,
    "site.salt_air": YES_NO,
    "site.heritage": YES_NO,
    "site.room_permitted": YES_NO,
    "site.pipes": YES_NO,
    "site.panel_spaces": YES_NO,
    "site.wiring": ("exposed", "fished"),
    "site.circuit": ("new", "own_circuit", "shared"),
    "site.conductor": ("choose", "14", "12", "10", "8", "6"),
    "site.code_edition": ("2017_or_older", "2020", "2023", "2026"),
    "site.receptacle": ("within_25_ft", "none"),
    "panel.range": YES_NO,
    "panel.dryer": YES_NO,
    "panel.water_heater": YES_NO,
    "panel.car_charger": YES_NO,
    "money.incentive_window_terms": TERMS,
    "money.incentive_self_terms": TERMS,
    "money.incentive_hired_terms": TERMS,
    "work.helper": ("none", "free", "paid", "handyman"),
    "work.contractor_finishes": YES_NO,
    **{f"work.skill_{deed}": ("yes", "a_little", "no") for deed in ("masonry", "bracket", "torque")},
    "work.days": ("weekends", "evenings", "any"),
    "work.interim": ("nothing", "keep_old_units", "borrow", "rent_portable"),
    "work.start_doing": ("now",),
}

CHOICES: Final[dict[str, tuple[str, ...]]] = {path: (*options, NOT_KNOWN) for path, options in _OPTIONS.items()}
"""Options by path; a choice travels below the sheet as its position here."""

_PICKS: Final[dict[str, tuple[str, ...]]] = {
    **{f"quotes[].{part}": SAID for part in ("equipment", "electrical", "permit", "removal", "warranty")},
    "quotes[].size": KIT_SIZES,
    "quotes[].grade": GRADES,
    "offer.filled_in_by": ("client", "contractor"),
    "quotes[].filled_in_by": ("client", "contractor"),
    "building.whose": ("everybody", "payer"),
    "building.whole_flat": YES_NO,
    "trade.labour_at": ("wage_and_overhead", "sold_rate"),
}

PICKS: Final[dict[str, tuple[str, ...]]] = {path: (*options, NOT_KNOWN) for path, options in _PICKS.items()}
"""Options of choices that move no number of the comparison: they never travel below the sheet."""

EARLIER_WORDS: Final = {("kit.connection", "flare"): "flare_with_charged_outdoor_unit"}
"""Options as earlier files spell them, and what they are called now."""

_INDEX = re.compile(r"^(rooms|quotes|signed|steps)\[\d*\]\.")


def table_path(path: str) -> str:
    """Return the path as tables write it: ``rooms[2].wall`` becomes ``rooms[].wall``.

    Examples
    --------
    >>> table_path("rooms[2].wall"), table_path("kit.size")
    ('rooms[].wall', 'kit.size')
    """
    return _INDEX.sub(r"\1[].", path)


def code(path: str, option: str) -> float:
    """Return the number an option travels as: its position among the options of its path.

    Parameters
    ----------
    path : str
        A choice's path, with or without a room index.
    option : str
        One of its options, or "not_known".

    Returns
    -------
    code : float
        Position, the first option being 0.

    Raises
    ------
    KeyError
        If the path is not that of a choice.
    ValueError
        If the option is not among those of the path.

    Examples
    --------
    >>> code("use.heat", "no"), code("rooms[0].kitchen", "not_known")
    (2.0, 2.0)
    """
    options = CHOICES[table_path(path)]
    if option not in options:
        raise ValueError(f"{path} knows no option {option!r}; it must be one of {', '.join(options)}.")
    return float(options.index(option))


def option_at(path: str, position: float) -> str:
    """Return the option that stands at a position: the inverse of `code`.

    Examples
    --------
    >>> option_at("use.heat", 2.0)
    'no'
    """
    return CHOICES[table_path(path)][int(position)]
