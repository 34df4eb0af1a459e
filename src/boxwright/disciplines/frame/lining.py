"""The lined inside of the box: where its finished planes are, what its layers weigh and where that weight sits."""

from __future__ import annotations

import re
from dataclasses import replace
from math import fsum, inf, isfinite
from typing import Literal

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.parts import Framing, Layer, StandingLayer, StandingOpening
from boxwright.disciplines.frame.sourced import density_of
from boxwright.exchange import Mass, Vector
from boxwright.model.place import ANYWHERE, Surfaces
from boxwright.records import dataclass
from boxwright.units import Band, exactly

UNKNOWN_MASS = Band(0.0, 0.0, inf, known=False)
_BAY = re.compile(r"bay\s+(left|right)\s+(\d{1,3})\s*-\s*(\d{1,3})")
UPRIGHT = ("left", "right", "front", "rear")
NEAR = 0.15
"""How far (m) from a wall's stud face an opening of it may be written: walls are thinner; common practice."""


@dataclass(frozen=True, slots=True)
class Plate:
    """A flat piece of wall, ceiling or floor: its area (m2), its middle and its size (m)."""

    area: float
    middle: Vector
    size: Vector


def surfaces(
    body_length: float,
    body_width: float,
    body_height: float,
    walls: tuple[tuple[str, Layer], ...],
    framing: Framing | None = None,
) -> Surfaces:
    """Return the planes of the inside as it will be finished, from every planned layer with the wall it is on.

    A layer takes room from its wall unless it lies between studs or bows, where only what is thicker than they are
    deep stands out. ``all`` is the four walls and the ceiling. A bay moves no plane; a layer without a thickness
    neither.
    """

    def built_up(wall: str) -> float:
        row = framing and (framing.bows if wall == "ceiling" and _depth(framing.bows) else framing.studs)
        return _built_up(tuple(layer for name, layer in walls if _is_on(name, wall)), _depth(row))

    half = body_width / 2.0
    return Surfaces(
        front=built_up("front"),
        rear=body_length - built_up("rear"),
        left=-half + built_up("left"),
        right=half - built_up("right"),
        floor=built_up("floor"),
        ceiling=body_height - built_up("ceiling"),
        studs_front=0.0,
        studs_rear=body_length,
        studs_left=-half,
        studs_right=half,
        bows=body_height,
    )


def _is_on(name: str, wall: str) -> bool:
    return name == wall or (name == "roof" and wall == "ceiling") or (name == "all" and wall != "floor")


def _depth(row: object) -> float | None:
    depth = getattr(row, "depth", None)
    return depth.best if isinstance(depth, Band) and depth.known else None


def _built_up(layers: tuple[Layer, ...], depth: float | None) -> float:
    """Return how far the layers of one wall stand into the room."""
    lining = fsum(_thickness(layer) for layer in layers if not layer.between)
    filling = fsum(_thickness(layer) for layer in layers if layer.between)
    return lining + (max(0.0, filling - depth) if depth is not None else 0.0)


def _thickness(layer: Layer) -> float:
    return layer.thick.best if layer.thick is not None and layer.thick.known else 0.0


def layer_masses(
    layers: tuple[StandingLayer, ...],
    body: Vector | None,
    framing: Framing | None,
    openings: tuple[StandingOpening, ...] = (),
) -> tuple[Mass, ...]:
    """Return the masses of the layers that stand; ``body`` is length, width and height from stud face to stud face.

    A bay's layer without a weight is inside the same layer of its wall, where that stands, and adds nothing. A layer
    that was weighed is taken as it was weighed; one that was not has no piece where an opening is.
    """
    found: list[Mass] = []
    for standing in layers:
        bay = _BAY.fullmatch(standing.wall)
        if bay and not _is_weighed(standing.layer) and _covers(layers, bay[1], standing.name):
            continue
        found.append(_layer_mass(standing, body, framing, openings))
    return tuple(found)


