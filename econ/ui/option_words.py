"""How the options of a choice read on screen."""

from typing import Final

from econ.case.choices import NOT_KNOWN
from econ.report.style import NAMES

DONT_KNOW: Final = "I don't know"

_WORDS: Final[dict[str, str]] = {
    "lower_level": "Lower level",
    "garage": "Converted garage",
    "bedroom": "Bedroom or flat",
    "living": "Living room",
    "other": "Something else",
    "evenings_and_nights": "Evenings and nights",
    "day_and_night": "Day and night",
    "earth": "Earth",
    "as_built": "As wall and floor make it",
    "vented_attic": "Attic",
    "slab_on_grade": "Slab on the ground",
    "vented_crawl": "Crawl space",
    "brick_on_frame": "Brick over frame",
    "lawn": "Lawn or planting",
    "shaded": "Porch, deck or shade",
    "low_e": "Double, low-e",
    "leaky": "I feel the wind",
    "included_in_rent": "In the rent",
    "me": "I do",
    "tenant": "The tenant",
    "choose": "Choose for me",
    "cooling_season": "In the hot months",
    "all_year": "All year",
    "taped": "Foam and tape",
    "loose": "Loose panels",
    "small_high": "Small, high up",
    "own_circuit": "Its own circuit",
    "single_use_quick": "Quick, once",
    "reusable_quick": "Quick, reusable",
    "flare_with_charged_outdoor_unit": "Flared ends",
    "r32": "R-32",
    "r454b": "R-454B",
    "r410a": "R-410A (old stock)",
    "not_said": "Not said",
    "owner_lives_here": "I own it and live here",
    "owner_lets": "I let it out",
    "consent_needed": "Must agree",
    "studs": "Wall studs",
    "ledger": "A board across the studs",
    "concrete": "Solid concrete",
    "grouted_block": "Filled block",
    "through_bolted_block": "Bolted through block",
    "hollow_block": "Hollow block",
    "veneer": "Brick veneer only",
    "siding_or_foam": "Siding or foam",
    "boards": "Wood, vinyl or metal boards",
    "foam_stucco": "Stucco on foam",
    "cement_shingles": "Cement shingles",
    "bare": "Bare masonry",
    "above_grade": "Above the ground",
    "through_rim": "Through the rim",
    "below_grade": "Below the ground",
    "into_room": "Into the room",
    "at_bed": "At a bed or seat",
    "missed": "None found",
    "gravity": "Runs downhill",
    "pump": "Needs a pump",
    "exposed": "On the surface",
    "fished": "Through closed walls",
    "new": "A new one",
    "any": "Any day",
    "free": "A friend, free",
    "handyman": "A handyman, at a rate",
    "permit": "A permit",
    "licensed_commissioning": "A contractor starts it",
    "licensed_installation": "A contractor puts it in",
    "keep_old_units": "What is there now",
    "borrow": "Something borrowed",
    "rent_portable": "A hired portable",
    "2017_or_older": "2017 or older",
    "within_25_ft": "There is one",
    NOT_KNOWN: DONT_KNOW,
}

_CLASSES: Final = {
    "appliance_5": "Appliance, 5 years",
    "residential_27_5": "Part of a dwelling, 27.5 years",
    "transient_39": "Part of a short-stay house, 39 years",
}

_BY_PATH: Final[dict[str, dict[str, str]]] = {
    "money.base_case": {name.value: words for name, words in NAMES.items()},
    "site.occupancy": {"tenant": "I rent it"},
    "building.whose": {"everybody": "Everybody's", "payer": "Only those of whoever pays"},
    "money.otherwise": {
        "savings": "In savings",
        "mortgage": "Paying down the mortgage",
        "loan": "Paying off another loan",
        "card": "Paying off a card",
        "mixed": "A bit of everything",
    },
    "finance.pays_for": {
        "nothing": "Nothing, I pay cash",
        "every_way": "Whichever way I go",
        **{
            name.value: words
            for name, words in NAMES.items()
            if name.value in ("window_units", "self_install", "contracted_install")
        },
    },
    "finance.kind": {"card": "A card", "loan": "A loan", "instalments": "Instalments “without interest”"},
    "later.replaced_by": {"same_hands": "The same hands", "contractor": "A contractor", "yourself": "Me"},
    "letting.split_class": _CLASSES,
    "letting.window_class": _CLASSES,
    "now.cooling": {"none": "Nothing", "through_wall": "A unit in the wall"},
    "now.heat": {"none": "Nothing"},
    "rooms[].door": {"none": "No door", "open": "Usually open"},
    "rooms[].shade": {"none": "No shade", "some": "Some", "heavy": "Deep shade"},
    "site.permit": {"refused": "Was refused"},
    "site.association": {"none": "There is none", "refused": "Has refused"},
    "window.kind": {
        "window": "In a window",
        "narrow": "Tall and narrow",
        "through_wall": "Through the wall",
        "portable": "On wheels, with a hose",
    },
    "window.outlet": {"none": "None in reach", "shared": "A shared one"},
    "window.opening": {"none": "No window"},
    "trade.labour_at": {"wage_and_overhead": "What they cost, overhead apart", "sold_rate": "The rate that is billed"},
    "offer.filled_in_by": {"client": "The client", "contractor": "The contractor"},
    "quotes[].filled_in_by": {"client": "The client", "contractor": "The contractor"},
    "work.helper": {"none": "Nobody"},
    **{f"money.incentive_{way}_terms": {"none": "Nothing of the kind"} for way in ("self", "hired", "window")},
    "tariff.kind": {
        "flat": "One price",
        "seasonal": "By season",
        "tiered": "Dearer beyond so many kWh",
        "time_of_use": "By the hour of the day",
    },
    "tariff.peak_days": {"weekdays": "Monday to Friday"},
    "work.interim": {"nothing": "Nothing"},
    "site.circuit": {"shared": "A shared one"},
    "site.receptacle": {"none": "None in reach"},
    "site.code_edition": {edition: edition for edition in ("2020", "2023", "2026")},
    "site.conductor": {size: f"{size} gauge" for size in ("14", "12", "10", "8", "6")},
}

_SIZES: Final = ("window.size", "kit.size", "hired.size", "quotes[].size")


def option_words(path: str, option: str) -> str:
    """Return an option as the screen writes it.

    Examples
    --------
    >>> option_words("kit.size", "18"), option_words("site.wall", "poured_concrete")
    ('18,000 Btu/h', 'Poured concrete')
    """
    if option in _BY_PATH.get(path, {}):
        return _BY_PATH[path][option]
    if option.isdigit():
        return f"{option},000 Btu/h" if path in _SIZES else f"{option} V"
    return _WORDS.get(option, option.replace("_", " ").capitalize())
