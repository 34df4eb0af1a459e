"""The words of the command line. Each command opens what it needs when it is called, so that `check` stays quick."""

from __future__ import annotations

from datetime import date
from typing import Annotated

import typer

from boxwright.cli.chapter_words import add_chapters
from boxwright.cli.options import (
    Anyway,
    AsJson,
    Edits,
    Load,
    OnDate,
    Rig,
    SectionAt,
    Stage,
    Typed,
    Units,
    UseWord,
    Vehicle,
)
from boxwright.cli.words import CHAPTERS

app = typer.Typer(
    add_completion=False, rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
    help="One rig file in; weights, balance and an honest answer out.",
)

@app.callback(invoke_without_command=True)
def start(
    context: typer.Context,
    version: Annotated[bool, typer.Option("--version", help="the version of Boxwright")] = False,
) -> None:
    """One rig file in; weights, balance and an honest answer out."""
    from boxwright import __version__
    from boxwright.cli.screen import Screen, plain
    from boxwright.cli.start import page

    screen = Screen()
    if version:
        screen.show([plain(f"boxwright {__version__}")])
    elif context.invoked_subcommand is None:
        screen.show(page(screen.columns))


@app.command()
def check(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    as_json: AsJson = False,
    on: OnDate = "",
    is_all: Annotated[bool, typer.Option("--all", help="every finding, problem and note")] = False,
    fixes: Annotated[str, typer.Option("--fixes", help="the smallest changes: first, or all for every load")] = "first",
    vehicle: Vehicle = "",
) -> None:
    """Say whether it may be towed, slept in, left and worked in; its weights; what was found."""
    from boxwright.cli import answers
    from boxwright.cli.asked import Question, answered, checked, exit_code
    from boxwright.cli.check import page
    from boxwright.cli.fixes import fix_lines, put_in, sought, weigh_first_lines, with_first_fix, with_fixes
    from boxwright.cli.screen import Screen

    answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today())
    screen = Screen()
    shown = checked(answer)
    found = sought(answer, fixes, date.today())
    if as_json:
        screen.show_raw(answers.as_text(answers.check(with_fixes(shown, found))))
    else:
        lines = [*fix_lines(found, answer.question, screen.columns), *weigh_first_lines(answer, screen.columns)]
        screen.show(put_in(page(with_first_fix(shown, found), screen.columns, is_all), lines))
    raise typer.Exit(exit_code(answer))


@app.command("next")
def next_step(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Say what to weigh or measure first, what is not ticked yet, and which stages can be begun."""
    from boxwright.cli.asked import Question, exit_code
    from boxwright.cli.next_steps import next_page
    from boxwright.cli.screen import Screen

    screen = Screen()
    lines, answer = next_page(Question(rig, stage, load, use, units, on, vehicle), date.today(), screen.columns)
    screen.show(lines)
    raise typer.Exit(exit_code(answer))


@app.command("try")
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


@app.command("set")
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


@app.command()
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


@app.command()
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


@app.command()
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


@app.command()
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
    units: Annotated[str, typer.Option(help="us or metric; left out: as in the country")] = "",
) -> None:
    """Begin a rig file with its comments; what you leave out stands as unknown, with where to read it."""
    from boxwright.cli.screen import Screen
    from boxwright.cli.starter import begun

    given = {
        "length": length, "width": width, "height": height, "coupler": coupler, "axles": axles, "axle": axle,
        "gvwr": gvwr, "gawr": gawr, "empty": empty, "tongue": tongue, "studs": studs, "country": country,
        "units": units,
    }  # fmt: skip
    screen = Screen()
    screen.show(begun(file, given, screen.columns, lambda says: str(typer.prompt(says, default="unknown"))))


@app.command(name="open")
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


@app.command()
def weight(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    as_json: AsJson = False,
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Show what it weighs and where, at every stage in every load state; what to weigh next; tip-up parked."""
    from boxwright.cli import answers
    from boxwright.cli.asked import Question, answered, exit_code, weighed
    from boxwright.cli.screen import Screen
    from boxwright.cli.weight import page

    answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today(), is_every_stage=True)
    screen = Screen()
    shown = weighed(answer)
    if as_json:
        screen.show_raw(answers.as_text(answers.weight(shown)))
    else:
        screen.show(page(shown, screen.columns))
    raise typer.Exit(exit_code(answer))


