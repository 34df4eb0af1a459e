"""The words that begin, open, try and write a rig file. Each opens what it needs when it is called."""

from __future__ import annotations

from datetime import date
from typing import Annotated

import typer

from boxwright.cli.options import Anyway, Edits, Load, OnDate, Rig, Stage, Typed, Units, UseWord, Vehicle


def try_edits(
    rig: Rig,
    edits: Edits,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    is_anyway: Anyway = False,
    vehicle: Vehicle = "",
) -> None:
    """Show what an edit changes, breaks and clears; the file is not touched."""
    from boxwright.cli.asked import Question, exit_code
    from boxwright.cli.screen import Screen
    from boxwright.cli.trying import tried

    screen = Screen()
    asked = Question(rig, stage, load, use, units, on, vehicle)
    lines, answer = tried(asked, edits, date.today(), screen.columns, is_anyway)
    screen.show(lines)
    raise typer.Exit(exit_code(answer))


def set_values(
    rig: Rig,
    edits: Edits,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    is_anyway: Anyway = False,
    vehicle: Vehicle = "",
) -> None:
    """Write an edit into the file, nothing else in it changed; the text before is kept beside it."""
    from boxwright.cli.asked import Question, exit_code
    from boxwright.cli.screen import Screen
    from boxwright.cli.trying import written

    screen = Screen()
    asked = Question(rig, stage, load, use, units, on, vehicle)
    lines, answer = written(asked, edits, date.today(), screen.columns, is_anyway)
    screen.show(lines)
    raise typer.Exit(exit_code(answer))


def measured(
    rig: Rig,
    reading: Annotated[
        list[str],
        typer.Argument(metavar="READING...", help="what was read, then its values: studs left 7=112 3/8 8=128 1/16"),
    ],
    instrument: Annotated[str, typer.Option("--with", help="the instrument: tape, public scale, luggage scale")] = "",
    within: Annotated[str, typer.Option(help="how far it may be off: 1/8 in, 2 lb")] = "",
    stage: Annotated[str, typer.Option(help="the stage it was weighed at; left out: today's")] = "",
    load: Annotated[str, typer.Option(help="the load state it was weighed in; left out: empty")] = "",
    note: Annotated[str, typer.Option(help="anything else, in words")] = "",
    photo: Annotated[str, typer.Option(help="the number or file of its photo")] = "",
    is_try: Annotated[bool, typer.Option("--try", help="show what it would move; the file is not touched")] = False,
    use: UseWord = "tow",
    units: Units = "file",
    on: Annotated[str, typer.Option("--date", help="the day it was read; left out: today")] = "",
    vehicle: Vehicle = "",
) -> None:
    """Enter a reading of scale, tape or magnet and say what it moves; older readings stay as they are.

    Kinds: ticket, weighbridge, scale, plank, part, studs, bows, cross-members, opening, body, moisture.
    """
    from boxwright.cli.asked import Question, exit_code
    from boxwright.cli.measuring import Told
    from boxwright.cli.measuring import measured as entered
    from boxwright.cli.screen import Screen

    screen = Screen()
    question, told = Question(rig, "", "", use, units, on, vehicle), Told(instrument, within, stage, load, note, photo)
    lines, answer = entered(question, reading, told, is_try, date.today(), screen.columns)
    screen.show(lines)
    raise typer.Exit(exit_code(answer))


def new(
    file: Annotated[str, typer.Argument(metavar="NAME.yaml", help="the rig file to begin; never one that is there")],
    length: Typed = "",
    width: Typed = "",
    height: Typed = "",
    coupler: Annotated[str, typer.Option(help="ball centre to the front wall")] = "",
    axles: Annotated[str, typer.Option(help="how many")] = "",
    axle: Annotated[str, typer.Option(help="front wall to each axle, such as 83,117")] = "",
    gvwr: Annotated[str, typer.Option(help="greatest mass on the plate")] = "",
    gawr: Annotated[str, typer.Option(help="rating of one axle")] = "",
    empty: Annotated[str, typer.Option(help="weight of the empty trailer")] = "",
    tongue: Annotated[str, typer.Option(help="weight on the ball, empty")] = "",
    studs: Annotated[str, typer.Option(help="stud spacing, middle to middle")] = "",
    country: Annotated[str, typer.Option(help="where it is driven, home first: US-NC,CA-BC")] = "",
    papers: Annotated[str, typer.Option("--class", help="what its papers call it: cargo or camper")] = "",
    sleepers: Annotated[str, typer.Option(help="who sleeps in it: ann,ben or how many")] = "",
    coldest: Annotated[str, typer.Option(help='coldest night it is slept in: "18 F", "-8 C"')] = "",
    units: Annotated[str, typer.Option(help="us or metric; left out: as in the country")] = "",
) -> None:
    """Begin a rig file with its comments; what you leave out stands as unknown, with where to read it."""
    from boxwright.cli.screen import Screen
    from boxwright.cli.starter import begun

    given = {
        "length": length, "width": width, "height": height, "coupler": coupler, "axles": axles, "axle": axle,
        "gvwr": gvwr, "gawr": gawr, "empty": empty, "tongue": tongue, "studs": studs, "country": country,
        "class": papers, "sleepers": sleepers, "coldest": coldest, "units": units,
    }  # fmt: skip
    screen = Screen()
    screen.show(begun(file, given, screen.columns, lambda says: str(typer.prompt(says, default="unknown"))))


def open_workbench(
    rig: Annotated[str, typer.Argument(metavar="[RIG.yaml]", help="the rig file; left out: the first page")] = "",
    port: Annotated[int, typer.Option(help="port on this computer; 0 takes a free one")] = 0,
    no_browser: Annotated[bool, typer.Option("--no-browser", help="print the link and open nothing")] = False,
) -> None:
    """Open the workbench in the browser, on this computer only: the plan under your hand, the numbers beside it."""
    from boxwright.cli.opening import opened
    from boxwright.cli.screen import Screen

    screen = Screen()
    opened(rig, port, no_browser, date.today(), screen.show, screen.columns)
