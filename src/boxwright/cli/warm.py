"""The page of ``boxwright heat``: what the room loses, what each night comes to, a year, and what a section holds."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from math import isfinite
from typing import TYPE_CHECKING, Annotated, NamedTuple

import typer

from boxwright.cli.options import AsJson, Load, OnDate, Rig, Stage, Units, UseWord, Vehicle

if TYPE_CHECKING:
    from boxwright.cli.answers import Json
    from boxwright.cli.asked import Answered
    from boxwright.cli.screen import Line, Screen
    from boxwright.disciplines.heat import Result
    from boxwright.disciplines.heat.cold_hours import Warmth
    from boxwright.disciplines.heat.night import HeldNight
    from boxwright.finding import Finding
    from boxwright.rig.rig import Rig as RigFile
    from boxwright.units import Band

OUTSIDE_HELP = "a night as cold (or, with --day, a day as hot) as this, such as 20F"
Outside = Annotated[str, typer.Option("--outside", metavar="COLD", help=OUTSIDE_HELP)]
Inside = Annotated[str, typer.Option("--inside", metavar="WARM", help="what is wanted in the room, such as 62F")]
Night = Annotated[bool, typer.Option("--night", help="each night hour by hour")]
WITH_HELP = 'what is borrowed for the night, such as "electric heater 1500 W", or "... 1500 W, own cable"'
With = Annotated[str, typer.Option("--with", metavar="HEATER", help=WITH_HELP)]
YEAR_HELP = "a year in the weather of a file (EPW, TMY3, TMY2, a logger's), or of a place of the rig"
FILL_HELP = "with --year: hours that are missing, up to six on end, are put between their neighbours, and told"
Fill = Annotated[bool, typer.Option("--fill", help=FILL_HELP)]
FETCH_HELP = "with --year PLACE: ask a public service on the internet for its typical year, and write it to FILE"
Fetch = Annotated[str, typer.Option("--fetch", metavar="FILE", help=FETCH_HELP)]
OfYear = Annotated[str, typer.Option("--year", metavar="WEATHER", help=YEAR_HELP)]
LOGGED_HELP = "a night a logger read (time,inside (F),outside (F),heat (W)): what the room really loses"
Logged = Annotated[str, typer.Option("--logged", metavar="FILE", help=LOGGED_HELP)]
KNOWN_HELP = "with --logged: the heat that ran all night, such as 1000W, where the file has no column of it"
KnownHeat = Annotated[str, typer.Option("--heat", metavar="WATTS", help=KNOWN_HELP)]
KEEP_HELP = "with --logged: write what the night proved under measured, for every answer to take"
Keep = Annotated[bool, typer.Option("--keep", help=KEEP_HELP)]
SECTION_HELP = "the section of a wall, such as left or roof: by every rule of the hand, and as a field"
Section = Annotated[str, typer.Option("--section", metavar="WALL", help=SECTION_HELP)]
DAY_HELP = "a hot day hour by hour: shut, opened, with fans, with doors open; --outside 95F: as hot as that"
OfDay = Annotated[bool, typer.Option("--day", help=DAY_HELP)]
_HEAT = re.compile(r"(?<![\w.,-])(?:about )?[\d.,]+(?: ?\+-? ?[\d.,]+)? ?(?:k?W|kilowatts?|watts?|BTU/h|Btu/h)\b")
_SEVERAL = re.compile(r"\b(?:heaters|two|three|both)\b|^\s*\d+ ?x? electric", re.IGNORECASE)
OWN_CABLE = "own cable"
"""Words for what is plugged in outside and not in the trailer."""
NOBODY = "No person is written to be in it at night, so nobody's night was judged. Write who is: people: {me: {..}}"
FLAME = (
    "only electric heaters are lent here. What burns is judged by its exhaust: write it in the file, as a part with"
    " heater: and exhaust:. Without an exhaust that ends outside carbon monoxide kills: it is none to sleep by"
)


def add_heat(app: typer.Typer) -> None:
    """Give the chapter on heat its word."""
    app.command("heat", help="Show what the room loses, how cold a night it holds, and on how much fuel.")(heat)


def heat(
    rig: Rig,
    stage: Stage = "",
    load: Load = "",
    use: UseWord = "sleep",
    night: Night = False,
    outside: Outside = "",
    inside: Inside = "",
    borrowed: With = "",
    day: OfDay = False,
    year: OfYear = "",
    fill: Fill = False,
    fetch: Fetch = "",
    logged: Logged = "",
    known_heat: KnownHeat = "",
    keep: Keep = False,
    section: Section = "",
    units: Units = "file",
    as_json: AsJson = False,
    on: OnDate = "",
    vehicle: Vehicle = "",
) -> None:
    """Show what the room loses face by face, how cold a night it holds, on how much fuel; a year; a wall's section."""
    from boxwright.cli import answers
    from boxwright.cli.asked import Question, answered, checked, exit_code, of_chapter, slot_of
    from boxwright.cli.fixes import chapter_with_fixes
    from boxwright.cli.fresh_air import at_outside
    from boxwright.cli.screen import Screen

    screen, today = Screen(), date.today()
    asked = Question(rig, stage, load, use, units, on, vehicle)
    answer = answered(asked, today, change=lambda read: wanting(at_outside(read, "" if day else outside), inside))
    slot = slot_of(answer, answer.use)
    result = slot.heat if slot is not None else None
    held = result.held if result is not None else ()
    if borrowed and result is not None:
        held = with_borrowed(answer, result, borrowed, inside)
    if logged and keep:
        from boxwright.cli.logged_page import keeping

        lines, answer = keeping(asked, logged, known_heat, today, screen.columns)
        screen.show(lines)
        raise typer.Exit(exit_code(answer))
    if section:
        screen.show(section_lines(answer, section, screen.columns))
        raise typer.Exit(0)
    if day or year or logged:
        asked_for = Apart(outside if day else None, (year, fill, fetch), (logged, known_heat))
        show_apart(answer, asked_for, screen, as_json)
        raise typer.Exit(exit_code(answer))
    if as_json:
        shown = answers.check(of_chapter(checked(answer), "heat"))
        screen.show_raw(answers.as_text({**shown, "heat": as_json_of(result, held, findings_of(answer))}))
    else:
        _, lines = chapter_with_fixes(answer, "heat", screen.columns, today)
        screen.show(page(answer, result, held, lines, screen.columns, night))
    raise typer.Exit(exit_code(answer))


