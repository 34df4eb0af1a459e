"""A chart: numbers beside each other where people would rather look than read, with the rig paths they are about."""

from __future__ import annotations

from math import floor, inf, isfinite, log10
from typing import Literal

from boxwright.drawing.mark import Dimension, Line, LineKind, Mark, Point, Shape, Text
from boxwright.drawing.sheet import View
from boxwright.records import dataclass

WIDE, HIGH = 0.160, 0.085
"""How large (m) a chart is drawn on paper, without what is written beside it."""
BAR = 0.64
"""How wide a bar is, as a share of the room it has."""
LINES: tuple[LineKind, ...] = ("visible", "hidden", "centre", "phantom", "cut")
"""By what the lines of a chart are told apart on paper; their names stand at their ends."""
UNKNOWN = inf
"""Stands in a series where nothing is known."""
TICKS = 5
APART = 0.02
"""Share of a chart's height from which on a line is no other."""
LETTER = 0.0035
"""How far (m) words stand over a bar."""


@dataclass(frozen=True, slots=True)
class Series:
    """One line, or the bars of a fall. ``best`` has infinity where nothing is known; ``low`` and ``high`` its doubt.

    Of a fall each bar reaches from ``low`` to ``high``.
    """

    label: str
    best: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]
    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """A limit across a chart, in the unit of its numbers."""

    label: str
    at: float
    stops: bool = True


@dataclass(frozen=True, slots=True)
class Chart:
    """Numbers in ``unit`` over ``labels``: lines ``through`` them, or a ``fall`` of bars that add up to the last one.

    ``of`` is the rig path of each label, ``says`` the whole in words.
    """

    name: str
    title: str
    form: Literal["through", "fall"]
    unit: str
    labels: tuple[str, ...]
    series: tuple[Series, ...]
    bounds: tuple[Bound, ...]
    of: tuple[str, ...]
    says: str


def ticks(low: float, high: float) -> tuple[float, ...]:
    """Return round numbers from ``low`` to ``high``, about five of them."""
    if not (isfinite(low) and isfinite(high)) or high <= low:
        return ()
    raw = (high - low) / TICKS
    power = 10.0 ** floor(log10(raw))
    step = next(one * power for one in (1.0, 2.0, 5.0, 10.0) if one * power >= raw * (1.0 - 1e-9))
    first, last = int(-(-low // step)), int(high // step)
    return tuple(number * step for number in range(first, last + 1))


def charted(chart: Chart) -> View:
    """Return a chart drawn for paper."""
    numbers = [value for one in chart.series for values in (one.best, one.low, one.high) for value in values]
    known = [value for value in (*numbers, *(one.at for one in chart.bounds)) if isfinite(value)]
    low, high = min((0.0, *known)), max((*known, 0.0))
    plot = _Plot(low, high if high > low else low + 1.0, len(chart.labels), chart.form == "fall")
    marks: list[Mark] = []
    zero, far = plot.at(None, low), plot.end(low)
    for value in ticks(low, high):
        marks.append(Line(plot.at(None, value), plot.end(value), "dimension", ""))
        marks.append(Dimension(zero, plot.at(None, value), f"{value:,.0f}", "", "left", is_running=True))
    for place, (label, of) in enumerate(zip(chart.labels, chart.of, strict=True)):
        if plot.is_fall:
            marks.append(Text((plot.at(place, low)[0], -1.5 * LETTER), label, of, "small", may_move=False))
        else:
            marks.append(Dimension(zero, plot.at(place, low), label, of, "below", is_running=True))
    for number, one in enumerate(chart.series):
        marks += _bars(one, chart, plot) if plot.is_fall else _line(one, chart, plot, LINES[number % len(LINES)])
    for bound in chart.bounds:
        marks.append(Line(plot.at(None, bound.at), plot.end(bound.at), "cut", ""))
        marks.append(Dimension(far, plot.end(bound.at), bound.label, "", "right", is_running=True))
    return View(chart.title, f"in {chart.unit}", tuple(marks), is_to_scale=False)


@dataclass(frozen=True, slots=True)
class _Plot:
    """Where a number stands on paper."""

    low: float
    high: float
    count: int
    is_fall: bool

    def at(self, place: int | None, value: float) -> Point:
        up = HIGH * (value - self.low) / (self.high - self.low)
        if place is None:
            return 0.0, up
        steps = self.count if self.is_fall else max(self.count - 1, 1)
        return WIDE * (place + (0.5 if self.is_fall else 0.0)) / steps, up

    def end(self, value: float) -> Point:
        return WIDE, self.at(None, value)[1]


def _line(one: Series, chart: Chart, plot: _Plot, kind: LineKind) -> list[Mark]:
    """Return a line through the known numbers, its doubt as thin lines above and below, its name at its end."""
    marks: list[Mark] = []
    drawn: tuple[tuple[tuple[float, ...], LineKind], ...]
    drawn = ((one.low, "dimension"), (one.high, "dimension"), (one.best, kind))
    for values, line in drawn:
        for place in range(len(values) - 1):
            if isfinite(values[place]) and isfinite(values[place + 1]):
                start, end = plot.at(place, values[place]), plot.at(place + 1, values[place + 1])
                marks.append(Line(start, end, line, chart.of[place]))
    last = max((place for place, value in enumerate(one.best) if isfinite(value)), default=None)
    if last is None:
        return marks
    ends = {one.label: one.best[last]}
    # The thin lines have names of their own where they end away from the line they belong to.
    least, most = sorted((one.low[last], one.high[last]))
    for name, value in (("at most", most), ("at least", least)):
        if isfinite(value) and abs(value - one.best[last]) > APART * (plot.high - plot.low):
            ends[f"{one.label}, {name}"] = value
    for label, value in ends.items():
        marks.append(
            Dimension(plot.end(plot.low), plot.at(last, value), label, chart.of[last], "right", is_running=True)
        )
    return marks


def _bars(one: Series, chart: Chart, plot: _Plot) -> list[Mark]:
    marks: list[Mark] = []
    half = BAR * WIDE / max(plot.count, 1) / 2.0
    for place, (low, high) in enumerate(zip(one.low, one.high, strict=True)):
        if not (isfinite(low) and isfinite(high)):
            continue
        (x, foot), (_, top) = plot.at(place, low), plot.at(place, high)
        corners = ((x - half, foot), (x + half, foot), (x + half, top), (x - half, top))
        is_all = place == plot.count - 1
        marks.append(Shape(corners, "visible", chart.of[place], "metal" if is_all else "wood"))
        marks.append(Text((x, top + LETTER), f"{high - low:,.0f}", chart.of[place], "small"))
        if not is_all:
            marks.append(Line((x + half, top), (x + half + (1.0 - BAR) * WIDE / plot.count, top), "dimension", ""))
    return marks
