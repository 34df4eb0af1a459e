"""Rules of what moves: beds as they come down, leaves, lids and drawers as they open, canopies, cargo on its way in."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.result import (
    Beyond,
    Footless,
    Meeting,
    OverBed,
    Result,
    Stopped,
    Struck,
    Taken,
    Together,
)
from boxwright.disciplines.layout.sourced import LENGTHS
from boxwright.disciplines.layout.telling import (
    AXES,
    GEOMETRY,
    PRACTICE,
    asking,
    got_to,
    length,
    lever,
    listed,
    moving,
    name_of,
)
from boxwright.finding import Finding, Use
from boxwright.units import HeaderUnits

WHAT = {
    "leaf": "opens", "lid": "opens", "door": "opens", "slide": "slides out", "sash": "slides open", "bed": "comes down",
}  # fmt: skip
DOUBT = "how far it goes, or where that is, is in doubt"
USUAL = "nobody wrote how it opens"
HOW = "Open {} by hand and look, then write how it opens as swing or slides"
SIDE = "nobody wrote on which side of its wall it runs"
HOW_SIDE = "Slide {} by hand and look, then write runs: inside, outside or in the wall beside its slides"
ARMS = "Measure where {} are along the trailer, and write out: {{arms: [..]}}"
FEET = "Look where {} have their feet, and write out: {{feet: ground}}, wall or both"
EARLIEST = {
    ".out": " at the earliest, whether they stand on the ground or on the wall",
    ".arms": " at the earliest, wherever along the trailer they are",
}
"""What is said of arms that are struck in each way they may stand, by what of them is in doubt."""
FOOT = "nobody wrote where they have their feet"
OUTDOORS = {
    "in the wall": "nobody wrote whether {} stands in the wall or hangs on its outside",
    "past the skin": "{} stands out past the outer skin, perhaps before that is opened",
}
HOW_OUTDOORS = {
    "in the wall": "Look where {1} stands: write recess for what is let in, else its place from the outer skin on",
    "past the skin": "Open {0} first, then look whether {1} stands clear of it; give it a place that does",
}
BED_PRACTICE = "room-practice"
OPENED: tuple[Use, ...] = ("sleep", "leave", "work")


def sleeping_place(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a bed meets something as it comes down, or where it lies made up.

    Asks: is the way of the bed clear from where it is folded up to where it is slept in
    Limit: nothing in its way; what it only grazes within the play of its hinge is tried by hand
    Source: first-principles section on turning boxes
    Lever: the least move of what it meets first, or out for the night
    Methods: first_meeting
    """
    code = "layout/sleeping-place"
    for one in result.struck:
        if _is_slept_on(one, result):
            yield _bed(code, one, shown_in)
    for by in result.stopped:
        if _is_slept_on(by, result):
            yield _stopped_bed(code, by, shown_in)
    for meeting in result.meetings:
        if meeting.is_bed and meeting.sure != "grazes":
            yield _made_up(code, meeting, shown_in)
    for taken in result.taken:
        yield _taken(code, taken, {body.of for body in result.bodies if body.kind == "cargo"})


def _is_slept_on(one: Struck | Stopped, result: Result) -> bool:
    """Return whether what moves is a bed, and somebody may sleep on it."""
    return one.what == "bed" and one.of not in result.loose


def _taken(code: str, one: Taken, cargo: set[str]) -> Finding:
    names, is_are = listed(one.names), "is" if len(one.names) == 1 else "are"
    act = f"Put {names} elsewhere for the night, and write where as when_sleeping"
    if not cargo.issuperset(one.by):  # what is built in is not carried off for a night
        act = f"Give {names} or {one.name} another place"
    if one.sure == "perhaps":
        says = f"{names} may take the room to lie on {one.name}"
        return asking(code, one.by[0], says, act, ("sleep",), (one.of, *one.by), could_stop=True)
    says = f"{one.name} cannot be slept in: {names} {is_are} on it at night, or low over it, and no room to lie is left"
    return Finding(
        code, one.by[0], "stop", says, source=BED_PRACTICE, act=act, uses=("sleep",), because=(one.of, *one.by)
    )


