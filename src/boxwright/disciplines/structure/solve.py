"""What structure offers: where hinges and screws bite. It works out nothing yet."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from boxwright.disciplines.structure.parts import Fastened, Hinge, Screws
from boxwright.exchange import Fixing, Vector
from boxwright.model.place import Place
from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Offers:
    """Every hinge and every set of screws of the plan."""

    fixings: tuple[Fixing, ...]


@dataclass(frozen=True, slots=True)
class Result:
    """What structure has worked out: nothing yet."""


def offers(fastened: tuple[Fastened, ...]) -> Offers:
    """Return where the hinges and screws of the plan bite."""
    return Offers(tuple(fixing for one in fastened for fixing in _fixings(one)))


def _fixings(one: Fastened) -> Iterator[Fixing]:
    """Yield a part's hinge and its screws; screws without places of their own beside a hinge are the hinge's."""
    hinge, screws = one.facet.hinge, one.facet.screws
    if hinge is not None:
        yield _fixing(one, hinge, screws)
    if screws is not None and (hinge is None or screws.at):
        yield _fixing(one, None, screws)


def _fixing(one: Fastened, hinge: Hinge | None, screws: Screws | None) -> Fixing:
    places = hinge.at if hinge is not None else screws.at if screws is not None else ()
    low, high = _corners(one.place)
    return Fixing(
        of=one.of,
        part=one.name,
        what="hinge" if hinge is not None else "screws",
        wall=hinge.edge if hinge is not None else one.wall,
        points=tuple(place.best for place in places if place.known),
        count=screws.count if screws is not None else None,
        shank=screws.size if screws is not None else None,
        length=screws.length if screws is not None else None,
        into=screws.into if screws is not None else "",
        low=low,
        high=high,
        doubts=tuple(max(place.high - place.best, place.best - place.low) for place in places if place.known),
    )


def _corners(place: Place) -> tuple[Vector, Vector]:
    """Return the two corners of a part, infinitely far apart along an axis where its place is not known."""
    ends = [
        (band.best - size / 2.0, band.best + size / 2.0) if band.known else (-inf, inf)
        for band, size in zip((place.x, place.y, place.z), place.size, strict=True)
    ]
    (x0, x1), (y0, y1), (z0, z1) = ends
    return (x0, y0, z0), (x1, y1, z1)


def solve() -> Result:
    """Return what structure has worked out."""
    return Result()
