"""The full pathway as plain text, read from top to bottom: for a screen reader, or any printer."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.full.content import ON, Caution, FullPathway, Kind, Step
from chamberwise.exports.full.front import SOURCES
from chamberwise.exports.full.safety import SAFETY
from chamberwise.exports.full.words import (
    CHOICES,
    after_runs,
    at_steps,
    before_runs,
    line_runs,
    marks,
    open_choice_runs,
    source_text,
)
from chamberwise.exports.language.values import told
from chamberwise.exports.paper.sheet import Run

WIDTH = 78
NAMES = {
    Kind.QUESTION: N_("Question"),
    Kind.ACTION: N_("Action"),
    Kind.BRANCH: N_("By what is known"),
    Kind.HANDOVER: N_("Handover"),
    Kind.OUTCOME: N_("End"),
}


def text(content: FullPathway, standing: tuple[str, ...] = ()) -> str:
    """Return the whole content; `standing` are lines that every sheet says first."""
    lines = [
        *standing,
        content.title,
        content.summary,
        _("Begin at step {start}.").format(start=content.start),
        "",
    ]
    lines += _safety(content)
    before = ""
    for step in content.steps:
        if step.phase != before:
            lines += [_("Phase: {phase}").format(phase=step.phase), ""]
            before = step.phase
        lines += [*_step(step), ""]
    if content.open_choices:
        lines.append(_(CHOICES))
    for choice, steps in content.open_choices:
        lines.append(f"{choice.number}. {_plain(open_choice_runs(choice, steps))}")
    if content.sources:
        lines.append(_(SOURCES))
        lines += [f"{each.number}. {source_text(each)}" for each in content.sources]
    plain = (each.replace("\u00a0", " ").replace("\u200b", "") for each in lines)
    return "\n".join(_wrapped(each) for each in plain) + "\n"


def _safety(content: FullPathway) -> Iterator[str]:
    if not content.dangers:
        return
    yield _(SAFETY)
    for danger in content.dangers:
        yield _("{signal}. {harm} Instead: {instead} {steps}").format(
            signal=told("danger").upper(),
            harm=danger.harm,
            instead=danger.instead,
            steps=at_steps(danger.steps),
        )
    yield ""


def _step(step: Step) -> Iterator[str]:
    yield (
        _("Step {number}. {kind}. {heading}")
        .format(number=step.number, kind=_(NAMES[step.kind]), heading=step.heading)
        .rstrip()
    )
    yield from (_plain(runs) for runs in before_runs(step))
    for place, line in enumerate(step.lines):
        yield from _cautions(step, place)
        yield _plain(line_runs(line))
    if not step.lines:
        yield from _cautions(step, 0)
    for way in step.ways:
        sign = f" ({way.sign})" if way.sign else ""
        label = way.label if way.id == ON else f"{way.label}{sign}:"
        comma = "" if label.endswith(":") else ":"
        yield label + comma + " " + _("go to step {number}.").format(number=way.to)
    yield from (_plain(runs) for runs in after_runs(step))


def _cautions(step: Step, place: int) -> Iterator[str]:
    for each in step.cautions:
        if each.before == place:
            yield _caution(each)


def _caution(caution: Caution) -> str:
    said = _("{signal}. {harm} Instead: {instead}").format(
        signal=told(caution.signal).upper(), harm=caution.harm, instead=caution.instead
    )
    return said + marks(caution.sources)


def _plain(runs: tuple[Run, ...]) -> str:
    return "".join(run.text for run in runs)


def _wrapped(line: str) -> str:
    return textwrap.fill(line, WIDTH, break_long_words=False, break_on_hyphens=False)
