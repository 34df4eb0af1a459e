"""Tables and notes: columns as wide as what is in them, cells broken into lines, ruled, with room for a pencil."""

from __future__ import annotations

from dataclasses import replace

from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.layout.wrap import LEADING, PLAIN_RISE, Block, block, cleaned, set_in, width_of, words_at
from boxwright.drawing.page import Box
from boxwright.drawing.paper import HEIGHT_OF, NORMAL, SMALL
from boxwright.drawing.sheet import TO_TICK, Grid
from boxwright.records import dataclass

PAD = 1.4
PENCIL = 24.0
"""Width of a column that is left empty to be written in."""
TICK = 3.2
NARROWEST = 9.0
WIDEST = 70.0
"""No column asks for more than this before its words are broken into lines."""
HAIR = 0.2
"""A column is so much wider than its longest word, so that no rounding breaks the word."""
READABLE = 110.0
"""Notes are set no wider: longer lines are hard to read."""
SET = 3.0
"""The gap between a title and its table."""
PENCIL_ROW = 7.0


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table with its cells broken into lines."""

    cells: tuple[tuple[str, ...], ...]
    of: str
    high: float
    is_ticked: tuple[bool, ...]


@dataclass(frozen=True, slots=True)
class Set:
    """A table or a paragraph of notes, set to a width; ``above`` is what stands over the first row on every page.

    ``letters`` is how high what stands in its cells is (mm on paper).
    """

    title: str
    widths: tuple[float, ...]
    rows: tuple[Row, ...]
    heading: Block
    head: Row | None
    above: float
    is_note: bool
    letters: float = SMALL

    @property
    def wide(self) -> float:
        """Return its width."""
        return max(sum(self.widths), self.heading.wide)

    @property
    def high(self) -> float:
        """Return its height."""
        return self.above + sum(row.high for row in self.rows)


def _set(
    title: str,
    head: Row | None,
    widths: tuple[float, ...],
    rows: tuple[Row, ...],
    is_note: bool = False,
    letters: float = SMALL,
) -> Set:
    heading = block(title, max(NORMAL, letters), True, max(sum(widths), 60.0))
    above = (heading.high + 1.0 if cleaned(title) else 0.0) + (head.high if head else 0.0)
    return Set(title, widths, rows, heading, head, above, is_note, letters)


def set_grid(grid: Grid, limit: float) -> list[Set]:
    """Return a table set no wider than a limit: in several parts where it has more columns than fit side by side."""
    rows = [tuple(row[: len(grid.columns)]) + ("",) * (len(grid.columns) - len(row)) for row in grid.rows]
    of = tuple(grid.of) + ("",) * (len(rows) - len(grid.of))
    parts, letters = [], HEIGHT_OF[grid.letters]
    for first, last in _parts(len(grid.columns), int(limit / (NARROWEST + 2 * PAD))):
        columns = grid.columns[first:last]
        cells = [row[first:last] for row in rows]
        widths = _widths(columns, cells, limit, letters)
        set_rows = tuple(_row(row, widths, path, False, letters) for row, path in zip(cells, of, strict=False))
        head = _row(columns, widths, "", True, letters) if any(cleaned(one) for one in columns) else None
        parts.append(_set(grid.title, head, widths, set_rows, letters=letters))
    return parts


def _parts(columns: int, most: int) -> list[tuple[int, int]]:
    most = max(1, most)
    return [(first, min(columns, first + most)) for first in range(0, columns, most)]


def set_notes(notes: tuple[str, ...], limit: float, title: str = "Notes") -> Set:
    """Return notes as a list with dashes, no wider than a limit."""
    widths = (4.0, min(limit, READABLE) - 4.0)
    natural = max((width_of(cleaned(one), SMALL) for one in notes), default=0.0) + 2 * PAD
    widths = (widths[0], min(widths[1], max(natural, 30.0)))
    rows = tuple(
        Row(cells, "", _high(cells) + 0.6, (False, False))
        for one in notes
        for cells in [(("–",), block(one, SMALL, False, widths[1] - PAD).lines)]
    )
    return _set(title, None, widths, rows, True)


def _widths(columns: tuple[str, ...], rows: list[tuple[str, ...]], limit: float, letters: float) -> tuple[float, ...]:
    """Return the widths of columns: what their words ask for; where that is too much, each gives up its share."""
    wanted, least, whole = [], [], []
    widest, pencil, readable = (one * letters / SMALL for one in (WIDEST, PENCIL, READABLE))
    for number, name in enumerate(columns):
        cells = [row[number] for row in rows if cleaned(row[number])]
        texts = [(cleaned(name), True), *((cleaned(cell), False) for cell in cells)]
        natural = max(width_of(text, letters, is_bold) for text, is_bold in texts) + 2 * PAD + HAIR
        longest = max(width_of(one, letters, is_bold) for text, is_bold in texts for one in text.split() or [""])
        if not cells and rows:
            natural = max(natural, pencil)
        wanted.append(min(max(natural, NARROWEST), max(widest, longest + 2 * PAD)))
        least.append(min(max(longest + 2 * PAD + HAIR, NARROWEST), wanted[-1]))
        whole.append(max(wanted[-1], min(natural, readable)))
    if sum(wanted) <= limit:
        # Room that is over goes to the columns whose words are broken into lines.
        lacking = sum(whole) - sum(wanted)
        share = min(1.0, (limit - sum(wanted)) / lacking) if lacking > 0.0 else 0.0
        return tuple(low + share * (high - low) for low, high in zip(wanted, whole, strict=True))
    if sum(least) <= limit:
        share = (limit - sum(least)) / (sum(wanted) - sum(least))
        return tuple(low + share * (high - low) for low, high in zip(least, wanted, strict=True))
    narrow = [min(one, limit / len(columns)) for one in least]
    spare = limit - sum(narrow)
    short = sum(low - one for low, one in zip(least, narrow, strict=True))
    return tuple(one + spare * (low - one) / short for low, one in zip(least, narrow, strict=True))


def _row(cells: tuple[str, ...], widths: tuple[float, ...], of: str, is_head: bool, letters: float) -> Row:
    broken, ticked = [], []
    for cell, wide in zip(cells, widths, strict=True):
        text = cleaned(cell)
        is_ticked = text.startswith(TO_TICK)
        text = text.removeprefix(TO_TICK).strip() if is_ticked else text
        room = wide - 2 * PAD - (TICK + 1.5 if is_ticked and text else 0.0)
        broken.append(block(text, letters, is_head, room).lines)
        ticked.append(is_ticked)
    has_blank = not is_head and any(not any(lines) and not tick for lines, tick in zip(broken, ticked, strict=True))
    high = max(_high(tuple(broken), letters) + 1.2, PENCIL_ROW if has_blank else 0.0)
    return Row(tuple(broken), of, high, tuple(ticked))


def _high(cells: tuple[tuple[str, ...], ...], letters: float = SMALL) -> float:
    return max(1, *(len(lines) for lines in cells)) * LEADING * letters


def split(table: Set, room: float) -> tuple[Set | None, Set | None]:
    """Return the part of a table that fits in a height, and the rest; a row too tall for that is cut."""
    left = room - table.above
    taken = 0
    while taken < len(table.rows) and table.rows[taken].high <= left:
        left -= table.rows[taken].high
        taken += 1
    if taken == len(table.rows):
        return table, None
    if taken == 0:
        return None, table
    title = table.title if table.title.endswith(GOES_ON) or not table.title else f"{table.title} {GOES_ON}"
    rest = _set(title, table.head, table.widths, table.rows[taken:], table.is_note, table.letters)
    return replace(table, rows=table.rows[:taken]), rest


GOES_ON = "(continued)"


def chopped(table: Set, room: float) -> list[Set]:
    """Return a table of which every row fits a page: a taller one goes on in a second row.

    A title or a head that would fill the page by itself is printed once, before the table.
    """
    before: list[Set] = []
    if table.heading.high > room / 4:
        before = chopped(set_notes((table.title,), max(table.wide, 60.0), ""), room)
        table = _set("", table.head, table.widths, table.rows, table.is_note, table.letters)
    if table.head is not None and table.head.high > room / 3:
        table = _set(table.title, None, table.widths, (table.head, *table.rows), letters=table.letters)
    most = max(1, int((room - table.above - 3.0) / (LEADING * table.letters)))
    rows: list[Row] = []
    for row in table.rows:
        longest = max((len(lines) for lines in row.cells), default=0)
        if longest <= most:
            rows.append(row)
            continue
        for first in range(0, longest, most):
            cells = tuple(lines[first : first + most] for lines in row.cells)
            ticks = row.is_ticked if first == 0 else (False,) * len(cells)
            rows.append(Row(cells, row.of, _high(cells, table.letters) + 1.2, ticks))
    return [*before, replace(table, rows=tuple(rows))]


def draw_set(table: Set, left: float, top: float, ink: Ink) -> None:
    """Draw a table or notes with their left upper corner at a place."""
    here = top
    if cleaned(table.title):
        ink.words += words_at(table.heading, left, here, "", "grid")
        here += table.heading.high + 1.0
    first = here
    if table.head is not None:
        here = _draw_row(table, table.head, left, here, True, ink)
        ink.line((left, here), (left + sum(table.widths), here), "visible", "", "grid")
    for number, row in enumerate(table.rows):
        here = _draw_row(table, row, left, here, False, ink)
        if not table.is_note and number + 1 < len(table.rows):
            ink.line((left, here), (left + sum(table.widths), here), "dimension", row.of, "grid")
    if not table.is_note:
        ink.rectangle(Box(left, first, left + sum(table.widths), here), "visible", "", "grid")
        across = left
        for wide in table.widths[:-1]:
            across += wide
            ink.line((across, first), (across, here), "dimension", "", "grid")


def _draw_row(table: Set, row: Row, left: float, top: float, is_head: bool, ink: Ink) -> float:
    across = left
    for lines, wide, is_ticked in zip(row.cells, table.widths, row.is_ticked, strict=True):
        start = across + (0.0 if table.is_note else PAD)
        middle = top + (0.6 if table.is_note else 1.1)
        if is_ticked:
            box = Box(start, middle + 0.3, start + TICK, middle + 0.3 + TICK)
            ink.rectangle(box, "dimension", row.of, "grid")
            start += TICK + 1.5
        if any(lines):
            # One baseline for the whole row, whether or not a cell has an accent that rises above it.
            cell = set_in(lines, table.letters, is_head)
            ink.words += words_at(cell, start, middle + PLAIN_RISE * table.letters - cell.rise, row.of, "grid")
        across += wide
    return top + row.high
