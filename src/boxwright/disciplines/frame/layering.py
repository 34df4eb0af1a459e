"""What is behind what: the layers of every wall from the skin inwards, in its bays and over its members."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from boxwright.disciplines.frame.bands import UNKNOWN, known, less, together
from boxwright.disciplines.frame.parts import Layer, StandingLayer
from boxwright.disciplines.frame.result import Buildup, LayerPiece, There, Wall
from boxwright.units import Band, exactly

_BAY = re.compile(r"bay\s+(left|right|front|rear)\s+(\d{1,3})\s*-\s*(\d{1,3})")
ZERO = exactly(0.0)


def there_of(share: Band | None) -> There:
    """Return whether a thing stands: its share of the slot, or later where the slot has none of it."""
    if share is None:
        return "later"
    return "perhaps" if share.spread == "perhaps" else "yes"


def buildups_of(
    planned: tuple[StandingLayer, ...],
    standing: tuple[StandingLayer, ...],
    walls: tuple[Wall, ...],
    depths: tuple[Band | None, ...],
) -> tuple[Buildup, ...]:
    """Return the layers of every wall and of every bay that is written; ``depths`` are those of each wall's members."""
    shares = {one.of: one.share for one in standing}
    found: list[Buildup] = []
    for wall, depth in zip(walls, depths, strict=True):
        own = [one for one in planned if _is_on(one.wall, wall)]
        for place in ("bay", "member"):
            found.append(_buildup(wall, "", own, shares, depth, place == "member"))
        for bay in dict.fromkeys(one.wall for one in planned if _bay_wall(one.wall) == wall.name):
            mixed = _mixed([one for one in planned if one.wall == bay], own)
            found.append(_buildup(wall, _bay_name(bay), mixed, shares, depth, False))
    return tuple(found)


def _mixed(bay: list[StandingLayer], wall: list[StandingLayer]) -> list[StandingLayer]:
    """Return the layers of a bay: its own in the place of its wall's; one of no such name lies between the members.

    One of the same name lies where its wall's does, unless it says otherwise.
    """
    of_wall = {one.name: one.layer for one in wall}
    named = {one.name: _lying(one, of_wall.get(one.name)) for one in bay}
    return [named.pop(one.name, one) for one in wall] + list(named.values())


def _lying(one: StandingLayer, like: Layer | None) -> StandingLayer:
    if one.layer.between or one.layer.over:
        return one
    between, over = (like.between, like.over) if like is not None else ("members", "")
    return replace(one, layer=one.layer.model_copy(update={"between": between, "over": over}))


def _is_on(written: str, wall: Wall) -> bool:
    name = written.strip().lower()
    if wall.name == "roof":
        return name in ("roof", "ceiling", "all")
    if wall.name.startswith("nose"):
        return name in ("front", "all")
    return name == wall.name or (name == "all" and wall.name != "floor")


def _bay_wall(written: str) -> str:
    bay = _BAY.fullmatch(written.strip().lower())
    return bay[1] if bay else ""


def _bay_name(written: str) -> str:
    bay = _BAY.fullmatch(written.strip().lower())
    return f"{bay[1]} {bay[2]}-{bay[3]}" if bay else ""


def _buildup(
    wall: Wall,
    bay: str,
    layers: list[StandingLayer],
    shares: dict[str, Band],
    depth: Band | None,
    is_over_member: bool,
) -> Buildup:
    # From the skin inwards what lies between the members comes first. What covers only them is no layer of an open bay,
    # but whoever draws one needs it: the liner lies on it.
    layers = sorted(layers, key=lambda one: not one.layer.between)
    pieces = tuple(_piece(one, shares) for one in layers if not (is_over_member and one.layer.between))
    of = f"walls[bay {bay}]" if bay else f"walls[{'ceiling' if wall.name == 'roof' else wall.name}]"
    lining = _lining(layers, None, depth)
    now = _lining(layers, shares, depth)
    base = [wall.skin if wall.skin is not None else UNKNOWN, depth if depth is not None else UNKNOWN]
    if wall.name == "floor":
        base = [ZERO]
    return Buildup(
        of=of,
        wall=wall.name,
        bay=bay,
        place="member" if is_over_member else "bay",
        layers=pieces,
        finished=together((*base, lining)),
        standing=together((*base, now)),
        liner=lining,
    )


def _piece(one: StandingLayer, shares: dict[str, Band]) -> LayerPiece:
    where = "bays" if one.layer.between else "members" if one.layer.over else "all"
    return LayerPiece(
        one.of, one.name, one.layer.of, known(one.layer.thick), "bays" if where == "bays" else
        "members" if where == "members" else "all", there_of(shares.get(one.of)), known(one.layer.resistance),
    )  # fmt: skip


def _lining(layers: list[StandingLayer], shares: dict[str, Band] | None, depth: Band | None) -> Band:
    """Return how far the layers stand into the room from the members' face.

    What lies between members takes none of it, but for what is thicker than they are deep. How thick nobody wrote, it
    is taken to end at their face.
    """
    lining = together(_thick(one, shares) for one in layers if not one.layer.between)
    filling = together(
        _thick(one, shares) for one in layers if one.layer.between and known(one.layer.thick) is not None
    )
    if depth is None:
        return lining
    out = less(filling, depth)
    if out.high <= 0.0:
        return lining
    return together((lining, Band(max(out.best, 0.0), max(out.low, 0.0), out.high, True, out.spread, out.assumed)))


def _thick(one: StandingLayer, shares: dict[str, Band] | None) -> Band:
    thick = known(one.layer.thick) or UNKNOWN
    if shares is None:
        return thick
    share = shares.get(one.of)
    if share is None:
        return ZERO
    if share.spread == "perhaps":
        return Band(thick.best / 2.0, 0.0, thick.high, thick.known, "interval", thick.assumed)
    return thick


def buildup_at(buildups: tuple[Buildup, ...], wall: str, bay: str, is_member: bool) -> Buildup | None:
    """Return the layers at a place of a wall: those of its own bay where that is written."""
    mine: Iterator[Buildup] = (one for one in buildups if one.wall == wall)
    found = list(mine)
    if bay and not is_member:
        own = next((one for one in found if one.bay == bay), None)
        if own is not None:
            return own
    place = "member" if is_member else "bay"
    return next((one for one in found if not one.bay and one.place == place), None)
