"""Sentences that homeowners read are short: rules, helps, warranties, glossary, and every document."""

import pytest

from econ.case.form import all_fields
from econ.caution.registry import RULES
from econ.installation.warranty import PROOF, VOIDED_BY
from econ.report.document.content.words import texts_of
from econ.report.document.readers import Reader
from econ.tables.tasks import installation_tables
from econ.tables.words import glossary
from tests.demo import NAMES
from tests.reading import MOST_WORDS, mean_length, sentences
from tests.unit.report.document.printed import demo_document

TEXTS = {
    "what rules find": [rule.message for rule in RULES],
    "what rules ask for": [rule.action for rule in RULES],
    "helps of fields": [info.help for info in all_fields()],
    "glossary": [term.meaning for term in glossary()],
    "stops of tasks": [f"{stop}" for table in installation_tables().tasks.values() for stop in table.hold_point],
    "warranties": [f"It wants {text}." for texts in (*PROOF.values(), *VOIDED_BY.values()) for text in texts],
}


@pytest.mark.parametrize("what", TEXTS)
def test_sentences_average_at_most_18_words(what):
    assert 0.0 < mean_length(TEXTS[what]) <= MOST_WORDS


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_no_sentence_of_a_rule_is_longer_than_42_words(rule):
    assert all(len(each.split()) <= 42 for each in sentences(f"{rule.message}\n{rule.action}"))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("reader", list(Reader))
def test_documents_average_at_most_18_words_a_sentence(name, reader):
    blocks = demo_document(name, reader).blocks
    assert 0.0 < mean_length(text for block in blocks for text in texts_of(block)) <= MOST_WORDS


def test_long_sentences_are_seen_and_labels_are_not():
    assert mean_length(["One two three four. Five six seven.", "Label"]) == 3.5
    assert mean_length([" ".join(["word"] * 30) + "."]) == 30.0
