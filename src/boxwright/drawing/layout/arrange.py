"""What goes where on the pages of one sheet: the scale, the views in rows, tables and notes beside or below them."""

from __future__ import annotations

from dataclasses import replace
from math import inf

from boxwright.drawing.layout.edges import Sound, sound
from boxwright.drawing.layout.grid import GOES_ON, Set, chopped, draw_set, set_grid, set_notes, split
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.rows import covered
from boxwright.drawing.layout.tiles import tiled
from boxwright.drawing.layout.view import PER_METRE, Bounds, Fitted, Keyed, drawn, fitted
from boxwright.drawing.layout.wrap import around
from boxwright.drawing.mark import Line, Point, Shape
from boxwright.drawing.page import Box
from boxwright.drawing.paper import SCALES, scale_words
from boxwright.drawing.sheet import Grid, Sheet
from boxwright.records import dataclass

FREELY = tuple(sorted((*(share / 20.0 for share in range(4, 21)), *(one for one in SCALES if one < 0.2)), reverse=True))
"""How large charts may be drawn: no rule is laid on them, so a page is filled as far as it goes."""
APART = 7.0
"""White between views, and between tables."""
LEAST_SHARE = 0.6
"""A view is drawn so much smaller than need be if all of its sheet then stands on one page; several share a page by
area, so that four may be half as large as that."""
WHOLE_SHARE = 0.5
"""A table that takes no more of a page than this is never divided between two."""
LEAST_USED = 0.33
"""Where less of the last page is used, a table of the page before goes there too, or a view beside its notes."""
SHARED = 0.65
"""How much of a long table stays where the rest of it goes to a last page that would be nearly empty."""
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


class Desk:
    """One sheet on one paper: what its views and tables take at each scale and width, worked out once."""

    def __init__(self, sheet: Sheet, body: Box, is_imperial: bool) -> None:
        self.sheet, self.body, self.is_imperial = sheet, body, is_imperial
        self.room = Bounds(body.right - body.left, body.bottom - body.top)
        self.sound = [sound(view) for view in sheet.views]
        self._views: dict[float, list[Fitted]] = {}
        self._items: dict[tuple[float, bool], list[Set]] = {}
        self._span = _span(self.sound)
        if not any(self.fits(scale) for scale in self.scales):
            # Not even as a speck: the rows of dimensions alone fill the page, so their words go to the key.
            self.room = replace(self.room, has_rows=False)
            self._views.clear()

    def views(self, scale: float) -> list[Fitted]:
        """Return the views at a scale."""
        if scale not in self._views:
            self._views[scale] = [fitted(view, scale, self.room, self.is_imperial) for view in self.sound]
        return self._views[scale]

    def fits(self, scale: float) -> bool:
        """Return whether each view fits a page by itself."""
        if self._span[0] * scale > self.room.wide or self._span[1] * scale > self.room.high:
            return False
        return all(view.wide <= self.room.wide and view.high <= self.room.high for view in self.views(scale))

    def items(self, wide: float, scale: float) -> list[Set]:
        """Return the tables and notes set to a width; a scale that was asked for and not kept is said."""
        sheet, key = self.sheet, (wide, scale < self.sheet.scale)
        if key not in self._items:
            parts = [part for grid in sheet.grids for part in set_grid(grid, wide)]
            sets = [one for part in parts for one in chopped(part, self.room.high)]
            notes = sheet.notes
            if scale < sheet.scale:
                notes = (*notes, f"This paper has no room for the scale {scale_words(sheet.scale)}.")
            if notes:
                sets += chopped(set_notes(notes, wide), self.room.high)
            self._items[key] = sets
        return self._items[key]

    @property
    def scales(self) -> list[float]:
        """Return the scales to try, the largest first."""
        wanted = self.sheet.scale or (1.0 if self.sheet.is_tiled else 0.0)
        small = [step * 10.0**-power for power in range(3, 9) for step in (0.5, 0.2, 0.1)]
        is_to_scale = any(view.is_to_scale for view in self.sheet.views)
        usual = [*(SCALES if is_to_scale else FREELY), *(one for one in small if one < SCALES[-1] * 0.99)]
        return [wanted, *(one for one in usual if one < wanted)] if wanted > 0.0 else usual


