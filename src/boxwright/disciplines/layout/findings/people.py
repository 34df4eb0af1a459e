"""Rules of people: bed too short or too narrow, no headroom to sit up or to stand, a high step in. Advice only."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.advising import advice, perhaps_short_of, short_of
from boxwright.disciplines.layout.people import Fit, What
from boxwright.disciplines.layout.result import Result
from boxwright.disciplines.layout.telling import asking, length, listed, name_of
from boxwright.finding import Finding, Use
from boxwright.units import HeaderUnits

SHARES, PRACTICE = "body-shares", "room-practice"
ASLEEP: tuple[Use, ...] = ("sleep",)
INSIDE: tuple[Use, ...] = ("sleep", "work")


def bed_short(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a bed is shorter than who sleeps on it wants.

    Asks: is the mattress, or the bed, as long as the sleeper and a little over
    Limit: the written height and what is left at the feet
    Source: room-practice
    Lever: length of the bed
    Methods: none
    """
    yield from _in_doubt(result, "layout/bed-short", "lie", "long", shown_in)
    for one in short_of(result, "lie"):
        says = f"{one.name} lies on {one.at_name}, {length(one.has.best, shown_in)} long, and wants "
        says += f"{length(one.wants.best, shown_in)}"
        yield advice("layout/bed-short", one, says, "Lie down full length on the floor, and tape it", PRACTICE, ASLEEP)


def bed_narrow(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a sleeper, or each of several on one bed, has less width than shoulders want.

    Asks: how wide does each lie
    Limit: the width a sleeper wants
    Source: room-practice
    Lever: width of the mattress
    Methods: none
    """
    yield from _in_doubt(result, "layout/bed-narrow", "shoulders", "wide for each", shown_in)
    for one in short_of(result, "shoulders"):
        wide = length(one.has.best, shown_in)
        says = f"on {one.at_name} each sleeper has {wide} of width; {length(one.wants.best, shown_in)} is usual"
        act = f"Lie side by side on tape {wide} apart before it is built"
        if one.of != one.at:
            says = f"{one.name} lies on {one.at_name}, {wide} wide; {length(one.wants.best, shown_in)} is usual"
            act = f"Lie between two tapes {wide} apart, and turn over, before it is built"
        yield advice("layout/bed-narrow", one, says, act, PRACTICE, ASLEEP)


def _in_doubt(result: Result, code: str, what: What, how: str, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask about a bed that is long or wide enough as its size is written, and perhaps not by what of it is in doubt."""
    for one in perhaps_short_of(result, what):
        says = f"{one.at_name} may be only {length(one.has.low, shown_in)} {how}, as its size is in doubt, and "
        says += f"{length(one.wants.best, shown_in)} is wanted"
        act = f"Measure {one.at_name}, and write its size"
        yield asking(code, one.at, says, act, ASLEEP, (one.of, one.at))


def headroom_low(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when somebody can nowhere sit up in bed, or nowhere stand upright in the room.

    Asks: how much is free over the mattress, and over the floor, where most is
    Limit: a share of the written height, and a little air
    Source: body-shares
    Lever: height of the bed, or of what hangs over it
    Methods: none
    """
    told: tuple[tuple[What, str, tuple[Use, ...]], ...] = (
        ("sit", "sit up in", ASLEEP), ("stand", "stand upright in", INSIDE), ("seat", "sit upright on", INSIDE),
    )  # fmt: skip
    for what, says_so, uses in told:
        for one in short_of(result, what):
            under = f", under {name_of(one.under)}" if one.under else ""
            says = f"{one.name} cannot {says_so} {one.at_name}: {length(one.has.best, shown_in)} is free{under}, and "
            says += f"{length(one.wants.best, shown_in)} is wanted"
            act = f"Hold a board {length(one.has.best, shown_in)} up, and try it"
            yield advice("layout/headroom-low", one, says, act, SHARES, uses)


def step_high(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the rise to a door is higher than a step one takes in the dark.

    Asks: the greatest rise from the ground over any step to the floor
    Limit: the usual highest step
    Source: room-practice
    Lever: a step before the door
    Methods: none
    """
    for one in result.fits:
        if one.what != "step":
            continue
        if not one.has.known:
            says = f"how far {one.at_name} is over the ground is not known, for nobody wrote how high the deck is"
            act = "Measure from the ground to the top of the deck, and write trailer: {deck_height: ..}"
            yield asking("layout/step-high", one.of, says, act, INSIDE)
        elif one.has.best > one.wants.best:
            over = f" with {name_of(one.under)}" if one.under else ""
            says = f"the greatest rise at {one.at_name}{over} is {length(one.has.best, shown_in)}; "
            says += f"{length(one.wants.best, shown_in)} is a usual highest step"
            act = f"Add a step before {one.at_name}" if not one.under else f"Put {name_of(one.under)} half way up"
            turned = Fit(one.of, one.name, one.what, one.at, one.at_name, one.wants, one.has, one.under)
            yield advice("layout/step-high", turned, says, act, PRACTICE, INSIDE)


def body_height_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how tall the people are of whom nobody wrote it.

    Asks: is the height of each person written
    Limit: none
    Source: body-shares
    Lever: people, height
    Methods: none
    """
    del shown_in
    unknown = {one.of: one.name for one in result.fits if one.of.startswith("people[") and not one.wants.known}
    if not unknown:
        return
    names = tuple(unknown.values())
    says = f"nobody wrote how tall {listed(names)} {'is' if len(names) == 1 else 'are'}, so nobody can say whether "
    says += "there is room to lie, to sit up or to stand"
    act = f"Write people: {{{names[0]}: {{height: ..}}}}"
    paths = tuple(unknown)
    yield asking("layout/body-height-unknown", paths[0], says, act, INSIDE, paths)
