"""The plans of each pose: things where they are then, the way that is free between them, and how wide it is."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import atan2, cos, hypot, isfinite, pi, sin

from boxwright.disciplines.layout.bodies import envelope
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.parts import Closed
from boxwright.disciplines.layout.passage import Rect, gap_at, widest
from boxwright.disciplines.layout.plan import ABOVE
from boxwright.disciplines.layout.posing import DATUM, POSES, Posed
from boxwright.disciplines.layout.room_plan import covers, is_seen, room_plan
from boxwright.disciplines.layout.terraces import (
    UPRIGHT,
    Bed,
    Scene,
    is_placed,
    levels_of,
)
from boxwright.disciplines.layout.ways import is_room, scene_drawn, way_drawn
from boxwright.drawing import Grid, Line, Mark, Shape, Sheet, Text, View
from boxwright.drawing.mark import Point
from boxwright.model.place import Place
from boxwright.units import exactly

ARROW = 0.12
"""How long (m) the head of an arrow is drawn."""
MOST_LOOKED = 400
"""At how many places along a way its width is looked at, at most."""
APART = 0.05
"""How closely (m) a way is looked along for its narrowest place."""
NEAR = 0.01
"""How far (m) from the middle of an opening a way is taken to go through it."""
OUT = 0.3
"""How far (m) beyond its wall a way is drawn on."""
THE_BODY = "trailer.body"
"""The path of the end wall a way is drawn to where there is one door only: no way leads out through it."""
ASIDE = 0.3
"""How far (m) beside the tip of a way its width stands."""
WIDER = 1.1
"""A gap wider than this many times the width of the way is not its narrowest place."""
NOTES = (
    "The line of dashes and dots is the middle of the widest way; its width is that of a square carried along all of "
    "it. What is lower than a step is stepped over; what hangs over a stooping head is not in its way.",
)


def pose_plan(posed: Posed) -> Sheet:
    """Return the plan of a pose with the way that is free in it."""
    marks = (*room_plan(posed, few=False), *_free_way(posed))
    title = f"Plan, {POSES[posed.pose]}" + (f", load {posed.load}" if posed.load else "")
    return Sheet(f"plan-{posed.pose}", title, (View(title, ABOVE, marks, DATUM),), NOTES, (_things(posed),))


def _things(posed: Posed) -> Grid:
    """Return where everything in the room stands in this pose, from the front on."""
    rows, of = [], []
    left = -posed.planned.box.inside[1] / 2.0
    seen = [one for one in posed.bodies if is_seen(one, posed)]
    for one in sorted(seen, key=lambda one: (one.blocks[0].low, one.of)):
        around = envelope(one.blocks)
        is_one = any(covers(block, around) for block in one.blocks)
        first = around if is_one else one.blocks[0]
        name = one.name if is_one else f"{one.name}, the first of {len(one.blocks)}"
        name += ", perhaps" if one.stands == "perhaps" else "" if one.known else ", place in doubt"
        at = (first.low[0], first.low[1] - left, max(first.low[2] - posed.room.floor, 0.0))
        size = " x ".join(posed.length(side) for side in first.size)
        rows.append((name, *(posed.length(place) for place in at), size))
        of.append(one.of)
    columns = ("Thing", "Rearward", "From the left", "Over the floor", "Size")
    return Grid("Where things are", columns, tuple(rows), tuple(of))


def line_of(scene: Scene, opening: Closed, width: float) -> tuple[Point, ...]:
    """Return the way as it is drawn: from well within where it begins, through the middle of the opening, and out."""
    narrow = min(width, ROOM["pass"]) * 0.98
    x0, y0, x1, y1 = scene.start
    inner = (x0 + (x1 - x0) / 4.0, y0 + (y1 - y0) / 4.0, x1 - (x1 - x0) / 4.0, y1 - (y1 - y0) / 4.0)
    door = _at_door(opening)
    for start, goal in ((inner, door), (scene.start, door), (inner, scene.goal), (scene.start, scene.goal)):
        way = way_drawn(scene._replace(start=start, goal=goal), narrow)
        if len(way) > 1:
            out = {"left": (0.0, -OUT), "right": (0.0, OUT), "front": (-OUT, 0.0), "rear": (OUT, 0.0)}
            by = out.get(opening.wall, (0.0, 0.0)) if opening.of != THE_BODY else (0.0, 0.0)
            return (*way, (way[-1][0] + by[0], way[-1][1] + by[1])) if goal is door and any(by) else way
    return ()


def _at_door(opening: Closed) -> Rect:
    x, y = opening.place.x.best, opening.place.y.best
    return x - NEAR, y - NEAR, x + NEAR, y + NEAR


def way_marks(scene: Scene, way: Sequence[Point], width: float, words: str, of: str) -> list[Mark]:
    """Return a way as a line with an arrow, and across its narrowest place what is free there."""
    if len(way) < 2:
        return []
    marks: list[Mark] = [Line(start, end, "centre", of) for start, end in pairwise(way)]
    marks.append(arrow_head(way[-2], way[-1], of))
    across = _narrowest(scene, way, width) if width < scene.most - NEAR else None
    if across is None:  # nothing but the opening itself is as narrow as that
        return [*marks, Text(_beside(way), words, of, "small")]
    low, high = across
    middle = (low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0
    return [*marks, Line(low, high, "dimension", of), *_ticks(low, high, of), Text(middle, words, of, "small")]


def _beside(way: Sequence[Point]) -> Point:
    """Return a place beside the tip of a way."""
    (x, y), (to_x, to_y) = way[-2], way[-1]
    return (to_x + ASIDE, to_y) if abs(to_y - y) > abs(to_x - x) else (to_x, to_y + ASIDE)


def _free_way(posed: Posed) -> list[Mark]:
    """Return the free way of a pose: from each bed to where one walks out, else from the door to the other end."""
    room = posed.room
    if not is_room(room):
        return []
    doors = [one.opening for one in posed.exits if _is_door(one.opening, posed)]
    pairs: list[tuple[Bed | Closed, Closed, str]] = []
    if posed.beds and posed.pose == "night":
        pairs = [(bed, door, f"{bed.of}.way") for bed in posed.beds if is_placed(bed.place) for door in doors]
    elif doors:
        others = doors[1:] or [_far_end(doors[0], posed)]
        pairs = [(doors[0], other, f"{doors[0].of}.way") for other in others]
    # A way is a thing of its own, so that it lies over all it passes and its words are read whole.
    # Asleep, a way that does not count is promised to nobody: it is drawn as on the plan of the ways out.
    warnings = {one.opening.of: one.warning for one in posed.exits}
    marks: list[Mark] = []
    for first, second, of in pairs:
        scene = scene_drawn(posed.bodies, first, second, room, False)
        width = widest(scene.without(()), scene.start, (scene.goal,), scene.most)[0]
        if width > 0.0:
            if isinstance(first, Closed):
                scene = scene._replace(start=_at_door(first))
            line = line_of(scene, second, width)
            if len(line) < 2:
                continue
            warning = warnings.get(second.of, "")
            if warning or width < ROOM["wriggle"]:
                words = f"{posed.length(width)} only, to {second.name}"
                if warning:
                    words = f"{posed.length(width)} to {second.name}: {warning}"
                marks += [Line(start, end, "hidden", of) for start, end in pairwise(line)]
                marks.append(Text(line[len(line) // 2], words, of, "small"))
            else:
                marks += way_marks(scene, line, width, f"{posed.length(width)} free to {second.name}", of)
    return marks


def _is_door(one: Closed, posed: Posed) -> bool:
    """Return whether one walks through an opening: it begins at the floor and is high enough to stoop."""
    if one.wall not in UPRIGHT or not is_placed(one.place):
        return False
    low, high = levels_of(one)
    return low <= posed.room.floor + ROOM["step over"] and high - low >= ROOM["stoop"]


def _far_end(door: Closed, posed: Posed) -> Closed:
    """Return the end wall away from the only door, as if one could walk out through all of it."""
    room = posed.room
    middle = (room.front + room.rear) / 2.0
    wall, x = ("front", room.front) if door.place.x.best > middle else ("rear", room.rear)
    wide, high = room.right - room.left, room.ceiling - room.floor
    place = Place(
        exactly(x), exactly((room.left + room.right) / 2.0), exactly(room.floor + high / 2.0), (0.0, wide, high)
    )
    return Closed(THE_BODY, f"the {wall}", wall, place)


def arrow_head(before: Point, tip: Point, of: str) -> Mark:
    """Return the head of an arrow at the end of a way."""
    turned = atan2(tip[1] - before[1], tip[0] - before[0])
    ends = [(tip[0] + ARROW * cos(turned + by), tip[1] + ARROW * sin(turned + by)) for by in (pi * 0.88, -pi * 0.88)]
    return Shape((tip, ends[0], ends[1]), "visible", of, "ink")


def _ticks(low: Point, high: Point, of: str) -> list[Mark]:
    """Return the strokes that end a measure."""
    long = hypot(high[0] - low[0], high[1] - low[1])
    if long <= 0.0:
        return []
    x, y = (high[0] - low[0]) / long * ARROW / 3.0, (high[1] - low[1]) / long * ARROW / 3.0
    return [Line((at[0] + y, at[1] - x), (at[0] - y, at[1] + x), "dimension", of) for at in (low, high)]


def _narrowest(scene: Scene, way: Sequence[Point], width: float) -> tuple[Point, Point] | None:
    """Return both ends of what is free across a way where that is least, on the floor and inside the walls."""
    obstacles = scene.without(())
    best: tuple[float, Point, Point] | None = None
    for start, end in pairwise(way):
        long = hypot(end[0] - start[0], end[1] - start[1])
        axis = 1 if abs(end[0] - start[0]) >= abs(end[1] - start[1]) else 0
        steps = min(int(long / APART) + 1, MOST_LOOKED)  # a length with a slip in it is no reason to look for ever
        for step in range(steps + 1):
            share = step / steps
            spot = start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])
            if _is_on(scene.start, spot):
                continue
            gap = gap_at(obstacles, spot, axis, width * 0.4)
            if gap is None or not (isfinite(gap[0]) and isfinite(gap[1])):
                continue
            if best is None or gap[1] - gap[0] < best[0] - 1e-6:
                ends = [(one, spot[1]) if axis == 0 else (spot[0], one) for one in gap]
                best = gap[1] - gap[0], ends[0], ends[1]
    return None if best is None or best[0] > width * WIDER else best[1:]


def _is_on(rect: Rect, spot: Point) -> bool:
    return rect[0] <= spot[0] <= rect[2] and rect[1] <= spot[1] <= rect[3]
