"""Contraindications are asked before a dose is worked; one that is unknown counts as there."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.working.form import UNKNOWN, Input, Kind
from chamberwise.engine.working.given import Given
from chamberwise.engine.working.refusal import Refusal, RefusedError


def question(name: str, meaning: str) -> Input:
    """Return a question that has to be answered before anything is worked."""
    return Input(
        name=name, meaning=meaning, example="no", kind=Kind.WORD, words=("no", "yes", UNKNOWN)
    )


def refuse_if_any(given: Given, questions: Sequence[Input], why: str) -> None:
    """Refuse a dose where one of the answers is not a plain no. Raises `RefusedError`."""
    refusals = []
    for each in questions:
        said = given.word(each.name)
        if said == "yes":
            what = _("{meaning}: no dose is worked").format(meaning=_(each.meaning))
            refusals.append(Refusal(each.name, what, why, _("Another way is looked for.")))
        elif said == UNKNOWN:
            what = _("{meaning}: unknown, so no dose is worked").format(meaning=_(each.meaning))
            refusals.append(Refusal(each.name, what, why, _("It is found out first.")))
    if refusals:
        raise RefusedError(refusals)
