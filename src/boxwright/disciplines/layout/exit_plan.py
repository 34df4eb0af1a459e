"""The plan of the ways out: from each bed to each opening, numbered as on the card at the door, and what is in them."""

from __future__ import annotations

from itertools import pairwise

from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.plan import ABOVE
from boxwright.disciplines.layout.plan_ways import line_of, way_marks
from boxwright.disciplines.layout.posing import DATUM, Posed, WayOut, named
from boxwright.disciplines.layout.reaching import crossed_at
from boxwright.disciplines.layout.room_plan import room_plan
from boxwright.disciplines.layout.terraces import UPRIGHT, is_placed, levels_of
from boxwright.disciplines.layout.ways import scene_drawn
from boxwright.drawing import Grid, Leader, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Point
from boxwright.exchange import Aisle
from boxwright.units import show_band

NO_BED = "Nobody's bed stands yet at this stage: the ways are those of somebody on the floor near the middle."
NO_FLOOR = "Nobody's bed stands yet at this stage, and no floor is free to stand on: no way out can be drawn."
NOTES = (
    "Numbers are those of the card at the door. Widths are of the way up to the opening and through its hole; what a "
    "frame, a blind or a stay leaves of it is measured with the unit open.",
    "A way is as wide as its narrowest place. Walk each one in the dark once.",
    "A number that is crossed out, with a way in dashes, is no way out to count on: why stands beside it.",
)
AWAY = 0.5
"""How far (m) outside its wall the number of a way out stands."""
HALF = 0.11
"""Half the side (m) of the square around a number."""
OUT: dict[str, Point] = {"left": (0.0, -AWAY), "right": (0.0, AWAY), "front": (-AWAY, 0.0), "rear": (AWAY, 0.0)}
CROSS = 1.5
"""How far the cross through a number reaches, in parts of the half of its square."""
AIR = 0.03
"""How far (m) from that a way ends."""
SURE = 7
"""The columns of the table that are always there; what one steps over and what is in the way come after them."""
BEYOND = 0.5
"""How far beyond the number, in parts of its own distance, stands why nobody may count on it."""


def exit_plan(posed: Posed) -> Sheet:
    """Return the plan of the ways out at night."""
    told = {of for one in posed.aisles for of in (*one.blocked_by, *one.over, *one.unsure)}
    marks = room_plan(posed, few=True, named=frozenset(told))
    by_path = {one.opening.of: one for one in posed.exits}
    beds = {one.of: one for one in (*posed.beds, *((posed.spot,) if posed.spot is not None else ()))}
    drawn: set[tuple[str, str]] = set()
    for aisle in posed.aisles:
        way, bed = by_path.get(aisle.leads_to), beds[aisle.of]
        width = aisle.width.best
        if way is None or (aisle.of, aisle.leads_to) in drawn or not aisle.width.known:
            continue
        if aisle.blocked_by or width <= 0.0:  # a way nobody gets through is not drawn as one
            if not any(one.over and (one.of, one.leads_to) == (aisle.of, aisle.leads_to) for one in posed.aisles):
                marks += _closed(way, aisle, posed, others=len(beds) > 1)
            continue
        drawn.add((aisle.of, aisle.leads_to))
        scene = scene_drawn(posed.bodies, bed, way.opening, posed.room, bool(aisle.over))
        line = short_of(line_of(scene, way.opening, width), _square_of(way))
        if way.warning:
            marks += [Line(start, end, "hidden", way.opening.of) for start, end in pairwise(line)]
        else:
            marks += way_marks(scene, line, width, posed.length(width), way.opening.of)
    marks += [mark for one in posed.exits for mark in _number(one, posed)]
    marks += [*_none_written(posed), *_signs(posed)]
    view = View("Ways out at night", ABOVE, tuple(marks), DATUM)
    grids = (Grid("Ways out", *_rows(posed, by_path)),) if posed.aisles else ()
    title = "Ways out of bed" if posed.beds else "Ways out"
    return Sheet("exits", title, (view,), _notes(posed), grids)


def _notes(posed: Posed) -> tuple[str, ...]:
    if posed.beds:
        return NOTES
    return (NO_BED if posed.spot is not None else NO_FLOOR, *NOTES)


def _signs(posed: Posed) -> list[Mark]:
    """Return the names of what warns and what puts out, each led to where it hangs."""
    bodies = {one.of: one for one in posed.bodies}
    found: list[Mark] = []
    for of, words in posed.signs:
        for block in bodies[of].blocks if of in bodies else ():
            middle = (block.low[0] + block.high[0]) / 2.0, (block.low[1] + block.high[1]) / 2.0
            found.append(Leader(middle, words, of))
    return found


def _closed(way: WayOut, aisle: Aisle, posed: Posed, others: bool) -> list[Mark]:
    """Return the sign that a way out is closed, with how much is left of it and what stands in it.

    Where somebody gets out by it from another bed it is told of which bed that is, and the sign is left out.
    """
    at, of = (way.opening.place.x.best, way.opening.place.y.best), way.opening.of
    words = f"{posed.length(aisle.width.best)} only" + (f" from {posed.name_of(aisle.of)}" if others else "")
    if not way.warning:
        words += f": {named(posed, aisle.blocked_by)}"
    is_way = any(one.leads_to == of and not one.blocked_by and one.width.best > 0.0 for one in posed.aisles)
    return [*([] if is_way else [Symbol(at, "fault", of)]), Text(at, words, of, "small")]


