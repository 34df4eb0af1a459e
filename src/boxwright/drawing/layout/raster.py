"""Which places of a paper are taken: one whole number per row of cells, one bit per cell.

Marking covers every cell that is touched and asking looks at every cell that is touched, so what is free by the cells
is free by the millimetre; looking at a box costs a few operations however much is drawn.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, floor

from boxwright.drawing.page import Box

CELL = 0.5
"""Side of a cell: mm. A quarter of the smallest gap that the eye still takes for one."""


class Raster:
    """The taken cells inside a box on paper. Outside of it nothing is free."""

    def __init__(self, bounds: Box) -> None:
        self.bounds = bounds
        self._left, self._top = bounds.left, bounds.top
        self._columns = max(0, floor((bounds.right - bounds.left) / CELL))
        self._rows = [0] * max(0, floor((bounds.bottom - bounds.top) / CELL))

    def take_box(self, box: Box) -> None:
        """Mark every cell that a box touches."""
        first = max(0, floor((box.left - self._left) / CELL))
        last = min(self._columns, ceil((box.right - self._left) / CELL))
        if last <= first:
            return
        mask = ((1 << (last - first)) - 1) << first
        rows = self._rows
        top = max(0, floor((box.top - self._top) / CELL))
        for row in range(top, min(len(rows), ceil((box.bottom - self._top) / CELL))):
            rows[row] |= mask

    def is_free(self, box: Box) -> bool:
        """Return whether a box lies inside the bounds and touches no taken cell."""
        return are_free((self,), box, 0.0)

    def take_line(self, x1: float, y1: float, x2: float, y2: float) -> None:
        """Mark every cell that a straight line touches."""
        rows = self._rows
        for top, bottom, first, last in self._runs(x1, y1, x2, y2):
            mask = ((1 << (last - first + 1)) - 1) << first
            for row in range(top, bottom):
                rows[row] |= mask

    def is_line_free(self, x1: float, y1: float, x2: float, y2: float) -> bool:
        """Return whether a straight line touches no taken cell; what lies outside the bounds is not looked at."""
        rows = self._rows
        for top, bottom, first, last in self._runs(x1, y1, x2, y2):
            mask = ((1 << (last - first + 1)) - 1) << first
            for row in range(top, bottom):
                if rows[row] & mask:
                    return False
        return True

    def _runs(self, x1: float, y1: float, x2: float, y2: float) -> Iterator[tuple[int, int, int, int]]:
        """Yield what a line touches as blocks of cells: rows from and before, columns from and to."""
        if y1 > y2:
            x1, y1, x2, y2 = x2, y2, x1, y1
        across, down = (x1 - self._left) / CELL, (y1 - self._top) / CELL
        to_across, to_down = (x2 - self._left) / CELL, (y2 - self._top) / CELL
        most = self._columns - 1
        top, bottom = max(0, floor(down)), min(len(self._rows) - 1, floor(to_down))
        first, last = (across, to_across) if across <= to_across else (to_across, across)
        if last < 0.0 or first > most + 1 or top > bottom:
            return
        if floor(first) == floor(last) or bottom == top:
            yield top, bottom + 1, max(0, floor(first)), min(most, floor(last))
            return
        slope = (to_across - across) / (to_down - down)
        here = across + (top - down) * slope if top > down else across
        for row in range(top, bottom + 1):
            there = across + (row + 1 - down) * slope if row + 1 < to_down else to_across
            first, last = (here, there) if here <= there else (there, here)
            if last >= 0.0 and first <= most:
                yield row, row + 1, int(first) if first > 0.0 else 0, int(last) if last < most else most
            here = there


def are_free(rasters: tuple[Raster, ...], box: Box, rim: float) -> bool:
    """Return whether a box with a rim around it is free on all rasters, which have the same bounds."""
    return are_free_between(rasters, box.left - rim, box.top - rim, box.right + rim, box.bottom + rim)


def are_free_between(rasters: tuple[Raster, ...], left: float, top: float, right: float, bottom: float) -> bool:
    """Return the same of the box between four edges."""
    one = rasters[0]
    first, last = floor((left - one._left) / CELL), ceil((right - one._left) / CELL)
    begin, end = floor((top - one._top) / CELL), ceil((bottom - one._top) / CELL)
    if first < 0 or begin < 0 or last > one._columns or end > len(one._rows):
        return False
    mask = ((1 << (last - first)) - 1) << first
    for raster in rasters:
        for row in raster._rows[begin:end]:
            if row & mask:
                return False
    return True
