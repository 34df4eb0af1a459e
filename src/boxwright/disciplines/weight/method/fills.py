"""The worst share of the weight on the ball over everything a load state leaves open."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.units import Kilogram, OutOfRange, Ratio


class WorstShare(NamedTuple):
    """The extreme share, and the fill of each open mass that gives it."""

    share: Ratio
    fills: tuple[Kilogram, ...]


def highest_share(
    tongue: Kilogram, mass: Kilogram, shares: tuple[Ratio, ...], most: tuple[Kilogram, ...]
) -> WorstShare:
    """Return the highest share over all fills from nothing to the most of each.

    ``tongue`` and ``mass`` are what stands whatever the fills; ``shares`` is how much of each open mass the ball
    carries. The share is a quotient of two sums that are linear in the fills, so it is highest with every fill at one
    end: full where the fill's own share is above the result, empty where it is below. Taken in order of their own
    shares, fills are added for as long as each is above what has been reached. The same holds for any quotient with
    the mass below the line, so the centre of gravity uses it too.

    Satisfies: result.share * (mass + sum(result.fills)) - tongue - sum(s * f for s, f in zip(shares,
        result.fills)); sum((m - f) * max(0.0, s - result.share) + f * max(0.0, result.share - s) for s, f, m in
        zip(shares, result.fills, most))
    Valid: a standing mass above zero; fills not below zero
    Source: first-principles section 2.2
    Departs: nothing
    Assumes: the fills are independent of each other
    """
    OutOfRange.unless_positive("mass", mass)
    fills = [0.0] * len(most)
    for index in sorted(range(len(most)), key=lambda i: (-shares[i], i)):
        if shares[index] * mass <= tongue:
            break
        if most[index] == float("inf"):
            fills[index] = most[index]
            return WorstShare(shares[index], tuple(fills))
        fills[index] = most[index]
        tongue += shares[index] * most[index]
        mass += most[index]
    return WorstShare(tongue / mass, tuple(fills))


def lowest_share(tongue: Kilogram, mass: Kilogram, shares: tuple[Ratio, ...], most: tuple[Kilogram, ...]) -> WorstShare:
    """Return the lowest share over all fills from nothing to the most of each; see ``highest_share``.

    Satisfies: result.share * (mass + sum(result.fills)) - tongue - sum(s * f for s, f in zip(shares,
        result.fills)); sum((m - f) * max(0.0, result.share - s) + f * max(0.0, s - result.share) for s, f, m in
        zip(shares, result.fills, most))
    Valid: a standing mass above zero; fills not below zero
    Source: first-principles section 2.2
    Departs: nothing
    Assumes: the fills are independent of each other
    """
    mirrored = highest_share(-tongue, mass, tuple(-share for share in shares), most)
    return WorstShare(-mirrored.share, mirrored.fills)
