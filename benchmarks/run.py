"""Print how long the things take that somebody waits for: medians, and ratios to a yardstick.

The yardstick is the time of 100,000 square roots on the same machine at the same moment; a ratio moves less than a
time when another machine runs it. Nothing here fails: tests assert counts, these numbers are looked at.

Usage: python benchmarks/run.py [--repeats 30]
"""

from __future__ import annotations

import argparse
import gc
import os
import subprocess
import sys
import time
from collections.abc import Callable
from datetime import date
from itertools import product
from math import sqrt
from pathlib import Path
from statistics import median
from typing import NamedTuple

from boxwright.cli.asked import Question, answered
from boxwright.cli.drawing_files import all_sheets
from boxwright.cli.run import OBJECTS_BEFORE_COLLECTING
from boxwright.disciplines import frame
from boxwright.disciplines.frame.shell import bones_of, hung_on, raised
from boxwright.drawing.layout import pages_of
from boxwright.drawing.page import Page
from boxwright.drawing.paper import PAPERS
from boxwright.finding import Use
from boxwright.render.extra import MissingExtra
from boxwright.render.pdf import pdf_of
from boxwright.render.svg import svg_of
from boxwright.rig.compose import Composer
from boxwright.rig.document import Document
from boxwright.rig.read import edited, read_document
from boxwright.study.arranged import Row as Limit
from boxwright.study.arranged import arranged
from boxwright.study.bench import Bench
from boxwright.study.once import Once
from boxwright.study.packing import least_effort
from boxwright.study.remedy import remedies
from boxwright.study.slots import study
from boxwright.web.contract import Slot as Looked
from boxwright.web.figures import numbers_of
from boxwright.web.session import Session

ROOT = Path(__file__).resolve().parents[1]
WHIMBREL = ROOT / "rigs" / "whimbrel.yaml"
TODAY = date(2026, 5, 2)
COLD_RUNS = 9
LOOSE, LIMITS, PARTS = 80, 60, 131
"""Parts that may be moved, limits they are held by in all load states, and of how many parts so many may be."""


class Row(NamedTuple):
    """One thing that was timed: median, slowest of twenty, and what was wished for (ms)."""

    what: str
    median: float
    slowest: float
    target: str


class Edit(NamedTuple):
    """A weight that is changed: where its text starts, the text, and its number."""

    start: int
    text: str
    number: float


