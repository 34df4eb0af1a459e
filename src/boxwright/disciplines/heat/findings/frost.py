"""The rule of frost: what freezes while the trailer is left alone with its heater off."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import FuelTank
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.telling import A_COLD_NIGHT, OWN_RULE, between, source_of, warm
from boxwright.finding import Finding, Use
from boxwright.units import Band, HeaderUnits

LEAVE: tuple[Use, ...] = ("leave",)
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
    if result.left is None:
        yield _asked(waters, shown_in)
        return
    outside, room = result.left.outdoors.coldest, result.left.coldest
    # Below the floor it is as cold as outside.
    colds = tuple((one, outside if one.high.known and one.high.best <= 0.0 else room) for one in waters)
    surely = tuple(pair for pair in colds if pair[1].best < FREEZES)
    perhaps = tuple(pair for pair in colds if pair[1].low < FREEZES)
    if surely or perhaps:
        yield _freezes(result.left, surely or perhaps, bool(surely), shown_in)


def _asked(waters: tuple[FuelTank, ...], shown_in: HeaderUnits) -> Finding:
    where = waters[0].of
    return Finding(
        "heat/frost", where, "unknown", "nobody wrote how cold it gets where the trailer is left, so nobody can say"
        f" whether water in {_named(waters)} freezes", source=OWN_RULE, lever="places", act="Write under places how"
        f" cold its worst night is, such as my field: {{coldest_design: {warm(A_COLD_NIGHT, shown_in)}}}, or drain the"
        " water", minutes=10,
        could_stop=False, uses=LEAVE, because=("places", where),
    )  # fmt: skip


def _freezes(
    night: HeldNight, colds: tuple[tuple[FuelTank, Band], ...], is_sure: bool, shown_in: HeaderUnits
) -> Finding:
    named, coldest = _named(tuple(one for one, _ in colds)), min(cold.low for _, cold in colds)
    where = colds[0][0].of
    says = f"left with its heater off at {night.outdoors.place}, {warm(night.outdoors.coldest.best, shown_in)} outside,"
    says += f" the room comes to {between(night.coldest, shown_in)}: water in {named}"
    says += f" {'freezes' if is_sure else 'may freeze'}, in pipes, pump and traps first"
    return Finding(
        "heat/frost", where, "limit" if is_sure else "unknown", says, coldest, FREEZES, coldest - FREEZES, "K",
        source_of("water", "freezes"), where, act=f"Drain {named} with pipes, pump and traps before frost",
        minutes=30, could_stop=False, uses=LEAVE, because=(where, night.outdoors.of),
    )  # fmt: skip


def _named(waters: tuple[FuelTank, ...]) -> str:
    names = [one.name for one in waters]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


__all__ = ["frost"]