def _is_weighed(layer: Layer) -> bool:
    return layer.weight is not None and layer.weight.known


def _covers(layers: tuple[StandingLayer, ...], wall: str, name: str) -> bool:
    return any(one.name == name and _is_on(one.wall, wall) for one in layers)


def _layer_mass(
    standing: StandingLayer, body: Vector | None, framing: Framing | None, openings: tuple[StandingOpening, ...]
) -> Mass:
    plates = _plates(standing.wall, body, framing) if body is not None else ()
    holes = () if _is_weighed(standing.layer) else _cut_from(plates, openings)
    kg, group = _weight(standing.layer, plates, holes, framing)
    cut = tuple(replace(hole, area=hole.area * share.best) for hole, share in holes if share.best)
    if fsum(plate.area for plate in (*plates, *cut)) > 0.0:
        plates += cut
    if not plates:
        return Mass(
            standing.of, "structure", group, there(kg, standing.share), ANYWHERE, ANYWHERE, ANYWHERE, (0.0,) * 3
        )
    whole = as_one(plates)
    x, y, z = (exactly(place) for place in whole.middle)
    return Mass(standing.of, "structure", group, there(kg, standing.share), x, y, z, whole.size)


def there(kg: Band, share: Band) -> Band:
    """Return a mass as it counts: all of it, or anything from nothing to all of it where it stands perhaps.

    An unknown mass stays unknown.
    """
    if share.spread != "perhaps" or not kg.known:
        return kg
    return Band(kg.best * share.best, kg.low * share.low, kg.high * share.high, spread="perhaps", assumed=kg.assumed)


def _weight(
    layer: Layer, plates: tuple[Plate, ...], holes: tuple[tuple[Plate, Band], ...], framing: Framing | None
) -> tuple[Band, str]:
    """Return a layer's mass as weighed, else from area, thickness and stock; and the group of such guesses.

    A hole that is perhaps not cut yet takes away as much as all of it or nothing.
    """
    if layer.weight is not None and layer.weight.known:
        return layer.weight, ""
    density = density_of(layer.of) if layer.of else None
    share = _share_of_area(layer, framing)
    if density is None or share is None or not plates or layer.thick is None or not layer.thick.known:
        return UNKNOWN_MASS, ""
    whole, thick = fsum(plate.area for plate in plates), layer.thick

    def left_of(end: Literal["best", "low", "high"]) -> float:
        return max(0.0, whole + fsum(hole.area * getattr(cut, end) for hole, cut in holes)) * share

    best, low, high = (
        method.plate_mass(area, thickness, of)
        for area, thickness, of in (
            (left_of("best"), thick.best, density.best),
            (left_of("high"), thick.low, density.low),
            (left_of("low"), thick.high, density.high),
        )
    )
    return Band(best, low, high, spread="interval", assumed=True), f"density of {layer.of}"


def _share_of_area(layer: Layer, framing: Framing | None) -> float | None:
    """Return how much of a wall a layer covers: the bays between studs, the studs' faces, or all; None if not known."""
    where = layer.over or layer.between
    if not where:
        return 1.0
    row = framing and (framing.bows if where == "bows" else framing.studs)
    if not row or row.face is None or row.every is None or not row.face.known or not row.every.known:
        return None if layer.over else 1.0
    if not 0.0 < row.face.best < row.every.best:
        return None  # studs as wide as their spacing leave no bay: what is written there is wrong
    faces = row.face.best / row.every.best
    return faces if layer.over else 1.0 - faces


