"""Rules of the coldest night: what the heater holds, what it does when it is milder, how long its fuel lasts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.heat.burner import SOLID, fuel_named
from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.room import HEAT_OF_AIR
from boxwright.disciplines.heat.telling import (
    A_COLD_NIGHT,
    LEAVE,
    OWN_RULE,
    SLEEP,
    WORK,
    as_warm_as,
    asked_of_place,
    between,
    source_of,
    warm,
)
from boxwright.finding import Finding, Kind
from boxwright.units import Band, HeaderUnits, show, show_band

MARGINS: dict[str, float] = {name: row[0] for name, row in columns("margins").items()}
RESERVE = MARGINS["reserve"]
NIGHT_LASTS = ASLEEP_HOURS * 3600.0
NEAR = MARGINS["near enough"]
"""K: a room so much below what is wanted still counts as held."""
BEARABLE = columns("year_rooms")["too warm"][0]
"""K: warmer than people bear."""
WORK_ROOM, HARD_WORK = (columns("at_work")[name][0] for name in ("work", "hard work"))
"""K: no colder is a room to work in, and one to work hard in."""
A_LITTLE_MILDER = 5.0
"""K above what the lowest setting just holds, for an example."""


def night_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how cold it gets where somebody sleeps, works, or waits while the trailer is left.

    Asks: a coldest night of every place that is written
    Limit: none
    Source: own-rule
    Lever: coldest_design of a place
    """
    is_slept = result.use == "sleep" and bool(result.sleepers)
    if not (is_slept or result.waiting or (result.use == "work" and result.is_peopled)):
        return
    uses = {"sleep": SLEEP, "work": WORK}.get(result.use, LEAVE)
    where = {"sleep": "where you sleep", "work": "where you work in it"}.get(result.use, "where it is left")
    so = "so no night is worked out" if is_slept else "so nobody can say whether the room gets too cold"
    cold = f"coldest_design: {warm(A_COLD_NIGHT, shown_in)}"
    if result.placeless:
        says = f"nobody wrote how cold it gets {where}, {so}"
        act = f"Write under places how cold its worst night is, such as my field: {{{cold}}}"
        yield asked_of_place("heat/night-not-known", "places", says, act, uses)
        return
    for name in result.no_night:
        says = f"nobody wrote how cold it gets at {name}, {so.replace('is worked out', 'there is worked out')}"
        act = f"Write how cold its worst night is, such as {cold}"
        yield asked_of_place("heat/night-not-known", f"places[{name}]", says, act, uses)


def room_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask for the measures of the body, without which no room is known.

    Asks: length, width and height of the body
    Limit: none
    Source: own-rule
    Lever: trailer.body
    """
    if result.use == "sleep" and result.sleepers and not result.volume.known:
        yield Finding(
            "heat/room-not-known", "trailer.body", "unknown", "the room cannot be worked out: length, width and height"
            " of the body are not all written", source=OWN_RULE, lever="trailer.body", act="Measure the body inside,"
            " stud face to stud face and deck to bows", minutes=10, could_stop=False, uses=SLEEP,
            because=("trailer.body",),
        )  # fmt: skip


def heat_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what a heater gives on its settings, where somebody sleeps by it.

    Asks: the highest heat of a heater
    Limit: none
    Source: own-rule
    Lever: highest of the heater
    """
    for one in result.heaters if result.use == "sleep" else ():
        heater = one.planned.heater
        if heater.highest is None or not heater.highest.known:
            yield Finding(
                "heat/heat-not-known", one.planned.of, "unknown", f"nobody wrote what {one.planned.name} gives at its"
                " highest setting, so it warms nothing here", source=OWN_RULE, lever=one.planned.of,
                act=f"Read on the plate of {one.planned.name} what it gives, and write highest: 2000 W", minutes=5,
                could_stop=False, uses=SLEEP, because=(one.planned.of,),
            )  # fmt: skip


