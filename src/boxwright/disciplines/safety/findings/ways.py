"""Rules of the ways out: what opens them, what stands in the way, what is left to get through."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from boxwright.disciplines.safety.findings.how_many import WANTED, is_enough, ways_between, what_to_fit
from boxwright.disciplines.safety.result import Bed, Exit, Result
from boxwright.disciplines.safety.solve import ends_of, least_of
from boxwright.disciplines.safety.sourced import (
    CLEAR_HEIGHT,
    CLEAR_WIDTH,
    LENGTHS,
    NOT_PAST,
    SOURCE_OF_LENGTH,
)
from boxwright.disciplines.safety.telling import (
    SLEEP,
    advice,
    cited,
    length,
    measured_elsewhere,
    name_of,
    question,
    some_of,
    stop,
    stopper,
)
from boxwright.finding import Finding, listed
from boxwright.units import Band, HeaderUnits


def opens_from_inside(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which way out nobody inside can open while it is barred outside.

    Asks: can every door, ramp, hatch and window to leave by be opened from inside, barred outside, without key or tool
    Limit: every one that stands; our own rule, practice: nobody is to sleep where they can be shut in; local code may
        ask more
    Source: own-rule
    Lever: a release inside
    """
    code = "safety/opens-from-inside"
    for one in result.exits if result.use == "sleep" else ():
        of, name = one.way.of, one.way.name
        is_said = one.opens == "inside" and not one.way.is_fixed
        if one.there == "no" or is_said or (one.there == "perhaps" and one.way.is_cut is not True):
            continue
        lever = f"{of}.release"
        if one.way.is_fixed:
            yield _fixed(code, one)
        elif one.opens == "unknown" and one.way.said_otherwise:
            yield _said_otherwise(code, one)
        elif one.opens == "unknown":
            word = one.way.facet.release
            read = f'release: "{word}" does not say' if word else "nobody wrote"
            barred = "" if one.way.has_unit else " while it is barred outside"
            says = f"{read} what opens {name} from inside{barred}; write release: inside, key, tool or none"
            act = f"Open {name} from inside with one hand in the dark{barred}"
            yield question(code, of, says, act, 5, lever)
        elif one.opens == "none":
            says = f"nobody can open {name} from inside while it is barred outside: whoever sleeps there can be shut in"
            yield stop(code, of, says, what_to_fit(result, one) or f"Fit a release inside {name}", 60, lever)
        else:
            says = f"{name} opens from inside only with a {one.opens}, which is not in the hand in smoke and dark"
            act = what_to_fit(result, one) or f"Fit a release inside {name} that a bare hand works"
            yield stop(code, of, says, act, 60, lever)


def _fixed(code: str, one: Exit) -> Finding:
    """Return what is asked of an opening that is meant to be left by and is written as one that does not open."""
    of, name = one.way.of, one.way.name
    meant = f"egress: {one.way.facet.egress}" if one.way.facet.egress else f"release: {one.way.facet.release}"
    says = f"{name} is written as a way out ({meant}) and as one that does not open (opens: no); it is not counted"
    act = f"Look whether {name} opens, and write how it opens, or egress: no and no release"
    return question(code, of, says, act, 5, f"{of}.swing")


def _said_otherwise(code: str, one: Exit) -> Finding:
    """Return what is asked of a way out that counts as there, and of which is written what may keep it shut."""
    of, name, written = one.way.of, one.way.name, one.way.said_otherwise
    says = f"{name} counts as a way out, and beside it is written {written}: nobody can say whether it"
    says += " opens from inside"
    act = f"Go out by {name}; then take out {written}, or write done: no"
    return question(code, of, says, act, 5, f"{of}.{written.partition(':')[0]}")


