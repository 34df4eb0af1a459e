"""Nights of a logger for the tests, of rooms whose loss is known: one mass, or air and what stands in it."""

from __future__ import annotations

import random
from collections.abc import Callable
from typing import NamedTuple

from boxwright.disciplines.heat.logged import LoggedNight

HOUR = 3600.0


class RoomOfTwo(NamedTuple):
    """A room of air and a mass: what it loses (W/K), what both hold (J/K), what passes between them (W/K)."""

    loss: float = 50.0
    air: float = 4e5
    mass: float = 1.2e6
    between: float = 100.0


def night_of_two(
    heat: Callable[[float], float], room: RoomOfTwo | None = None, noise: float = 0.05, hours: float = 12.0,
    over: float = 5.0,
) -> LoggedNight:  # fmt: skip
    """Return readings each ten minutes of a room at -5 C outside; its course in steps of ten seconds."""
    luck, made = random.Random(7), room or RoomOfTwo()
    outside = 268.15
    air = mass = outside + over
    times, inside, given = [], [], []
    for second in range(0, int(hours * HOUR) + 1, 10):
        if second % 600 == 0:
            times.append(float(second))
            inside.append(air + luck.gauss(0.0, noise))
            given.append(heat(float(second)))
        watt = heat(float(second))
        passed = made.between * (air - mass)
        air += 10.0 * (watt - made.loss * (air - outside) - passed) / made.air
        mass += 10.0 * passed / made.mass
    return LoggedNight("made up", tuple(times), tuple(inside), (outside,) * len(times), tuple(given), 0.03)
