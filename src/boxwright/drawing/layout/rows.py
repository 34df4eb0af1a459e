"""Dimensions in rows outside a view: chains between ticks, and running rows that read like a tape.

All is laid out from the view's own zero, in millimetres of paper; the caller moves it to where the view comes to lie.
"""

from __future__ import annotations

from itertools import pairwise

from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.plane import on_circle, spread
from boxwright.drawing.layout.wrap import Block, block, words_at, words_turned
from boxwright.drawing.mark import Dimension, Point, Side
from boxwright.drawing.page import Box, PlacedDimension
from boxwright.drawing.paper import NORMAL, SMALL
from boxwright.records import dataclass

FIRST = 5.0
"""From the view to the nearest row."""
BETWEEN = 2.5
BEYOND = 1.5
"""An extension line goes so far beyond the line of its dimension, and begins so far from its point less a half."""
TICK = 1.25
"""Half the height and width of a tick at 45 degrees."""
ABOVE_LINE = 0.6
FAN = 3.5
"""How far out a running row's text is pushed where texts are spread like a fan."""
LONGEST = 45.0
"""Words longer than this are no measure; they are placed like any other text."""
TIERS = 4
OVERHANG = 20.0
ORIGIN = 1.1
"""Radius of the small circle at the zero of a running row."""


@dataclass(frozen=True, slots=True)
class Rows:
    """What the rows of one view take, and the dimensions that found no room in them."""

    ink: Ink
    outer: Box
    overflow: tuple[Dimension, ...]


@dataclass(frozen=True, slots=True)
class Room:
    """How far rows may go out on each side; and where a large sheet is cut, across the rows and along them."""

    out: float
    seams: tuple[float, ...] = ()
    seams_along: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Span:
    """One dimension seen from its side: from where to where along the row, how deep in the view its points lie."""

    low: float
    high: float
    start: float
    end: float
    start_depth: float
    end_depth: float
    mark: Dimension


class Edge:
    """One side of a view: places along it, and how far out."""

    def __init__(self, side: Side, view: Box, room: Room, ink: Ink) -> None:
        self.side, self.view, self.room, self.ink = side, view, room, ink
        self.is_level = side in ("above", "below")
        self.reads_inside = side in ("below", "right")
        self.low, self.high = (view.left, view.right) if self.is_level else (view.top, view.bottom)
        self.extensions: dict[int, tuple[float, float, float, str]] = {}
        self.overflow: list[Dimension] = []

    def at(self, along: float, out: float) -> Point:
        """Return a point on paper."""
        view = self.view
        if self.side == "above":
            return along, view.top - out
        if self.side == "below":
            return along, view.bottom + out
        return (view.left - out, along) if self.side == "left" else (view.right + out, along)

    def span(self, mark: Dimension, factor: float) -> Span:
        """Return a dimension as seen from this side."""
        view = self.view
        (x1, y1), (x2, y2) = [(x * factor, -y * factor) for x, y in (mark.start, mark.end)]
        depths = {
            "above": (view.top - y1, view.top - y2),
            "below": (y1 - view.bottom, y2 - view.bottom),
            "left": (view.left - x1, view.left - x2),
            "right": (x1 - view.right, x2 - view.right),
        }[self.side]
        start, end = (x1, x2) if self.is_level else (y1, y2)
        return Span(min(start, end), max(start, end), start, end, depths[0], depths[1], mark)

    def extend(self, along: float, depth: float, out: float, of: str) -> None:
        """Note that an extension line is wanted from a depth in the view out to a row."""
        key = round(along * 20.0)
        place, deepest, furthest, first = self.extensions.get(key, (along, depth, out, of))
        self.extensions[key] = (place, min(deepest, depth), max(furthest, out), first)

    def draw_extensions(self) -> None:
        """Draw the extension lines, one where several rows measure from the same place."""
        for along, depth, out, of in self.extensions.values():
            if out + BEYOND > depth + 1.0:
                self.ink.line(self.at(along, depth + 1.0), self.at(along, out + BEYOND), "dimension", of, "dimension")

    def tick(self, along: float, out: float, of: str) -> None:
        """Draw the oblique stroke that ends a dimension."""
        x, y = self.at(along, out)
        self.ink.line((x - TICK, y + TICK), (x + TICK, y - TICK), "visible", of, "dimension")

    def chain_text(self, text: Block, middle: float, out: float, of: str) -> None:
        """Write along the row, centred at a place, the box of the text beginning so far out."""
        if self.is_level:
            top = self.at(0.0, out)[1] - (text.high if self.side == "above" else 0.0)
            self.ink.words += words_at(text, middle - text.wide / 2, top, of, "dimension")
        else:
            left = self.at(out, out)[0] - (text.high if self.side == "left" else 0.0)
            self.ink.words += words_turned(text, left, middle + text.wide / 2, of, "dimension")

    def tape_text(self, text: Block, place: float, out: float, of: str) -> None:
        """Write across the row, as on a tape: the capitals centred at a place along it."""
        height = text.height
        if self.is_level:
            left = place + height / 2 - text.rise
            bottom = self.at(0.0, out)[1] + (0.0 if self.side == "above" else text.wide)
            self.ink.words += words_turned(text, left, bottom, of, "dimension")
        else:
            left = self.at(0.0, out)[0] - (text.wide if self.side == "left" else 0.0)
            self.ink.words += words_at(text, left, place + height / 2 - text.rise, of, "dimension")


