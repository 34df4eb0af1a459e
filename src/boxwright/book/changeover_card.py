"""The card for the door: what to move to sleep and to drive on, in the order of hands, and how everybody gets out."""

from __future__ import annotations

from boxwright.book.changeover import ChangeOver, change_over
from boxwright.book.changeover_ends import End, ends_of, has_room
from boxwright.book.changeover_words import (
    asked_words,
    because,
    exit_changes,
    headline,
    leaving_words,
    minutes,
    step_words,
)
from boxwright.disciplines.layout.changeover import Changed
from boxwright.drawing import Grid, Sheet
from boxwright.drawing.sheet import TO_TICK
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

NAME, TITLE = "changeover", "Change-over, for the door"
SHORT = (
    "Seconds, and what how many hands lift, are common practice without a source. Who carries takes no room here, at "
    "night too: walk the moves and the way out once, with the things in your hands."
)
HANDS = {1: "", 2: "two", 3: "three or roll"}


def changeover_sheets(rig: Rig, slot: Slot | None, units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return the card; none where no load state is for the road or none for the night, or the room is not known."""
    start, goal = ends_of(rig)
    if slot is None or start is None or goal is None or not has_card(rig, slot):
        return ()
    return (card(change_over(rig, slot, start, goal), units),)


def has_card(rig: Rig, slot: Slot | None) -> bool:
    """Return whether there is a road, a night and a room, so that a card can be worked out."""
    start, goal = ends_of(rig)
    is_placed = slot is not None and slot.frame is not None and slot.box is not None and has_room(rig)
    return is_placed and start is not None and goal is not None and start.load.name != goal.load.name


def card(told: ChangeOver, units: HeaderUnits) -> Sheet:
    """Return a change-over as a card on one page: what to read first, then the moves there and back side by side."""
    return Sheet(NAME, TITLE, (), (SHORT,), (_read_first(told, units), _moves(told)), stands_up=True)


def _read_first(told: ChangeOver, units: HeaderUnits) -> Grid:
    """Return what is to be read beside the moves: the way out of bed, what is in the way, what is asked."""
    rows = [("at night", says) for says in leaving_words(told, units)]
    for changed, ends in ((told.there, (told.start, told.goal)), (told.back, (told.goal, told.start))):
        if changed.word != "found" or changed.overlaps or changed.grazes or not changed.is_least:
            lead = f"to {ends[1].word}"
            rows += [
                (lead, headline(changed, ends[0].word, ends[1].word)),
                *((lead, says) for says in because(changed)),
            ]
    rows += [("ask", says) for says in asked_words(told)]
    kept: list[tuple[str, str]] = []
    for lead, says in rows:
        if kept and kept[-1][0] == lead:
            kept[-1] = (lead, f"{kept[-1][1]} {says}")
        else:
            kept.append((lead, says))
    return Grid("Read first", ("", "What it says"), tuple(kept), ("parts",) * len(kept))


def _moves(told: ChangeOver) -> Grid:
    """Return the moves there and back, each with a box to tick, its hands, its time and what it does to the exits."""
    there, back = _told(told.there), _told(told.back)
    count = max(len(there), len(back))
    rows, paths = [], []
    for number in range(count):
        left = there[number] if number < len(there) else ("", "")
        right = back[number] if number < len(back) else ("", "")
        rows.append((TO_TICK if left[0] else "", left[1], TO_TICK if right[0] else "", right[1]))
        paths.append(left[0] or right[0] or "parts")
    columns = ("", f"To {_called(told.goal)}", "", f"To {_called(told.start)}")
    return Grid("In the order of hands", columns, tuple(rows), tuple(paths))


def _told(changed: Changed) -> list[tuple[str, str]]:
    """Return the path and the words of each move."""
    found, before = [], changed.before
    for step in changed.steps:
        aside = ", ".join(one for one in (HANDS[min(step.hands, 3)], minutes(step.seconds)) if one)
        # that a ramp is shut when it is shut need not be said again
        exits = exit_changes(before, (one for one in step.exits if (one.of, one.word) != (step.of, "shut")))
        found.append((step.of, f"{step_words(step)} ({aside})" + (f": {exits}" if exits else "")))
        before = step.exits
    return found or [("", _none(changed))]


def _called(end: End) -> str:
    return end.word if end.word == end.load.name else f"{end.word} ({end.load.name})"


def _none(changed: Changed) -> str:
    return {
        "found": "nothing to move",
        "not-found": "the search gave up: not known",
        "unknown": "not known: see what is asked",
    }.get(changed.word, "it cannot be done")
