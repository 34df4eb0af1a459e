"""Rules of the hot day: how hot the room is for those asleep and at work in it, and what is asked of the place."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.hot_hours import LEFT_TOO_HOT, NO_FAN_HELPS
from boxwright.disciplines.heat.result import HotHours, Result
from boxwright.disciplines.heat.shell import Face
from boxwright.disciplines.heat.telling import (
    A_HOT_DAY,
    IN_WORDS,
    LEAVE,
    OWN_RULE,
    SLEEP,
    WORK,
    asked_of_place,
    between,
    source_of,
    waits,
    warm,
)
from boxwright.disciplines.heat.year_room import ROOMS
from boxwright.finding import Finding, Kind, listed
from boxwright.units import HeaderUnits


def hot_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how hot it gets where somebody sleeps or works in it.

    Asks: the hottest hour of a hot day, or the mean high of the hottest month, of every place that is written
    Limit: none
    Source: own-rule
    Lever: hottest_design of a place
    """
    uses = {"sleep": SLEEP, "work": WORK}.get(result.use, LEAVE)
    if not (result.is_peopled or result.waiting) or not result.volume.known:
        return
    hot = f"hottest_design: {warm(A_HOT_DAY, shown_in)}"
    if not result.has_hot_day:
        says = "nobody wrote how hot it gets where the trailer stands, so nobody can say whether the room gets too hot"
        act = f"Write under places how hot its hottest day gets, such as my field: {{{hot}}}"
        yield asked_of_place("heat/hot-not-known", "places", says, act, uses)
        return
    for name in result.no_hot_day:
        says = f"nobody wrote how hot it gets at {name}, so nobody can say whether the room gets too hot there"
        act = f"Write how hot its hottest day gets, such as {hot}"
        yield asked_of_place("heat/hot-not-known", f"places[{name}]", says, act, uses)


def too_hot(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the room gets hotter than people bear, on the hottest day that is written, aired as it can be.

    Asks: the room as people go to bed, or in its hottest hour where they work in it
    Limit: 35 C, from which on moved air no longer cools (from memory); from 28 C on it is told as warm
    Source: fans-recalled, year-practice; three such days through the room, hour by hour
    Lever: shade, a white roof, more that opens, a cooler, another place
    """
    found = result.hot
    if found is None or found.when == "left" or found.warm.high <= ROOMS["too warm"]:
        return
    warmest, limit = found.warm, NO_FAN_HELPS if found.warm.high > NO_FAN_HELPS else ROOMS["too warm"]
    kind: Kind = "advice"
    if limit == NO_FAN_HELPS:
        kind = "limit" if warmest.low > limit else "unknown"
    row = ("too_hot", "no fan helps") if limit == NO_FAN_HELPS else ("year_rooms", "too warm")
    says = f"on a hot day at {found.hot.place}, {between(found.hot.hottest, shown_in)} outside, {_aired(found)} the"
    says += f" room is {between(warmest, shown_in)} {'as people go to bed' if found.when == 'bedtime' else 'at work'}"
    says += f"; from {warm(limit, shown_in)} on " + (
        "a fan cools nobody any more" if limit == NO_FAN_HELPS else "people sleep and work badly"
    )
    unsaid = _unsaid(result, found)
    says += f". {unsaid[0].upper()}{unsaid[1:]}" if unsaid and kind == "unknown" else ""
    act = "Put it in the shade, open it before it gets hot, go where it is cooler when it is too much; boxwright heat"
    yield Finding(
        "heat/too-hot", found.hot.of, kind, says, warmest.high, limit, limit - warmest.high, "K", source_of(*row),
        found.hot.of, act=f"{act} RIG --day tells what a white roof, shade and a cooler make of it", minutes=30,
        could_stop=False, uses=SLEEP if found.when == "bedtime" else WORK, because=(found.hot.of,),
    )  # fmt: skip


def left_in_heat(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where it gets too hot for whoever waits in a trailer that is left, and cannot get out.

    Asks: the hottest hour of the hottest day that is written, everything shut, nothing cooled
    Limit: 29.5 C, of dogs and cats in indoor housing, on the safe side from the first hour on; asked where it may be
    Source: animals-recalled; three such days through the room, hour by hour
    Lever: waits of who waits; a milder place
    """
    found, names = result.hot, listed(name for name, _ in result.waiting)
    if not result.waiting or result.use != "leave":
        return
    where = tuple(f"people[{name}]" for name, _ in result.waiting)
    act = f"Take {names} with you on such a day, or let somebody stay who can open it; what cools it may stop unseen"
    if not result.volume.known:
        says = f"{waits(result.waiting)}, and whether it gets too hot or too cold cannot be said: length, width and"
        says += " height of the body are not all written"
        yield Finding(
            "heat/left-in-heat", where[0], "unknown", says, source=OWN_RULE, lever="trailer.body", act="Measure the"
            " body inside, stud face to stud face and deck to bows", minutes=10, could_stop=False, uses=LEAVE,
            because=(*where, "trailer.body"),
        )  # fmt: skip
    if found is None or found.warm.high <= LEFT_TOO_HOT:
        return
    is_written = any(sure for _, sure in result.waiting)
    act = act if is_written else f"Write waits: yes or waits: no of {names}; {act[0].lower()}{act[1:]}"
    says = (
        f"{waits(result.waiting)}: on a hot day at {found.hot.place}, {between(found.hot.hottest, shown_in)} outside,"
    )
    says += f" the room comes to {between(found.warm, shown_in)}, shut and not cooled; above"
    says += f" {warm(LEFT_TOO_HOT, shown_in)} nobody who cannot get out may be left in it"
    yield Finding(
        "heat/left-in-heat", where[0], "limit" if is_written and found.warm.best > LEFT_TOO_HOT else "unknown", says,
        found.warm.high, LEFT_TOO_HOT,
        LEFT_TOO_HOT - found.warm.high, "K", source_of("left_waiting", "no hotter"), where[0], act=act, minutes=5,
        could_stop=False, uses=LEAVE, because=(*where, found.hot.of),
    )  # fmt: skip


def _aired(found: HotHours) -> str:
    if found.run.way == "shut":
        return "shut, for nothing opens,"
    plugged = " by a cable from outside" if found.run.way == "cooled" and found.is_plugged_in else ""
    return f"{IN_WORDS[found.run.way]}{plugged},"


def _sees_the_sun(face: Face) -> bool:
    """Return whether the skin of a face takes sun: no glass does, nor what looks down, as a floor and a wheel box."""
    return not face.is_window and face.outward[2] >= 0.0


def _unsaid(result: Result, found: HotHours) -> str:
    """Return what nobody wrote that makes the ends so wide; empty where it is all written."""
    lacks = [] if found.hot.is_written else [f"hottest_design of {found.hot.place}"]
    is_bare = any(not face.coat.colour for face in result.shell.faces if _sees_the_sun(face))
    lacks += ["the colour of the skin"] if is_bare else []
    lacks += [f"by which wire {listed(found.unfed)} runs"] if found.unfed and found.run.way == "fans" else []
    return f"nobody wrote {' or '.join(lacks)}: that makes it so wide" if lacks else ""


__all__ = ["hot_not_known", "left_in_heat", "too_hot"]
