"""The whole flow of one slot, straight down: what stands goes in at the top, what is to be said comes out below.

Read it from top to bottom to see which discipline takes what from whom. A discipline that is built adds its lines
after those it takes something from. ``once`` runs a step only where its arguments are new.
"""

from __future__ import annotations

from boxwright.disciplines import frame, layout, safety, structure, towing, water, weight
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.weight.solve import pool_of
from boxwright.exchange import Box, Context, Mass, Measured
from boxwright.model.load import LoadState
from boxwright.rig.rig import Rig
from boxwright.study.hull import heavy_of, hull_of, openings_of, stood_of
from boxwright.study.once import Failed, Once
from boxwright.study.own_mass import Giver, own_frame
from boxwright.study.standing import UNKNOWN_MASS, Standing
from boxwright.study.way_out import aisles_of
from boxwright.study.worked import (
    Tongues,
    Weighed,
    Worked,
    box_of,
    fixings_of,
    kept_standing,
    openings_standing,
    pooled,
    standing_of,
    stores_of,
)
from boxwright.units import Band


def on_the_scale(rig: Rig, standing: Standing, once: Once) -> tuple[Mass, ...] | Failed:
    """Return the masses that stood on a scale besides the bare trailer itself."""
    framed = once(frame.offers, standing.layers, standing.openings, rig.trailer, rig.frame.framing)
    watered = once(water.offers, standing.tanks)
    weighed = once(weight.offers, standing.frames, standing.people)
    return once(pooled, framed, watered, weighed)


def gathered(
    rig: Rig, standing: Standing, giver: Giver | None, others: tuple[Mass, ...] | Failed, once: Once
) -> tuple[Box | Failed, tuple[Mass, ...] | Failed]:
    """Return the trailer and every mass of a slot. ``others`` stood on the scale when ``giver`` weighed the trailer."""
    framed = once(frame.offers, standing.layers, standing.openings, rig.trailer, rig.frame.framing)
    box = once(box_of, framed)
    watered = once(water.offers, standing.tanks)

    own = once(own_frame, rig.trailer.empty, giver, box, others)
    parts = own if isinstance(own, Failed) else (own, *standing.frames)
    weighed = once(weight.offers, parts, standing.people)
    return box, once(pooled, framed, watered, weighed)


def weighed_slot(
    rig: Rig,
    box: Box | Failed,
    masses: tuple[Mass, ...] | Failed,
    load: LoadState,
    ball_height: Band,
    measured: tuple[Measured, ...],
    once: Once,
) -> Weighed:
    """Return where the weight of one slot goes."""
    balance = once(
        weight.solve,
        box,
        once(pool_of, box, masses),
        ball_height,
        load.is_parked,
        load.is_coupled,
        load.legs_are_down,
        tuple(person.weight or UNKNOWN_MASS for _, person in rig.people),
        measured,
    )
    return Weighed(box, masses, balance)


def one_slot(
    rig: Rig, standing: Standing, weighed: Weighed, tongues: Tongues | Failed, context: Context, once: Once
) -> Worked:
    """Return what one slot comes to. ``tongues`` is what the ball carries in every load state that is towed."""
    fixings = once(fixings_of, once(structure.offers, rig.structure.fastened))
    bare = once(shell, rig.frame, rig.trailer, fixings)
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

    standing_there, doors = once(stood_of, standing.frames), once(openings_of, standing.openings)
    around = once(hull_of, bare, weighed.box)
    laid = once(
        layout.solve,
        rig.layout,
        standing_there,
        once(heavy_of, standing.frames, rig.layout),
        doors,
        around,
        rig.people,
        context.use,
    )
    in_the_way = once(layout.findings, laid, context.shown_in)
    safe = once(
        safety.solve,
        rig.safety,
        once(kept_standing, standing.frames, rig.safety),
        once(openings_standing, standing.openings),
        standing.holes,
        once(stores_of, standing.tanks),
        once(aisles_of, rig.layout, rig.safety, standing_there, doors, around, rig.people, context.use),
        tuple(person.name for person in standing.people),
        context.use,
        context.countries,
        context.judged_on,
    )
    on_the_way_out = once(safety.findings, safe, context.shown_in)
    return Worked(framed, laid, towed, safe, (on_the_frame, in_the_way, heavy, on_the_road, on_the_way_out))
