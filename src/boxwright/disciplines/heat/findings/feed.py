"""Rules of the electricity a heater wants: what feeds it, and what it takes while it runs and starts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.heat.burner import burns_by_itself
from boxwright.disciplines.heat.electricity import NIGHT, lasts, running
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, source_of
from boxwright.finding import Finding, Kind
from boxwright.units import Band, HeaderUnits, show, show_band


def feed_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what feeds a heater that takes electricity, where somebody sleeps by it.

    Asks: what it is plugged into, or wired to; and what feeds that
    Limit: none
    Source: own-rule
    Lever: a wire to the heater, or its fed_by
    """
    for one in result.heaters if result.use == "sleep" else ():
        facet, name, where = one.planned.heater, one.planned.name, one.planned.of
        if not one.takes_electricity or one.feed.ends not in ("unsaid", "unfed"):
            continue
        watts = facet.highest if one.runs == "electric" else running(facet)
        takes = f" its {show_band(watts, 'power', shown_in)}" if watts is not None and watts.known else ""
        says = f"nobody wrote what feeds {name}{takes}: without it, it warms nothing"
        if one.feed.ends == "unfed":
            last = one.feed.way[-1]
            says = f"{name} is fed by {' from '.join(one.feed.way)}, and nobody wrote what feeds {last}: without it,"
            says += f" {name} warms nothing"
        yield Finding(
            "heat/feed-not-known", where, "unknown", says, source=OWN_RULE, lever=where, act="Look where its wire or"
            " cable comes from, and write the wire: {from: fuse-panel, to: " + name + "}, or fed_by: inlet-30A of the"
            " heater", minutes=5, could_stop=False, uses=SLEEP, because=(where,),
        )  # fmt: skip


