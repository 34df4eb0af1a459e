"""Runs a coroutine in a thread of its own: a browser driven beside may hold the loop of this one."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine
from concurrent.futures import ThreadPoolExecutor
from typing import Any, TypeVar

Answer = TypeVar("Answer")
MOST_TURNS = 6000


def apart(coroutine: Coroutine[Any, Any, Answer]) -> Answer:
    """Return what a coroutine comes to."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, coroutine).result()


async def until(is_so: Callable[[], bool]) -> None:
    """Let the others run until something is so."""
    for _ in range(MOST_TURNS):
        if is_so():
            return
        await asyncio.sleep(0.005)
    raise AssertionError("it never became so")


async def turns(count: int = 10) -> None:
    """Let the others run, by turns and not by the clock: on a busy computer a clock runs on while nobody works."""
    for _ in range(count):
        await asyncio.sleep(0.005)
