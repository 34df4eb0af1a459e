"""Rules of the law of the route for brakes and class, and how a number reaches the limit of a rule."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite
from typing import NamedTuple

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.brake_words import are_electric, are_surge, read_brakes
from boxwright.disciplines.towing.law import CLASSES, STRICTER_CLASS, Placed
from boxwright.disciplines.towing.result import Behind, Reading, Result
from boxwright.disciplines.towing.sourced import AGES
from boxwright.disciplines.towing.telling import advice, broken, leading, missing, name_of, shown, worth_asking
from boxwright.finding import Finding, listed
from boxwright.units import HeaderUnits, show

DAY = 86400.0
"""Seconds of a day."""
BRAKES = "trailer.brakes"


class Asking(NamedTuple):
    """One asking of the law: the number it is compared with, and whether the limit itself already counts.

    ``times`` turns the limit into a mass where the rule gives a share of something. ``words`` lead the number in a
    sentence.
    """

    asks: str
    reading: Reading
    counts: bool = False
    times: float = 1.0
    words: str = "it weighs"


class Reached(NamedTuple):
    """A rule whose limit is reached, and that limit as a mass (kg); None for a rule without a number.

    ``number`` is what reaches it: the best value, or that of a permitted fill where only that does.
    """

    placed: Placed
    limit: float | None
    asking: Asking
    number: float

    def told(self, shown_in: HeaderUnits) -> str:
        """Return the number that reaches the limit, in words."""
        reading = self.asking.reading
        is_fill = reading.band.known and self.number > reading.band.high
        now = f"{show(self.number, 'kg', shown_in)} at a permitted fill" if is_fill else shown(reading, "kg", shown_in)
        return f"{self.asking.words} {now}"


def least_and_most(result: Result) -> tuple[float, float]:
    """Return what the trailer weighs for sure, a permitted fill counted, and what it may weigh with all its doubt.

    Doubt beyond the plate counts for nothing here: there it is the plate that asks.
    """
    gross, plate = result.gross, result.trailer.gvwr
    sure = max(gross.band.low, gross.best, gross.permitted_high)
    may = min(gross.band.high, plate.best) if plate is not None and plate.known else gross.band.high
    return sure, max(sure, may)


def class_of(result: Result) -> str:
    """Return the class the trailer is judged as: as written, or the stricter where nobody wrote it."""
    return result.trailer_class or STRICTER_CLASS


def reached(result: Result, askings: list[Asking], sure: bool) -> list[Reached]:
    """Return the rules whose limit a number reaches for sure, or (``sure`` False) may reach, the strictest first.

    What may be reached is a question, and nobody is asked about a rule whose breach is only advice.
    """
    found = []
    for asking in askings:
        reading, times = asking.reading, asking.times
        rules = list(result.law.asking(asking.asks, class_of(result)))
        for placed in rules if sure else worth_asking(rules):
            limit = placed.rule.limit * times if placed.rule.limit is not None else None
            low = max(reading.best, reading.permitted_high) if reading.band.known else reading.band.low
            number = low if sure else reading.band.high
            if limit is None or number > limit or (asking.counts and number == limit):
                found.append(Reached(placed, limit, asking, number if isfinite(number) else reading.best))
    return sorted(found, key=lambda one: (one.limit or 0.0, one.placed.place))


def rules_of(found: list[Reached]) -> list[Placed]:
    """Return the rules that are reached."""
    return [one.placed for one in found]


def first_of(found: list[Reached]) -> Reached:
    """Return the one whose rule decides."""
    first = leading(rules_of(found))
    return next(one for one in found if one.placed is first)


def in_doubt(code: str, where: str, asks: str, perhaps: list[Reached], shown_in: HeaderUnits) -> Finding:
    """Return the question where only the bad end of a number reaches a rule; ``asks`` are the words for the rule."""
    first = first_of(perhaps)
    says = f"{first.placed.place} {asks} {first.placed.rule.limit_text}, and {first.told(shown_in)}; weigh it"
    could_stop = any(one.placed.rule.kind == "stop" for one in perhaps)
    return missing(code, where, says, "Weigh the loaded trailer", could_stop, first.placed.rule.source)


def _on_plate(result: Result, asks: str, times: float = 1.0) -> Asking:
    """Return an asking for the plate's greatest mass, or the gross weight where nobody wrote it."""
    plate = result.trailer.gvwr
    if plate is None or not plate.known:
        return Asking(asks, result.gross, times=times)
    return Asking(asks, Reading(plate, plate.best, plate.best), times=times, words="its plate says")


