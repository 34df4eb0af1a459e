"""One thing in hand: its fields for the number boxes, where it is while a hand holds it, and how numbers come about."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import asdict
from typing import Any

from boxwright.book import worded
from boxwright.book.answer import slots_for_each_use
from boxwright.book.line_numbers import with_lines
from boxwright.book.reasons import reason_of
from boxwright.book.traced import calls_of
from boxwright.disciplines.layout.near import clearances
from boxwright.finding import Finding
from boxwright.rig.splice import tree_at
from boxwright.study.working import NoSuchNumber, working
from boxwright.units import show
from boxwright.web import contract
from boxwright.web.figures import accepted_findings, asked_slot, slot_findings, slot_said_in, vehicle_of, wrong_at
from boxwright.web.gestures import Refused, free_name, in_words
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
FROM_ANOTHER = {
    "x": "behind the front edge of {other}, to its own front edge; +-4 is 4 ahead of it",
    "side": "right of the left edge of {other}, to its own left edge; +-4 is 4 left of it",
    "z": "its underside above the underside of {other}; +-4 is 4 below it",
}
"""What a place with a plus means, of a thing that stands in or on another."""
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
MOST_NEAR = 3
"""How many gaps are told of a thing in hand."""
ROOM = {"room.front": "the front wall", "room.rear": "the rear wall", "room.left": "the left wall",
        "room.right": "the right wall", "room.ceiling": "the ceiling"}  # fmt: skip


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
    other = next((one.words.inside or one.words.rides_on for one in rig.parts if one.of == of), "")
    fields = []
    for key in keys:
        text = tree_at(document, f"{of}.{key}")
        if isinstance(text, str) or key in {"x", "side", "z", "weight"}:
            written = text if isinstance(text, str) else ""
            is_from_other = other != "" and key in FROM_ANOTHER and written.startswith("+")
            explains = FROM_ANOTHER[key].format(other=other) if is_from_other else EXPLAINED[key]
            fields.append(contract.ThingField(path=f"{of}.{key}", label=key, text=written,
                                              explains=explains, is_length=key in LENGTHS,
                                              wrong=wrong_at(session.reading, f"{of}.{key}")))  # fmt: skip
    boxes = {one.path for one in fields if one.wrong}
    says = [one.says for one in session.reading.problems if one.path.startswith(of) and one.path not in boxes]
    return contract.Thing(of=of, name=item.name, line=document.spot(of).line, fields=fields, says=says,
                          of_a_copy=free_name(document, item.section, item.name))  # fmt: skip


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
    slot = asked_slot(seen)
    if item is None or slot is None or slot.layout is None:
        return found
    for number, one in enumerate(clearances(slot.layout, of, rig.surfaces, MOST_NEAR)):
        far = one.metre.best
        if far >= NEAR:
            break
        name = ROOM.get(one.to) or one.to.partition("[")[2].removesuffix("]")
        word = f"into {name}" if far < 0.0 else f"to {name}"
        label, key = ("Nearest", "near") if number == 0 else ("and", f"near-{number + 1}")
        found.append(contract.Figure(key=key, label=label, text=show(abs(far), "m", units, cuts=True), unit=word,
                                     kind="advice" if far < 0.0 else None))  # fmt: skip
    return found


def worked(seen: Seen, number: str) -> list[contract.Working]:
    """Return how a shown number comes about, step by step; empty where no working is known for it."""
    first = asked_slot(seen)
    slots = (*((first,) if first is not None else ()), *slots_for_each_use(seen.study, "sleep", seen.slot.load))
    for slot in slots if number else ():
        with suppress(NoSuchNumber):
            lines = working(slot, number, seen.reading.rig.header.units)
            return _steps(with_lines(lines, seen.reading.document))
    return []


def reason(session: Session, seen: Seen, code: str, where: str, says: str) -> contract.Reason | None:
    """Return how a finding was reached, None where it is not said any more."""
    every = (*slot_findings(seen), *accepted_findings(seen))
    one = next((one for one in every if (one.code, one.where, in_words_of(one)) == (code, where, says)), None)
    slot = slot_said_in(one, seen) if one is not None else None
    if one is None or slot is None:
        return None
    reading, units = seen.reading, seen.reading.rig.header.units
    calls = calls_of(reading.rig, session.today, slot, vehicle_of(seen))
    found = reason_of(one, slot, reading.document, calls, units, units)
    return contract.Reason.model_validate(_labelled(asdict(found)))


def in_words_of(finding: Finding) -> str:
    """Return the sentence of a finding as the page has it."""
    return worded.in_words(finding.says)


def _labelled(found: dict[str, Any]) -> dict[str, Any]:
    """Return a reason as its message: pairs become texts under their labels."""
    for one in found["written"]:
        one["name"] = worded.said(one["name"])
    for one in (given for step in found["steps"] for given in step["given"]):
        one["name"] = worded.in_words(one["name"])
    pairs = {key: [{"label": label, "text": text} for label, text in found[key]] for key in ("rule", "compared")}
    return {**{key: found[key] for key in ("written", "steps", "sources")}, **pairs}


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
