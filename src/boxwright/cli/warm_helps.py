"""What helps, for ``boxwright heat``: each change in one sentence, with the night it was worked out in."""

from __future__ import annotations

from math import ceil, floor
from typing import TYPE_CHECKING

from boxwright.cli.screen import Line, hanging, plain
from boxwright.units import Band, HeaderUnits, show

if TYPE_CHECKING:
    from boxwright.cli.asked import Answered
    from boxwright.disciplines.heat import Result
    from boxwright.disciplines.heat.helps import Help
    from boxwright.disciplines.heat.night import HeldNight
    from boxwright.disciplines.heat.result import StandingHeater

STEP = 50
"""W by which heat is told: no heater is set finer."""
HEAD = "WHAT HELPS, each change worked out as a night of its own"


def help_lines(answer: Answered, result: Result, held: tuple[HeldNight, ...], columns: int) -> list[Line]:
    """Return the lines of what helps; none where every night is as warm as is wanted and no warmer."""
    from boxwright.cli.asked import slot_of
    from boxwright.disciplines.heat.helps import helps_of, set_back
    from boxwright.study.warmth import layups_of

    slot = slot_of(answer, answer.use)
    if slot is None or slot.frame is None or not held:
        return []
    layups = layups_of(slot.frame, answer.reading.rig.frame)
    found = helps_of(result.inside, result.moisture, held, layups, result.openings)
    heaters = {one.planned.of: one for one in result.heaters}
    told = [in_words(one, answer.units) for one in found]
    for night in held:
        back = set_back(result.inside, result.moisture, night)
        heater = heaters.get(night.warmth.of) if night.warmth is not None else None
        if back is not None:
            told.append(back_in_words(back, heater, answer.units))
    lines: list[Line] = [(), plain(HEAD, "head")] if told else []
    for said in told:
        lines += hanging(plain("  "), said, columns)
    return lines


def back_in_words(one: Help, heater: StandingHeater | None, units: HeaderUnits) -> str:
    """Return what a heater that is set lower while people sleep saves, and how warm it is by the morning."""
    from boxwright.disciplines.heat.burning import fuel_of_night
    from boxwright.disciplines.heat.cold_hours import SET_BACK_FROM, SET_BACK_HOURS
    from boxwright.disciplines.heat.telling import between, warm

    before, after, warmth = one.before, one.after, one.before.warmth
    if after is None or warmth is None:
        return ""
    lower, until = warm(warmth.wanted - one.amount, units), (SET_BACK_FROM + SET_BACK_HOURS) % 24
    said = f"{before.outdoors.place}, {warm(before.outdoors.coldest.best, units)} outside: {warmth.name} set to {lower}"
    said += f" from {SET_BACK_FROM} h to {until} h"
    fuels = [fuel_of_night(night, heater) if heater is not None else None for night in (before, after)]
    if fuels[0] is not None and fuels[1] is not None:
        burns, burnt = (_fuel(one, units) for one in (fuels[1], fuels[0]))
        said += f" burns {burns} instead of {burnt}"
    else:
        takes, took = (show(night.energy.best, "energy", units) for night in (after, before))
        said += f" takes {takes} instead of {took}"
    said += f"; the room comes to {between(after.coldest, units)}"
    return f"{said} and is back at {warm(after.night.air[-1], units)} by eight."


def _fuel(burnt: Band, units: HeaderUnits) -> str:
    """Return a fuel with its ends."""
    best, low, high = (show(end, "volume", units) for end in (burnt.best, burnt.low, burnt.high))
    unit = f" {best.rpartition(' ')[2]}"
    return best if low == high else f"{best} ({low.removesuffix(unit)} to {high.removesuffix(unit)})"


def in_words(one: Help, units: HeaderUnits) -> str:
    """Return a change and what it makes of a night."""
    from boxwright.disciplines.heat.telling import warm

    before, warmth = one.before, one.before.warmth
    night = f"{before.outdoors.place}, {warm(before.outdoors.coldest.best, units)} outside"
    name, wanted = (warmth.name, warm(warmth.wanted, units)) if warmth is not None else ("", "")
    if one.what in ("larger", "broken", "stripped"):
        return f"{night}: {_when_cold(one, name, wanted, units)}"
    return f"{night}: {_when_mild(one, name, units)}"


def _when_cold(one: Help, name: str, wanted: str, units: HeaderUnits) -> str:
    from boxwright.disciplines.heat.telling import between, thin

    before, after = one.before, one.after
    if one.what == "larger":
        if after is None:
            return f"no heater of up to {show(one.amount, 'power', units)} holds {wanted}."
        heat = f"{ceil(one.amount / STEP) * STEP:,} W"
        return f"a heater that gives {heat} most likely holds {wanted}: {between(after.coldest, units)} at its coldest."
    if after is None:
        return ""
    place = "in strips on" if one.what == "stripped" else "over"
    return (
        f"{thin(one.amount, units)} of foam {place} all studs and bows, below the lining, saves"
        f" {show(before.loss.best - after.loss.best, 'W/K', units)}: with {name} the room comes to"
        f" {between(after.coldest, units)} instead of {between(before.coldest, units)}."
    )


def _when_mild(one: Help, name: str, units: HeaderUnits) -> str:
    from boxwright.disciplines.heat.telling import between

    before, after = one.before, one.after
    said = f"{name} left at its lowest makes {between(before.warmest, units)}"
    area = show(one.amount, "area", units)
    if one.what == "opened" and after is None:
        return f"{said}, and {area} more open low and as much high does not help enough."
    if one.what == "opened" and after is not None:
        return f"{said}; {area} more open low and as much high makes it {between(after.warmest, units)}."
    lowest = floor(one.amount / STEP) * STEP
    if after is None or lowest <= 0:
        return f"{said}; it is warm enough without: switch it off."
    return f"{said}; a lowest setting of {lowest:,} W makes it {between(after.warmest, units)}."
