"""What makes the air of the room damp: people asleep, dinner as it is cooked, gear that comes in wet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from boxwright.disciplines.air.parts import PlannedDamp
from boxwright.disciplines.air.sourced import (
    BREATH,
    BREATH_AT_WORK,
    COOKING,
    DINNER,
    LATENT,
    WARMTH,
    WARMTH_AT_WORK,
    WET_GEAR,
)
from boxwright.disciplines.air.vents import ENDS, End
from boxwright.exchange import Moisture
from boxwright.units import Band

HOUR = 3600.0
COOKED_AT, COOKED_FOR = 18, 2
"""Dinner is cooked from six to eight in the evening, before people lie down."""
WORK_AT, WORK_FOR = 8, 8
"""People who work in it do so from eight to four."""
HUNG_AT, HUNG_FOR = 18, 14
"""Wet gear hangs from then till eight in the morning."""
GRAMS, KILO = 1e-3, 1e3


def given_off(
    damp: tuple[PlannedDamp, ...], there: Mapping[str, str], sleepers: int, workers: int = 0
) -> tuple[Moisture, ...]:
    """Return everything that gives off vapour: by night what sleepers bring, by day those who work in it alone.

    Nothing where nobody is in it, for neither night nor day is worked out then.
    """
    if workers:
        return (_of_workers(workers),)
    if not sleepers:
        return ()
    return (_of_sleepers(sleepers), *(each for one in damp if one.of in there for each in _of(one, there, sleepers)))


def _of_sleepers(count: int) -> Moisture:
    """Return the water and the heat of everybody asleep."""
    return Moisture("people", _banded(BREATH, count), _banded(WARMTH, count), "asleep")


def _of_workers(count: int) -> Moisture:
    """Return the water and the heat of everybody at work."""
    return Moisture(
        "people", _banded(BREATH_AT_WORK, count), _banded(WARMTH_AT_WORK, count), "working", WORK_AT, WORK_FOR
    )


def _of(one: PlannedDamp, there: Mapping[str, str], sleepers: int) -> Iterator[Moisture]:
    is_sure = there[one.of] == "yes"
    if one.cooks is not None:
        water, heat = (_if_there(band(one, one.cooks, sleepers), is_sure) for band in (_cooked, _heat_of_cooking))
        yield Moisture(one.of, water, heat, "cooking", COOKED_AT, COOKED_FOR, is_unsaid=not one.cooks.known)
    if one.wet is not None:
        water = _dried(one.wet, is_sure)
        # What dries takes its heat from the room: most where most dries.
        cold = Band(-LATENT * water.best, -LATENT * water.high, -LATENT * water.low, spread="interval", assumed=True)
        yield Moisture(one.of, water, cold, "drying", HUNG_AT, HUNG_FOR)


def _cooked(one: PlannedDamp, cooks: Band, sleepers: int) -> Band:
    """Return the vapour (kg/s) of dinner and of its flame, spread over the hours it is cooked in."""
    flame, water = COOKING["flame, kW"], COOKING["water, g of a kWh"]
    ends = []
    for end in ENDS:
        lasts = hours_of_cooking(cooks, end)
        dinner = getattr(DINNER, end) * sleepers if lasts > 0.0 else 0.0
        burnt = lasts * getattr(flame, end) * getattr(water, end) * GRAMS if one.is_flame else 0.0
        ends.append((dinner + burnt) / (COOKED_FOR * HOUR))
    low, best, high = ends
    return Band(best, low, high, spread="interval", assumed=True)


def _heat_of_cooking(one: PlannedDamp, cooks: Band, sleepers: int) -> Band:
    """Return the heat (W) that cooking leaves in the room, spread over its hours; what boils away takes some of it.

    At the low end most boils away on the least fire.
    """
    ends = []
    for end, other in zip(ENDS, reversed(ENDS), strict=True):
        lasts = hours_of_cooking(cooks, end) * HOUR
        boils = LATENT * getattr(DINNER, other) * sleepers if lasts > 0.0 else 0.0
        fire = getattr(COOKING["flame, kW"], end) * KILO * lasts
        ends.append(max(fire - boils, 0.0) / (COOKED_FOR * HOUR))
    low, best, high = ends
    return Band(best, low, high, spread="interval", assumed=True)


def hours_of_cooking(cooks: Band, end: End) -> float:
    """Return for how many hours is cooked, as written, else as little and as much as may be."""
    return float(getattr(cooks, end)) / HOUR if cooks.known else float(getattr(COOKING["hours nobody wrote"], end))


def _dried(wet: Band, is_sure: bool) -> Band:
    """Return the vapour (kg/s) of gear that hangs wet all night."""
    mass, share = wet if wet.known else WET_GEAR["kg nobody wrote"], WET_GEAR["dries by morning"]
    low, best, high = (getattr(mass, end) * getattr(share, end) / (HUNG_FOR * HOUR) for end in ENDS)
    return _if_there(Band(best, low, high, spread="interval", assumed=True), is_sure)


def _if_there(band: Band, is_sure: bool) -> Band:
    """Return what is given off; what stands perhaps gives off nothing at the low end."""
    return band if is_sure else Band(band.best, 0.0, band.high, spread="interval", assumed=True)


def _banded(one: Band, count: int) -> Band:
    low, best, high = (getattr(one, end) * count for end in ENDS)
    return Band(best, low, high, spread="interval", assumed=True)
