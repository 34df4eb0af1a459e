"""What feeds a heater with electricity: the way from it, by wires or by what is written, to a battery or to outside.

What stands on that way is asked of the slot: a battery that is not in yet feeds nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.parts import Heater, PlannedHeater, PlannedSource, Section
from boxwright.records import dataclass
from boxwright.units import Band

Ends = Literal["battery", "outside", "unfed", "nowhere", "unsaid"]
Stands = Literal["yes", "perhaps", "no"]
WORST_FIRST: tuple[Stands, ...] = ("no", "perhaps", "yes")
NOT_SAID = frozenset({"", "unknown", "?"})
FROM_OUTSIDE = frozenset({"mains", "shore", "shore power", "site", "grid", "hook-up", "hookup", "generator", "house"})
"""Words for what comes from outside by a cable, where nothing of the rig is called so."""
USABLE: dict[str, Band] = {name: interval(*row) for name, row in columns("usable").items()}
"""What of its rated energy a full battery gives in a cold night, by what it is made of."""
VOLTS: Band = interval(*columns("takes")["volts"])
NIGHT = ASLEEP_HOURS * 3600.0
LITHIUM = ("li", "lfp")
"""How the words for a battery of lithium begin; every other one counts as one of lead."""


@dataclass(frozen=True, slots=True)
class Feed:
    """What feeds one heater in one slot.

    ``way`` are the names from the heater on to where it ends; ``ends`` what it ends at: a battery, a cable from
    outside, something nobody wrote a feed of, a name the file has nothing for, nothing written at all. ``stands`` is
    the worst of all that lies on it and ``lacking`` the first thing of it that does not surely stand, with its path.
    ``holds`` (J) is what a full battery gives. ``is_crossed`` says that what is written and the wires differ.
    ``most`` (W) is what the weakest inverter, fuse or breaker on the way gives on, ``most_of`` its path and
    ``most_by`` its name; None where there is none.
    """

    way: tuple[str, ...]
    ends: Ends
    stands: Stands = "yes"
    lacking: str = ""
    lacking_of: str = ""
    battery: str = ""
    holds: Band | None = None
    is_crossed: bool = False
    most: Band | None = None
    most_of: str = ""
    most_by: str = ""

    @property
    def is_sure(self) -> bool:
        """Return whether all of it surely stands and comes from somewhere."""
        return self.stands == "yes" and self.ends in ("battery", "outside")


NO_FEED = Feed((), "unsaid")


def wants(runs: str, facet: Heater) -> Band | None:
    """Return the most a heater takes at once (W), as written; None where nobody wrote it."""
    if runs == "electric":
        return facet.highest if facet.highest is not None and facet.highest.known else None
    amps = [one for one in (facet.draw, facet.start) if one is not None and one.known]
    return scaled(max(amps, key=lambda one: one.best), VOLTS.best) if amps else None


def is_too_small(want: Band | None, feed: Feed) -> bool:
    """Return whether a heater may take more at once than the narrowest of its way gives on."""
    return want is not None and feed.most is not None and want.high > feed.most.low


def takes_electricity(runs: str, facet: Heater, feed: Feed) -> bool:
    """Return whether a heater wants electricity: by what it runs on, by what it is written to draw, by its own wire."""
    if runs == "electric":
        return True
    amps = [one.high for one in (facet.draw, facet.start) if one is not None and one.known]
    return max(amps) > 0.0 if amps else feed.ends != "unsaid"


def feed_of(planned: PlannedHeater, own: Section, there: Mapping[str, str]) -> Feed:
    """Return what feeds a heater; ``there`` says of each path that stands whether it does "yes" or "perhaps"."""
    return fed(planned.name, planned.heater.fed_by.strip(), own, there)


def fed(name: str, written: str, own: Section, there: Mapping[str, str]) -> Feed:
    """Return what feeds a thing: what is ``written`` to, else the best of the ways its wires go."""
    by_wire = ways_up(name, own, there)
    if written.lower() in NOT_SAID:
        return max(by_wire, key=_rank) if by_wire else Feed((), "unsaid")
    found = max(written_way(written, own, there), key=_rank)
    if found.ends == "nowhere" and found.way == (written,):
        return found
    return replace(found, is_crossed=bool(by_wire) and not any(written in one.way for one in by_wire))


def ways_up(name: str, own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way that feeds a thing, by the wires that end at it; empty where nobody wrote one."""
    return _upward(name, (), (), own, there)


def written_way(written: str, own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return every way that begins at what is written to feed a thing; empty where nothing is written."""
    source = next((one for one in own.sources if one.name == written), None)
    if source is not None:
        return _from(source, (written,), (source.of,), own, there)
    if written.lower() in NOT_SAID:
        return []
    is_outside = written.lower() in FROM_OUTSIDE
    return [Feed((written,), "outside") if is_outside else Feed((written,), "nowhere", "no", written)]


def _rank(feed: Feed) -> tuple[int, int]:
    """Return how good a way is: what stands before what does not, a battery before a cable, both before nothing."""
    return WORST_FIRST.index(feed.stands), {"battery": 2, "outside": 1}.get(feed.ends, 0)


def _upward(
    name: str, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]
) -> list[Feed]:
    """Return every way on from a thing, by the wires that end at it."""
    sources = {one.name: one for one in own.sources}
    found: list[Feed] = []
    for lead in own.leads:
        if lead.ends != name or lead.starts in way:
            continue
        source = sources.get(lead.starts)
        if source is None and lead.starts.lower() in FROM_OUTSIDE:
            found.append(_ended((*way, lead.starts), "outside", (*passed, lead.of), own, there))
        elif source is None:
            found.append(Feed((*way, lead.starts), "nowhere", "no", lead.starts))
        else:
            found += _from(source, (*way, lead.starts), (*passed, lead.of, source.of), own, there)
    return found


def _from(
    source: PlannedSource, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]
) -> list[Feed]:
    """Return every way that has come to a thing of the plan: a battery ends it, else the wires go on."""
    if source.rated is not None:
        return [replace(_ended(way, "battery", passed, own, there), battery=source.of, holds=usable(source))]
    further = _upward(source.name, way, passed, own, there)
    return further or [_ended(way, "outside" if source.is_opening else "unfed", passed, own, there)]


def _ended(way: tuple[str, ...], ends: Ends, passed: tuple[str, ...], own: Section, there: Mapping[str, str]) -> Feed:
    names = {one.of: one.name for one in own.sources} | {one.of: f"the wire {one.name}" for one in own.leads}
    stood: dict[str, Stands] = {of: _stands(there.get(of, "no")) for of in passed}
    worst: Stands = min(stood.values(), key=WORST_FIRST.index, default="yes")
    lacking = next((of for of, one in stood.items() if one == worst), "") if worst != "yes" else ""
    rated = {one.of: one.gives for one in own.sources} | {one.of: one.gives for one in own.leads}
    gives = [(band, of) for of in stood if (band := rated[of]) is not None]
    most, most_of = min(gives, key=lambda one: one[0].low, default=(None, ""))
    return Feed(
        way, ends, worst, names.get(lacking, ""), lacking, most=most, most_of=most_of, most_by=names.get(most_of, "")
    )


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
