"""What is said while a counterexample is replayed, and the command that replays it."""

from __future__ import annotations

import shlex
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.language.texts import ngettext
from chamberwise.engine.meaning.state import Answered
from chamberwise.engine.model.step import Question
from chamberwise.engine.reading.library import Loaded
from chamberwise.engine.walk.walk import Walk
from chamberwise.exports.record.naming import answer_label


def replay_command(
    loaded: Loaded, pathway: str, library: Path | None = None, folder: Path | None = None
) -> Callable[[str], str]:
    """Return what makes the command that replays a key of a pathway.

    `library` is the folder as typed, if one was; `folder` the one read. The file is named where
    the pathway is not of the folder.
    """
    file = loaded.file_of[pathway]
    words = ["chamberwise", "walk"]
    if folder is not None and Path(file).resolve().parent != folder.resolve():
        words.append(file)
    elif loaded.sheet:
        words.append(pathway)
    rest = [] if library is None else ["--library", str(library)]
    rest += ["--local", loaded.sheet] if loaded.sheet else []
    return lambda key: shlex.join([*words, "--replay", key, *rest])


@dataclass(frozen=True, slots=True)
class Broken:
    """A rule that a replayed walk breaks: at which step, counted from 1, and how."""

    step: int
    title: str
    cause: str


def remarks(walk: Walk, broken: Sequence[Broken], next_key: str) -> list[str]:
    """Return what a replay says at the step stood on; nothing where no walk is replayed."""
    if not walk.replay:
        return []
    if walk.is_off_replay:
        return [_("You have left the replay; u takes your own steps back.")]
    here = len(walk.legs) + 1
    told = [
        _told(each, here)
        for each in broken
        if each.step <= here and (each.step == here or not walk.ahead)
    ]
    return [_way_on(walk, next_key), *told]


def _told(broken: Broken, here: int) -> str:
    cause = f"{broken.cause[:1].upper()}{broken.cause[1:]}"
    if broken.step == here:
        return _("Here a rule breaks: {title}. {cause}.").format(title=broken.title, cause=cause)
    return _("In step {step} a rule breaks: {title}. {cause}.").format(
        step=broken.step, title=broken.title, cause=cause
    )


def _way_on(walk: Walk, next_key: str) -> str:
    left = len(walk.ahead)
    if not left:
        return _("The replay ends here.")
    answer = _next_answer(walk)
    if answer:
        return ngettext(
            "Replay: {key} answers “{answer}” ({count} move left).",
            "Replay: {key} answers “{answer}” ({count} moves left).",
            left,
        ).format(key=next_key, answer=answer, count=left)
    return ngettext(
        "Replay: {key} goes on ({count} move left).",
        "Replay: {key} goes on ({count} moves left).",
        left,
    ).format(key=next_key, count=left)


def _next_answer(walk: Walk) -> str:
    move, step = walk.ahead[0], walk.step
    if not isinstance(move, Answered) or not isinstance(step, Question):
        return ""
    answer = next(each for each in step.answers if each.id == move.answer)
    finding = walk.library.finding(walk.state.place.pathway, step.ask)
    return answer_label(finding, answer)
