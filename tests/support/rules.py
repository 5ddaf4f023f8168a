"""Safety rules in a line, and random ones.

absence(at(act="cut"), scope=between(at(act="fill"), at(outcome="any")))
precedence(at(asks="a", surely={"a": "a1"}), before=at(act="cut"))
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from chamberwise.engine.meaning.moments import warned_of
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.rule import (
    ANY,
    AnyOf,
    Extent,
    Happening,
    HarmSeverity,
    Pattern,
    Rule,
    Scope,
)
from chamberwise.engine.model.step import (
    Action,
    Caution,
    Handover,
    Line,
    Outcome,
    Question,
    SignalWord,
    Step,
)
from chamberwise.engine.model.words import Finding
from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from tests.support.strategies import BYTES, library_of
from tests.support.told import ToldLibrary

_Drawn = TypeVar("_Drawn")

SCOPED = (
    Pattern.ABSENCE,
    Pattern.UNIVERSALITY,
    Pattern.EXISTENCE,
    Pattern.BOUNDED_EXISTENCE,
    Pattern.PRECEDENCE,
    Pattern.RESPONSE,
)
ALONE = frozenset(SCOPED[:4])
"""Patterns that are of one thing only."""


def rule(
    pattern: Pattern,
    of: AnyOf,
    by: AnyOf = (),
    *,
    scope: Scope | None = None,
    times: int = 0,
    name: str = "rule",
) -> Rule:
    return Rule(
        id=name,
        title=f"{name}: {pattern}",
        pattern=pattern,
        of=of,
        by=by,
        times=times,
        scope=scope or Scope(),
        harm="Harm.",
        severity=HarmSeverity.CRITICAL,
        instead="Hold still.",
    )


def at(
    *,
    act: str = "",
    by: str = "",
    warns_of: str = "",
    asks: str = "",
    outcome: str = "",
    hands_over_to: str = "",
    surely: Mapping[str, str] | None = None,
    possibly: Mapping[str, str] | None = None,
) -> AnyOf:
    """Return one happening; several names stand in one text with spaces between."""
    return (
        Happening(
            acts=tuple(act.split()),
            by=tuple(by.split()),
            warns_of=tuple(warns_of.split()),
            asks=tuple(asks.split()),
            outcomes=tuple(outcome.split()),
            hands_over_to=tuple(hands_over_to.split()),
            surely=condition(surely),
            possibly=condition(possibly),
        ),
    )


def condition(terms: Mapping[str, str] | None) -> Condition:
    return Condition(tuple((name, tuple(said.split())) for name, said in (terms or {}).items()))


class _Choices:
    """Choices taken from drawn bytes: one strategy for all, so that drawing is quick."""

    def __init__(self, drawn: bytes) -> None:
        self._bytes = iter(drawn)

    def number(self, least: int, most: int) -> int:
        return least + next(self._bytes, 0) % (most - least + 1)

    def one(self, options: Sequence[_Drawn]) -> _Drawn:
        return options[self.number(0, len(options) - 1)]

    def some(self, options: Sequence[_Drawn], most: int = 2) -> tuple[_Drawn, ...]:
        return tuple(dict.fromkeys(self.one(options) for _ in range(self.number(1, most))))


RULE_BYTES = 40


@dataclass(frozen=True)
class Ruled:
    """A library and rules that bind the walks of one of its pathways."""

    library: Library
    entry: str
    rules: tuple[Rule, ...]


def ruled_libraries(*, tame: bool = True, most_rules: int = 5) -> SearchStrategy[Ruled]:
    """Draw a library with cautions and things owed, and rules over its words."""
    one = st.binary(min_size=RULE_BYTES, max_size=RULE_BYTES)
    drawn = st.tuples(
        st.binary(min_size=BYTES, max_size=BYTES),
        one,
        st.lists(one, min_size=1, max_size=most_rules),
    )
    return drawn.map(lambda each: ruled(*each, tame=tame))


def ruled(library: bytes, adornments: bytes, rules: Sequence[bytes], *, tame: bool = True) -> Ruled:
    """Return what some bytes stand for."""
    choices = _Choices(adornments)
    drawn = library_of(library, tame=tame)
    names = tuple(drawn.pathways)
    entry = choices.one((names[0], names[0], names[-1]))  # the last may be come back from
    whole = adorned(drawn, choices)
    return Ruled(whole, entry, rules_of(rules, whole, entry))


def adorned(library: Library, choices: _Choices) -> Library:
    """Return a library with cautions, duties and things owed strewn over its steps."""
    pathways = [
        replace(each, steps={name: _adorned(step, choices) for name, step in each.steps.items()})
        for each in library.pathways.values()
    ]
    return ToldLibrary(library.shared, {each.id: each for each in pathways})


def _adorned(step: Step, choices: _Choices) -> Step:
    if choices.number(0, 3) == 0:
        signal = choices.one((SignalWord.DANGER, SignalWord.WARNING, SignalWord.CAUTION))
        guards = choices.one((None, "cut", "fill"))
        step = replace(step, cautions=(Caution(signal, "Harm.", "Hold still.", guards),))
    if isinstance(step, Action) and step.lines:
        who = choices.one(("surgeon", "assistant"))
        step = replace(step, lines=(replace(step.lines[0], who=who), *step.lines[1:]))
    if isinstance(step, Outcome) and choices.number(0, 1):
        acts = choices.some(("cut", "fill", None))
        step = replace(step, owed=tuple(Line("assistant", "Later.", act=act) for act in acts))
    return step


def rules_of(drawn: Sequence[bytes], library: Library, entry: str = "p0") -> tuple[Rule, ...]:
    """Return the rules that some bytes stand for."""
    return tuple(
        rule_of(each, library, entry, f"rule-{number}") for number, each in enumerate(drawn)
    )


def rule_of(drawn: bytes, library: Library, entry: str, name: str) -> Rule:
    """Return the rule that some bytes stand for."""
    drawing = _Drawing(_Choices(drawn), library, entry)
    choices = drawing.choices
    pattern = choices.one(tuple(Pattern))
    return rule(
        pattern,
        drawing.any_of(),
        () if pattern in ALONE else drawing.any_of(),
        scope=drawing.scope() if pattern in SCOPED else None,
        times=choices.number(1, 2) if pattern is Pattern.BOUNDED_EXISTENCE else 0,
        name=name,
    )


class _Drawing:
    """What a rule may speak of: for the most part what some step shows."""

    def __init__(self, choices: _Choices, library: Library, entry: str) -> None:
        self.choices = choices
        self.findings: tuple[Finding, ...] = tuple(library.words(entry).findings.values())
        own = tuple(library.pathways[entry].steps.values())
        every = [step for each in library.pathways.values() for step in each.steps.values()]
        self.steps = (*own, *own, *every)

    def scope(self) -> Scope:
        extent = self.choices.one((Extent.GLOBALLY, Extent.GLOBALLY, *Extent))
        opens = self.any_of() if extent not in (Extent.GLOBALLY, Extent.BEFORE) else ()
        is_closed = extent in (Extent.BEFORE, Extent.BETWEEN) or (
            extent is Extent.AFTER_UNTIL and self.choices.number(0, 1) == 1
        )
        return Scope(extent, opens, self.any_of() if is_closed else ())

    def any_of(self) -> AnyOf:
        return tuple(self.happening() for _ in range(self.choices.one((1, 1, 1, 2))))

    def happening(self) -> Happening:
        told = self.shown(self.choices.one(self.steps))
        for _ in range(self.choices.one((0, 0, 0, 1, 1, 2))):
            told |= self.known()
        return Happening(**told)  # type: ignore[arg-type]

    def shown(self, step: Step) -> dict[str, object]:
        """Return something that a step shows, or now and then nothing at all."""
        match step:
            case Question() if step.ask in {each.id for each in self.findings}:
                return {"asks": (step.ask,)}
            case Handover():
                return {"hands_over_to": (step.to,)}
            case Outcome(owed=owed) if not owed or self.choices.number(0, 1):
                return {"outcomes": (self.choices.one((step.id, ANY)),)}
        line = self.choices.one(getattr(step, "lines", getattr(step, "owed", ())) or (None,))
        kinds: list[dict[str, object]] = [{"acts": (self.choices.one(("cut", "fill")),)}]
        if line is not None and line.act is not None:
            kinds += [{"acts": (line.act,)}, {"acts": (line.act,), "by": (line.who,)}]
        elif line is not None:
            kinds.append({"by": (line.who,)})
        kinds += [{"warns_of": (act,)} for act in warned_of(step)]
        return self.choices.one(kinds)

    def known(self) -> dict[str, object]:
        kind = self.choices.number(0, 11)
        if kind < 8:
            key = ("surely", "possibly", "unless_surely", "unless_possibly")[kind % 4]
            return {key: Condition(tuple(self.terms()))}
        key = ("known", "unless_known", "stale", "unknown")[kind - 8]
        return {key: self.choices.some([each.id for each in self.findings])}

    def terms(self) -> list[tuple[str, tuple[str, ...]]]:
        named = self.choices.some(self.findings)
        return [(each.id, self.choices.some([value.id for value in each.values])) for each in named]
