"""What moves on the plan: doors as they swing, flaps and ramps laid open, slides pulled out, room kept clear."""

from __future__ import annotations

from math import atan2, cos, hypot, inf, isfinite, pi, sin

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.drawn import Leaf, Thing, box_of, corners_of, middle_of
from boxwright.disciplines.layout.paths import ways_drawn
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import way_it_faces
from boxwright.drawing import Arc, Line, Mark, Shape, Text
from boxwright.drawing.mark import Point
from boxwright.model.place import Surfaces
from boxwright.units import Band

RIGHT_ANGLE = pi / 2.0
"""How far a door is drawn open whose opening angle nobody wrote."""
LOW_END = frozenset({"front", "left"})
HIGH_END = frozenset({"rear", "right"})
FLAT = frozenset({"top", "bottom"})
"""Hinges of what turns about a level edge: a flap or a ramp."""
HEAD = 0.06
"""How long (m) the head of an arrow is drawn."""
AXES: dict[str, Point] = {"left": (0.0, -1.0), "right": (0.0, 1.0), "front": (-1.0, 0.0), "rear": (1.0, 0.0)}


def swung(leaf: Leaf) -> list[Mark]:
    """Return the swing of a leaf about an upright hinge: where it stands open, and the arc of its free edge.

    Of one that slides, both its places: shut and slid.
    """
    if leaf.slides:
        return _slid(leaf)
    if leaf.hinge == "both sides":
        middle = ((leaf.low[0] + leaf.high[0]) / 2.0, (leaf.low[1] + leaf.high[1]) / 2.0)
        return [*_swing(leaf, leaf.low, middle), *_swing(leaf, leaf.high, middle)]
    if leaf.hinge in LOW_END:
        return _swing(leaf, leaf.low, leaf.high)
    return _swing(leaf, leaf.high, leaf.low) if leaf.hinge in HIGH_END else []


def _slid(leaf: Leaf) -> list[Mark]:
    """Return a sliding leaf as it is shut and, in phantom lines, as it is slid, with the way between the two.

    It runs before the face its ends are on, or within the wall; where nobody wrote on which side, a text says so.
    """
    way = {"inside": -1.0, "outside": 1.0}.get(leaf.runs, 0.0)
    deep = LENGTHS["sliding leaf"]
    near, far = (way * deep, 0.0) if way else (-deep / 2.0, deep / 2.0)
    shut = box_of(
        (leaf.low[0] + leaf.outward[0] * near, leaf.low[1] + leaf.outward[1] * near),
        (leaf.high[0] + leaf.outward[0] * far, leaf.high[1] + leaf.outward[1] * far),
    )
    of = f"{leaf.of}.slid"
    marks: list[Mark] = [Shape(shut, "visible", of)]
    if leaf.by is None or leaf.slides not in AXES:
        return marks
    x, y = (extent * leaf.by for extent in AXES[leaf.slides])
    slid = tuple((corner[0] + x, corner[1] + y) for corner in shut)
    says = f"{leaf.name}, slid open" if leaf.runs else f"{leaf.name}, slid open: on which side is not written"
    start, end = middle_of(shut), middle_of(slid)
    marks += [Line(start, end, "centre", of), *_arrow(start, end, of), Shape(slid, "phantom", of)]
    return [*marks, Text(end, says, of, "small")]


def _arrow(start: Point, end: Point, of: str) -> list[Mark]:
    """Return the head of an arrow at the end of a way."""
    long = hypot(end[0] - start[0], end[1] - start[1])
    if long <= HEAD:
        return []
    x, y = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    back = end[0] - x * HEAD, end[1] - y * HEAD
    wings = ((back[0] - side * y * HEAD / 2.0, back[1] + side * x * HEAD / 2.0) for side in (-1.0, 1.0))
    return [Line(wing, end, "visible", of) for wing in wings]


