"""Where each way out of a step of the chart leads, followed along the arrows of the file.

What is done on the way is told by its headlines, up to the first place where the way is not one any
more: a step of the chart, an end, another chart, or a step that only the full pathway shows.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import chain, repeat

from chamberwise.engine.chart.labels import AND, either, lowered
from chamberwise.engine.language.capitals import small
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.model.condition import Condition
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.pathway import Pathway
from chamberwise.engine.model.step import (
    CANNOT_TELL,
    Action,
    Answer,
    Branch,
    Handover,
    Outcome,
    PathwayId,
    Question,
    Step,
    StepId,
)

MOST_DONE = 3
"""Steps told on one way to the side; what is longer goes on in the full pathway."""


class Ends(StrEnum):
    """How a way ends on the chart."""

    AT_ROW = "at a row"
    OVER = "in another chart for good"
    OVER_AND_BACK = "in another chart that comes back"
    OUTCOME = "at an outcome"
    OFF_CHART = "in the full pathway"


@dataclass(frozen=True, slots=True)
class Way:
    """One way out: its labels, the steps done on it, and the step at which it ends."""

    labels: tuple[str, ...]
    done: tuple[StepId, ...]
    ends: Ends
    step: StepId

    @property
    def leads(self) -> tuple[object, ...]:
        """All but the labels: ways that lead alike are drawn as one."""
        return self.done, self.ends, self.step


def ways(library: Library, pathway: PathwayId, step: StepId, rows: frozenset[StepId]) -> list[Way]:
    """Return the ways out of a step, those that lead alike as one."""
    own = library.pathways[pathway]
    found: dict[tuple[object, ...], Way] = {}
    for way in _all(library, own, step, rows):
        met = found.get(way.leads, way)
        labels = tuple(dict.fromkeys((*met.labels, *way.labels)))
        found[way.leads] = Way(labels, way.done, way.ends, way.step)
    return list(found.values())


def _all(
    library: Library, pathway: Pathway, step: StepId, rows: frozenset[StepId]
) -> Iterator[Way]:
    heads: dict[StepId, list[str]] = {}
    for label, target in _arrows(library, pathway, pathway.steps[step]):
        heads.setdefault(target, []).append(label)
    for target, labels in heads.items():
        way = followed(pathway, labels, target, rows)
        yield from _forked(library, pathway, step, way, rows) or (way,)


def _forked(
    library: Library, pathway: Pathway, start: StepId, way: Way, rows: frozenset[StepId]
) -> tuple[Way, ...]:
    """Return the ways behind a silent fork that is not on the chart, if each of them ends here.

    What decides there is named, unless the step that the ways start from speaks of it already.
    """
    step = pathway.steps[way.step]
    if way.ends is not Ends.OFF_CHART or way.done or not isinstance(step, Branch) or step.bound:
        return ()
    found = []
    names = chain(_decided_by(library, pathway, pathway.steps[start], step), repeat(""))
    for (label, target), name in zip(_arrows(library, pathway, step), names, strict=False):
        onward = followed(pathway, [label], target, rows)
        if onward.ends is Ends.OFF_CHART:
            return ()
        said = _said_behind(either(way.labels), name, label)
        found.append(Way((said,), onward.done, onward.ends, onward.step))
    return tuple(found)


def _decided_by(library: Library, pathway: Pathway, start: Step, fork: Branch) -> Iterator[str]:
    """Yield for each row of a fork the title of what decides first; nothing if it was named."""
    match start:
        case Question():
            named = {start.ask}
        case Branch():
            named = {name for row in start.rows for name, _values in row.when.terms}
        case _:
            named = set()
    findings = library.words(pathway.id).findings
    for row in fork.rows:
        first = next((name for name, _values in row.when.terms), None)
        yield "" if first is None or first in named else findings[first].title


def _said_behind(label: str, name: str, onward: str) -> str:
    """Return the words of a way behind a fork.

    >>> _said_behind("Cannot tell", "Lens in the eye", "No lens")
    'Cannot tell, with lens in the eye: no lens'
    >>> _said_behind("After 3 rounds", "", "Otherwise")
    'After 3 rounds: otherwise'
    """
    if not name:
        return f"{label}: {small(onward)}" if label else onward
    if not label:
        return f"{name}: {small(onward)}"
    told = _("{label}, with {name}: {onward}")
    return told.format(label=label, name=small(name), onward=small(onward))


def followed(
    pathway: Pathway, heads: Iterable[str], target: StepId, rows: frozenset[StepId]
) -> Way:
    """Follow the arrows to a step until the way is on the chart or is one way no more."""
    done: list[StepId] = []
    labels = tuple(dict.fromkeys(label for label in heads if label))
    here = target
    while here not in rows:
        step = pathway.steps[here]
        is_full = len(done) == MOST_DONE
        if not isinstance(step, Action) or step.bound or is_full:
            through = _through(pathway, step, rows)
            if through is None:
                return Way(labels, tuple(done), _end(step), here)
            here = through
            continue
        done.append(here)
        here = step.go_to
    return Way(labels, tuple(done), Ends.AT_ROW, here)


def _through(pathway: Pathway, step: Step, rows: frozenset[StepId]) -> StepId | None:
    """Return the row to which a branch leads in any case, if it is so."""
    if not isinstance(step, Branch) or step.bound:
        return None
    targets = {each for _label, each in _of_branch_targets(step)}
    return targets.pop() if len(targets) == 1 and targets <= rows else None


def _end(step: Step) -> Ends:
    match step:
        case Handover(on_return=()):
            return Ends.OVER
        case Handover():
            return Ends.OVER_AND_BACK
        case Outcome():
            return Ends.OUTCOME
    return Ends.OFF_CHART


def _arrows(library: Library, pathway: Pathway, step: Step) -> Iterator[tuple[str, StepId]]:
    match step:
        case Question():
            for answer in step.answers:
                yield answer_words(library, pathway, step, answer), answer.go_to
        case Action():
            yield _("Until then") if step.bound else "", step.go_to
        case Branch():
            yield from _of_branch(library, pathway, step)
        case Handover():
            other = library.pathways[step.to]
            for outcome, back in step.on_return:
                end = other.steps.get(outcome)
                yield end.title if isinstance(end, Outcome) else outcome, back
    if step.bound:
        most = step.bound.at_most
        times = ngettext("After {count} round", "After {count} rounds", most)
        yield times.format(count=most), step.bound.after_that


def answer_words(library: Library, pathway: Pathway, step: Question, answer: Answer) -> str:
    """Return the words of an answer, as the team reads them."""
    if answer.id == CANNOT_TELL:
        return _("Cannot tell")
    if answer.label or not answer.means:
        return answer.label or answer.id
    finding = library.words(pathway.id).findings[step.ask]
    return _either(value.label for value in finding.values if value.id in answer.means)


def _of_branch(library: Library, pathway: Pathway, step: Branch) -> Iterator[tuple[str, StepId]]:
    for row in step.rows:
        yield condition_words(library, pathway, row.when), row.go_to
    if step.otherwise is not None:
        yield _("Otherwise"), step.otherwise
    if step.not_known is not None:
        yield _("Not known"), step.not_known


def _of_branch_targets(step: Branch) -> Iterator[tuple[str, StepId]]:
    yield from (("", row.go_to) for row in step.rows)
    yield from (("", each) for each in (step.otherwise, step.not_known) if each is not None)


def condition_words(library: Library, pathway: Pathway, when: Condition) -> str:
    """Return a condition in the labels of its values."""
    findings = library.words(pathway.id).findings
    terms: list[str] = []
    for name, values in when.terms:
        finding = findings[name]
        labels = _either(value.label for value in finding.values if value.id in values)
        terms.append(f"{finding.title}: {small(labels)}" if terms else labels)
    return _(AND).join(lowered(terms))


def _either(labels: Iterable[str]) -> str:
    return _(" or ").join(lowered(labels))
