"""Sentences of the weight page: what to weigh next, how the trailer stands parked, plan against scale."""

from __future__ import annotations

import math
from collections.abc import Iterable

from boxwright.book.numbers import mass, named
from boxwright.disciplines.weight.result import Compared, Parked, Result, Tip
from boxwright.disciplines.weight.telling import listed, name_of
from boxwright.exchange import Mass
from boxwright.finding import Use
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits, exactly, show

MOST = 3
BARE = "trailer.empty"


def weigh_next(slot: Slot | None) -> tuple[str, ...]:
    """Return the three parts that widen the ball's band most, each with its share of the variance."""
    if slot is None or slot.weight is None:
        return ()
    widest = slot.weight.tongue_widened_by[:MOST]
    return tuple(
        f"{named(one.of)} (nobody wrote what it weighs)"
        if math.isinf(one.half_width)
        else f"{named(one.of)} ({one.share * 100.0:.0f} % of the variance)"
        for one in widest
    )


def wheel_sentences(slot: Slot | None, units: HeaderUnits) -> tuple[str, ...]:
    """Return what the wheels of each axle carry, and the moments of inertia about the centre of gravity."""
    if slot is None or slot.weight is None:
        return ()
    found = [
        f"axle {one.axle}, load {slot.load}: left {mass(one.left, units)}, right {mass(one.right, units)}"
        for one in slot.weight.axle_loads
    ]
    found.append(f"moments of inertia about the centre of gravity, {_inertia(slot.weight, slot.masses, units)}")
    return tuple(found)


def _inertia(weight: Result, masses: Iterable[Mass], units: HeaderUnits) -> str:
    """Return the best values; nothing where the bare trailer, most of them, has no weight, no place or no size."""
    lacking = list(dict.fromkeys(one.of for one in weight.unweighed))
    if BARE in {*lacking, *weight.unplaced}:
        return "roll, pitch and yaw: unknown while the empty trailer has no weight or no tongue weight"
    if any(0.0 in one.size for one in masses if one.of == BARE):
        return "roll, pitch and yaw: unknown while the outside of the trailer has no length, width or height"
    roll, pitch, yaw = (show(value, "kg m2", units) for value in weight.inertia)
    says = f"best values: roll {roll}, pitch {pitch}, yaw {yaw}"
    return f"{says}; without {listed([name_of(of) for of in lacking])}" if lacking else says


def parked_sentences(slots: Iterable[Slot], units: HeaderUnits) -> tuple[str, ...]:
    """Return how the trailer stands in each load state somebody may be in it."""
    found: dict[str, None] = {}
    for slot in slots:
        if slot.weight is not None and slot.weight.parked is not None:
            parked = slot.weight.parked
            for tip in (parked.legs_up, parked.legs_down):
                if tip is not None:
                    legs = "legs down" if tip.legs_are_down else "legs up"
                    found.setdefault(
                        f"{slot.load} ({slot.use}), uncoupled, {legs}: {_tip(tip, parked, slot.use, units)}"
                    )
    return tuple(found)


def _tip(tip: Tip, parked: Parked, use: Use, units: HeaderUnits) -> str:
    aboard = "nobody in it" if use == "leave" else f"everybody at the rear ({mass(parked.people, units)})"
    held = tip.holds(use)
    margin = held.band
    if margin.low > 0.0:
        says = f"the nose stays down with {aboard}"
    elif margin.best <= 0.0 and (not held.unknown or margin.high <= 0.0):
        says = f"the nose LIFTS with {aboard}"
    elif margin.best <= 0.0:
        lacking = listed([name_of(of) for of in held.unknown])
        says = f"nobody can say whether the nose stays down with {aboard} while no number is known of {lacking}"
    else:
        says = f"by what is known the nose stays down with {aboard}; what is not known could lift it"
    if use == "leave":
        return f"{says}."
    if tip.person is None:
        return f"{says}; nothing stands behind where it would tip."
    person, alone = tip.person.band, f"{says}; one person alone at the rear wall lifts it"
    if math.isfinite(person.low):
        return f"{alone} from {mass(person, units)} on."
    if math.isinf(person.high):
        return f"{says}; nor what one person alone must weigh to lift it."
    # What is not known may have lifted it almost by itself: the upper end alone would read as a safe weight.
    return f"{alone} with {mass(exactly(person.high), units)} at the latest, and perhaps with far less."


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
    says = f"{named(one.of)}: {what} worked out {mass(one.planned.band, units)}, measured {mass(one.measured, units)}"
    if one.agreement <= 1.0 and one.planned.unknown:
        open_by = abs(one.measured.best - one.planned.band.best)
        unlisted = ", ".join(map(named, one.planned.unknown))
        needed = show(open_by, "kg", units)
        return f"{says}; they agree only if what has no weight written ({unlisted}) makes up {needed}."
    if one.agreement <= 1.0:
        return f"{says}; they agree."
    gap = f"{show(abs(one.gap), 'kg', units)} {'more' if one.gap > 0 else 'less'}"
    next_ones = f"; weigh next: {', '.join(map(named, one.weigh_next))}" if one.weigh_next else ""
    return f"{says}; they DISAGREE: {gap} than worked out{next_ones}."
