"""Rules of the law of the route for brakes and class, and how a number reaches the limit of a rule."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.law import CLASSES, STRICTER_CLASS, Placed
from boxwright.disciplines.towing.method import share_of_tow_axles
from boxwright.disciplines.towing.result import Behind, Reading, Result
from boxwright.disciplines.towing.sourced import AGES
from boxwright.disciplines.towing.telling import advice, broken, listed, missing, name_of, shown
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

DAY = 86400.0
"""Seconds of a day."""
BRAKES = "trailer.brakes"
SURGE_WORDS = ("surge", "overrun", "inertia", "override")


class Asking(NamedTuple):
    """One asking of the law: the number it is compared with, and whether the limit itself already counts."""

    asks: str
    reading: Reading
    counts: bool = False


def class_of(result: Result) -> str:
    """Return the class the trailer is judged as: as written, or the stricter where nobody wrote it."""
    return result.trailer_class or STRICTER_CLASS


def reaching(result: Result, askings: list[Asking], sure: bool) -> list[Placed]:
    """Return the rules whose limit a number reaches for sure, or (``sure`` False) may reach, the smallest first."""
    found = []
    for asks, reading, counts in askings:
        for placed in result.law.asking(asks, class_of(result)):
            limit = placed.rule.limit
            if limit is None:
                found.append(placed)
                continue
            low = max(reading.best, reading.permitted_high) if reading.band.known else reading.band.low
            number = low if sure else reading.band.high
            if number > limit or (counts and number == limit):
                found.append(placed)
    return sorted(found, key=lambda one: (one.rule.limit or 0.0, one.place))


def _plate(result: Result) -> Reading:
    """Return the plate's greatest mass, or the gross weight where nobody wrote it."""
    plate = result.trailer.gvwr
    return Reading(plate, plate.best, plate.best) if plate is not None and plate.known else result.gross


def _unbraked(result: Result, behind: Behind | None) -> list[Asking]:
    """Return the askings that an unbraked trailer must keep under."""
    askings = [
        Asking(law.UNBRAKED_UP_TO, result.gross),
        Asking(law.UNBRAKED_BELOW, result.gross, counts=True),
        Asking(law.UNBRAKED_PLATE, _plate(result)),
        Asking(law.UNBRAKED_ON_WHEELS, result.on_wheels),
    ]
    kerb = behind.vehicle.kerb if behind is not None else None
    if kerb is not None and kerb.known and kerb.best > 0.0:
        share = share_of_tow_axles(1.0, kerb.best)
        askings.append(Asking(law.UNBRAKED_SHARE, result.gross.times(share)))
    return askings


