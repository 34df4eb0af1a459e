"""What layout works out of one slot: what meets what, what strikes what, what stands in room to be kept clear."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from boxwright.disciplines.layout.bodies import POSE_OF_USE, WITHOUT_SOLID, Block, Body, Standing
from boxwright.disciplines.layout.both_open import apart_of, both_open
from boxwright.disciplines.layout.canopy import footless, is_written, misplaced_arms, set_up
from boxwright.disciplines.layout.clearing import Clearings
from boxwright.disciplines.layout.fitting_in import every_fit
from boxwright.disciplines.layout.folding_about import hangs_on_nothing
from boxwright.disciplines.layout.folding_in import every_crammed
from boxwright.disciplines.layout.fronts import fronts_of
from boxwright.disciplines.layout.held_leaves import reach_between
from boxwright.disciplines.layout.laid_back import held_outside, overlaid
from boxwright.disciplines.layout.leaves import FLAT, either_way, leaf_of, sliding_leaf, usual_lid
from boxwright.disciplines.layout.lying import taken_beds
from boxwright.disciplines.layout.made_up import Raised, bodies_in
from boxwright.disciplines.layout.meeting import are_in, kin_of, lines_of, roots_of
from boxwright.disciplines.layout.over_beds import over_beds
from boxwright.disciplines.layout.pairs import ORDER
from boxwright.disciplines.layout.parts import Closed, Fitted, Section
from boxwright.disciplines.layout.pockets import Within, pocketed
from boxwright.disciplines.layout.resting import (
    MOST,
    against_themselves,
    covered,
    crossings,
    let_in,
    meetings,
    protruding,
    unheld,
)
from boxwright.disciplines.layout.result import (
    Brought,
    Canopy,
    Certainty,
    Intruder,
    Lacks,
    Meeting,
    Open,
    Result,
    Shift,
    Short,
    Stopped,
    Struck,
    Together,
)
from boxwright.disciplines.layout.riding import carried_by, on_top, ridden_along, unperched
from boxwright.disciplines.layout.rolling import blocked_ways
from boxwright.disciplines.layout.sight import hidden_from, is_blind
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.stopping import (
    OUTDOORS_IN_DOUBT,
    Face,
    Outdoors,
    cramped,
    faces_of,
    is_in_room,
    seen_outdoors,
    stopped,
)
from boxwright.disciplines.layout.sweeps import NEVER_OPENS, Mover, bed_of, is_unsaid, moving_part, struck_by
from boxwright.disciplines.layout.terraces import Bed, is_placed, sides_of
from boxwright.disciplines.layout.tonight import beds_tonight, slept_on, slept_on_by_nobody
from boxwright.disciplines.layout.zones import Found, Zone, beside, intruders, is_open, passages, zones_of
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Person
from boxwright.records import dataclass
from boxwright.units import Band

OPENED = frozenset({"sleep", "work"})
"""The uses in which what is inside is opened, pulled out and set up."""
OUTDOORS = frozenset({"sleep", "work", "leave"})
"""The uses in which the openings of the shell are opened where the trailer stands."""
Laid = tuple[Fitted, Zone, Found]
"""A thing, the room it wants, and where that room is laid with what stands in it."""


@dataclass(frozen=True, slots=True)
class Offers:
    """What layout gives the others before it is worked out: nothing."""


@dataclass(frozen=True, slots=True)
class Hull:
    """The shell round the room: its outer box, what stands up through its floor, and the ground under its deck (m).

    ``within`` is what lies in its walls: studs, wires and pipes. ``floor`` is how high its floor is built up by now,
    None where it is taken as finished.
    """

    outer: Block
    fixed: tuple[Raised, ...]
    has_nose: bool
    ground: Band
    within: tuple[Within, ...] = ()
    floor: float | None = None


@dataclass(frozen=True, slots=True)
class _Moving:
    """All that moves in a slot, and what cannot be judged of it."""

    movers: tuple[Mover, ...]
    open: tuple[Open, ...]


def offers() -> Offers:
    """Return what layout gives the others."""
    return Offers()


def bodies_of(section: Section, stood: tuple[Standing, ...], hull: Hull, use: str) -> tuple[Body, ...]:
    """Return all that takes up room in a slot: every part in its pose for the use, and what is fixed in the shell."""
    return bodies_in(section.fitted, stood, hull.fixed, POSE_OF_USE.get(use, "travel"))


def solve(
    section: Section,
    stood: tuple[Standing, ...],
    heavy: tuple[str, ...],
    openings: tuple[str, ...],
    hull: Hull,
    people: tuple[tuple[str, Person], ...],
    use: str,
    brought: tuple[Brought, ...] = (),
) -> Result:
    """Return what layout has worked out of one slot.

    ``stood`` and ``openings`` are what stands, ``heavy`` the paths of what is too heavy to lift over things.
    ``brought`` is what is still to be brought in and is not found to come in, the same for every slot.
    """
    if section.room is None:
        return Result(use)
    room, bodies = section.room, bodies_of(section, stood, hull, use)
    there, closed = {body.of for body in bodies}, [one for one in section.closed if one.of in openings]
    fitted = [one for one in section.fitted if one.of in there]
    set_out, canopies = _canopies(fitted, bodies, hull) if use in OPENED else ((), ())
    standing = {body.of: body for body in (*bodies, *set_out)}
    every = tuple(body for body in standing.values() if not body.is_stowed)  # what is stowed is as far as its cabinet
    roots, lines = roots_of(standing.values()), lines_of(standing.values())
    moving = _moving(fitted, closed, standing, lines, hull, room, use)
    laid = list(_laid(fitted, standing, every, lines, room))
    clearings = _clearings(every, roots, moving.movers, laid, closed, room, _slept_in(fitted, people))
    beds, loose, asleep = _slept_on(use, section.fitted, bodies, people, lines)
    struck = tuple(_struck(moving.movers, every, standing, roots, lines, heavy, clearings, room, hull, let_in(fitted)))
    ended = (*_stopped(moving.movers, standing, closed, hull, room), *_held_outside(moving.movers, closed, hull))
    resting, more = meetings(_near(every, set_out, bodies), lines, asleep, clearings.of)
    through = tuple(crossings(bodies, room, closed, hull.has_nose, hull.outer, let_in(fitted)))
    return Result(
        use=use,
        bodies=bodies,
        meetings=(*_untold(resting, struck, roots), *against_themselves(fitted, every, POSE_OF_USE.get(use, "travel"))),
        more=more,
        struck=(*struck, *_pocketed(closed, bodies, fitted, hull, room, use)),
        intruders=tuple(_intruders(laid, clearings)),
        stopped=ended,
        short=tuple(_cramped(laid, standing, faces_of(room, hull.has_nose), room)),
        perched=tuple(unperched(fitted, standing, lines, POSE_OF_USE.get(use, "travel"))),
        crossings=through[:MOST],
        more_crossings=max(len(through) - MOST, 0),
        unheld=tuple(unheld(fitted, dict(stood))),
        protruding=tuple(protruding(fitted, standing, POSE_OF_USE.get(use, "travel"), room)),
        crammed=tuple(every_crammed(fitted, POSE_OF_USE.get(use, "travel"))),
        covered=tuple(covered(fitted, frozenset(there), closed)),
        blocked=tuple(blocked_ways(bodies, roots, frozenset(heavy), closed, room)) if use == "tow" else (),
        set_out=set_out,
        arms=(*footless(fitted, standing, closed), *misplaced_arms(fitted)) if use in OPENED else (),
        canopies=canopies,
        open=(*moving.open, *_open_zones(fitted)),
        unplaced=tuple(_unplaced(bodies, fitted)),
        has_bed=any(mover.what == "bed" and mover.of not in loose for mover in moving.movers),
        fits=every_fit(bodies, beds, tuple(closed), people, room, hull.ground, hull.floor) if use in OPENED else (),
        taken=tuple(taken_beds(_unmet(every, struck), beds, people, lines)),
        brought=brought,
        hidden=tuple(hidden_from(fitted, standing, every, lines, hull.outer)) if use == "tow" else (),
        overlaid=tuple(overlaid(moving.movers, closed)),
        over_beds=tuple(over_beds(moving.movers, beds, people, lines)),
        beside=tuple(beside(fitted, standing, every, lines, room, frozenset(one.of for one in beds))),
        together=tuple(_together(moving.movers, lines, struck, ended)),
        loose=loose,
    )


def _slept_on(
    use: str,
    every: tuple[Fitted, ...],
    bodies: tuple[Body, ...],
    people: tuple[tuple[str, Person], ...],
    lines: dict[str, frozenset[str]],
) -> tuple[tuple[Bed, ...], frozenset[str], dict[str, str]]:
    """Return the beds of tonight, the leaves nobody sleeps on, and the bed of each thing that is slept on."""
    if use != "sleep":
        return (), frozenset(), {}
    there = {body.of for body in bodies}
    fitted, beds = [one for one in every if one.of in there], beds_tonight(every, there, people)
    loose = slept_on_by_nobody(bodies, fitted, beds, people)
    return beds, loose, slept_on((one for one in fitted if one.of not in loose), beds, lines)


def _together(
    movers: Iterable[Mover], lines: dict[str, frozenset[str]], struck: Iterable[Struck], ended: Iterable[Stopped]
) -> Iterator[Together]:
    """Yield what cannot both stand open; what a wall stops, or strikes another that is shut, is told of that."""
    walled = {one.of for one in ended if one.sure == "sure"}
    shut = ((one.of, hit) for one in struck if one.sure != "grazes" for hit in one.hits)
    return both_open([one for one in movers if one.of not in walled], apart_of(lines, shut))


def _pocketed(
    closed: list[Closed], bodies: tuple[Body, ...], fitted: list[Fitted], hull: Hull, room: Surfaces, use: str
) -> Iterator[Struck]:
    """Yield what leaves strike that slide into their walls, where they are opened."""
    if any(one.facet is not None and one.facet.slides is not None for one in closed) and use in OUTDOORS:
        yield from pocketed(closed, hull.within, bodies, let_in(fitted), hull.outer, room)


def _near(every: Iterable[Body], canopies: Iterable[Body], bodies: Iterable[Body]) -> tuple[Body, ...]:
    """Return what is looked at box by box: of canopies, mostly alone under the sky, what something reaches into."""
    bodies, set_out = tuple(bodies), {body.of for body in canopies}
    return tuple(body for body in every if body.of not in set_out or _is_near(body, bodies))


def _laid(
    fitted: Iterable[Fitted],
    standing: dict[str, Body],
    every: tuple[Body, ...],
    lines: dict[str, frozenset[str]],
    room: Surfaces,
) -> Iterator[Laid]:
    """Yield the room each thing wants, laid where least stands in it."""
    for one in fitted:
        for zone in zones_of(one, standing[one.of], every, room):
            yield one, zone, intruders(zone, standing[one.of], every, kin_of(one.of, lines))


def _slept_in(fitted: Iterable[Fitted], people: Iterable[tuple[str, Person]]) -> frozenset[str]:
    """Return the paths of the beds of those inside, whatever the use: no other thing is reason to move them."""
    names = {person.sleeps for _, person in people if person.sleeps}
    return frozenset(one.of for one in fitted if one.name in names)


def _clearings(
    every: tuple[Body, ...],
    roots: dict[str, str],
    movers: tuple[Mover, ...],
    laid: Iterable[Laid],
    closed: list[Closed],
    room: Surfaces,
    beds: frozenset[str],
) -> Clearings:
    """Return where things can be pushed to, past all that stands, moves, or wants room."""
    kept = ((one.of, block) for one, _, (block, _) in laid)
    return Clearings(every, roots, movers, kept, passages(closed, room), room, beds)


def _cramped(
    laid: Iterable[Laid],
    standing: dict[str, Body],
    faces: list[Face],
    room: Surfaces,
) -> Iterator[Short]:
    """Yield what the faces of the room take from room that is wanted by what stands inside."""
    for one, zone, _ in laid:
        if is_in_room(standing[one.of], room):
            yield from cramped(one, zone, standing[one.of], faces)


def _unmet(bodies: Iterable[Body], struck: Iterable[Struck]) -> list[Body]:
    """Return what no bed meets as it comes down, of which that is told already."""
    met = {hit for one in struck if one.what == "bed" and one.sure != "grazes" for hit in one.hits}
    return [body for body in bodies if body.of not in met]


def _is_near(canopy: Body, bodies: Iterable[Body]) -> bool:
    around = canopy.around
    return any(are_in(around, block) for body in bodies if body.of != canopy.of for block in body.blocks)


def _untold(resting: Iterable[Meeting], struck: Iterable[Struck], roots: dict[str, str]) -> Iterator[Meeting]:
    swept = {(one.of, hit) for one in struck if one.what == "bed" for hit in one.hits}
    return (one for one in resting if not _is_swept(one.of, one.other, swept, roots))


def _is_swept(of: str, other: str, swept: set[tuple[str, str]], roots: dict[str, str]) -> bool:
    """Return whether two things in each other are told already: one is in the way of the bed the other lies on."""
    return any(
        (roots.get(bed), roots.get(hit)) in {(roots.get(of), roots.get(other)), (roots.get(other), roots.get(of))}
        for bed, hit in swept
    )


def _canopies(
    fitted: Iterable[Fitted], bodies: Iterable[Body], hull: Hull
) -> tuple[tuple[Body, ...], tuple[Canopy, ...]]:
    """Return what stands of each canopy as it is set up, and those of which the height is written too."""
    known = {body.of: body for body in bodies}
    out = [set_up(one, known[one.of], hull.ground) for one in fitted if is_written(one) and known[one.of].blocks]
    return tuple(body for pieces, _ in out for body in pieces), tuple(one for _, one in out if one is not None)


def _moving(
    fitted: Iterable[Fitted],
    closed: Iterable[Closed],
    standing: dict[str, Body],
    lines: dict[str, frozenset[str]],
    hull: Hull,
    room: Surfaces,
    use: str,
) -> _Moving:
    """Return all that is opened, pulled out or let down in a use."""
    movers, unsaid = list[Mover](), list[Open]()
    for one in closed if use in OUTDOORS else ():
        leaves, lacks = opened(one, hull.outer, room)
        movers += leaves
        unsaid += [Open(one.of, one.name, lacks)] if lacks is not None else []
    unsaid += [Open(part.of, part.name, "sight") for part in fitted if use == "tow" and is_blind(part)]
    for part in fitted:
        if use == "sleep" and part.folds:
            bed = bed_of(part)
            movers += [bed] if bed is not None else []
            unsaid += [Open(part.of, part.name, "fold")] if bed is None else []
            if bed is not None and hangs_on_nothing(part, bed, room, standing.values()):
                unsaid.append(Open(part.of, part.name, "hinge"))
        if use in OPENED:
            found, lacks = moving_part(part, standing[part.of], room)
            movers += [*found, *fronts_of(part, standing[part.of], room)]
            if found and found[0].what == "slide":
                movers += ridden_along(found[0], standing[part.of], carried_by(part.of, standing, lines))
            unsaid += [Open(part.of, part.name, lacks)] if lacks is not None else []
            unsaid += _of_canopy(part)
    return _Moving(tuple(movers), tuple(unsaid))


def _of_canopy(part: Fitted) -> Iterator[Open]:
    """Yield what nobody wrote of a canopy."""
    out = part.facet.out if part.facet is not None else None
    if out is not None and not is_written(part):
        yield Open(part.of, part.name, "canopy")
    if out is not None and not all(arm.known for arm in out.arms):
        yield Open(part.of, part.name, "arms")


def opened(one: Closed, outer: Block | None, room: Surfaces) -> tuple[list[Mover], Lacks | None]:
    """Return the leaf of an opening as it opens, and what nobody wrote of it where that cannot be judged."""
    slides = one.facet.slides if one.facet is not None else None
    if slides is not None:
        leaves = sliding_leaf(one, slides, outer, room)
        return leaves or [], "slide" if leaves is None else None
    swing = one.facet.swing if one.facet is not None else None
    if swing is None or swing.opens in NEVER_OPENS:
        lid = usual_lid(one, room) if swing is None and _is_large(one) else None
        is_asked = swing is None and one.wall and one.wall not in FLAT and _is_large(one)
        return [lid] if lid is not None else [], "swing" if is_asked else None
    leaf = leaf_of(one, swing, outer, room)
    if leaf is not None and not swing.opens and one.wall not in FLAT:
        return either_way(one, swing, outer, room), None
    lacks: Lacks = "swing" if is_unsaid(swing) else "turn" if _is_measured(one) else "hole"
    return [leaf] if leaf is not None else [], lacks if leaf is None and one.wall else None


def _is_measured(one: Closed) -> bool:
    """Return whether it is known where a hole is in its wall, and how large."""
    return is_placed(one.place) and min(sides_of(one)) > 0.0


def _is_large(one: Closed) -> bool:
    """Return whether an opening is so large that something in it must open."""
    return sum(extent >= LENGTHS["leaf"] for extent in one.place.size) > 1


def _struck(
    movers: Iterable[Mover],
    bodies: tuple[Body, ...],
    standing: dict[str, Body],
    roots: dict[str, str],
    lines: dict[str, frozenset[str]],
    heavy: tuple[str, ...],
    clearings: Clearings,
    room: Surfaces,
    hull: Hull,
    recesses: Mapping[tuple[str, str], float],
) -> Iterator[Struck]:
    lifted = frozenset(body.of for body in bodies if body.kind == "cargo" and body.of not in heavy)
    met = set[tuple[str, str]]()
    outdoors = list(seen_outdoors(bodies, room, hull.outer, recesses))
    for mover in movers:
        own = roots.get(mover.of, mover.of)
        skipped = {body.of for body in bodies if roots.get(body.of) == own} if mover.what == "bed" else set()
        skipped |= kin_of(mover.carrier or mover.of, lines)
        skipped |= {hit for carrier, hit in met if carrier == mover.carrier}  # the carrier itself is told of it
        reached = [body for body, where in outdoors if not where] if mover.outside else bodies
        found = list(struck_by(mover, reached, frozenset(skipped)))
        if mover.of in standing:
            found += on_top(mover, standing[mover.of], carried_by(mover.of, standing, lines))
        hits = sorted(found, key=lambda hit: (hit[0], hit[1].of))
        met |= {(mover.of, body.of) for _, body, _ in hits}
        if mover.is_usual:
            light = lifted if mover.what != "leaf" else frozenset()
            hits = [(at, body, "perhaps") for at, body, sure in hits if sure != "grazes" and body.of not in light]
        for sure in ORDER:
            told = [(at, body) for at, body, certainty in hits if certainty == sure]
            if told:
                yield _told(mover, told, sure, clearings.by(told[0][1].of) if sure == "sure" else None)
        if mover.outside:
            yield from _perhaps_outdoors(mover, outdoors, frozenset(skipped | {body.of for _, body, _ in hits}))


def _perhaps_outdoors(mover: Mover, outdoors: list[Outdoors], skipped: frozenset[str]) -> Iterator[Struck]:
    """Yield what something strikes that opens outward if that hangs on the skin, or stands out past it by then."""
    for where in OUTDOORS_IN_DOUBT:
        hits = struck_by(mover, [body for body, which in outdoors if which == where], skipped)
        told = sorted(((at, body) for at, body, sure in hits if sure != "grazes"), key=lambda hit: (hit[0], hit[1].of))
        if told:
            yield replace(_told(mover, told, "perhaps", None), whereabouts=where)


def _told(mover: Mover, told: list[tuple[float, Body]], sure: Certainty, shift: Shift | None) -> Struck:
    ends = [reach_between(mover, body, sure == "sure") for _, body in told] if mover.what in {"leaf", "sash"} else []
    return Struck(
        of=mover.of,
        name=mover.name,
        what=mover.what,
        hits=tuple(body.of for _, body in told),
        names=tuple(body.name for _, body in told),
        reached=told[0][0],
        whole=mover.whole,
        turns=mover.turns,
        sure=sure,
        shift=shift,
        is_usual=mover.is_usual,
        between=(min(low for low, _ in ends), min(high for _, high in ends)) if ends else None,
    )


def _stopped(
    movers: Iterable[Mover], standing: dict[str, Body], closed: list[Closed], hull: Hull, room: Surfaces
) -> Iterator[Stopped]:
    """Yield what is stopped by a face of the room; what goes along with another is told where that one is not."""
    faces, met = faces_of(room, hull.has_nose), set[tuple[str, str]]()
    for mover in movers:
        body = standing.get(mover.of)
        if mover.outside or (body is None and mover.what not in {"leaf", "sash"}):
            continue
        if body is not None and not is_in_room(body, room):
            continue
        found = [one for one in stopped(mover, faces, tuple(closed)) if (mover.carrier, one.face) not in met]
        met |= {(mover.of, one.face) for one in found}
        yield from found


def _held_outside(movers: Iterable[Mover], closed: Iterable[Closed], hull: Hull) -> Iterator[Stopped]:
    """Yield what of the shell or under it ends the way of the leaves of openings."""
    swings = {one.of: one.facet.swing for one in closed if one.facet is not None}
    for mover in movers:
        swing = swings.get(mover.of)
        if swing is not None:
            yield from held_outside(mover, swing.to, hull.outer, hull.ground)


def _intruders(laid: Iterable[Laid], clearings: Clearings) -> Iterator[Intruder]:
    for one, zone, (_, found) in laid:
        for body, left, is_sure in found:
            shift = clearings.by(body.of) if is_sure else None
            sure: Certainty = "sure" if is_sure else "perhaps"
            yield Intruder(
                body.of, body.name, one.of, one.name, zone.side, left, zone.wanted, sure, shift, zone.is_either
            )  # fmt: skip


def _unplaced(bodies: Iterable[Body], fitted: Iterable[Fitted]) -> Iterator[tuple[str, str]]:
    """Yield what has no place or no size; how deep a leaf is that is folded up is asked by itself."""
    folded = {one.of for one in fitted if one.folded is not None and _is_written(one)}
    for body in bodies:
        if not body.known and body.kind not in WITHOUT_SOLID and body.of not in folded:
            yield body.of, body.name


def _is_written(one: Fitted) -> bool:
    """Return whether size and place of a thing are written, whatever is of it as it is folded up."""
    return one.is_sized and one.place.x.known and one.place.y.known and one.place.z.known


def _open_zones(fitted: Iterable[Fitted]) -> Iterator[Open]:
    for one in fitted:
        if one.folds and one.folded_depth is not None and not one.folded_depth.known and _is_written(one):
            yield Open(one.of, one.name, "depth")
        if one.facet is not None and one.facet.keep_clear is not None and is_open(one.facet.keep_clear):
            yield Open(one.of, one.name, "clear")