def feed_stands(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that what feeds a heater does not stand, or that nothing of the file is called so.

    Asks: does all that lies between a heater and its battery, or the cable from outside, stand
    Limit: all of it
    Source: own-rule
    Lever: fed_by of the heater, its wires, the battery
    """
    for one in result.heaters if result.use == "sleep" else ():
        name, where, feed = one.planned.name, one.planned.of, one.feed
        if not one.takes_electricity:
            continue
        way = " from ".join(feed.way)
        kind: Kind = "unknown"
        if feed.ends == "nowhere":
            says = f"{name} is fed by {way}, and nothing of the file is called {feed.lacking}: it counts as fed by"
            says += " nothing"
            act = f"Write {feed.lacking} as it is called under parts: or openings:"
        elif feed.stands == "no":
            kind = "limit"
            says = f"{name} is fed by {way}, and {feed.lacking} is not there then: {name} warms nothing"
            act = f"Fit {feed.lacking} before you sleep by {name}, or take bags for the cold"
        elif feed.stands == "perhaps":
            says = f"{name} is fed by {way}, and whether {feed.lacking} stands nobody ticked: {name} may warm nothing"
            act = f"Look at {feed.lacking}, switch {name} on, and tick what stands"
        elif feed.is_crossed:
            says = f"{name} is written to be fed by {feed.way[0]}, and no wire to it comes from there"
            act = "Follow its cable by hand, and write one of both: the wire, or fed_by: of the heater"
        else:
            continue
        because = (where, feed.lacking_of) if feed.lacking_of else (where,)
        yield Finding(
            "heat/feed-stands", where, kind, says, source=OWN_RULE, lever=feed.lacking_of or where, act=act,
            minutes=10, could_stop=False, uses=SLEEP, because=because,
        )  # fmt: skip


def feed_too_small(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that an electric heater takes more than the inverter that feeds it gives without a break.

    Asks: the highest heat of the heater against what the inverter is rated for
    Limit: no more than its rated power: an inverter switches off above it
    Source: own-rule
    Lever: a smaller heater, a larger inverter, another feed
    """
    for one in result.heaters if result.use == "sleep" else ():
        heat, most, name = one.planned.heater.highest, one.feed.most, one.planned.name
        if one.runs != "electric" or most is None or heat is None or not heat.known or heat.high <= most.low:
            continue
        takes = f"{name} takes {show_band(heat, 'power', shown_in)}"
        passes = next(way for way in one.feed.way if one.feed.most_of.endswith(f"[{way}]"))
        says = f"{takes}, and nobody wrote what {passes} gives"
        act = f"Read on the plate of {passes} what it gives without a break, and write inverter: 1000 W"
        if most.known:
            says = f"{takes}, and {passes} gives {show_band(most, 'power', shown_in)} without a break: it switches off"
            act = f"Feed {name} by a cable from outside, or take a heater that takes less than {passes} gives"
        yield Finding(
            "heat/feed-too-small", one.planned.of, "limit" if heat.best > most.high else "unknown", says, heat.best,
            most.best if most.known else None, most.best - heat.best if most.known else None, "W", OWN_RULE,
            one.feed.most_of, act=act, minutes=10, could_stop=False, uses=SLEEP,
            because=(one.planned.of, one.feed.most_of),
        )  # fmt: skip


def battery_for_the_night(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say whether the battery that feeds a heater lasts the coldest night, full as the sun goes down.

    Asks: what the heater takes in the night, with what else is written to draw, against what a full battery gives
    Limit: the usable share of the battery's label
    Source: battery-practice; hours and starts by the night itself
    Lever: a larger battery, another feed
    """
    for one in result.heaters if result.use == "sleep" else ():
        nights = [load for load in result.loads if load.of == one.planned.of]
        holds, feed, name = one.feed.holds, one.feed, one.planned.name
        if not nights or holds is None:
            continue
        worst = max(nights, key=lambda load: load.joule.high)
        need, battery = worst.joule, feed.way[-1]
        takes = f"{name} takes {show_band(need, 'energy', shown_in)} of electricity in the coldest night at"
        takes += f" {worst.when}"
        if not holds.known:
            yield _label_unsaid(one, takes, battery)
            continue
        most = need.high + result.also.high
        if most <= holds.low:
            continue
        says = f"{takes}, and {battery}, full as it begins, gives {show_band(_plain(holds), 'energy', shown_in)}"
        also = show(result.also.high, "energy", shown_in)
        if need.high <= holds.low:
            says += f": enough for it alone, perhaps not with all else that is written to draw, up to {also}"
            act = "Switch off at night what else draws, or write hours: and duty: of each as it is"
        else:
            says += f": it lasts {show_band(lasts(holds, need), 'time', shown_in)} of {show(NIGHT, 'time', shown_in)}"
            says += f", and what else is written to draw may take up to {also}" if result.also.high > 0.0 else ""
            act = f"Plug in outside for such a night, or sleep warm without {name}: bags for the cold; a larger battery"
            act += " mends it"
        is_short = need.best > holds.best
        yield Finding(
            "heat/battery-for-the-night", feed.battery, "limit" if is_short else "unknown", says, holds.low, most,
            holds.low - most, "J", source_of("usable", "lithium"), feed.battery,
            act=act, minutes=30, could_stop=False, uses=SLEEP, because=(feed.battery, one.planned.of),
        )  # fmt: skip


def _plain(band: Band) -> Band:
    return replace(band, assumed=False)


def _label_unsaid(one: StandingHeater, takes: str, battery: str) -> Finding:
    return Finding(
        "heat/battery-for-the-night", one.feed.battery, "unknown", f"{takes}, and nobody wrote what {battery} holds",
        source=OWN_RULE, lever=one.feed.battery, act=f"Read on the label of {battery} its volts and ampere hours, and"
        " write battery: {kind: LiFePO4, volts: 12.8, Ah: 200}", minutes=5, could_stop=False, uses=SLEEP,
        because=(one.feed.battery, one.planned.of),
    )  # fmt: skip


def draw_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what a heater that burns takes of electricity, while it runs and while it starts.

    Asks: the current of its fan and pump, and of its glow pin
    Limit: none; 10 to 40 W and 80 to 120 W are taken (common practice)
    Source: heater-practice
    Lever: draw and start of the heater
    """
    for one in result.heaters if result.use == "sleep" else ():
        facet, name, where = one.planned.heater, one.planned.name, one.planned.of
        missing = [
            words
            for words, amps in (("while it runs", facet.draw), ("while it starts", facet.start))
            if amps is None or not amps.known
        ]
        if one.runs != "burns" or not missing or burns_by_itself(facet):
            continue
        yield Finding(
            "heat/draw-not-known", where, "unknown", f"nobody wrote what {name} takes of electricity"
            f" {' and '.join(missing)}; without it its fan stops and its fire goes out", lever=where,
            source=source_of("takes", "running"), act="Read both on its plate, and write draw: 1.2 A and start: 9 A of"
            " the heater; one that takes none has draw: 0 A and start: 0 A", minutes=5, could_stop=False,
            could_limit=False, uses=SLEEP, because=(where,),
        )  # fmt: skip


__all__ = ["battery_for_the_night", "draw_not_known", "feed_not_known", "feed_stands", "feed_too_small"]
