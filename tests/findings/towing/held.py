"""A small rig as towing sees it, in text with units, and one edit of it; every rule's three cases are edits of this.

Invented: a braked tandem of 7,000 lb behind a pickup, on a route of places whose rules were read.
"""

from __future__ import annotations

import copy
from dataclasses import dataclass
from datetime import date
from typing import Any

from boxwright.disciplines.towing.findings import findings
from boxwright.disciplines.towing.parts import Fits, Section
from boxwright.disciplines.towing.result import Result
from boxwright.disciplines.towing.solve import solve
from boxwright.exchange import Axle, Box
from boxwright.finding import Finding
from boxwright.model.part import Frame
from boxwright.model.place import Place
from boxwright.model.trailer import TowVehicle, Trailer
from boxwright.units import Band, HeaderUnits, exactly, read_band, read_exact

INCHES = HeaderUnits(length="in", weight="lb")
JUDGED_ON = date(2026, 5, 2)
UNKNOWN = Band(0.0, float("-inf"), float("inf"), known=False)

BASE: dict[str, Any] = {
    "trailer": {
        "outside": {"length": "171 in", "width": "84 in", "over_fenders": "101 in", "height": "98 in",
                    "length_overall": "226 in"},
        "deck_height": "18.5 in",
        "coupler_height": "19 in",
        "coupler_x": "-52 in",
        "axles": {"kind": "leaf with equaliser", "x": ["83 in", "117 in"], "gawr": ["3500 lb", "3500 lb"],
                  "track": "82 in"},
        "gvwr": "7000 lb",
        "tyres": {"size": "ST205/75R15", "load": "1820 lb", "at": "50 psi", "pressure": "50 psi", "date": "1325",
                  "count": "4"},
        "brakes": {"kind": "electric", "axles": "2", "breakaway": "yes", "breakaway_battery": "2026-03-20"},
        "coupler": {"ball": "2 5/16 in", "rating": "7000 lb"},
        "jack": {"rating": "2000 lb"},
        "chains": {"count": "2", "rating": "7500 lb"},
        "lamps": ["tail", "stop", "turn", "side", "clearance front", "clearance rear", "identification", "plate"],
    },
    "tow": {
        "pickup": {"rating": "9000 lb", "tongue": "900 lb", "payload": "1600 lb", "gcwr": "15000 lb", "kerb": "5150 lb",
                   "people_and_gear": "560 lb", "ball_height": "19 in", "wheelbase": "140 in", "overhang": "50 in"},
    },
    "class": "cargo",
    "countries": ["US-NE"],
    "beds": [],
    "parts": {},
    "fits": {},
    "gross": "4000 lb",
    "tongue": "480 lb",
    "centre_z": "22 in",
    "left": "50 %",
    "loads": {"empty": "460 lb"},
}  # fmt: skip


@dataclass(frozen=True)
class Given:
    """An answer of weight, as a test writes it."""

    band: Band
    permitted_low: float
    permitted_high: float
    unknown: tuple[str, ...] = ()


@dataclass(frozen=True)
class Loads:
    """Weight's answers of one slot, worked out from gross, tongue and the left side's share alone."""

    gross: Given
    tongue: Given
    share: Given
    on_wheels: Given
    axles: tuple[Given, ...]
    axles_left: tuple[Given, ...]
    axles_right: tuple[Given, ...]
    left: Given
    right: Given
    centre_z: Given


def edited(base: dict[str, Any], edits: dict[str, Any]) -> dict[str, Any]:
    """Return the rig with values put in by their dotted paths; an empty text takes the key away."""
    rig = copy.deepcopy(base)
    for path, value in edits.items():
        *folders, key = path.split(".")
        place = rig
        for folder in folders:
            place = place.setdefault(folder, {})
        if value == "":
            place.pop(key, None)
        else:
            place[key] = value
    return rig


def given(text: str) -> Given:
    """Return an answer from text: ``4000 lb``, ``4000 +-50 lb``, ``unknown``; ``at least 4000 lb`` has no upper end.

    ``4000 lb filled 3900 lb to 4300 lb`` is one with permitted fills.
    """
    if " filled " in text:
        weighed, _, fills = text.partition(" filled ")
        least, _, most = fills.partition(" to ")
        return Given(given(weighed).band, read_exact(least, "mass", INCHES), read_exact(most, "mass", INCHES))
    if text == "unknown":
        return Given(UNKNOWN, 0.0, 0.0, ("trailer.axles.x",))
    if text.startswith("at least "):
        best = read_exact(text.removeprefix("at least "), "mass", INCHES)
        return Given(Band(best, best, float("inf"), known=False), best, best, ("parts[crate]",))
    band = read_band(text, "mass", INCHES)
    return Given(band, band.best, band.best)


