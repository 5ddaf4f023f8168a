"""Every kind of problem that reading, the checks and translations can report, each once."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from pkgutil import walk_packages

from chamberwise.engine import checks
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.reading import codes
from chamberwise.engine.translating import codes as of_translations


@cache
def declared() -> tuple[Code, ...]:
    """Return the codes, those of reading first, in the order in which modules declare them."""
    said = (*vars(codes).values(), *vars(of_translations).values())
    found = {id(each): each for each in said if isinstance(each, Code)}
    for module in walk_packages(checks.__path__, f"{checks.__name__}."):
        for each in vars(import_module(module.name)).values():
            if isinstance(each, Code):
                found[id(each)] = each
    return tuple(found.values())
