"""The water of a night at its ends: the driest and the wettest one it may be, and what knowing a thing would narrow."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, OFF, Inside, Outdoors, Warmth, hours_of
from boxwright.disciplines.heat.method.boxed import _damp_through_time, _saturated
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.room import NIGHT, SEA_LEVEL, at, hidden_places, room_of, shares_of
from boxwright.disciplines.heat.shell import Shell
from boxwright.exchange import Moisture, Narrowed, NightEnd
from boxwright.units import exactly

OUTER: tuple[End, End] = ("low", "high")


def damp_ends(
    inside: Inside,
    outdoors: Outdoors,
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    runs: dict[End, Course],
) -> tuple[NightEnd, NightEnd]:
    """Return the driest night and the wettest one that it may be."""
    dry, wet = (_damp_end(inside, outdoors, warmth, moisture, runs[end], end) for end in OUTER)
    return dry, wet


def narrowed(
    inside: Inside, outdoors: Outdoors, warmth: Warmth | None, moisture: tuple[Moisture, ...], wet: Course
) -> tuple[Narrowed, ...]:
    """Return the wettest night with each thing known that nobody wrote, at its driest: as warm as it is without.

    What fills holes counts as warm on its face alone: that the room loses less then is left out, on the wet side.
    """
    found: list[Narrowed] = []
    cooks = tuple(one.of for one in moisture if one.is_unsaid)
    if cooks:
        without = tuple(
            replace(one, kg_per_second=exactly(one.kg_per_second.low)) if one.is_unsaid else one for one in moisture
        )
        found.append(Narrowed("cooks", cooks, _damp_end(inside, outdoors, warmth, without, wet, "high")))
    if inside.unsaid:
        faces = tuple(
            replace(face, places=tuple(replace(one, factor=exactly(one.factor.high)) for one in face.places))
            if face.of in inside.unsaid
            else face
            for face in inside.shell.faces
        )
        filled = replace(inside, shell=replace(inside.shell, faces=faces))
        found.append(Narrowed("U", inside.unsaid, _damp_end(filled, outdoors, warmth, moisture, wet, "high")))
    return tuple(found)


def _damp_end(
    inside: Inside,
    outdoors: Outdoors,
    warmth: Warmth | None,
    moisture: tuple[Moisture, ...],
    run: Course,
    end: End,
) -> NightEnd:
    """Return the water of a night at one end, by the temperatures of that end of heat loss.

    The coldest room is the wettest where least air comes in from a damp night, so all that has to do with air is taken
    from the other end of heat loss. No one night is all of that at once: what comes of it bounds those that are.
    """
    airflow = inside.airflow
    leak, vents, rise = (exactly(at(one, end, False)) for one in (airflow.leak, airflow.vents, airflow.rise))
    swapped = replace(airflow, leak=leak, vents=vents, rise=rise, likely=None)
    box = room_of(inside.shell, swapped, inside.volume, inside.height, inside.floor, end, OFF)
    outdoor = at(NIGHT["humidity"], end) * _saturated(at(outdoors.coldest, end, False), SEA_LEVEL)
    hours = hours_of(outdoors, moisture, warmth, end)
    hours = hours._replace(
        humidity=(outdoor,) * len(hours.outside), wind=(at(outdoors.wind, end, False),) * len(hours.outside)
    )
    humidity, flow, settled = _damp_through_time(box.room, box.cold, hours, run.air)
    judged = slice(-ASLEEP_HOURS, None)
    return NightEnd(
        outside=hours.outside[judged],
        air=run.air[judged],
        humidity=humidity[judged],
        outdoors=outdoor,
        flow=flow[judged],
        water=water_of(inside.shell, settled[judged], end),
    )


def water_of(shell: Shell, settled: tuple[tuple[float, ...], ...], end: End) -> tuple[tuple[float, ...], ...]:
    """Return the water of each place by the hour; on what lies behind a lining heat works out none: air does."""
    shares, hidden = shares_of(shell, end), (0.0,) * len(hidden_places(shell))
    return tuple((*(row[number] * share for number, share in shares), *hidden) for row in settled)
