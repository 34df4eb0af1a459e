"""How warm the room is and what air it has, and what both take of the frame: each plane as built, the holes in it."""

from __future__ import annotations

from itertools import pairwise
from math import inf, isfinite

from boxwright.disciplines import air, frame, heat
from boxwright.disciplines.air.parts import PlannedVent
from boxwright.disciplines.air.solve import lined_share
from boxwright.disciplines.frame.parts import StandingOpening
from boxwright.disciplines.frame.result import Buildup, Hole, Intrusion, LayerPiece, Member, Wall
from boxwright.disciplines.heat.burner import side_of_the_shell
from boxwright.disciplines.heat.parts import FuelTank
from boxwright.disciplines.water.parts import StandingTank
from boxwright.exchange import Airflow, Box, Context, Layup, LayupLayer, Moisture, Night, Opening, Vector
from boxwright.finding import Finding
from boxwright.model.part import Frame
from boxwright.model.place import shifted
from boxwright.model.trailer import Person
from boxwright.rig.rig import Rig
from boxwright.study.once import Failed, Once
from boxwright.study.standing import Standing
from boxwright.units import Band, exactly

IN_THE_FIELD = ("stud", "bow", "cross-member", "jamb", "header", "sill")
"""Members that lie within a plane; posts, plates and rails lie around it."""
ROW = ("stud", "bow", "cross-member")
FEWEST = 1.22
"""Members farther apart than this (m), twice the widest spacing in use, are not all written (common practice, no
source): a wall of which one stud is taped has more of them."""
Said = tuple[Finding, ...] | Failed
Warmed = tuple[heat.Result | Failed, Said, air.Result | Failed, Said]
Stands = tuple[tuple[str, str], ...]
"""Paths, each with "yes" or "perhaps"."""
TOUCH = 0.001
"""How far (m) a tank that lies against a wall or the floor may be in it and still lie in the room."""
HAND, COVERED = 0.15, 0.25
"""How near to a hole in the wall (m), and over which share of it, a thing covers it; common practice, no source."""
UNKNOWN_AREA = Band(0.0, 0.0, inf, known=False)
UNKNOWN_LENGTH = Band(0.0, 0.0, inf, known=False)


def warmed(
    rig: Rig,
    standing: Standing,
    framed: frame.Result | Failed,
    box: Box | Failed,
    context: Context,
    once: Once,
) -> Warmed:
    """Return how warm the room is and what air it has: flow is offered before heat, what is damp judged after it."""
    planes = once(layups_of, framed, rig.frame)
    holes = once(cut_through, framed, standing.openings, standing.holes)
    people = len(standing.people) if context.use in ("sleep", "work") else 0
    sleepers = people if context.use == "sleep" else 0
    vents = vents_standing(standing.frames, standing.openings, rig.air)
    covered = once(covered_vents, standing.frames, rig.air)
    offered = once(air.offers, rig.air, vents, holes, once(lined_share, planes), people, context.use, covered)
    warm = once(
        heat.solve,
        rig.heat,
        heaters_standing(standing.frames, rig.heat),
        planes,
        holes,
        once(airflow_of, offered),
        once(moisture_of, offered),
        once(fuel_of, standing.tanks, box),
        box,
        sleepers,
        context.use,
        feeding_standing(standing.frames, standing.openings, standing.wires, rig.heat),
        standing.charges,
        _waiting(rig.people) if context.use == "leave" else (),
    )
    nights = once(nights_of, warm)
    aired = once(
        air.solve, rig.air, offered, vents, planes, nights, people, context.use, context.countries, context.judged_on
    )
    return warm, once(heat.findings, warm, context.shown_in), aired, once(air.findings, aired, context.shown_in)


def _waiting(people: tuple[tuple[str, Person], ...]) -> tuple[tuple[str, bool], ...]:
    """Return who waits in a trailer that is left, or may: one who is written to, but nobody knows whether."""
    asked = ((name, one) for name, one in people if one.waits or "waits" in one.model_fields_set)
    return tuple((name, bool(one.waits)) for name, one in asked if one.waits is not False)


