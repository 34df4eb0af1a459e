"""The plan and the walls of a rig in one slot: the frame's own lines, and every thing that stands, over them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import inf, isfinite

from boxwright.disciplines import layout
from boxwright.disciplines.frame.result import Hole, Result, Run, Wall, WallName
from boxwright.disciplines.layout.against import beside
from boxwright.disciplines.layout.drawn import Leaf, Planned, Thing
from boxwright.disciplines.layout.parts import Facet, Slide
from boxwright.disciplines.layout.plan import level_of, opened
from boxwright.drawing import Line, Mark, Shape, Sheet, Text, View
from boxwright.drawing.mark import LineKind, Point
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.rig.rig import Item, Rig
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing
from boxwright.units import HeaderUnits, show

STUDS, FLOOR, WIRES, PIPES = "studs", "floor-members", "wires", "pipes"
BELOW, OVERHEAD, CARGO, ELSEWHERE, MOVES = "below", "overhead", "cargo", "elsewhere", "moves"
LAYERS: Mapping[str, str] = {
    STUDS: "Studs",
    FLOOR: "Floor members",
    BELOW: "Under the deck",
    OVERHEAD: "Overhead",
    CARGO: "Cargo",
    ELSEWHERE: "Folded, at night",
    MOVES: "Flaps, slides, room kept clear",
    WIRES: "Wires",
    PIPES: "Pipes",
}
"""The layers of a drawing that can be shown alone, by the word the page knows, with the word it shows."""
ASIDE = frozenset({WIRES, PIPES, MOVES})
"""Layers that are shown on demand only."""
SUFFIXES = {
    ".slides": MOVES,
    ".keep_clear": MOVES,
    ".open": MOVES,
    ".down": ELSEWHERE,
    ".folded": ELSEWHERE,
    ".by-day": ELSEWHERE,
    ".at-night": ELSEWHERE,
}
DEEP = 0.0381
"""How deep (m) a stud is drawn whose tube nobody wrote: 1 1/2 in, common practice, no source."""
HALF_FACE = 0.0127
"""Half the face (m) a stud is drawn with whose tube nobody wrote: 1 in, common practice, no source."""
NAME_AWAY, NUMBER_AWAY = 0.22, 0.1
"""How far (m) outside the studs the names of openings and the numbers of studs stand."""
WALLS: tuple[WallName, ...] = ("left", "right", "front", "rear", "nose-left", "nose-right")
NUMBERED = ("left", "right")
UPRIGHT = frozenset({"stud", "corner post", "jamb"})


@dataclass(frozen=True, slots=True)
class Layered:
    """A view, and the layer of each rig path that belongs to one."""

    view: View
    layers: Mapping[str, str]


def plan_sheets(rig: Rig, slot: Slot, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the sheets of layout for one slot; none where the box is not known."""
    planned = planned_of(rig, slot, slot.standing, units)
    return layout.sheets(planned) if planned is not None else ()


def plan(rig: Rig, slot: Slot, units: HeaderUnits) -> Layered | None:
    """Return the plan of a slot with its layers, None where the box is not known."""
    planned = planned_of(rig, slot, slot.standing, units)
    if planned is None or slot.frame is None:
        return None
    view = layout.sheets(planned)[0].views[0]
    layers = {**_layers(rig, planned.things), **_frame_layers(slot.frame)}
    marks = (*view.marks, *opened(planned), *_run_marks(slot.frame))
    for mark in marks:
        suffix = mark.of[mark.of.rfind("]") + 1 :]
        if suffix in SUFFIXES:
            layers[mark.of] = SUFFIXES[suffix]
        elif mark.of.startswith(("wires[", "pipes[")):
            layers[mark.of] = _layer_of_run(mark.of)
    return Layered(View(view.name, view.looks, marks, view.datum), layers)


