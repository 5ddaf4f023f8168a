"""The panels beside the walk as paragraphs: why and sources, the board, the way so far."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.meaning.state import Freshness
from chamberwise.tui.present.board import BoardRow
from chamberwise.tui.present.choice_page import choice_parts, cited_parts
from chamberwise.tui.present.parts import GAP, Part, Tone, laid_out
from chamberwise.tui.present.step_view import StepView

_TONES = {
    Freshness.KNOWN: Tone.STRONG,
    Freshness.PARTLY: Tone.PLAIN,
    Freshness.STALE: Tone.STALE,
    Freshness.UNKNOWN: Tone.CALM,
}


def why(view: StepView) -> list[Part]:
    """Return why the step is there and what it rests on."""
    parts = [Part(_("Why this step"), "", Tone.MARK)]
    parts.append(Part(view.why or _("The pathway gives no reason for this step."), "  "))
    parts += [GAP, Part(_("What it rests on"), "", Tone.MARK)]
    if not view.sources:
        parts.append(Part(_("No source is named for this step."), "  "))
    parts += cited_parts(view.sources)
    for choice in view.choices:
        parts += [GAP, *choice_parts(choice)]
    return parts


def full_board(rows: Sequence[BoardRow]) -> list[Part]:
    """Return every finding with its state in words, one paragraph each."""
    parts = [_head()]
    parts += [
        Part(row.state_words, f"  {row.title}: ", _TONES[row.freshness], hang=4) for row in rows
    ]
    return parts if rows else [*parts, Part(_("This pathway asks nothing."), "  ")]


def side_board(rows: Sequence[BoardRow], width: int, height: int) -> list[Part]:
    """Return the board for a narrow column that does not scroll, stale findings first.

    Where the column is short, unknown findings are counted, then the air between findings goes,
    then the last of them are counted too.
    """
    told = [row for row in rows if row.freshness is not Freshness.UNKNOWN]
    told.sort(key=lambda row: row.freshness is not Freshness.STALE)
    unknown = [row.title for row in rows if row.freshness is Freshness.UNKNOWN]
    airy = [part for row in told for part in _airy(row)] or [Part(_("nothing yet"))]
    listed = [GAP, Part(_("Unknown"), "", Tone.MARK), *(Part(title, "  ") for title in unknown)]
    counted = [GAP, Part(_("{count} unknown; k lists them").format(count=len(unknown)))]
    for rest in (listed, counted):
        parts = [_head(), *airy, *(rest if unknown else ())]
        if len(laid_out(parts, width)) <= height:
            return parts
    return _close(told, len(unknown), width, height)


def _head() -> Part:
    return Part(_("What is known"), "", Tone.MARK)


def _close(told: list[BoardRow], unknown: int, width: int, height: int) -> list[Part]:
    for shown in range(len(told), -1, -1):
        parts = [_head(), *(_in_one(row) for row in told[:shown]), GAP]
        rest = _("{count} unknown; k lists them").format(count=unknown)
        if shown < len(told):
            rest = _("{known} more known, {unknown} unknown; k lists them").format(
                known=len(told) - shown, unknown=unknown
            )
        parts.append(Part(rest))
        if len(laid_out(parts, width)) <= height:
            break
    return parts


def _in_one(row: BoardRow) -> Part:
    return Part(row.state_words, f"{row.title}: ", _TONES[row.freshness], hang=2)


def _airy(row: BoardRow) -> Iterator[Part]:
    yield GAP
    yield Part(row.title)
    yield Part(row.state_words, "  ", _TONES[row.freshness])


def strip(rows: Sequence[BoardRow]) -> str:
    """Return the board in one sentence: what is stale first, then what is known."""
    return ". ".join(_strip(rows)) or _("Nothing known yet")


def _strip(rows: Sequence[BoardRow]) -> Iterator[str]:
    stale = [
        _("{title} (was {said})").format(title=row.title, said=row.said)
        for row in rows
        if row.freshness is Freshness.STALE
    ]
    if stale:
        yield _("STALE: {stale}").format(stale="; ".join(stale))
    known = [
        f"{row.title}: {row.state_words}"
        for row in reversed(rows)
        if row.freshness in (Freshness.KNOWN, Freshness.PARTLY)
    ]
    if known:
        yield _("Known: {known}").format(known="; ".join(known))
    unknown = sum(row.freshness is Freshness.UNKNOWN for row in rows)
    if unknown:
        yield _("{count} unknown").format(count=unknown)
