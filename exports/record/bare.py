"""The record of a walk whose pathway is another now: names and times, none of the wording."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.walk.entries import Began, Entry, Moved, Noted, Redone, Resumed, Undone
from chamberwise.exports.record.content import EntryKind, RecordContent, RecordedEntry
from chamberwise.exports.record.extract import SHORT_DIGEST
from chamberwise.exports.record.standing import STANDING

REMARK = N_(
    "The pathway has changed since this walk, or the file at hand is another of the same "
    "name. Answers stand here by the names they had then; wording, cautions and what was "
    "owed are not repeated."
)


def bare_record(journal: Sequence[Entry]) -> RecordContent:
    """Return what can be told of a journal without its content. Its first entry is `Began`."""
    began = journal[0]
    assert isinstance(began, Began)
    return RecordContent(
        standing=_(STANDING),
        pathway=began.pathway,
        title=began.pathway,
        edition=began.edition,
        marks=(_("PATHWAY CHANGED SINCE, OR ANOTHER OF THE SAME NAME"),),
        digest=began.digest[:SHORT_DIGEST],
        began=began.at,
        ended=journal[-1].at,
        finished=False,
        passed_at_start=(),
        entries=tuple(_row(entry, began) for entry in journal[1:]),
        standing_on="",
        owed=(),
        sources=(),
        remark=_(REMARK),
    )


def _row(entry: Entry, began: Began) -> RecordedEntry:
    elapsed = max(0, int((entry.at - began.at).total_seconds()))
    match entry:
        case Moved(at, Answered(answer)):
            return RecordedEntry(EntryKind.ANSWERED, at, elapsed, answer=answer)
        case Noted(at, text):
            return RecordedEntry(EntryKind.NOTE, at, elapsed, text=text)
        case _:
            return RecordedEntry(_KINDS[type(entry)], entry.at, elapsed)


_KINDS: dict[type, EntryKind] = {
    Moved: EntryKind.DONE,
    Undone: EntryKind.TAKEN_BACK,
    Redone: EntryKind.MADE_AGAIN,
    Resumed: EntryKind.RESUMED,
}
