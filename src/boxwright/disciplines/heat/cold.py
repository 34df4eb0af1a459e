"""The cold places of the room: where its surface is coldest, and how damp air gets there."""

from __future__ import annotations

import re
from typing import Literal

from boxwright.disciplines.heat.as_built import unsaid_of
from boxwright.disciplines.heat.holes import Filled
from boxwright.disciplines.heat.material import columns, read_material
from boxwright.disciplines.heat.plane import AIR_FILM, MOULD_FILM, SHARES, Planed, house_film
from boxwright.exchange import ColdPlace, Layup, Opening
from boxwright.units import Band, exactly

STILL_FILM = 1.0 / AIR_FILM
"""W/m2K: the film of the room's air on a cold place."""
VAPOUR_TIGHT = columns("vapour_limits")["a tight lining"][0]
"""As how much air (m) a lining resists vapour from which on damp air does not pass through it."""
Reach = Literal["open", "behind", "sealed"]
CORNER = SHARES["a corner, of what a member has"]
MEMBER = {"roof": "bows", "floor": "cross-members"}
_BAY = re.compile(r"\d$")
"""A bay goes by the numbers of its members, a wheel box by its name."""
NAMES = {"roof": "roof", "floor": "floor", "nose-left": "left of the nose", "nose-right": "right of the nose"}


def named(layup: Layup) -> str:
    """Return the words for a plane or a bay of it."""
    if layup.bay:
        return f"bay {layup.bay}" if _BAY.search(layup.bay) else layup.bay
    return NAMES.get(layup.wall, f"{layup.wall} wall")


def members_named(wall: str) -> str:
    """Return the trade's word for the members of a plane."""
    return MEMBER.get(wall, "studs")


def places_of(layup: Layup, planed: Planed) -> tuple[ColdPlace, ...]:
    """Return the cold places of a plane."""
    name, members = named(layup), members_named(layup.wall)
    area, covered = layup.area, min(planed.density.best * planed.wide, 1.0)
    if planed.how == "bare":
        return (ColdPlace(layup.of, f"bare skin, {name}", planed.bay_factor, area, STILL_FILM, "open"),)
    found = [ColdPlace(layup.of, f"between {members}, {name}", planed.bay_factor, scaled(area, 1.0 - covered),
                       STILL_FILM, "open")]  # fmt: skip
    if planed.density.high > 0.0 and planed.how != "layers":
        strip = scaled(area, covered)
        found.append(ColdPlace(layup.of, f"on the {members}, {name}", planed.member_factor, strip, STILL_FILM, "open"))
        reach = _reach(layup)
        if reach is not None:
            what = f"behind the lining on the {members}, {name}"
            found.append(ColdPlace(layup.of, what, planed.lining_factor, strip, STILL_FILM, reach))
    if layup.wall != "floor" and any(one.where == "bays" for one in layup.layers):
        what = f"skin behind the foam, {name}"
        found.append(ColdPlace(layup.of, what, planed.skin_factor, area, STILL_FILM, _reach(layup) or "behind"))
    return tuple(found)


def edge_places(layup: Layup, planed: Planed, strip: Band) -> tuple[ColdPlace, ...]:
    """Return the cold place along the edges of a plane: colder than a member, by how much nobody knows."""
    on_member = planed.member_factor
    factor = Band(
        on_member.best * CORNER[0], on_member.low * CORNER[1], on_member.high * CORNER[2], on_member.known, "interval",
        True,
    )  # fmt: skip
    return (ColdPlace(layup.of, f"corners and rails, {named(layup)}", factor, strip, STILL_FILM, "open"),)


def hole_place(opening: Opening, unit: Filled) -> ColdPlace:
    """Return the cold place that a window, a door or a plug is: glass by a house's film, a leaf by that of mould."""
    film = MOULD_FILM if unit.kind == "door" else house_film(opening.wall)
    through = unit.transmittance
    best, low, high = (min(max(1.0 - film * one, 0.0), 1.0) for one in (through.best, through.high, through.low))
    factor = Band(best, low, high, through.known, "interval")
    return ColdPlace(opening.of, f"{unit.kind} {opening.name}", factor, opening.area, STILL_FILM, "open")


def scaled(band: Band, by: float) -> Band:
    """Return a number that is not below nothing, taken so many times."""
    if by <= 0.0:
        return exactly(0.0)
    return Band(band.best * by, band.low * by, band.high * by, band.known, band.spread, band.assumed)


def _reach(layup: Layup) -> Reach | None:
    """Return how damp air gets behind what lies over all; None where nothing does."""
    over_all = [one for one in layup.layers if one.where == "all"]
    if not over_all:
        return None
    if any(not one.is_certain for one in over_all) or unsaid_of(layup):
        return "behind"
    resists = 0.0
    for one in over_all:
        made = read_material(one.material, one.name)
        if made is not None and one.thick is not None:
            resists += made.vapour.low * one.thick.low
    return "sealed" if resists >= VAPOUR_TIGHT else "behind"
