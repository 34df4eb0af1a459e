"""A plane of the box as it stands, read into sections: one at each end of what is not known of it.

Ends are of heat loss: "low" takes every doubt as it loses least, "high" as it loses most. What may as well be missing
is in the low one and not in the high one.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from boxwright.disciplines.heat.across import SAME, Across, Layer
from boxwright.disciplines.heat.material import GAPS, Material, columns, interval, read_material
from boxwright.exchange import Layup, LayupLayer
from boxwright.records import dataclass
from boxwright.units import Band, exactly

End = Literal["low", "best", "high"]
ENDS: tuple[End, ...] = ("low", "best", "high")
FILMS: dict[str, tuple[float, ...]] = columns("films")
MEMBERS: dict[str, Band] = {name: interval(*row) for name, row in columns("members_unsaid").items()}
"""What is taken of members, deck and skin where nobody wrote it."""
LEAST_FOAM = columns("layers_unsaid")["least foam"][0]
KEEPS = columns("layers_unsaid")["keeps heat"][0]
"""W/mK: what conducts no more than this is put there to keep heat. A narrow gap, never tight, is worth as little."""
THICKEST, THINNEST, OVER = (columns("layer_lengths")[name][0] for name in ("thickest", "thinnest", "over the members"))
LEAST_LABEL = GAPS["least label"].best
"""m2K/W: what a label says is more than this, or it is a slip of the pen."""
NOTHING = exactly(0.0)
NOT_CONDUCTING: Layer = (0.0005, 0.8)
"""Put where a plane has no skin, as the floor between its cross-members: it neither keeps heat nor leads it aside."""
CLOSEST = 2.0
"""Faces from the middle of a member to the middle of the next: closer ones leave no bay to cut a section through."""
SINGLE_WEB = frozenset({"channel", "zed", "angle"})
METALS = frozenset({"steel", "aluminium", "stainless"})
LATERAL = 0.005
"""W/K: thickness times conductivity from which on a lining leads heat aside as no board does."""


@dataclass(frozen=True, slots=True)
class Unsaid:
    """What nobody wrote of a layer, or wrote so that it cannot be.

    ``what``: material, thickness; nothing of a layer of no thickness, "resists nothing" of a label; "too deep" of one
    that fills more than the members are deep, with ``thick`` of all that lies between them and their ``depth`` (m).
    """

    of: str
    name: str
    what: Literal["material", "thickness", "nothing", "resists nothing", "too deep"]
    written: str
    thick: float = 0.0
    depth: float = 0.0

    @property
    def is_unknown(self) -> bool:
        """Return whether no heat loss can be told without it."""
        return self.what in ("material", "thickness")


@dataclass(frozen=True, slots=True)
class AsBuilt:
    """A section at one end.

    ``kind``: "framed" across a metal member, "timber", "layers" where no member bridges any, "bare" where nothing
    keeps heat.
    """

    kind: Literal["framed", "timber", "layers", "bare"]
    across: Across


def end_of(band: Band | None, end: End, is_more_for_more: bool, unsaid: Band = NOTHING) -> float:
    """Return a value at an end of heat loss; ``unsaid`` is taken where nobody wrote it."""
    taken = band if band is not None and band.known else unsaid
    if end == "best":
        return taken.best
    return taken.high if (end == "high") == is_more_for_more else taken.low


def size_of(band: Band | None) -> Band | None:
    """Return a size that is one: nothing or less is as good as not written."""
    return band if band is not None and band.known and band.low >= THINNEST else None


def unsaid_of(layup: Layup) -> tuple[Unsaid, ...]:
    """Return what is not known of the layers of a plane."""
    found: list[Unsaid] = []
    for one in layup.layers:
        if one.thick is not None and one.thick.known and one.thick.high <= 0.0:
            found.append(Unsaid(one.of, one.name, "nothing", one.material))
            continue
        if one.resistance is not None and not is_labelled(one):
            found.append(Unsaid(one.of, one.name, "resists nothing", one.material))
        if read_material(one.material, one.name) is None and not is_labelled(one):
            found.append(Unsaid(one.of, one.name, "material", one.material))
        if one.thick is None or not one.thick.known:
            found.append(Unsaid(one.of, one.name, "thickness", one.material))
    return (*found, *_too_deep(layup))


def _too_deep(layup: Layup) -> list[Unsaid]:
    """Return the last layer between members where all of them are thicker than the members are deep."""
    depth = size_of(layup.member_depth)
    between = [one for one in layup.layers if one.where == "bays" and one.thick is not None and one.thick.known]
    thick = sum(one.thick.low for one in between if one.thick is not None)
    if depth is None or thick <= depth.high + OVER:
        return []
    last = between[-1]
    return [Unsaid(last.of, last.name, "too deep", last.material, thick, depth.high)]


def as_built(layup: Layup, end: End, film: float, with_doubtful: bool) -> AsBuilt:
    """Return the section of a plane at one end; ``film`` is that of the inside (m2K/W)."""
    there = [one for one in layup.layers if one.is_certain or with_doubtful]
    depth = end_of(size_of(layup.member_depth), end, False, MEMBERS["depth"])
    filling = _filling([one for one in there if one.where == "bays"], depth, end)
    over = _layers([one for one in there if one.where == "members"], end)
    inner = _layers([one for one in there if one.where == "all"], end)
    is_floor = layup.wall == "floor"
    if is_floor:
        inner = (*_deck(layup, end), *inner)
    metal, is_solid = _metal(layup, end)
    sheet = end_of(size_of(layup.member_gauge), end, True, MEMBERS["gauge"])
    face = end_of(size_of(layup.member_face), end, True, MEMBERS["face"])
    across = Across(
        face=face,
        depth=depth,
        sheet=sheet / 2.0 if layup.member_shape in SINGLE_WEB else sheet,
        metal=metal,
        spacing=max(end_of(size_of(layup.spacing), end, False, MEMBERS["spacing"]), CLOSEST * face),
        skin=NOT_CONDUCTING if is_floor else _skin(layup, end),
        filling=filling,
        gap=0.0,
        over=over,
        inner=inner,
        outside_film=FILMS["outside"][0],
        inside_film=film,
        is_solid=is_solid,
    )
    left = across.left_of_depth
    if inner and left > SAME:
        across = replace(across, gap=min(end_of(GAPS["air layer"], end, False), left / KEEPS))
    if is_floor and not filling:
        return AsBuilt("layers", replace(across, depth=0.0, gap=0.0, over=()))
    if not filling and not inner:
        return AsBuilt("bare", replace(across, depth=0.0, over=()))
    return AsBuilt("timber" if is_solid else "framed", across)


def is_led_aside(across: Across) -> bool:
    """Return whether a lining of metal leads heat aside, as no section that is stored does."""
    return any(thick * through > LATERAL for thick, through in across.inner)


def _filling(layers: list[LayupLayer], depth: float, end: End) -> tuple[Layer, ...]:
    """Return what fills the bays; nothing of it counts beyond the members' depth, where lining or room begins."""
    found: list[Layer] = []
    left = depth
    for one in layers:
        thick, through = _layer(one, end, depth)
        thick = min(thick, left)
        if thick > SAME:
            found.append((thick, through))
            left -= thick
    return tuple(found)


