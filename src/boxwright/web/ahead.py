"""Changes sought before anybody asks: while the rig rests, what a press would wait for is done a piece at a time."""

from __future__ import annotations

import logging
from concurrent.futures import Future
from datetime import date

from boxwright.web.contract import Slot
from boxwright.web.figures import shown_findings, slot_findings, vehicle_of
from boxwright.web.seeking import Asked, Seekers, sought_ahead
from boxwright.web.session import Seen

LOG = logging.getLogger(__name__)
REST = 1.5
"""How long (s) no hand may have moved before changes are sought unasked."""
Key = tuple[int, Slot, date]


class Ahead:
    """Has the changes sought for what the pages show; who presses then is answered at once, or waits for one piece."""

    def __init__(self, seekers: Seekers) -> None:
        self._seekers = seekers
        self._rev = -1
        self._wanted: dict[Key, tuple[Asked, ...]] = {}
        self._done: set[Key] = set()
        self._running: tuple[Key, Future[bool]] | None = None

    def piece(self, seen: Seen, rev: int, today: date) -> None:
        """Begin the next piece for what one page looks at, where none is under way and something is left."""
        key = (rev, seen.slot, today)
        if not self._is_free() or key in self._done:
            return
        if rev != self._rev:  # of an earlier text nothing is asked any more
            self._rev, self._wanted, self._done = rev, {}, set()
        if key not in self._wanted:
            shown = (one for one in shown_findings(slot_findings(seen), seen) if one.may_seek)
            self._wanted[key] = tuple((one.code, one.where, seen.slot.stage, one.load, one.use) for one in shown)
        wanted = self._wanted[key]
        if not wanted:
            self._done.add(key)
            return
        asked = (seen.reading.document.text, seen.slot.stage, wanted, vehicle_of(seen), today)
        self._running = (key, self._seekers().submit(sought_ahead, *asked))

    def _is_free(self) -> bool:
        """Return whether no piece is under way; what the last one came to is taken in."""
        if self._running is None:
            return True
        key, piece = self._running
        if not piece.done():
            return False
        self._running = None
        failed = piece.exception() if not piece.cancelled() else None
        if failed is not None:
            LOG.error("no change could be sought ahead", exc_info=failed)
            self._seekers.stop()
        if failed is not None or piece.cancelled() or piece.result():
            self._done.add(key)
        return True
