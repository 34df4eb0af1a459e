"""The order sheet: what is asked of the trailer's builder, in both units, with columns for the reply."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.frame.as_ordered import as_ordered, asked_of
from boxwright.disciplines.frame.drawn import UNSAID, Drawn, Eye, Marks, said
from boxwright.disciplines.frame.elevation import end_words, hole_marks, member_marks, outline, stud_row
from boxwright.disciplines.frame.hole_page import across, scale_for
from boxwright.disciplines.frame.ordering import OrderLine
from boxwright.disciplines.frame.result import Hole, Member, Wall
from boxwright.drawing import TO_TICK, Grid, Shape, Sheet, Symbol, View
from boxwright.units import Band, show

ROOM = (0.1, 0.1), (0.072, 0.1)
"""What the longest wall may take on paper (m): two walls stand side by side, or three and more."""
BELOW = 0.3
"""How far under a wall the signs for its front and its sides stand (m)."""
SIDES = ("left", "right")
REPLY = ("yes", "no", "changed to")
RULES = (
    "Measures run from the front stud face, and across the trailer from the left wall's stud face; looking forward, "
    "left is left. Heights are above the top of the deck, under any floor of ours.",
    "Do not cut a stud that is not named in its line. Where an opening cannot go between studs, frame it with a header "
    "and say so in the reply.",
    "Tick yes, no, or write the value you will build. What is not ticked is not agreed.",
)


def order_sheet(drawn: Drawn) -> Sheet:
    """Return the order as it is sent: walls, openings, options, delivery, all as they were asked for."""
    drawn, order = as_ordered(drawn), drawn.order
    revision = f"revision {order.revision}" if order is not None and order.revision else "no revision letter yet"
    views = tuple(_view(drawn, wall) for wall in drawn.frame.walls if wall.name in SIDES or drawn.holes_of(wall.name))
    grids = (_head(drawn), *_openings(drawn), _frame(drawn), *_options(drawn), _signed())
    longest = max((wall.high - wall.low for wall in drawn.frame.walls), default=0.0)
    scale = scale_for(longest, 0.0, ROOM[len(views) > len(SIDES)])
    return Sheet("order", f"Order sheet, {revision}", views, RULES, grids, scale)


def _view(drawn: Drawn, wall: Wall) -> View:
    eye = Eye(wall, False)
    is_plan = wall.name == "roof"
    marks: Marks = [Shape(outline(drawn, eye), "visible", wall.of)]
    for member in drawn.frame.members_of(wall.name):
        marks += member_marks(member, eye)
    for hole in drawn.holes_of(wall.name):
        marks += hole_marks(drawn, replace(hole, is_cut=True), eye)
    marks += [*stud_row(drawn, eye), Symbol(eye.at(eye.zero, wall.foot), "datum", wall.of)]
    # Under the wall they take no width, so that three walls stand side by side.
    if eye.front is None:
        marks += [replace(one, at=(one.at[0], wall.foot - BELOW)) for one in end_words(eye)]
    else:
        middle = eye.at((wall.low + wall.high) / 2.0, 0.0)[0]
        marks.append(Symbol((middle, wall.foot - BELOW), "front", wall.of, eye.front))
    name = "Roof" if is_plan else f"{wall.name.replace('-', ' ').capitalize()} wall"
    return View(name, "seen from above, the front to your left" if is_plan else eye.looks, tuple(marks))


def _head(drawn: Drawn) -> Grid:
    """Return the order as a whole, with what has been replied to it."""
    order, ruler = drawn.order, drawn.ruler
    delivery = order.delivery if order is not None else None
    reply = order.reply if order is not None else None
    named = delivery.reply if delivery is not None else None
    rows = (
        ("To", order.to if order is not None else "", ""),
        ("Revision, date", f"{order.revision} {said(order.date)}".strip() if order is not None else "",
         said(reply.date) if reply is not None else ""),
        ("Bare trailer", ruler.price(order.price) if order is not None else "",
         ruler.price(reply.price) if reply is not None else ""),
        ("Lead time", weeks(order.weeks) if order is not None else "", weeks(reply.weeks) if reply is not None else ""),
        ("Delivery", f"{delivery.at} {said(delivery.date)}".strip() if delivery is not None else "",
         " ".join(one for one in (named.at, said(named.date), named.note) if one) if named is not None else ""),
        ("Note", order.note if order is not None else "", reply.note if reply is not None else ""),
    )  # fmt: skip
    written = tuple(row for row in rows if row[0] != "Note" or any(row[1:]))
    return Grid("Order", ("", "Asked", "Reply"), written, tuple("frame.order" for _ in written))


def weeks(band: Band | None) -> str:
    """Return a lead time in weeks, nothing where nobody wrote it."""
    if band is None or not band.known:
        return ""
    low, high = f"{band.low:g}", f"{band.high:g}"
    return f"{low} week{'' if low == '1' else 's'}" if low == high else f"{low} to {high} weeks"


def _openings(drawn: Drawn) -> tuple[Grid, ...]:
    """Return the lines of the openings, and of those whose place nobody wrote yet."""
    found = drawn.frame.holes
    if not found:
        return ()
    rows = tuple((*_opening(drawn, one), *_ticks(drawn, one.of)) for one in found)
    columns = ("Opening", "Wall", "Rough, w x h", "From the 0", "Lower edge", "Studs beside", "Header", *REPLY)
    return (Grid("Openings", columns, rows, tuple(one.of for one in found)),)


def _opening(drawn: Drawn, hole: Hole) -> tuple[str, ...]:
    ruler, wall = drawn.ruler, drawn.frame.wall(hole.wall)
    header = "yes" if hole.needs_frame or any(one.is_certain for one in hole.members_cut) else "no"
    if wall is None or not hole.is_placed:
        return hole.name, hole.wall, UNSAID, UNSAID, UNSAID, UNSAID, header
    foot = wall.foot if wall.name in ("roof", "floor") else 0.0
    cut = ", ".join(one.name for one in hole.members_cut if one.is_certain)
    gaps = [f"{gap.to} {ruler.both(gap.clear.best)}" for gap in (hole.gap_low, hole.gap_high) if gap is not None]
    return (
        hole.name,
        hole.wall,
        f"{ruler.both(hole.high - hole.low)} x {ruler.both(hole.top - hole.bottom)}",
        ruler.both(hole.low - Eye(wall, False).zero),
        f"{ruler.both(hole.bottom - foot)} {across(wall)}",
        "; ".join([*gaps, *([f"takes {cut}"] if cut else ["cut no stud"])]),
        header,
    )


def _ticks(drawn: Drawn, of: str) -> tuple[str, str, str]:
    """Return the three cells of a reply: boxes to tick, or what has been answered."""
    line = next((one for one in drawn.lines if one.of == of), None)
    if line is None or not line.answer:
        return TO_TICK, TO_TICK, ""
    replied = "; ".join(f"{one.key} {_given(drawn, one.key, one.given)}" for one in line.replied)
    return ("yes" if line.answer == "yes" else "", "no" if line.answer == "no" else "", replied or line.note)


def _given(drawn: Drawn, key: str, value: Band | str) -> str:
    if isinstance(value, str):
        return value
    if key == "weeks":
        return weeks(value)
    quantity = {"price": "money", "weight": "mass"}.get(key, "length")
    return show(value.best, quantity, drawn.units, cuts=quantity == "length")


def _frame(drawn: Drawn) -> Grid:
    """Return what is asked of the frame itself."""
    rows = []
    for wall in drawn.frame.walls:
        numbered = [one for one in drawn.frame.members_of(wall.name) if one.number is not None and not one.is_removed]
        if numbered:
            zero = Eye(wall, False).zero
            listed = ", ".join(_place(drawn, one, zero) for one in numbered)
            is_open = any(one.planned is None for one in numbered)
            listed += "; or where it suits: write where" if is_open else ""
            rows.append((f"{wall.name} {numbered[0].kind}s", wall.tube.written or UNSAID, listed, TO_TICK, TO_TICK, ""))
    of = tuple("frame" for _ in rows)
    return Grid("Frame, middles as ordered", ("What", "Section", f"At, {_unit(drawn)}", *REPLY), tuple(rows), of)


def _place(drawn: Drawn, member: Member, zero: float) -> str:
    return drawn.ruler.mark(member.at.best - zero) + (" double" if member.is_doubled else "")


def _unit(drawn: Drawn) -> str:
    return drawn.ruler.full(1.0).rpartition(" ")[2]


def _options(drawn: Drawn) -> tuple[Grid, ...]:
    found = [one for one in drawn.lines if one.kind == "option"]
    if not found:
        return ()
    rows = tuple(_option(drawn, one) for one in found)
    columns = ("Option", "What", "Price", "Weight", "Lead time", *REPLY)
    return (Grid("Options", columns, rows, tuple(one.of for one in found)),)


def _option(drawn: Drawn, line: OrderLine) -> tuple[str, ...]:
    ruler, units = drawn.ruler, drawn.units
    return (
        line.name,
        line.what or line.asks,
        ruler.price(asked_of(line, "price", line.price, units)),
        ruler.mass(asked_of(line, "weight", line.weight, units)),
        weeks(asked_of(line, "weeks", line.weeks, units)),
        *_ticks(drawn, line.of),
    )


def _signed() -> Grid:
    return Grid("", ("For the builder", "Date", "For the owner", "Date "), (("", "", "", ""),), ("frame.order",))
