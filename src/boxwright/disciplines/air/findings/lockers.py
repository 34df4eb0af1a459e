"""Rules of gas: what its cylinders stand in has vents low and high, and what leaks in the room can fall out of it."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.air.parts import PlannedFlame
from boxwright.disciplines.air.result import Locker, Result, Vent
from boxwright.disciplines.air.sourced import GAS_LOCKER, NEAR, OF_ITS_FLOOR, source_of
from boxwright.disciplines.air.telling import is_read, unread_at
from boxwright.finding import Finding, Kind, Use, listed
from boxwright.source import Rule
from boxwright.units import Band, HeaderUnits, show, show_band

USES: tuple[Use, ...] = ("sleep", "leave")


def gas_locker(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which locker of a gas cylinder has too little air of its own, or where nobody wrote how much it has.

    Asks: what a gas cylinder stands in has vents to the outside, half of them low and half high
    Limit: 2 per cent of its floor (one State of the United States, seen); elsewhere the same figure, as advice
    Source: indiana-gas-locker, practice
    Lever: larger vents of the locker, low and high
    """
    if result.use not in USES:
        return
    rule = next((one for one in result.rules if one.asks == GAS_LOCKER and is_read(one)), None)
    for locker in result.lockers:
        if locker.free is None or not locker.free.known:
            yield _unsaid(locker)
        elif locker.floor > 0.0 and locker.free.low < locker.floor * _share(rule):
            yield _too_little(locker, locker.free, rule, result.country, shown_in)


def _share(rule: Rule | None) -> float:
    return rule.limit if rule is not None and rule.limit is not None else OF_ITS_FLOOR


def _unsaid(locker: Locker) -> Finding:
    one = locker.planned
    return Finding(
        "air/gas-locker", one.of, "unknown",
        f"{one.holds} stands in {one.name}, and nobody wrote how much its vents to the outside pass",
        source=source_of("locker", "of its floor"), lever=f"{one.of}.free_area",
        act=f"Measure the vents of {one.name}, low and high, and write free_area:", minutes=5, uses=USES,
        because=(one.of,),
    )  # fmt: skip


def _too_little(locker: Locker, free: Band, rule: Rule | None, country: str, shown_in: HeaderUnits) -> Finding:
    """Return what a locker lacks; where only the worst of what is not known is too little, it is asked for."""
    one, limit = locker.planned, locker.floor * _share(rule)
    is_sure = free.best < limit
    kind: Kind = ("stop" if rule is not None else "advice") if is_sure else "unknown"
    says = (
        f"{one.holds} stands in {one.name}, which has {show_band(free, 'area', shown_in)} of vents over a floor of"
        f" {show(locker.floor, 'area', shown_in)}; {show(limit, 'area', shown_in)} is asked for, half low and half high"
        f"{'' if rule is not None else unread_at(country)}"
    )
    larger = f"Make the vents of {one.name} larger, to the outside only: one at its floor, one at its top"
    act = larger if is_sure else f"Measure the vents of {one.name}, low and high, mesh and louvres taken off"
    return Finding(
        "air/gas-locker", one.of, kind, says, free.low, limit, free.low - limit, "m2",
        rule.source if rule is not None else source_of("locker", "of its floor"), f"{one.of}.free_area",
        act=act, minutes=60 if is_sure else 5, could_stop=rule is not None,
        protects=rule is not None, uses=USES, because=(one.of,),
    )  # fmt: skip


def gas_drop(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where gas that leaks in the room cannot fall out of it: propane and butane are heavier than air.

    Asks: where something in the room runs on gas, does a hole that nobody can shut lie in the floor or just over it
    Limit: one such hole; how large it has to be was not read anywhere
    Source: gas-drop-recalled
    Lever: a vent through the floor, or at the foot of a wall
    """
    if result.use not in USES or not result.on_gas:
        return
    there = [one for one in result.vents if one.stays_open and one.there != "no" and _lies_low(one)]
    if any(one.there == "yes" and one.free.known and one.free.low > 0.0 for one in there):
        return
    names = listed([one.name for one in result.on_gas])
    verb = "runs" if len(result.on_gas) == 1 else "run"
    doubted = next(iter(there), None)
    if doubted is None:
        yield _no_drop(result.on_gas, f"{names} {verb} on gas, which is heavier than air")
        return
    one = doubted.planned
    unsure = "whether it stands nobody ticked" if doubted.there != "yes" else "nobody wrote how much it passes"
    yield Finding(
        "air/gas-drop", one.of, "unknown",
        f"{names} {verb} on gas, which is heavier than air and falls out by {one.name} alone: {unsure}",
        source=source_of("gas-drop", "over the floor"), lever=f"{one.of}.free_area",
        act=f"Look that {one.name} is open to the outside, measure it, mesh taken off, and write free_area:", minutes=5,
        could_stop=False, uses=USES, because=(one.of,),
    )  # fmt: skip


def _no_drop(on_gas: tuple[PlannedFlame, ...], says: str) -> Finding:
    return Finding(
        "air/gas-drop", on_gas[0].of, "advice",
        f"{says}, and no hole that stays open lies in the floor or just over it: what leaks lies on the floor until"
        " something lights it",
        source=source_of("gas-drop", "over the floor"), lever="openings",
        act="Ask the licensed gas fitter for a drop through the floor, away from the heater's exhaust and from where"
        " water is thrown up, with mesh, and write it under openings with wall: floor and free_area:", minutes=60,
        uses=USES, because=tuple(one.of for one in on_gas),
    )  # fmt: skip


def _lies_low(vent: Vent) -> bool:
    """Return whether a vent lies in the floor or just over it."""
    return vent.middle is not None and vent.middle - vent.height / 2.0 <= NEAR
