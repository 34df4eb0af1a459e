"""What the cold does in a trailer that is left with its heater off: to who waits in it, and to its water."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from boxwright.disciplines.heat.hot_hours import LEFT_TOO_COLD
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import FuelTank
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.telling import (
    A_COLD_NIGHT,
    LEAVE,
    OWN_RULE,
    asked_of_place,
    between,
    source_of,
    waits,
    warm,
)
from boxwright.finding import Finding, listed
from boxwright.units import Band, HeaderUnits

FREEZES = columns("water")["freezes"][0]
"""K"""


def frost(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which water freezes while the trailer is left with its heater off.

    Asks: how cold the coldest night of the places leaves the room, and what hangs below its floor
    Limit: 0 C, where water freezes; a tank takes longer than its pipes, pump and trap
    Source: night-practice
    Lever: drain it, or leave it where no frost comes
    """
    waters = tuple(sorted(result.waters, key=lambda one: one.of)) if result.use == "leave" else ()
    if not waters:
        return
    if result.placeless:
        yield _asked(waters, shown_in)
        return
    for name in result.no_night:
        says = f"nobody wrote how cold it gets at {name}, so nobody can say whether water in {_named(waters)} freezes"
        act = f"Write how cold its worst night is, such as coldest_design: {warm(A_COLD_NIGHT, shown_in)}"
        yield asked_of_place("heat/frost", f"places[{name}]", f"{says} there", act, LEAVE)
    if not result.left:
        yield _room_unsaid(waters)
        return
    nights = [(night, _by_water(night, waters)) for night in result.left]
    # Where it surely freezes, a second place where it may get colder makes it no better.
    sure = [(night, surely) for night, colds in nights if (surely := _below(colds, "best"))]
    perhaps = [(night, may) for night, colds in nights if (may := _below(colds, "low"))]
    if sure or perhaps:
        night, colds = min(sure or perhaps, key=lambda one: min(cold.low for _, cold in one[1]))
        yield _freezes(night, colds, bool(sure), shown_in)


def _by_water(night: HeldNight, waters: tuple[FuelTank, ...]) -> tuple[tuple[FuelTank, Band], ...]:
    """Return how cold it gets about each water: outside the shell as outside, and perhaps so where nobody knows."""
    outside, room = night.outdoors.coldest, night.coldest
    doubtful = Band(room.best, min(room.low, outside.low), room.high, spread="interval")
    about = {"outside": outside, "in the room": room, "unknown": doubtful}
    return tuple((one, about[one.where]) for one in waters)


def _below(colds: tuple[tuple[FuelTank, Band], ...], end: Literal["best", "low"]) -> tuple[tuple[FuelTank, Band], ...]:
    return tuple(pair for pair in colds if getattr(pair[1], end) < FREEZES)


def _asked(waters: tuple[FuelTank, ...], shown_in: HeaderUnits) -> Finding:
    where = waters[0].of
    return Finding(
        "heat/frost", where, "unknown", "nobody wrote how cold it gets where the trailer is left, so nobody can say"
        f" whether water in {_named(waters)} freezes", source=OWN_RULE, lever="places", act="Write under places how"
        f" cold its worst night is, such as my field: {{coldest_design: {warm(A_COLD_NIGHT, shown_in)}}}, or drain the"
        " water", minutes=10,
        could_stop=False, uses=LEAVE, because=("places", where),
    )  # fmt: skip


def _room_unsaid(waters: tuple[FuelTank, ...]) -> Finding:
    where = waters[0].of
    return Finding(
        "heat/frost", where, "unknown", f"whether water in {_named(waters)} freezes cannot be said: length, width and"
        " height of the body are not all written", source=OWN_RULE, lever="trailer.body", act="Measure the body"
        " inside, stud face to stud face and deck to bows, or drain the water", minutes=10, could_stop=False,
        uses=LEAVE, because=("trailer.body", where),
    )  # fmt: skip


def _freezes(
    night: HeldNight, colds: tuple[tuple[FuelTank, Band], ...], is_sure: bool, shown_in: HeaderUnits
) -> Finding:
    named, coldest = _named(tuple(one for one, _ in colds)), min(cold.low for _, cold in colds)
    where = colds[0][0].of
    says = f"left with its heater off at {night.outdoors.place}, {between(night.outdoors.coldest, shown_in)} outside"
    if any(one.where != "outside" for one, _ in colds):
        says += f", the room comes to {between(night.coldest, shown_in)}"
    says += f": water in {named} {'freezes' if is_sure else 'may freeze'}, in pipes, pump and traps first"
    return Finding(
        "heat/frost", where, "limit" if is_sure else "unknown", says, coldest, FREEZES, coldest - FREEZES, "K",
        source_of("water", "freezes"), where, act=f"Drain {named} with pipes, pump and traps before frost",
        minutes=30, could_stop=False, uses=LEAVE, because=(where, night.outdoors.of),
    )  # fmt: skip


def _named(waters: tuple[FuelTank, ...]) -> str:
    return listed([one.name for one in waters])


def left_in_cold(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where it gets too cold for whoever waits in a trailer that is left, and cannot get out.

    Asks: the coldest hour of the coldest night that is written, its heater off
    Limit: 10 C, of dogs and cats in indoor housing, on the safe side from the first hour on; asked where it may be
    Source: animals-recalled; three such days through the room, hour by hour
    Lever: waits of who waits; a milder place
    """
    cold = [one for one in result.left_waiting if one.coldest.low < LEFT_TOO_COLD]
    if not cold or result.use != "leave":
        return
    # Where it surely is too cold goes before where it may get colder.
    night = min(cold, key=lambda one: (one.coldest.best >= LEFT_TOO_COLD, one.coldest.low))
    names, is_written = listed(name for name, _ in result.waiting), any(sure for _, sure in result.waiting)
    where = tuple(f"people[{name}]" for name, _ in result.waiting)
    act = f"Take {names} with you when it is cold, or let somebody stay who sees to the heater; one that runs alone may"
    act += " stop unseen"
    act = act if is_written else f"Write waits: yes or waits: no of {names}; {act[0].lower()}{act[1:]}"
    outside = between(night.outdoors.coldest, shown_in)
    says = f"{waits(result.waiting)}: on the coldest night at {night.outdoors.place}, {outside} outside, the room"
    says += f" comes to {between(night.coldest, shown_in)} with its heater off; below"
    says += f" {warm(LEFT_TOO_COLD, shown_in)} nobody who cannot get out may be left in it"
    yield Finding(
        "heat/left-in-cold", where[0], "limit" if is_written and night.coldest.best < LEFT_TOO_COLD else "unknown",
        says, night.coldest.low, LEFT_TOO_COLD, night.coldest.low - LEFT_TOO_COLD, "K",
        source_of("left_waiting", "no colder"), where[0], act=act, minutes=5, could_stop=False, uses=LEAVE,
        because=(*where, night.outdoors.of),
    )  # fmt: skip


__all__ = ["frost", "left_in_cold"]
