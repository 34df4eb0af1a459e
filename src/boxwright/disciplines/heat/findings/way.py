"""Rules of the way of a liquid fuel: what runs into the room when opened, what a hand reaches, pump and line.

The maker's instructions, the installer and the law of the place come first.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf, isfinite
from typing import Literal

from boxwright.disciplines.heat.fuel_piece import is_in_doubt, shuts_off
from boxwright.disciplines.heat.fuel_way import (
    Piece,
    has_own_tank,
    is_gas,
    is_liquid,
    is_told_valveless,
    level_or_deck,
    side_of_tank,
    way_of,
)
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, source_of
from boxwright.finding import Finding, Kind
from boxwright.units import Band, HeaderUnits, show

MOST_LIFT, MOST_PUSH = (columns("pump_lift")[name][0] for name in ("up to the pump", "on to the burner"))
NARROWEST, WIDEST = columns("line_bore")["of its line"]


Holds = Literal["all", "some", "none"]
"""What an open question may still come to: a no, a limit, or something to put right."""


def fuel_drains_in(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what of the way of the fuel runs out into the room when it is opened, or ask where it lies.

    Asks: where tank, filter, pump and joints lie, and whether they are lower than the fuel in a full tank
    Limit: none in the room that is lower; with a valve before it what is in the line still runs out; from the pump on
        none at all, for what is higher leaks while it runs; no tank in it; of a gas where its bottle stands
    Source: own-rule
    Lever: path of the heater
    """
    yield from _of_a_gas(result)
    for one in _liquid(result):
        name, pieces = one.planned.name, way_of(one, shown_in)
        unread = [piece.written for piece in pieces if piece.kind == "other" and is_in_doubt(piece.written)]
        if unread or not (pieces or has_own_tank(one)):
            told = f"in the way of the fuel of {name} stands {unread[0]}" if unread else f"nobody wrote that of {name}"
            says = f"the way of the fuel is not known: {told}, so nobody can say what runs out where it is opened"
            act = "Follow the line from tank to burner, and write path: [tank, valve at tank, filter below floor, pump"
            act += " below floor at 30 deg, line 2 mm bore, heater]"
            yield _said("heat/fuel-drains-in", one, "unknown", says, act, 15, holds="all")
            continue
        pump = next((place for place, piece in enumerate(pieces) if piece.kind == "pump"), len(pieces))
        # Before the pump what is higher than the fuel draws air in; from the pump on fuel is pushed out of a leak.
        opened = [one for place, one in enumerate(pieces) if one.is_opened and (one.runs is not False or place >= pump)]
        inside = [piece for piece in opened if piece.where == "in the room"]
        found = [_runs_in(one, piece) for piece in inside]
        found += [_runs_perhaps(one, piece) for piece in opened if piece.where == "unknown"]
        found += _of_the_tank(one)
        if found:
            yield min(found, key=_weight)


def _of_a_gas(result: Result) -> Iterator[Finding]:
    """Yield what is asked of a heater that burns gas and whose bottle no part of the file is.

    One that is a part is judged where fuel is stored.
    """
    for one in result.heaters:
        if one.runs != "burns" or not is_gas(one) or one.tank is not None:
            continue
        where, name = side_of_tank(one), one.planned.name
        act = (
            "Look where its bottle stands, and write the bottle as a part with tank: {of: propane, volume: ...}, named"
        )
        act += f" first in path: of {name}, outside or in a locker that opens to the outside alone"
        if where == "in the room":
            says = f"the gas of {name} stands in the room: what leaks of it sinks and stays there"
            yield _said("heat/fuel-drains-in", one, "stop" if one.is_certain else "unknown", says, act, 60, holds="all")
        elif where == "unknown":
            says = f"nobody wrote where the bottle of {name} stands: what leaks of its gas in the room sinks and stays"
            yield _said("heat/fuel-drains-in", one, "unknown", says, act, 5, holds="all")


def _of_the_tank(one: StandingHeater) -> list[Finding]:
    """Return what is said of a tank in the room, or of one of which nobody can say where it stands."""
    name, where = one.planned.name, side_of_tank(one)
    if where == "outside" or _is_empty(one):
        return []
    act = "Stand it outside; until then fill it outside, and shut its valve whenever the heater is off"
    if where == "unknown":
        says = f"nobody can say whether the tank of {name} stands in the room or outside: what it loses runs out there"
        act = "Measure where it stands, and write its x, side and z; name it first in path: of the heater"
        return [_said("heat/fuel-drains-in", one, "unknown", says, act, 5, holds="some")]
    says = f"the tank of {name} stands in the room: what is spilt as it is filled, or leaks of it, runs out there"
    is_sure = one.is_certain and (one.tank is None or one.tank.is_certain)
    return [_said("heat/fuel-drains-in", one, "limit" if is_sure else "unknown", says, act, 60, holds="some")]


