"""Print how long layout takes to look at a slot again after one thing was moved, and how few pairs it looks at.

Whimbrel as it will stand, a made-up rig of a thousand parts that all but touch, and the generated one of a thousand of
which many stand in each other. CPU time, medians, and ratios to a yardstick taken between (100,000 square roots): a
ratio moves less than a time when other programs run. Nothing here fails: these numbers are looked at.

Usage: python benchmarks/layout.py [--repeats 30]
"""

from __future__ import annotations

import argparse
import subprocess
import sys
import time
from dataclasses import replace
from datetime import date
from math import floor, sqrt
from pathlib import Path
from statistics import median

from boxwright.disciplines import structure
from boxwright.disciplines.frame.shell import shell
from boxwright.disciplines.layout.bringing import brought_in
from boxwright.disciplines.layout.meeting import CELL
from boxwright.disciplines.layout.solve import Hull, bodies_of, solve
from boxwright.finding import Use
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.hull import heavy_of, hull_of, linings_of, openings_of, stood_of
from boxwright.study.slots import Slot, study
from boxwright.study.worked import fixings_of

RIGS = Path(__file__).resolve().parents[1] / "rigs"
WHIMBREL = RIGS / "whimbrel.yaml"
TODAY = date(2026, 5, 2)
STEP = 0.01

HEAD = """\
boxwright: 1
rig: Thousand
units: {length: in, weight: lb}
countries: [US-NC]
class: cargo
today: {stage: all}
trailer:
  body: {length: 288, width: 97, height: 84}
  outside: {length: 292, width: 102, over_fenders: 102, height: 114, length_overall: 346}
  coupler_x: -56
  axles: {kind: torsion, x: [155, 189], gawr: [5200, 5200]}
  gvwr: 10400
  empty: {weight: 3850, tongue: 470, cg_z: 24}
frame:
  studs: {tube: 1 x 1 1/2 x 16 ga, every: 16, first: 0}
parts:
"""
TAIL = """
stages:
  all: {what: all}
loads:
  road: {cargo: all, for: [tow]}
"""


def thousand() -> str:
    """Return a rig of fifty rows of twenty boxes, each a little apart from the next."""
    rows = [
        f"  p{row:02d}{column}{shelf}: {{x: {row * 5}, side: left+{column * 15}, z: {shelf * 15}, "
        "size: 5 x 14 x 14, weight: 5, stage: all}"
        for row in range(50)
        for column in range(5)
        for shelf in range(4)
    ]
    return HEAD + "\n".join(rows) + TAIL


def slot_of(text: str, stage: int, load: str, use: Use) -> tuple[Rig, Slot]:
    """Return a rig and one of its slots."""
    rig = read_rig(text).rig
    return rig, study(rig, TODAY, stage=stage, load=load, use=use, ticked=False).slots[0]


def crowded() -> str:
    """Return the generated rig of a thousand parts, many of which stand in each other."""
    command = [sys.executable, str(RIGS / "make_gannet.py"), "--parts", "1000"]
    return subprocess.run(command, capture_output=True, check=True, text=True).stdout


def yardstick() -> float:
    """Return how long 100,000 square roots take now (ms)."""
    begun = time.thread_time()
    for number in range(100_000):
        sqrt(number)
    return (time.thread_time() - begun) * 1000.0


def rechecked(rig: Rig, slot: Slot, use: Use, repeats: int) -> tuple[float, float]:
    """Return how long the whole of layout takes with one part moved (ms), and in yardsticks."""
    bare = shell(rig.frame, rig.trailer, fixings_of(structure.offers(rig.structure.fastened)))
    assert slot.box is not None
    hull: Hull = hull_of(bare, slot.box)
    stood, doors = stood_of(slot.standing.frames), openings_of(slot.standing.openings)
    heavy, people = heavy_of(slot.standing.frames, rig.layout), rig.people
    stages, linings = tuple(one.name for one in rig.stages_in_order), linings_of(rig.layers)
    took, ratios = [], []
    for count in range(repeats + 1):
        fitted = list(rig.layout.fitted)
        place = fitted[-1].place
        x = replace(place.x, best=place.x.best + STEP * count, low=place.x.low, high=place.x.high + STEP * count)
        fitted[-1] = replace(fitted[-1], place=replace(place, x=x))
        section = replace(rig.layout, fitted=tuple(fitted))
        begun = time.thread_time()
        brought = brought_in(section, hull, stages, rig.header.stage_today, linings)
        solve(section, stood, heavy, doors, hull, people, use, brought)
        if count:  # the first finds nothing remembered
            took.append((time.thread_time() - begun) * 1000.0)
            ratios.append(took[-1] / yardstick())
    return median(took), median(ratios)


def looked_at(rig: Rig, slot: Slot, use: Use) -> tuple[int, int]:
    """Return how many pairs share a cell, and how many there are in all."""
    bare = shell(rig.frame, rig.trailer, fixings_of(structure.offers(rig.structure.fastened)))
    assert slot.box is not None
    bodies = bodies_of(rig.layout, stood_of(slot.standing.frames), hull_of(bare, slot.box), use)
    cells: dict[tuple[int, int], int] = {}
    blocks = [block for body in bodies for block in body.blocks]
    for low, high in blocks:
        for column in range(floor(low[0] / CELL), floor(high[0] / CELL) + 1):
            for row in range(floor(low[1] / CELL), floor(high[1] / CELL) + 1):
                cells[column, row] = cells.get((column, row), 0) + 1
    return sum(held * (held - 1) // 2 for held in cells.values()), len(blocks) * (len(blocks) - 1) // 2


def main() -> int:
    """Print the table."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--repeats", type=int, default=30)
    repeats = asked.parse_args().repeats
    whimbrel = WHIMBREL.read_text(encoding="utf-8")
    cases: tuple[tuple[str, str, int, str, Use], ...] = (
        ("Whimbrel, towed", whimbrel, 10, "departure", "tow"),
        ("Whimbrel, asleep", whimbrel, 10, "night", "sleep"),
        ("a thousand apart", thousand(), 0, "road", "tow"),
        ("a thousand packed", crowded(), 9, "departure", "tow"),
    )
    for name, text, stage, load, use in cases:
        rig, slot = slot_of(text, stage, load, use)
        some, every = looked_at(rig, slot, use)
        took, ratio = rechecked(rig, slot, use, repeats)
        sys.stdout.write(
            f"{name:18} {took:7.2f} ms, {ratio:6.2f} yardsticks   "
            f"from nothing {some:7} of {every:7} pairs looked at, 1 in {every / some:.1f}\n"
        )
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
