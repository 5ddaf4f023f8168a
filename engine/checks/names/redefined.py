"""A pathway gives a shared word another meaning.

Duties, kit and sources are left out: a pathway may carry its own, so that it can stand alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Note, Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.library import Loaded

CODE = Code(
    "redefined",
    Severity.ERROR,
    N_("A shared word defined again"),
    N_("A house rule that speaks of it would miss what this pathway means by it."),
)


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every own finding, choice, act or rule that has a shared word's name."""
    own, shared = _tables(subject.pathway.words), _tables(subject.library.shared)
    for kind, names in own.items():
        for name, each in names.items():
            if name in shared[kind]:
                is_choice = getattr(each, "choice", None) is not None
                yield _redefined(subject, "choices" if is_choice else kind, name)


def _tables(words: Words) -> dict[str, Mapping[str, Any]]:
    return {"findings": words.findings, "acts": words.acts, "rules": words.rules}


def _redefined(subject: Subject, table: str, name: str) -> Problem:
    message = _("`{name}` is already defined for every pathway").format(name=name)
    advice = _("Delete it here and use the shared one, or give this one a name of its own.")
    notes = list(_shared_one(subject.loaded, table, name))[:1]
    return subject.problem(CODE, (table, name), message, advice, at_key=True, notes=notes)


def _shared_one(loaded: Loaded, table: str, name: str) -> Iterator[Note]:
    for where in (table, "findings", "choices"):
        if (where, name) in loaded.defined:
            file, pointer = loaded.defined[where, name]
            yield Note(
                _("the shared one"), file, loaded.files[file].tree.span(pointer, at_key=True)
            )