def _span(views: list[Sound]) -> tuple[float, float]:
    """Return the least room that the views need at 1:1, in millimetres, by their lines and shapes alone."""
    wide = high = 0.0
    for view in views:
        points: list[Point] = []
        for mark in view.marks:
            if isinstance(mark, Line):
                points += [mark.start, mark.end]
            elif isinstance(mark, Shape):
                points += mark.points
        if points:
            box = around(points)
            wide, high = max(wide, box.right - box.left), max(high, box.bottom - box.top)
    return wide * PER_METRE, high * PER_METRE


def bodies(sheet: Sheet, body: Box, is_imperial: bool) -> list[tuple[Ink, float]]:
    """Return the drawings of the pages of a sheet, each with its scale, 0 where it has no view."""
    desk = Desk(sheet, body, is_imperial)
    room = desk.room
    if not sheet.views:
        return [(ink, 0.0) for ink in _flowed(desk.items(room.wide, sheet.scale), body)]
    if sheet.is_tiled and not desk.fits(desk.scales[0]):
        return _tiled(desk)
    plan = _whole(desk)
    done, waiting = _pages(desk, [plan]) if plan is not None else ([], [])
    if plan is not None and not waiting:
        return done
    # A key for which the one page has no room needs a second: that takes the tables too, and the views stand large.
    views, scale = _views_alone(desk)
    views, items = _closed(desk, views, desk.items(room.wide, scale))
    done, waiting = _pages(desk, views)
    return done + [(ink, 0.0) for ink in _flowed([*waiting, *items], body)]


def _pages(desk: Desk, plans: list[Plan]) -> tuple[list[tuple[Ink, float]], list[Set]]:
    """Return the pages of views, each with its scale, and the keys for which they have no room."""
    done: list[tuple[Ink, float]] = []
    waiting: list[Set] = []
    for plan in plans:
        ink = Ink()
        keys = _keys(_draw_views(plan, ink), desk.room)
        for placed in plan.tables:
            draw_set(placed.table, placed.left, placed.top, ink)
        left: list[Set] = []
        if keys:
            ink, left = _fill(keys, plan.free, ink) if plan.tables else _with_keys(keys, desk.body, ink)
        waiting += left
        done.append((ink, plan.scale))
    return done, waiting


def _with_keys(keys: list[Set], body: Box, ink: Ink) -> tuple[Ink, list[Set]]:
    """Return a page of views with its keys below or beside them, the views moved to make room; or the keys left."""
    box = covered(ink, ink.words[0].box)
    up, back = body.top - box.top, body.left - box.left
    below = replace(body, top=box.bottom + up + APART)
    beside = replace(body, left=box.right + back + APART)
    for rest, across, down in ((below, 0.0, up), (beside, back, 0.0)):
        tables, left, _ = _flow(keys, [rest])
        if not left:
            moved = ink.moved(across, down)
            slack = 0.0 if across else body.bottom - max(one.top + one.table.high for one in tables)
            for one in tables:
                draw_set(one.table, one.left, one.top + slack, moved)
            return moved, []
    return ink, keys


def _tiled(desk: Desk) -> list[tuple[Ink, float]]:
    """Return the pages of a sheet whose views are cut into pieces."""
    views = desk.sheet.views
    for scale in desk.scales:
        cut = [pieces for view in desk.sound if (pieces := tiled(view, scale, desk.body, desk.is_imperial)) is not None]
        if len(cut) == len(views):
            break
    done: list[tuple[Ink, float]] = []
    keys: list[tuple[str, Keyed]] = []
    for view, (pages, keyed) in zip(views, cut, strict=True):
        done += [(ink, scale) for ink in pages]
        keys += [(view.name, keyed)] if keyed else []
    items = [*_keys(keys, desk.room), *desk.items(desk.room.wide, scale)]
    return done + [(ink, 0.0) for ink in _flowed(items, desk.body)]


def _keys(keys: list[tuple[str, Keyed]], room: Bounds) -> list[Set]:
    """Return the tables that say what the numbers in views mean."""
    sets: list[Set] = []
    for name, rows in keys:
        grid = Grid(f"Key to {name}", ("no.", "what"), tuple(rows), ("",) * len(rows))
        sets += [one for part in set_grid(grid, room.wide) for one in chopped(part, room.high)]
    return sets


def _whole(desk: Desk) -> Plan | None:
    """Return a plan with all of a sheet on one page, at the largest scale or not much smaller; None without one."""
    largest = 0.0
    for scale in desk.scales:
        if not desk.fits(scale):
            continue
        largest = largest or scale
        if scale < LEAST_SHARE / len(desk.sheet.views) ** 0.5 * largest:
            return None
        for area in _areas(desk, scale):
            plan = _planned(desk, scale, area)
            if plan is not None:
                return plan
    return None


