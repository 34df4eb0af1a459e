"""The skin, the deck, what closes the openings, and what of the shell stands in the room, as solids."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.frame.parts import Framing
from boxwright.disciplines.frame.result import Hole, Result
from boxwright.disciplines.frame.solid_layers import reach_of
from boxwright.disciplines.frame.solid_plane import Plane, Stretch, depth_of
from boxwright.disciplines.frame.sourced import density_of
from boxwright.drawing.solid import Prism, Solid, oblong, upright

UNCUT = ".uncut"
"""Ends the path of the piece of skin in an opening, which stands until the saw has been there."""
THIN = 1e-3
"""How thick (m) a skin is drawn of which nobody wrote it."""
PANE = 0.012
"""How far (m) a unit is drawn out beyond the skin: nobody writes it."""
NO_SKIN = "nobody wrote how thick the skin is; drawn 1 mm"
NO_LEAF = "nobody wrote how thick what closes this opening is; drawn as deep as the wall"
NO_UNIT = "nobody wrote how deep this unit is; drawn as a pane"


def skin_of(plane: Plane) -> float:
    """Return how thick the skin of a wall is, or is drawn."""
    skin = plane.wall.skin
    return skin.best if skin is not None and skin.known and skin.best > 0.0 else THIN


def skin_solids(
    planes: dict[str, Plane], frame: Result, framing: Framing | None, deck: float, cuts: dict[str, tuple[Prism, ...]]
) -> Iterator[Solid]:
    """Yield the skin of every wall and of the roof, from the deck's underside to over the bows."""
    words = framing.skin if framing is not None else ""
    density = next((found for word in words.split() if (found := density_of(word)) is not None), None)
    over = depth_of(frame.members, "roof")
    for name, plane in planes.items():
        if name == "floor":
            continue
        depth, thick = depth_of(frame.members, name), skin_of(plane)
        sheet = _sheet(plane, frame, -deck, over)
        pieces = [plane.plate(sheet, depth, depth + thick)]
        if name == "roof" and frame.nose is not None:
            pieces.append(plane.slab(_over_nose(plane, frame), depth, depth + thick))
        is_written = plane.wall.skin is not None and plane.wall.skin.known
        yield Solid(
            of="frame.skin",
            name=f"skin {name}",
            stuff="skin",
            pieces=tuple(one for one in pieces if one.outline),
            cut=cuts.get(name, ()),
            outward=plane.out,
            density=(density.best, density.low, density.high) if density is not None and is_written else None,
            taken="" if is_written else NO_SKIN,
        )


def _sheet(plane: Plane, frame: Result, foot: float, over: float) -> Stretch:
    """Return the stretch the skin of a wall covers: round the corners, so that nothing is open there."""
    wall, members = plane.wall, frame.members
    across = max(depth_of(members, "left"), depth_of(members, "right"))
    rear, front = depth_of(members, "rear"), depth_of(members, "front") if frame.nose is None else 0.0
    if wall.name == "roof":
        return Stretch(wall.low - front, wall.high + rear, wall.foot - across, wall.top + across)
    if wall.name in ("left", "right"):
        return Stretch(wall.low - front, wall.high + rear, foot, wall.top + over)
    wide = across if wall.name in ("front", "rear") and not (wall.name == "front" and frame.nose) else 0.0
    return Stretch(wall.low - wide, wall.high + wide, foot, wall.top + over)


def _over_nose(plane: Plane, frame: Result) -> tuple[tuple[float, float], ...]:
    """Return the outline of the nose from above, along the roof or the floor."""
    assert frame.nose is not None
    half, tip, ahead = plane.half, frame.nose.tip / 2.0, -frame.nose.length
    blunt = ((ahead, tip), (ahead, -tip)) if tip > 0.0 else ((ahead, 0.0),)
    return ((0.0, -half), (0.0, half), *blunt)


def deck_solid(plane: Plane, frame: Result, framing: Framing | None, deck: float) -> Iterator[Solid]:
    """Yield the trailer's own deck, where how thick it is can be read."""
    if deck <= 0.0:
        return
    words = framing.floor.deck if framing is not None and framing.floor is not None else ""
    density = next((found for word in words.split() if (found := density_of(word)) is not None), None)
    wall = plane.wall
    pieces = [plane.plate(Stretch(wall.low, wall.high, wall.foot, wall.top), 0.0, deck)]
    if frame.nose is not None:
        pieces.append(plane.slab(_over_nose(plane, frame), 0.0, deck))
    figures = (density.best, density.low, density.high) if density is not None else None
    yield Solid("frame.floor", "deck", "wood", tuple(pieces), density=figures)


def hole_through(plane: Plane, hole: Hole, frame: Result) -> Prism:
    """Return what an opening takes out of everything in its wall."""
    outer = depth_of(frame.members, hole.wall) + skin_of(plane) + PANE
    return plane.slab(oblong((hole.low, hole.bottom), (hole.high, hole.top)), -reach_of(frame, hole.wall) - PANE, outer)


def opening_solids(planes: dict[str, Plane], frame: Result) -> Iterator[Solid]:
    """Yield what closes each opening, and the skin in it as long as nobody has cut it."""
    for hole in frame.holes:
        plane = planes.get(hole.wall)
        if plane is None or not hole.is_placed:
            continue
        depth, thick = depth_of(frame.members, hole.wall), skin_of(plane)
        outline = oblong((hole.low, hole.bottom), (hole.high, hole.top))
        if hole.wall != "floor":
            whole = (plane.slab(outline, depth, depth + thick),)
            yield Solid(f"{hole.of}{UNCUT}", f"{hole.name}, not cut out yet", "skin", whole, outward=plane.out)
        if hole.unit:
            deep = hole.reaches.best if hole.reaches is not None else 0.0
            taken = "" if deep else NO_UNIT
            unit = (plane.slab(outline, depth + thick - deep - (0.0 if deep else PANE), depth + thick + PANE),)
            yield Solid(hole.of, hole.name, "glass", unit, outward=plane.out, taken=taken)
        elif hole.swing[0]:
            leaf = (plane.slab(outline, 0.0, depth + thick),)
            yield Solid(hole.of, hole.name, "skin", leaf, outward=plane.out, taken=NO_LEAF)


def intrusion_solids(frame: Result) -> Iterator[Solid]:
    """Yield what of the shell stands up in the room: wheel boxes, housings."""
    for one in frame.intrusions:
        yield Solid(one.of, one.name, "metal", (upright(one.low, one.high),), taken="drawn full; it is a shell")
