"""Sections across a metal member, worked out once as fields of temperature and read between (`tables/sections.json`).

Between two members a bay loses what its layers let through, whatever the spacing. What a member adds is one number for
each metre of it: that is what is stored, and how hard heat leaves the inside face where it is coldest. Both vary much
from section to section, so what is stored, and read between along straight lines, is how far off a rough estimate is.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import accumulate
from math import exp, hypot, log, sqrt
from operator import mul
from typing import NamedTuple

from boxwright.disciplines.heat.across import HOLLOW, SAME, Across, Layer, between_members, resistance
from boxwright.source import Gridded, load_gridded

AXES = ("gap", "web", "depth", "face", "filling", "over", "inner", "film", "skin")
"""What a stored section is found by.

``gap`` is the share of the members' depth that its filling leaves to air; web and skin are conductivity times thickness
(W/K), depth and face m, filling W/mK, over, inner and film m2K/W.
"""
OUTSIDE_FILM = 0.04
MOST_SKIN, FILM_OUTSIDE_WITHIN = 0.02, 0.021
"""A skin that resists more (m2K/W), or a film outside that far from the stored one, is not in the table."""
LEAST_SKIN = 0.0004
"""A skin that leads less heat aside (W/K) leads none."""
MOST_GAP, LEAST_INNER = 0.6, 0.02
"""A larger share of air leads no more heat aside; a lining over all resists as much at least (m2K/W)."""
MOST_FILLING_BARE = 0.06
"""W/mK: without anything over all, only bays that are filled so well are stored; see `read_as`."""
SHIFT = {"gap": 2.0, "over": 0.1, "inner": 0.1}
"""What is added before the logarithm of a coordinate that may be nothing."""
ASIDE = 0.03
"""How much wider than the member the strip is that is stored (m): so that more than nothing passes always."""
STORED_AS = 1e4


class Held(NamedTuple):
    """What a member adds to a plane.

    ``through`` is the heat through a strip of the plane that is ``ASIDE`` wider than the member, for each metre of it
    and each degree (W/mK), what it draws in from both sides counted in; ``flux`` the heat that the coldest place of
    the inside face takes from the room, for each degree between room and outside (W/m2K).
    """

    through: float
    flux: float


class Table(NamedTuple):
    """The stored sections: the coordinates of each axis, and the values with the last axis running fastest."""

    grid: tuple[tuple[float, ...], ...]
    through: tuple[int, ...]
    flux: tuple[int, ...]
    off: tuple[float, float]


def table_of(stored: Gridded) -> Table:
    """Return the stored sections of a grid."""
    off = dict(stored.off)
    if stored.axes != AXES:
        raise ValueError(f"the stored sections have the axes {stored.axes}")
    return Table(stored.grid, stored.column("through"), stored.column("flux"), (off["transmittance"], off["flux"]))


def coordinates(across: Across) -> tuple[float, ...]:
    """Return where a section lies on the axes of the table."""
    filled = sum(thick / through for thick, through in across.filling)
    left = across.left_of_depth
    stands = filled + (across.gap if left > 0.0 else 0.0)
    return (
        min(left / across.depth, MOST_GAP) if across.filling else 0.0,
        across.sheet * across.metal,
        across.depth,
        across.face,
        across.depth / stands if stands > 0.0 else 10.0,
        resistance(across.over),
        resistance(across.inner),
        across.inside_film,
        max(across.skin[0] * across.skin[1], LEAST_SKIN),
    )


def estimate(place: tuple[float, ...]) -> Held:
    """Return roughly what a member adds: skin, web, and what covers it as three resistances in a row."""
    _, web, depth, face, filling, over, inner, film, skin = place
    outside = 1.0 / OUTSIDE_FILM
    wide = face + 2.0 * (min(inner, 0.053) * 0.12 + max(inner - 0.053, 0.0) * 0.029) + 0.005
    rows = (
        face * outside + 2.0 * sqrt(skin * outside),
        2.0 * web / depth + HOLLOW * face / depth,
        wide / (over + inner + film),
    )
    member = 1.0 / sum(1.0 / one for one in rows)
    bay = 1.0 / (OUTSIDE_FILM + film + depth / filling + inner + 0.5 * over)
    return Held(member + bay * (0.5 * face + ASIDE), hypot(member / wide, bay))


def read_as(across: Across, table: Table) -> Across:
    """Return the section that is looked up for one: what lies over it as thick as any stored, if it is thicker still.

    Its member is then counted as one that lets a little more through than it does. A bare bay that is filled worse than
    any stored is read as the worst.
    """
    most = dict(zip(AXES, (grid[-1] for grid in table.grid), strict=True))
    found = replace(across, over=_thinned(across.over, most["over"]), inner=_thinned(across.inner, most["inner"]))
    filled = resistance(across.filling)
    if across.inner or filled <= 0.0 or across.depth / filled <= MOST_FILLING_BARE:
        return found
    thick = sum(thick for thick, _ in across.filling)
    return replace(found, filling=((thick, thick * MOST_FILLING_BARE / across.depth),), gap=0.0)


def _thinned(layers: tuple[Layer, ...], most: float) -> tuple[Layer, ...]:
    """Return layers that resist no more than the most, all thinner by the same share."""
    resists = resistance(layers)
    if resists <= most:
        return layers
    return tuple((thick * most / resists, through) for thick, through in layers)


def is_stored(across: Across, table: Table) -> bool:
    """Return whether a section lies within the table."""
    if across.is_solid or resistance((across.skin,)) > MOST_SKIN:
        return False
    if abs(across.outside_film - OUTSIDE_FILM) > FILM_OUTSIDE_WITHIN:
        return False
    place = coordinates(across)
    if not across.inner and place[AXES.index("filling")] > MOST_FILLING_BARE + SAME:
        return False
    if across.inner and place[AXES.index("inner")] < LEAST_INNER:
        return False
    return all(grid[0] - 1e-9 <= one <= grid[-1] + 1e-9 for one, grid in zip(place, table.grid, strict=True))


def look_up(across: Across, table: Table) -> Held:
    """Return what a member adds, read between the stored sections around it; ask ``is_stored`` first."""
    place = coordinates(across)
    corners = [0]
    shares: list[float] = []
    steps = list(accumulate((len(grid) for grid in reversed(table.grid)), mul, initial=1))[-2::-1]
    for axis, one, grid, step in zip(AXES, place, table.grid, steps, strict=True):
        low, share = _between(axis, one, grid)
        if share <= 0.0:
            corners = [corner + low * step for corner in corners]
            continue
        corners = [corner + at * step for corner in corners for at in (low, low + 1)]
        shares.append(share)
    rough = estimate(place)
    values = (_mixed([column[corner] for corner in corners], shares) for column in (table.through, table.flux))
    through, flux = (exp(value / STORED_AS) for value in values)
    return Held(rough.through * through, rough.flux * flux)


def transmittance(across: Across, held: Held) -> float:
    """Return the transmittance of a plane with its members (W/m2K)."""
    bay = between_members(across)
    return bay + (held.through - bay * (across.face + ASIDE)) / across.spacing


def scaled(axis: str, value: float) -> float:
    """Return a coordinate as it is read between: by its logarithm."""
    return log(value + SHIFT.get(axis, 0.0))


def _between(axis: str, value: float, grid: tuple[float, ...]) -> tuple[int, float]:
    """Return the place of the coordinate below a value and how far the value lies towards the next."""
    value = min(max(value, grid[0]), grid[-1])
    low = max(place for place, one in enumerate(grid) if one <= value)
    if low == len(grid) - 1:
        return low, 0.0
    start, end = scaled(axis, grid[low]), scaled(axis, grid[low + 1])
    return low, (scaled(axis, value) - start) / (end - start)


def _mixed(values: list[int], shares: list[float]) -> float:
    """Return the values of corners mixed along one axis after the other, the last one first."""
    mixed = [float(one) for one in values]
    for share in reversed(shares):
        mixed = [low + (high - low) * share for low, high in zip(mixed[::2], mixed[1::2], strict=True)]
    return mixed[0]


TABLE = table_of(load_gridded("boxwright.disciplines.heat", "sections"))
