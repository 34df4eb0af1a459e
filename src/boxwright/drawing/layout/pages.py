"""From sheets to numbered pages."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from boxwright.drawing.layout.arrange import bodies
from boxwright.drawing.layout.foot import Foot, body_of, draw_foot, foot_of, frame_of
from boxwright.drawing.layout.ink import Ink
from boxwright.drawing.page import Box, Page
from boxwright.drawing.paper import Paper, TitleBlock
from boxwright.drawing.sheet import Sheet
from boxwright.records import dataclass

NO_SCALE = "not to scale"
"""Stands in the title block of charts: the numbers at their edges are no measures of the trailer."""


@dataclass(frozen=True, slots=True)
class _Leaf:
    """A page that waits for its number."""

    name: str
    title: str
    wide: float
    high: float
    frame: Box
    foot: Foot
    scale: float


def laid_out(
    sheet: Sheet, paper: Paper, title: TitleBlock, numbering: tuple[int, int] | None = None
) -> tuple[Page, ...]:
    """Return the pages of one sheet; ``numbering`` is the number of its first page and how many there are in all."""
    leaves = _leaves(sheet, paper, title)
    first, count = numbering or (1, len(leaves))
    return tuple(_page(leaf, ink, first + place, count) for place, (leaf, ink) in enumerate(leaves))


def pages_of(sheets: Iterable[Sheet], paper: Paper, title: TitleBlock) -> tuple[Page, ...]:
    """Return the pages of several sheets, numbered through."""
    leaves = [leaf for sheet in sheets for leaf in _leaves(sheet, paper, title)]
    return tuple(_page(leaf, ink, place, len(leaves)) for place, (leaf, ink) in enumerate(leaves, 1))


def _leaves(sheet: Sheet, paper: Paper, title: TitleBlock) -> list[tuple[_Leaf, Ink]]:
    wide, high, frame = frame_of(paper, sheet.stands_up)
    has_scale = any(view.is_to_scale for view in sheet.views)
    if sheet.views and not has_scale:
        title = replace(title, units=NO_SCALE)
    foot = foot_of(frame, title, sheet.title)
    if foot.is_cut:
        whole = (sheet.title, title.rig, title.subject, title.revision, title.units, title.on, *title.cautions)
        sheet = replace(sheet, notes=(*sheet.notes, ". ".join(one for one in whole if one)))
    body = body_of(frame, foot)
    drawings = bodies(sheet, body, title.is_imperial) or [(Ink(), 0.0)]
    return [
        (
            _Leaf(
                sheet.name if place == 1 else f"{sheet.name}-{place}",
                sheet.title,
                wide,
                high,
                frame,
                foot,
                scale if has_scale else 0.0,
            ),
            ink,
        )
        for place, (ink, scale) in enumerate(drawings, 1)
    ]


def _page(leaf: _Leaf, ink: Ink, number: int, count: int) -> Page:
    draw_foot(leaf.foot, leaf.frame, leaf.scale, number, count, ink)
    return Page(
        leaf.name,
        leaf.title,
        number,
        count,
        leaf.wide,
        leaf.high,
        tuple(ink.strokes),
        tuple(ink.curves),
        tuple(ink.words),
        tuple(ink.dimensions),
        tuple(ink.views),
    )
