"""The terminal program in a real pseudo-terminal: first screen, and key to paint."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import signal
import statistics
import struct
import sys
import tempfile
import termios
import time

from tests.bench.measure import Row, seconds

RUN = [sys.executable, "-m", "chamberwise.tui.command.main", "walk", "posterior-capsule-rupture"]
IMPORT = [sys.executable, "-c", "import textual.app"]
KEYS = [("1", b"Pulling the tip"), ("u", b"What is in the eye")] * 30
"""Each key with words of the step it leads to."""
BOUNCE = 0.3


def rows() -> list[Row]:
    """Measure at 80 by 24; the reference is importing the library the program is built on."""
    firsts, paints = zip(*(_run() for _ in range(3)), strict=True)
    first = min(firsts)
    keys = sorted(taken for run in paints for taken in run)
    median = statistics.median(keys) * 1000
    late = keys[int(len(keys) * 0.95)] * 1000
    imported = seconds(IMPORT, 3)
    reference = f"import textual.app {imported * 1000:.0f} ms"
    return [
        Row(
            "first screen",
            f"{first * 1000:.0f} ms",
            reference,
            first / imported,
            "under 0.7 s",
        ),
        Row(
            "key to paint, median",
            f"{median:.1f} ms (95 %: {late:.1f} ms)",
            reference,
            median / 1000 / imported,
            "under 16 ms",
        ),
    ]


def _run() -> tuple[float, list[float]]:
    """Return the seconds to the first question, and from each key to its paint."""
    with tempfile.TemporaryDirectory() as home:
        start = time.perf_counter()
        process, terminal = pty.fork()
        if process == 0:
            os.environ.update(TERM="xterm-256color", CHAMBERWISE_HOME=home)
            os.execv(RUN[0], RUN)
        fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        try:
            first = _until(terminal, b"What is in the eye now") - start
            _drain(terminal, 0.5)
            return first, [_key(terminal, key, words) for key, words in KEYS]
        finally:
            os.kill(process, signal.SIGKILL)
            os.waitpid(process, 0)
            os.close(terminal)


def _until(terminal: int, wanted: bytes) -> float:
    seen = b""
    while wanted not in seen:
        seen += os.read(terminal, 65536)
    return time.perf_counter()


def _key(terminal: int, key: str, words: bytes) -> float:
    """Return the seconds from a key until the step it leads to is on the screen."""
    _drain(terminal, BOUNCE)
    start = time.perf_counter()
    os.write(terminal, key.encode())
    return _until(terminal, words) - start


def _drain(terminal: int, for_seconds: float) -> None:
    until = time.perf_counter() + for_seconds
    while (left := until - time.perf_counter()) > 0:
        if select.select([terminal], [], [], left)[0]:
            os.read(terminal, 65536)