def part_of(one: Given, share: float, less: Given | None = None) -> Given:
    """Return a share of an answer less another, end by end."""
    ends = []
    for mine, other in zip((one.band.best, one.band.low, one.band.high), _ends(less), strict=True):
        ends.append((mine - other) * share)
    return Given(Band(ends[0], ends[1], ends[2], known=one.band.known), ends[0], ends[0], one.unknown)


def _ends(less: Given | None) -> tuple[float, float, float]:
    return (less.band.best, less.band.high, less.band.low) if less is not None else (0.0, 0.0, 0.0)


def loads_of(rig: dict[str, Any]) -> Loads:
    """Return weight's answers; a tongue that is unknown leaves share, wheels and axles unknown."""
    gross, tongue = given(rig["gross"]), given(rig["tongue"])
    left = read_exact(rig["left"], "ratio", INCHES)
    on_wheels = given("unknown") if not tongue.band.known else part_of(gross, 1.0, tongue)
    count = len(rig["trailer"].get("axles", {}).get("x", ()))
    share = given("unknown")
    if tongue.band.known and gross.band.best > 0.0:
        best = tongue.band.best / gross.band.best
        low, high = tongue.band.low / gross.band.high, tongue.band.high / gross.band.low
        share = Given(Band(best, low, high, known=gross.band.known), best, best, gross.unknown)
    centre = rig.get("centre_z")
    height = read_band(centre, "length", INCHES) if centre else UNKNOWN
    axles = tuple(part_of(on_wheels, 1.0 / count) if on_wheels.band.known else on_wheels for _ in range(count))
    return Loads(
        gross, tongue, share, on_wheels, axles,
        tuple(part_of(axle, left) if axle.band.known else axle for axle in axles),
        tuple(part_of(axle, 1.0 - left) if axle.band.known else axle for axle in axles),
        part_of(on_wheels, left) if on_wheels.band.known else on_wheels,
        part_of(on_wheels, 1.0 - left) if on_wheels.band.known else on_wheels,
        Given(height, height.best, height.best),
    )  # fmt: skip


def metres(text: str | None) -> Band:
    """Return a length, or unknown where none is written."""
    return read_band(text, "length", INCHES) if text else UNKNOWN


def frame_of(name: str, written: dict[str, str]) -> Frame:
    """Return a part by the places of its edges: ``front``, ``left`` and ``under``, and its ``size``."""
    size = tuple(read_exact(one, "length", INCHES) for one in written["size"].split(" x "))
    edges = [read_exact(written[key], "length", INCHES) for key in ("front", "left", "under")]
    x, y, z = (exactly(edge + extent / 2.0) for edge, extent in zip(edges, size, strict=True))
    place = Place(x, y, z, (size[0], size[1], size[2]))
    return Frame(name, f"parts[{name}]", place, exactly(1.0), None, "", "", "yes")


def result_of(rig: dict[str, Any]) -> Result:
    """Return what towing works out for the small rig."""
    context = {"header": INCHES}
    trailer = Trailer.model_validate(rig["trailer"], context=context)
    tow = tuple((name, TowVehicle.model_validate(one, context=context)) for name, one in rig["tow"].items())
    own = Section(tuple((name, Fits.model_validate(one, context=context)) for name, one in rig["fits"].items()))
    axles = rig["trailer"].get("axles", {})
    box = Box(
        of="trailer", inside=(4.27, 2.03, 1.98), outside=(4.34, 2.13, 2.49), front_x=0.0,
        rear_x=read_exact("168 in", "length", INCHES),
        deck_height=metres(rig["trailer"].get("deck_height")),
        coupler_x=metres(rig["trailer"].get("coupler_x")),
        coupler_height=metres(rig["trailer"].get("coupler_height")),
        axles=tuple(Axle(metres(x), None) for x in axles.get("x", ())),
        running_gear="equalised", axle_rate=UNKNOWN, track=metres(axles.get("track")), wheel_radius=UNKNOWN,
        jack_x=UNKNOWN, legs_x=(),
    )  # fmt: skip
    loads = loads_of(rig)
    tongues = (("departure", loads.tongue), *((name, given(text)) for name, text in rig["loads"].items()))
    frames = tuple(frame_of(name, written) for name, written in rig["parts"].items())
    beds, countries = tuple(rig["beds"]), tuple(rig["countries"])
    return solve(trailer, tow, own, rig.get("class", ""), countries, JUDGED_ON, box, loads, tongues, frames, beds)


def said_of(edits: dict[str, Any], vehicle: str = "") -> tuple[Finding, ...]:
    """Return what towing says of the small rig with some edits."""
    return findings(result_of(edited(BASE, edits)), INCHES, vehicle)
