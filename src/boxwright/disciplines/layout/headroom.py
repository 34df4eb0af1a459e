"""Two cuts through the room with its people in it: lying, sitting up and standing, and the height over each head."""

from __future__ import annotations

from collections.abc import Callable
from math import atan2, cos, isfinite, pi, sin

from boxwright.disciplines.layout.bodies import Block, Body, envelope
from boxwright.disciplines.layout.body_sizes import ROOM, SHARE
from boxwright.disciplines.layout.figures import (
    SITTING_FRONT,
    lying_end,
    lying_side,
    sitting_front,
    standing_front,
    standing_side,
)
from boxwright.disciplines.layout.passage import Rect
from boxwright.disciplines.layout.people import Fit, free_over
from boxwright.disciplines.layout.posing import POSES, Posed
from boxwright.disciplines.layout.room_plan import is_seen
from boxwright.disciplines.layout.sweeps import Mover, Turn
from boxwright.disciplines.layout.terraces import Bed, bed_rect_of, is_placed, outline_of
from boxwright.disciplines.layout.ways import is_room
from boxwright.drawing import Arc, Dimension, Grid, Leader, Line, Mark, Shape, Sheet, Text, View
from boxwright.drawing.mark import LineKind, Point, Side
from boxwright.model.place import Surfaces
from boxwright.units import Band, show_band

Placed = Callable[[float, float], Point]


USUAL = 1.75
"""How tall (m) somebody is drawn whose height nobody wrote; that is said beside the drawing."""
SLACK = 1e-9
"""Two things that touch within this (m) leave each other room."""
THIN = 0.004
"""What is thinner (m) than this inside the room is not drawn."""
NAMED = 0.2
"""How large (m) a thing is at least that carries its name."""
HIDDEN = 0.3
"""What is drawn smaller (m) would not be seen behind its name: that stands beside it."""
WORDS = {
    "lie": "lies on",
    "sit": "sits up in",
    "stand": "stands in",
    "shoulders": "width each in",
    "step": "greatest rise at",
    "roof": "side by side, width each on",
    "aisle": "aisle to",
    "reach": "reaches",
    "seat": "sits upright on",
    "lit": "puts a light on from bed at",
}
NOTES = (
    "Figures are drawn from the written height with usual proportions; nobody was measured. What they want is advice: "
    "sit, lie and stand in it before it is built. Whether the roof carries two is another chapter's question.",
)


def headroom(posed: Posed) -> Sheet | None:
    """Return the sheet of the cuts with people in them; None where the room is not known."""
    if not is_room(posed.room):
        return None
    bed = next((one for one in posed.beds if is_placed(one.place)), None)
    views = [_along(posed, bed)]
    views += [_across(posed, bed)] if bed is not None else []
    unknown = [name for name, height in posed.people if not height.known]
    asked = (f"Not to scale, for nobody wrote how tall: {', '.join(unknown)}.",) if unknown else ()
    title = f"Headroom, {POSES[posed.pose]}"
    return Sheet("headroom", title, tuple(views), (*asked, *NOTES), _table(posed))


def _tall(posed: Posed, name: str) -> float:
    return next((height.best for one, height in posed.people if one == name and height.known), USUAL)


def _tallest(posed: Posed) -> str:
    return max((name for name, _ in posed.people), key=lambda name: _tall(posed, name), default="")


