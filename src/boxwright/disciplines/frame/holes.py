"""Openings against the members of their wall: what is cut, where nothing would be, what passes, what the depth says."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from math import inf, isfinite
from typing import Literal, cast

from boxwright.disciplines.frame.bands import SMALL, UNKNOWN, around, known, less, moved
from boxwright.disciplines.frame.layering import buildup_at, there_of
from boxwright.disciplines.frame.members import cut_out, edges, sides, standing
from boxwright.disciplines.frame.parts import Clamps, Opening, StandingOpening
from boxwright.disciplines.frame.passing import carried
from boxwright.disciplines.frame.result import (
    Bay,
    Buildup,
    CutMember,
    DepthFit,
    Gap,
    HeaderNeed,
    Hole,
    Intrusion,
    Member,
    Passing,
    Shift,
    Wall,
    WallName,
)
from boxwright.disciplines.frame.sourced import LIMITS, PASSING
from boxwright.disciplines.frame.walls import against, curved_in, reach_at, spanned
from boxwright.model.place import Place
from boxwright.units import Band, exactly

NAMES = ("left", "right", "front", "rear", "roof", "floor", "nose-left", "nose-right")


def wall_name(written: str) -> WallName | None:
    """Return the wall a word means; the ceiling is the roof seen from inside."""
    word = written.strip().lower()
    word = "roof" if word == "ceiling" else word
    return cast(WallName, word) if word in NAMES else None


def bare_holes(openings: tuple[StandingOpening, ...], walls: tuple[Wall, ...]) -> tuple[Hole, ...]:
    """Return every opening of the plan by its edges alone."""
    return tuple(hole for one in openings if (hole := _bare(one, walls)) is not None)


def holes_of(
    bare: tuple[Hole, ...],
    walls: tuple[Wall, ...],
    members: tuple[Member, ...],
    intrusions: tuple[Intrusion, ...],
) -> tuple[Hole, ...]:
    """Return every opening with what it meets; whether it stands, and its depth, come with the slot.

    The jambs, header and sill of an opening itself are not in its way.
    """
    return tuple(
        _met(hole, bare, walls, tuple(one for one in members if one.of != hole.of), intrusions) for hole in bare
    )


def _bare(standing_opening: StandingOpening, walls: tuple[Wall, ...]) -> Hole | None:
    """Return an opening by its edges alone; None where no wall of the trailer is named."""
    opening, place = standing_opening.opening, standing_opening.place
    name = wall_name(standing_opening.wall)
    wall = next((one for one in walls if one.name == name), None)
    if wall is None or name is None:
        return None
    along_axis = 0 if name in ("left", "right", "roof", "floor") else 1
    up_axis = 1 if name in ("roof", "floor") else 2
    axes = (place.x, place.y, place.z)
    along, up = axes[along_axis], axes[up_axis]
    size = place.size
    width, height = size[along_axis], size[up_axis]
    is_placed = along.known and up.known and width > 0.0 and height > 0.0
    is_placed = is_placed and all(isfinite(one) for one in (along.low, along.high, up.low, up.high))
    unit = opening.unit
    low, high = along.best - width / 2.0, along.best + width / 2.0
    if name.startswith("nose"):
        along, low, high = _slanted(place, wall)
        is_placed = along.known and up.known and high > low and height > 0.0 and isfinite(low) and isfinite(up.best)
    return Hole(
        of=standing_opening.of,
        name=standing_opening.of.partition("[")[2].removesuffix("]"),
        wall=name,
        low=low,
        high=high,
        bottom=up.best - height / 2.0,
        top=up.best + height / 2.0,
        is_placed=is_placed,
        is_cut=opening.cut,
        is_by_builder="builder" in opening.by.lower(),
        there="later",
        flange=opening.flange.best if opening.flange is not None and opening.flange.known else None,
        swing=standing_opening.swing,
        members_cut=(),
        gap_low=None,
        gap_high=None,
        lower_place=None,
        higher_place=None,
        needs_frame=False,
        header=None,
        is_outside_wall=False,
        overlaps=(),
        passing=(),
        depth=(),
        seal=opening.sealant.of or "unknown" if opening.sealant is not None else "",
        sealed_on=opening.sealant.on if opening.sealant is not None else None,
        unit="unit" if unit is not None else "",
        unit_weight=unit.weight if unit is not None else None,
        cost=unit.cost if unit is not None else None,
        doubt=max(along.high - along.best, along.best - along.low) if is_placed else 0.0,
        reaches=known(unit.depth) if unit is not None else None,
    )


def _slanted(place: Place, wall: Wall) -> tuple[Band, float, float]:
    """Return the near edge of an opening on a slanted wall, and both its edges, as distances from its body corner.

    ``side`` is the place across the trailer of the edge next to that corner; else ``x`` that of its front edge along
    the trailer. Its width lies along the wall.
    """
    width = place.size[0]
    axis, edge = (1, place.y) if place.y.known and isfinite(place.y.best) else (0, moved(place.x, -width / 2.0))
    run = wall.end[axis] - wall.start[axis]
    if not edge.known or run == 0.0:
        return UNKNOWN, 0.0, 0.0
    by = (wall.high - wall.low) / run
    ends = sorted((one - wall.start[axis]) * by for one in (edge.low, edge.high))
    at = (edge.best - wall.start[axis]) * by
    near = Band(at, ends[0], ends[1], True, edge.spread, edge.assumed)
    return near, *((at, at + width) if axis == 1 else (at - width, at))


def _met(
    hole: Hole,
    others: Iterable[Hole | None],
    walls: tuple[Wall, ...],
    members: tuple[Member, ...],
    intrusions: tuple[Intrusion, ...],
) -> Hole:
    """Return an opening with the members it runs through and everything that follows from that."""
    wall = next(one for one in walls if one.name == hole.wall)
    if not hole.is_placed:
        return hole
    mine = standing(members, hole.wall)
    cut = tuple(found for one in mine if (found := _cut(one, hole)) is not None)
    before = [one for one in mine if sides(one)[1] <= hole.low + SMALL]
    after = [one for one in mine if sides(one)[0] >= hole.high - SMALL]
    rails = tuple(found for one in members if (found := _cut_along(one, hole)) is not None)
    is_cut = any(one.overlap.best > SMALL for one in cut)
    across = next((one.high - one.low for one in walls if one.name == "rear"), 0.0)
    lower, higher = clear_places(hole, others, wall, members, intrusions) if is_cut and not rails else (None, None)
    return replace(
        hole,
        members_cut=(*cut, *rails),
        gap_low=Gap(before[-1].name, less(around(hole.low, hole.doubt), edges(before[-1])[1])) if before else None,
        gap_high=Gap(after[0].name, less(edges(after[0])[0], around(hole.high, hole.doubt))) if after else None,
        lower_place=lower,
        higher_place=higher,
        needs_frame=is_cut and not rails and not _has_room(hole, others, wall, members, intrusions),
        header=_header(cut, before, after) if is_cut else None,
        is_outside_wall=not _is_inside(hole, wall),
        overlaps=_overlaps(hole, others, intrusions, wall),
        passing=_passing(hole),
        curved=curved_in(wall, (hole.low, hole.high), (hole.bottom, hole.top), across, hole.flange or 0.0),
    )


def _has_room(
    hole: Hole,
    others: Iterable[Hole | None],
    wall: Wall,
    members: tuple[Member, ...],
    intrusions: tuple[Intrusion, ...],
) -> bool:
    """Return whether an opening would find a place if every member stood where it is held to be.

    Where it finds one so and none with the members' doubt, a tape decides and no builder has to frame it.
    """
    firm = tuple(replace(one, at=exactly(one.at.best)) for one in standing(members, hole.wall))
    return clear_places(hole, others, wall, firm, intrusions) != (None, None)


def _cut_along(member: Member, hole: Hole) -> CutMember | None:
    """Return how far a hole in the floor runs into a rail that lies along the trailer; None where it does not."""
    if member.wall != hole.wall or member.runs != "along":
        return None
    if hole.low >= member.high - SMALL or hole.high <= member.low + SMALL:
        return None
    half = member.face.best / 2.0
    overlap = min(hole.top, member.at.best + half) - max(hole.bottom, member.at.best - half)
    return CutMember(member.of, member.name, member.at, exactly(overlap), True) if overlap > SMALL else None


def _is_inside(hole: Hole, wall: Wall) -> bool:
    is_along = wall.low - SMALL <= hole.low and hole.high <= wall.high + SMALL
    return is_along and wall.foot - SMALL <= hole.bottom and hole.top <= wall.top + SMALL


def _cut(member: Member, hole: Hole) -> CutMember | None:
    """Return how far an opening runs into a member; None where even the member's doubt leaves it whole."""
    if hole.bottom >= member.high - SMALL or hole.top <= member.low + SMALL:
        return None
    if member.at.low - member.face.best > hole.high + hole.doubt:
        return None  # far away, as most are
    if member.at.high + member.face.best < hole.low - hole.doubt:
        return None
    first, last = edges(member)
    best = min(hole.high, last.best) - max(hole.low, first.best)
    # How far they overlap grows and shrinks with one hump as the one slides past the other, so that the least is at an
    # end of the doubt, and the most at an end or where their middles meet.
    low, high = member.at.low - member.at.best - hole.doubt, member.at.high - member.at.best + hole.doubt
    meet = (hole.low + hole.high) / 2.0 - member.at.best
    moves = (low, high, 0.0, min(max(meet, low), high))
    found = [min(hole.high, last.best + by) - max(hole.low, first.best + by) for by in moves]
    most, least = max(found), min(found)
    if max(best, most) <= SMALL:
        return None
    overlap = Band(best, least, most, True, "interval", member.at.assumed)
    return CutMember(member.of, member.name, member.at, overlap, least > SMALL, member.is_held)