class Apart(NamedTuple):
    """Which page of its own is asked for: a day as hot as typed (None: none), a year, or a night that was logged."""

    hot: str | None
    year: tuple[str, bool, str]
    logged: tuple[str, str]


def show_apart(answer: Answered, asked: Apart, screen: Screen, as_json: bool) -> None:
    """Show a page of its own, as lines or for programs."""
    from boxwright.cli import answers

    name, found, lines = apart(answer, asked, screen.columns)
    if as_json:
        screen.show_raw(answers.as_text({name: found}))
    else:
        screen.show(lines)


def apart(answer: Answered, asked: Apart, columns: int) -> tuple[str, Json, list[Line]]:
    """Return a page of its own, by its name for programs and as lines: a hot day, a year, or a night logged."""
    from boxwright.cli import day_page, logged_page, year_page

    if asked.hot is not None:
        rooms = day_page.worked(answer, asked.hot)
        return "days", day_page.as_json(rooms), day_page.lines(rooms, answer.units, columns)
    if asked.year[0]:
        years = year_page.worked(answer, *asked.year)
        return "year", year_page.as_json(years), year_page.lines(years, answer.units, columns)
    told = logged_page.worked(answer, *asked.logged)
    return "logged", logged_page.as_json(told), logged_page.lines(told, answer.units, columns)


def wanting(rig: RigFile, written: str) -> RigFile:
    """Return a rig whose heaters are all set to what was typed; the rig itself where nothing was."""
    if not written:
        return rig
    wanted = _temperature(rig, written)
    heaters = tuple(replace(one, heater=one.heater.model_copy(update={"holds": wanted})) for one in rig.heat.heaters)
    return replace(rig, heat=replace(rig.heat, heaters=heaters))


def _temperature(rig: RigFile, written: str) -> Band:
    from boxwright.cli.rig_file import NothingAsked
    from boxwright.disciplines.heat.parts import a_room
    from boxwright.units import read_band

    try:
        return a_room(read_band(written, "temperature", rig.header.units))
    except ValueError as wrong:
        raise NothingAsked(str(wrong)) from None


def with_borrowed(answer: Answered, result: Result, written: str, inside: str) -> tuple[HeldNight, ...]:
    """Return the nights of every place with what was borrowed alone; what burns in the room is refused in words."""
    from boxwright.disciplines.heat.night import night_of

    warmth = borrowed_of(answer, written, inside)
    places = {one.outdoors: one.outdoors for one in result.held}
    return tuple(night_of(result.inside, place, warmth, result.moisture) for place in places)


