"""Rule of what gas cylinders stand in: vents of its own, low and high."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.air.result import Locker, Result
from boxwright.disciplines.air.sourced import GAS_LOCKER, OF_ITS_FLOOR, source_of
from boxwright.disciplines.air.telling import is_read, unread_at
from boxwright.finding import Finding, Kind, Use
from boxwright.source import Rule
from boxwright.units import HeaderUnits, show

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
        elif locker.floor > 0.0 and locker.free.best < locker.floor * _share(rule):
            yield _too_little(locker, locker.free.best, rule, result.country, shown_in)


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


def _too_little(locker: Locker, free: float, rule: Rule | None, country: str, shown_in: HeaderUnits) -> Finding:
    one, limit = locker.planned, locker.floor * _share(rule)
    kind: Kind = "stop" if rule is not None else "advice"
    says = (
        f"{one.holds} stands in {one.name}, which has {show(free, 'area', shown_in)} of vents over a floor of"
        f" {show(locker.floor, 'area', shown_in)}; {show(limit, 'area', shown_in)} is asked for, half low and half high"
        f"{'' if rule is not None else unread_at(country)}"
    )
    return Finding(
        "air/gas-locker", one.of, kind, says, free, limit, free - limit, "m2",
        rule.source if rule is not None else source_of("locker", "of its floor"), f"{one.of}.free_area",
        act=f"Make the vents of {one.name} larger, to the outside only: one at its floor, one at its top", minutes=60,
        protects=rule is not None, uses=USES, because=(one.of,),
    )  # fmt: skip
