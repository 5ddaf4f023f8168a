"""Journal lines of other programs and of other times are refused, politely."""

from __future__ import annotations

import json
from datetime import UTC, datetime

import pytest
from chamberwise.engine.meaning.state import Answered, Done
from chamberwise.engine.walk.codec import UnreadableEntryError, decode, encode
from chamberwise.engine.walk.entries import Began, Moved, Noted, Resumed
from hypothesis import given
from hypothesis import strategies as st

NOW = datetime(2026, 11, 25, 9, 30, tzinfo=UTC)
AT = '"at": "2026-11-25T09:30:00+00:00"'

REFUSED = [
    "",
    "{",
    "[]",
    "null",
    "1",
    '"text"',
    "{}",
    f"{{{AT}}}",
    '{"undone": true}',
    '{"at": "yesterday", "undone": true}',
    '{"at": 5, "undone": true}',
    f'{{{AT}, "danced": true}}',
    f'{{{AT}, "moved": "dry"}}',
    f'{{{AT}, "moved": "answer"}}',
    f'{{{AT}, "moved": []}}',
    f'{{{AT}, "moved": {{}}}}',
    f'{{{AT}, "moved": {{"done": false}}}}',
    f'{{{AT}, "moved": {{"skipped": true}}}}',
    f'{{{AT}, "began": "one", "edition": "1", "digest": "d"}}',
    f'{{{AT}, "began": "one", "edition": "1", "digest": "d", "format": 2}}',
    f'{{{AT}, "began": "one", "edition": "1", "digest": "d", "format": "1"}}',
    f'{{{AT}, "began": "one", "format": 1}}',
    "[" * 100_000,
]


@pytest.mark.parametrize("line", REFUSED, ids=range(len(REFUSED)))
def test_what_is_no_entry_of_this_format_is_refused(line: str) -> None:
    with pytest.raises(UnreadableEntryError, match="not a journal entry") as refusal:
        decode(line)
    assert len(str(refusal.value)) < 100


@given(
    st.text()
    | st.recursive(
        st.none() | st.booleans() | st.integers() | st.text(),
        lambda each: (
            st.lists(each)
            | st.dictionaries(st.sampled_from(["at", "moved", "answer", "began"]), each)
        ),
    ).map(json.dumps)
)
def test_no_line_whatever_raises_anything_else(line: str) -> None:
    try:
        decode(line)
    except UnreadableEntryError:
        return


def test_a_line_reads_as_a_person_would_write_it() -> None:
    assert encode(Moved(NOW, Answered("dry"))) == f'{{{AT}, "moved": {{"answer": "dry"}}}}'
    assert encode(Moved(NOW, Done())) == f'{{{AT}, "moved": {{"done": true}}}}'
    assert encode(Resumed(NOW)) == f'{{{AT}, "resumed": true}}'
    assert encode(Noted(NOW, "naïve\nnote")) == f'{{{AT}, "noted": "naïve\\nnote"}}'


def test_what_stands_beside_an_entry_does_not_matter() -> None:
    line = f'{{{AT}, "began": "one", "edition": "1", "digest": "d", "format": 1, "by": "x"}}'
    assert decode(line) == Began(NOW, "one", "1", "d")
