"""A claim without a source."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.checks.subject import Subject
from chamberwise.engine.diagnostics.code import Code
from chamberwise.engine.diagnostics.problem import Pointer, Problem, Severity
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.step import Action, Outcome, Step
from chamberwise.engine.model.words import Words
from chamberwise.engine.reading.tree import Tree

CODE = Code(
    "no-source",
    Severity.WARNING,
    N_("A claim without a source"),
    N_("Nobody can tell whether it was read, remembered or made up."),
)

_ADVICE = N_("Add `sources:`; `common-practice` is a source too.")


def check(subject: Subject) -> Iterator[Problem]:
    """Yield a problem for every claim of a step, a finding, a kit item or a rule without source."""
    for step in subject.pathway.steps.values():
        yield from _of_step(subject, step)
    yield from unsourced(subject.pathway.words, subject.tree)


def _of_step(subject: Subject, step: Step) -> Iterator[Problem]:
    at: Pointer = ("steps", step.id)
    for place, caution in enumerate(step.cautions):
        if not caution.sources and not step.sources:
            what = _("the caution of `{step}` names no source").format(step=step.id)
            yield subject.problem(CODE, (*at, "cautions", place), what, _(_ADVICE))
    if step.sources:
        return
    if isinstance(step, Action) and not all(line.sources for line in step.lines):
        what = _("what is done in `{step}` names no source").format(step=step.id)
        yield subject.problem(CODE, at, what, _(_ADVICE), at_key=True)
    elif step.why:
        what = _("the reason given in `{step}` names no source").format(step=step.id)
        yield subject.problem(CODE, (*at, "why"), what, _(_ADVICE))
    elif isinstance(step, Outcome) and not all(line.sources for line in step.owed):
        what = _("what `{step}` says is owed names no source").format(step=step.id)
        yield subject.problem(CODE, at, what, _(_ADVICE), at_key=True)


def unsourced(words: Words, tree: Tree) -> Iterator[Problem]:
    """Yield a problem for every rule, finding with signs or kit item that names no source."""
    for finding in words.findings.values():
        signs = any(value.sign and not value.sources for value in finding.values)
        if signs and not finding.choice and not finding.sources:
            what = _("the signs of `{finding}` name no source").format(finding=finding.id)
            yield _at(tree, ("findings", finding.id), what)
    for item in words.kit.values():
        if (item.why or item.amount) and not item.sources:
            yield _at(
                tree,
                ("kit", item.id),
                _("what `{item}` is for names no source").format(item=item.id),
            )
    for rule in words.rules.values():
        if not rule.sources:
            yield _at(
                tree,
                ("rules", rule.id),
                _("the rule `{rule}` names no source").format(rule=rule.id),
            )


def _at(tree: Tree, at: Pointer, what: str) -> Problem:
    return CODE.at(tree.source(at).file, at, tree.span(at, at_key=True), what, _(_ADVICE))
