"""When the room is cool, what one waits for, what waiting means, and by which calendar days are counted."""

from math import isfinite
from typing import Final

import numpy as np

from econ.case.choices import NOT_KNOWN, option_at
from econ.evaluate.result import AlternativeResult, Result
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.constants import MONTH_DAYS
from econ.report.look import Look
from econ.report.numbers import MONTHS, Quantity, hours, listed, money, plain_number
from econ.report.pictures.frame import Columns
from econ.report.style import NAMES
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import Answer

NOTICED_D: Final = 0.5
"""Days of waiting below which a wait is not told (assumption)."""

WAITS: Final = {
    "consent": "consent",
    "permit_granted": "the permit",
    "receive": "delivery",
    "buy_carry": "the shop",
    "book_electrician": "the electrician",
    "book_contractor": "the contractor",
    "contractor_start": "the contractor",
    "locate_lines": "buried lines to be marked",
    "inspection": "the inspection",
}
"""What is waited for, by task."""

DAYS: Final = {
    "weekends": "on Saturdays and Sundays",
    "evenings": "on the evenings of Monday to Friday",
    "any": "on any day of the week",
    NOT_KNOWN: "on Saturdays and Sundays, as nobody has said otherwise",
}
"""When own work is done, by the answer given."""

QUEUES: Final = {
    "contractor": "the contractor, visits and start together,",
    "electrician": "the electrician",
    "delivery": "delivery",
    "permit": "the permit",
}
SEASONS: Final = {"off": "in the off season", "shoulder": "in spring and autumn", "peak": "in the heat"}
"""Queues and seasons of the table of usual waits."""

MEANWHILE: Final = {
    "nothing": "nothing is brought in meanwhile",
    "keep_old_units": "what cools the room now stays until then",
    "borrow": "a unit is borrowed until then",
    "rent_portable": "a portable unit is hired until then",
    NOT_KNOWN: "a portable unit is priced in until then, as nobody has said otherwise",
}
"""What cools the room until service, by the answer given."""


