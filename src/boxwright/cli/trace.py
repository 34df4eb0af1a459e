"""The page of ``boxwright trace``: which steps ran for an answer, how often, for how long, and what broke off."""

from __future__ import annotations

from boxwright.cli.asked import Answered
from boxwright.cli.screen import Line, Span, aligned, hanging, plain
from boxwright.study.trace import broken_off, traced


def page(answer: Answered, columns: int) -> list[Line]:
    """Return one line for each step that ran, and each fault with its traceback."""
    steps = traced(answer.once)
    rows = [["step", "runs", "ms"], ["read the file", "1", _milliseconds(answer.seconds_reading)]]
    rows += [[step.step, str(step.runs), _milliseconds(step.seconds)] for step in steps]
    total = answer.seconds_reading + sum(step.seconds for step in steps)
    rows.append(["in all", str(1 + sum(step.runs for step in steps)), _milliseconds(total)])
    lines = [plain(f"{len(answer.study.slots)} slots (stage, load state, use) worked out", "head"), ()]
    lines += [plain(text) for text in aligned(rows, right=(1, 2))]
    for fault in broken_off(answer.study):
        lines += [(), *hanging((Span(f"{fault.step} broke off: ", "stop"),), fault.says, columns)]
        lines += hanging((Span("  in "),), "; ".join(fault.slots), columns)
        lines += [plain("  " + text) for text in fault.traceback.splitlines()]
    return lines


def _milliseconds(seconds: float) -> str:
    return f"{seconds * 1000.0:.1f}"
