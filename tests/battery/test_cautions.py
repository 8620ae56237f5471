"""One set of checks over every rule."""

import re
from pathlib import Path

import pytest
from pydantic import ValidationError

from econ.case.sections.signed import SignOff
from econ.caution.registry import RULES
from econ.caution.rule import FACT_NAMES
from econ.caution.sign import KIND_OF, Kind, signers
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.caution import Severity, Topic
from econ.kernel.units import suffix_of
from econ.tables.stops import ASIDE, STAR, stop_table
from econ.tables.tasks import installation_tables

CAPITALS = {
    "US",
    "NEC",
    "B",
    "F",
    "September",
    "EPA",
    "CFR",
    "IEC",
    "NIOSH",
    "Clean",
    "Air",
    "Act",
    "Renovation",
    "Repair",
    "Painting",
}
CAPITALS |= {
    "Guide",
    "R",
    "Radon",
    "A",
    "GG",
    "Publication",
    "International",
    "Residential",
    "Code",
    "R310",
    "M1411",
    "Ci",
    "L",
    "Citizen's",
    "R302",
}
"""Words that may begin with a capital inside a sentence: agencies, laws, standards and units."""

TESTS = Path(__file__).parents[1] / "unit" / "caution"
"""Where each rule is tried just below, at and just above what raises it."""

EACH = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)


def test_codes_are_unique():
    assert len({rule.code for rule in RULES}) == len(RULES)


@EACH
def test_code_is_dotted_and_stable_in_form(rule):
    assert re.fullmatch(r"[a-z_]+\.[a-z_]+", rule.code)


@EACH
def test_rule_says_what_was_found_what_to_do_who_must_and_why(rule):
    assert rule.message.endswith(".")
    assert rule.action.endswith(".")
    assert rule.party
    assert rule.source
    assert rule.message != rule.action


@EACH
def test_a_test_tries_the_rule(rule):
    tried = "".join((TESTS / f"test_{name}.py").read_text(encoding="utf-8") for name in ("thresholds", "claims"))
    assert f'"{rule.code}"' in tried


@EACH
def test_topic_severity_and_routes_are_known(rule):
    assert rule.topic in Topic
    assert rule.severity in Severity
    assert set(rule.alternatives) <= set(ALTERNATIVES)


@EACH
def test_evidence_are_facts_with_a_unit(rule):
    assert set(rule.evidence) <= set(FACT_NAMES)
    assert all(suffix_of(name) is not None for name in rule.evidence)


@EACH
def test_text_names_no_maker(rule):
    for text in (rule.message, rule.action, rule.source):
        inside = re.findall(r"(?<![.:;] )(?<!^)\b([A-Z][\w']*)", text)
        assert set(inside) <= CAPITALS, inside


@EACH
def test_sentences_are_short_enough_to_read_on_a_site(rule):
    for sentence in re.split(r"[.;:]\s", f"{rule.message} {rule.action}"):
        assert len(sentence.split()) <= 28, sentence


@EACH
def test_a_hold_point_never_offers_a_way_round(rule):
    if rule.severity == Severity.HOLD_POINT:
        assert not re.search(r"\b(skip|ignore|anyway|bypass)\b", f"{rule.message} {rule.action}".lower())


@EACH
def test_a_hold_point_stands_before_a_step_of_each_way_it_concerns(rule):
    if rule.severity != Severity.HOLD_POINT:
        return
    where = stop_table().of(rule.code)
    assert where is not None, f"{rule.code} needs a row in data/installation/stops.csv"
    if where.before == (ASIDE,):
        return
    ways = rule.alternatives or tuple(way for way in ALTERNATIVES if way != "keep_as_is")
    for way in ways:
        assert set(where.before) & set(installation_tables().tasks[way].key), f"{rule.code}: no step of {way}"


@EACH
def test_a_finding_is_settled_in_one_way_alone(rule):
    """A note is read, a caution dealt with, a stop signed; nothing else is taken, and the rule stays raised."""
    given = {"who": "A. Name", "role": "owner", "date": "2027-03-01", "note": "As asked."}
    taken = [kind for kind in Kind if _is_taken({"code": rule.code, "kind": kind.value, **given})]
    assert taken == [KIND_OF[rule.severity]]
    assert all(signers(rule.party))


def _is_taken(line):
    try:
        SignOff.model_validate(line)
    except ValidationError:
        return False
    return True


def test_places_of_findings_name_rules_and_steps_that_are_there():
    codes = {rule.code for rule in RULES}
    steps = {step for way in ALTERNATIVES for step in installation_tables().tasks[way].key}
    for code, where in stop_table().rows.items():
        assert code in codes or code.endswith(f".{STAR}") or code.removeprefix("step.") in steps, code
        assert set(where.before) <= {*steps, ASIDE}, code


def test_rules_average_at_most_18_words_a_sentence():
    text = " ".join(f"{rule.message} {rule.action}" for rule in RULES)
    sentences = [part for part in re.split(r"[.;:]\s", text) if part]
    assert sum(len(part.split()) for part in sentences) / len(sentences) <= 18.0
