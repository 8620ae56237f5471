"""A quote's bridge adds up to the cent, whatever the quote and whatever our own items come to."""

from hypothesis import given
from hypothesis import strategies as st

from econ.installation.quote import LINE_KINDS, PRICED_SCOPE, SCOPE
from econ.installation.quote_bridge import STEP_KIND, Part, Said, bridge, shared_cents

CENTS = st.integers(0, 2_000_000)
WORDS = st.sampled_from(("yes", "no", "not_said", "not_known"))
QUOTES = st.builds(
    Said,
    CENTS,
    st.lists(
        st.tuples(st.text(max_size=5), st.sampled_from(LINE_KINDS), st.integers(-50_000, 900_000)), max_size=8
    ).map(tuple),
    st.fixed_dictionaries(dict.fromkeys(SCOPE, WORDS)),
)
OWN = st.dictionaries(
    st.sampled_from(tuple(STEP_KIND)), st.lists(st.builds(Part, st.text(max_size=5), CENTS), min_size=1, max_size=3)
)


@given(QUOTES, OWN, CENTS)
def test_kit_and_steps_are_the_total_and_missing_parts_make_it_whole(said, own, kit):
    found = bridge(said, own, kit)
    assert kit + sum(step.cents for step in found.steps) == said.total_cents
    assert found.whole_cents == said.total_cents + sum(step.cents for step in found.missing)
    assert all(step.parts for step in (*found.steps, *found.missing))
    assert len({step.key for step in found.steps}) == len(found.steps)


@given(QUOTES, OWN, CENTS)
def test_each_line_of_a_quote_stands_in_the_bridge_whole(said, own, kit):
    found = bridge(said, own, kit)
    for kind in said.kinds:
        keys = {key for key, of in STEP_KIND.items() if of == kind} or {kind}
        told = sum(step.cents for step in found.steps if step.origin == "said" and step.key in keys)
        typed = sum(cents for _, of, cents in said.lines if of == kind)
        assert told == typed - (kit if kind == "equipment" else 0)


@given(QUOTES, OWN, CENTS)
def test_what_is_left_out_is_never_nothing_and_never_in_the_total(said, own, kit):
    found = bridge(said, own, kit)
    missing, inside = {step.key for step in found.missing}, {step.key for step in found.steps}
    assert not missing & inside - {"equipment"}
    for part in PRICED_SCOPE:
        if said.scope[part] != "yes" and part not in said.kinds and sum(p.cents for p in own.get(part, ())):
            assert part in missing


@given(st.integers(-10_000_000, 10_000_000), st.lists(st.floats(0.0, 1e9), min_size=1, max_size=12))
def test_shares_are_whole_cents_that_add_up(total, weights):
    shares = shared_cents(total, weights)
    assert sum(shares) == total
    whole = sum(weights)
    if whole > 0.0:
        assert all(abs(share - total * (weight / whole)) <= 1.0 for share, weight in zip(shares, weights, strict=True))
