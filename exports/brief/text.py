"""The brief as plain text, in the order in which it is read aloud."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.brief.content import BackupLine, BriefContent, CaseLine
from chamberwise.exports.flow.lines import in_lines

WIDTH = 78


def text(brief: BriefContent) -> str:
    """Return the brief."""
    return "\n".join(_lines(brief))


def _lines(brief: BriefContent) -> Iterator[str]:
    yield brief.title.upper()
    yield " · ".join(each for each in (brief.unit, brief.day) if each)
    yield from _wrapped(brief.remarks[0])
    yield ""
    yield from (f"{what + ':':<13} {said}" for what, said in brief.people)
    yield _("At least one rupture on this list: {chance}").format(chance=brief.chance)
    yield from ("", _("TO DO BEFORE THE LIST STARTS"))
    for said in brief.to_do or (_("Nothing was found to be missing."),):
        yield from _wrapped(said, "  [ ] ", "      ")
    for case in brief.cases:
        yield from ("", *_case(case))
    yield ""
    for said in brief.remarks[1:]:
        yield from _wrapped(said)


def _case(case: CaseLine) -> Iterator[str]:
    about = ", ".join(
        each for each in (_("{eye} eye").format(eye=case.eye), case.anaesthesia) if each
    )
    yield _("CASE {label}: {about}").format(label=case.label, about=about)
    yield from _wrapped(_("Risk of rupture: {risk}").format(risk=case.risk), "  ", "    ")
    yield from (f"    {each}" for each in case.points)
    if case.ready:
        yield from _wrapped(
            _("Have open: {ready}").format(ready="; ".join(case.ready)), "  ", "    "
        )
    yield from _wrapped(_("Planned: {planned}").format(planned=case.planned), "  ", "    ")
    for backup in case.backups:
        yield from _backup(backup)
    yield from _wrapped(_("Ceiling: {ceiling}").format(ceiling=case.ceiling), "  ", "    ")


def _backup(backup: BackupLine) -> Iterator[str]:
    mark = _("MISSING ") if backup.is_missing else ""
    yield from _wrapped(
        mark
        + _("Backup, {position}: {lens}, {power}").format(
            position=backup.position, lens=backup.lens, power=backup.power
        ),
        "  ",
        "    ",
    )
    how = "; ".join(each for each in (backup.way, backup.beside) if each)
    yield from _wrapped(_("by {how}").format(how=how) if how else "", "    ", "      ")
    yield from _wrapped(_("on the shelf: {shelf}").format(shelf=_shelf(backup)), "    ", "      ")


def _shelf(backup: BackupLine) -> str:
    if backup.refused:
        return backup.refused
    told = (
        (
            _("{power} ({count} there, leaves {left})") if left else _("{power} ({count} there)")
        ).format(power=power, count=count, left=left)
        for power, count, left in backup.shelf
    )
    return "; ".join(told) or _("none near")


def _wrapped(said: str, first: str = "", rest: str = "") -> list[str]:
    return in_lines(said, WIDTH, first, rest)
