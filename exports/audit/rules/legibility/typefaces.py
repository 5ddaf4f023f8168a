"""Few typefaces, none with serifs."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import (
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    Where,
    at_most,
    counted,
)
from chamberwise.exports.audit.subject import Subject


def family(name: str) -> str:
    """Return the family of a font's name.

    >>> family("Inter-Regular")
    'Inter'
    """
    return name.partition("-")[0].partition(",")[0]


def _measure(subject: Subject) -> Iterator[Measure]:
    faces = subject.printed.faces
    families = sorted({family(face.name) for face in faces})
    yield Measure(len(families), told=f"{len(families)}: {', '.join(families)}")
    for face in faces:
        told = _("{name} has serifs").format(name=face.name)
        yield counted(face.has_serifs, Where(), told, NO_FAULT_WARNED)


RULE = Rule(
    id="LEG-14",
    title=N_("Typeface families, all without serifs"),
    limit=at_most(N_("families"), warning=2),
    source=N_("NASA CR-177605 list"),
    mark=Mark.VERIFIED,
    measure=_measure,
)
