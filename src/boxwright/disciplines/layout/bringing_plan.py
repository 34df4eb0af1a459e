"""The plan of what is brought in at a stage: where each big thing comes in, past what stands by then, and how held."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from boxwright.disciplines.layout.bodies import Block, envelope
from boxwright.disciplines.layout.bringing import Bringing, has_room, sheet_of, stage_of
from boxwright.disciplines.layout.bringing_ways import Lane
from boxwright.disciplines.layout.parts import Lining, Section
from boxwright.disciplines.layout.plan import ABOVE
from boxwright.disciplines.layout.plan_ways import arrow_head
from boxwright.disciplines.layout.posing import DATUM, Posed
from boxwright.disciplines.layout.result import Brought
from boxwright.disciplines.layout.room_plan import room_plan
from boxwright.disciplines.layout.solve import Hull
from boxwright.disciplines.layout.telling import listed, sizes, whole_sheet
from boxwright.drawing import Grid, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Point
from boxwright.exchange import Vector
from boxwright.records import dataclass

NOTES = (
    "Drawn is the room as the stage begins, loose things carried out. Each line is the way of the middle of a thing, "
    "from outside to its place; where it is turned or tilted a square is left free around it.",
    "Carry in before: the first stage at which no way is found any more past what stands by then.",
    "Whole sheets are taken to be of the usual size and to come to any place of the room.",
    "A way that is drawn is free for the boxes of the file. Measure the narrowest place with the thing at hand.",
)
HELD = {
    "": "as it will stand",
    "turned": "turned by a right angle inside",
    "tilted": "tilted over, set up inside",
    "aslant": "pushed in aslant, turned level inside",
}
TOLD = {
    "large": "no opening is large enough",
    "no way": "no way in was found",
    "doubt": "only if what is in doubt is not there",
    "no hole": "no opening is known",
    "not looked": "not looked at",
}
SHORT = 0.02
"""A leg shorter than this (m) from above is a lift, and no line."""


@dataclass(frozen=True, slots=True)
class Comes:
    """A thing, or one piece of a counted one, that is brought in at a stage, by a way or by none that was found.

    ``before`` is the first stage at which no way is found any more, empty where there is none such, or never was a way.
    """

    of: str
    name: str
    around: Block
    lane: Lane | None
    before: str = ""


@dataclass(frozen=True, slots=True)
class Sheets:
    """Linings of one thickness that come in in whole sheets of a size (m), by the way in of a name, empty for none."""

    of: str
    names: tuple[str, ...]
    size: Vector
    by: str
    before: str = ""


@dataclass(frozen=True, slots=True)
class BroughtThen:
    """What is brought in at one stage, to be drawn: ``posed`` is the room as it begins; ``told`` are its findings."""

    stage: str
    posed: Posed
    comes: tuple[Comes, ...]
    told: tuple[Brought, ...]
    sheets: tuple[Sheets, ...] = ()


def bringing_of(
    posed: Posed,
    section: Section,
    hull: Hull,
    number: int,
    now: int,
    stages: tuple[str, ...],
    linings: tuple[Lining, ...] = (),
) -> BroughtThen:
    """Return the room as a stage begins and what big things are brought in then, each with the way that is free."""
    begun = BroughtThen(stages[number] if number < len(stages) else "", posed, (), ())
    if not has_room(section):
        return begun
    shell = tuple(body for body in posed.bodies if body.kind == "shell")
    bringing = Bringing(section, hull, now)
    scene = bringing.scene(number)
    comes: list[Comes] = []
    for one, body, stage in bringing.wanted() if bringing.freed(scene).every else ():
        for blocks in bringing.large(one, body, stage) if stage == number else ():
            lane = None if bringing.is_worn else bringing.lane(body, blocks, scene, True)
            comes.append(Comes(one.of, one.name, envelope(blocks), lane))
            # from the stage on at which a way is found, or back to where there still was one
            order = range(number + 1, len(stages)) if lane is not None else range(number - 1, now - 1, -1)
            for at in () if bringing.is_worn else order:
                if (bringing.lane(body, blocks, bringing.scene(at), True) is None) == (lane is not None):
                    comes[-1] = replace(comes[-1], before=stages[at if lane is not None else at + 1])
                    break
    stands = tuple(
        one.body if one.surely or not one.body.is_sure else replace(one.body, stands="perhaps")
        for one in scene.obstacles
    )
    begins = replace(posed, bodies=(*shell, *stands))
    return replace(begun, posed=begins, comes=tuple(comes), sheets=_sheets(bringing, number, linings, stages))


def _sheets(
    bringing: Bringing, number: int, linings: tuple[Lining, ...], stages: tuple[str, ...]
) -> tuple[Sheets, ...]:
    """Return the whole sheets that are brought in at a stage, those of one thickness together."""
    groups: dict[Vector, list[Lining]] = {}
    for one in linings:
        if stage_of(bringing, one) == number:
            groups.setdefault(sheet_of(one), []).append(one)
    scene = bringing.scene(number)
    found = []
    for size, group in groups.items() if bringing.freed(scene).every else ():
        gate = bringing.takes_in(size, number)
        later = range(number + 1, len(stages)) if gate is not None else ()
        before = next((stages[at] for at in later if bringing.takes_in(size, at) is None), "")
        names = tuple(one.name for one in group)
        found.append(Sheets(group[0].of, names, size, gate.name if gate is not None else "", before))
    return tuple(found)


def bringing_plan(drawn: BroughtThen) -> Sheet | None:
    """Return the plan and its table; None where nothing big is brought in at the stage."""
    if not drawn.comes and not drawn.sheets:
        return None
    marks = room_plan(drawn.posed, few=True)
    rows, of = [], []
    for number, one in enumerate(drawn.comes, start=1):
        marks += _outline(one, number)
        marks += _line(one)
        rows.append(_row(number, one, drawn))
        of.append(one.of)
    for sheets in drawn.sheets:
        rows.append(_sheets_row(sheets, drawn.posed))
        of.append(sheets.of)
    title = f"Bringing in, stage {drawn.stage}"
    columns = ("No.", "Thing", "Size", "Comes in by", "Held", "Carry in before", "In the way")
    grid = Grid("What is brought in", columns, tuple(rows), tuple(of))
    return Sheet("bringing-in", title, (View(title, ABOVE, tuple(marks), DATUM),), NOTES, (grid,))


def _outline(one: Comes, number: int) -> list[Mark]:
    """Return where a thing will stand, with its number; crossed where no way to it was found."""
    corners = corners_of(one.around)
    middle = (corners[0][0] + corners[2][0]) / 2.0, (corners[0][1] + corners[2][1]) / 2.0
    marks: list[Mark] = [Shape(corners, "phantom", one.of)]
    if one.lane is None:  # beside its number, not on it
        long = 0 if corners[2][0] - corners[0][0] >= corners[2][1] - corners[0][1] else 1
        quarter = (corners[2][long] - corners[0][long]) / 4.0
        at = (middle[0] - quarter, middle[1]) if long == 0 else (middle[0], middle[1] - quarter)
        marks.append(Symbol(at, "fault", one.of))
    return [*marks, Text(middle, f"{number}", one.of, "normal")]


def _line(one: Comes) -> list[Mark]:
    """Return the way of the middle of a thing, from outside to its place, with an arrow and the turn on it."""
    if one.lane is None:
        return []
    path: list[Point] = [(x, y) for x, y, _ in reversed(one.lane.path)]
    legs = [(start, end) for start, end in pairwise(path) if abs(end[0] - start[0]) + abs(end[1] - start[1]) > SHORT]
    marks: list[Mark] = [Line(start, end, "centre", one.of) for start, end in legs]
    if legs:
        marks.append(arrow_head(*legs[-1], one.of))
    if one.lane.swung is not None:
        marks.append(Shape(corners_of(one.lane.swung), "phantom", one.of))
    return marks


def corners_of(block: Block) -> tuple[Point, ...]:
    """Return a box as it is seen from above."""
    (x, y, _), (far_x, far_y, _) = block
    return (x, y), (far_x, y), (far_x, far_y), (x, far_y)


def _sheets_row(one: Sheets, posed: Posed) -> tuple[str, ...]:
    """Return the row of the whole sheets of some linings; they go to many places, so no way of theirs is drawn."""
    held = "flat or on edge, whole" if one.by else "no way in was found: cut them outside"
    name = f"sheets of {listed(one.names)}"
    size = f"{whole_sheet(posed.units)}, {posed.length(min(one.size))} thick"
    return "-", name, size, one.by or "-", held, one.before or "-", "-"


def _row(number: int, one: Comes, drawn: BroughtThen) -> tuple[str, ...]:
    posed = drawn.posed
    size = sizes(one.around.size, posed.units)
    if one.lane is not None:
        return f"{number}", one.name, size, one.lane.gate.name, HELD[one.lane.turned], one.before or "-", "-"
    told = next((two for two in drawn.told if one.of in {two.of, *(of for of, _ in two.others)}), None)
    by = ", ".join(name for _, name in told.by) if told is not None else ""
    word = TOLD[told.word] if told is not None else TOLD["no way"]
    return f"{number}", one.name, size, "-", word, one.before or "-", by or "-"
