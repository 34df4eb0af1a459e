"""Boxes and masses for the tests of weight, and hypothesis strategies that make them."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from hypothesis import strategies as st

from boxwright.disciplines.weight.result import Result
from boxwright.disciplines.weight.solve import pool_of, solve
from boxwright.exchange import Axle, Box, Mass, Measured
from boxwright.units import Band, exactly

UNKNOWN_PLACE = Band(0.0, float("-inf"), float("inf"), known=False)
UNKNOWN_MASS = Band(0.0, 0.0, float("inf"), known=False)
LEVEL = exactly(0.45)
Gear = Literal["single", "equalised", "independent"]

PLACES: dict[Gear, tuple[float, ...]] = {"single": (2.5,), "equalised": (2.1, 2.9), "independent": (2.1, 2.9)}


def box_of(gear: Gear = "equalised", **changes: object) -> Box:
    """Return a box of 4.2 m with everything about it known and exact."""
    known = Box(
        of="trailer",
        inside=(4.2, 2.0, 2.0),
        outside=(4.3, 2.1, 2.2),
        front_x=0.0,
        rear_x=4.2,
        deck_height=exactly(0.47),
        coupler_x=exactly(-1.3),
        coupler_height=exactly(0.45),
        axles=tuple(Axle(exactly(x), None) for x in PLACES[gear]),
        running_gear=gear,
        axle_rate=exactly(150_000.0),
        track=exactly(1.9),
        wheel_radius=exactly(0.34),
        jack_x=exactly(-0.9),
        legs_x=(exactly(0.2), exactly(4.0)),
    )
    return replace(known, **changes)  # type: ignore[arg-type]


def mass(name: str, kg: Band | float, x: Band | float, y: float = 0.0, z: float = 0.4, group: str = "") -> Mass:
    """Return a part as a mass."""
    band, place = (value if isinstance(value, Band) else exactly(value) for value in (kg, x))
    return Mass(f"parts[{name}]", "dry", group, band, place, exactly(y), exactly(z), (0.5, 0.4, 0.3))


def sigma(best: float, half: float) -> Band:
    """Return a number written as ``best +- half``."""
    return Band(best, best - half, best + half, spread="sigma")


def interval(low: float, high: float) -> Band:
    """Return a number written as ``low..high``."""
    return Band((low + high) / 2.0, low, high, spread="interval")


def fill(best: float, high: float) -> Band:
    """Return what a tank holds that may be anywhere from empty to full."""
    return Band(best, 0.0, high, spread="fill")


def perhaps(high: float) -> Band:
    """Return a part that may be there or not."""
    return Band(high / 2.0, 0.0, high, spread="perhaps")


SHELL = mass("shell", 900.0, 2.2, 0.0, 0.5)


def solved(
    *masses: Mass,
    box: Box | None = None,
    ball: Band = LEVEL,
    parked: bool = False,
    coupled: bool | None = None,
    legs: bool | None = None,
    boarding: tuple[Band, ...] = (),
    measured: tuple[Measured, ...] = (),
) -> Result:
    """Return where the weight of these parts goes."""
    box = box or box_of()
    return solve(box, pool_of(box, masses), ball, parked, coupled, legs, boarding, measured)


numbers = st.floats(min_value=1.0, max_value=200.0)
bands = st.one_of(
    numbers.map(exactly),
    st.tuples(numbers, st.floats(0.01, 0.2)).map(lambda pair: sigma(pair[0], pair[0] * pair[1])),
    st.tuples(numbers, st.floats(0.01, 0.4)).map(lambda pair: interval(pair[0], pair[0] * (1.0 + pair[1]))),
    numbers.map(lambda high: fill(high / 3.0, high)),
    numbers.map(perhaps),
)
gears: st.SearchStrategy[Gear] = st.sampled_from(["single", "equalised", "independent"])


@st.composite
def parts(draw: st.DrawFn, least: int = 1, most: int = 8) -> tuple[Mass, ...]:
    """Return a shell and a few parts anywhere in the box."""
    found = [SHELL]
    for index in range(draw(st.integers(least, most))):
        x, y, z = draw(st.floats(-1.0, 4.1)), draw(st.floats(-0.9, 0.9)), draw(st.floats(0.0, 1.8))
        group = draw(st.sampled_from(["", "", "furniture"]))
        found.append(mass(f"part-{index}", draw(bands), x, y, z, group))
    return tuple(found)
