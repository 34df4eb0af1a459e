"""Rules of what burns: exhaust and air of a heater, room heaters without one, the way of the fuel.

The maker's instructions, the installer and the law of the place come first; a missing fact on where the fumes go is a
no while somebody sleeps.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, inf

from boxwright.disciplines.heat.burner import fuel_named
from boxwright.disciplines.heat.findings.night import MARGINS
from boxwright.disciplines.heat.method import burnt
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import LEAVE, OWN_RULE, SLEEP, WORK, source_of
from boxwright.exchange import Opening, Vector
from boxwright.finding import Finding
from boxwright.units import HeaderUnits, show

NEAR_EXHAUST = MARGINS["near exhaust"]
CARBON = {"diesel": (0.862, 0.138), "petrol": (0.855, 0.145), "propane": (0.817, 0.183), "kerosene": (0.86, 0.14)}
"""Shares of carbon and hydrogen by mass; from memory, of propane by its formula."""
ENERGY_PER_KILOGRAM = {"diesel": 42.6e6, "petrol": 43.4e6, "propane": 46.4e6, "kerosene": 43.0e6}
A_KILOWATT_HOUR = 3.6e6


def unvented(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Refuse a heater that burns in the room people sleep in, and limit one where they work, with what it makes.

    Asks: where the exhaust of a heater ends
    Limit: not in the room
    Source: own-rule; water and fumes by carbon and hydrogen of the fuel
    Lever: another heater
    """
    for one in result.heaters if result.use in ("sleep", "work") else ():
        if one.runs == "electric" or one.vented != "in the room":
            continue
        name, sleeps = one.planned.name, result.use == "sleep"
        says = f"{name} burns into the room people {result.use} in{_fumes(one, shown_in)}"
        while_shut = "and cold while anybody sleeps" if sleeps else "unless a door stands open and an alarm listens"
        yield Finding(
            "heat/unvented", one.planned.of, "stop" if sleeps else "limit", says, source=OWN_RULE,
            lever=one.planned.of, act=f"Leave {name} off {while_shut}; heat with what takes its fumes outside",
            minutes=1, protects=True, uses=SLEEP if sleeps else WORK, because=(one.planned.of,),
        )  # fmt: skip


def _fumes(one: StandingHeater, shown_in: HeaderUnits) -> str:
    fuel = fuel_named(one.planned.heater.of)
    if fuel not in CARBON:
        return ": its carbon monoxide kills"
    made = burnt(*CARBON[fuel])
    burns = A_KILOWATT_HOUR / ENERGY_PER_KILOGRAM[fuel]
    return (
        f": each kilowatt hour of {fuel} makes {show(made.water * burns, 'g', shown_in)} of water and"
        f" {show(made.carbon_dioxide * burns, 'g', shown_in)} of carbon dioxide, and carbon monoxide where air is"
        " short"
    )


AN_EXHAUST = 0.508
"""m: an example of what is written of an exhaust."""


