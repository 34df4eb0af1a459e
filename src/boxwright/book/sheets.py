"""Every sheet of a rig in one slot, in the order of the chapters, and what stands at the foot of each page."""

from __future__ import annotations

from boxwright.book.charts import chart_sheets
from boxwright.book.plan import plan_sheets
from boxwright.disciplines import frame, towing
from boxwright.disciplines.frame.drawn import Drawn, Ruler
from boxwright.disciplines.frame.ordering import OrderLine
from boxwright.disciplines.frame.receiving import expected
from boxwright.drawing import Sheet
from boxwright.drawing.paper import TitleBlock
from boxwright.finding import Finding
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

CAUTION = (
    "Computed from what was typed. Check every measure on the trailer before you cut. Local law, the plate and a scale "
    "come first."
)
NOTHING = Sheet(
    "body",
    "The frame could not be worked out",
    notes=("Nothing of the frame is drawn. What broke off is said by: boxwright check",),
)


def sheets_of(
    rig: Rig,
    slot: Slot | None,
    findings: tuple[Finding, ...],
    lines: tuple[OrderLine, ...],
    words: str,
    units: HeaderUnits,
) -> tuple[Sheet, ...]:
    """Return every sheet; ``findings`` are those of all chapters, ``words`` say which stage and load they are of."""
    walk = towing.sheets(findings, f"{words}, load {slot.load}" if slot is not None else words)
    if slot is None or slot.frame is None or slot.box is None:
        return (NOTHING, *walk)
    framing = rig.frame.framing
    order = framing.order if framing is not None else None
    checked = expected(rig.trailer, slot.frame, rig.frame.readings, rig.measured)
    deck = framing.floor.deck if framing is not None and framing.floor is not None else ""
    drawn = Drawn(words, slot.frame, slot.box, units, findings, order, lines, checked, deck=deck)
    return (*frame.sheets(drawn), *plan_sheets(rig, slot, units), *chart_sheets(rig, slot, (), units), *walk)


def title_of(rig: Rig, words: str, on: str, units: HeaderUnits) -> TitleBlock:
    """Return what stands at the foot of every page."""
    ruler = Ruler(units)
    framing = rig.frame.framing
    order = framing.order if framing is not None else None
    named = "inches, to a sixteenth" if ruler.is_imperial else "millimetres"
    revision = order.revision if order is not None else ""
    return TitleBlock(rig.header.name or "this rig", words, revision, on, named, (CAUTION,), ruler.is_imperial)