def settings_crossed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a heater is written to give more at its lowest setting than at its highest.

    Asks: the lowest heat of a heater against its highest
    Limit: no more than the highest
    Source: own-rule
    Lever: lowest and highest of the heater
    """
    for one in result.heaters if result.use == "sleep" else ():
        lowest, highest = one.planned.heater.lowest, one.planned.heater.highest
        if lowest is None or highest is None or not (lowest.known and highest.known) or lowest.low <= highest.high:
            continue
        says = f"{one.planned.name} is written to give {show(lowest.best, 'power', shown_in)} at its lowest setting and"
        says += f" {show(highest.best, 'power', shown_in)} at its highest: one of them is wrong"
        yield Finding(
            "heat/settings-crossed", one.planned.of, "unknown", says, lowest.best, highest.best,
            highest.best - lowest.best, "W", OWN_RULE, one.planned.of,
            act=f"Read both on the plate of {one.planned.name}", minutes=5, could_stop=False, uses=SLEEP,
            because=(one.planned.of,),
        )  # fmt: skip


def held(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say how warm the room stays in the coldest night of a place, where it is not held as warm as is wanted.

    Asks: the coldest hour inside, with people asleep and the heater as it may be set
    Limit: what the heater is set to; 62 F where nobody wrote it
    Source: night-practice; the room through three such days, hour by hour
    Lever: insulation, a strip on the studs, vents, the heater
    """
    for one in result.held if result.sleepers else ():
        heater = next((each for each in result.heaters if one.warmth and each.planned.of == one.warmth.of), None)
        if one.warmth is None:
            yield _without(one, shown_in)
        elif one.warmth.highest.known and one.coldest.low < one.warmth.wanted - NEAR:
            yield _not_held(one, heater, shown_in)


