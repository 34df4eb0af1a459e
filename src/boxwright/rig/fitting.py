"""What layout sees of the parts and openings of a rig: their places at each time, how they move, what carries them."""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines import cutting, frame, heat, layout, power, structure
from boxwright.disciplines.frame.parts import Opening
from boxwright.disciplines.layout.parts import BlockWords, Closed, Fitted, Hazard, Piece, Swing
from boxwright.exchange import Vector
from boxwright.model.place import Place, Surfaces, side_word
from boxwright.rig.kept import burns_with_a_flame, comes_framed, middles_of, said_otherwise
from boxwright.rig.rig import Item
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_band

Corners = tuple[Vector, Vector]
OF_THE_MAINS = frozenset({"ac", "mains", "shore", "hookup", "breaker", "consumer", "distribution"})
HOLDS_BREAKERS = frozenset({"panel", "box", "unit", "board"})
"""Two words, one of each, make the name of what holds the breakers of the mains."""
Known = dict[str, tuple[Item, Fitted, HeaderUnits]]


def fitted_of(
    parts: tuple[Item, ...], openings: tuple[Item, ...], room: Surfaces, units: HeaderUnits, known: Known | None = None
) -> layout.Section:
    """Return every part and opening as layout sees it; ``known`` keeps what an unchanged part came to."""
    known = {} if known is None else known
    paths = {item.name: item.of for item in parts}
    return layout.Section(
        tuple(_remembered(item, paths, units, known) for item in parts),
        tuple(_closed(item, units) for item in openings),
        room,
    )


def _closed(item: Item, units: HeaderUnits) -> Closed:
    own = item.own if isinstance(item.own, Opening) else None
    is_unit = own is not None and comes_framed(own.unit)
    is_doubted = own is not None and said_otherwise(item, own.cut) != ""
    wall = _side(item.words.wall, units)
    return Closed(item.of, item.name, wall, item.place, _leaf(item), item.marks, is_unit, _off(item, wall), is_doubted)


def _off(item: Item, wall: str) -> Vector:
    """Return how far the sides of a hole may be other than they are taken to be (m), along, across and up."""
    if not isinstance(item.own, Opening):
        return (0.0, 0.0, 0.0)
    along, up, over = (
        max(one.high - one.best, one.best - one.low) if one is not None and one.known else 0.0
        for one in (item.own.width, item.own.height, item.own.across)
    )
    if wall in {"left", "right"}:
        return along, 0.0, up
    return (0.0, along, up) if wall in {"front", "rear"} else (along, over, up)


def _facet(item: Item) -> layout.Facet | None:
    facet = item.facet("layout")
    return facet if isinstance(facet, layout.Facet) else None


def _leaf(item: Item) -> layout.Facet | None:
    """Return what layout reads of an opening; how its window opens may be written of the unit that goes in it."""
    facet = _facet(item)
    unit = item.own.unit if isinstance(item.own, Opening) else None
    if (facet is not None and facet.swing is not None) or unit is None or unit.swing is None:
        return facet
    sash = unit.swing
    swing = Swing.model_construct(hinge=sash.hinge, opens=sash.opens, to=sash.to)
    return (facet or layout.Facet()).model_copy(update={"swing": swing})


def _remembered(item: Item, paths: dict[str, str], units: HeaderUnits, known: Known) -> Fitted:
    had = known.get(item.of)
    carriers = paths.get(item.words.inside, ""), paths.get(item.words.rides_on, "")
    if had is None or had[0] is not item or (had[1].inside, had[1].rides_on) != carriers or had[2] != units:
        had = known[item.of] = item, _fitted(item, paths, units), units
    return had[1]