def _taken(
    hole: Hole, others: Iterable[Hole | None], intrusions: tuple[Intrusion, ...], wall: Wall
) -> list[tuple[float, float]]:
    """Return the stretches of a wall where something else is, at the height of an opening."""
    found = [
        (one.low, one.high)
        for one in others
        if one is not None and one.of != hole.of and one.wall == hole.wall and one.is_placed
        and one.bottom < hole.top - SMALL and one.top > hole.bottom + SMALL
    ]  # fmt: skip
    for one in intrusions:
        if against(one, wall):
            low, high, foot, top = spanned(one, wall)
            if foot < hole.top - SMALL and top > hole.bottom + SMALL:
                found.append((low, high))
    return found


def clear_places(
    hole: Hole,
    others: Iterable[Hole | None],
    wall: Wall,
    members: tuple[Member, ...],
    intrusions: tuple[Intrusion, ...],
) -> tuple[Shift | None, Shift | None]:
    """Return the nearest places to both sides where an opening cuts nothing, even at the doubt of the members."""
    width = hole.high - hole.low
    taken = _taken(hole, others, intrusions, wall)
    lower: Shift | None = None
    higher: Shift | None = None
    far = inf
    if wall.name in ("front", "rear") and wall.roof.shape != "flat" and hole.top <= wall.top:
        far = reach_at(wall.roof, (wall.high - wall.low) / 2.0, hole.top)
    for before, left, after, right in _clear_of(standing(members, hole.wall)):
        start, end = max(left, wall.low, -far), min(right, wall.high, far)
        for low, high in _free(start, end, taken):
            if high - low < width - SMALL:
                continue
            place = min(max(hole.low, low), high - width)
            shift = Shift(place, place - hole.low, (before, after))
            if shift.by <= 0.0 and (lower is None or shift.by > lower.by):
                lower = shift
            if shift.by >= 0.0 and (higher is None or shift.by < higher.by):
                higher = shift
    return lower, higher


