"""Where a text finds room: at its point, around it, led in from nearby or from a column beside the view, or in a key.

A text is placed only where no cell of an edge, of another text or of a leader is taken, so nothing ever lies on
anything; thin lines are avoided first and interrupted where that does not go.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, hypot, pi, sin

from boxwright.drawing.layout.edges import HARD
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.plane import inside_box, on_circle, spread
from boxwright.drawing.layout.raster import CELL, Raster, are_free, are_free_between
from boxwright.drawing.layout.wrap import (
    Block,
    around,
    balanced,
    block,
    cleaned,
    evened,
    flush_right,
    grown,
    words_at,
    words_centred,
    words_turned,
)
from boxwright.drawing.mark import Point, Size
from boxwright.drawing.page import Box
from boxwright.drawing.paper import HEIGHT_OF, SMALL
from boxwright.records import dataclass

GAP = 0.8
NEAR = 9.0
"""A text further from its point than this (mm) is led to it by a line."""
DOT = 0.5
RINGS = (5.0, 7.5, 10.0, 13.0, 17.0)
WIDE_RINGS = (22.0, 28.0, 36.0, 46.0, 60.0)
FAR_RINGS = (75.0, 90.0, 110.0, 135.0)
"""How far from its point (mm) a number is led where a view is full: out to the white beside it."""
MOST_LOST = 12
"""Where so many numbers found no room however far, none is looked for far away any more: that takes its time."""
NOTE_RINGS = (7.0, 10.0, 14.0, 19.0, 25.0)
COLUMN = 42.0
NARROWEST = 14.0
"""The most and the least width of a column of led texts beside a view."""
BALLOON = 2.6
HIDDEN = 0.6
"""A text that covers more than this share of a thing drawn in thin lines hides it."""
COVERED = GAP / 2 + 2 * CELL
TOGETHER = 1.5
"""Texts whose points are nearer than this (mm) share one number of the key."""

_SLIDES = (0.0, *(sign * step * 3.0 for step in range(1, 14) for sign in (1.0, -1.0)))
_ANGLES = tuple(step * pi / 8 for step in (2, 6, 14, 10, 0, 8, 4, 12, 1, 7, 15, 9, 3, 5, 13, 11))
_FINE_ANGLES = tuple(step * pi / 24 for step in range(48))
_AROUND = ((0.0, 1.0, 0.0), *((away, cos(one), sin(one)) for away in (*RINGS, *WIDE_RINGS) for one in _ANGLES))
_FAR_AROUND = tuple((away, cos(one), sin(one)) for away in FAR_RINGS for one in _FINE_ANGLES)
"""Where a balloon is tried about its point: how far away, and the way there."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """A text that looks for a place: its point on paper and what it says.

    A label stands at an edge of the view, in a row with others, and moves along the edge only.
    """

    at: Point
    words: str
    of: str
    size: Size
    may_move: bool
    is_turned: bool
    is_note: bool
    is_label: bool = False


class Placer:
    """The room of one view, and what has been written in it."""

    def __init__(self, slot: Box, ink: Ink) -> None:
        self.slot, self.ink = slot, ink
        self.edges, self.texts, self.thin = Raster(slot), Raster(slot), Raster(slot)
        self.words, self.points = Raster(slot), Raster(slot)
        self._thin: list[Box] = []
        self._lost = 0
        self._hopeless: dict[tuple[int, int], tuple[float, float]] = {}

    def place(self, texts: list[Wanted]) -> list[tuple[str, str]]:
        """Place texts; return the rows of the key: number and words of those that found no room."""
        for text in texts:
            self.points.take_box(grown(Box(*text.at, *text.at), DOT))
        self._thin = [
            around(list(one.points))
            for one in self.ink.strokes
            if one.is_closed and one.belongs == "view" and one.line not in HARD
        ]
        left: list[Wanted] = []
        for text in sorted(texts, key=lambda one: (one.may_move, one.is_note)):
            done = self._note(text) if text.is_note else self._here(text)
            if not done:
                left.append(text)
        left = self._columns([text for text in left if text.may_move]) + [text for text in left if not text.may_move]
        left = [text for text in left if not self._led(text, WIDE_RINGS if text.may_move else RINGS + WIDE_RINGS)]
        return self._keyed(left)

    def _here(self, text: Wanted) -> bool:
        """Write a text at its point or close by."""
        shapes = _shapes(text)
        for over_thin, rasters in ((False, (self.edges, self.texts, self.thin)), (True, (self.edges, self.texts))):
            for set_in, is_turned in shapes:
                wide, high = (set_in.high, set_in.wide) if is_turned else (set_in.wide, set_in.high)
                for box in _about(text.at, wide, high, text):
                    if not are_free(rasters, box, GAP / 2) or not self._is_near(text.at, box):
                        continue
                    if not (over_thin and self._hides(box)):
                        self._write(set_in, box, is_turned, text.of)
                        return True
        return text.may_move and self._led(text, RINGS)

    def _is_near(self, at: Point, box: Box) -> bool:
        """Return whether a text belongs to its point without a line: it is close and no edge stands between."""
        if box.left <= at[0] <= box.right and box.top <= at[1] <= box.bottom:
            return True
        foot = min(max(at[0], box.left), box.right), min(max(at[1], box.top), box.bottom)
        away = hypot(foot[0] - at[0], foot[1] - at[1])
        if away > NEAR:
            return False
        # A point often lies on an edge of its own, so the line is looked at from a little way off.
        share = min(0.5, 1.0 / away) if away > 0.0 else 0.0
        start = at[0] + share * (foot[0] - at[0]), at[1] + share * (foot[1] - at[1])
        return away < 2.0 or self.edges.is_line_free(*start, *foot)

    def _hides(self, box: Box) -> bool:
        """Return whether a text over thin lines would cover so much of what they outline that it is not seen."""
        left, top, right, bottom = box.left, box.top, box.right, box.bottom
        for one in self._thin:
            if one.left >= right or one.right <= left or one.top >= bottom or one.bottom <= top:
                continue  # most are elsewhere
            wide, high = min(right, one.right) - max(left, one.left), min(bottom, one.bottom) - max(top, one.top)
            if wide * high > HIDDEN * (one.right - one.left) * (one.bottom - one.top):
                return True
        return False

    def take_words(self, box: Box) -> None:
        """Let nothing be written where words stand, and no line run through them."""
        self.texts.take_box(box)
        self.words.take_box(box)

    def _note(self, text: Wanted) -> bool:
        """Write a note where its line is short and crosses few edges."""
        return self._led(text, NOTE_RINGS, is_choosy=True)

    def _led(self, text: Wanted, rings: tuple[float, ...], is_choosy: bool = False) -> bool:
        """Write a text at some distance with a line to its point."""
        shapes = _led_shapes(text)
        key = (round(text.at[0]), round(text.at[1]) * 2 + (rings is WIDE_RINGS))
        smallest = self._hopeless.get(key)
        if smallest is not None and all(one.wide >= smallest[0] and one.high >= smallest[1] for one in shapes):
            return False
        rasters = (self.edges, self.texts, self.thin, self.points)
        best: tuple[float, Block, Box] | None = None
        for set_in in shapes:
            for cost, box in _ringed(text.at, set_in, rings):
                if best is not None and cost >= best[0]:
                    continue
                if not are_free(rasters, box, GAP / 2):
                    continue
                foot = _foot(text.at, box, set_in)
                if self.texts.is_line_free(*self._start(text.at, foot), *foot):
                    cost += 0.0 if self.edges.is_line_free(*self._start(text.at, foot), *foot) else 6.0
                    if best is None or cost < best[0]:
                        best = cost, set_in, box
                        if not is_choosy:
                            break
            if best is not None:
                break
        if best is None:
            self._hopeless[key] = min(one.wide for one in shapes), min(one.high for one in shapes)
            return False
        foot = _foot(text.at, best[2], best[1])
        if best[2].left < foot[0] < best[2].right:
            self._write(best[1], best[2], False, text.of)
        else:
            # Lines of words are flush with the line that leads to them.
            flush = words_at(best[1], best[2].left, best[2].top, text.of, "view")
            self.ink.words += flush if foot[0] <= best[2].left else flush_right(flush, best[2].right)
            self.take_words(grown(best[2], GAP / 2))
        self._lead(text.at, foot, text.of)
        return True

    def _write(self, set_in: Block, box: Box, is_turned: bool, of: str) -> None:
        if is_turned:
            self.ink.words += words_turned(set_in, box.left, box.bottom, of, "view")
        else:
            self.ink.words += words_centred(set_in, (box.left + box.right) / 2, box.top, of, "view")
        self.take_words(grown(box, GAP / 2))

    def _lead(self, at: Point, foot: Point, of: str) -> None:
        """Draw the thin line from a text to its point, with a dot at the point; to a text that covers the point."""
        if self._covering(at):
            at = self._start(at, foot)
        else:
            self.ink.outline(tuple(on_circle(at, DOT, 0.0, 2.0 * pi)[:-1]), "dimension", of, "note", "ink")
            self.texts.take_box(Box(at[0] - DOT, at[1] - DOT, at[0] + DOT, at[1] + DOT))
        self.ink.line(foot, at, "dimension", of, "note")
        self.texts.take_line(*foot, *at)

    def _start(self, at: Point, foot: Point) -> Point:
        """Return where the line to a text leaves a point: a little off, since several lines may end there."""
        away = hypot(foot[0] - at[0], foot[1] - at[1])
        if away == 0.0:
            return at
        share = 1.2 / away
        for box in self._covering(at):
            within = inside_box((*at, *foot), box)
            share = max(share, within[1] if within else 0.0)
        share = min(share, 0.9)
        return at[0] + share * (foot[0] - at[0]), at[1] + share * (foot[1] - at[1])

    def _covering(self, at: Point) -> list[Box]:
        """Return the boxes of texts that cover a point, with the cells they touch."""
        if self.texts.is_free(Box(at[0] - DOT, at[1] - DOT, at[0] + DOT, at[1] + DOT)):
            return []
        x, y = at
        boxes = (one.box for one in self.ink.words)
        return [
            grown(one, COVERED)
            for one in boxes
            if one.left - COVERED < x < one.right + COVERED and one.top - COVERED < y < one.bottom + COVERED
        ]

    def _columns(self, texts: list[Wanted]) -> list[Wanted]:
        """Write texts in columns left and right of the view, in the order of their points; return what is left."""
        left: list[Wanted] = []
        box = self.inner
        middle = (box.left + box.right) / 2
        for is_left in (True, False):
            side = [text for text in texts if (text.at[0] < middle) == is_left]
            room = (box.left - self.slot.left if is_left else self.slot.right - box.right) - 6.0
            if side and room < NARROWEST:
                left += side
            elif side:
                left += self._column(side, min(room, COLUMN), box.left - 5.0 if is_left else box.right + 5.0, is_left)
        return left

    def _column(self, texts: list[Wanted], wide: float, edge: float, is_left: bool) -> list[Wanted]:
        side = sorted(texts, key=lambda one: one.at[1])
        blocks = [evened(one.words, SMALL, wide) for one in side]
        room = self.slot.bottom - self.slot.top - 2.0
        left: list[Wanted] = []
        while blocks and sum(one.high + 1.5 for one in blocks) > room:
            left.append(side.pop())
            blocks.pop()
        if not blocks:
            return left
        # Each block is taken as tall as the tallest: the column stays in the order of the points whatever happens.
        tallest = max(one.high for one in blocks) + 1.5
        if tallest * len(blocks) > room:
            tallest = room / len(blocks)
        low, high = self.slot.top + tallest / 2, self.slot.bottom - tallest / 2
        places = spread([one.at[1] for one in side], tallest, low, high)
        for place, text, set_in in zip(places, side, blocks, strict=True):
            if not self._beside(text, set_in, edge, place, is_left):
                left.append(text)
        return left

    def _beside(self, text: Wanted, set_in: Block, edge: float, place: float, is_left: bool) -> bool:
        """Write a text in a column at a height or as near to it as its line finds a way."""
        start = edge - set_in.wide if is_left else edge
        for slide in _SLIDES:
            middle = place + slide
            box = Box(start, middle - set_in.high / 2, start + set_in.wide, middle + set_in.high / 2)
            if not are_free((self.edges, self.texts, self.thin, self.points), box, GAP / 2):
                continue
            foot = (edge + 0.8 if is_left else edge - 0.8, box.top + set_in.rise - set_in.height / 2)
            if self.texts.is_line_free(*self._start(text.at, foot), *foot):
                self.ink.words += words_at(set_in, box.left, box.top, text.of, "view")
                self.take_words(grown(box, GAP / 2))
                self._lead(text.at, foot, text.of)
                return True
        return False

    @property
    def inner(self) -> Box:
        """Return the box of what is drawn so far."""
        xs = [point[0] for one in self.ink.strokes for point in one.points]
        xs += [x for one in self.ink.words for x in (one.box.left, one.box.right)] or [self.slot.left]
        return Box(min(xs), self.slot.top, max(xs), self.slot.bottom)

    def _keyed(self, texts: list[Wanted]) -> list[tuple[str, str]]:
        """Give each point that is left a number in a balloon; return the numbers with their words."""
        groups: list[tuple[Point, list[Wanted]]] = []
        for text in texts:
            for at, group in groups:
                if abs(at[0] - text.at[0]) + abs(at[1] - text.at[1]) < TOGETHER:
                    group.append(text)
                    break
            else:
                groups.append((text.at, [text]))
        rows: list[tuple[str, str]] = []
        number = 0
        if all(text.words.isdigit() for text in texts):
            # Numbers are no second time numbered: each stands in its ring as it is.
            return [(NO_ROOM, one.words) for one in texts if not self._balloon(one.at, one.words, one.of)]
        for at, group in groups:
            has_balloon = self._balloon(at, str(number + 1), group[0].of)
            number += has_balloon
            rows += [(str(number) if has_balloon else NO_ROOM, text.words) for text in group]
        return rows

    def _balloon(self, at: Point, number: str, of: str) -> bool:
        """Draw a number in a ring at a point or led to it; where it must its line crosses lines, but never words."""
        set_in = block(number, SMALL, True)
        radius = max(BALLOON, set_in.wide / 2 + 0.9)
        places = _AROUND
        further = _FAR_AROUND if self._lost < MOST_LOST else ()
        hard = self.edges, self.texts
        for rooms, lines, tried in (
            ((*hard, self.points, self.thin), self.texts, places),
            ((*hard, self.points), self.texts, places),
            (hard, self.words, (*places, *further)),
        ):
            for away, along, up in tried:
                x, y = at[0] + away * along, at[1] - away * up
                if not are_free_between(rooms, x - radius, y - radius, x + radius, y + radius):
                    continue
                box = Box(x - radius, y - radius, x + radius, y + radius)
                foot = x - radius * along, y + radius * up
                if self._hides(box):
                    continue
                if away and not lines.is_line_free(*self._start(at, foot), *foot):
                    continue
                top = y + set_in.height / 2 - set_in.rise
                self.ink.words += words_centred(set_in, x, top, of, "note")
                self.ink.circle((x, y), radius, "dimension", of, "note")
                self.take_words(box)
                if away:
                    self._lead(at, foot, of)
                return True
        self._lost += 1
        return False


NO_ROOM = "–"
"""In place of a number where a view is so full that not even a number finds room beside its point."""


def _shapes(text: Wanted) -> list[tuple[Block, bool]]:
    """Return the ways a text may be set, the best first: in one line, upright, in several lines."""
    height = HEIGHT_OF[text.size]
    one = block(text.words, height)
    if text.is_turned:
        turned = one if one.wide <= 90.0 else block(text.words, height, False, 90.0)
        return [(turned, True), (turned, False)] if text.may_move else [(turned, True)]
    shapes = _settings(text, height)
    return [*shapes, *_settings(text, SMALL)] if height > SMALL else shapes


def _settings(text: Wanted, height: float) -> list[tuple[Block, bool]]:
    """Return the ways a text may be set in letters of a height."""
    one = block(text.words, height)
    if one.wide > 55.0:
        return [(evened(text.words, height, 50.0), False)]
    # a number that lies on its side is read both ways, 6 as 9, and a letter alone as another, or as a dash
    is_upright = text.is_note or one.lines[0].isdigit() or len(one.lines[0]) == 1
    shapes = [(one, False)] if is_upright else [(one, False), (one, True)]
    if " " in one.lines[0] and one.wide > 3.0 * height:
        shapes += [(balanced(text.words, height, False, count), False) for count in (2, 3)]
        if not text.is_note:
            shapes.append((balanced(text.words, height, False, 2), True))
    return shapes


def _led_shapes(text: Wanted) -> list[Block]:
    """Return the ways a text may be set at the end of a line: small, in few lines."""
    one = block(text.words, SMALL)
    shapes = [one] if one.wide <= 45.0 else [evened(text.words, SMALL, 45.0)]
    if " " in cleaned(text.words) and one.wide > 10.0:
        shapes.append(balanced(text.words, SMALL, False, 2) if one.wide <= 45.0 else evened(text.words, SMALL, 28.0))
    return shapes


def _about(at: Point, wide: float, high: float, text: Wanted) -> Iterator[Box]:
    """Yield boxes for a text at a point: centred, then close around it."""
    x, y = at

    def centred(dx: float, dy: float) -> Box:
        return Box(x + dx - wide / 2, y + dy - high / 2, x + dx + wide / 2, y + dy + high / 2)

    yield centred(0.0, 0.0)
    if text.is_label:
        for aside in range(1, int(wide / 2 + 2.5)):
            yield centred(aside, 0.0)
            yield centred(-aside, 0.0)
    for step in (high * 0.6, high * 1.1, high * 1.7) if text.may_move else (0.5, 1.0):
        yield centred(0.0, -step)
        yield centred(0.0, step)
    if text.may_move:
        beside = wide / 2 + 1.5
        for dy in (0.0, -high, high):
            yield centred(beside, dy)
            yield centred(-beside, dy)


def _ringed(at: Point, set_in: Block, rings: tuple[float, ...]) -> Iterator[tuple[float, Box]]:
    """Yield boxes around a point with how far they are: the edge of the box that is nearest lies on a ring."""
    for away in rings:
        for turn, angle in enumerate(_ANGLES):
            dx, dy = cos(angle), -sin(angle)
            x, y = at[0] + away * dx, at[1] + away * dy
            left = x if dx > 0.3 else x - set_in.wide if dx < -0.3 else x - set_in.wide / 2
            middle = y + (dy * set_in.high / 2 if abs(dx) <= 0.3 else 0.0)
            yield away + turn * 0.3, Box(left, middle - set_in.high / 2, left + set_in.wide, middle + set_in.high / 2)


def _foot(at: Point, box: Box, set_in: Block) -> Point:
    """Return where on a text's box its line begins: beside the first line of words, or under or over the middle."""
    line = box.top + set_in.rise - set_in.height / 2
    if at[0] < box.left:
        return box.left - 0.6, line
    if at[0] > box.right:
        return box.right + 0.6, line
    return (box.left + box.right) / 2, box.bottom + 0.3 if at[1] > box.bottom else box.top - 0.3
