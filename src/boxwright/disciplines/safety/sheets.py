"""The card inside the door: ways out by number, whom to call, what to do, what to shut off, on one page."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from boxwright.disciplines.safety.parts import ShutOff
from boxwright.disciplines.safety.result import Device, Exit, Result
from boxwright.disciplines.safety.sourced import DOOR_CARD, EMERGENCY, country_of
from boxwright.disciplines.safety.telling import name_of, stopper
from boxwright.finding import listed
from boxwright.units import HeaderUnits, show

if TYPE_CHECKING:
    from boxwright.drawing import Grid, Sheet
    from boxwright.drawing.mark import Size

BLANK = "____________"
ORDER = ("safe", "gas", "fuel", "shore", "end", "battery")
"""In which order the trailer is made safe; what shuts each off stands beside it, or room for a pencil."""
SHUT = ("gas", "fuel", "shore", "battery")
CAUTION = "Local code, leaflets first. Numbers to call: public pages for travellers. Try the ways out and the alarms."
MOST_NUMBERS = 3
"""Rows of whom to call that are set in large letters; a route through more countries is set smaller."""
MOST_NORMAL = 8
"""Rows above the rest of the card that leave it room in letters of the usual size; under more it is set small."""
MOST_LARGE = 6
"""Rows in large letters that leave room on one page for the rest; where there are more the ways out are set smaller."""


def sheets(
    result: Result,
    countries: tuple[str, ...],
    shut_offs: tuple[ShutOff, ...],
    shown_in: HeaderUnits,
    quick: tuple[str, ...] = (),
    there: frozenset[str] | None = None,
) -> tuple[Sheet, ...]:
    """Return the card at the door. ``quick`` is how to be out in two minutes, where somebody has worked it out.

    ``there`` are the paths of what stands: what shuts off a thing that is not in yet is told so; None where all is.
    """
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.drawing import Sheet

    call = _call(countries)
    ways = _ways(result, MOST_LARGE - len(call.rows))
    letters: Size = "normal" if len(call.rows) + len(ways.rows) + len(quick) <= MOST_NORMAL else "small"
    below = (
        *((_numbered("Out in two minutes", quick),) if quick else ()),
        _numbered(_co_title(result), DOOR_CARD["co"]),
        _fire(result, shown_in),
        _safe(shut_offs, there),
    )
    grids = (call, ways, *(replace(grid, letters=letters) for grid in below))
    return (Sheet("door-card", "Card for the door", (), (CAUTION,), grids, stands_up=True, is_for_hand=True),)


def _co_title(result: Result) -> str:
    hangs = any("CO" in one.kept.facet.alarm and one.helps == "yes" for one in result.alarms)
    return "When the carbon monoxide alarm sounds" + ("" if hangs else ": NONE HANGS")


def numbers_to_call(countries: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Return whom to call in each country of the route, home first; empty where nobody wrote it here."""
    codes = dict.fromkeys(country_of(one) for one in countries)
    return tuple((code, EMERGENCY.get(code, "")) for code in codes)


def _call(countries: tuple[str, ...]) -> Grid:
    from boxwright.drawing import Grid

    called: dict[str, list[str]] = {}
    for code, number in numbers_to_call(countries):
        called.setdefault(number or BLANK, []).append(code)
    rows = [(f"CALL {number}", f"{', '.join(codes)}: say where and how many") for number, codes in called.items()]
    rows = rows or [(f"CALL {BLANK}", "say where and how many")]
    rows.append(("We are at, GPS", ""))
    return Grid("", ("", ""), tuple(rows), ("",) * len(rows), "large" if len(rows) <= MOST_NUMBERS else "normal")


def _ways(result: Result, most_large: int) -> Grid:
    from boxwright.drawing import Grid

    there = [one for one in result.exits if one.there != "no"]
    rows = [(str(one.number), f"{one.way.name}, {_wall(one)}", _opens(one)) for one in there]
    return Grid(
        "Ways out",
        ("", "", ""),
        tuple(rows) or (("", "none is written", BLANK),),
        tuple(one.way.of for one in there) or ("",),
        "large" if len(there) <= most_large else "normal" if len(there) <= MOST_LARGE else "small",
    )


