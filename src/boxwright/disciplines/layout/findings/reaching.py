"""Rules of getting at things: out of reach, a narrow aisle, no place for two on the roof. Advice only."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.advising import advice, perhaps_short_of, short_of
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.findings.people import ASLEEP, INSIDE, PRACTICE, SHARES
from boxwright.disciplines.layout.people import Fit
from boxwright.disciplines.layout.result import Result
from boxwright.disciplines.layout.telling import asking, length, name_of
from boxwright.finding import Finding, Use
from boxwright.units import HeaderUnits


def out_of_reach(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the shortest of the rig's people cannot reach a switch, a panel, the extinguisher or what is stored.

    Asks: from the nearest free floor, how far is it from the shoulder
    Limit: the length of an arm, a share of the written height
    Source: body-shares
    Lever: lower, or nearer to free floor; a step to stand on
    Methods: none
    """
    for one in short_of(result, "reach"):
        over = f" over {name_of(one.under)}" if one.under else ""
        says = f"{one.name} cannot reach {one.at_name} from the floor{over}: from where one can stand nearest it is "
        says += f"{length(one.wants.best, shown_in)} from the shoulder, and an arm is {length(one.has.best, shown_in)}"
        act = f"Hang {one.at_name} lower or nearer, or keep a step by it"
        act = f"Hang {one.at_name} before {name_of(one.under)} or over it, or leave a way to it" if one.under else act
        yield advice("layout/out-of-reach", one, says, act, SHARES, INSIDE, where=one.at)
    for one in short_of(result, "lit"):
        says = f"{one.name} cannot put on a light from {name_of(one.under)}: {one.at_name} is nearest, "
        says += f"{length(one.wants.best, shown_in)} from the shoulder, and an arm is {length(one.has.best, shown_in)}"
        act = f"Hang a switch or a light by {name_of(one.under)}"
        yield advice("layout/out-of-reach", one, says, act, SHARES, ASLEEP, where=one.at)


def aisle_narrow(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the floor to walk on is narrower than is usual: between two ways in, or from a bed in the dark.

    Asks: how wide a square can be carried along the floor from one to the other
    Limit: a usual width; at night what lets nobody walk is told by safety, and not here
    Source: room-practice
    Lever: the place of what makes it narrow
    Methods: none
    """
    for one in perhaps_short_of(result, "aisle"):
        if result.use == "work" or one.has.low >= ROOM["pass"]:
            yield _perhaps_narrow(one, ASLEEP if result.use == "sleep" else ("work",), shown_in)
    for one in short_of(result, "aisle"):
        if result.use == "sleep" and one.has.best < ROOM["pass"]:
            continue
        by = f", at {name_of(one.under)}" if one.under else ""
        has = f"is {length(one.has.best, shown_in)} wide" if one.has.best > 0.0 else "is shut to anybody on foot"
        says = f"the aisle from {one.name} to {one.at_name} {has}{by}; {length(one.wants.best, shown_in)} is usual"
        moved = name_of(one.under) if one.under else "what stands there"
        act = f"Move {moved} aside, or out, until it is {length(one.wants.best, shown_in)} wide"
        uses = ASLEEP if result.use == "sleep" else ("work",)
        yield advice("layout/aisle-narrow", one, says, act, PRACTICE, uses, where=one.under or one.at)


def _perhaps_narrow(one: Fit, uses: tuple[Use, ...], shown_in: HeaderUnits) -> Finding:
    at, of = (f", at {name_of(one.under)}", one.under) if one.under else ("", one.at)
    says = f"the aisle from {one.name} to {one.at_name} may be only {length(one.has.low, shown_in)} wide{at}, as places"
    says += f" there are in doubt; {length(one.wants.best, shown_in)} is usual"
    act = f"Measure where {name_of(of)} is, and write it"
    return asking("layout/aisle-narrow", of, says, act, uses, (of, one.at))


def roof_seat(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when something leads up to the roof and two find no room to sit there side by side.

    Asks: do two squares in a row find room on the roof between what stands on it and its openings
    Limit: the width a grown person wants; what the roof carries is not asked here
    Source: room-practice
    Lever: the place of what stands on the roof
    Methods: none
    """
    for one in short_of(result, "roof"):
        if not one.under:
            continue
        square, usual = length(one.has.best, shown_in), length(one.wants.best, shown_in)
        says = f"{name_of(one.under)} leads up to the roof, and two side by side have no more than a square of "
        says += f"{square} each there; {usual} is usual. What the roof carries is not asked"
        act = "Leave a place free on the roof, or let one sit up there"
        yield advice("layout/roof-seat", one, says, act, PRACTICE, INSIDE)
