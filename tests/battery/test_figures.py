"""Every headline figure can be opened: the inputs told of it are those that move it, and no input is dead."""

import re
from functools import cache

import pytest

from econ.case.choices import table_path
from econ.evaluate.figures import FIGURES, figure, formula_of, inputs_behind, strands_behind
from econ.evaluate.prepare import prepared
from econ.evaluate.strands import STRANDS, strand_of
from econ.kernel.errors import UnknownChoiceError
from econ.tables.place import data_root
from tests.battery.figure_cases import EDITED
from tests.battery.moved import BARE, TABLES, edited, moved_by_choice, moved_by_input
from tests.demo import NAMES, TODAY, demo_case

pytestmark = pytest.mark.filterwarnings("ignore:divide by zero")
"""A floor over a heated room has no U-value; one option tried puts it over earth, which no form can."""

PRIMARY = {found.key for found in FIGURES if not found.made_of}

DEAD = {
    "costs.opening_frame_contractor_h": "tasks of window units cannot be given to another party yet",
    "costs.through_wall_fit_contractor_h": "tasks of window units cannot be given to another party yet",
    "costs.window_failures_age_1_per_yr": "a new window unit's first year is covered whole",
    "costs.window_sealed_warranty_yr": "what fails in a window unit is not worth mending, sealed or not",
}
"""Inputs that stand on the sheet and move nothing in any case of the battery, and why."""

UNREAD = {
    "costs.inspection_d": "named by the task list",
    "costs.utility_location_d": "named by the task list",
    "work.run_in_d": "named by the task list",
    "kit.sound_db": "told on the sheet alone, as the label says it; rules look at the outdoor unit",
    "window.sound_db": "told on the sheet alone",
    "work.start_doing": "has one option so far",
    "now.dehumidifier": "asked, and nothing is worked out from it yet",
}
"""Inputs of no figure that no module reads by name, and why."""

CHOICES_TRIED = (
    (BARE, "rooms[0].kind", "living"),
    (BARE, "rooms[0].year_built", 2005),
    ("sunroom", "rooms[0].wall", "block"),
    ("garage", "rooms[0].wall_insulated", "yes"),
    ("sunroom", "rooms[0].glazing", "single"),
    ("sunroom", "rooms[0].shade", "heavy"),
    ("sunroom", "rooms[0].draughts", "leaky"),
    ("lower level", "rooms[0].ground_cover", "paved"),
    ("sunroom", "rooms[0].mass_class", "heavy"),
    ("flat", "kit.size", "24"),
    ("flat", "kit.grade", "economy"),
    ("garage", "hired.size", "18"),
    ("garage", "hired.grade", "cold_climate"),
    ("lower level", "window.size", "10"),
    ("lower level", "window.cycle", "reverse_cycle"),
    ("sunroom", "quote.equipment", "no"),
    ("sunroom", "quote.electrical", "no"),
    ("sunroom", "quote.permit", "no"),
    ("lower level", "quote.removal", "yes"),
    ("garage", "tariff.kind", "flat"),
    ("lower level, stone, roof, by tiers, on a card", "prices.since_2023_frac", 1.3),
    ("sunroom", "money.study_period_yr", 8),
    (BARE, "money.otherwise", "card"),
    ("garage, let, on a loan, every measure", "finance.pays_for", "nothing"),
    ("garage, let, on a loan, every measure", "finance.kind", "card"),
    ("sunroom", "later.replaced_by", "contractor"),
    ("garage, brick on a frame, narrow windows, sold soon", "later.sale_after_yr", 7),
    ("garage, let, on a loan, every measure", "letting.counted", "no"),
    ("garage, let, on a loan, every measure", "letting.split_class", "appliance_5"),
    ("garage, let, on a loan, every measure", "letting.window_class", "residential_27_5"),
    ("garage, let, on a loan, every measure", "letting.bonus_frac", 0.4),
    ("garage, let, on a loan, every measure", "prices.pays_bill", "tenant"),
    ("sunroom", "money.base_case", "keep_as_is"),
    ("garage, let, on a loan, every measure", "kit.line_set_m", "40 ft"),
    ("lower level, all by oneself with a handyman", "kit.extension_allowed", "no"),
)
"""A case, a choice that is taken before numbers are worked out, and another answer to it."""