def with_things(rig: Rig, slot: Slot, view: View, wall: str, is_inside: bool) -> Layered:
    """Return an elevation of the frame with what stands against its wall, and the wires and pipes within it."""
    assert slot.frame is not None
    plane = slot.frame.wall(wall)
    if plane is None:
        return Layered(view, {})
    things = _things(rig, slot.standing)
    turn = 1.0 if (wall in {"left", "rear", "nose-right"}) != is_inside else -1.0
    middle = (plane.start[0], plane.start[1])
    added = beside(things, plane.inward, middle, turn, is_inside)
    runs: list[Mark] = []
    for run in slot.frame.runs:
        if run.wall == wall and run.up is not None:
            low, high = max(run.low, plane.low), min(run.high, plane.high)
            runs.append(Line((turn * low, run.up), (turn * high, run.up), "visible", run.of))
            runs.append(Text((turn * (low + high) / 2.0, run.up), _name_of(run.of), f"{run.of}.name", "small"))
    layers = {**_layers(rig, things), **_frame_layers(slot.frame)}
    layers |= {mark.of: _layer_of_run(mark.of) for mark in runs}
    layers = {of: layer for of, layer in layers.items() if layer not in {BELOW, OVERHEAD}}
    return Layered(View(view.name, view.looks, (*view.marks, *added, *runs), view.datum), layers)


def planned_of(rig: Rig, slot: Slot, standing: Standing, units: HeaderUnits) -> Planned | None:
    """Return what the plan of a slot is drawn from, with the things of ``standing``; None where the box is not known.

    Where that is not what stands in the slot itself, the centre of gravity is not known.
    """
    if slot.box is None or slot.frame is None or not slot.box.inside[0]:
        return None
    centre = (inf, inf)
    if slot.weight is not None and standing is slot.standing:
        bands = slot.weight.centre_x.band, slot.weight.centre_y.band
        # A centre nobody knows either end of is not marked: it would look like an answer.
        if all(isfinite(one.low) or isfinite(one.high) for one in bands):
            centre = (bands[0].best, bands[1].best)
    faces = rig.surfaces
    length, width = (show(one, "length", units, cuts=True) for one in slot.box.inside[:2])
    backdrop = (*_shell(slot), *_members(slot.frame), *_openings(slot.frame))
    leaves = tuple(leaf for hole in slot.frame.holes if (leaf := _leaf(hole, slot.frame, rig)) is not None)
    room = ((faces.front, faces.left), (faces.rear, faces.right))
    return Planned(backdrop, slot.box, _things(rig, standing), leaves, room, centre, length, width)


# ------------------------------------------------------------------ things


def _things(rig: Rig, standing: Standing) -> tuple[Thing, ...]:
    items = {item.of: item for item in rig.parts}
    walls = {one.of: one.wall for one in rig.layout.fitted}
    found = []
    for frame in standing.frames:
        item = items.get(frame.of)
        if item is None:
            continue
        facet = item.facet("layout")
        own = facet if isinstance(facet, Facet) else None
        found.append(Thing(frame, _elsewhere(item, frame.place), own, walls.get(frame.of, "")))
    return tuple(found)


def _elsewhere(item: Item, here: Place) -> tuple[tuple[str, Place], ...]:
    """Return the other places of a thing that folds, or that stands elsewhere at night."""
    other: list[tuple[str, Place]] = []
    if item.words.folds and item.folded is not None:
        other += [("down", item.place), ("folded", item.folded)]
    if item.words.when_sleeping is not None and item.asleep is not None:
        other += [("by day", item.place), ("at night", item.asleep)]
    return tuple((word, place) for word, place in other if place != here)


def _layers(rig: Rig, things: Iterable[Thing]) -> dict[str, str]:
    """Return the layer of each thing that is not simply standing in the room."""
    found = {}
    for thing in things:
        level = level_of(thing)
        if level != "standing":
            found[thing.frame.of] = BELOW if level == "below" else OVERHEAD
        elif thing.frame.kind == "cargo":
            found[thing.frame.of] = CARGO
    return found


# ------------------------------------------------------------------ the frame from above


