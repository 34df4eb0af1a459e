"""One view on paper: what it takes at a scale, and then its drawing where it has come to lie."""

from __future__ import annotations

from boxwright.drawing.layout.edges import ARROW, Sound, clear_thin_lines, edges, extents, hatch, take
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.placing import NO_ROOM, Placer, Wanted
from boxwright.drawing.layout.rows import Room, Rows, covered, rows_of
from boxwright.drawing.layout.wrap import Block, around, block, cleaned, words_at
from boxwright.drawing.mark import Dimension, Leader, Mark, Point, Symbol, Text
from boxwright.drawing.page import Box, PlacedView
from boxwright.drawing.paper import HEIGHT_OF, NORMAL, SMALL, scale_words
from boxwright.drawing.sheet import View
from boxwright.records import dataclass

PER_METRE = 1000.0
RIM = 7.0
"""Room for a text beside a view that has no row of dimensions on that side: mm."""
LABEL = 12.0
"""A text whose point is no further outside of a view than this (mm) is a label at its edge."""
UNDER_CAPTION = 3.0
CAPTION = 65.0
"""A caption is set this wide even over a view that is narrower: mm."""
MOST_CAPTION = 0.25
ROWS_UP, ROWS_ACROSS = 0.25, 0.2
"""Shares of a page that a caption, and the rows of dimensions on one side, may take."""
FRONT = "FRONT"


@dataclass(frozen=True, slots=True)
class Bounds:
    """What a page has room for: mm; where a large sheet is cut, from the view's own zero; whether rows are drawn."""

    wide: float
    high: float
    seams_across: tuple[float, ...] = ()
    seams_up: tuple[float, ...] = ()
    has_rows: bool = True


@dataclass(frozen=True, slots=True)
class Fitted:
    """A view at a scale, before it has a place: its box from its own zero, the caption above it included."""

    view: View
    scale: float
    marks: tuple[Mark, ...]
    lost: tuple[str, ...]
    shape: Box
    rows: Rows
    bounds: Bounds
    outer: Box
    caption: tuple[Block, ...]
    high_caption: float

    @property
    def wide(self) -> float:
        """Return the width of the view with its dimensions and its caption."""
        return max(self.outer.right - self.outer.left, *(one.wide for one in self.caption))

    @property
    def high(self) -> float:
        """Return the height of the view with its dimensions and its caption."""
        return self.outer.bottom - self.outer.top + self.high_caption


def fitted(sound: Sound, scale: float, bounds: Bounds, is_imperial: bool) -> Fitted:
    """Return what a view takes at a scale."""
    factor = scale * PER_METRE
    view, marks, lost = sound.view, list(sound.marks), list(sound.lost)
    shape = extents(marks, factor) or around(_named(marks, factor) or [(0.0, 0.0)])
    dimensions = [mark for mark in marks if isinstance(mark, Dimension)]
    rows = rows_of(
        dimensions,
        _with_labels(shape, marks, factor),
        factor,
        Room(bounds.high * ROWS_UP if bounds.has_rows else 0.0, bounds.seams_across, bounds.seams_up),
        Room(bounds.wide * ROWS_ACROSS if bounds.has_rows else 0.0, bounds.seams_up, bounds.seams_across),
    )
    has_texts = any(isinstance(mark, Text | Leader) for mark in marks)
    rim = RIM if has_texts else 1.5
    named = around([*_named(marks, factor), (shape.left, shape.top), (shape.right, shape.bottom)])
    outer = Box(
        min(rows.outer.left, shape.left - rim, named.left - 1.0),
        min(rows.outer.top, shape.top - rim, named.top - 1.0),
        max(rows.outer.right, shape.right + rim, named.right + 1.0),
        max(rows.outer.bottom, shape.bottom + rim, named.bottom + 1.0),
    )
    wide = min(bounds.wide - 15.0, max(outer.right - outer.left, CAPTION))
    caption = _caption(view, scale, wide, is_imperial)
    if sum(one.high for one in caption) > MOST_CAPTION * bounds.high:
        lost += [view.name, view.looks, view.datum]
        caption = (block(scale_words(scale, is_imperial) if view.is_to_scale else "", SMALL, False, wide),)
    high = sum(one.high for one in caption) + 0.6 * len(caption) + UNDER_CAPTION
    return Fitted(view, scale, tuple(marks), tuple(lost), shape, rows, bounds, outer, caption, high)


