"""The words of a step's parts, in the order in which they are read. Print and text share them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import NOT_SET
from chamberwise.exports.full.content import Choice, FullPathway, Line, Source, Step
from chamberwise.exports.language.joining import begun
from chamberwise.exports.paper.sheet import Run, Weight

FREELY = 30
"""Letters of an address that fit a line anywhere."""

CHOICES = N_("Choices left to the unit")


def line_runs(line: Line) -> tuple[Run, ...]:
    """Return who in bold, then the instruction; what is said aloud in quotation marks."""
    said = f"“{line.text}”" if line.is_said else line.text
    when = _(" When: {when}.").format(when=line.when) if line.when else ""
    who = _("{who} says").format(who=line.who) if line.is_said else line.who
    return (Run(f"{who}: ", Weight.BOLD), Run(said + when + marks(line.sources)))


def marks(sources: Iterable[int]) -> str:
    """Return the numbers of sources in brackets."""
    told = ", ".join(str(number) for number in sources)
    return f" [{told}]" if told else ""


def before_runs(step: Step) -> tuple[tuple[Run, ...], ...]:
    """Return what is needed, how long it may take, and what the unit has to choose."""
    pairs: list[tuple[str, str]] = []
    if step.needs:
        pairs.append((_("Needs"), "; ".join(step.needs)))
    if step.target:
        pairs.append((_("Local target"), step.target))
    pairs += [_choice(each) for each in step.choices]
    runs: list[Run] = []
    for place, (name, text) in enumerate(pairs):
        runs.append(Run(f"{' ' if place else ''}{name}: ", Weight.BOLD))
        runs.append(Run(f"{text}."))
    return (tuple(runs),) if runs else ()


def _choice(choice: Choice) -> tuple[str, str]:
    """A choice with what the unit has set, or with its number in the list at the end."""
    if choice.is_set:
        told = [each.rstrip(".") for each in choice.positions]
        return choice.title, _("{told} (set by this unit)").format(told="; ".join(told))
    return _("Choice\u00a0{number}").format(number=choice.number), f"{choice.title}: {_(NOT_SET)}"


def open_choice_runs(choice: Choice, steps: Iterable[int]) -> tuple[Run, ...]:
    """Return a choice that is not set, with every position and the steps that ask for it."""
    told = _("; or ").join(each.rstrip(".") for each in choice.positions)
    positions = f": {told}." if told else "."
    return (
        Run(f"{choice.title}: ", Weight.BOLD),
        Run(_(NOT_SET) + positions),
        Run(f" {at_steps(steps)}"),
    )


def at_steps(steps: Iterable[int]) -> str:
    """Return which steps are meant.

    >>> at_steps([3, 5])
    'Steps\\xa03, 5.'
    """
    told = [str(each) for each in steps]
    said = ngettext("Step\u00a0{numbers}.", "Steps\u00a0{numbers}.", len(told))
    return said.format(numbers=", ".join(told))


def after_runs(step: Step) -> tuple[tuple[Run, ...], ...]:
    """Return what a handover adds, why the step is there, and its sources."""
    found = [(Run(step.note),)] if step.note else []
    why = _("Why: {why}").format(why=step.why) if step.why else ""
    told = ", ".join(str(number) for number in step.sources)
    sources = _("Sources: {told}.").format(told=told) if told else ""
    text = " ".join(part for part in (why, sources) if part)
    return (*found, (Run(text),)) if text else tuple(found)


def source_text(source: Source) -> str:
    """Return a source as one paragraph; a long address may go on in the next line."""
    where = f" {_breakable(source.where)}" if source.where else ""
    return f"{source.cite.rstrip('.')}. {begun(source.mark)}.{where}"


def _breakable(address: str) -> str:
    """Let a long part of an address break after a stroke, hyphen or underscore, without a sign."""
    parts = re.split(r"(?<=[/_?&=-])", address)
    return "\u200b".join(parts) if max(map(len, parts)) < len(address) > FREELY else address


def content_texts(content: FullPathway) -> Iterator[tuple[str, str]]:
    """Yield every text with the place it stands at."""
    yield _("The title"), content.title
    yield _("The summary"), content.summary
    for step in content.steps:
        where = _("Step {number}").format(number=step.number)
        yield where, step.heading
        yield _("A phase"), step.phase
        runs = (*before_runs(step), *(line_runs(each) for each in step.lines), *after_runs(step))
        yield from ((where, "".join(run.text for run in each)) for each in runs)
        for caution in step.cautions:
            yield where, f"{caution.harm} {caution.instead}"
        for way in step.ways:
            yield _("{where}, an answer").format(where=where), f"{way.label} {way.sign}"
    for choice, steps in content.open_choices:
        told = open_choice_runs(choice, steps)
        yield _("Choice {number}").format(number=choice.number), "".join(run.text for run in told)
    for source in content.sources:
        yield _("Source {number}").format(number=source.number), source_text(source)
