"""Wires and pipes that run in a wall by their written routes, against the screws and hinges that go into it."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf, isfinite

from boxwright.disciplines.frame.bands import UNKNOWN, around
from boxwright.disciplines.frame.result import Backing, Crossing, Fastening, Run
from boxwright.disciplines.frame.sourced import LIMITS, WITHIN
from boxwright.exchange import Fixing
from boxwright.units import Band


def crossings_of(
    fastenings: tuple[Fastening, ...],
    fixings: tuple[Fixing, ...],
    backings: tuple[Backing, ...],
    runs: tuple[Run, ...],
) -> tuple[Crossing, ...]:
    """Return every run that a fastener may meet, even at the doubt of its route."""
    paired = {(one.of, one.what): one for one in fixings}
    return tuple(
        crossing for one in fastenings for crossing in _crossings(one, paired[one.of, one.what], backings, runs)
    )


def _crossings(
    one: Fastening, fixing: Fixing, backings: tuple[Backing, ...], runs: tuple[Run, ...]
) -> Iterator[Crossing]:
    mine = [run for run in runs if run.wall == one.wall]
    for point in one.points:
        for run in mine:
            away = _away((point.at, point.at), (point.up, point.up), run)
            if away.low <= LIMITS["run_clear"]:
                yield Crossing(one.of, one.name, one.what, one.wall, point.at, run.of, run.name, run.what, away)
    if one.points:
        return
    along, up = _covered(one, fixing, backings)
    for run in mine:
        away = _away(along, up, run)
        if isfinite(along[0]) and away.low <= LIMITS["run_clear"]:
            yield Crossing(one.of, one.name, one.what, one.wall, None, run.of, run.name, run.what, away)


def _covered(
    one: Fastening, fixing: Fixing, backings: tuple[Backing, ...]
) -> tuple[tuple[float, float], tuple[float | None, float | None]]:
    """Return where fasteners without places of their own may be: all along the part, as high as its backing."""
    axis = 0 if one.wall in ("left", "right", "roof", "floor") else 1
    up_axis = 1 if one.wall in ("roof", "floor") else 2
    along = fixing.low[axis], fixing.high[axis]
    behind = next((strip for strip in backings if strip.name == one.backing and strip.wall == one.wall), None)
    if behind is not None:
        return along, (behind.bottom, behind.top)
    low, high = fixing.low[up_axis], fixing.high[up_axis]
    return along, (low, high) if isfinite(low) and isfinite(high) else (None, None)


def _away(along: tuple[float, float], up: tuple[float | None, float | None], run: Run) -> Band:
    """Return how far a stretch of a wall is from a run, with the doubt of its route.

    Unknown where the route does not say how high, or how far along its wall it runs: it may be near, or not there.
    """
    within = WITHIN["route"]
    beside = max(run.low - along[1], along[0] - run.high, 0.0)
    foot, head = up
    if run.up is None or foot is None or head is None:
        return UNKNOWN if beside <= LIMITS["run_clear"] + within else Band(beside, beside - within, inf)
    over = max(run.up - head, foot - run.up, 0.0)
    away = (beside * beside + over * over) ** 0.5
    if not (isfinite(run.low) and isfinite(run.high)):
        return Band(away, away - within, inf, known=False)
    return around(away, within, assumed=True)
