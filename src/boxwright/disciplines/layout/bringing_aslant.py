"""A long thing brought in aslant: pushed through a hole at an angle, and turned level once all of it is inside.

Seen from above, along the wall and inwards from its face. The push is exact; the turn about the middle is looked at in
small steps against what stands, each rectangle grown by as much as a corner moves between two of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import atan2, cos, hypot, pi, sin

from boxwright.disciplines.layout.bodies import Block
from boxwright.disciplines.layout.changeover import Gate
from boxwright.disciplines.layout.changeover_lattice import TOUCH
from boxwright.disciplines.layout.changeover_ways import THROUGH, outward
from boxwright.exchange import Vector
from boxwright.records import dataclass

ANGLES = tuple(step * pi / 36.0 for step in range(17, 1, -1))
"""At these angles to the wall a thing is tried to be pushed in, from nearly square on: each 5 deg."""
STEP = pi / 72.0
"""A turn is looked at in steps no larger than this (rad): 2.5 deg."""
PIECES = 6
"""The push is told as so many boxes one after the other, where boxes are asked for."""

Spot = tuple[float, float]
"""Along the wall, and inwards from its face (m)."""
Span = tuple[float, float]


@dataclass(frozen=True, slots=True)
class View:
    """A room seen from above with one wall before one: ``hole`` and ``ends`` along it, ``depth`` inwards (m).

    ``solid`` are the rectangles that stand at the height looked at, first and last along the wall, near and far.
    """

    gate: Gate
    hole: Span
    ends: Span
    depth: float
    solid: tuple[tuple[Span, Span], ...]


@dataclass(frozen=True, slots=True)
class Push:
    """A thing of ``long`` by ``wide`` (m) pushed in at ``angle`` to the wall, leaning ``way`` along it, up to ``spot``.

    ``level`` is the angle it is then turned to about its middle.
    """

    long: float
    wide: float
    angle: float
    way: float
    spot: Spot
    level: float

    def lean(self, angle: float) -> float:
        """Return the angle of its long side from the wall's own direction, held at an angle to the wall."""
        return angle if self.way > 0.0 else pi - angle

    @property
    def outside(self) -> Spot:
        """Return where its middle is when all of it is outside still."""
        back = (self.spot[1] + self.corner_at(self.angle)[1] + THROUGH) / sin(self.angle)
        lean = self.lean(self.angle)
        return self.spot[0] - cos(lean) * back, self.spot[1] - sin(lean) * back

    def corner_at(self, angle: float) -> Spot:
        """Return how far it reaches from its middle along the wall and inwards, held at an angle."""
        return reach(self.long, self.wide, angle)


def reach(long: float, wide: float, angle: float) -> Spot:
    """Return half the extent of a rectangle along the wall and inwards, held at an angle to the wall."""
    along, across = long / 2.0, wide / 2.0
    return along * cos(angle) + across * sin(angle), along * sin(angle) + across * cos(angle)


def view_of(gate: Gate, room: Block, stands: Sequence[Block], low: float, high: float) -> View:
    """Return a room from above before the wall of an opening, with what stands between two heights."""
    out, _ = outward(gate)
    along = 1 - out
    solid = [
        ((one.low[along], one.high[along]), _inwards(gate, room, one.low[out], one.high[out]))
        for one in stands
        if one.low[2] < high - TOUCH and one.high[2] > low + TOUCH
    ]
    ends = room.low[along], room.high[along]
    return View(gate, (gate.low[along], gate.high[along]), ends, room.size[out], tuple(solid))


def _inwards(gate: Gate, room: Block, low: float, high: float) -> Span:
    out, is_high = outward(gate)
    return (room.high[out] - high, room.high[out] - low) if is_high else (low - room.low[out], high - room.low[out])


def place_of(view: View, room: Block, spot: Spot, z: float) -> Vector:
    """Return where a spot of a view is in the room, at a height."""
    out, is_high = outward(view.gate)
    at = room.high[out] - spot[1] if is_high else room.low[out] + spot[1]
    return (at, spot[0], z) if out == 0 else (spot[0], at, z)


def pushes(view: View, long: float, wide: float, is_along: bool, is_reached: Callable[[Spot], bool]) -> Iterator[Push]:
    """Yield the ways a thing can be pushed in aslant and turned level; ``is_along`` if it ends up along the wall.

    ``is_reached`` says whether it gets from a spot, level again, to where it will stand.
    """
    level, width = 0.0 if is_along else pi / 2.0, view.hole[1] - view.hole[0]
    for angle in ANGLES:
        wanted = wide / sin(angle) + THROUGH * cos(angle) / sin(angle)  # what the push takes of the hole, in its wall
        if wanted > width + TOUCH:
            continue
        slack = (width - wanted) / 2.0
        for way in (1.0, -1.0):
            for aside in dict.fromkeys((0.0, slack, -slack)):
                middle = (view.hole[0] + view.hole[1]) / 2.0 + aside
                for spot in _spots(view, long, wide, angle, way, middle):
                    push = Push(long, wide, angle, way, spot, level)
                    if is_reached(spot) and _is_free(view, push, middle):
                        yield push


