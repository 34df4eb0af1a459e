"""Rules of the tyres: load of the worst wheel, pressure, age, and a size nobody can read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.towing.law import PASSENGER_TYRES, SPEED
from boxwright.disciplines.towing.method import passenger_tyre_on_trailer
from boxwright.disciplines.towing.result import Result
from boxwright.disciplines.towing.sourced import AGES, LOAD_OF_INDEX, PRESSURES, SHARES, SPEED_OF_SYMBOL
from boxwright.disciplines.towing.telling import Question, advice, judged, missing, shown
from boxwright.disciplines.towing.tyre_mark import read_tyre_mark, read_week
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show, show_band

DAY = 86400.0
"""Seconds of a day."""


def tyre_overloaded(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the tyre under the most loaded wheel carries more than it is rated for, or nearly so.

    The worst of all wheels is taken, with the weight to one side; a tyre pumped below the pressure of its rating is
    taken to carry less in proportion; a passenger tyre counts less on a trailer where a rule at home says so.

    Asks: is the worst wheel within the load on its tyre's sidewall, at the pressure it has
    Limit: the sidewall; a reserve of 10 % is good practice
    Source: own-plate; cfr-571-120 for passenger tyres; reserve towing-practice
    Lever: more pressure up to the sidewall's, tyres of a higher load range, weight to the other side
    """
    code, where = "towing/tyre-overloaded", "trailer.tyres.load"
    if not result.wheels:
        yield missing(code, "trailer.axles.x", "without axles nobody can say what a tyre carries; write their places",
                      "Measure the places of the axles", True, "first-principles")  # fmt: skip
        return
    worst = max(result.wheels, key=lambda wheel: (wheel.reading.best, wheel.reading.band.high))
    per_wheel = _tyres_per_wheel(result)
    load = worst.reading.times(1.0 / per_wheel)
    limit, words = _counted(result)
    asked = Question(
        code,
        where,
        f"the load on the {worst.side} tyre of axle {worst.axle}",
        f"its rating{words}",
        where,
        "on the sidewall, with the pressure that belongs to it",
        lever="trailer.tyres.load",
        act="Pump to the sidewall's pressure, move weight to the other side, or fit tyres of a higher load range",
    )
    if limit is None or not limit.known:
        asked = replace(asked, limit="the load of the tyres")
    found = list(judged(asked, load, limit, shown_in))
    yield from (replace(one, says=one.says + _by_index(result, shown_in)) if limit is None else one for one in found)
    if not found and limit is not None and load.best > (1.0 - SHARES["tyre_reserve"]) * limit.best:
        reserve = show(1.0 - load.best / limit.best, "ratio", shown_in)
        carried = shown(load, "kg", shown_in)
        says = f"the {worst.side} tyre of axle {worst.axle} carries {carried}, {reserve} under its rating"
        wanted = (1.0 - SHARES["tyre_reserve"]) * limit.best
        yield advice(code, where, f"{says}; 10 % of reserve is good practice", load.best, wanted, "kg",
                     "towing-practice", where, "Fit tyres of a higher load range when these are worn")  # fmt: skip


