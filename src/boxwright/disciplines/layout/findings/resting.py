"""Rules of things as they lie: one space for two, through a wall, in room to be kept clear, held by nothing."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.result import Crammed, Intruder, Meeting, Perched, Result, Short
from boxwright.disciplines.layout.sourced import LENGTHS, SHARES
from boxwright.disciplines.layout.sweeps import WALLS
from boxwright.disciplines.layout.telling import (
    AXES,
    GEOMETRY,
    PRACTICE,
    asking,
    length,
    lever,
    listed,
    moving,
    name_of,
)
from boxwright.finding import USES, Finding, Use
from boxwright.units import HeaderUnits, show

WHOLE = 0.995
"""From this share on it is all of a window."""
FOLDED: tuple[Use, ...] = ("tow", "leave", "work")
"""The uses in which a bed is up."""
LOOKS = "Write the wall {} hangs on, such as wall: right, or measure what stands before it"
"""What is to be done where nobody knows which way a thing looks."""
SIDES = {"round": "round it", "front": "before it", "above": "over it"}


def one_space(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when two things want one space while both stand still.

    Asks: is every thing outside of every other, but for what carries it
    Limit: no overlap; less than the play of linings is only looked at
    Source: first-principles section on spans
    Lever: the least move of the one that is easier to move, tried against all that stands
    Methods: overlap
    """
    code = "layout/one-space"
    for one in result.meetings:
        if one.is_bed and one.sure != "grazes":
            continue
        yield _meeting(code, one, shown_in)
    for perched in result.perched:
        if perched.over is not None and perched.over < 0.0:
            yield _down_in(code, perched, shown_in)
    if result.more:
        first = result.meetings[0]
        says = f"{result.more} more pairs of things are in each other; put these right first, then look again"
        yield Finding(
            code,
            "parts",
            "fix",
            says,
            source=GEOMETRY,
            act=f"Begin with {first.name} and {first.other_name}",
            uses=USES,
        )


def _meeting(code: str, one: Meeting, shown_in: HeaderUnits) -> Finding:
    deep = f"{length(one.depth, shown_in)} {AXES[one.axis]}"
    if one.sure == "grazes":
        pair = f"two of {one.name}" if one.other == one.of else f"{one.name} and {one.other_name}"
        says = f"{pair} overlap by {deep}: no more than linings give, but look"
        return Finding(
            code, one.of, "advice", says, one.depth, 0.0, -one.depth, "m", GEOMETRY, uses=USES, because=(one.other,)
        )
    if one.sure == "perhaps":
        says = (
            f"{one.name} and {one.other_name} may overlap by up to {deep}: it is not known well enough where they are"
        )
        act = f"Measure where {one.name} and {one.other_name} are"
        return asking(code, one.of, says, act, USES, (one.other,))
    if one.other == one.of:
        says = f"two of {one.name} want one space: they overlap by {deep}"
        act = f"Write at: of {one.name} so that its pieces are as far apart as each is long"
        return Finding(
            code, one.of, "fix", says, one.depth, 0.0, -one.depth, "m", GEOMETRY, f"{one.of}.at", act=act, uses=USES,
            because=(one.of,),
        )  # fmt: skip
    says = f"{one.name} and {one.other_name} want one space: they overlap by {deep}"
    act = moving(one.shift, shown_in) or f"Give {one.name} or {one.other_name} another place"
    return Finding(
        code, one.of, "fix", says, one.depth, 0.0, -one.depth, "m", GEOMETRY, lever(one.shift), act=act, uses=USES,
        because=(one.other,),
    )  # fmt: skip


def _down_in(code: str, one: Perched, shown_in: HeaderUnits) -> Finding:
    deep = abs(one.over or 0.0)
    if one.sure != "sure":
        says = f"{one.name} rides on {one.carrier_name} and may be down in it"
        return asking(code, one.of, says, f"Measure how high {one.name} stands", USES, (one.carrier,))
    says = f"{one.name} rides on {one.carrier_name}, but is {length(deep, shown_in)} down in it"
    act = f"Write z of {one.name} as it stands on {one.carrier_name}, or that it is inside of it"
    return Finding(
        code, one.of, "fix", says, deep, 0.0, -deep, "m", GEOMETRY, act=act, uses=USES, because=(one.carrier,)
    )


