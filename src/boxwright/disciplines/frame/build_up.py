"""Sections through the walls: what lies behind what, half of full size, with names and thickness."""

from __future__ import annotations

from boxwright.disciplines.frame.drawn import THERE, UNSAID, Drawn, Marks, Ruler
from boxwright.disciplines.frame.result import Buildup, LayerPiece, Wall
from boxwright.drawing import Dimension, Leader, Shape, Sheet, Text, View
from boxwright.drawing.mark import Fill, LineKind
from boxwright.units import Band, CannotRead, read_band

HALF = 0.085
"""Half the length of wall that is shown, a stud in its middle (m)."""
SHOWN = 0.003
"""How thick a layer is drawn whose thickness nobody wrote (m); its note says that it is not known."""
FILLS: tuple[tuple[tuple[str, ...], Fill], ...] = (
    (("xps", "eps", "foam", "pir", "wool", "polyiso", "cork"), "foam"),
    (("ply", "wood", "timber", "board", "pine", "spruce", "mdf", "osb"), "wood"),
    (("alu", "steel", "skin", "grp", "composite", "sheet"), "skin"),
)


def sections(drawn: Drawn) -> Sheet:
    """Return the sheet of the sections: one for all walls that are built alike, and for each bay that differs."""
    alike: dict[tuple[object, ...], list[tuple[Wall, Buildup]]] = {}
    for wall in drawn.frame.walls:
        for bay in drawn.frame.buildups:
            if bay.wall == wall.name and bay.place == "bay":
                alike.setdefault(_key(wall, bay), []).append((wall, bay))
    views = [_view(drawn, *found[0], [wall.name for wall, _ in found]) for found in alike.values()]
    title = "Sections: a stud and half a bay on each side of it"
    return Sheet("sections", title, tuple(views), (), (), 1.0 / 2.0)


def _key(wall: Wall, bay: Buildup) -> tuple[object, ...]:
    """Return what two walls have in common that are drawn alike; roof, floor and a named bay stand alone."""
    pieces = tuple((one.name, one.material, one.thick, one.where, one.there) for one in bay.layers)
    alone = wall.name if wall.name in ("roof", "floor") else bay.bay
    return alone, wall.tube, wall.skin, pieces, bay.standing


def deck_of(drawn: Drawn) -> tuple[float, str]:
    """Return how thick the trailer's own deck is drawn (m), and its name: `ply 3/4` is material and thickness."""
    material, _, size = drawn.deck.strip().partition(" ")
    for text, of in ((size, material), (material, size)):
        try:
            thick = read_band(text, "length", drawn.units)
        except CannotRead:
            continue
        if thick.known and thick.best > 0.0:
            return thick.best, " ".join(one for one in ("deck", of, drawn.ruler.thickness(thick)) if one)
    return SHOWN, " ".join(one for one in ("deck", drawn.deck.strip(), UNSAID) if one)


def _view(drawn: Drawn, wall: Wall, bay: Buildup, walls: list[str]) -> View:
    over, ruler = drawn.buildup(wall.name, "member"), drawn.ruler
    half_face = wall.tube.face.best / 2.0 if wall.tube.face is not None and wall.tube.face.known else 0.0125
    depth = wall.tube.depth.best if wall.tube.depth is not None and wall.tube.depth.known else _deep(drawn, wall, bay)
    is_floor = wall.name == "floor"
    skin = 0.0 if is_floor else shown_thick(wall.skin)
    top = skin + depth
    marks: Marks = [] if is_floor else _plate(0.0, skin, f"skin {ruler.thickness(wall.skin)}", wall.of, "skin")
    over_top = liner_from = max(top, skin + sum(shown_thick(one.thick) for one in bay.layers if one.where == "bays"))
    if is_floor:
        deck, words = deck_of(drawn)
        marks += _plate(top, top + deck, words, "frame.floor.deck", "wood")
        over_top = liner_from = top + deck
    for one in over.layers if over is not None else ():
        if one.where == "members":
            at, thick = over_top - liner_from + top, shown_thick(one.thick)
            marks.append(_layer(one, -half_face, half_face, at, thick))
            marks.append(Leader((0.0, over_top + thick / 2.0), _words(one, ruler), one.of))
            over_top += thick
    marks += _member(wall, half_face, skin, top)
    marks += _layers(bay, half_face, skin, over_top, ruler)
    inside = over_top + sum(shown_thick(one.thick) for one in bay.layers if one.where == "all")
    foot = top + deck_of(drawn)[0] if is_floor else 0.0
    said = f"{ruler.thickness(bay.finished)} {'on the deck' if is_floor else 'finished'}"
    marks.append(Dimension((-HALF, foot), (-HALF, max(inside, top)), said, bay.of, "left", 0))
    marks += [
        Text((0.0, max(inside, top) + 0.012), "ROOM", wall.of, "small"),
        Text((0.0, -0.012), "OUTSIDE", wall.of, "small"),
    ]
    name = ", ".join(one.replace("-", " ") for one in walls).capitalize()
    name += "" if wall.name in ("roof", "floor") else " wall" if len(walls) == 1 else " walls"
    named = f"{name}, bay {bay.bay.rpartition(' ')[2]}" if bay.bay else name
    return View(named, f"now {ruler.thickness(bay.standing)} thick", tuple(marks))