def _along(posed: Posed, bed: Bed | None) -> View:
    """Return the trailer cut along its middle, looking to the side the bed is on: who lies, and who stands."""
    room = posed.room
    looks_left = bed is not None and bed.place.y.best < 0.0
    turn, side = (-1.0, "left") if looks_left else (1.0, "right")

    def at(x: float, z: float) -> Point:
        return turn * x, z

    marks: list[Mark] = [_box(at, room.front, room.rear, room)]
    for one in posed.bodies:
        if _is_beyond(one, looks_left, posed):
            marks += _drawn(one, at, 0, posed.inside)
    spot, name = _spot_to_stand(posed, bed), _tallest(posed)
    if spot is not None and name and (bed is None or not _is_beside(bed, spot[0])):
        marks += _stands(posed, name, at(spot[0], room.floor), spot[1], turn, is_end_on=False)
    if bed is not None:
        x0, _, x1, _ = bed_rect_of(bed)
        marks.append(Line(at(x0, bed.top), at(x1, bed.top), "hidden", f"{bed.of}.mattress"))
        sleeper = max(bed.sleepers or ("",), key=lambda one: _tall(posed, one))
        if bed.place.size[0] >= bed.place.size[1]:
            marks += lying_side(at(x1 - 0.02, bed.top), _tall(posed, sleeper), _of(sleeper, bed), -turn)
            mattress = bed.lies_on[0] if bed.lies_on is not None else x1 - x0
            words = f"{sleeper} {posed.length(_tall(posed, sleeper))}, on {posed.length(mattress)}".strip()
            marks.append(Text(at((x0 + x1) / 2.0, bed.top + 0.35), words, _of(sleeper, bed), "small"))
    ends = sorted((turn * room.front, turn * room.rear))
    marks += [_over_bed(posed, bed, ends[0], "left")] if bed is not None else []
    marks += _measured(posed, ends[0], ends[1], "trailer.body.length")
    ahead = "the front to your right" if looks_left else "the front to your left"
    return View("Along the trailer", f"looking to the {side}, {ahead}", tuple(marks), "the finished floor")


def _across(posed: Posed, bed: Bed) -> View:
    """Return the trailer cut across where most floor is free beside the bed: who sits up, and who stands there."""
    room, (x0, y0, x1, y1) = posed.room, bed_rect_of(bed)
    cuts = [x0 + share / 20.0 * (x1 - x0) for share in range(3, 18)]
    cut = max(cuts, key=lambda one: _wide(_floor_beside(posed, bed, one)))

    def at(y: float, z: float) -> Point:
        return y, z

    marks: list[Mark] = [_box(at, room.left, room.right, room)]
    for one in posed.bodies:
        if any(block.low[0] < cut < block.high[0] for block in one.blocks) and is_seen(one, posed):
            marks += _drawn(one, at, 1, posed.inside, cut)
    marks.append(Line((y0, bed.top), (y1, bed.top), "hidden", f"{bed.of}.mattress"))
    marks += [mark for way in posed.comes_down if way.of == bed.of for mark in _coming_down(way)]
    names = bed.sleepers or ("",)
    share = (y1 - y0) / len(names)
    seat, met = _seat(posed, bed, cut, (y0, y0 + share), _tall(posed, names[0]))
    for number, name in enumerate(names):
        middle = y0 + share * (number + 0.5)
        if number:
            marks += lying_end((middle, bed.top), _tall(posed, name), _of(name, bed))
            continue
        marks += sitting_front((seat, bed.top), _tall(posed, name), _of(name, bed))
        if met:
            words = f"no room for {name or 'who sits up'} beside {met}"
            marks.append(Leader((seat, bed.top + SHARE["sitting"] * _tall(posed, name) / 2.0), words, _of(name, bed)))
    is_left = bed.place.y.best < 0.0
    marks.append(_over_bed(posed, bed, room.left if is_left else room.right, "left" if is_left else "right"))
    free = _floor_beside(posed, bed, cut)
    wide = bed.lies_on[1] if bed.lies_on is not None else y1 - y0
    below = [((y0, y1), f"bed {posed.length(wide)}", bed.of)]
    below += [(free, f"floor {posed.length(_wide(free))}", "trailer.body.width")] if _wide(free) > 0.0 else []
    for (low, high), words, of in below:
        marks.append(Dimension((low, room.floor), (high, room.floor), words, of, "below", 0))
    name = _tallest(posed)
    if name and _wide(free) >= ROOM["stand square"]:
        rect = (cut - ROOM["stand square"], free[0], cut + ROOM["stand square"], free[1])
        # The square of the table's line, so that the figure never has more over its head than that says.
        over = free_over(posed.bodies, rect, room.floor, ROOM["stand square"], room.ceiling).height
        beside = _beside(free, seat, max(x for x, _ in SITTING_FRONT) * _tall(posed, names[0]))
        marks += _stands(posed, name, (beside, room.floor), over, 1.0, is_end_on=True)
    marks += _measured(posed, room.left, room.right, "trailer.body.width", is_long=False)
    looks = "looking forward, your left is the trailer's left"
    return View("Across, through the bed", looks, tuple(marks), "the finished floor")


