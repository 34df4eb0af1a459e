"""The page of ``boxwright working``: the formula of a number, the numbers put in, the result, the source.

For a finding's code it is how each finding of that code was reached.
"""

from __future__ import annotations

from boxwright.book.reasons import in_print, reason_of
from boxwright.book.slow_workings import slow_workings
from boxwright.book.traced import calls_of
from boxwright.cli.asked import Answered, slot_of
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, plain, wrapped
from boxwright.study.slots import Slot
from boxwright.study.working import numbers, working

FURTHER = "    "
"""How much deeper the further lines of a long formula stand."""


def page(answer: Answered, number: str, columns: int) -> list[Line]:
    """Return the working of one number of the slot asked for."""
    slot = slot_of(answer, answer.use)
    if slot is None:
        raise NothingAsked(f"no load state of this file is judged for {answer.use}, so there is no number to work out")
    if "/" in number:
        texts = _reasons(answer, slot, number)
    else:
        slow = slow_workings(answer.reading.rig, slot)
        must_be_one_of(number, [*numbers(slot), *slow], "number with a working")
        texts = list(slow[number](answer.units) if number in slow else working(slot, number, answer.units))
    when = "today as ticked" if slot.is_ticked else "as planned"
    title = f"{number}: {answer.reading.rig.header.name}, {when}, stage {slot.stage}, load {slot.load}"
    lines = [*(plain(piece, "head") for piece in wrapped(title, columns)), ()]
    for text in texts:
        if not text:
            lines += [()] if lines[-1] else []
            continue
        bare = text.lstrip(" ")
        indent = " " * (len(text) - len(bare))
        first, *rest = wrapped(bare, columns - len(indent) - len(FURTHER))
        lines += [plain(indent + first), *(plain(indent + FURTHER + piece) for piece in rest)]
        if bare.startswith("("):  # the source closes a step
            lines.append(())
    return lines[:-1] if lines[-1] == () else lines


def _reasons(answer: Answered, slot: Slot, code: str) -> list[str]:
    """Return how each finding of a code was reached in a slot, line by line, its sentence first."""
    said = (*slot.findings, *slot.accepted)
    must_be_one_of(code, list(dict.fromkeys(one.code for one in said)), "finding of this load state")
    reading, header = answer.reading, answer.reading.rig.header
    calls = calls_of(reading.rig, answer.study.judged_on, slot, answer.question.vehicle, answer.study.judged_on)
    texts: list[str] = []
    for one in said:
        if one.code == code:
            reason = reason_of(one, slot, reading.document, calls, answer.units, header.units)
            texts += [one.says, "", *in_print(reason), ""]
    return texts
