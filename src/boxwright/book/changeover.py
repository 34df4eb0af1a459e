"""A change-over of a rig between two uses: the answers both ways, and how everybody gets out of bed."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.book.changeover_ends import End
from boxwright.book.changeover_setting import Making
from boxwright.disciplines.layout.changeover import Changed, Leaving, Setting
from boxwright.disciplines.layout.changeover_told import Told, told
from boxwright.records import dataclass
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot


@dataclass(frozen=True, slots=True)
class ChangeOver:
    """A change-over with all that is asked of it: there, back, and out of bed; ``asks`` are questions left open.

    ``perhaps`` are things nobody ticked, counted as there. ``unweighed`` are things that move whose weight is unknown.
    """

    start: End
    goal: End
    stage: str
    there: Changed
    back: Changed
    out: Leaving | None
    hands: int
    asks: tuple[str, ...] = ()
    perhaps: tuple[str, ...] = ()
    unweighed: tuple[str, ...] = ()


def _is_by_openings(setting: Setting, found: Told) -> bool:
    """Return whether an opening may be what is in the way, and not only things in each other."""
    things = {one.name for one in setting.fixed} | {one.name for one in setting.movers}
    meets = (*found.there.meets, *found.back.meets)
    return not meets or any(other not in things for _, other in meets)


def _in_doubt(found: Told, hoped: Told) -> Told:
    """Return what was found, where what may be done if what is asked turns out well is not called impossible."""
    there, back = (
        Changed("unknown", before=one.before, states=one.states, overlaps=one.overlaps)
        if one.word != "found" and other.word == "found"
        else one
        for one, other in zip(found[:2], hoped[:2], strict=True)
    )
    return Told(there, back, found.out)


def _not_in_yet(setting: Setting, found: Told) -> tuple[str, ...]:
    """Return the names of openings that are opened, and nobody ticked that they are in."""
    opened = {step.of for one in (found.there, found.back) for step in one.steps}
    return tuple(gate.name for gate in setting.gates if gate.of in opened and gate.release == "not in yet")


def _up_or_down(setting: Setting, found: Told) -> Iterator[str]:
    """Yield what is asked where it hangs on a leaf nobody sleeps on whether somebody gets out at night."""
    exits = found.out.exits if found.out is not None else ()
    by = {name for one in exits if one.word == "unknown" for name in one.by}
    for one in setting.movers:
        if one.is_loose and one.name in by:
            yield f"whether {one.name} is up or down at night, which nobody sleeps on: try the ways out both ways"


def change_over(rig: Rig, slot: Slot, start: End, goal: End) -> ChangeOver:
    """Return the change-over of a rig at the stage of a slot, between two ends."""
    made = Making(rig, slot, start, goal)
    setting = made.setting(1.0)
    found = told(setting, goal.use == "sleep", start.use == "sleep")
    if made.leave_in(setting, found):
        setting = made.setting(1.0)
        found = told(setting, goal.use == "sleep", start.use == "sleep")
    asks = made.asks
    unsure = tuple(f"where exactly {name} stands: measure it" for name in made.doubtful)
    if found.there.word != "found":
        unsure += made.unsure() if _is_by_openings(setting, found) else ()
    if found.there.word != "found" and unsure:
        hoped = told(made.setting(0.0, hopes=True), goal.use == "sleep", start.use == "sleep")
        if hoped.there.word == "found":
            asks = tuple(dict.fromkeys((*asks, *unsure)))
            found = _in_doubt(found, hoped)
    asks = (*asks, *_up_or_down(setting, found))
    people = len(goal.load.people or start.load.people) or len(rig.people)
    weights = made.unweighed(setting.movers)
    perhaps = (*made.perhaps, *_not_in_yet(setting, found))
    return ChangeOver(start, goal, slot.stage, *found, people, asks, perhaps, weights)
