"""How complete a table of cases is, in one sentence."""

from __future__ import annotations

from chamberwise.engine.cases.summary import Summary


def completeness(found: Summary) -> str:
    """Return the counts as a sentence, e.g. `6 combinations, each leads to one plan; ...`."""
    settled = found.cases - found.open
    lead = "each leads" if not found.open else f"{settled} lead" if settled != 1 else "1 leads"
    parts = [
        f"{_count(found.cases, 'combination')}, {lead} to one plan with what is assumed",
        f"{found.on_a_choice} {_verb(found.on_a_choice, 'hang')} on a local choice",
        f"{found.looked_at_again} {_are(found.looked_at_again)} declared impossible and "
        f"{_verb(found.looked_at_again, 'lead')} to a second look",
    ]
    if found.never_told:
        never = found.never_told
        parts.append(
            f"{never} more {_are(never)} declared impossible and never told in full on the way"
        )
    return "; ".join([*parts, f"{found.open} open."])


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def _verb(number: int, verb: str) -> str:
    return f"{verb}s" if number == 1 else verb


def _are(number: int) -> str:
    return "is" if number == 1 else "are"
