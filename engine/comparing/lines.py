"""Changes of instructions, spoken words and what is owed: line against line."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Change, Kind, Rating
from chamberwise.engine.comparing.saying import PROCEDURAL, SAFETY, At
from chamberwise.engine.comparing.wording import is_of_the_eye, weighs
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Line

ALIKE = 0.5
"""How much of two texts must be the same for one to be the other, reworded."""
_SIGNS = re.compile(r"[^\w\s]")

Pair = tuple[int, int]


def changes_of_lines(
    old: Sequence[Line], new: Sequence[Line], at: At, kind: Kind = Kind.LINE
) -> Iterator[Change]:
    """Yield the changes between two lists of lines, in the order of the new, what is gone first."""
    pairs = paired(old, new)
    kept_old, kept_new = {one for one, _new in pairs}, {other for _old, other in pairs}
    for place, line in enumerate(old):
        if place not in kept_old:
            yield _alone(line, at.part(_("line {number}").format(number=place + 1)), kind, was=True)
    was_of = {other: old[one] for one, other in pairs}
    for place, line in enumerate(new):
        here = at.part(_("line {number}").format(number=place + 1))
        if place in kept_new:
            yield from _line(was_of[place], line, here, kind)
        else:
            yield _alone(line, here, kind, was=False)
    yield from _order(old, new, pairs, at)


def paired(old: Sequence[Line], new: Sequence[Line]) -> tuple[Pair, ...]:
    """Return which lines are the same line: alike, of one act, or much the same in words."""
    found: dict[int, int] = {}
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    for first, begins, length in matcher.get_matching_blocks():
        found.update((first + each, begins + each) for each in range(length))
    for alike in (_equal, _same_act, _same_words):
        taken = set(found.values())
        for one, line in enumerate(old):
            if one in found:
                continue
            free = (each for each in range(len(new)) if each not in taken)
            other = next((each for each in free if alike(line, new[each])), None)
            if other is not None:
                found[one] = other
                taken.add(other)
    return tuple(sorted(found.items()))


def _equal(one: Line, other: Line) -> bool:
    return one == other


def _same_act(one: Line, other: Line) -> bool:
    return one.act is not None and one.act == other.act


def _same_words(one: Line, other: Line) -> bool:
    both = (_SIGNS.sub("", line.text).lower().split() for line in (one, other))
    return SequenceMatcher(None, next(both), next(both), autojunk=False).ratio() >= ALIKE


def _alone(line: Line, at: At, kind: Kind, *, was: bool) -> Change:
    said = told_line(line)
    before, after = (said, "") if was else ("", said)
    rating, why = how_grave(line)
    return Change(kind, rating, at.where, before, after, why)


def how_grave(line: Line) -> tuple[Rating, str]:
    """Return how much hangs on a line that came or went, and why."""
    if line.act:
        return SAFETY, _("an act came or went")
    if heavy := weighs(line.text):
        return SAFETY, _("a line came or went, and {heavy}").format(heavy=heavy)
    if not line.said_aloud and is_of_the_eye(line.text):
        return SAFETY, _("a line came or went that is done to the eye")
    return PROCEDURAL, _("a line without an act came or went")


def _line(old: Line, new: Line, at: At, kind: Kind) -> Iterator[Change]:
    acts = old.act is not None or new.act is not None
    who = SAFETY if acts else PROCEDURAL
    yield from at.value(Kind.ACT, SAFETY, old.act, new.act, _("rules speak of acts"))
    yield from at.value(Kind.DUTY, who, old.who, new.who, _("somebody else does or says it"))
    yield from at.value(
        Kind.SPOKEN, who, _voice(old), _voice(new), _("it is said aloud instead of done, or done")
    )
    reads = TextKind.SPOKEN if new.said_aloud else TextKind.INSTRUCTION
    of = Kind.SPOKEN if new.said_aloud and kind is Kind.LINE else kind
    yield from at.text(of, reads, old.text, new.text)
    yield from at.text(Kind.WHEN, TextKind.INSTRUCTION, old.when, new.when)
    yield from at.evidence(old.sources, new.sources)


def _order(
    old: Sequence[Line], new: Sequence[Line], pairs: Sequence[Pair], at: At
) -> Iterator[Change]:
    places = [other for _old, other in pairs]
    if places == sorted(places):
        return
    before = tuple(old[one].act or old[one].text for one, _new in pairs)
    after = tuple(new[other].act or new[other].text for other in sorted(places))
    acts_before = [old[one].act for one, other in pairs if old[one].act and new[other].act]
    acts_after = [
        new[other].act
        for one, other in sorted(pairs, key=lambda pair: pair[1])
        if new[other].act and old[one].act
    ]
    grave = acts_before != acts_after
    why = _("acts come in another order") if grave else _("lines come in another order")
    yield from at.value(Kind.ORDER, SAFETY if grave else PROCEDURAL, before, after, why)


def _voice(line: Line) -> str:
    return _("said aloud") if line.said_aloud else _("done")


def told_line(line: Line) -> str:
    """Return a line as text, e.g. `surgeon: Fill the chamber. [fill]`."""
    act = f" [{line.act}]" if line.act else ""
    when = f" ({line.when})" if line.when else ""
    return f"{line.who}: {line.text}{when}{act}"
