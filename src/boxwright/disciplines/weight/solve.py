"""What weight works out: masses offered for the pool, and where the pooled weight goes."""

from __future__ import annotations

from dataclasses import replace
from math import isfinite

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.geometry import Measures, loads_of, measures_of
from boxwright.disciplines.weight.linear import Pool, pooled, value
from boxwright.disciplines.weight.readings import instrument_doubt, plank_reading, scale_pads_reading
from boxwright.disciplines.weight.result import Offers, Output, Result
from boxwright.disciplines.weight.slot import Slot, Varied
from boxwright.disciplines.weight.tipping import parked_of
from boxwright.exchange import Box, Mass, Measured, What
from boxwright.model.part import Frame
from boxwright.units import Band

__all__ = [
    "Offers",
    "Result",
    "instrument_doubt",
    "offers",
    "plank_reading",
    "pool_of",
    "scale_pads_reading",
    "solve",
    "tongue_alone",
]

ANYWHERE = 15.0
"""Farther (m) from the front wall than any such trailer reaches: where a thing may be if the box is not known."""


def offers(frames: tuple[Frame, ...], people: tuple[Frame, ...]) -> Offers:
    """Return the masses of everything that stands: each part dry, with its contents where it holds some, and people.

    What weighs nothing (it is inside the empty trailer's own weight) is left out.
    """
    masses = [_mass(frame, "dry", frame.dry) for frame in frames]
    masses += [_mass(frame, "contents", frame.contents) for frame in frames if frame.contents is not None]
    masses += [_mass(frame, "people", frame.dry) for frame in people]
    return Offers(tuple(mass for mass in masses if mass.kg.high > 0.0 or not mass.kg.known))


MOST_WEIGHED = 5_000
"""Masses that are remembered before all of them are forgotten together."""
_weighed: dict[tuple[int, What], tuple[Frame, Mass]] = {}
"""What each frame weighs, by its identity, which it has while it is kept here: one that is as it was stays the same
object and is not hashed anew."""


def _mass(frame: Frame, what: What, kg: Band) -> Mass:
    had = _weighed.get((id(frame), what))
    if had is None:
        if len(_weighed) > MOST_WEIGHED:
            _weighed.clear()
        place = frame.place
        mass = Mass(frame.of, what, frame.group, kg, place.x, place.y, place.z, place.size)
        had = _weighed[id(frame), what] = frame, mass
    return had[1]


def pool_of(box: Box, masses: tuple[Mass, ...]) -> Pool:
    """Return all parts of a slot added up, each with a place somewhere in or ahead of the box."""
    return pooled(_within_trailer(mass, box) for mass in masses)


def solve(
    box: Box,
    pool: Pool,
    ball_height: Band,
    is_parked: bool,
    is_coupled: bool | None,
    legs_are_down: bool | None,
    boarding: tuple[Band, ...],
    measured: tuple[Measured, ...],
) -> Result:
    """Return where the weight of one slot goes.

    ``ball_height`` is the tow ball's, ``box.coupler_height`` the level trailer's, both over the ground. ``boarding``
    are the people who may get in while it is parked. ``measured`` are the readings taken in this stage and load.
    """
    measures = measures_of(box, ball_height)
    try:
        slot, measures = _on_its_wheels(box, pool, measures)
        parked = parked_of(box, pool, measures, boarding, is_coupled, legs_are_down) if is_parked else None
    except method.OutOfRange:
        slot, parked = Slot(box, pool, None, (), ("trailer.axles.x",), measures.assumed), None
    return slot.result(parked, measured)


def tongue_alone(box: Box, pool: Pool, ball_height: Band) -> Output:
    """Return only the load on the ball: what other load states are compared by, at a fraction of the cost."""
    measures = measures_of(box, ball_height)
    try:
        slot, _ = _on_its_wheels(box, pool, measures)
    except method.OutOfRange:
        slot = Slot(box, pool, None, (), ("trailer.axles.x",), measures.assumed)
    return slot.tongue()


def _on_its_wheels(box: Box, pool: Pool, measures: Measures) -> tuple[Slot, Measures]:
    """Return the slot with every axle off the ground taken out, the most lifted first, until all that stand carry."""
    if measures.best is None:
        return Slot(box, pool, None, (), measures.missing, measures.assumed), measures
    best, loads = measures.best, loads_of(measures.best)
    while best.running_gear == "independent" and len(best.carrying) > 1:
        carried = {i: value(pool, loads.axles[i]) for i in best.carrying}
        lowest = min(carried, key=lambda i: carried[i])
        if carried[lowest] >= 0.0:
            break
        measures = measures.lifting(best, lowest)
        best = replace(best, lifted=(*best.lifted, lowest))
        loads = loads_of(best)
    varied = tuple(
        Varied(doubt.path, doubt.band, loads_of(doubt.low), loads_of(doubt.high)) for doubt in measures.doubts
    )
    return Slot(box, pool, loads, varied, (), measures.assumed, measures.sides_missing), measures


def _within_trailer(mass: Mass, box: Box) -> Mass:
    """Return a mass whose unknown place lies between coupler and rear end, side and side, deck and roof."""
    if mass.x.known and mass.y.known and mass.z.known:
        return mass
    half = box.outside[1] / 2.0
    front = min(box.coupler_x.best if box.coupler_x.known else box.front_x, box.front_x)
    # A measure of the box that nobody gave is 0 there: such a place stays open, it is not pressed to the front.
    long = (front, box.rear_x) if box.inside[0] > 0.0 else (-ANYWHERE, ANYWHERE)
    wide = (-half, half) if half > 0.0 else (-ANYWHERE, ANYWHERE)
    ends = (long, wide, (0.0, box.inside[2] or ANYWHERE))
    bands = (_between(band, *end) for band, end in zip((mass.x, mass.y, mass.z), ends, strict=True))
    x, y, z = bands
    return replace(mass, x=x, y=y, z=z)


def _between(band: Band, low: float, high: float) -> Band:
    if band.known:
        return band
    least = band.low if isfinite(band.low) else low
    most = band.high if isfinite(band.high) else high
    least, most = min(least, most), max(least, most)
    is_given = isfinite(band.low) and isfinite(band.high) and least <= band.best <= most
    return replace(band, best=band.best if is_given else (least + most) / 2.0, low=least, high=most)
