"""The leaves of the openings of the shell as they open: on hinges in a wall, in the roof or the floor, or sliding."""

from __future__ import annotations

from dataclasses import replace
from math import isfinite, nan

from boxwright.disciplines.layout.bodies import Block, doubt_of
from boxwright.disciplines.layout.laid_back import past_half
from boxwright.disciplines.layout.parts import Closed, Slide, Swing
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.sweeps import (
    AXES,
    BOTH,
    EDGES,
    HALF,
    QUARTER,
    WALLS,
    Mover,
    Slip,
    Turn,
    slid,
    written_turn,
)
from boxwright.model.place import Surfaces

FLAT: dict[str, tuple[int, float]] = {"roof": (2, 1.0), "ceiling": (2, 1.0), "floor": (2, -1.0)}
"""The roof and the floor, by their axis and the way out of the room through them."""
IN_WALL = "in the wall"
RUNS = frozenset({"inside", "outside"})
"""The sides of its wall a leaf may slide along."""
OPENS: dict[str, dict[str, bool]] = {
    "roof": {"out": True, "up": True, "": True, "in": False, "down": False},
    "wall": {"out": True, "": True, "in": False},
    "floor": {"out": True, "down": True, "in": False, "up": False, "": False},
}
"""Whether a leaf goes out of the room, by the word that is written of it."""


def leaf_of(one: Closed, swing: Swing, hull: Block | None, room: Surfaces) -> Mover | None:
    """Return the leaf of an opening as it opens; None where its words say nothing that can be drawn.

    The leaf has no thickness of its own. One that opens out turns at the outer face; past a half turn it goes on round
    the corner of the shell where it is hinged at one, else the shell itself is in the way. A lid in the roof lies
    somewhat over the bows, nobody wrote how high.
    """
    wall = WALLS.get(one.wall) or FLAT.get(one.wall)
    opens = OPENS["wall" if one.wall not in FLAT else "floor" if one.wall == "floor" else "roof"]
    if wall is None or swing.opens not in opens:
        return None
    axis, out = wall
    opens_out = opens[swing.opens]
    lifted = LENGTHS["roof lid"] / 2.0 if opens_out and axis == 2 and out > 0.0 else 0.0
    plane = _flat_plane(out, opens_out, room) if axis == 2 else _plane(axis, out, hull if opens_out else None, room)
    hinges = _hinges(one, swing.hinge, axis)
    if not hinges or not isfinite(plane):
        return None
    turns = written_turn(swing.to)
    ways = list[Turn]()
    for along, span, width in hinges:
        across = axis, out if opens_out else -out
        ways.append(_leaf(along, span, width, across, plane + lifted, turns))
        second = past_half(ways[-1], hull, turns) if opens_out and axis != 2 else None
        ways += [second] if second is not None else []
    off = list(doubt_of(one.place))
    off[axis] = lifted  # else it hangs in its wall, wherever that one is measured to be
    return Mover(one.of, one.name, "leaf", tuple(ways), turns[0], outside=opens_out, doubt=(off[0], off[1], off[2]))


def sliding_leaf(one: Closed, slides: Slide, hull: Block | None, room: Surfaces) -> list[Mover] | None:
    """Return a leaf that slides along its wall, on each side of it where it may run; None where its words say nothing.

    It is the hole itself, somewhat thick. Nobody who wrote no side knows on which it runs, so that it only asks. In the
    wall, and in the frame of a window that came as a unit, it is in nobody's way.
    """
    wall, way = WALLS.get(one.wall) or FLAT.get(one.wall), AXES.get(slides.to)
    if wall is None or way is None or way[0] == wall[0] or slides.by is None or not slides.by.known:
        return None
    if slides.runs not in {*RUNS, "", IN_WALL}:
        return None
    if slides.runs == IN_WALL or (one.is_unit and not slides.runs):
        return []
    middles, (axis, out), size = (one.place.x, one.place.y, one.place.z), wall, one.place.size
    if not all(middles[other].known and size[other] > 0.0 for other in range(3) if other != axis):
        return None
    off = list(doubt_of(one.place))
    off[axis] = 0.0
    by, most, least = (way[1] * end for end in slid(slides.by))
    found = list[Mover]()
    for is_outside in (False, True):
        face = _face(axis, out, hull if is_outside else None, room)
        plane = _flat_plane(out, is_outside, room) if axis == 2 else face
        if slides.runs not in {"", "outside" if is_outside else "inside"} or not isfinite(plane):
            continue
        low, high = ([middle.best + half * extent for middle, extent in zip(middles, size, strict=True)]
                     for half in (-0.5, 0.5))  # fmt: skip
        deep = plane + (out if is_outside else -out) * LENGTHS["sliding leaf"]
        low[axis], high[axis] = min(plane, deep), max(plane, deep)
        start = Block((low[0], low[1], low[2]), (high[0], high[1], high[2]))
        slip = Slip(start, way[0], by, most, least)
        found.append(Mover(one.of, one.name, "sash", (slip,), abs(by), is_outside, doubt=(off[0], off[1], off[2]),
                           is_usual=not slides.runs))  # fmt: skip
    return found


