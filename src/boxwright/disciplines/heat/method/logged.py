"""What a night with a logger tells of a room: its loss and what it holds, from a heat that is known."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, NamedTuple

from boxwright.disciplines.heat.method.boxed import JoulePerKelvin, WattPerKelvin
from boxwright.units import Kelvin, OutOfRange, Ratio, Second, Unit, Watt

KelvinPerSecond = Annotated[float, Unit("K/s", "rate of warming")]


def two_slope_loss(
    first: Watt, second: Watt, first_slope: KelvinPerSecond, second_slope: KelvinPerSecond, first_over: Kelvin,
    second_over: Kelvin,
) -> WattPerKelvin:  # fmt: skip
    """Return what a room loses, from how fast it warms with one heat and cools with another.

    ``first_over`` and ``second_over`` are how much warmer than outside it is meanwhile.

    Formula: loss = (first * second_slope - second * first_slope) / (first_over * second_slope - second_over * first_slope)
    Valid: two heats, of which one warms the room and the other does not
    Source: qub-2018 formula
    Departs: nothing
    Assumes: one mass; the same wind and sky by both
    """  # noqa: E501
    apart = first_over * second_slope - second_over * first_slope
    OutOfRange.unless_between("slopes apart", abs(apart), LEAST_APART, float("inf"))
    return (first * second_slope - second * first_slope) / apart


def two_slope_capacity(
    first: Watt, second: Watt, first_slope: KelvinPerSecond, second_slope: KelvinPerSecond, first_over: Kelvin,
    second_over: Kelvin,
) -> JoulePerKelvin:  # fmt: skip
    """Return what a room holds, from how fast it warms with one heat and cools with another.

    Formula: capacity = (first * second_over - second * first_over) / (first_slope * second_over - second_slope * first_over)
    Valid: two heats, of which one warms the room and the other does not
    Source: qub-2018 formula
    Departs: nothing
    Assumes: one mass; the same wind and sky by both
    """  # noqa: E501
    apart = first_slope * second_over - second_slope * first_over
    OutOfRange.unless_between("slopes apart", abs(apart), LEAST_APART, float("inf"))
    return (first * second_over - second * first_over) / apart


LEAST_APART = 1e-9
"""K2/s: slopes so alike tell nothing."""


def drifting_loss(heat: Watt, over: Kelvin, capacity: JoulePerKelvin, slope: KelvinPerSecond) -> WattPerKelvin:
    """Return what a room loses that is held nearly even, what it still takes up or gives back counted.

    Formula: loss = (heat - capacity * slope) / over
    Valid: a room warmer than outside
    Source: first-principles balance of heat
    Departs: nothing
    Assumes: all of it drifts alike
    """
    OutOfRange.unless_positive("over", over)
    return (heat - capacity * slope) / over


class Straight(NamedTuple):
    """A straight line through readings: its slope, how far that may be off (one standard error), its middle."""

    slope: KelvinPerSecond
    doubt: KelvinPerSecond
    middle: Kelvin


def straight_through(times: tuple[Second, ...], values: tuple[Kelvin, ...]) -> Straight:
    """Return the straight line that lies closest to readings.

    Satisfies: sum((value - result.middle - result.slope * (time - sum(times) / len(times))) * time for time, value in zip(times, values)) / (1 + sum(abs(value * time) for time, value in zip(times, values)))
    Valid: three readings or more at times that differ
    Source: first-principles least squares
    Departs: nothing
    Assumes: readings that err alike, each by itself
    """  # noqa: E501
    count = len(times)
    OutOfRange.unless_between("readings", float(count), 3.0, float("inf"))
    amid, middle = sum(times) / count, sum(values) / count
    spread = sum((time - amid) ** 2 for time in times)
    OutOfRange.unless_positive("spread of times", spread)
    slope = sum((time - amid) * (value - middle) for time, value in zip(times, values, strict=True)) / spread
    left = sum((value - middle - slope * (time - amid)) ** 2 for time, value in zip(times, values, strict=True))
    return Straight(slope, (left / (count - 2) / spread) ** 0.5, middle)


class OneMass(NamedTuple):
    """A room as one mass that lies closest to a night: its loss and what it holds, and how far readings lie off.

    ``doubt`` is one standard error of the loss where readings err each by itself. ``off`` is how far a reading lies off
    in the mean, ``alike`` how much one reading errs as the one before it: near 1 the room is no one mass. ``residual``
    is what the least squares lack, as a share.
    """

    loss: WattPerKelvin
    capacity: JoulePerKelvin
    doubt: WattPerKelvin
    off: Kelvin
    alike: Ratio
    residual: Ratio


def one_mass(
    times: tuple[Second, ...], inside: tuple[Kelvin, ...], outside: tuple[Kelvin, ...], heat: tuple[Watt, ...]
) -> OneMass:
    """Return the one mass and the one loss that come closest to a night; ``heat`` holds from each reading to the next.

    Satisfies: result.residual
    Valid: a heat that is not the same all night, or not nothing
    Source: heat-sheet calibration from a logged night, 1R1C
    Departs: fitted by the heat and the kelvin-hours gathered so far, which is linear, not by the course
    Assumes: readings that err alike, each by itself
    """
    rows, rises = [], []
    joule, kelvins = 0.0, 0.0
    for place in range(len(times)):
        if place:
            step = times[place] - times[place - 1]
            joule += heat[place - 1] * step
            over = inside[place] - outside[place] + inside[place - 1] - outside[place - 1]
            kelvins += over / 2.0 * step
        rows.append((joule / SCALED_JOULE, -kelvins / SCALED_KELVINS, 1.0))
        rises.append(inside[place] - inside[0])
    inverse = _inverse(rows)
    sums = [sum(row[number] * rise for row, rise in zip(rows, rises, strict=True)) for number in range(3)]
    a, b, first = (sum(inverse[line][number] * sums[number] for number in range(3)) for line in range(3))
    OutOfRange.unless_positive("heat taken up", a)
    off = [rise - a * row[0] - b * row[1] - first for row, rise in zip(rows, rises, strict=True)]
    variance = sum(one * one for one in off) / (len(off) - 3)
    capacity = SCALED_JOULE / a
    loss = b / a * SCALED_JOULE / SCALED_KELVINS
    # The loss is a share of two fitted numbers: its error is theirs, with what they err together.
    relative = inverse[1][1] / (b * b) + inverse[0][0] / (a * a) - 2.0 * inverse[0][1] / (a * b)
    both = sum(one * two for one, two in pairwise(off))
    return OneMass(
        loss,
        capacity,
        abs(loss) * max(relative * variance, 0.0) ** 0.5,
        variance**0.5,
        both / max(sum(one * one for one in off), 1e-300),
        sum(off) / (1.0 + sum(abs(one) for one in rises)),
    )


SCALED_JOULE, SCALED_KELVINS = 1e7, 1e5
"""What gathered heat (J) and gathered difference (K s) are divided by, so that no column dwarfs another."""


def _inverse(rows: list[tuple[float, float, float]]) -> list[list[float]]:
    """Return the inverse of the normal equations of three unknowns."""
    m = [[sum(row[i] * row[j] for row in rows) for j in range(3)] for i in range(3)]

    def minor(i: int, j: int) -> float:
        (a, b), (c, d) = ([m[row][column] for column in range(3) if column != j] for row in range(3) if row != i)
        return a * d - b * c

    whole = sum((-1.0) ** j * m[0][j] * minor(0, j) for j in range(3))
    scale = m[0][0] * m[1][1] * m[2][2]
    OutOfRange.unless_between("heat that changes", abs(whole), LEAST_SHARE * abs(scale), float("inf"))
    OutOfRange.unless_positive("heat that changes", abs(scale))
    return [[(-1.0) ** (i + j) * minor(j, i) / whole for j in range(3)] for i in range(3)]


LEAST_SHARE = 1e-7
"""Below it the columns say the same: a night without heat tells how fast a room cools, not what it loses."""
