"""The plan: every thing where it stands, seen from above, over the frame that another chapter draws."""

from __future__ import annotations

from math import isfinite

from boxwright.drawing import Line, Mark, Shape, Symbol, Text, View
from boxwright.drawing.mark import Point
from boxwright.exchange import Box
from boxwright.model.part import Frame
from boxwright.model.place import Place

ABOVE = "seen from above, the front to your left"
SPREAD = "spread"
"""The kind of a part that has no solid of its own: it is spread over others."""
THINNEST = 0.03
"""How deep (m) a thing is drawn at least, so that a hand finds it."""


def sheets(
    backdrop: tuple[Mark, ...], box: Box, frames: tuple[Frame, ...], folded: tuple[tuple[str, Place], ...], centre: Point
) -> tuple[View, ...]:
    """Return the views of layout: the plan. ``centre`` is the centre of gravity seen from above, infinite if unknown.

    ``folded`` are things as they are for the road or at night, where that is elsewhere: drawn in phantom lines.
    """
    marks: list[Mark] = [*backdrop, *_running_gear(box)]
    solid = [frame for frame in frames if frame.kind != SPREAD and corners_of(frame.place)]
    for frame in sorted(solid, key=_from_below):
        corners = corners_of(frame.place)
        marks.append(Shape(corners, "visible" if frame.stands == "yes" else "hidden", frame.of, "wood"))
        marks.append(Text(_middle(corners), frame.name, frame.of, "small", may_move=False))
    for of, place in folded:
        corners = corners_of(place)
        if corners:
            marks.append(Shape(corners, "phantom", f"{of}.folded"))
    if isfinite(centre[0]) and isfinite(centre[1]):
        marks.append(Symbol(centre, "datum", "centre of gravity"))
    return (View("Plan", ABOVE, tuple(marks), "the front stud face; across from the middle"),)


def _from_below(frame: Frame) -> tuple[float, float]:
    """Sort what is large and low first, so that what stands on it is drawn over it."""
    size = frame.place.size
    return (-size[0] * size[1], frame.place.z.best)


def corners_of(place: Place) -> tuple[Point, ...]:
    """Return the outline of a thing from above (m: rearward, to the right); empty where its place is not known."""
    x, y = place.x, place.y
    if not (x.known and y.known and isfinite(x.best) and isfinite(y.best)):
        return ()
    length, width = (max(one, THINNEST) / 2.0 for one in place.size[:2])
    if not (isfinite(length) and isfinite(width)):
        return ()
    return (
        (x.best - length, y.best - width),
        (x.best + length, y.best - width),
        (x.best + length, y.best + width),
        (x.best - length, y.best + width),
    )


def _middle(corners: tuple[Point, ...]) -> Point:
    return (corners[0][0] + corners[2][0]) / 2.0, (corners[0][1] + corners[2][1]) / 2.0


def _running_gear(box: Box) -> list[Mark]:
    """Return the axles, and the tongue from the front wall to the ball."""
    marks: list[Mark] = []
    half = box.inside[1] / 2.0
    reach = (box.track.best / 2.0 if box.track.known else half) + 0.1
    for number, axle in enumerate(box.axles):
        if axle.x.known:
            of = f"trailer.axles.x[{number}]"
            marks.append(Line((axle.x.best, -reach), (axle.x.best, reach), "centre", of))
    if box.coupler_x.known:
        ball = (box.coupler_x.best, 0.0)
        for side in (-half, half):
            marks.append(Line(ball, (box.front_x, side * 0.8), "visible", "trailer.coupler_x"))
        marks.append(Symbol(ball, "screw", "trailer.coupler_x"))
    return marks
