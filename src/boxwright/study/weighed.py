"""Which masses a slot has and where its weight goes: what the flow of a slot begins with, whatever its use."""

from __future__ import annotations

from boxwright.disciplines import frame, water, weight
from boxwright.disciplines.weight.solve import pool_of
from boxwright.exchange import Box, Mass, Measured
from boxwright.model.load import LoadState
from boxwright.rig.rig import Rig
from boxwright.study.once import Failed, Once
from boxwright.study.own_mass import Giver, own_frame
from boxwright.study.standing import UNKNOWN_MASS, Standing
from boxwright.study.worked import Weighed, box_of, pooled
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
