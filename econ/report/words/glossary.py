"""What trade terms mean, beside what uses them."""

from functools import lru_cache

from econ.tables.words import Term, terms_used


def meaning(term: Term) -> str:
    """Return a term and what it means, in one line."""
    return f"{term.name}: {term.meaning[:1].lower()}{term.meaning[1:]}"


@lru_cache(maxsize=2048)
def short_words(text: str) -> str:
    """Return what the short forms in a text mean, such as ratings and refrigerants; empty where there are none.

    Examples
    --------
    >>> short_words("The wall U-value moves it most.")
    'U-value: heat that passes through a wall, roof or window per area and degree; lower is better.'
    >>> short_words("The wall moves it most.")
    ''
    """
    return " ".join(meaning(term) for term in terms_used(text) if term.name[:1].isupper())
