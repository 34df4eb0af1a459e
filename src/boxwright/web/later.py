"""Sheets that take seconds, for a screen that is shown without them first: made beside the loop while no hand moves."""

from __future__ import annotations

from threading import Thread

from boxwright.book.hot_day import NAME as DAY
from boxwright.book.sheets import SLOW, Printing
from boxwright.book.worded import worded
from boxwright.book.year import NAME as YEAR
from boxwright.drawing import Sheet
from boxwright.drawing.chart import Chart, charted
from boxwright.web import contract
from boxwright.web.figures import asked_slot, night_slot
from boxwright.web.session import Seen

LATER = {"heat": (DAY, YEAR)}
"""The slow sheets each screen shows."""
Key = tuple[str, int, contract.Slot]
WAITS = "it is being worked out: it takes some seconds"
BROKE_OFF = "it could not be worked out; boxwright heat RIG --day and --year say why"


class Later:
    """The slow sheets of the text as it stands now, as far as they are there."""

    def __init__(self) -> None:
        self._there: dict[Key, tuple[Sheet, ...]] = {}
        self._making: Key | None = None
        self._told: set[Key] = set()

    def sheets(self, key: Key) -> tuple[Sheet, ...]:
        """Return what is there; what waits says so in a chart of its own."""
        if key[0] not in LATER:
            return ()
        return self._there.get(key) or _blank(key[0], WAITS)

    def piece(self, key: Key, seen: Seen) -> bool:
        """Begin what is not begun; True once for each text and slot, when it is there."""
        if key[0] not in LATER:
            return False
        if key in self._there:
            is_new = key not in self._told
            self._told.add(key)
            return is_new
        if self._making is None:
            # Of an earlier text nothing is asked any more.
            self._there = {one: sheets for one, sheets in self._there.items() if one[1] == key[1]}
            self._told &= set(self._there)
            self._making = key
            Thread(target=self._make, args=(key, seen), daemon=True).start()
        return False

    def _make(self, key: Key, seen: Seen) -> None:
        try:
            self._there[key] = made(key[0], seen)
        finally:
            self._there.setdefault(key, _blank(key[0], BROKE_OFF))  # told, and not tried again until the text changes
            self._making = None


def made(name: str, seen: Seen) -> tuple[Sheet, ...]:
    """Return the slow sheets of a screen."""
    slot, rig = asked_slot(seen), seen.reading.rig
    asked = Printing(rig, slot, (), (), "", rig.header.units, night_slot(seen))
    return tuple(worded(sheet) for one in LATER[name] for sheet in SLOW[one](asked))


def _blank(name: str, says: str) -> tuple[Sheet, ...]:
    """Return the slow sheets of a screen with nothing but words."""
    titles = {DAY: "A hot day", YEAR: "The year by month"}
    charts = [Chart(f"waits-{one}", titles[one], "through", "", (), (), (), (), says) for one in LATER[name]]
    return tuple(Sheet(one.name, one.title, (charted(one),)) for one in charts)