def _bed(code: str, one: Struck, shown_in: HeaderUnits) -> Finding:
    names, where = listed(one.names), one.hits[0]
    is_are = "is" if len(one.names) == 1 else "are"
    if one.sure == "grazes":
        says = f"{one.name} passes {names} with no more than the play of its hinge: try it before it is screwed on"
        return Finding(code, one.of, "advice", says, source=GEOMETRY, uses=("sleep",), because=one.hits)
    got = _got(one, shown_in)
    if one.sure == "perhaps":
        says = f"{names} may be in the way of {one.name} when it comes down"
        act = f"Measure where {one.name} and {names} are at night"
        return asking(code, where, says, act, ("sleep",), (one.of,), could_stop=True)
    says = f"{names} {is_are} in the way of {one.name} when it comes down: it stops {got}"
    says += f", at {one.names[0]}" if len(one.names) > 1 else ""
    act = moving(one.shift, shown_in)
    act = f"{act}; or take {names} out for the night" if act else f"Take {names} out first, or give another place"
    return Finding(
        code, where, "stop", says, one.reached, one.whole, one.reached - one.whole, "rad", GEOMETRY,
        lever(one.shift), act=act, uses=("sleep",), because=(one.of, *one.hits),
    )  # fmt: skip


def _stopped_bed(code: str, one: Stopped, shown_in: HeaderUnits) -> Finding:
    if one.sure == "perhaps":
        says = f"{one.face} may be in the way of {one.name} when it comes down"
        return asking(code, one.of, says, f"Measure where {one.name} is at night", ("sleep",), could_stop=True)
    got = _got(one, shown_in)
    says = f"{one.face} is in the way of {one.name} when it comes down: it stops {got}"
    act = f"Give {one.name} another place or another size"
    return Finding(
        code, one.of, "stop", says, one.reached, one.whole, one.reached - one.whole, "rad", GEOMETRY, act=act,
        uses=("sleep",),
    )  # fmt: skip


def _made_up(code: str, one: Meeting, shown_in: HeaderUnits) -> Finding:
    deep = f"{length(one.depth, shown_in)} {AXES[one.axis]}"
    if one.sure == "perhaps":
        says = f"{one.name} and {one.other_name} may overlap at night by up to {deep}"
        act = f"Measure where {one.name} is at night"
        return asking(code, one.of, says, act, ("sleep",), (one.other,), could_stop=True)
    bed = one.bed_name or one.other_name
    lies = "it" if one.other_name == bed else f"{one.other_name} on it"
    says = f"{bed} cannot be slept in: {one.name} overlaps {lies} by {deep}"
    act = moving(one.shift, shown_in) or f"Give {one.name} another place for the night"
    return Finding(
        code, one.of, "stop", says, one.depth, 0.0, -one.depth, "m", GEOMETRY, lever(one.shift), act=act,
        uses=("sleep",), because=(one.other,),
    )  # fmt: skip


