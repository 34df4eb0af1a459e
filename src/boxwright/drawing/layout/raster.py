"""Which places of a paper are taken: one whole number per row of cells, one bit per cell.

Marking covers every cell that is touched and asking looks at every cell that is touched, so what is free by the cells
is free by the millimetre; looking at a box costs a few operations however much is drawn.
"""

from __future__ import annotations

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
        first = floor((box.left - self._left) / CELL)
        last = ceil((box.right - self._left) / CELL)
        top = floor((box.top - self._top) / CELL)
        bottom = ceil((box.bottom - self._top) / CELL)
        rows = self._rows
        if first < 0 or top < 0 or last > self._columns or bottom > len(rows):
            return False
        mask = ((1 << (last - first)) - 1) << first
        return not any(rows[row] & mask for row in range(top, bottom))

    def take_line(self, x1: float, y1: float, x2: float, y2: float) -> None:
        """Mark every cell that a straight line touches."""
        for row, first, last in self._runs(x1, y1, x2, y2):
            self._rows[row] |= ((1 << (last - first + 1)) - 1) << first

    def is_line_free(self, x1: float, y1: float, x2: float, y2: float) -> bool:
        """Return whether a straight line touches no taken cell; what lies outside the bounds is not looked at."""
        rows = self._rows
        return not any(
            rows[row] & (((1 << (last - first + 1)) - 1) << first) for row, first, last in self._runs(x1, y1, x2, y2)
        )

    def _runs(self, x1: float, y1: float, x2: float, y2: float) -> list[tuple[int, int, int]]:
        """Return the rows a line touches, each with its first and last column."""
        if y1 > y2:
            x1, y1, x2, y2 = x2, y2, x1, y1
        across, down = (x1 - self._left) / CELL, (y1 - self._top) / CELL
        to_across, to_down = (x2 - self._left) / CELL, (y2 - self._top) / CELL
        top, bottom = max(0, floor(down)), min(len(self._rows) - 1, floor(to_down))
        slope = (to_across - across) / (to_down - down) if to_down > down else 0.0
        runs = []
        for row in range(top, bottom + 1):
            if slope:
                one = across + (max(row, down) - down) * slope
                other = across + (min(row + 1, to_down) - down) * slope
            else:
                one, other = across, to_across
            first, last = (one, other) if one <= other else (other, one)
            if last >= 0 and first < self._columns:
                runs.append((row, max(0, floor(first)), min(self._columns - 1, floor(last))))
        return runs
