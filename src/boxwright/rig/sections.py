"""Each discipline's own settings, built from what the composer read for it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Set
from math import inf, radians
from typing import Literal, TypedDict, TypeVar

from pydantic import Field

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
from boxwright.disciplines.air.parts import WoodReading
from boxwright.disciplines.frame.box import inside_of as body_of
from boxwright.disciplines.frame.holes import wall_name
from boxwright.disciplines.frame.parts import (
    Framing,
    Opening,
    PlannedBacking,
    PlannedRecess,
    StandingLayer,
    StandingOpening,
)
from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.disciplines.frame.result import UNSAID, Run, Tube
from boxwright.disciplines.frame.solve import surfaces
from boxwright.disciplines.frame.tapes import Read
from boxwright.disciplines.frame.tube import read_tube, with_depths
from boxwright.disciplines.heat.parts import ClimateFacet, PlannedCooler, PlannedHeater, ProvedLoss
from boxwright.disciplines.heat.parts import Facet as HeatFacet
from boxwright.disciplines.power.parts import Habit, Wire
from boxwright.disciplines.power.routes import legs_of
from boxwright.disciplines.stages.parts import StageFacet
from boxwright.disciplines.structure.parts import Fastened, Strap
from boxwright.disciplines.towing.parts import PlaceFacet
from boxwright.disciplines.water.parts import Pipe
from boxwright.model.entry import Entry
from boxwright.model.place import Surfaces, side_word
from boxwright.model.trailer import Trailer
from boxwright.rig.airing import airing_of
from boxwright.rig.carrying_in import Carried, ever_stands
from boxwright.rig.feeding import feeding_of
from boxwright.rig.rig import Item, Layer
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band, read_exact

WHOLE = exactly(1.0)
ROOFS = ("flat", "arched", "rounded")
"""The shapes of a roof that are known."""

E = TypeVar("E", bound=Entry)
_DEGREES = {"lat": re.compile(r"-?(?:90|[0-8]?\d(?:\.\d+)?)"),
            "lon": re.compile(r"-?(?:180|(?:1[0-7]|[0-9]?)\d(?:\.\d+)?)")}  # fmt: skip
"""How far north a place lies, as it is written; south of the equator with a minus."""


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


class PlaceWords(Entry):
    """What the model reads of a place on earth; its climate belongs to heat."""

    lat: str = Field("", description="degrees north, such as 36.1")
    lon: str = Field("", description="degrees east, such as -79.8")
    note: str = ""


def inside_of(trailer: Trailer, framing: Framing | None, layers: tuple[Layer, ...], units: HeaderUnits) -> Surfaces:
    """Return the planes a place may be anchored to: the inside as it will be finished, and the frame behind it.

    A plane that hangs on a measure of the body nobody wrote is infinitely far.
    """
    walls = tuple((layer.wall, layer.own) for layer in layers if isinstance(layer.own, LayerWords))
    body = trailer.body
    length, width, height = (
        side.best if side is not None and side.known else inf for side in (body.length, body.width, body.height)
    )
    return surfaces(length, width, height, walls, with_depths(framing, units))


def _turned(places: tuple[tuple[str, Entry], ...], key: Literal["lat", "lon"]) -> tuple[tuple[str, float], ...]:
    """Return how far north or east each place lies (rad), of those that say it in degrees."""
    found = [(name, str(getattr(one, key)).strip()) for name, one in places if isinstance(one, PlaceWords)]
    return tuple((name, radians(float(written))) for name, written in found if _DEGREES[key].fullmatch(written))


def sections_of(
    named: dict[str, Named],
    items: dict[str, tuple[Item, ...]],
    facets: tuple[tuple[str, str, Entry], ...],
    places: tuple[tuple[str, Entry], ...],
    shell: frame.Section,
    fitted: layout.Section,
    kept: safety.Section,
    wood: tuple[WoodReading, ...],
    proved: tuple[ProvedLoss, ...],
    words: str,
    unread: Set[str],
) -> BySection:
    """Return the settings of every discipline by its folder: what is written, not what stands."""

    def owned(section: str, model: type[E]) -> tuple[tuple[str, E], ...]:
        return tuple((item.name, item.own) for item in items[section] if isinstance(item.own, model))

    def entries(section: str, model: type[E]) -> tuple[tuple[str, E], ...]:
        return tuple((name, entry) for name, entry in named.get(section, ()) if isinstance(entry, model))

    fed = feeding_of(items, entries("habits", Habit), unread)
    return {
        "frame": shell,
        "layout": fitted,
        "structure": structure.Section(straps=owned("straps", Strap), fastened=_fastened(items["parts"], words)),
        "weight": weight.Section(),
        "towing": towing.Section(
            fits=tuple((name, one.fits) for name, one in places if isinstance(one, PlaceFacet) and one.fits is not None)
        ),
        "heat": heat.Section(
            climates=tuple((name, one) for name, one in places if isinstance(one, ClimateFacet)),
            heaters=tuple(
                PlannedHeater(one.of, one.name, one.place, facet.heater, one.words.count or 1)
                for one in items["parts"]
                if isinstance(facet := one.facet("heat"), HeatFacet) and facet.heater is not None
            ),
            latitudes=_turned(places, "lat"),
            longitudes=_turned(places, "lon"),
            coolers=tuple(
                PlannedCooler(one.of, one.name, facet.cools, one.words.count or 1)
                for one in items["parts"]
                if isinstance(facet := one.facet("heat"), HeatFacet) and facet.cools is not None
            ),
            sources=fed.sources,
            leads=fed.leads,
            joins=fed.joins,
            draws=fed.draws,
            tanks=fed.tanks,
            proved=proved,
        ),
        "air": airing_of(items, kept.kept, kept.room, wood),
        "power": power.Section(wires=owned("wires", Wire), habits=entries("habits", Habit)),
        "water": water.Section(pipes=owned("pipes", Pipe)),
        "safety": kept,
        "cutting": cutting.Section(),
        "stages": stages.Section(
            stages=tuple((name, one) for name, folder, one in facets if isinstance(one, StageFacet))
        ),
    }


def shell_of(
    framing: Framing | None,
    items: dict[str, tuple[Item, ...]],
    layers: tuple[Layer, ...],
    readings: tuple[Read, ...],
    units: HeaderUnits,
    last_stage: int,
    trailer: Trailer,
    carried: Carried,
) -> tuple[frame.Section, tuple[tuple[str, str], ...]]:
    """Return the frame of the whole plan, and what could not be read of its sections: path and why.

    ``carried`` keeps what an unchanged part came to.
    """
    troubles: list[tuple[str, str]] = []

    def section(key: str, written: str, face: Band | None, depth: Band | None) -> Tube:
        tube, trouble = read_tube(written, units, face, depth)
        if trouble:
            troubles.append((f"frame.{key}", f'{trouble}; read as "{written}", write it as 1 x 1 1/2 x 16 ga'))
        return tube

    troubles += _unknown_walls(items["openings"], units.words)
    studs, bows = (framing.studs, framing.bows) if framing is not None else (None, None)
    if bows is not None and bows.shape.strip().lower() not in ("", *ROOFS):
        says = f'no roof "{bows.shape}" is known; write it as shape: {", ".join(ROOFS)}'
        troubles.append(("frame.bows.shape", says))
    floor = framing.floor if framing is not None else None
    skin = thickness_in(framing.skin, units) if framing is not None else None
    found = frame.Section(
        framing=framing,
        stud_tube=section("studs.tube", studs.tube, studs.face, studs.depth) if studs is not None else UNSAID,
        bow_tube=section("bows.tube", bows.tube, bows.face, bows.depth) if bows is not None else UNSAID,
        cross_tube=section("floor.tube", floor.tube, floor.face, floor.depth) if floor is not None else UNSAID,
        skin=skin,
        deck=thickness_in(floor.deck, units) if floor is not None else None,
        readings=readings,
        layers=tuple(
            StandingLayer(one.of, one.wall, one.name, one.own, WHOLE)
            for one in layers
            if isinstance(one.own, LayerWords) and ever_stands(one.marks, last_stage)
        ),
        openings=tuple(
            StandingOpening(one.of, one.own, one.place, WHOLE, _side(one.words.wall, units.words), _swing(one))
            for one in items["openings"]
            if isinstance(one.own, Opening) and ever_stands(one.marks, last_stage)
        ),
        backings=tuple(
            PlannedBacking(one.of, one.name, one.place, _backed(one))
            for one in items["parts"]
            if one.words.kind == "backing" and ever_stands(one.marks, last_stage)
        ),
        recesses=tuple(
            PlannedRecess(one.of, one.name, one.place, _side(one.words.wall, units.words), _middles(one, units), depth)
            for one in items["parts"]
            if (depth := _recess(one)) is not None and ever_stands(one.marks, last_stage)
        ),
        runs=tuple(run for one in _routed(items) for run in _runs(one, units)),
        unrouted=tuple(one.name for one in _routed(items) if not _route(one)),
        to_carry_in=carried(items["parts"], items["openings"], body_of(trailer), last_stage),
    )
    return found, tuple(troubles)


def _routed(items: dict[str, tuple[Item, ...]]) -> tuple[Item, ...]:
    """Return the wires and pipes of the plan."""
    return (*items.get("wires", ()), *items.get("pipes", ()))


def _route(item: Item) -> str:
    return item.own.route.strip() if isinstance(item.own, (Wire, Pipe)) else ""


def _runs(item: Item, units: HeaderUnits) -> Iterator[Run]:
    """Yield the stretches of a wire or a pipe, wall by wall; across roof and floor no route says where."""
    for leg in legs_of(_route(item), units):
        name = wall_name(leg.wall)
        if name is not None:
            up = None if name in ("roof", "floor") else leg.up
            yield Run(item.of, item.name, "wire" if item.section == "wires" else "pipe", name, leg.low, leg.high, up)


def _unknown_walls(openings: tuple[Item, ...], words: str) -> list[tuple[str, str]]:
    """Return the openings that are in no wall: path and why."""
    found: list[tuple[str, str]] = []
    for one in openings:
        if wall_name(_side(one.words.wall, words)) is None:
            read = f'no wall "{one.words.wall}" is known' if one.words.wall else "it is not said in which wall it is"
            path = f"{one.of}.wall" if one.words.wall else one.of
            found.append((path, f"{read}; write it as wall: left, right, front, rear, roof or floor"))
    return found


def _side(wall: str, words: str) -> str:
    """Return the wall a word of the trade means to the home country; curb side and nearside are left or right."""
    return side_word(wall.strip(), words) if wall.strip() else ""


def _swing(item: Item) -> tuple[str, str]:
    facet = item.facet("layout")
    swing = facet.swing if isinstance(facet, layout.Facet) else None
    return (swing.hinge, swing.opens) if swing is not None else ("", "")


def _backed(item: Item) -> str:
    facet = item.facet("structure")
    return facet.backs if isinstance(facet, structure.Facet) else ""


def _recess(item: Item) -> Band | None:
    facet = item.facet("frame")
    return facet.recess if isinstance(facet, frame.Facet) else None


def _middles(item: Item, units: HeaderUnits) -> tuple[float, ...]:
    """Return the places of a counted part along the trailer; one that cannot be read was told where it was read."""
    found: list[float] = []
    for text in item.words.at:
        try:
            found.append(read_exact(text, "length", units))
        except CannotRead:
            continue
    return tuple(found)


def _fastened(parts: tuple[Item, ...], words: str) -> tuple[Fastened, ...]:
    found: list[Fastened] = []
    for item in parts:
        facet = item.facet("structure")
        if not item.marks.planned or not isinstance(facet, structure.Facet):
            continue
        if facet.hinge is not None or facet.screws is not None:
            if facet.hinge is not None and facet.hinge.edge:
                hinge = facet.hinge.model_copy(update={"edge": _side(facet.hinge.edge, words)})
                facet = facet.model_copy(update={"hinge": hinge})
            found.append(Fastened(item.of, item.name, item.place, _side(item.words.wall, words), facet))
    return tuple(found)


def thickness_in(written: str, units: HeaderUnits) -> Band | None:
    """Return the thickness in a text such as ``aluminium 0.040``: its last word or two, where they are a length."""
    words = written.split()
    for count in (1, 2):
        if len(words) >= count:
            try:
                return read_band(" ".join(words[-count:]), "length", units)
            except CannotRead:
                continue
    return None
