"""The receiving sheet: what was ordered, room for what is found, how far it may be off; filled in before signing."""

from __future__ import annotations

from itertools import groupby

from boxwright.disciplines.frame.drawn import UNSAID, Drawn
from boxwright.disciplines.frame.receiving import Expected, differing
from boxwright.drawing import TO_TICK, Grid, Sheet
from boxwright.units import show

MEMBERS = ("studs", "bows", "cross-members")
ABREAST = 3
NOTES = (
    "Before it is signed for: tape, scale, camera, torch. Scribe a 0 at the front stud face on both side walls "
    "and a level line. Hook the tape at the 0 for every stud; photograph it with the tape in the picture.",
    "Typed in afterwards each reading becomes as built, and everything that hangs on it is drawn and judged by it.",
)


def receiving_sheet(drawn: Drawn) -> Sheet:
    """Return the sheet for the day the trailer is handed over; what is already read stands on it."""
    groups = [(group, tuple(lines)) for group, lines in groupby(drawn.expected, lambda one: one.group)]
    rows_of_members = [one for one in groups if one[0].partition(" ")[0] in MEMBERS]
    others = [_grid(drawn, *one) for one in groups if one not in rows_of_members]
    grids = (*others[:1], *_members(drawn, rows_of_members), *others[1:])
    differ = differing(drawn.expected)
    if differ:
        rows = tuple(
            (one.what, _written(drawn, one), _read(drawn, one), _within(drawn, one), one.entry) for one in differ
        )
        columns = ("What", "Ordered", "Found", "May be off by", "In the file")
        grids += (Grid("Off by more than it may be", columns, rows, tuple(one.of for one in differ)),)
    signed = Grid("", ("Checked by", "Date", "Handed over by"), (("", "", ""),), ("",))
    return Sheet("receiving", "Receiving sheet", (), NOTES, (*grids, signed))


def _members(drawn: Drawn, groups: list[tuple[str, tuple[Expected, ...]]]) -> tuple[Grid, ...]:
    """Return the places of studs, bows and cross-members, number by number, a few walls side by side."""
    grids = []
    for first in range(0, len(groups), ABREAST):
        some = groups[first : first + ABREAST]
        by_number = [{_number(one): one for one in lines} for _, lines in some]
        numbers = sorted({number for lines in by_number for number in lines})
        rows = []
        for number in numbers:
            cells = [_taped(drawn, lines[number]) if number in lines else ("-", "-", "-") for lines in by_number]
            rows.append((str(number), *(text for cell in cells for text in cell), ""))
        of = tuple(next(lines[number].of for lines in by_number if number in lines) for number in numbers)
        columns = ("No.", *(text for group, _ in some for text in (group, "Measured", "Pass")), "Photo")
        title = f"Middles, may be off by {_within(drawn, some[0][1][0]).removeprefix('+- ')}"
        grids.append(Grid(title, columns, tuple(rows), of))
    return tuple(grids)


def _number(one: Expected) -> int:
    """Return the number that a member has on its wall: an extra one stands between others, and is numbered after."""
    return int(one.what.rpartition(" ")[2])


def _taped(drawn: Drawn, one: Expected) -> tuple[str, str, str]:
    """Return what was ordered, what was found, and whether that is near enough."""
    return _written(drawn, one), _read(drawn, one), _passes(one)


def _grid(drawn: Drawn, group: str, lines: tuple[Expected, ...]) -> Grid:
    of = tuple(one.of for one in lines)
    if all(one.quantity == "look" for one in lines):
        looks = tuple((TO_TICK, one.what, one.how, "") for one in lines)
        return Grid(group.capitalize(), ("", "Look at", "How", "Photo"), looks, of)
    rows = tuple(
        (one.what, _written(drawn, one), _within(drawn, one), _read(drawn, one), _passes(one), "") for one in lines
    )
    return Grid(group.capitalize(), ("What", "Ordered", "May be off by", "Measured", "Pass", "Photo"), rows, of)


def _quantity(one: Expected) -> str:
    return "mass" if one.quantity == "mass" else "length"


def _written(drawn: Drawn, one: Expected) -> str:
    if one.value is None or not one.value.known:
        return one.words or UNSAID
    written = show(one.value.best, _quantity(one), drawn.units, cuts=one.quantity == "length")
    return f"about {written}" if one.value.assumed else written


def _within(drawn: Drawn, one: Expected) -> str:
    if one.within is None:
        return "exactly" if one.value is not None or one.words else ""
    return f"+- {show(one.within, _quantity(one), drawn.units, cuts=one.quantity == 'length')}"


def _read(drawn: Drawn, one: Expected) -> str:
    if one.read is None or not one.read.known:
        return ""
    return show(one.read.best, _quantity(one), drawn.units, cuts=one.quantity == "length")


def _passes(one: Expected) -> str:
    return TO_TICK if one.passes is None else "yes" if one.passes else "NO"
