"""Rules of what makes cold: where its warm side breathes, whether that is enough, and where its water goes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.heat.cooling import NO_HATCH, asks_for, water_of
from boxwright.disciplines.heat.feeds import narrowest
from boxwright.disciplines.heat.parts import PlannedCooler
from boxwright.disciplines.heat.result import MOST_COLD_OF_A_WATT, Result, StandingCooler
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, WORK, asks_site, full_in_words, source_of, too_little
from boxwright.disciplines.heat.year_room import ROOMS
from boxwright.finding import Finding, Kind, Use, listed
from boxwright.units import HeaderUnits, show, show_band

USES: tuple[Use, ...] = ("sleep", "work")
SOURCE = source_of("cooler_numbers", "warms its air")
DAY, LITRES = 86400.0, 1000.0


def _there(result: Result) -> tuple[StandingCooler, ...]:
    return result.coolers if result.use in USES else ()


def cooler_hatch(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the warm side of a cooler does not breathe outside, and ask where nobody wrote by what it does.

    Asks: which opening the warm side of a cooler breathes through, and whether it stands
    Limit: one that stands; it is opened before the cooler runs
    Source: cooler-practice
    Lever: hatch of the cooler
    """
    for standing in _there(result):
        one, word = standing.planned, standing.planned.cools.hatch.strip()
        if "hatch not written" in standing.faults:
            yield Finding(
                "heat/cooler-hatch", one.of, "unknown", f"nobody wrote which opening the warm side of {one.name}"
                " breathes through", source=SOURCE, lever=f"{one.of}.cools.hatch", act="Write under cools of"
                f" {one.name} hatch: and the name of the opening, or of: split where its warm side stands outside",
                minutes=2, could_stop=False, uses=USES, because=(one.of,),
            )  # fmt: skip
        says = ""
        if "hatch not there" in standing.faults:
            says = f"{word}, which the warm side of {one.name} breathes through, does not stand yet"
        elif "breathes in the room" in standing.faults:
            says = f"the warm side of {one.name} breathes in the room: it warms it by more than it cools it"
        if says:
            yield Finding(
                "heat/cooler-hatch", one.of, "fix", says, source=SOURCE, lever=f"{one.of}.cools.hatch",
                act=f"Give the warm side of {one.name} an opening to the outside, and open it before it runs",
                minutes=120, uses=USES, because=(one.of,),
            )  # fmt: skip


