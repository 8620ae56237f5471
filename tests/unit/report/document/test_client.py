"""What a contractor hands over: two pages whatever was typed, and nothing private in any of its bytes."""

import re
import zlib
from base64 import a85decode
from dataclasses import replace

import pytest

from econ.case.edit import with_fields, with_quote, with_value
from econ.case.private import handed_over, has_private
from econ.case.toml import write_case
from econ.report.document.block import Picture
from econ.report.document.content.basis import basis
from econ.report.document.file import Kind, document_bytes
from econ.report.document.readers import Reader, document
from econ.report.pictures import bridge as picture
from econ.report.plain import compare_json
from econ.report.words.own_trade import own_cents, sentence, table
from econ.report.words.quote import cut_of
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from econ.uncertainty.quote import priced, quote_study
from tests.demo import NAMES, TODAY, demo_answer, demo_case
from tests.unit.report.document.printed import Pdf
from tests.unit.report.document.test_user_text import HOSTILE

SUNROOM = "sunroom_with_quote"
PLANTED = {
    "labour_usd_per_h": 73.19,
    "unit_usd": 1391.37,
    "overhead_frac": 0.2317,
    "profit_frac": 0.1173,
    "notes": "Zanzibar whisper",
}
SPELLED = ("73.19", "1391.37", "1,391.37", "0.2317", "23.17", "0.1173", "11.73", "Zanzibar")


def planted():
    found = demo_answer(SUNROOM)
    return replace(found, case=with_fields(found.case, "private", PLANTED))


def streams(content):
    """Return a PDF's bytes with every stream in it unpacked."""
    found = [content]
    for packed in re.findall(rb"stream\r?\n(.*?)endstream", content, re.DOTALL):
        plain = packed.strip()
        try:
            found.append(zlib.decompress(a85decode(plain, adobe=True) if plain.endswith(b"~>") else plain))
        except (ValueError, zlib.error):
            found.append(plain)
    return b"\n".join(found)


def secrets_in(content):
    return [word for word in SPELLED if word.encode() in content or word.encode("utf-16-be") in content]


@pytest.mark.parametrize("reader", tuple(Reader))
@pytest.mark.parametrize("kind", tuple(Kind))
def test_no_print_holds_a_private_figure(reader, kind):
    content = document_bytes(planted(), load_tables(), TODAY, reader, kind)
    whole = streams(content) if kind is Kind.PDF else content
    text = Pdf(content).text.encode() if kind is Kind.PDF else b""
    assert not secrets_in(whole + text)
    if kind is Kind.PDF:
        assert b"Sunroom" in whole or b"Sunroom" in text, "streams were truly unpacked"


def test_prints_are_the_same_with_and_without_private_figures():
    for kind in Kind:
        with_them, without = (
            document_bytes(found, load_tables(), TODAY, Reader.CLIENT, kind)
            for found in (planted(), demo_answer(SUNROOM))
        )
        assert with_them == without


def test_exports_and_chart_data_hold_nothing_private_and_totals_stay():
    found = planted()
    public = replace(found, case=handed_over(found.case))
    assert has_private(found.case)
    assert not has_private(public.case)
    own = [priced(each, load_tables()) for each in (found, public)]
    studies = [quote_study(each, price) for each, price in zip((found, public), own, strict=True)]
    cut = cut_of(found.case)
    assert studies[0].bridges == studies[1].bridges
    from econ.report.look import Look

    look = Look(TODAY, TODAY.year)
    chart = picture.figure(picture.bars(studies[1].bridges[cut]), look).to_json()
    for text in (write_case(public.case), chart, str(compare_json(found))):
        assert not secrets_in(text.encode())
    assert secrets_in(write_case(found.case).encode()), "the words looked for are those that would be there"


def test_own_figures_make_a_sum_for_the_contractor_alone():
    found = planted()
    study = quote_study(found, priced(found, load_tables()))
    pieces = dict(own_cents(found.case.private, study))
    assert pieces["The set"] == 139137
    assert pieces["Hours, ours in count"] == round(100 * 73.19 * study.own.hours_h)
    assert pieces["Overhead"] == round(545000 * 0.2317)
    columns = table(found.case.private, study)
    assert columns["Of the quote"][-1] == "The quote"
    assert "At your own figures" in sentence(found.case.private, study)
    assert table(handed_over(found.case).private, study) == {}


def test_a_quote_below_own_cost_is_told():
    found = planted()
    case = with_value(found.case, "private.labour_usd_per_h", 400)
    study = quote_study(found, priced(found, load_tables()))
    assert "short of what the job costs you" in sentence(case.private, study)


def hostile_case(kind):
    text = HOSTILE[kind]
    lines = "\n".join(f"{text[:120]} {at} 100".replace("\n", " ") for at in range(40))
    case = with_fields(
        demo_case(SUNROOM),
        "offer",
        {"name": text, "lines": lines[:9000], "kinds": None, "returns": text, "filled_in_by": "client"},
    )
    case = with_fields(case, "letterhead", {"business": text, "licence": text, "prepared_for": text})
    case = with_fields(case, "quote", dict.fromkeys(("electrical", "permit", "removal", "warranty"), "not_said"))
    for _ in range(6):
        case = with_quote(case, {"name": text, "total_usd": 4000, "lines": lines[:500]})
    return case


@pytest.mark.parametrize("kind", HOSTILE)
def test_two_pages_stay_two_whatever_was_typed(kind):
    found = answer(hostile_case(kind), load_tables(), TODAY, 0)
    pdf = Pdf(document_bytes(found, load_tables(), TODAY, Reader.CLIENT, Kind.PDF))
    assert len(pdf) == 2
    for at, page in enumerate(pdf.pages):
        width, _ = page.get_size()
        assert all(box.left > 0.0 and box.right < width for box in pdf.boxes(at))
    html = document_bytes(found, load_tables(), TODAY, Reader.CLIENT, Kind.HTML).decode()
    assert not [tag for tag in ("<script", "<b>bold", "<font") if tag in html]


def test_the_client_print_has_the_bridge_the_ticks_and_both_ways():
    content = document(basis(demo_answer(SUNROOM), load_tables(), TODAY), Reader.CLIENT)
    assert any(isinstance(each, Picture) for each in content.blocks)
    heads = [getattr(each, "text", "") for each in content.blocks]
    for head in ("What the quote holds", "Both ways on equal scope", "Quotes on equal scope"):
        assert head in heads


@pytest.mark.parametrize("name", NAMES)
def test_the_client_print_passes_no_verdict_on_the_trade(name):
    text = Pdf(document_bytes(demo_answer(name), load_tables(), TODAY, Reader.CLIENT, Kind.PDF)).text.lower()
    for word in ("rip-off", "overpriced", "too expensive", "cheat", "unfair"):
        assert word not in text


@pytest.mark.parametrize(("day", "is_told"), [(7, False), (8, True)])
def test_a_quote_past_its_day_is_told_on_page_one_of_the_owner(day, is_told):
    printed = TODAY.replace(month=4, day=day)
    content = document(basis(demo_answer(SUNROOM), load_tables(), printed), Reader.OWNER)
    front = [getattr(each, "text", "") for each in content.blocks[:4]]
    assert any("was valid until Wed 7 April" in text for text in front) == is_told
