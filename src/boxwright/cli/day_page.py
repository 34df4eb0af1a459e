"""The hot day of ``boxwright heat RIG --day``: how hot by which hour, shut and aired, and what helps."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from boxwright.cli.asked import Answered, slot_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, hanging, plain, wrapped
from boxwright.units import HeaderUnits, read_band, show

if TYPE_CHECKING:
    from boxwright.cli.answers import Json
    from boxwright.disciplines.heat.day import DayRun
    from boxwright.disciplines.heat.hot import HotDay
    from boxwright.disciplines.heat.hot_room import HotRoom

TYPED = "as asked"


def worked(answer: Answered, outside: str) -> tuple[HotRoom, ...]:
    """Return the hot days of the room; ``outside`` is how hot it gets in place of what the file says."""
    from boxwright.book.hot_day import NO_DAY, NO_ROOM, hot_rooms, people_of
    from boxwright.disciplines.heat.hot import hot_days

    slot, rig = slot_of(answer, answer.use), answer.reading.rig
    if slot is None or slot.heat is None or not slot.heat.volume.known:
        raise NothingAsked(NO_ROOM)
    days = hot_days(rig.heat)
    if outside:
        days = (_typed(answer, outside, days),)
    if not days:
        raise NothingAsked(NO_DAY)
    return hot_rooms(slot, days, people_of(rig))


def _typed(answer: Answered, outside: str, days: tuple[HotDay, ...]) -> HotDay:
    """Return a day as hot as was typed, at the hottest of the places; where none says anything, in midsummer."""
    from boxwright.disciplines.heat.hot import hot_days
    from boxwright.disciplines.heat.parts import ClimateFacet, a_day

    try:
        hottest = a_day(read_band(outside, "temperature", answer.units))
    except ValueError as wrong:
        raise NothingAsked(str(wrong)) from None
    if days:
        hot = max(days, key=lambda one: one.hottest.best)
        return replace(hot, hottest=hottest, is_written=True)
    own = replace(answer.reading.rig.heat, climates=((TYPED, ClimateFacet(hottest_design=hottest)),))
    return hot_days(own)[0]


def lines(rooms: tuple[HotRoom, ...], units: HeaderUnits, columns: int) -> list[Line]:
    """Return the lines of the page."""
    from boxwright.cli.grid_lines import rows_of
    from boxwright.disciplines.heat import day_sheet

    told: list[Line] = []
    for room in rooms:
        told += [plain(piece) for piece in wrapped(day_sheet.in_words(room.hot, units), columns)]
        told += [(), *(plain(piece) for piece in wrapped(in_words(room, units), columns))]
        for grid in day_sheet.grids_of(room, units):
            told += [(), plain(grid.title.upper(), "head"), *rows_of(grid.columns, grid.rows, columns)]
        told.append(())
    for said in (day_sheet.WHAT_IT_IS, day_sheet.CAUTION):
        told += hanging(plain("  "), said, columns, "dim")
    return [*told, (), plain("The picture: boxwright draw RIG --sheet hot-day --to FOLDER", "dim")]


def in_words(room: HotRoom, units: HeaderUnits) -> str:
    """Return the day in a few sentences: shut, aired in the best way there is, and the cold that would hold it."""
    from boxwright.disciplines.heat.telling import IN_WORDS, between, warm
    from boxwright.disciplines.heat.year_room import ROOMS

    shut, aired = room.runs[0], room.aired
    said = f"Shut, the room comes to {between(shut.warmest, units)}, most from {shut.at} h."
    if aired.way != "shut":
        said += f" With {IN_WORDS[aired.way]} it comes to {between(aired.warmest, units)}"
        said += f" and is {between(aired.bedtime, units)} as people go to bed."
    cold = room.asked.cooling
    if cold.high <= 0.0:
        return f"{said} It asks for no cooling."
    held = warm(ROOMS["cooled to"], units)
    most = f"{show(cold.best, 'power', units)} ({show(cold.low, 'power', units)} to {show(cold.high, 'power', units)})"
    return f"{said} Shut and held at {held} it takes {most} of cold at the worst hour."


def as_json(rooms: tuple[HotRoom, ...]) -> Json:
    """Return the days in SI, for programs."""
    return [
        {
            "of": room.hot.of,
            "place": room.hot.place,
            "runs": [_run(one) for one in room.runs],
            "tried": [{"what": one.what, "shut": _run(one.shut), "aired": _run(one.aired)} for one in room.tried],
            "cooling": _run(room.asked),
        }
        for room in rooms
    ]


def _run(one: DayRun) -> Json:
    from boxwright.cli.answers import band, number

    return {
        "way": one.way,
        "warmest": band(one.warmest),
        "warmest_from_hour": one.at,
        "too_warm_hours": band(one.too_warm),
        "bedtime": band(one.bedtime),
        "cooling": band(one.cooling),
        "air": [number(value) for value in one.air],
    }
