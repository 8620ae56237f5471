"""How long sentences are: the reading level that homeowners are promised."""

import re
from collections.abc import Iterable

MOST_WORDS = 18.0
"""Words that sentences have on average at most."""

LEAST_WORDS = 3
"""Fewer words are a label, not a sentence; leaving them out makes the mean longer, not shorter."""


def sentences(text: str) -> list[str]:
    """Return the sentences of a text, each up to its full stop or mark; a line without one is a label."""
    parts = (part.strip() for part in re.split(r"(?<=[.?!])\s+|\n", text))
    return [part for part in parts if part.endswith((".", "?", "!")) and len(part.split()) >= LEAST_WORDS]


def mean_length(texts: Iterable[str]) -> float:
    """Return how many words the sentences of texts have on average; each sentence counts once."""
    found = dict.fromkeys(each for text in texts for each in sentences(text))
    return sum(len(each.split()) for each in found) / max(len(found), 1)
