"""The plan of things to be laid out with tape on a garage floor: two corners of each, by ordinates and from A and B."""

from __future__ import annotations

from math import hypot

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.body_sizes import ROOM
from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.posing import POSES, Posed
from boxwright.disciplines.layout.room_plan import covers
from boxwright.disciplines.layout.terraces import outline_of
from boxwright.disciplines.layout.ways import is_room
from boxwright.drawing import Dimension, Grid, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Point

ABOVE = "seen from above, the front to your left"
HIGH = 1.2
"""What begins higher (m) hangs, and is not laid out on the floor."""
THIN = 0.06
"""What is thinner (m) seen from above takes no floor worth a strip of tape."""
LETTER = 0.03
"""How far outside its corner a letter stands, as a share of the length: about 5 mm on paper at any scale."""
AHEAD = 0.085
"""How far before the front the arrow stands at least, as a share of the length: its word finds room over it."""
STEPS = 24
"""Into how many steps a thing is taken, each way, to find room for its number."""
ROOMY = 0.05
"""How far (m) a number stands from what it is not of, where there is room."""
NOTES = (
    "Lay out A, B, C and D first: the two diagonals must be equal. A is the front left stud face, B the front right.",
    "Each thing has two corners: 1 is its front left, 2 its rear right. Find each with a square from the front and the "
    "left line, or with two tapes hooked at A and B; the other two corners follow from its size.",
    "What is thinner than a hand is broad, flat on the floor, over the head or on another thing is left out.",
)
NIGHT = "tape-night"
THEN = {
    "night": "Then move about in it: lie down, sit up, get to each way out in the dark.",
    "travel": "Then move about in it: open the doors with a stick, carry the fridge in.",
    "work": "Then move about in it: open the doors with a stick, sit, reach.",
}
"""What is tried in each pose, once it is laid out."""


def tape_things(posed: Posed, name: str = "tape-things", lying: str = "") -> Sheet | None:
    """Return the plan and the table of a pose; None where the box is not known or nothing stands in it.

    ``lying`` is the sheet to lay out to lie down, where that is another one.
    """
    length, width = posed.planned.box.inside[:2]
    things = sorted((one for body in posed.bodies for one in _boxes(body, posed)), key=lambda one: (one[2][:2], one[0]))
    if not (length and width and things and is_room(posed.room)):
        return None
    half = width / 2.0
    a, b, c, d = (0.0, -half), (0.0, half), (length, half), (length, -half)
    body = "trailer.body"
    marks: list[Mark] = [Shape((a, d, c, b), "visible", body)]
    diagonal = posed.length(hypot(length, width))
    rows: list[tuple[str, ...]] = []
    of: list[str] = []
    for number, (path, thing, (x0, y0, x1, y1)) in enumerate(things, start=1):
        marks.append(Shape(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), "visible", path, "none"))
        others = [rect for other, (_, _, rect) in enumerate(things, start=1) if other != number]
        marks.append(Text(own_spot((x0, y0, x1, y1), others), str(number), path, "normal", may_move=False))
        for word, corner in (("1", (x0, y0)), ("2", (x1, y1))):
            marks.append(Symbol(corner, "screw", path))
            rows.append(_row(posed, (f"{number}", thing, word), corner, (a, b), (x1 - x0, y1 - y0)))
            of.append(path)
    for letter, point in zip("ABCD", (a, b, c, d), strict=True):
        outside = tuple(
            one + length * (LETTER if one > middle else -LETTER)
            for one, middle in zip(point, (length / 2, 0), strict=True)
        )
        marks.append(Text((outside[0], outside[1]), letter, body, "large", may_move=False))
    marks += [Line(a, c, "centre", body), Line(b, d, "centre", body)]
    marks += [
        Dimension(a, d, posed.length(length), "trailer.body.length", "below", 0),
        Dimension(a, b, posed.length(width), "trailer.body.width", "left", 0),
        Symbol(a, "datum", body),
        Symbol((-max(0.35, AHEAD * length), 0.0), "front", body, "left"),
    ]
    columns = ("No.", "Thing", "Corner", "Rearward", "From the left", "From A", "From B", "Size")
    title = f"Things to lay out with tape, {POSES[posed.pose]}"
    also = (f"To lie down lay out the sheet {lying}.",) if lying else ()
    notes = (f"Diagonals A to C and B to D: {diagonal}, both the same.", *NOTES, THEN[posed.pose], *also)
    view = View("Things on the floor", ABOVE, tuple(marks), "the stud faces: A, front left")
    return Sheet(name, title, (view,), notes, (Grid("Corners", columns, tuple(rows), tuple(of)),), is_for_hand=True)


