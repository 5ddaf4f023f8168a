"""From codes, wording rules and audit rules to explanations; examples of checks come from a file

that is made out of the cases which the checks are tested with.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import cache
from importlib.resources import files

from chamberwise.engine.checks.wording import RULES as WORDING
from chamberwise.engine.checks.wording.rule import WordingRule
from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.speaking import spoken
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.rule import Limit, Mark, Rule
from chamberwise.exports.audit.rules.registry import RULES as AUDIT
from chamberwise.exports.explaining.content import Explained
from chamberwise.exports.explaining.every_code import every_code
from chamberwise.exports.language.values import told

WORDS, PRINT = N_("check, wording"), N_("print, audit")
_MARKS = {
    Mark.VERIFIED: N_("read"),
    Mark.MEMORY: N_("from memory"),
    Mark.COMMON_PRACTICE: N_("common practice"),
    Mark.COMPUTED: N_("computed"),
}


def explanations() -> dict[str, Explained]:
    """Return every explanation by its code: checks, wording rules, audit rules."""
    return _explanations(spoken().code)


@cache
def _explanations(_language: str) -> dict[str, Explained]:
    return {each.code: each for each in (*_checks(), *map(_wording, WORDING), *map(_audit, AUDIT))}


def _checks() -> Iterator[Explained]:
    text = files("chamberwise.protocols").joinpath("explained", "examples.json").read_text("utf-8")
    examples = json.loads(text)
    worded = {rule.slug for rule in WORDING}
    for reporter, code in every_code():
        if code.slug not in worded:
            example = examples[code.slug]
            wrong, right = example["wrong"], example["right"]
            severity = told(code.severity)
            yield Explained(
                code.slug, _(reporter), severity, _(code.title), _(code.why), wrong, right
            )


def _wording(rule: WordingRule) -> Explained:
    return Explained(
        rule.slug,
        _(WORDS),
        told(rule.severity),
        _(rule.title),
        _(rule.why),
        rule.wrong,
        rule.right,
        _(rule.source),
    )


def _audit(rule: Rule) -> Explained:
    limit = rule.limit
    wrong, right = _either_side(limit)
    return Explained(
        rule.id,
        _(PRINT),
        told(limit.severity),
        _(rule.title),
        _("The limit is {limit}.").format(limit=limit),
        decimal(f"{wrong:g}") + f" {_(limit.unit)}",
        decimal(f"{right:g}") + f" {_(limit.unit)}",
        f"{_(rule.source)} ({_(_MARKS.get(rule.mark, str(rule.mark)))})",
    )


def _either_side(limit: Limit) -> tuple[float, float]:
    """Return a value that the limit reports and one that it lets pass, both as near as is plain."""
    bounds = [each for each in (limit.error, limit.warning, limit.note) if each is not None]
    strictest = max(bounds) if limit.is_floor else min(bounds)
    loosest = min(bounds) if limit.is_floor else max(bounds)
    apart = max(abs(loosest) / 10, 1)
    return loosest - apart if limit.is_floor else loosest + apart, strictest
