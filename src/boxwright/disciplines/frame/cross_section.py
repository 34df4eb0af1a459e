"""The whole trailer cut across, looking forward: walls, floor and roof with what lies on them, and the room inside."""

from __future__ import annotations

from math import cos, hypot, pi, sin

from boxwright.disciplines.frame.build_up import deck_of, fill_of, shown_thick
from boxwright.disciplines.frame.drawn import UNSAID, Drawn, Marks
from boxwright.disciplines.frame.result import Buildup, LayerPiece, Roof, Wall
from boxwright.disciplines.frame.walls import top_at
from boxwright.drawing import Dimension, Leader, Shape, Sheet, Text, View
from boxwright.drawing.mark import LineKind, Point
from boxwright.units import Band

STEPS = 24
USUAL = 0.025
"""How deep members are drawn whose depth nobody wrote (m); the sections through the walls say what is known."""
OVER = 0.1
"""How far from the walls the words for the two sides stand (m)."""
NOTE = (
    "Cut through a bay, looking forward; studs, bows and cross-members lie behind the cut. Heights are from the deck. "
    "Finished is with every layer of the plan. A layer whose thickness nobody wrote is drawn thin and counts nothing."
)


def cross_section(drawn: Drawn) -> tuple[Sheet, ...]:
    """Return the sheet of the trailer cut across; none where a wall of it is not known."""
    walls = [drawn.frame.wall(name) for name in ("left", "right", "roof", "floor")]
    left, right, roof, floor = walls
    if left is None or right is None or roof is None or floor is None:
        return ()
    half = abs(left.start[1])
    marks = [*_floor(drawn, floor, half), *_side(drawn, left, -1.0, half), *_side(drawn, right, 1.0, half)]
    marks += [*_roof(drawn, roof, half), *_boxes(drawn), *_measures(drawn, half)]
    view = View("Cross-section", "looking forward, your left is the trailer's left", tuple(marks), "the deck")
    return (Sheet("cross-section", "Cross-section of the trailer", (view,), (NOTE,)),)


def _known(band: Band | None, otherwise: float) -> float:
    return band.best if band is not None and band.known and band.best > 0.0 else otherwise


def _depth(wall: Wall) -> float:
    return _known(wall.tube.depth, USUAL)


def _skin(wall: Wall) -> float:
    return _known(wall.skin, shown_thick(None))


def _line(one: LayerPiece) -> LineKind:
    return "phantom" if one.there == "later" else "hidden" if one.there == "perhaps" else "visible"


def _inward(bay: Buildup | None, depth: float) -> list[tuple[LayerPiece, float, float]]:
    """Return the layers of a bay with where each begins and ends, inwards from the stud face (m)."""
    found: list[tuple[LayerPiece, float, float]] = []
    between, inside = -depth, 0.0
    pieces = bay.layers if bay is not None else ()
    inside = max(0.0, sum(shown_thick(one.thick) for one in pieces if one.where == "bays") - depth)
    inside += sum(shown_thick(one.thick) for one in pieces if one.where == "members")
    for one in pieces:
        thick = shown_thick(one.thick)
        if one.where == "bays":
            found.append((one, between, between + thick))
            between += thick
        elif one.where == "all":
            found.append((one, inside, inside + thick))
            inside += thick
    return found


def _side(drawn: Drawn, wall: Wall, sign: float, half: float) -> Marks:
    """Return a side wall cut upright; ``sign`` is -1 on the left."""
    depth, skin = _depth(wall), _skin(wall)

    def upright(inner: float, outer: float, foot: float) -> tuple[Point, ...]:
        near, far = sign * (half - inner), sign * (half - outer)
        return (near, foot), (far, foot), (far, wall_top), (near, wall_top)

    roof = wall.roof
    wall_top = wall.top - (min(max(roof.radius, 0.0), half) if roof.shape == "rounded" else 0.0)
    marks: Marks = [
        Shape(upright(-depth, 0.0, 0.0), "visible", "frame.studs"),
        Shape(upright(-depth - skin, -depth, -_depth(wall)), "cut", "frame.skin", "skin"),
    ]
    for one, low, high in _inward(drawn.buildup(wall.name, "bay"), depth):
        marks.append(Shape(upright(low, high, 0.0), _line(one), one.of, fill_of(one)))
    side = "LEFT" if sign < 0.0 else "RIGHT"
    return [*marks, Text((sign * (half - OVER * 2.0), OVER), side, wall.of)]


def _floor(drawn: Drawn, wall: Wall, half: float) -> Marks:
    """Return the floor: cross-member, deck, and what lies on it."""
    deck, words = deck_of(drawn)
    depth = _known(wall.tube.depth, _floor_depth(drawn))

    def level(low: float, high: float) -> tuple[Point, ...]:
        return (-half, low), (half, low), (half, high), (-half, high)

    marks: Marks = [
        Shape(level(-deck - depth, -deck), "visible", "frame.floor"),
        Leader((-half * 0.5, -deck - depth / 2.0), "cross-member", "frame.floor"),
        Shape(level(-deck, 0.0), "cut", "frame.floor.deck", "wood"),
        Leader((half * 0.3, -deck / 2.0), words, "frame.floor.deck"),
    ]
    bay = drawn.buildup("floor", "bay")
    at = 0.0
    for one in bay.layers if bay is not None else ():
        thick = shown_thick(one.thick)
        if one.where == "bays":
            marks.append(Shape(level(-deck - thick, -deck), _line(one), one.of, fill_of(one)))
        else:
            marks.append(Shape(level(at, at + thick), _line(one), one.of, fill_of(one)))
            at += thick
    return marks


