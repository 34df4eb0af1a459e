"""What safety works out: each way out, alarm, extinguisher, flame and store of one slot, and the rules of the home."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from math import hypot, inf, isfinite

from boxwright.disciplines.safety import method
from boxwright.disciplines.safety.parts import Half, Kept, Section, Sleeper, Stood, Store, Strung, There, Way
from boxwright.disciplines.safety.result import Bed, Device, Exit, Flame, Fuelled, Opens, Result
from boxwright.disciplines.safety.sourced import FUELS, LENGTHS, law_of
from boxwright.exchange import FLOOR, Aisle, Clearance
from boxwright.model.place import Place, Surfaces
from boxwright.records import dataclass
from boxwright.units import Band, exactly

__all__ = [
    "Offers",
    "Result",
    "are_in_one_place",
    "ends_of",
    "gap_between",
    "is_shut",
    "least_of",
    "offers",
    "room_between",
    "solve",
]

WALL = 0.15
"""How thick (m) a wall is at the most with all that is in it; common practice, no source."""
Ends = tuple[Band, Band, Band]
USES = ("sleep", "leave", "work")
TOUCH = 1e-3
"""Openings that overlap by less than this (m) lie side by side."""
OPENED_BY: dict[str, Opens] = {
    "inside": "inside",
    "yes": "inside",
    "none": "none",
    "no": "none",
    "outside": "none",
    "key": "key",
    "tool": "tool",
}
"""What may stand at ``release`` of an opening; any other word leaves it unknown."""


@dataclass(frozen=True, slots=True)
class Offers:
    """What safety gives the others: nothing."""


def offers() -> Offers:
    """Return what safety gives the others: nothing."""
    return Offers()


def solve(
    own: Section,
    stood: tuple[Stood, ...],
    openings: tuple[tuple[str, bool], ...],
    open_holes: tuple[str, ...],
    strung: tuple[Strung, ...],
    halves: tuple[Half, ...],
    stores: tuple[Store, ...],
    aisles: tuple[Aisle, ...] | None,
    leaves: tuple[Clearance, ...],
    people: tuple[str, ...],
    use: str,
    countries: tuple[str, ...],
    judged_on: date,
) -> Result:
    """Return what safety knows of one slot.

    ``openings`` are those that stand, with whether for certain; ``open_holes`` those that are cut and not closed;
    ``strung`` are the wires that stand, ``halves`` what is done in part;
    ``leaves`` say what a leaf that strikes something leaves of its hole;
    ``people`` who is inside in the load state.
    """
    is_judged = use in USES
    parts = {one.of: one for one in stood}
    room = own.room
    devices = tuple(one for kept in own.kept for one in _devices(kept, parts.get(kept.of), room))
    releases = tuple(one for one in devices if one.kept.what == "release")
    certain = dict(openings)
    flames = tuple(Flame(one.kept, one.there, one.at, _is_inside(one.at, room)) for one in devices if one.there != "no")
    sleepers = tuple(one for one in own.sleepers if one.name in people) if use == "sleep" else ()
    beds = _beds(own, sleepers, stood)
    exits = (_exit(number, way, certain, releases, room, leaves) for number, way in enumerate(own.ways, 1))
    return Result(
        of="trailer",
        use=use if is_judged else "",
        law=law_of(countries, judged_on),
        judged_on=judged_on,
        exits=tuple(_with_ways(one, beds, aisles or ()) for one in exits),
        has_openings=bool(own.holes),
        releases=releases,
        alarms=tuple(one for one in devices if one.kept.what == "alarm"),
        extinguishers=tuple(one for one in devices if one.kept.what == "extinguisher"),
        flames=tuple(one for one in flames if one.kept.burns and _burns(one.kept.burns)),
        generators=tuple(one for one in flames if one.kept.what == "generator"),
        stores=tuple(_fuelled(one, room) for one in stores if _is_fuel(one)) if is_judged else (),
        beds=beds,
        unsaid=tuple(one for one in flames if one.kept.what == "fuel") if is_judged else (),
        folding=tuple(one.of for one in beds if one.of in own.folding),
        bedless=tuple(one for one in sleepers if not any(one.name in bed.sleepers for bed in beds)),
        aisles=aisles,
        openings=tuple(one for one in own.holes if one.of in certain) if is_judged else (),
        open_holes=tuple(one for one in own.holes if one.of in open_holes) if is_judged else (),
        hot=tuple(one for one in flames if one.kept.burns and one.is_inside is not False),
        strung=strung if is_judged else (),
        halves=halves if is_judged else (),
        ceiling=room.ceiling if room is not None else inf,
        floor=room.floor if room is not None else -inf,
    )


def _there(stood: Stood | None) -> There:
    if stood is None:
        return "no"
    return "yes" if stood.is_there else "perhaps"


def _devices(kept: Kept, stood: Stood | None, room: Surfaces | None) -> Iterator[Device]:
    """Yield a thing as it stands, once for each place of a line that stands for several."""
    for place in _places(kept, stood.place) if stood is not None else (None,):
        at = ends_of(place) if place is not None else None
        is_away = kept.is_shut_in or _is_inside(at, room) is False
        is_here = place is not None and _is_surely_inside(place, room)
        up = place.z if place is not None and place.z.known else None
        yield Device(kept, _there(stood), at, is_away, is_here, _is_out_of_hand(at, room), up)


def _places(kept: Kept, place: Place) -> tuple[Place, ...]:
    """Return each place of a line that stands for several, the one of a line that stands for one or has moved."""
    middles = kept.middles
    if len(middles) < 2 or not place.x.known or abs(sum(middles) / len(middles) - place.x.best) > TOUCH:
        return (place,)
    return tuple(replace(place, x=exactly(middle), deviation_x=0.0) for middle in middles)


def ends_of(place: Place) -> Ends | None:
    """Return the ends of a box along each axis as widely as it may stand, None where nobody knows its place."""
    found = []
    for band, size in zip((place.x, place.y, place.z), place.size, strict=True):
        low, high = band.low - size / 2.0, band.high + size / 2.0
        if not band.known or not (isfinite(low) and isfinite(high)):
            return None
        found.append(Band(band.best, low, high, spread="interval"))
    return found[0], found[1], found[2]


def _is_inside(at: Ends | None, room: Surfaces | None) -> bool | None:
    """Return whether a box stands in the room, if only in part; None where nobody knows."""
    if at is None or room is None:
        return None
    planes = ((room.front, room.rear), (room.left, room.right), (room.floor, room.ceiling))
    return all(ends.high > low and ends.low < high for ends, (low, high) in zip(at, planes, strict=True))


def _is_out_of_hand(at: Ends | None, room: Surfaces | None) -> bool:
    """Return whether a box stands beyond the walls of the room, where nobody who is inside reaches it."""
    if at is None or room is None:
        return False
    planes = ((room.front, room.rear), (room.left, room.right), (room.floor, room.ceiling))
    return max(max(low - ends.high, ends.low - high) for ends, (low, high) in zip(at, planes, strict=True)) > WALL


def _is_surely_inside(place: Place, room: Surfaces | None) -> bool:
    """Return whether a box stands in the room, if only in part, wherever within its doubt it is."""
    if room is None or ends_of(place) is None:
        return False
    planes = ((room.front, room.rear), (room.left, room.right), (room.floor, room.ceiling))
    return all(
        band.low + size / 2.0 > low
        and band.high - size / 2.0 < high
        and band.high + size / 2.0 > low
        and band.low - size / 2.0 < high
        for band, size, (low, high) in zip((place.x, place.y, place.z), place.size, planes, strict=True)
    )


def gap_between(one: Ends, other: Ends) -> float:
    """Return how near two boxes may stand, seen from above."""
    (x, y, _), (other_x, other_y, _) = one, other
    return method.gap((x.low, y.low), (x.high, y.high), (other_x.low, other_y.low), (other_x.high, other_y.high))


def room_between(one: Ends, other: Ends) -> float:
    """Return how near two boxes may stand, seen from above and in height together."""
    over = max(one[2].low - other[2].high, other[2].low - one[2].high, 0.0)
    return hypot(gap_between(one, other), over)


def _burns(fuel: str) -> bool:
    return FUELS.get(fuel, (False, ""))[1] != "none"


def _is_fuel(store: Store) -> bool:
    """Return whether a tank is for a fuel, empty or not: one that nobody knows the contents of may be."""
    return FUELS.get(_fluid(store), (False, ""))[1] != "none"


def _fluid(store: Store) -> str:
    return " ".join(store.fluid.lower().split())


def _fuelled(store: Store, room: Surfaces | None) -> Fuelled:
    fumes, kind = FUELS.get(_fluid(store), (None, ""))
    at = ends_of(store.place)
    return Fuelled(store, fumes, kind, _is_inside(at, room), at, not store.fill.high > 0.0)


def _exit(
    number: int,
    way: Way,
    certain: dict[str, bool],
    releases: tuple[Device, ...],
    room: Surfaces | None,
    leaves: tuple[Clearance, ...],
) -> Exit:
    """Return one way out as it stands: what opens it, what is left of it to get through, how high its sill is."""
    there: There = "no" if way.of not in certain else "yes" if certain[way.of] else "perhaps"
    opens: Opens = OPENED_BY.get(way.facet.release.strip().lower(), "unknown")
    released_by = ""
    if way.said_otherwise and opens == "inside":
        opens = "unknown"
    if opens != "inside" and not way.said_otherwise:
        mine = [one for one in releases if one.there == "yes" and one.kept.facet.release.strip() == way.name]
        fitted = [one for one in mine if not one.is_out_of_hand]
        if fitted:
            opens, released_by = "inside", fitted[0].kept.of
    under = way.place.low_edge(2)
    sill = None
    if under.known and room is not None and way.wall not in ("roof", "floor"):
        sill = Band(under.best - room.floor, under.low - room.floor, under.high - room.floor, spread=under.spread)
    found = [one for one in leaves if one.of == way.of]
    clear = _clear(way)
    if sill is not None and "hinged bottom" in way.turns:
        sill = _over_the_leaf(sill, way, found)
    sides = [one for one in (*(clear or ()), way.width, way.height) if one is not None and one.known]
    is_too_small = min((one.high for one in sides), default=inf) < LENGTHS["squeeze"]
    struck = min(found, key=lambda one: (one.metre.high >= LENGTHS["squeeze"], one.metre.low), default=None)
    left = _as_it_opens(clear, found)
    return Exit(number, way, there, opens, released_by, clear, sill, is_too_small, struck, left, at_most=_at_most(way))


def _with_ways(one: Exit, beds: tuple[Bed, ...], aisles: tuple[Aisle, ...]) -> Exit:
    """Return a way out with what shuts the way to it, or from which beds it is shut where it is not from all."""
    by = _shut_by(one, beds, aisles)
    shut = tuple(bed.name for bed in beds if by is None and _shut_by(one, (bed,), aisles) is not None)
    return replace(one, way_shut_by=by, not_from=shut)


def _shut_by(one: Exit, beds: tuple[Bed, ...], aisles: tuple[Aisle, ...]) -> tuple[str, ...] | None:
    """Return what shuts the way to an opening from every bed, None where it is not shut from each of them.

    Where nobody has a bed it is that from the floor.
    """
    starts = [bed.of for bed in beds] or [FLOOR]
    to_it = [[way for way in aisles if (way.of, way.leads_to) == (start, one.way.of)] for start in starts]
    if not to_it or not all(found and all(is_shut(way) for way in found) for found in to_it):
        return None
    return tuple(dict.fromkeys(of for found in to_it for of in found[0].blocked_by))


def is_shut(way: Aisle) -> bool:
    """Return whether a way is too narrow or too low for anybody, with nothing doubtful in it."""
    return any(side.known and side.high < LENGTHS["squeeze"] for side in (way.width, way.height))


def are_in_one_place(one: Exit, other: Exit) -> bool:
    """Return whether two openings of one wall overlap in it, as a door in a ramp does its ramp; a wall may be thin."""
    mine, its = one.way.place, other.way.place
    if ends_of(mine) is None or ends_of(its) is None:
        return False
    middles = zip((mine.x, mine.y, mine.z), (its.x, its.y, its.z), strict=True)
    half = [(size + other_size) / 2.0 for size, other_size in zip(mine.size, its.size, strict=True)]
    apart = [abs(at.best - other_at.best) - wide for (at, other_at), wide in zip(middles, half, strict=True)]
    return max(apart) <= TOUCH and sorted(apart)[1] < -TOUCH


def least_of(way: Aisle) -> Band:
    """Return the lesser of width and headroom of a way, end by end: nobody gets out by one of them alone.

    Headroom nobody knows may be none at all.
    """
    wide, high = way.width, way.height
    if not high.known:
        return Band(wide.best, min(wide.low, 0.0), wide.high, wide.known, "interval", wide.assumed)
    ends = (min(wide.best, high.best), min(wide.low, high.low), min(wide.high, high.high))
    return Band(*ends, wide.known, "exact" if ends[1] == ends[2] else "interval", wide.assumed or high.assumed)


def _clear(way: Way) -> tuple[Band, Band] | None:
    """Return what is left of a way out to get through: as measured, or of a bare leaf the hole less its frame."""
    written = way.facet.clear
    if written is not None:
        both = (written.width, written.height)
        if both[0] is None or both[1] is None:
            return None
        width, height = _at_most(way)
        return _within(both[0], width), _within(both[1], height)
    if way.has_unit or way.width is None or way.height is None or not (way.width.known and way.height.known):
        return None
    width, height = _less(way.width, LENGTHS["frame"]), _less(way.height, LENGTHS["frame"])
    if way.slid is not None:
        return (width, _uncovered(height, way.slid)) if way.is_level else (_uncovered(width, way.slid), height)
    if way.goes is None:
        return None
    # what a frame and the leaf's own thickness take is taken off what the leaf leaves: nobody knows at which edge
    if way.is_level:
        return width, _less(_left(way.height, way), LENGTHS["frame"])
    return _less(_left(way.width, way), LENGTHS["frame"]), height


def _at_most(way: Way) -> tuple[Band | None, Band | None]:
    """Return what may be left of the hole of a way out at most, each side: its leaf may be written to open too little.

    What was measured is no more than what gets past the leaf aslant, as far as that may go.
    """
    is_known = way.width is not None and way.height is not None and way.width.known and way.height.known
    side = way.height if way.is_level else way.width
    if not is_known or side is None or (way.slid is None and way.goes is None):
        return way.width, way.height
    if way.slid is not None:
        left = _uncovered(side, way.slid)
    else:
        by = method.left_straight_on if "both" in way.turns else method.left_by_leaf
        turn = way.goes or exactly(0.0)
        left = Band(by(side.best, turn.best), by(side.low, turn.low), by(side.high, turn.high), spread="interval")
    return (way.width, left) if way.is_level else (left, way.height)


def _as_it_opens(clear: tuple[Band, Band] | None, struck: list[Clearance]) -> tuple[Band, Band] | None:
    """Return what is clear of a way out, no more of either side than what its leaf leaves that strikes something."""
    if clear is None:
        return None
    wide, high = clear
    for one in struck:
        wide = _lesser(wide, one.metre) if one.side == "width" else wide
        high = _lesser(high, one.metre) if one.side == "height" else high
    return wide, high


def _lesser(one: Band, other: Band) -> Band:
    """Return the lesser of two lengths, end by end; one nobody knows is no more than the other."""
    if not one.known or not other.known:
        return one
    ends = (min(one.best, other.best), min(one.low, other.low), min(one.high, other.high))
    return Band(*ends, spread="exact" if ends[1] == ends[2] else "interval", assumed=one.assumed)


def _over_the_leaf(sill: Band, way: Way, struck: list[Clearance]) -> Band:
    """Return how high one climbs over a leaf that is hinged at its bottom and does not go all the way down (m)."""
    if way.height is None or not way.height.known:
        return sill
    left = _left(way.height, way) if way.goes is not None else way.height
    for one in struck:
        left = _lesser(left, one.metre) if one.side == "height" else left
    stands = (way.height.best - left.best, way.height.low - left.high, way.height.high - left.low)
    best, low, high = (at + max(over, 0.0) for at, over in zip((sill.best, sill.low, sill.high), stands, strict=True))
    return Band(best, low, high, spread=sill.spread if low == sill.low and high == sill.high else "interval")


def _within(clear: Band, hole: Band | None) -> Band:
    """Return what is written to be clear, no more than the hole it is in."""
    if hole is None or not (hole.known and clear.known) or clear.high <= hole.high:
        return clear
    best, low, high = (min(one, hole.high) for one in (clear.best, clear.low, clear.high))
    return Band(best, low, high, spread=clear.spread, assumed=True)


def _left(band: Band, way: Way) -> Band:
    """Return what the leaf of a way out, or both of two, leaves of its hole when it has turned as far as it goes."""
    is_beside = not any(word in way.turns for word in ("both", "bottom"))
    by = method.left_by_leaf if is_beside else method.left_straight_on
    turn = way.goes or exactly(0.0)
    ends = (by(band.best, turn.best), by(band.low, turn.low), by(band.high, turn.high))
    return Band(*ends, spread=band.spread if turn.low == turn.high else "interval", assumed=band.assumed)


def _uncovered(band: Band, by: Band) -> Band:
    """Return what a leaf leaves of its hole that slides so far: never more than the hole."""
    ends = (min(band.best, by.best), min(band.low, by.low), min(band.high, by.high))
    return Band(*ends, spread="exact" if ends[1] == ends[2] else "interval", assumed=band.assumed)


def _less(band: Band, by: float) -> Band:
    best, low, high = (max(end - by, 0.0) for end in (band.best, band.low, band.high))
    return Band(best, low, high, spread=band.spread, assumed=True)


def _beds(own: Section, sleepers: tuple[Sleeper, ...], stood: tuple[Stood, ...]) -> tuple[Bed, ...]:
    """Return the beds somebody lies on, in file order; each who sleeps on one that is not in lies on a stand-in."""
    pieces, thick = dict(own.counted), dict(own.padded)
    meanwhile = [one for one in stood if one.of in own.beds and one.is_there]
    free = [one for one in meanwhile for _ in range(min(pieces.get(one.of, 1), len(sleepers)))]
    found: dict[str, Bed] = {}
    for sleeper in sleepers:
        one = next((one for one in stood if sleeper.bed and one.name == sleeper.bed), None)
        if one is None and free:
            one = free.pop(0) if len(free) > 1 else free[0]
        if one is not None:
            padding, count = thick.get(one.of, 0.0), pieces.get(one.of, 1)
            at, surely = _with_mattress(ends_of(one.place), padding), _surely(one.place, padding)
            bed = found.get(one.of) or Bed(one.of, one.name, (), at, count, one.is_there, surely)
            found[one.of] = replace(bed, sleepers=(*bed.sleepers, sleeper.name))
    return tuple(found.values())


def _surely(place: Place, thick: float) -> tuple[tuple[float, float], tuple[float, float], float] | None:
    """Return what a bed covers seen from above wherever within its doubt it is, and how high one stands on it at least.

    Both ends of a side are the wrong way round where it covers nothing for certain.
    """
    if ends_of(place) is None:
        return None
    x, y = (
        (band.high - size / 2.0, band.low + size / 2.0)
        for band, size in zip((place.x, place.y), place.size[:2], strict=True)
    )
    return x, y, place.z.low + place.size[2] / 2.0 + thick


def _with_mattress(at: Ends | None, thick: float) -> Ends | None:
    """Return the ends of a bed with what one lies on."""
    if at is None or not thick:
        return at
    x, y, z = at
    return x, y, Band(z.best, z.low, z.high + thick, spread=z.spread)