def layups_of(framed: frame.Result, section: frame.Section) -> tuple[Layup, ...]:
    """Return every plane of the box as it stands in a slot, bays that are written apart after their wall."""
    found: list[Layup] = []
    for wall in framed.walls:
        members = framed.members_of(wall.name)
        apart = [one for one in framed.buildups if one.wall == wall.name and one.bay]
        spans = {one.bay: _bay_area(framed, wall, one.bay) for one in apart}
        whole = _area(wall) - sum(_area_of(one) for one in framed.holes if one.wall == wall.name)
        for built in (one for one in framed.buildups if one.wall == wall.name):
            if built.place == "member" and not built.bay:
                continue
            share = spans[built.bay] if built.bay else whole - sum(spans.values())
            found.append(_layup(wall, built, share, members if not built.bay else (), section))
    return (*found, *(_wheel_box(one) for one in framed.intrusions if "wheel" in one.what.lower()))


def _layup(wall: Wall, built: Buildup, area: float, members: tuple[Member, ...], section: frame.Section) -> Layup:
    framing = section.framing
    deck = framing.floor.deck if framing is not None and framing.floor is not None else ""
    written = framing.skin if framing is not None else ""
    tube = wall.tube
    there = [one for one in members if not one.is_removed]
    return Layup(
        of=built.of,
        wall=wall.name,
        bay=built.bay,
        area=exactly(max(area, 0.0)) if isfinite(area) else UNKNOWN_AREA,
        outward=outward_of(wall),
        members=_in_the_field(wall, members) if not built.bay else exactly(0.0),
        edge=exactly(_edge(wall, there) if not built.bay else 0.0),
        spacing=_spacing(tuple(one for one in there if one.kind in ("stud", "bow", "cross-member"))),
        member_face=tube.face,
        member_depth=tube.depth,
        member_gauge=tube.gauge,
        member_shape=tube.shape,
        member_material=tube.material,
        skin=wall.skin if wall.name != "floor" else section.deck,
        skin_of=deck if wall.name == "floor" else written,
        layers=tuple(_layer(one) for one in built.layers if one.there != "later"),
    )


def _in_the_field(wall: Wall, members: tuple[Member, ...]) -> Band:
    """Return the metres of member in a plane (m); not known where too few are written, or none, for a framed wall."""
    row = sum(one.kind in ROW for one in members)
    if isfinite(wall.high - wall.low) and wall.high - wall.low > FEWEST * (row + 1):
        return UNKNOWN_LENGTH
    return exactly(sum(_length(one) for one in members if one.kind in IN_THE_FIELD and not one.is_removed))


def _edge(wall: Wall, members: list[Member]) -> float:
    """Return the metres of post, plate and rail around a plane: half its outline at least, as an edge is of two."""
    listed = sum(_length(one) for one in members if one.kind not in IN_THE_FIELD)
    outline = (wall.high - wall.low) + (wall.top - wall.foot)
    return max(listed, outline if isfinite(outline) else 0.0)


def _wheel_box(box: Intrusion) -> Layup:
    """Return a wheel box as a plane of its own: bare sheet on its top, its side and both its ends, over moving air."""
    long, deep, high = (abs(far - near) for near, far in zip(box.low, box.high, strict=True))
    area = long * deep + long * high + 2.0 * deep * high
    nothing = exactly(0.0)
    wall = "left" if box.low[1] + box.high[1] < 0.0 else "right"
    return Layup(
        box.of, wall, box.name, exactly(area) if isfinite(area) else UNKNOWN_AREA, (0.0, 0.0, -1.0), nothing, nothing,
        None, None, None, None, "unknown", "", None, "", (),
    )  # fmt: skip


def _layer(piece: LayerPiece) -> LayupLayer:
    is_certain = piece.there == "yes"
    return LayupLayer(piece.of, piece.name, piece.material, piece.thick, piece.where, is_certain, piece.resistance)


def outward_of(wall: Wall) -> Vector:
    """Return the unit vector out of the room through a wall, the roof or the floor."""
    if wall.name in ("roof", "floor"):
        return (0.0, 0.0, 1.0 if wall.name == "roof" else -1.0)
    return (0.0 - wall.inward[0], 0.0 - wall.inward[1], 0.0)


def _area(wall: Wall) -> float:
    """Return the area of a plane between its ends; roof and floor count across as they count up."""
    return (wall.high - wall.low) * (wall.top - wall.foot)