def _with_labels(shape: Box, marks: list[Mark], factor: float) -> Box:
    """Return the box of a view with the texts that stand just outside of it: rows of dimensions begin beyond them."""
    boxes = [shape]
    for mark in marks:
        if isinstance(mark, Text) and cleaned(mark.words):
            x, y = mark.at[0] * factor, -mark.at[1] * factor
            away = max(shape.left - x, x - shape.right, shape.top - y, y - shape.bottom)
            if 0.0 < away < LABEL:
                high = block("0", HEIGHT_OF[mark.size]).high / 2
                boxes.append(Box(x, y - high, x, y + high))
    return Box(
        min(one.left for one in boxes),
        min(one.top for one in boxes),
        max(one.right for one in boxes),
        max(one.bottom for one in boxes),
    )


def _named(marks: list[Mark], factor: float) -> list[Point]:
    """Return the points that texts and dimensions are about."""
    points: list[Point] = []
    for mark in marks:
        if isinstance(mark, Text | Leader):
            points.append((mark.at[0] * factor, -mark.at[1] * factor))
        elif isinstance(mark, Dimension):
            points += [(x * factor, -y * factor) for x, y in (mark.start, mark.end)]
    return points


def _caption(view: View, scale: float, wide: float, is_imperial: bool) -> tuple[Block, ...]:
    """Return the lines over a view: its name, then from where it is seen, its scale, and what measures start from."""
    name = cleaned(view.name)
    datum = f"measured from {cleaned(view.datum)}" if cleaned(view.datum) else ""
    to_scale = scale_words(scale, is_imperial) if view.is_to_scale else ""
    second = ", ".join(one for one in (cleaned(view.looks), to_scale, datum) if one)
    lines = [block(name, NORMAL, True, wide)] if name else []
    return (*lines, block(second, SMALL, False, wide))


Keyed = list[tuple[str, str]]
"""The numbers that stand in a view in place of words, with the words."""


def drawn(plan: Fitted, slot: Box) -> tuple[Ink, Keyed]:
    """Draw a view in the middle of a slot; return the drawing and the rows of its key.

    It is drawn at one side, so that a column for led texts is as wide as can be, and then brought to the middle with
    what has been led.
    """
    wide, high = plan.wide, plan.outer.bottom - plan.outer.top
    above = max(0.0, slot.bottom - slot.top - plan.high_caption - high) / 2
    down = slot.top + plan.high_caption + above - plan.outer.top
    left = slot.left if _leads_right(plan) else slot.right - wide
    ink, keyed = drawn_at(plan, slot, (left - plan.outer.left, down))
    box = covered(ink, Box(left, slot.top, left + wide, slot.bottom))
    return ink.moved((slot.left + slot.right - box.left - box.right) / 2, 0.0), keyed


def _leads_right(plan: Fitted) -> bool:
    """Return whether notes have the shorter way to the right: past the view and the dimensions on that side."""
    factor = plan.scale * PER_METRE
    notes = [mark.at[0] * factor for mark in plan.marks if isinstance(mark, Leader)]
    if not notes:
        return True
    middle = sum(notes) / len(notes)
    left, right = plan.shape.left - plan.rows.outer.left, plan.rows.outer.right - plan.shape.right
    return plan.shape.right - middle + 2.0 * right <= middle - plan.shape.left + 2.0 * left


