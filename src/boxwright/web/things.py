"""One thing in hand: its fields for the number boxes, where it is while a hand holds it, and how numbers come about."""

from __future__ import annotations

from math import hypot, isfinite

from boxwright.disciplines.layout.drawn import corners_of
from boxwright.rig.rig import Item
from boxwright.rig.splice import tree_at
from boxwright.study.working import NoSuchNumber, working
from boxwright.units import show
from boxwright.web import contract
from boxwright.web.figures import asked_slot
from boxwright.web.gestures import Refused, in_words
from boxwright.web.session import Seen, Session

EXPLAINED = {
    "name": "a word of your own, such as bed or side-door; it is called so everywhere",
    "wall": "front, rear, left, right, roof or floor",
    "x": "behind the front stud face, to its front edge",
    "side": "across: left+6 is 6 from the left wall, right-6 from the right one",
    "z": "underside above the deck; floor+12, ceiling-2",
    "size": "length along the trailer x width x height",
    "width": "of the rough opening, along the wall",
    "height": "of the rough opening",
    "weight": "of the whole line; 45 +-5 where you are not sure, unknown where you do not know",
    "stage": "the stage it goes in at",
    "done": "yes once it is in, part where it is half done",
}
OF_A_NEW = {
    "parts": ("name", "x", "side", "z", "size", "weight", "stage"),
    "openings": ("name", "wall", "x", "z", "width", "height", "stage"),
}
"""What is asked of a thing that is put in, by its section of the file."""
OF_A_PART = ("x", "side", "z", "size", "weight", "stage", "done")
OF_AN_OPENING = ("x", "side", "z", "width", "height", "stage")
LENGTHS = frozenset({"x", "side", "z", "width", "height"})
NEAR = 1.0
"""How far (m) a neighbour may be to be told of while a thing is held."""


def thing(session: Session, of: str) -> contract.Thing:
    """Return what is known of a part or an opening; refuses where there is none.

    For a whole section it is what is asked of a thing that is put in.
    """
    document, rig = session.document, session.reading.rig
    if of in OF_A_NEW:
        return _asked(session, of)
    item = next((one for one in (*rig.parts, *rig.openings) if one.of == of), None)
    if item is None:
        raise Refused(f'there is no "{of}" in this file')
    keys = OF_A_PART if item.section == "parts" else OF_AN_OPENING
    fields = []
    for key in keys:
        text = tree_at(document, f"{of}.{key}")
        if isinstance(text, str) or key in {"x", "side", "z", "weight"}:
            fields.append(contract.ThingField(path=f"{of}.{key}", label=key, text=text if isinstance(text, str) else "",
                                              explains=EXPLAINED[key], is_length=key in LENGTHS))  # fmt: skip
    says = [one.says for one in session.reading.problems if one.path.startswith(of)]
    return contract.Thing(of=of, name=item.name, line=document.spot(of).line, fields=fields, says=says)


def _asked(session: Session, section: str) -> contract.Thing:
    header = session.reading.rig.header
    stage = next((one.name for one in session.reading.rig.stages_in_order if one.index == header.stage_today), "")
    begun = {"stage": stage} | ({"z": "floor"} if section == "parts" else {})
    fields = [
        contract.ThingField(path=key, label=key, text=begun.get(key, ""), explains=EXPLAINED[key],
                            is_length=key in LENGTHS)
        for key in OF_A_NEW[section]
    ]  # fmt: skip
    return contract.Thing(of=section, name="", line=None, fields=fields, says=[])


def held(seen: Seen, of: str, shift: tuple[float, float, float]) -> list[contract.Figure]:
    """Return where a thing is while a hand holds it: how far it went, and what it is nearest to."""
    rig = seen.reading.rig
    units = rig.header.units
    found = [contract.Figure(key="moved", label="Moved", text=in_words(shift, units), unit="")]
    item = next((one for one in rig.parts if one.of == of), None)
    near = _nearest(item, seen) if item is not None else None
    if near is not None:
        name, far = near
        text = show(abs(far), "m", units, cuts=True) if isfinite(far) else "not known"
        word = f"into {name}" if far < 0.0 else f"to {name}"
        found.append(contract.Figure(key="near", label="Nearest", text=text, unit=word,
                                     kind="advice" if far < 0.0 else None))  # fmt: skip
    return found


def _nearest(item: Item, seen: Seen) -> tuple[str, float] | None:
    """Return what stands nearest in plan at the same height, and the gap (m); below zero they overlap."""
    slot = asked_slot(seen)
    own = corners_of(item.place)
    if slot is None or not own:
        return None
    best: tuple[str, float] | None = None
    for other in slot.standing.frames:
        corners = corners_of(other.place)
        related = {item.words.inside, item.words.rides_on}
        if other.of == item.of or not corners or not other.of.startswith("parts[") or other.name in related:
            continue
        if _gap(item.place.z.best, item.place.size[2], other.place.z.best, other.place.size[2]) >= 0.0:
            continue
        gaps = [max(corners[0][axis] - own[2][axis], own[0][axis] - corners[2][axis]) for axis in (0, 1)]
        far = hypot(*(max(gap, 0.0) for gap in gaps)) if max(gaps) > 0.0 else max(gaps)
        if far < NEAR and (best is None or far < best[1]):
            best = (other.name, far)
    return best


def _gap(middle: float, size: float, other: float, other_size: float) -> float:
    """Return the clear distance of two stretches given by middle and size; below zero they overlap."""
    return abs(middle - other) - (size + other_size) / 2.0


def worked(seen: Seen, number: str) -> list[contract.Working]:
    """Return how a shown number comes about, step by step; empty where no working is known for it."""
    slot = asked_slot(seen)
    if slot is None or not number:
        return []
    try:
        lines = working(slot, number, seen.reading.rig.header.units)
    except NoSuchNumber:
        return []
    return _steps(lines)


def _steps(lines: tuple[str, ...]) -> list[contract.Working]:
    """Return printed workings taken apart: a step ends with its source in brackets."""
    found: list[contract.Working] = []
    block: list[str] = []
    for line in lines:
        block.append(line)
        if line.startswith("  (") and line.endswith(")"):
            formula, *rest, result, source = block
            found.append(contract.Working(formula=formula, put_in="\n".join(one.strip() for one in rest),
                                          result=result.strip(), source=source.strip()[1:-1]))  # fmt: skip
            block = []
    return found