def _coming_down(bed: Mover) -> list[Mark]:
    """Return a bed as it is folded up, and the arc of its farthest edge as it comes down, seen across the trailer."""
    (turn,) = bed.ways
    if not isinstance(turn, Turn):
        return []
    (z, y), way, of = turn.hinge, turn.across[1], f"{bed.of}.folds"
    (_, wide), (thick, _) = turn.spans
    lies = atan2(-thick, wide)
    start, sweep = (lies, pi / 2.0 - lies) if way > 0.0 else (pi / 2.0, pi / 2.0 - lies)
    up = bed.starts[0]
    corners = ((up.low[1], up.low[2]), (up.high[1], up.low[2]), (up.high[1], up.high[2]), (up.low[1], up.high[2]))
    named = y + way * turn.radius * cos(pi / 4.0), z + turn.radius * sin(pi / 4.0)
    return [
        Shape(corners, "phantom", of),
        Arc((y, z), turn.radius, start, sweep, "phantom", of),
        Leader(named, f"way of {bed.name}", of),
    ]


def _beside(free: tuple[float, float], seat: float, arms: float) -> float:
    """Return the middle of a stretch of floor, less what of it is under the arms of somebody who sits beside it."""
    low, high = free
    if seat > (low + high) / 2.0:
        return (low + max(min(high, seat - arms), low)) / 2.0
    return (min(max(low, seat + arms), high) + high) / 2.0


def _seat(posed: Posed, bed: Bed, cut: float, span: tuple[float, float], tall: float) -> tuple[float, str]:
    """Return where across a bed somebody sits up, at a cut, and what is drawn through there, empty where nothing is.

    It is as near to the middle of a stretch as the shoulders are free; where they are nowhere, as the head is.
    """
    low, high = span
    over = [
        (block.low[1], block.high[1], one.name)
        for one in posed.bodies
        for block in one.blocks
        if block.low[0] < cut < block.high[0]
        and block.low[2] < bed.top + SHARE["sitting"] * tall
        and block.high[2] > bed.top + SHARE["sitting"] * tall / 2.0
    ]
    middle, wide = (low + high) / 2.0, SHARE["shoulder width"] * tall / 2.0
    for half in (wide, wide / 2.0):
        ends = {end for a, b, _ in over for end in (a - half, b + half) if low <= end <= high}
        free = [at for at in (middle, low, high, *sorted(ends)) if not _met(over, at, half)]
        if free:
            seat = min(free, key=lambda at: abs(at - middle))
            return seat, _met(over, seat, wide)
    return middle, _met(over, middle, wide)


def _met(things: list[tuple[float, float, str]], at: float, half: float) -> str:
    """Return the first thing that somebody so broad meets at a place across."""
    reach = half - SLACK
    return next((name for low, high, name in things if low < at + reach and high > at - reach), "")


def _measured(posed: Posed, low: float, high: float, of: str, is_long: bool = True) -> list[Mark]:
    """Return the height of the room beside the view, and its length below it."""
    room = posed.room
    words = posed.length(room.ceiling - room.floor)
    marks: list[Mark] = [Dimension((high, room.floor), (high, room.ceiling), words, "trailer.body.height", "right", 1)]
    if is_long:
        marks.append(Dimension((low, room.floor), (high, room.floor), posed.length(high - low), of, "below", 0))
    return marks


