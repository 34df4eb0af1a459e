"""The sheets of a rig as they are printed: their names first, each laid out on paper only when somebody looks at it."""

from __future__ import annotations

from collections.abc import Sequence
from threading import Lock

from boxwright.book.charts import chart_sheets
from boxwright.book.sheets import IN_ORDER, SLOW, Printing, sheets_of_chapter, slow_sheets, slow_titles, title_of
from boxwright.book.worded import worded
from boxwright.drawing import Sheet
from boxwright.drawing.layout import pages_of
from boxwright.drawing.paper import PAPERS
from boxwright.render.svg import svg_of
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.web import contract
from boxwright.web.figures import asked_slot, night_slot
from boxwright.web.session import Seen

LETTER_COUNTRIES = frozenset({"US", "CA"})


MOST_KEPT = 18
"""How many chapters' sheets are kept; those of a text or a slot that is no longer looked at go first."""


class _Kept:
    """The sheets of one chapter of a study, once they are made.

    It holds rig and slot, so that no other can have their numbers while it is kept.
    """

    def __init__(self, rig: Rig, slot: WorkedSlot, night: WorkedSlot | None) -> None:
        self.held = (rig, slot, night)
        self.sheets: tuple[Sheet, ...] | None = None
        self.making = Lock()


_KEPT: dict[tuple[int, int, int, str], _Kept] = {}
_SHELF = Lock()
"""Whoever looks for what is kept, or puts it there, does so alone."""


def drawn_sheets(rig: Rig, slot: WorkedSlot, night: WorkedSlot | None) -> tuple[Sheet, ...]:
    """Return every sheet of a slot, as they are printed; ``night`` is the one somebody sleeps in."""
    return tuple(worded(sheet) for chapter, _ in IN_ORDER for sheet in chapter_sheets(rig, slot, chapter, night))


def chapter_sheets(rig: Rig, slot: WorkedSlot, chapter: str, night: WorkedSlot | None) -> tuple[Sheet, ...]:
    """Return the sheets of one chapter in a slot, made only once for the very same rig and slot.

    They are records, and a screen asks three times. Of two threads that ask at once one makes them, the other waits.
    """
    key = (id(rig), id(slot), id(night), chapter)
    with _SHELF:
        kept = _KEPT.pop(key, None) or _Kept(rig, slot, night)
        _KEPT[key] = kept
        while len(_KEPT) > MOST_KEPT:
            del _KEPT[next(iter(_KEPT))]
    with kept.making:
        if kept.sheets is None:
            kept.sheets = sheets_of_chapter(
                chapter, Printing(rig, slot, slot.findings, (), _words(slot), rig.header.units, night)
            )
        return kept.sheets


def _all(seen: Seen, slot: WorkedSlot, planned: Sequence[WorkedSlot]) -> tuple[Sheet, ...]:
    """Return every sheet; the load on the ball through the stages too, as far as they are worked out."""
    rig = seen.reading.rig
    through = [one for one in chart_sheets(rig, slot, planned, rig.header.units) if one.name == "tongue"]
    return (*drawn_sheets(rig, slot, night_slot(seen)), *through)


def contents(seen: Seen, planned: Sequence[WorkedSlot]) -> list[contract.Page]:
    """Return the names of all sheets, nothing of them laid out yet."""
    slot = asked_slot(seen)
    if slot is None:
        return []
    named = [(sheet.name, sheet.title) for sheet in _all(seen, slot, planned)]
    named += slow_titles(seen.reading.rig, slot).items()
    return [contract.Page(name=name, title=title, svg="") for name, title in named]


def pages(seen: Seen, name: str, planned: Sequence[WorkedSlot]) -> list[contract.Page]:
    """Return the pages of one sheet on the paper of the home country; none where there is no such sheet."""
    slot, rig = asked_slot(seen), seen.reading.rig
    if slot is None:
        return []
    home = rig.header.countries[0].partition("-")[0] if rig.header.countries else ""
    paper = PAPERS["letter" if home in LETTER_COUNTRIES else "a4"]
    title = title_of(rig, _words(slot), seen.study.judged_on.isoformat(), rig.header.units)
    if name in SLOW:
        asked = Printing(rig, slot, slot.findings, (), _words(slot), rig.header.units, night_slot(seen))
        wanted = [*slow_sheets(asked, [name])]
    else:
        wanted = [sheet for sheet in _all(seen, slot, planned) if sheet.name == name]
    return [
        contract.Page(name=f"{page.name}-{page.number}", title=page.title, svg=svg_of(page))
        for page in pages_of(wanted, paper, title)
    ]


def _words(slot: WorkedSlot) -> str:
    when = "today as ticked" if slot.is_ticked else "as planned"
    return f"{when}, stage {slot.stage}" if slot.stage else when
