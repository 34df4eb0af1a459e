"""Rules of the electricity a heater wants: what feeds it, and what it takes while it runs and starts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.heat.battery import Hung, is_limit, taken_of, together, whole_of
from boxwright.disciplines.heat.burner import burns_by_itself
from boxwright.disciplines.heat.electricity import NIGHT, lasts, running
from boxwright.disciplines.heat.feeds import MOST_OF_A_PLUG, Limit, narrowest
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.telling import (
    CUTS_OFF,
    OWN_RULE,
    SLEEP,
    asks_site,
    full_in_words,
    source_of,
    too_little,
)
from boxwright.exchange import ElectricLoad
from boxwright.finding import Finding, Kind, listed
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
        watts = facet.highest if one.runs == "electric" else running(facet, one.feed.volts)
        takes = f" its {show_band(watts, 'power', shown_in)}" if watts is not None and watts.known else ""
        says = f"nobody wrote what feeds {name}{takes}: without it, it warms nothing"
        if one.feed.ends == "unfed":
            last = one.feed.way[-1]
            says = f"{name} is fed by {' from '.join(one.feed.way)}, and nobody wrote what feeds {last}: without it,"
            says += f" {name} warms nothing"
        yield Finding(
            "heat/feed-not-known", where, "unknown", says, source=OWN_RULE, lever=where, act="Look where its wire or"
            " cable comes from, and write the wire: {from: fuse-panel, to: " + name + "}, or fed_by:"
            f" {'inlet-30A' if one.runs == 'electric' else 'battery'} of the heater", minutes=5, could_stop=False,
            uses=SLEEP, because=(where,),
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


def feed_volts(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a heater of the mains hangs on a battery with no inverter between, and ask where nobody wrote its volts.

    Asks: of how many volts a heater is, against the battery or the mains that its way comes to
    Limit: those it is made for: at a tenth of its volts a heater gives a hundredth of its heat
    Source: own-rule
    Lever: of: of the heater, such as 12 V or mains; an inverter on its way
    """
    for one in result.heaters if result.use == "sleep" else ():
        if one.suits == "yes":
            continue
        name, where, way = one.planned.name, one.planned.of, " from ".join(one.feed.way)
        kind: Kind = "limit" if one.suits == "no" else "unknown"
        word = one.planned.heater.of.strip()
        if one.wanted.current == "battery":
            says = f"{name} is fed by {way}, and nobody wrote what makes the volts of a battery of the mains there:"
            says += " without that it may burn out"
            act = f"Look what stands between, and write it as a part with charger:, or the battery as fed_by: of {name}"
            if one.runs == "burns":
                act += f"; where its plate says it runs on the mains, write of: {word} 120 V, or 230 V"
        else:
            says = f"{name} is fed by {way} with no inverter between"
            made = f', and is made for the mains ("{word}")'
            says += (
                made if one.suits == "no" else ", and nobody wrote whether it is made for a battery or for the mains"
            )
            says += ": a heater of the mains gives next to nothing at the volts of a battery"
            act = (
                f"Read its volts on its plate, and write of: 12 V or of: mains under heater of {name}; feed one of the"
            )
            act += " mains from an inverter that is large enough, or from outside"
        yield Finding(
            "heat/feed-volts", where, kind, says, source=OWN_RULE, lever=where, act=act, minutes=10, could_stop=False,
            uses=SLEEP, because=(where,),
        )  # fmt: skip


