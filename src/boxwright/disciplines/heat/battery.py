"""What hangs on one battery through a night: every heater it feeds, what else draws, and what charges it meanwhile.

The sun charges nothing by night; a charger does while a cable from outside feeds it, which nobody wrote.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import inf

from boxwright.disciplines.heat.feeds import (
    INVERTER,
    LITHIUM,
    NIGHT,
    VOLTS,
    Feed,
    times,
    volts_of,
    ways_up,
    written_way,
)
from boxwright.disciplines.heat.parts import (
    PlannedCooler,
    PlannedDraw,
    PlannedJoin,
    PlannedLead,
    PlannedSource,
    Section,
)
from boxwright.exchange import ElectricLoad
from boxwright.records import dataclass
from boxwright.units import Band

DAY = 86400.0
SAME_VOLTS = 1.1
"""Batteries whose labels differ by less are of the same voltage (common practice, no source)."""
UNHELD = Band(0.0, 0.0, inf, known=False)


@dataclass(frozen=True, slots=True)
class Hung:
    """What hangs on one battery. ``holds`` (J) is what it gives from dusk on, ``charge`` how full it is then.

    ``charge`` is None where nobody wrote it: it counts as full. ``heaters`` are the paths of those it feeds, and
    ``besides`` (J) is what else takes of it in a night. ``charged`` (J) is what a charger may give it while a cable
    from outside feeds it, by its name ``charger``; ``has_sun`` says that a panel charges it by day. ``unsaid`` are the
    names of what draws of it of which nobody knows how much. ``lossy`` pairs the path of a heater behind an inverter
    with how many times as much it takes of the battery; ``idling`` are the names of the inverters that are on for
    nothing, what they take is among ``besides``.
    """

    of: str
    name: str
    holds: Band
    charge: Band | None
    heaters: tuple[str, ...]
    besides: Band
    charged: Band
    charger: str
    has_sun: bool
    unsaid: tuple[str, ...] = ()
    lossy: tuple[tuple[str, Band], ...] = ()
    idling: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Drained:
    """A battery that what cools may drain on a hot day: what it ``takes`` (J) and what it ``holds`` as the day begins.

    ``coolers`` are the paths of what cools and ``told`` their names, ``besides`` (J) what else is written to draw and
    ``unsaid`` the names of what draws of which nobody knows how much; ``has_sun`` says that a panel charges it.
    """

    of: str
    name: str
    coolers: tuple[str, ...]
    told: tuple[str, ...]
    takes: Band
    holds: Band
    charge: Band | None
    besides: Band
    unsaid: tuple[str, ...]
    has_sun: bool


def _charge_of(battery: PlannedSource, charges: Mapping[str, Band]) -> Band | None:
    """Return how full a battery is; of a bank as full as the emptiest of it, None where nobody wrote any."""
    written = [charges[name] for name in (battery.name, *battery.joined) if name in charges]
    return min(written, key=lambda one: (one.low, one.best), default=None)


def banked(own: Section, there: Mapping[str, str]) -> Section:
    """Return a plan whose joined batteries are one bank as they stand: the first of them holds what all do.

    The others pass on what it gives, and what charges one of them charges it. Batteries whose volts or join nobody
    can tell, or that perhaps stand, hold no more for sure than the weakest alone.
    """
    cells = {one.name: one for one in own.sources if one.rated is not None and one.of in there}
    joins = [one for one in own.joins if one.of in there and one.one in cells and one.other in cells]
    groups = _groups(tuple(cells), joins)
    if not groups:
        return own
    sources, leads = {one.of: one for one in own.sources}, list(own.leads)
    for group in groups:
        members = [cells[name] for name in group]
        within = [one for one in joins if one.one in group]
        first, *others = members
        paths = [*(one.of for one in members), *(one.of for one in within)]
        is_sure = all(there[of] == "yes" for of in paths)
        sources[first.of] = _bank(members, within, is_sure)
        names = {one.name for one in others}
        leads = [replace(one, ends=first.name) if one.ends in names else one for one in leads]
        for one in others:
            sources[one.of] = PlannedSource(one.of, one.name)
            join = next(each for each in within if one.name in (each.one, each.other))
            leads.append(PlannedLead(join.of, join.of, first.name, one.name))
    return replace(own, sources=tuple(sources.values()), leads=tuple(leads))


def _groups(names: tuple[str, ...], joins: list[PlannedJoin]) -> list[list[str]]:
    """Return the names that joins make one of, each group in the order of the names; none of a single one."""
    groups = [{name} for name in names]
    for join in joins:
        touched = [one for one in groups if join.one in one or join.other in one]
        groups = [one for one in groups if one not in touched] + [set().union(*touched)]
    return [[name for name in names if name in one] for one in groups if len(one) > 1]


def _bank(members: list[PlannedSource], joins: list[PlannedJoin], is_sure: bool) -> PlannedSource:
    """Return the first of some joined batteries with what all of them hold: strings in series, those in parallel."""
    first, others = members[0], tuple(one.name for one in members[1:])
    named = {one.name: one for one in members}
    kinds = [one.made_of for one in members]
    made_of = next((one for one in kinds if not one.strip().lower().startswith(LITHIUM)), first.made_of)
    series = [one for one in joins if one.how == "series"]
    single = [[name] for name in named if not any(name in (one.one, one.other) for one in series)]
    strings = [_in_series([named[name] for name in one]) for one in (*_groups(tuple(named), series), *single)]
    bank = _in_parallel(strings) if {one.how for one in joins} <= {"series", "parallel"} else None
    if bank is None or not is_sure:
        # In series the weakest gives out first, and in parallel one may be all there is.
        each = [one.rated or UNHELD for one in members]
        weakest, most = min(each, key=lambda one: one.low), sum(one.high for one in each)
        rated = Band(min(weakest.best, each[0].best), weakest.low, most, all(one.known for one in each), "interval")
        amps = [one.most_amps for one in members if one.most_amps is not None]
        gives = min(amps, key=lambda one: one.low) if len(amps) == len(members) else None
        return replace(first, rated=rated, most_amps=gives, made_of=made_of, joined=others)
    return replace(first, rated=bank.rated, volts=bank.volts, most_amps=bank.most_amps, made_of=made_of, joined=others)


def _in_series(cells: list[PlannedSource]) -> PlannedSource:
    """Return batteries in series as one: their volts add up, and the weakest gives out first."""
    if len(cells) == 1:
        return cells[0]
    volts, rated = [one.volts for one in cells if one.volts], [one.rated for one in cells if one.rated]
    amps = [one.most_amps for one in cells if one.most_amps is not None]
    if len(volts) < len(cells) or not all(one.known for one in rated):
        return replace(cells[0], rated=UNHELD, volts=None)
    whole = _added(volts)
    best, low, high = (
        getattr(whole, end) * min(getattr(one, end) / getattr(by, end) for one, by in zip(rated, volts, strict=True))
        for end in ("best", "low", "high")
    )
    most = min(amps, key=lambda one: one.low) if len(amps) == len(cells) else None
    return replace(cells[0], rated=Band(best, low, high, spread="interval"), volts=whole, most_amps=most)


def _in_parallel(strings: list[PlannedSource]) -> PlannedSource | None:
    """Return strings in parallel as one: what they hold and give adds up; None where their volts are not the same."""
    volts = [one.volts for one in strings if one.volts is not None]
    if len(volts) < len(strings) or max(one.best for one in volts) > SAME_VOLTS * min(one.best for one in volts):
        return None
    amps = [one.most_amps for one in strings if one.most_amps is not None]
    most = _added(amps) if len(amps) == len(strings) else None
    return replace(strings[0], rated=_added([one.rated or UNHELD for one in strings]), volts=volts[0], most_amps=most)


def _added(bands: list[Band]) -> Band:
    best, low, high = (sum(getattr(one, end) for one in bands) for end in ("best", "low", "high"))
    return Band(best, low, high, all(one.known for one in bands), "exact" if low == high else "interval")


def is_said(amps: Band | None) -> bool:
    """Return whether somebody wrote a current."""
    return amps is not None and amps.known


def drained_by(
    own: Section,
    there: Mapping[str, str],
    cooled: tuple[tuple[PlannedCooler, Feed], ...],
    charges: Mapping[str, Band],
    runs_for: Band,
) -> tuple[Drained, ...]:
    """Return the batteries that may not last a hot day by what cools: each runs so long (s), as is written."""
    found = []
    for source in own.sources:
        fed = [(one, feed) for one, feed in cooled if feed.battery == source.of and is_said(one.cools.draw)]
        holds = fed[0][1].holds if fed else None
        if holds is None:
            continue
        each = [
            times(times(times(one.cools.draw, feed.volts), _more(feed)), runs_for)
            for one, feed in fed
            if one.cools.draw is not None
        ]
        takes = Band(sum(one.best for one in each), sum(one.low for one in each), sum(one.high for one in each))
        coolers = tuple(one.of for one, _ in fed)
        beside = [(one, way) for one, way in _beside(source, own, there) if one.of not in coolers]
        besides = _sum([times(in_a_night(one, way.volts, DAY), _more(way)) for one, way in beside])
        unsaid = tuple(one.name for one, _ in beside if _watts(one, VOLTS) is None)
        charge = _charge_of(source, charges)
        left = at_dusk(holds, source.rated, charge)
        if holds.known and not unsaid and takes.high + besides.high <= left.low:
            continue
        has_sun = any(one.is_panel and one.of in there for one in own.sources)
        names = tuple(one.name for one, _ in fed)
        found.append(Drained(source.of, source.name, coolers, names, takes, left, charge, besides, unsaid, has_sun))
    return tuple(found)


def hung_on(
    own: Section, there: Mapping[str, str], feeds: tuple[tuple[str, Feed], ...], charges: Mapping[str, Band]
) -> tuple[Hung, ...]:
    """Return what hangs on each battery that feeds a heater; ``feeds`` are those of the heaters by their paths.

    ``charges`` are how full the load state has a battery, by its name.
    """
    found = []
    for source in own.sources:
        fed = [(of, feed) for of, feed in feeds if feed.battery == source.of and feed.holds is not None]
        if not fed:
            continue
        whole, charge = fed[0][1].holds, _charge_of(source, charges)
        assert whole is not None
        charger, charged = _charged(source, own, there)
        idling = _idling(source, own, there, tuple(feed for _, feed in fed))
        beside = [drawn_beside(source, own, there), *(joules for _, joules in idling)]
        found.append(
            Hung(
                source.of,
                source.name,
                at_dusk(whole, source.rated, charge),
                charge,
                tuple(of for of, _ in fed),
                _sum(beside),
                charged,
                charger,
                any(one.is_panel and one.of in there for one in own.sources),
                tuple(one.name for one, _ in _beside(source, own, there) if _watts(one, VOLTS) is None),
                tuple((of, _more(feed)) for of, feed in fed if feed.inverters),
                tuple(name for name, _ in idling),
            )
        )
    return tuple(found)


def at_dusk(whole: Band, rated: Band | None, charge: Band | None) -> Band:
    """Return what a battery gives (J) that is so full at dusk; what it lacks of full is gone from what it gives.

    At the high end it is drained to the last, or to where a full one would be left.
    """
    if charge is None or rated is None or not (whole.known and rated.known):
        return whole
    best = max(whole.best - (1.0 - charge.best) * rated.best, 0.0)
    low = max(whole.low - (1.0 - charge.low) * rated.high, 0.0)
    high = min(whole.high, charge.high * rated.high)
    return Band(best, min(low, best), max(high, best), spread="interval", assumed=True)


def drawn_beside(battery: PlannedSource, own: Section, there: Mapping[str, str]) -> Band:
    """Return what else may take of a battery in a night (J): nothing at the least, all that is written at the most.

    What wires feed from another battery, or from a cable such as lamps for the road, takes nothing of it. What draws
    nobody knows how much is left out: it has no end, and is named instead.
    """
    each = [times(in_a_night(one, way.volts), _more(way)) for one, way in _beside(battery, own, there)]
    return _sum(each)


def _sum(each: list[Band]) -> Band:
    return Band(sum(one.best for one in each), 0.0, sum(one.high for one in each), spread="interval")


def _idling(
    battery: PlannedSource, own: Section, there: Mapping[str, str], feeds: tuple[Feed, ...]
) -> list[tuple[str, Band]]:
    """Return what the inverters of a battery take in a night for themselves (J): those of its heaters are on all night.

    Another may be off. One that is written to draw counts as that already.
    """
    written = {one.of for one in own.draws}
    found = []
    for one in own.sources:
        if one.gives is None or one.of not in there or one.of in written:
            continue
        if any(way.battery == battery.of for way in ways_up(one.name, own, there)):
            idle = one.idle if one.idle is not None and one.idle.known else INVERTER["idle"]
            best = idle.best * NIGHT if any(one.of in feed.inverters for feed in feeds) else 0.0
            found.append((one.name, Band(best, 0.0, idle.high * NIGHT, spread="interval")))
    return found


def _beside(battery: PlannedSource, own: Section, there: Mapping[str, str]) -> list[tuple[PlannedDraw, Feed]]:
    """Return what may draw of a battery and by which way: its wires lead to it, or nobody wrote any.

    A habit of which nobody wrote where it is plugged in may draw of it.
    """
    names = {one.of: one.name for one in own.sources}
    itself = Feed((battery.name,), "battery", volts=volts_of(battery))
    found = []
    for one in own.draws:
        if one.of and one.of not in there:
            continue
        ways = ways_up(names.get(one.of, ""), own, there) if one.of else []
        led = [way for way in ways if way.battery == battery.of]
        if led or not ways:
            # By the way on which it takes most.
            found.append((one, max(led, key=lambda way: way.volts.high, default=itself)))
    return found


def _more(way: Feed) -> Band:
    """Return how many times as much is taken of a battery as comes out of the inverters of a way."""
    share = way.share
    return Band(1.0 / share.best, 1.0 / share.high, 1.0 / share.low, spread="interval")


def in_a_night(draw: PlannedDraw, volts: Band = VOLTS, night: float = NIGHT) -> Band:
    """Return what a thing takes in a night (J), or in a whole day: nothing at the least, for it may be off.

    Hours of a day are most likely spread over it; what has a duty and no hours runs all night; what has neither, such
    as lamps, most likely not at all and at the most all night.
    """
    watts = _watts(draw, volts)
    if watts is None:
        return Band(0.0, 0.0, 0.0)
    hours, duty = draw.hours, draw.duty
    has_hours, has_duty = hours is not None and hours.known, duty is not None and duty.known
    usual = hours.best * night / DAY if hours is not None and has_hours else night if has_duty else 0.0
    most = min(hours.high, night) if hours is not None and has_hours else night
    share, at_most = (duty.best, duty.high) if duty is not None and has_duty else (1.0, 1.0)
    best, high = watts.best * draw.count * usual * share, watts.high * draw.count * most * at_most
    return Band(best, 0.0, max(best, high), spread="interval")


def _watts(draw: PlannedDraw, volts: Band) -> Band | None:
    """Return what one piece takes while it is on (W); amperes are those of what feeds it."""
    if draw.amps is not None and draw.amps.known:
        return times(draw.amps, volts)
    return draw.watts if draw.watts is not None and draw.watts.known else None


def _charged(battery: PlannedSource, own: Section, there: Mapping[str, str]) -> tuple[str, Band]:
    """Return the charger that a cable from outside feeds, and what it gives a battery in a night (J).

    Nothing at the least: whether it is plugged in nobody wrote. What the sun or the tow vehicle feeds gives nothing.
    """
    into = {one.starts for one in own.leads if one.ends == battery.name and one.of in there}
    for one in own.sources:
        amps = one.charges
        if one.of not in there or one.name not in into or amps is None or not amps.known:
            continue
        ways = ways_up(one.name, own, there) or written_way(one.charged_from, own, there)
        if any(way.ends == "outside" and way.stands != "no" for way in ways):
            return one.name, Band(0.0, 0.0, amps.best * volts_of(battery).best * NIGHT, spread="interval")
    return "", Band(0.0, 0.0, 0.0)


def taken_of(hung: Hung, loads: tuple[ElectricLoad, ...]) -> tuple[ElectricLoad, ...]:
    """Return what the heaters of a battery take of it in its worst night, each as if it ran alone.

    A night it surely does not last is worse than one that may take more.
    """

    def worse(some: tuple[ElectricLoad, ...]) -> tuple[bool, float]:
        return is_limit(hung, some), sum(one.joule.high for one in some)

    whens = dict.fromkeys(one.when for one in loads if one.of in hung.heaters)
    return max((taken_at(hung, loads, when) for when in whens), key=worse, default=())


def taken_at(hung: Hung, loads: tuple[ElectricLoad, ...], when: str) -> tuple[ElectricLoad, ...]:
    """Return what the heaters of a battery take of it in one night, what an inverter loses counted in."""
    more = dict(hung.lossy)
    own = (one for one in loads if one.of in hung.heaters and one.when == when)
    return tuple(replace(one, joule=times(one.joule, more[one.of])) if one.of in more else one for one in own)


def is_limit(hung: Hung, some: tuple[ElectricLoad, ...]) -> bool:
    """Return whether a battery most likely does not last a night, though a charger gave it all it can."""
    return whole_of(hung, some).best > hung.holds.best + hung.charged.high


def whole_of(hung: Hung, some: tuple[ElectricLoad, ...]) -> Band:
    """Return what some heaters of a battery and all else that hangs on it take in one night (J)."""
    need, beside = together(some), hung.besides
    return Band(need.best + beside.best, need.low, need.high + beside.high, spread="interval")


def together(some: tuple[ElectricLoad, ...]) -> Band:
    """Return what some heaters take of electricity in one night (J): at the least what one of them takes alone."""
    joules = [one.joule for one in some]
    best, high = sum(one.best for one in joules), sum(one.high for one in joules)
    return Band(best, min((one.low for one in joules), default=0.0), high, spread="interval")
