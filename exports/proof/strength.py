"""How strong the rules over a pathway are, as text and as plain values."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

from chamberwise.engine.language.numbers import decimal, thousands
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.mutants.strength import Strength, Survivor
from chamberwise.exports.proof.paragraph import Paragraph, wrapped

UNLISTED = N_("UNLISTED")


def strength_text(strength: Strength, *, every: int = 1) -> str:
    """Return a table by kind of edit, what killed the mutants, and every survivor."""
    killed = sum(each.killed for each in strength.killed)
    made = sum(each.made for each in strength.killed)
    same = sum(each.same for each in strength.killed)
    parts = [
        _("{pathway}: {made} mutants, {killed} killed ({share})").format(
            pathway=strength.pathway,
            made=thousands(made),
            killed=thousands(killed),
            share=_share(killed, made - same),
        )
    ]
    if same:
        parts.append(
            _("{number} look the same on every walk and are left out of the share").format(
                number=thousands(same)
            )
        )
    if every > 1:
        parts.append(
            _("a sample, 1 of every {every}, of {total}").format(
                every=every, total=thousands(strength.total)
            )
        )
    told = wrapped([Paragraph("", "; ".join(parts) + ".")])
    blocks = [told, _kinds(strength), _killers(strength), wrapped(_left(strength))]
    return "\n\n".join("\n".join(block) for block in blocks if block)


def _kinds(strength: Strength) -> list[str]:
    width = max((len(each.kind) for each in strength.killed), default=4)
    edit, heads = _("edit"), (_("made"), _("killed"), _("same"), _("share"))
    lines = [f"  {edit:<{width}}" + "".join(f"  {each:>6}" for each in heads)]
    for kind, made, killed, same in strength.killed:
        share = _share(killed, made - same)
        lines.append(
            f"  {kind:<{width}}  {thousands(made):>6}  {thousands(killed):>6}"
            f"  {thousands(same):>6}  {share:>6}"
        )
    return lines


def _killers(strength: Strength) -> list[str]:
    width = max((len(name) for name in strength.by), default=0)
    lines = [f"  {name:<{width}}  {thousands(count):>6}" for name, count in strength.by.items()]
    return [f"  {_('killed by'):<{width}}  {_('killed'):>6}", *lines] if lines else []


def _left(strength: Strength) -> Iterator[Paragraph]:
    for survivor in strength.survivors:
        yield Paragraph(_("  SURVIVES: "), _survivor(survivor))
    for name in strength.stale:
        said = _("{name} stands on the reviewed list and is killed or gone by now").format(
            name=name
        )
        yield Paragraph(_("  NOT NEEDED: "), said)


def _survivor(survivor: Survivor) -> str:
    why = _(UNLISTED)
    if survivor.reason is not None:
        why = _("reviewed: {reason}").format(reason=survivor.reason)
    return f"{survivor.description} ({survivor.id}) {why}"


def _share(killed: int, made: int) -> str:
    """Return a share in per cent, cut and not rounded, so that 100 % means every one.

    >>> _share(999, 1000), _share(3, 3), _share(0, 0)
    ('99.9 %', '100 %', 'none')
    """
    if not made:
        return _("none")
    return "100 %" if killed == made else decimal(f"{killed * 1000 // made / 10:.1f}") + " %"


def strength_values(strength: Strength) -> dict[str, Any]:
    """Return the measure as one mapping."""
    return {
        "pathway": strength.pathway,
        "total": strength.total,
        "kinds": [each._asdict() for each in strength.killed],
        "by": dict(strength.by),
        "survivors": [asdict(each) for each in strength.survivors],
        "stale": list(strength.stale),
        "clean": strength.is_clean,
    }
