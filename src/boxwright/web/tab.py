"""One open page, as the room knows it: what it looks at, what it said and waits, what it is still to be told."""

from __future__ import annotations

import asyncio
from collections import deque
from collections.abc import Awaitable, Callable

from pydantic import BaseModel

from boxwright.web import contract

MOST_QUEUED = 200
"""Edits of one tab that may wait; a tab that sends more is shut out."""
MOST_TOLD = 2_000
"""Messages a page may lag behind; one that lags further is shut out and comes back to the whole state."""
Sending = Callable[[str], Awaitable[None]]


class Tab:
    """One open page: what it looks at, its messages that wait, and what it is still to be told.

    Nobody waits for a page that is slow to listen: what it is told queues up here and is sent as it takes it.
    """

    def __init__(self) -> None:
        self.page = ""
        """The name the page made up for itself, by which its last word is told to be its own."""
        self.heard = -1
        """The number of the last message of this page that was handled, its hello aside; below 0 before any."""
        self.is_over = False
        self.is_gone = asyncio.Event()
        self.slot = contract.Slot()
        self.screen = "plan"
        self.edits: deque[contract.Up] = deque()
        self.move: contract.Move | None = None
        self.in_hand: contract.Move | None = None
        """The move whose night is to be worked out as soon as the hand rests."""
        self.woken = asyncio.Event()
        self.told: deque[str] = deque()
        self.has_news = asyncio.Event()

    def put(self, message: contract.Up) -> bool:
        """Take a message in; False where too many wait."""
        if isinstance(message, contract.Move):
            self.move = message
        else:
            if not isinstance(message, (contract.Hello, contract.Look, contract.Seek)):
                self.move = None  # an edit or a cancel: the preview before it is over
            self.edits.append(message)
        self.woken.set()
        return len(self.edits) <= MOST_QUEUED

    def next(self) -> contract.Up | None:
        """Return the message that is next: edits first, then the newest preview."""
        if self.edits:
            return self.edits.popleft()
        move, self.move = self.move, None
        return move

    async def rests(self, seconds: float) -> bool:
        """Wait for the next message; True where a hand that holds something rested so long before one came."""
        try:
            await asyncio.wait_for(self.woken.wait(), seconds if self.in_hand is not None else None)
        except TimeoutError:
            return True
        self.woken.clear()
        return False

    def tell(self, message: BaseModel) -> None:
        """Say something to the page, after all that was said before."""
        self.told.append(message.model_dump_json())
        self.has_news.set()

    def end(self) -> None:
        """Say that the page is gone: what it said is still handled, then no more is waited for."""
        self.move, self.is_over = None, True
        self.woken.set()

    async def speak(self, send: Sending) -> None:
        """Send what is told until cancelled; ends where the page lags too far behind to catch up."""
        while len(self.told) <= MOST_TOLD:
            await self.has_news.wait()
            self.has_news.clear()
            while self.told and len(self.told) <= MOST_TOLD:
                await send(self.told.popleft())
