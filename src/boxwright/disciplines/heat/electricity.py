"""What a heater takes of electricity through a night: its fan and pump while it runs, its glow pin at each start.

What is not known of hours, starts and volts goes into the band; the fans of the room stand still in the coldest night.
"""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.heat.as_built import End
from boxwright.disciplines.heat.burner import burns_by_itself
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS, Warmth
from boxwright.disciplines.heat.feeds import VOLTS, times
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.method import cycling
from boxwright.disciplines.heat.method.network import Course
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import Heater
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.exchange import ElectricLoad
from boxwright.units import Band, exactly

TAKES: dict[str, Band] = {name: interval(*row) for name, row in columns("takes").items()}
"""What a fuel heater takes where nobody wrote it, and how it goes on and off."""
HOUR = 3600.0
NIGHT = ASLEEP_HOURS * HOUR
OFF, CYCLING = 0, 1
"""The places of those hours in a night's bands."""
ENDS = ("best", "low", "high")


def load_of(one: HeldNight, heater: StandingHeater, volume: Band) -> ElectricLoad | None:
    """Return what a heater takes in a night; ``volume`` (m3) of the room says how fast it cools while it is off.

    None where nobody wrote what it runs on.
    """
    facet, of = heater.planned.heater, heater.planned.of
    fed_by = heater.feed.way[0] if heater.feed.way else ""
    if heater.runs == "electric":
        highest = facet.highest if facet.highest is not None and facet.highest.known else exactly(0.0)
        return ElectricLoad(of, fed_by, one.outdoors.place, highest, _plain(one.energy), highest, exactly(0.0))
    if heater.runs != "burns" or one.warmth is None or burns_by_itself(facet):
        return None
    runs, starts = hours_on(one), starts_of(one, volume)
    while_on, at_start = running(facet, heater.feed.volts), starting(facet, heater.feed.volts)
    at, took = {}, TAKES["start"]
    for end in ENDS:
        number, lasts = getattr(starts, end), getattr(took, end)
        glows = min(number * lasts, getattr(runs, end))
        at[end] = getattr(while_on, end) * (getattr(runs, end) - glows) + getattr(at_start, end) * glows
    spent = Band(at["best"], min(at.values()), max(at.values()), spread="interval")
    return ElectricLoad(of, fed_by, one.outdoors.place, while_on, spent, at_start, starts)


def _plain(band: Band) -> Band:
    return Band(band.best, band.low, band.high, band.known, band.spread)


def lasts(holds: Band, need: Band) -> Band:
    """Return how long (s) what a battery gives lasts at what a night takes, no longer than the night.

    It lasts least where it gives least and most is taken.
    """
    ends = ((holds.best, need.best), (holds.low, need.high), (holds.high, need.low))
    best, low, high = (NIGHT if taken <= given else NIGHT * given / taken for given, taken in ends)
    return Band(best, low, high, spread="interval")


def running(facet: Heater, volts: Band = VOLTS) -> Band:
    """Return what a fuel heater takes while it burns (W): as written, else what such heaters take."""
    return _watts(facet.draw, volts) if facet.draw is not None and facet.draw.known else TAKES["running"]


def starting(facet: Heater, volts: Band = VOLTS) -> Band:
    """Return what it takes while it starts (W): as written, else what such heaters take."""
    return _watts(facet.start, volts) if facet.start is not None and facet.start.known else TAKES["starting"]


def _watts(amps: Band, volts: Band) -> Band:
    return replace(times(amps, volts), spread="interval")


def hours_on(one: HeldNight) -> Band:
    """Return how long a fuel heater runs in a night (s): all but the hours it is off, and at most all night.

    While it goes on and off it runs at least the share its heat asks for; most run their fan on to cool down.
    """
    off, cycles = one.banded[OFF] * HOUR, one.banded[CYCLING] * HOUR
    whole = NIGHT - off
    warmth = one.warmth
    share = 1.0
    if warmth is not None and cycles > 0.0 and warmth.lowest.known and warmth.lowest.best > 0.0:
        share = min(one.energy.low / (NIGHT * warmth.lowest.best), 1.0)
    least = max(whole - cycles * (1.0 - share), 0.0)
    return Band(whole, least, NIGHT if whole > 0.0 or one.energy.high > 0.0 else 0.0, spread="interval")


