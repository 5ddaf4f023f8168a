"""A comparison as one entry of a change log for people: dated, the gravest change first."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.exports.comparing.content import ChangeShown, ComparisonShown, Weight
from chamberwise.exports.language.values import told


def entry(shown: ComparisonShown) -> str:
    """Return the entry in Markdown; editorial changes are counted only."""
    return "\n".join([f"## {shown.title}, {shown.dated}", "", *_lines(shown)])


def _lines(shown: ComparisonShown) -> Iterator[str]:
    for weight in (Weight.SAFETY, Weight.PROCEDURAL):
        for change in shown.of(weight):
            yield f"- {told(weight).upper()}: {_told(change)}"
    for verdict in shown.verdicts:
        yield _("- RULE: {title}: {now}, before: {was}.").format(
            title=verdict.title, now=verdict.now, was=verdict.was
        )
    editorial = len(shown.of(Weight.EDITORIAL))
    if editorial:
        yield ngettext(
            "- {number} editorial change.", "- {number} editorial changes.", editorial
        ).format(number=editorial)


def _told(change: ChangeShown) -> str:
    before = f"{change.where}, {change.kind}"
    if not change.was:
        return _("{before}: new: {whole}").format(before=before, whole=_whole(change.now))
    if not change.now:
        return _("{before}: no longer: {whole}").format(before=before, whole=_whole(change.was))
    return _("{before}: now {now}; before {whole}").format(
        before=before, now=change.now.removesuffix("."), whole=_whole(change.was)
    )


def _whole(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."
