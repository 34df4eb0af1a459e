"""The workings of what is told of a heater besides its warmth: electricity, noise, distances, and the air up high."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat import method
from boxwright.disciplines.heat.burner import air_share
from boxwright.disciplines.heat.electricity import CYCLING, TAKES, running, starting
from boxwright.disciplines.heat.findings.burner import corners_of
from boxwright.disciplines.heat.findings.fumes import gap_between
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.sound import QUIET, level_of
from boxwright.disciplines.heat.telling import above_sea, source_of
from boxwright.exchange import ElectricLoad, Vector
from boxwright.study.step import Step, Told
from boxwright.units import HeaderUnits, show

Steps = tuple[Step | Told, ...]
Named = Iterator[tuple[str, Steps]]
HOUR = 3600.0
AXES = ("along", "across", "up")


def of_heaters(result: Result) -> dict[str, Steps]:
    """Return the steps behind what is told of each heater, and of each place for it."""
    found: dict[str, Steps] = {}
    loads = {(one.of, one.when): one for one in result.loads}
    for heater in result.heaters:
        name, of = heater.planned.name, heater.planned.of
        found |= {f"{what} {name}": steps for what, steps in (*_noise(heater), *_distances(heater, result))}
        for one in result.held:
            if one.warmth is None or one.warmth.of != of:
                continue
            load = loads.get((of, one.outdoors.place))
            if load is not None:
                found[f"electricity {one.outdoors.place} {name}"] = _electricity(one, heater, load, result)
            if heater.runs == "burns":
                found |= dict(_up_high(one))
    return found


def _electricity(one: HeldNight, heater: StandingHeater, load: ElectricLoad, result: Result) -> Steps:
    """Return what a heater takes of electricity in a night, and how often it starts where it goes on and off."""
    if heater.runs == "electric":
        return (_all_heat(one),)
    warmth, steps = one.warmth, list[Step | Told]()
    if warmth is not None and one.banded[CYCLING] and warmth.lowest.best > 0.0:
        given = (
            ("capacity", TAKES["fast heat"].best * result.volume.best),
            ("band", TAKES["switching"].best),
            ("lowest", warmth.lowest.best),
            ("needed", warmth.lowest.best / 2.0),
        )
        steps.append(_starts(one, load, dict(given)))
    return (*steps, _taken(one, heater, load))


def _all_heat(one: HeldNight) -> Told:
    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (
            "electricity = heat: an electric heater takes what it gives",
            f"  = {show(one.energy.best, 'energy', units)}",
            "  (sum of the hours: heat RIG --night)",
        )

    return Told(says)


def _starts(one: HeldNight, load: ElectricLoad, given: dict[str, float]) -> Told:
    """Return how often it starts: at half of its lowest heat it goes on and off most often."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        round_trip = method.cycling(**given)
        lasts = round_trip.on + round_trip.off
        return (
            "on = capacity * band / (lowest - needed); off = capacity * band / needed",
            f"  capacity = {given['capacity']:.6g} J/K, what follows the air at once; band ="
            f" {show(given['band'], 'temperature difference', units)} between off and on",
            f"  lowest = {show(given['lowest'], 'power', units)}; needed = {show(given['needed'], 'power', units)},"
            " half of it: there it starts most often",
            f"  on {round_trip.on:.4g} s + off {round_trip.off:.4g} s = {lasts:.4g} s",
            f"  starts = 1 + {one.banded[CYCLING]} h that it goes on and off * {HOUR / lasts:.4g} an hour"
            f" = {load.starts.best:.4g}",
            f"  (cycling: heat-sheet cycling; {source_of('takes', 'fast heat')})",
        )

    return Told(says)