def borrowed_of(answer: Answered, written: str, inside: str) -> Warmth:
    """Return what is borrowed, by its words: what it is, and its heat in watts."""
    from boxwright.cli.rig_file import NothingAsked
    from boxwright.disciplines.heat.burner import runs_on
    from boxwright.disciplines.heat.cold_hours import WANTED, Warmth
    from boxwright.disciplines.heat.feeds import MOST_OF_A_PLUG
    from boxwright.units import CannotRead, exactly, read_band

    watts = _HEAT.search(written)
    kinds = [runs_on(word) for word in written.lower().split()]
    if "burns" in kinds or "gas" in written.lower():
        raise NothingAsked(f'"{written}" is not worked out: {FLAME}')
    if len(_HEAT.findall(written)) > 1 or _SEVERAL.search(written):
        several = "write one heater with the heat of all of them together"
        raise NothingAsked(f'"{written}" is not worked out: {several}, as "electric heater 3000 W"')
    if watts is None or "electric" not in kinds:
        raise NothingAsked(f'cannot read "{written}"; write what it is and its heat, as "electric heater 1500 W"')
    try:
        heat_of = read_band(watts.group(0), "power", answer.units)
    except CannotRead as wrong:
        raise NothingAsked(f"{wrong}, or as 1500..2000 W where you do not know") from None
    if heat_of.high > MOST_OF_A_PLUG:
        raise NothingAsked(f'"{written}" is not worked out: no plug of a site carries that, 3,680 W at most')
    if OWN_CABLE not in written.lower():
        _held_by_the_breaker(answer, written, heat_of)
    wanted = _temperature(answer.reading.rig, inside).best if inside else WANTED
    return Warmth("", f"borrowed {written}", exactly(0.0), heat_of, wanted, not inside, True, is_plugged_in=True)


def _held_by_the_breaker(answer: Answered, written: str, heat_of: Band) -> None:
    """Refuse in words what the wires of the rig do not carry from outside to a plug, or perhaps do not."""
    from boxwright.cli.rig_file import NothingAsked
    from boxwright.disciplines.heat.plugs import plugged_in
    from boxwright.rig.feeding import feeding_whatever
    from boxwright.units import show_band

    rig = answer.reading.rig
    items = {"parts": rig.parts, "openings": rig.openings, "wires": rig.wires}
    fed = feeding_whatever(items, (), frozenset(rig.troubled))
    largest = plugged_in(replace(rig.heat, sources=fed.sources, leads=fed.leads, draws=fed.draws))
    if largest is None or heat_of.high <= largest.gives.low:
        return
    is_wire = largest.kind == "wire"
    does = f"nobody wrote {f'how large the breaker of {largest.name} is' if is_wire else f'what {largest.name} gives'}"
    if largest.gives.known:
        lets = show_band(largest.gives, "power", answer.units)
        does = f"{largest.name} passes {lets} on, and switches off above"
        does = f"the breaker of {largest.name} lets {lets} through, and trips above" if is_wire else does
    raise NothingAsked(
        f'"{written}" is not worked out: {does}; take a smaller one, or write "{written}, {OWN_CABLE}" where it is'
        " plugged in outside by a cable of its own"
    )


def page(
    answer: Answered,
    result: Result | None,
    held: tuple[HeldNight, ...],
    chapter: Sequence[Line],
    columns: int,
    is_hourly: bool,
) -> list[Line]:
    """Return the lines of the page: the plain answer, the tables, then what the chapter found and what helps."""
    from boxwright.cli.asked import checked
    from boxwright.cli.check import page_title
    from boxwright.cli.grid_lines import rows_of
    from boxwright.cli.screen import plain, wrapped
    from boxwright.cli.warm_helps import help_lines
    from boxwright.disciplines.heat.sheets import grids_of, hours_grid

    head = 1 + len(page_title(checked(answer), columns)[:-1])
    lines = list(chapter[:head])
    if result is not None and result.use == "sleep" and not result.sleepers:
        lines += [(), *(plain(piece) for piece in wrapped(NOBODY, columns))]
    if result is not None and result.volume.known:
        for said in in_words(answer, result, held):
            lines += [(), *(plain(piece) for piece in wrapped(said, columns))]
        grids = grids_of(replace(result, held=held), answer.units)
        if is_hourly:
            grids = (*grids, *(hours_grid(one, answer.units) for one in held))
        for grid in grids:
            lines += [(), plain(grid.title.upper(), "head"), *rows_of(grid.columns, grid.rows, columns)]
        lines += help_lines(answer, result, held, columns)
    return [*lines, *chapter[head:]]


