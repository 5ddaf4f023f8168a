"""How strong the rules over a pathway are, as text and as plain values."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from typing import Any

from chamberwise.engine.mutants.strength import Strength, Survivor
from chamberwise.exports.proof.paragraph import Paragraph, wrapped

UNLISTED = "UNLISTED"


def strength_text(strength: Strength, *, every: int = 1) -> str:
    """Return a table by kind of edit, what killed the mutants, and every survivor."""
    killed = sum(each.killed for each in strength.killed)
    made = sum(each.made for each in strength.killed)
    same = sum(each.same for each in strength.killed)
    head = (
        f"{strength.pathway}: {made:,} mutants, {killed:,} killed ({_share(killed, made - same)})"
    )
    alike = f"; {same:,} look the same on every walk and are left out of the share" if same else ""
    sample = f"; a sample, 1 of every {every}, of {strength.total:,}" if every > 1 else ""
    told = wrapped([Paragraph("", f"{head}{alike}{sample}.")])
    blocks = [told, _kinds(strength), _killers(strength), wrapped(_left(strength))]
    return "\n\n".join("\n".join(block) for block in blocks if block)


def _kinds(strength: Strength) -> list[str]:
    width = max((len(each.kind) for each in strength.killed), default=4)
    lines = [f"  {'edit':<{width}}  {'made':>6}  {'killed':>6}  {'same':>6}  {'share':>6}"]
    for kind, made, killed, same in strength.killed:
        share = _share(killed, made - same)
        lines.append(f"  {kind:<{width}}  {made:>6,}  {killed:>6,}  {same:>6,}  {share:>6}")
    return lines


def _killers(strength: Strength) -> list[str]:
    width = max((len(name) for name in strength.by), default=0)
    lines = [f"  {name:<{width}}  {count:>6,}" for name, count in strength.by.items()]
    return [f"  {'killed by':<{width}}  {'killed':>6}", *lines] if lines else []


def _left(strength: Strength) -> Iterator[Paragraph]:
    for survivor in strength.survivors:
        yield Paragraph("  SURVIVES: ", _survivor(survivor))
    for name in strength.stale:
        said = f"{name} stands on the reviewed list and is killed or gone by now"
        yield Paragraph("  NOT NEEDED: ", said)


def _survivor(survivor: Survivor) -> str:
    why = f"reviewed: {survivor.reason}" if survivor.reason is not None else UNLISTED
    return f"{survivor.description} ({survivor.id}) {why}"


def _share(killed: int, made: int) -> str:
    """Return a share in per cent, cut and not rounded, so that 100 % means every one.

    >>> _share(999, 1000), _share(3, 3), _share(0, 0)
    ('99.9 %', '100 %', 'none')
    """
    if not made:
        return "none"
    return "100 %" if killed == made else f"{killed * 1000 // made / 10:.1f} %"


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
