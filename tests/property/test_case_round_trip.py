"""What is read, written and read again is the same case."""

from datetime import date

from hypothesis import given, settings
from hypothesis import strategies as st

from econ.case.form import FieldInfo, all_fields, fields
from econ.case.quantity import amount, converted
from econ.case.schema import MOST, SECTIONS, case_from, plain
from econ.case.toml import inputs_text, read_case, write_case
from econ.installation.quote import LINE_KINDS

CONTRADICTING = {
    "prices": ("electricity_bill_usd", "gas_bill_usd"),
    "tariff": ("second_limit_kwh", "cheap_from_h"),
}
"""Fields that may contradict others of their section and are then refused; each is of a kind that others try."""

RECORDED = ("notes", "days", "marks", "asides", "day")
TEXT = st.text(st.characters(exclude_categories=("Cs",)), max_size=40)


def values(info: FieldInfo) -> st.SearchStrategy[object]:
    if info.path.endswith((".date", ".decision_date", ".valid_until", ".start")):
        return st.dates(min_value=date(2000, 1, 1), max_value=date(2100, 12, 31)).map(str)
    if info.path == "place.state":
        return st.sampled_from(("MN", "AZ"))
    if info.kind in ("amount", "aside"):
        return amounts(info)
    if info.kind in ("choice", "pick", "mark"):
        return st.sampled_from((*info.options, *(["not known"] if "not_known" in info.options else [])))
    if info.kind in RECORDED:
        return recorded(info)
    names = st.from_regex(r"[a-z0-9_]{1,20}", fullmatch=True)
    by_kind = {
        "text": TEXT,
        "sheet": TEXT,
        "list": st.lists(names, max_size=4),
        "amounts": st.dictionaries(TEXT, st.floats(-1e6, 1e6), max_size=3),
        "table": st.dictionaries(TEXT, st.sampled_from(("self", "helper"))),
        "months": months(),
        "kinds": st.dictionaries(TEXT, st.sampled_from(LINE_KINDS), max_size=4),
    }
    return by_kind[info.kind]


def recorded(info: FieldInfo) -> st.SearchStrategy[object]:
    days = st.dates(min_value=date(2000, 1, 1), max_value=date(2100, 12, 31)).map(str)
    kinds = {"notes": TEXT, "days": days, "marks": st.sampled_from(info.options or ("",)), "asides": amounts(info)}
    if info.kind == "day":
        return days
    keys = st.from_regex(r"[a-z0-9_]{1,20}\.at_once" if info.kind == "marks" else r"[a-z_]{1,20}", fullmatch=True)
    return st.dictionaries(keys, kinds[info.kind], max_size=3)


def months() -> st.SearchStrategy[object]:
    cold = st.lists(st.integers(-30, 0) | st.just("20 degF"), min_size=12, max_size=12)
    warm = st.lists(st.floats(1.0, 40.0) | st.just("80 degF"), min_size=12, max_size=12)
    return st.fixed_dictionaries({"mean_c": cold}) | st.fixed_dictionaries({"mean_c": warm, "dew_point_c": cold})


def amounts(info: FieldInfo) -> st.SearchStrategy[object]:
    numbers = st.integers(int(info.low), int(info.high)) if info.is_whole else st.floats(info.low, info.high)
    numbers = numbers.filter(lambda number: info.low <= number <= info.high)

    def typed(number: float, unit: str) -> object:
        return f"{converted(number, info.unit, unit)!r} {unit}" if info.needs_unit else number

    unit = st.sampled_from((info.unit, info.us_unit))
    one = st.builds(typed, numbers, unit)
    three = st.tuples(numbers, numbers, numbers).map(sorted)
    span = st.builds(
        lambda at, u: dict(zip(("low", "likely", "high"), (typed(n, u) for n in at), strict=True)), three, unit
    )
    return st.one_of(one, span, st.just("not known"))


def section(name: str) -> st.SearchStrategy[dict[str, object]]:
    optional = {info.name: values(info) for info in fields(name)}
    if name == "place":
        point = {name: optional.pop(name) for name in ("latitude_deg", "longitude_deg")}
        required = {"station": TEXT.filter(bool)}
        rest = {key: optional[key] for key in optional if key != "station"}
        return st.fixed_dictionaries(required, optional=rest) | st.fixed_dictionaries(required | point, optional=rest)
    for left_out in CONTRADICTING.get(name, ()):
        optional.pop(left_out)
    return st.fixed_dictionaries({}, optional=optional)


SIGNED_LINES = st.fixed_dictionaries(
    {
        "code": st.just("permit.landlord_consent"),
        "kind": st.just("signed"),
        "who": TEXT.filter(str.strip),
        "role": st.just("landlord"),
        "date": st.dates(min_value=date(2000, 1, 1), max_value=date(2100, 12, 31)).map(str),
    },
    optional={"note": TEXT, "licence": TEXT, "figures": TEXT, "why_back": TEXT, "route": st.just("self_install")},
)
STEP_LINES = st.fixed_dictionaries(
    {
        "route": st.just("window_units"),
        "task": TEXT.filter(str.strip),
        "state": st.sampled_from(("begun", "done", "open")),
        "date": st.dates(min_value=date(2000, 1, 1), max_value=date(2100, 12, 31)).map(str),
    },
    optional={"reason": TEXT},
)

CASES = st.fixed_dictionaries(
    {"place": section("place"), "rooms": st.lists(section("rooms"), min_size=1, max_size=2)},
    optional={"quotes": st.lists(section("quotes"), max_size=2)}
    | {"signed": st.lists(SIGNED_LINES, max_size=3), "steps": st.lists(STEP_LINES, max_size=3)}
    | {name: section(name) for name in SECTIONS if name not in ("place", *MOST)},
)


@settings(max_examples=40, deadline=None)
@given(CASES)
def test_case_to_toml_to_case_is_identity(tables):
    case = case_from(tables)
    again = read_case(write_case(case))
    assert again == case
    assert write_case(again) == write_case(case)
    assert inputs_text(again) == inputs_text(case)
    assert numbers_of(again) == numbers_of(case)


@settings(max_examples=200, deadline=None)
@given(
    st.sampled_from([info for info in all_fields() if info.kind in ("amount", "aside")]).flatmap(
        lambda i: st.tuples(st.just(i), amounts(i))
    )
)
def test_amount_lies_within_the_bounds_of_its_field(drawn):
    info, typed = drawn
    read = amount(typed, info.measure)
    assert read.is_unknown or info.low <= read.low <= read.likely <= read.high <= info.high


def numbers_of(case):
    parts = [getattr(case, name) for name in plain(case) if name not in MOST] + [*case.rooms, *case.quotes]
    found = [value for part in parts for _, value in part if hasattr(value, "likely") and not value.is_unknown]
    return [(value.low, value.likely, value.high) for value in found]
