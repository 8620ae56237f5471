"""What hole and outdoor unit meet: cladding, fire walls, tensioned concrete, buried lines, flood and salt."""

from typing import Final

from econ.caution.facts import Facts
from econ.caution.rule import DUCTLESS, Rule
from econ.caution.wall import ASBESTOS_YR
from econ.kernel.arrays import BoolArray
from econ.kernel.caution import Severity, Topic

FIRE_CODE: Final = "International Residential Code R302 (from memory); the local code decides"


def shingles_may_hold_asbestos(facts: Facts) -> BoolArray:
    """Return where the cladding is cement shingles of the years of suspect materials, or of an unknown year."""
    suspect: BoolArray = facts.has_cement_shingles & ~(facts.built_yr >= ASBESTOS_YR)
    return suspect


def neighbour_hears_it(facts: Facts) -> BoolArray:
    """Return where the outdoor unit is louder at the boundary than is asked there; not measured raises nothing."""
    loud: BoolArray = facts.boundary_db > facts.boundary_most_db
    return loud


OUTSIDE_RULES: Final = (
    Rule(
        "wall.foam_stucco",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.has_foam_stucco,
        "Stucco on foam carries nothing, and water that gets behind it rots the wall unseen.",
        "Fix to the frame behind it with spacers, sleeve and flash the hole, and seal it as the wall's maker says.",
        "contractor",
        alternatives=DUCTLESS,
    ),
    Rule(
        "wall.asbestos_siding",
        Topic.WORK,
        Severity.HOLD_POINT,
        shingles_may_hold_asbestos,
        "Cement shingles of that time often hold asbestos; drilling or breaking one sets fibres free.",
        "Have a piece tested by a laboratory first; if it holds asbestos, a licensed person makes the hole.",
        "accredited tester",
        "common practice, no source; the state's asbestos office decides",
        ("built_yr",),
        DUCTLESS,
    ),
    Rule(
        "wall.fire_rated",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.is_fire_wall,
        "The hole goes through a wall that holds back fire: to a garage, a neighbour or a shared hall.",
        "Close it with a listed firestop system for pipes and cables of this size, and have it seen before it is "
        "covered.",
        "contractor",
        FIRE_CODE,
        alternatives=DUCTLESS,
    ),
    Rule(
        "wall.fire_unknown",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.fire_wall_unknown,
        "It is not known whether the wall to be drilled holds back fire.",
        "Ask the building or permit office before you drill; a wall to a garage or a neighbour usually does.",
        "you",
        FIRE_CODE,
        alternatives=DUCTLESS,
    ),
    Rule(
        "drilling.tensioned_concrete",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.is_poured,
        "Poured concrete may hold steel bars, or cables under tension that can kill when cut.",
        "Find them by drawing and scan first; where cables may be tensioned, nobody drills before an engineer agrees.",
        "engineer",
        alternatives=DUCTLESS,
    ),
    Rule(
        "digging.buried_lines",
        Topic.WORK,
        Severity.HOLD_POINT,
        lambda facts: facts.on_pad,
        "Gas, power, water or telephone lines may lie where a pad, a post or a trench goes.",
        "Call 811 some working days before, wait for the marks, and dig by hand beside them.",
        "whoever digs",
        "state one-call laws; 811 is the national number (from memory)",
        alternatives=DUCTLESS,
    ),
    Rule(
        "placement.flood",
        Topic.WORK,
        Severity.CAUTION,
        lambda facts: facts.is_flooded,
        "Water may stand where the outdoor unit would; a unit that was under water is lost and not safe to start.",
        "Set unit, disconnect and outlet above the flood level that the permit office names.",
        "whoever sets the outdoor unit",
        "common practice, no source; the local flood map decides",
        ("outdoor_height_m",),
        DUCTLESS,
    ),
    Rule(
        "placement.neighbour_noise",
        Topic.WORK,
        Severity.CAUTION,
        neighbour_hears_it,
        "At the boundary the outdoor unit may be louder by night than is usually allowed.",
        "Ask the town for its night limit, move the unit or turn it away, and tell the neighbour first.",
        "you",
        "ISO 9613-2, spreading alone; the limit is common practice, no source: the local rule decides",
        ("boundary_db", "boundary_most_db"),
        DUCTLESS,
    ),
    Rule(
        "placement.salt_air",
        Topic.EQUIPMENT,
        Severity.CAUTION,
        lambda facts: facts.in_salt_air,
        "Salt in the air eats coils and cases; many warranties leave it out.",
        "Ask the maker for a coated coil and what the warranty says, rinse the coil with fresh water, and expect a "
        "shorter life.",
        "you",
        alternatives=DUCTLESS,
    ),
)
