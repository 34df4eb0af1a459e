"""A story stick of paper for each wall: full size, glued end to end, held against the wall at the scribed 0."""

from __future__ import annotations

from math import ceil

from boxwright.disciplines.frame.drawn import Drawn, Eye, Marks, half_face
from boxwright.disciplines.frame.elevation import short_name
from boxwright.disciplines.frame.result import Wall
from boxwright.drawing import Line, Shape, Sheet, Text, View

PIECE = 0.18
"""Length of wall on one strip (m): two strips' width of margin are left on the narrower of the papers."""
GLUE = 0.01
"""How far the next strip is glued over the last (m)."""
HIGH = 0.022
"""How high a strip is (m)."""


def story_stick(drawn: Drawn, wall: Wall) -> Sheet:
    """Return the strips of a wall, as it is read from outside on the roof and from inside on a wall."""
    eye = Eye(wall, wall.name != "roof")
    ends = sorted((eye.at(wall.low, 0.0)[0], eye.at(wall.high, 0.0)[0]))
    count = max(1, ceil(round((ends[1] - ends[0]) / PIECE, 6)))
    views = tuple(_strip(drawn, eye, ends, number, count) for number in range(count))
    name = wall.name.replace("-", " ")
    notes = (
        "Print at 100 % and lay a rule on the check bar. Cut the strips out, glue each over the last up to its dotted "
        f"line. Hold the end marked 0 at the {'left' if eye.front is None else 'front'} stud face.",
        "S is the middle of a stud, its faces beside it; O is the edge of an opening.",
    )
    title = f"Story stick, {name}{' wall' if wall.name != 'roof' else ''}"
    return Sheet(f"story-{wall.name}", title, views, notes, (), 1.0)


def _strip(drawn: Drawn, eye: Eye, ends: list[float], number: int, count: int) -> View:
    ruler, wall = drawn.ruler, eye.wall
    start = ends[0] + number * PIECE
    end = min(start + PIECE, ends[1])
    over = end if number == count - 1 else end + GLUE
    marks: Marks = [Shape(((start, 0.0), (over, 0.0), (over, HIGH), (start, HIGH)), "dimension", wall.of)]
    if over > end:
        marks.append(Line((end, 0.0), (end, HIGH), "hidden", wall.of))

    def shows(at: float) -> bool:
        return start - 1e-9 <= at <= over + 1e-9

    for member in drawn.frame.members_of(wall.name):
        if member.runs != "up" or member.is_removed:
            continue
        at, half = eye.at(member.at.best, 0.0)[0], half_face(member)
        for edge in (at - half, at + half):
            if shows(edge):
                marks.append(Line((edge, 0.0), (edge, HIGH * 0.45), "visible", member.of))
        if shows(at):
            marks.append(Line((at, 0.0), (at, HIGH * 0.7), "centre", member.of))
            sure = "" if member.is_built else " not taped"
            words = f"S {short_name(member)} {ruler.mark(member.at.best - eye.zero)}{sure}"
            marks.append(Text((at, HIGH * 0.85), words, member.of, "small"))
    for hole in drawn.holes_of(wall.name):
        for along, edge_words in ((hole.low, "begins"), (hole.high, "ends")):
            at = eye.at(along, 0.0)[0]
            if shows(at):
                marks.append(Line((at, 0.0), (at, HIGH), "cut", hole.of))
                words = f"O {hole.name} {edge_words} {ruler.mark(along - eye.zero)}"
                marks.append(Text((at, HIGH * 0.3), words, hole.of, "small"))
    zero = eye.at(eye.zero, 0.0)[0]
    if shows(zero):
        marks.append(Line((zero, 0.0), (zero, HIGH), "cut", wall.of))
        marks.append(Text((zero, HIGH * 0.55), "0", wall.of, "large"))
    side = eye.front
    way = f", FRONT to the {side}" if side is not None else ", LEFT side of the trailer is 0"
    return View(f"{wall.letter.strip()} {number + 1} of {count}", f"strip{way}", tuple(marks))
