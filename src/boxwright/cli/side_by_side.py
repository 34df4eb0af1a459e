"""The page of ``boxwright compare``: two openings, widths or places beside each other."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date

from boxwright.cli.asked import Answered, Question, answered, slot_of
from boxwright.cli.edits import edited
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, aligned, clean, hanging, plain, wrapped
from boxwright.cli.trying import answered_again
from boxwright.disciplines.frame.looked import ComparedHole, Comparison
from boxwright.disciplines.frame.result import Hole, Result
from boxwright.disciplines.frame.sourced import LIMITS
from boxwright.disciplines.frame.spot import compared
from boxwright.exchange import Vector
from boxwright.units import Band, HeaderUnits, show, show_band

_EDIT = re.compile(r"^(?:openings\.)?([^.=]+)\.\w+\s*[=+\u2212-]")
MOST_BULKY = 5


def compare(question: Question, first: str, second: str, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Return two openings side by side, each named or given by an edit such as ``window-right.x=96``."""
    answer = answered(question, today)
    one, other = (_looked_up(answer, text, today) for text in (first, second))
    bulky = _bulky(answer)
    found = compared((one[1], one[2]), (other[1], other[2]), bulky)
    heads = (_head(first, found.first), _head(second, found.second))
    rows = [("", *heads), *_rows(found, (_ends(*one[1:]), _ends(*other[1:])), answer.units)]
    lines = [plain(clean(f"{answer.reading.rig.header.name or 'this rig'}: side by side"), "head"), ()]
    lines += [plain("  " + text) for text in aligned(rows)] if _fits(rows, columns) else _stacked(rows, columns)
    room = _length(LIMITS["hand_room"], answer.units)
    says = f"What passes is judged through the rough opening with {room} to move in"
    units_in = list(dict.fromkeys(looked[2].name for looked in (one, other) if looked[2].unit))
    if units_in:
        says += f"; how much of it the unit of {' and '.join(units_in)} leaves open nobody wrote"
    lines += [(), *hanging(plain("  "), clean(f"{says}."), columns)]
    for words, names in (("no longer passes", found.no_longer), ("passes as well", found.newly)):
        if names:
            lines += [(), *hanging(plain("  "), f"Through the second {words}: {', '.join(names)}.", columns)]
    for sentence in _moved(one[0], other[0], answer.units):
        lines += hanging(plain("  "), clean(sentence), columns)
    return lines, answer


def _looked_up(answer: Answered, text: str, today: date) -> tuple[Answered, Result, Hole]:
    """Return the answer, the frame and the opening that a name or an edit stands for."""
    edit = _EDIT.match(text)
    name = edit[1] if edit else text.strip()
    after = answered_again(answer, edited(answer.reading, [text]), today) if edit else answer
    slot = slot_of(after, after.use)
    if slot is None or slot.frame is None or not slot.frame.walls:
        raise NothingAsked("nobody wrote how large the box is, so openings cannot be set beside each other")
    names = [one.name for one in slot.frame.holes]
    name = must_be_one_of(name, names, "opening")
    return after, slot.frame, next(one for one in slot.frame.holes if one.name == name)


def _bulky(answer: Answered) -> tuple[tuple[str, Vector], ...]:
    """Return the bulkiest things of the plan that are not in yet: they must come in through some opening."""
    inside = [
        item
        for item in answer.reading.rig.parts
        if item.marks.done.tick == "no" or (item.marks.done.tick == "unmarked" and item.words.kind != "cargo")
    ]
    inside = [item for item in inside if min(item.place.size) > 0.0 and not item.words.inside]
    inside = [item for item in inside if item.words.kind != "spread"]
    by_waist = sorted(inside, key=lambda item: sorted(item.place.size)[1], reverse=True)
    return tuple((item.name, item.place.size) for item in by_waist[:MOST_BULKY])


def _head(text: str, hole: ComparedHole) -> str:
    return text if text.strip() != hole.name else hole.name