def _runs_in(one: StandingHeater, piece: Piece) -> Finding:
    """Return what is said of a piece in the room: a no where it runs with nothing to shut it off."""
    says = f"the {piece.written} of {one.planned.name} lies in the room"
    act = "Move it outside, below the floor, with a valve at the tank before it; until then "
    if piece.runs is False:
        says += ", higher than the fuel in a full tank: nothing siphons out there, and what leaks while the pump runs"
        says += " goes on the floor"
        return _worst_of(one, piece, "limit", says, f"{act}look for drops there each time it has run", 60)
    if piece.runs is None:
        says += ", and nobody wrote how high it and the tank are: it may be lower than the fuel"
    else:
        says += ", lower than the fuel in a full tank"
    worst: Kind = "limit" if piece.is_shut_off else "stop"
    if piece.is_shut_off:
        says += "; opened with the valve shut, what is in the line runs out on the floor, and with it open, the tank"
    else:
        says += "; nothing shuts it off, so opened it siphons the tank out on the floor"
    act += (
        "shut the valve whenever the heater is off"
        if piece.is_shut_off
        else "empty the tank before anybody sleeps in it"
    )
    return _worst_of(one, piece, worst, says, act, 60)


def _runs_perhaps(one: StandingHeater, piece: Piece) -> Finding:
    """Return what is asked of a piece of which nobody wrote where it lies."""
    says = f"nobody wrote whether the {piece.written} of {one.planned.name} lies in the room or outside: where it is"
    act = f"Look where it lies, and write it in path:, such as {piece.written} below floor"
    return _said("heat/fuel-drains-in", one, "unknown", f"{says} opened, fuel runs out", act, 5,
                 holds="some" if piece.is_shut_off or piece.runs is False else "all")  # fmt: skip


def _worst_of(one: StandingHeater, piece: Piece, worst: Kind, says: str, act: str, minutes: int) -> Finding:
    """Return the worst a piece comes to, asked where it only may; with no fuel in its tank it is put right by day."""
    if _is_empty(one):
        return _said("heat/fuel-drains-in", one, "fix", f"{says}; its tank is empty now", act, minutes)
    if piece.runs is None or not one.is_certain:
        holds: Holds = "some" if worst == "limit" else "all"
        return _said("heat/fuel-drains-in", one, "unknown", says, act, minutes, holds=holds)
    return _said("heat/fuel-drains-in", one, worst, says, act, minutes)


def _weight(finding: Finding) -> int:
    """Return the order what is said of pieces is told in: what holds most back first."""
    if finding.kind == "unknown":
        return 1 if finding.could_stop else 3
    return {"stop": 0, "limit": 2}.get(finding.kind, 4)


def _is_empty(one: StandingHeater) -> bool:
    return one.tank is not None and one.tank.fill.high <= 0.0


