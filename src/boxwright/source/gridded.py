"""Numbers worked out once for every point of a grid of several axes: a file of ``tables/`` that no one writes by hand.

    {"source": "...", "grid": {"depth": [..], "face": [..]}, "off": {..}, "heat": [..], "flux": [..]}

The last axis runs fastest. It says how its numbers came about and how far reading between them is off.
"""

from __future__ import annotations

import json
from functools import lru_cache
from importlib.resources import files
from math import prod

from boxwright.records import dataclass
from boxwright.source.cited import SourceError


@dataclass(frozen=True, slots=True)
class Gridded:
    """A grid: its axes in order with their coordinates, each column a number for each point. ``off``: its errors."""

    axes: tuple[str, ...]
    grid: tuple[tuple[float, ...], ...]
    columns: tuple[tuple[str, tuple[int, ...]], ...]
    off: tuple[tuple[str, float], ...]
    source: str
    made: str

    def column(self, name: str) -> tuple[int, ...]:
        """Return the numbers of a column."""
        return dict(self.columns)[name]


@lru_cache(maxsize=8)
def load_gridded(package: str, name: str) -> Gridded:
    """Return the grid of a file ``tables/<name>.json`` of a discipline."""
    file = f"tables/{name}.json"
    return read_gridded(files(package).joinpath(file).read_text("utf-8"), file)


def read_gridded(text: str, file: str) -> Gridded:
    """Return what the text of a file holds, or refuse it."""
    written = json.loads(text)
    source, made = written.pop("source", ""), written.pop("made", "")
    if not source or not made:
        raise SourceError(file, "source", "says nothing of how its numbers came about, or when")
    grid = {axis: tuple(float(one) for one in row) for axis, row in written.pop("grid").items()}
    for axis, row in grid.items():
        if not row or list(row) != sorted(set(row)):
            raise SourceError(file, axis, "does not rise from coordinate to coordinate")
    off = {name: float(one) for name, one in written.pop("off").items()}
    columns = {name: tuple(row) for name, row in written.items() if isinstance(row, list)}
    points = prod(len(row) for row in grid.values())
    for name, row in columns.items():
        if len(row) != points:
            raise SourceError(file, name, f"has {len(row)} numbers for {points} points")
    return Gridded(tuple(grid), tuple(grid.values()), tuple(columns.items()), tuple(off.items()), source, made)
