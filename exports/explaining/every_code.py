"""Every kind of problem there is, with who reports it."""

from __future__ import annotations

from collections.abc import Iterator
from types import ModuleType

from chamberwise.engine.brief import codes as of_lists
from chamberwise.engine.checks.declared import declared
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.drill.checking import check as of_drills
from chamberwise.engine.language.texts import N_
from chamberwise.engine.local import codes as of_sheets

CHECK, SHEET = N_("check"), N_("check, local sheet")
DRILL, LIST = N_("check, drill files"), N_("brief")


def every_code() -> Iterator[tuple[str, Code]]:
    """Yield those of reading and the checks first."""
    checked = declared()
    yield from ((CHECK, code) for code in checked)
    for reporter, module in ((SHEET, of_sheets), (DRILL, of_drills), (LIST, of_lists)):
        for code in _codes(module):
            if code not in checked:
                yield reporter, code


def _codes(module: ModuleType) -> list[Code]:
    return [each for each in vars(module).values() if isinstance(each, Code)]
