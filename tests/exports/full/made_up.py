"""Made-up content of any size, and the order that prints it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from chamberwise.engine.model.library import Library
from chamberwise.engine.model.words import Words
from chamberwise.exports.control.content import Control
from chamberwise.exports.full.content import (
    ON,
    Caution,
    Danger,
    FullPathway,
    Kind,
    Line,
    Source,
    Step,
    Way,
)
from chamberwise.exports.paper.sheet import Page, Sheet
from chamberwise.exports.paper.sizes import Paper, Sized, Turn
from chamberwise.exports.printing.order import Order
from chamberwise.exports.typesetting.measuring import Ruler

DAY = date(2026, 11, 25)
RULER = Ruler()
CONTROL = Control(
    "Made-up pathway",
    "full pathway",
    "made-up",
    "0.1",
    ("Content lead",),
    None,
    None,
    DAY,
    date(2027, 5, 25),
    None,
    DAY,
    "7QK2-M4XP-3",
    tuple("1001" * 5 for _ in range(20)),
)
A4 = Sized(Paper.A4)
SOURCES = (Source(1, "Common practice", "common practice, no source", "unit.example/a-b/c"),)
DANGER = Caution("danger", "A harm is done.", "Do the other thing.", 1, (1,))


def order(sized: Sized = A4, distance: float | None = None) -> Order:
    return Order(Library(Words(), {}), "made-up", sized, CONTROL, DAY, distance, RULER)


def made_up(count: int, *, fan: int = 3, word: str = "part", lines: int = 2) -> FullPathway:
    """Return a pathway of so many steps: questions, actions, a handover, branches, one end."""
    steps = tuple(_step(number, count, fan, word, lines) for number in range(1, count + 1))
    at = tuple(step.number for step in steps if step.cautions)
    dangers = (Danger(DANGER.harm, DANGER.instead, at),) if at else ()
    return FullPathway("made-up", f"The {word}", "When it happens.", 1, dangers, steps, SOURCES)


def _step(number: int, count: int, fan: int, word: str, lines: int) -> Step:
    kinds = (Kind.QUESTION, Kind.ACTION, Kind.BRANCH, Kind.ACTION, Kind.HANDOVER)
    kind = Kind.OUTCOME if number == count else kinds[(number - 1) % len(kinds)]
    said = tuple(
        Line("Surgeon", f"Do {word} {each}.", is_said=each % 2 == 1) for each in range(lines)
    )
    is_action = kind is Kind.ACTION
    return Step(
        of=f"made-up/s{number}",
        number=number,
        kind=kind,
        phase=f"Phase {(number - 1) // 12 + 1} of {word}",
        heading=f"About {word} {number}" if kind is not Kind.QUESTION else f"Is {word} whole?",
        lines=said if is_action or kind is Kind.OUTCOME else (),
        cautions=(DANGER,) if is_action and lines > 1 else (),
        needs=("Sponge",) if is_action else (),
        target="10\u00a0s" if is_action else "",
        why=f"Because of {word}.",
        ways=_ways(kind, number, count, fan, word),
        sources=(1,),
    )


def _ways(kind: Kind, number: int, count: int, fan: int, word: str) -> tuple[Way, ...]:
    if kind is Kind.OUTCOME:
        return ()
    if kind is Kind.ACTION:
        back = (Way("after that", "At most 3\u00a0times, then", count),) if number % 4 == 0 else ()
        return (Way(ON, "Go on", number + 1 if number % 3 else count), *back)
    targets = [min(count, number + each * each + 1) for each in range(fan)]
    return tuple(
        Way(f"a{each}", f"Answer {word} {'ABCDE'[each]}", to, f"Sign of {word}" if each else "")
        for each, to in enumerate(targets)
    )


def sheet(pages: tuple[Page, ...]) -> Sheet:
    return Sheet("Made-up pathway", "full pathway", "en", DAY, pages)


def changed(content: FullPathway, number: int, **changes: object) -> FullPathway:
    """Return the content with one step altered."""
    steps = list(content.steps)
    steps[number - 1] = replace(steps[number - 1], **changes)  # type: ignore[arg-type]
    return replace(content, steps=tuple(steps))


LANDSCAPES = [Sized(each, Turn.LANDSCAPE) for each in (Paper.A4, Paper.A3, Paper.A1)]
EVERY_PAPER = [Sized(each) for each in Paper] + LANDSCAPES
