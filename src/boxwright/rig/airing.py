"""What air sees of the plan: what lets air through, what burns in the room, how wet wood was found, how large it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isfinite
from typing import Any

from boxwright.disciplines.air.parts import (
    NOTHING_SAID,
    UNKNOWN,
    Facet,
    PlannedDamp,
    PlannedFlame,
    PlannedVent,
    Section,
    VentKind,
    WoodReading,
)
from boxwright.disciplines.air.sourced import word_means
from boxwright.disciplines.frame.parts import Opening
from boxwright.disciplines.heat.burner import plain_fuel
from boxwright.disciplines.heat.parts import Facet as HeatFacet
from boxwright.disciplines.layout.parts import Facet as LayoutFacet
from boxwright.disciplines.safety.parts import Kept
from boxwright.disciplines.safety.sourced import FUELS
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.model.entry import read_day
from boxwright.model.place import Surfaces
from boxwright.rig.rig import Item
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

UNLIT = ("nothing", "none", "electric", "electricity", "induction")
"""What is written of what burns nothing."""


def airing_of(
    items: dict[str, tuple[Item, ...]], kept: tuple[Kept, ...], room: Surfaces | None, wood: tuple[WoodReading, ...]
) -> Section:
    """Return what air sees of the rig, whatever stands."""
    heaters = _heaters(items["parts"])
    flames = tuple(one for one in kept if one.what == "flame" and one.of not in {of for of, _, _ in heaters})
    burners = ((one.of, one.name, one.burns) for one in flames)
    high = room.ceiling - room.floor if room is not None else 0.0
    volume = (room.rear - room.front) * (room.right - room.left) * high if room is not None else 0.0
    return Section(
        vents=(*_holes(items["openings"]), *_parts(items["parts"])),
        flames=tuple(PlannedFlame(one.of, one.name, one.burns) for one in flames),
        on_gas=tuple(PlannedFlame(*one) for one in (*burners, *heaters) if _is_a_gas(one[2])),
        damp=tuple(_damp(items["parts"], {one.of for one in flames if one.burns not in UNLIT})),
        wood=wood,
        volume=exactly(volume) if isfinite(volume) and volume > 0.0 else UNKNOWN,
        height=exactly(high) if isfinite(high) and high > 0.0 else UNKNOWN,
    )


def _damp(parts: tuple[Item, ...], flames: set[str]) -> Iterator[PlannedDamp]:
    """Return what gives off vapour beside people; a flame of which nobody wrote how long it cooks may cook."""
    for one in parts:
        said = one.facet("air")
        facet = said if isinstance(said, Facet) else NOTHING_SAID
        is_flame = one.of in flames
        cooks = facet.cooks if facet.cooks is not None or not is_flame else UNKNOWN
        if cooks is not None or facet.wet is not None:
            yield PlannedDamp(one.of, one.name, cooks, is_flame, facet.wet)


def _heaters(parts: tuple[Item, ...]) -> list[tuple[str, str, str]]:
    """Return the path, the name and the fuel of each heater."""
    facets = ((one, one.facet("heat")) for one in parts)
    return [
        (one.of, one.name, plain_fuel(facet.heater.of))
        for one, facet in facets
        if isinstance(facet, HeatFacet) and facet.heater is not None
    ]


def _is_a_gas(fuel: str) -> bool:
    return FUELS.get(fuel.strip().lower(), (False, ""))[1] == "gas"


def _holes(openings: tuple[Item, ...]) -> Iterator[PlannedVent]:
    for one in openings:
        said = one.facet("air")
        facet = said if isinstance(said, Facet) else NOTHING_SAID
        kind = _kind(one, facet)
        if kind is not None:
            yield PlannedVent(
                one.of, one.name, one.place, facet, kind, True, one.words.now.strip(), is_done=_is_done(one)
            )


def _kind(item: Item, facet: Facet) -> VentKind | None:
    """Return what an opening is to the air: what its keys say, else how it turns, else the words of its name."""
    own, moves = item.own, item.facet("layout")
    if facet.free_area is not None:
        return "vent"
    if facet.fan is not None:
        return "fan"
    unit = own.unit if isinstance(own, Opening) else None
    if unit is not None and unit.swing is not None:
        return "window"
    if isinstance(moves, LayoutFacet) and moves.swing is not None:
        return "door"
    return "vent" if word_means(item.name) == "vent" else None


def _parts(parts: tuple[Item, ...]) -> Iterator[PlannedVent]:
    """Return the parts that let air through or move it, and what gas cylinders stand in."""
    holds = {one.words.inside.strip(): one.name for one in parts if one.words.inside.strip() and _is_gas(one)}
    for one in parts:
        said, now = one.facet("air"), one.words.now.strip()
        facet = said if isinstance(said, Facet) else NOTHING_SAID
        if facet.free_area is not None or facet.fan is not None or one.name in holds:
            kind: VentKind = "vent" if facet.fan is None else "fan"
            inside = holds.get(one.name, "")
            yield PlannedVent(one.of, one.name, one.place, facet, kind, False, now, inside, _is_done(one))


def _is_done(item: Item) -> bool:
    return item.marks.done.tick == "yes"


def _is_gas(item: Item) -> bool:
    """Return whether a part is a cylinder of gas that burns."""
    held = item.facet("water")
    tank = held.tank if isinstance(held, WaterFacet) else None
    return tank is not None and _is_a_gas(tank.of)


def wood_read(tree: Mapping[str, Any], units: HeaderUnits) -> tuple[WoodReading, ...]:
    """Return every reading of wood under ``measured``; what cannot be read was told where readings are read."""
    entries = tree.get("measured")
    found: list[WoodReading] = []
    for name, entry in entries.items() if isinstance(entries, Mapping) else ():
        if isinstance(entry, Mapping) and isinstance(given := entry.get("wood"), str):
            found.append(WoodReading(f"measured[{name}]", _text(entry, "at"), _day(entry), _share(given, units)))
    return tuple(found)


def _text(entry: Mapping[str, Any], key: str) -> str:
    given = entry.get(key)
    return " ".join(given.split()) if isinstance(given, str) else ""


def _day(entry: Mapping[str, Any]) -> Any:
    try:
        return read_day(entry.get("date"))
    except ValueError:
        return None


def _share(given: str, units: HeaderUnits) -> Band:
    try:
        return read_band(given, "ratio", units)
    except CannotRead:
        return UNKNOWN
