"""One document for each reader: two long reports, two pages for a client, and four sheets of one page."""

from collections.abc import Callable
from enum import StrEnum
from typing import Final

from econ.kernel.alternative import ALTERNATIVES, KEEP
from econ.report.document.block import Block, Document
from econ.report.document.content import appendix, costs, first_page, landlord, minding, need, plan
from econ.report.document.content.basis import Basis
from econ.report.document.content.client import client_pages
from econ.report.document.content.failure import failure_blocks
from econ.report.document.content.helper import helper_sheet
from econ.report.document.content.insurer import insurer_sheet
from econ.report.document.content.neighbour import neighbour_sheet
from econ.report.document.content.permit import permit_sheet
from econ.report.document.content.source import sources_of
from econ.report.document.content.words import words_blocks


class Reader(StrEnum):
    """For whom a document is written."""

    OWNER = "owner"
    CLIENT = "client"
    LANDLORD = "landlord"
    PERMIT = "permit"
    INSURER = "insurer"
    NEIGHBOUR = "neighbour"
    HELPER = "helper"


READER_WORDS: Final[dict[Reader, str]] = {
    Reader.OWNER: "You, or your partner",
    Reader.CLIENT: "Client of a contractor",
    Reader.LANDLORD: "Landlord",
    Reader.PERMIT: "Permit office",
    Reader.INSURER: "Insurer",
    Reader.NEIGHBOUR: "Neighbour",
    Reader.HELPER: "Helper on the day",
}
"""Readers as a screen names them."""

ONE_PAGE: Final = (Reader.PERMIT, Reader.INSURER, Reader.NEIGHBOUR, Reader.HELPER)
"""Readers who get a sheet of one page."""

TWO_PAGES: Final = (Reader.CLIENT,)
"""Readers who get two pages."""

MONEYLESS: Final = (Reader.PERMIT, Reader.NEIGHBOUR, Reader.HELPER)
"""Readers whom no money concerns."""


def document(basis: Basis, reader: Reader) -> Document:
    """Return the document for a reader.

    Parameters
    ----------
    basis : Basis
        What it is written from.
    reader : Reader
        For whom.
    """
    title = f"{basis.name}: {READER_WORDS[reader].lower()}"
    return Document(title, tuple(_CONTENTS[reader](basis)), basis.footer, basis.paper)


def _owner(basis: Basis) -> list[Block]:
    return _long(basis, first_page.first_page(basis, "the owner"))


def _landlord(basis: Basis) -> list[Block]:
    return _long(basis, first_page.first_page(basis, "the landlord", landlord.who_pays_blocks(basis)))


def _long(basis: Basis, first: list[Block]) -> list[Block]:
    """Return the report of who decides: page one, costs, need, dates, cautions, appendix."""
    sources = sources_of(basis)
    other = tuple(name for name in ALTERNATIVES if name not in (*basis.told_ways, ALTERNATIVES[KEEP]))
    blocks = [
        *first,
        *costs.compared(basis, costs.ON_PAGE_ONE),
        *costs.not_counted_blocks(basis),
        *costs.first_costs(basis),
        *costs.lines_blocks(basis, sources, basis.told_ways),
        *costs.bridge_blocks(basis),
        *need.need_blocks(basis),
        *need.equipment_blocks(basis),
        *plan.dates_blocks(basis),
        *minding.minding_blocks(basis, other),
        *failure_blocks(basis),
        *appendix.appendix(basis, sources, other),
    ]
    return [*blocks, *words_blocks(blocks)]


_CONTENTS: Final[dict[Reader, Callable[[Basis], list[Block]]]] = {
    Reader.OWNER: _owner,
    Reader.CLIENT: client_pages,
    Reader.LANDLORD: _landlord,
    Reader.PERMIT: permit_sheet,
    Reader.INSURER: insurer_sheet,
    Reader.NEIGHBOUR: neighbour_sheet,
    Reader.HELPER: helper_sheet,
}
