"""What layout cannot judge for want of a value, and how to write it; never taken as clear."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.layout.result import Result
from boxwright.disciplines.layout.telling import asking, length, listed
from boxwright.finding import USES, Finding, Use
from boxwright.units import HeaderUnits

TOLD: dict[str, tuple[str, str]] = {
    "swing": ("it is not written how {} opens", "Write how {} opens, such as swing: {{hinge: front, opens: out}}"),
    "turn": (
        "the hinge of {} is no edge of what opens, or the way it opens is not understood",
        "Write the edge {} is hinged on and the way it opens, such as swing: {{hinge: top, opens: out, to: 60 deg}}",
    ),
    "fold": (
        "{} folds up about nothing that is known: no hinge at a side wall is written, or no place",
        "Write the hinge of {}, such as hinge: {{edge: left}}, and its x, side, z and size",
    ),
    "depth": (
        "it is not known how far {} stands out from its wall when it is folded up",
        "Fold {} up, measure how far it stands out from the wall, and write folded_depth",
    ),
    "hole": (
        "it is not known how large the hole of {} is, or where it is in its wall",
        "Measure the hole of {}, and write its width, its height and its place in the wall",
    ),
    "hinge": (
        "{} is hinged on an edge that is at no side wall, and nothing built in stands there: it folds about nothing",
        "Look which edge of {} is hinged and to what, and write its hinge, or its side, as that is",
    ),
    "slide": (
        "it is not known which way {} slides out, or how far",
        "Write how far {} slides out, such as slides: {{to: left, by: 20}}",
    ),
    "clear": ("it is not known how much room {} wants clear", "Measure the room {} wants clear, and write it"),
    "canopy": (
        "it is not known how far {} comes out, or how steeply",
        "Write the reach and slope of {}, such as out: {{reach: 78, pitch: 12 deg}}",
    ),
    "arms": (
        "it is not known where an arm of {} is along the trailer",
        "Measure where the arms of {} are along the trailer, and write out: {{arms: [54, 124]}}",
    ),
    "sight": (
        "it is not written, or not understood, which way {} looks",
        "Write which way {} looks, such as sees: {{toward: rear, angle: 120 deg}}",
    ),
}
USES_OF: dict[str, tuple[Use, ...]] = {
    "fold": ("sleep",),
    "hinge": ("sleep",),
    "clear": USES,
    "depth": USES,
    "sight": ("tow",),
}
TOUCH = 0.001
"""Nearer than this (m) things stand against each other."""
WANTS = {"hot": "which gets hot", "flame": "which burns with a flame", "panel": "which is worked at live"}
END = {"sight": ": nobody can say whether anything is before it"}


def opening_unsaid(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how a thing opens, folds, slides or comes out where that is not known.

    Asks: is it written how each thing that moves does so
    Limit: none
    Source: first-principles what is not known is not clear
    Lever: the words of the rig file
    Methods: none
    """
    del shown_in
    for one in result.open:
        says, act = (text.format(one.name) for text in TOLD[one.what])
        uses = USES_OF.get(one.what, ("sleep", "leave", "work"))
        could_stop = one.what in {"fold", "hinge"}
        says += END.get(one.what, ": nobody can say whether it is in the way of anything")
        yield asking("layout/opening-unsaid", one.of, says, act, uses, could_stop=could_stop)


def room_unsaid(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how much room a heater, a flame or a panel of the mains wants, where a thing stands near to it.

    Asks: is it written how much room each thing that gets hot, or is worked at, wants clear
    Limit: 300 mm round what is hot, 600 mm over a flame, 750 mm before a panel; its leaflet outranks them
    Source: fitting-practice how near a thing is asked about
    Lever: keep_clear, from its leaflet
    Methods: none
    """
    for one in result.beside:
        far = length(one.gap, shown_in)
        how = "stands against" if one.gap <= TOUCH else f"is {far} from"
        how = f"may be nearer than {far} to" if one.gap >= one.within - TOUCH else how
        says = f"{one.near_name} {how} {one.name}, {WANTS[one.hazard]}, and nobody wrote how much room it wants"
        act = f"Read in the leaflet of {one.name} how much room it wants, and write keep_clear"
        uses: tuple[Use, ...] = USES if one.hazard == "panel" else ("sleep", "work")
        asked = asking("layout/room-unsaid", one.of, says, act, uses, (one.of, one.near), one.hazard != "panel")
        yield replace(
            asked, number=one.gap, limit=one.within, margin=one.gap - one.within, unit="m", source="fitting-practice",
            lever=f"{one.of}.keep_clear",
        )  # fmt: skip


def place_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask where things are that have no place or no size: each of them may be in the way of anything.

    Asks: is the place and the size of everything known
    Limit: none
    Source: first-principles what is not known is not clear
    Lever: the words of the rig file
    Methods: none
    """
    del shown_in
    if not result.unplaced:
        return
    paths, names = zip(*result.unplaced, strict=True)
    says = f"it is not known where {listed(names)} {'is' if len(names) == 1 else 'are'}, or how large: "
    says += "that may be in the way of anything"
    act = f"Write x, side, z and size of {names[0]}"
    yield asking("layout/place-unknown", paths[0], says, act, USES, paths, could_stop=result.has_bed)
