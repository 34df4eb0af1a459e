"""One view as the text of an SVG for a screen: millimetres of the rig, one group for each thing, colours by the page.

The page restyles it: classes say what kind of line and fill, widths are in millimetres of the screen whatever the zoom.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from boxwright.drawing import Arc, Dimension, Leader, Line, Mark, Shape, Symbol, Text, View
from boxwright.drawing.letters import text_width
from boxwright.drawing.mark import Point, Size
from boxwright.render.svg import escaped, number

MILLIMETRES = 1000.0
LETTER = 0.014
"""The height of ordinary letters as a share of the width of the view: it reads where the whole view fits a screen."""
SIZES: Mapping[Size, float] = {"small": 0.8, "normal": 1.0, "large": 1.3}
MARGIN = 0.04
LEAST = 0.62
"""How small a name may be written to fit its thing, as a share of ordinary letters; one that needs less is left out."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """A view drawn for a screen: its groups by rig path in the order they are drawn, and the box they fill (mm)."""

    groups: Mapping[str, str]
    box: tuple[float, float, float, float]

    @property
    def svg(self) -> str:
        """Return all groups as they stand in the picture."""
        return "".join(self.groups.values())


def drawn(view: View, names: Mapping[str, str], movable: frozenset[str], layers: Mapping[str, str]) -> Drawn:
    """Return a view drawn for a screen. ``names`` are those of things by path, ``layers`` the layer each belongs to.

    What may be moved is a group a keyboard can reach.
    """
    box = _box(view.marks)
    letter = box[2] * LETTER
    marks: dict[str, list[Mark]] = {}
    for mark in view.marks:
        marks.setdefault(mark.of, []).append(mark)
    groups = {
        of: _group(of, own, names.get(of, of), of in movable, layers.get(of, ""), letter) for of, own in marks.items()
    }
    return Drawn(groups, box)


def _group(of: str, marks: list[Mark], name: str, is_movable: bool, layer: str, letter: float) -> str:
    room = _room(marks)
    body = "".join(_mark(mark, letter, room) for mark in marks)
    hold = f' class="thing" tabindex="0" role="button" aria-label="{escaped(name)}"' if is_movable else ""
    on = f' data-layer="{escaped(layer)}"' if layer else ""
    title = f"<title>{escaped(name)}</title>" if is_movable else ""
    return f'<g data-of="{escaped(of)}"{hold}{on}>{title}{body}</g>'


def _room(marks: Iterable[Mark]) -> tuple[float, float]:
    """Return how wide and how high the first shape of a group is (mm): what its name has to fit."""
    for mark in marks:
        if isinstance(mark, Shape):
            across, up = [one[0] for one in mark.points], [one[1] for one in mark.points]
            return (max(across) - min(across)) * MILLIMETRES, (max(up) - min(up)) * MILLIMETRES
    return math.inf, math.inf


def _mark(mark: Mark, letter: float, room: tuple[float, float]) -> str:
    match mark:
        case Shape():
            points = " ".join(_pair(one) for one in mark.points)
            return f'<polygon points="{points}" class="ln {mark.line} fill-{mark.fill}"/>'
        case Line():
            return f'<path d="M{_pair(mark.start)}L{_pair(mark.end)}" class="ln {mark.line}"/>'
        case Arc():
            return f'<path d="{_arc(mark)}" class="ln {mark.line}"/>'
        case Text():
            return _text(mark, letter, room)
        case Symbol():
            return _symbol(mark, letter)
        case Dimension() | Leader():
            return ""


def _text(mark: Text, letter: float, room: tuple[float, float]) -> str:
    """Return words in the middle of their thing, turned or smaller where they need it, left out where they cannot."""
    wide, high = room
    height = letter * SIZES[mark.size]
    width = text_width(mark.words, height) * 1.05
    turn, most = False, 1.0
    if math.isfinite(wide):
        flat, upright = min(wide / width, high / (1.3 * height)), min(high / width, wide / (1.3 * height))
        turn = upright > flat and flat < 1.0
        most = min(1.0, upright if turn else flat)
        if most < LEAST:
            return ""
    x, y = mark.at[0] * MILLIMETRES, -mark.at[1] * MILLIMETRES
    angle = f' transform="rotate(-90 {number(x)} {number(y)})"' if turn or mark.is_turned else ""
    size = number(height * most)
    return (f'<text x="{number(x)}" y="{number(y)}" font-size="{size}" dy="0.35em"{angle}>{escaped(mark.words)}</text>')


def _symbol(mark: Symbol, letter: float) -> str:
    x, y = mark.at[0] * MILLIMETRES, -mark.at[1] * MILLIMETRES
    if mark.kind == "fault":
        half = letter * 0.9
        corners = f"{number(x)},{number(y - half)} {number(x - half)},{number(y + half)} {number(x + half)},{number(y + half)}"
        return f'<polygon points="{corners}" class="ln visible fault"/>'
    if mark.kind == "datum":
        return f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(letter * 0.35)}" class="ln visible datum"/>'
    if mark.kind == "screw":
        return f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(letter * 0.2)}" class="ln visible screw"/>'
    turned = {"left": 0, "right": 180, "above": 90, "below": 270}[mark.towards]
    reach = number(letter * 1.6)
    arrow = f"M{number(x)},{number(y)}l{reach},-{number(letter * 0.7)}v{number(letter * 1.4)}z"
    return f'<path d="{arrow}" class="front" transform="rotate({turned} {number(x)} {number(y)})"/>'


def _arc(mark: Arc) -> str:
    ends = []
    for angle in (mark.start, mark.start + mark.sweep):
        ends.append((mark.centre[0] + mark.radius * math.cos(angle), mark.centre[1] + mark.radius * math.sin(angle)))
    is_large, is_clockwise = int(abs(mark.sweep) > math.pi), int(mark.sweep < 0.0)
    radius = number(mark.radius * MILLIMETRES)
    return f"M{_pair(ends[0])}A{radius} {radius} 0 {is_large} {is_clockwise} {_pair(ends[1])}"


def _pair(point: Point) -> str:
    return f"{number(point[0] * MILLIMETRES)},{number(-point[1] * MILLIMETRES)}"


def _box(marks: Iterable[Mark]) -> tuple[float, float, float, float]:
    """Return left, top, width and height of everything drawn (mm), with a margin."""
    points: list[Point] = []
    for mark in marks:
        match mark:
            case Shape():
                points += mark.points
            case Line():
                points += (mark.start, mark.end)
            case Arc():
                points += ((mark.centre[0] - mark.radius, mark.centre[1] - mark.radius),
                           (mark.centre[0] + mark.radius, mark.centre[1] + mark.radius))  # fmt: skip
            case Text() | Symbol():
                points.append(mark.at)
            case Dimension() | Leader():
                pass
    points = [one for one in points if math.isfinite(one[0]) and math.isfinite(one[1])]
    if not points:
        return 0.0, 0.0, MILLIMETRES, MILLIMETRES
    left, right = min(one[0] for one in points), max(one[0] for one in points)
    low, high = min(one[1] for one in points), max(one[1] for one in points)
    room = MARGIN * max(right - left, high - low, 0.1)
    return ((left - room) * MILLIMETRES, -(high + room) * MILLIMETRES, (right - left + 2.0 * room) * MILLIMETRES,
            (high - low + 2.0 * room) * MILLIMETRES)  # fmt: skip
