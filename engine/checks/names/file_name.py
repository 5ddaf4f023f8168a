"""The file carries the pathway's name."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePath

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.codes import FILE_NAME as CODE


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem when the file is named otherwise than the pathway in it."""
    name, file = subject.pathway.id, PurePath(subject.tree.file)
    if file.stem != name:
        message = _("`{name}` stands in a file named `{file}`").format(name=name, file=file.name)
        advice = _("Rename the file to `{name}.yaml`, or the pathway to `{stem}`.").format(
            name=name, stem=file.stem
        )
        yield subject.problem(CODE, ("pathway",), message, advice)
