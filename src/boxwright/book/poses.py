"""The sheets with people in them: plans on the road, at night and at work, headroom, ways out, things to tape out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.book.plan import planned_of
from boxwright.disciplines import structure
from boxwright.disciplines.frame.shell import shell as shell_of
from boxwright.disciplines.layout.bodies import Pose
from boxwright.disciplines.layout.fitting_in import every_fit
from boxwright.disciplines.layout.free_spot import free_spot
from boxwright.disciplines.layout.made_up import bodies_in
from boxwright.disciplines.layout.parts import Facet
from boxwright.disciplines.layout.posing import Posed, WayOut
from boxwright.disciplines.layout.sweeps import bed_of
from boxwright.disciplines.layout.tonight import beds_tonight
from boxwright.disciplines.layout.ways import is_exit, ways_out
from boxwright.disciplines.safety.result import Exit
from boxwright.disciplines.safety.sheets import warning_of
from boxwright.drawing import Sheet
from boxwright.finding import Use
from boxwright.model.load import LoadState
from boxwright.rig.rig import Item, Rig
from boxwright.study.at_night import exits_at_night
from boxwright.study.hull import floor_of, hull_of, linings_of, stood_of
from boxwright.study.slots import Slot
from boxwright.study.standing import Standing, cut
from boxwright.units import Band, HeaderUnits

USES: tuple[tuple[Pose, Use], ...] = (("travel", "tow"), ("night", "sleep"), ("work", "work"))
UNKNOWN = Band(0.0, 0.0, float("inf"), known=False)


def pose_sheets(rig: Rig, slot: Slot, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the sheets of every pose at the stage of a slot; none where the box is not known."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.disciplines.layout.bringing_plan import bringing_of, bringing_plan
    from boxwright.disciplines.layout.exit_plan import exit_plan
    from boxwright.disciplines.layout.headroom import headroom
    from boxwright.disciplines.layout.plan_ways import pose_plan
    from boxwright.disciplines.layout.reach_section import reach_section
    from boxwright.disciplines.layout.tape_things import NIGHT, tape_things

    found = {pose: one for pose, use in USES if (one := _posed(rig, slot, pose, use, units)) is not None}
    if not found:
        return ()
    night = found["night"]
    here: Pose = next((pose for pose, use in USES if use == slot.use), "travel")
    plans = tuple(pose_plan(one) for one in found.values())
    stages, now = tuple(one.name for one in rig.stages_in_order), rig.header.stage_today
    assert slot.box is not None  # where the box is not known nothing is posed
    hull = hull_of(shell_of(rig.frame, rig.trailer, structure.offers(rig.structure.fastened).fixings), slot.box)
    begins = bringing_of(next(iter(found.values())), rig.layout, hull, slot.number, now, stages, linings_of(rig.layers))
    brought = bringing_plan(replace(begins, told=slot.layout.brought if slot.layout else ()))
    inside = night if night.beds else found["work"]
    people = headroom(inside), reach_section(inside), exit_plan(night)
    is_apart = here != "night" and bool(night.beds)
    taped = (
        tape_things(found[here], lying=NIGHT if is_apart else ""),
        tape_things(night, NIGHT) if is_apart else None,
    )
    return (*plans, *(sheet for sheet in (*people, *taped, brought) if sheet is not None))


def _posed(rig: Rig, slot: Slot, pose: Pose, use: Use, units: HeaderUnits) -> Posed | None:
    load = _load(rig, slot, use)
    if load is None:
        return None
    standing = cut(rig, slot.number, slot.is_ticked, load, use)
    planned, own = planned_of(rig, slot, standing, units), rig.layout
    if planned is None or own.room is None:
        return None
    raised = ((one.of, one.name, one.low, one.high) for one in slot.frame.intrusions) if slot.frame is not None else ()
    bodies = bodies_in(own.fitted, stood_of(standing.frames), raised, pose)
    there = {one.of for one in standing.openings}
    openings = tuple(one for one in own.closed if one.of in there)
    beds = beds_tonight(own.fitted, {frame.of for frame in standing.frames}, standing.inside)
    items = {item.of: item for item in rig.openings}
    numbers = {way.of: number for number, way in enumerate(rig.safety.ways, start=1)}
    exits = tuple(one for one in openings if one.of in numbers and is_exit(one))
    spot = free_spot(bodies, own.room) if pose == "night" and not beds else None
    starts = (spot,) if spot is not None else beds
    aisles = ways_out(bodies, starts, exits, own.room) if pose == "night" else ()
    at_night = exits_at_night(rig, slot, standing) if pose == "night" else ()
    warnings = {one.way.of: warning_of(one) for one in at_night}
    return Posed(
        pose,
        load.name,
        planned,
        bodies,
        beds,
        tuple(
            WayOut(numbers[one.of], one, _opens(items[one.of], warnings.get(one.of)), warnings.get(one.of, ""))
            for one in exits
        ),
        aisles,
        every_fit(
            bodies,
            beds if pose == "night" else (),
            openings,
            standing.inside,
            own.room,
            rig.trailer.deck_height,
            floor_of(standing.layers, rig.frame.framing),
        ),
        tuple((name, person.height or UNKNOWN) for name, person in standing.inside),
        own.room,
        units,
        spot,
        tuple(_signs(rig, standing)),
        tuple(way for one in own.fitted if one.of in {bed.of for bed in beds} and (way := bed_of(one)) is not None),
    )


def _signs(rig: Rig, standing: Standing) -> Iterator[tuple[str, str]]:
    """Yield what warns and what puts out, as it stands, with what it is called on the plan of the ways out."""
    there = {one.of: one.stands for one in standing.frames}
    for kept in rig.safety.kept:
        if kept.what not in {"alarm", "extinguisher"} or kept.of not in there or kept.is_shut_in:
            continue
        words = f"{', '.join(kept.facet.alarm)} alarm".strip() if kept.what == "alarm" else "extinguisher"
        yield kept.of, words if there[kept.of] == "yes" else f"{words}, perhaps"


def at_night_of(rig: Rig, slot: Slot) -> tuple[Exit, ...]:
    """Return the ways out at the stage of a slot with people asleep inside, in the load state the night is drawn in."""
    load = _load(rig, slot, "sleep")
    if load is None:
        return slot.safety.exits if slot.safety is not None else ()
    return exits_at_night(rig, slot, cut(rig, slot.number, slot.is_ticked, load, "sleep"))


def _load(rig: Rig, slot: Slot, use: Use) -> LoadState | None:
    """Return the load state a pose is drawn in: that of the slot where it is of that use, else the fullest for it."""
    named = next((one for one in rig.loads if one.name == slot.load), None)
    if named is not None and slot.use == use:
        return named
    fitting = [one for one in rig.loads if use in one.uses]
    if not fitting and use == "work":  # one works where one sleeps
        fitting = [one for one in rig.loads if "sleep" in one.uses]
    return min(fitting, key=lambda one: (one.cargo is not None, len(one.out)), default=named)


def _opens(item: Item, warning: str | None) -> str:
    """Return how an opening opens, and whether from inside: in words of the rig file, or of the card at the door."""
    facet = item.facet("layout")
    swing = facet.swing if isinstance(facet, Facet) else None
    how = f"{swing.opens}, hinged {swing.hinge}".strip(", ") if swing is not None and swing.hinge else ""
    inside = "from inside" if warning == "" else warning or ""
    return "; ".join(one for one in (how, inside) if one) or "not written"