def main() -> None:
    """Run everything once and print the table."""
    arguments = argparse.ArgumentParser(description="times and ratios of what somebody waits for")
    arguments.add_argument("--repeats", type=int, default=30)
    repeats = arguments.parse_args().repeats
    gc.set_threshold(OBJECTS_BEFORE_COLLECTING)  # as the program does
    yardstick = median(timed(square_roots, repeats))
    cold = [cold_check() for _ in range(COLD_RUNS)]
    rows = [
        row("cold `check` of Whimbrel, wall", [wall for wall, _, _ in cold], "500"),
        row("the same, CPU", [worked for _, worked, _ in cold], ""),
    ]
    whimbrel = WHIMBREL.read_bytes()
    rows += of_rig("Whimbrel", whimbrel, "front-cabinet", repeats, ("0.3", "5", "120"))
    rows += of_rig("1,000 parts", generated(1_000), "cabinet-500", max(repeats // 3, 3), ("", "50", "250 (any edit)"))
    rows += of_drag(whimbrel.decode("utf-8"), "parts[galley]", repeats)
    rows += of_fixes(WHIMBREL.read_bytes(), max(repeats // 6, 3))
    rows += of_frame(WHIMBREL.read_bytes(), repeats)
    rows += of_sheets(max(repeats // 3, 3))
    rows.append(row(f"least effort of {LOOSE} loose parts under {LIMITS} limits", programme(repeats), "20"))
    rows.append(row(f"one arrangement of {LOOSE} loose parts, proofs left out", arrangement(repeats), ""))
    print(f"yardstick (100,000 square roots): {yardstick:.2f} ms CPU\n")
    print("| what | median ms | slowest of 20 ms | in yardsticks | target ms |\n|---|---|---|---|---|")
    for what, middle, slowest, target in rows:
        print(f"| {what} | {middle:.2f} | {slowest:.2f} | {middle / yardstick:.2f} | {target} |")
    print(f"\npeak memory of the cold `check`: {median(peak for _, _, peak in cold):.0f} MB (target 100)")


def of_rig(name: str, data: bytes, part: str, repeats: int, targets: tuple[str, str, str]) -> list[Row]:
    """Return the rows of one rig: the edit of one weight, from the text alone to every slot."""
    document = read_document(data)
    edit = weight_of(document, part)
    reread = Changing(document, edit)
    screen = Working(document, edit, {"stage": None, "load": None, "use": None})
    first = screen.reading.rig.loads[0]
    screen.asked = {"stage": screen.reading.rig.header.stage_today, "load": first.name, "use": first.uses[0]}
    every = Working(document, edit, {})
    return [
        row(f"{name}: whole text read", timed(lambda: read_document(data), max(repeats // 3, 3)), ""),
        row(f"{name}: one item read again after an edit of its weight", timed(reread.change, repeats), targets[0]),
        row(f"{name}: one-item edit to the numbers of one slot", timed(screen.change, repeats), targets[1]),
        row(f"{name}: the same, all slots from today on", timed(every.change, repeats), targets[2]),
    ]


class Changing:
    """A document whose weight is changed, each time to one it never had: nothing remembered can answer for it."""

    def __init__(self, document: Document, edit: Edit) -> None:
        self.document, self.start, self.text, self.number = document, edit.start, edit.text, edit.number

    def change(self) -> None:
        """Put another weight into the text."""
        self.number += 0.25
        text = str(self.number)
        self.document = edited(self.document, self.start, self.start + len(self.text), text)
        self.text = text


class Working(Changing):
    """A rig that is composed and studied after each change, with what is remembered kept warm."""

    def __init__(self, document: Document, edit: Edit, asked: dict[str, object]) -> None:
        super().__init__(document, edit)
        self.asked = asked
        self.once = Once()
        self.composer = Composer()
        self.reading = self.composer.compose(document)

    def change(self) -> None:
        """Change the text, compose it and work it out."""
        super().change()
        self.reading = self.composer.compose(self.document)
        study(self.reading.rig, TODAY, once=self.once, **self.asked)  # type: ignore[arg-type]


class Watching(Once):
    """A memory that also keeps what each step of the frame was last given."""

    def __init__(self) -> None:
        super().__init__()
        self.given: dict[str, tuple[object, ...]] = {}

    def __call__(self, step, *given):  # type: ignore[no-untyped-def]
        """Run a step, or answer from memory."""
        if step in (hung_on, frame.solve, frame.findings):
            self.given[step.__name__] = given
        return super().__call__(step, *given)


def of_frame(data: bytes, repeats: int) -> list[Row]:
    """Return the row of the frame worked out again, as after an edit: members, openings, every hinge and screw."""
    once = Watching()
    rig = Composer().compose(read_document(data)).rig
    study(rig, TODAY, once=once)
    bare, solved, told = (once.given[name] for name in ("hung_on", "solve", "findings"))

    def again() -> None:
        hung_on(raised(bones_of(rig.frame), rig.trailer), *bare[1:])  # type: ignore[arg-type]
        frame.findings(frame.solve(*solved), *told[1:])  # type: ignore[arg-type]

    return [row("Whimbrel: frame and fasteners of one slot, after an edit", timed(again, repeats), "5")]


def of_sheets(repeats: int) -> list[Row]:
    """Return the rows of the whole set on paper, the study being done: every sheet as SVG, and one PDF."""
    answer = answered(Question(str(WHIMBREL), "", "", "tow", "file", "", ""), TODAY)

    def pages() -> tuple[Page, ...]:
        sheets, title = all_sheets(answer)
        return pages_of(sheets, PAPERS["letter"], title)

    count = len(pages())
    drawn = timed(lambda: [svg_of(one) for one in pages()], repeats)
    set_of = [row(f"Whimbrel: all sheets as SVG ({count} pages)", drawn, "300")]
    try:
        as_pdf = timed(lambda: pdf_of(pages(), "Whimbrel"), 3, time.process_time)
    except MissingExtra:
        return set_of
    return [*set_of, row(f"Whimbrel: the set as one PDF ({count} pages)", as_pdf, "3000")]


def of_drag(text: str, part: str, repeats: int) -> list[Row]:
    """Return the rows of a drag on the plan: from where the hand is to what is sent back, each place a new one."""
    opened = Session(text, TODAY)
    slot = Looked(stage="finish", load="departure")
    opened.seen(slot)
    at = [0.0, 0.0]

    def move() -> None:
        at[0] += 0.0031
        at[1] += 0.0017
        numbers_of(opened.preview(part, (at[0], at[1], 0.0), 0, slot), 1, 0, preview=True).model_dump_json()

    def drop() -> None:
        opened.move(part, (0.01, 0.0, 0.0), opened.rev, 0.0)
        numbers_of(opened.seen(slot), 1, opened.rev, preview=False).model_dump_json()

    return [
        row("Whimbrel: the galley moved under the hand, to the numbers sent", timed(move, repeats), "15"),
        row("Whimbrel: the galley dropped, to every answer sent", timed(drop, max(repeats // 3, 3)), ""),
    ]


def of_fixes(data: bytes, repeats: int) -> list[Row]:
    """Return the rows of the smallest changes, as `check` seeks them: the slowest stage from today on, and before."""
    rig = Composer().compose(read_document(data)).rig
    found: dict[bool, list[Row]] = {True: [], False: []}
    uses: tuple[Use, ...] = ("tow", "sleep")
    behind = [name for name, _ in rig.tow]
    for number, stage in enumerate(rig.stages_in_order):
        for use, vehicle in product(uses, behind):
            times = [sought(data, number, use, vehicle) for _ in range(repeats)]
            what = f"Whimbrel: smallest changes, {use}, stage {stage.name}, behind {vehicle}"
            found[number >= rig.header.stage_today].append(row(what, times, "250"))
    return [max(rows, key=lambda one: one.median) for rows in (found[True], found[False])]


def sought(data: bytes, number: int, use: Use, vehicle: str) -> float:
    """Return how long the changes of one stage and use take (ms CPU), the stage itself being worked out already."""
    reading = Composer().compose(read_document(data))
    bench = Bench(reading, TODAY, vehicle=vehicle)
    asked = study(reading.rig, TODAY, stage=number, use=use, once=bench.once, vehicle=vehicle)
    started = time.thread_time()
    remedies(bench, number, asked.is_ticked, use=use, found=asked)
    return (time.thread_time() - started) * 1_000


def programme(repeats: int) -> list[float]:
    """Return how long the linear programme alone takes: even parts pull at the ball, odd ones at other limits too."""
    weights = [1.0 + index % 37 for index in range(LOOSE)]
    ways = [(-0.5 - index % 5 / 4.0, 0.5 + index % 7 / 4.0) for index in range(LOOSE)]
    gains = [[kg * (1.0 + (index * number) % 3 / 9.0) for index, kg in enumerate(weights)] for number in range(LIMITS)]
    needs = [0.4 * sum(weights), *(-0.1 * sum(weights) for _ in range(LIMITS - 1))]
    return timed(lambda: least_effort(weights, ways, gains, needs), repeats)


def arrangement(repeats: int) -> list[float]:
    """Return how long it takes to arrange the loose parts of a generated rig so that the ball carries 5 kg more."""
    bench = Bench(Composer().compose(read_document(generated(PARTS))), TODAY)
    number = len(bench.reading.rig.stages_in_order) - 1
    towed = [slot for slot in bench.stage_before(number, False) if slot.use == "tow"]
    must = [Limit(towed[-1].load, (-0.3, 0.0), 5.0)]
    return timed(lambda: arranged(bench, towed, must, (0,)), repeats)


def weight_of(document: Document, part: str) -> Edit:
    """Return where the weight of a part stands in the text."""
    start, end = document.span(f"parts[{part}]")
    at = document.text.index("weight: ", start, end) + len("weight: ")
    figure = document.text[at:end].split(",")[0].split("}")[0].split(" ")[0]
    return Edit(at, figure, float(figure))


def square_roots() -> None:
    """Work out 100,000 square roots."""
    for number in range(100_000):
        sqrt(number)


def timed(action: Callable[[], object], repeats: int, clock: Callable[[], float] = time.thread_time) -> list[float]:
    """Return the CPU time of each repeat in ms, after three that do not count."""
    times = []
    for turn in range(repeats + 3):
        started = clock()
        action()
        times.append((clock() - started) * 1_000)
        if turn < 3:
            times.clear()
    return times


def row(what: str, times: list[float], target: str) -> Row:
    """Return the median of times, and the one that one in twenty exceeds."""
    ordered = sorted(times)
    return Row(what, median(ordered), ordered[min(len(ordered) - 1, int(len(ordered) * 0.95))], target)


def cold_check() -> tuple[float, float, float]:
    """Return wall time (ms), CPU time (ms) and peak memory (MB) of one `check` in a process of its own."""
    started = time.perf_counter()
    command = [sys.executable, "-m", "boxwright", "check", str(WHIMBREL)]
    with subprocess.Popen(command, stdout=subprocess.DEVNULL) as child:
        _, status, used = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode not in (0, 1, 2):
        raise RuntimeError(f"check left with {child.returncode}")
    wall = (time.perf_counter() - started) * 1_000
    return wall, (used.ru_utime + used.ru_stime) * 1_000, used.ru_maxrss / 1_024


def generated(parts: int) -> bytes:
    """Return the generated demo rig with a number of parts."""
    command = [sys.executable, str(ROOT / "rigs" / "make_gannet.py"), "--parts", str(parts)]
    return subprocess.run(command, capture_output=True, check=True).stdout


if __name__ == "__main__":
    main()