def _area_of(hole: Hole) -> float:
    """Return the area a hole takes off its plane: nothing where it is not cut and does not stand, or has no place."""
    is_there = hole.there != "later" or hole.is_cut is True or hole.is_by_builder
    if not is_there or not hole.is_placed:
        return 0.0
    return max(hole.high - hole.low, 0.0) * max(hole.top - hole.bottom, 0.0)


def _bay_area(framed: frame.Result, wall: Wall, name: str) -> float:
    """Return the area of one bay between its members, from foot to top; nothing where nobody knows its members."""
    bay = next((one for one in framed.bays if one.name == name), None)
    return max(bay.clear.best, 0.0) * (wall.top - wall.foot) if bay is not None else 0.0


def _length(member: Member) -> float:
    return sum(high - low for low, high in member.pieces) if member.pieces else member.high - member.low


def _spacing(row: tuple[Member, ...]) -> Band | None:
    """Return how far the members of a row stand apart: the mean, from the closest to the widest pair."""
    places = sorted(one.at.best for one in row if one.is_held)
    gaps = [right - left for left, right in pairwise(places) if right > left]
    if not gaps:
        return None
    mean = (places[-1] - places[0]) / len(gaps)
    return Band(mean, min(gaps), max(gaps), spread="interval") if max(gaps) - min(gaps) > 1e-9 else exactly(mean)


def cut_through(
    framed: frame.Result, standing: tuple[StandingOpening, ...], open_holes: tuple[str, ...]
) -> tuple[Opening, ...]:
    """Return every hole that is cut or stands. ``open_holes`` are the paths of those that nothing surely fills yet."""
    units = {one.of: one for one in standing}
    walls = {one.name: one for one in framed.walls}
    found: list[Opening] = []
    for hole in framed.holes:
        stands = units.get(hole.of)
        wall = walls.get(hole.wall)
        if wall is None or (stands is None and hole.of not in open_holes):
            continue
        unit = stands.opening.unit if stands is not None else None
        is_flat = hole.wall in ("roof", "floor")
        found.append(
            Opening(
                of=hole.of,
                name=hole.name,
                wall=hole.wall,
                area=_as_large(hole, wall),
                bottom=_level(_height(wall) if is_flat else hole.bottom, hole),
                top=_level(_height(wall) if is_flat else hole.top, hole),
                outward=outward_of(wall),
                transmittance=unit.transmittance if unit is not None else None,
                has_unit=unit is not None,
                is_leaf=bool(stands is not None and stands.swing[1]) or hole.is_by_builder,
                is_certain=stands is not None and stands.share.low == stands.share.high,
                is_open=hole.of in open_holes,
                low=_corner(wall, hole.low, hole.bottom) if hole.is_placed else None,
                high=_corner(wall, hole.high, hole.top) if hole.is_placed else None,
            )
        )
    return tuple(found)


def _corner(wall: Wall, along: float, up: float) -> Vector:
    """Return a point of a plane in the rig's datum; roof and floor count across as they count up."""
    if wall.name in ("roof", "floor"):
        return (along, up, _height(wall))
    share = (along - wall.low) / (wall.high - wall.low) if wall.high > wall.low else 0.0
    x, y = (start + share * (end - start) for start, end in zip(wall.start, wall.end, strict=True))
    return (x, y, up)


def _height(wall: Wall) -> float:
    """Return how high the floor or the roof lies above the deck."""
    return wall.roof.height if wall.name == "roof" else 0.0


def _as_large(hole: Hole, wall: Wall) -> Band:
    """Return the area of a hole: one of a known size has it wherever it may be, another may take up all of its plane.

    Where one of its two sides is known, the other is at most as long as the plane is.
    """
    area = _face(hole)
    if hole.is_placed or 0.0 < area < inf:
        return exactly(area)
    wide, high = hole.high - hole.low, hole.top - hole.bottom
    most = (wide if 0.0 < wide < inf else wall.high - wall.low) * (high if 0.0 < high < inf else wall.top - wall.foot)
    return Band(0.0, 0.0, most, known=False)


def _face(hole: Hole) -> float:
    return max(hole.high - hole.low, 0.0) * max(hole.top - hole.bottom, 0.0)


def _level(best: float, hole: Hole) -> Band:
    return exactly(best) if hole.is_placed and isfinite(best) else Band(0.0, -inf, inf, known=False)


