"""The grids of weight: who carries what, and what widens the tongue weight."""

from __future__ import annotations

from math import isinf
from typing import TYPE_CHECKING

from boxwright.disciplines.weight.result import Output, Result
from boxwright.units import HeaderUnits, show, show_band

if TYPE_CHECKING:
    from boxwright.drawing import Grid

Filled = tuple[str, tuple[str, ...], tuple[tuple[str, ...], ...], tuple[str, ...]]
"""Title, heads, rows and their rig paths of a grid."""


def sheets(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return the grids of one slot: loads with their bands, plan beside scale, and what widens the tongue weight."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.drawing import Grid

    grids = [Grid(*_loads(result, shown_in))]
    if result.compared:
        grids.append(Grid(*_scale(result, shown_in)))
    if result.tongue_widened_by:
        grids.append(Grid(*_widened(result, shown_in)))
    return tuple(grids)


def _loads(result: Result, shown_in: HeaderUnits) -> Filled:
    sides = [pair for pairs in zip(result.axles_left, result.axles_right, strict=True) for pair in pairs]
    outputs = [result.gross, result.tongue, result.share, result.on_wheels, *result.axles, result.left, result.right]
    outputs += [*sides, result.centre_x, result.centre_y, result.centre_z]
    rows = tuple(_row(output, shown_in) for output in outputs)
    return "weight and balance", ("what", "best", "band", "not known"), rows, tuple(one.of for one in outputs)


def _row(output: Output, shown_in: HeaderUnits) -> tuple[str, ...]:
    """Return the cells of one answer; a number nobody can give is not shown as zero."""
    unit = output.unit or "ratio"
    is_open = not output.band.known and isinf(output.band.low) and isinf(output.band.high)
    best = "unknown" if is_open else show(output.band.best, unit, shown_in)
    return output.name, best, show_band(output.band, unit, shown_in), ", ".join(output.unknown)


def _scale(result: Result, shown_in: HeaderUnits) -> Filled:
    rows = tuple(
        (
            one.part or one.what,
            show_band(one.planned.band, "kg", shown_in),
            show_band(one.measured, "kg", shown_in),
            show(one.gap, "kg", shown_in),
            "disagree" if one.agreement > 1.0 else "agree",
        )
        for one in result.compared
    )
    columns = ("what", "planned", "measured", "unexplained", "verdict")
    return "plan and scale", columns, rows, tuple(one.of for one in result.compared)


def _widened(result: Result, shown_in: HeaderUnits) -> Filled:
    rows = tuple(
        (
            one.of,
            "unknown" if isinf(one.half_width) else show(one.half_width, "kg", shown_in),
            "" if isinf(one.half_width) else show(one.share, "ratio", shown_in),
        )
        for one in result.tongue_widened_by
    )
    columns = ("part", "half-width on the tongue", "share of the doubt")
    return "what widens the tongue weight", columns, rows, tuple(one.of for one in result.tongue_widened_by)
