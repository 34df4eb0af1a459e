"""The shell as it is whatever stands in it: walls, members, openings, what is screwed where. Worked out once a rig."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.frame.bands import known
from boxwright.disciplines.frame.beside import taped_edges, with_what_it_moves
from boxwright.disciplines.frame.box import inside_of
from boxwright.disciplines.frame.fastening import backings_of, blocked, fastenings_of, unwalled
from boxwright.disciplines.frame.holes import bare_holes, cut_members, holes_of
from boxwright.disciplines.frame.members import Planned, bays_of, depth_of, in_order, members_of, planned_row
from boxwright.disciplines.frame.parts import Section
from boxwright.disciplines.frame.passing import stuck_of
from boxwright.disciplines.frame.recessed import recesses_of, without_wall
from boxwright.disciplines.frame.result import (
    FLAT,
    Backing,
    Bay,
    CarriedIn,
    Crossing,
    Fastening,
    Hole,
    Intrusion,
    Member,
    Nose,
    Recess,
    Roof,
    Sized,
    TapeFault,
    Wall,
)
from boxwright.disciplines.frame.running import crossings_of
from boxwright.disciplines.frame.sourced import WITHIN
from boxwright.disciplines.frame.surrounds import surrounds_of, with_header
from boxwright.disciplines.frame.tapes import as_band, faults_of
from boxwright.disciplines.frame.walls import intrusions_of, nose_of, roof_of, walls_of
from boxwright.exchange import Fixing
from boxwright.model.trailer import Trailer
from boxwright.records import dataclass
from boxwright.units import Band


@dataclass(frozen=True, slots=True)
class Shell:
    """Everything of the frame that no stage changes. ``depths`` are those of each wall's members, as ``walls``."""

    walls: tuple[Wall, ...]
    depths: tuple[Band | None, ...]
    members: tuple[Member, ...]
    bays: tuple[Bay, ...]
    roof: Roof
    nose: Nose | None
    intrusions: tuple[Intrusion, ...]
    holes: tuple[Hole, ...]
    backings: tuple[Backing, ...]
    fastenings: tuple[Fastening, ...]
    screws: tuple[tuple[str, str, Band | None], ...]
    faults: tuple[TapeFault, ...]
    sized: tuple[Sized, ...]
    unplaced: tuple[str, ...] = ()
    recesses: tuple[Recess, ...] = ()
    crossings: tuple[Crossing, ...] = ()
    stuck: tuple[CarriedIn, ...] = ()


BARE = Shell((), (), (), (), FLAT, None, (), (), (), (), (), (), (), ("trailer.body",))
"""The shell of a body whose measures nobody wrote."""


@dataclass(frozen=True, slots=True)
class Raised:
    """What of the shell stands whatever is fastened to it. ``rows`` are the studs as planned, as ``walls``."""

    walls: tuple[Wall, ...]
    depths: tuple[Band | None, ...]
    members: tuple[Member, ...]
    bays: tuple[Bay, ...]
    roof: Roof
    nose: Nose | None
    intrusions: tuple[Intrusion, ...]
    holes: tuple[Hole, ...]
    rows: tuple[Planned | None, ...]
    faults: tuple[TapeFault, ...]
    taped: tuple[TapeFault, ...]
    sized: tuple[Sized, ...]


def shell(section: Section, trailer: Trailer, fixings: tuple[Fixing, ...]) -> Shell:
    """Return the shell; empty where length, width or height of the body is not known."""
    return hung_on(raised(bones_of(section), trailer), section, fixings)


def bones_of(section: Section) -> Section:
    """Return what of a frame's section the bare shell is raised from: the same whatever is moved in it."""
    return replace(section, layers=(), backings=(), recesses=(), runs=(), unrouted=(), to_carry_in=())


def raised(section: Section, trailer: Trailer) -> Raised | None:
    """Return the bare shell; None where length, width or height of the body is not known."""
    inside = inside_of(trailer)
    if inside is None or min(inside) <= 0.0:
        return None
    walls = walls_of(section, inside)
    members = members_of(section, walls)
    intrusions = intrusions_of(section.framing, inside)
    bays = bays_of(members, walls)
    bare = bare_holes(section.openings, walls)
    members = in_order((*members, *surrounds_of(bare, walls, members, section)), walls)
    holes = tuple(with_header(one, members) for one in holes_of(bare, walls, members, intrusions))
    members = cut_members(members, holes)
    return Raised(
        walls=walls,
        depths=tuple(depth_of(section, wall) for wall in walls),
        members=members,
        bays=bays,
        roof=roof_of(section.framing, inside[2]),
        nose=nose_of(section.framing),
        intrusions=intrusions,
        holes=holes,
        rows=tuple(planned_row(section, wall) for wall in walls),
        faults=tuple(faults_of(section.readings, walls, members)),
        taped=tuple(taped_edges(section.readings, holes, walls)),
        sized=tuple(_sized(section, trailer)),
    )


def hung_on(bare: Raised | None, section: Section, fixings: tuple[Fixing, ...]) -> Shell:
    """Return the shell with what is fastened to it, let into it, led through it and carried into it."""
    if bare is None:
        return BARE
    walls, members, holes = bare.walls, bare.members, bare.holes
    backings = backings_of(section.backings, walls)
    fastenings = tuple(
        blocked(one, walls, bare.intrusions) for one in fastenings_of(fixings, walls, members, backings, bare.rows)
    )
    return Shell(
        walls=walls,
        depths=bare.depths,
        members=members,
        bays=bare.bays,
        roof=bare.roof,
        nose=bare.nose,
        intrusions=bare.intrusions,
        holes=holes,
        backings=backings,
        fastenings=fastenings,
        screws=tuple((one.of, one.what, one.length) for one in fixings),
        faults=(*(with_what_it_moves(one, members, holes, fastenings) for one in bare.faults), *bare.taped),
        sized=bare.sized,
        recesses=recesses_of(section.recesses, walls, members),
        stuck=stuck_of(section.to_carry_in, holes),
        crossings=crossings_of(fastenings, fixings, backings, section.runs),
        unplaced=(*_unplaced(section, bare.intrusions), *unwalled(fixings, walls),
                  *without_wall(section.recesses, walls)),
    )  # fmt: skip


def _unplaced(section: Section, intrusions: tuple[Intrusion, ...]) -> tuple[str, ...]:
    """Return what takes room inside without anybody having written where, and how much."""
    found = {one.of for one in intrusions}
    named = section.framing.intrusions if section.framing is not None else ()
    return tuple(path for name, _ in named if (path := f"frame.intrusions[{name}]") not in found)


def _sized(section: Section, trailer: Trailer) -> Iterator[Sized]:
    """Yield the measures of the box as ordered beside as taped."""
    body = trailer.body
    for what, planned in (("length", body.length), ("width", body.width), ("height", body.height)):
        mine = [one for one in section.readings if one.kind == "body" and one.key.split("-")[0] == what]
        for read in mine:
            place = read.key.partition("-")[2]
            yield Sized(f"trailer.body.{what}", what, place, known(planned), as_band(read), WITHIN["shell"])
    crossed = {one.key: one for one in section.readings if one.kind == "body" and one.key.startswith("diagonal")}
    first, second = crossed.get("diagonal-1"), crossed.get("diagonal-2")
    if first is not None and second is not None:
        yield Sized("trailer.body", "diagonals", "floor", as_band(first), as_band(second), WITHIN["shell"])