def _fitted(item: Item, paths: dict[str, str], units: HeaderUnits) -> Fitted:
    words, facet, built, framed = item.words, _facet(item), item.facet("structure"), item.facet("frame")
    sawn = item.facet("cutting")
    carcass = sawn.carcass if isinstance(sawn, cutting.Facet) else None
    hinge = built.hinge.edge if isinstance(built, structure.Facet) and built.hinge is not None else ""
    return Fitted(
        of=item.of,
        name=item.name,
        kind=words.kind,
        place=item.place,
        is_sized=all(extent > 0.0 and isfinite(extent) for extent in item.place.size) and _are_placed(facet),
        folded=item.folded,
        asleep=item.asleep,
        leaves_at_night=item.leaves_at_night,
        along=middles_of(item, units),
        count=1 if item.words.at else item.words.count or 1,
        inside=paths.get(words.inside, ""),
        rides_on=paths.get(words.rides_on, ""),
        folds=words.folds,
        folded_depth=words.folded_depth,
        wall=_side(words.wall, units),
        recess=framed.recess if isinstance(framed, frame.Facet) else None,
        hinge=_side(hinge, units),
        legs=_legs(built, item.place, units) if isinstance(built, structure.Facet) else (),
        pieces=tuple(_piece(one) for one in facet.blocks) if facet is not None else (),
        drawers=tuple(max(one.best, one.high) for one in carcass.drawers) if carcass is not None else (),
        doors=carcass.doors if carcass is not None else 0,
        has_lid=carcass is not None and carcass.lid is True,
        ply=_thick(carcass.ply) if carcass is not None else 0.0,
        back=_thick(carcass.back) if carcass is not None else 0.0,
        shelves=carcass.shelves if carcass is not None else 0,
        facet=facet,
        marks=item.marks,
        hazard=_hazard(item),
    )


def _hazard(item: Item) -> Hazard:
    """Return what makes a part want room round it: a heater gets hot, a flame burns, the mains are worked at."""
    if burns_with_a_flame(item):
        return "flame"
    warm, wired = item.facet("heat"), item.facet("power")
    if isinstance(warm, heat.Facet) and warm.heater is not None:
        return "hot"
    is_panel = isinstance(wired, power.Facet) and "rcd" in wired.model_fields_set
    words = frozenset(item.name.lower().replace("hook-up", "hookup").replace("-", " ").split())
    return "panel" if is_panel or (words & OF_THE_MAINS and words & HOLDS_BREAKERS) else ""


def _side(wall: str, units: HeaderUnits) -> str:
    """Return the wall a word of the trade means to the home country, empty where none is written."""
    return side_word(wall.strip(), units.words) if wall.strip() else ""


def _are_placed(facet: layout.Facet | None) -> bool:
    """Return whether it is known where in a thing the boxes it is made up of are, as far as any is written."""
    blocks = facet.blocks if facet is not None else ()
    return all(edge is None or edge.known for one in blocks for edge in (one.x, one.side, one.z))


def _piece(words: BlockWords) -> Piece:
    """Return one box of a thing, as large as it is in doubt where it begins."""
    edges = [edge if edge is not None and edge.known else exactly(0.0) for edge in (words.x, words.side, words.z)]
    x, y, z = (edge.low for edge in edges)
    length, width, height = (side + edge.high - edge.low for side, edge in zip(words.size, edges, strict=True))
    return Piece((x, y, z), (length, width, height))


def _thick(band: Band | None) -> float:
    return max(band.best, 0.0) if band is not None and band.known and isfinite(band.best) else 0.0


def _legs(facet: structure.Facet, place: Place, units: HeaderUnits) -> tuple[Corners, ...]:
    """Return the corners of each leg under a part that is down; none where it is not written where they stand."""
    legs = facet.legs
    if legs is None or legs.size is None or not legs.side.startswith("+"):
        return ()
    try:
        across = read_band(legs.side[1:].strip(), "length", units).best
    except CannotRead:
        return ()
    left, under = place.low_edge(1).best + across, place.low_edge(2).best
    length, width, height = legs.size
    return tuple(
        ((one.best - length / 2.0, left, under - height), (one.best + length / 2.0, left + width, under))
        for one in legs.at
        if one.known
    )
