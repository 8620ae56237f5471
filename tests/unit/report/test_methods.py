"""The guide tells what the program itself says of its methods."""

import pytest

from econ.report.methods import PACKAGES, methods


@pytest.mark.parametrize("package", PACKAGES)
def test_every_module_says_what_it_does_in_a_sentence(package):
    found = methods(package)
    assert found
    for method in found:
        assert method.summary.endswith("."), method.name
        assert "\n" not in method.summary


def test_published_sources_are_read_from_docstrings_each_once():
    sources = {method.name: method.references for method in methods("lifecycle")}["lifecycle.landlord"]
    assert any(source.startswith("IRS Publication 946") for source in sources)
    assert len(set(sources)) == len(sources)


def test_domain_rests_on_published_sources():
    named = [source for package in PACKAGES for method in methods(package) for source in method.references]
    assert len(named) > 100
