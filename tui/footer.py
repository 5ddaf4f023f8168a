"""The footer and the help of a screen, made of the table of its keys."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from chamberwise.engine.language.texts import gettext as _
from chamberwise.tui.actions import KeyAction
from chamberwise.tui.present.parts import Part, Tone
from chamberwise.tui.present.words import key_word


def footer(
    actions: Iterable[KeyAction], shown: Mapping[str, str] | None = None, width: int = 78
) -> str:
    """Return the footer of a screen: keys and words. `shown` replaces a key, empty leaves it out.

    >>> from chamberwise.tui.actions import HELP, QUIT, STOP
    >>> footer((HELP, QUIT, STOP))
    '? help  q quit'
    """
    keys = shown or {}
    told = [each for each in actions if each.in_footer and keys.get(each.name, each.shown)]
    spared = sorted((each for each in told if each.spare), key=lambda each: -each.spare)
    for count in range(len(spared) + 1):
        left = [each for each in told if each not in spared[:count]]
        for brief in (False, True):
            line = _footer(left, keys, brief=brief)
            if len(line) <= width:
                return line
    return line


def _footer(told: Iterable[KeyAction], keys: Mapping[str, str], *, brief: bool) -> str:
    return "  ".join(
        f"{_(keys.get(each.name, each.shown))} {key_word((brief and each.brief) or each.word)}"
        for each in told
    )


def help_parts(actions: Iterable[KeyAction]) -> list[Part]:
    """Return one paragraph for each action: its key and its line of help."""
    actions = tuple(actions)
    width = max(len(_(action.shown)) for action in actions)
    return [
        Part(_(each.help), f"  {_(each.shown):<{width}}  ", lead_tone=Tone.KEY) for each in actions
    ]
