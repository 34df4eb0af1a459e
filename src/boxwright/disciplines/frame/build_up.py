"""Sections through the walls: what lies behind what, half of full size, with names and thickness."""

from __future__ import annotations

from boxwright.disciplines.frame.drawn import THERE, Drawn, Marks, Ruler
from boxwright.disciplines.frame.result import Buildup, LayerPiece, Wall
from boxwright.drawing import Dimension, Leader, Shape, Sheet, Text, View
from boxwright.drawing.mark import Fill, LineKind

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
    """Return the sheet of the sections, one for each wall whose layers are known."""
    views = [_view(drawn, wall) for wall in drawn.frame.walls if drawn.buildup(wall.name, "bay") is not None]
    notes = (
        "Cut through a stud and half a bay on each side, the skin below, the room above. Thickness as written; "
        "a question mark stands where nobody wrote it.",
    )
    return Sheet("sections", "Sections through the walls", tuple(views), notes, (), 1.0 / 2.0)


def _view(drawn: Drawn, wall: Wall) -> View:
    bay, over = drawn.buildup(wall.name, "bay"), drawn.buildup(wall.name, "member")
    assert bay is not None
    ruler = drawn.ruler
    half_face = wall.tube.face.best / 2.0 if wall.tube.face is not None and wall.tube.face.known else 0.0125
    depth = wall.tube.depth.best if wall.tube.depth is not None and wall.tube.depth.known else _inner(bay)
    skin = wall.skin.best if wall.skin is not None and wall.skin.known and wall.skin.best > 0.0 else SHOWN
    marks: Marks = []
    here, top = skin, skin + depth
    plate = ((-HALF, 0.0), (HALF, 0.0), (HALF, skin), (-HALF, skin))
    marks += [
        Shape(plate, "cut", wall.of, "skin"),
        Leader((HALF * 0.6, skin / 2.0), f"skin {ruler.thickness(wall.skin)}", wall.of),
    ]
    liner_from = max(top, skin + sum(_thick(one) for one in bay.layers if one.where == "bays"))
    over_top = liner_from
    for one in over.layers if over is not None else ():
        if one.where == "members":
            marks.append(_layer(one, -half_face, half_face, over_top - liner_from + top, _thick(one)))
            marks.append(Leader((0.0, over_top + _thick(one) / 2.0), _words(one, ruler), one.of))
            over_top += _thick(one)
    member = wall.tube.written or "stud"
    corners = ((-half_face, skin), (half_face, skin), (half_face, top), (-half_face, top))
    marks.append(Shape(corners, "cut", wall.of, "none"))
    inner = _inset(half_face, skin, top, wall.tube.gauge.best if wall.tube.gauge is not None else 0.0)
    if inner is not None:
        marks.append(Shape(inner, "visible", wall.of))
    marks.append(Leader((half_face * 0.5, skin + depth * 0.75), f"{member}", wall.of))
    inside = over_top
    for one in bay.layers:
        thick = _thick(one)
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
        marks.append(
            Leader((-HALF * 0.7 if one.where != "all" else HALF * 0.6, at + thick / 2.0), _words(one, ruler), one.of)
        )
    whole = f"{ruler.thickness(bay.finished)} finished"
    marks.append(Dimension((-HALF, 0.0), (-HALF, max(inside, top)), whole, bay.of, "left", 0))
    marks += [
        Text((0.0, max(inside, top) + 0.012), "ROOM", wall.of, "small"),
        Text((0.0, -0.012), "OUTSIDE", wall.of, "small"),
    ]
    name = wall.name.replace("-", " ").capitalize()
    what = f"{name} wall" if wall.name not in ("roof", "floor") else name
    return View(what, f"now {ruler.thickness(bay.standing)} thick", tuple(marks))


def _inner(bay: Buildup) -> float:
    return sum(_thick(one) for one in bay.layers if one.where == "bays") or 0.025


def _thick(one: LayerPiece) -> float:
    return one.thick.best if one.thick is not None and one.thick.known and one.thick.best > 0.0 else SHOWN


def _layer(one: LayerPiece, low: float, high: float, foot: float, thick: float) -> Shape:
    line: LineKind = "phantom" if one.there == "later" else "hidden" if one.there == "perhaps" else "visible"
    corners = ((low, foot), (high, foot), (high, foot + thick), (low, foot + thick))
    return Shape(corners, line, one.of, _fill(one))


def _fill(one: LayerPiece) -> Fill:
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
