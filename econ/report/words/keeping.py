"""The record of the work in words: whom to phone, what was tested, how the air split reads, what is still open."""

import math
from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from econ.case.quantity import Amount
from econ.case.sections.as_built import WHEN, AsBuilt, Tests
from econ.evaluate.keeping import Goods, Hire
from econ.kernel.alternative import ALTERNATIVES, HIRED, WINDOW, Alternative
from econ.report.look import Look
from econ.report.numbers import Quantity, day_text, listed, money, plain_number, plural
from econ.tables.keeping import Split

WHOM_WORDS: Final = {
    "permit_office": "Permit office",
    "electrician": "Electrician",
    "utility": "Utility marking service",
    "insurer": "Insurer",
    "association": "Association",
    "landlord": "Landlord",
    "contractor": "Contractor",
}
SEASON_WORDS: Final = {
    "every_month": "Every month while it runs",
    "spring": "Spring",
    "summer": "Summer",
    "autumn": "Autumn",
    "winter": "Winter",
    "every_few_years": "Every two or three years",
}
WHEN_WORDS: Final = {"at_once": "At once", "after_day": "After 24 hours", "after_month": "After 30 days"}
MARK_WORDS: Final = {
    "tight": "Tight",
    "leaks": "Leaks",
    "not_tested": "Not tested",
    "soap": "Soap",
    "detector": "Detector for this refrigerant",
    "both": "Both",
    "test_mode": "The maker's test mode",
    "full_fan": "Full fan, extreme set-point",
    "not_known": "I don't know",
    "cooling": "Cooling",
    "heating": "Heating",
    "ran_clear": "All of it came out",
    "ran_slowly": "Slowly",
    "leaked": "It leaked",
    "letter": "Letter",
    "a4": "A4",
    "yes": "Yes",
    "no": "No",
}
ENTERED: Final = "It records what was entered. It is not proof of compliance."
GOODS_NOTE: Final = (
    "Estimated: goods before tax, tools with it. Buy what the maker's manual names. Keep receipts: what is "
    "unopened can go back."
)
MAKERS: Final = "The maker's band"
LEAST_MIN: Final = 15.0
"""Minutes a unit runs before its air is read. [minute]"""

DUE_D: Final = {"after_day": 1, "after_month": 30}
"""Days after the first test on which joints are tested again. [day]"""


def quantity_words(goods: Goods, look: Look) -> str:
    """Return how much of one thing to buy, lengths rounded up.

    Parameters
    ----------
    goods : Goods
        What is bought.
    look : Look
        Units of the reader.
    """
    if goods.unit != "m":
        return plain_number(math.ceil(goods.quantity - 1e-9))
    length = math.ceil(look.shown(goods.quantity, Quantity.LENGTH) - 1e-9)
    return f"{plain_number(length)} {look.symbol(Quantity.LENGTH)}"


def goods_label(goods: Goods) -> str:
    """Return what is bought, with a capital letter."""
    return goods.label[:1].upper() + goods.label[1:]


def shopping_note(name: Alternative, goods: Sequence[Goods]) -> str:
    """Return what to know of a shopping list, or why there is none.

    Parameters
    ----------
    name : Alternative
        The way.
    goods : sequence of Goods
        What it takes.
    """
    if not goods:
        is_hired = name is ALTERNATIVES[HIRED]
        return "The quote brings the goods: ask for a list of them." if is_hired else "Nothing is bought for this way."
    if name is ALTERNATIVES[HIRED]:
        return "The contractor brings these; hold the offer against the list."
    return GOODS_NOTE


def hire_words(hire: Hire, look: Look) -> tuple[str, str, str, str]:
    """Return one tool to hire: what, how long, from when, and about how much.

    Parameters
    ----------
    hire : Hire
        The tool.
    look : Look
        Calendar of the reader.
    """
    days = f"{plain_number(hire.days_d, 0 if hire.days_d == round(hire.days_d) else 1)}"
    return hire.label, f"{days} {plural('day', round(hire.days_d))}", look.day(hire.from_d), money(hire.cost_usd)


def joint_words(joint: str) -> str:
    """Return the name of a joint.

    Examples
    --------
    >>> joint_words("outdoor_wide_1"), joint_words("indoor_thin_2")
    ('Outdoors, thick pipe', 'Indoors, thin pipe, unit 2')
    """
    place, pipe, head = joint.split("_")
    told = f"{place.capitalize()}s, {'thick' if pipe == 'wide' else 'thin'} pipe"
    return told if head == "1" else f"{told}, unit {head}"


def joint_sentences(tests: Tests, joints: Sequence[str]) -> tuple[str, ...]:
    """Return what the tests of the joints say so far, and what must happen next.

    Parameters
    ----------
    tests : Tests
        As entered.
    joints : sequence of str
        Joints there are.
    """
    results = dict(tests.joints or ())
    if leaking := [joint for joint in joints if "leaks" in {results.get(f"{joint}.{when}") for when in WHEN}]:
        named = listed([joint_words(joint).lower() for joint in leaking])
        return (f"Stop: {named} leaks. Keep the unit off; a certified person mends it. Nobody tops it up.",)
    told = []
    for when in WHEN:
        tight = sum(results.get(f"{joint}.{when}") == "tight" for joint in joints)
        told.append(f"{WHEN_WORDS[when]}: {tight} of {len(joints)} joints entered as tight.")
    if not told[0].startswith(f"{WHEN_WORDS['at_once']}: {len(joints)} of"):
        return (*told, "The unit does not run until every joint has passed the first test.")
    return tuple(told)


