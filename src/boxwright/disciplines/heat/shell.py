"""The shell of the room as it stands: what each plane, edge and hole of it loses, holds and takes from the sun."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Literal

from boxwright.disciplines.heat.as_built import Unsaid, unsaid_of
from boxwright.disciplines.heat.coating import COAT_UNSAID, Coat, coat_of, sky_share
from boxwright.disciplines.heat.cold import edge_places, hole_place, named, places_of, scaled
from boxwright.disciplines.heat.holes import filled
from boxwright.disciplines.heat.material import columns, interval, read_material
from boxwright.disciplines.heat.plane import AIR_FILM, AIR_FILMS, EDGE, Planed, house_film, plane_of
from boxwright.exchange import ColdPlace, Layup, LayupLayer, Opening, Vector
from boxwright.records import dataclass
from boxwright.units import Band, exactly

FURNISHING = interval(*columns("furnishing")["on a floor"])
NOTHING = exactly(0.0)
What = Literal["plane", "edge", "hole"]


@dataclass(frozen=True, slots=True)
class Face:
    """One face of the room. Areas in m2, transmittances in W/m2K, ``loss`` and ``members`` in W/K.

    ``transmittance`` has the films of a house, for comparison; ``by_air`` that of the air alone, which holds where all
    faces are cold. ``loss`` is by the first; ``members`` is what of it the members add to the bays. From its mass on,
    ``inward`` is what lies between mass and room's air, film of the air counted in (m2K/W). ``capacity`` is what its
    inside holds (J/K). ``how`` says what it was worked out by, ``as_written`` where the rig says it. ``planed`` is what
    its transmittance rests on.
    """

    of: str
    name: str
    what: What
    wall: str
    area: Band
    transmittance: Band
    by_air: Band
    loss: Band
    members: Band
    inward: float
    capacity: Band
    outward: Vector
    coat: Coat
    sky: float
    is_window: bool
    how: str
    planed: Planed | None
    places: tuple[ColdPlace, ...]


@dataclass(frozen=True, slots=True)
class Shell:
    """All faces of the room. ``loss`` and ``members`` are W/K, ``capacity`` and ``furnishing`` J/K.

    ``members`` is what studs, bows and edges add to it. ``unsaid`` is what nobody knows of its layers. Doubts of faces
    are added end to end: materials that are worse than thought are so everywhere.
    """

    faces: tuple[Face, ...]
    loss: Band
    by_air: Band
    members: Band
    capacity: Band
    furnishing: Band
    unsaid: tuple[Unsaid, ...]

    @property
    def places(self) -> tuple[ColdPlace, ...]:
        """Return every cold place of the room."""
        return tuple(place for face in self.faces for place in face.places)


@lru_cache(maxsize=32)
def shell_of(layups: tuple[Layup, ...], openings: tuple[Opening, ...]) -> Shell:
    """Return the shell of the room as it stands."""
    faces = [face for layup in layups for face in _of_plane(layup)]
    by_wall = {one.wall: one for one in layups if not one.bay}
    faces += [_of_hole(one, by_wall.get(one.wall)) for one in openings]
    loose = dict.fromkeys(one for layup in layups for one in unsaid_of(layup))
    floor = summed([one.area for one in layups if one.wall == "floor"])
    return Shell(
        faces=tuple(faces),
        loss=summed([one.loss for one in faces]),
        by_air=summed([times(one.by_air, one.area) for one in faces]),
        members=summed([one.members for one in faces]),
        capacity=summed([one.capacity for one in faces]),
        furnishing=times(FURNISHING, floor),
        unsaid=tuple(loose),
    )


def by_members(face: Face) -> Band:
    """Return what the members of a face add to its loss by the film of the air alone (W/K)."""
    if face.what == "edge":
        return times(face.by_air, face.area)
    if face.planed is None:
        return NOTHING
    return times(_above_nothing(face.planed.member_by_air), times(face.area, face.planed.density))


def bare_faces(shell: Shell) -> tuple[Face, ...]:
    """Return the faces whose skin stands bare: their studs or bows lose heat as fins of it, and are counted with it.

    One with a layer that only counts as nothing, for nobody wrote how thick or of what it is, is none of them.
    """
    return tuple(
        one for one in shell.faces
        if one.planed is not None and one.planed.how == "bare" and not _has_unsaid_layer(one, shell)
    )  # fmt: skip


def _has_unsaid_layer(face: Face, shell: Shell) -> bool:
    walls = tuple(f"walls[{wall}]." for wall in ("all", face.wall))
    return any(one.of.startswith(walls) or one.of.startswith(f"{face.of}.") for one in shell.unsaid)


def times(one: Band, other: Band) -> Band:
    """Return the product of two numbers that are not below nothing, end by end."""
    ends = ((one.best, other.best), (one.low, other.low), (one.high, other.high))
    best, low, high = (left * right if left and right else 0.0 for left, right in ends)
    is_sure = one.spread == other.spread == "exact"
    return Band(
        best,
        low,
        high,
        one.known and other.known,
        "exact" if is_sure else "interval",
        one.assumed or other.assumed,
    )


def summed(bands: list[Band]) -> Band:
    """Return a sum, ends added to ends."""
    return Band(
        sum(one.best for one in bands),
        sum(one.low for one in bands),
        sum(one.high for one in bands),
        all(one.known for one in bands),
        "interval" if any(one.spread != "exact" for one in bands) else "exact",
        any(one.assumed for one in bands),
    )


def _of_plane(layup: Layup) -> list[Face]:
    planed = plane_of(layup)
    coat, sky = coat_of(layup), sky_share(layup.outward)
    name, area, edge = named(layup), layup.area, layup.edge
    lining, holds = _lining(layup)
    member = _above_nothing(planed.member)
    whole = Face(
        of=layup.of,
        name=name,
        what="plane",
        wall=layup.wall,
        area=area,
        transmittance=planed.transmittance,
        by_air=planed.by_air,
        loss=times(planed.transmittance, area),
        members=times(member, times(area, planed.density)),
        inward=AIR_FILM + lining / 2.0,
        capacity=times(holds, area),
        outward=layup.outward,
        coat=coat,
        sky=sky,
        is_window=False,
        how=planed.how,
        planed=planed,
        places=places_of(layup, planed),
    )
    if not edge.known or edge.best <= 0.0 or planed.how in ("layers", "bare"):
        return [whole]
    per_metre = Band(member.best * EDGE[0], member.low * EDGE[1], member.high * EDGE[2], member.known, "interval", True)
    strip = scaled(edge, planed.across.face)
    flat = scaled(per_metre, 1.0 / planed.across.face)
    loss = times(per_metre, edge)
    return [
        whole,
        replace(
            whole,
            name=f"edges of the {name}",
            what="edge",
            area=strip,
            transmittance=flat,
            by_air=flat,
            loss=loss,
            members=loss,
            inward=AIR_FILM,
            capacity=NOTHING,
            how="edge",
            places=edge_places(layup, planed, strip),
        ),
    ]


def _of_hole(opening: Opening, layup: Layup | None) -> Face:
    unit = filled(opening)
    through = unit.transmittance
    coat = coat_of(layup) if layup is not None else COAT_UNSAID
    return Face(
        of=opening.of,
        name=opening.name,
        what="hole",
        wall=opening.wall,
        area=opening.area,
        transmittance=through,
        by_air=_by_air(through, house_film(opening.wall)),
        loss=times(through, opening.area),
        members=NOTHING,
        inward=AIR_FILM,
        capacity=NOTHING,
        outward=opening.outward,
        coat=coat,
        sky=sky_share(opening.outward),
        is_window=unit.kind == "window",
        how="as written" if unit.is_written else unit.kind,
        planed=None,
        places=(hole_place(opening, unit),),
    )


def _by_air(through: Band, film: float) -> Band:
    """Return a transmittance with the film of the air alone in the place of a house's."""
    ends = ((through.best, AIR_FILMS["best"]), (through.low, AIR_FILMS["low"]), (through.high, AIR_FILMS["high"]))
    best, low, high = (1.0 / (1.0 / one + air - film) for one, air in ends)
    return Band(best, low, high, through.known, through.spread, through.assumed)


def _above_nothing(band: Band) -> Band:
    best, low, high = (max(one, 0.0) for one in (band.best, band.low, band.high))
    return Band(best, low, high, band.known, band.spread, band.assumed)


def _lining(layup: Layup) -> tuple[float, Band]:
    """Return what the linings on the room side of the foam resist (m2K/W), and what a square metre of them holds."""
    resists, best, low, high = 0.0, 0.0, 0.0, 0.0
    layers = [one for one in layup.layers if one.where == "all"]
    if layup.wall == "floor" and layup.skin is not None and layup.skin.known:
        layers.insert(0, LayupLayer(layup.of, "ply", layup.skin_of, layup.skin, "all", True))
    for one in reversed(layers):
        made = read_material(one.material, one.name)
        if made is None or one.thick is None or not one.thick.known or one.thick.low < 0.0:
            continue
        if made.kind in ("foam", "wool", "air"):
            break
        holds = made.density * made.capacity
        share = 1.0 if one.is_certain else 0.0
        resists += one.thick.best / made.conductivity.best
        best += holds * one.thick.best * (1.0 + share) / 2.0
        low += holds * one.thick.low * share
        high += holds * one.thick.high
    return resists, Band(best, low, high, spread="interval", assumed=True)