def _over_bed(posed: Posed, bed: Bed, at: float, side: Side) -> Mark:
    """Return the height over the mattress in which somebody sits up, beside the view: in it figures are in the way."""
    fit = next((one for one in posed.fits if one.what == "sit" and one.at == bed.of), None)
    over = fit.has.best if fit is not None else posed.room.ceiling - bed.top
    words = f"over bed {posed.length(over)}"
    return Dimension((at, bed.top), (at, bed.top + over), words, bed.of, side, 0)


def _wide(span: tuple[float, float]) -> float:
    return span[1] - span[0]


def _floor_beside(posed: Posed, bed: Bed, cut: float) -> tuple[float, float]:
    """Return the widest stretch of floor beside a bed at a cut that nothing stands on; no width where there is none."""
    room, (_, y0, _, y1) = posed.room, bed_rect_of(bed)
    taken = [(y0, y1)]
    for one in posed.bodies:
        for block in one.blocks:
            is_low = block.low[2] < room.floor + ROOM["stoop"] and block.high[2] > room.floor + ROOM["step over"]
            if block.low[0] < cut < block.high[0] and is_low:
                taken.append((block.low[1], block.high[1]))
    at, best = room.left, (0.0, 0.0)
    for low, high in (*sorted(taken), (room.right, room.right)):
        if low - at > _wide(best):
            best = at, low
        at = max(at, high)
    return best


def _of(name: str, bed: Bed) -> str:
    return f"people[{name}]" if name else bed.of


def _stands(posed: Posed, name: str, feet: Point, free: float, turn: float, is_end_on: bool) -> list[Mark]:
    """Return somebody who stands, with the height that is free there beside the figure."""
    tall, of = _tall(posed, name), f"people[{name}]"
    marks = standing_front(feet, tall, of) if is_end_on else standing_side(feet, tall, of, turn)
    if free > tall:
        marks += _over_head(feet[0], feet[1] + tall, feet[1] + free, f"{posed.length(free - tall)} over", of)
    words = f"{name} {posed.length(tall)}" + (f", stoops by {posed.length(tall - free)}" if tall > free else "")
    return [*marks, Text((feet[0], feet[1] + tall * 0.6), words, of, "small")]


def _over_head(at: float, low: float, high: float, words: str, of: str) -> list[Mark]:
    """Return a height drawn inside the view, with a stroke at each end, its words beside it."""
    tick, aside = 0.05, 0.14
    marks: list[Mark] = [Line((at, low), (at, high), "dimension", of)]
    marks += [Line((at - tick, one), (at + tick, one), "dimension", of) for one in (low, high)]
    return [*marks, Text((at + aside, (low + high) / 2.0), words, of, "small")]


def _box(at: Placed, low: float, high: float, room: Surfaces) -> Mark:
    corners = (at(low, room.floor), at(high, room.floor), at(high, room.ceiling), at(low, room.ceiling))
    return Shape(corners, "cut", "trailer.body")


def _is_beyond(one: Body, looks_left: bool, posed: Posed) -> bool:
    """Return whether most of a thing stands on the side looked at, inside the room and not upon another thing."""
    if not is_seen(one, posed) or max(block.high[2] for block in one.blocks) <= posed.room.floor + ROOM["feet"]:
        return False
    middle = sum(block.low[1] + block.high[1] for block in one.blocks) / len(one.blocks) / 2.0
    return middle <= 0.0 if looks_left else middle >= 0.0


def _drawn(one: Body, at: Placed, axis: int, room: Block, cut: float | None = None) -> list[Mark]:
    """Return what of a thing is inside the room, seen along the other level axis; of one that is cut what is met."""
    line: LineKind = ("visible" if cut is not None else "dimension") if one.stands == "yes" else "hidden"
    marks: list[Mark] = []
    for block in one.blocks:
        if cut is not None and not block.low[0] < cut < block.high[0]:
            continue
        low, high = max(block.low[axis], room.low[axis]), min(block.high[axis], room.high[axis])
        foot, top = max(block.low[2], room.low[2]), min(block.high[2], room.high[2])
        if high - low < THIN or top - foot < THIN:
            continue
        corners = (at(low, foot), at(high, foot), at(high, top), at(low, top))
        marks.append(Shape(corners, line, one.of, "wood" if cut is not None and not one.carried_by else "none"))
    first = marks[0] if marks else None
    if isinstance(first, Shape) and not one.carried_by and max(envelope(one.blocks).size) >= NAMED:
        a, c = first.points[0], first.points[2]
        is_small = max(abs(c[0] - a[0]), abs(c[1] - a[1])) < HIDDEN
        middle = ((a[0] + c[0]) / 2.0, (a[1] + c[1]) / 2.0)
        marks.append(Text(middle, one.name, one.of, "small", may_move=is_small))
    return marks