def starts_of(one: HeldNight, volume: Band) -> Band:
    """Return how often a fuel heater starts in a night: once, and once for each time it goes off and on again.

    Where it may go on and off all night, it does so at the high end.
    """
    warmth, hours = one.warmth, one.banded[CYCLING]
    if warmth is None or one.energy.high <= 0.0:
        return exactly(0.0)
    best = 1.0 + hours * _an_hour(warmth, volume, "best")
    may = warmth.switches is not False and one.energy.low < NIGHT * warmth.lowest.high
    high = 1.0 + (ASLEEP_HOURS if may else hours) * _an_hour(warmth, volume, "high")
    return Band(best, 1.0, max(best, high), spread="interval")


def _an_hour(warmth: Warmth, volume: Band, end: str) -> float:
    """Return how often a heater starts in an hour in which it goes on and off; most often at half of its heat."""
    heat = getattr(warmth.lowest, end)
    if heat <= 0.0 or volume.best <= 0.0:
        return 0.0
    # What cools fast starts it often: the low end of what holds heat is the high one of starts.
    other = {"best": "best", "high": "low"}[end]
    capacity = getattr(TAKES["fast heat"], other) * volume.best
    found = cycling(capacity, getattr(TAKES["switching"], other), heat, heat / 2.0)
    return HOUR / (found.on + found.off)


def amps(written: Band | None, otherwise: str, volts: Band = VOLTS) -> Band:
    """Return a current (A): as written, else what such heaters take of a bus of so many volts."""
    if written is not None and written.known:
        return written
    taken = TAKES[otherwise]
    return Band(taken.best / volts.best, taken.low / volts.high, taken.high / volts.low, spread="interval")


def by_hour(one: HeldNight, heater: StandingHeater, volume: Band, runs: dict[End, Course]) -> tuple[Band, ...]:
    """Return the mean current (A) a fuel heater takes of its battery in each hour; nothing of one that burns nothing.

    Through the night it adds up to what `load_of` says of it: at the high end it goes on and off in every hour.
    """
    facet, warmth = heater.planned.heater, one.warmth
    if heater.runs != "burns" or warmth is None or burns_by_itself(facet):
        return ()
    volts, took = heater.feed.volts, TAKES["start"]
    while_on, at_start = amps(facet.draw, "running", volts), amps(facet.start, "starting", volts)
    judged = slice(-ASLEEP_HOURS, None)
    bands = runs["best"].band[judged]
    least = [min(heats) for heats in zip(*(run.heat[judged] for run in runs.values()), strict=True)]
    runs_at_all, starts = hours_on(one).high > 0.0, starts_of(one, volume)
    again = (starts.high - 1.0) / ASLEEP_HOURS
    first = next((hour for hour, band in enumerate(bands) if band != OFF), 0)
    found = []
    for hour, band in enumerate(bands):
        once = 1.0 if hour == first else 0.0
        often = once + (_an_hour(warmth, volume, "best") if band == CYCLING else 0.0)
        best = _mean(while_on.best, at_start.best, often * took.best) if band != OFF else 0.0
        most = _mean(while_on.high, at_start.high, (once + again) * took.high) if runs_at_all else 0.0
        asks = least[hour] / warmth.lowest.high if warmth.lowest.known and warmth.lowest.high > 0.0 else 1.0
        low = while_on.low * min(asks, 1.0) if least[hour] > 0.0 else 0.0
        found.append(Band(best, min(low, best), max(most, best), spread="interval"))
    return tuple(found)


def _mean(while_on: float, at_start: float, glows: float) -> float:
    """Return the mean of an hour of which its pin glows some seconds."""
    glowing = min(glows / HOUR, 1.0)
    return while_on * (1.0 - glowing) + at_start * glowing
