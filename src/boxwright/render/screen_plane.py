"""The plane of a drawing on a screen: millimetres, x to the right, y down; boxes in it, and words at a point."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import isfinite
from typing import Literal

from boxwright.drawing.letters import EM, text_width
from boxwright.drawing.mark import Point
from boxwright.records import dataclass
from boxwright.render.svg import escaped, number

MILLIMETRES = 1000.0
LINE = 1.2
"""From one line of words to the next, over the height of its letters."""
LEAST = 0.1
"""How large (m) an empty picture is."""

SAME = 1.0
"""Two points nearer than this (mm) are one."""

Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle of the plane (mm)."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Return how wide it is."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Return how high it is."""
        return self.bottom - self.top

    def over(self, other: Box) -> Box:
        """Return the box around both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )

    def meets(self, other: Box) -> bool:
        """Return whether the two have an area in common."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def is_about(self, x: float, y: float) -> bool:
        """Return whether a point is its middle."""
        return abs(self.left + self.right - 2.0 * x) < SAME and abs(self.top + self.bottom - 2.0 * y) < SAME


def across(point: Point) -> tuple[float, float]:
    """Return a point of a view on the screen's plane."""
    return point[0] * MILLIMETRES, -point[1] * MILLIMETRES


def pair(point: Point) -> str:
    """Return a point of a view as it is written in a path."""
    x, y = across(point)
    return f"{number(x)},{number(y)}"


def spread_over(points: Iterable[Point]) -> Box:
    """Return the box around points of a view; one of its own where there are none."""
    known = [across(one) for one in points if isfinite(one[0]) and isfinite(one[1])] or [(0.0, 0.0)]
    left, right = min(one[0] for one in known), max(one[0] for one in known)
    top, bottom = min(one[1] for one in known), max(one[1] for one in known)
    grow = LEAST * MILLIMETRES / 2.0 if right - left <= 0.0 and bottom - top <= 0.0 else 0.0
    return Box(left - grow, top - grow, right + grow, bottom + grow)


def width_of(words: str, size: float) -> float:
    """Return how wide words are, no narrower than any lettering the page may use draws them."""
    return text_width(words, size / EM)


def words_at(
    lines: Sequence[str], at: tuple[float, float], size: float, is_turned: bool, anchor: Anchor, kind: str = ""
) -> str:
    """Return lines of words about a point: centred on it, or beginning or ending there; turned, they read upwards."""
    x, y = number(at[0]), number(at[1])
    turn = f' transform="rotate(-90 {x} {y})"' if is_turned else ""
    held = "" if anchor == "middle" else f" at-{anchor}"
    named = f' class="word{held}{" " + kind if kind else ""}"'
    head = f'<text{named} x="{x}" y="{y}" font-size="{number(size)}" text-anchor="{anchor}"{turn}'
    if len(lines) == 1:
        return f'{head} dy="0.35em">{escaped(lines[0])}</text>'
    first = 0.35 - LINE * (len(lines) - 1) / 2.0
    spans = "".join(
        f'<tspan x="{x}" dy="{number(first if index == 0 else LINE)}em">{escaped(line)}</tspan>'
        for index, line in enumerate(lines)
    )
    return f"{head}>{spans}</text>"


def apart(wanted: Sequence[float], pitch: float) -> list[float]:
    """Return places as near to those wanted as they can be with ``pitch`` between neighbours; wanted are in order."""
    blocks: list[tuple[float, int]] = []  # the first place of a block that stands tight, and how many are in it
    for place in wanted:
        blocks.append((place, 1))
        while len(blocks) > 1 and blocks[-2][0] + blocks[-2][1] * pitch > blocks[-1][0]:
            (low, few), (high, more) = blocks[-2], blocks[-1]
            first = (low * few + (high - few * pitch) * more) / (few + more)
            blocks[-2:] = [(first, few + more)]
    return [first + index * pitch for first, count in blocks for index in range(count)]
