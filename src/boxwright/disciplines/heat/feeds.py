"""What feeds a heater with electricity: the way from it, by wires or by what is written, to a battery or to outside.

What stands on that way is asked of the slot: a battery that is not in yet feeds nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Literal

from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.night import ASLEEP_HOURS
from boxwright.disciplines.heat.parts import Heater, PlannedDraw, PlannedHeater, PlannedSource, Section
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
    ``holds`` (J) is what a full battery gives. ``most`` (W) is what the weakest inverter on the way passes on,
    ``most_of`` its path; None where there is none. ``is_crossed`` says that what is written and the wires differ.
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

    @property
    def is_sure(self) -> bool:
        """Return whether all of it surely stands and comes from somewhere."""
        return self.stands == "yes" and self.ends in ("battery", "outside")


NO_FEED = Feed((), "unsaid")


def takes_electricity(runs: str, facet: Heater, feed: Feed) -> bool:
    """Return whether a heater wants electricity: by what it runs on, by what it is written to draw, by its own wire."""
    if runs == "electric":
        return True
    amps = [one.high for one in (facet.draw, facet.start) if one is not None and one.known]
    return max(amps) > 0.0 if amps else feed.ends != "unsaid"


def feed_of(planned: PlannedHeater, own: Section, there: Mapping[str, str]) -> Feed:
    """Return what feeds a heater; ``there`` says of each path that stands whether it does "yes" or "perhaps"."""
    written = planned.heater.fed_by.strip()
    by_wire = _upward(planned.name, (), (), own, there)
    if written.lower() in NOT_SAID:
        return max(by_wire, key=_rank) if by_wire else Feed((), "unsaid")
    source = next((one for one in own.sources if one.name == written), None)
    if source is None:
        is_outside = written.lower() in FROM_OUTSIDE
        return Feed((written,), "outside") if is_outside else Feed((written,), "nowhere", "no", written)
    found = max(_from(source, (written,), (source.of,), own, there), key=_rank)
    return replace(found, is_crossed=bool(by_wire) and not any(written in one.way for one in by_wire))


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
        if source is None:
            found.append(Feed((*way, lead.starts), "nowhere", "no", lead.starts))
        else:
            found += _from(source, (*way, lead.starts), (*passed, lead.of, source.of), own, there)
    return found


def _from(
    source: PlannedSource, way: tuple[str, ...], passed: tuple[str, ...], own: Section, there: Mapping[str, str]
) -> list[Feed]:
    """Return every way that has come to a thing of the plan: a battery ends it, else the wires go on."""
    if source.rated is not None:
        return [_ended(way, "battery", passed, own, there, source)]
    further = _upward(source.name, way, passed, own, there)
    return further or [_ended(way, "outside" if source.is_opening else "unfed", passed, own, there, source)]


def _ended(
    way: tuple[str, ...], ends: Ends, passed: tuple[str, ...], own: Section, there: Mapping[str, str],
    source: PlannedSource,
) -> Feed:  # fmt: skip
    names = {one.of: one.name for one in own.sources} | {one.of: f"the wire {one.name}" for one in own.leads}
    stood: dict[str, Stands] = {of: _stands(there.get(of, "no")) for of in passed}
    worst: Stands = min(stood.values(), key=WORST_FIRST.index, default="yes")
    lacking = next((of for of, one in stood.items() if one == worst), "") if worst != "yes" else ""
    battery = source.of if ends == "battery" else ""
    holds = usable(source) if battery else None
    passes = [(one.gives, one.of) for one in own.sources if one.of in passed and one.gives is not None]
    most, most_of = min(passes, key=lambda one: one[0].low, default=(None, ""))
    return Feed(way, ends, worst, names.get(lacking, ""), lacking, battery, holds, most=most, most_of=most_of)


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


def also_drawn(own: Section, there: Mapping[str, str]) -> Band:
    """Return what else that stands may take in a night (J): nothing at the least, all that is written at the most.

    What wires feed from elsewhere than a battery, such as lamps for the road, takes nothing of it.
    """
    names = {one.of: one.name for one in own.sources}
    beside = [one for one in own.draws if one.of in there and _may_draw(names.get(one.of, ""), own, there)]
    return Band(0.0, 0.0, sum(_in_a_night(one) for one in beside), spread="interval")


def _may_draw(name: str, own: Section, there: Mapping[str, str]) -> bool:
    """Return whether a thing may take from a battery: its wires lead to one, or nobody wrote any."""
    ways = _upward(name, (), (), own, there)
    return not ways or any(one.ends == "battery" for one in ways)


def _in_a_night(draw: PlannedDraw) -> float:
    watts = draw.watts.high if draw.watts is not None and draw.watts.known else 0.0
    if draw.amps is not None and draw.amps.known:
        watts = draw.amps.high * VOLTS.high
    lasts = min(draw.hours.high, NIGHT) if draw.hours is not None and draw.hours.known else NIGHT
    share = draw.duty.high if draw.duty is not None and draw.duty.known else 1.0
    return watts * draw.count * lasts * share
