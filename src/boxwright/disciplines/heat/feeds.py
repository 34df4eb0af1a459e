"""What feeds a heater with electricity: the way from it, by wires or by what is written, to a battery or to outside.

What stands on that way is asked of the slot: a battery that is not in yet feeds nothing.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from math import inf
from typing import Literal

from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS
from boxwright.disciplines.heat.fuel_piece import is_driven_pump
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.parts import (
    Cooler,
    Heater,
    PlannedCooler,
    PlannedHeater,
    PlannedLead,
    PlannedSource,
    Section,
)
from boxwright.records import dataclass
from boxwright.units import Band, exactly

Ends = Literal["battery", "outside", "unfed", "nowhere", "unsaid"]
Current = Literal["mains", "battery", "unsaid", "any"]
Stands = Literal["yes", "perhaps", "no"]
WORST_FIRST: tuple[Stands, ...] = ("no", "perhaps", "yes")
NOT_SAID = frozenset({"", "unknown", "?"})
FROM_OUTSIDE = frozenset({"mains", "shore", "shore power", "site", "grid", "hook-up", "hookup", "generator", "house"})
"""Words for what comes from outside by a cable, where nothing of the rig is called so."""
USABLE: dict[str, Band] = {name: interval(*row) for name, row in columns("usable").items()}
"""What of its rated energy a full battery gives in a cold night, by what it is made of."""
DISCHARGE: dict[str, float] = {name: row[0] for name, row in columns("discharge").items()}
"""Amperes a battery surely gives for each ampere hour of its label, by what it is made of."""
VOLTS: Band = interval(*columns("takes")["volts"])
"""Of a bus of 12 V; one of 24 or 48 V has as many times more."""
INVERTER: dict[str, Band] = {name: interval(*row) for name, row in columns("inverter").items()}
MAINS = INVERTER["mains"]
LARGEST_SUPPLY, MOST_OF_A_PLUG, HIGHEST_MAINS = (columns("supply")[name][0] for name in ("largest", "plug", "volts"))
"""W no usual single supply gives more than, W of one plug of a site, and the most volts of it."""
NAMED_AMPS = re.compile(r"(?<![\d.])(\d{1,3}) ?A\b")
"""The amperes in a name such as ``inlet-30A``."""
WHOLE = exactly(1.0)
HIGHEST_OF_A_BATTERY = 60.0
"""V: above it a wire is no battery's (common practice, no source)."""
OF_VOLTS = re.compile(r"(\d{2,3}(?:\.\d+)?) ?v(?:olts?|ac|dc)?\b", re.IGNORECASE)
"""The volts in the word for what a heater runs on, such as ``12 V`` or ``electric 230 V``."""
OF_THE_MAINS = re.compile(r"\b(?:mains|shore|grid|ac)\b", re.IGNORECASE)
OF_A_HOUSE = frozenset({"window", "portable"})
"""Coolers that are sold for houses."""
NIGHT = ASLEEP_HOURS * 3600.0
LITHIUM = ("li", "lfp")
"""How the words for a battery of lithium begin; every other one counts as one of lead."""


def unfed_of(own: Section, names: tuple[str, ...], strung: Mapping[str, str]) -> tuple[str, ...]:
    """Return which of some things no wire surely ends at, as it stands: nobody knows what they run on."""
    fed = {lead.ends for lead in own.leads if strung.get(lead.of) == "yes"}
    return tuple(name for name in names if name not in fed)


@dataclass(frozen=True, slots=True)
class Limit:
    """What one thing on the way to a heater gives on at the most (W, at the heater), by its path and its name.

    ``amps`` is what it lets through of the bus the heater is on; None where it is on another, or known by its watts.
    ``is_before_inverter`` says that ``gives`` is what is left of it behind an inverter, ``is_volts_taken`` that nobody
    wrote of how many volts it is. A "site" is a cable from outside of which nobody wrote what it gives: ``gives`` is no
    more than the largest supply there is, or than its name tells, and ``of`` is empty where nothing of the rig is so.
    """

    of: str
    name: str
    kind: Literal["wire", "inverter", "battery", "charger", "site"]
    gives: Band
    amps: Band | None = None
    is_before_inverter: bool = False
    is_volts_taken: bool = False


