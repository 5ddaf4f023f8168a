"""What may be typed in a drill, and what there is to choose from by number."""

from __future__ import annotations

from collections.abc import Sequence

from chamberwise.engine.drill.ladder import Option
from chamberwise.engine.language.texts import N_
from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.present.parts import Part, Tone

OWN_WORDS = N_("your own words")
VALID = (
    (OWN_WORDS, N_("what you do, what you look at, or what you say aloud")),
    ("?", N_("help: first a nudge, then a menu, then the answer; the record says how much")),
    ("/sure /likely /guess", N_("at the end of a line: how sure you are; F4 on the screen")),
    ("back", N_("rehearsals only: take the last thing back")),
    ("again", N_("what was last seen")),
    ("end", N_("end the drill here")),
    ("q", N_("leave; what was done is kept, and --resume goes on")),
)


def option_parts(options: Sequence[Option]) -> list[Part]:
    """Return options by number."""
    return [
        Part(option.text, f"  {number}  ", lead_tone=Tone.KEY)
        for number, option in enumerate(options, start=1)
    ]


def valid_parts() -> list[Part]:
    """Return what may be typed."""
    rows = [(_(typed) if typed == OWN_WORDS else typed, _(does)) for typed, does in VALID]
    width = max(len(typed) for typed, _does in rows)
    return [Part(does, f"  {typed:<{width}}  ", lead_tone=Tone.KEY) for typed, does in rows]