def feed_too_small(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a heater takes more than what feeds it gives, and ask what a cable from outside gives.

    Asks: the most a heater takes at once, against the inverter, fuses and breakers on its way
    Limit: the weakest of them: an inverter switches off above it, a fuse blows; 12.8 V where no voltage is written
    Source: own-rule
    Lever: a smaller heater, a larger inverter, another feed
    """
    # Where no night asks for its heat, nothing hangs on what a site gives, as long as one plug carries it.
    warmths = [(one.warmth, one.outdoors.coldest) for one in result.held if one.warmth is not None]
    cold = {warmth.of for warmth, coldest in warmths if coldest.low < warmth.wanted}
    for one in result.heaters if result.use == "sleep" else ():
        want = one.wanted.by(one.feed)
        if want is None:
            continue
        takes = f"{one.planned.name} takes {show_band(want, 'power', shown_in)}"
        limit = narrowest(one.wanted, one.feed)
        if one.enough == "yes" or limit is None:
            continue
        if limit.kind != "site" or one.enough == "no":
            yield _too_small(one, want, limit, takes, shown_in)
        elif one.planned.of in cold or want.high > MOST_OF_A_PLUG:
            yield _site_unsaid(one, want, takes)
    if result.use == "sleep":
        yield from _both_at_once(result, shown_in)


def _too_small(one: StandingHeater, want: Band, limit: Limit, takes: str, shown_in: HeaderUnits) -> Finding:
    most, is_surely = limit.gives, one.enough == "no"
    says, act = too_little(one.planned.name, takes, limit, one.feed, is_surely, one.runs == "electric", shown_in)
    return Finding(
        "heat/feed-too-small", one.planned.of, "limit" if is_surely else "unknown", says, want.best,
        most.best if most.known else None, most.best - want.best if most.known else None, "W", OWN_RULE,
        limit.of or one.planned.of, act=act, minutes=10, could_stop=False, uses=SLEEP,
        because=(one.planned.of, *((limit.of,) if limit.of else ())),
    )  # fmt: skip


def _both_at_once(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Advise to run one at a time of heaters that each have enough, and of which one thing on their way has too little.

    Each night is worked out with one of them alone, so that it takes nothing off what is held.
    """
    fed = [one for one in result.heaters if one.takes_electricity and one.feed.is_sure and one.enough == "yes"]
    shared: dict[str, list[tuple[StandingHeater, Limit]]] = {}
    for one in fed:
        for limit in (each for each in one.feed.limits if each.kind != "site"):
            shared.setdefault(limit.of, []).append((one, limit))
    worst: dict[tuple[str, ...], tuple[float, Limit]] = {}
    for some in shared.values():
        taken = sum(_share_of(one, limit) for one, limit in some)
        who = tuple(one.planned.of for one, _ in some)
        if taken > max(1.0, worst.get(who, (0.0, None))[0]):
            worst[who] = taken, some[0][1]
    names = {one.planned.of: one.planned.name for one in fed}
    for who, (taken, by) in worst.items():
        named = listed(names[of] for of in who)
        says = f"{named} each have enough of {by.name} alone; at once they may take {taken * 100.0:.0f} % of what it"
        says += f" gives: {CUTS_OFF[by.kind]}"
        yield Finding(
            "heat/feed-too-small", who[0], "advice", says, taken, 1.0, 1.0 - taken, "", OWN_RULE, by.of,
            act=f"Run one of {named} at a time", minutes=1, could_stop=False, uses=SLEEP, because=(*who, by.of),
        )  # fmt: skip


def _share_of(one: StandingHeater, limit: Limit) -> float:
    """Return how much of what a thing gives at the least a heater may take of it; nothing where nobody wrote it."""
    both = one.wanted.beside(limit, one.feed)
    if both is None or not limit.gives.known or both[1].low <= 0.0:
        return 0.0
    return both[0].high / both[1].low


def _site_unsaid(one: StandingHeater, want: Band, takes: str) -> Finding:
    name = one.planned.name
    return Finding(
        "heat/feed-too-small", one.planned.of, "unknown", f"{takes}, and nobody wrote what {one.feed.way[-1]} gives:"
        f" where that is less, its breaker trips and {name} warms nothing", want.high, source=OWN_RULE,
        lever=one.planned.of, act=asks_site(name, one.feed), minutes=5, could_stop=False, uses=SLEEP,
        because=(one.planned.of,),
    )  # fmt: skip


def battery_for_the_night(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say whether a battery lasts the coldest night with every heater it feeds and all else that hangs on it.

    Asks: what its heaters take in the night, each as if it ran alone, and what else draws, against what it gives
    Limit: the usable share of its label, less what it lacks of full at dusk; full where nobody wrote charge
    Source: battery-practice; hours and starts by the night itself
    Lever: a larger battery, another feed, charge of the load state
    """
    for hung in result.batteries if result.use == "sleep" else ():
        loads = taken_of(hung, result.loads)
        if not loads:
            continue
        names = {one.planned.of: one.planned.name for one in result.heaters}
        told, need = " and ".join(names[one.of] for one in loads), together(loads)
        takes = f"{told} {'takes' if len(loads) == 1 else 'together take'} {show_band(need, 'energy', shown_in)} of"
        takes += f" electricity in the coldest night at {loads[0].when}"
        takes += ", what its inverter loses counted in" if hung.lossy else ""
        if not hung.holds.known:
            yield _label_unsaid(hung, takes)
        elif need.high + hung.besides.high > hung.holds.low:
            yield _too_little(hung, told, loads, takes, shown_in)
        elif hung.unsaid:
            yield _draw_unsaid(hung, takes)


def _too_little(hung: Hung, told: str, loads: tuple[ElectricLoad, ...], takes: str, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a battery that may not last: by what hangs on it, and by what may charge it meanwhile."""
    holds, beside, need, whole = hung.holds, hung.besides, together(loads), whole_of(hung, loads)
    says = f"{takes}, and {hung.name}, {full_in_words(hung.charge)} as it begins, gives"
    says += f" {show_band(_plain(holds), 'energy', shown_in)}"
    also = show(beside.high, "energy", shown_in)
    is_short = whole.best > holds.best
    besides = "what else is written to draw" + (
        f" and what {listed(hung.idling)} takes for itself" if hung.idling else ""
    )
    if need.high <= holds.low:
        perhaps = "most likely not" if is_short else "perhaps not"
        says += f": enough for {'it' if ' and ' not in told else 'them'} alone, {perhaps} with {besides}, up to"
        says += f" {also}"
        act = "Switch off at night what else draws, or write hours: and duty: of each as it is"
    else:
        says += f": it lasts {show_band(lasts(holds, whole), 'time', shown_in)} of {show(NIGHT, 'time', shown_in)}"
        says += f" with {besides}, up to {also}" if beside.high > 0.0 else ""
        act = f"Plug in outside for such a night, or sleep warm without {told}: bags for the cold; a larger battery"
        act += " mends it"
    if hung.charge is not None and hung.charge.assumed:
        says += f"; nobody wrote how full {hung.name} is as it gets dark"
        look = f"Look how full it is, and write under the load state charge: {{{hung.name}: 60 %}}"
        act = f"{look}; {act[0].lower()}{act[1:]}"
    says += f"; what {listed(hung.unsaid)} takes besides nobody wrote" if hung.unsaid else ""
    if hung.charged.high > 0.0:
        says += f"; {hung.charger} may give it {show(hung.charged.high, 'energy', shown_in)} more while a cable from"
        says += " outside feeds it, and nobody wrote whether one does"
        act = f"Plug in outside for such a night, and write fed_by: {hung.charger} of {told}; else a larger battery"
    says += "; the sun gives nothing by night" if hung.has_sun else ""
    return Finding(
        "heat/battery-for-the-night", hung.of, "limit" if is_limit(hung, loads) else "unknown", says, holds.low,
        whole.high, holds.low - whole.high, "J", source_of("usable", "lithium"), hung.of, act=act, minutes=30,
        could_stop=False, uses=SLEEP, because=(hung.of, *hung.heaters),
    )  # fmt: skip


def _plain(band: Band) -> Band:
    return replace(band, assumed=False)


def _label_unsaid(hung: Hung, takes: str) -> Finding:
    return Finding(
        "heat/battery-for-the-night", hung.of, "unknown", f"{takes}, and nobody wrote what {hung.name} holds",
        source=OWN_RULE, lever=hung.of, act=f"Read on the label of {hung.name} its volts and ampere hours, and"
        " write battery: {kind: LiFePO4, volts: 12.8, Ah: 200}", minutes=5, could_stop=False, uses=SLEEP,
        because=(hung.of, *hung.heaters),
    )  # fmt: skip


def _draw_unsaid(hung: Hung, takes: str) -> Finding:
    return Finding(
        "heat/battery-for-the-night", hung.of, "unknown", f"{takes}, and nobody wrote what {listed(hung.unsaid)} takes"
        f" of {hung.name} besides", source=OWN_RULE, lever=hung.of, act=f"Read on the plate of {hung.unsaid[0]} what it"
        " takes, and write draw: 4.2 A, hours: 8 and duty: 0.35 as it runs", minutes=5, could_stop=False, uses=SLEEP,
        because=(hung.of, *hung.heaters),
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


__all__ = ["battery_for_the_night", "draw_not_known", "feed_not_known", "feed_stands", "feed_too_small", "feed_volts"]
