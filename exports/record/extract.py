"""From a walk to the content of its record. This room alone knows the engine; renderers do not."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.model.step import Action, Handover, Question
from chamberwise.engine.walk.entries import Entry, Moved, Noted, Redone, Resumed, Undone
from chamberwise.engine.walk.walk import Walk, fold, make, redo, undo
from chamberwise.exports.record.cautions import cautions_shown
from chamberwise.exports.record.choices import choices_here, choices_met
from chamberwise.exports.record.cited import cited_at
from chamberwise.exports.record.content import (
    EntryKind,
    RecordContent,
    RecordedCaution,
    RecordedEntry,
    RecordedLine,
)
from chamberwise.exports.record.naming import (
    READER,
    answer_label,
    duty_title,
    line_voice,
    step_name,
)
from chamberwise.exports.record.owed import outcomes_reached, owed
from chamberwise.exports.record.passed import told
from chamberwise.exports.record.stale import asked_again, went_stale
from chamberwise.exports.record.standing import STANDING, marks

SHORT_DIGEST = 12


def record_of(walk: Walk, today: date) -> RecordContent:
    """Return the content of a walk's record; `today` decides whether the pathway is expired."""
    pathway = walk.library.pathways[walk.began.pathway]
    places = (*(leg.before.place for leg in walk.legs), walk.state.place, *outcomes_reached(walk))
    return RecordContent(
        standing=_(STANDING),
        pathway=pathway.id,
        title=pathway.title,
        edition=walk.began.edition,
        marks=marks(pathway, today),
        digest=walk.began.digest[:SHORT_DIGEST],
        began=walk.began.at,
        ended=walk.journal[-1].at,
        finished=walk.is_over,
        passed_at_start=told(walk.library, walk.first),
        entries=tuple(_entries(walk)),
        standing_on=step_name(walk.library, walk.state.place),
        owed=owed(walk),
        sources=cited_at(walk.library, dict.fromkeys(places)),
        choices=choices_met(walk),
    )


@dataclass
class _History:
    """A journal told as it is folded again: the rows, and which of them still stand."""

    walk: Walk
    rows: list[RecordedEntry]
    standing: list[int]
    taken_back: list[int]

    def tell(self, entry: Entry) -> None:
        match entry:
            case Moved(at, _):
                self.standing.append(len(self.rows))
                self.taken_back.clear()
                self.rows.append(_moved(self.walk, entry, self._elapsed(at)))
                self.walk = make(self.walk, entry.move, at)
            case Undone(at) if self.standing:
                number = self._turn(self.standing, self.taken_back, stands=False)
                self._add(EntryKind.TAKEN_BACK, at, number=number)
                self.walk = undo(self.walk, at)
            case Redone(at) if self.taken_back:
                number = self._turn(self.taken_back, self.standing, stands=True)
                self._add(EntryKind.MADE_AGAIN, at, number=number)
                self.walk = redo(self.walk, at)
            case Noted(at, text):
                self._add(EntryKind.NOTE, at, text=text)
            case Resumed(at):
                self._add(EntryKind.RESUMED, at)

    def _turn(self, origin: list[int], target: list[int], *, stands: bool) -> int | None:
        place = origin.pop()
        target.append(place)
        self.rows[place] = replace(self.rows[place], stands=stands)
        return self.rows[place].number

    def _add(
        self, kind: EntryKind, at: datetime, number: int | None = None, text: str = ""
    ) -> None:
        self.rows.append(RecordedEntry(kind, at, self._elapsed(at), number, text=text))

    def _elapsed(self, at: datetime) -> int:
        return max(0, int((at - self.walk.began.at).total_seconds()))


def _entries(walk: Walk) -> Iterator[RecordedEntry]:
    history = _History(fold(walk.library, walk.journal[:1]), [], [], [])
    for entry in walk.journal[1:]:
        history.tell(entry)
    yield from history.rows


def _moved(walk: Walk, entry: Moved, elapsed: int) -> RecordedEntry:
    step, place, library = walk.step, walk.state.place, walk.library
    after = make(walk, entry.move, entry.at)
    return RecordedEntry(
        kind=_kind(walk),
        at=entry.at,
        elapsed=elapsed,
        number=len(walk.legs) + 1,
        phase=library.pathways[place.pathway].phases.get(step.phase, step.phase),
        text=step_name(library, place),
        answer=_answer(walk, entry),
        asked_again=asked_again(walk),
        lines=_lines(walk),
        cautions=tuple(
            RecordedCaution(caution.signal.upper(), caution.harm, caution.instead)
            for _where, caution in cautions_shown(library, walk.last)
        ),
        choices=choices_here(walk),
        went_stale=went_stale(library, walk.state, after.state),
        passed=told(library, after.last),
    )


def _kind(walk: Walk) -> EntryKind:
    if isinstance(walk.step, Question):
        return EntryKind.ANSWERED
    return EntryKind.HANDED_OVER if isinstance(walk.step, Handover) else EntryKind.DONE


def _answer(walk: Walk, entry: Moved) -> str:
    step = walk.step
    if not isinstance(step, Question) or not isinstance(entry.move, Answered):
        return ""
    answer = next(each for each in step.answers if each.id == entry.move.answer)
    return answer_label(walk.library.finding(walk.state.place.pathway, step.ask), answer)


def _lines(walk: Walk) -> tuple[RecordedLine, ...]:
    step = walk.step
    if isinstance(step, Handover):
        return (RecordedLine(_(READER), _("says"), step.says),) if step.says else ()
    if not isinstance(step, Action):
        return ()
    words = walk.library.words(walk.state.place.pathway)
    return tuple(
        RecordedLine(duty_title(words, line.who), line_voice(line), line.text)
        for line in step.lines
    )
