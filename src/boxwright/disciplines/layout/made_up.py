"""All that takes up room in a pose; what gets its place on a bed once that is down lies on it as if it rode on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Block, Body, Pose, Standing, standing_bodies
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.exchange import Vector

Raised = tuple[str, str, Vector, Vector]
"""What stands up through the floor: its path, its name, both its corners (m)."""


def bodies_in(
    fitted: tuple[Fitted, ...], stood: Iterable[Standing], raised: Iterable[Raised], pose: Pose
) -> tuple[Body, ...]:
    """Return all that takes up room: what stands in a pose, made up for the night, and what is raised in the shell."""
    bodies = standing_bodies(fitted, stood, pose)
    return (*(laid_on_beds(fitted, bodies) if pose == "night" else bodies), *map(raised_body, raised))


def raised_body(raised: Raised) -> Body:
    """Return what stands up through the floor as a body."""
    of, name, low, high = raised
    return Body(of, name, (Block(low, high),), (0.0, 0.0, 0.0), True, "yes", "shell")


def laid_on_beds(fitted: Iterable[Fitted], bodies: tuple[Body, ...]) -> tuple[Body, ...]:
    """Return things as they lie by night, each carried by the bed its own place for the night is exactly on.

    It rests on the leaf or on the mattress, its middle over the bed. What is in doubt, or lies down in the bed, stays
    as it was: then it may be in the way of the bed as it comes down.
    """
    fitted = tuple(fitted)
    beds = {one.of: _top_of(one) for one in fitted if one.folds or one.is_stand_in}
    placed = {one.of for one in fitted if one.asleep is not None and not one.folds and one.of not in beds}
    under = [body for body in bodies if body.of in beds and body.blocks and body.is_sure]
    if not under or not placed:
        return bodies
    return tuple(_carried(body, under, beds) if body.of in placed else body for body in bodies)


def _top_of(one: Fitted) -> float:
    """Return how much higher than its own box one lies on a bed."""
    mattress = one.facet.mattress if one.facet is not None else None
    return mattress[2] if mattress is not None else 0.0


def _carried(body: Body, beds: Iterable[Body], thick: dict[str, float]) -> Body:
    bed = next((one for one in beds if _rests_on(body, one, thick[one.of])), None)
    return body if bed is None else replace(body, carried_by=bed.of, is_inside=False, is_stowed=False)


def _rests_on(body: Body, bed: Body, thick: float) -> bool:
    if not body.blocks or not body.is_sure:
        return False
    own, leaf = body.around, bed.blocks[0]  # its legs come after it
    off = tuple(one + other for one, other in zip(body.doubt, bed.doubt, strict=True))
    is_over = all(
        leaf.low[axis] + off[axis] <= (own.low[axis] + own.high[axis]) / 2.0 <= leaf.high[axis] - off[axis]
        for axis in (0, 1)
    )
    over = own.low[2] - leaf.high[2]
    play = LENGTHS["play"]
    return is_over and over - off[2] >= -play and min(abs(over), abs(over - thick)) + off[2] <= play
