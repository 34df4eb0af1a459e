"""Where a thing is. One function resolves what is written (`x: mid 80`, `side: right-4`, `z: floor+30`) into metres.

Inside the program: x rearward from the front wall's stud face, y to the right of the centreline (looking forward),
z up from the trailer's own deck; right-handed. Every place is the middle of a box and the size of that box.
"""

from __future__ import annotations

import re
from dataclasses import replace
from math import isfinite
from typing import Literal

from boxwright.exchange import Vector
from boxwright.records import dataclass
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band, read_exact

Axis = Literal["x", "side", "z"]

ANYWHERE = Band(0.0, float("-inf"), float("inf"), known=False)


@dataclass(frozen=True, slots=True)
class Surfaces:
    """The planes a place may be anchored to (m): the inside as it will be finished, and the bare frame behind it."""

    front: float
    rear: float
    left: float
    right: float
    floor: float
    ceiling: float
    studs_front: float
    studs_rear: float
    studs_left: float
    studs_right: float
    bows: float
    deck: float = 0.0


@dataclass(frozen=True, slots=True)
class Place:
    """The middle of a thing (m, each with its doubt) and its size: length along x, width along y, height along z.

    ``off`` is how far each side may be other than that (m); the doubt of the middle counts it in, so that the thing is
    held wherever its sides may end.
    """

    x: Band
    y: Band
    z: Band
    size: Vector
    deviation_x: float = 0.0
    off: Vector = (0.0, 0.0, 0.0)

    def low_edge(self, axis: int) -> Band:
        """Return the front (0), left (1) or under (2) edge of the box."""
        return shifted((self.x, self.y, self.z)[axis], -self.size[axis] / 2.0)


@dataclass(frozen=True, slots=True)
class Written:
    """A place as text, key by key; an empty text is a key that was not written."""

    x: str = ""
    side: str = ""
    z: str = ""
    wall: str = ""
    at: tuple[str, ...] = ()


def shifted(band: Band, by: float) -> Band:
    """Return a band moved as a whole."""
    # written out, because replace() is slow and every edge of every part comes through here
    return Band(band.best + by, band.low + by, band.high + by, band.known, band.spread, band.assumed)


def widened(band: Band, by: float) -> Band:
    """Return a band that may be so much more, or less, as well."""
    return replace(band, low=band.low - by, high=band.high + by, spread="interval") if by else band


def of_sides(place: Place, off: Vector) -> Place:
    """Return a place of which the sides may be so much longer or shorter, whichever of its ends is where it is."""
    x, y, z = (widened(band, by) for band, by in zip((place.x, place.y, place.z), off, strict=True))
    return replace(place, x=x, y=y, z=z, off=off) if any(off) else place


LEFT_DRIVING = frozenset({"UK", "GB", "IE", "AU", "NZ", "JP", "ZA"})
"""Where one drives on the left, so that the kerb (nearside, curb side) is on the left; from memory."""

_SIDES: tuple[str, ...] = ("street side", "curb side", "kerb side", "driver side", "passenger side")
_SIDES += ("nearside", "offside", "street", "curb", "kerb", "centre", "center", "middle", "left", "right")
_ANCHOR = re.compile(
    r"^(?P<studs>studs-)?(?P<word>" + "|".join(_SIDES) + r"|front|rear|floor|ceiling|deck|bows|roof)(?P<offset>.*)$",
    re.IGNORECASE,
)


def side_word(word: str, words: str) -> str:
    """Return left, right or centre for a side in trade words, as the home country ``words`` means it."""
    plain = word.lower().removesuffix(" side").removesuffix("side").strip()
    kerb, street = ("left", "right") if words in LEFT_DRIVING else ("right", "left")
    meaning = {"near": kerb, "curb": kerb, "kerb": kerb, "passenger": kerb, "off": street, "street": street}
    meaning |= {"driver": street, "center": "centre", "middle": "centre"}
    return meaning.get(plain, plain)


