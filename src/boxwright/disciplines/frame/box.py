"""The trailer as a body on wheels, from its plate and its tape; what nobody measured is taken from its kind."""

from __future__ import annotations

import re
from math import inf
from typing import Literal, NamedTuple

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.sourced import ASSUMED, LIMITS
from boxwright.exchange import Axle, Box, Vector
from boxwright.model.trailer import Trailer
from boxwright.units import Band

UNKNOWN = Band(0.0, -inf, inf, known=False)
INCH = 0.0254
"""Metres; international yard and pound agreement of 1959 (from memory)."""

_TYRE = re.compile(r"(?:[A-Z]{1,2}\s*)?(\d{3})\s*/\s*(\d{2,3})\s*(?:[A-Z]{0,2}|-)\s*(\d{2})(?!\d)", re.IGNORECASE)


class Tyre(NamedTuple):
    """A tyre's size as its marking says it: section width (m), height as a share of it, rim diameter (m)."""

    section: float
    aspect: float
    rim: float


def read_tyre(marking: str) -> Tyre | None:
    """Return the size in a marking such as ST205/75R15 or 155/70R13; None where it is of another kind."""
    found = _TYRE.match(marking.strip())
    return Tyre(int(found[1]) / 1e3, int(found[2]) / 1e2, int(found[3]) * INCH) if found else None


def inside_of(trailer: Trailer) -> Vector | None:
    """Return length, width and height from stud face to stud face and deck to bows; None unless all are known.

    A measure of nothing or less is none, nor is one beyond any trailer: it was typed in another unit.
    """
    length, width, height = (_best(one) for one in (trailer.body.length, trailer.body.width, trailer.body.height))
    if length is None or width is None or height is None:
        return None
    if min(length, width, height) <= 0.0 or max(length, width, height) > LIMITS["longest_body"]:
        return None
    return length, width, height


def box_of(trailer: Trailer) -> Box:
    """Return the trailer as a body on wheels.

    Lengths are in the rig's datum; deck, coupler and wheel middle are heights above the ground, as they are written.
    A measure of ``inside`` or ``outside`` that nobody gave is 0.
    """
    body, outside, axles = trailer.body, trailer.outside, trailer.axles
    tyre = read_tyre(trailer.tyres.size)
    length, outside_length = _best(body.length) or 0.0, _best(outside.length) or 0.0
    wall = max(outside_length - length, 0.0) / 2.0
    rated = axles.gawr * len(axles.x) if len(axles.gawr) == 1 else axles.gawr
    return Box(
        of="trailer",
        inside=(length, _best(body.width) or 0.0, _best(body.height) or 0.0),
        outside=(outside_length, _best(outside.width) or 0.0, _best(outside.height) or 0.0),
        front_x=-wall,
        rear_x=length + wall,
        deck_height=trailer.deck_height or UNKNOWN,
        coupler_x=trailer.coupler_x or UNKNOWN,
        coupler_height=trailer.coupler_height or UNKNOWN,
        axles=tuple(Axle(x, rated[i] if i < len(rated) else None) for i, x in enumerate(axles.x)),
        running_gear=running_gear(axles.kind, len(axles.x)),
        axle_rate=axles.rate or UNKNOWN,
        track=axles.track if axles.track is not None and axles.track.known else _track(trailer, tyre),
        wheel_radius=_wheel_radius(tyre),
        jack_x=trailer.jack.x or UNKNOWN,
        legs_x=trailer.legs.x,
    )


def _best(band: Band | None) -> float | None:
    return band.best if band is not None and band.known else None


def running_gear(kind: str, axle_count: int) -> Literal["single", "equalised", "independent"]:
    """Return how the axles share the load, from the words of their kind.

    Several axles of an unknown kind are taken as independent: they share worst when the coupler is not level.
    """
    if axle_count < 2:
        return "single"
    words = kind.lower()
    if any(word in words for word in ("torsion", "independent", "rubber")):
        return "independent"
    return "equalised" if any(word in words for word in ("leaf", "equali", "spring")) else "independent"


def _track(trailer: Trailer, tyre: Tyre | None) -> Band:
    """Return the track as an interval: the tyres stand beside the box, under fenders, as far as widths allow."""
    body, over = _best(trailer.outside.width), _best(trailer.outside.over_fenders)
    widest = over if over is not None else body
    if widest is None:
        return UNKNOWN
    section = Band(tyre.section, tyre.section, tyre.section) if tyre else ASSUMED["tyre_section"]
    beyond = ASSUMED["fender_beyond_tyre"]
    high = widest - section.low - 2.0 * beyond.low
    low = widest - section.high - 2.0 * beyond.high
    beside = None if body is None else body + section.low
    if beside is not None and beside <= high:
        low = max(low, beside)
    return Band((low + high) / 2.0, low, high, spread="interval", assumed=True)


def _wheel_radius(tyre: Tyre | None) -> Band:
    """Return the height of the wheel's middle over the ground."""
    if tyre is None:
        return UNKNOWN
    radius, share = method.tyre_diameter(*tyre) / 2.0, ASSUMED["loaded_radius"]
    return Band(radius * share.best, radius * share.low, radius * share.high, spread="interval", assumed=True)
