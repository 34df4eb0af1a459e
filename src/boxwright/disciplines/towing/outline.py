"""The outline of the trailer with all that is on it: how wide, high and long it is, and what hangs low."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from itertools import product
from math import inf, isfinite

from boxwright.disciplines.towing import method
from boxwright.disciplines.towing.result import Extent, LowPoint
from boxwright.exchange import Box
from boxwright.model.part import Frame
from boxwright.model.trailer import Trailer
from boxwright.units import Band, Spread, exactly

UNKNOWN = Band(0.0, float("-inf"), float("inf"), known=False)
MILLIONTH = 1e-6


def spanned(formula: Callable[..., float], *bands: Band | None) -> Band | None:
    """Return a formula over doubtful numbers: best value and extremes over their ends; None if one is missing."""
    known = tuple(band for band in bands if band is not None and band.known)
    if len(known) < len(bands):
        return None
    try:
        best = formula(*(band.best for band in known))
        values = [formula(*corner) for corner in product(*((band.low, band.high) for band in known))]
    except method.OutOfRange:
        return None
    spread: Spread = "exact" if all(band.low == band.high for band in known) else "interval"
    ends = (best, *values)
    return Band(best, min(ends), max(ends), spread=spread, assumed=any(band.assumed for band in known))


def width_of(trailer: Trailer, frames: tuple[Frame, ...]) -> Extent:
    """Return the greatest width, over fenders or over whatever sticks out on either side.

    Wheels stand beside many a box: where nobody wrote the width over the fenders, that of the box is only the least.
    """
    given = [band for band in (trailer.outside.over_fenders, trailer.outside.width) if band is not None and band.known]
    if not given:
        return Extent(UNKNOWN, "")
    widest = max(given, key=lambda band: band.best)
    if trailer.outside.over_fenders not in given:
        widest = replace(widest, high=inf, spread="interval", assumed=True)
    sticking = _placed(frames, 1)
    left = min((_low(frame, 1), frame.of) for frame in sticking) if sticking else (0.0, "")
    right = max((_high(frame, 1), frame.of) for frame in sticking) if sticking else (0.0, "")
    half = widest.best / 2.0
    over_left, over_right = max(-left[0] - half, 0.0), max(right[0] - half, 0.0)
    of = left[1] if over_left > over_right else right[1] if over_right > 0.0 else ""
    return Extent(_raised(widest, over_left + over_right), of)


def height_of(trailer: Trailer, frames: tuple[Frame, ...]) -> Extent:
    """Return the height over the ground, of the trailer or of what stands on its roof."""
    given, deck = trailer.outside.height, trailer.deck_height
    if given is None or not given.known:
        return Extent(UNKNOWN, "")
    if deck is None or not deck.known:
        return Extent(given, "")
    top = max(((_high(frame, 2) + deck.best, frame.of) for frame in _placed(frames, 2)), default=(0.0, ""))
    over = top[0] - given.best
    return Extent(_raised(given, over), top[1]) if over > 0.0 else Extent(given, "")


def length_of(trailer: Trailer, box: Box, frames: tuple[Frame, ...]) -> Extent:
    """Return the length from the coupler's nose to the rearmost thing."""
    given = trailer.outside.length_overall
    if given is None or not given.known:
        return Extent(UNKNOWN, "")
    coupler = box.coupler_x.best if box.coupler_x.known else box.front_x
    rear = max(box.rear_x, coupler + given.best)
    last = max(((_high(frame, 0), frame.of) for frame in _placed(frames, 0)), default=(0.0, ""))
    over = last[0] - rear
    return Extent(_raised(given, over), last[1]) if over > 0.0 else Extent(given, "")


def low_points(box: Box, frames: tuple[Frame, ...], pitch: Band | None, overhang: Band | None) -> tuple[LowPoint, ...]:
    """Return what hangs below the deck, with the angles it clears; none where deck or axles have no place."""
    places = [axle.x.best for axle in box.axles if axle.x.known]
    if not box.deck_height.known or not places:
        return ()
    turn = pitch.best if pitch is not None else 0.0
    tow_wheel = None
    if overhang is not None and overhang.known and box.coupler_x.known:
        tow_wheel = box.coupler_x.best - overhang.best
    hanging = [frame for frame in _placed(frames, 2) if _low(frame, 2) < 0.0 and frame.place.x.known]
    return tuple(_low_point(frame, box.deck_height, tuple(places), turn, tow_wheel) for frame in hanging)


@lru_cache(maxsize=1_000)
def _low_point(frame: Frame, deck: Band, axles: tuple[float, ...], pitch: float, tow_wheel: float | None) -> LowPoint:
    front, rear = _low(frame, 0), _high(frame, 0)
    middle = sum(axles) / len(axles)

    def height_at(x: float) -> Callable[[float], float]:
        return lambda over_ground: method.pitched_height(over_ground + _low(frame, 2), middle - x, pitch)

    def departing(over_ground: float) -> float:
        return method.departure_angle(height_at(rear)(over_ground), rear - axles[-1])

    def breaking(over_ground: float) -> float:
        height = height_at(front)(over_ground)
        if tow_wheel is None:
            return method.departure_angle(height, axles[0] - front)
        return method.breakover_angle(height, front - tow_wheel, axles[0] - front)

    ends = [spanned(height_at(x), deck) for x in (front, rear)]
    height = min((band for band in ends if band is not None), key=lambda band: band.best, default=UNKNOWN)
    return LowPoint(
        frame.of,
        height,
        spanned(departing, deck) if rear > axles[-1] + MILLIONTH else None,
        spanned(breaking, deck) if front < axles[0] - MILLIONTH else None,
        tow_wheel is None,
    )


def _placed(frames: tuple[Frame, ...], axis: int) -> list[Frame]:
    """Return the frames that have a place and a size along an axis."""
    bands = [(frame, (frame.place.x, frame.place.y, frame.place.z)[axis]) for frame in frames]
    return [frame for frame, band in bands if band.known and isfinite(band.best) and frame.place.size[axis] > 0.0]


def _low(frame: Frame, axis: int) -> float:
    place = frame.place
    return (place.x, place.y, place.z)[axis].best - place.size[axis] / 2.0


def _high(frame: Frame, axis: int) -> float:
    return _low(frame, axis) + frame.place.size[axis]


def _raised(band: Band, by: float) -> Band:
    return spanned(lambda value: value + by, band) or exactly(band.best + by)
