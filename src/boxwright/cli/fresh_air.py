"""The page of ``boxwright air``: what people breathe, what lets air through, how damp a night gets, what stands wet."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING, Annotated

import typer

from boxwright.cli.options import AsJson, Load, OnDate, Rig, Stage, Units, UseWord, Vehicle

if TYPE_CHECKING:
    from boxwright.cli.answers import Json
    from boxwright.cli.asked import Answered
    from boxwright.cli.screen import Line
    from boxwright.disciplines.air import Result
    from boxwright.drawing import Grid
    from boxwright.rig.rig import Rig as RigFile
    from boxwright.units import Band

AS_ASKED = "the night asked for"
"""What a night is called that was typed and stands at no place of the file."""
FEW = 4
"""Kinds of wet places named in the plain answer."""
OUTSIDE_HELP = "a night as cold as this, such as 20F, instead of those of the places in the file"
Outside = Annotated[str, typer.Option("--outside", metavar="COLD", help=OUTSIDE_HELP)]


def add_air(app: typer.Typer) -> None:
    """Give the chapter on air its word."""
    app.command("air", help="Show what people breathe, what stays open, how damp a night gets.")(air)


def air(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "sleep",
    units: Units = "file",
    outside: Outside = "",
    as_json: AsJson = False,
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Show what people breathe, what lets air through, how damp a night gets, what stands wet, and what helps."""
    from boxwright.cli import answers
    from boxwright.cli.asked import Question, answered, checked, exit_code, of_chapter, slot_of
    from boxwright.cli.fixes import chapter_with_fixes
    from boxwright.cli.screen import Screen

    screen, today = Screen(), date.today()
    asked = Question(rig, stage, load, use, units, on, vehicle)
    answer = answered(asked, today, change=lambda read: at_outside(read, outside))
    slot = slot_of(answer, answer.use)
    result = slot.air if slot is not None else None
    if as_json:
        shown = answers.check(of_chapter(checked(answer), "air"))
        screen.show_raw(answers.as_text({**shown, "air": as_json_of(result)}))
    else:
        _, lines = chapter_with_fixes(answer, "air", screen.columns, today)
        screen.show(page(answer, result, lines, screen.columns))
    raise typer.Exit(exit_code(answer))


def at_outside(rig: RigFile, written: str) -> RigFile:
    """Return a rig whose only night is as cold as was typed; the rig itself where nothing was."""
    from boxwright.cli.rig_file import NothingAsked
    from boxwright.disciplines.heat.parts import ClimateFacet, a_night
    from boxwright.units import read_band

    if not written:
        return rig
    try:
        cold = a_night(read_band(written, "temperature", rig.header.units))
    except ValueError as wrong:
        raise NothingAsked(str(wrong)) from None
    night = ((AS_ASKED, ClimateFacet(coldest_design=cold, height=_height(rig))),)
    return replace(rig, heat=replace(rig.heat, climates=night))


def _height(rig: RigFile) -> Band | None:
    """Return how high a night that was typed may lie: as high as one of the places; None where any does not say it."""
    from boxwright.units import Band, exactly

    written = [one.height for _, one in rig.heat.climates]
    heights = [one for one in written if one is not None and one.known]
    if not heights or len(heights) < len(written):
        return None
    low, high = min(one.low for one in heights), max(one.high for one in heights)
    return Band((low + high) / 2.0, low, high, spread="interval") if high > low else exactly(low)


def page(answer: Answered, result: Result | None, chapter: Sequence[Line], columns: int) -> list[Line]:
    """Return the lines of the page: the plain answer, the tables, then what the chapter found and what helps."""
    from boxwright.cli.asked import checked
    from boxwright.cli.check import page_title
    from boxwright.cli.grid_lines import rows_of
    from boxwright.cli.screen import plain, wrapped

    head = 1 + len(page_title(checked(answer), columns)[:-1])
    lines = list(chapter[:head])
    if result is not None:
        lines += [(), *(plain(piece) for piece in wrapped(in_words(answer, result), columns))]
        for grid in tables(answer, result):
            lines += [(), plain(grid.title.upper(), "head"), *rows_of(grid.columns, grid.rows, columns)]
    return [*lines, *chapter[head:]]


