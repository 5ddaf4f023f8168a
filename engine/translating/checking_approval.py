"""What is wrong with the approval of a translation that calls itself approved."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.approval.people import is_one_of
from chamberwise.engine.approval.standing import NEVER_SEALED
from chamberwise.engine.approval.translations import fallen_parts
from chamberwise.engine.diagnostics.problem import Problem
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.reading.translation_file import TranslationFile
from chamberwise.engine.reading.tree import Tree
from chamberwise.engine.translating import codes


def approval_problems(tree: Tree, file: TranslationFile) -> Iterator[Problem]:
    """Yield why an approval does not count: nobody stands for it, or not for what it says now."""
    fallen = fallen_parts(file)
    if not file.approved_by or not file.approved_on:
        message = _("the status is `approved`, and nobody is named who approved it, or when")
        advice = _("Write `status: unreviewed`, and let it be approved with `chamberwise approve`.")
        yield _nobody(tree, "status", message, advice)
    elif not file.translators:
        message = _("it does not say who translated it, so nobody knows who may approve it")
        advice = _("Add `translated by: [NAME]`, and let somebody else approve it.")
        yield _nobody(tree, "status", message, advice)
    elif is_one_of(file.approved_by, file.translators):
        message = _("{person} is translator and approver").format(person=file.approved_by)
        yield _nobody(tree, "approved by", message, _("Let somebody else approve it."))
    elif fallen == (NEVER_SEALED,):
        message = _("the approval does not say which content it was given to")
        advice = _("Let it be approved with `chamberwise approve`, which writes that down.")
        yield _fallen(tree, "status", message, advice)
    elif fallen:
        parts = ", ".join(f"`{each}`" for each in fallen)
        message = _("changed since it was approved: {parts}").format(parts=parts)
        advice = _("Undo the edit, or let it be approved again.")
        yield _fallen(tree, "approved content", message, advice)


def _nobody(tree: Tree, key: str, message: str, advice: str) -> Problem:
    return codes.NOT_APPROVED.at(tree.file, (key,), tree.span((key,)), message, advice)


def _fallen(tree: Tree, key: str, message: str, advice: str) -> Problem:
    return codes.EDITED.at(tree.file, (key,), tree.span((key,)), message, advice)
