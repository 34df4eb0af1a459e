"""What runs behind a piece of wall by the written routes, in words, and drawn."""

from __future__ import annotations

from math import isfinite

from boxwright.disciplines.frame.drawn import Drawn, Eye, Marks
from boxwright.disciplines.frame.result import Run
from boxwright.disciplines.frame.sourced import WITHIN
from boxwright.drawing import Line

FEW = 4
"""So many names of wires without a route are listed; of more only their number is told."""
FLAT = ("roof", "floor")


def runs_in(
    drawn: Drawn, wall: str, along: tuple[float, float], up: tuple[float, float]
) -> tuple[tuple[Run, bool], ...]:
    """Return what may run behind a rectangle of a wall, within the doubt of its route; each with whether it is sure.

    It is not sure of a route that does not say how far along its wall, or how high it runs, or only passes near.
    """
    within = WITHIN["route"]
    found = []
    for run in drawn.frame.runs:
        if run.wall != wall or run.high < along[0] - within or run.low > along[1] + within:
            continue
        if wall not in FLAT and run.up is not None and not up[0] - within <= run.up <= up[1] + within:
            continue
        is_ended = isfinite(run.low) and isfinite(run.high) and run.low < along[1] and run.high > along[0]
        is_level = run.up is not None and up[0] <= run.up <= up[1]
        found.append((run, is_ended and is_level))
    return tuple(found)


def behind_words(drawn: Drawn, wall: str, along: tuple[float, float], up: tuple[float, float]) -> str:
    """Return what runs behind a rectangle of a wall in words, and how many wires and pipes nobody wrote a route of."""
    found = runs_in(drawn, wall, along, up)
    parts = []
    for words, is_sure in (("", True), ("perhaps ", False)):
        listed = [_named(drawn, run) for run, sure in found if sure == is_sure]
        parts += [words + ", ".join(listed)] if listed else []
    parts = parts or ["none by the written routes"]
    unrouted = drawn.frame.unrouted
    if unrouted:
        parts.append(f"no route of {', '.join(unrouted) if len(unrouted) <= FEW else f'{len(unrouted)} others'}")
    return "; ".join(parts)


def _named(drawn: Drawn, run: Run) -> str:
    at = f" at {drawn.ruler.full(run.up)}" if run.up is not None else ""
    return f"{run.what} {run.name}{at}"


def run_marks(drawn: Drawn, eye: Eye, along: tuple[float, float], up: tuple[float, float]) -> Marks:
    """Return the lines of the wires and pipes whose height is written, as far as they lie in a piece of a wall."""
    wall = eye.wall.name
    marks: Marks = []
    for run in drawn.frame.runs:
        if run.wall != wall or run.up is None or wall in FLAT or not up[0] <= run.up <= up[1]:
            continue
        start, end = max(run.low, along[0]), min(run.high, along[1])
        if start < end:
            marks.append(Line(eye.at(start, run.up), eye.at(end, run.up), "centre", run.of))
    return marks
