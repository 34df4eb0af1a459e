"""Print how long the solids of each demo rig take: model, closed surfaces, GLB file, one section. CPU time, medians.

The aim is a GLB file of Whimbrel in under a second. Nothing here fails: these numbers are looked at.

Usage: python benchmarks/solids.py [--repeats 5]
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path
from statistics import median

from boxwright.book.solids import model_of
from boxwright.render.glb import glb_of
from boxwright.render.shape import faces_of, shapes_of
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

RIGS = Path(__file__).resolve().parents[1] / "rigs"
TODAY = date(2026, 5, 2)


def taken(repeats: int, what: Callable[[], object]) -> float:
    """Return the CPU time (ms) something takes, the median of some."""
    times = []
    for _ in range(repeats):
        start = time.thread_time()
        what()
        times.append((time.thread_time() - start) * 1000.0)
    return median(times)


def main() -> None:
    """Print a row for each demo rig."""
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--repeats", type=int, default=5)
    repeats = arguments.parse_args().repeats
    print("rig        solids  triangles  kB     model  surfaces  file   section x=1.5 m   (ms)")
    for path in sorted(RIGS.glob("*.yaml")):
        rig = read_rig(path.read_bytes()).rig
        slot = study(rig, TODAY).asked_slots("tow")[0]
        model = model_of(rig, slot)
        shapes = shapes_of(model.solids)
        content = glb_of(shapes, model.name, model.stages)
        triangles = sum(one.body.num_tri() for one in shapes)
        times = [
            taken(repeats, work)
            for work in (
                lambda rig=rig, slot=slot: model_of(rig, slot),
                lambda model=model: shapes_of(model.solids),
                lambda model=model, shapes=shapes: glb_of(shapes, model.name, model.stages),
                lambda shapes=shapes: faces_of(shapes, "x", 1.5),
            )
        ]
        row = f"{path.stem:10} {len(shapes):6} {triangles:10} {len(content) // 1000:5}"
        print(row, " ".join(f"{one:8.1f}" for one in times))


if __name__ == "__main__":
    main()
