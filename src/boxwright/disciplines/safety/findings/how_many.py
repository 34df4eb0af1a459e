"""Whether each sleeping place has its ways out, and which openings are none."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from boxwright.disciplines.safety.result import Bed, Exit, Result
from boxwright.disciplines.safety.solve import are_in_one_place, is_shut
from boxwright.disciplines.safety.sourced import WAYS_OUT
from boxwright.disciplines.safety.telling import OWN_RULE, SLEEP, kind_of, name_of, question, stopper
from boxwright.exchange import Aisle
from boxwright.finding import Finding, listed
from boxwright.source import Rule
from boxwright.units import HeaderUnits

WANTED = 2.0
"""Ways out of every sleeping place, where no rule of the home is known: the own rule."""


def two_ways_out(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say from which sleeping place there are not two ways out.

    Asks: are there two unobstructed ways out of every sleeping place, at this stage and in this use
    Limit: two in the United States (NFPA 1192 as quoted); elsewhere two by the own rule, which asks, and stops only
        where it is certain that there is none: nobody is to sleep where they are shut in. What counts is our own
        measure, practice: under 300 mm (12 in) of hole or way is none; local code may ask more
    Source: nfpa-1192 6.2.1.2, own-rule, practice
    Lever: a second way out that opens from inside, and nothing in front of it
    """
    code = "safety/two-ways-out"
    if result.use != "sleep":
        return
    if not result.has_openings:
        says = "no opening of the trailer is written, so nobody can say how one gets out"
        act = "Write every door, ramp, hatch and window under openings:"
        yield question(code, "openings", says, act, 10, "openings")
        return
    rule = result.law.rule(WAYS_OUT)
    for bed in result.beds or (None,):
        able = _able(result, bed)
        if len(able) >= _wanted(result):
            continue
        lost = [one for one in result.exits if one not in able]
        yield _too_few(bed, able, lost, result, rule)


def _able(result: Result, bed: Bed | None) -> list[Exit]:
    """Return the ways out that count from a bed, where none stands from the floor; of two in one place only one."""
    found: list[Exit] = []
    for one in result.exits:
        if one.counts and not _is_shut(result, bed, one) and _in_one_place(one, found) is None:
            found.append(one)
    return found


def _in_one_place(one: Exit, others: Iterable[Exit]) -> Exit | None:
    """Return which other way out an opening overlaps in its wall, as a door in a ramp does: one fire shuts both."""
    return next((other for other in others if one.way.wall == other.way.wall and are_in_one_place(one, other)), None)


def _wanted(result: Result) -> float:
    rule = result.law.rule(WAYS_OUT)
    return rule.limit if rule is not None and rule.limit is not None else WANTED


def is_enough(result: Result) -> bool:
    """Return whether every bed has its ways out: of one more that is lost nothing else is said."""
    return all(len(_able(result, bed)) >= _wanted(result) for bed in result.beds or (None,))


def _too_few(bed: Bed | None, able: list[Exit], lost: list[Exit], result: Result, rule: Rule | None) -> Finding:
    """Return what is said of a bed with too few ways out, at the first opening that could be one more."""
    place = f" of {bed.name}" if bed is not None else ""
    says = f"there is no way out{place}"
    if able:
        verb = "is" if all(_is_sure(one) for one in able) else "may be"
        says = f"the only way out{place} {verb} {listed([one.way.name for one in able])}, and two are wanted"
    if lost:
        says += f": {listed([_why_not(result, bed, one, able) for one in lost])}"
    where = lost[0].way.of if lost else bed.of if bed is not None else "openings"
    act, minutes = _first_to_do(lost, able, result)
    because = (where, *(one.way.of for one in lost[1:]), *((bed.of,) if bed is not None else ()))
    is_certain = not able and bool(lost) and all(_is_surely_lost(result, bed, one) for one in lost)
    is_stop = is_certain or (rule is not None and kind_of(rule) == "stop")
    return Finding(
        "safety/two-ways-out", where, "stop" if is_stop else "unknown", says,
        source=rule.source if rule is not None else OWN_RULE, lever=f"{where}.release", act=act,
        minutes=minutes, protects=True, uses=SLEEP, because=tuple(dict.fromkeys(because)),
    )  # fmt: skip


def _is_sure(one: Exit) -> bool:
    """Return whether an opening that counts is known to open from inside and to let somebody through."""
    is_known = one.opens == "inside" and one.is_measured and one.way.facet.egress != "unknown"
    return is_known and not (one.may_be_held_shut or one.may_be_too_small)


