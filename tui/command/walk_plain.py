"""A walk line by line: typed, piped or scripted."""

from __future__ import annotations

import io
import sys
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from chamberwise.engine.language.texts import gettext as _
from chamberwise.engine.store.home import home
from chamberwise.tui.command.finding_files import UnusableError
from chamberwise.tui.command.output import talk
from chamberwise.tui.command.status import Status
from chamberwise.tui.keeping import keep_record
from chamberwise.tui.line.conversation import Conversation
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.line.script import ScriptError, follow
from chamberwise.tui.terminal import line_width

if TYPE_CHECKING:
    from chamberwise.tui.command.walk import Started
    from chamberwise.tui.sitting import Sitting


def walk_plain(started: Started, sitting: Sitting) -> int:
    """Walk in line mode and return the exit status."""
    _take_any_bytes()
    conversation = Conversation(
        sitting,
        Paper(sys.stdout, line_width()),
        lambda: _typed_or_replayed(sitting),
        started.go_on_with,
        _saver(started, sitting),
        started.remarks,
    )
    try:
        if started.arguments.answers is not None:
            return _scripted(conversation, started.arguments.answers)
        conversation.talk()
    except KeyboardInterrupt:
        conversation.paper.say()
        conversation.leave()
        return Status.INTERRUPTED
    return Status.CLEAN


def _scripted(conversation: Conversation, name: str) -> int:
    try:
        follow(conversation, lines_of(name), _("answers") if name == "-" else name)
    except ScriptError as error:
        sys.stdout.flush()
        talk(str(error))
        return Status.UNUSABLE
    conversation.leave()
    return Status.CLEAN


def lines_of(name: str) -> Iterable[str]:
    """Return the lines of a script; `-` is standard input. Raises `UnusableError`."""
    if name == "-":
        return sys.stdin.read().splitlines()
    try:
        return Path(name).read_text(encoding="utf-8-sig").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        reason = getattr(error, "strerror", None) or _("it is not UTF-8 text")
        raise UnusableError(
            _("The answers in {name} cannot be read: {reason}.").format(name=name, reason=reason)
        ) from error


def _typed_or_replayed(sitting: Sitting) -> str | None:
    """Return the next line typed; piped, a replay goes on by itself where there is no more."""
    line = _typed()
    if line is None and sitting.walk.ahead and not sys.stdin.isatty():
        sys.stdout.write("\n")
        return ""
    return line


def _typed() -> str | None:
    line = sys.stdin.readline()
    if line and not sys.stdin.isatty():
        sys.stdout.write(line.rstrip("\r\n") + "\n")
    return line.rstrip("\r\n") if line else None


def _saver(started: Started, sitting: Sitting) -> Callable[[], str]:
    return lambda: keep_record(sitting, started.arguments.record, home())


def _take_any_bytes() -> None:
    if isinstance(sys.stdin, io.TextIOWrapper):
        sys.stdin.reconfigure(errors="replace")