def _ends(frame: Result, hole: Hole) -> tuple[float, float]:
    """Return where an opening begins and ends as a tape reads it: across front and rear from the left stud face."""
    wall = frame.wall(hole.wall) if hole.wall in ("front", "rear") else None
    zero = wall.low if wall is not None else 0.0
    return hole.low - zero, hole.high - zero


def _rows(
    found: Comparison, ends: tuple[tuple[float, float], tuple[float, float]], units: HeaderUnits
) -> list[tuple[str, str, str]]:
    rows: list[tuple[str, str, str]] = []

    def row(name: str, *cells: str) -> None:
        rows.append((name, cells[0], cells[1]))

    pair = (found.first, found.second)
    row("wall", *(one.wall for one in pair))
    row("along", *(f"{_length(low, units)} to {_length(high, units)}" for low, high in ends))
    row("up", *(f"{_length(one.bottom, units)} to {_length(one.top, units)}" for one in pair))
    row("rough width x height", *(
        f"{_length(one.high - one.low, units)} x {_length(one.top - one.bottom, units)}" for one in pair
    ))  # fmt: skip
    row("wall left at that height", *(_length(one.wall_left, units) for one in pair))
    row("bays lost", *(", ".join(one.bays_lost) or "none" for one in pair))
    row("members cut", *(", ".join(one.members_cut) or "none" for one in pair))
    for words, does in (("passes", True), ("does not pass", False)):
        row(words, *(", ".join(thing.name for thing in one.passing if thing.passes is does) or "none" for one in pair))
    row("weight of the unit", *(_band(one.weight, "kg", units) for one in pair))
    row("price", *(_band(one.cost, "money", units) for one in pair))
    return rows


def _length(value: float, units: HeaderUnits) -> str:
    return show(value, "m", units, cuts=True)


def _band(band: Band | None, unit: str, units: HeaderUnits) -> str:
    return show_band(band, unit, units) if band is not None else "not written"


def _fits(rows: list[tuple[str, str, str]], columns: int) -> bool:
    return max(len(text) for text in aligned(rows)) + 2 <= columns


def _stacked(rows: list[tuple[str, str, str]], columns: int) -> list[Line]:
    """Return the rows one below the other where the screen is too narrow for three columns."""
    heads = rows[0][1:]
    lines: list[Line] = []
    for name, *cells in rows[1:]:
        lines.append(plain(f"  {name}", "head"))
        for head, cell in zip(heads, cells, strict=True):
            lines += hanging(plain(f"    {head}: "), cell, columns)
    return lines if lines else [plain(piece) for piece in wrapped("nothing to compare", columns)]


def _moved(first: Answered, second: Answered, units: HeaderUnits) -> Iterator[str]:
    """Yield what of the trailer's weights is another in the second, where an edit stands behind it."""
    one, other = slot_of(first, first.use), slot_of(second, second.use)
    if one is None or other is None or one.weight is None or other.weight is None or first is second:
        return
    by = other.weight.tongue.band.best - one.weight.tongue.band.best
    weighs = other.weight.gross.band.best - one.weight.gross.band.best
    told = [
        f"{show(abs(kg), 'kg', units)} {'more' if kg > 0.0 else 'less'} on {where}"
        for kg, where in ((weighs, "the whole"), (by, "the ball"))
        if _is_shown(kg, units)
    ]
    if told:
        yield f"The second weighs {' and '.join(told)}."
    gone = {(x.code, x.where): x.says for x in one.findings if x.code.startswith("frame/")}
    come = {(x.code, x.where): x.says for x in other.findings if x.code.startswith("frame/")}
    for key in come.keys() - gone.keys():
        yield f"New in the second: {come[key]}."
    for key in gone.keys() - come.keys():
        yield f"Gone in the second: {gone[key]}."


def _is_shown(kg: float, units: HeaderUnits) -> bool:
    """Return whether a difference is more than nothing when it is shown."""
    return show(abs(kg), "kg", units) != show(0.0, "kg", units)