def drawn_at(plan: Fitted, slot: Box, origin: Point) -> tuple[Ink, Keyed]:
    """Draw a view with its zero at a place; return the drawing and the rows of its key."""
    factor = plan.scale * PER_METRE
    ink = Ink()
    edges(list(plan.marks), origin, factor, ink)
    ink.add(plan.rows.ink.moved(*origin))
    ink.views.append(PlacedView(plan.view.name, origin, plan.scale))
    caption = _draw_caption(plan, origin, ink)
    placer = Placer(slot, ink)
    take(ink, placer.edges, placer.thin)
    for one in ink.words:
        placer.take_words(one.box)
    placer.take_words(Box(caption.left, caption.top, caption.right, caption.bottom + 1.0))
    _take_seams(placer, plan, origin)
    for mark in plan.marks:
        if isinstance(mark, Symbol) and mark.kind == "front":
            _front(placer, mark, (origin[0] + mark.at[0] * factor, origin[1] - mark.at[1] * factor))
    keyed = placer.place(_wanted(plan, origin, factor))
    clear_thin_lines(ink, placer.texts)
    hatch(ink)
    return ink, keyed + [(NO_ROOM, words) for words in plan.lost if cleaned(words)]


def _draw_caption(plan: Fitted, origin: Point, ink: Ink) -> Box:
    left = origin[0] + plan.outer.left
    here = first = origin[1] + plan.outer.top - plan.high_caption
    for one in plan.caption:
        ink.words += words_at(one, left, here, "", "view")
        here += one.high + 0.6
    return Box(left, first, left + max(one.wide for one in plan.caption), here)


def _wanted(plan: Fitted, origin: Point, factor: float) -> list[Wanted]:
    """Return the texts of a view that look for a place, with the dimensions that found no row."""
    found = []
    for mark in plan.marks:
        if isinstance(mark, Text | Leader) and cleaned(mark.words):
            at = origin[0] + mark.at[0] * factor, origin[1] - mark.at[1] * factor
            if isinstance(mark, Text):
                is_label = not plan.shape.top <= -mark.at[1] * factor <= plan.shape.bottom
                found.append(Wanted(at, mark.words, mark.of, mark.size, mark.may_move, mark.is_turned, False, is_label))
            else:
                found.append(Wanted(at, mark.words, mark.of, "small", True, False, True))
    for mark in plan.rows.overflow:
        if cleaned(mark.words):
            middle = (mark.start[0] + mark.end[0]) / 2, (mark.start[1] + mark.end[1]) / 2
            at = origin[0] + middle[0] * factor, origin[1] - middle[1] * factor
            found.append(Wanted(at, mark.words, mark.of, "small", True, False, True))
    return found


def _front(placer: Placer, mark: Symbol, at: Point) -> None:
    """Write FRONT beside the arrow that points there: over it, behind it, or as near as there is room."""
    word = block(FRONT, NORMAL, True)
    is_level = mark.towards in ("left", "right")
    over = word.high / 2 + 2.2 if is_level else ARROW / 2 + word.high / 2 + 1.0
    behind = ARROW / 2 + word.wide / 2 + 1.5 if is_level else word.wide / 2 + 2.5
    tail = -1.0 if mark.towards == "right" else 1.0
    for away in range(40):
        for dx, dy in (
            (0.0, -over - away),
            (tail * (behind + away), 0.0),
            (0.0, over + away),
            (-tail * (behind + away), 0.0),
        ):
            left, top = at[0] + dx - word.wide / 2, at[1] + dy - word.high / 2
            box = Box(left, top, left + word.wide, top + word.high)
            if placer.edges.is_free(box) and placer.texts.is_free(box):
                placer.ink.words += words_at(word, left, top, mark.of, "view")
                placer.take_words(box)
                return


def _take_seams(placer: Placer, plan: Fitted, origin: Point) -> None:
    """Let no text lie across a line at which a large sheet is cut."""
    box = placer.slot
    for raster in (placer.edges, placer.texts):
        for across in plan.bounds.seams_across:
            raster.take_line(origin[0] + across, box.top, origin[0] + across, box.bottom)
        for down in plan.bounds.seams_up:
            raster.take_line(box.left, origin[1] + down, box.right, origin[1] + down)
