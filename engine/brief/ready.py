"""What to have open or near for what is known of a case: common practice; the unit's own first."""

from __future__ import annotations

from collections.abc import Mapping

FOR = {
    ("nucleus", "brunescent-or-white"): ("capsule dye", "dispersive viscoelastic, a second one"),
    ("no-fundal-view", "yes"): ("capsule dye",),
    ("pseudoexfoliation", "yes"): ("capsular tension ring", "capsule hooks"),
    ("phacodonesis", "yes"): ("capsular tension ring", "capsule hooks"),
    ("pupil", "small"): ("pupil expander",),
    ("pupil-below-3mm", "yes"): ("pupil expander",),
    ("alpha-blocker", "yes"): ("pupil expander", "phenylephrine for the chamber"),
    ("posterior-polar", "yes"): ("vitrectomy pack", "dispersive viscoelastic, a second one"),
    ("capsule-plaque", "yes"): ("vitrectomy pack",),
    ("previous-vitrectomy", "yes"): ("low infusion, both settings written down",),
    ("shallow-chamber", "yes"): ("dispersive viscoelastic, a second one",),
    ("cannot-lie-flat", "yes"): ("table tilt and pillows",),
    ("severe-anxiety", "yes"): ("a hand to hold, named beforehand",),
    ("head-tremor", "yes"): ("head support",),
}


def ready(written: Mapping[str, str]) -> tuple[str, ...]:
    """Return what to have ready for the answers of a case, in the order of the table."""
    found = [
        item
        for (name, word), items in FOR.items()
        if written.get(name, "").strip().casefold() == word
        for item in items
    ]
    return tuple(dict.fromkeys(found))
