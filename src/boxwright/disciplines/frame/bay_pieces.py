"""What openings leave of a bay: the pieces that foam is cut to, beside, above and under them."""

from __future__ import annotations

from itertools import pairwise

from boxwright.disciplines.frame.bands import SMALL
from boxwright.disciplines.frame.drawn import Drawn, half_face
from boxwright.disciplines.frame.result import Bay, Hole, Wall
from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Piece:
    """A rectangle of a bay that an opening leaves (m), and where it is as seen from the opening."""

    low: float
    high: float
    bottom: float
    top: float
    where: str


@dataclass(frozen=True, slots=True)
class Left:
    """What is left of a bay: its pieces where an opening divides it, and the openings that lie within it."""

    pieces: tuple[Piece, ...]
    within: tuple[Hole, ...]
    is_divided: bool


def left_of(drawn: Drawn, bay: Bay, wall: Wall) -> Left:
    """Return what is left of a bay once the openings of its wall are cut; one still to be cut leaves it whole.

    Jambs run from floor to roof and divide a bay; header and sill take their own height over and under the opening.
    """
    low, high = bay.low.best, bay.high.best
    mine = (one for one in drawn.holes_of(wall.name) if one.is_cut)
    here = [one for one in mine if one.low < high - SMALL and one.high > low + SMALL]
    jambs = [
        (one.at.best - half_face(one), one.at.best + half_face(one))
        for one in drawn.frame.members_of(wall.name)
        if one.kind == "jamb" and any(one.of == hole.of for hole in here)
    ]
    within = tuple(
        one for one in here if one.low > low + SMALL and one.high < high - SMALL and not _is_framed(drawn, one, wall)
    )
    dividing = [one for one in here if one not in within]
    if not dividing:
        return Left((Piece(low, high, wall.foot, wall.top, ""),), within, False)
    edges = [edge for pair in (*jambs, *((one.low, one.high) for one in dividing)) for edge in pair]
    places = sorted({low, high, *(edge for edge in edges if low < edge < high)})
    pieces: list[Piece] = []
    for start, end in pairwise(places):
        middle = (start + end) / 2.0
        if end - start > SMALL and not any(one <= middle <= other for one, other in jambs):
            pieces += _column(drawn, wall, dividing, start, end)
    return Left(tuple(pieces), within, True)


def _is_framed(drawn: Drawn, hole: Hole, wall: Wall) -> bool:
    return any(one.of == hole.of and one.kind == "jamb" for one in drawn.frame.members_of(wall.name))


def _column(drawn: Drawn, wall: Wall, holes: list[Hole], low: float, high: float) -> list[Piece]:
    """Return the pieces over and under the openings in one upright stretch of a bay."""
    middle = (low + high) / 2.0
    taken = sorted((*_reach(drawn, wall, one), one.name) for one in holes if one.low <= middle <= one.high)
    if not taken:
        beside = min(holes, key=lambda one: min(abs(one.low - middle), abs(one.high - middle)))
        return [Piece(low, high, wall.foot, wall.top, f"beside {beside.name}")]
    found = []
    foot, above = wall.foot, ""
    for bottom, top, name in taken:
        if bottom - foot > SMALL:
            found.append(Piece(low, high, foot, bottom, f"under {name}"))
        if top > foot:
            foot, above = top, f"above {name}"
    if wall.top - foot > SMALL:
        found.append(Piece(low, high, foot, wall.top, above))
    return found


def _reach(drawn: Drawn, wall: Wall, hole: Hole) -> tuple[float, float]:
    """Return from how low to how high an opening reaches with the sill and the header it is framed with."""
    bottom, top = hole.bottom, hole.top
    for one in drawn.frame.members_of(wall.name):
        if one.of == hole.of and one.kind == "header":
            top = max(top, one.at.best + half_face(one))
        elif one.of == hole.of and one.kind == "sill":
            bottom = min(bottom, one.at.best - half_face(one))
    return bottom, top
