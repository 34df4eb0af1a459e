"""The words of the command line. Each command opens what it needs when it is called, so that `check` stays quick."""

from __future__ import annotations

from datetime import date
from typing import Annotated

import typer

from boxwright.cli import file_words, looking_words
from boxwright.cli.chapter_words import add_chapters
from boxwright.cli.options import AsJson, Load, OnDate, Rig, Stage, Units, UseWord, Vehicle
from boxwright.cli.words import CHAPTERS

app = typer.Typer(
    add_completion=False,
    rich_markup_mode=None,
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


app.command("try")(file_words.try_edits)
app.command("set")(file_words.set_values)
app.command()(file_words.measured)
app.command()(looking_words.draw)
app.command()(looking_words.since)
app.command()(file_words.new)
app.command(name="open")(file_words.open_workbench)


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


app.command()(looking_words.where)
app.command()(looking_words.compare)


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


app.command()(looking_words.changeover)

add_chapters(app, [one for one in CHAPTERS if one not in {"weight", "towing"}])