def cold_at_work(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the room is colder than people work well in, on the coldest day that is written.

    Asks: the coldest hour of work by the best heater that stands, lit in good time, without sun
    Limit: 13 C, of a room for hard work (from memory); from 16 C down it is told as cold
    Source: workrooms-recalled; three such days through the room, hour by hour
    Lever: a heater that is fed and vented, insulation, another place
    """
    cold = [one for one in result.cold_work if one.cold.low < WORK_ROOM - NEAR]
    if not cold:
        return
    one = min(cold, key=lambda each: (each.cold.best >= HARD_WORK, each.cold.low))
    kind: Kind = "limit" if one.cold.best < HARD_WORK else "unknown" if one.cold.low < HARD_WORK else "advice"
    row = "work" if kind == "advice" else "hard work"
    limit = WORK_ROOM if kind == "advice" else HARD_WORK
    by = f"by {one.name}" if one.heater else "with no heater that may run"
    says = f"on the coldest day at {one.outdoors.place}, {between(one.outdoors.coldest, shown_in)} outside at its"
    room = (
        f"is {between(one.cold, shown_in)}" if kind == "limit" else f"may be as cold as {warm(one.cold.low, shown_in)}"
    )
    says += f" coldest, the room {room} at work {by};"
    says += f" below {warm(limit, shown_in)} hands get stiff and people work badly"
    where = one.heater or one.outdoors.of
    yield Finding(
        "heat/cold-at-work", where, kind, says, one.cold.low, limit, one.cold.low - limit, "K",
        source_of("at_work", row), where, act="Dress for it and warm up elsewhere by the hour, or write a heater whose"
        " fumes go outside, with what feeds it and what is in its tank", minutes=10, could_stop=False, uses=WORK,
        because=(where, one.outdoors.of) if one.heater else (where,),
    )  # fmt: skip


def taken(one: HeldNight, shown_in: HeaderUnits) -> tuple[tuple[str, str], ...]:
    """Return what a night was worked out of, to be shown with its finding."""
    out = one.outdoors
    found = [
        ("Outside at its coldest", warm(out.coldest.best, shown_in)),
        ("Warmer by day by", show_band(out.swing, "temperature difference", shown_in)),
        ("Wind", show_band(out.wind, "speed", shown_in)),
        ("Planes and holes lose", show_band(one.shell, "W/K", shown_in)),
        ("With the air that is lost", show_band(one.loss, "W/K", shown_in)),
        ("People give, less what goes to the clear sky", show_band(one.gains, "heat flow", shown_in)),
    ]
    if one.warmth is not None:
        found += [
            ("Heat at the highest setting", show_band(one.warmth.highest, "power", shown_in)),
            ("Heat at the lowest setting", show_band(one.warmth.lowest, "power", shown_in)),
            ("Heat of the night", show_band(one.energy, "energy", shown_in)),
        ]
    return tuple(found)


def _without(one: HeldNight, shown_in: HeaderUnits) -> Finding:
    out = one.outdoors
    says = f"no heater that may run with somebody asleep stands: at {out.place},"
    says += f" {between(out.coldest, shown_in)} outside, the room comes to {between(one.coldest, shown_in)}"
    says += "; what keeps a sleeper warm are bags for that"
    return Finding(
        "heat/held", out.of, "limit", says, one.coldest.best, None, None, "K", source_of("wanted", "asleep"), out.of,
        act="Take bags made for that cold, and do not stay where it gets colder than they are made for", minutes=5,
        uses=SLEEP, because=(out.of,), besides=taken(one, shown_in),
    )  # fmt: skip


def _not_held(one: HeldNight, heater: StandingHeater | None, shown_in: HeaderUnits) -> Finding:
    warmth, out = one.warmth, one.outdoors
    assert warmth is not None
    is_surely_short = one.coldest.best < warmth.wanted - NEAR
    wanted = warm(warmth.wanted, shown_in) + (" (taken where nobody wrote it)" if warmth.is_wanted_assumed else "")
    verb = "comes to" if is_surely_short else "may come to no more than"
    reached = between(one.coldest, shown_in) if is_surely_short else warm(one.coldest.low, shown_in)
    says = f"at {out.place}, {between(out.coldest, shown_in)} outside, {warmth.name} at its highest {verb} {reached}"
    says += f" inside, {wanted} is wanted"
    if one.holds_down_to is not None and one.holds_down_to.best < warmth.wanted:
        says += f"; it holds that down to {between(one.holds_down_to, shown_in)} outside"
    if heater is not None and not heater.is_certain:
        says += "; whether it stands nobody ticked"
    act = "Shut every vent that may be shut but for the two that people breathe by, and find what leaks; then lessen"
    act += " what is lost: boxwright heat RIG lists it face by face"
    return Finding(
        "heat/held", warmth.of, "limit" if is_surely_short else "unknown", says, one.coldest.low, warmth.wanted,
        one.coldest.low - warmth.wanted, "K", source_of("wanted", "asleep"), warmth.of, act=act, minutes=60,
        could_stop=False, uses=SLEEP, because=(warmth.of, out.of), besides=taken(one, shown_in),
    )  # fmt: skip


def too_warm_at_lowest(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say from which outside temperature on a heater makes too much heat on its lowest setting.

    Asks: the lowest heat of a heater that burns, against what the room loses
    Limit: the mildest hour of the place's coldest day; 28 C in the room where nobody wrote how it runs
    Source: heater-practice, year-practice; heat divided by loss, people's own warmth counted in
    Lever: a vent, a smaller setting, whether it switches itself off
    """
    # Of each heater the night in which the room may get warmest.
    nights = sorted(result.held if result.sleepers else (), key=lambda one: -one.warmest.high)
    worst = {one.warmth.of: one for one in reversed(nights) if one.warmth is not None}
    for heater in result.heaters:
        one = worst.get(heater.planned.of)
        if one is None or one.warmth is None or one.warmth.switches is True or not one.warmth.highest.known:
            continue
        warmth, limit = one.warmth, one.too_warm_above
        if limit is None:
            yield _lowest_unsaid(one, shown_in)
            continue
        milder = warm(limit.best, shown_in)
        says = f"on its lowest setting, {show(warmth.lowest.best, 'power', shown_in)}, {warmth.name} makes the room"
        says += f" warmer than {warm(warmth.wanted, shown_in)} when it is milder than {between(limit, shown_in)}"
        says += " outside"
        if warmth.switches is None:
            says += ", unless it goes off by itself, which nobody wrote"
        flow = _vented_away(one)
        if flow is not None:
            milder_by = warm(limit.best + A_LITTLE_MILDER, shown_in)
            says += f"; at {milder_by} outside {show(flow, 'flow', shown_in)} more outdoor air keeps it there"
        says += _to_too_warm(one, shown_in)
        yield Finding(
            "heat/too-warm-at-lowest", warmth.of, _kind_of_too_warm(one), says, limit.best, None, None,
            "K", source_of("margins", "reserve"), warmth.of,
            act=f"Open a vent or a window when it is milder than {milder}, or set it to go off and on by itself"
            " (switches: yes) if its leaflet says that it can", minutes=5, could_stop=False,
            could_limit=_may_be_too_warm(one), uses=SLEEP, because=(warmth.of,), besides=taken(one, shown_in),
        )  # fmt: skip


def _may_be_too_warm(one: HeldNight) -> bool:
    """Return whether even the coldest night may get warmer than people bear asleep, as little as is known."""
    return one.warmest.high > BEARABLE


def _kind_of_too_warm(one: HeldNight) -> Kind:
    """Return how grave it is that a heater runs on: a limit where even the coldest night surely gets too warm by it."""
    if one.warmth is None or one.warmth.switches is None:
        return "unknown"
    if not _may_be_too_warm(one):
        return "advice"
    return "limit" if one.warmest.low > BEARABLE else "unknown"


def _to_too_warm(one: HeldNight, shown_in: HeaderUnits) -> str:
    if not _may_be_too_warm(one):
        return ""
    may_make = f"may make {warm(one.warmest.high, shown_in)}"
    makes = f"makes {between(one.warmest, shown_in)}" if _kind_of_too_warm(one) == "limit" else may_make
    return f"; in the night at {one.outdoors.place}, running on, it {makes}"


def _lowest_unsaid(one: HeldNight, shown_in: HeaderUnits) -> Finding:
    """Return the question of a heater whose lowest setting nobody wrote and that perhaps cannot go off by itself."""
    warmth = one.warmth
    assert warmth is not None
    off = "it does not go off by itself" if warmth.switches is False else "nobody wrote whether it goes off by itself"
    says = f"nobody wrote what {warmth.name} gives at its lowest setting, and {off}: at {one.outdoors.place} the room"
    says += f" may get {as_warm_as(one.warmest.high, shown_in)}, {warm(warmth.wanted, shown_in)} is wanted"
    return Finding(
        "heat/too-warm-at-lowest", warmth.of, "unknown", says, one.warmest.high, BEARABLE,
        BEARABLE - one.warmest.high, "K", source_of("year_rooms", "too warm"), warmth.of,
        act=f"Read in the leaflet of {warmth.name} what it gives at its lowest and whether it goes off by itself, and"
        " write lowest: and switches:", minutes=5, could_stop=False, could_limit=_may_be_too_warm(one), uses=SLEEP,
        because=(warmth.of,), besides=taken(one, shown_in),
    )  # fmt: skip


def _vented_away(one: HeldNight) -> float | None:
    """Return the air that carries off what is too much when it is a little milder; None where it is as warm outside."""
    if one.warmth is None or one.too_warm_above is None:
        return None
    difference = one.warmth.wanted - one.too_warm_above.best - A_LITTLE_MILDER
    return one.loss.best * A_LITTLE_MILDER / (HEAT_OF_AIR * difference) if difference > 1.0 else None


def fuel_for_the_night(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say whether what is in the tank lasts the coldest night, with a fifth to spare.

    Asks: the heat of the night by efficiency and energy of the fuel, and by the rate the heater is said to burn; of
        wood and coal how long a filling lasts
    Limit: what the load state has in the tank; the night
    Source: fuel-handbook; solid-fuel-recalled; efficiency by heater-practice
    Lever: the tank's fill; lasts of the heater
    """
    for heater in result.heaters if result.use == "sleep" else ():
        nights = [one for one in result.held if one.warmth is not None and one.warmth.of == heater.planned.of]
        needs = [(one, need) for one in nights if (need := fuel_of_night(one, heater)) is not None]
        if nights and fuel_named(heater.planned.heater.of) in SOLID:
            yield from _fed_by_hand(heater, max(nights, key=lambda one: one.energy.high), shown_in)
        if heater.runs != "burns" or not needs:
            continue
        tank = heater.tank
        if tank is None or not tank.volume.known:
            yield _no_tank(heater, max((need for _, need in needs), key=lambda one: one.high), shown_in)
            continue
        full, fill = tank.volume, tank.fill
        has = Band(full.best * fill.best, full.low * fill.low, full.high * fill.high)
        short = [(one, need) for one, need in needs if need.high * (1.0 + RESERVE) > has.low]
        if not short:
            continue
        is_filled = fill.low == fill.high
        # What one night surely takes too much, a second one that may take more makes no better.
        worst, need = max(short, key=lambda one: (_kind_of(one[1], has, is_filled) == "limit", one[1].high))
        name, wanted = heater.planned.name, need.high * (1.0 + RESERVE)
        kind = _kind_of(need, has, is_filled)
        says = f"{name} burns {show_band(need, 'volume', shown_in)} in the coldest night at {worst.outdoors.place};"
        says += f" with a fifth to spare that is up to {show(wanted, 'volume', shown_in)}, and {tank.name} holds"
        says += f" {show_band(replace(has, assumed=False), 'volume', shown_in)} then"
        says += "" if is_filled else f": the load state leaves open how full it is{_as_full(need, full)}"
        yield Finding(
            "heat/fuel-for-the-night", tank.of, kind, says, has.low, wanted, has.low - wanted, "m**3",
            source_of("margins", "reserve"), tank.of,
            act=f"Fill {tank.name} before the night, outside and with the heater off", minutes=10, could_stop=False,
            uses=SLEEP, because=(tank.of, heater.planned.of), besides=taken(worst, shown_in),
        )  # fmt: skip


def _fed_by_hand(heater: StandingHeater, coldest: HeldNight, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a fire somebody feeds goes out where a filling lasts no night, and how much of it a night takes."""
    facet, name, energy = heater.planned.heater, heater.planned.name, coldest.energy
    lasts = facet.lasts if facet.lasts is not None and facet.lasts.known else None
    if energy.high <= 0.0 or (lasts is not None and lasts.low >= NIGHT_LASTS):
        return
    fuel = fuel_named(facet.of)
    holds_least, holds_most, worst, best = SOLID[fuel]
    low, high = max(energy.low, 0.0) / (holds_most * best), energy.high / (holds_least * worst)
    burns = show_band(Band((low + high) / 2.0, low, high, spread="interval"), "mass", shown_in)
    says = f"{name} burns {burns} of {fuel} in the coldest night at {coldest.outdoors.place}, and"
    says += f" a filling is said to last {show_band(lasts, 'time', shown_in)}" if lasts else " nobody wrote how long a"
    says += "" if lasts else " filling lasts"
    says += f" of its {show(NIGHT_LASTS, 'time', shown_in)}: whoever sleeps by it feeds it, or it goes out"
    least = lasts.low if lasts else None
    yield Finding(
        "heat/fuel-for-the-night", heater.planned.of, "limit" if lasts and lasts.high < NIGHT_LASTS else "unknown",
        says, least, NIGHT_LASTS if lasts else None, least - NIGHT_LASTS if least is not None else None,
        "s" if lasts else "", source_of("solid_fuel", fuel), heater.planned.of, act="Let it burn through an evening"
        " with somebody awake, write lasts: 8 h of the heater as it was, and have bags at hand", minutes=600,
        could_stop=False, uses=SLEEP, because=(heater.planned.of,), besides=taken(coldest, shown_in),
    )  # fmt: skip


def _kind_of(need: Band, has: Band, is_filled: bool) -> Kind:
    """Return how a tank stands against a night: short, perhaps short, or with less to spare than a fifth."""
    if need.low > has.high or (is_filled and need.best > has.best):
        return "limit"
    return "unknown" if need.high > has.low else "advice"


def _as_full(need: Band, full: Band) -> str:
    """Return what it would come to empty and full, where nobody wrote how full it is."""
    lasts = "lasts the night" if full.low >= need.high else "may last" if full.high >= need.low else "is too little"
    return f"; empty it lasts no hour, full it {lasts}"


def _no_tank(heater: StandingHeater, need: Band, shown_in: HeaderUnits) -> Finding:
    name, named = heater.planned.name, heater.tank_named
    why = "nobody wrote what tank it draws from, or what that holds"
    if named and heater.tank is None:
        why = f"the {named} it draws from is not there then, or no tank of the file is called so"
    return Finding(
        "heat/fuel-for-the-night", heater.planned.of, "unknown", f"{name} burns {show_band(need, 'volume', shown_in)}"
        f" in the coldest night, and {why}", source=OWN_RULE,
        lever=heater.planned.of, act="Write the tank as a part with"
        f" tank: {{of: {heater.planned.heater.of or 'diesel'}, volume: ...}}, and name it first in the path of the"
        " heater", minutes=5, could_stop=False, uses=SLEEP, because=(heater.planned.of,),
    )  # fmt: skip


__all__ = [
    "fuel_for_the_night",
    "heat_not_known",
    "held",
    "night_not_known",
    "room_not_known",
    "settings_crossed",
    "taken",
    "too_warm_at_lowest",
]