def _face(axis: int, out: float, hull: Block | None, room: Surfaces) -> float:
    """Return where a leaf runs along a wall: at its outer face, or before its lining; nowhere where it lies flat."""
    if hull is not None or axis == 2:
        return _plane(axis, out, hull, room) if axis < 2 else nan
    return ((room.front, room.rear), (room.left, room.right))[axis][out > 0.0]


def either_way(one: Closed, swing: Swing, hull: Block | None, room: Surfaces) -> list[Mover]:
    """Return a leaf in a wall of which nobody wrote whether it opens out or in: both, and only to ask."""
    ways = (swing.model_copy(update={"opens": opens}) for opens in ("out", "in"))
    leaves = (leaf_of(one, way, hull, room) for way in ways)
    return [replace(leaf, is_usual=True) for leaf in leaves if leaf is not None]


def usual_lid(one: Closed, room: Surfaces) -> Mover | None:
    """Return the lid of a hole in the roof of which nobody wrote how it opens: up, on whichever edge."""
    found = [leaf_of(one, Swing.model_construct(hinge=edge, opens="up", to=None), None, room) for edge in WALLS]
    lids = [lid for lid in found if lid is not None]
    if one.wall not in FLAT or one.wall == "floor" or not lids:
        return None
    ways = tuple(replace(way, at_most=QUARTER) for lid in lids for way in lid.ways if isinstance(way, Turn))
    return replace(lids[0], ways=ways, is_usual=True)


def _flat_plane(out: float, opens_out: bool, room: Surfaces) -> float:
    if out > 0.0:
        return room.bows if opens_out else room.ceiling
    return room.deck if opens_out else room.floor


Hinged = tuple[tuple[int, float, float], float, tuple[float, float]]


def _plane(axis: int, out: float, hull: Block | None, room: Surfaces) -> float:
    if hull is not None and isfinite(hull.low[axis]) and isfinite(hull.high[axis]):
        return hull.high[axis] if out > 0.0 else hull.low[axis]
    return ((room.studs_front, room.studs_rear), (room.studs_left, room.studs_right))[axis][out > 0.0]


def _hinges(one: Closed, hinge: str, axis: int) -> list[Hinged]:
    """Return each leaf: axis, way and place of its hinge, its reach, and its span along the hinge."""
    place, size = one.place, one.place.size
    middles = (place.x, place.y, place.z)
    if not all(middles[other].known and size[other] > 0.0 for other in range(3) if other != axis):
        return []
    spans = [(middle.best - extent / 2.0, middle.best + extent / 2.0)
             for middle, extent in zip(middles, size, strict=True)]  # fmt: skip
    level = 0 if axis == 1 else 1
    if hinge == BOTH:
        low, high = spans[level]
        half = (high - low) / 2.0
        upright = spans[3 - axis - level]
        return [((level, 1.0, low), half, upright), ((level, -1.0, high), half, upright)]
    edge = EDGES.get(hinge)
    if edge is None or edge[0] == axis:
        return []
    along, side = edge
    across = 3 - axis - along
    at = spans[along][1] if side > 0.0 else spans[along][0]
    return [((along, -side, at), spans[along][1] - spans[along][0], spans[across])]


def _leaf(
    along: tuple[int, float, float],
    reach: float,
    width: tuple[float, float],
    across: tuple[int, float],
    plane: float,
    turns: tuple[float, float, float],
) -> Turn:
    axis, way, at = along
    turn, most, least = (min(one, HALF) for one in turns)
    return Turn((axis, way), across, (at, plane), ((0.0, reach), (0.0, 0.0)), width, turn, most, at_least=least)