def in_words(answer: Answered, result: Result) -> str:
    """Return the plain answer: who sleeps, what comes in, what it comes to, and what a night leaves wet."""
    from boxwright.disciplines.air.telling import area, flow, ppm, ppm_band
    from boxwright.units import show

    units = answer.units
    said = [f"{area(result.low, units)} stays open low and {area(result.high, units)} high.".capitalize()]
    breathing = result.breathing
    who, when, by = f"{result.sleepers} asleep", "night", "by morning"
    if result.workers:
        who, when, by = f"{result.workers} at work", "day, everything shut,", "by the end of a day of work"
    if breathing is None:
        nobody = "Nobody works in it" if result.use == "work" else "Nobody sleeps"
        is_size = result.sleepers or result.workers
        said.append("The size of the room is not known." if is_size else f"{nobody} in this load state.")
    else:
        said.append(
            f"On a mild and still {when} {flow(breathing.flow, units)} of outdoor air comes in for {who},"
            f" where {show(breathing.need, 'flow', units)} is wanted: carbon dioxide comes to"
            f" {ppm_band(breathing.morning)} {by}, {ppm(breathing.morning.best)} most likely."
        )
    return " ".join([*said, *(_night_in_words(result) if result.sleepers else ())])


def _night_in_words(result: Result) -> list[str]:
    from boxwright.disciplines.air.findings.damp import most_humid, wet_kinds
    from boxwright.disciplines.air.sheets import dries_in_words

    if not result.nights:
        return ["No night has been worked out, so nothing is said of what stands wet."]
    said = []
    for night in result.nights:
        found = wet_kinds(replace(result, nights=(night,)))
        surely = [kind for kind, places in found.items() if places[0][1].driest.hours > 0]
        pieces = [f"water stands on {_few(surely)}"] if surely else []
        perhaps = [kind for kind in found if kind not in surely]
        pieces += [f"{'it' if surely else 'water'} may stand on {_few(perhaps)}"] if perhaps else []
        where = ", and ".join(pieces) or "nothing worth a word stands wet"
        humid, heated = most_humid(night), "" if night.heater else ", without a heater,"
        said.append(f"In the night at {night.place}{heated} the humidity of the room comes to {humid}: {where}.")
        said += [f"{dries_in_words(night)}."] if night.heater else []
    return said


def _few(kinds: list[str]) -> str:
    """Return a list of kinds of place, of which no more than a few are named."""
    from boxwright.finding import listed

    return listed(kinds if len(kinds) <= FEW else [*kinds[: FEW - 1], f"{len(kinds) - FEW + 1} more kinds of place"])


def tables(answer: Answered, result: Result) -> tuple[Grid, ...]:
    """Return the tables of the page."""
    from boxwright.disciplines.air.sheets import grids_of

    return grids_of(result, answer.units)


def as_json_of(result: Result | None) -> Json:
    """Return what air has worked out in one slot, in SI, for programs."""
    from boxwright.cli.answers import band, number

    if result is None:
        return None
    breathing = result.breathing
    return {
        "sleepers": result.sleepers,
        "free_area_low": band(result.low),
        "free_area_high": band(result.high),
        "outdoor_air": band(breathing.flow) if breathing is not None else None,
        "carbon_dioxide_by_morning": band(breathing.morning) if breathing is not None else None,
        "nights": [
            {
                "place": night.place,
                "outside": [number(one) for one in night.outside],
                "air": [number(one) for one in night.air],
                "dries": number(night.dries),
                "humidity": [number(one) for one in night.humidity],
                "wet": [
                    {
                        "of": one.cold.of,
                        "what": one.cold.what,
                        "hours": one.hours,
                        "most": number(one.most),
                        "coldest": number(one.coldest),
                        "drips_from": number(one.limit),
                        "air": number(one.air),
                        "watt": number(one.watt),
                        "ends": [
                            {"hours": end.hours, "most": number(end.most), "coldest": number(end.coldest)}
                            for end in one.ends
                        ],
                    }
                    for one in night.wet
                ],
            }
            for night in result.nights
        ],
    }
