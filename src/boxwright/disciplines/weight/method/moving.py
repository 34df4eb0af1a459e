"""What to move, or to add, so that the ball carries the share it should."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.disciplines.weight.method.moment import KilogramMetre
from boxwright.units import Kilogram, Metre, OutOfRange, Ratio


class Moves(NamedTuple):
    """How far each item moves (rearward positive), and whether that is enough."""

    moves: tuple[Metre, ...]
    needed: KilogramMetre
    reached: KilogramMetre
    effort: KilogramMetre
    tongue: Kilogram
    is_enough: bool


def least_move(
    mass: Kilogram,
    tongue: Kilogram,
    lever: Metre,
    target: Ratio,
    items: tuple[Kilogram, ...],
    forward: tuple[Metre, ...],
    rearward: tuple[Metre, ...],
    efforts: tuple[Ratio, ...],
) -> Moves:
    """Return the moves with the least effort that bring the ball to a target share of the weight.

    ``lever`` is from coupling to axle; ``forward`` and ``rearward`` are how far each item may go; an item's effort is
    its factor in ``efforts`` times its mass times its way. Moving changes no mass, so the moment that is missing is
    filled item by item in order of effort: the continuous knapsack. Where all moves together are not enough, all are
    made, ``is_enough`` is False and ``tongue`` is the best that can be reached.

    Satisfies: sum(m * d for m, d in zip(items, result.moves)) - result.reached; result.tongue - tongue +
        result.reached / lever; result.effort - sum(e * m * abs(d) for e, m, d in zip(efforts, items,
        result.moves)); (result.needed - result.reached) * result.is_enough
    Valid: a lever and a mass above zero; ways not below zero
    Source: first-principles section 2.3
    Departs: nothing
    Assumes: the axle or equalised group acts at one place; effort grows with mass and way
    """
    OutOfRange.unless_positive("lever", lever)
    OutOfRange.unless_positive("mass", mass)
    needed = -(target * mass - tongue) * lever
    ways = forward if needed < 0.0 else rearward
    sign = -1.0 if needed < 0.0 else 1.0
    missing = abs(needed)
    moves = [0.0] * len(items)
    for index in sorted(range(len(items)), key=lambda i: (efforts[i], i)):
        if items[index] > 0.0 and missing > 0.0:
            way = min(ways[index], missing / items[index])
            moves[index] = sign * way
            missing = max(0.0, missing - items[index] * way)
    reached = sum(item * move for item, move in zip(items, moves, strict=True))
    effort = sum(factor * item * abs(move) for factor, item, move in zip(efforts, items, moves, strict=True))
    is_enough = missing <= 1e-9 * max(1.0, abs(needed))
    return Moves(tuple(moves), needed, reached, effort, tongue - reached / lever, is_enough)


def mass_to_add(
    mass: Kilogram, tongue: Kilogram, place_x: Metre, axle_x: Metre, coupler_x: Metre, target: Ratio
) -> Kilogram:
    """Return the mass to put at one place so that the ball carries a target share; below zero: to take away there.

    Formula: add = (target * mass - tongue) / ((axle_x - place_x) / (axle_x - coupler_x) - target)
    Valid: a place whose own share of its weight on the ball is not the target itself
    Source: first-principles section 2.3
    Departs: nothing
    Assumes: the axle or equalised group acts at one place
    """
    OutOfRange.unless_positive("axle_x", axle_x - coupler_x)
    own_share = (axle_x - place_x) / (axle_x - coupler_x)
    OutOfRange.unless_positive("place_x", abs(own_share - target))
    return (target * mass - tongue) / (own_share - target)
