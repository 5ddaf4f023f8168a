"""Rules of the engine on wording, held against what was printed."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.wording.rule import WordingRule
from chamberwise.engine.diagnostics.problem import Severity as Found
from chamberwise.engine.language.languages import GERMAN
from chamberwise.exports.audit.german.quantities import Search
from chamberwise.exports.audit.kinds import QUOTING, RUNNING
from chamberwise.exports.audit.rule import (
    ENGLISH_ALONE,
    EVERY_KIND,
    EVERY_LANGUAGE,
    NO_FAULT,
    NO_FAULT_WARNED,
    Mark,
    Measure,
    Rule,
    counted,
)
from chamberwise.exports.audit.subject import Subject
from chamberwise.exports.paper.sheet import Role


def hits(
    subject: Subject, rule: WordingRule, roles: tuple[Role, ...], german: Search | None = None
) -> Iterator[Measure]:
    """Yield what a rule of the engine, and its like in German, finds in words of some roles.

    What is not translated stays in English on a sheet in German, so both are searched there.
    """
    for _, block in subject.blocks(*roles):
        found = [hit.message for hit in rule.find(block.prose)]
        if subject.sheet.language == GERMAN.code and german is not None:
            found += german(block.prose)
        for message in found:
            yield counted(True, block.where, message)
        if not found:
            yield counted(False, block.where, "")


def printed_rule(
    name: str,
    rule: WordingRule,
    mark: Mark,
    roles: tuple[Role, ...] = RUNNING,
    german: Search | None = None,
) -> Rule:
    """Return a rule of the audit that asks the engine's; `german` searches German words."""
    limit = NO_FAULT if rule.severity is Found.ERROR else NO_FAULT_WARNED
    return Rule(
        id=name,
        title=rule.title,
        limit=limit,
        source=rule.source,
        mark=mark,
        measure=lambda subject: hits(subject, rule, roles, german),
        kinds=EVERY_KIND - QUOTING,
        languages=ENGLISH_ALONE if german is None else EVERY_LANGUAGE,
    )
