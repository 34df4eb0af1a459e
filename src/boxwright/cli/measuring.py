"""``measured``: a reading entered, what it differs by, and what it moves; older readings stay as they are."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from boxwright.book.numbers import mass, named
from boxwright.book.readings import STAGED, Typed, put_down, typed_readings, with_rest
from boxwright.book.starter import NotUnderstood
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.compared import compared_sentences
from boxwright.cli.edits import Edited, Written
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, clean, hanging, plain
from boxwright.cli.trying import data_of, kept, tried_page
from boxwright.cli.worded import at_the_shell
from boxwright.disciplines.frame.parts import Framing, Row
from boxwright.records import dataclass
from boxwright.rig.compose import Reading
from boxwright.rig.document import Document, Tree
from boxwright.rig.rig import Item, Rig
from boxwright.study.slots import study
from boxwright.units import Band, CannotRead, HeaderUnits, read_band, show

ROWS = {"studs": "stud", "bows": "bow", "cross-members": "cross-member"}
EDGE_AXES = {"front": 0, "left": 1, "bottom": 2, "rear": 0, "right": 1, "top": 2}
FAR_EDGES = ("rear", "right", "top")
ADOPTED_EDGES = {"front": "x", "bottom": "z"}
ADOPTED_MEASURES = ("length", "width", "height")
SAME = 1e-6
"""Two values (m, kg) this close are one."""


@dataclass(frozen=True, slots=True)
class Told:
    """What was typed beside the reading itself, word for word; an empty text where nothing was."""

    instrument: str = ""
    within: str = ""
    stage: str = ""
    load: str = ""
    note: str = ""
    photo: str = ""


def measured(
    question: Question, words: Sequence[str], told: Told, is_try: bool, today: date, columns: int
) -> tuple[list[Line], Answered]:
    """Enter a reading into the file (or show only what it would do) and return the page and the answer after it."""
    data = data_of(question, is_try)
    before = answered(question, today)
    entries = entries_of(before, words, told)
    changed = entered(before.reading, entries)
    if is_try:
        lines, after = tried_page(before, changed, today, columns)
    else:
        lines, after = kept(question, before, changed, data, today, columns)
    lines += _differences(before, entries, columns)
    return [*lines, *_beside_the_plan(after, changed, entries, today, columns)], after


def entries_of(before: Answered, words: Sequence[str], told: Told) -> tuple[Typed, ...]:
    """Return the readings of a command line, complete: with their day, instrument and stage."""
    rig, day = before.reading.rig, before.study.judged_on
    stage = told.stage
    try:
        typed = typed_readings(words, rig)
    except NotUnderstood as reason:
        raise NothingAsked(clean(str(reason))) from None
    if not stage and rig.stages_in_order and any(one.kind in STAGED for one in typed):
        if before.question.on:
            raise NothingAsked(f"say at which stage it was weighed on {day}: --stage {rig.stages_in_order[0].name}")
        stage = rig.stages_in_order[rig.header.stage_today].name
    rest = {"date": day.isoformat(), "with": told.instrument, "within": told.within, "stage": stage,
            "load": told.load, "note": told.note, "photo": told.photo}  # fmt: skip
    return tuple(with_rest(one, rest) for one in typed)


def entered(reading: Reading, entries: Sequence[Typed]) -> Edited:
    """Return the rig with new entries under ``measured``; an entry that is there already gets no other value."""
    try:
        after, paths = put_down(reading, entries)
    except NotUnderstood as reason:
        raise NothingAsked(clean(str(reason))) from None
    written = zip(paths, entries, strict=True)
    return Edited(after, tuple(Written(path, None, f"{one.kind} {one.subject}".strip()) for path, one in written))


def _differences(before: Answered, entries: Sequence[Typed], columns: int) -> list[Line]:
    """Return each value beside what was held before, and how the owner goes on with it."""
    lines: list[Line] = []
    rig, units = before.reading.rig, before.units
    for one in entries:
        for key, text in one.values:
            for sentence in _sentences(before.reading, one, key, text, units):
                lines += hanging(plain("  "), sentence, columns)
        offer = adoption(rig, one)
        if offer:
            says = "nothing else takes this value; to go on with it: boxwright set "
            lines += hanging(plain("  "), f"{says}{clean(before.question.path)} {offer}", columns)
    return [(), plain("READ, BESIDE WHAT WAS HELD BEFORE", "head"), *lines] if lines else []


def _sentences(reading: Reading, one: Typed, key: str, text: str, units: HeaderUnits) -> Iterator[str]:
    """Yield what one value of a reading says against the plan and against the reading before it."""
    if one.kind in ("moisture", "plank", "ticket", "weighbridge", "scale"):
        return
    rig, quantity = reading.rig, "mass" if one.kind == "part" else "length"
    what = _what(one, key)
    try:
        read = read_band(text.removesuffix(" each"), quantity, rig.header.units).best
    except CannotRead:
        yield f"{what}: {clean(text)}"
        return
    shown = show(read, quantity, units, cuts=quantity == "length")
    held = planned(rig, one, key)
    if held is not None and held.known:
        yield f"{what}: {shown}; held to be {_amount(held, quantity, units)}{_apart(read - held.best, one, key, units)}"
    else:
        yield f"{what}: {shown}; nothing was written of it"
    earlier = earlier_reading(reading.document, one, key)
    if earlier is not None:
        name, on, old = earlier
        yield f"  {name} ({on}) read {clean(old)}; both are kept, the newer one counts"


def _what(one: Typed, key: str) -> str:
    if one.kind in ROWS:
        where = f" {one.subject}" if one.kind == "studs" else ""
        return f"{ROWS[one.kind]} {key}{where}"
    return {"part": key, "opening": f"{one.subject} {key}"}.get(one.kind, f"{one.subject} {key.replace('-', ' ')}")


def _amount(band: Band, quantity: str, units: HeaderUnits) -> str:
    return mass(band, units) if quantity == "mass" else show(band.best, quantity, units, cuts=True)


def _apart(by: float, one: Typed, key: str, units: HeaderUnits) -> str:
    """Return how far a value is from what was held, in words."""
    quantity = "mass" if one.kind == "part" else "length"
    amount = show(abs(by), quantity, units, cuts=quantity == "length")
    if abs(by) <= SAME:
        return ", as read"
    ways = ("heavier", "lighter") if one.kind == "part" else ("more", "less")
    if one.kind in ROWS or (one.kind == "opening" and key in EDGE_AXES):
        axis = EDGE_AXES.get(key, 1 if one.subject in ("front", "rear") else 0)
        ways = (("rearward", "forward"), ("to the right", "to the left"), ("up", "down"))[axis]
    return f": {amount} {ways[0] if by > 0 else ways[1]}"


def planned(rig: Rig, one: Typed, key: str) -> Band | None:
    """Return what the plan holds of a value that was read; None where nothing is written of it."""
    if one.kind == "part":
        item = next((item for item in rig.parts if item.name == key), None)
        return item.mass if item is not None else None
    if one.kind in ROWS:
        return _planned_place(rig.frame.framing, one.kind, int(key))
    if one.kind == "opening":
        item = next((item for item in rig.openings if item.name == one.subject), None)
        return _planned_edge(item, key, rig.surfaces.studs_left) if item is not None else None
    if one.kind == "body":
        body = rig.trailer.body if one.subject == "inside" else rig.trailer.outside
        held = getattr(body, key.partition("-")[0], None)
        return held if isinstance(held, Band) else None
    return None


def _planned_place(framing: Framing | None, kind: str, number: int) -> Band | None:
    row = getattr(framing, kind, None) if framing is not None else None
    if not isinstance(row, Row) or row.every is None or not row.every.known:
        return None
    first = row.first.best if row.first is not None else 0.0
    place = first + number * row.every.best
    return Band(place, place, place)


def _planned_edge(item: Item, key: str, left: float) -> Band | None:
    """Return an edge as planned: behind the front wall, right of the left wall (at ``left``), above the deck."""
    if key in EDGE_AXES:
        axis = EDGE_AXES[key]
        middle = (item.place.x, item.place.y, item.place.z)[axis]
        half = item.place.size[axis] / 2.0
        by = (half if key in FAR_EDGES else -half) - (left if axis == 1 else 0.0)
        return Band(middle.best + by, middle.low + by, middle.high + by, middle.known)
    held = getattr(item.own, key, None)
    return held if isinstance(held, Band) else None


def earlier_reading(document: Document, one: Typed, key: str) -> tuple[str, str, str] | None:
    """Return name, day and text of the newest entry that has a reading of the same thing; None where there is none."""
    found: list[tuple[str, str, str]] = []
    entries = document.tree.get("measured")
    for name, tree in entries.items() if isinstance(entries, Mapping) else ():
        if isinstance(tree, Mapping):
            text = _same(tree, one, key)
            if text is not None:
                found.append((str(tree.get("date", "without a date")), name, text))
    if not found:
        return None
    day, name, text = max(found, key=lambda entry: entry[0] if re.match(r"\d{4}", entry[0]) else "")
    return name, day, text


def _same(tree: Mapping[str, Tree], one: Typed, key: str) -> str | None:
    """Return what an entry reads of a thing."""
    if one.kind == "part":
        text = tree.get("weight") if tree.get("part") == key else None
    else:
        word = one.kind.replace("-", "_")
        values = tree.get("values") if tree.get(word) == one.subject else None
        text = values.get(key) if isinstance(values, Mapping) else None
    return text if isinstance(text, str) else None


def adoption(rig: Rig, one: Typed) -> str:
    """Return the edits with which the owner goes on with a reading, where it differs and the rig does not take it."""
    if one.kind not in ("part", "opening", "body"):
        return ""
    differing = tuple((key, text) for key, text in one.values if _differs(rig, one, key, text))
    if one.kind == "part" and differing:
        item = next((item for item in rig.parts if item.name == one.subject), None)
        weight = item.words.weight if item is not None else None
        if item is None or (item.words.each is None and (weight is None or not weight.value.known)):
            return ""
        return f"{at_the_shell(f'{one.subject}.weight={differing[0][1]}')} {at_the_shell(f'{one.subject}.how=weighed')}"
    if one.kind == "opening":
        return " ".join(at_the_shell(f"{one.subject}.as_built.{ADOPTED_EDGES[key]}={text}")
                        for key, text in differing if key in ADOPTED_EDGES)  # fmt: skip
    if one.kind == "body" and one.subject == "inside":
        return " ".join(at_the_shell(f"trailer.body.{key}={text}") for key, text in differing
                        if key in ADOPTED_MEASURES)  # fmt: skip
    return ""


def _differs(rig: Rig, one: Typed, key: str, text: str) -> bool:
    held = planned(rig, one, key)
    read = read_band(text.removesuffix(" each"), "mass" if one.kind == "part" else "length", rig.header.units)
    return held is None or not held.known or abs(read.best - held.best) > SAME


def _beside_the_plan(
    after: Answered, changed: Edited, entries: Sequence[Typed], today: date, columns: int
) -> list[Line]:
    """Return what the scale says beside what is worked out for the stage it was read at."""
    rig, sentences = after.reading.rig, dict[str, None]()
    names = tuple(f"{named(one.path)}:" for one in changed.written)
    for stage in {rig.stage_number(str(one.keys["stage"])) for one in entries if "stage" in one.keys}:
        found = study(rig, today, stage=stage, once=after.once, shown_in=after.units, judged_on=after.study.judged_on)
        sentences |= dict.fromkeys(compared_sentences(found.slots, after.units))
    lines = [line for one in sentences if one.startswith(names) for line in hanging(plain("  "), one, columns)]
    return [(), plain("BESIDE WHAT WAS WORKED OUT", "head"), *lines] if lines else []
