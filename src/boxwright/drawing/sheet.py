"""A sheet: the views, tables and notes that belong on one page, before anybody has chosen a paper."""

from __future__ import annotations

from dataclasses import replace

from boxwright.drawing.mark import Mark, Size
from boxwright.drawing.plotted import Chart
from boxwright.records import dataclass


@dataclass(frozen=True, slots=True)
class Grid:
    """A table to be shown. Every row has one cell for each column; ``of`` is the rig path each row is about.

    A cell of ``TO_TICK`` is printed as a box to tick, an empty one as room for a pencil. ``letters`` is how large it is
    set: ``large`` is read across a room.
    """

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    of: tuple[str, ...]
    letters: Size = "small"

    def with_no_blanks(self) -> Grid:
        """Return the table with a dash in each empty cell: nobody is to write there."""
        return replace(self, rows=tuple(tuple(cell or NOTHING for cell in row) for row in self.rows))


TO_TICK, NOTHING = "☐", "–"


@dataclass(frozen=True, slots=True)
class View:
    """One look at the rig. ``looks`` says from where, in trade words; ``datum`` what its measures are taken from.

    ``is_to_scale`` is False of a chart: no rule is laid on it. ``chart`` is what it is drawn of, for whoever shows it
    otherwise than on paper.
    """

    name: str
    looks: str
    marks: tuple[Mark, ...]
    datum: str = ""
    is_to_scale: bool = True
    chart: Chart | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """What belongs on one page (more, where it does not fit).

    ``name`` is a word for the command line, such as ``left-outside``. ``scale`` is drawing over real size, such as
    1/20; 0 takes the largest usual scale that fits. ``is_tiled``: a sheet at ``scale`` too large for a page is cut
    into pages to be glued together. ``stands_up`` asks for the paper upright. ``is_for_hand``: made to be carried to
    the work and written on, so that a screen does not show it among its tables; it is printed all the same.
    """

    name: str
    title: str
    views: tuple[View, ...] = ()
    notes: tuple[str, ...] = ()
    grids: tuple[Grid, ...] = ()
    scale: float = 0.0
    is_tiled: bool = False
    stands_up: bool = False
    is_for_hand: bool = False