def _layers(layers: list[LayupLayer], end: End) -> tuple[Layer, ...]:
    worked = (_layer(one, end, THICKEST) for one in layers)
    return tuple(one for one in worked if one[0] > SAME)


def _layer(one: LayupLayer, end: End, deepest: float) -> Layer:
    """Return thickness and conductivity of a layer at an end: none of it where nobody knows, but at the low end."""
    thick = max(end_of(one.thick, end, False, Band(0.0, 0.0, deepest, known=False)), 0.0)
    if is_labelled(one):
        # What a label says is of the whole layer, as thick as it is written at this end.
        return thick, max(thick, OVER) / end_of(one.resistance, end, False)
    made = read_material(one.material, one.name)
    if made is None:
        return (thick if end == "low" else 0.0), LEAST_FOAM
    return thick, conducts(made, thick, end)


def conducts(made: Material, thick: float, end: End) -> float:
    """Return what a material conducts at an end; shut-in air by what a layer of it resists."""
    if made.kind == "air":
        resists = end_of(GAPS["air layer"], end, False)
        return max(thick / resists, LEAST_FOAM)
    return end_of(made.conductivity, end, True)


def is_labelled(one: LayupLayer) -> bool:
    """Return whether the R value of a layer is written, and is one."""
    return one.resistance is not None and one.resistance.low >= LEAST_LABEL


def _deck(layup: Layup, end: End) -> tuple[Layer, ...]:
    """Return the trailer's own deck; ``skin`` is its thickness."""
    made = read_material(layup.skin_of, "ply")
    thick = end_of(size_of(layup.skin), end, False, MEMBERS["deck"])
    return ((thick, conducts(made, thick, end)),) if made is not None and thick > SAME else ()


def _skin(layup: Layup, end: End) -> Layer:
    made = read_material(layup.skin_of)
    thick = end_of(size_of(layup.skin), end, True, MEMBERS["skin"])
    if made is None:
        return thick, end_of(None, end, True, MEMBERS["skin conducts"])
    return thick, conducts(made, thick, end)


def _metal(layup: Layup, end: End) -> tuple[float, bool]:
    """Return what the member conducts, and whether it is filled with it, as timber is."""
    made = read_material(layup.member_material)
    if made is None:
        return end_of(None, end, True, MEMBERS["metal"]), False
    return conducts(made, 1.0, end), made.kind != "metal" or layup.member_shape == "solid"
