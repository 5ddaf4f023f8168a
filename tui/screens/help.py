"""Every key of a screen."""

from __future__ import annotations

from collections.abc import Iterable

from chamberwise.engine.language.texts import gettext as _
from chamberwise.exports.record.standing import NO_IDENTITY
from chamberwise.tui.actions import MAP, NOTE, RECORD, KeyAction
from chamberwise.tui.footer import help_parts
from chamberwise.tui.present.parts import GAP, Part, Tone
from chamberwise.tui.screens.panel import Panel


def help_panel(actions: Iterable[KeyAction], *, of_a_walk: bool = False) -> Panel:
    """Return the help of a screen, and of the pages that open from a walk."""
    parts = help_parts(actions)
    pages = ((_("On the map"), MAP), (_("On the record"), RECORD), (_("In a note"), NOTE))
    for title, table in pages if of_a_walk else ():
        parts += [GAP, Part(title, "", Tone.MARK), *help_parts(table)]
    parts += [GAP, Part(_(NO_IDENTITY), _("Notes:") + " ")]
    return Panel(_("Keys"), parts)