def _tyres_per_wheel(result: Result) -> int:
    """Return how many tyres share what one side of an axle carries: two where there are four to an axle."""
    count, axles = result.trailer.tyres.count, len(result.axles)
    return max(1, count // (2 * axles)) if count and axles else 1


def _counted(result: Result) -> tuple[Band | None, str]:
    """Return what a tyre counts for on a trailer, and why it is less than its mark."""
    load = result.tyre_load
    mark = read_tyre_mark(result.trailer.tyres.size)
    rules = result.law.asking(PASSENGER_TYRES, result.trailer_class)
    pumped = " at the pressure it has" if load is not result.trailer.tyres.load else ""
    if load is None or mark is None or not mark.is_for_passenger_cars or not rules or rules[0].rule.limit is None:
        return load, pumped
    ends = [passenger_tyre_on_trailer(end, rules[0].rule.limit) for end in (load.best, load.low, load.high)]
    return replace(load, best=ends[0], low=ends[1], high=ends[2]), f" as a passenger tyre on a trailer{pumped}"


def _by_index(result: Result, shown_in: HeaderUnits) -> str:
    mark = read_tyre_mark(result.trailer.tyres.size)
    load = LOAD_OF_INDEX.get(mark.load_index) if mark is not None else None
    return f"; load index {mark.load_index} would be {show(load, 'kg', shown_in)}" if mark and load else ""


def tyre_pressure(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the tyres are pumped to less or more than the pressure of their load, or nobody knows to what.

    Asks: are the tyres pumped to the pressure that belongs to the load on their sidewall
    Limit: a tenth below it, a twentieth above; 15 to 130 psi at all; the load of a trailer tyre (ST) from 30 psi
    Source: towing-practice
    Lever: pump them, cold
    """
    code, tyres = "towing/tyre-pressure", result.trailer.tyres
    for where, words, band in (
        ("trailer.tyres.at", "the pressure that belongs to the load", tyres.at),
        ("trailer.tyres.pressure", "the pressure in the tyres", tyres.pressure),
    ):
        if band is not None and band.known and not PRESSURES["least"] <= band.best <= PRESSURES["most"]:
            says = f"{words} is written as {show(band.best, 'Pa', shown_in)}, which no such tyre is pumped to"
            act = f"Read {words} again, with its unit"
            yield missing(code, where, says, act, True, "towing-practice")
            return
    at, pumped, mark = tyres.at, tyres.pressure, read_tyre_mark(tyres.size)
    if mark is not None and mark.is_for_trailers and at is not None and at.known and at.best < PRESSURES["least_st"]:
        says = f"the load of a trailer tyre (ST) is written as belonging to {show(at.best, 'Pa', shown_in)}; no such"
        says += f" tyre carries its load below {show(PRESSURES['least_st'], 'Pa', shown_in)}"
        act = "Read the pressure beside the load on the sidewall again, with its unit"
        yield missing(code, "trailer.tyres.at", says, act, True, "towing-practice")
        return
    if tyres.load is not None and (at is None or not at.known):
        says = "the pressure that belongs to the load of the tyres is not written, and the load holds at no other"
        act = "Read the pressure beside the load on the sidewall, and write it as trailer.tyres.at"
        yield _keeps_nothing_back(missing(code, "trailer.tyres.at", says, act, False, "towing-practice"))
    elif at is not None and at.known and (pumped is None or not pumped.known):
        says = f"nobody wrote what the tyres are pumped to; their load holds at {show(at.best, 'Pa', shown_in)}, cold"
        act = f"Pump the tyres to {show(at.best, 'Pa', shown_in)}, cold, before each trip"
        yield _keeps_nothing_back(missing(code, "trailer.tyres.pressure", says, act, False, "towing-practice"))
    elif at is not None and pumped is not None:
        yield from _pumped(code, at, pumped, shown_in)


def _keeps_nothing_back(finding: Finding) -> Finding:
    """Return a question whose act is on the walk round before every trip, so that it keeps no answer back."""
    return replace(finding, could_limit=False)


def _pumped(code: str, at: Band, pumped: Band, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what is to be said of a pressure beside the one that belongs to the load."""
    where, wanted = "trailer.tyres.pressure", show(at.best, "Pa", shown_in)
    now = show_band(pumped, "Pa", shown_in)
    least, most = (1.0 - SHARES["pressure_below"]) * at.best, (1.0 + SHARES["pressure_above"]) * at.best
    if pumped.low < least:
        says = f"the tyres are pumped to {now} and their load belongs to {wanted}; soft tyres run hot and carry less"
        yield advice(code, where, says, -pumped.low, -least, "Pa", "towing-practice", where,
                     f"Pump the tyres to {wanted}, cold, before you tow", kind="limit")  # fmt: skip
    elif pumped.high > most:
        says = f"the tyres are pumped to {now}, over the {wanted} of their sidewall"
        yield advice(code, where, says, pumped.high, most, "Pa", "towing-practice", where,
                     f"Let the tyres down to {wanted}, cold, before you tow", kind="limit")  # fmt: skip


def tyre_old(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the tyres are old, or nobody can read when they were made.

    Asks: were the tyres made less than six years ago
    Limit: six years
    Source: towing-practice
    Lever: new tyres
    """
    code, where, written = "towing/tyre-old", "trailer.tyres.date", result.trailer.tyres.date
    made = read_week(written, result.judged_on)
    if made is None:
        found = f'"{written}" is no week a tyre was made in' if written else "the age of the tyres is not written"
        says = f"{found}; read the four figures in the oval on the sidewall, week and year, and write them as 1325"
        yield missing(code, where, says, "Read the date code on each tyre", False, "towing-practice")
        return
    age = (result.judged_on - made).days * DAY
    if age > AGES["tyre"]:
        years = round(age / AGES["tyre"] * 6, 1)
        says = f"the tyres were made in {made:%Y-%m}, {years} years ago; practice is to renew them at 6 years"
        yield advice(code, where, says, age, AGES["tyre"], "s", "towing-practice", where, "Renew the tyres")


def tyre_code(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the size of the tyres cannot be read, or their speed symbol is below the speed of the road.

    Asks: can the size be read, and does its speed symbol reach the towing speed
    Limit: the highest towing speed any place of the route allows, where one is known
    Source: recalled speed symbols
    Lever: write the size as the sidewall has it
    """
    code, where, size = "towing/tyre-code", "trailer.tyres.size", result.trailer.tyres.size
    mark = read_tyre_mark(size)
    if mark is None:
        found = f'cannot read the tyre size "{size}"' if size else "the tyre size is not written"
        says = f"{found}; write it as the sidewall has it, such as ST205/75R15 or 155/70R13 75N"
        yield missing(code, where, says, "Read the size of the tyres on the sidewall", False, "recalled")
        return
    speed = SPEED_OF_SYMBOL.get(mark.speed_symbol)
    allowed = [one.rule.limit for one in result.law.asking(SPEED, result.trailer_class) if one.rule.limit is not None]
    if speed is not None and allowed and speed < max(allowed):
        reach, road = show(speed, "speed", shown_in), show(max(allowed), "speed", shown_in)
        says = f"the speed symbol {mark.speed_symbol} reaches {reach}, less than the {road} the road allows"
        yield advice(code, where, says, max(allowed), speed, "m/s", "recalled", where, f"Tow no faster than {reach}")
