"""A chart: numbers beside each other where people would rather look than read, with the rig paths they are about."""

from __future__ import annotations

from math import floor, inf, isclose, isfinite, log10
from typing import NamedTuple

from boxwright.drawing.mark import Dimension, Line, LineKind, Mark, Point, Shape, Text
from boxwright.drawing.plotted import HIGH as HIGH
from boxwright.drawing.plotted import LONG as LONG
from boxwright.drawing.plotted import LOW as LOW
from boxwright.drawing.plotted import WIDE as WIDE
from boxwright.drawing.plotted import Bound as Bound
from boxwright.drawing.plotted import Chart as Chart
from boxwright.drawing.plotted import Series as Series
from boxwright.drawing.sheet import View
from boxwright.records import dataclass

BELOW = 2.5
"""How far, in letters, what is written under a chart stands from it."""
SHORT = 5
"""Letters up to which all that stands under a chart is written level."""
BAR = 0.64
"""How wide a bar is, as a share of the room it has."""
LINES: tuple[LineKind, ...] = ("visible", "hidden", "centre", "phantom", "cut")
"""By what the lines of a chart are told apart on paper; their names stand at their ends."""
UNKNOWN = inf
"""Stands in a series where nothing is known."""
TICKS, FEW_TICKS, MANY_TICKS = 5, 4, 6
ROUND = (1.0, 2.0, 2.5, 5.0, 10.0)
APART = 0.02
"""Share of a chart's height from which on a line is no other."""
LETTER = 0.0035
"""How far (m) words stand over a bar."""


class Axis(NamedTuple):
    """From where to where the numbers of a chart are drawn, and how far apart those are that stand at its edge."""

    low: float
    high: float
    step: float


def axis(chart: Chart) -> Axis:
    """Return the axis of a chart: it begins at a round number, so that its foot can be read."""
    numbers = [value for one in chart.series for values in (one.best, one.low, one.high) for value in values]
    known = [value for value in (*numbers, *(one.at for one in chart.bounds)) if isfinite(value)]
    if not chart.is_fitted:
        known = [0.0, *known]
    low, high = min(known, default=0.0), max(known, default=0.0)
    if high <= low:
        low, high = (low - 0.5, low + 0.5) if chart.is_fitted else (low, low + 1.0)
    step = _step(low, high, FEW_TICKS if chart.high <= LOW else MANY_TICKS if chart.is_fitted else TICKS)
    return Axis(floor(low / step + 1e-9) * step, high, step)


