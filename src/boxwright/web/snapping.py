"""The lines a dragged thing catches on, each with its name: faces of the room, studs, bays, and edges of neighbours."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines.frame.result import Result
from boxwright.drawing import Shape, View
from boxwright.model.place import Surfaces
from boxwright.web import contract
from boxwright.web.figures import MILLIMETRES, asked_slot
from boxwright.web.session import Seen

UPRIGHT = frozenset({"stud", "bow"})
EDGES: dict[str, tuple[str, str]] = {
    "x": ("front of", "rear of"),
    "y": ("left side of", "right side of"),
    "z": ("underside of", "top of"),
}
"""What the low and the high edge of a thing are called, along each axis of the rig."""


def snaps_of(key: str, seen: Seen, view: View, right: contract.Along, up: contract.Upward) -> list[contract.Snap]:
    """Return the lines of one picture, whose axes are given; nothing where the frame is not worked out."""
    slot = asked_slot(seen)
    if slot is None or slot.frame is None:
        return []
    walls = ("left", "right") if key == "plan" else (key.partition("-")[0],)
    names = {item.of: item.name for item in seen.reading.rig.parts}
    found = [*_faces(seen.reading.rig.surfaces), *_members(slot.frame, walls)]
    found += _edges(view, names, right, up)
    shown = {right[1], up[1]}
    return [one for one in found if one.axis in shown]


def _faces(faces: Surfaces) -> Iterable[contract.Snap]:
    planes: tuple[tuple[contract.Axis, float, str], ...] = (
        ("x", faces.front, "front"),
        ("x", faces.rear, "rear"),
        ("y", faces.left, "left wall"),
        ("y", faces.right, "right wall"),
        ("y", 0.0, "middle"),
        ("z", faces.floor, "floor"),
        ("z", faces.ceiling, "ceiling"),
    )
    for axis, at, label in planes:
        yield contract.Snap(axis=axis, mm=at * MILLIMETRES, label=label)


def _members(frame: Result, walls: Iterable[str]) -> Iterable[contract.Snap]:
    """Yield both faces of each stud, and the middle of each bay between two of them."""
    for wall in walls:
        axis: contract.Axis = "y" if wall in {"front", "rear"} else "x"
        for member in frame.members_of(wall):
            if member.kind in UPRIGHT and member.is_held and not member.is_removed:
                half = member.face.best / 2.0 if member.face.known else 0.0
                for edge in dict.fromkeys((member.at.best - half, member.at.best + half)):
                    yield contract.Snap(axis=axis, mm=edge * MILLIMETRES, label=f"{member.kind} {member.number}")
        for bay in frame.bays:
            if bay.wall == wall and bay.low.known and bay.high.known:
                middle = (bay.low.best + bay.high.best) / 2.0
                yield contract.Snap(axis=axis, mm=middle * MILLIMETRES, label=f"middle of bay {bay.name}")


def _edges(view: View, names: dict[str, str], right: contract.Along, up: contract.Upward) -> Iterable[contract.Snap]:
    """Yield the edges of every thing that is seen, in the axes of the rig."""
    for mark in view.marks:
        if not isinstance(mark, Shape) or mark.fill == "none" or mark.of not in names:
            continue
        for index, way in enumerate((right, up)):
            sign = -1.0 if way[0] == "-" else 1.0
            ends = sorted(sign * point[index] for point in mark.points)
            axis: contract.Axis = "x" if way[1] == "x" else "y" if way[1] == "y" else "z"
            for end, word in zip((ends[0], ends[-1]), EDGES[axis], strict=True):
                yield contract.Snap(axis=axis, mm=end * MILLIMETRES, label=f"{word} {names[mark.of]}", of=mark.of)
