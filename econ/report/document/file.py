"""A document as the bytes of a file: HTML or PDF by the file's name."""

from collections.abc import Callable
from datetime import date
from enum import StrEnum
from pathlib import PurePath
from typing import Final

from econ.kernel.errors import CaseError, Fault
from econ.report.document.block import Document
from econ.report.document.content.basis import basis
from econ.report.document.html import html_text
from econ.report.document.readers import Reader, document
from econ.report.numbers import UnitSystem
from econ.tables.loaders import Tables
from econ.uncertainty.answer import Answer


class Kind(StrEnum):
    """Kind of file, by its ending."""

    HTML = "html"
    PDF = "pdf"


def kind_of(file: str) -> Kind:
    """Return the kind of a file by its name.

    Raises
    ------
    CaseError
        If it ends in neither .html nor .pdf.

    Examples
    --------
    >>> kind_of("mine.PDF").value
    'pdf'
    """
    ending = PurePath(file).suffix.lower().removeprefix(".")
    if ending not in tuple(Kind):
        raise CaseError([Fault("--out", "must end in .html or .pdf", file, "Name the file so.")])
    return Kind(ending)


def document_bytes(
    answer: Answer, tables: Tables, printed: date, reader: Reader, kind: Kind, units: UnitSystem = UnitSystem.US
) -> bytes:
    """Return the document of an answer for a reader, as a file holds it.

    Parameters
    ----------
    answer : Answer
        The answer to a case.
    tables : Tables
        What it was worked out from.
    printed : date
        Day of printing.
    reader : Reader
        For whom.
    kind : Kind
        HTML or PDF.
    units : UnitSystem
        Units of the reader.
    """
    return written(document(basis(answer, tables, printed, units), reader), kind)


def written(content: Document, kind: Kind) -> bytes:
    """Return a document as a file holds it."""
    return _WRITERS[kind](content)


def _html(content: Document) -> bytes:
    return html_text(content).encode("utf-8")


def _pdf(content: Document) -> bytes:
    from econ.report.document.pdf import pdf_bytes

    return pdf_bytes(content)


_WRITERS: Final[dict[Kind, Callable[[Document], bytes]]] = {Kind.HTML: _html, Kind.PDF: _pdf}
