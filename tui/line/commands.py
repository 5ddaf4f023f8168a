"""The words line mode listens to, beside answers. One table; the help derives from it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from chamberwise.engine.language.texts import N_


class Verb(StrEnum):
    """What may be asked of line mode."""

    DONE = "done"
    BACK = "back"
    FORWARD = "forward"
    WHY = "why"
    KNOWN = "known"
    NOTE = "note"
    MAP = "map"
    RECORD = "record"
    REPEAT = "repeat"
    HELP = "help"
    QUIT = "quit"


@dataclass(frozen=True, slots=True)
class Command:
    """A verb, the letter that stands for it, and its line of help."""

    verb: Verb
    letter: str
    help: str
    also: tuple[str, ...] = ()
    """What else may be typed for it."""


COMMANDS = (
    Command(Verb.DONE, "Enter", N_("the action is done")),
    Command(Verb.BACK, "u", N_("take the last step back; b does it too"), ("b", "undo")),
    Command(Verb.FORWARD, "y", N_("make the step taken back again; f too"), ("f", "redo")),
    Command(Verb.WHY, "w", N_("why this step, and its sources")),
    Command(Verb.KNOWN, "k", N_("what is known, stale and unknown")),
    Command(
        Verb.NOTE, "n", N_("write a note, never patient identity; n and the words, or n alone")
    ),
    Command(Verb.MAP, "m", N_("the steps around this one")),
    Command(Verb.RECORD, "c", N_("save the record of this walk")),
    Command(Verb.REPEAT, "r", N_("repeat this step")),
    Command(Verb.HELP, "?", N_("this list")),
    Command(Verb.QUIT, "q", N_("leave; what was done is kept")),
)


def understood(typed: str) -> tuple[Verb | None, str]:
    """Return the verb typed, if it is one, and the words after it.

    >>> understood("n pupil is small")
    (<Verb.NOTE: 'note'>, 'pupil is small')
    >>> understood("")
    (<Verb.DONE: 'done'>, '')
    >>> understood("dry")
    (None, '')
    """
    if not typed.strip():
        return Verb.DONE, ""
    word, _, rest = typed.strip().partition(" ")
    for command in COMMANDS:
        meant = word.casefold() in (command.letter, command.verb.value, *command.also)
        if meant and (command.verb is Verb.NOTE or not rest):
            return command.verb, rest.strip()
    return None, ""
