"""The whole flow of one slot, straight down: what stands goes in at the top, what is to be said comes out below.

Read it from top to bottom to see which discipline takes what from whom. A discipline that is built adds its lines
after those it takes something from. ``once`` runs a step only where its arguments are new.
"""

from __future__ import annotations

from boxwright.disciplines import frame, layout, safety, structure, towing, weight
from boxwright.disciplines.frame.shell import Shell, bones_of, hung_on, raised
from boxwright.disciplines.layout.bringing import brought_in
from boxwright.exchange import Box, Context
from boxwright.finding import Finding
from boxwright.rig.rig import Rig
from boxwright.study.hull import built_in_of, floor_of, heavy_of, hull_of, linings_of, openings_of, stood_of
from boxwright.study.once import Failed, Once
from boxwright.study.standing import Standing
from boxwright.study.warmth import warmed
from boxwright.study.way_out import aisles_of, left_open
from boxwright.study.worked import (
    Tongues,
    Weighed,
    Worked,
    fixings_of,
    halves_of,
    kept_standing,
    openings_standing,
    standing_of,
    stores_of,
    strung_of,
)

Said = tuple[Finding, ...] | Failed
InTheRoom = tuple[layout.Result | Failed, Said, safety.Result | Failed, Said]


def one_slot(
    rig: Rig, standing: Standing, weighed: Weighed, tongues: Tongues | Failed, context: Context, once: Once
) -> Worked:
    """Return what one slot comes to. ``tongues`` is what the ball carries in every load state that is towed."""
    fixings = once(fixings_of, once(structure.offers, rig.structure.fastened))
    bare = once(hung_on, once(raised, once(bones_of, rig.frame), rig.trailer), rig.frame, fixings)
    stood = standing_of(standing.frames, rig.frame.backings, rig.structure.fastened, rig.frame.recesses)
    framed = once(frame.solve, bare, rig.frame, standing.layers, standing.openings, stood)
    on_the_frame = once(frame.findings, framed, context.shown_in)

    heavy = once(weight.findings, weighed.weight, context.shown_in, context.judged_on)

    towed = once(
        towing.solve,
        rig.trailer,
        rig.tow,
        rig.towing,
        rig.header.trailer_class,
        context.countries,
        context.judged_on,
        weighed.box,
        weighed.weight,
        tongues,
        standing.frames,
        tuple(person.sleeps for _, person in rig.people if person.sleeps),
    )
    on_the_road = once(towing.findings, towed, context.shown_in, context.vehicle)

    laid, in_the_way, safe, on_the_way_out = in_the_room(rig, standing, bare, weighed.box, context, once)
    warm, on_heat, aired, on_air = warmed(rig, standing, framed, weighed.box, context, once)
    said = (on_the_frame, in_the_way, heavy, on_the_road, on_heat, on_air, on_the_way_out)
    return Worked(framed, laid, towed, warm, aired, safe, said)


def in_the_room(
    rig: Rig, standing: Standing, bare: Shell | Failed, box: Box | Failed, context: Context, once: Once
) -> InTheRoom:
    """Return where things are in the room and who gets out of it, each with what is said of it."""
    there, doors, around = (
        once(stood_of, standing.frames),
        once(openings_of, standing.openings),
        once(
            hull_of, bare, box, rig.frame.runs, rig.frame.unrouted, once(floor_of, standing.layers, rig.frame.framing)
        ),
    )
    stages = tuple(one.name for one in rig.stages_in_order)
    built_in, linings = once(built_in_of, rig.layout), once(linings_of, rig.layers)
    laid = once(
        layout.solve,
        rig.layout,
        there,
        once(heavy_of, standing.frames, rig.layout),
        doors,
        around,
        standing.inside,
        context.use,
        once(brought_in, built_in, around, stages, rig.header.stage_today, linings),
    )
    safe = once(
        safety.solve,
        rig.safety,
        once(kept_standing, standing.frames, rig.safety),
        once(openings_standing, standing.openings),
        standing.holes,
        once(strung_of, standing.wires, standing.frames, standing.openings, rig.safety),
        once(halves_of, standing.perhaps, rig.safety),
        once(stores_of, standing.tanks),
        once(aisles_of, rig.layout, rig.safety, there, doors, around, standing.inside, context.use),
        once(left_open, laid, rig.safety),
        tuple(person.name for person in standing.people),
        context.use,
        context.countries,
        context.judged_on,
    )
    return laid, once(layout.findings, laid, context.shown_in), safe, once(safety.findings, safe, context.shown_in)
