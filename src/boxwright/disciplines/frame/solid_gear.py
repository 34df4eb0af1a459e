"""What carries the box: wheels, axles and the drawbar, as far as their places are known."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, isfinite

from boxwright.disciplines.frame.solid_plane import Plane
from boxwright.drawing.solid import Prism, Solid, crossed, disc, oblong
from boxwright.exchange import Box

TYRE = 0.2
"""How wide (m) a tyre is drawn: sizes are read for the radius only."""
RIM = 0.6
"""The rim as a share of the tyre, as drawn."""
BEAM = (0.05, 0.075)
"""How wide and how deep (m) axles and drawbar are drawn: nobody writes it."""
CORNERS = 40
SHOULDER = 0.8
"""Where the drawbar meets the front, as a share of half the width."""
AS_USUAL = "nobody wrote its section; drawn as is usual"
NO_WIDTH = "nobody measured how wide the tyre is; drawn 0.2 m"


def gear_solids(box: Box, floor: Plane, under: float) -> Iterator[Solid]:
    """Yield wheels, axles and drawbar. ``under`` is how far below the deck the floor frame reaches (m)."""
    if not box.deck_height.known:
        return
    ground = -box.deck_height.best
    radius, track = box.wheel_radius, box.track
    for number, axle in enumerate(box.axles):
        if not (axle.x.known and radius.known and isfinite(radius.best) and isfinite(axle.x.best)):
            continue
        of, at, middle = f"trailer.axles.x[{number}]", axle.x.best, ground + radius.best
        half = track.best / 2.0 if track.known else floor.half
        beam = oblong((at - BEAM[0] / 2.0, middle - BEAM[0] / 2.0), (at + BEAM[0] / 2.0, middle + BEAM[0] / 2.0))
        yield Solid(of, f"axle {number + 1}", "metal", (_across(beam, -half, half),), taken=AS_USUAL)
        tyre, rim = (disc((at, middle), radius.best * share, CORNERS) for share in (1.0, RIM))
        ends = [(side - TYRE / 2.0, side + TYRE / 2.0) for side in (-half, half)]
        tyres = tuple(_across(tyre, low, high, rim) for low, high in ends)
        rims = tuple(_across(rim, low + TYRE / 4.0, high - TYRE / 4.0) for low, high in ends)
        yield Solid(of, f"tyres {number + 1}", "gear", tyres, taken=NO_WIDTH)
        yield Solid(of, f"rims {number + 1}", "metal", rims, taken=NO_WIDTH)
    if box.coupler_x.known and isfinite(box.coupler_x.best):
        yield _drawbar(box, floor, under)


def _across(
    outline: tuple[tuple[float, float], ...], low: float, high: float, *holes: tuple[tuple[float, float], ...]
) -> Prism:
    """Return an outline of x and z drawn out from left to right."""
    # x and z span a plane whose third way is to the left, so it is drawn out from the right end
    return Prism((0.0, high, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), outline, high - low, holes)


def _drawbar(box: Box, floor: Plane, under: float) -> Solid:
    """Return the two rails of the drawbar from the ball to under the front of the floor."""
    ball, start = box.coupler_x.best, box.front_x
    pieces = []
    for sign in (-1.0, 1.0):
        side = sign * floor.half * SHOULDER
        length = hypot(start - ball, side)
        way = ((start - ball) / length, side / length, 0.0)
        up = (0.0, 0.0, 1.0)
        square = crossed(way, up)
        section = oblong((-BEAM[0] / 2.0, -BEAM[1] - under), (BEAM[0] / 2.0, -under))
        # square x up runs along the way or against it
        ahead = crossed(square, up)
        is_along = ahead[0] * way[0] + ahead[1] * way[1] > 0.0
        origin = (ball, 0.0, 0.0) if is_along else (start, side, 0.0)
        pieces.append(Prism(origin, square, up, section, length))
    return Solid("trailer.coupler_x", "drawbar", "metal", tuple(pieces), taken=AS_USUAL)
