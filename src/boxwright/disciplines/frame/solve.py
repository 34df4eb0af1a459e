"""What the frame offers and works out: masses of layers and units, the trailer on wheels, and the frame of one slot."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.frame.box import box_of, inside_of
from boxwright.disciplines.frame.fastening import reach_of, there_in
from boxwright.disciplines.frame.holes import in_slot
from boxwright.disciplines.frame.layering import buildups_of
from boxwright.disciplines.frame.lining import UNKNOWN_MASS, layer_masses, surfaces, there
from boxwright.disciplines.frame.parts import Framing, Opening, Section, StandingLayer, StandingOpening
from boxwright.disciplines.frame.recessed import in_slot as recessed_in
from boxwright.disciplines.frame.result import Buildup, Fastening, Result, Wall
from boxwright.disciplines.frame.shell import Shell, shell
from boxwright.exchange import Box, Mass
from boxwright.model.trailer import Trailer
from boxwright.records import dataclass

__all__ = ["Offers", "Result", "offers", "shell", "solve", "surfaces"]


@dataclass(frozen=True, slots=True)
class Offers:
    """The masses of layers and opening units, and the trailer's measures."""

    masses: tuple[Mass, ...]
    box: Box


def offers(
    layers: tuple[StandingLayer, ...],
    openings: tuple[StandingOpening, ...],
    trailer: Trailer,
    framing: Framing | None = None,
) -> Offers:
    """Return the masses of what stands of walls and openings, and the trailer as a body on wheels."""
    masses = layer_masses(layers, inside_of(trailer), framing, openings)
    units = tuple(_unit_mass(standing) for standing in openings if _is_weighed(standing.opening))
    return Offers(masses + units, box_of(trailer))


def _is_weighed(opening: Opening) -> bool:
    """Return whether a unit adds to the trailer: one of the builder of which no weight is written is in its own."""
    return opening.unit is not None and (opening.unit.weight is not None or "builder" not in opening.by.lower())


def _unit_mass(standing: StandingOpening) -> Mass:
    """Return the mass of the unit in an opening, at the opening's place."""
    unit, place = standing.opening.unit, standing.place
    kg = unit.weight if unit is not None and unit.weight is not None else UNKNOWN_MASS
    return Mass(standing.of, "dry", "", there(kg, standing.share), place.x, place.y, place.z, place.size)


def solve(
    bare: Shell,
    section: Section,
    layers: tuple[StandingLayer, ...],
    openings: tuple[StandingOpening, ...],
    standing: tuple[tuple[str, str], ...],
) -> Result:
    """Return the frame as it is in one slot.

    ``bare`` is the shell of ``section``; ``layers`` and ``openings`` are those that stand; ``standing`` pairs the path
    of each backing and each screwed part that stands with "yes" or "perhaps".
    """
    buildups = buildups_of(section.layers, layers, bare.walls, bare.depths)
    shares = {one.of: one.share for one in openings}
    words = {one.of: one.opening for one in section.openings}
    return Result(
        of="frame",
        walls=bare.walls,
        members=bare.members,
        bays=bare.bays,
        roof=bare.roof,
        nose=bare.nose,
        intrusions=bare.intrusions,
        buildups=buildups,
        holes=tuple(in_slot(one, words[one.of], shares.get(one.of), buildups, bare.bays) for one in bare.holes),
        backings=tuple(replace(one, there=there_in(one.of, standing)) for one in bare.backings),
        fastenings=tuple(_in_slot(one, bare, buildups, standing) for one in bare.fastenings),
        faults=bare.faults,
        sized=bare.sized,
        unplaced=bare.unplaced,
        recesses=tuple(
            recessed_in(one, _wall(bare, one.wall), buildups, bare.bays, there_in(one.of, standing))
            for one in bare.recesses
        ),
        runs=section.runs,
        unrouted=section.unrouted,
        crossings=bare.crossings,
        stuck=bare.stuck,
    )


def _wall(bare: Shell, name: str) -> Wall:
    return next(wall for wall in bare.walls if wall.name == name)


def _in_slot(
    one: Fastening, bare: Shell, buildups: tuple[Buildup, ...], standing: tuple[tuple[str, str], ...]
) -> Fastening:
    wall = _wall(bare, one.wall)
    depth = bare.depths[bare.walls.index(wall)]
    written = next((length for of, what, length in bare.screws if (of, what) == (one.of, one.what)), None)
    return replace(one, reach=reach_of(one, written, wall, buildups, depth), there=there_in(one.of, standing))