@app.command()
def explain(
    code: Annotated[str, typer.Argument(metavar="CODE", help="weight/tips-up, a method, or a chapter")],
) -> None:
    """Explain a finding's rule, a method or a chapter: what it asks, its limit, its source, the checks behind it."""
    from boxwright.cli.explain import page
    from boxwright.cli.screen import Screen

    screen = Screen()
    screen.show(page(code, screen.columns))


@app.command()
def working(
    rig: Rig,
    number: Annotated[str, typer.Argument(metavar="NUMBER", help="gross, tongue, share, on-wheels, axle-1, left, ...")],
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Show how one number came about: the formula, the numbers put in, the result, the source."""
    from boxwright.cli.asked import Question, answered
    from boxwright.cli.screen import Screen
    from boxwright.cli.working import page

    screen = Screen()
    answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today())
    screen.show(page(answer, number, screen.columns))


@app.command()
def schema(
    is_answers: Annotated[bool, typer.Option("--answers", help="the schema of what --json prints")] = False,
) -> None:
    """Print the JSON schema of the rig file, for an editor that helps while you type."""
    import json

    from boxwright.cli.answers import answer_schema
    from boxwright.cli.screen import Screen

    if is_answers:
        Screen().show_raw(answer_schema().rstrip())
        return
    from boxwright.rig.schema import rig_schema

    Screen().show_raw(json.dumps(rig_schema(), indent=2, ensure_ascii=True))


@app.command()
def trace(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Show which steps ran for an answer, and for how long."""
    from time import perf_counter

    from boxwright.cli.asked import Question, answered
    from boxwright.cli.screen import Screen
    from boxwright.cli.trace import page

    screen = Screen()
    answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today(), clock=perf_counter)
    screen.show(page(answer, screen.columns))


@app.command()
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


@app.command()
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


@app.command("check-methods")
def check_methods() -> None:
    """Run the published checks of every method on this machine; exit 1 if one fails."""
    from boxwright.cli.check_methods import page, run_all
    from boxwright.cli.screen import Screen

    screen = Screen()
    outcomes = run_all(CHAPTERS)
    screen.show(page(outcomes, screen.columns))
    raise typer.Exit(1 if any(outcome.is_failed for outcome in outcomes) else 0)


@app.command()
def towing(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "tow",
    units: Units = "file",
    as_json: AsJson = False,
    on: OnDate = "",
    vehicle: Vehicle = "",
    is_walk: Annotated[bool, typer.Option("--walk", help="the walk round before the road, on one page")] = False,
) -> None:
    """Hold the trailer against its plates, its tow vehicles and the law of the route; or walk round it."""
    from boxwright.cli import answers
    from boxwright.cli.asked import Question, answered, checked, exit_code, of_chapter
    from boxwright.cli.check import chapter_page
    from boxwright.cli.screen import Screen
    from boxwright.cli.walk import walk_page

    answer = answered(Question(rig, stage, load, use, units, on, vehicle), date.today())
    shown, screen = checked(answer), Screen()
    if as_json:
        screen.show_raw(answers.as_text(answers.check(of_chapter(shown, "towing"))))
    elif is_walk:
        screen.show(walk_page(shown, screen.columns))
    else:
        screen.show(chapter_page(of_chapter(shown, "towing"), "towing", screen.columns))
    raise typer.Exit(exit_code(answer))


@app.command()
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


add_chapters(app, [one for one in CHAPTERS if one not in {"weight", "towing"}])