def cooler_feed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that what feeds a cooler does not stand or gives too little, and ask where nobody wrote what does.

    Asks: what a cooler is plugged into, or wired to, whether all of that stands, and gives what it takes
    Limit: all of it; the weakest of the inverter, fuses and breakers on its way, and of what its battery gives
    Source: own-rule
    Lever: fed_by and draw of the cooler, its wires
    """
    for one in _there(result):
        is_asked = one.is_unsaid or one.is_contradicted or one.at_once != "yes"
        if one.fed == "yes" and not is_asked:
            continue
        kind, says, act = _too_little_for(one, shown_in) if one.feed.is_sure else _not_fed(one)
        where = one.planned.of
        # The hot day counts on what is only asked here.
        is_counted = is_asked and result.hot is not None and result.hot.run.way == "cooled"
        yield Finding(
            "heat/cooler-feed", where, kind, says, source=OWN_RULE, lever=one.feed.lacking_of or where, act=act,
            minutes=10, could_stop=False, could_limit=is_counted, uses=USES, because=(where,),
        )  # fmt: skip


def _not_fed(one: StandingCooler) -> tuple[Kind, str, str]:
    """Return what is said of a cooler whose feed does not stand, or that nobody wrote."""
    name, feed = one.planned.name, one.feed
    way = " from ".join(feed.way)
    if feed.ends == "nowhere":
        says = f"{name} is fed by {way}, and {feed.lacking} is nothing of the file: it cools nothing"
        return "fix", says, f"Write {feed.lacking} as it is called under parts: or openings:"
    if feed.stands == "no":
        says = f"{name} is fed by {way}, and {feed.lacking} is not there then: it cools nothing"
        return "fix", says, f"Fit {feed.lacking}"
    if feed.stands == "perhaps" and feed.ends != "unfed":
        says = f"{name} is fed by {way}, and whether {feed.lacking} stands nobody ticked: it may cool nothing"
        return "unknown", says, f"Look at {feed.lacking}, switch {name} on, and tick what stands"
    act = f"Look where its cable goes, and write fed_by: inlet-30A under cools of {name}, or its wire"
    if feed.ends == "unfed":
        says = f"{name} is fed by {way}, and nobody wrote what feeds {feed.way[-1]}: without it, it cools nothing"
        return "unknown", says, act
    return "unknown", f"nobody wrote what feeds {name}: without it, it cools nothing", act


def _too_little_for(one: StandingCooler, shown_in: HeaderUnits) -> tuple[Kind, str, str]:
    """Return what is said of a cooler whose feed gives too little, or perhaps does."""
    name, feed, want = one.planned.name, one.feed, one.wanted.by(one.feed)
    if want is None:
        says = f"nobody wrote what {name} takes of electricity, so nobody can say whether {feed.way[-1]} gives it"
        return "unknown", says, f"Read on the plate of {name} what it takes, and write draw: 5 A under cools"
    takes = f"{name} takes {show_band(want, 'power', shown_in)}"
    limit = narrowest(one.wanted, feed)
    if one.suits != "yes" and limit is None:
        made = "what is written of it is made for other volts" if one.suits == "no" else (
            "nobody wrote whether it is made for a battery or for the mains"
        )  # fmt: skip
        says = f"{name} is fed by {' from '.join(feed.way)}, and {made}: it may cool nothing, or burn out"
        act = f"Read its volts on its plate, and write of: {one.planned.cools.of.strip()} 12 V, or feed it from an"
        return ("fix" if one.suits == "no" else "unknown"), says, f"{act} inverter or from outside"
    if one.is_contradicted and limit is None:
        cold = show(one.planned.cools.heat.low if one.planned.cools.heat else 0.0, "power", shown_in)
        says = f"{takes} and is written to take {cold} out of the room: no more than {MOST_COLD_OF_A_WATT:.0f} W"
        return "unknown", f"{says} of cold come of each W, so one of them is wrong", f"Read both on the plate of {name}"
    if limit is None and one.at_once != "yes":
        says = f"{takes}, and {listed(one.beside)} {'takes' if len(one.beside) == 1 else 'take'} of the same wire or"
        says += " thing, which gives too little for all at once"
        return "unknown", says, f"Run one of them at a time, or give {name} a way of its own"
    if limit is None:
        says = f"{takes}, and nobody wrote what {feed.way[-1]} gives: where that is less, {name} cools nothing"
        return "unknown", says, asks_site(name, feed)
    is_surely = one.enough == "no"
    says, act = too_little(name, takes, limit, feed, is_surely, False, shown_in)
    return "fix" if is_surely else "unknown", says, act


def battery_for_the_day(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask whether a battery lasts the hot day with what it cools by, where the room gets too warm without.

    Asks: what cools takes of it at its full cold, as long as the day asks for it, beside what else is written to draw
    Limit: the usable share of its label, less what it lacks of full; the sun and a charger are not counted
    Source: battery-practice; hours by the hot day itself
    Lever: a larger battery, another feed, charge of the load state
    """
    hot = result.hot if result.use in USES else None
    if hot is None or hot.warm.high <= ROOMS["too warm"]:
        return
    for one in result.drained:
        told, besides = listed(one.told), show(one.besides.high, "energy", shown_in)
        says = f"{told} may take {show_band(one.takes, 'energy', shown_in)} of electricity on a hot day at"
        says += f" {hot.hot.place}"
        says += f", and what else is written to draw {besides}" if one.besides.high > 0.0 else ""
        act = f"Plug {told} in outside on such a day, or count on shade and moved air alone; a larger battery mends it"
        if one.holds.known:
            holds = show_band(replace(one.holds, assumed=False), "energy", shown_in)
            least = show(min(one.holds.low / (one.takes.high + one.besides.high), 1.0) * DAY, "time", shown_in)
            says += (
                f"; {one.name}, {full_in_words(one.charge)} as it begins, gives {holds}: it may be empty after {least}"
            )
        else:
            says += f"; nobody wrote what {one.name} holds"
            act = f"Read on the label of {one.name} its volts and ampere hours, and write them under battery"
        says += f"; what {listed(one.unsaid)} takes besides nobody wrote" if one.unsaid else ""
        says += "; what the sun gives meanwhile is not counted" if one.has_sun else ""
        uses = SLEEP if result.use == "sleep" else WORK
        yield Finding(
            "heat/battery-for-the-day", one.of, "unknown", says, source=source_of("usable", "lithium"), lever=one.of,
            act=act, minutes=30, could_stop=False, uses=uses, because=(one.of, *one.coolers),
        )  # fmt: skip