def rows_of(dimensions: list[Dimension], view: Box, factor: float, across: Room, up: Room) -> Rows:
    """Return the rows on all four sides; ``across`` is the room of rows above and below, ``up`` of those beside."""
    ink, overflow = Ink(), []
    outer = view
    height = _chain_height(dimensions, factor)
    sides: tuple[tuple[Side, Room], ...] = (("above", across), ("below", across), ("left", up), ("right", up))
    for side, room in sides:
        marks = [mark for mark in dimensions if mark.side == side]
        if not marks:
            continue
        own = Ink()
        # Rows beside the view begin outside of what rows above and below take, so no corner is used twice.
        beside = Box(min(view.left, outer.left), view.top, max(view.right, outer.right), view.bottom)
        edge = Edge(side, view if side in ("above", "below") else beside, room, own)
        _side_rows(edge, marks, factor, height)
        overflow += edge.overflow
        outer = covered(own, outer)
        ink.add(own)
    return Rows(ink, outer, tuple(overflow))


def covered(ink: Ink, start: Box) -> Box:
    """Return the box around what is drawn and a given box."""
    boxes = [start, *(one.box for one in ink.words)]
    xs = [point[0] for one in ink.strokes for point in one.points]
    ys = [point[1] for one in ink.strokes for point in one.points]
    for one in ink.curves:
        rim = on_circle(one.centre, one.radius, one.start, one.sweep)
        xs += [point[0] for point in rim]
        ys += [point[1] for point in rim]
    return Box(
        min([*xs, *(box.left for box in boxes)]),
        min([*ys, *(box.top for box in boxes)]),
        max([*xs, *(box.right for box in boxes)]),
        max([*ys, *(box.bottom for box in boxes)]),
    )


def _side_rows(edge: Edge, marks: list[Dimension], factor: float, height: float) -> None:
    bands: dict[tuple[int, bool], list[Span]] = {}
    for mark in marks:
        if block(mark.words, SMALL).wide > LONGEST:
            edge.overflow.append(mark)
        else:
            bands.setdefault((mark.row, mark.is_running), []).append(edge.span(mark, factor))
    out = FIRST
    for (_, is_running), spans in sorted(bands.items(), key=lambda item: item[0]):
        for band in [spans] if is_running else _apart(spans):
            if out > edge.room.out:
                edge.overflow += [span.mark for span in band]
            else:
                out = _band(edge, band, out, height if not is_running else 0.0) + BETWEEN
    edge.draw_extensions()


