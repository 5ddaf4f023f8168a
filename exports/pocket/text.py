"""The pocket card as plain text, for a screen reader: all that may stand on it."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.language.values import told
from chamberwise.exports.pocket.content import PocketCard, more_decisions


def text(card: PocketCard) -> str:
    """Return the card from top to bottom."""
    return "\n".join(_lines(card)) + "\n"


def _lines(card: PocketCard) -> Iterator[str]:
    yield from (
        _("{title}: pocket card").format(title=card.title),
        _(FOLLOW),
        card.trigger,
        "",
        _("First"),
    )
    for number, action in enumerate(card.first, 1):
        yield f"{number}. {action.headline}"
        yield from (f"   {who}: {said}" for who, said in action.lines)
    yield from ("", _("Decide"))
    for number, decision in enumerate(card.decisions, 1):
        yield f"{number}. {decision.question}"
        yield from (f"   {each.answers}: {each.leads}." for each in decision.exits)
    left = more_decisions(card, len(card.decisions))
    yield from ([left] if left else [])
    are_set = bool(card.phones) and all(number for _title, number in card.phones)
    yield from ("", _("Call") if are_set else _("Call (numbers NOT SET LOCALLY)"))
    yield from (f"   {call}{f': {number}' if number else ''}" for call, number in card.phones)
    yield from ("", _("Keep safe"))
    yield from (
        f"   {told(each.signal.lower()).upper()} {each.harm} {each.instead}" for each in card.notes
    )
    yield from (
        "",
        _("I rehearse again by: to write in"),
        _("To be reviewed by {day}.").format(day=card.review_by),
    )
