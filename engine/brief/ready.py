"""What to have open or near for what is known of a case: common practice; the unit's own first."""

from __future__ import annotations

from collections.abc import Mapping

from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _

FOR = {
    ("nucleus", "brunescent-or-white"): (
        N_("capsule dye"),
        N_("dispersive viscoelastic, a second one"),
    ),
    ("no-fundal-view", "yes"): (N_("capsule dye"),),
    ("pseudoexfoliation", "yes"): (N_("capsular tension ring"), N_("capsule hooks")),
    ("phacodonesis", "yes"): (N_("capsular tension ring"), N_("capsule hooks")),
    ("pupil", "small"): (N_("pupil expander"),),
    ("pupil-below-3mm", "yes"): (N_("pupil expander"),),
    ("alpha-blocker", "yes"): (N_("pupil expander"), N_("phenylephrine for the chamber")),
    ("posterior-polar", "yes"): (
        N_("vitrectomy pack"),
        N_("dispersive viscoelastic, a second one"),
    ),
    ("capsule-plaque", "yes"): (N_("vitrectomy pack"),),
    ("previous-vitrectomy", "yes"): (N_("low infusion, both settings written down"),),
    ("shallow-chamber", "yes"): (N_("dispersive viscoelastic, a second one"),),
    ("cannot-lie-flat", "yes"): (N_("table tilt and pillows"),),
    ("severe-anxiety", "yes"): (N_("a hand to hold, named beforehand"),),
    ("head-tremor", "yes"): (N_("head support"),),
}


def ready(written: Mapping[str, str]) -> tuple[str, ...]:
    """Return what to have ready for the answers of a case, in the order of the table."""
    found = [
        _(item)
        for (name, word), items in FOR.items()
        if written.get(name, "").strip().casefold() == word
        for item in items
    ]
    return tuple(dict.fromkeys(found))