def _band(edge: Edge, spans: list[Span], out: float, height: float) -> float:
    """Draw one row, a running one if it has no letter height of its own; again further out if a cut runs through it."""
    ink, before = edge.ink, len(edge.overflow)
    for _ in range(len(edge.room.seams_along) + 1):
        marks = len(ink.strokes), len(ink.curves), len(ink.words), len(ink.dimensions)
        end = _chain(edge, spans, out, height) if height else _running(edge, spans, out)
        seam = _seam_through(edge, out, end)
        if seam is None:
            return end
        del ink.strokes[marks[0] :], ink.curves[marks[1] :], ink.words[marks[2] :], ink.dimensions[marks[3] :]
        del edge.overflow[before:]
        out = seam + 1.0
    return _chain(edge, spans, out, height) if height else _running(edge, spans, out)


def _seam_through(edge: Edge, low: float, high: float) -> float | None:
    """Return how far out the cut is that runs through a row."""
    view = edge.view
    near = {"above": view.top, "below": -view.bottom, "left": view.left, "right": -view.right}[edge.side]
    sign = -1.0 if edge.side in ("above", "left") else 1.0
    for seam in edge.room.seams_along:
        out = near + seam * sign
        if low - 0.5 < out < high + 0.5:
            return out
    return None


def _apart(spans: list[Span]) -> list[list[Span]]:
    """Return spans in as few rows as can be, none over another in its row."""
    rows: list[list[Span]] = []
    for span in sorted(spans, key=lambda one: (one.low, one.high)):
        for row in rows:
            if row[-1].high <= span.low + 1e-6:
                row.append(span)
                break
        else:
            rows.append([span])
    return rows


def _chain_height(dimensions: list[Dimension], factor: float) -> float:
    """Return one letter height for all the chains of a view: the large one unless many would not fit their lines."""
    chains = [mark for mark in dimensions if not mark.is_running]
    tight = 0
    for mark in chains:
        across, up = abs(mark.end[0] - mark.start[0]) * factor, abs(mark.end[1] - mark.start[1]) * factor
        tight += block(mark.words, NORMAL).wide > (across if mark.side in ("above", "below") else up) - 2 * TICK - 0.5
    return SMALL if 3 * tight > len(chains) else NORMAL


def _chain(edge: Edge, spans: list[Span], out: float, height: float) -> float:
    """Draw a row of dimensions between ticks; return how far out it goes."""
    band = block("0", height).high + ABOVE_LINE
    line = out + (band if edge.reads_inside else 0.0)
    first_tier = line + (BEYOND + 0.5 if edge.reads_inside else band + 0.8)
    furthest = line + (BEYOND if edge.reads_inside else band)
    taken = [edge.low - OVERHANG] * TIERS
    for span in spans:
        mark = span.mark
        text = block(mark.words, height)
        middle = _clear_of_seams((span.low + span.high) / 2, text.wide, edge.room.seams)
        if _fits(span, height) and abs(middle - (span.low + span.high) / 2) <= (span.high - span.low - text.wide) / 2:
            edge.chain_text(text, middle, out if edge.reads_inside else line + ABOVE_LINE, mark.of)
        else:
            placed = _tier(taken, span, text, edge)
            if placed is None:
                edge.overflow.append(mark)
                continue
            tier, start = placed
            base = first_tier + tier * (text.high + 0.8)
            edge.chain_text(text, start + text.wide / 2, base, mark.of)
            middle = (span.low + span.high) / 2
            foot = max(start + 1.0, min(middle, start + text.wide - 1.0))
            edge.ink.line(edge.at(middle, line), edge.at(foot, base), "dimension", mark.of, "dimension")
            furthest = max(furthest, base + text.high)
        edge.ink.line(edge.at(span.low, line), edge.at(span.high, line), "dimension", mark.of, "dimension")
        for along, depth in ((span.start, span.start_depth), (span.end, span.end_depth)):
            edge.tick(along, line, mark.of)
            edge.extend(along, depth, line, mark.of)
        _note(edge, span, (span.low + span.high) / 2, line)
    return furthest


def _fits(span: Span, height: float) -> bool:
    return block(span.mark.words, height).wide <= span.high - span.low - 2 * TICK - 0.5


def _tier(taken: list[float], span: Span, text: Block, edge: Edge) -> tuple[int, float] | None:
    """Return the nearest tier that has room for a text beside its dimension, and where the text starts."""
    wanted = (span.low + span.high) / 2 - text.wide / 2
    for tier, end in enumerate(taken):
        start = max(wanted, end + 1.5)
        start = _clear_of_seams(start + text.wide / 2, text.wide, edge.room.seams) - text.wide / 2
        if start - wanted <= text.wide / 2 + 6.0 and start >= end + 1.0 and start + text.wide <= edge.high + OVERHANG:
            taken[tier] = start + text.wide
            return tier, start
    return None