def _taken(one: HeldNight, heater: StandingHeater, load: ElectricLoad) -> Told:
    """Return the energy of a night: fan and pump while it runs, the pin while it glows."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        facet = heater.planned.heater
        volts = heater.feed.volts
        while_on, at_start = running(facet, volts).best, starting(facet, volts).best
        hours = sum(one.banded[CYCLING:])
        glows = min(load.starts.best * TAKES["start"].best, hours * HOUR)
        sources = [
            f"{what}: {'as written, at ' + show(volts.best, 'voltage', units) if is_written else kept}"
            for what, is_written, kept in (
                ("running", facet.draw is not None and facet.draw.known, source_of("takes", "running")),
                ("starting", facet.start is not None and facet.start.known, source_of("takes", "starting")),
            )
        ]
        return (
            "electricity = running * (hours on - glowing) + starting * glowing",
            f"  hours on = {hours} h; glowing = {load.starts.best:.4g} starts * {TAKES['start'].best:.4g} s"
            f" = {glows:.4g} s",
            f"  {while_on:.4g} W * ({hours * HOUR:.6g} s - {glows:.4g} s) + {at_start:.4g} W * {glows:.4g} s"
            f" = {load.joule.best:.6g} J",
            f"  = {show(load.joule.best, 'energy', units)}",
            f"  (sum; {'; '.join(sources)}; {heater.planned.of} of the rig)",
        )

    return Told(says)


def _noise(heater: StandingHeater) -> Named:
    """Give how loud it is at the pillow and at the neighbour's."""
    noise = heater.planned.heater.noise
    level = level_of(noise.level) if noise is not None else None
    if noise is None or level is None or noise.at is None or not noise.at.known or noise.at.best <= 0.0:
        return
    for row, distance in (("at the pillow", noise.pillow), ("at the neighbour's", noise.neighbour)):
        if distance is not None and distance.known and distance.best > 0.0:
            given = (("level", level.best), ("measured_at", noise.at.best), ("distance", distance.best))
            yield f"heard-{row.replace(' ', '-')}", (Step(method.heard_at, given, ""), _beside(row))


def _beside(row: str) -> Told:
    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (f"in dB; {QUIET[row]:.0f} dB leave people asleep {row}", f"  ({source_of('quiet', row)})")

    return Told(says)


def _distances(heater: StandingHeater, result: Result) -> Named:
    """Give how far the exhaust may end from each opening and from the burner's own air."""
    if heater.ends_low is None or heater.ends_high is None:
        return
    ends = (heater.ends_low, heater.ends_high)
    for opening in result.openings:
        corners = corners_of(opening)
        if corners is not None:
            yield f"exhaust-to {opening.name}", (_apart(ends, corners),)
    if heater.inlet_low is not None and heater.inlet_high is not None:
        yield "exhaust-to own-air", (_apart(ends, (heater.inlet_low, heater.inlet_high)),)


def _apart(first: tuple[Vector, Vector], second: tuple[Vector, Vector]) -> Told:
    """Return how far two boxes are apart: the exhaust may end anywhere in the one."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        gap = gap_between(first, second)
        lines = ["distance = sqrt(along**2 + across**2 + up**2), from box to box: at least, and at most"]
        for axis, low, high, other_low, other_high in zip(AXES, *first, *second, strict=True):
            near = max(other_low - high, low - other_high, 0.0)
            far = max(other_high - low, high - other_low)
            spans = [f"{show(a, 'length', units)} to {show(b, 'length', units)}" for a, b in ((low, high), (
                other_low, other_high))]  # fmt: skip
            lines.append(
                f"  {axis}: exhaust {spans[0]}, the other {spans[1]}: {show(near, 'length', units)} to"
                f" {show(far, 'length', units)}"
            )
        lines.append(f"  = {show(gap.low, 'length', units)} at least, {show(gap.high, 'length', units)} at most")
        return (*lines, "  (geometry; places as the rig writes them)")

    return Told(says)


def _up_high(one: HeldNight) -> Named:
    """Give the air a burner gets at the height of a place."""
    height, place = one.outdoors.height, one.outdoors.place
    share = air_share(height)
    if height is None or share is None:
        return
    pressure = Step(method.pressure_at, (("height", height.best),), "pressure")
    thin = Step(method.thin_air, (("pressure", pressure.result()),), "ratio")

    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (
            f"{place} lies {above_sea(height.best, units)} above the sea; a burner that takes less fuel for it gives as"
            " much less, one that does not soots",
            "  (the ends of both count where nobody wrote which)",
        )

    yield f"air-for-a-burner {place}", (pressure, thin, Told(says))
