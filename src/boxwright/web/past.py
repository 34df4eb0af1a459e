"""The earlier texts of a rig file: which are kept, for how long, and where each stands.

Each is a plain file of its own, ``.boxwright/past/RIG.yaml.DAYTIME.yaml`` (DAYTIME counted in UTC), put there when
another text took its place. They grow fewer with age: of the last hour nearly every one, of the last two days one an
hour, before that one a day. What a day or an hour began with is the one that stays.
"""

from __future__ import annotations

import re
import time
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from boxwright.book.saving import written

ENDING = ".yaml"
STAMP = "%Y-%m-%dT%H-%M-%S"
HOUR, DAY = 3600.0, 86400.0
HOURLY = 2 * DAY
"""How long (s) one text an hour is kept; after that one a day."""
MOST_PAST, MOST_KEPT_BYTES = 200, 50_000_000
"""No more than so many of one rig, and no more bytes; the newest and what a day began with go last."""
NEWEST = 20
"""So many of the newest stay whatever their age and length."""
_NAME = re.compile(r"(\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d)(?:\.(\d+))?\.yaml")


@dataclass(frozen=True, slots=True, order=True)
class Earlier:
    """An earlier text: when (s since 1970) another took its place, its place among those of that second, its length."""

    at: float
    number: int
    name: str
    length: int


class Past:
    """The earlier texts of one rig file, in a folder that other rigs may share."""

    def __init__(self, folder: Path, rig: str) -> None:
        self._folder, self._rig = folder, rig

    def every(self) -> list[Earlier]:
        """Return the earlier texts, the oldest first; never raises."""
        found = []
        with suppress(OSError):
            for path in self._folder.glob(f"*{ENDING}"):
                if path.name.startswith(f"{self._rig}.") and (read := _NAME.fullmatch(path.name[len(self._rig) + 1 :])):
                    with suppress(OSError, ValueError):
                        at = datetime.strptime(read[1], STAMP).replace(tzinfo=UTC).timestamp()
                        found.append(Earlier(at, int(read[2] or 0), path.name, path.stat().st_size))
        return sorted(found)

    def read(self, name: str) -> bytes | None:
        """Return an earlier text by its name, None where there is none of that name."""
        if name not in {one.name for one in self.every()}:
            return None
        try:
            return (self._folder / name).read_bytes()
        except OSError:
            return None

    def keep(self, data: bytes, mode: int | None, now: float | None = None) -> None:
        """Put a text among the earlier ones, unless it is the one that was put there last; raises OSError."""
        self._folder.mkdir(parents=True, exist_ok=True)
        at = time.time() if now is None else now
        every = self.every()
        if not every or self.read(every[-1].name) != data:
            name = self._free(at)
            written(self._folder / name, data, mode)
            every = self.every()
        for one in overmuch(every, at):
            with suppress(OSError):
                (self._folder / one.name).unlink()

    def _free(self, at: float) -> str:
        stem = f"{self._rig}.{datetime.fromtimestamp(at, UTC).strftime(STAMP)}"
        name, number = f"{stem}{ENDING}", 1
        while (self._folder / name).exists():
            name, number = f"{stem}.{number}{ENDING}", number + 1
        return name


def overmuch(every: Sequence[Earlier], now: float) -> list[Earlier]:
    """Return the earlier texts that need not be kept any longer; ``every`` has the oldest first."""
    days = _first_of(every, "%Y-%m-%d")
    hours = [one for one in _first_of(every, "%Y-%m-%d %H") if now - one.at <= HOURLY]
    hour = [one for one in every if now - one.at <= HOUR]
    ranked = dict.fromkeys([*every[: -NEWEST - 1 : -1], *reversed(days), *reversed(hour), *reversed(hours)])
    kept: set[Earlier] = set()
    length = 0
    for count, one in enumerate(ranked):
        length += one.length
        if count < NEWEST or (count < MOST_PAST and length <= MOST_KEPT_BYTES):
            kept.add(one)
    return [one for one in every if one not in kept]


def _first_of(every: Sequence[Earlier], span: str) -> list[Earlier]:
    """Return the first text of each day or hour by the clock on the wall."""
    found: dict[str, Earlier] = {}
    for one in every:
        found.setdefault(datetime.fromtimestamp(one.at).astimezone().strftime(span), one)
    return list(found.values())
