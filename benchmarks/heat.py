"""Print how long a box takes through a year compiled, and through a design night in plain Python.

Six faces, two windows, two cold places, cracks, vents, a heater and a cooler, in the weather of a made-up year. CPU
time, medians. Nothing here fails: these numbers are looked at.

Usage: python benchmarks/heat.py [--repeats 15]
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Callable
from datetime import date
from functools import partial
from math import pi, sin, sqrt
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

from boxwright.disciplines.heat.method import Box, Cold, Faces, Heater, Hours, Panes, Room, box_through_time
from boxwright.disciplines.heat.method.boxed import _Work
from boxwright.disciplines.heat.method.network import FIXED, _march
from boxwright.disciplines.heat.night import _runs
from boxwright.disciplines.heat.result import Result
from boxwright.model.compiled import compiled
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

YEAR, NIGHT = 8760, 72


def box() -> Box:
    """Return a box in which everything there is takes part."""
    room = Room(
        17.2, 4e5, 1.2e6, 100.0, 0.2, 0.8, 0.008, 0.0145, 0.0174, 0.01, 2.0, 0.3, 0.05, 299.15, 98000.0, 60.0
    )  # fmt: skip
    six = 6
    faces = Faces(
        (7.0,) * six, (18.0,) * six, (1.0,) * six, (0.15,) * six, (18.0,) * six, (4e4,) * six, (0.5,) * six,
        (0.9,) * six, (0.5,) * six, (0, 1, 2, 3, 4, -1), (0.0,) * six,
    )  # fmt: skip
    panes, cold = Panes((3.0, 2.0), (0.3, 0.2), (1, 2)), Cold((0.4, 0.7), (1.0, 3.0), (2.5, 2.5), (-1, 1))
    return Box(room, faces, panes, cold, Heater(900.0, 2000.0, True, 800.0))


def hours(count: int) -> Hours:
    """Return hours of a made-up year, or its first ones."""
    outside = [
        283.15 - 10.0 * sin(2 * pi * (at + 2000) / YEAR) + 6.0 * sin(2 * pi * (at - 9) / 24) for at in range(count)
    ]
    shine = [700.0 * max(0.0, sin(2 * pi * (at - 6) / 24)) for at in range(count)]

    def same(value: float) -> tuple[float, ...]:
        return (value,) * count

    return Hours(
        tuple(outside), tuple(one - 10.0 for one in outside), same(3.0), same(0.004),
        tuple((one,) * 5 for one in shine), same(291.15), same(299.15), same(150.0), same(0.0), same(0.002), same(3e-5),
    )  # fmt: skip


def arrays(group: Any) -> Any:
    """Return a group with its columns as arrays."""
    kinds = [int if name in ("direction", "face") else float for name in group._fields]
    return type(group)(
        *(np.array(one, kind) if isinstance(one, tuple) else one for one, kind in zip(group, kinds, strict=True))
    )


def finished() -> Result:
    """Return what heat has worked out of Whimbrel as it will be finished, with somebody asleep in it."""
    rig = read_rig((Path(__file__).parents[1] / "rigs" / "whimbrel.yaml").read_bytes()).rig
    found = study(rig, date(2026, 5, 2), stage=len(rig.stages_in_order) - 1, use="sleep")
    return next(slot.heat for slot in found.slots if slot.use == "sleep" and slot.heat is not None)


def took(work: Callable[[], object], repeats: int) -> float:
    """Return the median of the CPU time (ms)."""
    times = []
    for _ in range(repeats):
        began = time.thread_time()
        work()
        times.append((time.thread_time() - began) * 1000.0)
    return median(times)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--repeats", type=int, default=15)
    repeats = parser.parse_args().repeats
    yard = took(lambda: [sqrt(at) for at in range(100_000)], repeats)
    print(f"yardstick (100,000 square roots): {yard:.2f} ms CPU\n")
    print("| what | median ms | in yardsticks | target ms |\n|---|---|---|---|")

    night = hours(NIGHT)
    for substeps in (1, 2, 4):
        spent = took(partial(box_through_time, box(), night, (291.15, 0.005), substeps), repeats)
        print(f"| night of {NIGHT} h, plain, {substeps} steps an hour | {spent:.2f} | {spent / yard:.2f} | 10 |")
    result = finished()
    first = result.held[0]
    worked_out = _runs.__wrapped__
    spent = took(partial(worked_out, result.inside, first.outdoors, first.warmth, result.moisture), repeats)
    print(f"| Whimbrel finished: one night, one heater, its three ends | {spent:.2f} | {spent / yard:.2f} | 10 |")
    year = arrays(hours(YEAR))
    whole = Box(*(arrays(one) for one in box()))
    out = np.zeros((YEAR + 1, FIXED + 6 + 2))
    loop: Callable[..., None] = compiled(_march)

    def run(substeps: int) -> None:
        work = _Work(*(np.zeros(6) for _ in range(7)), *(np.zeros(2) for _ in range(4)))
        loop(whole, year, 291.15, 0.005, 1.0, substeps, 0, work, out)

    began = time.perf_counter()
    run(1)
    print(f"| compiling, wall | {(time.perf_counter() - began) * 1000.0:.0f} | | |")
    for substeps in (1, 2, 4):
        spent = took(partial(run, substeps), repeats)
        print(f"| year of {YEAR} h, compiled, {substeps} steps an hour | {spent:.2f} | {spent / yard:.2f} | 5 |")
    plain = took(lambda: box_through_time(box(), hours(YEAR), (291.15, 0.005), 1), 1)
    print(f"| the same in plain Python, 1 step an hour | {plain:.0f} | {plain / yard:.1f} | |")


if __name__ == "__main__":
    main()