def _spots(view: View, long: float, wide: float, angle: float, way: float, middle: float) -> Iterator[Spot]:
    """Yield the least, a middling and the greatest way in at which all of a thing is inside, turned as it is."""
    _, inwards = reach(long, wide, angle)
    near, far = inwards, view.depth - inwards
    for depth in dict.fromkeys((near, (near + far) / 2.0, far)) if far >= near else ():
        gone = (depth + THROUGH / 2.0) / sin(angle)
        yield middle + way * gone * cos(angle), depth


def _is_free(view: View, push: Push, middle: float) -> bool:
    """Return whether a push and the turn after it meet no wall and nothing that stands."""
    (x, y), (low, high) = push.spot, view.ends
    along, inwards = _most(push)
    is_inside = low <= x - along + TOUCH and x + along <= high + TOUCH
    if not is_inside or y - inwards < -TOUCH or y + inwards > view.depth + TOUCH:
        return False
    lean = push.lean(push.angle)
    # from a little outside of the middle of the hole to the end inside
    tip, back = hypot(x - middle, y + THROUGH / 2.0) + push.long / 2.0, push.wide
    at = (tip - back) / 2.0
    centre = middle + cos(lean) * at, sin(lean) * at - THROUGH / 2.0
    radius = hypot(push.long, push.wide) / 2.0
    turned = abs(push.level - push.angle)
    steps = max(1, -int(-turned // STEP))
    grown = radius * turned / steps / 2.0  # what a corner moves from a step half way to the next
    for solid in view.solid:
        if _meets(centre, tip + back, push.wide, lean, solid, 0.0):
            return False
        for step in range(steps + 1):
            angle = push.angle + (push.level - push.angle) * step / steps
            if _meets(push.spot, push.long, push.wide, push.lean(angle), solid, grown):
                return False
    return True


def _most(push: Push) -> Spot:
    """Return how far a thing reaches at most from its middle while it is turned, along the wall and inwards."""
    low, high = sorted((push.angle, push.level))
    ends = [push.corner_at(low), push.corner_at(high)]
    radius = hypot(push.long, push.wide) / 2.0
    along, inwards = max(at for at, _ in ends), max(at for _, at in ends)
    if low < atan2(push.wide, push.long) < high:
        along = radius
    if low < atan2(push.long, push.wide) < high:
        inwards = radius
    return along, inwards


def _meets(centre: Spot, long: float, wide: float, lean: float, solid: tuple[Span, Span], grown: float) -> bool:
    """Return whether a rectangle that leans, grown on all sides, meets an upright one in more than a touch."""
    (left, right), (near, far) = solid
    x, y = (left + right) / 2.0 - centre[0], (near + far) / 2.0 - centre[1]
    half, deep = (right - left) / 2.0, (far - near) / 2.0
    along, across = long / 2.0 + grown - TOUCH / 2.0, wide / 2.0 + grown - TOUCH / 2.0
    c, s = abs(cos(lean)), abs(sin(lean))
    if abs(x) >= half + along * c + across * s or abs(y) >= deep + along * s + across * c:
        return False
    c, s = cos(lean), sin(lean)
    over, beside = abs(x * c + y * s), abs(y * c - x * s)
    return over < along + half * abs(c) + deep * abs(s) and beside < across + half * abs(s) + deep * abs(c)


def told_as_boxes(view: View, push: Push, room: Block, low: float, high: float) -> tuple[Block, ...]:
    """Return boxes that hold a push, its turn first: more than it sweeps, to say what is in its way."""
    along, inwards = _most(push)
    x, y = push.spot
    spots = [((x - along, y - inwards), (x + along, y + inwards))]
    lean = push.lean(push.angle)
    length = (y + push.corner_at(push.angle)[1]) / sin(push.angle)
    half = length / 2.0 / PIECES
    for piece in range(PIECES):
        back = push.long / 2.0 - length * (piece + 0.5) / PIECES
        at = x + cos(lean) * back, y + sin(lean) * back
        side = reach(2.0 * half, push.wide, push.angle)
        spots.append(((at[0] - side[0], at[1] - side[1]), (at[0] + side[0], at[1] + side[1])))
    found = []
    for near, far in spots:
        (x0, y0, _), (x1, y1, _) = place_of(view, room, near, low), place_of(view, room, far, high)
        found.append(Block((min(x0, x1), min(y0, y1), low), (max(x0, x1), max(y0, y1), high)))
    return tuple(found)
