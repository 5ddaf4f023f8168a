"""Texts of 50,000 characters that make careless patterns slow.

A pattern that goes over its input again for every character does not come back in any useful time.
"""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.wording import RULES

_LENGTH = 50_000
_REPEATED = [
    *(" ", "\n", "\t", ",", ";", ".", "!", "-", "'", '"', "“", "‘", "(", "/", "\u00a0"),
    *("a", "A", "µ", "0", "1", "9", "1,", "1.", "1.0", ",000", "1:", "1-", "1 ", "0.0", "1 to "),
    *("1 mg ", "1 mg in ", "1 mg per mL ", "1 mL ", "1.0-", "1.0 to ", "10mg", "1:1000 ", "%1 "),
    *("and ", "then ", "and and, ", ", and ", "that ", "to ", "do ", "do not ", "not ", "no, "),
    *(
        "unless not ",
        "never. ",
        "withdraw ",
        "and withdraw ",
        "; suture it",
        "A. ",
        "OD ",
        "AS AS ",
    ),
    *("lidocaine ", "lidocaine 1 % ", "1 % lido ", "it ", "this ", "normal ", "may ", "should. "),
    *(
        "re-",
        "a-a",
        "slowly ",
        "If, ",
        "if then ",
        "soon as ",
        "< 1 ",
        "+ ",
        "@ ",
        "phone ",
        "12345 ",
    ),
    *("1/1/", "01.01.", "aaal1", "e.g. ", "no. ", ".)", '."', "\n \n", "'a", "“a ", "verify. "),
]


@pytest.mark.parametrize("piece", _REPEATED)
def test_a_long_text_is_read_through(piece: str) -> None:
    long = piece * (_LENGTH // len(piece))
    for text in (f"If {long}!", f"Fill 1{long}x"):
        for rule in RULES:
            assert all(hit.end <= len(text) for hit in rule.find(text)), rule.slug
