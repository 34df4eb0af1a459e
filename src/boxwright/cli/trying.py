"""``try`` and ``set``: what an edit changes, breaks and clears; and the same, written into the file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from difflib import SequenceMatcher

from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.changed import changed_page
from boxwright.cli.edits import Edited, Written, edited
from boxwright.cli.meaning import must_be_meant
from boxwright.cli.rig_file import NothingAsked, read_bytes
from boxwright.cli.saving import saved
from boxwright.cli.screen import Line, clean, hanging, plain
from boxwright.study.slots import Study, study


def tried(
    question: Question, typed: Sequence[str], today: date, columns: int, is_anyway: bool = False
) -> tuple[list[Line], Answered]:
    """Return the page of ``try`` and the answer after the edits; nothing is written."""
    data_of(question, is_try=True)
    before = answered(question, today)
    return tried_page(before, _meant(before, typed, is_anyway), today, columns)


def written(
    question: Question, typed: Sequence[str], today: date, columns: int, is_anyway: bool = False
) -> tuple[list[Line], Answered]:
    """Write edits into the file, and return the page of ``set`` and the answer after them."""
    data = data_of(question, is_try=False)
    before = answered(question, today)
    return kept(question, before, _meant(before, typed, is_anyway), data, today, columns)


def _meant(before: Answered, typed: Sequence[str], is_anyway: bool) -> Edited:
    """Return the edits carried out, with what is said of numbers that mean something else with them."""
    changed = edited(before.reading, typed)
    says = must_be_meant(before.reading, changed.reading, is_anyway)
    return replace(changed, says=(*says, *changed.says))


def data_of(question: Question, is_try: bool) -> bytes:
    """Return what stands in the file that is to be changed; a pipe cannot be."""
    if question.path == "-":
        way = "tried on a file, not on what comes through" if is_try else "written into a file, not into"
        raise NothingAsked(f"an edit is {way} a pipe; name the rig file")
    return read_bytes(question.path)


def tried_page(before: Answered, changed: Edited, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Return the page that shows what a change would do, and the answer after it; nothing is written."""
    after = answered_again(before, changed, today)
    name = before.reading.rig.header.name or "this rig"
    title = f"{name}, if this were written (the file is as it was):"
    sweeps = swept(before, today), swept(after, today)
    page = changed_page(title, changed.written, before, after, sweeps, columns)
    return [*page, *told_lines(changed, columns)], after


def told_lines(changed: Edited, columns: int) -> list[Line]:
    """Return what should be said of edits beside what they change: names left over, remarks that stay."""
    says = (*changed.dangling, *changed.says)
    return [(), *(line for one in says for line in hanging(plain("  "), clean(one), columns))] if says else []


def kept(
    question: Question, before: Answered, changed: Edited, data: bytes, today: date, columns: int
) -> tuple[list[Line], Answered]:
    """Save a changed text and return the page that shows its lines and what they change, and the answer after it."""
    document = before.reading.document
    if document.text.encode("utf-8", "surrogatepass") != data:
        raise NothingAsked(f'"{clean(question.path)}" is not plain UTF-8 text; save it as UTF-8 first')
    if changed.dangling:
        raise NothingAsked(f"nothing was written: {clean(changed.dangling[0])}")
    refuse_new_problems(before, changed)
    after = answered_again(before, changed, today)
    old = saved(question.path, data, changed.reading.document.text)
    lines = [plain(f"Written into {clean(question.path)}:", "head")]
    lines += line_changes(document.text, changed.reading.document.text, columns)
    lines += hanging(plain("  "), f"the text before is kept as {clean(old.name)}", columns, "dim")
    lines += told_lines(changed, columns)
    sweeps = swept(before, today), swept(after, today)
    page = changed_page("What it changes:", (), before, after, sweeps, columns)
    return [*lines, (), *page], after


def refuse_new_problems(before: Answered, changed: Edited) -> None:
    """Refuse an edit that would put something unreadable into the file; a new thing may still lack something."""
    new = {one.path for one in changed.written if one.is_new}
    had = {(one.path, one.says) for one in before.reading.problems}
    for one in changed.reading.problems:
        if one.kind == "problem" and (one.path, one.says) not in had and _is_about(one.path, changed.written):
            if one.path in new:
                continue
            raise NothingAsked(f"nothing was written: {clean(one.says)}")


def _is_about(path: str, written: Sequence[Written]) -> bool:
    return any(path.startswith(one.path) or one.path.startswith(path) for one in written)


def answered_again(before: Answered, changed: Edited, today: date) -> Answered:
    """Return the same question answered with the changed text."""
    vehicle = before.question.vehicle
    if vehicle and vehicle not in dict(changed.reading.rig.tow):
        raise NothingAsked(f'with this edit there is no tow vehicle "{clean(vehicle)}" any more; leave --vehicle out')
    found = study(
        changed.reading.rig,
        today,
        stage=before.study.number,
        once=before.once,
        shown_in=before.units,
        judged_on=before.study.judged_on,
        vehicle=vehicle,
    )
    return replace(before, reading=changed.reading, study=found)


def swept(answer: Answered, today: date) -> Study:
    """Return the study of every slot from today on; of the stage asked for where that is earlier."""
    rig = answer.reading.rig
    if answer.study.number < rig.header.stage_today:
        return answer.study
    vehicle = answer.question.vehicle
    return study(rig, today, once=answer.once, shown_in=answer.units, judged_on=answer.study.judged_on, vehicle=vehicle)


def line_changes(before: str, after: str, columns: int) -> list[Line]:
    """Return the lines of text that differ, old above new, with their numbers."""
    old, new = before.splitlines(), after.splitlines()
    lines: list[Line] = []
    for what, was_from, was_to, is_from, is_to in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if what != "equal":
            for index in range(was_from, was_to):
                lines += _marked(index + 1, "-", old[index], columns)
            for index in range(is_from, is_to):
                lines += _marked(index + 1, "+", new[index], columns)
    return lines


def _marked(number: int, mark: str, text: str, columns: int) -> list[Line]:
    return hanging(plain(f"  line {number} {mark} "), text.strip(), columns)