def _swing(leaf: Leaf, hinge: Point, free: Point) -> list[Mark]:
    reach = hypot(free[0] - hinge[0], free[1] - hinge[1])
    if reach <= 0.0:
        return []
    start = atan2(free[1] - hinge[1], free[0] - hinge[0])
    way = -1.0 if leaf.opens == "in" else 1.0
    out = (leaf.outward[0] * way, leaf.outward[1] * way)
    # which way round brings the free edge to the side it opens to
    turn = 1.0 if cos(start) * out[1] - sin(start) * out[0] > 0.0 else -1.0
    sweep = turn * (leaf.turns if leaf.turns is not None else RIGHT_ANGLE)
    end = (hinge[0] + reach * cos(start + sweep), hinge[1] + reach * sin(start + sweep))
    of = f"{leaf.of}.swing"
    return [Line(hinge, end, "visible", of), Arc(hinge, reach, start, sweep, "dimension", of)]


def laid_open(leaf: Leaf) -> list[Mark]:
    """Return a flap or a ramp as it lies open, in phantom lines."""
    if leaf.hinge not in FLAT or not isfinite(leaf.height) or leaf.height <= 0.0:
        return []
    way = -leaf.height if leaf.opens == "in" else leaf.height
    out = (leaf.outward[0] * way, leaf.outward[1] * way)
    corners = (
        leaf.low,
        leaf.high,
        (leaf.high[0] + out[0], leaf.high[1] + out[1]),
        (leaf.low[0] + out[0], leaf.low[1] + out[1]),
    )
    of = f"{leaf.of}.open"
    return [Shape(corners, "phantom", of), Text(middle_of(corners), f"{leaf.name}, open", of, "small")]


def moved(thing: Thing, room: tuple[Point, Point]) -> list[Mark]:
    """Return a thing pulled out, how it swings or is set up, and the room it wants around it, in phantom lines."""
    corners, facet = corners_of(thing.frame.place), thing.facet
    if not corners or facet is None:
        return []
    low, high = corners[0], corners[2]
    (front, left), (rear, right) = room
    faces = Surfaces(front, rear, left, right, 0.0, inf, front, rear, left, right, inf)
    marks: list[Mark] = ways_drawn(thing, faces)
    if facet.slides is not None and facet.slides.to in AXES and _is_known(facet.slides.by):
        assert facet.slides.by is not None
        x, y = AXES[facet.slides.to]
        by = facet.slides.by.best
        out = box_of((low[0] + x * by, low[1] + y * by), (high[0] + x * by, high[1] + y * by))
        of = f"{thing.frame.of}.slides"
        marks += [Shape(out, "phantom", of), Text(middle_of(out), f"{thing.frame.name}, pulled out", of, "small")]
    clear = facet.keep_clear
    if clear is not None:
        of = f"{thing.frame.of}.keep_clear"
        if clear.all_round is not None and _is_known(clear.all_round):
            by = clear.all_round.best
            marks.append(Shape(box_of((low[0] - by, low[1] - by), (high[0] + by, high[1] + by)), "phantom", of))
        if clear.front is not None and _is_known(clear.front):
            before = _before(thing, faces, clear.front.best, clear.width)
            marks += [
                Shape(before, "phantom", of),
                Text(middle_of(before), f"clear for {thing.frame.name}", of, "small"),
            ]
    return marks


def _is_known(band: Band | None) -> bool:
    return band is not None and band.known and isfinite(band.best)


def _before(thing: Thing, room: Surfaces, deep: float, wide: Band | None) -> tuple[Point, ...]:
    """Return the room before the face of a thing, as it is judged; the likelier one where it may look two ways."""
    corners = corners_of(thing.frame.place)
    low, high = corners[0], corners[2]
    axis, out = way_it_faces(thing.wall, Block((*low, 0.0), (*high, 0.0)), room)
    level = 1 - axis
    half = (wide.best if wide is not None and _is_known(wide) else high[level] - low[level]) / 2.0
    middle = (low[level] + high[level]) / 2.0
    near = high[axis] if out > 0.0 else low[axis]
    ends = {axis: sorted((near, near + out * deep)), level: [middle - half, middle + half]}
    return box_of((ends[0][0], ends[1][0]), (ends[0][1], ends[1][1]))
