"""The command in a terminal of its own, read by an independent terminal emulator."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import struct
import sys
import termios
import time
from collections.abc import Callable
from pathlib import Path

import pyte

from tests.tui.stage import LIBRARY

COMMAND = (sys.executable, "-m", "chamberwise.tui.command.main")
ROOT = Path(__file__).parents[3]
PATIENCE = 15.0


def environment(home: Path, **more: str) -> dict[str, str]:
    kept = {name: value for name, value in os.environ.items() if name in ("PATH", "LANG")}
    base = {"TERM": "xterm-256color", "COLORTERM": "truecolor", "PYTHONPATH": str(ROOT / ".types")}
    return kept | base | {"CHAMBERWISE_HOME": str(home)} | more


class Terminal:
    """A running command: what it wrote, what its screen shows, and its exit status."""

    def __init__(
        self, words: tuple[str, ...], home: Path, size: tuple[int, int] = (80, 24), **more: str
    ) -> None:
        columns, rows = size
        self.raw = b""
        self.screen = pyte.Screen(columns, rows)
        self.stream = pyte.ByteStream(self.screen)
        self.process, self.handle = pty.fork()
        if self.process == 0:
            fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
            os.chdir(home)
            os.execve(COMMAND[0], [*COMMAND, *words], environment(home, **more))

    @property
    def shown(self) -> str:
        return "\n".join(line.rstrip() for line in self.screen.display)

    def type(self, keys: str) -> None:
        os.write(self.handle, keys.encode())

    def until(self, text: str) -> str:
        """Read until the screen shows a text; fail when it never does."""
        self._read_while(lambda: text not in self.shown)
        assert text in self.shown, self.shown
        return self.shown

    def _read_while(self, waiting: Callable[[], bool]) -> bool:
        """Read as long as there is something to wait for; return whether the program ended."""
        end = time.monotonic() + PATIENCE
        while waiting() and time.monotonic() < end:
            if not select.select([self.handle], [], [], 0.05)[0]:
                continue
            try:
                chunk = os.read(self.handle, 65536)
            except OSError:
                return True
            if not chunk:
                return True
            self.raw += chunk
            self.stream.feed(chunk)
        return False

    def ended(self) -> int:
        """Read to the end and return the exit status; what does not end is killed."""
        if not self._read_while(lambda: True):
            os.kill(self.process, signal.SIGKILL)
        _, status = os.waitpid(self.process, 0)
        os.close(self.handle)
        return os.waitstatus_to_exitcode(status)

    def kill(self) -> None:
        os.kill(self.process, signal.SIGKILL)
        os.waitpid(self.process, 0)
        os.close(self.handle)


def walk(home: Path, *words: str, size: tuple[int, int] = (80, 24), **more: str) -> Terminal:
    return Terminal(
        ("walk", "leaking-wound", "--library", str(LIBRARY), *words), home, size, **more
    )
