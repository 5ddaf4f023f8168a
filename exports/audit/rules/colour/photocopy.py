"""Words to be acted on survive a copier that knows black and white alone."""

from __future__ import annotations

from collections.abc import Iterator

from chamberwise.engine.language.numbers import decimal
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.audit.colour.lightness import lightness
from chamberwise.exports.audit.geometry import Box
from chamberwise.exports.audit.inked import to_act_on
from chamberwise.exports.audit.printed.content import Leaf
from chamberwise.exports.audit.rule import Mark, Measure, Rule, at_least, at_most
from chamberwise.exports.audit.subject import Subject

LEVELS = (96, 128, 192)
"""Of 256: where a copier set light, as usual or dark parts black from white. Ours, no source."""
PARTED = tuple(bytes(int(grey >= level) for grey in range(256)) for level in LEVELS)
"""For each level, makes each pixel black (0) or white (1)."""
LEAST = at_least(N_("of the words' area in the lesser of black and white"), warning=0.03)
BEHIND_DARK = at_least("L*", warning=80)
BEHIND_LIGHT = at_most("L*", warning=40)
MIDDLE = 50


def share_of_lesser(leaf: Leaf, box: Box) -> float:
    """Return how much of an area, once black and white, is in the lesser of the two.

    However the copier is set: the least of all levels counts.
    """
    scale = leaf.per_mm
    left, right = max(0, int(box.left * scale)), min(leaf.across, int(box.right * scale) + 1)
    rows = range(max(0, int(box.top * scale)), int(box.bottom * scale) + 1)
    seen = b"".join(leaf.grey[row * leaf.across + left : row * leaf.across + right] for row in rows)
    if not seen:
        return 0.0
    whites = (seen.translate(each).count(1) for each in PARTED)
    return min(min(white, len(seen) - white) for white in whites) / len(seen)


def _measure(subject: Subject) -> Iterator[Measure]:
    for each in to_act_on(subject):
        leaf = subject.sides[each.where.page - 1].leaf
        # A dash or a stroke alone fills its own box.
        if any(letter.isalnum() for letter in each.stretch.text):
            found = share_of_lesser(leaf, each.stretch.box.grown(0.3))
            told = _("{number} % of its area left as words").format(
                number=decimal(f"{100 * found:.0f}")
            )
            yield Measure(found, each.where, told, LEAST)
        ground = lightness(each.ground)
        limit = BEHIND_DARK if lightness(each.stretch.ink) < MIDDLE else BEHIND_LIGHT
        yield Measure(
            ground,
            each.where,
            _("ground of {ground} L*").format(ground=decimal(f"{ground:.0f}")),
            limit,
        )


RULE = Rule(
    id="COL-08",
    title=N_("Legible in a copy of black and white alone"),
    limit=LEAST,
    source=N_("common practice, no source"),
    mark=Mark.COMMON_PRACTICE,
    measure=_measure,
)