NOT_TRIED = {"bills.use_fit", "place.decision_doy", "kit.extension_m"}
"""Read the same way; bills have tests of their own, the other two move in batches of other cases."""


@cache
def moved(name):
    """Return what each input of a case of the battery moves."""
    return moved_by_input(edited(name))


@cache
def moved_anywhere():
    """Return what each input moves in any case of the battery, by its path as tables write it."""
    found = {}
    for name in EDITED:
        for path, keys in moved(name).items():
            found.setdefault(table_path(path), set()).update(keys)
    return found


@pytest.mark.parametrize("name", EDITED)
def test_what_an_input_moves_lists_it(name):
    sheet = prepared(edited(name), TABLES, TODAY)[1]
    listed = {found.key: set(inputs_behind(found.key, sheet)) for found in FIGURES}
    unlisted = {(path, key) for path, keys in moved(name).items() for key in keys if path not in listed[key]}
    assert not unlisted


@pytest.mark.parametrize("strand", [each for each in STRANDS if not each.is_chosen], ids=lambda each: each.label)
def test_inputs_of_a_strand_move_what_it_says_they_reach_and_nothing_else(strand):
    keys = set()
    for path, found in moved_anywhere().items():
        keys |= found & PRIMARY if strand_of(path) is strand else set()
    assert keys == set(strand.reaches)


def test_no_input_that_is_told_as_moving_a_figure_is_dead():
    still = {path for path, keys in moved_anywhere().items() if not keys}
    told = {path for path in still if strand_of(path).reaches and not strand_of(path).is_chosen}
    assert told == set(DEAD)


@pytest.mark.parametrize(("name", "path", "value"), CHOICES_TRIED)
def test_a_choice_taken_beforehand_moves_figures_that_list_it_alone(name, path, value):
    strand = strand_of(path)
    assert strand.is_chosen
    keys = moved_by_choice(name, path, value)
    assert keys
    assert keys & PRIMARY <= set(strand.reaches)


def test_every_choice_taken_beforehand_is_tried():
    tried = {table_path(path) for _, path, _ in CHOICES_TRIED}
    assert {path for path in moved_anywhere() if strand_of(path).is_chosen} <= tried | NOT_TRIED


def test_every_input_of_no_figure_is_read_by_name_somewhere():
    code = "\n".join(file.read_text("utf-8") for file in read_files())
    rules = [path for path in moved_anywhere() if not strand_of(path).reaches and not strand_of(path).is_chosen]
    assert len(rules) > 50
    assert {path for path in rules if not is_named(path, code)} == set(UNREAD)


def read_files():
    """Return the modules that may read an input: neither the forms that ask it nor the strands that list it."""
    files = (data_root().parent / "econ").rglob("*.py")
    return [file for file in files if not {"case", "pages"} & set(file.parts) and file.name != "strands.py"]


def is_named(path, code):
    """Return whether an input is named, by its path where its name alone might be any word."""
    name = path.rpartition(".")[2]
    if "_" in name:
        return bool(re.search(rf"\b{name}\b|\b{name.removesuffix('_va')}\b", code))
    return bool(re.search(rf"[\"'.]{name}[\"']", code))


def test_every_input_has_one_strand_and_an_unknown_one_is_refused():
    for name in NAMES:
        for path in prepared(demo_case(name), TABLES, TODAY)[1].path:
            assert strand_of(path) in STRANDS
    with pytest.raises(UnknownChoiceError, match=r"strands.*nothing\.here"):
        strand_of("nothing.here")


@pytest.mark.parametrize("key", [found.key for found in FIGURES])
def test_every_figure_opens_to_formula_and_inputs(key):
    found, told = figure(key), formula_of(key)
    assert found.label
    assert told.summary.startswith("Return ")
    assert strands_behind(key)


def test_keys_are_unique_and_an_unknown_one_is_refused():
    assert len({found.key for found in FIGURES}) == len(FIGURES)
    with pytest.raises(UnknownChoiceError, match="figure"):
        figure("luck")