def _planned(desk: Desk, scale: float, area: Box) -> Plan | None:
    """Return a plan with the views in an area and the tables in the rest of the page; None where they do not fit."""
    body = desk.body
    shelves = _shelves(desk.views(scale), area.right - area.left)
    high = sum(shelf.high for shelf in shelves) + APART * (len(shelves) - 1)
    if high > area.bottom - area.top or any(shelf.wide > area.right - area.left for shelf in shelves):
        return None
    is_beside = area.right < body.right
    rest = replace(body, left=area.right + APART) if is_beside else replace(body, top=area.top + high + APART)
    tables, left, free = _flow(desk.items(rest.right - rest.left, scale), [rest])
    if left:
        return None
    if tables and not is_beside:
        # The tables go down to the foot of the page; what is over belongs to the views.
        slack = body.bottom - max(one.top + one.table.high for one in tables)
        tables = [replace(one, top=one.top + slack) for one in tables]
        free = [replace(one, top=one.top + slack) for one in free if one.bottom > one.top + slack]
        area = replace(area, bottom=min(one.top for one in tables) - APART)
    return Plan(scale, tuple(shelves), area, tuple(tables), tuple(free if tables else ()))


def _areas(desk: Desk, scale: float) -> list[Box]:
    """Return where views may stand: over the tables, or left of a column of them."""
    body, wide = desk.body, desk.room.wide
    items = desk.items(wide * 0.45, scale)
    if not items:
        return [body]
    column = max(min(one.wide, wide * 0.45) for one in items)
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


def _views_alone(desk: Desk) -> tuple[list[Plan], float]:
    """Return pages of views without tables, at the largest scale at which each view fits a page."""
    body, room = desk.body, desk.room
    scale = next((one for one in desk.scales if desk.fits(one)), desk.scales[-1])
    views = desk.views(scale)
    pages: list[list[Shelf]] = []
    for shelf in _shelves(views, room.wide):
        used = sum(one.high + APART for one in pages[-1]) if pages else room.high
        if pages and used + shelf.high <= room.high:
            pages[-1].append(shelf)
        else:
            pages.append([shelf])
    return [Plan(scale, tuple(page), body, (), ()) for page in pages], scale


def _closed(desk: Desk, pages: list[Plan], items: list[Set]) -> tuple[list[Plan], list[Set]]:
    """Return pages of views with short notes or tables under the last of them, on a page of its own if need be."""
    body = desk.body
    last = pages[-1].shelves
    if not items or len(pages) < 2 or sum(one.high + APART for one in items) > LEAST_USED * (body.bottom - body.top):
        return pages, items
    for count in (0, *range(len(last) - 1, 0, -1)):
        ends = last[count:]
        high = sum(one.high + APART for one in ends)
        tables, left, free = _flow(items, [replace(body, top=body.top + high)])
        if not left:
            before = [replace(pages[-1], shelves=last[:count])] if count else []
            area = replace(body, bottom=body.top + high - APART)
            return [*pages[:-1], *before, Plan(pages[-1].scale, ends, area, tuple(tables), tuple(free))], []
    return pages, items


def _draw_views(plan: Plan, ink: Ink) -> list[tuple[str, Keyed]]:
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
            own, rows = drawn(view, slot)
            ink.add(own)
            if rows:
                keys.append((view.view.name, rows))
            left += view.wide + aside + APART
        top += shelf.high + extra + APART
    return keys


def _flow(items: list[Set], free: list[Box], widest: float = inf) -> tuple[list[Placed], list[Set], list[Box]]:
    """Return where whole tables find room, those that find none, and the room that is left.

    Where no table is wider than half a page, as ``widest`` says, they stand in columns; else in rows.
    """
    placed: list[Placed] = []
    left: list[Set] = []
    for item in items:
        for number, box in enumerate(free):
            if item.wide <= box.right - box.left + 1e-6 and item.high <= box.bottom - box.top + 1e-6:
                placed.append(Placed(item, box.left, box.top))
                right, below = box.left + item.wide + APART, box.top + item.high + APART
                beside = [
                    Box(right, box.top, box.right, below - APART),
                    Box(box.left, below, box.right, box.bottom),
                ]
                column = max(widest, item.wide)
                if 2 * column + APART <= box.right - box.left:
                    right = box.left + column + APART
                    beside = [
                        Box(box.left, below, right - APART, box.bottom),
                        Box(right, box.top, box.right, box.bottom),
                    ]
                free = [*free[:number], *beside, *free[number + 1 :]]
                break
        else:
            left.append(item)
    return placed, left, free