def in_words(answer: Answered, result: Result, held: tuple[HeldNight, ...]) -> list[str]:
    """Return the plain answer: what is lost, and what each night comes to."""
    from boxwright.cli.held_words import night_in_words
    from boxwright.disciplines.heat.shell import bare_faces, by_members
    from boxwright.disciplines.heat.telling import proof_in_words
    from boxwright.finding import listed
    from boxwright.units import show, shown_unit

    units, shell = answer.units, result.shell
    unit, scale = shown_unit("heat loss", units)
    least, most = (f"{scale.from_si(one):.0f}" for one in (shell.by_air.low, shell.by_air.high))
    between = least if least == most else f"{least} to {most}" if isfinite(shell.by_air.high) else f"at least {least}"
    metal = sum(by_members(one).best for one in shell.faces)
    bare = [one.name for one in bare_faces(shell)]
    of_it = f", {show(metal, 'W/K', units)} of it by studs, bows and edges" if metal > 0.0 else ""
    said = [f"The room loses {between} {unit} through its faces{of_it}."]
    if bare:
        where = f"of {listed(bare)} stands" if metal > 0.0 else "stands"
        said.append(f"The skin {where} bare: its studs and bows stand in the room like fins, and are counted with it.")
    if result.proof is not None:
        said.append(proof_in_words(result.proof, units))
    if not held:
        said.append(
            "Nobody sleeps in this use, so no night is worked out."
            if result.use != "sleep"
            else "No place of the file has a coldest night, so none is worked out."
        )
    return [*said, *(night_in_words(one, findings_of(answer), units) for one in held)]


def findings_of(answer: Answered) -> tuple[Finding, ...]:
    """Return all that is said in the slot of the use asked for, what the owner has accepted among it."""
    from boxwright.cli.asked import slot_of

    slot = slot_of(answer, answer.use)
    return (*slot.findings, *slot.accepted) if slot is not None else ()


def section_lines(answer: Answered, wall: str, columns: int) -> list[Line]:
    """Return the section of a wall by every rule of the hand, by the stored table, and as a field where it can be."""
    from boxwright.book.wall_sections import WALLS, wall_section
    from boxwright.cli.asked import slot_of
    from boxwright.cli.grid_lines import rows_of
    from boxwright.cli.rig_file import NothingAsked
    from boxwright.cli.screen import plain, wrapped

    name = {"ceiling": "roof"}.get(wall.strip().lower(), wall.strip().lower())
    if name not in WALLS:
        raise NothingAsked(f'no wall "{wall}"; write one of: {", ".join(WALLS)}')
    lines: list[Line] = []
    for sheet in wall_section(f"section-{name}", answer.reading.rig, slot_of(answer, answer.use), answer.units):
        lines += [(), plain(sheet.title.upper(), "head")]
        for note in sheet.notes:
            lines += [plain(piece) for piece in wrapped(note, columns)]
        for grid in sheet.grids:
            lines += [(), plain(grid.title.upper(), "head"), *rows_of(grid.columns, grid.rows, columns)]
    lines += [(), plain(f"The picture: boxwright draw RIG --sheet section-{name} --to FOLDER", "dim")]
    return lines


def as_json_of(result: Result | None, held: tuple[HeldNight, ...], findings: tuple[Finding, ...]) -> Json:
    """Return what heat has worked out in one slot, in SI, for programs."""
    from boxwright.cli.answers import band, number
    from boxwright.disciplines.heat.bearing import holds, undone_by

    if result is None:
        return None
    return {
        "sleepers": result.sleepers,
        "loss": band(result.shell.loss),
        "loss_by_air": band(result.shell.by_air),
        "loss_by_members": band(result.shell.members),
        "faces": [
            {"of": one.of, "name": one.name, "area": band(one.area), "loss": band(one.loss), "how": one.how}
            for one in result.shell.faces
        ],
        "nights": [
            {
                "of": one.outdoors.of,
                "place": one.outdoors.place,
                "heater": one.warmth.of if one.warmth is not None else "",
                "outside_at_its_coldest": band(one.outdoors.coldest),
                "holds": holds(one, findings),
                "undone_by": [each.code for each in undone_by(one, findings)],
                "coldest": band(one.coldest),
                "at_lowest": band(one.at_lowest) if one.at_lowest is not None else None,
                "holds_down_to": band(one.holds_down_to) if one.holds_down_to is not None else None,
                "energy": band(one.energy),
                "outside": [number(value) for value in one.night.outside],
                "air": [number(value) for value in one.night.air],
                "heat": [number(value) for value in one.night.heat],
            }
            for one in held
        ],
    }
