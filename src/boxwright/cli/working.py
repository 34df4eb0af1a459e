"""The page of ``boxwright working``: the formula of a number, the numbers put in, the result, the source."""

from __future__ import annotations

from boxwright.cli.asked import Answered, slot_of
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, plain, wrapped
from boxwright.study.working import numbers, working

FURTHER = "    "
"""How much deeper the further lines of a long formula stand."""


def page(answer: Answered, number: str, columns: int) -> list[Line]:
    """Return the working of one number of the slot asked for."""
    slot = slot_of(answer, answer.use)
    if slot is None:
        raise NothingAsked(f"no load state of this file is judged for {answer.use}, so there is no number to work out")
    must_be_one_of(number, list(numbers(slot)), "number with a working")
    when = "today as ticked" if slot.is_ticked else "as planned"
    title = f"{number}: {answer.reading.rig.header.name}, {when}, stage {slot.stage}, load {slot.load}"
    lines = [*(plain(piece, "head") for piece in wrapped(title, columns)), ()]
    for text in working(slot, number, answer.units):
        bare = text.lstrip(" ")
        indent = " " * (len(text) - len(bare))
        first, *rest = wrapped(bare, columns - len(indent) - len(FURTHER))
        lines += [plain(indent + first), *(plain(indent + FURTHER + piece) for piece in rest)]
        if bare.startswith("("):  # the source closes a step
            lines.append(())
    return lines[:-1]