def due_sentence(tests: Tests, this_year: int) -> str:
    """Return when joints are due to be tested again; empty where the first day is not entered."""
    if not tests.leak_at_once_on:
        return ""
    first = date.fromisoformat(tests.leak_at_once_on)
    day, month = (day_text(first + timedelta(days=DUE_D[when]), this_year) for when in DUE_D)
    return f"Test again on {day} and on {month}."


def split_sentence(tests: Tests, splits: dict[str, Split], look: Look) -> str:
    """Return how far the air blown out lies from the air drawn in, and the band, where one may be shown.

    Parameters
    ----------
    tests : Tests
        As entered.
    splits : dict of str to Split
        Usual differences by what the unit does.
    look : Look
        Units of the reader.

    Returns
    -------
    sentence : str
        Empty before both temperatures are entered. No band where it is not known how the unit ran, or for how long.
    """
    drawn_in, blown_out = _likely(tests.return_c), _likely(tests.supply_c)
    if math.isnan(drawn_in) or math.isnan(blown_out):
        return ""
    apart_k = blown_out - drawn_in
    said = f"The air comes out {_apart(abs(apart_k), look)} {'warmer' if apart_k > 0.0 else 'colder'} than it goes in."
    if missing := no_band(tests):
        return f"{said} No band is shown: {missing}."
    signed_k = reading_k(tests)
    if signed_k <= 0.0:
        return f"{said} That is the wrong way round for {tests.running}: check the readings, then phone."
    low_k, high_k, whose = band_k(tests, splits)
    low, high = (plain_number(look.shown(end_k, Quantity.TEMPERATURE_DIFFERENCE)) for end_k in (low_k, high_k))
    band = f"{whose} is {low} to {high} {look.symbol(Quantity.TEMPERATURE_DIFFERENCE)}"
    if low_k <= signed_k <= high_k:
        return f"{said} {band}: it lies inside. That speaks for the unit and proves no charge."
    side = "below" if signed_k < low_k else "above"
    return f"{said} {band}: it lies {side}. Look at filter and fan first, then phone a certified technician."


def split_source(tests: Tests, splits: dict[str, Split]) -> str:
    """Return where the band comes from; empty where none is shown or the maker's is."""
    is_read = math.isfinite(_likely(tests.return_c)) and math.isfinite(_likely(tests.supply_c))
    if not is_read or no_band(tests) or band_k(tests, splits)[2] == MAKERS:
        return ""
    return f"Band: {splits[tests.running or 'cooling'].source}."


def reading_k(tests: Tests) -> float:
    """Return how far the air blown out lies from the air drawn in, the way it should lie; NaN before both are read."""
    apart_k = _likely(tests.supply_c) - _likely(tests.return_c)
    return apart_k if tests.running == "heating" else -apart_k


def no_band(tests: Tests) -> str:
    """Return why no band may be shown, as the end of a sentence; empty where it may."""
    minutes = _likely(tests.minutes_min)
    if tests.mode in (None, "not_known"):
        return "how the unit ran is not known"
    if tests.running is None:
        return "it is not entered whether it cooled or heated"
    if not minutes >= LEAST_MIN:
        return f"it must have run for {plain_number(LEAST_MIN)} minutes"
    return ""


def band_k(tests: Tests, splits: dict[str, Split]) -> tuple[float, float, str]:
    """Return low and high of the difference to expect, and whose they are: the maker's where both are entered.

    Parameters
    ----------
    tests : Tests
        As entered; it says what the unit does.
    splits : dict of str to Split
        Usual differences by what the unit does.
    """
    own = _likely(tests.band_low_k), _likely(tests.band_high_k)
    if not any(map(math.isnan, own)) and own[0] <= own[1]:
        return *own, MAKERS
    usual = splits[tests.running or "cooling"]
    return usual.low_k, usual.high_k, "The band to expect, an assumption,"


def _likely(amount: Amount | None) -> float:
    return math.nan if amount is None else amount.likely


def _apart(apart_k: float, look: Look) -> str:
    return look.measure(apart_k, Quantity.TEMPERATURE_DIFFERENCE)


def care_title(name: Alternative) -> str:
    """Return the heading of the care sheet of a way."""
    return "Looking after window units" if name is ALTERNATIVES[WINDOW] else "Looking after the heat pump"


def warranty_sentence(built: AsBuilt) -> str:
    """Return until when parts and labour are covered, and whom to call first, as far as it was entered.

    Parameters
    ----------
    built : AsBuilt
        As entered.
    """
    told = {"Parts": built.parts_until, "Labour": built.labour_until}
    said = [
        f"{what} are covered until {day}." if what == "Parts" else f"{what} is covered until {day}."
        for what, day in told.items()
        if day
    ]
    return " ".join([*said, *([f"Call first: {built.call_first}."] if built.call_first else [])])