def fuel_valve(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say whether the fuel can be shut off at its tank, before anything else of its way can be opened.

    Asks: a valve in the path of the fuel, before filter and pump, where fuel may stand higher than the burner
    Limit: the first thing after the tank
    Source: own-rule
    Lever: path of the heater
    """
    for one in _liquid(result):
        name, pieces = one.planned.name, way_of(one, shown_in)
        act = "Fit a valve at the tank, before filter and pump, where a hand reaches it from outside"
        opened = [piece for piece in pieces if piece.kind in ("filter", "pump") and not piece.is_shut_off]
        if any(shuts_off(piece.written) for piece in pieces):
            if opened:
                says = f"the fuel of {name} has its valve behind the {opened[0].written}: what is opened there runs"
                yield _said("heat/fuel-valve", one, "fix", f"{says} until the tank is empty", act, 60)
        elif pieces:
            yield _valveless(one, act)


def _valveless(one: StandingHeater, act: str) -> Finding:
    """Return what is said of a way without a valve, by whether the fuel runs out by itself at the burner."""
    name, tank, burner = one.planned.name, one.tank, one.planned.place.low_edge(2)
    is_told, are_known = is_told_valveless(one), tank is not None and tank.high.known and burner.known
    says = f"the fuel of {name} has no valve" if is_told else f"nobody wrote a valve in the way of the fuel of {name}"
    is_higher = tank is not None and are_known and burner.low >= tank.high.high
    if is_higher or one.where == "outside" or _is_empty(one):
        return _said("heat/fuel-valve", one, "fix", f"{says}: a filter that is opened runs until the tank is empty",
                     act, 60)  # fmt: skip
    is_lower = tank is not None and are_known and burner.high < tank.high.low
    stands = "stands" if is_lower else "may stand"
    says += f": the tank {stands} higher than the burner, so the line taken off there siphons it out into the room"
    if is_told and is_lower and one.where == "in the room" and one.is_certain:
        return _said("heat/fuel-valve", one, "stop", says, act, 60)
    if not is_told:
        act = f"Look at the tank. Where a valve is, write it first in path: valve at tank. Where none is: {act}"
    return _said("heat/fuel-valve", one, "unknown", says, act, 60 if is_told else 10, holds="all")


def fuel_reach(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a hand does not reach valve, filter and pump, or ask whether it does.

    Asks: can valve, filter and pump be reached and looked at without taking anything apart
    Limit: yes
    Source: own-rule
    Lever: reach of the heater
    """
    for one in _liquid(result):
        reach, name = one.planned.heater.reach, one.planned.name
        pieces = [piece.written for piece in way_of(one, shown_in) if piece.kind in ("valve", "filter", "pump")]
        if reach is True or not pieces:
            continue
        listed = ", ".join(pieces)
        says = f"not every piece of the fuel of {name} can be reached ({listed}): a leak there is not seen, and what"
        says += " shuts it off is not at hand"
        if reach is None:
            says = f"nobody wrote whether a hand reaches the pieces of the fuel of {name} ({listed})"
        act = "Reach for each of them as they are now, move or uncover what no hand reaches, and write reach: yes"
        kind: Kind = "limit" if reach is False else "unknown"
        yield _said("heat/fuel-reach", one, kind, says, f"{act} of the heater", 30, holds="some")


def pump_lift(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a pump lifts its fuel higher than such pumps are made for, or ask how high it lies.

    Asks: from the foot of the tank up to the pump, and from the pump up to the burner
    Limit: 0.5 m and 2 m, from memory: the leaflet of the pump rules
    Source: lift-recalled
    Lever: the height of the pump, z in path of the heater
    """
    for one in _liquid(result):
        pieces = way_of(one, shown_in)
        pump = next((piece for piece in pieces if piece.kind == "pump"), None)
        if pump is None:
            yield from _pumpless(one) if pieces else ()
            continue
        name, level, tank = one.planned.name, level_or_deck(pump), one.tank
        if not level.known or tank is None or not tank.low.known:
            says = f"nobody wrote how high the pump of {name} lies above the foot of its tank"
            yield _said("heat/pump-lift", one, "unknown", says, f"Measure it, and write it in path:, such as"
                        f" {pump.written} z -4", 5, source_of("pump_lift", "up to the pump"))  # fmt: skip
            continue
        burner = one.planned.place.low_edge(2)
        # One that is only written as below the floor may hang lower than that.
        lowest = level.low if pump.level.known else -inf
        up = Band(level.best - tank.low.best, lowest - tank.low.high, level.high - tank.low.low)
        push = Band(burner.best - level.best, burner.low - level.high, burner.high - level.low)
        if up.high > MOST_LIFT:
            yield _lifts(one, "draws its fuel up", "up to the pump", up, MOST_LIFT, shown_in)
        if push.high > MOST_PUSH:
            yield _lifts(one, "pushes its fuel up", "on to the burner", push, MOST_PUSH, shown_in)


def _pumpless(one: StandingHeater) -> Iterator[Finding]:
    """Ask for the pump of a way without one, unless all of the tank stands higher than the burner."""
    tank, burner = one.tank, one.planned.place.low_edge(2)
    if tank is not None and tank.low.known and burner.known and tank.low.low >= burner.high:
        return
    says = f"nobody wrote a pump in the way of the fuel of {one.planned.name}, and its tank may stand lower"
    yield _said("heat/pump-lift", one, "unknown", f"{says}: where it lies nobody can say", "Look for the pump, and"
                " write it in path:, such as pump below floor at 30 deg", 5,
                source_of("pump_lift", "up to the pump"), holds="some")  # fmt: skip


def _lifts(one: StandingHeater, does: str, row: str, by: Band, most: float, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a pump that lifts too high, or does at one end of what is known."""
    name, such = one.planned.name, f"; such pumps are made for {show(most, 'length', shown_in)}"
    source, worst = source_of("pump_lift", row), (by.high, most, most - by.high)
    if by.low > most:
        says = f"the pump of {name} {does} by {_span(by, 'length', shown_in)}{such}"
        return _said("heat/pump-lift", one, "fix", says, "Hang the pump lower, or move the tank, as the leaflet of the"
                     " pump shows", 60, source, worst)  # fmt: skip
    says = f"the pump of {name} perhaps {does} by {show(by.high, 'length', shown_in)}{such}"
    return _said("heat/pump-lift", one, "unknown", says, "Measure how high tank, pump and burner are, and write z of"
                 " each", 10, source, worst)  # fmt: skip


def line_bore(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the line of a metering pump is wider or narrower than such pumps want, or ask for its bore.

    Asks: the bore of the line between pump and burner
    Limit: 1.5 to 5 mm, from memory: the leaflet of the heater rules
    Source: bore-recalled
    Lever: the line in path of the heater
    """
    for one in _liquid(result):
        pieces, name = way_of(one, shown_in), one.planned.name
        if not any(piece.kind == "pump" for piece in pieces):
            continue
        bores = [piece.bore for piece in pieces if piece.kind == "line" and piece.bore is not None and piece.bore.known]
        if not bores:
            says = f"nobody wrote the bore of the fuel line of {name}: in one that is too wide bubbles stay"
            yield _said("heat/line-bore", one, "unknown", says, "Read it on the line, and write it in path:, such as"
                        " line 2 mm bore", 5, source_of("line_bore", "of its line"))  # fmt: skip
        for bore in bores:
            if bore.low < NARROWEST or bore.high > WIDEST:
                yield _bored(one, bore, shown_in)


def _bored(one: StandingHeater, bore: Band, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a line too wide or too narrow, or so at one end of what is known of it."""
    is_wide = bore.high - WIDEST > NARROWEST - bore.low
    number, limit = (bore.high, WIDEST) if is_wide else (bore.low, NARROWEST)
    does = "bubbles stay in a wide one, and the burner starves" if is_wide else "a narrow one holds back"
    is_sure = bore.low > WIDEST or bore.high < NARROWEST
    has = "has a bore of" if is_sure else "may have a bore of"
    says = f"the fuel line of {one.planned.name} {has} {_span(bore, 'mm', shown_in)}"
    says += f"; such pumps want {show(NARROWEST, 'mm', shown_in)} to {show(WIDEST, 'mm', shown_in)}: {does}"
    act = "Fit the line its leaflet asks for" if is_sure else "Read its bore on the line, and write it in path:"
    return _said("heat/line-bore", one, "fix" if is_sure else "unknown", says, act, 60 if is_sure else 5,
                 source_of("line_bore", "of its line"), (number, limit, -abs(number - limit)))  # fmt: skip


def _span(band: Band, unit: str, shown_in: HeaderUnits) -> str:
    """Return a measure, or both its ends where they are not the same."""
    low, high = (show(one, unit, shown_in) if isfinite(one) else "" for one in (band.low, band.high))
    return high if low in ("", high) else f"{low} to {high}"


def _liquid(result: Result) -> Iterator[StandingHeater]:
    """Give the heaters that burn what runs by itself."""
    for one in result.heaters:
        if is_liquid(one):
            yield one


def _said(
    code: str,
    one: StandingHeater,
    kind: Kind,
    says: str,
    act: str,
    minutes: int,
    source: str = OWN_RULE,
    by: tuple[float | None, float | None, float | None] = (None, None, None),
    holds: Holds = "none",
) -> Finding:
    """Return what is said of a way of fuel; what nobody wrote asks, and holds back what it may still come to."""
    where = one.planned.of
    return Finding(
        code, where, kind, says, *by, "m" if by[0] is not None else "", source, where, act=act, minutes=minutes,
        could_stop=holds == "all", could_limit=holds != "none", because=(where,),
    )  # fmt: skip


__all__ = ["fuel_drains_in", "fuel_reach", "fuel_valve", "line_bore", "pump_lift"]
