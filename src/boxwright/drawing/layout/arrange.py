"""What goes where on the pages of one sheet: the scale, the views in rows, tables and notes beside or below them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import count as counting

from boxwright.drawing.layout.grid import Set, chopped, draw_set, set_grid, set_notes, split
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.view import Bounds, Fitted, drawn, fitted
from boxwright.drawing.page import Box
from boxwright.drawing.paper import SCALES
from boxwright.drawing.sheet import Grid, Sheet

APART = 7.0
"""White between views, and between tables."""
LEAST_SHARE = 0.66
"""A view is drawn so much smaller than need be if all of its sheet then stands on one page."""
LEAST_ROWS = 3
"""A table is begun at the foot of a page only if so many of its rows stand there."""


@dataclass(frozen=True, slots=True)
class Shelf:
    """Views side by side."""

    views: tuple[Fitted, ...]
    wide: float
    high: float


@dataclass(frozen=True, slots=True)
class Placed:
    """A table or notes at a place."""

    table: Set
    left: float
    top: float


@dataclass(frozen=True, slots=True)
class Plan:
    """The first page of a sheet: where its views may stand, and the tables beside or below them."""

    scale: float
    shelves: tuple[Shelf, ...]
    area: Box
    tables: tuple[Placed, ...]
    free: tuple[Box, ...]


def bodies(sheet: Sheet, body: Box, is_imperial: bool) -> list[tuple[Ink, float]]:
    """Return the drawings of the pages of a sheet, each with its scale, 0 where it has no view."""
    room = Bounds(body.right - body.left, body.bottom - body.top)
    if not sheet.views:
        return [(ink, 0.0) for ink in _flowed(_items(sheet, room.wide, room.high), body)]
    plan = _whole(sheet, body, room, is_imperial)
    items: list[Set] = []
    if plan is None:
        pages, scale = _views_alone(sheet, body, room, is_imperial)
        items = _items(sheet, room.wide, room.high)
    else:
        pages, scale = [plan], plan.scale
    done: list[tuple[Ink, float]] = []
    free: list[Box] = []
    for page in pages:
        ink = Ink()
        keys = _draw_views(page, ink)
        for placed in page.tables:
            draw_set(placed.table, placed.left, placed.top, ink)
        free = list(page.free)
        items = [*keys_set(keys, room), *items]
        done.append((ink, scale))
    items = _fill(items, free, done[-1][0]) if items else []
    return done + [(ink, 0.0) for ink in _flowed(items, body)]


def keys_set(keys: list[tuple[str, list[tuple[str, str]]]], room: Bounds) -> list[Set]:
    """Return the tables that say what the numbers in views mean."""
    sets: list[Set] = []
    for name, rows in keys:
        grid = Grid(f"Key to {name}", ("no.", "what"), tuple(rows), ("",) * len(rows))
        sets += [chopped(one, room.high) for one in set_grid(grid, room.wide)]
    return sets


def _items(sheet: Sheet, wide: float, high: float) -> list[Set]:
    """Return the tables and notes of a sheet set to a width."""
    items = [chopped(part, high) for grid in sheet.grids for part in set_grid(grid, wide)]
    return [*items, chopped(set_notes(sheet.notes, wide), high)] if sheet.notes else items


def _scales(sheet: Sheet) -> list[float]:
    """Return the scales to try, the largest first."""
    small = [step * 10.0**-power for power in range(3, 9) for step in (0.5, 0.2, 0.1)]
    usual = [*SCALES, *(one for one in small if one < SCALES[-1] * 0.99)]
    return [sheet.scale, *(one for one in usual if one < sheet.scale)] if sheet.scale > 0.0 else usual


def _whole(sheet: Sheet, body: Box, room: Bounds, is_imperial: bool) -> Plan | None:
    """Return a plan with all of a sheet on one page, at the largest scale or not much smaller; None without one."""
    largest = 0.0
    for scale in _scales(sheet):
        views = [fitted(view, scale, room, is_imperial) for view in sheet.views]
        if any(view.wide > room.wide or view.high > room.high for view in views):
            continue
        largest = largest or scale
        if scale < LEAST_SHARE * largest:
            return None
        for area in _areas(sheet, body):
            shelves = _shelves(views, area.right - area.left)
            high = sum(shelf.high for shelf in shelves) + APART * (len(shelves) - 1)
            if high > area.bottom - area.top or any(shelf.wide > area.right - area.left for shelf in shelves):
                continue
            is_beside = area.right < body.right
            rest = Box(area.right + APART, body.top, body.right, body.bottom) if is_beside else replace(
                body, top=area.top + high + APART
            )
            tables, left, free = _flow(_items(sheet, rest.right - rest.left, room.high), [rest])
            if left:
                continue
            if tables and not is_beside:
                lowest = max(one.top + one.table.high for one in tables)
                slack = body.bottom - lowest
                tables = [replace(one, top=one.top + slack) for one in tables]
                free = [replace(one, top=one.top + slack) for one in free if one.bottom > one.top + slack]
                area = replace(area, bottom=min(one.top for one in tables) - APART)
            return Plan(scale, tuple(shelves), area, tuple(tables), tuple(free if tables else ()))
    return None


def _areas(sheet: Sheet, body: Box) -> list[Box]:
    """Return where views may stand: over the tables, or left of a column of them."""
    if not sheet.grids and not sheet.notes:
        return [body]
    wide = body.right - body.left
    column = max(min(one.wide, wide * 0.45) for one in _items(sheet, wide * 0.45, body.bottom - body.top))
    return [body, replace(body, right=body.right - column - APART)]


def _shelves(views: list[Fitted], wide: float) -> list[Shelf]:
    """Return views side by side as long as there is width."""
    shelves: list[list[Fitted]] = []
    for view in views:
        if shelves and sum(one.wide + APART for one in shelves[-1]) + view.wide <= wide:
            shelves[-1].append(view)
        else:
            shelves.append([view])
    return [
        Shelf(tuple(row), sum(one.wide + APART for one in row) - APART, max(one.high for one in row)) for row in shelves
    ]


def _views_alone(sheet: Sheet, body: Box, room: Bounds, is_imperial: bool) -> tuple[list[Plan], float]:
    """Return pages of views without tables, at the largest scale at which each view fits a page."""
    for scale in _scales(sheet):
        views = [fitted(view, scale, room, is_imperial) for view in sheet.views]
        if all(view.wide <= room.wide and view.high <= room.high for view in views):
            break
    pages: list[list[Shelf]] = []
    for shelf in _shelves(views, room.wide):
        used = sum(one.high + APART for one in pages[-1]) if pages else room.high
        if pages and used + shelf.high <= room.high:
            pages[-1].append(shelf)
        else:
            pages.append([shelf])
    return [Plan(scale, tuple(page), body, (), ()) for page in pages], scale


def _draw_views(plan: Plan, ink: Ink) -> list[tuple[str, list[tuple[str, str]]]]:
    """Draw the views of a page, the white shared out evenly; return the keys of those that need one."""
    keys = []
    area = plan.area
    spare = area.bottom - area.top - sum(one.high for one in plan.shelves)
    extra = max(0.0, (spare - APART * (len(plan.shelves) - 1)) / len(plan.shelves))
    top = area.top
    for shelf in plan.shelves:
        aside = max(0.0, (area.right - area.left - shelf.wide) / len(shelf.views))
        left = area.left
        for view in shelf.views:
            slot = Box(left, top, left + view.wide + aside, top + shelf.high + extra)
            own, rows = drawn(view, slot, view.view.name)
            ink.add(own)
            if rows:
                keys.append((view.view.name, rows))
            left += view.wide + aside + APART
        top += shelf.high + extra + APART
    return keys


def _flow(items: list[Set], free: list[Box]) -> tuple[list[Placed], list[Set], list[Box]]:
    """Return where whole tables find room, those that find none, and the room that is left."""
    placed: list[Placed] = []
    left: list[Set] = []
    for item in items:
        for number, box in enumerate(free):
            if item.wide <= box.right - box.left + 1e-6 and item.high <= box.bottom - box.top + 1e-6:
                placed.append(Placed(item, box.left, box.top))
                right, below = box.left + item.wide + APART, box.top + item.high + APART
                free = [
                    *free[:number],
                    Box(right, box.top, box.right, box.bottom),
                    Box(box.left, below, min(box.right, right - APART), box.bottom),
                    *free[number + 1 :],
                ]
                break
        else:
            left.append(item)
    return placed, left, free


def _fill(items: list[Set], free: list[Box], ink: Ink) -> list[Set]:
    """Draw the tables that find room in what is left of a page; return the others."""
    placed, left, _ = _flow(items, free)
    for one in placed:
        draw_set(one.table, one.left, one.top, ink)
    return left


def _flowed(items: list[Set], body: Box) -> list[Ink]:
    """Return pages of tables and notes, in their order, long ones going on from page to page."""
    pages: list[Ink] = []
    waiting = list(items)
    for _ in counting():
        if not waiting:
            return pages
        ink, free = Ink(), [body]
        while waiting:
            placed, left, after = _flow([waiting[0]], free)
            if not left:
                free = after
                draw_set(placed[0].table, placed[0].left, placed[0].top, ink)
                waiting.pop(0)
                continue
            part, rest = _begun(waiting[0], free, is_first=free == [body])
            if part is None:
                break
            draw_set(part.table, part.left, part.top, ink)
            waiting[0] = rest if rest is not None else waiting[0]
            break
        pages.append(ink)
    return pages


def _begun(item: Set, free: list[Box], is_first: bool) -> tuple[Placed | None, Set | None]:
    """Return the beginning of a long table in the roomiest place of a page, and what goes on to the next."""
    for box in free:
        if item.wide > box.right - box.left + 1e-6:
            continue
        part, rest = split(item, box.bottom - box.top)
        if part is not None and (is_first or len(part.rows) >= LEAST_ROWS):
            return Placed(part, box.left, box.top), rest
    return None, None
