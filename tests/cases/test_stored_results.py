"""Results of the demo cases stay what they were, until the version of the numbers says that they moved."""

import json

import pytest

from econ.evaluate.version import RESULTS_VERSION
from tests.cases.remake import FOLDER, document
from tests.demo import NAMES


def differences(ours, stored, where=""):
    """Yield every place in which two documents differ, numbers by more than rounding."""
    if isinstance(stored, dict) and isinstance(ours, dict):
        for key in sorted(set(ours) | set(stored)):
            yield from differences(ours.get(key), stored.get(key), f"{where}.{key}")
    elif isinstance(stored, list) and isinstance(ours, list) and len(ours) == len(stored):
        for at, (one, other) in enumerate(zip(ours, stored, strict=True)):
            yield from differences(one, other, f"{where}[{at}]")
    elif not is_same(ours, stored):
        yield where, ours, stored


def is_same(ours, stored):
    """Return whether two leaves are the same, numbers but for rounding."""
    if isinstance(stored, float) and isinstance(ours, float):
        return ours == pytest.approx(stored, rel=1e-6, abs=1e-6)
    return ours == stored


@pytest.mark.parametrize("name", NAMES)
def test_stored_results_are_given_again(name):
    stored = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    assert stored["compare"]["results_version"] == RESULTS_VERSION
    assert list(differences(json.loads(json.dumps(document(name))), stored)) == []


def test_a_moved_number_is_found():
    assert list(differences({"a": [1.0, {"b": 2.0}]}, {"a": [1.0, {"b": 2.1}]})) == [(".a[1].b", 2.0, 2.1)]
