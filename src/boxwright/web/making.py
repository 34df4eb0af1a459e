"""Screens, printed sheets and what changed of a drawing, made beside the loop so that no hand waits for them.

They are made from a study that no longer changes (`screens.Asked`), so that nothing is shared with the loop but what is
kept of it (`printed`). One screen is made at a time, and only for somebody who still waits for it. What is sent is of
the text as it is when it is sent; a text that goes on changing is followed a few times, and then the page asks again.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from typing import TypeVar

from boxwright.web import contract
from boxwright.web.printed import pages
from boxwright.web.screens import Asked, Screens, changed_in, made_of, whole_of
from boxwright.web.session import Session

Answer = TypeVar("Answer")
MOST_TRIES = 3
"""How often a screen is made anew because the text was changed while it was made."""
SWITCH = 0.0005
"""How long (s) a thread that makes a screen may go on while a hand waits for its numbers."""


class Making:
    """Makes what takes longer than a hand should wait."""

    def __init__(self, screens: Screens) -> None:
        self._screens = screens
        self._one = asyncio.Lock()
        self._making = ThreadPoolExecutor(1, "boxwright-screen")
        self._redrawing = ThreadPoolExecutor(1, "boxwright-redraw")

    async def screen(
        self, session: Session, name: str, slot: contract.Slot, is_wanted: Callable[[], Awaitable[bool]]
    ) -> contract.Screen | None:
        """Return a whole screen, None where there is none of that name or nobody waits for it any more."""
        async with self._one:
            for _ in range(MOST_TRIES):
                if not await is_wanted():
                    return None
                asked = self._screens.asked(session, name, slot)
                made = await self._apart(self._making, made_of, asked)
                if made is None or session.rev == asked.rev:
                    break
        if made is not None and session.rev == asked.rev:
            self._screens.sent(asked, made.shown)
        return made.screen if made is not None else None

    async def pages(
        self, session: Session, name: str, slot: contract.Slot, is_wanted: Callable[[], Awaitable[bool]]
    ) -> list[contract.Page]:
        """Return the pages of one printed sheet, none where nobody waits for them any more."""
        async with self._one:
            if not await is_wanted():
                return []
            asked = self._screens.asked(session, name, slot)
            return await self._apart(self._making, _pages_of, asked)

    async def patches(self, session: Session, name: str, slot: contract.Slot) -> list[contract.Patch] | None:
        """Return what changed of what a tab was sent; None where the text changed again meanwhile."""
        asked = self._screens.asked(session, name, slot)
        before = self._screens.before(asked)
        if before is None:
            return [] if self._screens.is_drawn(asked) else whole_of(asked)
        found, shown = await self._apart(self._redrawing, changed_in, asked, before)
        if session.rev != asked.rev:
            return None
        self._screens.sent(asked, shown)
        return found

    async def _apart(self, pool: ThreadPoolExecutor, make: Callable[..., Answer], *asked: object) -> Answer:
        return await asyncio.get_running_loop().run_in_executor(pool, make, *asked)

    def stop(self) -> None:
        """Make nothing more."""
        for pool in (self._making, self._redrawing):
            pool.shutdown(wait=False, cancel_futures=True)


def _pages_of(asked: Asked) -> list[contract.Page]:
    return pages(asked.seen, asked.name, asked.planned)
