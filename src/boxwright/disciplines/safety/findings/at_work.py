"""The rule of the ways out of whoever works inside: nobody sleeps there, so one that is free is enough."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from boxwright.disciplines.safety.result import Exit, Result
from boxwright.disciplines.safety.solve import least_of
from boxwright.disciplines.safety.sourced import LENGTHS
from boxwright.disciplines.safety.telling import OWN_RULE, WORK, length, name_of, stopper
from boxwright.exchange import FLOOR, Aisle
from boxwright.finding import Finding, listed
from boxwright.units import HeaderUnits


def way_out_at_work(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where whoever works inside has no way out that is surely free.

    Asks: is the way from the free floor to one way out that stands wide enough, with everything in its place for work
    Limit: one, shut below 300 mm (12 in), to be tried below 450 mm (18 in): our own rule, practice. Where people are
        employed OSHA asks for two, and takes one where everybody can leave safely by it; local code may ask more
    Source: own-rule, practice; of employers osha-exit-routes 1910.36(b)
    Lever: move what stands in the way
    """
    there = [one for one in result.exits if one.there != "no" and not one.way.is_fixed]
    if result.use != "work" or not there or not any(way.of == FLOOR for way in result.aisles or ()):
        return
    able = [one for one in there if not (one.is_too_small or one.is_held_shut or one.way_shut_by is not None)]
    if not able:
        says = f"whoever works inside has no way out: {listed([_why_not(one) for one in there])}"
        yield _told("stop", says, there[0], _in_the_way(there[0], result), result)
    elif not any(_is_free(one, result) for one in able):
        says = f"whoever works inside may have no way out: {listed([_doubt(one, result, shown_in) for one in able])}"
        yield _told("unknown", says, able[0], _in_the_way(able[0], result), result)


def _told(kind: Literal["stop", "unknown"], says: str, first: Exit, by: tuple[str, ...], result: Result) -> Finding:
    names = listed([name_of(path) for path in by[:3]])
    act = f"Move {names} out of the way of {first.way.name}" if names else f"Clear {first.way.name}"
    if kind == "unknown":
        act = f"With everything in its place for work go out by {first.way.name}, without moving anything"
    return Finding(
        "safety/way-out-at-work", first.way.of, kind, says, source=OWN_RULE, lever=f"{(*by, first.way.of)[0]}.x",
        act=act, minutes=10, protects=kind == "stop", uses=WORK, because=tuple(dict.fromkeys((first.way.of, *by))),
    )  # fmt: skip


def _way_to(one: Exit, result: Result) -> Aisle | None:
    """Return the best way from the floor to an opening: on foot, or climbing on what is built in."""
    found = [way for way in result.aisles or () if (way.of, way.leads_to) == (FLOOR, one.way.of)]
    return max(found, key=lambda way: (least_of(way).low, least_of(way).high), default=None)


def _is_free(one: Exit, result: Result) -> bool:
    way = _way_to(one, result)
    is_doubtful = one.there != "yes" or one.may_be_held_shut or one.may_be_too_small or one.way.said_otherwise
    return way is not None and not is_doubtful and way.width.known and least_of(way).low >= LENGTHS["pass"]


def _in_the_way(one: Exit, result: Result) -> tuple[str, ...]:
    """Return the paths of what is in the way to an opening, or of its leaf; a face of the room is no path."""
    if (one.is_held_shut or one.may_be_held_shut) and one.struck is not None and "[" in one.struck.to:
        return (one.struck.to,)
    way = _way_to(one, result)
    return one.way_shut_by or ((*way.blocked_by, *way.unsure) if way is not None else ())


def _why_not(one: Exit) -> str:
    name = one.way.name
    if one.is_held_shut and one.struck is not None:
        return f"{name} is held shut by {stopper(one.struck.to, one.way)}"
    if one.is_too_small:
        return f"nobody gets through what is clear of {name}"
    by = listed([name_of(path) for path in (one.way_shut_by or ())[:3]])
    return f"the way to {name} is shut by {by}" if by else f"the way to {name} is shut"


def _doubt(one: Exit, result: Result, shown_in: HeaderUnits) -> str:
    """Return why a way out that is not surely shut is not surely free."""
    name, way = one.way.name, _way_to(one, result)
    if one.there != "yes":
        return f"{name} is not ticked"
    if one.way.said_otherwise:
        return f"{name} counts as a way out, and beside it is written {one.way.said_otherwise}"
    if one.may_be_held_shut and one.struck is not None:
        by = stopper(one.struck.to, one.way)
        return f"{by} may leave only {length(one.struck.metre.low, shown_in)} of {name}"
    if one.may_be_too_small:
        return f"{name} may be too small to get through"
    if way is None or not way.width.known:
        return f"nobody can say whether the way to {name} is free"
    if way.unsure:
        return f"nobody knows whether {listed([name_of(path) for path in way.unsure[:3]])} stands in the way to {name}"
    at = f" at {listed([name_of(path) for path in way.blocked_by[:3]])}" if way.blocked_by else ""
    if not way.height.known:
        return f"nobody knows how much headroom the way to {name} has"
    return f"the way to {name} may be only {length(least_of(way).low, shown_in)} wide or high{at}"
