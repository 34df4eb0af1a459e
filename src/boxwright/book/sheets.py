"""Every sheet of a rig in one slot, in the order of the chapters, and what stands at the foot of each page."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import partial

from boxwright.book import changeover_card, hot_day, wall_sections, year
from boxwright.book.charts import chart_sheets
from boxwright.book.plan import plan_sheets
from boxwright.book.poses import at_night_of, pose_sheets
from boxwright.book.worded import worded
from boxwright.disciplines import air, frame, heat, safety, towing, weight
from boxwright.disciplines.air.sheets import humidity_charts
from boxwright.disciplines.frame.drawn import Drawn, Ruler
from boxwright.disciplines.frame.ordering import OrderLine
from boxwright.disciplines.frame.receiving import expected
from boxwright.disciplines.heat.charts import Damp
from boxwright.drawing import Sheet
from boxwright.drawing.paper import TitleBlock
from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.study.standing import paths
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


@dataclass(frozen=True, slots=True)
class Printing:
    """What sheets are drawn of: ``findings`` are those of all chapters, ``words`` say which stage and load they are of.

    ``lines`` are those of the order sheet with the builder's reply beside them. ``night`` is the slot somebody sleeps
    in, where that is another: how warm, damp and airy it is is drawn of that one.
    """

    rig: Rig
    slot: Slot | None
    findings: tuple[Finding, ...]
    lines: tuple[OrderLine, ...]
    words: str
    units: HeaderUnits
    night: Slot | None = None


def _of_frame(asked: Printing) -> tuple[Sheet, ...]:
    rig, slot = asked.rig, asked.slot
    if slot is None or slot.frame is None or slot.box is None:
        return (NOTHING,)
    framing = rig.frame.framing
    order = framing.order if framing is not None else None
    checked = expected(rig.trailer, slot.frame, rig.frame.readings, rig.measured)
    deck = framing.floor.deck if framing is not None and framing.floor is not None else ""
    return frame.sheets(
        Drawn(asked.words, slot.frame, slot.box, asked.units, asked.findings, order, asked.lines, checked, deck=deck)
    )


def _of_layout(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.slot
    if slot is None or slot.frame is None or slot.box is None:
        return ()
    return (*plan_sheets(asked.rig, slot, asked.units), *pose_sheets(asked.rig, slot, asked.units))


def _of_weight(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.slot
    if slot is None or slot.weight is None:
        return ()
    title = f"Weight and balance, load {slot.load}"
    return (Sheet("balance", title, grids=weight.sheets(slot.weight, asked.units), stands_up=True),)


def _charts(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.slot
    if slot is None or slot.frame is None or slot.box is None:
        return ()
    return chart_sheets(asked.rig, slot, (), asked.units)


def _of_towing(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.slot
    return towing.sheets(asked.findings, f"{asked.words}, load {slot.load}" if slot is not None else asked.words)


def _of_safety(asked: Printing) -> tuple[Sheet, ...]:
    rig, slot = asked.rig, asked.slot
    if slot is None or slot.safety is None:
        return ()
    result = replace(slot.safety, exits=at_night_of(rig, slot))
    there = frozenset(paths(slot.standing))
    return safety.sheets(result, rig.header.countries, rig.safety.shut_offs, asked.units, there=there)


def _of_heat(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.night or asked.slot
    if slot is None or slot.heat is None:
        return ()
    return heat.sheets(slot.heat, asked.units, damp_of(slot.air) if slot.air is not None else ())


def damp_of(aired: air.Result) -> tuple[Damp, ...]:
    """Return the charts of the nights' humidity, to stand among those of their warmth."""
    return tuple(Damp(place, heater, chart) for place, heater, chart in humidity_charts(aired))


def _of_air(asked: Printing) -> tuple[Sheet, ...]:
    slot = asked.night or asked.slot
    return air.sheets(slot.air, asked.units) if slot is not None and slot.air is not None else ()


IN_ORDER: tuple[tuple[str, Callable[[Printing], tuple[Sheet, ...]]], ...] = (
    ("frame", _of_frame),
    ("layout", _of_layout),
    ("weight", _of_weight),
    ("", _charts),
    ("towing", _of_towing),
    ("heat", _of_heat),
    ("air", _of_air),
    ("safety", _of_safety),
)
"""What draws the sheets of each chapter, in the order they are printed; a chapter's screen shows the same."""


def _changeover(asked: Printing) -> tuple[Sheet, ...]:
    return changeover_card.changeover_sheets(asked.rig, asked.slot, asked.units)


def _section(name: str, asked: Printing) -> tuple[Sheet, ...]:
    return wall_sections.wall_section(name, asked.rig, asked.slot, asked.units)


def _hot_day(asked: Printing) -> tuple[Sheet, ...]:
    return hot_day.hot_day_sheets(asked.rig, asked.night or asked.slot, asked.units)


def _year(asked: Printing) -> tuple[Sheet, ...]:
    return year.year_sheets(asked.rig, asked.night or asked.slot, asked.units)


SLOW: dict[str, Callable[[Printing], tuple[Sheet, ...]]] = {
    changeover_card.NAME: _changeover,
    hot_day.NAME: _hot_day,
    year.NAME: _year,
    **{name: partial(_section, name) for name in wall_sections.NAMES},
}
"""Sheets that take a second or more, by name: drawn only where one is asked for by name, or all are printed."""

ONLY_BY_NAME = frozenset({hot_day.NAME, year.NAME, *wall_sections.NAMES})
"""Slow sheets that are not drawn with all the others: walls are mostly built alike, a hot day is for its season."""


def slow_titles(rig: Rig, slot: Slot | None) -> dict[str, str]:
    """Return the names and titles of the slow sheets there are in a slot; nothing of them is worked out."""
    found = {changeover_card.NAME: changeover_card.TITLE} if changeover_card.has_card(rig, slot) else {}
    has_room = slot is not None and slot.heat is not None and slot.heat.volume.known
    return found | ({year.NAME: year.TITLE} if has_room else {})


def sheets_of(
    rig: Rig,
    slot: Slot | None,
    findings: tuple[Finding, ...],
    lines: tuple[OrderLine, ...],
    words: str,
    units: HeaderUnits,
    night: Slot | None = None,
) -> tuple[Sheet, ...]:
    """Return every sheet of a rig in one slot; the words of `Printing` say what is handed over."""
    asked = Printing(rig, slot, findings, lines, words, units, night)
    return tuple(worded(sheet) for _, draw in IN_ORDER for sheet in draw(asked))


def slow_sheets(asked: Printing, names: Iterable[str]) -> tuple[Sheet, ...]:
    """Return those of the slow sheets that are asked for by name."""
    return tuple(worded(sheet) for name in names if name in SLOW for sheet in SLOW[name](asked))


def sheets_of_chapter(chapter: str, asked: Printing) -> tuple[Sheet, ...]:
    """Return the sheets of one chapter only; nothing of the others is drawn for it."""
    return tuple(sheet for name, draw in IN_ORDER if name == chapter for sheet in draw(asked))


def title_of(rig: Rig, words: str, on: str, units: HeaderUnits) -> TitleBlock:
    """Return what stands at the foot of every page."""
    ruler = Ruler(units)
    framing = rig.frame.framing
    order = framing.order if framing is not None else None
    named = "inches, to a sixteenth" if ruler.is_imperial else "millimetres"
    revision = order.revision if order is not None else ""
    return TitleBlock(rig.header.name or "this rig", words, revision, on, named, (CAUTION,), ruler.is_imperial)