@dataclass(frozen=True, slots=True)
class Feed:
    """What feeds one heater in one slot.

    ``way`` are the names from the heater on to where it ends; ``ends`` what it ends at: a battery, a cable from
    outside, something nobody wrote a feed of, a name the file has nothing for, nothing written at all. ``stands`` is
    the worst of all that lies on it and ``lacking`` the first thing of it that does not surely stand, with its path.
    ``holds`` (J) is what a full battery gives. ``is_crossed`` says that what is written and the wires differ.
    ``limits`` are the inverter, fuses and breakers on the way and what the battery gives without a break, as far as
    they are written. ``volts`` are those a heater is fed with, ``share`` what of all that is taken of the source comes
    to it, and ``inverters`` the paths of what loses the rest; ``wires`` are the names of the wires from the heater on.
    """

    way: tuple[str, ...]
    ends: Ends
    stands: Stands = "yes"
    lacking: str = ""
    lacking_of: str = ""
    battery: str = ""
    holds: Band | None = None
    is_crossed: bool = False
    limits: tuple[Limit, ...] = ()
    volts: Band = VOLTS
    share: Band = WHOLE
    inverters: tuple[str, ...] = ()
    wires: tuple[str, ...] = ()

    @property
    def is_sure(self) -> bool:
        """Return whether all of it surely stands and comes from somewhere."""
        return self.stands == "yes" and self.ends in ("battery", "outside")

    @property
    def is_bare(self) -> bool:
        """Return whether it comes from outside and nobody wrote what is given there."""
        return any(one.kind == "site" and not one.gives.known for one in self.limits)

    @property
    def most(self) -> Band | None:
        """Return what all of the way gives on at the most (W); None where nothing on it is written to be a limit."""
        if not self.limits:
            return None
        each = [one.gives for one in self.limits]
        best, low, high = (min(getattr(one, end) for one in each) for end in ("best", "low", "high"))
        return Band(best, low, high, all(one.known for one in each), "exact" if low == high else "interval")


NO_FEED = Feed((), "unsaid")


@dataclass(frozen=True, slots=True)
class Wanted:
    """The most a thing takes at once, as written: in watts, else in amperes of what feeds it; None where neither is.

    ``current`` is what it is made for: the mains, a battery of some volts; "unsaid" where nobody wrote it, "any" where
    it is not asked.
    """

    watts: Band | None = None
    amps: Band | None = None
    current: Current = "any"

    def by(self, feed: Feed) -> Band | None:
        """Return it in watts, as a way feeds it; None where nobody wrote it."""
        if self.watts is not None or self.amps is None:
            return self.watts
        return times(self.amps, protected(feed.volts))

    def beside(self, limit: Limit, feed: Feed) -> tuple[Band, Band] | None:
        """Return it beside what a thing on the way gives, both in amperes where both are of one bus, else in watts."""
        if self.watts is None and self.amps is not None and limit.amps is not None:
            return self.amps, limit.amps
        want = self.by(feed)
        return (want, limit.gives) if want is not None else None


UNSAID = Wanted()


def wanted_by(runs: str, facet: Heater, count: int = 1) -> Wanted:
    """Return the most a heater takes at once, as written; of several on one line all may run at once."""
    if runs == "electric":
        return Wanted(watts=_up_to(facet.highest, count), current=current_of(facet.of))
    amps = [one for one in (facet.draw, facet.start) if one is not None and one.known]
    said = current_of(facet.of)
    # Fan, pump and glow pin of a burner for vehicles are of its battery, unless somebody wrote its volts.
    current: Current = "battery" if said == "unsaid" else said
    return Wanted(amps=_up_to(max(amps, key=lambda one: one.high, default=None), count), current=current)