def ticks(low: float, high: float, step: float = 0.0) -> tuple[float, ...]:
    """Return round numbers from ``low`` to ``high``, a step apart; without one about five of them."""
    if not (isfinite(low) and isfinite(high)) or high <= low:
        return ()
    step = step or _step(low, high, TICKS)
    first, last = int(-(-low // step)), int(high // step)
    return tuple(number * step for number in range(first, last + 1))


def _step(low: float, high: float, steps: int) -> float:
    raw = (high - low) / steps
    power = 10.0 ** floor(log10(raw))
    return next(one * power for one in ROUND if one * power >= raw * (1.0 - 1e-9))


def tick_words(value: float, step: float) -> str:
    """Return a round number of an axis with as many decimals as its steps have."""
    digits = next((one for one in range(9) if isclose(step * 10.0**one, round(step * 10.0**one))), 9)
    return f"{value + 0.0:,.{digits}f}"


def charted(chart: Chart) -> View:
    """Return a chart drawn for paper."""
    low, high, step = axis(chart)
    plot = _Plot(low, high, len(chart.labels), chart.form == "fall", chart.wide, chart.high)
    marks: list[Mark] = []
    zero, far = plot.at(None, low), plot.end(low)
    for value in ticks(low, high, step):
        marks.append(Line(plot.at(None, value), plot.end(value), "dimension", ""))
        words = tick_words(value, step)
        marks.append(Dimension(zero, plot.at(None, value), words, "", "left", is_running=True))
    is_level = plot.is_fall or max((len(one) for one in chart.labels), default=0) <= SHORT
    for place, (label, of) in enumerate(zip(chart.labels, chart.of, strict=True)):
        foot = plot.at(place, low)
        if not is_level:
            marks.append(Dimension(zero, foot, label, of, "below", is_running=True))
        elif label:
            marks.append(Text((foot[0], -BELOW * LETTER), label, of, "small", may_move=False))
            if not plot.is_fall:
                marks.append(Line(foot, (foot[0], -0.5 * LETTER), "dimension", of))
    for number, one in enumerate(chart.series):
        marks += _bars(one, chart, plot) if plot.is_fall else _line(one, chart, plot, LINES[number % len(LINES)])
    for bound in chart.bounds:
        marks.append(Line(plot.at(None, bound.at), plot.end(bound.at), "cut", ""))
        marks.append(Dimension(far, plot.end(bound.at), bound.label, "", "right", is_running=True))
    return View(chart.title, f"in {chart.unit}", tuple(marks), is_to_scale=False, chart=chart)


@dataclass(frozen=True, slots=True)
class _Plot:
    """Where a number stands on paper."""

    low: float
    high: float
    count: int
    is_fall: bool
    wide: float
    tall: float

    def at(self, place: int | None, value: float) -> Point:
        up = self.tall * (value - self.low) / (self.high - self.low)
        if place is None:
            return 0.0, up
        steps = self.count if self.is_fall else max(self.count - 1, 1)
        return self.wide * (place + (0.5 if self.is_fall else 0.0)) / steps, up

    def end(self, value: float) -> Point:
        return self.wide, self.at(None, value)[1]


def _line(one: Series, chart: Chart, plot: _Plot, kind: LineKind) -> list[Mark]:
    """Return a line through the known numbers, its doubt as a tone between thin lines, its name at its end."""
    marks: list[Mark] = [*_doubt(one, chart, plot)]
    for place in range(len(one.best) - 1):
        if isfinite(one.best[place]) and isfinite(one.best[place + 1]):
            start, end = plot.at(place, one.best[place]), plot.at(place + 1, one.best[place + 1])
            marks.append(Line(start, end, kind, chart.of[place]))
    last = max((place for place, value in enumerate(one.best) if isfinite(value)), default=None)
    if last is None:
        return marks
    ends = {one.label: one.best[last]}
    # The thin lines of a line that is alone have names of their own; of several the tone shows whose they are.
    least, most = sorted((one.low[last], one.high[last]))
    for name, value in (("at most", most), ("at least", least)) if len(chart.series) == 1 else ():
        if isfinite(value) and abs(value - one.best[last]) > APART * (plot.high - plot.low):
            ends[f"{one.label}, {name}"] = value
    for label, value in ends.items():
        marks.append(
            Dimension(plot.end(plot.low), plot.at(last, value), label, chart.of[last], "right", is_running=True)
        )
    return marks


def _doubt(one: Series, chart: Chart, plot: _Plot) -> list[Mark]:
    """Return the doubt of a line: a tone where both of its ends are known, a thin line where one is."""
    marks: list[Mark] = []
    run: list[int] = []
    for place, ends in enumerate((*zip(one.low, one.high, strict=True), (UNKNOWN, UNKNOWN))):
        if all(isfinite(end) for end in ends):
            run.append(place)
            continue
        if len(run) > 1 and any(one.low[at] != one.high[at] for at in run):
            foot, top = ([plot.at(at, values[at]) for at in run] for values in (one.low, one.high))
            marks.append(Shape((*foot, *reversed(top)), "dimension", chart.of[run[0]], "doubt"))
        run = []
    for values, others in ((one.low, one.high), (one.high, one.low)):
        for place in range(len(values) - 1):
            is_drawn = all(isfinite(end) for end in others[place : place + 2])
            if not is_drawn and all(isfinite(end) for end in values[place : place + 2]):
                start, end = plot.at(place, values[place]), plot.at(place + 1, values[place + 1])
                marks.append(Line(start, end, "dimension", chart.of[place]))
    return marks


def _bars(one: Series, chart: Chart, plot: _Plot) -> list[Mark]:
    marks: list[Mark] = []
    half = BAR * plot.wide / max(plot.count, 1) / 2.0
    for place, (low, high) in enumerate(zip(one.low, one.high, strict=True)):
        if not (isfinite(low) and isfinite(high)):
            continue
        (x, foot), (_, top) = plot.at(place, low), plot.at(place, high)
        corners = ((x - half, foot), (x + half, foot), (x + half, top), (x - half, top))
        is_all = place == plot.count - 1
        marks.append(Shape(corners, "visible", chart.of[place], "metal" if is_all else "wood"))
        marks.append(Text((x, top + LETTER), f"{high - low:,.0f}", chart.of[place], "small"))
        if not is_all:
            marks.append(Line((x + half, top), (x + half + (1.0 - BAR) * plot.wide / plot.count, top), "dimension", ""))
    return marks