def kept_clear(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a thing stands where another wants room before it or over it.

    Asks: is the room clear in which one stands to work on a thing, or that is to be free over it
    Limit: what the rig file writes of the thing as keep_clear; before a panel up to the height one works at
    Source: working-space that it may lie off the middle of the panel, and its height; else what the owner wrote
    Lever: the least move of what stands in it
    Methods: none
    """
    code = "layout/kept-clear"
    for one in result.intruders:
        if one.side != "round":
            yield _intruder(code, one, shown_in)
    for short in result.short:
        if short.side != "round":
            yield _short(code, short, shown_in)


def gap_small(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the gap a thing wants on every side is not there.

    Asks: is the gap round a thing as wide as it wants
    Limit: what the rig file writes of the thing as keep_clear
    Source: first-principles section on distances
    Lever: the least move of what is too near
    Methods: distance
    """
    code = "layout/gap-small"
    for one in result.intruders:
        if one.side == "round":
            yield _intruder(code, one, shown_in)
    for short in result.short:
        if short.side == "round":
            yield _short(code, short, shown_in)


def _intruder(code: str, one: Intruder, shown_in: HeaderUnits) -> Finding:
    wanted, side = length(one.wanted, shown_in), SIDES[one.side]
    if one.sure != "sure":
        says = f"{one.name} may stand in the {wanted} that {one.other_name} wants clear {side}"
        act = LOOKS.format(one.other_name) if one.is_either else f"Measure where {one.name} is"
        return asking(code, one.of, says, act, USES, (one.other,))
    left = length(one.gap, shown_in)
    says = f"{one.name} stands in the {wanted} that {one.other_name} wants clear {side}; {left} is left"
    act = moving(one.shift, shown_in) or f"Keep {one.name} away from {one.other_name}"
    return Finding(
        code, one.of, "fix", says, one.gap, one.wanted, one.gap - one.wanted, "m",
        "working-space" if one.side == "front" else GEOMETRY, lever(one.shift), act=act, uses=USES,
        because=(one.other,),
    )  # fmt: skip


def _short(code: str, one: Short, shown_in: HeaderUnits) -> Finding:
    wanted, left = length(one.wanted, shown_in), length(one.gap, shown_in)
    wants = f"{one.name} wants {wanted} clear {SIDES[one.side]}" if one.side != "wide" else (
        f"{one.name} wants room {wanted} wide before it"
    )  # fmt: skip
    if one.sure != "sure":
        says = f"{wants}, and {one.face} may be nearer; {left} is left"
        act = f"Look up whether {one.name} may be so near to {one.face}, and write the room it wants as keep_clear"
        act = LOOKS.format(one.name) if one.is_either else act
        return asking(code, one.of, says, act, USES)
    return Finding(
        code, one.of, "fix", f"{wants}, and {one.face} leaves {left}", one.gap, one.wanted, one.gap - one.wanted, "m",
        "working-space" if one.side in {"front", "wide"} else GEOMETRY,
        act=f"Move {one.name} away from {one.face}" if one.side != "wide" else f"Give {one.name} another place",
        uses=USES,
    )  # fmt: skip


def through_shell(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a thing goes through a wall, the floor or the roof where no opening is.

    Asks: is every thing either in the room or outside, or in an opening
    Limit: the stud faces, the deck and the bows; what ends in the depth of a wall is asked whether it is let in
    Source: fitting-practice
    Lever: move the thing inward
    Methods: none
    """
    code = "layout/through-shell"
    told = result.crossings
    for one in told:
        face = f"{one.face} wall" if one.face in WALLS else one.face
        beyond = f"{length(one.beyond, shown_in)} beyond the frame's inner face"
        if one.sure == "perhaps":
            says = f"{one.name} may go through the {face}, or is let into it: it is {beyond}"
            act = f"If {one.name} is let in between two studs, write its wall, and how deep as recess; "
            act += "else measure where it is, or move it in"
            yield asking(code, one.of, says, act, USES)
            continue
        says = f"{one.name} goes through the {face}, {beyond}"
        limit = LENGTHS["through"]
        yield Finding(
            code, one.of, "fix", says, one.beyond, limit, limit - one.beyond, "m", GEOMETRY,
            act=f"Move {one.name} inward, or write the opening it goes through", uses=USES,
        )  # fmt: skip
    if result.more_crossings:
        more = result.more_crossings
        says = f"{more} more {'thing goes' if more == 1 else 'things go'} through the shell"
        yield Finding(code, "parts", "fix", says, source=GEOMETRY, act=f"Begin with {told[0].name}", uses=USES)


def held_by_nothing(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a thing is aboard while what it is inside of, or rides on, is not there, or not under it.

    Asks: does what carries a thing stand at this stage and in this load state, and does the thing rest on it
    Limit: it is there, its top no farther below than the play of linings and under the middle of the thing
    Source: first-principles a thing rests on something
    Lever: the place of the thing until its carrier stands
    Methods: none
    """
    code = "layout/held-by-nothing"
    for perched in result.perched:
        if perched.over is None or perched.over >= 0.0:
            yield _in_the_air(code, perched, shown_in)
    for one in result.unheld:
        carrier, on = name_of(one.carrier), "inside" if one.is_inside else "rides on"
        if one.sure == "perhaps":
            says = f"{one.name} {'is inside' if one.is_inside else on} {carrier}, which may not be there yet"
            yield asking(code, one.of, says, f"Tick {carrier} as done, or not", ("tow",), (one.carrier,))
            continue
        says = f"{one.name} is to be {on} {carrier}" if one.is_inside else f"{one.name} {on} {carrier}"
        says += ", which is not there: nothing holds it on the road"
        act = f"Give {one.name} a place of its own until {carrier} stands, or leave it behind"
        yield Finding(
            code, one.of, "fix", says, source=GEOMETRY, lever=f"{one.of}.stage", act=act, uses=("tow",),
            because=(one.carrier,),
        )  # fmt: skip


def _in_the_air(code: str, one: Perched, shown_in: HeaderUnits) -> Finding:
    if one.out > 0.0:
        return _over_the_edge(code, one, shown_in)
    act = f"Write z of {one.name} as it stands on {one.carrier_name}, or what else it rides on"
    if one.over is None:
        says = f"{one.name} rides on {one.carrier_name}, but nothing of that is under it: what holds it is not written"
        return asking(code, one.of, says, act, USES, (one.carrier,))
    if one.sure != "sure":
        says = f"{one.name} rides on {one.carrier_name} and may be over it, with nothing that holds it"
        return asking(code, one.of, says, f"Measure how high {one.name} stands", USES, (one.carrier,))
    says = f"{one.name} rides on {one.carrier_name}, but is {length(one.over, shown_in)} over it: nothing holds it"
    limit = LENGTHS["play"]
    return Finding(
        code, one.of, "fix", says, one.over, limit, limit - one.over, "m", GEOMETRY, act=act, uses=USES,
        because=(one.carrier,),
    )  # fmt: skip


def _over_the_edge(code: str, one: Perched, shown_in: HeaderUnits) -> Finding:
    out = length(one.out, shown_in)
    act = f"Set {one.name} back on {one.carrier_name} by more than {out}, or write what else it rides on"
    if one.sure != "sure":
        says = f"the middle of {one.name} may be up to {out} beyond the edge of {one.carrier_name}, and it tips off"
        return asking(code, one.of, says, f"Measure where {one.name} stands", USES, (one.carrier,))
    says = f"the middle of {one.name} is {out} beyond the edge of {one.carrier_name}: it tips off"
    return Finding(
        code, one.of, "fix", says, one.out, 0.0, -one.out, "m", GEOMETRY, act=act, uses=USES, because=(one.carrier,),
    )  # fmt: skip


def sticks_out(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a thing does not fit into what it is inside of, or behind the bed it folds up with.

    Asks: does a thing lie wholly within the box of what it is inside of, and what lies on a bed between it and its wall
    Limit: the play of a lining; bedding is pressed to half of how thick it lies
    Source: fitting-practice
    Lever: the size or the place of either
    Methods: none
    """
    code, limit = "layout/sticks-out", LENGTHS["play"]
    for one in result.protruding:
        by = f"{length(one.beyond, shown_in)} {AXES[one.axis]}"
        if one.may_turn:
            says = (
                f"{one.name} as it is written is {by} too large for {one.carrier_name}; held another way it may go in"
            )
            act = f"Put {one.name} into {one.carrier_name} and write its size as it lies there"
            yield asking(code, one.of, says, act, USES, (one.carrier,))
            continue
        if one.sure == "perhaps":
            says = f"{one.name} may stick out of {one.carrier_name} by up to {by}"
            yield asking(code, one.of, says, f"Measure where {one.name} is in {one.carrier_name}", USES, (one.carrier,))
            continue
        says = f"{one.name} does not fit into {one.carrier_name}: it sticks out by {by}"
        act = f"Move {one.name} within {one.carrier_name}, or put it beside it"
        yield Finding(
            code, one.of, "fix", says, one.beyond, limit, limit - one.beyond, "m", PRACTICE, act=act, uses=USES,
            because=(one.carrier,),
        )  # fmt: skip
    for crammed in result.crammed:
        yield _crammed(code, crammed, shown_in)


def _crammed(code: str, one: Crammed, shown_in: HeaderUnits) -> Finding:
    high, left = length(one.high, shown_in), length(one.left, shown_in)
    if one.sure != "sure":
        behind = f"at least {left} is left behind it" if one.is_known else "nobody wrote how far that stands out then"
        says = f"{one.name} goes up with {one.leaf_name} and wants {high} there; {behind}"
        act = f"Fold {one.leaf_name} up with {one.name} on it, measure how far it stands out, and write folded_depth"
        return asking(code, one.of, says, act, FOLDED, (one.leaf,))
    says = f"{one.name} does not go up with {one.leaf_name}: it is {high} high, and {left} is left behind the leaf"
    act = f"Take {one.name} off {one.leaf_name} before that is folded up, and write its place on the road"
    return Finding(
        code, one.of, "fix", says, one.high, one.left, one.left - one.high, "m", PRACTICE, act=act, uses=FOLDED,
        because=(one.leaf,),
    )  # fmt: skip


def window_covered(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a thing that is folded up covers a window.

    Asks: is every window free while the bed is up
    Limit: a tenth of it, less is not said
    Source: fitting-practice
    Lever: the place of the window or of what folds
    Methods: none
    """
    code = "layout/window-covered"
    for one in result.covered:
        how = "all of it" if one.share > WHOLE else f"{show(one.share, 'ratio', shown_in)} of it"
        says = f"up, {one.name} covers {one.window_name}, {how}: no light, air or way out there until it is down"
        yield Finding(code, one.of, "advice", says, one.share, source=PRACTICE, uses=USES, because=(one.window,))


def sight_hidden(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when something on the road hides from a camera or a lamp what it is to see.

    Asks: does what sees, see what it looks at, cut level through its middle as one drives
    Limit: a tenth of its angle, less is not said
    Source: fitting-practice
    Lever: the place of what sees, or of what stands before it
    Methods: none
    """
    code, limit = "layout/sight-hidden", SHARES["hidden"]
    for one in result.hidden:
        word = "hides" if one.share > limit else "may hide"
        share = max(one.share, one.most) if word == "may hide" else one.share
        how = "all" if share > WHOLE else show(share, "ratio", shown_in)
        says = f"{listed(one.names)} {word} {how} of what {one.name} sees to the {one.toward}"
        act = f"Move {one.name}, or what is before it, and look at its picture"
        yield Finding(
            code, one.of, "advice", says, share, limit, limit - share, source=PRACTICE, act=act, uses=("tow",),
            because=one.by,
        )  # fmt: skip
