"""The report command: a file by its name, a reader by name, and no file where something is wrong."""

import pypdfium2
import pytest

from econ.__main__ import READERS, main
from econ.report.document.readers import Reader

GOOD = '[place]\nstation = "Yuma Intl Arpt, AZ"\n\n[[rooms]]\nname = "Studio"\nfloor_area_m2 = "24 m**2"\n'


@pytest.fixture
def case_file(tmp_path):
    file = tmp_path / "case.toml"
    file.write_text(GOOD, encoding="utf-8")
    return str(file)


def test_the_command_line_lists_every_reader():
    assert tuple(Reader) == READERS


def test_a_pdf_and_a_page_are_written(case_file, tmp_path, capsys):
    for name in ("mine.pdf", "mine.html"):
        assert main(["report", case_file, "--out", str(tmp_path / name), "--draws", "0", "--reader", "helper"]) == 0
        assert name in capsys.readouterr().out
    assert len(pypdfium2.PdfDocument((tmp_path / "mine.pdf").read_bytes())) == 1
    assert (tmp_path / "mine.html").read_text(encoding="utf-8").startswith("<!doctype html>")


def test_the_same_case_gives_the_same_bytes(case_file, tmp_path):
    for name in ("one.pdf", "two.pdf"):
        assert main(["report", case_file, "--out", str(tmp_path / name), "--draws", "64", "--seed", "3"]) == 0
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


def test_another_ending_is_refused_before_anything_is_worked_out(case_file, tmp_path, capsys):
    assert main(["report", case_file, "--out", str(tmp_path / "mine.docx")]) == 2
    assert "--out | must end in .html or .pdf" in capsys.readouterr().err
    assert not (tmp_path / "mine.docx").exists()


def test_a_faulty_case_writes_nothing(tmp_path, capsys):
    file = tmp_path / "bad.toml"
    file.write_text(GOOD.replace("24 m**2", "-4 m**2"), encoding="utf-8")
    assert main(["report", str(file), "--out", str(tmp_path / "mine.pdf")]) == 2
    assert "rooms[0].floor_area_m2" in capsys.readouterr().err
    assert not (tmp_path / "mine.pdf").exists()


def test_an_unknown_reader_is_refused(case_file, tmp_path, capsys):
    with pytest.raises(SystemExit):
        main(["report", case_file, "--out", str(tmp_path / "mine.pdf"), "--reader", "dog"])
    assert "invalid choice: 'dog'" in capsys.readouterr().err


def test_a_client_is_given_two_pages_without_a_contractors_own_figures(tmp_path, capsys):
    case = tmp_path / "quote.toml"
    assert main(["cases", "--copy", "sunroom_with_quote", str(case)]) == 0
    assert "[private]" in case.read_text(encoding="utf-8")
    file = tmp_path / "client.pdf"
    assert main(["report", str(case), "--out", str(file), "--draws", "0", "--reader", "client"]) == 0
    assert "wrote" in capsys.readouterr().out
    pages = pypdfium2.PdfDocument(file.read_bytes())
    text = "".join(pages[at].get_textpage().get_text_bounded() for at in range(len(pages)))
    assert len(pages) == 2
    assert "This is not a contract." in text
    assert "$62" not in text
    assert "18 %" not in text
