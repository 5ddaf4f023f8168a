"""What cannot be read so is told in full also when it was found in another process."""

from __future__ import annotations

import pickle

from chamberwise.exports.printing.kind import Kind
from chamberwise.exports.printing.printing import UnfitSheetsError
from chamberwise.exports.printing.unfit import UnfitError


def test_an_unfit_sheet_keeps_its_ways_out_on_the_way() -> None:
    found = UnfitError("It is too far.", ("Larger paper.", "Fewer words."))
    handed = pickle.loads(pickle.dumps(found))
    assert (handed.why, handed.ways_out) == (found.why, found.ways_out)
    both = pickle.loads(pickle.dumps(UnfitSheetsError(((Kind.FULL, found),))))
    ((kind, each),) = both.found
    assert (kind, each.why, str(both)) == (Kind.FULL, found.why, "full pathway")
