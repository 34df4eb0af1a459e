"""Where the words of a view stand on a screen: in their thing, where it can be seen, and never one on another.

A name that fits its thing only in small letters is written small: it is read when somebody comes closer, and the page
hides it until then. One that finds no room at all is left to the page, which puts a number there and a key beside the
sheet. Words in the open that had to go aside are led to their point by a line.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import islice

from boxwright.drawing import Mark, Shape, Symbol, Text
from boxwright.drawing.mark import Size
from boxwright.records import dataclass
from boxwright.render.screen_plane import LINE, Box, across, spread_over, width_of

SIZES: Mapping[Size, float] = {"small": 0.88, "normal": 1.0, "large": 1.3}
LEAST = (0.6, 0.2)
"""How small a name may be written to fit its thing, as a share of ordinary letters: first those that are read where
the whole is seen, then, where these left room, those that are read from nearer."""
SIGN = 0.8
"""Half of how far a sign reaches, over the height of ordinary letters."""
STEPS = (1.0, 0.85, 0.72, 0.5)
"""What is tried of the largest letters that fit, where something else stands in the way."""
NEAREST = 4
"""So many of the places beside a sign are looked at for one that no edge runs through."""
THIN = 1.0
"""Half of how thick an edge is taken (mm)."""
EDGE = 0.25
"""What is left free around words, over the height of their letters."""
SPOTS = (
    (0.0, 0.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (-1.0, -1.0),
    (1.0, -1.0),
    (-1.0, 1.0),
    (1.0, 1.0),
)
"""Where in its thing a name may stand: the middle, then the edges, then the corners."""


@dataclass(frozen=True, slots=True)
class Placed:
    """Words in their place: lines about a point (mm), the height of their letters, turned to read upwards or not.

    ``is_free`` are words in the open, which may lie over lines; others lie on what their thing is filled with (``on``).
    ``is_near`` are words so small that they are read only from nearer. ``lead`` is the line from words that stand aside
    to their point.
    """

    lines: tuple[str, ...]
    x: float
    y: float
    size: float
    is_turned: bool
    is_free: bool = False
    on: str = ""
    is_near: bool = False
    lead: tuple[float, float, float, float] | None = None

    @property
    def box(self) -> Box:
        """Return what they cover."""
        wide, high = _extent(self.lines, self.size)
        if self.is_turned:
            wide, high = high, wide
        return Box(self.x - wide / 2.0, self.y - high / 2.0, self.x + wide / 2.0, self.y + high / 2.0)


def named(groups: Mapping[str, Sequence[Mark]], letter: float) -> dict[Text, Placed | None]:
    """Return where each text stands, None where it finds no room. Groups are in the order they are drawn."""
    places: dict[Text, Placed | None] = {}
    taken = [_sign(one, letter) for marks in groups.values() for one in marks if isinstance(one, Symbol)]
    inside: list[tuple[Text, Box, int]] = []
    free: list[tuple[Text, Sequence[Mark], int]] = []
    covers: list[tuple[int, Box]] = []
    fills: dict[Text, str] = {}
    for index, marks in enumerate(groups.values()):
        shapes = [(one, spread_over(one.points)) for one in marks if isinstance(one, Shape)]
        covers += [(index, box) for one, box in shapes if one.fill != "none"]
        for one in marks:
            if not isinstance(one, Text):
                continue
            x, y = across(one.at)
            around = [(box, shape.fill) for shape, box in shapes if box.is_about(x, y)]
            if around:
                box, fill = min(around, key=lambda each: each[0].width * each[0].height)
                inside.append((one, box, index))
                fills[one] = fill
            else:
                free.append((one, marks, index))
    edges = [edge for marks in groups.values() for one in marks if isinstance(one, Shape) for edge in _edges(one)]
    for one, marks, index in free:
        over = [box for later, box in covers if later > index]
        places[one] = _free(one, marks, letter, taken, (over, edges))
    for least in LEAST:
        for text, room, index in reversed(inside):
            if places.get(text) is not None:
                continue
            near = [box for box in taken if box.meets(room)]
            near += [box for later, box in covers if later > index and box.meets(room)]
            tried = _tried(text, room, letter, least)
            found = next((one for one in tried if not _meets(one, near)), None)
            is_near = least is not LEAST[0]
            places[text] = found and replace(found, is_free=fills[text] == "none", on=fills[text], is_near=is_near)
            if found is not None:
                taken.append(found.box)
    return places


def _meets(one: Placed, others: Iterable[Box]) -> bool:
    """Return whether words lie on any of some boxes."""
    box = one.box
    return any(box.meets(other) for other in others)


def _sign(one: Symbol, letter: float) -> Box:
    """Return what a sign covers; no words lie on it."""
    x, y = across(one.at)
    return Box(x - SIGN * letter, y - SIGN * letter, x + SIGN * letter, y + SIGN * letter)


def _free(
    text: Text, marks: Sequence[Mark], letter: float, taken: list[Box], avoided: tuple[Sequence[Box], Sequence[Box]]
) -> Placed | None:
    """Return the place of words that stand in the open: off what stands already and off what is drawn over them.

    ``avoided`` are what is drawn over them, and edges, which words beside a sign avoid as far as that goes. Where there
    is no room nearby they go aside with a line to their point.
    """
    size = letter * SIZES[text.size]
    spots = _spots(text, marks, letter, size)
    x, y = across(text.at)
    tried = (Placed((text.words,), x + right, y + down, size, text.is_turned, True) for right, down in spots)
    over, edges = avoided
    clear = (one for one in tried if not _meets(one, taken) and not _meets(one, over))
    is_signed = any(isinstance(one, Symbol) for one in marks)
    nearest = list(islice(clear, NEAREST if is_signed else 1))
    if not nearest:
        return None
    off_edges = (one for one in nearest if not _meets(one, edges))
    found = next(off_edges, nearest[0]) if is_signed else nearest[0]
    taken.append(found.box)
    return found if _is_beside(found, x, y, size) else replace(found, lead=_lead(found, x, y))


def _edges(shape: Shape) -> list[Box]:
    """Return the upright and level edges of a shape that are drawn in full."""
    if shape.line not in {"visible", "cut"}:
        return []
    points = [across(one) for one in shape.points]
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return [
        Box(min(x, to_x) - THIN, min(y, to_y) - THIN, max(x, to_x) + THIN, max(y, to_y) + THIN)
        for (x, y), (to_x, to_y) in pairs
        if abs(x - to_x) < THIN or abs(y - to_y) < THIN
    ]


def _spots(text: Text, marks: Sequence[Mark], letter: float, size: float) -> list[tuple[float, float]]:
    """Return how far from its point a text may stand, the best first."""
    step, wide = LINE * size, width_of(text.words, size) + 2.0 * EDGE * size
    has_sign = any(isinstance(one, Symbol) and one.at == text.at for one in marks)
    if not has_sign and not text.may_move:
        return [(0.0, 0.0)]
    rows = (0.0, -1.0, 1.0, -2.0, 2.0, -3.0, 3.0, -4.0, 4.0)
    if has_sign:
        beside, away = letter * 1.1 + wide / 2.0, letter * SIGN + 0.5 * step
        spots = [(beside, 0.0), (-beside, 0.0), (0.0, -away), (0.0, away)]
        return spots + [(side * beside, row * step) for row in rows[1:] for side in (1.0, -1.0)]
    along = 0.0 if text.is_turned else 1.0
    spots = [(0.0, row * step) for row in rows[:5]]
    for aside in (0.6, 1.2, 1.8):
        for row in rows:
            for side in (1.0, -1.0):
                shift = side * aside * wide
                spots.append((along * shift + (1.0 - along) * row * step, (1.0 - along) * shift + along * row * step))
    return spots


def _is_beside(found: Placed, x: float, y: float, size: float) -> bool:
    """Return whether words stand so near to their point that no line need lead to it."""
    near = 2.2 * LINE * size
    box = found.box
    return box.left - near <= x <= box.right + near and box.top - near <= y <= box.bottom + near


def _lead(found: Placed, x: float, y: float) -> tuple[float, float, float, float]:
    """Return the line from the nearest edge of words to their point."""
    box = found.box
    return min(max(x, box.left), box.right), min(max(y, box.top), box.bottom), x, y


def _tried(text: Text, room: Box, letter: float, least: float) -> Iterator[Placed]:
    """Yield the places of words in a room, the best first: large, in one line, upright, in the middle."""
    most = letter * SIZES[text.size]
    fits = []
    for lines in _split(text.words):
        wide, high = _extent(lines, 1.0)
        flat, turned = min(room.width / wide, room.height / high), min(room.height / wide, room.width / high)
        fits += [(min(flat, most), lines, False), (min(turned, most) * 0.999, lines, True)]
    fits.sort(key=lambda one: (-min(one[0], most * 0.9), len(one[1]), one[2]))
    middle = ((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0)
    for step in STEPS:
        for size, lines, is_turned in fits:
            if size * step < letter * least:
                continue
            wide, high = _extent(lines, size * step)
            if is_turned:
                wide, high = high, wide
            for right, down in SPOTS:
                x = middle[0] + right * (room.width - wide) / 2.0
                y = middle[1] + down * (room.height - high) / 2.0
                yield Placed(lines, x, y, size * step, is_turned)


def _extent(lines: Sequence[str], size: float) -> tuple[float, float]:
    wide = max(width_of(line, size) for line in lines) + 2.0 * EDGE * size
    return wide, size * (LINE * (len(lines) - 1) + 1.0 + EDGE)


def _split(words: str) -> list[tuple[str, ...]]:
    """Return words in one line, and in two where there is a space or a hyphen to part them near their middle."""
    breaks = [index + 1 for index, one in enumerate(words[:-1]) if _parts(words, index)]
    if not breaks:
        return [(words,)]
    at = min(breaks, key=lambda index: abs(2 * index - len(words)))
    return [(words,), (words[:at].rstrip(), words[at:].lstrip())]


def _parts(words: str, index: int) -> bool:
    """Return whether words may be parted after a character: never within a measure such as 14 1/4 x 24."""
    if index == 0 or words[index] not in " -":
        return False
    before, after = words[:index].rpartition(" ")[2], words[index + 1 :].partition(" ")[0]
    return not (after[:1].isdigit() and before[-1:].isdigit()) and "x" not in (before, after)
