"""The rule of a heater's noise: at the pillow and at the neighbour's, beside what leaves people asleep."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.sound import QUIET, heard
from boxwright.disciplines.heat.telling import SLEEP, source_of
from boxwright.finding import Finding
from boxwright.units import HeaderUnits, show


def loud_at_night(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where a heater of a written level is louder than leaves people asleep, or ask how far they are.

    Asks: the level of its leaflet at its distance, and how far pillow and neighbour are
    Limit: 30 dB at the pillow, 45 dB outside a neighbour's window
    Source: community-noise; the inverse square of distance, nothing between
    Lever: noise of the heater
    """
    for one in result.heaters if result.use == "sleep" and result.sleepers else ():
        noise, name, where = one.planned.heater.noise, one.planned.name, one.planned.of
        if noise is None:
            continue
        for row, whose, distance in (
            ("at the pillow", "pillow", noise.pillow),
            ("at the neighbour's", "neighbour", noise.neighbour),
        ):
            level = heard(noise, distance)
            if level is None:
                yield Finding(
                    "heat/loud-at-night", where, "unknown", f"nobody can say how loud {name} is {row}: its level, the"
                    " distance it was taken at or that to there is not written", source=source_of("quiet", row),
                    lever=where, act=f"Write noise: {{level: 52 dB, at: 3 ft, {whose}: 8 ft}} of the heater", minutes=5,
                    could_stop=False, could_limit=False, uses=SLEEP, because=(where,),
                )  # fmt: skip
            elif level.high > QUIET[row]:
                far = show(distance.best, "length", shown_in) if distance is not None else ""
                says = f"{name} makes {level.best:.0f} dB {row}, {far} away with nothing between; {QUIET[row]:.0f} dB"
                says += " leave people asleep there: walls take some off"
                yield Finding(
                    "heat/loud-at-night", where, "advice", says, level.high, QUIET[row], QUIET[row] - level.high, "",
                    source_of("quiet", row), where, act="Hang its pump in rubber, fit the silencers of its leaflet to"
                    " intake and exhaust, and turn its exhaust away from who sleeps", minutes=60, uses=SLEEP,
                    because=(where,),
                )  # fmt: skip


__all__ = ["loud_at_night"]