def release_not_fitted(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which release is had or planned and does not stand, while its opening cannot be opened from inside.

    Asks: does every part that is to release an opening stand, where that opening has no other release
    Limit: every one; our own rule, practice: nobody is to sleep where they can be shut in; local code may ask more
    Source: own-rule
    Lever: fit it, and tick it
    """
    code = "safety/release-not-fitted"
    by_name = {one.way.name: one for one in result.exits}
    for device in result.releases if result.use == "sleep" else ():
        kept = device.kept
        opening = by_name.get(kept.facet.release.strip())
        if opening is None:
            says = f'{kept.name} is to release "{kept.facet.release}", which is no way out of this file'
            act = f"Write the name of the opening {kept.name} releases"
            yield question(code, kept.of, says, act, 2, f"{kept.of}.release")
        elif opening.opens == "inside" or opening.there == "no":
            continue
        elif device.there != "no" and device.is_out_of_hand:
            says = f"{kept.name} is written outside, where nobody inside reaches it to open {opening.way.name}"
            act = f"Put {kept.name} where a hand inside reaches it, and write its place"
            yield replace(stop(code, kept.of, says, act, 30, f"{kept.of}.x"), because=(kept.of, opening.way.of))
        elif device.there == "yes":
            continue
        elif device.there == "perhaps":
            says = f"{kept.name} may be fitted or not; without it nobody can open {opening.way.name} from inside"
            act = f"Look whether {kept.name} is fitted, and tick it"
            yield question(code, kept.of, says, act, 2, f"{kept.of}.done")
        else:
            when = f"goes in at stage {kept.stage}" if kept.is_planned and kept.stage else "has no stage yet"
            says = f"{kept.name} is not fitted ({when}), and without it nobody can open {opening.way.name} from inside"
            lever = f"{kept.of}.done" if kept.is_planned else f"{kept.of}.stage"
            made = stop(code, kept.of, says, f"Fit {kept.name}, write its stage and tick it", 60, lever)
            yield replace(made, because=(kept.of, opening.way.of))


def way_blocked(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which way out is shut or tight, by what, and how wide it is.

    Asks: is the way from every bed to every way out that stands wide enough to be taken, at night with everything out
    Limit: shut below 300 mm (12 in), not asked about from 450 mm (18 in) on; between the two it is to be tried
    Source: practice
    Lever: move what stands at the narrowest place
    """
    code = "safety/way-blocked"
    if result.use != "sleep" or result.aisles is None:
        return
    for one in result.exits:
        if one.counts and one.may_be_held_shut:
            yield _may_be_held(code, one, shown_in)
        if one.is_to_count and one.is_held_shut and is_enough(result):
            yield _held(code, one, shown_in)
    for bed in result.beds:
        for one in result.exits:
            if one.counts:
                yield from _blocked(code, result, bed, one, shown_in)


def _held(code: str, one: Exit, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a way out that is held shut, where there are enough others."""
    assert one.struck is not None
    left, by = one.struck.metre.best, stopper(one.struck.to, one.way)
    is_thing = "[" in one.struck.to  # the shell and its studs cannot be moved
    thing = one.struck.to if is_thing else one.way.of
    says = f"past {by} {some_of(left, shown_in)} of {one.way.name} is left to get through: nobody gets out by it"
    act, minutes = f"Move {by} out of the way of {one.way.name}", 10
    if not is_thing:
        act, minutes = f"Let the leaf of {one.way.name} go another way, not against {by}", 60
    return Finding(
        code, one.way.of, "fix", says, left, LENGTHS["squeeze"], left - LENGTHS["squeeze"], "m", "practice",
        f"{thing}.x", act=act, minutes=minutes, uses=SLEEP, because=tuple(dict.fromkeys((one.way.of, thing))),
    )  # fmt: skip


def _may_be_held(code: str, one: Exit, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a way out of which something may leave little: its leaf strikes it, or it covers it."""
    assert one.struck is not None
    left, by = one.struck.metre.low, stopper(one.struck.to, one.way)
    thing = one.struck.to if "[" in one.struck.to else one.way.of  # a face of the room cannot be moved
    only = length(left, shown_in)
    says = f"{by} may leave only {only} of {one.way.name} to get through"
    if some_of(left, shown_in) == "nothing":
        says = f"{by} may leave nothing of {one.way.name} to get through"
    act = f"Open {one.way.name} as far as it goes with everything in its place for the night, and go out by it"
    return Finding(
        code, one.way.of, "unknown", says, left, LENGTHS["pass"], left - LENGTHS["pass"], "m", "practice",
        f"{thing}.x", act=act, minutes=5, protects=True, uses=SLEEP, because=tuple(dict.fromkeys((one.way.of, thing))),
    )  # fmt: skip


def _blocked(code: str, result: Result, bed: Bed, one: Exit, shown_in: HeaderUnits) -> Iterator[Finding]:
    found = ways_between(result, bed, one)
    name, where = one.way.name, one.way.of
    known = [aisle for aisle in found if aisle.width.known]
    if not known:
        says = f"nobody can say whether the way from {bed.name} to {name} is free"
        act = f"Lie on {bed.name} with everything in its place for the night, and go out by {name} in the dark"
        yield question(code, where, says, act, 5, f"{where}.x", "practice", protects=bool(found))
        return
    best = max(known, key=lambda aisle: (least_of(aisle).low, least_of(aisle).high))
    least = least_of(best)
    if least.low >= LENGTHS["pass"]:
        return
    paths = (*best.blocked_by, *best.unsure) or best.over  # what one climbs over may be too high for it
    by = listed([name_of(path) for path in paths[:3]])
    word = "high" if best.height.known and best.height.low < best.width.low else "wide"
    wide = length(least.best, shown_in)
    at = f", at {by}" if by else ""
    lever = f"{(*paths, where)[0]}.x"
    if max(least_of(aisle).high for aisle in known) < LENGTHS["squeeze"]:
        says = f"the way from {bed.name} to {name} is {wide} {word}{at}: nobody gets through"
        act = f"Move {by} out of the way to {name}" if by else f"Clear the way to {name}"
        yield Finding(
            code, where, "fix", says, least.best, LENGTHS["squeeze"], least.best - LENGTHS["squeeze"], "m",
            "practice", lever, act=act, minutes=10, uses=SLEEP, because=(where, *best.blocked_by),
        )  # fmt: skip
        return
    says = f"the way from {bed.name} to {name} may be only {length(least.low, shown_in)} {word}{at}; try it"
    if not best.height.known:
        says = f"nobody knows how much headroom the way from {bed.name} to {name} has; try it"
    if best.unsure:
        unsure = listed([name_of(path) for path in best.unsure[:3]])
        says = f"nobody knows whether {unsure} stands in the way from {bed.name} to {name}"
    act = f"Lie on {bed.name} with everything in its place for the night, and go out by {name} in the dark"
    yield Finding(
        code, where, "unknown", says, least.low, LENGTHS["pass"], least.low - LENGTHS["pass"], "m",
        "practice", lever, act=act, minutes=5, protects=True, uses=SLEEP, because=(where, *best.blocked_by),
    )  # fmt: skip


def past_the_other(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where one way out leads past the other, so that one fire shuts both.

    Asks: does the way to one way out go by another, further than 24 in (610 mm) from the bed
    Limit: none past another, but for one within that distance of the bed, drawn across the trailer
    Source: nfpa-1192 6.2.1.3
    Lever: a way out at the other end
    """
    code = "safety/past-the-other"
    rule = result.law.rule(NOT_PAST)
    if result.use != "sleep" or rule is None or rule.limit is None:
        return
    places = {one.way.of: one for one in result.exits}
    for bed in result.beds:
        counting = [one for one in result.exits if one.counts]
        if len(counting) > WANTED:
            continue
        for one in counting:
            for aisle in ways_between(result, bed, one):
                passed = [places[of] for of in aisle.past if of in places and places[of].counts and of != one.way.of]
                far = [other for other in passed if _from_bed(bed, other) > rule.limit]
                if far:
                    says = (
                        f"the way from {bed.name} to {one.way.name} goes past {far[0].way.name}, the other way out:"
                        f" one fire there shuts both ({cited(rule)})"
                    )
                    act = "Make a way out at the other end, or turn the bed round"
                    yield advice(code, one.way.of, says, act, 120, rule.source, f"{one.way.of}.x")
                    break


def _from_bed(bed: Bed, one: Exit) -> float:
    """Return how far along the trailer an opening is from a bed at least."""
    at = ends_of(one.way.place)
    if at is None or bed.at is None:
        return 0.0
    return max(at[0].low - bed.at[0].high, bed.at[0].low - at[0].high, 0.0)


def clear_opening(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what is left of a way out to get through, and where nobody has measured it.

    Asks: is the clear width and height of every way out known, its unit open, and large enough
    Limit: 24 in by 17 in in the United States (second-hand, so it advises); elsewhere 0.45 m either way by practice
    Source: nfpa-1192-size, practice
    Lever: measure it, and write clear: {width: .., height: ..}
    """
    code = "safety/clear-opening"
    wide, high = (result.law.rule(asks) for asks in (CLEAR_WIDTH, CLEAR_HEIGHT))
    for one in result.exits if result.use == "sleep" else ():
        if one.is_to_count:
            yield from _more_than_the_hole(code, one, shown_in)
        if one.is_to_count and one.is_too_small and not one.is_held_shut and is_enough(result):
            yield _too_small(code, one, shown_in)
        if not one.counts:
            continue
        of, name = one.way.of, one.way.name
        if one.way.facet.egress == "unknown":
            says = f"nobody knows whether {name} is meant as a way out, and it is counted as one"
            act = f"Go out by {name} once, and write egress: yes or no"
            yield question(code, of, says, act, 5, f"{of}.egress")
        clear = one.as_it_opens
        if one.clear is None or clear is None or not all(side.known for side in one.clear):
            hole = [side for side in (one.way.width, one.way.height) if side is not None and side.known]
            rough = f"; the hole itself is {_size(hole, shown_in)}" if len(hole) == 2 else ""
            says = f"{name} is meant as a way out, and nobody has measured what is left to get through{rough}"
            act = f"Open {name} as far as it goes, measure what is clear, and write clear: {{width: .., height: ..}}"
            yield question(code, of, says, act, 5, f"{of}.clear")
            continue
        least = min(side.low for side in clear)
        if one.may_be_too_small:
            says = f"{name} may leave only {length(least, shown_in)} to get through, by what is known of it"
            act = f"Open {name} as far as it goes, measure what is clear, and write clear: {{width: .., height: ..}}"
            yield question(code, of, says, act, 5, f"{of}.clear")
            continue
        if least >= LENGTHS["door"] and not one.way.has_unit:
            continue
        if wide is None or high is None or wide.limit is None or high.limit is None:
            if least < LENGTHS["pass"]:
                yield _narrow(code, one, result, shown_in)
            continue
        limits = ((clear[0], wide.limit), (clear[1], high.limit))
        short = [(side, limit) for side, limit in limits if side.low < limit]
        if short:
            side, limit = short[0]
            wanted = f"{wide.limit_text} x {high.limit_text}"
            says = f"{name} leaves {_size(clear, shown_in)} to get through, less than {wanted} ({cited(wide)})"
            act = f"Try {name} with the largest of those who sleep there, in a coat"
            yield Finding(
                code, of, wide.kind, says, side.best, limit, side.best - limit, "m", wide.source, f"{of}.clear",
                act=act, minutes=10, uses=SLEEP, because=(of,),
            )  # fmt: skip


def _narrow(code: str, one: Exit, result: Result, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a way out not everybody gets through, where no rule that is known here gives a size."""
    clear = one.as_it_opens or ()
    side, limit = min(clear, key=lambda side: side.low), LENGTHS["pass"]
    says = (
        f"{one.way.name} leaves {_size(clear, shown_in)} to get through: under {length(limit, shown_in)} not"
        f" everybody does (common practice, no source; no size of {result.law.country or 'the home'} is known here)"
    )
    act = f"Try {one.way.name} with the largest of those who sleep there, in a coat, or make it larger"
    return Finding(
        code, one.way.of, "limit", says, side.low, limit, side.low - limit, "m", "practice", f"{one.way.of}.clear",
        act=act, minutes=10, uses=SLEEP, because=(one.way.of,),
    )  # fmt: skip


def _more_than_the_hole(code: str, one: Exit, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask about a clear width or height that is larger than the hole it is in, or than what its leaf leaves of it."""
    written, way = one.way.facet.clear, one.way
    if written is None:
        return
    sides = ((written.width, one.at_most[0], way.width), (written.height, one.at_most[1], way.height))
    for word, (clear, most, hole) in zip(("width", "height"), sides, strict=True):
        if clear is None or most is None or not (clear.known and most.known) or clear.low <= most.high:
            continue
        wide, is_wide = length(clear.best, shown_in), length(most.high, shown_in)
        is_hole = hole is not None and most.high >= hole.high
        what = "its hole is" if is_hole else "its leaf as it is written to open leaves no more than"
        says = f"{way.name} cannot leave a {word} of {wide}: {what} {is_wide}; no more than that is counted"
        act = f"Open {way.name} as far as it goes, measure what is clear, and write clear: {{width: .., height: ..}}"
        yield question(code, way.of, says, act, 5, f"{way.of}.clear")


def _too_small(code: str, one: Exit, shown_in: HeaderUnits) -> Finding:
    """Return what is said of a way out nobody gets through, where there are enough others."""
    sides = one.clear or (one.way.width, one.way.height)
    known = [side for side in sides if side is not None and side.known]
    least = min(known, key=lambda side: side.high)
    says = f"{one.way.name} leaves {_size(known, shown_in)} to get through: nobody gets out by it"
    act = f"Make {one.way.name} larger, or write egress: no"
    return Finding(
        code, one.way.of, "fix", says, least.best, LENGTHS["squeeze"], least.best - LENGTHS["squeeze"], "m", "practice",
        f"{one.way.of}.clear", act=act, minutes=120, uses=SLEEP, because=(one.way.of,),
    )  # fmt: skip


def _size(sides: Sequence[Band], shown_in: HeaderUnits) -> str:
    return " x ".join(length(side.best, shown_in) for side in sides)


def _starts(sill: Band, shown_in: HeaderUnits) -> str:
    """Return how high one starts to climb: where it is in doubt, as high as it may be."""
    if sill.low == sill.high:
        return f"starts {length(sill.best, shown_in)}"
    return f"may start {length(sill.high, shown_in)}"


def high_sill(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which way out starts so high over the floor that it takes a step to climb out.

    Asks: is the lower edge of every way out low enough over the finished floor
    Limit: 44 in (1118 mm), recalled from rules for houses, so it advises
    Source: recalled
    Lever: a step under it
    """
    limit = LENGTHS["sill"]
    for one in result.exits if result.use == "sleep" else ():
        if one.counts and one.sill is None and one.way.wall not in ("roof", "floor"):
            says = f"nobody wrote how high {one.way.name} starts over the floor"
            act = f"Measure from the floor to the lower edge of {one.way.name}, and write z"
            made = question("safety/high-sill", one.way.of, says, act, 2, f"{one.way.of}.z", SOURCE_OF_LENGTH["sill"])
            yield replace(made, could_stop=False, could_limit=False, protects=False)
        if one.counts and one.sill is not None and one.sill.high > limit:
            says = (
                f"{one.way.name} {_starts(one.sill, shown_in)} over the floor;"
                f" over {length(limit, shown_in)} one needs a step to climb out{measured_elsewhere(result.law)}"
            )
            act = f"Fix a step or a chest under {one.way.name}"
            source = SOURCE_OF_LENGTH["sill"]
            yield Finding(
                "safety/high-sill", one.way.of, "advice", says, one.sill.high, limit, limit - one.sill.high, "m",
                source, f"{one.way.of}.z", act=act, minutes=30, uses=SLEEP, because=(one.way.of,),
            )  # fmt: skip
