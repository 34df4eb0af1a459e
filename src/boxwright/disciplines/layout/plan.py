"""The plan: every thing where it stands, seen from above, over the frame that another chapter draws."""

from __future__ import annotations

from math import isfinite
from typing import Literal

from boxwright.disciplines.layout.drawn import Planned, Thing, corners_of, middle_of
from boxwright.disciplines.layout.moves import laid_open, moved, swung
from boxwright.drawing import Dimension, Line, Mark, Shape, Symbol, Text, View
from boxwright.drawing.mark import Fill, LineKind, Point
from boxwright.exchange import Box
from boxwright.model.place import Place

ABOVE = "seen from above, the front to your left"
SPREAD = "spread"
"""The kind of a part that has no solid of its own: it is spread over others."""
CUT_AT = 1.2
"""How high over the deck (m) the plan is cut: what hangs higher is drawn in thin lines; common practice, no source."""
TYRE = 0.2
"""How wide (m) a tyre is drawn: sizes are read for the radius only."""
SHOULDER = 0.8
"""Where the drawbar meets the front, as a share of half the width."""
OVER = 0.1
"""How far (m) an axle's line runs on beyond its wheels."""

SAME = 1e-3
"""Two edges nearer than this (m) are one."""

Level = Literal["below", "standing", "overhead"]


def plan_view(planned: Planned) -> View:
    """Return the plan."""
    marks: list[Mark] = [*_running_gear(planned.box), *planned.backdrop]
    things = [one for one in planned.things if one.frame.kind != SPREAD and corners_of(one.frame.place)]
    things.sort(key=_drawn_first)
    inside = _unseen(things)
    for thing in sorted(things, key=lambda one: one.frame.of in inside):
        marks += _thing(thing, thing.frame.of in inside)
    for thing in things:
        for word, place in thing.elsewhere:
            marks += _elsewhere(thing, word, place)
    for leaf in planned.leaves:
        marks += swung(leaf)
    length, half = planned.box.inside[0], planned.box.inside[1] / 2.0
    if length and half:
        marks += [
            Dimension((0.0, -half), (length, -half), planned.length, "trailer.body.length", "below", 0),
            Dimension((length, -half), (length, half), planned.width, "trailer.body.width", "right", 0),
        ]
    if isfinite(planned.centre[0]) and isfinite(planned.centre[1]):
        marks += [
            Symbol(planned.centre, "datum", "trailer"),
            Text(planned.centre, "centre of gravity", "trailer", "small"),
        ]
    return View("Plan", ABOVE, tuple(marks), "the front stud face; across from the middle")


def opened(planned: Planned) -> tuple[Mark, ...]:
    """Return what a plan shows on demand: flaps and ramps laid open, slides pulled out, room that is kept clear."""
    marks = [mark for leaf in planned.leaves for mark in laid_open(leaf)]
    return (*marks, *(mark for thing in planned.things for mark in moved(thing, planned.room)))


def level_of(thing: Thing) -> Level:
    """Return whether a thing lies under the deck, stands in the room, or hangs over the plane the plan is cut at."""
    z, half = thing.frame.place.z, thing.frame.place.size[2] / 2.0
    if not (z.known and isfinite(z.best) and isfinite(half)):
        return "standing"
    return "below" if z.best + half <= 0.0 else "overhead" if z.best - half >= CUT_AT else "standing"


def _drawn_first(thing: Thing) -> tuple[int, float, float, str]:
    """Sort what is under the deck first, then by the height of the top; of equals the larger first."""
    size, order = thing.frame.place.size, ("below", "standing", "overhead").index(level_of(thing))
    return order, _to_the_inch(_top(thing)), -size[0] * size[1], thing.frame.of


def _to_the_inch(metres: float) -> float:
    return round(metres / 0.0254)


def _unseen(things: list[Thing]) -> frozenset[str]:
    """Return the things that lie within another one's outline and under its top, so that nobody sees them."""
    solid = [(corners_of(one.frame.place), _top(one), one.frame.of) for one in things if level_of(one) == "standing"]
    found = set()
    for own, top, of in solid:
        low, high = own[0], own[2]
        for around, other_top, other in solid:
            if of == other or other_top + SAME < top or around[0][0] - SAME > low[0] or around[2][0] + SAME < high[0]:
                continue
            is_other = own != around or of < other
            if around[0][1] - SAME <= low[1] and around[2][1] + SAME >= high[1] and is_other and other not in found:
                found.add(of)
                break
    return frozenset(found)


def _top(thing: Thing) -> float:
    place = thing.frame.place
    return place.z.best + place.size[2] / 2.0 if place.z.known else 0.0


def _thing(thing: Thing, is_inside: bool) -> list[Mark]:
    frame, corners, level = thing.frame, corners_of(thing.frame.place), level_of(thing)
    line: LineKind = "visible" if frame.stands == "yes" else "hidden"
    fill: Fill = "wood"
    if level != "standing" or is_inside:
        line, fill = ("phantom" if level == "overhead" else "hidden"), "none"
    return [
        Shape(corners, line, frame.of, fill),
        Text(middle_of(corners), frame.name, frame.of, "small", may_move=False),
    ]


def _elsewhere(thing: Thing, word: str, place: Place) -> list[Mark]:
    """Return a thing where it is at another time."""
    corners = corners_of(place)
    if not corners:
        return []
    of = f"{thing.frame.of}.{word.replace(' ', '-')}"
    return [Shape(corners, "phantom", of), Text(middle_of(corners), f"{thing.frame.name}, {word}", of, "small")]


def _running_gear(box: Box) -> list[Mark]:
    """Return the axles with their tyres, and the drawbar from the front wall to the ball."""
    marks: list[Mark] = []
    half = box.inside[1] / 2.0
    wheels = box.track.best / 2.0 if box.track.known else half
    for number, axle in enumerate(box.axles):
        if not axle.x.known:
            continue
        of, at = f"trailer.axles.x[{number}]", axle.x.best
        marks.append(Line((at, -wheels - TYRE / 2.0 - OVER), (at, wheels + TYRE / 2.0 + OVER), "centre", of))
        if box.wheel_radius.known and box.track.known:
            reach = box.wheel_radius.best
            for side in (-wheels, wheels):
                low, high = side - TYRE / 2.0, side + TYRE / 2.0
                tyre: tuple[Point, ...] = ((at - reach, low), (at + reach, low), (at + reach, high), (at - reach, high))
                marks.append(Shape(tyre, "hidden", of))
    if box.coupler_x.known:
        ball = (box.coupler_x.best, 0.0)
        for side in (-half, half):
            marks.append(Line(ball, (box.front_x, side * SHOULDER), "visible", "trailer.coupler_x"))
        marks.append(Symbol(ball, "screw", "trailer.coupler_x"))
    return marks