def _shell(slot: Slot) -> list[Mark]:
    """Return the outline of the box at the stud faces, with its nose, and of what stands up through the floor."""
    assert slot.box is not None and slot.frame is not None
    length, width = slot.box.inside[0], slot.box.inside[1]
    nose = slot.frame.nose
    ahead = [(-nose.length, nose.tip / 2.0), (-nose.length, -nose.tip / 2.0)] if nose is not None else []
    half = width / 2.0
    outline: list[Point] = [(0.0, -half), (length, -half), (length, half), (0.0, half), *ahead]
    marks: list[Mark] = [Shape(tuple(outline), "visible", "trailer.body", "hole"), *_skin(slot)]
    for one in slot.frame.intrusions:
        low, high = one.low, one.high
        corners = ((low[0], low[1]), (high[0], low[1]), (high[0], high[1]), (low[0], high[1]))
        marks.append(Shape(corners, "visible", one.of, "metal"))
        middle = ((low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0)
        marks.append(Text(middle, one.name, one.of, "small", may_move=False))
    return marks


def _skin(slot: Slot) -> list[Mark]:
    """Return the outer face of the body, where its outside measures are known and there is no nose."""
    assert slot.box is not None and slot.frame is not None
    box = slot.box
    half = box.outside[1] / 2.0
    if slot.frame.nose is not None or not (isfinite(half) and half > box.inside[1] / 2.0 and box.front_x < 0.0):
        return []
    corners = ((box.front_x, -half), (box.rear_x, -half), (box.rear_x, half), (box.front_x, half))
    return [Shape(corners, "cut", "trailer.body")]


def _members(frame: Result) -> list[Mark]:
    """Return the cross-members of the floor as hidden lines, and the studs and posts of the walls."""
    marks: list[Mark] = []
    floor = frame.wall("floor")
    for member in frame.members_of("floor"):
        if floor is not None and member.kind == "cross-member" and member.is_held:
            marks.append(Line((member.at.best, floor.foot), (member.at.best, floor.top), "hidden", member.of))
    for name in WALLS:
        wall = frame.wall(name)
        for member in frame.members_of(name):
            if wall is not None and member.kind in UPRIGHT and member.is_held and not member.is_removed:
                half = member.face.best / 2.0 if member.face.known else HALF_FACE
                deep = member.depth.best if member.depth is not None and member.depth.known else DEEP
                of = member.of if not member.of.startswith("openings[") else f"{member.of}.jambs"
                corners = _in_plan(wall, member.at.best - half, member.at.best + half, deep)
                marks.append(Shape(corners, "visible", of, "metal"))
                if member.kind == "stud" and member.number is not None and name in NUMBERED:
                    at = _outside(wall, member.at.best, deep + NUMBER_AWAY)
                    marks.append(Text(at, str(member.number), of, "small", may_move=False))
    return marks


def _frame_layers(frame: Result) -> dict[str, str]:
    """Return the layers of the members: those of the floor, and all others."""
    found = {}
    for member in frame.members:
        if not member.of.startswith("openings["):
            found[member.of] = FLOOR if member.wall == "floor" else STUDS
    return found


def _openings(frame: Result) -> list[Mark]:
    """Return each opening of a wall as a gap in it with its name outside, and each hole of the roof as an outline."""
    marks: list[Mark] = []
    for hole in frame.holes:
        wall = frame.wall(hole.wall)
        if wall is None or not hole.is_placed:
            continue
        if hole.wall in {"roof", "floor"}:
            low, high = hole.bottom, hole.top
            corners: tuple[Point, ...] = ((hole.low, low), (hole.high, low), (hole.high, high), (hole.low, high))
            middle = ((hole.low + hole.high) / 2.0, (low + high) / 2.0)
            marks += [Shape(corners, "phantom", hole.of), Text(middle, hole.name, hole.of, "small", may_move=False)]
            continue
        line: LineKind = "hidden" if hole.there == "later" or not hole.is_cut else "visible"
        marks.append(Shape(_in_plan(wall, hole.low, hole.high, DEEP), line, hole.of, "hole"))
        at = _outside(wall, (hole.low + hole.high) / 2.0, DEEP + NAME_AWAY)
        is_across = hole.wall in {"front", "rear"}
        marks.append(Text(at, hole.name, hole.of, "small", is_turned=is_across))
    return marks


def _leaf(hole: Hole, frame: Result, rig: Rig) -> Leaf | None:
    """Return what closes an opening of a wall, None where nothing is written of how it turns or slides."""
    wall = frame.wall(hole.wall)
    item = next((one for one in rig.openings if one.of == hole.of), None)
    facet = item.facet("layout") if item is not None else None
    slides = facet.slides if isinstance(facet, Facet) else None
    if wall is None or hole.wall in {"roof", "floor"} or not hole.is_placed or not (hole.swing[0] or slides):
        return None
    if slides is not None:
        return _sash(hole, wall, slides, rig)
    swing = facet.swing if isinstance(facet, Facet) else None
    turns = swing.to.best if swing is not None and swing.to is not None and swing.to.known else None
    out = (-wall.inward[0], -wall.inward[1])
    skin = [_shifted(_on_face(wall, along), out, DEEP) for along in (hole.low, hole.high)]
    return Leaf(hole.of, hole.name, skin[0], skin[1], out, hole.top - hole.bottom, hole.swing[0], hole.swing[1], turns)


def _sash(hole: Hole, wall: Wall, slides: Slide, rig: Rig) -> Leaf:
    """Return a leaf that slides along its wall, its ends on the face it runs before, or in the middle of the wall."""
    out, faces = (-wall.inward[0], -wall.inward[1]), rig.surfaces
    on_stud = _on_face(wall, hole.low)
    lined = {"front": faces.front, "rear": faces.rear, "left": faces.left, "right": faces.right}.get(hole.wall)
    inside = abs(lined - on_stud[0 if out[0] else 1]) if lined is not None and isfinite(lined) else 0.0
    away = {"inside": -inside, "outside": DEEP}.get(slides.runs, DEEP / 2.0)
    low, high = (_shifted(_on_face(wall, along), out, away) for along in (hole.low, hole.high))
    by = slides.by.best if slides.by is not None and slides.by.known else None
    return Leaf(hole.of, hole.name, low, high, out, hole.top - hole.bottom, "", "", None, slides.to, by, slides.runs)


# ------------------------------------------------------------------ wires and pipes


def _run_marks(frame: Result) -> Iterable[Mark]:
    """Yield the stretches of wires and pipes that run along upright walls, in the middle of the wall's thickness."""
    lanes: dict[str, int] = {}
    for run in frame.runs:
        wall = frame.wall(run.wall)
        if wall is None or run.wall in {"roof", "floor"}:
            continue
        low, high = max(run.low, wall.low), min(run.high, wall.high)
        away = DEEP * (0.15 + 0.7 * _lane(run, lanes) / 8.0)
        out = (-wall.inward[0], -wall.inward[1])
        start, end = (_shifted(_on_face(wall, along), out, away) for along in (low, high))
        yield Line(start, end, "visible", run.of)


def _lane(run: Run, lanes: dict[str, int]) -> int:
    """Return the lane of a run in its wall, so that neighbours do not lie on one line."""
    lanes[run.wall] = lanes.get(run.wall, -1) + 1
    return lanes[run.wall] % 8


def _layer_of_run(of: str) -> str:
    return PIPES if of.startswith("pipes[") else WIRES


def _name_of(of: str) -> str:
    return of.partition("[")[2].removesuffix("]")


# ------------------------------------------------------------------ a wall from above


def _in_plan(wall: Wall, low: float, high: float, deep: float) -> tuple[Point, ...]:
    """Return a stretch of a wall's thickness as seen from above, outward of the stud face."""
    start, end = _on_face(wall, low), _on_face(wall, high)
    out = (-wall.inward[0], -wall.inward[1])
    return start, end, _shifted(end, out, deep), _shifted(start, out, deep)


def _on_face(wall: Wall, along: float) -> Point:
    """Return the point of the stud face at a distance along the wall, as seen from above."""
    length = wall.high - wall.low
    share = (along - wall.low) / length if length else 0.0
    (x, y), (end_x, end_y) = wall.start, wall.end
    return x + share * (end_x - x), y + share * (end_y - y)


def _shifted(point: Point, way: Point, by: float) -> Point:
    return point[0] + way[0] * by, point[1] + way[1] * by


def _outside(wall: Wall, along: float, far: float) -> Point:
    return _shifted(_on_face(wall, along), (-wall.inward[0], -wall.inward[1]), far)
