"""The grids of weight: who carries what, and what widens the tongue weight."""

from __future__ import annotations

from math import isinf
from typing import TYPE_CHECKING

from boxwright.disciplines.weight.result import Output, Result
from boxwright.disciplines.weight.telling import measure_of, name_of
from boxwright.units import HeaderUnits, show, show_band, shown_unit

if TYPE_CHECKING:
    from boxwright.drawing import Grid

EMPTY = "trailer.empty"
SCALE = "Plan beside scale"
"""The title of the grid that puts a ticket beside the plan."""
WORDS = {
    "gross": "All that it weighs",
    "tongue": "On the ball",
    "share": "Share of it on the ball",
    "on wheels": "On all wheels",
    "left": "On the left wheels",
    "right": "On the right wheels",
    "total": "The whole trailer",
    "axles": "All axles",
    "centre x": "Centre of gravity, behind the front studs",
    "centre y": "Centre of gravity, right of the middle",
    "centre z": "Centre of gravity, above the deck",
}
"""What each answer is called in a table; one of an axle by its number, a wheel by its axle and side."""

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
    heads = ("Weight, or where it acts", "Most likely", "With all doubt", "Not known yet")
    return "Weight and balance", heads, rows, tuple(one.of for one in outputs)


def _row(output: Output, shown_in: HeaderUnits) -> tuple[str, ...]:
    """Return the cells of one answer; a number nobody can give is not shown as zero."""
    unit = output.unit or "ratio"
    is_open = not output.band.known and isinf(output.band.low) and isinf(output.band.high)
    doubt = show_band(output.band, unit, shown_in)
    best = "unknown" if is_open or doubt == "unknown" else show(output.band.best, unit, shown_in)
    return in_words(output.name), best, doubt, ", ".join(map(_called, output.unknown))


def _called(path: str) -> str:
    """Return what a measure of trailer or tow vehicle is called; a part stays as it is written."""
    return name_of(path) if path == EMPTY else measure_of(path)


def in_words(name: str) -> str:
    """Return what an answer is called in a table."""
    axle, _, side = name.removeprefix("axle ").partition(" ")
    if name.startswith("axle "):
        return f"On axle {axle}, {side} wheel" if side else f"On axle {axle}"
    return WORDS.get(name, name)


def _scale(result: Result, shown_in: HeaderUnits) -> Filled:
    unit = shown_unit("mass", shown_in)[0]
    rows = tuple(
        (
            one.part or in_words(one.what),
            bare(show_band(one.planned.band, "kg", shown_in), unit),
            bare(show_band(one.measured, "kg", shown_in), unit),
            bare(show(one.gap, "kg", shown_in), unit),
            "disagree" if one.agreement > 1.0 else "agree",
        )
        for one in result.compared
    )
    columns = ("What was weighed", f"As planned, {unit}", f"As weighed, {unit}", f"Not explained, {unit}", "The two")
    return SCALE, columns, rows, tuple(one.of for one in result.compared)


def bare(text: str, unit: str) -> str:
    """Return an amount without its unit, which stands at the head of its column."""
    return text.replace(f" {unit}", "")


def _widened(result: Result, shown_in: HeaderUnits) -> Filled:
    unit = shown_unit("mass", shown_in)[0]
    rows = tuple(
        (
            _called(one.of),
            "not known" if isinf(one.half_width) else bare(show(one.half_width, "kg", shown_in), unit),
            "" if isinf(one.half_width) else bare(show(one.share, "ratio", shown_in), "%"),
        )
        for one in result.tongue_widened_by
    )
    columns = ("Part or measure", f"Either way on the ball, {unit}", "Share of the whole doubt, %")
    return "What makes the load on the ball doubtful", columns, rows, tuple(one.of for one in result.tongue_widened_by)
