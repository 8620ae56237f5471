"""One set of checks over every rule."""

import re

import pytest

from econ.caution.registry import RULES
from econ.caution.rule import FACT_NAMES
from econ.kernel.alternative import ALTERNATIVES
from econ.kernel.caution import Severity, Topic
from econ.kernel.units import suffix_of

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
}
"""Words that may begin with a capital inside a sentence: agencies, laws, standards and units."""

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


def test_rules_average_at_most_18_words_a_sentence():
    text = " ".join(f"{rule.message} {rule.action}" for rule in RULES)
    sentences = [part for part in re.split(r"[.;:]\s", text) if part]
    assert sum(len(part.split()) for part in sentences) / len(sentences) <= 18.0