def current_of(written: str) -> Current:
    """Return what the electricity of a heater is of by the word for what it runs on, such as diesel 120 V."""
    volts = OF_VOLTS.search(written)
    if volts is not None:
        return "mains" if float(volts.group(1)) > HIGHEST_OF_A_BATTERY else "battery"
    return "mains" if OF_THE_MAINS.search(written) else "unsaid"


def wanted_by_cooler(facet: Cooler, count: int = 1) -> Wanted:
    """Return what a cooler takes while it runs, as written; of several on one line all may run at once."""
    if facet.draw is None or not facet.draw.known:
        return UNSAID
    said = current_of(facet.of)
    # One for the window of a house is of the mains more often than not; of the others nobody knows.
    current: Current = "any" if said == "unsaid" and facet.of.strip().lower() not in OF_A_HOUSE else said
    return Wanted(amps=_up_to(facet.draw, count), current=current)


def _up_to(each: Band | None, count: int) -> Band | None:
    """Return what one takes, and at the most all of several; None where nobody wrote it."""
    if each is None or not each.known:
        return None
    return each if count == 1 else replace(each, high=each.high * count, spread="interval")


def enough(wanted: Wanted, feed: Feed) -> Stands:
    """Return whether a way gives on all that is taken at once: surely not where one thing on it is surely too small."""
    return min((_is_enough(wanted, one, feed) for one in feed.limits), key=WORST_FIRST.index, default="yes")


def suits(wanted: Wanted, feed: Feed) -> Stands:
    """Return whether a thing is made for what a way brings: one of the mains surely is not for a battery alone.

    What is for a battery and comes to the mains may have a supply of its own between that nobody wrote.
    """
    if wanted.current == "any" or feed.ends not in ("battery", "outside"):
        return "yes"
    has_mains = feed.volts.best > HIGHEST_OF_A_BATTERY and (feed.ends == "outside" or bool(feed.inverters))
    if has_mains:
        return "perhaps" if wanted.current == "battery" else "yes"
    if wanted.current == "battery":
        return "yes"
    return "no" if wanted.current == "mains" else "perhaps"


def _is_enough(wanted: Wanted, limit: Limit, feed: Feed) -> Stands:
    both = wanted.beside(limit, feed)
    if both is None:
        return "yes"
    want, gives = both
    if limit.kind == "site" and wanted.watts is None and want.best <= gives.high:
        return "yes"  # what takes amperes takes little; of a cooler the site is asked apart
    return "no" if want.best > gives.high else "perhaps" if want.high > gives.low else "yes"


def narrowest(wanted: Wanted, feed: Feed) -> Limit | None:
    """Return the thing on the way that is told as too small: what surely is before what may be."""
    surely = [one for one in feed.limits if _is_enough(wanted, one, feed) == "no"]
    if surely:
        return min(surely, key=lambda one: one.gives.high)
    perhaps = [one for one in feed.limits if _is_enough(wanted, one, feed) == "perhaps"]
    # What is of the rig is told before the site, of which nothing is known.
    return min(perhaps, key=lambda one: (one.kind == "site", one.gives.low), default=None)


def takes_electricity(runs: str, facet: Heater, feed: Feed, burns_by_itself: bool) -> bool:
    """Return whether a heater wants electricity: by what it runs on, what it draws, its pump, its own wire.

    Of one whose pump nobody wrote it counts as wanting some, unless what it burns needs no fan.
    """
    if runs == "electric":
        return True
    amps = [one.high for one in (facet.draw, facet.start) if one is not None and one.known]
    if amps:
        return max(amps) > 0.0
    if feed.ends != "unsaid" or any(is_driven_pump(one) for one in facet.path):
        return True
    is_written = any(one.strip().lower() not in NOT_SAID for one in facet.path)
    return not is_written and not burns_by_itself