def span_text(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return the earliest and latest day that is worth counting on, as "12 June to 30 July"; empty if none or alike."""
    found = result.first_cool_days
    if found is None or not way.in_service_exists:
        return ""
    at = ALTERNATIVES.index(way.name)
    low, high = (look.short_day(float(ends[at])) for ends in (found.low_d, found.high_d))
    shared_year = f" {high.split()[-1]}" if len(high.split()) > len(("day", "month")) else ""
    return "" if low == high else f"{low.removesuffix(shared_year)} to {high}"


def cool_day_text(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return the first cool day with its range; empty where nothing new comes."""
    if not way.in_service_exists:
        return ""
    span = span_text(result, way, look)
    return look.day(float(way.in_service_d[0])) + (f" ({span})" if span else "")


def cool_day_sentence(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return the first cool day, how far it may move, and whether that is in time; empty where nothing new comes."""
    if not way.in_service_exists:
        return ""
    span, named = span_text(result, way, look), f"“{NAMES[way.name]}” cools from {look.day(float(way.in_service_d[0]))}"
    moved = f"; if waits and work go quicker or slower, {span} in eight tries of ten" if span else ""
    late = summer_text(result, way, look)
    return f"{named}{moved}.{f' {late[:1].upper()}{late[1:]}.' if late else ''}"


def misses_summer(result: Result, way: AlternativeResult) -> bool:
    """Return whether a way comes after half of the coming heat, or after the end of the summer one is in."""
    return way.in_service_exists and spare_d(result, way) < 0.0


def spare_d(result: Result, way: AlternativeResult) -> float:
    """Return the days by which the decision may be put off and still make the summer, that at hand where there is one.

    NaN where nothing new comes or no cooling is asked for. [day]
    """
    by_half_d = float(way.spare_d[0])
    if not result.waiting.summer_from_d <= 0.0:
        return by_half_d
    return min(by_half_d, result.waiting.summer_to_d - float(way.in_service_d[0]))


def summer_text(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return whether a way makes the summer, and by when to decide for it; empty where no cooling is asked for."""
    left_d, by_half_d = spare_d(result, way), float(way.spare_d[0])
    if not isfinite(left_d):
        return ""
    if left_d < 0.0 <= by_half_d:
        return (
            f"too late for what is left of this summer, which ends about {look.short_day(result.waiting.summer_to_d)}; "
            f"decide by {look.short_day(by_half_d)} to make the next"
        )
    if left_d < 0.0:
        half = look.short_day(by_half_d + float(way.in_service_d[0]))
        return (
            f"too late for the summer, half of it over by {half}: that took a decision by {look.short_day(by_half_d)}"
        )
    aim = "to make the summer" if left_d == by_half_d else "to have any of this summer"
    return f"decide by {look.short_day(left_d)} {aim}{_careful(result, way, look)}"


def _careful(result: Result, way: AlternativeResult, look: Look) -> str:
    """Return by when to decide if waits run long; empty where that is no other day."""
    found = result.first_cool_days
    if found is None:
        return ""
    left_d = spare_d(result, way)
    slow_d = left_d + float(way.in_service_d[0] - found.high_d[ALTERNATIVES.index(way.name)])
    if look.short_day(slow_d) == look.short_day(left_d):
        return ""
    return (
        f", by {look.short_day(slow_d)} if waits run long" if slow_d >= 0.0 else ", too late already if waits run long"
    )


def waits_text(way: AlternativeResult) -> str:
    """Return what one waits for before the first cool day, longest first; empty where no wait is worth telling."""
    plan = way.schedule
    until = plan.is_active[0] & (plan.finish_d[0] <= way.in_service_d[0]) & (plan.wait_d[0] >= NOTICED_D)
    told = [
        (float(plan.wait_d[0, task]), WAITS.get(plan.task[task], plan.label[task].lower()))
        for task in np.flatnonzero(until)
    ]
    if not told:
        return ""
    parts = [f"{plain_number(days)} {_days(days)} for {what}" for days, what in sorted(told, reverse=True)]
    together = ", some of it side by side" if len(parts) > 1 else ""
    return f"“{NAMES[way.name]}” waits {listed(parts)}{together}."


def chain_text(way: AlternativeResult, look: Look) -> str:
    """Return the waits the first cool day hangs on, in order, with their days; empty where nothing new comes."""
    plan = way.schedule
    if not way.in_service_exists:
        return ""
    told: list[str] = []
    for task in np.flatnonzero(plan.is_critical[0]):
        wait_d = float(plan.wait_d[0, task])
        if wait_d >= NOTICED_D:
            what = WAITS.get(plan.task[task], plan.label[task].lower())
            told.append(f"{what} ({plain_number(wait_d)} {_days(wait_d)})")
    last = look.short_day(float(way.in_service_d[0]))
    if not told:
        return f"Nothing but work and work days stands between the decision and {last} with “{NAMES[way.name]}”."
    return f"With “{NAMES[way.name]}” {last} hangs on {listed(told)}: sooner there is sooner cool."


def _days(days: float) -> str:
    return "day" if plain_number(days) == "1" else "days"


def worst_day_text(result: Result, look: Look) -> str:
    """Return what a day of waiting means in the warmest month; empty where no month is too warm."""
    warm_h = result.waiting.need.too_warm_h[0]
    month = int(np.argmax(warm_h))
    if warm_h[month] < 1.0:
        return ""
    days = MONTH_DAYS[month]
    heat = plain_number(look.shown(float(result.waiting.cooling_kd[month]) / days, Quantity.DEGREE_DAYS))
    hot = f"{hours(float(warm_h[month]) / days)} too warm ({heat} {look.symbol(Quantity.DEGREE_DAYS)})"
    hire = money(float(result.waiting.makeshift_usd[month]) / days)
    return f"A day of waiting in {MONTHS[month]} is {hot}; a hired unit and its electricity cost about {hire} that day."


def calendar_text(answer: Answer) -> str:
    """Return by which calendar hours of work become dates."""
    days = DAYS[option_at("work.days", answer.sheet.entry("work.days").likely)]
    long = hours(answer.sheet.entry("work.hours_per_day_h").likely)
    return (
        f"Your own work is put {days}, {long} a day; trades work Monday to Friday, eight hours; one person does one "
        "thing at a time. Public holidays are not counted: add a day for each."
    )


def meanwhile_text(answer: Answer) -> str:
    """Return what cools the room until service, as answered, and from how many warm days on it is priced."""
    option = option_at("work.interim", answer.sheet.entry("work.interim").likely)
    least = plain_number(answer.sheet.entry("rules.interim_least_d").likely)
    where = (
        f", where {least} warm days or more lie before it" if option in {"borrow", "rent_portable", NOT_KNOWN} else ""
    )
    is_empty = (
        option == "keep_old_units" and option_at("now.cooling", answer.sheet.entry("now.cooling").likely) == "none"
    )
    nothing = "; but you said that nothing is there" if is_empty else ""
    return f"Cooling until service: {MEANWHILE[option]}{where}{nothing}."


def queue_text(answer: Answer) -> str:
    """Return the usual waits for trades and goods by season, as the table has them."""
    tables = load_tables()
    told = []
    for what, words in QUEUES.items():
        days = [plain_number(tables.wait(what, season).likely) for season in SEASONS]
        told.append(f"{words} {', '.join(days)} days" if len(set(days)) > 1 else f"{words} {days[0]} days always")
    season = SEASONS[tables.season(answer.decision_date.month)]
    return (
        f"Usual waits {', '.join(SEASONS.values())}: {'; '.join(told)}. The decision falls {season}; what you said of "
        "your own waits goes before."
    )


def sentences(answer: Answer, look: Look) -> tuple[str, ...]:
    """Return what is to be said of dates and waiting beside the table of them."""
    result = answer.result
    coming = [way for way in result.alternatives if way.in_service_exists]
    told = [
        *(waits_text(way) for way in coming),
        *(chain_text(way, look) for way in coming),
        register_text(result, look),
        queue_text(answer),
        worst_day_text(result, look),
        meanwhile_text(answer),
        tries_text(result),
        calendar_text(answer),
    ]
    return tuple(sentence for sentence in told if sentence)


def register_text(result: Result, look: Look) -> str:
    """Return by when to register each warranty, by the usual deadline; empty where nothing is registered."""
    told = [
        f"“{NAMES[way.name]}” by {look.short_day(float(way.in_service_d[0] + way.warranty.register_within_d[0]))}"
        for way in result.alternatives
        if way.in_service_exists and isfinite(float(way.warranty.register_within_d[0]))
    ]
    return f"Register the warranty of {listed(told)}, by the usual deadline; the paper decides." if told else ""


def table(result: Result, look: Look) -> Columns:
    """Return dates and waiting of each way side by side."""
    coming = [way for way in result.alternatives if way.in_service_exists]
    columns: Columns = {"": list(_figures(result, coming[0], look)) if coming else []}
    return columns | {NAMES[way.name]: list(_figures(result, way, look).values()) for way in coming}


def _figures(result: Result, way: AlternativeResult, look: Look) -> dict[str, str]:
    found, at = result.first_cool_days, ALTERNATIVES.index(way.name)
    held, extra = (money(float(usd[0])) for usd in (way.until_service_usd, way.interim_cost_usd))
    if found is not None and found.interim_high_usd[at] > 0.0:
        extra += f" ({money(float(found.interim_low_usd[at]))} to {money(float(found.interim_high_usd[at]))})"
    return {
        "First cool day": look.day(float(way.in_service_d[0])),
        "In 8 tries of 10": f"from {span}" if (span := span_text(result, way, look)) else "the same day",
        "For the summer": summer_text(result, way, look) or "no cooling asked for",
        "Too warm until then": hours(float(way.waiting_h[0])),
        "Degree-hours too warm": look.measure(float(way.waiting_kh[0]), Quantity.DEGREE_HOURS),
        "Cooling degree-days until then": look.measure(float(way.waiting_cdd_kd[0]), Quantity.DEGREE_DAYS),
        "Cooling meanwhile, in first cost": extra,
        "Energy and upkeep until then, in yearly costs already": held,
        "One day more then: too warm": hours(float(way.waiting_day_h[0])),
        "One day more then: a hired unit would cost": money(float(way.waiting_day_usd[0])),
    }


def tries_text(result: Result) -> str:
    """Return where the ranges of dates come from; empty without them."""
    found = result.first_cool_days
    if found is None:
        return ""
    return (
        f"Ranges of dates: {found.n_try} tries with every wait and every hour of work drawn from its own low and high, "
        "each independent of the others; one try in ten comes sooner than the range, one in ten later."
    )