def heaters_standing(frames: tuple[Frame, ...], own: heat.Section) -> Stands:
    """Return how each heater and cooler of the plan stands, so that no new weight makes it new."""
    wanted = {one.of for one in own.heaters} | {one.of for one in own.coolers}
    return tuple((one.of, one.stands) for one in frames if one.of in wanted)


def feeding_standing(
    frames: tuple[Frame, ...], openings: tuple[StandingOpening, ...], wires: tuple[tuple[str, bool], ...],
    own: heat.Section,
) -> Stands:  # fmt: skip
    """Return how each thing and wire stands that may feed a heater, or draws beside one."""
    wanted = {one.of for one in own.sources} | {one.of for one in own.leads} | {one.of for one in own.joins}
    holes = ((one.of, "yes" if one.share.low == one.share.high else "perhaps") for one in openings)
    strung = ((of, "yes" if is_sure else "perhaps") for of, is_sure in wires)
    parts = ((one.of, str(one.stands)) for one in frames)
    return tuple((of, stands) for of, stands in (*holes, *strung, *parts) if of in wanted)


def vents_standing(frames: tuple[Frame, ...], openings: tuple[StandingOpening, ...], own: air.Section) -> Stands:
    """Return how each vent, fan and flame of the plan stands, parts and openings alike."""
    wanted = {one.of for one in own.vents} | {one.of for one in (*own.flames, *own.on_gas)}
    wanted |= {one.of for one in own.damp}
    holes = ((one.of, "yes" if one.share.low == one.share.high else "perhaps") for one in openings)
    parts = ((one.of, str(one.stands)) for one in frames)
    return tuple((of, stands) for of, stands in (*holes, *parts) if of in wanted)


def covered_vents(frames: tuple[Frame, ...], own: air.Section) -> tuple[tuple[str, str], ...]:
    """Return the holes that let air through and have a thing close before them, each with the name of that.

    A thing covers a hole where it may stand within a hand of it, over a quarter of it or more. What lets air through
    itself, such as a fan in its hole, covers none.
    """
    airy = {one.of for one in own.vents}
    things = [one for one in frames if one.of not in airy and one.kind not in ("people", "fluid")]
    found = []
    for vent in own.vents:
        before = next(
            (one.name for one in things if vent.is_hole and vent.kind != "door" and _is_before(one, vent)), ""
        )
        if before:
            found.append((vent.of, before))
    return tuple(found)


def _is_before(one: Frame, vent: PlannedVent) -> bool:
    """Return whether a thing may stand close before a hole, wherever within its doubt it is."""
    through = min(range(3), key=lambda axis: vent.place.size[axis])
    share = 1.0
    for axis in range(3):
        thing, hole = ((place.x, place.y, place.z)[axis] for place in (one.place, vent.place))
        if not (thing.known and hole.known):
            return False  # where it stands is asked elsewhere
        half, size = one.place.size[axis] / 2.0, vent.place.size[axis]
        low, high = thing.low - half, thing.high + half
        if axis == through:
            if max(low - hole.high, hole.low - high) > HAND:
                return False
            continue
        over = min(high, hole.high + size / 2.0) - max(low, hole.low - size / 2.0)
        share *= min(max(over, 0.0) / size, 1.0) if size > 0.0 else 0.0
    return share >= COVERED


def fuel_of(tanks: tuple[StandingTank, ...], box: Box) -> tuple[FuelTank, ...]:
    """Return every tank with what is in it; whether heat burns it, heat knows."""
    return tuple(
        FuelTank(
            one.of,
            one.name,
            one.tank.of,
            one.tank.volume if one.tank.volume is not None else UNKNOWN_AREA,
            one.fill,
            one.place.low_edge(2),
            shifted(one.place.z, one.place.size[2] / 2.0),
            one.share.low == one.share.high,
            side_of_the_shell(one.place, box),
        )
        for one in tanks
    )


def airflow_of(offered: air.Offers) -> Airflow:
    """Return how the air of the room can change."""
    return offered.airflow


def moisture_of(offered: air.Offers) -> tuple[Moisture, ...]:
    """Return what makes the air of the room damp."""
    return offered.moisture


def nights_of(warmed: heat.Result) -> tuple[Night, ...]:
    """Return the nights heat has worked out."""
    return warmed.nights
