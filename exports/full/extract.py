"""From a pathway to the content of its full print. This file alone of the placing room, with the

one that orders it, knows the engine.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model import step as model
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.words import Finding, SourceId, Words
from chamberwise.exports.control.extract import place_told
from chamberwise.exports.full.content import (
    Caution,
    Choice,
    Danger,
    FullPathway,
    Kind,
    Line,
    Source,
    Step,
)
from chamberwise.exports.full.extract_ways import heading, note, ways
from chamberwise.exports.full.quantities import joined
from chamberwise.exports.record.naming import MARK_WORDS, READER, duty_title

_KINDS = {
    model.Question: Kind.QUESTION,
    model.Action: Kind.ACTION,
    model.Branch: Kind.BRANCH,
    model.Handover: Kind.HANDOVER,
    model.Outcome: Kind.OUTCOME,
}


def full_pathway(library: Library, name: model.PathwayId) -> FullPathway:
    """Return everything the pathway says, numbered in document order."""
    pathway = library.pathways[name]
    teller = _Teller(library, pathway)
    steps = tuple(teller.step(each) for each in pathway.steps.values())
    return FullPathway(
        pathway.id,
        joined(pathway.title),
        joined(pathway.summary),
        teller.numbers[pathway.start],
        _dangers(steps),
        steps,
        tuple(teller.cited()),
    )


@dataclass
class _Teller:
    """Tells steps one after another and numbers the sources as they are met."""

    library: Library
    pathway: Pathway
    numbers: dict[str, int] = field(init=False)
    met: dict[SourceId, int] = field(default_factory=dict)
    open: dict[str, int] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.numbers = {name: place + 1 for place, name in enumerate(self.pathway.steps)}
        self.words: Words = self.library.words(self.pathway.id)
        self.guards: dict[str, list[model.Caution]] = {}
        for step in self.pathway.steps.values():
            for caution in step.cautions:
                if caution.guards:
                    self.guards.setdefault(caution.guards, []).append(caution)

    def step(self, step: model.Step) -> Step:
        phase = self.pathway.phases.get(step.phase, step.phase)
        action = step if isinstance(step, model.Action) else None
        return Step(
            of=f"{self.pathway.id}/{step.id}",
            number=self.numbers[step.id],
            kind=_KINDS[type(step)],
            phase=joined(phase),
            heading=joined(heading(self.library, self.pathway.id, step)),
            lines=(*_said(step), *(self._line(each) for each in _lines(step))),
            cautions=tuple(self._cautions(step)),
            needs=tuple(self._needs(action.needs)) if action else (),
            choices=tuple(self._choices(action.choices)) if action else (),
            target=self._target(action) if action else "",
            note=joined(note(self.library, self.pathway.id, step)),
            why=joined(step.why),
            ways=ways(self.library, self.pathway.id, step, self.numbers),
            sources=self._cite((*step.sources, *self._of_finding(step))),
        )

    def cited(self) -> Iterator[Source]:
        for name, number in self.met.items():
            source = self.words.sources[name]
            told = ". ".join(part.rstrip(".") for part in (source.cite, source.note) if part)
            yield Source(number, joined(told), _(MARK_WORDS[source.mark]), source.where)

    def _cite(self, names: Iterable[SourceId]) -> tuple[int, ...]:
        known = [name for name in dict.fromkeys(names) if name in self.words.sources]
        return tuple(sorted(self.met.setdefault(name, len(self.met) + 1) for name in known))

    def _of_finding(self, step: model.Step) -> Iterator[SourceId]:
        finding = self._asked(step)
        if finding is not None:
            yield from finding.sources
            for value in finding.values:
                yield from value.sources

    def _asked(self, step: model.Step) -> Finding | None:
        return self.words.findings.get(step.ask) if isinstance(step, model.Question) else None

    def _line(self, line: model.Line) -> Line:
        return Line(
            duty_title(self.words, line.who),
            joined(line.text),
            line.said_aloud,
            joined(line.when),
            self._cite(line.sources),
        )

    def _cautions(self, step: model.Step) -> Iterator[Caution]:
        acts = [line.act for line in _lines(step)] if isinstance(step, model.Action) else []
        own = list(step.cautions)
        guarding = [each for act in dict.fromkeys(acts) for each in self.guards.get(act or "", ())]
        told = set()
        for each in (*own, *guarding):
            words = (each.signal, each.harm, each.instead)
            if words not in told:
                told.add(words)
                before = acts.index(each.guards) if each.guards and each.guards in acts else 0
                yield Caution(
                    each.signal.value,
                    joined(each.harm),
                    joined(each.instead),
                    before,
                    self._cite(each.sources),
                )

    def _needs(self, names: Iterable[str]) -> Iterator[str]:
        for name in names:
            item = self.words.kit.get(name)
            if item is None:
                yield name
            else:
                told = f"{item.title}, {item.amount}" if item.amount else item.title
                yield joined(told + self._product(name))

    def _product(self, item: str) -> str:
        """Return what the unit uses for an item and where it lies, in brackets."""
        local = self.library.local_to(self.pathway.id)
        if local is None or item not in local.products:
            return ""
        return f" ({local.products[item].product}; {place_told(local, item)})"

    def _because(self, choice: str) -> str:
        local = self.library.local_to(self.pathway.id)
        reason = local.reasons.get(choice, "") if local else ""
        return _(". Because: {reason}").format(reason=reason) if reason else ""

    def _target(self, action: model.Action) -> str:
        local = self.library.local_to(self.pathway.id)
        target = local.targets.get(f"{self.pathway.id}/{action.id}") if local else None
        return _duration(action.time_target) + (f" ({target.method})" if target else "")

    def _choices(self, names: Iterable[str]) -> Iterator[Choice]:
        for name in names:
            finding = self.words.findings.get(name)
            if finding is None:
                yield Choice(name, False, (), self._open(name))
                continue
            chosen = finding.choice.chosen if finding.choice else None
            shown = [each for each in finding.values if chosen in (None, each.id)]
            told = tuple(
                joined(f"{each.label}: {each.sign}" if each.sign else each.label) for each in shown
            )
            if chosen is not None:
                told = tuple(f"{each.rstrip('.')}{self._because(name)}" for each in told)
            number = self._open(name) if chosen is None else 0
            yield Choice(joined(finding.title), chosen is not None, told, number)

    def _open(self, name: str) -> int:
        """Choices that are not set are numbered as they are met."""
        return self.open.setdefault(name, len(self.open) + 1)


def _lines(step: model.Step) -> tuple[model.Line, ...]:
    if isinstance(step, model.Action):
        return step.lines
    return step.owed if isinstance(step, model.Outcome) else ()


def _said(step: model.Step) -> tuple[Line, ...]:
    """What is said at a handover."""
    says = step.says if isinstance(step, model.Handover) else ""
    return (Line(_(READER), joined(says), is_said=True),) if says else ()


def _duration(seconds: int | None) -> str:
    """Whole minutes from a minute on, where the seconds allow it."""
    if seconds is None:
        return ""
    minutes, rest = divmod(seconds, 60)
    return f"{seconds}\u00a0s" if rest or not minutes else f"{minutes}\u00a0min"


def _dangers(steps: Iterable[Step]) -> tuple[Danger, ...]:
    where: dict[tuple[str, str], list[int]] = {}
    for step in steps:
        for caution in step.cautions:
            if caution.signal == model.SignalWord.DANGER.value:
                where.setdefault((caution.harm, caution.instead), []).append(step.number)
    return tuple(Danger(harm, instead, tuple(at)) for (harm, instead), at in where.items())