def feed_of(planned: PlannedHeater, own: Section, there: Mapping[str, str], runs: str = "") -> Feed:
    """Return what feeds a heater; ``there`` says of each path that stands whether it does "yes" or "perhaps"."""
    return fed(planned.name, planned.heater.fed_by.strip(), own, there, wanted_by(runs, planned.heater, planned.count))


def feed_of_cooler(planned: PlannedCooler, own: Section, there: Mapping[str, str]) -> Feed:
    """Return what feeds a cooler."""
    return fed(planned.name, planned.cools.fed_by.strip(), own, there, wanted_by_cooler(planned.cools, planned.count))


def fed(name: str, written: str, own: Section, there: Mapping[str, str], wanted: Wanted = UNSAID) -> Feed:
    """Return what feeds a thing: what is ``written`` to, by the wires from there, else the best of the ways they go."""
    by_wire = ways_up(name, own, there)
    if written.lower() in NOT_SAID:
        return _best(by_wire, wanted) if by_wire else Feed((), "unsaid")
    names = {one.name for one in own.sources}
    is_outside = written not in names and written.lower() in FROM_OUTSIDE
    strung = [one for one in by_wire if (one.ends == "outside" if is_outside else written in one.way)]
    strung = strung or _by_a_charger(written, by_wire, own, there)
    if strung:
        return _best(strung, wanted)
    found = _best(written_way(written, own, there), wanted)
    if found.ends == "nowhere" and found.way == (written,):
        return found
    return replace(found, is_crossed=bool(by_wire))


