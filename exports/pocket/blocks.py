"""The texts of a pocket card and how they are set. Action text is 10 points or more."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.flow.block import Block, Group, Panel, plain
from chamberwise.exports.flow.holding import unparted
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.inks import Ink
from chamberwise.exports.paper.sheet import Role, Run, Style, Weight
from chamberwise.exports.pocket.content import Decision, FirstAction, Note, PocketCard

TITLE = Style(14, Weight.BOLD, pitch=1.25)
HEAD = Style(11, Weight.BOLD)
STEP = Style(10.5, Weight.BOLD)
BODY = Style(10)
REMARK = Style(9.2, ink=Ink.GREY)
INDENT = 6.0


def title_group(card: PocketCard) -> Group:
    """Return the title and when the card is for."""
    title = Block(plain(card.title), TITLE, Role.TITLE)
    trigger = Block(plain(card.trigger), BODY, Role.LINE, before=1.2)
    return Group((title, trigger), 3.0)


def heading(text: str) -> Group:
    """Return the heading of a part, on a band of its own."""
    band = Panel(Ink.WASH, Ink.WASH, 0, 1.0)
    return Group((Block(plain(text), HEAD, Role.HEADING),), 1.6, keeps_next=True, panel=band)


def first_groups(actions: Iterable[FirstAction], told: int) -> list[Group]:
    """Return the first actions, numbered; who does what stands with the first so many."""
    return [_first(number, each, number <= told) for number, each in enumerate(actions, 1)]


def decision_groups(decisions: Iterable[Decision]) -> list[Group]:
    """Return each question with its answers and where they lead."""
    return [_decision(number, each) for number, each in enumerate(decisions, 1)]


def call_groups(phones: Iterable[tuple[str, str]]) -> list[Group]:
    """Return who is called, each with the number, or with a place for it."""
    several = tuple(phones) or ((_("Help"), ""),)
    blocks = [_call(*each) for each in several]
    if not all(number for _call_title, number in several):
        unset = Block(plain(_("Numbers NOT SET LOCALLY: write them in.")), REMARK, Role.NOTE)
        blocks.insert(0, unset)
    return [Group(tuple(blocks), 2.6)]


def _call(call: str, number: str) -> Block:
    if not number:
        return Block(plain(call), BODY, before=1.4, to_write=True)
    return Block((Run(f"{call}: ", Weight.MEDIUM), Run(number)), BODY, before=1.4)


def note_groups(notes: Iterable[Note]) -> list[Group]:
    """Return the safety notes, each with the right thing to do."""
    return [_note(each) for each in notes]


def remark(text: str) -> Group:
    """Return what the card says of itself."""
    return Group((Block(plain(text), REMARK, Role.NOTE),), 2.0)


def due_group(review_by: str) -> Group:
    """Return the dates: until when the content holds, and when its owner rehearses again."""
    due = Block(plain(_("I rehearse again by")), BODY, to_write=True)
    until = Block(
        plain(_("Content to be reviewed by {day}.").format(day=unparted(review_by))),
        BODY,
        before=1.0,
    )
    return Group((due, until), 0.0)


def _first(number: int, action: FirstAction, has_lines: bool) -> Group:
    head = Block(
        plain(action.headline), STEP, Role.STEP, action.of, indent=INDENT, lead=f"{number}"
    )
    lines = [
        Block((Run(f"{who}: ", Weight.MEDIUM), Run(text)), BODY, indent=INDENT, before=1.1)
        for who, text in action.lines
    ]
    return Group((head, *(lines if has_lines else ())), 2.0)


def _decision(number: int, decision: Decision) -> Group:
    asked = Block(
        plain(decision.question), STEP, Role.QUESTION, decision.of, INDENT, lead=f"{number}"
    )
    exits = [
        Block(
            (Run(f"{each.answers}: ", Weight.MEDIUM), Run(f"{each.leads}.")),
            BODY,
            Role.ANSWER,
            each.of,
            indent=INDENT,
            before=1.2,
        )
        for each in decision.exits
    ]
    return Group((asked, *exits), 2.4)


def _note(note: Note) -> Group:
    harm = Block(
        (Run(f"{told(note.signal.lower()).upper()} ", Weight.BOLD), Run(note.harm)),
        BODY,
        Role.CAUTION,
    )
    return Group((harm, Block(plain(note.instead), BODY, Role.CAUTION, before=1.0)), 1.8)
