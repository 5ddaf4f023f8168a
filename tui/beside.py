"""Long work beside the screen, which stays alive and can be left at any moment."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from threading import Thread
from typing import TypeVar

Result = TypeVar("Result")


async def beside(work: Callable[[], Result]) -> Result:
    """Return what some work returns, done in a thread that nobody waits for when leaving."""
    loop = asyncio.get_running_loop()
    done: asyncio.Future[Result] = loop.create_future()

    def run() -> None:
        try:
            result = work()
        except BaseException as error:
            tell(done.set_exception, error)
        else:
            tell(done.set_result, result)

    def tell(settle: Callable[..., None], value: object) -> None:
        with suppress(RuntimeError):  # the program was left meanwhile
            loop.call_soon_threadsafe(lambda: None if done.done() else settle(value))

    Thread(target=run, daemon=True).start()
    return await done
