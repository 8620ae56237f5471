"""What a quote leaves out."""

import pytest

from econ.installation.quote import SCOPE, missing_scope


@pytest.mark.parametrize("word", ["no", "not_said", "not_known"])
def test_what_is_not_said_counts_as_missing(word):
    assert missing_scope({**dict.fromkeys(SCOPE, "yes"), "permit": word}) == ("permit",)


def test_a_whole_quote_misses_nothing():
    assert missing_scope(dict.fromkeys(SCOPE, "yes")) == ()
