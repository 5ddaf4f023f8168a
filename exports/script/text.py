"""The reader's script as plain text, for a screen reader: one line a breath."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.control.content import FOLLOW
from chamberwise.exports.script.content import STANDING, Mark, Script, ScriptLine


def text(script: Script) -> str:
    """Return the script from top to bottom."""
    return "\n".join(_lines(script)) + "\n"


def _lines(script: Script) -> Iterator[str]:
    yield from (
        _("Reader's script: {title}").format(title=script.title),
        _(FOLLOW),
        script.trigger,
        *map(_, STANDING),
    )
    for step in script.steps:
        asked = f"{Mark.ASK.told}: " if step.is_asked else ""
        yield from (
            "",
            f"{step.number}. {asked}{' / '.join(step.headline)}",
        )
        for line in step.lines:
            yield from _line(line)


def _line(line: ScriptLine) -> Iterator[str]:
    first, *rest = line.breaths or ("",)
    mark = "" if line.mark is Mark.SAY else f"{line.mark.told}: "
    indent = "   " * (line.deep + 1)
    yield f"{indent}{mark}{first}".rstrip().rstrip(":") if not first else f"{indent}{mark}{first}"
    yield from (f"{indent}   {each}" for each in rest)
