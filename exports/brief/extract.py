"""From a worked brief to what is said of it."""

from __future__ import annotations

from chamberwise.engine.brief.brief import Backup, Brief, CaseBrief
from chamberwise.engine.brief.work import range_told
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.digits import plain, shown
from chamberwise.exports.brief.content import NOT_SET, TITLE, BackupLine, BriefContent, CaseLine


def brief_content(brief: Brief) -> BriefContent:
    """Return the content of the sheet."""
    head = brief.head
    own = [
        _("Case {label}: {said}").format(label=case.label, said=said)
        for case in brief.cases
        for said in case.to_do
    ]
    return BriefContent(
        title=head.title or _(TITLE),
        unit=brief.unit,
        day=head.day,
        counted=brief.counted,
        chance=range_told(*brief.chance) if brief.chance else _("not worked: a risk is missing"),
        people=(
            (_("Reads aloud"), head.reader or _(NOT_SET)),
            (_("Takes over"), head.takes_over or _(NOT_SET)),
            (_("Stop word"), head.stop_word or _(NOT_SET)),
        ),
        to_do=(*brief.to_do, *own),
        cases=tuple(_case(each) for each in brief.cases),
    )


def _case(case: CaseBrief) -> CaseLine:
    risk = case.risk
    return CaseLine(
        label=case.label,
        eye=case.eye or _("eye not written"),
        anaesthesia=case.anaesthesia,
        risk=range_told(risk.low, risk.high) if risk else _("not worked"),
        points=risk.points if risk else (),
        ready=case.ready,
        planned=case.planned,
        backups=tuple(_backup(each) for each in case.backups),
        ceiling=case.ceiling,
        to_do=case.to_do,
    )


def _backup(backup: Backup) -> BackupLine:
    power = (
        _("not worked")
        if backup.exact is None
        else _("{shown} D").format(shown=shown(backup.exact, 2))
    )
    return BackupLine(
        backup.position.told,
        backup.title,
        power,
        backup.way,
        backup.beside,
        tuple(
            (_("{power} D").format(power=plain(each.power)), str(each.count), each.leaves)
            for each in backup.shelf
        ),
        backup.refused,
        backup.is_missing,
    )