def _wall(one: Exit) -> str:
    return {"roof": "roof", "floor": "floor"}.get(one.way.wall, f"{one.way.wall} wall" if one.way.wall else "no wall")


def warning_of(one: Exit) -> str:
    """Return why nobody may count on a way out, in as few words as can be; nothing where it is one."""
    if one.there != "yes":
        return "NOT IN YET"
    if one.way.is_fixed:
        return "DOES NOT OPEN"
    if one.opens == "none":
        return "NOT FROM INSIDE"
    if one.opens in ("key", "tool"):
        return f"ONLY WITH A {one.opens.upper()}"
    if one.is_held_shut and one.struck is not None:
        return f"SHUT BY {stopper(one.struck.to, one.way)}"
    if one.is_too_small:
        return "TOO SMALL"
    if one.way_shut_by is not None:
        by = listed([name_of(of) for of in one.way_shut_by[:2]])
        return f"WAY SHUT BY {by}" if by else "WAY SHUT"
    if one.may_be_held_shut and one.struck is not None:
        return f"PERHAPS SHUT BY {stopper(one.struck.to, one.way)}"
    if one.may_be_too_small and one.way.facet.clear is None:
        return "PERHAPS TOO SMALL"
    if one.opens == "unknown":
        return "NOT TRIED YET"
    return "" if one.is_measured else "NOT MEASURED"


def _opens(one: Exit) -> str:
    """Return how one leaves by a way out, or why nobody does; and from which bed nobody does."""
    if warning := warning_of(one):
        return warning
    by = f", by {one.released_by.partition('[')[2].rstrip(']')}" if one.released_by else ""
    turns = one.way.turns.partition(" hinged ")
    how = f"opens {turns[0]}{by}" if turns[0] else f"opens from inside{by}"
    return how + (f", NOT from {listed(one.not_from)}" if one.not_from else "")


def _numbered(title: str, lines: tuple[str, ...]) -> Grid:
    from boxwright.drawing import Grid

    rows = tuple((str(number), says) for number, says in enumerate(lines, 1))
    return Grid(title, ("", ""), rows, ("",) * len(rows))


def _fire(result: Result, shown_in: HeaderUnits) -> Grid:
    """Return what to do in a fire, and where each extinguisher hangs."""
    from boxwright.drawing import Grid

    rows, of = [(str(number), says) for number, says in enumerate(DOOR_CARD["fire"], 1)], [""] * len(DOOR_CARD["fire"])
    hanging = [one for one in result.extinguishers if one.helps == "yes"]
    for device in hanging:
        rows.append(("", f"Extinguisher: {_place(device, result, shown_in) or BLANK}"))
        of.append(device.kept.of)
    if not hanging:
        rows.append(("", "NO EXTINGUISHER"))
        of.append("")
    return Grid("Fire", ("", ""), tuple(rows), tuple(of))


def _safe(shut_offs: tuple[ShutOff, ...], there: frozenset[str] | None) -> Grid:
    """Return the order in which the trailer is made safe; what shuts a thing off is left to a pencil where unknown."""
    from boxwright.drawing import Grid

    rows, of = [], []
    for number, what in enumerate(ORDER, 1):
        found = [one for one in shut_offs if one.what == what]
        here = [one for one in found if there is None or one.of in there]
        where = "; ".join(one.words for one in here) or (BLANK if what in SHUT else "")
        if found and not here:
            where = "not in yet"
        rows.append((str(number), " ".join((*DOOR_CARD[what], where)).strip()))
        of.append(found[0].of if found else "")
    return Grid("Making safe, while there is time", ("", ""), tuple(rows), tuple(of))


def _place(device: Device, result: Result, shown_in: HeaderUnits) -> str:
    if device.at is None:
        return ""
    x, y, z = device.at
    side = "left" if y.best < 0.0 else "right"
    back, up = show(x.low, "m", shown_in), show(z.low - result.floor, "m", shown_in)
    return f"{side} side, {back} from the front, {up} up"
