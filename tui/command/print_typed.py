"""What is typed after options of `print`: a distance, and a rule of the audit to be let through."""

from __future__ import annotations

from argparse import ArgumentTypeError
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _

if TYPE_CHECKING:
    from chamberwise.exports.audit.terms import Waiver

FARTHEST = 20.0


def metres(typed: str) -> float:
    """Return a distance typed in metres."""
    try:
        distance = float(typed)
    except ValueError:
        distance = 0.0
    if not 0.2 <= distance <= FARTHEST:
        told = _("`{typed}` is no distance; type metres from 0.2 to {most:g}, such as 1.5").format(
            typed=typed, most=FARTHEST
        )
        raise ArgumentTypeError(told)
    return distance


def waiver(typed: str) -> Waiver:
    """Return a rule of the audit that may be broken, and why."""
    from chamberwise.exports.audit.terms import Waiver
    from chamberwise.exports.printing.auditing import is_rule

    rule, _equals, reason = (part.strip() for part in typed.partition("="))
    rule, reason = rule.upper(), " ".join(reason.split())
    if not is_rule(rule):
        told = _(
            "the audit has no rule `{rule}`; `--report` names every rule, such as LEG-12"
        ).format(rule=rule)
        raise ArgumentTypeError(told)
    if not reason or not reason.isprintable():
        raise ArgumentTypeError(
            _("say why: `--waive {rule}=REASON`, the reason as plain text").format(rule=rule)
        )
    return Waiver(rule, reason)