def brakes_required(result: Result, behind: Behind | None, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where on the route the trailer must have brakes it has not.

    Asks: does every place of the route allow the trailer with the brakes it has, in its class
    Limit: the strictest rule of the route, which names itself and the others
    Source: the rule that bites, such as nc-20-124 or un-r13
    Lever: fit brakes, or carry less
    """
    code = "towing/brakes-required"
    if not result.trailer.brakes.kind:
        says = "nobody wrote whether the trailer has brakes; write brakes: none, or its kind and on how many axles"
        yield missing(code, BRAKES, says, "Look for brakes at each wheel", True, "towing-practice")
        return
    if result.braked_axles == 0:
        yield from _unbraked_findings(result, _unbraked(result, behind), shown_in)
    axles, braked = len(result.axles), result.braked_axles
    everywhere = [Asking(law.ALL_WHEELS_ABOVE, result.gross), Asking(law.ALL_WHEELS_FROM, result.gross, counts=True)]
    wanted = reaching(result, everywhere, sure=True)
    if wanted and braked is None:
        says = f"{wanted[0].place} asks for brakes on every axle; nobody wrote on how many they are"
        yield missing(code, "trailer.brakes.axles", says, "Count the axles with brakes", True, wanted[0].rule.source)
    elif wanted and braked and braked < axles:
        says = f"{wanted[0].place} asks for brakes on every axle above {wanted[0].rule.limit_text}; {braked} has"
        yield broken(code, BRAKES, says, wanted, BRAKES, "Fit brakes on every axle", result.gross.best)
    if any(word in result.trailer.brakes.kind.lower() for word in SURGE_WORDS):
        surge = reaching(result, [Asking(law.SURGE_UP_TO, result.gross)], sure=True)
        if surge:
            says = f"{surge[0].place} allows surge (overrun) brakes to {surge[0].rule.limit_text}; the gross weight is "
            yield broken(code, BRAKES, says + shown(result.gross, "kg", shown_in), surge, BRAKES,
                         "Fit brakes the driver works", result.gross.best)  # fmt: skip


def _unbraked_findings(result: Result, askings: list[Asking], shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what the rules say to a trailer without brakes."""
    code = "towing/brakes-required"
    sure = reaching(result, askings, sure=True)
    gross = shown(result.gross, "kg", shown_in)
    if sure:
        first = sure[0]
        says = f"without brakes {first.place} allows a {class_of(result)} trailer {_until(first)}; it weighs {gross}"
        yield broken(code, BRAKES, says, sure, BRAKES, "Fit brakes, or carry less", result.gross.best)
        return
    perhaps = reaching(result, askings, sure=False)
    if perhaps:
        says = f"without brakes {perhaps[0].place} allows it {_until(perhaps[0])}, and it weighs {gross}; weigh it"
        yield missing(code, BRAKES, says, "Weigh the loaded trailer", True, perhaps[0].rule.source)


def _until(placed: Placed) -> str:
    rule = placed.rule
    if rule.asks.startswith(law.UNBRAKED_SHARE):
        return f"to {rule.limit_text} of the tow vehicle's own weight"
    if rule.asks.startswith(law.UNBRAKED_BELOW):
        return f"below {rule.limit_text}"
    if rule.asks.startswith(law.UNBRAKED_PLATE):
        return f"with {rule.limit_text} on its plate"
    return f"to {rule.limit_text}"


def class_change(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what changes by law once somebody can sleep in a trailer whose papers say cargo.

    Asks: is the class of the papers still that of the trailer, and what does the other class ask
    Limit: the rules that name a class
    Source: the rule that changes, such as nc-20-124
    Lever: ask the authority, and insurance, what it is now
    """
    code = "towing/class-change"
    if not result.trailer_class:
        says = f"the class is not written as cargo or camper; it is judged as {STRICTER_CLASS}, which is asked for more"
        yield missing(code, "class", says, "Read the class in the trailer's papers", True, "towing-practice")
        return
    if result.trailer_class != "cargo" or not result.beds:
        return
    changed = [_changed(result, one) for one in result.law.placed if one.rule.asks.endswith(f", {CLASSES[1]}")]
    says = f"with {listed([name_of(bed) for bed in result.beds])} in it the trailer may count as a camper"
    numbers = f": {'; '.join(changed)}" if changed else "; no rule read here changes by that"
    yield Finding(code, "class", "advice", f"{says}{numbers}", source="towing-practice", lever="class",
                  act="Ask the authority and the insurer which class it is now", uses=("tow",),
                  because=result.beds)  # fmt: skip


def _changed(result: Result, as_camper: Placed) -> str:
    """Return what one rule asks of a camper, beside what the same place asks of cargo."""
    head = as_camper.rule.asks.partition(",")[0]
    words = IN_WORDS.get(head, head)
    as_cargo = [one for one in result.law.asking(head, CLASSES[0]) if one.place == as_camper.place]
    before = f", not from {as_cargo[0].rule.limit_text}" if as_cargo else ""
    return f"{as_camper.place} then asks for {words} {as_camper.rule.limit_text}{before}"


IN_WORDS = {
    law.UNBRAKED_BELOW: "brakes from",
    law.ALL_WHEELS_FROM: "brakes on every axle from",
    law.BREAKAWAY_FROM: "a breakaway switch from",
}


def breakaway(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a braked trailer lacks a breakaway switch, or its battery was not tested for long.

    Asks: do the brakes apply by themselves when the trailer comes off, and was its battery tested
    Limit: fitted wherever the route asks; tested within half a year
    Source: the rule that bites, such as ne-60-6-246 or un-r13; the battery's age towing-practice
    Lever: fit the switch, test the battery
    """
    code, where, brakes = "towing/breakaway", "trailer.brakes.breakaway", result.trailer.brakes
    if result.braked_axles == 0 or not brakes.kind:
        return
    askings = [
        Asking(law.BREAKAWAY_ABOVE, result.gross),
        Asking(law.BREAKAWAY_FROM, result.gross, counts=True),
        Asking(law.BREAKAWAY_OF_BRAKED, result.gross),
    ]
    wanted = reaching(result, askings, sure=True)
    if brakes.breakaway is None:
        could_stop = any(one.rule.kind == "stop" for one in reaching(result, askings, sure=False))
        says = "nobody wrote whether a breakaway switch is fitted; write breakaway: yes or no"
        yield missing(code, where, says, "Look for the switch and its cable on the tongue", could_stop, "cfr-393-43")
    elif brakes.breakaway is False and wanted:
        says = f"{wanted[0].place} asks for a breakaway switch on a trailer like this, and none is fitted"
        yield broken(code, where, says, wanted, where, "Fit a breakaway switch")
    elif brakes.breakaway is False:
        says = "no breakaway switch is fitted; a trailer that comes off rolls on"
        yield Finding(code, where, "advice", says, source="cfr-393-43", lever=where, act="Fit a breakaway switch",
                      uses=("tow",))  # fmt: skip
    elif "electric" in brakes.kind.lower():
        yield from _battery(result)


def _battery(result: Result) -> Iterator[Finding]:
    code, where = "towing/breakaway", "trailer.brakes.breakaway_battery"
    tested = result.trailer.brakes.breakaway_battery
    if tested is None:
        says = "nobody wrote when the breakaway battery was tested; pull the switch, hear the brakes, write the day"
        yield missing(code, where, says, "Pull the breakaway switch and listen at each wheel", False, "towing-practice")
        return
    age = (result.judged_on - tested).days * DAY
    if age > AGES["breakaway_battery"]:
        says = f"the breakaway battery was last tested on {tested.isoformat()}, more than half a year ago"
        act = "Pull the breakaway switch and listen at each wheel"
        yield advice(code, where, says, age, AGES["breakaway_battery"], "s", "towing-practice", where, act)
