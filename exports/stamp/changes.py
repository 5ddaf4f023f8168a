"""What changed between two contents, told to whoever stands before the printed sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from difflib import SequenceMatcher
from enum import IntEnum
from typing import NamedTuple

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.stamp.copies import KeptStep, Snapshot
from chamberwise.exports.stamp.called_now import called_as_now, new_names
from chamberwise.exports.stamp.kept_words import approval_told, caution_told, line_told, way_told

MOST = 5
LONGEST = 60
"""Signs of one quotation."""


class Weight(IntEnum):
    """What is told first."""

    CAUTION = 1
    STEP = 2
    WAY = 3
    LINE = 4
    WORDING = 5
    STANDING = 6


_COUNTED = {
    Weight.CAUTION: N_("cautions"),
    Weight.STEP: N_("steps"),
    Weight.WAY: N_("ways on"),
    Weight.LINE: N_("lines"),
    Weight.WORDING: N_("wordings"),
    Weight.STANDING: N_("standing"),
}


class _Told(NamedTuple):
    """How a change of one kind is told."""

    changed: str
    removed: str
    added: str


CAUTION = _Told(
    N_("Caution changed: {now}, before {before}."),
    N_("Caution removed: {text}."),
    N_("Caution added: {text}."),
)
LINE = _Told(
    N_("Line changed: {now}, before {before}."),
    N_("Line removed: {text}."),
    N_("Line added: {text}."),
)


class Change(NamedTuple):
    """One change, as a sentence."""

    weight: Weight
    text: str


def changes(old: Snapshot, new: Snapshot) -> tuple[Change, ...]:
    """Return every change, cautions first, each kind in document order."""
    called = called_as_now(old, new)
    apart = new_names(old, called, new)
    found = [
        *_steps(called, new, apart.alike),
        *_unit(old, new),
        *_named(apart.steps, new),
        *_standing(old, new),
    ]
    return tuple(sorted(found, key=lambda change: change.weight))


def in_lines(found: Sequence[Change], most: int = MOST) -> tuple[str, ...]:
    """Return the changes in at most so many lines, the last one counting what is left out."""
    if not found:
        return (
            _(
                "Steps, answers, acts and cautions are the same. Sources, reasons or the meaning "
                "of a word changed."
            ),
        )
    if len(found) <= most:
        return tuple(change.text for change in found)
    left = found[most - 1 :]
    kinds = dict.fromkeys(change.weight for change in left)
    counts = ", ".join(
        f"{_(_COUNTED[kind])} {sum(change.weight == kind for change in left)}" for kind in kinds
    )
    return (
        *(change.text for change in found[: most - 1]),
        _("And {count} more changes: {counts}.").format(count=len(left), counts=counts),
    )


def _steps(old: Snapshot, new: Snapshot, alike: Set[str]) -> Iterator[Change]:
    for place, step in old.steps.items():
        if place not in new.steps:
            yield Change(Weight.STEP, _("Step removed: {says}.").format(says=_quoted(step.says)))
            yield from _cautions(step.says, step.cautions, ())
    for place, step in new.steps.items():
        if place not in old.steps:
            yield Change(Weight.STEP, _("Step added: {says}.").format(says=_quoted(step.says)))
            yield from _cautions(step.says, (), step.cautions)
        elif step != old.steps[place] and place not in alike:
            yield from _step(old.steps[place], step, old, new)


def _unit(old: Snapshot, new: Snapshot) -> Iterator[Change]:
    """Say under which keys the unit's sheet says something else; older registers do not know."""
    if not old.unit or not new.unit:
        return
    names = dict.fromkeys((*old.unit, *new.unit))
    keys = [f"`{name}`" for name in names if old.unit.get(name) != new.unit.get(name)]
    if keys:
        told = _("The unit's sheet says something else under {keys}.").format(keys=", ".join(keys))
        yield Change(Weight.LINE, told)