def ways_up(name: str, own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way that feeds a thing, by the wires that end at it; empty where nobody wrote one."""
    return _upward(name, (), (), own, there)


def written_way(written: str, own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way that begins at what is written to feed a thing; empty where nothing is written."""
    return [] if written.lower() in NOT_SAID else _at(written, (), (), own, there)


def _by_a_charger(written: str, by_wire: list[Feed], own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way on from a battery to a charger that is written to feed a thing and is wired to that battery."""
    found = []
    for way in by_wire:
        for lead in own.leads if way.battery else ():
            if (lead.starts, lead.ends) != (written, way.way[-1]):
                continue
            for before in _at(written, (), (lead.of,), own, there):
                worst = min(way, before, key=lambda one: WORST_FIRST.index(one.stands))
                limits = (*before.limits, *(one for one in way.limits if one.kind != "battery"))
                found.append(
                    replace(
                        way, way=(*way.way, *before.way), ends=before.ends, stands=worst.stands, lacking=worst.lacking,
                        lacking_of=worst.lacking_of, battery="", holds=None, limits=limits,
                        wires=(*way.wires, *before.wires),
                    )
                )  # fmt: skip
    return found


def _best(ways: list[Feed], wanted: Wanted) -> Feed:
    """Return the best of some ways: what stands and gives enough before what does not, a battery before a cable."""

    def rank(feed: Feed) -> tuple[int, int, int]:
        brings = min(enough(wanted, feed), suits(wanted, feed), key=WORST_FIRST.index)
        both = (WORST_FIRST.index(feed.stands), WORST_FIRST.index(brings))
        return min(both), sum(both), {"battery": 2, "outside": 1}.get(feed.ends, 0)

    return max(ways, key=rank)


def _upward(
    name: str, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]
) -> list[Feed]:
    """Return every way on from a thing, by the wires that end at it."""
    leads = [one for one in own.leads if one.ends == name and one.starts not in way]
    return [feed for one in leads for feed in _at(one.starts, way, (*passed, one.of), own, there)]


def _at(name: str, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way that has come to a name: of a thing of the plan, else a word for what comes from outside."""
    way, source = (*way, name), next((one for one in own.sources if one.name == name), None)
    if source is not None:
        return _from(source, way, (*passed, source.of), own, there)
    if name.lower() in FROM_OUTSIDE:
        return [_ended(way, "outside", passed, own, there)]
    return [Feed(way, "nowhere", "no", name)]


def _from(
    source: PlannedSource, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]
) -> list[Feed]:
    """Return every way that has come to a thing of the plan: a battery ends it, else the wires go on.

    Where no wire does, what a charger is written to be charged from feeds it.
    """
    if source.rated is not None:
        return [replace(_ended(way, "battery", passed, own, there), battery=source.of, holds=usable(source))]
    further = _upward(source.name, way, passed, own, there)
    before = source.charged_from
    if not further and before.lower() not in NOT_SAID and before not in way:
        further = _at(before, way, passed, own, there)
    return further or [_ended(way, "outside" if source.is_opening else "unfed", passed, own, there)]


def _ended(way: tuple[str, ...], ends: Ends, passed: tuple[str, ...], own: Section, there: Mapping[str, str]) -> Feed:
    leads = {one.of: one for one in own.leads}
    names = {one.of: one.name for one in own.sources} | {of: f"the wire {one.name}" for of, one in leads.items()}
    stood: dict[str, Stands] = {of: _stands(there.get(of, "no")) for of in passed}
    worst: Stands = min(stood.values(), key=WORST_FIRST.index, default="yes")
    lacking = next((of for of, one in stood.items() if one == worst), "") if worst != "yes" else ""
    wires = tuple(leads[of].name for of in passed if of in leads)
    feed = Feed(way, ends, worst, names.get(lacking, ""), lacking, volts=MAINS if ends == "outside" else VOLTS)
    if ends == "outside":
        inlet = next((one.of for one in own.sources if one.name == way[-1]), "")
        onto = passed[:-1] if inlet else passed
        first = leads.get(onto[-1]) if onto else None
        written = first.amps if first is not None else None
        if written is None:
            feed = replace(feed, limits=(_site(inlet, way[-1]),))
        elif written.high * HIGHEST_MAINS > LARGEST_SUPPLY:
            # A breaker larger than any usual supply makes it no larger.
            feed = replace(feed, limits=(Limit(inlet, way[-1], "site", exactly(LARGEST_SUPPLY)),))
    return replace(_along(feed, passed, own), wires=wires)


def _site(of: str, name: str) -> Limit:
    """Return what a cable from outside gives of which nobody wrote it: no more than its name tells, or than any."""
    amps = min((float(one) for one in NAMED_AMPS.findall(name)), default=LARGEST_SUPPLY)
    most = min(amps * HIGHEST_MAINS, LARGEST_SUPPLY)
    told = Band(0.0, 0.0, amps, known=False) if most < LARGEST_SUPPLY else None
    return Limit(of, name, "site", Band(most, 0.0, most, known=False), told)


def _along(feed: Feed, passed: tuple[str, ...], own: Section) -> Feed:
    """Return a way with what limits it, followed from its source on: each is of the voltage that comes to it."""
    sources, leads = {one.of: one for one in own.sources}, {one.of: one for one in own.leads}
    for of in reversed(passed):
        feed = _past_wire(feed, leads[of]) if of in leads else _past_source(feed, sources[of])
    return feed


def _past_wire(feed: Feed, lead: PlannedLead) -> Feed:
    volts = feed.volts if lead.volts is None else bus_of(lead.volts)
    limits = feed.limits if volts == feed.volts else tuple(replace(one, amps=None) for one in feed.limits)
    if lead.amps is not None:
        gives = times(lead.amps, protected(volts))
        limits = (
            *limits,
            Limit(lead.of, f"the wire {lead.name}", "wire", gives, lead.amps, is_volts_taken=volts == MAINS),
        )
    return replace(feed, volts=volts, limits=limits)


def _past_source(feed: Feed, source: PlannedSource) -> Feed:
    """Return a way on behind a thing: behind an inverter all that lies before it gives on less, for it loses some."""
    if source.rated is not None:
        volts, most = volts_of(source), source.most_amps or _surely_given(source)
        if most is None:
            return replace(feed, volts=volts)
        given = Limit(source.of, source.name, "battery", times(most, protected(volts)), most)
        return replace(feed, volts=volts, limits=(given,))
    is_mains = feed.volts.best > HIGHEST_OF_A_BATTERY
    if source.gives is not None:
        inverter = Limit(source.of, source.name, "inverter", source.gives)
        # What comes from outside an inverter passes on as it is.
        return replace(feed, limits=(*feed.limits, inverter)) if is_mains else _inverted(feed, inverter)
    if source.charges is not None:
        charger = Limit(source.of, source.name, "charger", times(source.charges, protected(VOLTS)), source.charges)
        before = tuple(replace(one, amps=None) for one in feed.limits)
        return replace(feed, volts=VOLTS, limits=(*before, charger))
    return feed


def _surely_given(battery: PlannedSource) -> Band | None:
    """Return the amperes of a battery of which nobody wrote them: no less than such batteries give, and no end.

    None where its label is not written whole, which is asked for itself.
    """
    if battery.rated is None or battery.volts is None or not battery.rated.known:
        return None
    is_lithium = battery.made_of.strip().lower().startswith(LITHIUM)
    low = DISCHARGE["lithium" if is_lithium else "lead"] * battery.rated.low / battery.volts.high / 3600.0
    return Band(low, low, inf, known=False)


def _inverted(feed: Feed, inverter: Limit) -> Feed:
    share = INVERTER["efficiency"]
    before = tuple(
        replace(one, gives=times(one.gives, share), amps=None, is_before_inverter=True) for one in feed.limits
    )
    return replace(
        feed, volts=MAINS, limits=(*before, inverter), share=times(feed.share, share),
        inverters=(*feed.inverters, inverter.of),
    )  # fmt: skip


def volts_of(battery: PlannedSource) -> Band:
    """Return the volts of the bus of a battery; of 12 V where its label is not written."""
    return VOLTS if battery.volts is None else bus_of(battery.volts)


def bus_of(volts: Band) -> Band:
    """Return the volts of what is written to have so many: a bus of as many batteries of 12 V, or those of mains."""
    if volts.best > HIGHEST_OF_A_BATTERY:
        return volts
    return scaled(VOLTS, max(round(volts.best / VOLTS.best), 1))


def protected(volts: Band) -> Band:
    """Return the volts a fuse is reckoned with: those a battery mostly has, for all on its bus are of the same."""
    return volts if volts.best > HIGHEST_OF_A_BATTERY else exactly(volts.best)


def times(one: Band, by: Band) -> Band:
    """Return the product of two ranges, neither below zero; not known where either is not."""
    best, low, high = one.best * by.best, one.low * by.low, one.high * by.high
    return Band(best, low, high, one.known and by.known, "exact" if low == high else "interval")


def scaled(band: Band, by: float) -> Band:
    """Return a range as many times as large."""
    return Band(band.best * by, band.low * by, band.high * by, band.known, band.spread, band.assumed)


def _stands(word: str) -> Stands:
    return "yes" if word == "yes" else "perhaps" if word == "perhaps" else "no"


def usable(source: PlannedSource) -> Band | None:
    """Return what a full battery gives (J); not known where its label is not written whole."""
    rated = source.rated
    if rated is None or not rated.known:
        return rated
    is_lithium = source.made_of.strip().lower().startswith(LITHIUM)
    is_said = source.made_of.strip().lower() not in NOT_SAID
    share = USABLE["lithium" if is_lithium else "lead"]
    # A kind nobody wrote may be either.
    high = share.high if is_said else USABLE["lithium"].high
    return Band(rated.best * share.best, rated.low * share.low, rated.high * high, spread="interval", assumed=True)
