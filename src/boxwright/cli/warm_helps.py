"""What helps, for ``boxwright heat``: each change in one sentence, with the night it was worked out in."""

from __future__ import annotations

from math import ceil, floor
from typing import TYPE_CHECKING

from boxwright.cli.screen import Line, hanging, plain
from boxwright.units import HeaderUnits, show

if TYPE_CHECKING:
    from boxwright.cli.asked import Answered
    from boxwright.disciplines.heat import Result
    from boxwright.disciplines.heat.helps import Help
    from boxwright.disciplines.heat.night import HeldNight

STEP = 50
"""W by which heat is told: no heater is set finer."""
HEAD = "WHAT HELPS, each change worked out as a night of its own"


def help_lines(answer: Answered, result: Result, held: tuple[HeldNight, ...], columns: int) -> list[Line]:
    """Return the lines of what helps; none where every night is as warm as is wanted and no warmer."""
    from boxwright.cli.asked import slot_of
    from boxwright.disciplines.heat.helps import helps_of
    from boxwright.study.warmth import layups_of

    slot = slot_of(answer, answer.use)
    if slot is None or slot.frame is None or not held:
        return []
    layups = layups_of(slot.frame, answer.reading.rig.frame)
    found = helps_of(result.inside, result.moisture, held, layups, result.openings)
    lines: list[Line] = [(), plain(HEAD, "head")] if found else []
    for one in found:
        lines += hanging(plain("  "), in_words(one, answer.units), columns)
    return lines


def in_words(one: Help, units: HeaderUnits) -> str:
    """Return a change and what it makes of a night."""
    from boxwright.disciplines.heat.telling import warm

    before, warmth = one.before, one.before.warmth
    night = f"{before.outdoors.place}, {warm(before.outdoors.coldest.best, units)} outside"
    name, wanted = (warmth.name, warm(warmth.wanted, units)) if warmth is not None else ("", "")
    if one.what in ("larger", "broken"):
        return f"{night}: {_when_cold(one, name, wanted, units)}"
    return f"{night}: {_when_mild(one, name, units)}"


def _when_cold(one: Help, name: str, wanted: str, units: HeaderUnits) -> str:
    from boxwright.disciplines.heat.telling import between

    before, after = one.before, one.after
    if one.what == "larger":
        if after is None:
            return f"no heater of up to {show(one.amount, 'power', units)} holds {wanted}."
        heat = f"{ceil(one.amount / STEP) * STEP:,} W"
        return f"a heater that gives {heat} most likely holds {wanted}: {between(after.coldest, units)} at its coldest."
    if after is None:
        return ""
    return (
        f"{show(one.amount, 'length', units)} of foam over all studs and bows, below the lining, saves"
        f" {show(before.loss.best - after.loss.best, 'W/K', units)}: with {name} the room comes to"
        f" {between(after.coldest, units)} instead of {between(before.coldest, units)}."
    )


def _when_mild(one: Help, name: str, units: HeaderUnits) -> str:
    from boxwright.disciplines.heat.telling import between

    before, after = one.before, one.after
    said = f"{name} left at its lowest makes {between(before.warmest, units)}"
    area = show(one.amount, "area", units)
    if one.what == "opened" and after is None:
        return f"{said}, and {area} more open does not help enough."
    if one.what == "opened" and after is not None:
        return f"{said}; {area} more open, low and high, makes it {between(after.warmest, units)}."
    lowest = floor(one.amount / STEP) * STEP
    if after is None or lowest <= 0:
        return f"{said}; it is warm enough without: switch it off."
    return f"{said}; a lowest setting of {lowest:,} W makes it {between(after.warmest, units)}."
