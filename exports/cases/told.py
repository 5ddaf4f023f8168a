"""How complete a table of cases is, in one sentence."""

from __future__ import annotations

from chamberwise.engine.cases.summary import Summary
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext


def completeness(found: Summary) -> str:
    """Return the counts as a sentence, e.g. `6 combinations, each leads to one plan; ...`."""
    parts = [
        _("{combinations}, {lead}").format(combinations=_combinations(found), lead=_lead(found)),
        ngettext(
            "{number} hangs on a local choice",
            "{number} hang on a local choice",
            found.on_a_choice,
        ).format(number=found.on_a_choice),
        ngettext(
            "{number} is declared impossible and leads to a second look",
            "{number} are declared impossible and lead to a second look",
            found.looked_at_again,
        ).format(number=found.looked_at_again),
    ]
    if found.never_told:
        parts.append(
            ngettext(
                "{number} more is declared impossible and never told in full on the way",
                "{number} more are declared impossible and never told in full on the way",
                found.never_told,
            ).format(number=found.never_told)
        )
    return "; ".join([*parts, _("{number} open.").format(number=found.open)])


def _combinations(found: Summary) -> str:
    number = found.cases
    return ngettext("{number} combination", "{number} combinations", number).format(number=number)


def _lead(found: Summary) -> str:
    if not found.open:
        return _("each leads to one plan with what is assumed")
    number = found.cases - found.open
    return ngettext(
        "{number} leads to one plan with what is assumed",
        "{number} lead to one plan with what is assumed",
        number,
    ).format(number=number)
