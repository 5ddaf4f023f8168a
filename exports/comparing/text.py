"""A comparison as text: the gravest first; nothing wider than 78 columns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chamberwise.engine.language.texts import N_, ngettext
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.comparing.content import (
    ChangeShown,
    ComparisonShown,
    MendShown,
    MetShown,
    WalkShown,
    Weight,
)
from chamberwise.exports.control.content import day
from chamberwise.exports.language.values import told
from chamberwise.exports.proof.paragraph import GAP, Paragraph, wrapped
from chamberwise.exports.record.standing import STANDING
from chamberwise.exports.stamp.content import CopyShown

MEANS = N_(
    "A rating follows written rules, not judgement: read every change before you "
    "approve. What was not compared is whether either version is right."
)
TELLS = N_("`chamberwise prove` tells a walk that breaks a rule.")
MOST_CASES = 5
NOTHING = N_("nothing")


def comparison_text(shown: ComparisonShown) -> str:
    """Return one comparison as paragraphs."""
    return "\n".join(wrapped(_told(shown)))


def what_it_means() -> str:
    """Return what a comparison says and what it does not."""
    return "\n".join(wrapped([Paragraph("", _(MEANS)), Paragraph("", _(STANDING))]))


def counted(shown: ComparisonShown) -> str:
    """Return how many changes there are of each weight."""
    if not shown.changes:
        return _("No change in meaning.")
    counts = (f"{len(shown.of(each))} {told(each)}" for each in Weight if shown.of(each))
    number = len(shown.changes)
    said = ngettext("{number} change: {counts}.", "{number} changes: {counts}.", number)
    return said.format(number=number, counts=", ".join(counts))


def _told(shown: ComparisonShown) -> Iterator[Paragraph]:
    yield Paragraph("", f"{shown.title} ({shown.pathway})")
    yield Paragraph(_("  was: "), shown.was)
    yield Paragraph(_("  now: "), shown.now)
    yield Paragraph("  ", counted(shown))
    if not shown.changes:
        return
    number = 0
    for weight in Weight:
        found = shown.of(weight)
        if found:
            yield GAP
            yield Paragraph("", told(weight).upper())
        for change in found:
            number += 1
            yield from _change(number, change)
    yield GAP
    yield Paragraph("", _("WALKS"))
    yield Paragraph("  ", shown.behaviour)
    if shown.walk:
        yield from _walk(shown.walk)
    yield from _rules(shown)
    yield from _cases(shown)
    yield from _to_do(shown)


def _change(number: int, change: ChangeShown) -> Iterator[Paragraph]:
    yield Paragraph(f"  {number:>2}. ", f"{change.where}: {change.kind}.")
    yield Paragraph(_("      was: "), change.was or _(NOTHING))
    yield Paragraph(_("      now: "), change.now or _(NOTHING))
    yield Paragraph("      (", f"{change.why})")


def _walk(walk: WalkShown) -> Iterator[Paragraph]:
    for move in walk.moves:
        yield Paragraph(f"  {move.number:>2}. {move.lead}: ", move.text)
        if move.answer:
            yield Paragraph(_("      Answered: "), move.answer)
        for text in move.passed:
            yield Paragraph("      (", f"{text})")
    yield from _met(_("Then, before: "), walk.was)
    yield from _met(_("Then, now:    "), walk.now)


def _met(lead: str, met: MetShown) -> Iterator[Paragraph]:
    for text in met.passed:
        yield Paragraph("      (", f"{lead.rstrip(': ')}: {text})")
    yield Paragraph(f"  {lead}", f"{met.lead}: {met.text} ({met.place})", hang=6)
    for line in met.lines:
        yield Paragraph("      ", line, hang=8)


def _rules(shown: ComparisonShown) -> Iterator[Paragraph]:
    if not shown.standing:
        return
    yield GAP
    yield Paragraph("", _("RULES"))
    if not shown.verdicts:
        yield Paragraph(
            "  ", _("No rule changed its verdict: {standing}.").format(standing=shown.standing)
        )
    for each in shown.verdicts:
        yield Paragraph("  ", f"{each.title} ({each.rule})", hang=4)
        yield Paragraph(_("    was: "), each.was)
        yield Paragraph(_("    now: "), each.now)
    if shown.verdicts:
        yield Paragraph(
            "  ", _("Now: {standing}. {tells}").format(standing=shown.standing, tells=_(TELLS))
        )


def _cases(shown: ComparisonShown) -> Iterator[Paragraph]:
    if not shown.cases:
        return
    yield GAP
    yield Paragraph("", _("CASES"))
    for each in shown.cases[:MOST_CASES]:
        count = (
            _("{count} cases, such as").format(count=each.count) if each.count > 1 else _("1 case")
        )
        yield Paragraph("  ", f"{count}: {each.example}", hang=4)
        yield Paragraph(_("    was: "), each.was)
        yield Paragraph(_("    now: "), each.now)
    left = shown.cases[MOST_CASES:]
    if left:
        number = sum(each.count for each in left)
        yield Paragraph(
            "  ", _("And {number} more cases; `--format json` has them all.").format(number=number)
        )


def _to_do(shown: ComparisonShown) -> Iterator[Paragraph]:
    said = tuple(_said(shown))
    if said:
        yield GAP
        yield Paragraph("", _("TO DO"))
        yield from said


def _said(shown: ComparisonShown) -> Iterator[Paragraph]:
    if shown.reprint:
        yield Paragraph(
            _("  Print anew: "),
            _("every sheet of {reprint}").format(reprint=_listed(shown.reprint)),
            hang=4,
        )
    for copy in shown.take_down:
        yield Paragraph(_("  Take down: "), _copy(copy), hang=4)
    if shown.cards:
        yield Paragraph(
            _("  Hand out anew: "),
            _("role cards of {cards}").format(cards=_listed(shown.cards)),
            hang=4,
        )
    if shown.rehearse:
        what = _(", above all: {acts}").format(acts=_listed(shown.acts)) if shown.acts else ""
        yield Paragraph(_("  Rehearse again: "), f"{_listed(shown.rehearse)}{what}", hang=4)
    for mend in shown.mend:
        yield Paragraph(_("  Mend the sheet: "), mend_told(mend), hang=4)
    for drill in shown.drills:
        said = _("{title} (chamberwise drill {pathway} --scenario {name})").format(
            title=drill.title, pathway=drill.pathway, name=drill.name
        )
        yield Paragraph(_("  Drill again: "), said, hang=4)


def mend_told(mend: MendShown) -> str:
    """Return what a line of a local sheet names, and what that is called now."""
    said = _("{file}:{line}: `{was}` is called `{now}` now")
    if not mend.now:
        said = _("{file}:{line}: `{was}` is gone")
    return said.format(file=mend.file, line=mend.line, was=mend.was, now=mend.now)


def _copy(copy: CopyShown) -> str:
    hangs = _("hangs: {hangs}").format(hangs=copy.hangs) if copy.hangs else _("no place told")
    return _("{sheet} {code}, printed {printed}, {hangs}").format(
        sheet=copy.sheet, code=copy.code, printed=day(copy.printed), hangs=hangs
    )


def _listed(names: Sequence[str]) -> str:
    return ", ".join(names)
