"""The story of a counterexample as paragraphs."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.proof.content import Story, StoryKind, StoryLine, StoryStep
from chamberwise.exports.proof.paragraph import Paragraph

HERE = N_(">>> HERE")
"""Stands before the line that says what broke the rule."""

_LEADS = {
    StoryKind.DONE: N_("Done:     "),
    StoryKind.HANDED_OVER: "",
    StoryKind.ENDED: N_("End:      "),
}


def told(story: Story) -> Iterator[Paragraph]:
    """Yield the story, one fact a paragraph, the place where the rule broke marked."""
    for text in story.passed_at_start:
        yield _aside(text)
    for step in story.steps:
        yield from _step(step, story)


def _aside(text: str, indent: int = 6) -> Paragraph:
    return Paragraph(f"{' ' * indent}(", f"{text})")


def _step(step: StoryStep, story: Story) -> Iterator[Paragraph]:
    number = f"  {step.number:>2}. "
    if step.kind is StoryKind.ASKED:
        yield Paragraph(number + _("Asked:    "), step.text)
        yield Paragraph(_("      Answered: "), step.answer)
    elif not _is_its_own_headline(step):
        yield Paragraph(number + (_(_LEADS[step.kind])), step.text)
        number = " " * 8
    for line in step.lines:
        yield from _line(line, story, number, owed=step.kind is StoryKind.ENDED)
        number = " " * len(number)
    if step.remark:
        yield _aside(step.remark)
    if step.breaks:
        yield from here(story)
    for text in step.passed:
        yield _aside(text)


def _is_its_own_headline(step: StoryStep) -> bool:
    """Whether an action is called by nothing but its first instruction."""
    first = step.lines[0].text.rstrip().removesuffix(".") if step.lines else ""
    return step.kind is StoryKind.DONE and step.text == first


def _line(line: StoryLine, story: Story, before: str, *, owed: bool) -> Iterator[Paragraph]:
    act = f" [{line.act}]" if line.act else ""
    lead = _("{who} owes").format(who=line.who) if owed else f"{line.who} {line.voice}"
    yield Paragraph(f"{before}{lead}: ", f"{line.text}{act}", hang=10)
    if line.remark:
        yield _aside(line.remark, 10)
    if line.breaks:
        yield from here(story)


def here(story: Story) -> Iterator[Paragraph]:
    """Yield what broke the rule and what was known then."""
    yield Paragraph(f"  {_(HERE)}: ", f"{story.cause}.", hang=6)
    for known in story.known:
        yield Paragraph(_("      Known then: "), f"{known.finding}: {known.said}")
