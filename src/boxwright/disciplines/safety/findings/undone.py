"""Rules of what a half-done thing leaves behind: a live end, an open hole, a loose sheet, a bare edge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.safety.parts import Hole, Strung
from boxwright.disciplines.safety.result import Result
from boxwright.disciplines.safety.telling import OWN_RULE, question, stop
from boxwright.finding import Finding, Use
from boxwright.units import HeaderUnits

WHEN: dict[str, tuple[Use, ...]] = {"sleep": ("sleep",), "leave": ("leave",), "work": ("work",)}
"""The uses something half done is judged in: whoever sleeps, works or walks away lives with it."""


def live_end(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which wire is fed at one end and joined to nothing at the other.

    Asks: is every wire that stands joined to what it feeds, or its end capped, or what feeds it not in yet
    Limit: none open; with a fuse, or fed by a cable from outside, it limits: the fuse stays out, the cable is not
        plugged in; our own rule, practice; local code may ask more
    Source: own-rule
    Lever: join it, or cap its end and write ends: capped
    """
    told: set[str] = set()
    for one in result.strung if result.use in WHEN else ():
        is_joined = one.is_there and one.reaches == "yes"
        if is_joined or one.lead.is_capped or one.fed == "no" or one.lead.of in told:
            continue
        told.add(one.lead.of)  # one that may be fed from both its ends is told once
        yield _open_end(one, result.use)


def _open_end(one: Strung, use: str) -> Finding:
    """Return what is said of an open end: a stop, a limit where a hand makes it dead, a question in doubt."""
    code, lead = "safety/live-end", one.lead
    now = f" ({lead.now})" if lead.now else ""
    by = lead.starts or "nobody wrote what"
    to = lead.ends or "its far end"
    act = f"Cap the end of wire {lead.name} at {to}, and write ends: capped"
    harm = "kills" if lead.is_mains else "sparks and burns"
    lever = f"{lead.of}.ends"
    if one.is_there and one.fed == "yes" and one.reaches == "no":
        says = f"wire {lead.name} is fed from {by} and its end at {to} is joined to nothing{now}"
        made = stop(code, lead.of, f"{says}: bare, it {harm}", act, 10, lever)
        if lead.is_plugged or lead.is_fused:
            until = f"nothing may be plugged in at {by}" if lead.is_plugged else "its fuse stays out"
            made = replace(made, kind="limit", says=f"{says}: {until} until it is capped", protects=False)
    else:
        says = f"nobody can say whether wire {lead.name} is joined at {to}{now}, and it may be live"
        act = f"Look at wire {lead.name}: join it and tick it, or cap its end and write ends: capped"
        made = question(code, lead.of, says, act, 5, lever)
    return replace(made, uses=WHEN[use])


def open_hole(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which hole is cut through the skin and not closed.

    Asks: is every opening that is cut also finished before somebody sleeps or works inside, or leaves the trailer
    Limit: none open; one in the floor limits where people walk, our own rule, practice
    Source: own-rule
    Lever: fit what goes in, and tick it
    """
    for hole in result.open_holes if result.use in WHEN else ():
        now = f" ({hole.now})" if hole.now else ""
        is_underfoot = hole.wall == "floor" and result.use != "leave"
        says = f"{hole.name} is cut and not finished{now}: a hole in the {_skin(hole)}, {_harm(hole, result.use)}"
        act = f"Fit what goes into {hole.name}, seal it and tick it"
        if is_underfoot:
            act = f"Screw a board over {hole.name} until it is finished"
        yield Finding(
            "safety/open-hole", hole.of, "limit" if is_underfoot else "fix", says, source=OWN_RULE,
            lever=f"{hole.of}.done", act=act, minutes=10 if is_underfoot else 60, uses=WHEN[result.use],
            because=(hole.of,),
        )  # fmt: skip


def _skin(hole: Hole) -> str:
    return hole.wall if hole.wall in ("roof", "floor") else "skin"


def _harm(hole: Hole, use: str) -> str:
    if use == "leave":
        return "for rain, vermin and hands"
    return "for a foot in the dark, and for exhaust from below" if hole.wall == "floor" else "with a bare edge"


def half_done(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which thing is done in part, so that something of it may be loose or bare.

    Asks: is nothing left half done where somebody sleeps or works, or when the trailer is left
    Limit: none; it is to be put right, our own rule, practice
    Source: own-rule
    Lever: finish it or take out what is loose, and tick it
    """
    for half in result.halves if result.use in WHEN else ():
        now = f" ({half.now})" if half.now else ""
        left = (
            "loose sheets, bare edges and points of screws" if half.is_sheet else "what of it is loose falls or catches"
        )
        yield Finding(
            "safety/half-done", half.of, "fix", f"{half.name} is half done{now}: {left}", source=OWN_RULE,
            lever=f"{half.of}.done", act=f"Fix or take out what is loose of {half.name}, cover its edges, then tick it",
            minutes=15, uses=WHEN[result.use], because=(half.of,),
        )  # fmt: skip
