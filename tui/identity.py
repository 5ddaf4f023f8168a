"""Notes that may name a patient: a full date, or a number long enough to be one of theirs."""

from __future__ import annotations

import re

from chamberwise.engine.language.texts import N_

LIKE_A_PATIENT = N_("This looks like a patient's date or number.")

_MONTH = "(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_DAY = r"\d{1,2}(?:st|nd|rd|th)?"
_LOOKS = re.compile(
    r"\d{6}"
    r"|\d{3}[ -]\d{3}[ -]\d{4}"
    r"|\b\d{1,4}[./-]\d{1,2}[./-]\d{1,4}\b"
    rf"|\b{_DAY}[ -](?:of )?{_MONTH}[.,]?[ -]\d{{2,4}}\b"
    rf"|\b{_MONTH}\.? {_DAY},? \d{{2,4}}\b",
    re.IGNORECASE,
)


def may_name_a_patient(text: str) -> bool:
    """Whether a note holds a full date, or six digits in a row, or a grouped patient number.

    >>> may_name_a_patient("born 3 March 1950"), may_name_a_patient("lens +21.5 in at 10:32")
    (True, False)
    """
    return _LOOKS.search(text) is not None