def opening_strikes(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a door, a hatch, a ramp, a lid or a drawer strikes something as it opens.

    Asks: can it open as far as it should
    Limit: as far as is written; where that is not written a right angle, and more is asked
    Source: first-principles section on turning boxes
    Lever: the least move of what it strikes first
    Methods: first_meeting
    """
    code = "layout/opening-strikes"
    for one in result.struck:
        if _is_slept_on(one, result):
            continue
        names, opens = listed(one.names), WHAT[one.what]
        if one.sure == "grazes":
            says = f"{one.name} passes {names} with no more than the play of a hinge when it {opens}"
            yield Finding(code, one.of, "advice", says, source=GEOMETRY, uses=OPENED, because=one.hits)
            continue
        if one.sure == "perhaps":
            says = f"{one.name} may strike {names} when it {opens}: {_why(one)}"
            act = f"Open {one.name} by hand and look, or write where {names} is, piece by piece"
            act = f"Look what lies in the wall beside {one.name}, and write where" if one.is_in_wall else act
            act = _how(one) if one.is_usual else act
            act = HOW_OUTDOORS[one.whereabouts].format(one.name, names) if one.whereabouts else act
            act = "; ".join(_of_arms(one)) or act
            yield asking(code, one.of, says, act, OPENED, one.hits)
            continue
        got = _got(one, shown_in)
        says = f"{one.name} strikes {names} when it {opens}: {got}"
        says += next((words for end, words in EARLIEST.items() if one.hits[0].endswith(end)), "")
        act = moving(one.shift, shown_in) or f"Give {one.names[0]} another place"
        act = f"Let {one.name} run inside or outside, or frame its pocket without {names}" if one.is_in_wall else act
        yield Finding(
            code, one.of, "fix", says, one.reached, one.whole, one.reached - one.whole, "rad" if one.turns else "m",
            GEOMETRY, lever(one.shift), act=act, uses=OPENED, because=one.hits,
        )  # fmt: skip

    for by in result.stopped:
        if not _is_slept_on(by, result):
            yield _stopped(code, by, shown_in)


def _got(one: Struck | Stopped | Together | OverBed, shown_in: HeaderUnits) -> str:
    return got_to(one.reached, one.whole, one.turns, shown_in)


def _of_arms(one: Struck) -> Iterator[str]:
    """Yield what to write of the arms of canopies that may be struck."""
    for hit, name in zip(one.hits, one.names, strict=True):
        if hit.endswith((".out", ".arms")):
            yield (FEET if hit.endswith(".out") else ARMS).format(name)


def _why(one: Struck | Stopped) -> str:
    if isinstance(one, Struck) and one.whereabouts:
        return OUTDOORS[one.whereabouts].format(listed(one.names))
    if isinstance(one, Struck) and all(hit.endswith(".out") for hit in one.hits):
        return FOOT
    return (SIDE if one.what == "sash" else USUAL) if one.is_usual else DOUBT


def _how(one: Struck | Stopped) -> str:
    return (HOW_SIDE if one.what == "sash" else HOW).format(one.name)


def _stopped(code: str, one: Stopped, shown_in: HeaderUnits) -> Finding:
    opens = WHAT[one.what]
    if one.sure == "perhaps":
        says = f"{one.name} may strike {one.face} when it {opens}: {_why(one)}"
        return asking(code, one.of, says, _how(one), OPENED)
    got = _got(one, shown_in)
    says = f"{one.name} strikes {one.face} when it {opens}: {got}"
    act = f"Give {one.name} another place, or write how far it does open"
    return Finding(
        code, one.of, "fix", says, one.reached, one.whole, one.reached - one.whole, "rad" if one.turns else "m",
        GEOMETRY, act=act, uses=OPENED,
    )  # fmt: skip


def one_at_a_time(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which two things cannot both stand open, and which of them then stops the other, and where.

    Asks: can each thing be opened while any other stands open
    Limit: nothing in its way; that each opens by itself is asked elsewhere
    Source: first-principles section on turning boxes
    Lever: shutting the one first, or the place of either
    Methods: first_meeting
    """
    code = "layout/one-at-a-time"
    for one in result.together:
        name, other = one.name, one.other_name
        if one.sure == "perhaps":
            says = f"{name} and {other} may not both stand open: {USUAL if one.is_usual else DOUBT}"
            act = f"Open {other}, then {name}, by hand and look, and write how each opens as swing or slides"
            yield asking(code, one.of, says, act, OPENED, (one.other,))
            continue
        got = _got(one, shown_in)
        says = f"one at a time, {name} or {other}: while {other} stands open {name} stops {got}"
        act = f"Shut {other} before {name} is opened, or give one of them another place"
        yield Finding(
            code, one.of, "limit", says, one.reached, one.whole, one.reached - one.whole, "rad" if one.turns else "m",
            GEOMETRY, act=act, uses=OPENED, because=(one.other,),
        )  # fmt: skip


def opens_over_bed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what opens in over a bed so that nobody can lie there while it does: a leaf to get out by, a drawer.

    Asks: does who lies in a bed have room beside all that opens over it
    Limit: as long as they are, as wide as shoulders, as high as a body on its side, for each of them
    Source: room-practice; first-principles section on turning boxes
    Lever: a leaf that opens out, or the place of either
    Methods: first_meeting
    """
    code = "layout/opens-over-bed"
    for one in result.over_beds:
        name, who = one.name, listed(one.sleepers)
        lies, has = ("lies", "has") if len(one.sleepers) == 1 else ("lie", "have")
        is_leaf = one.what in {"leaf", "sash"}
        if one.sure == "perhaps":
            says = f"{name} may open over {one.bed_name} so far that {who} cannot lie there: {DOUBT}"
            act = f"Lie on {one.bed_name} and open {name}, then write how far it opens and where both are"
            yield asking(code, one.of, says, act, ("sleep",), (one.bed,), could_limit=is_leaf)
            continue
        got = _got(one, shown_in)
        says = f"{name} opens in over {one.bed_name}, where {who} {lies}, and meets them {got}: {who} {has} to get up"
        act = f"Let {name} open another way, or try in the dark to open it from {one.bed_name}"
        yield Finding(
            code, one.of, "limit" if is_leaf else "advice", says, one.reached, one.whole, one.reached - one.whole,
            "rad" if one.turns else "m", BED_PRACTICE, act=act, uses=("sleep",), because=(one.bed,),
        )  # fmt: skip


def leaf_over(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which opening a leaf lies over when it is laid open against a wall: a vent, a window, a flue, a filler.

    Asks: does a leaf that is laid back leave every other opening of that wall free
    Limit: none of it covered, as far as it lies within a hand of the wall
    Source: fitting-practice that what is so near covers it
    Lever: a stay that holds the leaf off, or the place of the opening
    Methods: overlap
    """
    del shown_in
    code = "layout/leaf-over"
    for one in result.overlaid:
        name, hole = one.name, one.hole_name
        if one.sure == "perhaps":
            says = f"{name} may lie over {hole} when it is laid open: {DOUBT}"
            yield asking(code, one.of, says, HOW.format(name), OPENED, (one.hole,))
            continue
        says = f"{name}, laid open, lies over {hole}: nothing gets out or in there while it is"
        act = f"Hold {name} off the wall with a stay, or give {hole} another place"
        yield Finding(code, one.of, "limit", says, source=PRACTICE, act=act, uses=OPENED, because=(one.hole,))


def canopy(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when slope and height of a canopy are not of one canopy, or an arm has its foot where there is no wall.

    Asks: does its outer edge come out, by reach and slope, at the height over the ground that is written; is there a
    wall behind the foot of each arm; is each arm at the canopy
    Limit: a hand's breadth between the two
    Source: fitting-practice
    Lever: the slope or the height, the place of the arm
    Methods: slab_height
    """
    code = "layout/canopy"
    for arm in result.arms:
        yield _footless(code, arm) if isinstance(arm, Footless) else _beyond(code, arm, shown_in)
    for one in result.canopies:
        off, limit = abs(one.by_slope - one.written), LENGTHS["canopy"]
        if off > limit:
            by_slope, written = length(one.by_slope, shown_in), length(one.written, shown_in)
            says = f"the outer edge of {one.name} is {by_slope} over the ground by its slope, and {written} as written"
            act = f"Set {one.name} up and measure the height of its outer edge, then write what it is"
            yield Finding(
                code, one.of, "fix", says, off, limit, limit - off, "m", "fitting-practice", act=act, uses=OPENED
            )


def _footless(code: str, arm: Footless) -> Finding:
    hole, arms = arm.hole_name, f"the arms of {arm.name}"
    if arm.sure == "perhaps":
        says = f"an arm of {arm.name} stands in {hole} if it has its foot on the wall, where no wall is"
        if arm.is_on_wall:
            says = f"an arm of {arm.name} may have its foot in {hole}, where no wall is"
        return asking(code, arm.of, says, (ARMS if arm.is_on_wall else FEET).format(arms), OPENED, (arm.hole,))
    says = f"an arm of {arm.name} has its foot in {hole}, where there is no wall to hold it, and stands in the way"
    act = f"Measure where {arms} are along the wall, or stand them on the ground, clear of what opens there"
    return Finding(code, arm.of, "fix", says, source=PRACTICE, act=act, uses=OPENED, because=(arm.hole,))


def _beyond(code: str, arm: Beyond, shown_in: HeaderUnits) -> Finding:
    by, act, play = length(arm.by, shown_in), ARMS.format(f"the arms of {arm.name}"), LENGTHS["play"]
    if arm.sure == "perhaps":
        says = f"an arm of {arm.name} may be up to {by} beyond its end, where nothing holds it"
        return asking(code, arm.of, says, act, OPENED)
    says = f"an arm of {arm.name} is written {by} beyond its end, where nothing holds it"
    return Finding(code, arm.of, "fix", says, arm.by, play, play - arm.by, "m", PRACTICE, act=act, uses=OPENED)


def way_in(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when heavy cargo cannot be rolled in to its place from the rear.

    Asks: is there a way in, along the trailer and then to the side, past all that is built in
    Limit: no overlap on the way
    Source: fitting-practice that so heavy a thing is rolled
    Lever: the place of the cargo, or of what is built in
    Methods: overlap
    """
    code = "layout/way-in"
    for one in result.blocked:
        if one.hole:
            cannot, is_so = ("cannot", "is") if one.is_sure else ("perhaps cannot", "may be")
            says = f"{one.name} {cannot} be rolled in from the rear: {name_of(one.hole)} {is_so} "
            says += f"{length(one.short, shown_in)} too narrow or too low for it as it stands"
            act = f"Measure {one.name} and {name_of(one.hole)}, or bring it in another way"
            yield Finding(
                code, one.of, "advice", says, -one.short, 0.0, -one.short, "m", PRACTICE, act=act, uses=("tow",),
                because=(one.hole,),
            )  # fmt: skip
            continue
        names = listed(one.names)
        is_are = "is" if len(one.by) == 1 else "are"
        says = f"{one.name} cannot be rolled in to its place from the rear: {names} {is_are} in the way"
        act = f"Lift {one.name} over it with two, or give it a place that can be rolled to"
        yield Finding(code, one.of, "advice", says, source=PRACTICE, act=act, uses=("tow",), because=one.by)
