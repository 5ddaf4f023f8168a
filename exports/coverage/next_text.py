"""Why a drill was chosen to come next: where it begins, and what nobody has tried there yet."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap

from chamberwise.engine.drill.remembering.remembered import STAGE
from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.model.library import Library
from chamberwise.engine.model.step import PathwayId
from chamberwise.engine.model.words import ActId, ValueId
from chamberwise.exports.language.joining import inside
from chamberwise.exports.record.naming import act_title

WIDTH = 78
MOST_NAMED = 6


def next_text(
    library: Library, pathway: PathwayId, stage: ValueId, untried: Sequence[ActId]
) -> tuple[str, ...]:
    """Return lines of at most 78 columns: the stage, and the acts not tried there in a run."""
    words = library.words(pathway)
    known = words.findings.get(STAGE)
    value = known.value(stage) if known else None
    begins = _("Next: a drill of this pathway.")
    if value is not None:
        begins = _("Next: a drill that begins at “{stage}”.").format(stage=inside(value.label))
    named = [inside(act_title(words, act)) for act in untried]
    said = _("Every critical act was tried there in a run; least is known of how they go.")
    if named:
        listed = "; ".join(named[:MOST_NAMED])
        left = len(named) - MOST_NAMED
        if left > 0:
            listed = _("{acts}; and {left} more").format(acts=listed, left=left)
        said = _("Not tried there yet in a run that counts: {acts}.").format(acts=listed)
    told = " ".join((begins, said, _("No judgement of anybody lies in it.")))
    return tuple(wrap(told, WIDTH, break_long_words=False, break_on_hyphens=False))
