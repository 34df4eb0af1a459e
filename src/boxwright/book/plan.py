"""The plan of a rig in one slot: the frame's own lines as a backdrop, and every thing that stands, over them."""

from __future__ import annotations

from math import inf

from boxwright.disciplines import layout
from boxwright.disciplines.frame.result import Result, Wall, WallName
from boxwright.drawing import Line, Mark, Shape, Text, View
from boxwright.drawing.mark import Point
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot

STUDS, FLOOR = "studs", "floor members"
DEEP = 0.0381
"""How deep (m) a stud is drawn whose tube nobody wrote: 1 1/2 in, common practice, no source."""
HALF_FACE = 0.0127
"""Half the face (m) a stud is drawn with whose tube nobody wrote: 1 in, common practice, no source."""
NAME_AWAY = 0.06
"""How far (m) outside the studs a name stands."""
WALLS: tuple[WallName, ...] = ("left", "right", "front", "rear", "nose-left", "nose-right")
NUMBERED = ("left", "right")
UPRIGHT = frozenset({"stud", "corner post", "jamb"})


def plan(rig: Rig, slot: Slot) -> View | None:
    """Return the plan of a slot, None where the box is not known."""
    if slot.box is None or slot.frame is None or not slot.box.inside[0]:
        return None
    centre = (inf, inf)
    if slot.weight is not None:
        centre = (slot.weight.centre_x.band.best, slot.weight.centre_y.band.best)
    folded = tuple((item.of, item.folded) for item in rig.parts if item.folded is not None and _stands(item.of, slot))
    frames = tuple(frame for frame in slot.standing.frames if frame.of.startswith("parts["))
    backdrop = (*_shell(slot), *_members(slot.frame), *_openings(slot.frame))
    return layout.sheets(backdrop, slot.box, frames, folded, centre)[0]


def _stands(of: str, slot: Slot) -> bool:
    return any(frame.of == of for frame in slot.standing.frames)


def _shell(slot: Slot) -> list[Mark]:
    """Return the outline of the box at the stud faces, with its nose, and of what stands up through the floor."""
    assert slot.box is not None and slot.frame is not None
    length, width = slot.box.inside[0], slot.box.inside[1]
    nose = slot.frame.nose
    ahead = [(-nose.length, nose.tip / 2.0), (-nose.length, -nose.tip / 2.0)] if nose is not None else []
    half = width / 2.0
    outline: list[Point] = [(0.0, -half), (length, -half), (length, half), (0.0, half), *ahead]
    marks: list[Mark] = [Shape(tuple(outline), "cut", "trailer.body")]
    for one in slot.frame.intrusions:
        low, high = one.low, one.high
        corners = ((low[0], low[1]), (high[0], low[1]), (high[0], high[1]), (low[0], high[1]))
        marks.append(Shape(corners, "hidden", one.of, "metal"))
    return marks


def _members(frame: Result) -> list[Mark]:
    """Return the cross-members of the floor as hidden lines, and the studs and posts of the walls."""
    marks: list[Mark] = []
    floor = frame.wall("floor")
    for member in frame.members_of("floor") if floor is not None else ():
        if member.kind == "cross-member" and member.is_held:
            marks.append(Line((member.at.best, floor.foot), (member.at.best, floor.top), "hidden", FLOOR))
    for name in WALLS:
        wall = frame.wall(name)
        for member in frame.members_of(name) if wall is not None else ():
            if member.kind in UPRIGHT and member.is_held and not member.is_removed:
                half = member.face.best / 2.0 if member.face.known else HALF_FACE
                deep = member.depth.best if member.depth is not None and member.depth.known else DEEP
                corners = _in_plan(wall, member.at.best - half, member.at.best + half, deep)
                marks.append(Shape(corners, "cut", STUDS, "metal"))
                if member.kind == "stud" and member.number is not None and name in NUMBERED:
                    at = _outside(wall, member.at.best, deep + NAME_AWAY)
                    marks.append(Text(at, str(member.number), STUDS, "small", may_move=False))
    return marks


def _openings(frame: Result) -> list[Mark]:
    """Return each opening of a wall as a gap in it with its name outside, and each hole of the roof as an outline."""
    marks: list[Mark] = []
    for hole in frame.holes:
        wall = frame.wall(hole.wall)
        if wall is None or not hole.is_placed:
            continue
        line = "hidden" if hole.there == "later" else "visible"
        if hole.wall in {"roof", "floor"}:
            low, high = hole.bottom, hole.top
            corners: tuple[Point, ...] = ((hole.low, low), (hole.high, low), (hole.high, high), (hole.low, high))
            marks.append(Shape(corners, "phantom", hole.of))
            continue
        marks.append(Shape(_in_plan(wall, hole.low, hole.high, DEEP), line, hole.of, "hole"))
        at = _outside(wall, (hole.low + hole.high) / 2.0, DEEP + NAME_AWAY)
        marks.append(Text(at, hole.name, f"{hole.of}.name", "small", may_move=False))
    return marks


def _in_plan(wall: Wall, low: float, high: float, deep: float) -> tuple[Point, ...]:
    """Return a stretch of a wall's thickness as seen from above, outward of the stud face."""
    start, end = _on_face(wall, low), _on_face(wall, high)
    out = (-wall.inward[0] * deep, -wall.inward[1] * deep)
    return start, end, (end[0] + out[0], end[1] + out[1]), (start[0] + out[0], start[1] + out[1])


def _on_face(wall: Wall, along: float) -> Point:
    """Return the point of the stud face at a distance along the wall, as seen from above."""
    length = wall.high - wall.low
    share = (along - wall.low) / length if length else 0.0
    return (wall.start[0] + share * (wall.end[0] - wall.start[0]), wall.start[1] + share * (wall.end[1] - wall.start[1]))


def _outside(wall: Wall, along: float, far: float) -> Point:
    at = _on_face(wall, along)
    return at[0] - wall.inward[0] * far, at[1] - wall.inward[1] * far
