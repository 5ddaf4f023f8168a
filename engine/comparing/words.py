"""Changes of shared or own words: findings, acts, duties, kit, sources and safety rules."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Any

from chamberwise.engine.checks.wording.rule import TextKind
from chamberwise.engine.comparing.change import Change, Kind, Rating, Where
from chamberwise.engine.comparing.saying import EDITORIAL, PROCEDURAL, SAFETY, At, effects
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.rule import HarmSeverity, Rule
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import Act, Duty, Finding, KitItem, Source, Value, Words

ASKS_OTHERWISE = N_("the rule asks for something else")


def changes_of_words(old: Words, new: Words, pathway: PathwayId | None) -> Iterator[Change]:
    """Yield the changes between two sets of definitions, table by table."""
    for table, kind, rating, differ in _TABLES:
        before: Mapping[str, Any] = getattr(old, table)
        after: Mapping[str, Any] = getattr(new, table)
        for name in before:
            if name not in after:
                here = Where(pathway, table, name)
                yield Change(kind, rating, here, _title(before[name]), "", _("it is gone"))
        for name, word in after.items():
            here = Where(pathway, table, name)
            if name not in before:
                yield Change(kind, rating, here, "", _title(word), _("it is new"))
            elif before[name] != word:
                yield from differ(before[name], word, At(here))


def _title(word: Any) -> str:
    return str(getattr(word, "title", "") or getattr(word, "cite", "") or word.id)


def _finding(old: Finding, new: Finding, at: At) -> Iterator[Change]:
    yield from at.text(Kind.FINDING, TextKind.ANSWER, old.title, new.title)
    about = _("it is told of something else")
    yield from at.value(Kind.FINDING, PROCEDURAL, str(old.about), str(new.about), about)
    before = {each.id: each for each in old.values}
    after = {each.id: each for each in new.values}
    for name in before:
        if name not in after:
            here = at.part(_("value `{name}`").format(name=name))
            yield from here.value(Kind.VALUE, SAFETY, before[name].label, "", _("a value is gone"))
    for name, value in after.items():
        here = at.part(_("value `{name}`").format(name=name))
        if name not in before:
            yield from here.value(Kind.VALUE, SAFETY, "", value.label, _("a value is new"))
        else:
            yield from _value(before[name], value, here, is_choice=new.choice is not None)
    kept = [name for name in before if name in after]
    order = [name for name in after if name in before]
    if kept != order:
        other = _("values stand in another order")
        yield from at.value(Kind.ORDER, EDITORIAL, tuple(kept), tuple(order), other)
    restless = _("whether it has to be asked again after every action")
    both = old.may_change_by_itself, new.may_change_by_itself
    if both[0] != both[1]:
        said = (_("stays as it is"), _("may change by itself"))
        yield from at.value(Kind.FINDING, SAFETY, said[both[0]], said[both[1]], restless)
    yield from _choice(old, new, at)
    yield from at.evidence(old.sources, new.sources)


def _value(old: Value, new: Value, at: At, *, is_choice: bool) -> Iterator[Change]:
    yield from at.text(Kind.VALUE, TextKind.ANSWER, old.label, new.label)
    reads = TextKind.INSTRUCTION if is_choice else TextKind.SIGN
    yield from at.text(Kind.VALUE, reads, old.sign, new.sign)
    yield from at.evidence(old.sources, new.sources)


def _choice(old: Finding, new: Finding, at: At) -> Iterator[Change]:
    if old.choice is None or new.choice is None:
        came = _("a finding became a choice of the unit, or the other way")
        said = (_("no choice"), _("a choice"))
        both = said[old.choice is not None], said[new.choice is not None]
        yield from at.value(Kind.CHOICE, SAFETY, both[0], both[1], came)
        return
    before, after = old.choice, new.choice
    made = _("the unit chose, among what the pathway leaves open")
    exchanged = _exchanged(before.chosen, after.chosen)
    yield from at.value(Kind.CHOICE, exchanged, before.chosen, after.chosen, made)
    proposed = _("another position is suggested")
    exchanged = _exchanged(before.suggested, after.suggested)
    yield from at.value(Kind.CHOICE, exchanged, before.suggested, after.suggested, proposed)
    yield from at.text(Kind.REASON, TextKind.REASON, before.because, after.because, EDITORIAL)


def _exchanged(was: str | None, now: str | None) -> Rating:
    """Return how much hangs on a position; another in its place is another thing done."""
    return SAFETY if was and now else PROCEDURAL


def _act(old: Act, new: Act, at: At) -> Iterator[Change]:
    yield from at.text(Kind.ACT, TextKind.INSTRUCTION, old.title, new.title)
    known = _("what is known after the act changed")
    yield from at.each(Kind.EFFECT, SAFETY, effects(old.effects), effects(new.effects), known)
    calls = _("whether it calls for help")
    if old.calls_for_help != new.calls_for_help:
        said = (_("calls nobody"), _("calls for help"))
        both = said[old.calls_for_help], said[new.calls_for_help]
        yield from at.value(Kind.ACT, SAFETY, *both, calls)
    yield from at.evidence(old.sources, new.sources)


def _duty(old: Duty, new: Duty, at: At) -> Iterator[Change]:
    yield from at.text(Kind.DUTY, TextKind.ANSWER, old.title, new.title)


def _kit(old: KitItem, new: KitItem, at: At) -> Iterator[Change]:
    yield from at.text(Kind.KIT, TextKind.INSTRUCTION, old.title, new.title)
    yield from at.text(Kind.KIT, TextKind.INSTRUCTION, old.amount, new.amount)
    yield from at.text(Kind.REASON, TextKind.REASON, old.why, new.why, EDITORIAL)
    yield from at.evidence(old.sources, new.sources)


def _source(old: Source, new: Source, at: At) -> Iterator[Change]:
    yield from at.text(Kind.SOURCES, TextKind.TITLE, old.cite, new.cite)
    mark = _("how far the source was followed")
    yield from at.value(Kind.SOURCES, PROCEDURAL, str(old.mark), str(new.mark), mark)
    yield from at.value(Kind.SOURCES, EDITORIAL, old.where, new.where, _("where it was read"))
    yield from at.text(Kind.SOURCES, TextKind.REASON, old.note, new.note, EDITORIAL)


def _rule(old: Rule, new: Rule, at: At) -> Iterator[Change]:
    if _demand(old) != _demand(new):
        yield Change(Kind.RULE, SAFETY, at.where, old.title, new.title, _(ASKS_OTHERWISE))
    else:
        yield from at.text(Kind.RULE, TextKind.CAUTION, old.title, new.title)
    yield from at.text(Kind.RULE, TextKind.CAUTION, old.harm, new.harm)
    yield from at.text(Kind.RULE, TextKind.REMEDY, old.instead, new.instead)
    worse = _("how bad the harm is held to be")
    yield from at.value(Kind.RULE, SAFETY, str(old.severity), str(new.severity), worse)
    yield from at.evidence(old.sources, new.sources)


def _demand(rule: Rule) -> Rule:
    """Return a rule without its words: what is left is what it asks for."""
    return replace(
        rule, severity=HarmSeverity.NEGLIGIBLE, title="", harm="", instead="", sources=()
    )


_Differ = Callable[[Any, Any, At], Iterator[Change]]
_TABLES: tuple[tuple[str, Kind, Rating, _Differ], ...] = (
    ("findings", Kind.FINDING, SAFETY, _finding),
    ("acts", Kind.ACT, SAFETY, _act),
    ("duties", Kind.DUTY, PROCEDURAL, _duty),
    ("kit", Kind.KIT, PROCEDURAL, _kit),
    ("sources", Kind.SOURCES, PROCEDURAL, _source),
    ("rules", Kind.RULE, SAFETY, _rule),
)
