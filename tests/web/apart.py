"""Runs a coroutine in a thread of its own: a browser driven beside may hold the loop of this one."""

from __future__ import annotations

import asyncio
from collections.abc import Coroutine
from concurrent.futures import ThreadPoolExecutor
from typing import Any, TypeVar

Answer = TypeVar("Answer")


def apart(coroutine: Coroutine[Any, Any, Answer]) -> Answer:
    """Return what a coroutine comes to."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, coroutine).result()
