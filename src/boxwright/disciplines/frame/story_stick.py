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
FACE, MIDDLE, EDGE, ZERO = 0.004, 0.005, 0.006, 0.006
"""How high the lines of faces, middles and edges of openings and of the 0 stand (m): over them is room for words."""
LANE = 0.0051
"""How far the lines of words are apart (m)."""
LANES = tuple(ZERO + 0.0025 + LANE * number for number in range(3))
LETTER = 0.002
"""No letter of a word is wider on the average than this (m): by it words are kept apart and within the strip."""


def story_stick(drawn: Drawn, wall: Wall) -> Sheet:
    """Return the strips of a wall, as it is read from outside on the roof and from inside on a wall."""
    eye = Eye(wall, wall.name != "roof")
    ends = sorted((eye.at(wall.low, 0.0)[0], eye.at(wall.high, 0.0)[0]))
    count = max(1, ceil(round((ends[1] - ends[0]) / PIECE, 6)))
    views = tuple(_strip(drawn, eye, ends, number, count) for number in range(count))
    name = wall.name.replace("-", " ")
    notes = (
        "Print at 100 % and lay a rule on the check bar. Cut the strips out, glue each over the last up to its dashed "
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
        # Only as high as the lines are, and at the upper edge: words run across it.
        for low, high in ((0.0, ZERO), (HIGH - ZERO / 2.0, HIGH)):
            marks.append(Line((end, low), (end, high), "hidden", wall.of))

    def shows(at: float) -> bool:
        return start - 1e-9 <= at <= over + 1e-9

    words: list[tuple[float, str, str]] = []
    for member in drawn.frame.members_of(wall.name):
        if member.runs != "up" or member.is_removed:
            continue
        at, half = eye.at(member.at.best, 0.0)[0], half_face(member)
        for edge in (at - half, at + half):
            if shows(edge):
                marks.append(Line((edge, 0.0), (edge, FACE), "visible", member.of))
        if shows(at):
            marks.append(Line((at, 0.0), (at, MIDDLE), "centre", member.of))
            sure = "" if member.is_built else " not taped"
            name = "jamb" if member.kind == "jamb" else short_name(member)
            words.append((at, f"S {name} {ruler.mark(member.at.best - eye.zero)}{sure}", member.of))
    for hole in drawn.holes_of(wall.name):
        for along, edge_words in ((hole.low, "begins"), (hole.high, "ends")):
            at = eye.at(along, 0.0)[0]
            if shows(at):
                marks.append(Line((at, 0.0), (at, EDGE), "cut", hole.of))
                words.append((at, f"O {hole.name} {edge_words} {ruler.mark(along - eye.zero)}", hole.of))
    zero = eye.at(eye.zero, 0.0)[0]
    if shows(zero):
        marks.append(Line((zero, 0.0), (zero, ZERO), "cut", wall.of))
        words.append((zero, "0", wall.of))
    marks += _in_lanes(words, start, over)
    side = eye.front
    way = f", FRONT to the {side}" if side is not None else ", LEFT side of the trailer is 0"
    return View(f"{wall.letter.strip()} {number + 1} of {count}", f"strip{way}", tuple(marks))


def _in_lanes(words: list[tuple[float, str, str]], start: float, end: float) -> Marks:
    """Return words over their lines within a strip: those that would meet stand one above the other, each led in."""
    marks: Marks = []
    reached = [start] * len(LANES)
    for at, text, of in sorted(words):
        half = len(text) * LETTER / 2.0 + LETTER
        middle = max(start + half, min(at, end - half))
        lane = next((number for number, one in enumerate(reached) if one <= middle - half), None)
        if lane is None:
            # More lines stand here than a strip has room for words: the page finds a place for the rest.
            marks.append(Text((at, LANES[0]), text, of, "small"))
            continue
        reached[lane] = middle + half
        foot = LANES[lane] - LANE / 2.0
        marks.append(Line((at, FACE), (at, foot), "dimension", of))
        marks.append(Text((middle, LANES[lane]), text, of, "small", may_move=False))
    return marks
