"""What a square metre of a plane of the box loses, with its doubt, and how cold its inside face is at its coldest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from boxwright.disciplines.heat import method
from boxwright.disciplines.heat.across import (
    Across,
    Layer,
    at_member,
    between_members,
    by_hand,
    laid_out,
    resistance,
)
from boxwright.disciplines.heat.as_built import (
    FILMS,
    KEEPS,
    MEMBERS,
    AsBuilt,
    End,
    as_built,
    is_led_aside,
    size_of,
    unsaid_of,
)
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.stored import ASIDE, TABLE, Held, coordinates, estimate, is_stored, look_up, read_as
from boxwright.exchange import Layup
from boxwright.records import dataclass
from boxwright.units import Band, exactly

SHARES: dict[str, tuple[float, ...]] = columns("shell_shares")
MORE = SHARES["a member, more than a clean section"]
BY_HAND = SHARES["by hand where nothing is stored"]
BARE = SHARES["a bare skin with its members"]
EDGE = SHARES["an edge, as much as a member"]
AIR_FILM = FILMS["air alone"][0]
AIR_FILMS: dict[End, float] = {"best": AIR_FILM, "low": FILMS["air alone"][2], "high": FILMS["air alone"][1]}
"""The film of the air alone at each end of loss: a fan or a roof makes it thin, a cupboard before a wall thick."""
MOULD_FILM = FILMS["mould"][0]
METAL = columns("layers_unsaid")["metal"][0]
_PLACE: dict[End, int] = {"best": 0, "low": 1, "high": 2}
How = Literal["stored", "by hand", "straight through", "layers", "bare"]


@dataclass(frozen=True, slots=True)
class Through:
    """What a plane loses under one film inside: W/m2K in the middle of a bay, W/mK for each metre of member beyond it.

    ``flux`` is what its coldest place inside takes from the room, for each degree between room and outside (W/m2K).
    """

    bay: float
    member: float
    flux: float
    how: How


@dataclass(frozen=True, slots=True)
class Planed:
    """A plane at its three ends of loss: W/m2K with its members, in the middle of a bay, W/mK of a member.

    ``by_air`` is its transmittance (``member_by_air`` of a member) where only the air of the room warms its face,
    which holds in a trailer whose faces are all cold. ``member_factor`` and ``bay_factor`` are temperature factors
    of the inside face with the film of mould, ``lining_factor`` that of the back of what covers the members,
    ``skin_factor`` that of the skin behind the foam. ``straight`` is the transmittance if heat went straight
    through, which no metal lets it. ``wide`` is how wide a member's cold shows inside (m), ``density`` how many
    metres of member lie in a square metre: assumed from none to many where nobody wrote them.
    """

    transmittance: Band
    by_air: Band
    bay: Band
    member: Band
    member_by_air: Band
    member_factor: Band
    bay_factor: Band
    lining_factor: Band
    skin_factor: Band
    straight: float
    how: How
    across: Across
    wide: float
    density: Band


def through_of(built: AsBuilt, end: End) -> Through:
    """Return what a section loses at an end: from the stored sections, else by hand with the error of that."""
    across, bay = built.across, between_members(built.across)
    if built.kind in ("layers", "bare"):
        return Through(bay, 0.0, bay, "layers" if built.kind == "layers" else "bare")
    if built.kind == "timber" and not _is_metal(across):
        member = at_member(across)
        return Through(bay, (member - bay) * across.face, member, "straight through")
    found = read_as(across, TABLE)
    if is_stored(found, TABLE) and not is_led_aside(across):
        held, near = _looked_up(found), between_members(found)
        sign = {"low": -1.0, "best": 0.0, "high": 1.0}[end]
        added = (held.through - near * (across.face + ASIDE)) * MORE[_PLACE[end]]
        added += sign * TABLE.off[0] * (bay * across.spacing + added)
        more = 1.0 + sign * TABLE.off[1]
        return Through(bay, added, max(held.flux * more, bay), "stored")
    by_rule = by_hand(across)
    whole = by_rule.planes if end == "high" and is_led_aside(across) else by_rule.zone
    rough = estimate(coordinates(across))
    added = max(whole - bay, 0.0) * across.spacing * BY_HAND[_PLACE[end]] * MORE[_PLACE[end]]
    return Through(bay, added, max(rough.flux * BY_HAND[_PLACE[end]], bay), "by hand")


@lru_cache(maxsize=512)
def _looked_up(across: Across) -> Held:
    return look_up(across, TABLE)


def _is_metal(across: Across) -> bool:
    return across.metal > 5.0


def member_with(across: Across, strip: Layer) -> float:
    """Return what each metre of member adds with a strip over it (W/mK), at best, in the film of the air alone.

    A strip leaves a gap beside it, which keeps heat too: it is counted to the member.
    """
    still = replace(across, inside_film=AIR_FILM)
    found = through_of(AsBuilt("framed", replace(still, over=(strip,))), "best")
    return found.member + (found.bay - between_members(still)) * across.spacing


def is_bridged(planed: Planed) -> bool:
    """Return whether members of metal reach from the cold into the room with nothing over them that keeps heat."""
    across = planed.across
    keeps = any(through <= KEEPS for _, through in (*across.over, *across.inner))
    return planed.how in ("stored", "by hand") and _is_metal(across) and not keeps


@dataclass(frozen=True, slots=True)
class _End:
    """A plane at one end of loss under one film; with a layer that may be missing, also without it."""

    end: End
    found: tuple[tuple[AsBuilt, Through], ...]

    def mean(self, value: Callable[[AsBuilt, Through], float]) -> float:
        """Return the mean of a value with and without the layer that may be missing."""
        return sum(value(*one) for one in self.found) / len(self.found)


def plane_of(layup: Layup) -> Planed:
    """Return what a plane loses. Where a layer may be missing, best is the mean of with and without it."""
    # Where it is and how large it is says nothing of a square metre of it: planes that are built alike are one.
    return _plane(replace(layup, of="", wall=_film_of(layup.wall), bay="", area=exactly(1.0), outward=(0.0, 0.0, 0.0),
                          members=exactly(0.0), edge=exactly(0.0)), _density(layup))  # fmt: skip


def house_film(wall: str) -> float:
    """Return the film inside that a house would have (m2K/W): with all of its warm faces radiating to each other."""
    return FILMS[_film_of(wall)][0]


def _film_of(wall: str) -> str:
    return wall if wall in ("roof", "floor") else "wall"


@lru_cache(maxsize=64)
def _plane(layup: Layup, density: Band) -> Planed:
    house, mould = (_ends(layup, dict.fromkeys(_PLACE, film)) for film in (house_film(layup.wall), MOULD_FILM))
    air = _ends(layup, AIR_FILMS)
    is_known = not any(one.is_unknown for one in unsaid_of(layup))
    shown = house[0].found[0][0].across
    return Planed(
        transmittance=_band(house, lambda end: lambda _, one: _whole(one, density, end), is_known),
        by_air=_band(air, lambda end: lambda _, one: _whole(one, density, end), is_known),
        bay=_band(house, lambda _: lambda _, one: one.bay, is_known),
        member=_band(house, lambda _: lambda _, one: one.member, is_known),
        member_by_air=_band(air, lambda _: lambda _, one: one.member, is_known),
        member_factor=_factor(mould, lambda _, one: MOULD_FILM * one.flux, is_known),
        bay_factor=_factor(mould, lambda _, one: MOULD_FILM * one.bay, is_known),
        lining_factor=_factor(
            mould, lambda built, one: (MOULD_FILM + resistance(built.across.inner)) * one.flux, is_known
        ),
        skin_factor=_factor(mould, lambda built, one: 1.0 - built.across.outside_film * one.bay, is_known),
        straight=house[0].mean(lambda built, one: one.bay + _straight(built) * density.best),
        how=house[0].found[0][1].how if density.high > 0.0 or house[0].found[0][1].how == "bare" else "layers",
        across=shown,
        wide=shown.face + 2.0 * sum(thick for thick, _ in (*shown.over, *shown.inner)),
        density=density,
    )


def _ends(layup: Layup, films: dict[End, float]) -> tuple[_End, ...]:
    """Return a plane at best, at its low and at its high end of loss, each under its own film inside."""
    is_doubtful = any(not one.is_certain for one in layup.layers)
    found: list[_End] = []
    for end in _PLACE:
        with_it: tuple[bool, ...] = {"low": (True,), "high": (False,), "best": (True, False)}[end]
        built = [as_built(layup, end, films[end], one) for one in (with_it if is_doubtful else with_it[:1])]
        found.append(_End(end, tuple((one, through_of(one, end)) for one in built)))
    return tuple(found)


def _whole(through: Through, density: Band, end: End) -> float:
    """Return the transmittance with ``density`` metres of member in a square metre."""
    if through.how == "bare":
        return through.bay * BARE[_PLACE[end]]
    metres = {"best": density.best, "low": density.low, "high": density.high}[end]
    return max(through.bay + through.member * metres, through.bay / 2.0)


def _straight(built: AsBuilt) -> float:
    """Return what a member would add if heat went straight through it (W/mK)."""
    if built.kind in ("layers", "bare"):
        return 0.0
    laid = laid_out(built.across)
    half = method.parallel_path(laid.widths, laid.depths, laid.rows, built.across.films)
    return (half - between_members(built.across)) * built.across.spacing


def _band(ends: tuple[_End, ...], value: Callable[[End], Callable[[AsBuilt, Through], float]], is_known: bool) -> Band:
    best, *others = (one.mean(value(one.end)) for one in ends)
    return Band(best, min(best, *others), max(best, *others), is_known, "interval")


def _factor(ends: tuple[_End, ...], drop: Callable[[AsBuilt, Through], float], is_known: bool) -> Band:
    best, *others = (min(max(1.0 - one.mean(drop), 0.0), 1.0) for one in ends)
    return Band(best, min(best, *others), max(best, *others), is_known, "interval")


def _density(layup: Layup) -> Band:
    """Return the metres of member in a square metre, never more than cover it.

    Where nobody wrote the members there may be none, or those of a frame that is as close as any.
    """
    if layup.bay:
        return exactly(0.0)
    face, spacing = size_of(layup.member_face), size_of(layup.spacing)
    most = 1.0 / (face.best if face is not None else MEMBERS["face"].best)
    if not layup.members.known:
        unsaid = MEMBERS["spacing"]
        return Band(1.0 / unsaid.best, 0.0, 1.0 / unsaid.low, spread="interval", assumed=True)
    if layup.area.known and layup.area.best > 0.0:
        return exactly(min(layup.members.best / layup.area.best, most))
    return exactly(min(1.0 / spacing.best, most) if spacing is not None else 0.0)