def _is_surely_lost(result: Result, bed: Bed | None, one: Exit) -> bool:
    """Return whether an opening certainly lets nobody out, whatever nobody wrote of it turns out to be."""
    is_held = one.is_held_shut and _bed_before(result, one) == ""
    if one.there == "no" or is_held or one.is_too_small or _is_shut(result, bed, one):
        return True
    may_be_fitted = any(
        device.there == "perhaps" and device.kept.facet.release.strip() == one.way.name for device in result.releases
    )
    return one.opens in ("none", "key", "tool") and not may_be_fitted


def _bed_before(result: Result, one: Exit) -> str:
    """Return the name of the bed that holds an opening shut and could be folded up first; empty where none does."""
    return name_of(one.struck.to) if one.struck is not None and one.struck.to in result.folding else ""


def _first_to_do(lost: list[Exit], able: list[Exit], result: Result) -> tuple[str, int]:
    """Return what makes the first opening that does not count one more way out, and in how many minutes."""
    if not lost:
        return "Make a second way out", 120
    if lost[0].counts and _in_one_place(lost[0], able) is not None:
        return "Make a second way out in another place", 120
    name = lost[0].way.name
    if lost[0].there == "perhaps":
        return f"Look whether {name} is in, and tick it", 2
    if lost[0].there == "no":
        return f"Build in {name} before anybody sleeps there", 120
    if lost[0].way.is_fixed:
        return f"Look whether {name} opens, and write how it opens", 5
    if lost[0].opens in ("none", "key", "tool"):
        fit = what_to_fit(result, lost[0])
        return (fit, 60) if fit else (f"Make {name} open from inside with a bare hand", 120)
    if lost[0].is_held_shut and (folded := _bed_before(result, lost[0])):
        return f"Let {name} open another way, or try in the dark to fold up {folded} and go out by it", 60
    if lost[0].is_held_shut and lost[0].struck is not None:
        if "[" not in lost[0].struck.to:
            return f"Let the leaf of {name} go another way, not against {stopper(lost[0].struck.to, lost[0].way)}", 60
        return f"Move {name_of(lost[0].struck.to)} out of the way of {name}", 10
    if lost[0].is_too_small and lost[0].way.facet.clear is None:
        return f"Let {name} open farther, make it larger, or make another opening a way out", 120
    if lost[0].is_too_small:
        return f"Make {name} larger, or another opening a way out", 120
    return f"Clear the way to {name}", 10


def ways_between(result: Result, bed: Bed, one: Exit) -> list[Aisle]:
    """Return the ways from a bed to an opening."""
    return [aisle for aisle in result.aisles or () if (aisle.of, aisle.leads_to) == (bed.of, one.way.of)]


def what_to_fit(result: Result, one: Exit) -> str:
    """Return that the release of an opening is to be fitted, where the file has one that does not stand."""
    for device in result.releases:
        if device.there == "no" and device.kept.facet.release.strip() == one.way.name:
            return f"Fit {device.kept.name}, so that {one.way.name} opens from inside"
    return ""


def _is_shut(result: Result, bed: Bed | None, one: Exit) -> bool:
    """Return whether the way from a bed is too narrow for anybody, with nothing doubtful in the way."""
    if bed is None:
        return one.way_shut_by is not None
    found = ways_between(result, bed, one)
    return bool(found) and all(is_shut(aisle) for aisle in found)


def _why_not(result: Result, bed: Bed | None, one: Exit, able: list[Exit]) -> str:
    name = one.way.name
    beside = _in_one_place(one, able) if one.counts else None
    if beside is not None and not _is_shut(result, bed, one):
        return f"{name} is in the same place of the {one.way.wall} wall as {beside.way.name}, and one fire shuts both"
    if one.there == "no":
        return f"{name} is not in"
    if one.there == "perhaps":
        return f"{name} is not ticked and does not count"
    if one.way.is_fixed:
        return f"{name} is written as one that does not open"
    if one.opens == "none":
        return f"{name} does not open from inside"
    if one.opens in ("key", "tool"):
        return f"{name} opens with a {one.opens} only"
    if one.is_held_shut and (folded := _bed_before(result, one)):
        return f"{name} is held shut by {folded} until that is folded up"
    if one.is_held_shut and one.struck is not None:
        return f"{name} is held shut by {stopper(one.struck.to, one.way)}"
    if one.is_too_small:
        return f"nobody gets through what is clear of {name}"
    found = ways_between(result, bed, one) if bed is not None else []
    blocked_by = found[0].blocked_by if found else one.way_shut_by or ()
    by = listed([name_of(path) for path in blocked_by[:3]])
    return f"the way to {name} is shut by {by}" if by else f"the way to {name} is shut"
