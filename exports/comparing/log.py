"""A comparison as one entry of a change log for people: dated, the gravest change first."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.exports.comparing.content import ChangeShown, ComparisonShown, Weight


def entry(shown: ComparisonShown) -> str:
    """Return the entry in Markdown; editorial changes are counted only."""
    return "\n".join([f"## {shown.title}, {shown.dated}", "", *_lines(shown)])


def _lines(shown: ComparisonShown) -> Iterator[str]:
    for weight in (Weight.SAFETY, Weight.PROCEDURAL):
        for change in shown.of(weight):
            yield f"- {weight.upper()}: {_told(change)}"
    for verdict in shown.verdicts:
        yield f"- RULE: {verdict.title}: {verdict.now}, before: {verdict.was}."
    editorial = len(shown.of(Weight.EDITORIAL))
    if editorial:
        yield f"- {editorial} editorial {'change' if editorial == 1 else 'changes'}."


def _told(change: ChangeShown) -> str:
    before = f"{change.where}, {change.kind}"
    if not change.was:
        return f"{before}: new: {_whole(change.now)}"
    if not change.now:
        return f"{before}: no longer: {_whole(change.was)}"
    return f"{before}: now {change.now.removesuffix('.')}; before {_whole(change.was)}"


def _whole(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."
