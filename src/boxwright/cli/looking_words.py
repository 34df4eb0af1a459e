"""The words that look at a rig: drawn, behind a spot, side by side, since a day, from one use to another."""

from __future__ import annotations

from datetime import date
from typing import Annotated

import typer

from boxwright.cli.options import AsJson, Load, OnDate, Rig, SectionAt, Stage, Units, UseWord, Vehicle


def draw(
    rig: Rig,
    to: Annotated[str, typer.Option("--to", metavar="DIR", help="the folder the files go into; made if need be")],
    sheets: Annotated[list[str] | None, typer.Option("--sheet", metavar="NAME", help="one sheet, or several")] = None,
    formats: Annotated[list[str] | None, typer.Option("--format", help="svg, dxf, pdf, png, glb, or several")] = None,
    paper: Annotated[str, typer.Option("--paper", help="letter or a4; left out: what is sold at home")] = "",
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    section: SectionAt = "",
    is_over: Annotated[bool, typer.Option("--over", help="write over files that this command did not write")] = False,
) -> None:
    """Draw the sheets: elevations, roof, floor, sections, hole pages, order, receiving, story sticks, bay cards."""
    from boxwright.cli.asked import Question
    from boxwright.cli.drawing_files import Wanted, drawn_files
    from boxwright.cli.screen import Screen

    wanted = Wanted(to, tuple(sheets or ()), tuple(formats or ()), paper, is_over, section)
    screen = Screen()
    screen.show(drawn_files(Question(rig, stage, load, use, units, on), wanted, date.today(), screen.columns))


def since(
    rig: Rig,
    moment: Annotated[str, typer.Argument(metavar="WHEN", help="order, a weighing by its name, or a day: 2026-03-01")],
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Say what has changed since a weighing or a day; since the order: what the builder's reply would change."""
    from boxwright.cli.asked import Question, exit_code
    from boxwright.cli.screen import Screen
    from boxwright.cli.since import since as told_since

    screen = Screen()
    lines, answer = told_since(Question(rig, "", load, use, units, on, vehicle), moment, date.today(), screen.columns)
    screen.show(lines)
    raise typer.Exit(exit_code(answer))


def where(
    rig: Rig,
    wall: Annotated[str, typer.Argument(metavar="WALL", help="left, right, front, rear, roof or floor")],
    place: Annotated[list[str], typer.Argument(metavar="PLACE...", help="x=72 z=30; side=left+20 z=30 at the ends")],
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
) -> None:
    """Say what is behind a spot: metal or not, the nearest members, layers, backing, wires, and how sure that is."""
    from boxwright.cli.asked import Question
    from boxwright.cli.screen import Screen
    from boxwright.cli.where import where as page_of

    screen = Screen()
    screen.show(page_of(Question(rig, stage, load, use, units), wall, place, date.today(), screen.columns)[0])


def compare(
    rig: Rig,
    first: Annotated[str, typer.Argument(metavar="A", help="an opening, or an edit of one: window-right.x=96")],
    second: Annotated[str, typer.Argument(metavar="B", help="the other opening, width or place")],
    stage: Stage = "",
    use: UseWord = "tow",
    units: Units = "file",
) -> None:
    """Set two openings, widths or places side by side: wall left, bays lost, what passes, weight, price."""
    from boxwright.cli.asked import Question
    from boxwright.cli.screen import Screen
    from boxwright.cli.side_by_side import compare as page_of

    screen = Screen()
    screen.show(page_of(Question(rig, stage, "", use, units), first, second, date.today(), screen.columns)[0])


def changeover(
    rig: Rig,
    start: Annotated[str, typer.Argument(metavar="FROM", help="travel, night, or a load state of the file")],
    goal: Annotated[str, typer.Argument(metavar="TO", help="travel, night, or a load state of the file")],
    stage: Stage = "",
    load: Load = "",
    units: Units = "file",
    as_json: AsJson = False,
) -> None:
    """Say what to move from travel to night and back, in the order of hands, and how everybody gets out."""
    from boxwright.cli.asked import Question
    from boxwright.cli.changing_over import answer_of, page
    from boxwright.cli.screen import Screen

    screen = Screen()
    told = answer_of(Question(rig, stage, "", "tow", units), start, goal, load, date.today())
    if as_json:
        screen.show_raw(told.as_text())
    else:
        screen.show(page(told, screen.columns))
    raise typer.Exit(told.exit_code)
