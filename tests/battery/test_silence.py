"""Nothing silences a rule: what was signed, dealt with or read stays raised, and every long report prints it."""

import pytest

from econ.case.edit import with_line
from econ.caution.sign import KIND_OF, signers
from econ.report.document.content.basis import basis
from econ.report.document.content.words import texts_of
from econ.report.document.readers import Reader, document
from econ.tables.loaders import load_tables
from econ.uncertainty.answer import answer
from tests.demo import NAMES, TODAY, demo_answer, demo_case

LONG = (Reader.OWNER, Reader.LANDLORD)


@pytest.fixture(scope="module", params=NAMES)
def settled(request):
    """Return a demo case's findings, and the answer once each of them has been recorded as settled."""
    raised = demo_answer(request.param).result.cautions
    case = demo_case(request.param)
    for each in raised:
        line = {"code": each.code, "kind": KIND_OF[each.severity].value, "who": "Ada Name", "date": "2027-03-09"}
        role = signers(each.party)[0][0]
        case = with_line(case, "signed", {**line, "role": role, "note": "As the rule asks."})
    return raised, answer(case, load_tables(), TODAY, 0)


def test_what_was_settled_stays_raised(settled):
    raised, after = settled
    assert [each.code for each in after.result.cautions] == [each.code for each in raised]


@pytest.mark.parametrize("reader", LONG)
def test_every_finding_is_printed_settled_or_not(settled, reader):
    raised, after = settled
    blocks = document(basis(after, load_tables(), TODAY), reader).blocks
    printed = "\n".join(text for block in blocks for text in texts_of(block))
    assert [each.code for each in raised if each.message not in printed] == []
    assert "Ada Name" in printed