def exhaust(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask where the exhaust of a heater that burns ends, while somebody sleeps or works inside.

    Asks: the side its exhaust leaves by
    Limit: outside
    Source: own-rule; the maker's instructions come first
    Lever: exhaust of the heater
    """
    for one in _burning(result):
        if one.vented == "unknown":
            yield _asked(
                "heat/exhaust", one, "where its exhaust ends", "Look where the exhaust ends, and write"
                f" exhaust: {{out: left, below: floor, length: {show(AN_EXHAUST, 'length', shown_in)}}}",
            )  # fmt: skip


def fuel_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what a heater burns or runs on, where somebody sleeps or works by it, or leaves it.

    Asks: the fuel of a heater, by a word that is known
    Limit: none; until it is known the heater counts as one that burns
    Source: own-rule
    Lever: of the heater
    """
    for one in result.heaters if result.use in ("sleep", "leave") else ():
        if one.runs != "unknown":
            continue
        name, word = one.planned.name, one.planned.heater.of.strip()
        unread = f'what {name} runs on is written as "{word}", which is no word that is known here'
        says = unread if word else f"nobody wrote what {name} burns or runs on"
        says += "; it counts as one that burns"
        says += ", and its fuel may leak into the room while nobody is there" if result.use == "leave" else ""
        yield Finding(
            "heat/fuel-not-known", one.planned.of, "unknown", says, source=OWN_RULE, lever=one.planned.of,
            act=f"Read on the plate of {name} what it burns, and write of: diesel, petrol, propane, kerosene, alcohol,"
            " wood, pellets, coal or electric", minutes=5, uses=SLEEP if result.use == "sleep" else LEAVE,
            because=(one.planned.of,),
        )  # fmt: skip


def wrong_fuel(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Refuse a heater that draws another fuel from its tank than it burns, where somebody sleeps or works by it.

    Asks: what is in the tank a heater draws from
    Limit: the fuel the heater burns
    Source: own-rule; the plate of the heater comes first
    Lever: path of the heater
    """
    for one in result.heaters if result.use in ("sleep", "work") else ():
        burns = fuel_named(one.planned.heater.of)
        if one.tank is None or not burns or fuel_named(one.tank.fluid) == burns:
            continue
        name, tank, holds = one.planned.name, one.tank, one.tank.fluid.strip()
        is_other = fuel_named(tank.fluid) != ""
        yield Finding(
            "heat/wrong-fuel", one.planned.of, "stop" if is_other else "unknown",
            f"{name} burns {burns} and draws from {tank.name}, which holds {holds}" if holds
            else f"{name} burns {burns}, and nobody wrote what {tank.name} holds, which it draws from",
            source=OWN_RULE, lever=f"{one.planned.of}.heater.path", act=f"Look at the plate of {name} and into"
            f" {tank.name}, and write in both what is so; let nobody light it before", minutes=10, protects=True,
            uses=SLEEP if result.use == "sleep" else WORK, because=(one.planned.of, tank.of),
        )  # fmt: skip


def combustion_air(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask where the air a heater burns comes from; it must not be the room's.

    Asks: the side its combustion air comes in by
    Limit: outside
    Source: own-rule; the maker's instructions come first
    Lever: intake of the heater
    """
    for one in _burning(result):
        if one.vented != "out":
            continue
        if one.takes_air == "unknown":
            yield _asked(
                "heat/combustion-air", one, "where the air it burns comes from", "Look where its air comes in, and"
                " write intake: {out: below floor}",
            )  # fmt: skip
        elif one.takes_air == "in the room":
            name = one.planned.name
            yield Finding(
                "heat/combustion-air", one.planned.of, "stop", f"{name} burns the air of the room people are in",
                source=OWN_RULE, lever=one.planned.of, act=f"Lead a pipe from outside to the air inlet of {name}, away"
                " from its exhaust", minutes=60, protects=True, uses=SLEEP, because=(one.planned.of,),
            )  # fmt: skip


def _burning(result: Result) -> Iterator[StandingHeater]:
    """Give the heaters that burn, or may burn, where somebody sleeps."""
    for one in result.heaters if result.use == "sleep" else ():
        if one.runs != "electric":
            yield one


def _asked(code: str, one: StandingHeater, what: str, act: str) -> Finding:
    burns = "burns" if one.runs == "burns" else "may burn (nobody wrote what it runs on)"
    return Finding(
        code, one.planned.of, "unknown", f"{one.planned.name} {burns} with somebody inside, and nobody wrote {what}",
        source=OWN_RULE, lever=one.planned.of, act=act, minutes=5, protects=True, uses=SLEEP, because=(one.planned.of,),
    )  # fmt: skip


def exhaust_near_opening(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which opening the end of the exhaust is near to, as near as its pipe may end.

    Asks: the gap between the end of the exhaust and each window, door, vent or hole
    Limit: 0.5 m (common practice: the maker's manual and the installer rule)
    Source: heater-practice
    Lever: the end of the exhaust
    """
    for one in _burning(result):
        if one.ends_low is None or one.ends_high is None:
            continue
        near = [(gap, opening) for opening in result.openings if (gap := _gap(one, opening)) is not None]
        if not near:
            continue
        gap, opening = min(near, key=lambda pair: pair[0])
        if gap >= NEAR_EXHAUST:
            continue
        name = one.planned.name
        says = f"the exhaust of {name} may end {show(max(gap, 0.0), 'length', shown_in)} from {opening.name}; makers"
        says += f" ask for {show(NEAR_EXHAUST, 'length', shown_in)} and more to anything that opens"
        is_sure = _is_sure(one, opening)
        yield Finding(
            "heat/exhaust-near-opening", one.planned.of, "stop" if is_sure else "unknown", says, gap, NEAR_EXHAUST,
            gap - NEAR_EXHAUST, "m", source_of("margins", "near exhaust"), one.planned.of,
            act=f"Measure from the end of the exhaust to {opening.name}, write x: and z: of the exhaust, and lead it"
            " away from all that opens", minutes=15, protects=True, uses=SLEEP, because=(one.planned.of, opening.of),
        )  # fmt: skip


def corners_of(opening: Opening) -> tuple[Vector, Vector] | None:
    """Return the low and the high corner of a hole; None where its place is not known."""
    if opening.low is None or opening.high is None:
        return None
    pairs = list(zip(opening.low, opening.high, strict=True))
    low, high = tuple(min(pair) for pair in pairs), tuple(max(pair) for pair in pairs)
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _gap(one: StandingHeater, opening: Opening) -> float | None:
    """Return how near the end of the exhaust may come to an opening; None where its place is not known.

    The heater's own plate in the floor is no opening: its pipes go through it.
    """
    corners = corners_of(opening)
    if corners is None or one.ends_low is None or one.ends_high is None or opening.wall == "floor":
        return None
    gaps = [
        max(low - end_high, end_low - high, 0.0)
        for low, high, end_low, end_high in zip(*corners, one.ends_low, one.ends_high, strict=True)
    ]
    return hypot(*gaps) if all(gap < inf for gap in gaps) else None


def _is_sure(one: StandingHeater, opening: Opening) -> bool:
    """Return whether the exhaust ends that near wherever in its box it ends."""
    corners = corners_of(opening)
    if corners is None or one.ends_low is None or one.ends_high is None or not opening.is_certain:
        return False
    farthest = [
        max(low - end_low, end_high - high, 0.0)
        for low, high, end_low, end_high in zip(*corners, one.ends_low, one.ends_high, strict=True)
    ]
    return hypot(*farthest) < NEAR_EXHAUST


__all__ = [
    "combustion_air",
    "corners_of",
    "exhaust",
    "exhaust_near_opening",
    "fuel_not_known",
    "unvented",
    "wrong_fuel",
]
