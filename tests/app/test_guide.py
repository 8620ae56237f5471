"""The guide walks through a ready-made case and tells methods and sources."""

from econ.report.methods import PACKAGES
from econ.ui import cached


def test_guide_tells_the_answer_of_its_case_and_opens_a_copy(screen):
    screen.go("guide")
    assert "A case to walk through: Lower level, electric heat" in [part.value for part in screen.app.subheader]
    screen.click("guide_open")
    assert screen.app.session_state["case"].record.name == "Lower level, electric heat"
    assert screen.app.session_state["saved"].head == 1


def test_guide_counts_methods_and_tables(screen):
    labels = [part.label for part in screen.go("guide").app.expander]
    assert sum("methods" in label for label in labels) == len(PACKAGES)
    assert any(label.startswith(f"{len(cached.tables().records)} tables") for label in labels)


def test_first_page_leads_to_the_other_ways_in(screen):
    links = [part.proto.page for part in screen.go("first_look").app.get("page_link")]
    assert len([link for link in links if link.split("/")[-1] in ("quote", "rooms", "guide")]) == 3
