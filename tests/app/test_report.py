"""The report page offers a document for each reader, and makes it as asked."""

from econ.report.document.readers import READER_WORDS, Reader
from econ.ui import cached, printing
from tests.app.screen import FULL_DRAWS
from tests.demo import TODAY, demo_case


def test_the_report_page_says_what_each_reader_gets(ready):
    ready.go("report")
    for reader in Reader:
        ready.app.selectbox(key="w_reader").set_value(reader).run()
        assert not ready.app.exception
        one, two = ("permit", "insurer", "neighbour", "helper"), ("client",)
        length = "One page" if reader in one else ("Two pages" if reader in two else "Up to six pages")
        assert length in ready.html
    assert list(ready.app.selectbox(key="w_reader").options) == list(READER_WORDS.values())


def test_both_files_are_offered(ready):
    ready.go("report")
    names = [part.proto.label for part in ready.app.get("download_button")]
    assert names == ["Save as PDF", "Save as a web page"]


def test_the_report_page_waits_for_a_place(screen):
    screen.go("report")
    assert not screen.app.get("download_button")
    assert "A first look comes first" in screen.html


def test_a_file_is_made_on_click(monkeypatch):
    monkeypatch.setattr(printing.state, "units", lambda: "us")
    found = cached.evaluated(demo_case("garage_studio_hot"), cached.tables(), TODAY, draws=FULL_DRAWS)
    made = {kind: printing._bytes(found, Reader.HELPER, kind) for kind in printing.Kind}
    assert made["pdf"].startswith(b"%PDF-")
    assert made["html"].startswith(b"<!doctype html>")


def test_paper_print_and_privacy_are_kept_with_the_case(ready):
    ready.go("report").type("w_paper_address", "12 Some Street")
    ready.choose("w_paper_size", "a4").choose("w_paper_leave_out", "yes")
    again = ready.reloaded().go("report")
    assert again.typed("w_paper_address") == "12 Some Street"
    assert again.app.button_group(key="w_paper_size").value == "a4"
    assert again.app.button_group(key="w_paper_leave_out").value == "yes"
