"""The workings of what a night was run through for: the hour a number is taken from, and the sum of its hours."""

from __future__ import annotations

from boxwright.disciplines.air.result import WetPlace
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, BEGINS, HOURS_OF_DAY
from boxwright.disciplines.heat.findings.night import taken
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.one_hour import coldest_hour, last_hour_of_water
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.room import NIGHT
from boxwright.disciplines.heat.telling import source_of
from boxwright.study.step import Told
from boxwright.units import HeaderUnits, show

NETWORK = "box_through_time: heat-sheet network, hourly; each hour: heat RIG --night"
FIRST = (BEGINS - ASLEEP_HOURS) % HOURS_OF_DAY
"""The clock as the first hour of the judged night begins."""
HOUR, GRAMS = 3600.0, 1e3


def through_the_night(one: HeldNight, result: Result) -> Told:
    """Return how the coldest hour inside came about: a run through three days, and that hour's heat in and out."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        lines = ["room at its coldest = lowest of the twelve hours of the third night, hour by hour"]
        lines += [f"  {name}: {amount}" for name, amount in taken(one, units)]
        if result.inside is not None:
            hour = coldest_hour(one, result.inside, result.moisture)
            came = (("heater", hour.heater), ("people", hour.people),
                    ("linings, furnishings and air give back", hour.given_back))  # fmt: skip
            left = (("through the planes", hour.planes), ("to the clear sky besides", hour.sky), ("through windows",
                    hour.windows), (f"with {show(hour.flow, 'flow', units)} of outdoor air", hour.air))  # fmt: skip
            lines.append(
                f"  it is so in the hour from {hour.clock} h, {_warm(hour.outside, units)} outside, most likely"
            )
            lines += [f"  came in: {_summed(came)}", f"  went out: {_summed(left)}"]
        lines.append(f"  = {_warm(one.coldest.best, units)}")
        places = (one.outdoors.of, *((one.warmth.of,) if one.warmth is not None else ()))
        return (*lines, f"  ({NETWORK}; {', '.join(places)} of the rig)")

    return Told(says)


def _summed(amounts: tuple[tuple[str, float], ...]) -> str:
    """Return amounts of heat that add up, to a tenth of a watt."""
    each = " + ".join(f"{name} {watt:.1f} W" for name, watt in amounts)
    return f"{each} = {sum(watt for _, watt in amounts):.1f} W"


def heat_of_the_hours(one: HeldNight) -> Told:
    """Return the heat of a night as the sum of its hours, and its mean."""

    heater = f"; {one.warmth.of} of the rig" if one.warmth is not None else ""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        hours = ", ".join(f"{watt:.0f}" for watt in one.night.heat)
        return (
            f"heat of the night = sum of its {ASLEEP_HOURS} hours, from {FIRST} h to {BEGINS} h",
            f"  each hour, W: {hours}",
            f"  in the mean {one.energy.best / (ASLEEP_HOURS * HOUR):.6g} W",
            f"  = {show(one.energy.best, 'energy', units)}",
            f"  ({NETWORK}{heater})",
        )

    return Told(says)


def water_of_the_hour(one: HeldNight, result: Result) -> tuple[Told, ...]:
    """Return the water of the last hour of a night: what it is taken from, what came in and what became of it."""
    if result.inside is None:
        return ()
    hour = last_hour_of_water(one, result.inside, result.moisture)

    def says(units: HeaderUnits) -> tuple[str, ...]:
        came, became = hour.given_off + hour.brought, hour.carried_off + hour.settled + hour.kept
        return (
            "water that came in = water that left, settled on cold places, and stayed in the air",
            f"  the last hour, from {hour.clock} h: given off {_grams(hour.given_off)} + brought by outdoor air"
            f" {_grams(hour.brought)} = {_grams(came)}",
            f"  carried off {_grams(hour.carried_off)} + settled {_grams(hour.settled)} + stayed {_grams(hour.kept)} ="
            f" {_grams(became)}",
            f"  humidity ratio: {hour.before:.6g} before, {hour.after:.6g} after",
            f"  = {hour.after:.6g} kg/kg",
            f"  ({NETWORK}; what takes up water as air does: {NIGHT['moist'].best:.3g} times the air,"
            f" {source_of('a_night', 'moist')})",
        )

    return (Told(says),)


def wet_by_the_hour(wet: WetPlace) -> Told:
    """Return the water of a cold place at the end of each hour, and how many of them it stood wet."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        each = ", ".join(f"{water * GRAMS:.4g}" for water in wet.water)
        return (
            "water = what settles and dries hour by hour through the night",
            f"  at the end of each hour from {FIRST} h, g: {each}",
            f"  most at once = {_grams(wet.most)} on {wet.cold.area.best:.4g} m2 = {wet.over * GRAMS:.4g} g/m2",
            f"  wet hours = those with more than {_grams(wet.least)} on it",
            f"  = {wet.hours} h",
            "  (box_through_time where the room's air reaches it, settled_in_wall behind a lining)",
        )

    return Told(says)


def _warm(kelvin: float, units: HeaderUnits) -> str:
    return show(kelvin, "temperature", units)


def _grams(kilogram: float) -> str:
    return f"{kilogram * GRAMS:.4g} g"
