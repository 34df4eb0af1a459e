"""What a word that no reader takes was meant to be: said in the words of the file, for whoever never saw one."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.model.trailer import Trailer
from boxwright.rig.keys import OWNER_OF_SECTION
from boxwright.rig.validate import nearest, spellings

OTHER_SECTIONS = {
    "name": "rig: Name",
    "title": "rig: Name",
    "version": "boxwright: 1",
    "country": "countries: [US-NC]",
    "state": "countries: [US-NC]",
    "date": "today: {stage: name, date: 2026-05-02}",
    "vehicle": "tow: and below it, indented, name: {rating: .., tongue: ..}",
    "vehicles": "tow: and below it, indented, name: {rating: .., tongue: ..}",
    "tow_vehicle": "tow: and below it, indented, name: {rating: .., tongue: ..}",
    "truck": "tow: and below it, indented, truck: {rating: .., tongue: ..}",
    "car": "tow: and below it, indented, car: {rating: .., tongue: ..}",
    "doors": "openings: and below it, indented, name: {wall: right, x: .., width: .., z: .., height: ..}",
    "windows": "openings: and below it, indented, name: {wall: right, x: .., width: .., z: .., height: ..}",
    "furniture": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "cargo": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "items": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "beds": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "cabinets": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "appliances": "parts: and below it, indented, name: {x: .., size: .., weight: ..}",
    "vents": "openings: and below it, indented, name: {wall: roof, x: .., width: .., free_area: ..}",
    "layers": "walls: and below it, indented, all: {layers: {foam: {of: XPS, thick: ..}}}",
    "insulation": "walls: and below it, indented, all: {layers: {foam: {of: XPS, thick: ..}}}",
    "tires": "trailer: and below it, indented, tyres: {size: .., load: .. each, at: ..}",
    "wheels": "trailer: and below it, indented, tyres: {size: .., load: .. each, at: ..}",
    "trips": "loads: and below it, indented, road: {cargo: all, for: [tow]}",
    "crew": "people: and below it, indented, name: {weight: .., height: ..}",
}
"""How to write what people put as a section that has another name here."""
OTHER_KEYS = {
    "y": "side: left+6, its distance from a wall or the centreline",
    "across": "side: left+6, its distance from a wall or the centreline",
    "position": "x: 36, side: left+6 and z: floor",
    "width": "size: length x width x height",
    "height": "size: length x width x height",
    "mass": "weight: 20",
    "kg": "weight: 20 kg",
    "lb": "weight: 20 lb",
    "lbs": "weight: 20 lb",
    "length": "size: length x width x height",
    "depth": "size: length x width x height",
    "dimensions": "size: length x width x height",
    "bottom": "z: .., how high its lower edge is above the trailer's own deck",
    "sill": "z: .., how high its lower edge is above the trailer's own deck",
    "left": "side: left+6, its distance from a wall or the centreline",
    "right": "side: right-6, its distance from a wall or the centreline",
    "location": "x: 36, side: left+6 and z: floor",
    "open": "swing: {hinge: front, opens: out}",
    "opens": "swing: {hinge: front, opens: out}",
    "volume": "tank: {of: water, volume: 30 l}",
    "capacity": "tank: {of: water, volume: 30 l}",
    "watts": "draw: 5 A",
    "power": "draw: 5 A",
    "fuel": "heater: {of: diesel, lowest: 900 W, highest: 2000 W} or tank: {of: diesel, volume: 2}",
    "quantity": "count: 2",
    "qty": "count: 2",
    "price": "cost: 62",
    "diesel": "heater: {of: diesel, lowest: 900 W, highest: 2000 W} or tank: {of: diesel, volume: 2}",
    "propane": "heater: {of: propane, highest: 2000 W} or tank: {of: propane, volume: 5}",
    "gas": "heater: {of: propane, highest: 2000 W} or tank: {of: propane, volume: 5}",
}
"""The same for the keys of a thing."""


def section_unknown(key: str) -> str:
    """Return what is said of a section nobody reads, and how to write what it was meant to be."""
    meant = _section_meant(key)
    return f'no section "{key}" is known' + (f"; {meant}" if meant else "")


def _section_meant(key: str) -> str:
    if key in OTHER_SECTIONS:
        return f"write it as {OTHER_SECTIONS[key]}"
    if key in {choice for choices in spellings(Trailer).values() for choice in choices}:
        return f"write {key} under trailer:, indented"
    guess = nearest(key, OWNER_OF_SECTION)
    return f'did you mean "{guess}"?' if guess else ""


def key_in_words(key: str, known: Iterable[str]) -> str:
    """Return how to write what stands as a key of a thing nobody reads."""
    if key in OTHER_KEYS:
        return f"write it as {OTHER_KEYS[key]}"
    guess = nearest(key, known)
    return f'did you mean "{guess}"?' if guess else "a remark goes after #"
