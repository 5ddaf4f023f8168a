"""A record as plain text: one line a fact, nothing wider than 78 columns but a long address."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from textwrap import wrap

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.language.values import told
from chamberwise.exports.record.content import (
    EntryKind,
    Owed,
    RecordContent,
    RecordedChoice,
    RecordedEntry,
)

WIDTH = 76
_SAID = {
    EntryKind.TAKEN_BACK: N_("Taken back"),
    EntryKind.MADE_AGAIN: N_("Made again"),
    EntryKind.RESUMED: N_("Taken up again after an interruption"),
}


def record_text(record: RecordContent) -> str:
    """Return the record as text that ends in a line end."""
    lines = [*_head(record), "", *_history(record), "", *_end(record)]
    if record.choices:
        lines += ["", _("CHOICES LEFT TO THE UNIT")]
        lines += [line for choice in record.choices for line in _choice(choice, "  - ")]
    if record.sources:
        lines += ["", *_sources(record)]
    return "\n".join([*lines, "", record.standing, ""])


def _head(record: RecordContent) -> Iterator[str]:
    yield record.standing
    yield ""
    yield from _wrapped(_("Record of a walk: "), record.title)
    yield _("Pathway:  {pathway}, edition {edition}").format(
        pathway=record.pathway, edition=record.edition
    )
    yield _("Content:  code {digest}, which changes with any edit of the pathway").format(
        digest=record.digest
    )
    yield _("Status:   {status}").format(status=", ".join(record.marks) or _("approved"))
    ended = _there(record.ended, record.began)
    yield _("Began:    {began}").format(began=f"{record.began:%Y-%m-%d %H:%M:%S}")
    label = _("Ended:    {ended}") if record.finished else _("Left:     {ended} (not finished)")
    yield label.format(ended=f"{ended:%Y-%m-%d %H:%M:%S}")
    yield _("Duration: {span}").format(span=_span(record.duration))
    if offset := record.began.strftime("%z"):
        yield _("Times:    local, {offset}").format(offset=f"UTC{offset[:3]}:{offset[3:5]}")
    if record.remark:
        yield ""
        yield from _wrapped("", record.remark)


def _there(at: datetime, began: datetime) -> datetime:
    """Return a time in the zone the walk began in, so that one zone is told once."""
    return at if began.tzinfo is None or at.tzinfo is None else at.astimezone(began.tzinfo)


def _span(seconds: int) -> str:
    return clock(seconds).removeprefix("0")


def clock(seconds: int) -> str:
    """Return seconds as minutes and seconds, with hours in front where there are any.

    >>> clock(65), clock(3725)
    ('01:05', '1:02:05')
    """
    minutes, rest = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes:02}:{rest:02}"


def _history(record: RecordContent) -> Iterator[str]:
    yield _("WHAT HAPPENED")
    for passed in record.passed_at_start:
        yield from _wrapped("         ", passed)
    for entry in record.entries:
        yield ""
        yield from _entry(entry, _there(entry.at, record.began))


def _entry(entry: RecordedEntry, at: datetime) -> Iterator[str]:
    when = _("{at}, {span} into the walk").format(at=f"{at:%H:%M:%S}", span=_span(entry.elapsed))
    number = f"  {entry.number}." if entry.number else " "
    if entry.kind in _SAID:
        of_step = _(" step {number}").format(number=entry.number) if entry.number else ""
        yield f"{when}  {_(_SAID[entry.kind])}{of_step}"
    elif entry.kind is EntryKind.NOTE:
        yield from _wrapped(f"{when}  " + _("Note: "), entry.text)
    else:
        taken_back = "" if entry.stands else _(" [TAKEN BACK]")
        yield from _wrapped(f"{when}{number} ", f"{entry.phase}{taken_back}")
        yield from _move(entry)


def _move(entry: RecordedEntry) -> Iterator[str]:
    for caution in entry.cautions:
        yield from _wrapped(f"    {told(caution.signal.lower()).upper()}: ", caution.harm)
        yield from _wrapped(_("    Instead: "), caution.instead)
    if entry.asked_again:
        yield from _wrapped("    ", entry.asked_again)
    yield from _asked_or_done(entry)
    for choice in entry.choices:
        yield from _choice(choice, "    ")
    if entry.went_stale:
        yield from _wrapped(_("    May have changed now: "), ", ".join(entry.went_stale))
    for passed in entry.passed:
        yield from _wrapped("    ", passed)


def _asked_or_done(entry: RecordedEntry) -> Iterator[str]:
    if entry.kind is EntryKind.ANSWERED:
        if entry.text:
            yield from _wrapped(_("    Asked:    "), entry.text)
        yield from _wrapped(_("    Answered: "), entry.answer)
        return
    yield from _wrapped(_("    Done: ") if entry.kind is EntryKind.DONE else "    ", entry.text)
    for line in entry.lines:
        yield from _wrapped(f"      {line.who} {line.voice}: ", line.text)


def _choice(choice: RecordedChoice, lead: str) -> Iterator[str]:
    if choice.chosen:
        yield from _wrapped(lead, f"{choice.title}: {choice.chosen} ({choice.by})")
    else:
        yield from _wrapped(lead, _("NOT SET LOCALLY: {title}").format(title=choice.title))


def _end(record: RecordContent) -> Iterator[str]:
    if record.standing_on:
        yield from _wrapped(
            _("OUTCOME: ") if record.finished else _("STOPPED AT: "), record.standing_on
        )
    if record.owed:
        yield ""
        yield _("OWED (tick when done)")
    for owed in record.owed:
        yield from _owed(owed)


def _owed(owed: Owed) -> Iterator[str]:
    by_when = f" ({owed.by_when})" if owed.by_when else ""
    yield from _wrapped("  [ ] ", f"{owed.who}: {owed.what}{by_when}")


def _sources(record: RecordContent) -> Iterator[str]:
    yield _("SOURCES, each with how far it was followed")
    for source in record.sources:
        where = f" {source.where}" if source.where else ""
        yield from _wrapped("  - ", f"{source.cite} [{source.mark_words}]{where}")


def _wrapped(lead: str, text: str) -> list[str]:
    return wrap(
        lead + (text or ""),
        WIDTH,
        subsequent_indent=" " * min(len(lead), 14),
        break_long_words=False,
        break_on_hyphens=False,
        drop_whitespace=True,
        initial_indent="",
    ) or [lead.rstrip()]
