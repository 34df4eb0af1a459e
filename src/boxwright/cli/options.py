"""What is typed behind a word: the rig, the edits, and the options that mean the same behind every word."""

from __future__ import annotations

from typing import Annotated

import typer

Rig = Annotated[str, typer.Argument(metavar="RIG", help="the rig file, or - for what comes through a pipe")]
Stage = Annotated[str, typer.Option("--stage", help="the plan of a stage, by name or number; left out: today")]
Load = Annotated[str, typer.Option("--load", help="a load state of the file")]
UseWord = Annotated[str, typer.Option("--use", help="tow, sleep, leave or work: the answer behind the exit code")]
Units = Annotated[str, typer.Option("--units", help="us, metric or file (as the rig file has them)")]
AsJson = Annotated[bool, typer.Option("--json", help="the same for programs, numbers in SI")]
EDIT_HELP = """bunk.x+6in, boat.weight=110; or in words: add parts.stool [after bench], add outboard to night.out,
copy bench to bench-2, rename bunk to wall-bed, drop stool, drop bench.note. Several make one step."""
Edits = Annotated[list[str], typer.Argument(metavar="EDIT...", help=EDIT_HELP)]
Typed = Annotated[str, typer.Option(help="inside, as the box stands; left out: unknown")]
Vehicle = Annotated[str, typer.Option(help="the tow vehicle, by its name in the file; left out: the first")]
OnDate = Annotated[str, typer.Option("--date", help="judge as of this day, such as 2026-05-02; left out: today")]
Anyway = Annotated[bool, typer.Option("--anyway", help="also where bare numbers would mean something else")]
SECTION_HELP = "of glb: cut it there, x=60in, side=0 or z=30; what is kept may follow: x=60in,front"
SectionAt = Annotated[str, typer.Option("--section", metavar="WHERE", help=SECTION_HELP)]