def _plate(low: float, high: float, words: str, of: str, fill: Fill) -> Marks:
    corners = ((-HALF, low), (HALF, low), (HALF, high), (-HALF, high))
    return [Shape(corners, "cut", of, fill), Leader((HALF * 0.6, (low + high) / 2.0), words, of)]


def _member(wall: Wall, half_face: float, skin: float, top: float) -> Marks:
    """Return the stud, bow or cross-member that is cut through, hollow where the wall of its tube is known."""
    kind = {"roof": "bow", "floor": "cross-member"}.get(wall.name, "stud")
    corners = ((-half_face, skin), (half_face, skin), (half_face, top), (-half_face, top))
    marks: Marks = [Shape(corners, "cut", wall.of, "none")]
    inner = _inset(half_face, skin, top, wall.tube.gauge.best if wall.tube.gauge is not None else 0.0)
    if inner is not None:
        marks.append(Shape(inner, "visible", wall.of))
    words = f"{kind} {wall.tube.written}".strip()
    return [*marks, Leader((half_face * 0.5, skin + (top - skin) * 0.75), words, wall.of)]


def _layers(bay: Buildup, half_face: float, here: float, inside: float, ruler: Ruler) -> Marks:
    """Return the layers between the members from ``here`` on, and those over all from ``inside`` on."""
    marks: Marks = []
    for one in bay.layers:
        thick = shown_thick(one.thick)
        if one.where == "members":
            continue
        if one.where == "bays":
            at = here
            marks += [_layer(one, -HALF, -half_face, at, thick), _layer(one, half_face, HALF, at, thick)]
            here += thick
        else:
            at = inside
            marks.append(_layer(one, -HALF, HALF, at, thick))
            inside += thick
        aside = -HALF * 0.7 if one.where != "all" else HALF * 0.6
        marks.append(Leader((aside, at + thick / 2.0), _words(one, ruler), one.of))
    return marks


def _deep(drawn: Drawn, wall: Wall, bay: Buildup) -> float:
    """Return how deep members are drawn whose section says nothing of it."""
    depths = (one.depth for one in drawn.frame.members_of(wall.name) if one.depth is not None and one.depth.known)
    held = next((one.best for one in depths if one.best > 0.0), 0.0)
    return held or sum(shown_thick(one.thick) for one in bay.layers if one.where == "bays") or 0.025


def shown_thick(thick: Band | None) -> float:
    """Return how thick a layer is drawn, thin where nobody wrote it (m)."""
    return thick.best if thick is not None and thick.known and thick.best > 0.0 else SHOWN


def _layer(one: LayerPiece, low: float, high: float, foot: float, thick: float) -> Shape:
    line: LineKind = "phantom" if one.there == "later" else "hidden" if one.there == "perhaps" else "visible"
    corners = ((low, foot), (high, foot), (high, foot + thick), (low, foot + thick))
    return Shape(corners, line, one.of, fill_of(one))


def fill_of(one: LayerPiece) -> Fill:
    """Return what a layer is hatched with, by the words of its material."""
    words = f"{one.material} {one.name}".lower()
    return next((fill for keys, fill in FILLS if any(key in words for key in keys)), "none")


def _words(one: LayerPiece, ruler: Ruler) -> str:
    there = "" if one.there == "yes" else f", {THERE[one.there]}"
    of = one.material if one.material and one.material != one.name else ""
    return " ".join(part for part in (one.name, of, ruler.thickness(one.thick)) if part) + there


def _inset(half: float, skin: float, top: float, gauge: float) -> tuple[tuple[float, float], ...] | None:
    """Return the hollow of a tube; None where its wall is not known."""
    if not 0.0 < gauge < half:
        return None
    low, high = skin + gauge, top - gauge
    return (-half + gauge, low), (half - gauge, low), (half - gauge, high), (-half + gauge, high)