def _floor_depth(drawn: Drawn) -> float:
    depths = (one.depth for one in drawn.frame.members_of("floor") if one.depth is not None and one.depth.known)
    return next((one.best for one in depths if one.best > 0.0), USUAL)


def _bow(roof: Roof, half: float) -> list[Point]:
    """Return the underside of the bows, from the left eave to the right."""
    if roof.shape == "rounded":
        radius = min(max(roof.radius, 0.0), half, roof.height)
        turns = [pi / 2.0 * step / 8 for step in range(9)]
        right = [(half - radius + radius * sin(one), roof.height - radius + radius * cos(one)) for one in turns]
        return [*((-x, z) for x, z in reversed(right)), *right]
    steps = STEPS if roof.shape == "arched" else 1
    reach = [half * (2.0 * step / steps - 1.0) for step in range(steps + 1)]
    return [(one, top_at(roof, half, one)) for one in reach]


def _off(curve: list[Point], by: float) -> list[Point]:
    """Return a curve moved outwards by a distance, square to itself."""
    moved = []
    for number, (x, z) in enumerate(curve):
        before, after = curve[max(0, number - 1)], curve[min(len(curve) - 1, number + 1)]
        dx, dz = after[0] - before[0], after[1] - before[1]
        length = hypot(dx, dz) or 1.0
        moved.append((x - by * dz / length, z + by * dx / length))
    return moved


def _roof(drawn: Drawn, wall: Wall, half: float) -> Marks:
    """Return the roof along its bows: the bow, the skin over it, and the ceiling under it."""
    depth, skin, curve = _depth(wall), _skin(wall), _bow(wall.roof, half)

    def strip(inner: float, outer: float) -> tuple[Point, ...]:
        return (*_off(curve, -inner), *reversed(_off(curve, -outer)))

    marks: Marks = [
        Shape(strip(0.0, -depth), "visible", "frame.bows"),
        Leader(_off(curve, depth / 2.0)[len(curve) // 3], f"bow {wall.tube.written or UNSAID}", "frame.bows"),
        Shape(strip(-depth, -depth - skin), "cut", "frame.skin", "skin"),
    ]
    for one, low, high in _inward(drawn.buildup("roof", "bay"), depth):
        marks.append(Shape(strip(low, high), _line(one), one.of, fill_of(one)))
    return marks


def _boxes(drawn: Drawn) -> Marks:
    """Return the wheel boxes as they stand behind or before the cut."""
    marks: Marks = []
    for one in drawn.frame.intrusions:
        (_, y1, z1), (_, y2, z2) = one.low, one.high
        marks.append(Shape(((y1, z1), (y2, z1), (y2, z2), (y1, z2)), "hidden", one.of))
        marks.append(Text(((y1 + y2) / 2.0, (z1 + z2) / 2.0), one.name, one.of, "small"))
    return marks


def _measures(drawn: Drawn, half: float) -> Marks:
    """Return the inside, bare and finished: its width, and its height in the middle and at the eaves."""
    ruler, roof = drawn.ruler, drawn.frame.roof
    liner = {name: _liner(drawn, name) for name in ("left", "right", "roof", "floor")}
    wide = Band(2.0 * half, 2.0 * half, 2.0 * half)
    high, eaves = roof.height, top_at(roof, half, half)
    below = -_floor_depth(drawn) - deck_of(drawn)[0]
    finished = ruler.thickness(_less(wide, liner["left"], liner["right"]))
    standing = ruler.thickness(_less(Band(high, high, high), liner["roof"], liner["floor"]))
    left, right = (_best(liner[name]) for name in ("left", "right"))
    low, top = _best(liner["floor"]), high - _best(liner["roof"])
    body = "trailer.body"
    marks: Marks = [
        Dimension((-half + left, below), (half - right, below), f"{finished} finished", body, "below", 0),
        Dimension((-half, high), (half, high), f"{ruler.full(2.0 * half)} stud to stud", body, "above", 0),
        Dimension((half, low), (half, top), f"{standing} finished", body, "right", 0),
        Dimension((half, 0.0), (half, high), f"{ruler.full(high)} deck to bows", body, "right", 1),
    ]
    if high - eaves > 1e-6:
        marks.append(Dimension((-half, 0.0), (-half, eaves), f"{ruler.full(eaves)} at the eaves", body, "left", 0))
    return marks


def _liner(drawn: Drawn, wall: str) -> Band:
    found = drawn.buildup(wall, "bay")
    return found.liner if found is not None else Band(0.0, 0.0, 0.0)


def _best(band: Band) -> float:
    return band.best if band.known else 0.0


def _less(whole: Band, *parts: Band) -> Band:
    """Return what is left of a length."""
    known = all(one.known for one in parts)
    return Band(
        whole.best - sum(one.best for one in parts),
        whole.low - sum(one.high for one in parts),
        whole.high - sum(one.low for one in parts),
        known,
    )
