"""Rooms for the tests of the box through time: the two-mass rooms of VDI 6007, and the plain box of the demo rig."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.disciplines.heat.method import Box, Cold, Faces, Heater, Hours, Panes, Room

AIR_AT = 1.2 * 287.042
"""The pressure, divided by the temperature outside, at which air weighs 1.2 kg/m3 as in the sheet of checks."""
NO_COLD = Cold((), (), (), ())
NO_HEATER = Heater(0.0, 0.0, True, 0.0)
NO_PANES = Panes((), (), ())


def room(**given: float) -> Room:
    """Return a closed room without mass, with what is given instead."""
    plain: dict[str, float] = dict.fromkeys(Room._fields, 0.0)
    plain |= {"volume": 17.2, "to_air": 1.0, "open_above": 1e3, "pressure": 101325.0, "moist": 20.0}
    return Room(**(plain | given))


def faces(*each: dict[str, float]) -> Faces:
    """Return faces of a square metre without mass or sun, each with what is given instead."""
    plain: dict[str, float] = dict.fromkeys(Faces._fields, 0.0)
    plain |= {"area": 1.0, "film": 1e12, "inward": 1.0, "direction": -1}
    rows = [plain | one for one in each]
    return Faces(*(tuple(row[name] for row in rows) for name in Faces._fields))  # type: ignore[arg-type]


def hours(count: int, **given: float | tuple[object, ...]) -> Hours:
    """Return still dark hours at freezing with the heater off, with what is given instead."""
    plain: dict[str, object] = dict.fromkeys(Hours._fields, 0.0)
    plain |= {"outside": 273.15, "sun": ((0.0,) * 5,) * count, "cool": 1e3}
    plain |= given
    plain["sky"] = given.get("sky", plain["outside"])
    columns = {name: one if isinstance(one, tuple) else (one,) * count for name, one in plain.items()}
    return Hours(**columns)  # type: ignore[arg-type]


class TwoMasses(NamedTuple):
    """A room of VDI 6007: its resistances (K/W) and capacities (J/K), and how its gain is given off."""

    behind: float
    outer: float
    outer_capacity: float
    inner: float
    inner_capacity: float
    radiant: bool


CASES = {
    "case1": TwoMasses(0.0389591956, 0.0043679129, 1600848.94, 0.0005956934, 14836354.6282, False),
    "case2": TwoMasses(0.0389591956, 0.0043679129, 1600848.94, 0.0005956934, 14836354.6282, True),
    "case3": TwoMasses(0.039330865, 0.0040493516, 47900.0, 0.003237138, 7297100.0, False),
}


def two_masses(one: TwoMasses, days: int) -> tuple[Box, Hours, float]:
    """Return a room of VDI 6007 as a box, its hours, and how much (K) its thermometer is above the box's air at gain.

    Convection from both surfaces to the air and radiation between them are a triangle; as a star it has one node more,
    and that is the air of the box. What shines on a massless surface goes on to both of its ends.
    """
    outside, inside = 10.5, 75.5
    to_outer, to_inner, between = 1.0 / (2.7 * outside), 1.0 / (2.24 * inside), 1.0 / (5.0 * outside)
    around = to_outer + to_inner + between
    star_air, star_outer, star_inner = (
        to_outer * to_inner / around,
        to_outer * between / around,
        to_inner * between / around,
    )
    share_outer = outside / (outside + inside)
    outer_end = share_outer * star_outer / (star_outer + one.outer)
    inner_end = (1.0 - share_outer) * star_inner / (star_inner + one.inner)
    shell = faces(
        {"area": outside, "film": 25.0, "behind": one.behind, "inward": 1.0 / (one.outer + star_outer),
         "capacity": one.outer_capacity, "catches": outer_end}
    )  # fmt: skip
    whole = room(
        furnishing=one.inner_capacity, coupling=1.0 / (one.inner + star_inner), to_furnishing=inner_end,
        to_air=1.0 - outer_end - inner_end,
    )  # fmt: skip
    gain = tuple(1000.0 if 6 <= hour % 24 < 18 else 0.0 for hour in range(24 * days))
    named = {"radiant" if one.radiant else "gains": gain}
    box = Box(whole, shell, NO_PANES, NO_COLD, NO_HEATER)
    return box, hours(24 * days, outside=295.15, **named), 0.0 if one.radiant else 1000.0 * star_air


def demo(
    transmittance: float, absorptance: float, heater: Heater = NO_HEATER, air: float = 4e5, inner: float = 1.2e6
) -> Box:
    """Return the box of the sheet of checks: 168 x 80 x 78 in inside, six faces alike, no windows."""
    long, wide, high = (inch * 0.0254 for inch in (168.0, 80.0, 78.0))
    areas = (long * wide, long * wide, long * high, long * high, wide * high, wide * high)
    each = [
        {
            "area": area,
            "film": 20.0,
            "inward": area / (1.0 / transmittance - 1.0 / 20.0),
            "absorptance": absorptance if number else 0.0,
            "emittance": 0.9 if number else 0.0,
            "sky": (0.0, 1.0, 0.25, 0.25, 0.25, 0.25)[number],
            "direction": number - 1,
        }
        for number, area in enumerate(areas)
    ]
    whole = room(air=air, furnishing=inner, coupling=100.0, volume=long * wide * high)
    return Box(whole, faces(*each), NO_PANES, NO_COLD, heater)