def resolve(
    written: Written, size: Vector, surfaces: Surfaces, header: HeaderUnits, parent: Place | None, key_prefix: str = ""
) -> tuple[Place, tuple[tuple[str, CannotRead], ...]]:
    """Return the place of a thing, and for each key that could not be read its name and why.

    A key that is missing or unreadable leaves that axis anywhere (`ANYWHERE`) or, inside a parent, anywhere in it.
    """
    problems: list[tuple[str, CannotRead]] = []

    def axis(key: Axis, text: str, index: int) -> Band:
        try:
            return _middle(key, text, size[index], index, written, surfaces, header, parent)
        except CannotRead as problem:
            problems.append((key_prefix + key, problem))
            return _somewhere(index, parent)

    x = axis("x", written.x, 0)
    y = axis("side", written.side, 1)
    z = axis("z", written.z, 2)
    deviation = 0.0
    if written.at:
        try:
            middles = [read_exact(text, "length", header) for text in written.at]
            mean = sum(middles) / len(middles)
            deviation = (sum((middle - mean) ** 2 for middle in middles) / len(middles)) ** 0.5
            x = exactly(mean)
        except CannotRead as problem:
            problems.append((key_prefix + "at", problem))
    return Place(x, y, z, size, deviation), tuple(problems)


def _somewhere(axis: int, parent: Place | None) -> Band:
    """Return anywhere inside the parent, or anywhere at all."""
    if parent is None:
        return ANYWHERE
    middle, half = (parent.x, parent.y, parent.z)[axis], parent.size[axis] / 2.0
    return Band(middle.best, middle.low - half, middle.high + half, middle.known, "interval", assumed=True)


def _middle(
    key: Axis,
    text: str,
    extent: float,
    axis: int,
    written: Written,
    surfaces: Surfaces,
    header: HeaderUnits,
    parent: Place | None,
) -> Band:
    """Return the middle along one axis of what is written there."""
    text = text.strip()
    if not text:
        on_wall = _on_wall(axis, extent, written.wall, surfaces, header)
        return on_wall if on_wall is not None else _somewhere(axis, parent)
    if text in {"unknown", "?"}:
        return _somewhere(axis, parent)
    if text.startswith("+"):
        if parent is None:
            raise CannotRead(
                text, "the place relative to another part", f"{text[1:].strip()}, or name what it is inside"
            )
        edge = parent.low_edge(axis)
        own = shifted(_relative(text[1:], header), edge.best + extent / 2.0)
        return widened(own, max(edge.high - edge.best, edge.best - edge.low) - parent.off[axis] if edge.known else 0.0)
    is_middle = text.lower().startswith("mid ")
    rest = text[4:].strip() if is_middle else text
    anchor = _ANCHOR.match(rest)
    if anchor is None:
        if key == "side":
            raise CannotRead(text, "the side", "left+10, right-10 or centre+10 (looking forward)")
        return shifted(read_band(rest, "length", header), 0.0 if is_middle else extent / 2.0)
    return _anchored(key, anchor, text, 0.0 if is_middle else extent, surfaces, header)


def _relative(text: str, header: HeaderUnits) -> Band:
    return read_band(text.strip(), "length", header)


def _anchored(
    key: Axis, anchor: re.Match[str], text: str, extent: float, surfaces: Surfaces, header: HeaderUnits
) -> Band:
    """Return the middle of a thing placed from a named surface and an offset."""
    word = side_word(anchor["word"], header.words)
    word = "bows" if word == "roof" else word
    offset = _offset(anchor["offset"], text, header)
    planes = {
        "x": {"front": surfaces.front, "rear": surfaces.rear},
        "side": {"left": surfaces.left, "right": surfaces.right, "centre": 0.0},
        "z": {"floor": surfaces.floor, "ceiling": surfaces.ceiling, "deck": surfaces.deck, "bows": surfaces.bows},
    }[key]
    if anchor["studs"]:
        planes = {
            "x": {"front": surfaces.studs_front, "rear": surfaces.studs_rear},
            "side": {"left": surfaces.studs_left, "right": surfaces.studs_right},
            "z": {},
        }[key]
    if word not in planes:
        raise CannotRead(text, f"the place along {key}", " or ".join(f"{plane}+4" for plane in planes) or "deck+4")
    if not isfinite(planes[word]):  # the trailer's body is not written, so nobody knows where this surface is
        raise CannotRead(
            text,
            "the place, for the trailer's body is not known,",
            "trailer: {body: {length: .., width: .., height: ..}}",
        )
    direction = 1.0
    if key == "side":  # the left edge is placed from the left, the right edge from the right, the middle from centre
        direction = {"left": 1.0, "right": -1.0, "centre": 0.0}[word]
    return shifted(offset, planes[word] + direction * extent / 2.0)


