"""A conversation over text streams, what was typed shown where a person would see it."""

from __future__ import annotations

from collections.abc import Iterator
from io import StringIO

from chamberwise.tui.line.conversation import Conversation
from chamberwise.tui.line.paper import Paper
from chamberwise.tui.sitting import Sitting

from tests.tui.stage import sitting


def conversation(typed: list[str], walk: Sitting | None = None) -> tuple[Conversation, StringIO]:
    stream = StringIO()
    lines: Iterator[str] = iter(typed)

    def read() -> str | None:
        line = next(lines, None)
        stream.write("" if line is None else f"<{line}>\n")
        return line

    talk = Conversation(
        walk or sitting(),
        Paper(stream, 78),
        read,
        "chamberwise walk leaking-wound --resume",
        lambda: "The record is saved as walk.txt.",
    )
    return talk, stream


def transcript(*typed: str, walk: Sitting | None = None) -> str:
    talk, stream = conversation(list(typed), walk)
    talk.talk()
    return stream.getvalue()