def _fill(items: list[Set], free: tuple[Box, ...], ink: Ink) -> tuple[Ink, list[Set]]:
    """Draw the tables that find room in what is left of a page; return the page and the others."""
    placed, left, _ = _flow(items, list(free))
    for one in placed:
        draw_set(one.table, one.left, one.top, ink)
    return ink, left


def _flowed(items: list[Set], body: Box) -> list[Ink]:
    """Return pages of tables and notes, in their order, long ones going on from page to page."""
    pages: list[list[Placed]] = []
    waiting = list(items)
    widest = max((one.wide for one in items if one.rows), default=inf)
    while waiting:
        pages.append([])
        page, free = pages[-1], [body]
        while waiting:
            placed, left, after = _flow([waiting[0]], free, widest)
            if left and page:
                placed, left, after = _aside(waiting[0], page, body)
            if not left:
                free = after
                page.append(placed[0])
                waiting.pop(0)
                continue
            is_first = free == [body]
            if not is_first and waiting[0].high <= WHOLE_SHARE * (body.bottom - body.top):
                break
            part, rest = _begun(waiting[0], free if is_first else [*free, _right_of(page, body)], is_first)
            if part is None:
                break
            page.append(part)
            waiting[0] = rest if rest is not None else waiting[0]
            break
    _filled_up(pages, body, widest)
    found = []
    for page in pages:
        ink = Ink()
        for one in page:
            draw_set(one.table, one.left, one.top, ink)
        found.append(ink)
    return found


def _aside(item: Set, page: list[Placed], body: Box) -> tuple[list[Placed], list[Set], list[Box]]:
    """Return where a table stands right of all that is on a page: there it may be as high as the page."""
    return _flow([item], [_right_of(page, body)])


def _right_of(page: list[Placed], body: Box) -> Box:
    """Return what is free right of all that is on a page, as high as the page."""
    return replace(body, left=max(one.left + one.table.wide for one in page) + APART)


def _filled_up(pages: list[list[Placed]], body: Box, widest: float) -> None:
    """Take to a last page that is nearly empty what ended the page before."""
    while len(pages) > 1 and len(pages[-2]) > 1 and _used(pages[-1], body) < LEAST_USED:
        placed, left, _ = _flow([pages[-2][-1].table, *(one.table for one in pages[-1])], [body], widest)
        if left or pages[-2][-1].table.title.endswith(GOES_ON) or pages[-1][0].table.title.endswith(GOES_ON):
            break
        pages[-2:] = [pages[-2][:-1], placed]
    if len(pages) > 1 and _used(pages[-1], body) < LEAST_USED:
        _share(pages, body, widest)


def _share(pages: list[list[Placed]], body: Box, widest: float) -> None:
    """Take to a last page that is nearly empty the end of the long table before it, where there is one."""
    long = pages[-2][-1]
    is_whole = long.table.is_note or long.table.high <= WHOLE_SHARE * (body.bottom - body.top)
    if is_whole or pages[-1][0].table.title.endswith(GOES_ON):
        return
    part, rest = split(long.table, SHARED * long.table.high)
    if part is None or rest is None or min(len(part.rows), len(rest.rows)) < LEAST_ROWS:
        return
    placed, left, _ = _flow([rest, *(one.table for one in pages[-1])], [body], widest)
    if not left:
        pages[-2:] = [[*pages[-2][:-1], replace(long, table=part)], placed]


def _used(page: list[Placed], body: Box) -> float:
    """Return which share of a page its tables take."""
    wide = max(one.left + one.table.wide for one in page) - body.left
    high = max(one.top + one.table.high for one in page) - body.top
    return wide * high / ((body.right - body.left) * (body.bottom - body.top))


def _begun(item: Set, free: list[Box], is_first: bool) -> tuple[Placed | None, Set | None]:
    """Return the beginning of a long table where most of its rows stand on a page, and what goes on to the next."""
    best: tuple[int, Placed | None, Set | None] = (0, None, None)
    for box in free:
        if item.wide > box.right - box.left + 1e-6:
            continue
        part, rest = split(item, box.bottom - box.top)
        if part is None or not (is_first or len(part.rows) >= LEAST_ROWS):
            continue
        if len(part.rows) > best[0]:
            best = len(part.rows), Placed(part, box.left, box.top), rest
    return best[1], best[2]
