"""Rules of the way of a liquid fuel: what runs into the room when opened, what a hand reaches, pump and line.

The maker's instructions, the installer and the law of the place come first.
"""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.fuel_way import Piece, is_liquid, level_or_deck, way_of
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, source_of
from boxwright.finding import Finding, Kind
from boxwright.units import HeaderUnits, show

MOST_LIFT, MOST_PUSH = (columns("pump_lift")[name][0] for name in ("up to the pump", "on to the burner"))
NARROWEST, WIDEST = columns("line_bore")["of its line"]


def fuel_drains_in(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what of the way of the fuel runs out into the room when it is opened, or ask where it lies.

    Asks: where filter, pump and joints lie, and whether they are lower than the fuel in a full tank
    Limit: none in the room that is lower; with a valve before it what is in the line still runs out
    Source: own-rule
    Lever: path of the heater
    """
    for one in _liquid(result):
        name, pieces = one.planned.name, way_of(one, shown_in)
        if not pieces:
            says = f"nobody wrote the way of the fuel of {name}, so nobody can say what runs out where it is opened"
            yield _said("heat/fuel-drains-in", one, "unknown", says, "Follow the line from tank to burner, and write"
                        " path: [tank, valve at tank, filter below floor, pump below floor at 30 deg, line 2 mm bore,"
                        " heater]", 15)  # fmt: skip
            continue
        opened = [piece for piece in pieces if piece.is_opened]
        inside = [piece for piece in opened if piece.where == "in the room" and piece.runs is not False]
        unsaid = [piece for piece in opened if piece.where == "unknown"]
        if inside:
            yield _runs_in(one, inside[0])
        elif unsaid:
            words = f"nobody wrote whether the {unsaid[0].written} of {name} lies in the room or outside: where it is"
            yield _said("heat/fuel-drains-in", one, "unknown", f"{words} opened, fuel runs out", "Look where it lies,"
                        f" and write it in path:, such as {unsaid[0].written} below floor", 5)  # fmt: skip


def _runs_in(one: StandingHeater, piece: Piece) -> Finding:
    says = f"the {piece.written} of {one.planned.name} lies in the room"
    if piece.runs is None:
        says += ", and nobody wrote how high it and the tank are: it may be lower than the fuel"
    else:
        says += ", lower than the fuel in a full tank"
    kind: Kind = "unknown" if piece.runs is None and piece.is_shut_off else "fix"
    if piece.is_shut_off:
        says += "; opened with the valve shut, what is in the line runs out on the floor"
        kind = "advice" if piece.runs else kind
    else:
        says += "; nothing shuts it off, so opened it siphons the tank out on the floor"
    act = "Move it outside, below the floor, with a valve at the tank before it; until then shut the valve, catch what"
    return _said("heat/fuel-drains-in", one, kind, says, f"{act} runs out, and air the room before anything is lit", 60)


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
        says = f"not every piece of the fuel of {name} can be reached ({listed}): a leak there is not seen"
        if reach is None:
            says = f"nobody wrote whether a hand reaches the pieces of the fuel of {name} ({listed})"
        act = "Reach for each of them as they are now, move or uncover what no hand reaches, and write reach: yes"
        yield _said("heat/fuel-reach", one, "fix" if reach is False else "unknown", says, f"{act} of the heater", 30)


def pump_lift(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a pump lifts its fuel higher than such pumps are made for, or ask how high it lies.

    Asks: from the foot of the tank up to the pump, and from the pump up to the burner
    Limit: 0.5 m and 2 m, from memory: the leaflet of the pump rules
    Source: lift-recalled
    Lever: the height of the pump, z in path of the heater
    """
    for one in _liquid(result):
        pump = next((piece for piece in way_of(one, shown_in) if piece.kind == "pump"), None)
        if pump is None:
            continue
        name, level, tank = one.planned.name, level_or_deck(pump), one.tank
        if not level.known or tank is None or not tank.low.known:
            says = f"nobody wrote how high the pump of {name} lies above the foot of its tank"
            yield _said("heat/pump-lift", one, "unknown", says, f"Measure it, and write it in path:, such as"
                        f" {pump.written} z -4", 5, source_of("pump_lift", "up to the pump"))  # fmt: skip
            continue
        burner = one.planned.place.low_edge(2)
        for up, most, words, row in (
            (level.high - tank.low.low, MOST_LIFT, "draws its fuel up", "up to the pump"),
            (burner.high - level.low, MOST_PUSH, "pushes its fuel up", "on to the burner"),
        ):
            if up <= most:
                continue
            says = f"the pump of {name} {words} by {show(up, 'length', shown_in)}; such pumps are made for"
            says += f" {show(most, 'length', shown_in)}"
            yield _said(
                "heat/pump-lift", one, "fix", says, "Hang the pump lower, or move the tank, as the leaflet of the pump"
                " shows", 60, source_of("pump_lift", row), (up, most, most - up),
            )  # fmt: skip


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
        lines = [piece for piece in pieces if piece.kind == "line"]
        source = source_of("line_bore", "of its line")
        bores = [piece.bore for piece in lines if piece.bore is not None and piece.bore.known]
        if not bores:
            says = f"nobody wrote the bore of the fuel line of {name}: in one that is too wide bubbles stay"
            yield _said("heat/line-bore", one, "unknown", says, "Read it on the line, and write it in path:, such as"
                        " line 2 mm bore", 5, source)  # fmt: skip
        for bore in bores:
            if bore.low >= NARROWEST and bore.high <= WIDEST:
                continue
            limit = NARROWEST if bore.low < NARROWEST else WIDEST
            number = bore.low if bore.low < NARROWEST else bore.high
            does = "bubbles stay in a wide one, and the burner starves" if number > limit else "a narrow one holds back"
            says = f"the fuel line of {name} has a bore of {show(number, 'mm', shown_in)}; such pumps want"
            says += f" {show(NARROWEST, 'mm', shown_in)} to {show(WIDEST, 'mm', shown_in)}: {does}"
            yield _said("heat/line-bore", one, "fix", says, "Fit the line its leaflet asks for", 60, source,
                        (number, limit, -abs(number - limit)))  # fmt: skip


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
) -> Finding:
    """Return what is said of a way of fuel; what nobody wrote of it asks, and holds no answer back."""
    where = one.planned.of
    return Finding(
        code, where, kind, says, *by, "m" if by[0] is not None else "", source, where, act=act, minutes=minutes,
        could_stop=False, could_limit=False, because=(where,),
    )  # fmt: skip


__all__ = ["fuel_drains_in", "fuel_reach", "line_bore", "pump_lift"]