def cooler_breathes(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the warm air of a cooler has too little to pass, or comes back to where it breathes in.

    Asks: the free area its warm air passes, mesh and louvres taken off; whether it comes back
    Limit: what its heat asks for, warmed by 12 K (8 to 18) at 2 m/s (1.5 to 3), in and out: own reckoning
    Source: cooler-practice
    Lever: a larger grille, a wall between in and out
    """
    for standing in _there(result):
        one = standing.planned
        if "air comes back" in standing.faults:
            yield Finding(
                "heat/cooler-breathes", one.of, "fix", f"the warm air of {one.name} comes back to where it breathes in:"
                " it cools less and less, and switches itself off", source=SOURCE, lever=f"{one.of}.cools.returns",
                act=f"Put a wall or a duct between what {one.name} breathes in and out", minutes=60, uses=USES,
                because=(one.of,),
            )  # fmt: skip
        if "numbers not written" in standing.faults:
            yield _passes_unsaid(one)
        elif "passes too little" in standing.faults:
            yield _passes_too_little(one, shown_in)


def _passes_unsaid(one: PlannedCooler) -> Finding:
    heat = one.cools.heat
    lacks = "what it takes out of the room" if heat is None or not heat.known else "how much it passes"
    return Finding(
        "heat/cooler-breathes", one.of, "unknown", f"whether the warm air of {one.name} gets out cannot be said:"
        f" nobody wrote {lacks}", source=SOURCE, lever=f"{one.of}.cools", act=f"Read the plate of {one.name} and"
        " measure its grilles, mesh taken off; write heat: and passes: under cools", minutes=10,
        could_stop=False, could_limit=False, uses=USES, because=(one.of,),
    )  # fmt: skip


def _passes_too_little(one: PlannedCooler, shown_in: HeaderUnits) -> Finding:
    heat, passes = one.cools.heat, one.cools.passes
    assert heat is not None and passes is not None
    asked = asks_for(heat)
    says = f"the warm air of {one.name} passes {show_band(passes, 'area', shown_in)}, in and out;"
    says += f" {show_band(asked, 'area', shown_in)} is reckoned for it: it gets hot and cools little"
    return Finding(
        "heat/cooler-breathes", one.of, "advice", says, passes.low, asked.best, passes.low - asked.best, "m2",
        SOURCE, f"{one.of}.cools.passes", act=f"Follow the leaflet of {one.name}: larger grilles, coarser mesh",
        minutes=60, uses=USES, because=(one.of,),
    )  # fmt: skip


def cooler_water(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask where the water of a cooler goes, and say how much it may be.

    Asks: where the water a cooler takes out of the air is led
    Limit: outside, not onto the floor or into the wall
    Source: cooler-practice
    Lever: drains of the cooler
    """
    for one in (standing.planned for standing in _there(result)):
        drains, heat = one.cools.drains.strip().lower(), one.cools.heat
        if drains and drains not in NO_HATCH:
            continue
        much = ""
        if heat is not None and heat.known:
            # A kilogram of water is a litre.
            a_day = show(water_of(heat).best * DAY / LITRES, "volume", shown_in)
            much = f"; in damp air it makes up to {a_day} a day"
        says = f"nobody wrote where the water of {one.name} goes{much}"
        if drains:
            says = f"the water of {one.name} goes nowhere but into the room{much}"
        yield Finding(
            "heat/cooler-water", one.of, "fix" if drains else "unknown", says, source=SOURCE,
            lever=f"{one.of}.cools.drains", act=f"Lead the water of {one.name} outside, downhill, away from the wall,"
            " and write drains: below floor", minutes=20, could_stop=False, could_limit=False, uses=USES,
            because=(one.of,),
        )  # fmt: skip
