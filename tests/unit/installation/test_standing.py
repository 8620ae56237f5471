"""How each route stands, and why."""

from dataclasses import replace

import pytest

from econ.installation.standing import (
    SiteAnswers,
    contracted_install_standing,
    self_install_standing,
)
from econ.kernel.alternative import Standing

FREE = SiteAnswers("owner_lives_here", "needed", "none", "yes", "above_grade", (), ())


def test_an_owner_with_a_free_site_stands_open():
    assert self_install_standing(FREE).standing == Standing.OPEN
    assert self_install_standing(FREE).reasons == ()


def test_a_licensed_party_for_part_of_it_is_with_help_and_is_named():
    found = self_install_standing(replace(FREE, licensed_tasks=("Run the circuit",), locks=("Needs a licence.",)))
    assert found.standing == Standing.WITH_HELP
    assert found.reasons == ("Needs a licence.", "Done by a licensed party: Run the circuit.")


@pytest.mark.parametrize(
    "changed",
    [
        {"association": "refused"},
        {"owner_may_mechanical": "no"},
        {"occupancy": "owner_lets", "owner_may_mechanical": "not_known"},
        {"occupancy": "not_known", "owner_may_mechanical": "not_known"},
        {"occupancy": "tenant", "owner_may_mechanical": "not_known"},
    ],
)
def test_self_installation_is_not_allowed_and_says_why(changed):
    found = self_install_standing(replace(FREE, **changed))
    assert found.standing == Standing.NOT_ALLOWED
    assert found.reasons


def test_a_let_flat_with_refusal_gives_every_reason_gravest_first():
    site = replace(
        FREE, occupancy="owner_lets", owner_may_mechanical="no", association="consent_needed", locks=("Too high.",)
    )
    reasons = self_install_standing(site).reasons
    assert reasons[0].startswith("Mechanical work here")
    assert any("association must agree" in reason for reason in reasons)
    assert reasons[-1] == "Too high."


@pytest.mark.parametrize(("permit", "standing"), [("needed", Standing.UNKNOWN), ("not_needed", Standing.OPEN)])
def test_an_unknown_rule_on_owners_matters_only_with_a_permit(permit, standing):
    assert self_install_standing(replace(FREE, owner_may_mechanical="not_known", permit=permit)).standing == standing


@pytest.mark.parametrize(
    ("association", "standing"),
    [
        ("none", Standing.OPEN),
        ("consent_needed", Standing.OPEN),
        ("refused", Standing.NOT_ALLOWED),
        ("not_known", Standing.UNKNOWN),
    ],
)
def test_only_consent_decides_on_hiring(association, standing):
    assert contracted_install_standing(replace(FREE, association=association)).standing == standing


def test_a_tenant_needs_the_landlord():
    assert "landlord" in contracted_install_standing(replace(FREE, occupancy="tenant")).reasons[0]


@pytest.mark.parametrize(
    ("changed", "words"),
    [({"permit": "refused"}, "permit was refused"), ({"hole": "below_grade"}, "through the rim")],
)
@pytest.mark.parametrize("way", [self_install_standing, contracted_install_standing])
def test_a_refused_permit_or_a_hole_below_the_ground_shuts_both_ductless_ways(changed, words, way):
    found = way(replace(FREE, **changed))
    assert found.standing == Standing.NOT_ALLOWED
    assert words in found.reasons[0]


@pytest.mark.parametrize("hole", ["above_grade", "through_rim", "not_known"])
def test_a_hole_above_the_ground_or_not_yet_chosen_shuts_nothing(hole):
    assert contracted_install_standing(replace(FREE, hole=hole)).standing == Standing.OPEN
