"""Sentences of the weight page: what to weigh next, how the trailer stands parked, plan against scale."""

from __future__ import annotations

import math
from collections.abc import Iterable

from boxwright.cli.check import named
from boxwright.cli.numbers import mass
from boxwright.disciplines.weight.result import Compared, Parked, Tip
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits, show

MOST = 3


def weigh_next(slot: Slot | None) -> tuple[str, ...]:
    """Return the three parts that widen the ball's band most, each with its share of the variance."""
    if slot is None or slot.weight is None:
        return ()
    widest = slot.weight.tongue_widened_by[:MOST]
    return tuple(
        f"{named(one.of)} (nobody wrote what it weighs)"
        if math.isinf(one.half_width)
        else f"{named(one.of)} ({one.share:.0%} of the variance)"
        for one in widest
    )


def parked_sentences(slots: Iterable[Slot], units: HeaderUnits) -> tuple[str, ...]:
    """Return how the trailer stands in each load state somebody may be in it."""
    found: dict[str, None] = {}
    for slot in slots:
        if slot.weight is not None and slot.weight.parked is not None:
            for sentence in _parked(slot.load, slot.weight.parked, units):
                found.setdefault(sentence)
    return tuple(found)


def _parked(load: str, parked: Parked, units: HeaderUnits) -> list[str]:
    tips = [parked.legs_up, *([parked.legs_down] if parked.legs_down else [])]
    return [
        f"{load}, uncoupled, {'legs down' if tip.legs_are_down else 'legs up'}: {_tip(tip, parked, units)}"
        for tip in tips
    ]


def _tip(tip: Tip, parked: Parked, units: HeaderUnits) -> str:
    everybody = (
        f"everybody at the rear ({mass(parked.people, units)})" if parked.people.known else "everybody at the rear"
    )
    margin = tip.margin.band
    if margin.low > 0.0:
        says = f"the nose stays down with {everybody}"
    elif margin.high < 0.0:
        says = f"the nose LIFTS with {everybody}"
    else:
        says = f"not known whether the nose stays down with {everybody}"
    if tip.person is None:
        return f"{says}; nothing stands behind where it would tip."
    return f"{says}; alone, {mass(tip.person.band, units)} at the rear wall lifts it."


def compared_sentences(slots: Iterable[Slot], units: HeaderUnits) -> tuple[str, ...]:
    """Return each reading beside what was worked out for it, once."""
    found: dict[str, None] = {}
    for slot in slots:
        if slot.weight is not None:
            for one in slot.weight.compared:
                found.setdefault(_compared(one, slot, units))
    return tuple(found)


def _compared(one: Compared, slot: Slot, units: HeaderUnits) -> str:
    what = named(one.part) if one.part else f"{one.what}, stage {slot.stage}, load {slot.load}"
    says = f"{named(one.of)}: {what}: worked out {mass(one.planned.band, units)}, measured {mass(one.measured, units)}"
    if one.agreement <= 1.0:
        return f"{says}; they agree."
    gap = f"{show(abs(one.gap), 'kg', units)} {'more' if one.gap > 0 else 'less'}"
    next_ones = f"; weigh next: {', '.join(map(named, one.weigh_next))}" if one.weigh_next else ""
    return f"{says}; they DISAGREE: {gap} than worked out{next_ones}."
