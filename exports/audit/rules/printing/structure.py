"""The file says its language and title, and is tagged."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import NO_FAULT, Mark, Measure, Rule, Where, counted
from chamberwise.exports.audit.subject import Subject


def _measure(subject: Subject) -> Iterator[Measure]:
    told = subject.printed.told
    sheet = subject.sheet
    checks = (
        (
            told.language == sheet.language,
            _('language "{language}"').format(language=told.language),
        ),
        (told.title == sheet.title, _('title "{title}"').format(title=told.title)),
        (told.shows_title, _("the title is not shown in the window")),
        (told.is_marked, _("not marked as tagged")),
        (told.has_structure, _("no structure tree")),
    )
    for is_right, fault in checks:
        yield counted(not is_right, Where(), fault)


RULE = Rule(
    id="PRT-10",
    title=N_("Language, title, tags and structure"),
    limit=NO_FAULT,
    source=N_("ISO 14289-1, from memory; read back from the file"),
    mark=Mark.MEMORY,
    measure=_measure,
)