def _clear_of(members: tuple[Member, ...]) -> Iterator[tuple[str, float, str, float]]:
    """Yield the stretches that no member may reach into, each with the members it lies between.

    One that may stand anywhere in a wide band, as two tapes that contradict each other leave it, takes all of the band.
    """
    reaching: tuple[str, float] | None = None
    for low, high, name in sorted((edges(one)[0].low, edges(one)[1].high, one.name) for one in members):
        if reaching is not None and low > reaching[1]:
            yield *reaching, name, low
        if reaching is None or high > reaching[1]:
            reaching = (name, high)


def _free(start: float, end: float, taken: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Return what is left of a stretch when others are taken out of it."""
    left = [(start, end)]
    for low, high in taken:
        left = [
            piece
            for begin, stop in left
            for piece in ((begin, min(stop, low)), (max(begin, high), stop))
            if piece[1] - piece[0] > SMALL
        ]
    return left


def _header(cut: tuple[CutMember, ...], before: list[Member], after: list[Member]) -> HeaderNeed | None:
    """Return between which members a header is needed; what it bears is worked out once every jamb is known."""
    if not before or not after or not any(one.overlap.best > SMALL for one in cut):
        return None
    first, last = before[-1], after[0]
    return HeaderNeed(last.at.best - first.at.best, first.name, last.name, (), (0.0, 0.0))


def _overlaps(
    hole: Hole, others: Iterable[Hole | None], intrusions: tuple[Intrusion, ...], wall: Wall
) -> tuple[str, ...]:
    found = [
        one.of
        for one in others
        if one is not None and one.of != hole.of and one.wall == hole.wall and one.is_placed
        and _cross((one.low, one.high, one.bottom, one.top), hole)
    ]  # fmt: skip
    found += [one.of for one in intrusions if against(one, wall) and _cross(spanned(one, wall), hole)]
    return tuple(found)


def _cross(other: tuple[float, float, float, float], hole: Hole) -> bool:
    low, high, bottom, top = other
    is_along = low < hole.high - SMALL and high > hole.low + SMALL
    return is_along and bottom < hole.top - SMALL and top > hole.bottom + SMALL


def _passing(hole: Hole) -> tuple[Passing, ...]:
    size = (hole.high - hole.low, hole.top - hole.bottom)
    if min(size) < LIMITS["least_way_in"]:
        return ()
    return tuple(carried(hole.of, name, thing, size) for name, thing in PASSING)


def in_slot(
    hole: Hole, opening: Opening, share: Band | None, buildups: tuple[Buildup, ...], bays: tuple[Bay, ...]
) -> Hole:
    """Return an opening as it is in one slot: whether it stands, and what its unit's depth meets there."""
    return replace(hole, there=there_of(share), depth=_depths(hole, opening, buildups, bays))


def _depths(hole: Hole, opening: Opening, buildups: tuple[Buildup, ...], bays: tuple[Bay, ...]) -> tuple[DepthFit, ...]:
    middle = (hole.low + hole.high) / 2.0
    bay = next((one.name for one in bays if one.wall == hole.wall and one.low.best <= middle <= one.high.best), "")
    built = buildup_at(buildups, hole.wall, bay, False)
    if built is None:
        return ()
    if hole.wall == "floor":  # the deck is written in words: how thick it is under the layers nobody can say
        built = replace(built, finished=UNKNOWN, standing=UNKNOWN)
    found: list[DepthFit] = []
    clamps = opening.unit.clamps if opening.unit is not None else None
    if clamps is not None and (clamps.lowest is not None or clamps.highest is not None):
        found.append(_fit(hole.of, "clamps", known(clamps.lowest), known(clamps.highest), built))
    depth = known(opening.depth)
    if depth is not None:
        found.append(_fit(hole.of, "depth", depth, None, built))
    return tuple(found)


def is_backwards(clamps: Clamps) -> bool:
    """Return whether a clamping range ends before it begins: it was written the wrong way round."""
    lowest, highest = known(clamps.lowest), known(clamps.highest)
    return lowest is not None and highest is not None and lowest.best > highest.best


def _fit(of: str, what: str, lowest: Band | None, highest: Band | None, built: Buildup) -> DepthFit:
    filler = less(lowest, built.finished) if lowest is not None and lowest.best > built.finished.best else None
    return DepthFit(
        of=of,
        what="clamps" if what == "clamps" else "depth",
        lowest=lowest,
        highest=highest,
        finished=built.finished,
        standing=built.standing,
        filler=filler,
        fits=_fits(lowest, highest, built.finished),
        fits_standing=_fits(lowest, highest, built.standing),
    )


def _fits(lowest: Band | None, highest: Band | None, wall: Band) -> Literal["yes", "no", "unknown"]:
    """Return whether a wall is as thick as a unit needs: the best value decides a no, the whole band a yes."""
    if not wall.known:
        return "unknown"
    if (lowest is not None and wall.best < lowest.best - SMALL) or (
        highest is not None and wall.best > highest.best + SMALL
    ):
        return "no"
    is_doubtful = (lowest is not None and wall.low < lowest.high - SMALL) or (
        highest is not None and wall.high > highest.low + SMALL
    )
    return "unknown" if is_doubtful else "yes"


def cut_members(members: tuple[Member, ...], holes: tuple[Hole, ...]) -> tuple[Member, ...]:
    """Return the members with what is left of those that openings run through."""
    found: list[Member] = []
    for member in members:
        for hole in holes:
            if hole.wall == member.wall and any(
                one.name == member.name and one.overlap.best > SMALL for one in hole.members_cut
            ):
                span = (hole.low, hole.high) if member.runs == "along" else (hole.bottom, hole.top)
                member = cut_out(member, hole.of, *span)
        found.append(member)
    return tuple(found)
