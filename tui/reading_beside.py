"""The second reader of the audit, at work in the first process while a copy goes on.

The copy asks once the first process has said that it has time. Where there is no answer, or one
that nothing can be made of, the copy reads for itself.
"""

from __future__ import annotations

from collections.abc import Callable
from multiprocessing import Pipe
from multiprocessing.connection import Connection
from typing import TYPE_CHECKING, Any, NamedTuple, TypeAlias

if TYPE_CHECKING:
    from chamberwise.exports.audit.printed.second import Second

OFTEN = 0.01
"""Seconds between two looks at whether the copy has come to its end."""
AT_MOST = 5.0
"""Seconds that the copy waits for an answer."""
READY = "ready"
Line: TypeAlias = "Connection[object, object]"


class Ends(NamedTuple):
    """The two ends of the line between the processes."""

    first: Line
    copy: Line


def line() -> Ends:
    """Return a new line, to be made before the copy."""
    return Ends(*Pipe())


def serve(first: Line, is_done: Callable[[], bool]) -> None:
    """Read what the copy asks for, until it is done."""
    import chamberwise.exports.audit.printed.second  # noqa: F401

    try:
        first.send(READY)
        while not is_done():
            if first.poll(OFTEN):
                first.send(_read(first.recv()))
    except (EOFError, OSError):
        return  # the copy is gone; whoever asks for its work will see


def _read(asked: Any) -> Second | None:
    """Return what the second reader finds; what is wrong with a file the copy will say."""
    from chamberwise.exports.audit.printed.second import second

    try:
        return second(*asked)
    except Exception:
        return None


def reader(copy: Line) -> Callable[[bytes, range | None], Callable[[], Second]]:
    """Return what asks the first process to read, if it has time, and else reads in the copy."""
    from chamberwise.exports.audit.printed.second import Second, second

    def asked(pdf: bytes, pages: range | None) -> Callable[[], Second]:
        is_asked = False
        try:
            if copy.poll() and copy.recv() == READY:
                copy.send((pdf, pages))
                is_asked = True
        except (EOFError, OSError):
            is_asked = False

        def found() -> Second:
            try:
                answer = copy.recv() if is_asked and copy.poll(AT_MOST) else None
            except (EOFError, OSError):
                answer = None
            return answer if isinstance(answer, Second) else second(pdf, pages)

        return found

    return asked
