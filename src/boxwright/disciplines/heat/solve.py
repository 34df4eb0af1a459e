"""What heat works out of one slot: the shell as far as it is built, what warms it, and its nights with sleepers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import inf
from typing import NamedTuple

from boxwright.disciplines.heat.battery import Drained, banked, drained_by, hung_on
from boxwright.disciplines.heat.burner import runs_on, standing_heater, warmth_at_work, warmth_of
from boxwright.disciplines.heat.cold_hours import Inside, Outdoors
from boxwright.disciplines.heat.cooling import all_at_once, standing_cooler
from boxwright.disciplines.heat.electricity import load_of
from boxwright.disciplines.heat.feeds import Feed, feed_of, feed_of_cooler, unfed_of
from boxwright.disciplines.heat.hot import hot_days
from boxwright.disciplines.heat.hot_hours import given_by_waiting, hottest_left, hottest_of
from boxwright.disciplines.heat.night import HeldNight, coldest_at_work, night_of
from boxwright.disciplines.heat.parts import MONTHS, ClimateFacet, FuelTank, Month, Section
from boxwright.disciplines.heat.proved import Proof, proof_of
from boxwright.disciplines.heat.result import ColdWork, HotHours, Result, StandingCooler, StandingHeater
from boxwright.disciplines.heat.room import NIGHT
from boxwright.disciplines.heat.shell import Shell, shell_of
from boxwright.exchange import Airflow, Box, ElectricLoad, Layup, Moisture, Opening
from boxwright.records import dataclass
from boxwright.units import Band, exactly

__all__ = ["Offers", "Result", "offers", "outdoors_of", "solve"]

Stands = tuple[tuple[str, str], ...]
UNKNOWN = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class Offers:
    """What heat gives the others: nothing until power and water take it."""


def offers() -> Offers:
    """Return what heat gives the others."""
    return Offers()


def solve(
    own: Section,
    standing: Stands,
    layups: tuple[Layup, ...],
    openings: tuple[Opening, ...],
    airflow: Airflow,
    moisture: tuple[Moisture, ...],
    tanks: tuple[FuelTank, ...],
    box: Box,
    sleepers: int,
    use: str,
    feeding: Stands = (),
    charges: tuple[tuple[str, Band], ...] = (),
    waiting: tuple[tuple[str, bool], ...] = (),
) -> Result:
    """Return what heat has worked out in one slot.

    ``standing`` pairs the path of each heater that stands with "yes" or "perhaps", ``feeding`` that of each thing and
    wire that may feed one; ``sleepers`` are who is inside, ``charges`` how full batteries are at dusk, by their names;
    ``waiting`` who waits in it while it is left, and whether for certain.
    """
    there, strung, own = dict(standing), dict(feeding), banked(own, dict(feeding))
    room = _room_of(own, layups, openings, airflow, box)
    inside = room.inside
    heaters, coolers = _heaters(own, there, strung, tanks, box), _coolers(own, there, strung, openings)
    places, waters = outdoors_of(own), _with_water(tanks)
    batteries = hung_on(own, strung, _feeds(heaters), dict(charges))
    full = {of: one.charge for one in batteries for of in one.heaters if one.charge is not None}
    held = _nights(inside, places, heaters, moisture, full) if use == "sleep" and room.is_known else ()
    rests = HotRests(own, inside if room.is_known else None, moisture, use, len(waiting), strung, dict(charges))
    hot, coolers, drained = _hot_day(rests, coolers)
    return Result(
        of="trailer",
        use=use,
        sleepers=sleepers,
        shell=room.shell,
        volume=room.volume,
        heaters=heaters,
        coolers=coolers,
        openings=openings,
        held=held,
        placeless=not places,
        inside=inside,
        moisture=moisture,
        left=_left(inside, places, ()) if use == "leave" and room.is_known and waters else (),
        left_waiting=_left(inside, places, given_by_waiting(len(waiting))) if waiting and room.is_known else (),
        cold_work=_at_work(inside, places, heaters, moisture) if use == "work" and room.is_known else (),
        waters=waters,
        loads=_loads(held, heaters, room.volume),
        batteries=batteries,
        proof=room.proof,
        hot=hot,
        drained=drained,
        has_hot_day=bool(hot_days(own)),
        no_night=_other_than(own, {one.place for one in places}),
        no_hot_day=_other_than(own, {one.place for one in hot_days(own)}),
        waiting=waiting,
    )


class RoomAsBuilt(NamedTuple):
    """The room as it stands: its shell and its air (m3), and what a logged night proved of it.

    ``inside`` is what nights are run with, as it was proved where it was. ``is_known`` says that its measures are.
    """

    shell: Shell
    inside: Inside
    volume: Band
    is_known: bool
    proof: Proof | None


def _room_of(
    own: Section, layups: tuple[Layup, ...], openings: tuple[Opening, ...], airflow: Airflow, box: Box
) -> RoomAsBuilt:
    """Return the room as it is built, and as a logged night proved it."""
    shell = shell_of(layups, openings)
    floor, height = box.inside[0] * box.inside[1], box.inside[2]
    is_known = min(box.inside) > 0.0 and shell.by_air.best > 0.0
    unsaid = tuple(one.of for one in openings if one.has_unit and one.transmittance is None)
    built = Inside(shell, airflow, floor * height, height, floor, unsaid)
    proof = proof_of(own.proved, built) if is_known and own.proved else None
    inside = proof.inside if proof is not None and proof.inside is not None else built
    return RoomAsBuilt(shell, inside, exactly(floor * height) if is_known else UNKNOWN, is_known, proof)


def _heaters(
    own: Section, there: Mapping[str, str], strung: Mapping[str, str], tanks: tuple[FuelTank, ...], box: Box
) -> tuple[StandingHeater, ...]:
    """Return every heater that stands, with what feeds it and what it draws its fuel from."""
    fed = ((one, feed_of(one, own, strung, runs_on(one.heater.of))) for one in own.heaters if one.of in there)
    return tuple(standing_heater(one, there[one.of] == "yes", tanks, box, feed, own.tanks) for one, feed in fed)


def _feeds(heaters: tuple[StandingHeater, ...]) -> tuple[tuple[str, Feed], ...]:
    """Return what feeds each heater that takes electricity, by its path."""
    return tuple((one.planned.of, one.feed) for one in heaters if one.takes_electricity)


def _with_water(tanks: tuple[FuelTank, ...]) -> tuple[FuelTank, ...]:
    """Return the tanks that may hold water, which freezes."""
    return tuple(one for one in tanks if "water" in one.fluid.lower() and one.fill.high > 0.0)


def _coolers(
    own: Section, there: Mapping[str, str], strung: Mapping[str, str], openings: tuple[Opening, ...]
) -> tuple[StandingCooler, ...]:
    """Return every cooler that stands, with what feeds it and whether its warm side breathes outside."""
    found = tuple(
        standing_cooler(one, there[one.of] == "yes", openings, feed_of_cooler(one, own, strung))
        for one in own.coolers
        if one.of in there
    )
    return all_at_once(found)


def _nights(
    inside: Inside,
    places: tuple[Outdoors, ...],
    heaters: tuple[StandingHeater, ...],
    moisture: tuple[Moisture, ...],
    full: Mapping[str, Band],
) -> tuple[HeldNight, ...]:
    """Return a night for each place and each heater that may run with somebody asleep; with none, one without.

    ``full`` says how full the battery of a heater is at dusk, by the path of the heater.
    """
    runs = [one for one in heaters if one.vented != "in the room"]
    if not runs:
        return tuple(night_of(inside, place, None, moisture) for place in places)
    return tuple(
        night_of(inside, place, warmth_of(one, place.height, full.get(one.planned.of)), moisture)
        for place in places
        for one in runs
    )


def _loads(held: tuple[HeldNight, ...], heaters: tuple[StandingHeater, ...], volume: Band) -> tuple[ElectricLoad, ...]:
    """Return what each heater takes of electricity in each night."""
    by_path = {one.planned.of: one for one in heaters}
    found = (
        load_of(one, by_path[one.warmth.of], volume)
        for one in held
        if one.warmth is not None and one.warmth.of in by_path
    )
    return tuple(load for load in found if load is not None)


class HotRests(NamedTuple):
    """What the hot day of a slot rests on, its coolers aside.

    ``inside`` is None where the measures of the room are not known; ``waiting`` is how many wait in it while it is
    left, ``strung`` says of what may feed a cooler or a fan whether it stands, ``charges`` how full batteries are.
    """

    own: Section
    inside: Inside | None
    moisture: tuple[Moisture, ...]
    use: str
    waiting: int
    strung: Mapping[str, str]
    charges: Mapping[str, Band]


HotDay = tuple[HotHours | None, tuple[StandingCooler, ...], tuple[Drained, ...]]
"""The hot day, what cools in it, and the batteries that may not last it."""


def _hot_day(rests: HotRests, coolers: tuple[StandingCooler, ...]) -> HotDay:
    """Return the hot day of a slot.

    What hangs on a battery that may not last it may stop by noon: it cools nothing for sure, and the day is run again
    without counting on it. A fan to which no wire surely stands may not run.
    """
    inside = rests.inside
    unfed = unfed_of(rests.own, inside.airflow.fans, rests.strung) if inside is not None else ()
    if inside is not None and unfed:
        slower = replace(inside.airflow, fan=replace(inside.airflow.fan, low=0.0))
        rests = rests._replace(inside=replace(inside, airflow=slower))
    hot, coolers, drained = _cooled_day(rests, coolers)
    return (replace(hot, unfed=unfed) if hot is not None else None), coolers, drained


def _cooled_day(rests: HotRests, coolers: tuple[StandingCooler, ...]) -> HotDay:
    hot = _hottest(rests, coolers)
    if hot is None or hot.run.way != "cooled":
        return hot, coolers, ()
    on = tuple((one.planned, one.feed) for one in coolers if one.works != "no")
    drained = drained_by(rests.own, rests.strung, on, rests.charges, hot.run.runs_for)
    emptied = {of for one in drained for of in one.coolers}
    if not emptied:
        return hot, coolers, ()
    coolers = tuple(replace(one, lasts="perhaps") if one.planned.of in emptied else one for one in coolers)
    return _hottest(rests, coolers), coolers, drained


def _hottest(rests: HotRests, coolers: tuple[StandingCooler, ...]) -> HotHours | None:
    """Return the hottest day of those in it; of those who wait in it where it is left."""
    if rests.inside is None:
        return None
    if rests.waiting:
        return hottest_left(rests.own, rests.inside, rests.waiting)
    return hottest_of(rests.own, rests.inside, rests.moisture, coolers, rests.use)


def _left(inside: Inside, places: tuple[Outdoors, ...], there: tuple[Moisture, ...]) -> tuple[HeldNight, ...]:
    """Return the coldest night of each place with nobody in but who is ``there``, and the heater off."""
    return tuple(night_of(inside, place, None, there) for place in places)


def _at_work(
    inside: Inside, places: tuple[Outdoors, ...], heaters: tuple[StandingHeater, ...], moisture: tuple[Moisture, ...]
) -> tuple[ColdWork, ...]:
    """Return the coldest day of work of each place by its best heater, and without one where none may run."""
    if not any(one.of == "people" for one in moisture):
        return ()
    runs = [one for one in heaters if one.vented != "in the room"]
    found = []
    for place in places:
        each = [
            ColdWork(place, one.planned.of, one.planned.name, coldest_at_work(inside, place, warmth, moisture))
            for one in runs
            if (warmth := warmth_at_work(one, place.height)).highest.known
        ]
        bare = ColdWork(place, "", "", coldest_at_work(inside, place, None, moisture))
        found.append(max(each, key=lambda one: (one.cold.low, one.cold.best), default=bare))
    return tuple(found)


def _other_than(own: Section, told: set[str]) -> tuple[str, ...]:
    return tuple(name for name, _ in own.climates if name not in told)


def outdoors_of(own: Section) -> tuple[Outdoors, ...]:
    """Return the coldest night of every place that has one; its swing and wind by the coldest month written."""
    found = []
    for name, climate in own.climates:
        coldest = climate.coldest_design
        if coldest is None or not coldest.known:
            continue
        month = _coldest_month(climate)
        wind = month.wind if month is not None and month.wind is not None and month.wind.known else NIGHT["wind"]
        found.append(Outdoors(f"places[{name}]", name, coldest, _swing(month), wind, climate.height))
    return tuple(found)


def _coldest_month(climate: ClimateFacet) -> Month | None:
    written = [one for name in MONTHS if (one := getattr(climate, name)) is not None]
    with_low = [one for one in written if one.low is not None and one.low.known]
    return min(with_low, key=lambda one: one.low.best, default=None)


def _swing(month: Month | None) -> Band:
    """Return how much warmer the day gets than the night; of the coldest month where both are written."""
    if month is None or month.low is None or month.high is None or not month.high.known:
        return NIGHT["swing"]
    return exactly(max(month.high.best - month.low.best, 0.0))
