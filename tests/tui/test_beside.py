"""Work beside the screen: its result, its failure, and that nobody waits for it on leaving."""

from __future__ import annotations

import asyncio
import subprocess
import sys
import time
from threading import Event

import pytest
from chamberwise.tui.beside import beside


async def test_the_result_comes_back() -> None:
    assert await beside(lambda: 6 * 7) == 42


async def test_a_failure_is_raised_where_the_result_is_awaited() -> None:
    def fails() -> None:
        raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        await beside(fails)


async def test_other_work_goes_on_meanwhile_and_giving_up_is_quiet() -> None:
    may_end = Event()
    task = asyncio.create_task(beside(lambda: may_end.wait(10)))
    await asyncio.sleep(0.01)
    task.cancel()
    may_end.set()
    with pytest.raises(asyncio.CancelledError):
        await task


def test_leaving_waits_for_nothing() -> None:
    program = (
        "import asyncio, time\n"
        "from chamberwise.tui.beside import beside\n"
        "async def main():\n"
        "    asyncio.create_task(beside(lambda: time.sleep(60)))\n"
        "    await asyncio.sleep(0.1)\n"
        "asyncio.run(main())\n"
    )
    begun = time.monotonic()
    made = subprocess.run([sys.executable, "-c", program], capture_output=True, check=False)
    assert (made.returncode, made.stderr) == (0, b"")
    assert time.monotonic() - begun < 30