def _spot_to_stand(posed: Posed, bed: Bed | None) -> tuple[float, float] | None:
    """Return how far back one stands with most room over the head, clear of the bed's length, and how much that is."""
    room, half = posed.room, ROOM["stand square"] / 2.0
    faces = (room.front, room.left, room.rear, room.right)
    over = free_over(posed.bodies, faces, room.floor, ROOM["stand square"], room.ceiling)
    boxes = [
        outline_of(block)
        for one in posed.bodies
        for block in one.blocks
        if block.high[2] > room.floor + ROOM["feet"] and block.low[2] < room.floor + over.height
    ]
    x0, _, x1, _ = bed_rect_of(bed) if bed is not None else (room.rear, 0.0, room.rear, 0.0)
    wanted = (room.front + x0) / 2.0 if x0 - room.front >= room.rear - x1 else (x1 + room.rear) / 2.0
    first, last = room.front + half, room.rear - half
    low, high = room.left + half, room.right - half
    if last < first or high < low:
        return None
    # What is free ends where a thing begins or ends, so the nearest free spot is the wanted one, or beside a thing.
    ends = {end for one in boxes for end in (one[0] - half, one[2] + half) if first <= end <= last}
    for x in sorted({min(max(wanted, first), last), first, last, *ends}, key=lambda x: (abs(x - wanted), x)):
        beside = [one for one in boxes if one[0] < x + half - SLACK and one[2] > x - half + SLACK]
        sides = {end for one in beside for end in (one[1] - half, one[3] + half) if low <= end <= high}
        if any(_is_free(beside, y, half) for y in (low, high, *sides)):
            return x, over.height
    return None


def _is_beside(bed: Bed, x: float) -> bool:
    """Return whether somebody who stands there would be drawn over the bed."""
    x0, _, x1, _ = bed_rect_of(bed)
    return x0 - ROOM["sit square"] / 2.0 < x < x1 + ROOM["sit square"] / 2.0


def _is_free(boxes: list[Rect], y: float, half: float) -> bool:
    return not any(one[1] < y + half - SLACK and one[3] > y - half + SLACK for one in boxes)


def _table(posed: Posed) -> tuple[Grid, ...]:
    rows = tuple(
        (
            one.name,
            _asked(one, posed),
            _shown(one.has, posed),
            _shown(one.wants, posed),
            _said(one),
        )
        for one in posed.fits
    )
    if not rows:
        return ()
    columns = ("Who", "What", "There is", "Wanted", "Comes out")
    return (Grid("How people fit", columns, rows, tuple(one.of for one in posed.fits)),)


def _asked(one: Fit, posed: Posed) -> str:
    """Return what somebody does where, and by what one gets up to the roof."""
    words = f"{WORDS[one.what]} {one.at_name}"
    if one.what != "roof":
        return words
    return f"{words}, up by {posed.name_of(one.under)}" if one.under else f"{words}, with nothing that leads up"


def _shown(band: Band, posed: Posed) -> str:
    return show_band(band, "length", posed.units, cuts=True) if band.known and isfinite(band.best) else "not written"


def _said(one: Fit) -> str:
    if not (one.has.known and one.wants.known):
        return "not known"
    worst, best = one.has.low - one.wants.high, one.has.high - one.wants.low
    if one.what == "step":
        worst, best = one.wants.low - one.has.high, one.wants.high - one.has.low
    return "enough" if worst >= 0.0 else "may be short" if best >= 0.0 else "short" if one.what != "step" else "high"