def _named(places: Sequence[str], new: Snapshot) -> Iterator[Change]:
    if places:
        told = _(
            "Named otherwise in the file: {steps}. Around them reasons, sources, kit and effects "
            "were not compared."
        ).format(steps=", ".join(_quoted(new.steps[place].says) for place in places))
        yield Change(Weight.WORDING, told)


def _step(before: KeptStep, after: KeptStep, old: Snapshot, new: Snapshot) -> Iterator[Change]:
    found = [
        *_cautions(after.says, before.cautions, after.cautions),
        *_reworded(before, after),
        *_ways(before, after, old, new),
        *_lines(after.says, before.lines, after.lines),
    ]
    if not found:
        told = _("{says}: its reason, sources, kit or effects changed.").format(
            says=_quoted(after.says)
        )
        found = [Change(Weight.WORDING, told)]
    yield from found


def _reworded(before: KeptStep, after: KeptStep) -> Iterator[Change]:
    if before.says != after.says and before.lines == after.lines:
        told = _("{before} is now worded {after}.").format(
            before=_quoted(before.says), after=_quoted(after.says)
        )
        yield Change(Weight.WORDING, told)


def _ways(before: KeptStep, after: KeptStep, old: Snapshot, new: Snapshot) -> Iterator[Change]:
    was, is_now = dict(before.ways), dict(after.ways)
    at = _("At {says}").format(says=_quoted(after.says))
    for how, to in was.items():
        if how not in is_now:
            yield Change(
                Weight.WAY,
                _("{at}, {how} is gone; it led to {to}.").format(
                    at=at, how=way_told(how), to=_place(to, old)
                ),
            )
        elif is_now[how] != to:
            leads = _("{at}, {how} leads to {now}, no longer to {before}.").format(
                at=at, how=way_told(how), now=_place(is_now[how], new), before=_place(to, old)
            )
            yield Change(Weight.WAY, leads)
    for how, to in is_now.items():
        if how not in was:
            yield Change(
                Weight.WAY,
                _("{at}, {how} is new and leads to {to}.").format(
                    at=at, how=way_told(how), to=_place(to, new)
                ),
            )


def _cautions(says: str, old: Sequence[str], new: Sequence[str]) -> Iterator[Change]:
    for told in _differences(CAUTION, map(caution_told, old), map(caution_told, new)):
        yield Change(Weight.CAUTION, _("{told} At {says}.").format(told=told, says=_quoted(says)))


def _lines(says: str, old: Sequence[str], new: Sequence[str]) -> Iterator[Change]:
    for told in _differences(LINE, map(line_told, old), map(line_told, new)):
        yield Change(Weight.LINE, _("{told} At {says}.").format(told=told, says=_quoted(says)))


def _differences(of: _Told, before: Iterable[str], after: Iterable[str]) -> Iterator[str]:
    old, new = tuple(before), tuple(after)
    matcher = SequenceMatcher(None, old, new, autojunk=False)
    for _tag, first, last, begins, ends in matcher.get_opcodes():
        was, is_now = old[first:last], new[begins:ends]
        if was == is_now:
            continue
        for one, other in zip(was, is_now, strict=False):
            yield _(of.changed).format(now=_quoted(other), before=_quoted(one))
        yield from (_(of.removed).format(text=_quoted(each)) for each in was[len(is_now) :])
        yield from (_(of.added).format(text=_quoted(each)) for each in is_now[len(was) :])


def _standing(old: Snapshot, new: Snapshot) -> Iterable[Change]:
    if old.approval != new.approval:
        yield Change(
            Weight.STANDING,
            _("Approval: {now}; before: {before}.").format(
                now=approval_told(new.approval), before=approval_told(old.approval)
            ),
        )


def _place(place: str, of: Snapshot) -> str:
    step = of.steps.get(place)
    return _quoted(step.says) if step else f"`{place}`"


def _quoted(text: str) -> str:
    plain = text.rstrip(".")
    if len(plain) > LONGEST:
        plain = plain[:LONGEST].rsplit(" ", 1)[0].rstrip(",;:") + " …"
    return f"“{plain}”"
