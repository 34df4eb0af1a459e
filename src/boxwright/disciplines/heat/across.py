"""A plane of the box cut across one of its members: what lies where, as rectangles, and what the hand rules make of it.

Half a bay is enough: the middle of the member and the middle of the bay are lines of symmetry.
"""

from __future__ import annotations

from itertools import pairwise

from boxwright.disciplines.heat import method
from boxwright.records import dataclass

HOLLOW = 0.0562
"""Conductivity of the still air in a metal tube (W/mK), radiation counted in: of no weight beside its metal."""
BESIDE_OPEN = 0.25
"""Conductivity put beside a strip that no lining covers (W/mK): next to nothing, for the room's air is there."""
SAME = 1e-7
"""Metres below which nothing is left of a layer."""
Layer = tuple[float, float]
"""Thickness (m) and conductivity (W/mK)."""


@dataclass(frozen=True, slots=True)
class Across:
    """A section from outside inwards, in m and W/mK; films in m2K/W.

    ``filling`` lies between the members from the skin on; what it leaves of their depth is ``gap`` (m2K/W), the still
    air there; 0 where nothing covers it and the room's air stands in it. ``over`` covers the members only, ``inner``
    everything. ``sheet`` is the wall of the member's tube, ``metal`` what that conducts; ``is_solid`` that it is filled
    with it, as timber is.
    """

    face: float
    depth: float
    sheet: float
    metal: float
    spacing: float
    skin: Layer
    filling: tuple[Layer, ...]
    gap: float
    over: tuple[Layer, ...]
    inner: tuple[Layer, ...]
    outside_film: float
    inside_film: float
    is_solid: bool = False

    @property
    def films(self) -> float:
        """Return the films of both faces together."""
        return self.outside_film + self.inside_film

    @property
    def left_of_depth(self) -> float:
        """Return how deep the bay is that nothing fills (m)."""
        return max(self.depth - sum(thick for thick, _ in self.filling), 0.0)


@dataclass(frozen=True, slots=True)
class Laid:
    """A section as rectangles: widths from the middle of the member, depths from outside, a row for each depth."""

    widths: tuple[float, ...]
    depths: tuple[float, ...]
    rows: tuple[tuple[float, ...], ...]


@dataclass(frozen=True, slots=True)
class ByHand:
    """The transmittance of a section by each rule of the hand (W/m2K)."""

    parallel: float
    planes: float
    combined: float
    zone: float


def resistance(layers: tuple[Layer, ...]) -> float:
    """Return what layers on each other resist (m2K/W)."""
    return sum(thick / through for thick, through in layers)


def bay_layers(across: Across) -> tuple[Layer, ...]:
    """Return the layers in the middle of a bay, from outside inwards."""
    left = across.left_of_depth
    gap = ((left, left / across.gap),) if left > SAME and across.gap > 0.0 else ()
    beside = tuple((thick, _beside(thick)) for thick, _ in across.over) if across.inner else ()
    return (across.skin, *across.filling, *gap, *beside, *across.inner)


def between_members(across: Across) -> float:
    """Return the transmittance in the middle of a bay, where no member is near (W/m2K)."""
    layers = bay_layers(across)
    return method.layers_transmittance(
        tuple(thick for thick, _ in layers), tuple(through for _, through in layers), across.films
    )


def at_member(across: Across) -> float:
    """Return the transmittance through the middle of a solid member, heat going straight through (W/m2K)."""
    layers = (across.skin, (across.depth, across.metal), *across.over, *across.inner)
    return method.layers_transmittance(
        tuple(thick for thick, _ in layers), tuple(through for _, through in layers), across.films
    )


def laid_out(across: Across) -> Laid:
    """Return a section as rectangles."""
    half, bay = across.face / 2.0, across.spacing / 2.0 - across.face / 2.0
    sheet = half if across.is_solid else min(across.sheet, half * 0.9, across.depth * 0.45)
    hollow = half - sheet
    widths = (hollow, sheet, bay) if hollow > SAME else (half, bay)
    columns = len(widths) - 1
    depths, rows = [across.skin[0]], [(across.skin[1],) * len(widths)]
    for thick, through, is_metal in _bands_of_depth(across, sheet):
        core = across.metal if is_metal else HOLLOW
        member = (core, across.metal) if columns > 1 else (across.metal,)
        depths.append(thick)
        rows.append((*member, through))
    for thick, through in across.over:
        depths.append(thick)
        rows.append((*(through,) * columns, _beside(thick) if across.inner else BESIDE_OPEN))
    for thick, through in across.inner:
        depths.append(thick)
        rows.append((through,) * len(widths))
    return Laid(widths, tuple(depths), tuple(rows))


def by_hand(across: Across) -> ByHand:
    """Return the transmittance of a section by each rule of the hand."""
    laid, films = laid_out(across), across.films
    given = (laid.widths, laid.depths, laid.rows, films)
    low, high = method.parallel_path(*given), method.even_planes(*given)
    half = across.face / 2.0
    cover = max(sum(thick for thick, _ in (*across.over, *across.inner)), across.skin[0])
    zone = min(max(method.zone_width(across.face, cover) / 2.0, half), sum(laid.widths) * 0.999)
    return ByHand(low, high, method.mean_of_bounds(low, high), method.zone_method(zone, *given))


def _beside(thick: float) -> float:
    """Return what the still air beside a strip conducts (W/mK)."""
    return thick / method.air_layer_resistance(method.still_air_convection(thick), 0.9, 0.9)


def _bands_of_depth(across: Across, sheet: float) -> list[tuple[float, float, bool]]:
    """Return the depth of the member cut into bands: thickness, what the bay conducts there, whether a flange is."""
    left = across.left_of_depth
    filled = list(across.filling)
    if left > SAME:
        filled.append((left, left / across.gap if across.gap > 0.0 else BESIDE_OPEN))
    edges, deep = [0.0], 0.0
    for thick, _ in filled:
        deep = min(deep + thick, across.depth)
        edges.append(deep)
    lines = sorted({0.0, sheet, across.depth - sheet, across.depth, *edges[1:]})
    bands: list[tuple[float, float, bool]] = []
    for low, high in pairwise(lines):
        if high - low <= SAME:
            continue
        middle = (low + high) / 2.0
        at = next((place for place, edge in enumerate(edges[1:]) if middle < edge), len(filled) - 1)
        bands.append((high - low, filled[at][1], middle < sheet or middle > across.depth - sheet))
    return bands