def _offset(text: str, whole: str, header: HeaderUnits) -> Band:
    text = text.strip()
    if not text:
        return exactly(0.0)
    if text[0] not in "+-\u2212":
        raise CannotRead(whole, "the place", f"{whole[: len(whole) - len(text)].strip()}+{text}, with + or - between")
    size = read_band(text[1:].strip(), "length", header)
    if text[0] == "+":
        return size
    return replace(size, best=-size.best, low=-size.high, high=-size.low)


def _on_wall(axis: int, extent: float, wall: str, surfaces: Surfaces, header: HeaderUnits) -> Band | None:
    """Return the middle of a thing that stands against a wall, along the axis that the wall fixes."""
    if not wall:
        return None
    word = side_word(wall.strip(), header.words)
    fixed = {
        ("left", 1): surfaces.left + extent / 2.0,
        ("right", 1): surfaces.right - extent / 2.0,
        ("front", 0): surfaces.front + extent / 2.0,
        ("rear", 0): surfaces.rear - extent / 2.0,
        ("roof", 2): surfaces.bows + extent / 2.0,
        ("ceiling", 2): surfaces.ceiling - extent / 2.0,
        ("floor", 2): surfaces.floor + extent / 2.0,
    }
    middle = fixed.get((word, axis))
    if middle is None:
        return None
    return exactly(middle) if isfinite(middle) else ANYWHERE


def folded_up(place: Place, folded_depth: Band | None, surfaces: Surfaces, hinge: str = "") -> Place:
    """Return the place of a leaf folded up about its ``hinge``: its left or right edge, else that at the nearer wall.

    The leaf turns a quarter about its hinge edge: its width becomes its height, standing ``folded_depth`` off the wall
    (its own thickness, where that is not written). The box is as deep as is best known; its place is in doubt as far as
    it may be deeper, and not known where nobody knows how deep.
    """
    length, width, thickness = place.size
    deep = folded_depth if folded_depth is not None else exactly(thickness)
    depth = deep.best if deep.known else thickness
    is_nearer = abs(place.y.best - width / 2.0 - surfaces.left) <= abs(surfaces.right - place.y.best - width / 2.0)
    is_left = hinge == "left" if hinge in {"left", "right"} else is_nearer
    out = 1.0 if is_left else -1.0
    off = place.y.best - out * width / 2.0 + out * depth / 2.0 - place.y.best
    y = place.y
    if not deep.known:
        # no leaf folds to less than its thickness, nor stands farther out than when it is down
        ends = sorted((off, off + out * max(width - thickness, 0.0)))
        y = Band(y.best + off, y.low + ends[0], y.high + ends[1], known=False, spread="interval", assumed=True)
    else:
        ends = sorted((off + out * (deep.low - depth), off + out * (deep.high - depth)))
        spread = y.spread if deep.low == deep.high else "interval"
        y = Band(y.best + off, y.low + ends[0], y.high + ends[1], y.known, spread, y.assumed or deep.assumed)
    underside = place.z.best - thickness / 2.0
    z = shifted(place.z, underside + width / 2.0 - place.z.best)
    y, z, turned = widened(y, place.off[2]), widened(z, place.off[1]), (place.off[0], place.off[2], place.off[1])
    return replace(place, y=y, z=z, size=(length, depth, width), off=turned)


def turned_with(place: Place, leaf: Place, folded: Place) -> Place:
    """Return the place of a thing lying on a leaf after the leaf has folded up: what lay across it now stands.

    How far it may be off across the leaf is then how far it may be off in height; off the wall it is as far as the
    leaf.
    """
    is_left = folded.y.best <= leaf.y.best
    hinge = leaf.y.best + (-leaf.size[1] if is_left else leaf.size[1]) / 2.0
    out = abs(place.y.best - hinge)
    size = (place.size[0], min(place.size[2], folded.size[1]), min(place.size[1], folded.size[2]))
    z = leaf.z.best - leaf.size[2] / 2.0 + out
    off = (place.y.low - place.y.best, place.y.high - place.y.best)
    below, above = off if is_left else (-off[1], -off[0])
    below, above = below + folded.z.low - folded.z.best, above + folded.z.high - folded.z.best
    known = place.y.known and folded.z.known
    up = Band(z, z + below, z + above, known, place.y.spread, place.y.assumed)
    y = replace(folded.y, known=folded.y.known and place.z.known)
    return replace(place, y=y, z=up, size=size)