def _none_written(posed: Posed) -> list[Mark]:
    """Return in large letters that no way out is written: a plan without one must not look like one that has."""
    if posed.exits:
        return []
    at = (posed.room.front + posed.room.rear) / 2.0, posed.room.right + AWAY
    return [Text(at, "NO WAY OUT IS WRITTEN", "openings", "large")]


def short_of(line: tuple[Point, ...], square: Rect | None) -> tuple[Point, ...]:
    """Return a way as far as the square of its number: a line that went on through that would cross it out."""
    if square is None:
        return line
    for number, (start, end) in enumerate(pairwise(line)):
        at = crossed_at(start, end, square)
        if at is not None:
            (x, y), (to_x, to_y) = start, end
            return (*line[: number + 1], (x + at * (to_x - x), y + at * (to_y - y)))
    return line


def _square_of(one: WayOut) -> Rect | None:
    """Return the square of a number with its cross and some air, None where it has none."""
    way = OUT.get(one.opening.wall)
    if way is None or not is_placed(one.opening.place):
        return None
    x, y = one.opening.place.x.best + way[0], one.opening.place.y.best + way[1]
    half = HALF * CROSS + AIR
    return x - half, y - half, x + half, y + half


def _number(one: WayOut, posed: Posed) -> list[Mark]:
    """Return the number of a way out in a square outside its wall."""
    if not is_placed(one.opening.place):
        return []
    x, y = one.opening.place.x.best, one.opening.place.y.best
    if one.opening.wall not in OUT:  # a square in the room would hide what stands there
        length, width, _ = one.opening.place.size
        corner = x - length / 2.0, y + width / 2.0
        words = f"{one.number}: {one.opening.name}" + (f", {one.warning}" if one.warning else "")
        return [Leader(corner, words, one.opening.of), *_crossed((x, y), one)]
    dx, dy = OUT[one.opening.wall]
    at, half = (x + dx, y + dy), HALF
    corners = ((at[0] - half, at[1] - half), (at[0] + half, at[1] - half),
               (at[0] + half, at[1] + half), (at[0] - half, at[1] + half))  # fmt: skip
    of = one.opening.of
    square = Shape(corners, "cut", of, "none")
    if not one.warning:
        return [square, Text(at, str(one.number), of, "normal", may_move=False)]
    beyond = at[0] + dx * BEYOND, at[1] + dy * BEYOND
    return [square, *_crossed(at, one), Text(beyond, f"{one.number}: {one.warning}", of, "normal")]


def _crossed(at: Point, one: WayOut) -> list[Mark]:
    """Return a cross through the number of a way out that nobody may count on."""
    if not one.warning:
        return []
    (x, y), half = at, HALF * CROSS
    return [Line((x - half, y + way * half), (x + half, y - way * half), "cut", one.opening.of) for way in (1.0, -1.0)]


def _rows(
    posed: Posed, by_path: dict[str, WayOut]
) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...], tuple[str, ...]]:
    columns = ("No.", "Way out", "From", "Wide", "High", "Sill", "Opens", "Over", "In the way")
    rows, of = [], []
    for aisle in sorted(posed.aisles, key=lambda one: by_path[one.leads_to].number if one.leads_to in by_path else 99):
        way = by_path.get(aisle.leads_to)
        if way is None:
            continue
        of.append(aisle.leads_to)
        rows.append(
            (
                str(way.number),
                way.opening.name + (", climbing" if aisle.over and _is_second(aisle, posed) else ""),
                posed.name_of(aisle.of),
                show_band(aisle.width, "length", posed.units, cuts=True) if aisle.width.known else "unknown",
                show_band(aisle.height, "length", posed.units, cuts=True) if aisle.height.known else "unknown",
                _sill(way, posed),
                way.opens,
                named(posed, aisle.over) or "-",
                named(posed, (*aisle.blocked_by, *aisle.unsure)) or "-",
            )
        )
    # what is said of none of them takes no room
    kept = [number for number, _ in enumerate(columns) if number < SURE or any(row[number] != "-" for row in rows)]
    return (
        tuple(columns[number] for number in kept),
        tuple(tuple(row[number] for number in kept) for row in rows),
        tuple(of),
    )


def _is_second(aisle: Aisle, posed: Posed) -> bool:
    """Return whether there is a narrower way on foot between the same two."""
    pair = aisle.of, aisle.leads_to
    return any((one.of, one.leads_to) == pair and one.width.best < aisle.width.best for one in posed.aisles)


def _sill(way: WayOut, posed: Posed) -> str:
    """Return how high the sill is over the floor; of a hole in the roof nothing."""
    if way.opening.wall not in UPRIGHT or not is_placed(way.opening.place):
        return "-"
    return posed.length(max(levels_of(way.opening)[0] - posed.room.floor, 0.0))
