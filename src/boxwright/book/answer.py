"""Which slot speaks for a use, and with which verdict: for page, command line and print alike."""

from __future__ import annotations

from boxwright.finding import USES, Use, Verdict
from boxwright.study.slots import Slot, Study
from boxwright.study.verdict import WORST_FIRST, touches


def slot_of(study: Study, use: Use, load: str) -> Slot | None:
    """Return the slot a use's verdict is given in; of load states with equal answers the one with most against it.

    A stop is more than any number of questions. Where that is equal too it is the heaviest, so that an empty trailer
    never speaks for a laden one.
    """
    slots = study.asked_slots(use, load) or study.asked_slots(use)
    return min(slots, key=_worst_first, default=None)


def slots_for_each_use(study: Study, first: Use, load: str) -> tuple[Slot, ...]:
    """Return the slot that speaks for each use, that of one use first: a number it has not, another may have.

    How cold the room gets is worked out where somebody sleeps, and nobody who asks for it has to know that.
    """
    uses = (first, *(use for use in USES if use != first))
    return tuple(slot for use in uses if (slot := slot_of(study, use, load)) is not None)


def worse_elsewhere(study: Study, use: Use, load: str) -> Verdict | None:
    """Return the verdict of another load state that is worse for a use than the one asked for by name."""
    shown = slot_of(study, use, load)
    worst = min(study.asked_slots(use), key=_worst_first, default=None)
    if shown is None or worst is None or _worst_first(worst)[:2] >= _worst_first(shown)[:2]:
        return None
    return worst.verdict


def _worst_first(slot: Slot) -> tuple[int, bool, int, float]:
    mass = slot.weight.gross.band.best if slot.weight else 0.0
    return (WORST_FIRST.index(slot.verdict.answer), not _has_stop(slot), -len(slot.verdict.says), -mass)


def _has_stop(slot: Slot) -> bool:
    """Return whether a rule of a slot is broken for certain, accepted by the owner or not."""
    return any(one.kind == "stop" and touches(one, slot.use) for one in (*slot.findings, *slot.accepted))


def verdict_of(study: Study, use: Use, load: str) -> Verdict:
    """Return the verdict for a use: in the load state asked for where it is judged in it, else in its worst."""
    slot = slot_of(study, use, load)
    found = slot.verdict if slot else study.answer(use)
    if found is None:  # never silence: what nobody judged is a no
        return Verdict(use, "", study.stage, "no", (), "", says=("not judged",))
    return found
