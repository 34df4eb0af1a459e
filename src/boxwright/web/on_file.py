"""The tables of what is on file: the stages with what goes in and what is ticked, and the records beside the plan."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from boxwright.book.numbers import mass
from boxwright.book.worded import in_words, paths_in
from boxwright.disciplines import weight
from boxwright.disciplines.frame.receiving import Expected, expected
from boxwright.disciplines.stages.parts import StageFacet
from boxwright.disciplines.weight.sheets import SCALE
from boxwright.drawing import TO_TICK, Grid
from boxwright.finding import Answer
from boxwright.model.stage import Stage
from boxwright.rig.rig import Item, Rig
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.study.verdict import WORST_FIRST
from boxwright.units import HeaderUnits, show
from boxwright.web import contract
from boxwright.web.figures import NOT_KNOWN, asked_slot
from boxwright.web.session import Seen

NOTHING = 1e-4
"""A difference (m or kg) smaller than this is none."""
KINDS = {"wires": " (wire)", "openings": " (opening)"}
PENCIL = "____"
"""Stands in a cell that is written on with a pencil."""
AWAITED = "being worked out"
"""Stands where a stage is still being worked out."""


def tables_of(grids: Iterable[Grid]) -> list[contract.Table]:
    """Return grids as the page is told of them: things by their names, with the paths behind them.

    A box to tick and a line to write on are for a pencil: they are left to the printed sheet, which keeps the answer.
    """
    return [_told(grid) for grid in grids if grid.rows]


def _told(grid: Grid) -> contract.Table:
    names: dict[str, str] = {}
    for row in grid.rows:
        for cell in row:
            names |= paths_in(cell)
    is_for_paper = any(cell.startswith(TO_TICK) for row in grid.rows for cell in row)
    shown = [(row, of) for row, of in zip(grid.rows, grid.of, strict=True) if not any(PENCIL in cell for cell in row)]
    rows = [[in_words(cell).removeprefix(TO_TICK).lstrip() for cell in row] for row, _ in shown]
    kept = [at for at, column in enumerate(grid.columns) if column or any(row[at] for row in rows)]
    rows = [[row[at] for at in kept] for row in rows]
    title = f"{grid.title}; ticked on paper, the Book prints it" if is_for_paper else grid.title
    columns = [grid.columns[at] for at in kept]
    return contract.Table(title=title, columns=columns, rows=rows, of=[of for _, of in shown], names=names)


# ------------------------------------------------------------------ stages


def stages(seen: Seen, worked: Sequence[WorkedSlot]) -> list[contract.Table]:
    """Return the stages in their order; ``worked`` are the planned slots of the stages that are worked out so far."""
    rig = seen.reading.rig
    rows = [_stage(rig, stage, worked, seen.slot.load) for stage in rig.stages_in_order]
    if not rows:
        return []
    columns = ["Stage", "When", "What is done", "Hours", "After", "Goes in", "Ticked", "All up, as planned", "Tow"]
    of = [f"stages[{stage.name}]" for stage in rig.stages_in_order]
    return [contract.Table(title="In this order", columns=columns, rows=rows, of=of)]


def _stage(rig: Rig, stage: Stage, worked: Sequence[WorkedSlot], load: str) -> list[str]:
    today = rig.header.stage_today
    where = "today" if stage.index == today else "behind" if stage.index < today else "ahead"
    facet = next((one for name, one in rig.stages.stages if name == stage.name), StageFacet())
    hours = show(facet.hours.best, "h", rig.header.units) if facet.hours is not None and facet.hours.known else ""
    written = (*rig.parts, *rig.openings, *rig.wires)
    items = [one for one in written if one.marks.stage == stage.index and one.marks.planned]
    ticked = [one for one in items if _is_ticked(one)]
    own = [slot for slot in worked if slot.number == stage.index]
    named = [slot for slot in own if slot.load == load] or own
    heaviest = max((slot for slot in named if slot.weight is not None), key=_gross, default=None)
    all_up = "" if own else AWAITED
    if heaviest is not None and heaviest.weight is not None:
        all_up = mass(heaviest.weight.gross.band, rig.header.units)
        all_up = NOT_KNOWN if all_up.startswith("0 ") and not heaviest.weight.gross.band.known else all_up
    goes_in = [f"{one.name}{KINDS.get(one.section, '')}" for one in items]
    return [
        stage.name,
        where,
        stage.what,
        hours,
        ", ".join(facet.needs),
        ", ".join(goes_in),
        f"{len(ticked)} of {len(items)}" if items else "",
        all_up,
        _worst(named).capitalize() if own else AWAITED,
    ]


def _is_ticked(item: Item) -> bool:
    return item.marks.done.tick == "yes"


def _gross(slot: WorkedSlot) -> float:
    return slot.weight.gross.band.best if slot.weight is not None else 0.0


def _worst(slots: Sequence[WorkedSlot]) -> Answer:
    """Return the worst answer of slots: a stage is as good as its worst load state."""
    return min((slot.verdict.answer for slot in slots), key=WORST_FIRST.index, default="no")


# ------------------------------------------------------------------ records


def records(seen: Seen) -> list[contract.Table]:
    """Return what was weighed, taped and built, each beside its plan, and every entry as it was typed."""
    rig = seen.reading.rig
    found = [*_weighed(seen), *_taped(seen), *_built(rig)]
    tree = seen.reading.document.tree.get("measured")
    if isinstance(tree, Mapping) and tree:
        keys = ("date", "what", "with", "stage", "note")
        rows = [[name, *(_written(entry, key) for key in keys)] for name, entry in tree.items()]
        columns = ["Entry", "Date", "What", "With", "Stage", "Note"]
        of = [f"measured[{name}]" for name in tree]
        found.append(contract.Table(title="Every entry", columns=columns, rows=rows, of=of))
    return found


def _weighed(seen: Seen) -> list[contract.Table]:
    """Return each ticket beside the rig of its stage."""
    units = seen.reading.rig.header.units
    slots = [slot for slot in seen.study.slots if slot.weight is not None and slot.weight.compared]
    grids: dict[tuple[tuple[str, ...], ...], Grid] = {}
    for slot in slots:
        assert slot.weight is not None
        for grid in weight.sheets(slot.weight, units):
            if grid.title == SCALE:
                grids.setdefault(grid.rows, Grid(f"Weighed at stage {slot.stage}", grid.columns, grid.rows, grid.of))
    return tables_of(grids.values())


def _taped(seen: Seen) -> list[contract.Table]:
    """Return what was taped of the trailer, beside the order."""
    rig, slot = seen.reading.rig, asked_slot(seen)
    if slot is None or slot.frame is None:
        return []
    units = rig.header.units
    lines = expected(rig.trailer, slot.frame, rig.frame.readings, rig.measured)
    read = [(one, one.read) for one in lines if one.read is not None and one.read.known]
    rows = [
        [_what(one), _ordered(one, units), _shown(one, value.best, units), _differs(one, units), one.entry]
        for one, value in read
    ]
    columns = ["What", "As ordered", "As measured", "Off by", "Entry"]
    of = [one.entry or one.of for one, _ in read]
    return tables_of([Grid("Taped and weighed of the trailer", tuple(columns), tuple(map(tuple, rows)), tuple(of))])


def _what(one: Expected) -> str:
    return f"{one.group}: {one.what}"


def _ordered(one: Expected, units: HeaderUnits) -> str:
    if one.value is None or not one.value.known:
        return one.words or "not written"
    return _shown(one, one.value.best, units)


def _differs(one: Expected, units: HeaderUnits) -> str:
    if one.value is None or one.read is None or not one.value.known:
        return ""
    off = one.read.best - one.value.best
    text = _shown(one, abs(off), units) if abs(off) > NOTHING else "nothing"
    return f"{text}, more than it may" if one.passes is False else text


def _shown(one: Expected, value: float, units: HeaderUnits) -> str:
    return show(value, "mass" if one.quantity == "mass" else "length", units, cuts=one.quantity == "length")


def _built(rig: Rig) -> list[contract.Table]:
    """Return what came out otherwise than planned, key by key."""
    items = [one for one in (*rig.parts, *rig.openings) if one.words.as_built]
    rows = [[one.name, key, _plan_of(one, key), text] for one in items for key, text in one.words.as_built]
    of = [one.of for one in items for _ in one.words.as_built]
    columns = ["Thing", "", "As planned", "As built"]
    return [contract.Table(title="Built otherwise than planned", columns=columns, rows=rows, of=of)] if rows else []


def _plan_of(item: Item, key: str) -> str:
    value = getattr(item.words, key, "")
    return value if isinstance(value, str) else ""


def _written(entry: object, key: str) -> str:
    value = entry.get(key) if isinstance(entry, Mapping) else None
    return value if isinstance(value, str) else ""
