"""Mains power: prove dead, circuit, panel, outlets."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, HIRED, SELF, WINDOW, Rule, always
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic


def circuit_is_shared(facts: Facts) -> BoolArray:
    """Return where the circuit meant for the unit feeds other things."""
    return facts.circuit_shared


def circuit_is_unknown(facts: Facts) -> BoolArray:
    """Return where nobody knows what the circuit feeds."""
    return facts.circuit_unknown


def panel_has_no_space(facts: Facts) -> BoolArray:
    """Return where the panel has no free spaces."""
    return facts.panel_lacks


def panel_is_unknown(facts: Facts) -> BoolArray:
    """Return where free spaces in the panel are not known."""
    return facts.panel_unknown


def outlet_is_shared(facts: Facts) -> BoolArray:
    """Return where the window unit's outlet shares its circuit, or that is not known."""
    shared: BoolArray = facts.outlet_shared | facts.outlet_unknown
    return shared


def electrical_is_licensed(facts: Facts) -> BoolArray:
    """Return where owners are not known to be allowed electrical work."""
    return facts.electrical_licensed


POWER_RULES: Final = (
    Rule(
        "electrical.prove_dead",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "The unit, its disconnect and the cable between the two parts carry mains voltage.",
        "Switch off at the panel, lock it, and prove dead with a meter tested just before on a live outlet.",
        "electrician",
        alternatives=SELF,
    ),
    Rule(
        "electrical.stored_charge",
        Topic.WORK,
        Severity.CAUTION,
        always,
        "The outdoor unit keeps a dangerous charge for some minutes after it is switched off.",
        "Wait as many minutes as its label says before opening the cover.",
        "whoever opens the cover",
        alternatives=SELF,
    ),
    Rule(
        "electrical.disconnect_in_sight",
        Topic.WORK,
        Severity.CAUTION,
        always,
        "Whoever opens the outdoor unit must be able to cut its power beside it.",
        "Have the disconnect within sight of the unit and no more than 50 ft away, in reach but not behind it.",
        "electrician",
        "NEC 440.14 and the definition of within sight; text not quoted",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.cable_between_units",
        Topic.WORK,
        Severity.CAUTION,
        always,
        "The cable between indoor and outdoor unit carries mains voltage; a swapped wire can kill the unit or you.",
        "Ask the permit office for its type, its route and who may make it, and join terminal for terminal by the "
        "maker's diagram.",
        "electrician",
        "NEC 110.3(B), the maker's instructions; text not quoted",
        alternatives=SELF,
    ),
    Rule(
        "electrical.covers_closed",
        Topic.WORK,
        Severity.HOLD_POINT,
        always,
        "Terminals are bare until every cover is back on.",
        "Nothing is switched on before all covers and boxes are closed and whoever did the wiring has said so.",
        "electrician",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.extension_cord",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        always,
        "An extension cord or a power strip under a room unit overheats and starts fires.",
        "Plug the unit straight into a grounded outlet, test its plug's safety button, and never cut the ground pin.",
        "you",
        alternatives=WINDOW,
    ),
    Rule(
        "electrical.licensed_work",
        Topic.WORK,
        Severity.CAUTION,
        electrical_is_licensed,
        "It is not known that an owner may do electrical work here, so it is given to an electrician.",
        "Ask the permit office what an owner may do.",
        "you",
        alternatives=SELF,
    ),
    Rule(
        "electrical.shared_circuit",
        Topic.WORK,
        Severity.HOLD_POINT,
        circuit_is_shared,
        "The circuit meant for the unit feeds other things too.",
        "Have an electrician make a circuit of its own, or show from the label that this one may be used.",
        "electrician",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.circuit_unknown",
        Topic.WORK,
        Severity.CAUTION,
        circuit_is_unknown,
        "It is not known what the circuit feeds; a new one is priced.",
        "Switch its breaker off and note what goes dead, then ask the electrician.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.no_panel_space",
        Topic.WORK,
        Severity.CAUTION,
        panel_has_no_space,
        "The panel has no free spaces for a new breaker.",
        "Have an electrician look before you order: paired breakers, a subpanel or another circuit may make room; "
        "two spaces are priced in.",
        "electrician",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.panel_unknown",
        Topic.WORK,
        Severity.NOTE,
        panel_is_unknown,
        "It is not known whether the panel has free spaces; making them is priced in.",
        "Send the electrician a photo of the open panel door.",
        "you",
        alternatives=DUCTLESS,
    ),
    Rule(
        "electrical.window_outlet_shared",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        outlet_is_shared,
        "The unit may share its circuit; then it may draw at most half of what the circuit is rated for.",
        "Compare the label's amperes with the breaker, and use no extension cord.",
        "you",
        alternatives=WINDOW,
    ),
    Rule(
        "electrical.hired_scope",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.quote_lacks_circuit,
        "The quote leaves out the circuit or does not mention it; its usual price is added.",
        "Ask the contractor in writing whether circuit and disconnect are included.",
        "you",
        alternatives=HIRED,
    ),
)