def own_spot(rect: Rect, others: list[Rect]) -> Point:
    """Return where the number of a thing stands in it: by the middle, where it can be of no other thing.

    That is where nothing else lies, with room around it; else where all else that lies there is larger.
    """
    x0, y0, x1, y1 = rect
    spots = [
        (x0 + (x1 - x0) * along / STEPS, y0 + (y1 - y0) * across / STEPS)
        for along in range(1, STEPS)
        for across in range(1, STEPS)
    ]
    middle = ((x0 + x1) / 2.0, (y0 + y1) / 2.0)
    spots.sort(key=lambda spot: hypot(spot[0] - middle[0], spot[1] - middle[1]))
    # what lies by itself is in the way of no spot of this one
    near = [one for one in others if all(one[a] - ROOMY < rect[a + 2] and one[a + 2] + ROOMY > rect[a] for a in (0, 1))]
    larger = [one for one in near if _area(one) > _area(rect)]
    smaller = [one for one in near if one not in larger]
    for hides, room in ((near, ROOMY), (near, 0.0), (smaller, ROOMY), (smaller, 0.0)):
        for spot in (middle, *spots):
            if not any(_is_within(spot, one, room) for one in hides):
                return spot
    return middle


def _area(rect: Rect) -> float:
    return (rect[2] - rect[0]) * (rect[3] - rect[1])


def _is_within(spot: Point, rect: Rect, room: float) -> bool:
    (x, y), (x0, y0, x1, y1) = spot, rect
    return x0 - room < x < x1 + room and y0 - room < y < y1 + room


def _boxes(one: Body, posed: Posed) -> list[tuple[str, str, Rect]]:
    """Return what of a thing is laid out: its outline, or each of its boxes where they stand apart."""
    if not one.blocks or not one.known or one.is_inside or one.carried_by:
        return []
    around = envelope(one.blocks)
    boxes = [around] if any(covers(block, around) for block in one.blocks) else list(one.blocks)
    found = [(number, outline_of(block)) for number, block in enumerate(boxes, start=1) if _is_laid_out(block, posed)]
    return [(one.of, one.name if len(boxes) == 1 else f"{one.name} {number}", rect) for number, rect in found]


def _is_laid_out(block: Block, posed: Posed) -> bool:
    """Return whether a box takes floor, or hangs low enough to be walked into."""
    length, width = posed.planned.box.inside[:2]
    x0, y0, x1, y1 = outline_of(block)
    is_in = x1 > 0.0 and x0 < length and y1 > -width / 2.0 and y0 < width / 2.0
    is_thick = min(x1 - x0, y1 - y0) >= THIN and max(x1 - x0, y1 - y0) >= 2.0 * THIN
    is_low = block.low[2] < HIGH and block.high[2] > posed.room.floor + ROOM["feet"]
    return is_in and is_thick and is_low


def _row(
    posed: Posed, named: tuple[str, str, str], at: Point, ends: tuple[Point, Point], size: Point
) -> tuple[str, ...]:
    (ax, ay), (bx, by) = ends
    x, y = at
    return (
        *named,
        posed.length(x - ax),
        posed.length(y - ay),
        posed.length(hypot(x - ax, y - ay)),
        posed.length(hypot(x - bx, y - by)),
        f"{posed.length(size[0])} x {posed.length(size[1])}" if named[2] == "1" else "-",
    )