def _plates(wall: str, body: Vector, framing: Framing | None) -> tuple[Plate, ...]:
    """Return the flat pieces a wall's name stands for; none where the name is not known."""
    bay = _BAY.fullmatch(wall)
    if bay:
        return _bay_plates(bay[1], int(bay[2]), int(bay[3]), body, framing)
    names = (*UPRIGHT, "ceiling") if wall == "all" else ("ceiling",) if wall == "roof" else (wall,)
    length, width, height = body
    middle = (length / 2.0, 0.0, height / 2.0)
    known = {
        "left": Plate(length * height, (middle[0], -width / 2.0, middle[2]), (length, 0.0, height)),
        "right": Plate(length * height, (middle[0], width / 2.0, middle[2]), (length, 0.0, height)),
        "front": Plate(width * height, (0.0, 0.0, middle[2]), (0.0, width, height)),
        "rear": Plate(width * height, (length, 0.0, middle[2]), (0.0, width, height)),
        "ceiling": Plate(length * width, (middle[0], 0.0, height), (length, width, 0.0)),
        "floor": Plate(length * width, (middle[0], 0.0, 0.0), (length, width, 0.0)),
    }
    return tuple(known[name] for name in names if name in known)


def _cut_from(plates: tuple[Plate, ...], openings: tuple[StandingOpening, ...]) -> tuple[tuple[Plate, Band], ...]:
    """Return the pieces openings take out of plates, as plates of negative area, with the share that is cut.

    An opening lies flat in the plate whose thin way is its own; only what lies within the plate is taken.
    """
    found = []
    for plate in plates:
        flat = plate.size.index(0.0)
        across = [axis for axis in range(3) if axis != flat]
        for one in openings:
            middle, size = (one.place.x, one.place.y, one.place.z), one.place.size
            is_known = all(at.known and isfinite(at.best) for at in middle) and all(isfinite(span) for span in size)
            if not is_known or size[flat] > min(size) or abs(middle[flat].best - plate.middle[flat]) > NEAR:
                continue
            ends = [
                (
                    max(middle[axis].best - size[axis] / 2.0, plate.middle[axis] - plate.size[axis] / 2.0),
                    min(middle[axis].best + size[axis] / 2.0, plate.middle[axis] + plate.size[axis] / 2.0),
                )
                for axis in across
            ]
            if any(low >= high for low, high in ends):
                continue
            at, spans = list(plate.middle), [0.0, 0.0, 0.0]
            for axis, (low, high) in zip(across, ends, strict=True):
                at[axis], spans[axis] = (low + high) / 2.0, high - low
            hole = Plate(-spans[across[0]] * spans[across[1]], (at[0], at[1], at[2]), (spans[0], spans[1], spans[2]))
            found.append((hole, one.share))
    return tuple(found)


def _bay_plates(side: str, first: int, last: int, body: Vector, framing: Framing | None) -> tuple[Plate, ...]:
    """Return the piece of a side wall between two studs, counted from 0 at the first."""
    studs = framing.studs if framing else None
    if studs is None or studs.every is None or not studs.every.known or last <= first:
        return ()
    start = studs.first.best if studs.first is not None else 0.0
    along = (last - first) * studs.every.best
    middle = start + (first + last) / 2.0 * studs.every.best
    y = body[1] / 2.0 * (-1.0 if side == "left" else 1.0)
    return (Plate(along * body[2], (middle, y, body[2] / 2.0), (along, 0.0, body[2])),)


def as_one(plates: tuple[Plate, ...]) -> Plate:
    """Return several plates of one layer as one body: its middle, and the size of the cuboid of the same own inertia.

    The layer is as heavy per area on each plate. Inertia about any two axes is the sum of the mean squares along them,
    so a cuboid that has the same mean square along each axis has the same inertia about all three.
    """
    area = fsum(plate.area for plate in plates)

    def along(axis: int) -> tuple[float, float]:
        middle = fsum(plate.area * plate.middle[axis] for plate in plates) / area
        squares = fsum(
            plate.area * method.mean_square(plate.size[axis], plate.middle[axis] - middle) for plate in plates
        )
        return middle, method.uniform_length(squares / area)

    (x, length), (y, width), (z, height) = along(0), along(1), along(2)
    return Plate(area, (x, y, z), (length, width, height))