def _clear_of_seams(middle: float, wide: float, seams: tuple[float, ...]) -> float:
    """Return the nearest place at which a text so wide crosses no seam."""
    for seam in seams:
        if abs(middle - seam) < wide / 2 + 1.0:
            return seam + (wide / 2 + 1.0) * (1.0 if middle >= seam else -1.0)
    return middle


def _running(edge: Edge, spans: list[Span], out: float) -> float:
    """Draw a row that reads like a tape; return how far out it goes."""
    stations = sorted(spans, key=lambda one: one.end)
    written: list[Span] = []
    for span in stations:
        twin = written and written[-1].mark.words == span.mark.words and span.end - written[-1].end < 0.05
        if not twin:
            written.append(span)
    height = NORMAL
    places = _fan(edge, written, NORMAL)
    if places is None or max(abs(p - s.end) for p, s in zip(places, written, strict=True)) > 2.0 * NORMAL:
        height = SMALL
        places = _fan(edge, written, SMALL)
    if places is None:
        edge.overflow += [span.mark for span in stations]
        return out
    line = out + 1.0
    is_fanned = any(abs(p - s.end) > 0.3 for p, s in zip(places, written, strict=True))
    start = line + BEYOND + 0.7 + (FAN if is_fanned else 0.0)
    furthest = start
    for place, span in zip(places, written, strict=True):
        text = block(span.mark.words, height)
        edge.tape_text(text, place, start, span.mark.of)
        furthest = max(furthest, start + text.wide)
        if is_fanned:
            edge.ink.line(
                edge.at(span.end, line + BEYOND), edge.at(place, start - 0.7), "dimension", span.mark.of, "dimension"
            )
    _tape(edge, stations, line)
    return furthest


def _tape(edge: Edge, stations: list[Span], line: float) -> None:
    """Draw the line of a running row, its zero and its ticks."""
    zeros: dict[int, Span] = {}
    ticks: dict[int, Span] = {}
    for span in stations:
        zeros.setdefault(round(span.start * 20.0), span)
        ticks.setdefault(round(span.end * 20.0), span)
        edge.extend(span.end, span.end_depth, line, span.mark.of)
        _note(edge, span, span.end, line)
    first = min(span.low for span in stations)
    last = max(span.high for span in stations)
    edge.ink.line(edge.at(first, line), edge.at(last, line), "dimension", stations[0].mark.of, "dimension")
    for key, span in zeros.items():
        edge.ink.circle(edge.at(span.start, line), ORIGIN, "visible", span.mark.of, "dimension")
        if key not in ticks:
            edge.extend(span.start, span.start_depth, line - ORIGIN - BEYOND, span.mark.of)
    for key, span in ticks.items():
        if key not in zeros:
            edge.tick(span.end, line, span.mark.of)


def _fan(edge: Edge, spans: list[Span], height: float) -> list[float] | None:
    """Return where the texts of a running row stand, moved apart as little as can be; None where they find no room."""
    apart = 1.6 * height
    low, high = edge.low - OVERHANG, edge.high + OVERHANG
    bounds = [low, *(seam for seam in sorted(edge.room.seams) if low < seam < high), high]
    places: list[float] = []
    for left, right in pairwise(bounds):
        is_last = right == high
        wanted = [span.end for span in spans if left <= span.end and (span.end < right or is_last)]
        if (len(wanted) - 1) * apart > right - left - apart:
            return None
        places += spread(wanted, apart, left + apart / 2, right - apart / 2)
    return places if len(places) == len(spans) else None


def _note(edge: Edge, span: Span, along: float, line: float) -> None:
    start = edge.at(span.start, span.start_depth)
    end = edge.at(span.end, span.end_depth)
    mark = span.mark
    edge.ink.dimensions.append(
        PlacedDimension(start, end, edge.at(along, line), mark.words, mark.of, mark.side, mark.is_running)
    )