def _unbraked(result: Result, behind: Behind | None) -> list[Asking]:
    """Return the askings that an unbraked trailer must keep under."""
    askings = [
        Asking(law.UNBRAKED_UP_TO, result.gross),
        Asking(law.UNBRAKED_BELOW, result.gross, counts=True),
        _on_plate(result, law.UNBRAKED_PLATE),
        Asking(law.UNBRAKED_ON_WHEELS, result.on_wheels, words=ON_WHEELS),
    ]
    kerb = behind.vehicle.kerb if behind is not None else None
    if kerb is not None and kerb.known:
        askings.append(Asking(law.UNBRAKED_SHARE, result.gross, times=kerb.best))
        askings.append(_on_plate(result, law.UNBRAKED_SHARE_BY_PLATE, kerb.best))
        askings.append(Asking(law.UNBRAKED_SHARE_ON_WHEELS, result.on_wheels, times=kerb.best, words=ON_WHEELS))
    return askings


ON_WHEELS = "its wheels carry"


def brakes_required(result: Result, behind: Behind | None, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where on the route the trailer must have brakes it has not.

    Asks: does every place of the route allow the trailer with the brakes it has, in its class
    Limit: the strictest rule of the route, which names itself and the others
    Source: the rule that bites, such as nc-20-124 or un-r13
    Lever: fit brakes, or carry less
    """
    code = "towing/brakes-required"
    kind = result.trailer.brakes.kind
    said = read_brakes(kind)
    if said == "nothing":
        says = "nobody wrote whether the trailer has brakes; write brakes: none, or its kind and on how many axles"
        yield missing(code, BRAKES, says, "Look for brakes at each wheel", True, "towing-practice")
    elif said == "unclear":
        says = f'whether brakes of the kind "{kind}" work on the road is not known here, so they count neither as'
        says += " brakes nor as none; write none, electric, hydraulic, surge (overrun) or air, and nothing more"
        yield missing(code, BRAKES, says, "Look for brakes at each wheel, and what works them", True, "towing-practice")
    elif said == "none":
        yield from _unbraked_findings(result, _unbraked(result, behind), shown_in)
    elif result.braked_axles == 0:
        says = f'the brakes are of the kind "{kind}" and on no axle: one of the two is wrong'
        yield missing(code, "trailer.brakes.axles", says, "Count the axles with brakes", True, "towing-practice")
        yield from _unbraked_findings(result, _unbraked(result, behind), shown_in)
    else:
        yield from _every_axle(result, shown_in)
        yield from _surge_findings(result, shown_in)


def _surge_findings(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what the rules say to brakes that the trailer's push works."""
    code = "towing/brakes-required"
    if are_surge(result.trailer.brakes.kind):
        askings = [Asking(law.SURGE_UP_TO, result.gross)]
        surge, perhaps = (reached(result, askings, sure) for sure in (True, False))
        if surge:
            first = first_of(surge)
            place, rule = first.placed.place, first.placed.rule
            says = f"{place} allows surge (overrun) brakes to {rule.limit_text}; {first.told(shown_in)}"
            act = "Fit brakes the driver works"
            yield broken(code, BRAKES, says, rules_of(surge), act, first.number, first.limit, "kg")
        elif perhaps:
            yield in_doubt(code, BRAKES, "allows surge (overrun) brakes to", perhaps, shown_in)


def _every_axle(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what the rules say to a trailer with brakes on some axles only, or on nobody wrote how many."""
    code = "towing/brakes-required"
    everywhere = [Asking(law.ALL_WHEELS_ABOVE, result.gross), Asking(law.ALL_WHEELS_FROM, result.gross, counts=True)]
    wanted, perhaps = (reached(result, everywhere, sure) for sure in (True, False))
    if not (wanted or perhaps) or (result.braked_axles is not None and result.braked_axles >= len(result.axles)):
        return
    first = first_of(wanted or perhaps)
    place, rule = first.placed.place, first.placed.rule
    asks = f"asks for brakes on every axle of a trailer {'from' if first.asking.counts else 'over'}"
    if result.braked_axles is None:
        written = f"{place} {asks} {rule.limit_text}; nobody wrote on how many they are"
        yield missing(code, "trailer.brakes.axles", written, "Count the axles with brakes", True, rule.source)
    elif wanted:
        has = f"here {result.braked_axles} of {len(result.axles)} has them, and {first.told(shown_in)}"
        says, act = f"{place} {asks} {rule.limit_text}; {has}", "Fit brakes on every axle"
        yield broken(code, BRAKES, says, rules_of(wanted), act, first.number, first.limit, "kg")
    else:
        yield in_doubt(code, BRAKES, asks, perhaps, shown_in)


def _unbraked_findings(result: Result, askings: list[Asking], shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what the rules say to a trailer without brakes."""
    code = "towing/brakes-required"
    sure = reached(result, askings, sure=True)
    if sure:
        first = first_of(sure)
        allows = f"without brakes {first.placed.place} allows a {class_of(result)} trailer {_until(first.placed)}"
        says, act = f"{allows}; {first.told(shown_in)}", "Fit brakes, or carry less"
        yield broken(code, BRAKES, says, rules_of(sure), act, first.number, first.limit, "kg")
        return
    perhaps = reached(result, askings, sure=False)
    if perhaps:
        first = first_of(perhaps)
        place, until, now = first.placed.place, _until(first.placed), first.told(shown_in)
        says = f"without brakes {place} allows it {until}, and {now}; weigh it"
        yield missing(code, BRAKES, says, "Weigh the loaded trailer", True, first.placed.rule.source)


def _until(placed: Placed) -> str:
    rule = placed.rule
    if rule.asks.startswith(law.UNBRAKED_SHARE_BY_PLATE):
        return f"with {rule.limit_text} of the tow vehicle's own weight on its plate"
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
                  because=result.beds, besides=tuple(_before_and_after(result)))  # fmt: skip


def _before_and_after(result: Result) -> Iterator[tuple[str, str]]:
    """Yield the limit of each rule that names a class, as the law writes it, with the class and the place."""
    for one in result.law.placed:
        head, _, named = one.rule.asks.partition(", ")
        if head in IN_WORDS and named in CLASSES:
            yield f"{one.place}, {named}: {IN_WORDS[head]}", one.rule.limit_text


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
    if result.braked_axles == 0 or read_brakes(brakes.kind) != "fitted":
        return
    askings = [
        Asking(law.BREAKAWAY_ABOVE, result.gross),
        Asking(law.BREAKAWAY_FROM, result.gross, counts=True),
        Asking(law.BREAKAWAY_OF_BRAKED, result.gross),
    ]
    wanted = rules_of(reached(result, askings, sure=True))
    perhaps = reached(result, askings, sure=False)
    if brakes.breakaway is None:
        could_stop = any(one.rule.kind == "stop" for one in rules_of(perhaps))
        says = "nobody wrote whether a breakaway switch is fitted; write breakaway: yes or no"
        yield missing(code, where, says, "Look for the switch and its cable on the tongue", could_stop, "cfr-393-43")
    elif brakes.breakaway is False and wanted:
        says = f"{leading(wanted).place} asks for a breakaway switch on a trailer like this, and none is fitted"
        yield broken(code, where, says, wanted, "Fit a breakaway switch")
    elif brakes.breakaway is False and perhaps:
        asks = f"asks for a breakaway switch {'from' if first_of(perhaps).asking.counts else 'over'}"
        yield in_doubt(code, where, asks, perhaps, shown_in)
    elif brakes.breakaway is False:
        says = "no breakaway switch is fitted; a trailer that comes off rolls on"
        yield Finding(code, where, "advice", says, source="cfr-393-43", lever=where, act="Fit a breakaway switch",
                      uses=("tow",))  # fmt: skip
    elif are_electric(brakes.kind):
        yield from _battery(result)


def _battery(result: Result) -> Iterator[Finding]:
    code, where = "towing/breakaway", "trailer.brakes.breakaway_battery"
    tested = result.trailer.brakes.breakaway_battery
    if tested is None:
        says = "nobody wrote when the breakaway battery was tested; pull the switch, hear the brakes, write the day"
        yield missing(code, where, says, "Pull the breakaway switch and listen at each wheel", False, "towing-practice")
        return
    if tested > result.judged_on:
        says = f"the breakaway battery cannot have been tested on {tested.isoformat()}, a day that is still to come"
        yield missing(code, where, says, "Pull the breakaway switch and listen at each wheel", False, "towing-practice")
        return
    age = (result.judged_on - tested).days * DAY
    if age > AGES["breakaway_battery"]:
        says = f"the breakaway battery was last tested on {tested.isoformat()}, more than half a year ago"
        act = "Pull the breakaway switch and listen at each wheel"
        yield advice(code, where, says, age, AGES["breakaway_battery"], "s", "towing-practice", where, act)
