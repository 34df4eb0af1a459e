"""Each discipline's own settings, built from what the composer read for it."""

from __future__ import annotations

from math import inf
from typing import TypedDict, TypeVar

from boxwright.disciplines import (
    air,
    cutting,
    frame,
    heat,
    layout,
    power,
    safety,
    stages,
    structure,
    towing,
    water,
    weight,
)
from boxwright.disciplines.frame.parts import Framing
from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.disciplines.frame.solve import surfaces
from boxwright.disciplines.heat.parts import ClimateFacet
from boxwright.disciplines.power.parts import Habit, Wire
from boxwright.disciplines.stages.parts import StageFacet
from boxwright.disciplines.structure.parts import Strap
from boxwright.disciplines.towing.parts import PlaceFacet
from boxwright.disciplines.water.parts import Pipe
from boxwright.model.entry import Entry
from boxwright.model.place import Surfaces
from boxwright.model.trailer import Trailer
from boxwright.rig.rig import Item, Layer

E = TypeVar("E", bound=Entry)


class BySection(TypedDict):
    """The settings of every discipline, by its folder."""

    frame: frame.Section
    layout: layout.Section
    structure: structure.Section
    weight: weight.Section
    towing: towing.Section
    heat: heat.Section
    air: air.Section
    power: power.Section
    water: water.Section
    safety: safety.Section
    cutting: cutting.Section
    stages: stages.Section


Named = tuple[tuple[str, Entry], ...]


def inside_of(trailer: Trailer, framing: Framing | None, layers: tuple[Layer, ...]) -> Surfaces:
    """Return the planes a place may be anchored to: the inside as it will be finished, and the frame behind it.

    A plane that hangs on a measure of the body nobody wrote is infinitely far.
    """
    walls = tuple((layer.wall, layer.own) for layer in layers if isinstance(layer.own, LayerWords))
    body = trailer.body
    length, width, height = (
        side.best if side is not None and side.known else inf for side in (body.length, body.width, body.height)
    )
    return surfaces(length, width, height, walls, framing)


def sections_of(
    framing: Framing | None,
    named: dict[str, Named],
    items: dict[str, tuple[Item, ...]],
    facets: tuple[tuple[str, str, Entry], ...],
    places: tuple[tuple[str, Entry], ...],
) -> BySection:
    """Return the settings of every discipline by its folder: what is written, not what stands."""

    def owned(section: str, model: type[E]) -> tuple[tuple[str, E], ...]:
        return tuple((item.name, item.own) for item in items[section] if isinstance(item.own, model))

    def entries(section: str, model: type[E]) -> tuple[tuple[str, E], ...]:
        return tuple((name, entry) for name, entry in named.get(section, ()) if isinstance(entry, model))

    return {
        "frame": frame.Section(framing=framing),
        "layout": layout.Section(),
        "structure": structure.Section(straps=owned("straps", Strap)),
        "weight": weight.Section(),
        "towing": towing.Section(
            fits=tuple((name, one.fits) for name, one in places if isinstance(one, PlaceFacet) and one.fits is not None)
        ),
        "heat": heat.Section(climates=tuple((name, one) for name, one in places if isinstance(one, ClimateFacet))),
        "air": air.Section(),
        "power": power.Section(wires=owned("wires", Wire), habits=entries("habits", Habit)),
        "water": water.Section(pipes=owned("pipes", Pipe)),
        "safety": safety.Section(),
        "cutting": cutting.Section(),
        "stages": stages.Section(
            stages=tuple((name, one) for name, folder, one in facets if isinstance(one, StageFacet))
        ),
    }
