"""Measures and notes beside a view on a screen: rows of dimensions on four sides, notes in a column to the right."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import inf

from boxwright.drawing import Dimension, Leader
from boxwright.drawing.mark import Side
from boxwright.records import dataclass
from boxwright.render.screen_plane import LINE, Anchor, Box, across, apart, width_of, words_at
from boxwright.render.svg import number

SMALL = 0.9
"""The letters of a measure, over ordinary ones."""
AWAY = 1.3
"""How far the first row stands from the view, over the height of a letter; the further ones from each other."""
TICK = 0.3
HELD: Mapping[Side, Anchor] = {"above": "start", "below": "end", "left": "end", "right": "start"}
"""Which end of its words stands at a measure, where they lead away from the view."""


@dataclass(frozen=True, slots=True)
class Written:
    """What was drawn beside a view, by the rig path it is about, and the box it fills (mm)."""

    groups: Mapping[str, str]
    box: Box


def measured(rows: Sequence[Dimension], core: Box, letter: float) -> Written:
    """Return the rows of dimensions around a view that fills ``core``."""
    pieces: list[tuple[str, str]] = []
    box = core
    for side in ("above", "below", "left", "right"):
        reach = 0.0
        numbers = sorted({one.row for one in rows if one.side == side})
        for row in numbers:
            own = [one for one in rows if one.side == side and one.row == row]
            drawn, reach, ends = _row(own, core, letter, side, reach + AWAY * letter)
            pieces += drawn
            box = box.over(ends)
        box = box.over(_grown(core, side, reach))
    return Written(_joined(pieces), box)


def _grown(core: Box, side: Side, reach: float) -> Box:
    match side:
        case "above":
            return Box(core.left, core.top - reach, core.right, core.bottom)
        case "below":
            return Box(core.left, core.top, core.right, core.bottom + reach)
        case "left":
            return Box(core.left - reach, core.top, core.right, core.bottom)
        case "right":
            return Box(core.left, core.top, core.right + reach, core.bottom)


def _row(
    row: Sequence[Dimension], core: Box, letter: float, side: Side, start: float
) -> tuple[list[tuple[str, str]], float, Box]:
    """Return the drawing of one row that stands ``start`` from the view, how far it reaches, and between which ends."""
    size = SMALL * letter
    is_level = side in {"above", "below"}
    runs = sorted((one for one in row if one.is_running), key=lambda one: _along(one, is_level)[1])
    spans = [one for one in row if not one.is_running]
    places = [_along(one, is_level)[1] for one in runs]
    widths = [width_of(one.words, size) for one in runs]
    is_tight = any(
        (wide + other) / 2.0 + 0.3 * size > there - here
        for here, there, wide, other in zip(places, places[1:], widths, widths[1:], strict=False)
    )
    is_turned = is_level and is_tight
    pitch = LINE * size if is_turned or not is_level else 0.0
    ways = _Ways(core, side, start)
    pieces: list[tuple[str, str]] = []
    reach, half = start, max(widths, default=0.0) / 2.0 if is_level and not is_turned else size / 2.0
    stands = apart(places, pitch) if pitch else places
    for one, place, wide in zip(runs, stands, widths, strict=True):
        true, depth = _along(one, is_level)[1], _depth(one, is_level)
        line = f"M{ways.at(true, depth)}L{ways.point(true, start)}L{ways.point(place, start + 0.5 * size)}"
        far = start + 0.8 * size
        if is_level and not is_turned:
            words = words_at((one.words,), ways.spot(place, far + 0.4 * size), size, False, "middle", "measure")
            reach = max(reach, far + size)
        else:
            words = words_at((one.words,), ways.spot(place, far), size, is_turned, HELD[side], "measure")
            reach = max(reach, far + wide)
        pieces.append((one.of, f'<path d="{line}" class="ln dimension"/>{words}'))
    for one in spans:
        pieces.append((one.of, _span(one, ways, is_level, start, size)))
        reach = max(reach, start + LINE * size)
    middles = [(sum(_along(one, is_level)) / 2.0, width_of(one.words, size) / 2.0) for one in spans]
    low = min([min(stands, default=inf) - half, *(middle - wide for middle, wide in middles)])
    high = max([max(stands, default=-inf) + half, *(middle + wide for middle, wide in middles)])
    ends = (
        replace(core, left=min(core.left, low), right=max(core.right, high))
        if is_level
        else (replace(core, top=min(core.top, low), bottom=max(core.bottom, high)))
    )
    return pieces, reach, ends


def _span(one: Dimension, ways: _Ways, is_level: bool, start: float, size: float) -> str:
    """Return a measure from end to end: a line with a stroke through each end, its words over the middle."""
    low, high = _along(one, is_level)
    tick = TICK * size
    path = f"M{ways.point(low, start)}L{ways.point(high, start)}"
    for end in (low, high):
        path += f"M{ways.at(end, _depth(one, is_level))}L{ways.point(end, start + tick)}"
        path += f"M{ways.point(end - tick, start - tick)}L{ways.point(end + tick, start + tick)}"
    spot = ways.spot((low + high) / 2.0, start + 0.6 * size)
    words = words_at((one.words,), spot, size, not is_level, "middle", "measure")
    return f'<path d="{path}" class="ln dimension"/>{words}'


@dataclass(frozen=True, slots=True)
class _Ways:
    """Turns a place along a side and a distance from the view into a point."""

    core: Box
    side: Side
    start: float

    def spot(self, along: float, away: float) -> tuple[float, float]:
        match self.side:
            case "above":
                return along, self.core.top - away
            case "below":
                return along, self.core.bottom + away
            case "left":
                return self.core.left - away, along
            case "right":
                return self.core.right + away, along

    def point(self, along: float, away: float) -> str:
        x, y = self.spot(along, away)
        return f"{number(x)},{number(y)}"

    def at(self, along: float, depth: float) -> str:
        """Return the point of the view that a measure is taken to."""
        x, y = (along, depth) if self.side in {"above", "below"} else (depth, along)
        return f"{number(x)},{number(y)}"


def _along(one: Dimension, is_level: bool) -> tuple[float, float]:
    """Return where a measure begins and ends along its side."""
    axis = 0 if is_level else 1
    return across(one.start)[axis], across(one.end)[axis]


def _depth(one: Dimension, is_level: bool) -> float:
    return across(one.end)[1 if is_level else 0]


def led(notes: Sequence[Leader], core: Box, letter: float, is_beside_measures: bool) -> Written:
    """Return notes in a column to the right of a view, each with a thin line to its point."""
    if not notes:
        return Written({}, core)
    size = SMALL * letter
    widest = max(width_of(one.words, size) for one in notes)
    x = core.right + letter * (6.0 if is_beside_measures else 1.5)
    ordered = sorted(notes, key=lambda one: (across(one.at)[1], across(one.at)[0]))
    heights = apart([across(one.at)[1] for one in ordered], 1.35 * size)
    pieces = []
    for one, y in zip(ordered, heights, strict=True):
        here = across(one.at)
        path = f"M{number(here[0])},{number(here[1])}L{number(x - 0.5 * size)},{number(y)}"
        dot = f'<circle cx="{number(here[0])}" cy="{number(here[1])}" r="{number(0.12 * size)}" class="front"/>'
        words = words_at((one.words,), (x, y), size, False, "start", "note")
        pieces.append((one.of, f'<path d="{path}" class="ln dimension"/>{dot}{words}'))
    column = Box(core.right, heights[0] - size, x + widest, heights[-1] + size)
    return Written(_joined(pieces), core.over(column))


def _joined(pieces: Sequence[tuple[str, str]]) -> dict[str, str]:
    joined: dict[str, str] = {}
    for of, svg in pieces:
        joined[of] = joined.get(of, "") + svg
    return joined
