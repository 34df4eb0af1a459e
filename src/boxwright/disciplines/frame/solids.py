"""Everything of the frame that takes up room, as solids: members, layers, skin, deck, openings, what it rolls on."""

from __future__ import annotations

from boxwright.disciplines.frame.parts import Framing
from boxwright.disciplines.frame.result import Result
from boxwright.disciplines.frame.solid_gear import gear_solids
from boxwright.disciplines.frame.solid_layers import layer_solids
from boxwright.disciplines.frame.solid_members import member_solids
from boxwright.disciplines.frame.solid_plane import Plane, depth_of, plane_of
from boxwright.disciplines.frame.solid_skin import (
    deck_solid,
    hole_through,
    intrusion_solids,
    opening_solids,
    skin_solids,
)
from boxwright.drawing.solid import Prism, Solid, upright
from boxwright.exchange import Box


def solids(frame: Result, framing: Framing | None, box: Box, deck: float) -> tuple[Solid, ...]:
    """Return every solid of the frame; ``deck`` is how thick the trailer's own deck is (m), nothing where unknown.

    Layers and skin have their holes from the start: as long as an opening is not cut, the piece in it stands.
    """
    if not frame.walls:
        return ()
    half = box.inside[1] / 2.0
    planes: dict[str, Plane] = {wall.name: plane_of(wall, half) for wall in frame.walls}
    cuts: dict[str, tuple[Prism, ...]] = {}
    for hole in frame.holes:
        if hole.is_placed and hole.wall in planes:
            cuts[hole.wall] = (*cuts.get(hole.wall, ()), hole_through(planes[hole.wall], hole, frame))
    boxes = tuple(upright(one.low, one.high) for one in frame.intrusions)
    found = list(member_solids(planes, frame.members, deck))
    for name, plane in planes.items():
        found += layer_solids(plane, frame, (*cuts.get(name, ()), *boxes))
    found += skin_solids(planes, frame, framing, deck, cuts)
    found += deck_solid(planes["floor"], frame, framing, deck)
    found += opening_solids(planes, frame)
    found += intrusion_solids(frame)
    found += gear_solids(box, planes["floor"], deck + depth_of(frame.members, "floor"))
    return tuple(found)
