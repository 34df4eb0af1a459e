"""The quiet plan that people are drawn on: walls, openings, and what takes room in one pose; nothing under the deck."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.drawn import THINNEST, box_of, middle_of
from boxwright.disciplines.layout.moves import swung
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.plan import CUT_AT
from boxwright.disciplines.layout.posing import Posed
from boxwright.disciplines.layout.seen_from_above import half_hidden, over_it
from boxwright.disciplines.layout.terraces import is_placed
from boxwright.disciplines.layout.ways import is_room
from boxwright.drawing import Dimension, Leader, Line, Mark, Shape, Text
from boxwright.drawing.mark import Fill, LineKind, Point

LARGE = 0.25
"""How wide and how deep (m) a thing is at least that keeps its name where only few are named."""
SMALL = 0.12
"""A thing smaller than this (m) both ways is drawn without its name, in the plans that name nearly all."""


def room_plan(posed: Posed, few: bool, named: frozenset[str] = frozenset()) -> list[Mark]:
    """Return the plan of a pose; with ``few`` only large things carry their name, and those of ``named``."""
    exits = {one.opening.of for one in posed.exits}
    high = {one.opening.of: one.opening for one in posed.exits if _is_window(one.opening, posed)}
    marks = [_quiet(mark, high) for mark in posed.planned.backdrop if _is_kept(mark, exits)]
    standing = [one for one in posed.bodies if is_seen(one, posed)]
    standing.sort(key=lambda one: (_is_overhead(one), _top(one), one.of))
    low = [one for one in standing if not _is_overhead(one)]
    for one in standing:
        marks += _drawn(one, over_it(one, low))
    for one in standing:
        if one.of in named or _has_name(one, few):
            marks.append(Text(_middle(one), one.name, one.of, "small", may_move=False))
    for leaf in posed.planned.leaves:
        marks += swung(leaf)
    return [*marks, *measures(posed)]


def measures(posed: Posed) -> list[Mark]:
    """Return the length and the width between the stud faces."""
    length, half = posed.planned.box.inside[0], posed.planned.box.inside[1] / 2.0
    if not (length and half):
        return []
    return [
        Dimension((0.0, -half), (length, -half), posed.planned.length, "trailer.body.length", "below", 0),
        Dimension((length, -half), (length, half), posed.planned.width, "trailer.body.width", "right", 0),
    ]


def is_seen(one: Body, posed: Posed) -> bool:
    """Return whether a thing takes room inside: over the floor, within the walls, and in no other thing."""
    if not one.blocks or one.is_inside or not is_room(posed.room):
        return False
    return any(_is_in(block, posed.inside) for block in one.blocks)


def _is_in(block: Block, room: Block) -> bool:
    return all(block.low[axis] < room.high[axis] and block.high[axis] > room.low[axis] for axis in range(3))


def _is_kept(mark: Mark, exits: set[str]) -> bool:
    """Return whether a line of the frame belongs on a quiet plan: no floor members, no numbers, no holes but exits."""
    if isinstance(mark, Line):
        return mark.line != "hidden"
    if isinstance(mark, Text):
        return mark.of in exits
    return not (isinstance(mark, Shape) and mark.line == "phantom" and mark.of not in exits)


def _quiet(mark: Mark, high: dict[str, Closed]) -> Mark:
    """Return the outline of the body without the cross that marks a hole, and the name of a window led to it."""
    if isinstance(mark, Text) and mark.of in high:
        place = high[mark.of].place
        return Leader((place.x.best, place.y.best), mark.words, mark.of)
    return replace(mark, fill="none") if isinstance(mark, Shape) and mark.of == "trailer.body" else mark


def _is_window(one: Closed, posed: Posed) -> bool:
    """Return whether a way out begins over the floor, so that no leaf that swings shows which hole is meant."""
    return is_placed(one.place) and one.place.z.best - one.place.size[2] / 2.0 > posed.room.floor + LARGE


def _top(one: Body) -> float:
    return max(block.high[2] for block in one.blocks)


def _is_overhead(one: Body) -> bool:
    return min(block.low[2] for block in one.blocks) >= CUT_AT


def _outlines(one: Body) -> list[tuple[Point, ...]]:
    """Return a thing from above: one outline where one of its boxes covers all, else each box."""
    around = envelope(one.blocks)
    boxes = [around] if any(covers(block, around) for block in one.blocks) else list(one.blocks)
    return [_thick_enough(block) for block in boxes]


def covers(block: Block, around: Block) -> bool:
    """Return whether a box reaches as far as all boxes of its thing do, seen from above."""
    near = 0.01
    return all(
        block.low[axis] <= around.low[axis] + near and block.high[axis] >= around.high[axis] - near for axis in (0, 1)
    )


def _thick_enough(block: Block) -> tuple[Point, ...]:
    lows, highs = [], []
    for axis in (0, 1):
        middle, half = (block.low[axis] + block.high[axis]) / 2.0, (block.high[axis] - block.low[axis]) / 2.0
        lows.append(middle - max(half, THINNEST / 2.0))
        highs.append(middle + max(half, THINNEST / 2.0))
    return box_of((lows[0], lows[1]), (highs[0], highs[1]))


def _drawn(one: Body, over: list[Rect]) -> list[Mark]:
    line: LineKind = "visible" if one.stands == "yes" else "hidden"
    fill: Fill = "wood"
    if _is_overhead(one):
        line, fill = "phantom", "none"
    elif one.carried_by:
        fill = "none"
    return [mark for corners in _outlines(one) for mark in half_hidden(corners, line, fill, one.of, over)]


def _middle(one: Body) -> Point:
    return middle_of(_outlines(one)[0])


def _has_name(one: Body, few: bool) -> bool:
    around = envelope(one.blocks).size
    if few:
        return min(around[:2]) >= LARGE and not one.carried_by and not _is_overhead(one)
    return max(around[:2]) >= SMALL and not one.carried_by
