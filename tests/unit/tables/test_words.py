"""The glossary: one short sentence a term, and each form once."""

from collections import Counter

import pytest

from econ.report.words.glossary import short_words
from econ.tables.words import glossary, is_used, terms_used

EACH = pytest.mark.parametrize("term", glossary(), ids=lambda term: term.name)


@EACH
def test_meaning_is_one_sentence_of_20_words_at_most(term):
    assert term.meaning.endswith(".")
    assert term.meaning.count(". ") == 0
    assert len(term.meaning.split()) <= 20


@EACH
def test_term_is_met_in_each_of_its_forms_and_has_a_source(term):
    assert all(is_used(term, f"The {form} here.") for form in term.forms)
    assert term.source


def test_each_form_stands_once():
    assert max(Counter(form for term in glossary() for form in term.forms).values()) == 1


def test_a_term_is_a_whole_word():
    assert [term.name for term in terms_used("A circuit and a short-circuit.")] == ["branch circuit"]
    assert terms_used("Atoning for butter.") == ()


def test_short_forms_are_told_and_plain_words_are_not():
    assert short_words("SEER2 of a unit with its breaker").startswith("SEER2: cooling over a test summer")
    assert "breaker" not in short_words("SEER2 of a unit with its breaker")
